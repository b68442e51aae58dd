//! The figure a line may carry.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::limit::Measure;

/// How a figure comes to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HowGiven {
    /// The stop is not done without it.
    Asked,
    /// One tap among a few figures.
    Chosen,
    /// Two taps, and the time between them.
    Timed,
    /// Behind the line, for whoever wants to give it.
    Offered,
    /// The phone knows it; nobody gives it.
    Known,
}

/// What figure is wanted, how, and what it is held against.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NumberAsk {
    /// What it is given in unless the reader's units are others.
    pub unit: Measure,
    /// How it comes to be.
    pub how: HowGiven,
    /// The topic of the limit it is held against; none when the maker or the placard says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<String>,
}
