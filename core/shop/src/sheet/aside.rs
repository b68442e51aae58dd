//! Entries that do not count yet, and entries that came after a day was closed (R8).

use chrono::NaiveDate;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::{FactRow, HeldEntry};
use sumpbook_trade::record::{SheetClosed, Source};
use sumpbook_trade::{Entry, Fact, FactKind};

use super::day_facts::DayFacts;
use super::rows::{AsideRow, LateRow};
use super::unit_day::{day_number, entry_of};
use super::{Yard, words};
use crate::ShopError;

/// The kind's word: a key of the texts.
fn kind_word(code: u16) -> String {
    words::key(&FactKind::from_code(code))
}

/// Every closing that counts, in the order they were made.
pub(crate) fn closings(ledger: &Ledger) -> Result<Vec<(HeldEntry, SheetClosed)>, ShopError> {
    let truth = ledger.store().truth();
    let mut found = Vec::new();
    for fact in truth.fleet_facts(FactKind::SheetClosed.code().unwrap_or(0))? {
        if fact.judged == Judged::Counts
            && let Some((held, entry)) = entry_of(&truth, fact.n)?
            && let Fact::SheetClosed(closed) = entry.fact
        {
            found.push((held, closed));
        }
    }
    Ok(found)
}

/// What waits for a person, oldest first.
pub(crate) fn set_aside(ledger: &Ledger, yard: &Yard) -> Result<Vec<AsideRow>, ShopError> {
    let truth = ledger.store().truth();
    let mut rows = Vec::new();
    for fact in truth.aside()?.into_iter().filter(|fact| fact.at_ms <= yard.cut_ms) {
        let Some(held) = truth.entry(fact.n)? else { continue };
        rows.push(AsideRow {
            entry: fact.id,
            came_from: yard.phone(ledger, held.row.actor.key()),
            unit: fact.truck.map(|truck| ledger.fleet().door(truck)),
            says: kind_word(fact.kind),
            who: yard.name(ledger, fact.person),
            why: words::key(&fact.judged),
            at: yard.stamp_ms(fact.at_ms),
            since: yard.stamp_ms(held.received_ms),
        });
    }
    Ok(rows)
}

/// Entries of a day that came after its first closing, in the order they came. Brought-in history is none.
/// `day` is the sheet's own or the one before.
pub(super) fn came_late(
    ledger: &Ledger,
    yard: &Yard,
    closings: &[(HeldEntry, SheetClosed)],
    day: NaiveDate,
    facts: &DayFacts,
) -> Result<Vec<LateRow>, ShopError> {
    let first = closings.iter().find(|(_, closed)| closed.day == day && closed.version == 1);
    let Some((_, first)) = first else { return Ok(Vec::new()) };
    let truth = ledger.store().truth();
    let number = day_number(day);
    let late = |fact: &&FactRow| fact.day == number && u64::try_from(fact.n).is_ok_and(|n| n > first.upto);
    let mut facts: Vec<&FactRow> = facts.all().filter(late).collect();
    facts.sort_by_key(|fact| fact.n);
    let mut rows = Vec::new();
    for fact in facts {
        let Some((held, entry)) = entry_of(&truth, fact.n)? else { continue };
        if entry.source == Source::BroughtIn || matches!(entry.fact, Fact::SheetClosed(_)) {
            continue;
        }
        rows.push(late_row(ledger, yard, fact, &held, &entry));
    }
    Ok(rows)
}

/// Entries that are here and dated after the moment of looking, while the day is under way, in the order they came:
/// whoever dated them has a clock that is ahead, or wrote down a day that has not come.
pub(super) fn dated_ahead(ledger: &Ledger, yard: &Yard, facts: &DayFacts) -> Result<Vec<LateRow>, ShopError> {
    if !yard.is_under_way() {
        return Ok(Vec::new());
    }
    let truth = ledger.store().truth();
    // Those of the day itself are read already.
    let beyond = truth.facts_of_days(day_number(yard.day).saturating_add(1), i32::MAX)?;
    let mut facts: Vec<FactRow> = facts.all().copied().chain(beyond).collect();
    facts.retain(|fact| fact.at_ms > yard.now.unix_ms() && fact.judged == Judged::Counts);
    facts.sort_by_key(|fact| fact.n);
    let mut rows = Vec::new();
    for fact in facts {
        if let Some((held, entry)) = entry_of(&truth, fact.n)? {
            rows.push(late_row(ledger, yard, &fact, &held, &entry));
        }
    }
    Ok(rows)
}

fn late_row(ledger: &Ledger, yard: &Yard, fact: &FactRow, held: &HeldEntry, entry: &Entry) -> LateRow {
    LateRow {
        unit: fact.truck.map(|truck| ledger.fleet().door(truck)),
        says: kind_word(fact.kind),
        who: yard.name(ledger, entry.person),
        at: yard.stamp_ms(fact.at_ms),
        came: yard.stamp_ms(held.received_ms),
        came_from: yard.phone(ledger, held.row.actor.key()),
        hours: fact.hours,
    }
}
