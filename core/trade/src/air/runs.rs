//! Runs too short to boil the water off.

use chrono::{DateTime, FixedOffset, TimeDelta};
use serde::{Deserialize, Serialize};

/// The runs of a unit, by length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RunShare {
    /// How many runs with a start and a stop.
    pub runs: u32,
    /// How many of them were shorter than 15 minutes and never warm.
    pub short: u32,
}

impl RunShare {
    /// Short ones of a hundred, to the nearest; `None` of no runs.
    pub fn percent(self) -> Option<u32> {
        (self.runs > 0).then(|| (200 * self.short + self.runs) / (2 * self.runs))
    }

    /// Half of them or more, of at least four: run it warm once a day. Common practice, no source.
    pub fn asks_to_run_warm(self) -> bool {
        self.runs >= 4 && self.short * 2 >= self.runs
    }
}

/// A run shorter than this boils nothing off. Common practice, no source.
const SHORT: TimeDelta = TimeDelta::minutes(15);

/// Counts runs, each with its start, its stop and whether the oil was seen warm in it (`None`: nobody looked,
/// which is not warm).
pub fn short_runs(runs: &[(DateTime<FixedOffset>, DateTime<FixedOffset>, Option<bool>)]) -> RunShare {
    let of = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let short = runs.iter().filter(|(from, to, warm)| *to - *from < SHORT && *warm != Some(true)).count();
    RunShare { runs: of(runs.len()), short: of(short) }
}
