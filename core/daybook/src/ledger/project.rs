//! Projecting an entry: its judgement and its columns, and those of entries it is about.

use std::collections::BTreeSet;

use chrono::Datelike;
use sumpbook_trade::record::Verdict;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, TruckId};

use super::ancestry::Reach;
use super::{Knowledge, LedgerError};
use crate::book::{BookId, EntryRow};
use crate::gate::{ChangeHash, PublicKey};
use crate::judgement::{Circumstances, Judged, judge, stricter};
use crate::store::{FactRow, HeldEntry, Truth, Writing};

/// Days from 0001-01-01 to 1970-01-01 in chrono's count.
const EPOCH_DAY: i32 = 719_163;

/// A calendar day as the projection counts them.
pub(crate) fn day_number(day: chrono::NaiveDate) -> i32 {
    day.num_days_from_ce() - EPOCH_DAY
}

impl Knowledge {
    /// Projects one entry and every other whose judgement it touches. Returns the entry when it counts.
    pub(super) fn project(
        &self,
        writing: &Writing<'_>,
        n: i64,
        row: &EntryRow,
    ) -> Result<Option<Entry>, LedgerError> {
        let mut done = BTreeSet::new();
        let counts = self.project_one(writing, n, row, &mut done)?;
        Ok(counts.then(|| Entry::from_payload(&row.payload).ok()).flatten())
    }

    fn project_one(
        &self,
        writing: &Writing<'_>,
        n: i64,
        row: &EntryRow,
        done: &mut BTreeSet<i64>,
    ) -> Result<bool, LedgerError> {
        if !done.insert(n) {
            return Ok(false);
        }
        let truth = writing.truth();
        let entry = Entry::from_payload(&row.payload).ok();
        let twins = truth.by_id(row.id)?;
        let judged = self.judged(&truth, row, entry.as_ref(), &twins)?;
        let judged =
            if judged == Judged::Counts && is_second_placing(&twins, n) { Judged::Void } else { judged };
        writing.put_fact(&self.fact_row(n, row, entry.as_ref(), judged))?;
        let counts = judged == Judged::Counts;
        let mut touched: Vec<EntryId> = Vec::new();
        if let Some(entry) = &entry {
            for (target, verdict) in targets(&entry.fact) {
                let code = entry.fact.code();
                writing.put_decided(target, n, counts.then_some((code, verdict)))?;
                touched.push(target);
            }
        }
        for twin in twins.iter().filter(|twin| twin.n != n) {
            self.project_one(writing, twin.n, &twin.row, done)?;
        }
        for target in touched {
            for held in writing.truth().by_id(target)? {
                self.project_one(writing, held.n, &held.row, done)?;
            }
        }
        Ok(counts)
    }

    /// Projects everything of a device anew, after its revocation.
    pub(super) fn project_of_revoked(
        &self,
        writing: &Writing<'_>,
        revocation: &Entry,
    ) -> Result<(), LedgerError> {
        let Fact::DeviceRevoked(revoked) = &revocation.fact else { return Ok(()) };
        let Ok(key) = PublicKey::from_bytes(&revoked.key.0) else { return Ok(()) };
        for book in writing.truth().books()? {
            for held in writing.truth().of_book(book)? {
                if held.row.actor.key() == key.id() {
                    self.project_one(writing, held.n, &held.row, &mut BTreeSet::new())?;
                }
            }
        }
        Ok(())
    }

    /// Projects every entry anew.
    pub(super) fn project_all(&self, writing: &Writing<'_>) -> Result<(), LedgerError> {
        let last = writing.truth().last_n()?;
        let mut after = 0;
        loop {
            let rows = writing.truth().between(after, last, 1_000)?;
            let Some(end) = rows.last().map(|held| held.n) else { return Ok(()) };
            for held in &rows {
                self.project_one(writing, held.n, &held.row, &mut BTreeSet::new())?;
            }
            after = end;
        }
    }

    fn judged(
        &self,
        truth: &Truth<'_>,
        row: &EntryRow,
        entry: Option<&Entry>,
        twins: &[HeldEntry],
    ) -> Result<Judged, LedgerError> {
        let decisions = truth.decided(row.id)?;
        let code = |kind: FactKind| kind.code().unwrap_or(0);
        let by_shop = row.actor.key() == self.root.shop.id();
        let voids = [code(FactKind::Correction), code(FactKind::OtherUnit)];
        let void = !by_shop && decisions.iter().any(|(_, kind, _)| voids.contains(kind));
        let void_by_shop = by_shop && self.voided_by_shop(truth, &decisions, &voids)?;
        Ok(judge(
            entry,
            &Circumstances {
                book: row.book,
                signer: row.actor.key(),
                shop: self.root.shop.id(),
                id: row.id,
                two_contents: twins.iter().any(|twin| twin.row.payload != row.payload),
                beyond_revocation: self.beyond_revocation(truth, row)?,
                void: void || void_by_shop,
                decided: standing(truth, &decisions)?,
                accepted_late: decisions.iter().any(|(_, kind, _)| *kind == code(FactKind::LateAccepted)),
            },
        ))
    }

    /// What the shop wrote, only the shop can void.
    fn voided_by_shop(
        &self,
        truth: &Truth<'_>,
        decisions: &[(i64, u16, i64)],
        voids: &[u16],
    ) -> Result<bool, LedgerError> {
        for (by, _, _) in decisions.iter().filter(|(_, kind, _)| voids.contains(kind)) {
            if truth.entry(*by)?.is_some_and(|held| held.row.actor.key() == self.root.shop.id()) {
                return Ok(true);
            }
        }
        Ok(false)
    }

    fn beyond_revocation(&self, truth: &Truth<'_>, row: &EntryRow) -> Result<bool, LedgerError> {
        let signer = row.actor.key();
        let mut reach = Reach::default();
        for (_, _, revoked) in self.fleet.revoked.iter().filter(|(id, _, _)| *id == signer.0) {
            let heads: Vec<ChangeHash> = revoked
                .books
                .iter()
                .filter(|head| named_book(head.truck, head.year) == row.book)
                .flat_map(|head| head.heads.iter().map(|digest| ChangeHash(digest.0)))
                .collect();
            if !reach.reached(truth, row.book, &heads, row.hash)? {
                return Ok(true);
            }
        }
        Ok(false)
    }

    fn fact_row(&self, n: i64, row: &EntryRow, entry: Option<&Entry>, judged: Judged) -> FactRow {
        let truck = match row.book {
            BookId::Fleet => None,
            BookId::Truck { truck, .. } => Some(truck),
        };
        FactRow {
            n,
            id: row.id,
            truck,
            kind: entry.map_or(0, |e| e.fact.code()),
            at_ms: entry.map_or(0, |e| e.at.unix_ms()),
            day: entry.map_or(0, |e| day_number(self.fleet.yard_day(e.at))),
            person: entry.and_then(|e| e.person),
            hours: entry.and_then(hours_of),
            bears: entry.is_some_and(|e| bears(&e.fact)),
            judged,
        }
    }
}

/// An entry placed again after a fork stands twice with one payload: the later row adds nothing.
fn is_second_placing(twins: &[HeldEntry], n: i64) -> bool {
    // By hash, not by number: every device must make the same choice.
    let Some(own) = twins.iter().find(|twin| twin.n == n) else { return false };
    twins.iter().any(|twin| twin.row.payload == own.row.payload && twin.row.hash < own.row.hash)
}

/// The decision that stands: those that another has seen are replaced; of the rest the stricter holds.
fn standing(truth: &Truth<'_>, decisions: &[(i64, u16, i64)]) -> Result<Option<Verdict>, LedgerError> {
    let code = FactKind::Decision.code().unwrap_or(0);
    let mut held: Vec<(HeldEntry, Verdict)> = Vec::new();
    for (by, kind, verdict) in decisions {
        let verdict = u8::try_from(*verdict).ok().and_then(|v| minicbor::decode(&[v]).ok());
        if let (true, Some(verdict), Some(entry)) = (*kind == code, verdict, truth.entry(*by)?) {
            held.push((entry, verdict));
        }
    }
    let mut standing: Option<Verdict> = None;
    for (entry, verdict) in &held {
        let mut replaced = false;
        for (other, _) in held.iter().filter(|(other, _)| other.n != entry.n) {
            replaced |= Reach::had_seen(truth, other, entry)?;
        }
        if !replaced {
            standing = Some(standing.map_or(*verdict, |known| stricter(known, *verdict)));
        }
    }
    Ok(standing)
}

fn named_book(truck: Option<TruckId>, year: Option<u16>) -> BookId {
    match (truck, year) {
        (Some(truck), Some(year)) => BookId::Truck { truck, year },
        _ => BookId::Fleet,
    }
}

/// The entries a fact is about, with the verdict's number.
fn targets(fact: &Fact) -> Vec<(EntryId, i64)> {
    match fact {
        Fact::Correction(c) => vec![(c.target, 0)],
        Fact::OtherUnit(o) => vec![(o.target, 0)],
        Fact::Decision(d) => d.targets.iter().map(|t| (*t, d.verdict as i64)).collect(),
        Fact::LateAccepted(l) => l.targets.iter().map(|t| (*t, 0)).collect(),
        _ => Vec::new(),
    }
}

/// The compressor hours an entry carries, in its common field or as a reading.
fn hours_of(entry: &Entry) -> Option<sumpbook_trade::Tenths> {
    use sumpbook_trade::record::Meter;
    match &entry.fact {
        Fact::HourReading(reading) if reading.meter == Meter::Compressor => Some(reading.figure),
        Fact::HourReading(_) | Fact::MeterExchange(_) => None,
        _ => entry.hours,
    }
}

/// Whether more than its hours bears on the unit's state, so that folding must read it whole.
fn bears(fact: &Fact) -> bool {
    use sumpbook_trade::record::AnswerKind;
    match fact {
        // The great mass: a walk that found nothing bears nothing.
        Fact::PreTripSection(section) => section.answers.iter().any(|a| a.answer == AnswerKind::Defect),
        Fact::EndOfDay(report) => !report.defects.is_empty(),
        Fact::HourReading(_)
        | Fact::LevelCheck(_)
        | Fact::RunningNumbers(_)
        | Fact::StartAir(_)
        | Fact::StopAir(_)
        | Fact::Drive(_)
        | Fact::WaterDrained(_)
        | Fact::SiteCondition(_) => false,
        Fact::TopUp(_) => true,
        _ => true,
    }
}
