//! How many of a unit's runs are too short to boil the water off.

use chrono::{DateTime, FixedOffset, TimeDelta};
use serde::{Deserialize, Serialize};
use sumpbook_trade::air::short_runs;
use sumpbook_trade::{FactKind, Stamp, TruckId};

use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError};

/// Days back that are looked at. Common practice, no source.
const DAYS: i64 = 60;
/// Starts and stops looked through, newest first.
const MOST: i64 = 400;

/// Runs of the last 60 days.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ShortRuns {
    /// Runs with a start and a stop.
    pub runs: u32,
    /// Of them under 15 minutes.
    pub short: u32,
    /// Short ones of a hundred, to the nearest.
    pub percent: u32,
    /// Half or more, of at least four.
    pub run_it_warm: bool,
}

/// None when no whole run is on record.
pub(super) fn of_unit(ledger: &Ledger, truck: TruckId, now: Stamp) -> Result<Option<ShortRuns>, LedgerError> {
    let since = now.moment() - TimeDelta::days(DAYS);
    let mut marks: Vec<(DateTime<FixedOffset>, bool)> = Vec::new();
    for (kind, starts) in [(FactKind::StartAir, true), (FactKind::StopAir, false)] {
        for fact in ledger.newest_air_facts(truck, kind, MOST)? {
            let at = DateTime::from_timestamp_millis(fact.at_ms).map(|at| at.fixed_offset());
            marks.extend(
                at.filter(|at| fact.judged == Judged::Counts && *at >= since && *at <= now.moment())
                    .map(|at| (at, starts)),
            );
        }
    }
    marks.sort();
    // Nobody is asked whether the oil was warm: a short run counts as cold.
    let runs: Vec<_> = marks
        .windows(2)
        .filter_map(|pair| match pair {
            [(from, true), (to, false)] => Some((*from, *to, None)),
            _ => None,
        })
        .collect();
    let share = short_runs(&runs);
    Ok(share.percent().map(|percent| ShortRuns {
        runs: share.runs,
        short: share.short,
        percent,
        run_it_warm: share.asks_to_run_warm(),
    }))
}
