//! The form of an entry for a command line and for scripts: one JSON object on one line, with a unit by
//! its door number and people by their names.

mod answer;
mod error;
mod read;
mod resolve;
mod return_lines;
mod schema;
mod seen;
mod steps;
mod told;
mod used;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use sumpbook_trade::record::Source;
use sumpbook_trade::{EntryId, Fact, Stamp, Tenths};

pub use answer::{AnswerError, with_severity};
pub use error::LineError;
pub use resolve::Writer;
pub use return_lines::{ReturnLineError, check_return};
pub use schema::schema;
pub use seen::NotSeen;
pub use steps::{StepsError, fact_of_steps};
pub use used::fact_of_use;

/// One entry as a line of JSON. What it records stands in `kind` and `body`, the rest in common fields.
///
/// `{"unit":"TH-01","person":"Amos Tillery","kind":"site-condition","body":{"dust":"dusty"}}`
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(title = "An entry", extend("unevaluatedProperties" = false))]
pub struct Line {
    /// Door number of the unit it is about, such as `TH-01`; left out for matters of the whole fleet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// Name of whoever says it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub person: Option<String>,
    /// Name of the trainer, while the person is learning.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub with: Option<String>,
    /// When. Only for what did not come from a phone, or in an invented fleet: a phone's clock dates its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Stamp>,
    /// Compressor hours as read for this entry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<Tenths>,
    /// Words added.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// How it came to be written down; a phone when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub source: Option<Source>,
    /// Whether the person's own PIN was given.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub pin_given: bool,
    /// Whether the trainer's own PIN was given too.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub trainer_pin_given: bool,
    /// The entry's own id, for a line that is given again after a doubtful end.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub id: Option<EntryId>,
    /// What is recorded: `kind` and `body`.
    #[serde(flatten)]
    pub fact: Fact,
}

#[cfg(test)]
mod tests;
