//! How much an hour counts, by dust and by day.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::record::SiteDust;

/// Weights the shop set on a day of the yard.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WeightSet {
    /// From this day of the yard on.
    pub from: NaiveDate,
    /// Hundredths for each dust; one that is not named counts 100.
    pub hundredths: Vec<(SiteDust, u32)>,
}

/// All weights ever set, oldest first.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Weights(Vec<WeightSet>);

/// An hour that counts as one hour.
const PLAIN: u32 = 100;

impl Weights {
    /// From the sets in the order they were written; of two for one day the later one stands.
    pub fn of(sets: impl IntoIterator<Item = WeightSet>) -> Weights {
        let mut all: Vec<WeightSet> = Vec::new();
        for set in sets {
            all.retain(|known| known.from != set.from);
            all.push(set);
        }
        all.sort_by_key(|set| set.from);
        Weights(all)
    }

    /// Hundredths an hour counts on `day` in `dust`. Before anything was set each hour counts once: what the
    /// shop sets today changes no hour of yesterday.
    pub fn on(&self, day: NaiveDate, dust: SiteDust) -> u32 {
        let set = self.0.iter().rev().find(|set| set.from <= day);
        let weight = set.and_then(|set| set.hundredths.iter().find(|(of, _)| *of == dust));
        weight.map_or(PLAIN, |(_, hundredths)| *hundredths)
    }
}
