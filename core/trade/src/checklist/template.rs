//! A checklist as data, and whether it hangs together.

use std::collections::BTreeSet;
use std::sync::{Arc, OnceLock};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Item, Line, Part, Stop, WalkPlace};

/// Where an item is written, and in which edition it was read.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Citation {
    /// Its key: "cfr-393-75".
    pub id: String,
    /// The place in the text.
    pub text: String,
    /// The edition.
    pub edition: String,
}

/// A checklist: its items, and the stops they are walked in.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Template {
    /// Its key: "pre-trip".
    pub template: String,
    /// Its edition; printed pages carry it, so that old pads are seen.
    pub edition: u32,
    /// Everything that may be looked at.
    pub items: Vec<Item>,
    /// Items answered with the review of the last report, before the first stop.
    pub before_the_walk: Vec<String>,
    /// The stops, in walking order.
    pub stops: Vec<Stop>,
    /// What the items stand on.
    pub citations: Vec<Citation>,
}

/// Why a checklist cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TemplateError {
    /// It is not a checklist's shape.
    #[error("the checklist cannot be read: {0}")]
    Shape(String),
    /// An id stands twice.
    #[error("'{0}' stands twice in the checklist")]
    Twice(String),
    /// A stop has a line of no item, or at a side the item does not have.
    #[error("the stop '{stop}' has the line '{line}', which no item answers")]
    NoSuchLine {
        /// The stop's id.
        stop: String,
        /// The line.
        line: String,
    },
    /// An item, or one side of it, is in no stop.
    #[error("'{0}' is in no stop of the checklist")]
    InNoStop(String),
    /// An item locks more on a word's second time, but does not offer the word.
    #[error("'{item}' does not offer the word '{word}' that it asks about again")]
    NoSuchWord {
        /// The item's id.
        item: String,
        /// The word.
        word: String,
    },
    /// An item stands on a citation that is not listed.
    #[error("'{item}' stands on '{cites}', which is not listed")]
    NoSuchCitation {
        /// The item's id.
        item: String,
        /// The citation it names.
        cites: String,
    },
}

impl Template {
    /// A checklist from its TOML text, refused unless it hangs together.
    pub fn read(text: &str) -> Result<Template, TemplateError> {
        let template: Template = toml::from_str(text).map_err(|e| TemplateError::Shape(e.to_string()))?;
        template.check()?;
        Ok(template)
    }

    /// The checklist that ships: common practice, until a shop makes it its own.
    pub fn common_practice() -> Result<&'static Arc<Template>, TemplateError> {
        static TEMPLATE: OnceLock<Result<Arc<Template>, TemplateError>> = OnceLock::new();
        TEMPLATE
            .get_or_init(|| Template::read(include_str!("../../data/checklist.toml")).map(Arc::new))
            .as_ref()
            .map_err(Clone::clone)
    }

    /// An item by its id.
    pub fn item(&self, id: &str) -> Option<&Item> {
        self.items.iter().find(|item| item.id == id)
    }

    /// Whether an item is looked at on the compressor set, its display or its outlets, and not on the truck.
    pub fn is_of_set(&self, id: &str) -> bool {
        let of_set = |place| matches!(place, WalkPlace::Compressor | WalkPlace::Panel | WalkPlace::Outlets);
        let stops = self.stops.iter().filter(|stop| of_set(stop.place));
        stops.flat_map(|stop| &stop.lines).any(|line| line.item == id)
    }

    /// A citation by its id.
    pub fn citation(&self, id: &str) -> Option<&Citation> {
        self.citations.iter().find(|citation| citation.id == id)
    }

    /// The items that answer for a part of the driver's report.
    pub fn of_part(&self, part: Part) -> impl Iterator<Item = &Item> {
        self.items.iter().filter(move |item| item.part == Some(part))
    }

    /// Whether it hangs together: no id twice, every line of an item, every item at every side of
    /// it in exactly one stop, every citation listed. A shop's own edit is held to the same.
    pub fn check(&self) -> Result<(), TemplateError> {
        once(self.items.iter().map(|item| &item.id))?;
        once(self.stops.iter().map(|stop| &stop.id))?;
        once(self.citations.iter().map(|citation| &citation.id))?;
        let mut walked: BTreeSet<String> = BTreeSet::new();
        for id in &self.before_the_walk {
            walked.insert(self.known("before-the-walk", &Line::of(id))?);
        }
        for stop in &self.stops {
            for line in &stop.lines {
                let key = self.known(&stop.id, line)?;
                if !walked.insert(key.clone()) {
                    return Err(TemplateError::Twice(key));
                }
            }
        }
        for item in &self.items {
            if self.citation(&item.cites).is_none() {
                return Err(TemplateError::NoSuchCitation {
                    item: item.id.clone(),
                    cites: item.cites.clone(),
                });
            }
            if let Some(again) = item.again.as_ref().filter(|again| item.severity(&again.word).is_none()) {
                return Err(TemplateError::NoSuchWord { item: item.id.clone(), word: again.word.clone() });
            }
            if let Some(missed) = lines_of(item).map(|l| l.to_string()).find(|key| !walked.contains(key)) {
                return Err(TemplateError::InNoStop(missed));
            }
        }
        Ok(())
    }

    fn known(&self, stop: &str, line: &Line) -> Result<String, TemplateError> {
        let item = self.item(&line.item);
        match item.filter(|item| lines_of(item).any(|own| own == *line)) {
            Some(_) => Ok(line.to_string()),
            None => Err(TemplateError::NoSuchLine { stop: stop.into(), line: line.to_string() }),
        }
    }
}

/// The lines an item has: one, or one for each side.
fn lines_of(item: &Item) -> impl Iterator<Item = Line> + '_ {
    let single = item.places.is_empty().then(|| Line::of(&item.id));
    single.into_iter().chain(item.places.iter().map(|side| Line { side: Some(*side), ..Line::of(&item.id) }))
}

fn once<'a>(ids: impl Iterator<Item = &'a String>) -> Result<(), TemplateError> {
    let mut seen = BTreeSet::new();
    for id in ids {
        if !seen.insert(id) {
            return Err(TemplateError::Twice(id.clone()));
        }
    }
    Ok(())
}
