//! One step of a procedure.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::checklist::{NumberAsk, Severity};
use crate::unit::Feature;

/// What it means that a step is not so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OnNotSo {
    /// Wait until it is so.
    Wait,
    /// Do not go on; nothing is locked by it.
    Refuse,
    /// Go on; the record says that it was not so.
    Mark,
    /// Do not drive off until it is done.
    NoDriving,
    /// It locks something, as a defect does.
    #[serde(untagged)]
    Lock(Severity),
}

/// A word for what is not so, and what it means. In data a pair: `["hiss", "wait"]`.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub struct StepStop(
    /// The word's key.
    pub String,
    /// What it means.
    pub OnNotSo,
);

/// One step of a procedure.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Its key: "zero-two-signs".
    pub id: String,
    /// Features, any one of which it needs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub needs: Vec<Feature>,
    /// What may not be so.
    pub stops: Vec<StepStop>,
    /// The figure it may carry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<NumberAsk>,
    /// The caution shown with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<String>,
    /// Seconds the phone counts, on a clock that goes on through sleep.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dwell: Option<u32>,
    /// The dwell is the most it may take, not the least.
    #[serde(default)]
    pub within: bool,
    /// Seconds between two looks while the air is used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub every: Option<u32>,
    /// It names the unit's valves.
    #[serde(default)]
    pub names: bool,
    /// What driving off locks while it was not so; a note where none is said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub driven: Option<Severity>,
    /// From here on the compressor turns, or stands: what stopped before it is no start, and no stop.
    #[serde(default)]
    pub turns: bool,
}

impl Step {
    /// Whether so many seconds keep the step's dwell; `None` when it has none.
    pub fn dwelt(&self, seconds: u32) -> Option<bool> {
        self.dwell.map(|dwell| if self.within { seconds <= dwell } else { seconds >= dwell })
    }

    /// Whether one of its words locks a single outlet, so that it matters which of them it was.
    pub fn is_of_an_outlet(&self) -> bool {
        self.stops.iter().any(|stop| stop.1 == OnNotSo::Lock(Severity::Outlet))
    }

    /// What a word means on this step; `None` for one it does not know.
    pub fn on(&self, word: &str) -> Option<OnNotSo> {
        self.stops.iter().find(|stop| stop.0 == word).map(|stop| stop.1)
    }
}

/// A step of one unit's procedure, with the names it says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PlannedStep<'a> {
    /// The step.
    pub step: &'a Step,
    /// The unit's valves, when the step names them.
    pub names: Vec<&'a str>,
}

const ITEM: &str = "step-";
const WORD: &str = "not-so-";

/// The name under which a step that was not so stands where an item of the checklist does: among defects.
pub fn item_of_step(step: &str) -> String {
    format!("{ITEM}{step}")
}

/// The name under which its word stands there.
pub fn word_of_step(word: &str) -> String {
    format!("{WORD}{word}")
}

/// Whether a defect's item is a step of a procedure.
pub fn is_step_item(item: &str) -> bool {
    item.starts_with(ITEM)
}

/// Whether a defect's word is a step's.
pub fn is_step_word(word: &str) -> bool {
    word.starts_with(WORD)
}
