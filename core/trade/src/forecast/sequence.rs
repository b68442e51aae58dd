//! When the calendar feed counts up: an item is new again only when its answer is another.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::runs_out::RunsOut;
use crate::clock::Standing;

/// What one item of the feed says of a task.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FeedAnswer {
    /// How the task stands.
    pub standing: Standing,
    /// The last good day by the calendar.
    pub last_good_day: Option<NaiveDate>,
    /// When its hours run out.
    pub runs_out: Option<RunsOut>,
    /// The day it is planned for.
    pub planned: Option<NaiveDate>,
}

/// The item's SEQUENCE (RFC 5545, 3.8.7.4): 0 when it is first told, one more whenever the answer is another
/// than the one told last, and the same as long as it is not: a calendar then shows nothing as changed.
pub fn next_sequence(told: Option<(u32, &FeedAnswer)>, answer: &FeedAnswer) -> u32 {
    match told {
        None => 0,
        Some((sequence, before)) if before == answer => sequence,
        Some((sequence, _)) => sequence.saturating_add(1),
    }
}
