//! The projection of entries: what is asked of them often, in columns.

use rusqlite::Row;
use sumpbook_trade::{EntryId, FactKind, PersonId, Tenths, TruckId};

use super::{Store, StoreError, Transaction, Truth};
use crate::gate::KeyId;
use crate::judgement::Judged;

/// One entry as the projection has it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FactRow {
    /// Number of the entry.
    pub n: i64,
    /// Its id.
    pub id: EntryId,
    /// The truck of its book; none for a matter of the fleet.
    pub truck: Option<TruckId>,
    /// Number of its kind on the wire.
    pub kind: u16,
    /// When, milliseconds.
    pub at_ms: i64,
    /// The yard's day, days since 1970-01-01.
    pub day: i32,
    /// Who.
    pub person: Option<PersonId>,
    /// Compressor hours it carries.
    pub hours: Option<Tenths>,
    /// More than its hours bears on the unit's state.
    pub bears: bool,
    /// What became of it.
    pub judged: Judged,
}

/// A person's newest signature on one device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SignedOn {
    /// Who.
    pub person: PersonId,
    /// Key id of the device.
    pub device: [u8; 8],
    /// When, milliseconds.
    pub at_ms: i64,
    /// Number of the entry.
    pub n: i64,
}

/// A fact, and the payload of its entry where that was asked for.
pub type ToldFact = (FactRow, Option<Vec<u8>>);

const COLUMNS: &str = "f.entry, e.id, u.truck, f.kind, f.at, f.day, f.person, f.hours, f.bears, f.judged";
const FROM: &str = "fact f JOIN entry e ON e.n = f.entry LEFT JOIN unit u ON u.no = f.unit";
const OF_DAYS: &str = "f.day BETWEEN ?1 AND ?2 ORDER BY f.day, f.unit, f.at, f.entry";

pub(super) const ASIDE: &str = "f.entry IN (SELECT entry FROM aside) ORDER BY f.entry";

/// Which units a person wrote about within days, each with the newest time: nothing but that is read.
pub(super) const OF_PERSON: &str = "SELECT u.truck, max(f.at) FROM fact f JOIN unit u ON u.no = f.unit
     WHERE f.day BETWEEN ?1 AND ?2 AND f.person = ?3 GROUP BY f.unit";

/// Facts of days with what is to be read of them.
pub(super) fn told() -> String {
    format!(
        "SELECT {COLUMNS}, CASE WHEN f.judged = 0 AND f.kind IN (SELECT value FROM json_each(?3)) THEN e.payload END
         FROM {FROM} WHERE {OF_DAYS}"
    )
}

/// The question for facts that are such.
pub(super) fn select(such: &str) -> String {
    format!("SELECT {COLUMNS} FROM {FROM} WHERE {such}")
}

fn row(row: &Row<'_>) -> rusqlite::Result<FactRow> {
    Ok(FactRow {
        n: row.get(0)?,
        id: EntryId::from_bytes(row.get(1)?),
        truck: row.get::<_, Option<[u8; 16]>>(2)?.map(TruckId::from_bytes),
        kind: row.get(3)?,
        at_ms: row.get(4)?,
        day: row.get(5)?,
        person: row.get::<_, Option<[u8; 16]>>(6)?.map(PersonId::from_bytes),
        hours: row.get::<_, Option<i64>>(7)?.map(Tenths),
        bears: row.get(8)?,
        judged: Judged::from_number(row.get(9)?),
    })
}

impl Truth<'_> {
    fn facts(&self, such: &str, values: &[&dyn rusqlite::ToSql]) -> Result<Vec<FactRow>, StoreError> {
        let mut query = self.0.prepare_cached(&select(such))?;
        let rows = query.query_map(values, row)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Facts of all units whose yard day lies within two days, both included.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_of_days(&self, from: i32, to: i32) -> Result<Vec<FactRow>, StoreError> {
        self.facts(OF_DAYS, &[&from, &to])
    }

    /// The same, of two kinds only.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_of_days_of(
        &self,
        from: i32,
        to: i32,
        kinds: [Option<u16>; 2],
    ) -> Result<Vec<FactRow>, StoreError> {
        let such = format!("f.kind IN (?3, ?4) AND {OF_DAYS}");
        self.facts(&such, &[&from, &to, &kinds[0], &kinds[1]])
    }

    /// The same, only what one device signed.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_of_days_by(&self, from: i32, to: i32, key: KeyId) -> Result<Vec<FactRow>, StoreError> {
        let such = format!("substr(e.actor, 1, 8) = ?3 AND {OF_DAYS}");
        self.facts(&such, &[&from, &to, &key.0])
    }

    /// The units a person wrote about within two days, both included, each with the newest time in milliseconds.
    ///
    /// # Errors
    /// As any read.
    pub fn units_of_person(
        &self,
        person: PersonId,
        from: i32,
        to: i32,
    ) -> Result<Vec<(TruckId, i64)>, StoreError> {
        let mut query = self.0.prepare_cached(OF_PERSON)?;
        let rows = query.query_map((from, to, person.bytes()), |row| {
            Ok((TruckId::from_bytes(row.get(0)?), row.get(1)?))
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Facts of entries after a number, in order.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_since(&self, n: i64) -> Result<Vec<FactRow>, StoreError> {
        self.facts("f.entry > ?1 ORDER BY f.entry", &[&n])
    }

    /// The yard days an entry is about: its own, and those of the entries it decides about.
    ///
    /// # Errors
    /// As any read.
    pub fn days_about(&self, n: i64) -> Result<Vec<i32>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT day FROM fact WHERE entry = ?1 UNION SELECT f.day FROM decided d
             JOIN entry e ON e.id = d.target JOIN fact f ON f.entry = e.n WHERE d.by_entry = ?1",
        )?;
        let rows = query.query_map([n], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Facts of all units within two days, and of those that count and are of these kinds the payload too.
    ///
    /// # Errors
    /// As any read.
    pub fn told_on_days(&self, from: i32, to: i32, kinds: &[u16]) -> Result<Vec<ToldFact>, StoreError> {
        let kinds: Vec<String> = kinds.iter().map(u16::to_string).collect();
        let mut query = self.0.prepare_cached(&told())?;
        let values = (from, to, format!("[{}]", kinds.join(",")));
        let rows = query.query_map(values, |of| Ok((row(of)?, of.get(10)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Facts of the fleet's book of one kind, in the order they came.
    ///
    /// # Errors
    /// As any read.
    pub fn fleet_facts(&self, kind: u16) -> Result<Vec<FactRow>, StoreError> {
        self.facts("f.unit IS NULL AND f.kind = ?1 ORDER BY f.entry", &[&kind])
    }

    /// Facts of one unit within two days.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_of_unit_days(&self, truck: TruckId, from: i32, to: i32) -> Result<Vec<FactRow>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(Vec::new()) };
        // Day by day: over a range of days the index would go through every unit's facts.
        let mut found = Vec::new();
        for day in from..=to {
            found.extend(self.facts("f.day = ?2 AND f.unit = ?1 ORDER BY f.at, f.entry", &[&unit, &day])?);
        }
        Ok(found)
    }

    /// Whether a person has signed fewer than so many facts of a kind, on any unit.
    ///
    /// # Errors
    /// As any read.
    pub fn signed_fewer(&self, person: PersonId, kind: u16, than: u32) -> Result<bool, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT count(*) FROM (SELECT 1 FROM fact WHERE person = ?1 AND kind = ?2 LIMIT ?3)",
        )?;
        let found: u32 = query.query_row((person.bytes(), kind, than), |row| row.get(0))?;
        Ok(found < than)
    }

    /// The newest facts of a kind that a person signed on any unit, newest first, at most `most`.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_of_person(
        &self,
        person: PersonId,
        kind: u16,
        most: usize,
    ) -> Result<Vec<FactRow>, StoreError> {
        let most = i64::try_from(most).unwrap_or(i64::MAX);
        self.facts(
            "f.person = ?1 AND f.kind = ?2 ORDER BY f.at DESC, f.entry DESC LIMIT ?3",
            &[&person.bytes(), &kind, &most],
        )
    }

    /// Facts of one unit that bear on its state, up to a moment, in the order of their times.
    ///
    /// # Errors
    /// As any read.
    pub fn bearing_facts(&self, truck: TruckId, upto_ms: i64) -> Result<Vec<FactRow>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(Vec::new()) };
        self.facts("f.unit = ?1 AND f.bears = 1 AND f.at <= ?2 ORDER BY f.at, f.entry", &[&unit, &upto_ms])
    }

    /// Facts of one unit that carry compressor hours, up to a moment, in the order of their times.
    ///
    /// # Errors
    /// As any read.
    pub fn hour_facts(&self, truck: TruckId, upto_ms: i64) -> Result<Vec<FactRow>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(Vec::new()) };
        self.facts(
            "f.unit = ?1 AND f.hours IS NOT NULL AND f.at <= ?2 ORDER BY f.at, f.entry",
            &[&unit, &upto_ms],
        )
    }

    /// Facts of one unit and one kind up to a moment, in the order of their times.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_of_kind(&self, truck: TruckId, kind: u16, upto_ms: i64) -> Result<Vec<FactRow>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(Vec::new()) };
        self.facts(
            "f.unit = ?1 AND f.kind = ?2 AND f.at <= ?3 ORDER BY f.at, f.entry",
            &[&unit, &kind, &upto_ms],
        )
    }

    /// The newest facts of one unit, newest first, at most `most`.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_facts(&self, truck: TruckId, kind: u16, most: i64) -> Result<Vec<FactRow>, StoreError> {
        self.newest_facts_by(truck, kind, i64::MAX, most)
    }

    /// The same of those up to a moment: an index answers from that moment back, whatever came before.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_facts_by(
        &self,
        truck: TruckId,
        kind: u16,
        upto_ms: i64,
        most: i64,
    ) -> Result<Vec<FactRow>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(Vec::new()) };
        self.facts(
            "f.unit = ?1 AND f.kind = ?2 AND f.at <= ?3 ORDER BY f.at DESC, f.entry DESC LIMIT ?4",
            &[&unit, &kind, &upto_ms, &most],
        )
    }

    /// Facts of one unit, newest first: at most `most` of them after the first `skip`.
    ///
    /// # Errors
    /// As any read.
    pub fn facts_of_unit(&self, truck: TruckId, skip: i64, most: i64) -> Result<Vec<FactRow>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(Vec::new()) };
        self.facts("f.unit = ?1 ORDER BY f.at DESC, f.entry DESC LIMIT ?3 OFFSET ?2", &[&unit, &skip, &most])
    }

    /// The moment of the oldest fact of one unit, milliseconds; none: there is none.
    ///
    /// # Errors
    /// As any read.
    pub fn first_ms_of_unit(&self, truck: TruckId) -> Result<Option<i64>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(None) };
        // From kind to kind, each answered by the index: a long history is never gone through.
        let mut query = self.0.prepare_cached(
            "WITH RECURSIVE k(kind) AS (SELECT min(kind) FROM fact WHERE unit = ?1 UNION ALL
             SELECT (SELECT min(kind) FROM fact WHERE unit = ?1 AND kind > k.kind) FROM k WHERE k.kind IS NOT NULL)
             SELECT min((SELECT min(at) FROM fact WHERE unit = ?1 AND kind = k.kind AND at > 0))
             FROM k WHERE k.kind IS NOT NULL",
        )?;
        Ok(query.query_row([unit], |row| row.get(0))?)
    }

    /// How many facts of one unit there are.
    ///
    /// # Errors
    /// As any read.
    pub fn count_of_unit(&self, truck: TruckId) -> Result<i64, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(0) };
        let mut query = self.0.prepare_cached("SELECT count(*) FROM fact WHERE unit = ?1")?;
        Ok(query.query_row([unit], |row| row.get(0))?)
    }

    /// The projection of one entry.
    ///
    /// # Errors
    /// As any read.
    pub fn fact(&self, n: i64) -> Result<Option<FactRow>, StoreError> {
        Ok(self.facts("f.entry = ?1", &[&n])?.into_iter().next())
    }

    /// Everything set aside that waits for a person, oldest first.
    ///
    /// # Errors
    /// As any read.
    pub fn aside(&self) -> Result<Vec<FactRow>, StoreError> {
        self.facts(ASIDE, &[])
    }

    /// Who signed on which device within two yard days, both included: each pair with its newest fact.
    ///
    /// # Errors
    /// As any read.
    pub fn signed_on(&self, from: i32, to: i32) -> Result<Vec<SignedOn>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT f.person, substr(e.actor, 1, 8), max(f.at), f.entry FROM fact f JOIN entry e ON e.n = f.entry
             WHERE f.day BETWEEN ?1 AND ?2 AND f.person IS NOT NULL GROUP BY 1, 2 ORDER BY 1, 3",
        )?;
        let rows = query.query_map([from, to], |row| {
            Ok(SignedOn {
                person: PersonId::from_bytes(row.get(0)?),
                device: row.get(1)?,
                at_ms: row.get(2)?,
                n: row.get(3)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Numbers of the newest entries by which a person settled others, newest first, at most `most`.
    ///
    /// # Errors
    /// As any read.
    pub fn settled(&self, most: i64) -> Result<Vec<i64>, StoreError> {
        let (decided, accepted) = (FactKind::Decision.code(), FactKind::LateAccepted.code());
        let mut query = self.0.prepare_cached(
            "SELECT DISTINCT by_entry FROM decided WHERE kind IN (?1, ?2) ORDER BY by_entry DESC LIMIT ?3",
        )?;
        let rows = query.query_map((decided, accepted, most), |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Entries that decide about this one: number of the entry, kind, verdict.
    ///
    /// # Errors
    /// As any read.
    pub fn decided(&self, target: EntryId) -> Result<Vec<(i64, u16, i64)>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT by_entry, kind, verdict FROM decided WHERE target = ?1 ORDER BY by_entry",
        )?;
        let rows = query.query_map([target.bytes()], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}

/// Writes or replaces the projection of one entry.
pub(super) fn put(tx: &Transaction<'_>, fact: &FactRow, new: bool) -> Result<(), StoreError> {
    let unit = match fact.truck {
        Some(truck) => Some(super::units::no_of(tx, truck)?),
        None => None,
    };
    tx.prepare_cached(
        "INSERT OR REPLACE INTO fact (entry, unit, kind, at, day, person, hours, bears, judged)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
    )?
    .execute((
        fact.n,
        unit,
        fact.kind,
        fact.at_ms,
        fact.day,
        fact.person.map(PersonId::bytes),
        fact.hours.map(|h| h.0),
        fact.bears,
        fact.judged.number(),
    ))?;
    if fact.judged.is_aside() {
        tx.prepare_cached("INSERT OR REPLACE INTO aside (entry, unit, why) VALUES (?1, ?2, ?3)")?
            .execute((fact.n, unit, fact.judged.number()))?;
    } else if !new {
        tx.prepare_cached("DELETE FROM aside WHERE entry = ?1")?.execute([fact.n])?;
    }
    if let Some(unit) = unit {
        tx.prepare_cached("UPDATE unit SET stale = 1 WHERE no = ?1 AND stale = 0")?.execute([unit])?;
    }
    Ok(())
}

/// Notes that an entry decides about another.
pub(super) fn put_decided(
    tx: &Transaction<'_>,
    target: EntryId,
    by_entry: i64,
    kind: u16,
    verdict: i64,
) -> Result<(), StoreError> {
    tx.prepare_cached(
        "INSERT OR REPLACE INTO decided (target, by_entry, kind, verdict) VALUES (?1, ?2, ?3, ?4)",
    )?
    .execute((target.bytes(), by_entry, kind, verdict))?;
    Ok(())
}

impl Store {
    /// Every projection row in a fixed order, for comparing two stores.
    ///
    /// # Errors
    /// As any read.
    pub fn projection_text(&self) -> Result<Vec<String>, StoreError> {
        let mut all = Vec::new();
        // By hash, not by number: two stores number the same entries differently.
        for sql in [
            "SELECT 'fact', hex(e.hash), hex(u.truck), f.kind, f.at, f.day, hex(f.person), f.hours, f.bears, f.judged
             FROM fact f JOIN entry e ON e.n = f.entry LEFT JOIN unit u ON u.no = f.unit ORDER BY e.hash",
            "SELECT 'aside', hex(e.hash), a.why, '', '', '', '', '', '', ''
             FROM aside a JOIN entry e ON e.n = a.entry ORDER BY e.hash",
            "SELECT 'decided', hex(d.target), hex(e.hash), d.kind, d.verdict, '', '', '', '', ''
             FROM decided d JOIN entry e ON e.n = d.by_entry ORDER BY d.target, e.hash",
            "SELECT 'lock', hex(u.truck), l.part, hex(e.hash), l.since, l.ended, '', '', '', ''
             FROM lock_out l JOIN unit u ON u.no = l.unit JOIN entry e ON e.n = l.opened
             ORDER BY u.truck, l.part, e.hash",
            "SELECT 'photo', hex(p.photo), hex(e.hash), '', '', '', '', '', '', ''
             FROM photo_named p JOIN entry e ON e.n = p.entry ORDER BY p.photo, e.hash",
            "SELECT 'unit', hex(truck), hex(body), '', '', '', '', '', '', '' FROM unit ORDER BY truck",
        ] {
            let mut query = self.connection.prepare(sql)?;
            let rows = query.query_map([], |row| {
                let cells: Result<Vec<String>, _> = (0..10)
                    .map(|i| row.get::<_, rusqlite::types::Value>(i).map(|value| format!("{value:?}")))
                    .collect();
                cells.map(|cells| cells.join(" "))
            })?;
            for line in rows {
                all.push(line?);
            }
        }
        Ok(all)
    }
}
