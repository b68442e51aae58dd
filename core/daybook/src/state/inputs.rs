//! Reading what a fold needs out of the store.

use sumpbook_trade::{Entry, FactKind, TruckId};

use crate::judgement::Judged;
use crate::ledger::LedgerError;
use crate::store::{FactRow, HeldEntry, Truth};

/// An entry that counts, with its projection.
#[derive(Clone, Debug)]
pub(super) struct Bearing {
    /// Its columns.
    pub(super) fact: FactRow,
    /// The entry.
    pub(super) entry: Entry,
}

/// Everything of a unit that bears on its state and counts, in the order of times; of one moment by id.
pub(super) fn bearing(truth: &Truth<'_>, truck: TruckId, upto_ms: i64) -> Result<Vec<Bearing>, LedgerError> {
    let mut found = Vec::new();
    for fact in truth.bearing_facts(truck, upto_ms)? {
        // A defect once told stays a defect until it is certified, even when its entry is void, or when
        // another content came under its id: merging never hides a defect.
        let told = matches!(fact.judged, Judged::Void | Judged::TwoContents) && is_inspection(&fact);
        if (fact.judged == Judged::Counts || told)
            && let Some(entry) = read(truth, fact.n)?
        {
            found.push(Bearing { fact, entry });
        }
    }
    found.sort_by_key(|bearing| (bearing.fact.at_ms, bearing.fact.id));
    Ok(found)
}

/// Entries of one kind that count and do not bear by themselves, in the order of times; of one moment by id.
pub(super) fn of_kind(
    truth: &Truth<'_>,
    truck: TruckId,
    kind: FactKind,
    upto_ms: i64,
) -> Result<Vec<Bearing>, LedgerError> {
    let mut found = Vec::new();
    for fact in truth.facts_of_kind(truck, kind.code().unwrap_or(0), upto_ms)? {
        if fact.judged == Judged::Counts
            && !fact.bears
            && let Some(entry) = read(truth, fact.n)?
        {
            found.push(Bearing { fact, entry });
        }
    }
    found.sort_by_key(|bearing| (bearing.fact.at_ms, bearing.fact.id));
    Ok(found)
}

/// Pre-trip sections of the days on which something was found: their OK answers stand beside a defect.
pub(super) fn sections_beside(
    truth: &Truth<'_>,
    truck: TruckId,
    days: &std::collections::BTreeSet<i32>,
    upto_ms: i64,
) -> Result<Vec<Bearing>, LedgerError> {
    let code = FactKind::PreTripSection.code().unwrap_or(0);
    let mut found = Vec::new();
    for day in days {
        for fact in truth.facts_of_unit_days(truck, *day, *day)? {
            if fact.kind == code
                && fact.judged == Judged::Counts
                && !fact.bears
                && fact.at_ms <= upto_ms
                && let Some(entry) = read(truth, fact.n)?
            {
                found.push(Bearing { fact, entry });
            }
        }
    }
    Ok(found)
}

pub(super) fn read(truth: &Truth<'_>, n: i64) -> Result<Option<Entry>, LedgerError> {
    let held: Option<HeldEntry> = truth.entry(n)?;
    Ok(held.and_then(|held| Entry::from_payload(&held.row.payload).ok()))
}

fn is_inspection(fact: &FactRow) -> bool {
    [FactKind::PreTripSection, FactKind::EndOfDay].iter().any(|kind| kind.code() == Some(fact.kind))
}
