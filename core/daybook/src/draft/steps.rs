//! A procedure under way: each step is kept as it is confirmed, for the compressor may turn already when the program
//! is killed.

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::StepDone;
use sumpbook_trade::{EntryId, PersonId, Stamp, TruckId};

/// A procedure under way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct StepsDraft {
    /// The id its entry will have.
    pub id: EntryId,
    /// The unit.
    pub unit: TruckId,
    /// Who does it.
    pub person: PersonId,
    /// Since when.
    pub begun: Stamp,
    /// The procedure's id.
    pub procedure: String,
    /// Steps said so far, in order.
    pub steps: Vec<StepDone>,
    /// Why it was begun although the air is locked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_spite_of_lock: Option<String>,
}

impl StepsDraft {
    /// A procedure of which nothing is said yet.
    pub fn begin(
        id: EntryId,
        unit: TruckId,
        person: PersonId,
        procedure: String,
        begun: Stamp,
    ) -> StepsDraft {
        StepsDraft { id, unit, person, begun, procedure, steps: Vec::new(), in_spite_of_lock: None }
    }

    /// Says a step: it was so, or it was not.
    pub fn say(&mut self, step: StepDone) {
        self.steps.push(step);
    }
}
