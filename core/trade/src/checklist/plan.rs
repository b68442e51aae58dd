//! The walk of one unit: the template's stops, less what the unit lacks.

use std::collections::BTreeSet;

use schemars::JsonSchema;
use serde::Serialize;

use super::{EngineState, Item, Line, Repeat, Stop, Template, WalkPlace};
use crate::unit::{Features, HoseTag};

/// The most lines a stop may have: they fill one screen, so that all can be seen before the tap.
pub const MOST_LINES: usize = 8;

/// One stop of one unit's walk.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, JsonSchema)]
pub struct PlannedStop {
    /// The key of the (first) stop of the template.
    pub id: String,
    /// Its number in the template.
    pub number: u8,
    /// 0 for a stop that holds all its lines; 1, 2 ... for what did not fit (15b, 15c).
    pub leaf: u32,
    /// The keys of stops joined to it.
    pub joined: Vec<String>,
    /// Where one stands.
    pub place: WalkPlace,
    /// The state the engine is in.
    pub engine: EngineState,
    /// Chocks are in.
    pub chocks: bool,
    /// Only in the yard.
    pub yard_only: bool,
    /// It has a screen of its own.
    pub own_screen: bool,
    /// Its lines, at least one, at most [`MOST_LINES`].
    pub lines: Vec<Line>,
}

impl PlannedStop {
    /// The number with its letter: "15", "15b". Past "z" the leaf is told in figures: "15-27".
    pub fn label(&self) -> String {
        match (self.leaf, u8::try_from(self.leaf).ok().and_then(|leaf| leaf.checked_add(b'a'))) {
            (0, _) => self.number.to_string(),
            (_, Some(letter)) if letter.is_ascii_lowercase() => {
                format!("{}{}", self.number, char::from(letter))
            }
            (leaf, _) => format!("{}-{}", self.number, leaf.saturating_add(1)),
        }
    }

    fn takes(&self, next: &PlannedStop) -> bool {
        // A stop that was cut in leaves keeps them: 15b means the same on paper and on the phone.
        let whole = |stop: &PlannedStop| stop.leaf == 0 && !stop.own_screen;
        whole(self)
            && whole(next)
            && self.place == next.place
            && self.engine == next.engine
            && self.chocks == next.chocks
            && self.yard_only == next.yard_only
            && self.lines.len() + next.lines.len() <= MOST_LINES
    }
}

/// The walk of a unit: lines it lacks dropped, valves, reels and hoses by their names, small
/// neighbours of one place and engine state joined, and no stop above [`MOST_LINES`] lines.
pub fn plan(template: &Template, features: &Features) -> Vec<PlannedStop> {
    planned(template, features, |_| true)
}

/// The second driver's short walk of a unit, on the first one's record: the sides, the glass, the brakes held.
pub fn plan_second_driver(template: &Template, features: &Features) -> Vec<PlannedStop> {
    planned(template, features, |stop| stop.second_driver)
}

fn planned(template: &Template, features: &Features, walked: fn(&Stop) -> bool) -> Vec<PlannedStop> {
    let mut walk: Vec<PlannedStop> = Vec::new();
    for stop in template.stops.iter().filter(|stop| walked(stop) && features.meets(&stop.needs)) {
        let lines: Vec<Line> = stop.lines.iter().flat_map(|line| asked(template, features, line)).collect();
        for (leaf, lines) in (0u32..).zip(lines.chunks(MOST_LINES)) {
            let next = leaf_of(stop, leaf, lines);
            match walk.last_mut().filter(|last| last.takes(&next)) {
                Some(last) => {
                    last.joined.push(next.id);
                    last.lines.extend(next.lines);
                }
                None => walk.push(next),
            }
        }
    }
    walk
}

fn leaf_of(stop: &Stop, leaf: u32, lines: &[Line]) -> PlannedStop {
    PlannedStop {
        id: stop.id.clone(),
        number: stop.number,
        leaf,
        joined: Vec::new(),
        place: stop.place,
        engine: stop.engine,
        chocks: stop.chocks,
        yard_only: stop.yard_only,
        own_screen: stop.own_screen,
        lines: lines.to_vec(),
    }
}

/// What a line of the template asks of this unit: nothing, itself, or itself once for each name.
fn asked(template: &Template, features: &Features, line: &Line) -> Vec<Line> {
    let Some(item) = template.item(&line.item).filter(|item| features.meets(&item.needs)) else {
        return Vec::new();
    };
    let names = names(item, features);
    if names.is_empty() {
        // A unit whose valves nobody has named yet is still asked for them, once, without a name.
        return vec![line.clone()];
    }
    names.into_iter().map(|name| line.named(name)).collect()
}

/// The names an item is repeated for. A blank one is no name, and one that stands twice is asked
/// once: two lines that read the same could not be told apart in the record.
fn names<'a>(item: &Item, features: &'a Features) -> Vec<&'a str> {
    let tag = |hose: &'a HoseTag| hose.tag.as_str();
    let all: Vec<&str> = match item.repeat {
        Some(Repeat::Valves) => features.valves.iter().map(String::as_str).collect(),
        Some(Repeat::Reels) => features.reels.iter().map(String::as_str).collect(),
        Some(Repeat::Hoses) => features.hoses.iter().map(tag).collect(),
        None => Vec::new(),
    };
    let mut seen = BTreeSet::new();
    all.into_iter().filter(|name| !name.trim().is_empty() && seen.insert(*name)).collect()
}
