//! Projecting an entry: its judgement and its columns, and those of entries it is about.

use std::collections::VecDeque;

use chrono::Datelike;
use sumpbook_trade::record::{DeviceRevoked, Verdict};
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, TruckId};

use super::ancestry::Reach;
use super::{Knowledge, LedgerError};
use crate::book::{BookId, EntryRow};
use crate::gate::{ChangeHash, KeyId};
use crate::judgement::{Circumstances, Judged, judge, stricter};
use crate::store::{FactRow, HeldEntry, Truth, Twin, Writing};

/// Days from 0001-01-01 to 1970-01-01 in chrono's count.
const EPOCH_DAY: i32 = 719_163;

/// A calendar day as the projection counts them.
pub(crate) fn day_number(day: chrono::NaiveDate) -> i32 {
    day.num_days_from_ce() - EPOCH_DAY
}

/// What one projection carries along: entries still to be looked at, and what was walked of the graph.
#[derive(Default)]
pub(super) struct Pass {
    open: VecDeque<(HeldEntry, bool)>,
    reach: Reach,
    /// The entry that was just written, when whoever wrote it still has it in hand.
    known: Option<(i64, Entry)>,
    /// The shop's own entries of the fleet book that came, or were judged otherwise than before.
    fleet: Vec<HeldEntry>,
}

impl Pass {
    /// A pass over many entries of one book: what a revocation's heads reach is walked once and kept.
    pub(super) fn over_many() -> Pass {
        Pass { reach: Reach::whole(), ..Pass::default() }
    }
}

impl Knowledge {
    /// Projects one entry that was just written and every other whose judgement it touches. Returns those
    /// of the shop's entries in the fleet book that came or were judged otherwise.
    pub(super) fn project(
        &self,
        writing: &Writing<'_>,
        n: i64,
        row: &EntryRow,
        entry: Option<&Entry>,
    ) -> Result<Vec<HeldEntry>, LedgerError> {
        let mut pass = Pass { known: entry.map(|entry| (n, entry.clone())), ..Pass::default() };
        let held = HeldEntry { n, row: row.clone(), received_ms: 0, carrier: None };
        pass.open.push_back((held, true));
        self.work(writing, &mut pass)?;
        Ok(pass.fleet)
    }

    /// Projects an entry that stands here already, anew.
    pub(super) fn project_again(
        &self,
        writing: &Writing<'_>,
        held: HeldEntry,
        pass: &mut Pass,
    ) -> Result<(), LedgerError> {
        pass.open.push_back((held, false));
        self.work(writing, pass)
    }

    /// A list and no recursion: a hand that writes a thousand entries about one another fills no stack.
    fn work(&self, writing: &Writing<'_>, pass: &mut Pass) -> Result<(), LedgerError> {
        while let Some((held, new)) = pass.open.pop_front() {
            self.project_one(writing, held, new, pass)?;
        }
        Ok(())
    }

    fn project_one(
        &self,
        writing: &Writing<'_>,
        held: HeldEntry,
        new: bool,
        pass: &mut Pass,
    ) -> Result<(), LedgerError> {
        let truth = writing.truth();
        let HeldEntry { n, ref row, .. } = held;
        let entry = match pass.known.take() {
            Some((of, entry)) if of == n => Some(entry),
            _ => Entry::from_payload(&row.payload).ok(),
        };
        let twins = truth.twins(row.id, &row.payload)?;
        let judged = self.judged_among(&truth, n, row, entry.as_ref(), &twins, &mut pass.reach)?;
        let before = if new { None } else { truth.fact(n)?.map(|fact| fact.judged) };
        writing.put_fact(&self.fact_row(n, row, entry.as_ref(), judged), new)?;
        if let Some(entry) = &entry {
            writing.put_photos(n, &entry.fact.photos(), &entry.fact.sounds())?;
        }
        if before == Some(judged) {
            return Ok(());
        }
        for twin in twins.iter().filter(|twin| twin.n != n && touches(twin, row.hash, new)) {
            pass.open.extend(truth.entry(twin.n)?.map(|held| (held, false)));
        }
        let counts = judged == Judged::Counts;
        if (counts || before == Some(Judged::Counts))
            && let Some(entry) = &entry
        {
            for (target, verdict) in targets(&entry.fact) {
                writing.put_decided(target, n, counts.then_some((entry.fact.code(), verdict)))?;
                for held in writing.truth().by_id(target)?.into_iter().filter(|held| held.n != n) {
                    pass.open.push_back((held, false));
                }
            }
        }
        if row.book == BookId::Fleet && row.actor.key() == self.root.shop.id() {
            pass.fleet.push(held);
        }
        Ok(())
    }

    /// Projects everything of one device anew, in one book or in all, after what its revocation reaches
    /// changed. Returns whether any of the fleet's was judged otherwise.
    pub(super) fn project_of_device(
        &self,
        writing: &Writing<'_>,
        device: KeyId,
        only: Option<BookId>,
    ) -> Result<bool, LedgerError> {
        let books = match only {
            Some(book) => vec![book],
            None => writing.truth().books()?,
        };
        let mut pass = Pass::over_many();
        for book in books {
            for held in writing.truth().of_signer(book, device)? {
                self.project_again(writing, held, &mut pass)?;
            }
        }
        Ok(!pass.fleet.is_empty())
    }

    /// Projects every entry anew. Returns whether any of the fleet's was judged otherwise.
    pub(super) fn project_all(&self, writing: &Writing<'_>) -> Result<bool, LedgerError> {
        let last = writing.truth().last_n()?;
        let mut after = 0;
        let mut pass = Pass::over_many();
        loop {
            let rows = writing.truth().between(after, last, 1_000)?;
            let Some(end) = rows.last().map(|held| held.n) else { return Ok(!pass.fleet.is_empty()) };
            for held in rows {
                self.project_again(writing, held, &mut pass)?;
            }
            after = end;
        }
    }

    /// An entry's judgement. Of several that say the same under one id and would count, one does: that of
    /// the lowest hash, so that every device makes the same choice.
    fn judged_among(
        &self,
        truth: &Truth<'_>,
        n: i64,
        row: &EntryRow,
        entry: Option<&Entry>,
        twins: &[Twin],
        reach: &mut Reach,
    ) -> Result<Judged, LedgerError> {
        let judged = self.judged(truth, n, row, entry, twins, reach)?;
        if judged != Judged::Counts {
            return Ok(judged);
        }
        for twin in twins.iter().filter(|twin| twin.same && twin.hash < row.hash) {
            if let Some(held) = truth.entry(twin.n)?
                && self.judged(truth, twin.n, &held.row, entry, twins, reach)? == Judged::Counts
            {
                return Ok(Judged::Void);
            }
        }
        Ok(Judged::Counts)
    }

    fn judged(
        &self,
        truth: &Truth<'_>,
        n: i64,
        row: &EntryRow,
        entry: Option<&Entry>,
        twins: &[Twin],
        reach: &mut Reach,
    ) -> Result<Judged, LedgerError> {
        let shop = self.root.shop.id();
        let by_shop = row.actor.key() == shop;
        let mut decisions = truth.decided(row.id)?;
        let own = entry.map_or(OTHER, |entry| standing_of(entry.fact.kind()));
        decisions.retain(|(_, kind, _)| standing_of(FactKind::from_code(*kind)) < own);
        let code = |kind: FactKind| kind.code().unwrap_or(0);
        let voids = [code(FactKind::Correction), code(FactKind::OtherUnit)];
        let void = match by_shop {
            true => self.voided_by_shop(truth, &decisions, &voids)?,
            false => decisions.iter().any(|(_, kind, _)| voids.contains(kind)),
        };
        Ok(judge(
            entry,
            &Circumstances {
                book: row.book,
                signer: row.actor.key(),
                shop,
                id: row.id,
                // What the shop wrote, nobody else can set aside by writing under its id.
                two_contents: twins.iter().any(|twin| !twin.same && (!by_shop || twin.actor.key() == shop)),
                beyond_revocation: self.beyond_revocation(truth, n, row, reach)?,
                void,
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

    fn beyond_revocation(
        &self,
        truth: &Truth<'_>,
        n: i64,
        row: &EntryRow,
        reach: &mut Reach,
    ) -> Result<bool, LedgerError> {
        let signer = row.actor.key();
        // The shop's own key is where trust begins: a revocation cannot take that away.
        if signer == self.root.shop.id() {
            return Ok(false);
        }
        for (_, _, revoked) in self.fleet.revoked.iter().filter(|(id, _, _)| *id == signer.0) {
            let heads = named_heads(revoked, row.book);
            if !reach.reached(truth, row.book, &heads, (n, row.hash))? {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// Devices whose revocation names this change: what it reaches is known only now that it is here.
    pub(super) fn revoked_at(&self, row: &EntryRow) -> Vec<KeyId> {
        let names = |revoked: &DeviceRevoked| named_heads(revoked, row.book).contains(&row.hash);
        self.fleet.revoked.iter().filter(|(_, _, r)| names(r)).map(|(id, _, _)| KeyId(*id)).collect()
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

/// Whether a twin must be looked at again after this entry came or was judged otherwise.
fn touches(twin: &Twin, hash: ChangeHash, new: bool) -> bool {
    if twin.same {
        return twin.hash > hash;
    }
    // A third content changes nothing for those that are set aside already.
    new && twin.judged != Some(Judged::TwoContents)
}

/// Decisions and acceptances settle corrections; both settle everything else; nothing settles its like or
/// what settles it. So no entry is ever void by itself, whatever names whatever.
const OTHER: u8 = 2;

fn standing_of(kind: FactKind) -> u8 {
    match kind {
        FactKind::Decision | FactKind::LateAccepted => 0,
        FactKind::Correction | FactKind::OtherUnit => 1,
        _ => OTHER,
    }
}

/// The shop's decision about an entry that stands now.
///
/// # Errors
/// As any read.
pub(crate) fn decision_about(truth: &Truth<'_>, target: EntryId) -> Result<Option<Verdict>, LedgerError> {
    standing(truth, &truth.decided(target)?)
}

/// The other entries that the shop decided about together with this one: what stands of it says the same of each.
///
/// # Errors
/// As any read.
pub(crate) fn decided_with(truth: &Truth<'_>, target: EntryId) -> Result<Vec<EntryId>, LedgerError> {
    let mut with = Vec::new();
    for (held, _) in all_standing(truth, &truth.decided(target)?)? {
        let said = Entry::from_payload(&held.row.payload).ok().map(|entry| entry.fact);
        let Some(Fact::Decision(decision)) = said else { continue };
        with.extend(decision.targets.into_iter().filter(|other| *other != target));
    }
    Ok(with)
}

fn named_heads(revoked: &DeviceRevoked, book: BookId) -> Vec<ChangeHash> {
    let of_book = revoked.books.iter().filter(|head| named_book(head.truck, head.year) == book);
    of_book.flat_map(|head| head.heads.iter().map(|digest| ChangeHash(digest.0))).collect()
}

/// The decision that stands: of those that do, the stricter holds.
fn standing(truth: &Truth<'_>, decisions: &[(i64, u16, i64)]) -> Result<Option<Verdict>, LedgerError> {
    let all = all_standing(truth, decisions)?;
    Ok(all.into_iter().map(|(_, verdict)| verdict).reduce(stricter))
}

/// The decisions that no other has seen: one that was seen is replaced.
fn all_standing(
    truth: &Truth<'_>,
    decisions: &[(i64, u16, i64)],
) -> Result<Vec<(HeldEntry, Verdict)>, LedgerError> {
    let code = FactKind::Decision.code().unwrap_or(0);
    let mut held: Vec<(HeldEntry, Verdict)> = Vec::new();
    for (by, kind, verdict) in decisions {
        let verdict = u8::try_from(*verdict).ok().and_then(|v| minicbor::decode(&[v]).ok());
        if let (true, Some(verdict), Some(entry)) = (*kind == code, verdict, truth.entry(*by)?) {
            held.push((entry, verdict));
        }
    }
    let mut replaced = Vec::with_capacity(held.len());
    for (entry, _) in &held {
        let mut seen = false;
        for (other, _) in held.iter().filter(|(other, _)| other.n != entry.n) {
            seen |= Reach::had_seen(truth, other, entry)?;
        }
        replaced.push(seen);
    }
    let standing = held.into_iter().zip(replaced).filter(|(_, replaced)| !replaced);
    Ok(standing.map(|(held, _)| held).collect())
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
        // Which set's hours they are is what a set that was moved leaves in question.
        Fact::SetFitted(_) | Fact::SetRemoved(_) => None,
        _ => entry.hours,
    }
}

/// Whether more than its hours bears on the unit's state, so that folding must read it whole.
fn bears(fact: &Fact) -> bool {
    use sumpbook_trade::record::{AnswerKind, Glass, OilLook, WaterAmount, WaterFrom};
    match fact {
        // The great mass: a whole walk that found nothing bears nothing. A part of one covers nothing by itself.
        Fact::PreTripSection(section) => {
            !section.ends_the_walk() || section.answers.iter().any(|a| a.answer == AnswerKind::Defect)
        }
        Fact::EndOfDay(report) => !report.defects.is_empty(),
        Fact::StopAir(stop) if stop.blew_down == Some(false) => true,
        Fact::StartAir(_) | Fact::StopAir(_) | Fact::StepsDone(_) => {
            fact.steps().iter().any(|step| step.not_so)
        }
        // A level that is in view, of oil nobody found wrong, is read only where the oil is reckoned up.
        Fact::LevelCheck(level) => {
            !matches!(level.glass, Glass::Percent(_)) || level.look.is_some_and(|look| look != OilLook::Clear)
        }
        // A spoon of clean water is nothing.
        Fact::WaterDrained(drained) => {
            let trap = drained.from == WaterFrom::FuelTrap && drained.amount != WaterAmount::None;
            drained.oil_in_it || trap || drained.amount > WaterAmount::Spoon
        }
        Fact::HourReading(_)
        | Fact::RunningNumbers(_)
        | Fact::Drive(_)
        | Fact::SiteCondition(_)
        | Fact::PaperPage(_)
        | Fact::Happened(_) => false,
        Fact::TopUp(_) => true,
        _ => true,
    }
}
