//! One thing looked at.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{NumberAsk, Part, Severity, Side};
use crate::unit::Feature;

/// A word for what is wrong, and what it locks. In data a pair: `["cracked", "road"]`.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub struct Defect(
    /// The word's key.
    pub String,
    /// What it locks.
    pub Severity,
);

/// The same word again within so many days locks more than it did the first time.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Again {
    /// The word's key.
    pub word: String,
    /// Days between the first and the second, counted back from the second.
    pub days: u16,
    /// What the second locks.
    pub severity: Severity,
}

/// What of the unit an item is repeated for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Repeat {
    /// Each service valve.
    Valves,
    /// Each hose reel.
    Reels,
    /// Each hose.
    Hoses,
}

/// One thing looked at.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Item {
    /// Its key: "wipers". Records name it, so it never changes its meaning.
    pub id: String,
    /// The part of the driver's report it answers for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub part: Option<Part>,
    /// Features, any one of which switches it on; none = every unit.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub needs: Vec<Feature>,
    /// Where on the unit it is looked at, when in more than one place.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub places: Vec<Side>,
    /// The sides a defect may be given, when one look covers both.
    #[serde(default, rename = "where", skip_serializing_if = "Vec::is_empty")]
    pub sides: Vec<Side>,
    /// What of the unit it is repeated for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub repeat: Option<Repeat>,
    /// The words for what may be wrong, in the order they are offered.
    pub defects: Vec<Defect>,
    /// A word that locks more when it comes again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub again: Option<Again>,
    /// The figure it may carry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<NumberAsk>,
    /// The caution shown with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<String>,
    /// The citation it stands on.
    pub cites: String,
}

impl Item {
    /// The word offered on every item, for what no other word says.
    pub const OTHER: &'static str = "other";

    /// What a word locks on this item: its own severity; of "other" the worst this item has, since
    /// nobody but the shop can say that it is less. `None` for a word the item does not offer.
    pub fn severity(&self, word: &str) -> Option<Severity> {
        if word == Item::OTHER {
            return Some(self.worst());
        }
        self.defects.iter().find(|defect| defect.0 == word).map(|defect| defect.1)
    }

    /// What a word locks on its second time within days: coolant low twice in 7 days keeps the truck off the road.
    /// `None` for a word that is not asked about again.
    pub fn severity_again(&self, word: &str) -> Option<Severity> {
        let again = self.again.as_ref().filter(|again| again.word == word)?;
        Some(self.severity(word)?.and(again.severity))
    }

    /// Whether it is looked at on each of several outlets, so that one of them can be locked by itself.
    pub fn is_of_an_outlet(&self) -> bool {
        self.repeat.is_some() || self.defects.iter().any(|defect| defect.1 == Severity::Outlet)
    }

    /// The worst that any one of its words locks.
    pub fn worst(&self) -> Severity {
        self.defects.iter().map(|defect| defect.1).min().unwrap_or(Severity::Note)
    }
}
