//! A laboratory's answer belongs to the fill its sample was drawn from, however late it comes.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::fill::Fill;
use crate::quantity::Tenths;

/// A sample that was drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SampleDrawn {
    /// The sample's entry.
    pub entry: Uuid,
    /// When it was drawn.
    pub at: DateTime<FixedOffset>,
    /// Running hours of the unit then, where they are known.
    pub hours: Option<Tenths>,
}

/// Where an answer belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Filed {
    /// The fill's place, the oldest being 0.
    pub fill: usize,
    /// Hours on the oil when the sample was drawn; `None` when the fill's or the unit's are not known.
    pub hours_on_oil: Option<Tenths>,
    /// The oil was changed since: the answer is not about what is in it now.
    pub changed_since: bool,
}

/// Files the answer to `sample` with the fill that was in when it was drawn; `fills` oldest first. `None` when
/// records begin after it.
pub fn file_answer(sample: &SampleDrawn, fills: &[Fill]) -> Option<Filed> {
    let was_in = |fill: &Fill| fill.begun.is_none_or(|begun| begun.at <= sample.at);
    let fill = fills.iter().rposition(was_in)?;
    let begun = fills.get(fill)?.begun;
    Some(Filed {
        fill,
        hours_on_oil: begun.zip(sample.hours).map(|(begun, hours)| hours - begun.hours),
        changed_since: fill + 1 < fills.len(),
    })
}
