//! What was recorded on the sheet's day and the day before, read once for all units.

use std::collections::BTreeMap;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::FactRow;
use sumpbook_trade::{Entry, FactKind, TruckId};

use super::Yard;
use super::unit_day::day_number;
use crate::ShopError;

/// Kinds of which the sheet tells more than their columns say.
const READ: [FactKind; 5] =
    [FactKind::StartAir, FactKind::Drive, FactKind::TopUp, FactKind::HourReading, FactKind::Happened];

/// A fact, and its entry when the sheet reads it.
pub(super) struct DayFact {
    pub(super) fact: FactRow,
    pub(super) entry: Option<Entry>,
}

/// Facts of two days by unit, those of no unit too; each unit's in the order of their times.
pub(super) struct DayFacts(BTreeMap<Option<TruckId>, Vec<DayFact>>);

impl DayFacts {
    pub(super) fn read(ledger: &Ledger, yard: &Yard) -> Result<DayFacts, ShopError> {
        let day = day_number(yard.day);
        let kinds: Vec<u16> = READ.iter().filter_map(|kind| kind.code()).collect();
        let mut facts: BTreeMap<_, Vec<DayFact>> = BTreeMap::new();
        for (fact, payload) in ledger.store().truth().told_on_days(day.saturating_sub(1), day, &kinds)? {
            let entry = payload.and_then(|payload| Entry::from_payload(&payload).ok());
            facts.entry(fact.truck).or_default().push(DayFact { fact, entry });
        }
        Ok(DayFacts(facts))
    }

    /// Of one unit.
    pub(super) fn of(&self, truck: TruckId) -> &[DayFact] {
        self.0.get(&Some(truck)).map_or(&[], Vec::as_slice)
    }

    /// Of every unit and of the fleet.
    pub(super) fn all(&self) -> impl Iterator<Item = &FactRow> {
        self.0.values().flatten().map(|told| &told.fact)
    }
}
