//! The rules as they ship, read once from data.

use std::borrow::Cow;
use std::sync::OnceLock;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Bound, Rule};

/// The rule whose figure is a number of R11 too.
const GLASS_MIDDLE: &str = "glass-middle";

/// Whose rules: where they hold, and in which edition they were read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct RuleSet {
    /// Its key: "us-federal".
    pub id: String,
    /// Where it holds.
    pub place: String,
    /// The edition the figures come from.
    pub edition: String,
}

/// Every rule, the first of a topic being the one used until a shop names another set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Rules {
    /// The edition of this table.
    pub edition: u32,
    /// Whose rules they are.
    pub sets: Vec<RuleSet>,
    /// The rules.
    pub rules: Vec<Rule>,
}

/// Why a table of rules cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RulesError {
    /// It is not the table's shape.
    #[error("the table of limits cannot be read: {0}")]
    Shape(String),
    /// A rule names a set that is not listed.
    #[error("'{topic}' names the rule set '{set}', which is not listed")]
    NoSuchSet {
        /// The rule's topic.
        topic: String,
        /// The set it names.
        set: String,
    },
}

impl Rules {
    /// A table from its TOML text.
    pub fn read(text: &str) -> Result<Rules, RulesError> {
        let rules: Rules = toml::from_str(text).map_err(|e| RulesError::Shape(e.to_string()))?;
        match rules.rules.iter().find(|rule| rules.set(&rule.set).is_none()) {
            Some(rule) => Err(RulesError::NoSuchSet { topic: rule.topic.clone(), set: rule.set.clone() }),
            None => Ok(rules),
        }
    }

    /// The table that ships.
    pub fn common_practice() -> Result<&'static Rules, RulesError> {
        static RULES: OnceLock<Result<Rules, RulesError>> = OnceLock::new();
        RULES
            .get_or_init(|| Rules::read(include_str!("../../data/limits.toml")))
            .as_ref()
            .map_err(Clone::clone)
    }

    /// The same table with the shop's own middle of the glass, percent; it then says whose figure that is.
    pub fn with_middle(&'static self, low: u32, high: u32) -> Cow<'static, Rules> {
        let (low, high) = (f64::from(low), f64::from(high));
        let ships = |rule: &Rule| rule.topic == GLASS_MIDDLE && rule.bound != Bound::Band(low, high);
        if !self.rules.iter().any(ships) {
            return Cow::Borrowed(self);
        }
        let mut own = self.clone();
        for rule in own.rules.iter_mut().filter(|rule| rule.topic == GLASS_MIDDLE) {
            rule.bound = Bound::Band(low, high);
            "the shop's own number".clone_into(&mut rule.cites);
        }
        Cow::Owned(own)
    }

    /// A set by its id.
    pub fn set(&self, id: &str) -> Option<&RuleSet> {
        self.sets.iter().find(|set| set.id == id)
    }

    /// The rule on a topic: of the shop's set if that has one, else the topic's first.
    pub fn on(&self, topic: &str, set: Option<&str>) -> Option<&Rule> {
        let mut on_topic = self.rules.iter().filter(|rule| rule.topic == topic);
        let first = on_topic.clone().next();
        on_topic.find(|rule| Some(rule.set.as_str()) == set).or(first)
    }
}
