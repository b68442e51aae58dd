//! The list before a return to service as it ships, read once from data.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One line: something that is done, or waived by name.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReturnItem {
    /// Its key: "oil-look".
    pub id: String,
    /// The caution shown with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<String>,
}

/// The list. It asks the same of every set: were it cut to what a truck has, a set that came back once would be
/// locked anew when its truck is registered otherwise, or when it is moved.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReturnList {
    /// Its edition; answers carry it.
    pub edition: u32,
    /// What it stands on.
    pub cites: String,
    /// The lines, in the order they are looked at.
    pub lines: Vec<ReturnItem>,
}

/// Why a list cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ReturnListError {
    /// It is not a list's shape.
    #[error("the list before a return to service cannot be read: {0}")]
    Shape(String),
    /// An id stands twice.
    #[error("'{0}' stands twice in the list before a return to service")]
    Twice(String),
    /// It asks nothing, so it would bring everything back.
    #[error("the list before a return to service has no line")]
    Empty,
}

impl ReturnList {
    /// A list from its TOML text.
    ///
    /// # Errors
    /// Another shape, an id twice, no line at all.
    pub fn read(text: &str) -> Result<ReturnList, ReturnListError> {
        let list: ReturnList = toml::from_str(text).map_err(|e| ReturnListError::Shape(e.to_string()))?;
        let mut ids = BTreeSet::new();
        if let Some(twice) = list.lines.iter().find(|line| !ids.insert(line.id.as_str())) {
            return Err(ReturnListError::Twice(twice.id.clone()));
        }
        if list.lines.is_empty() { Err(ReturnListError::Empty) } else { Ok(list) }
    }

    /// The list that ships.
    ///
    /// # Errors
    /// As [`ReturnList::read`].
    pub fn common_practice() -> Result<&'static ReturnList, ReturnListError> {
        static LIST: OnceLock<Result<ReturnList, ReturnListError>> = OnceLock::new();
        LIST.get_or_init(|| ReturnList::read(include_str!("../../data/return_list.toml")))
            .as_ref()
            .map_err(Clone::clone)
    }

    /// A line by its id.
    pub fn line(&self, id: &str) -> Option<&ReturnItem> {
        self.lines.iter().find(|line| line.id == id)
    }
}
