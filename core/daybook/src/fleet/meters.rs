//! When a truck's compressor had an hour meter: what its hours were counted by then (R14).

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::TruckRegistered;
use sumpbook_trade::{Entry, EntryId, Feature, TruckId};

use super::Fleet;

/// Whether there was an hour meter from a moment on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MeterFrom {
    /// That moment, milliseconds.
    pub from_ms: i64,
    /// The registration that says so.
    pub entry: EntryId,
    /// Whether there was one.
    pub has: bool,
}

impl Fleet {
    /// Keeps when a meter came or went. Of a truck that was never without one nothing is kept.
    pub(super) fn keep_meter(&mut self, entry: &Entry, truck: &TruckRegistered) {
        let has = truck.features.has(Feature::HourMeter);
        let before = self.trucks.get(&truck.truck);
        let Some(had) = before.map(|known| known.features.has(Feature::HourMeter)) else {
            if !has {
                self.meters.insert(truck.truck, vec![MeterFrom { from_ms: i64::MIN, entry: entry.id, has }]);
            }
            return;
        };
        if had == has {
            return;
        }
        let first = MeterFrom { from_ms: i64::MIN, entry: entry.id, has: had };
        let known = self.meters.entry(truck.truck).or_insert_with(|| vec![first]);
        known.push(MeterFrom { from_ms: entry.at.unix_ms(), entry: entry.id, has });
        known.sort_by_key(|from| from.from_ms);
    }

    /// Whether a truck's compressor had an hour meter at a moment, milliseconds. What the first registration says holds
    /// for all time before it; a truck nobody registered is taken to have one.
    pub fn had_meter(&self, truck: TruckId, at_ms: i64) -> bool {
        let known = self.meters.get(&truck).map(Vec::as_slice).unwrap_or_default();
        known.iter().rev().find(|from| from.from_ms <= at_ms).is_none_or(|from| from.has)
    }
}
