//! Hours of a unit without a meter, counted from its starts and stops (R14).
//!
//! A missing stop runs to the next start, stop, pre-trip or end-of-day report, else to now; a missing start
//! runs back to the mark or the figure before. What is sure counts into the low figure, what may be into the high one, and
//! the due list takes the high one.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::clock::FineHours;
use crate::quantity::Tenths;

/// What a record tells of running.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    /// The compressor was stopped.
    Stop,
    /// A pre-trip or an end-of-day report was signed: a unit is not left running through either.
    Report,
    /// The compressor was started.
    Start,
}

/// A moment that bounds a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// The entry.
    pub entry: Uuid,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// What it tells.
    pub kind: MarkKind,
}

/// What is not sure of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RunEnds {
    /// Start and stop are both recorded.
    Both,
    /// Its stop is missing.
    NoStop,
    /// Its start is missing.
    NoStart,
    /// It was started and nothing is recorded since.
    StillOpen,
}

/// One run, or the time in which one may have been.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CountedRun {
    /// From here at the earliest.
    pub from: DateTime<FixedOffset>,
    /// To here at the latest.
    pub to: DateTime<FixedOffset>,
    /// What is recorded of it.
    pub ends: RunEnds,
}

/// Counted hours between two bounds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Counted {
    /// At least.
    pub low: FineHours,
    /// At most: the one the due list goes by.
    pub high: FineHours,
    /// The runs, oldest first.
    pub runs: Vec<CountedRun>,
}

/// Counts on from `base` hours, which were known at `since`; marks in any order, those after `now` left out.
///
/// Of what was recorded by `since` only the last matters: whether the compressor was running then. A stop without a
/// start runs back to `since` at most, for what ran before is in `base`.
pub fn counted(
    base: Tenths,
    since: DateTime<FixedOffset>,
    marks: &[Mark],
    now: DateTime<FixedOffset>,
) -> Counted {
    let mut marks: Vec<&Mark> = marks.iter().filter(|mark| mark.at <= now).collect();
    marks.sort_by_key(|mark| (mark.at, mark.kind, mark.entry));
    let (known, marks) = marks.split_at(marks.partition_point(|mark| mark.at <= since));
    let mut sum = Counted { low: base.into(), high: base.into(), runs: Vec::new() };
    let mut started = known.last().is_some_and(|mark| mark.kind == MarkKind::Start);
    let mut before = since;
    for mark in marks {
        match mark.kind {
            MarkKind::Stop if started => sum.add(before, mark.at, RunEnds::Both),
            MarkKind::Stop => sum.add(before, mark.at, RunEnds::NoStart),
            _ if started => sum.add(before, mark.at, RunEnds::NoStop),
            _ => {}
        }
        (before, started) = (mark.at, mark.kind == MarkKind::Start);
    }
    if started {
        sum.add(before, now, RunEnds::StillOpen);
    }
    sum
}

/// Milliseconds in a ten-thousandth of an hour.
const FINE_MS: i64 = 360;

impl Counted {
    fn add(&mut self, from: DateTime<FixedOffset>, to: DateTime<FixedOffset>, ends: RunEnds) {
        let ms = to.signed_duration_since(from).num_milliseconds().max(0);
        if ends == RunEnds::Both {
            self.low = self.low + FineHours(ms / FINE_MS);
        }
        self.high = self.high + FineHours((ms + FINE_MS - 1) / FINE_MS);
        self.runs.push(CountedRun { from, to, ends });
    }

    /// The high figure as the due list shows it: rounded up to the tenth (R14).
    pub fn for_due(&self) -> Tenths {
        self.high.tenths_up()
    }

    /// The low figure as it is shown: rounded down to the tenth.
    pub fn at_least(&self) -> Tenths {
        self.low.tenths_down()
    }
}
