//! What an entry finds without anybody answering a line of a walk: a step, a pour, a level, a look, a drain.

use chrono::TimeDelta;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::defect::{Finding, LockPart};
use sumpbook_trade::fluid::{Fluid, Fluids, Mix, Oil};
use sumpbook_trade::procedure::{OnNotSo, Procedures, item_of_step, word_of_step};
use sumpbook_trade::record::{Glass, OilLook, Source, StepDone, WaterAmount, WaterFrom};
use sumpbook_trade::{Entry, Fact};
use uuid::Uuid;

use super::defects::locks;
use super::inputs::Bearing;
use crate::fleet::Fleet;

/// What one entry finds, whatever else is recorded.
pub(super) fn by_itself(fleet: &Fleet, entry: &Entry) -> Vec<Finding> {
    let mut found: Vec<Finding> = of_steps(fleet, entry);
    found.extend(of_blow_down(entry));
    found.extend(of_pour(fleet, entry));
    found.extend(of_sealed(fleet, entry));
    found.extend(of_level(fleet, entry));
    found.extend(of_look(fleet, entry));
    found
}

/// Whether an entry by itself locks something: what the shop should hear of at once.
pub(crate) fn locks_something(fleet: &Fleet, entry: &Entry) -> bool {
    let found = by_itself(fleet, entry).into_iter().chain(of_drain(fleet, entry, &[]));
    found.into_iter().any(|finding| !finding.parts.is_empty())
}

/// What was not so at a step and locks something, or is a note of its own: the step stands for the item.
fn of_steps(fleet: &Fleet, entry: &Entry) -> Vec<Finding> {
    let told = entry.fact.steps().iter().filter(|step| step.not_so && step.locks.is_some());
    let found = told.map(|step| {
        let place = place_of(fleet, entry, step);
        Finding {
            at: step.at.moment(),
            entry: entry.id.0,
            item: item_of_step(&step.step),
            parts: match (step.locks, place.as_deref()) {
                // Nobody knows which one it is: the worse stands until the shop says.
                (Some(Severity::Outlet), None) => vec![LockPart::Air],
                (locked, place) => locks(locked, place.unwrap_or(&step.step)),
            },
            place,
            person: person(entry),
            words: step.word.as_deref().map(word_of_step).unwrap_or_default(),
        }
    });
    found.collect()
}

/// Which of the unit's hoses a step was not so of, as it was chosen; where a record names none, the only one there is.
fn place_of(fleet: &Fleet, entry: &Entry, step: &StepDone) -> Option<String> {
    let named = step.place.clone().filter(|place| !place.trim().is_empty());
    if named.is_some() || step.locks != Some(Severity::Outlet) {
        return named;
    }
    match fleet.trucks.get(&entry.unit?)?.features.outlets().as_slice() {
        [only] => Some((*only).to_owned()),
        _ => None,
    }
}

/// A pressure that did not fall after a stop locks what the step of the shut-down that watches it does. Told there as
/// well, it is told once.
fn of_blow_down(entry: &Entry) -> Option<Finding> {
    let Fact::StopAir(stop) = &entry.fact else { return None };
    let told = |step: &StepDone| step.step == BLOW_DOWN && step.not_so && step.locks.is_some();
    if stop.blew_down != Some(false) || stop.steps.iter().any(told) {
        return None;
    }
    Some(of_step(entry, BLOW_DOWN, "holds-pressure"))
}

/// The step of a shut-down at which the pressure is watched as it falls.
const BLOW_DOWN: &str = "blow-down";

/// A pour of another oil than the unit's own, or of one nobody named, locks the air and is a finding by itself. What
/// was brought in or typed in at a desk names no drum, and is wrong only where it names another family.
pub(super) fn wrong_pour(fleet: &Fleet, entry: &Entry) -> Option<Mix> {
    let Fact::TopUp(top_up) = &entry.fact else { return None };
    if top_up.fluid != Fluid::CompressorOil || top_up.pours.is_empty() {
        return None;
    }
    let own = fleet.oil_at(entry.unit?, entry.at.unix_ms())?;
    let wrong = Oil::poured_wrong(own, Oil::labelled(top_up.family, top_up.grade.as_deref()))?;
    (wrong == Mix::OtherFamily || entry.source == Source::Phone).then_some(wrong)
}

fn of_pour(fleet: &Fleet, entry: &Entry) -> Option<Finding> {
    let word = match wrong_pour(fleet, entry)? {
        Mix::OtherGrade => "other-grade",
        Mix::Unknown => "unknown-oil",
        Mix::OtherFamily | Mix::Same => "wrong-oil",
    };
    Some(of_air(entry, "oil-look", word))
}

/// A fluid that should need none was poured: a finding by itself.
fn of_sealed(fleet: &Fleet, entry: &Entry) -> Option<Finding> {
    let Fact::TopUp(top_up) = &entry.fact else { return None };
    let found = Fluids::common_practice().ok()?.finding_of_top_up(top_up.fluid)?;
    Some(of_word(fleet, entry, found.item, found.word))
}

/// A level out of view locks what it locks in a walk, before a pour as after one: oil that was poured in does not say
/// where it went. One over the middle is a note of its own only where the level was read alone, as on the walk; after
/// a pour its own line of the day tells it.
fn of_level(fleet: &Fleet, entry: &Entry) -> Vec<Finding> {
    let seen: Vec<Glass> = match &entry.fact {
        Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => vec![level.glass],
        Fact::TopUp(top_up) if top_up.fluid == Fluid::CompressorOil => {
            let settled = top_up.pours.iter().map(|pour| pour.after);
            [top_up.before, top_up.after].into_iter().chain(settled).flatten().collect()
        }
        _ => return Vec::new(),
    };
    if entry.source == Source::BroughtIn {
        return Vec::new();
    }
    let read_alone = matches!(entry.fact, Fact::LevelCheck(_));
    let word = |glass: Glass| match glass {
        Glass::BelowView => Some("below-view"),
        Glass::AboveView => Some("above-view"),
        Glass::Percent(level) if read_alone && u32::from(level) > fleet.numbers.middle_to => {
            Some("over-middle")
        }
        Glass::Percent(_) => None,
    };
    let mut words: Vec<&str> = seen.into_iter().filter_map(word).collect();
    words.sort_unstable();
    words.dedup();
    words.into_iter().map(|word| of_word(fleet, entry, "oil-level", word)).collect()
}

/// Oil that looks bad locks what it locks in a walk, wherever its look was kept.
fn of_look(fleet: &Fleet, entry: &Entry) -> Option<Finding> {
    let look = match &entry.fact {
        Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => level.look?,
        Fact::OilCondition(condition) => condition.look,
        _ => return None,
    };
    let word = match look {
        OilLook::Clear => return None,
        OilLook::Dark => "dark",
        OilLook::Milky => "milky",
        OilLook::Foaming => "foam",
        OilLook::Burnt => "burnt",
    };
    (entry.source != Source::BroughtIn).then(|| of_word(fleet, entry, "oil-look", word))
}

/// What was drained tells the same as the walk's line about it: oil from the brake tanks, water in the fuel, more water
/// in the receiver than a short run leaves.
pub(super) fn of_drain(fleet: &Fleet, entry: &Entry, entries: &[Bearing]) -> Option<Finding> {
    let Fact::WaterDrained(drained) = &entry.fact else { return None };
    let at = entry.at.moment();
    let cups_before = || {
        entries.iter().any(|other| match &other.entry.fact {
            Fact::WaterDrained(before) => {
                let moment = other.entry.at.moment();
                before.from == drained.from
                    && before.amount >= WaterAmount::Cup
                    && moment < at
                    && at - moment <= TimeDelta::days(7)
            }
            _ => false,
        })
    };
    let (item, word) = match (drained.from, drained.amount) {
        (WaterFrom::BrakeTanks, _) if drained.oil_in_it => ("tank-drain", "oil-in-water"),
        (WaterFrom::FuelTrap, amount) if amount != WaterAmount::None => ("water-trap", "water"),
        (WaterFrom::Receiver, WaterAmount::More) => ("drain-water", "more-than-cup"),
        // Common practice, no source: more than a cupful in a week is short runs, running cold.
        (WaterFrom::Receiver, WaterAmount::Cup) if cups_before() => ("drain-water", "cup"),
        _ => return None,
    };
    Some(of_word(fleet, entry, item, word))
}

/// A finding that locks what its word locks on the checklist; the air where the checklist has no such word.
pub(super) fn of_word(fleet: &Fleet, entry: &Entry, item: &str, word: &str) -> Finding {
    let severity = fleet
        .checklist_at(entry.at.unix_ms())
        .ok()
        .and_then(|checklist| checklist.item(item)?.severity(word));
    let found = of_air(entry, item, word);
    match severity {
        Some(severity) => Finding { parts: locks(Some(severity), item), ..found },
        None => found,
    }
}

pub(super) fn of_air(entry: &Entry, item: &str, word: &str) -> Finding {
    Finding {
        at: entry.at.moment(),
        entry: entry.id.0,
        item: item.to_owned(),
        place: None,
        parts: vec![LockPart::Air],
        person: person(entry),
        words: word.to_owned(),
    }
}

/// A finding of a step of a procedure by one of its words: it locks what the table of procedures says, the air where
/// the table has no such word.
pub(super) fn of_step(entry: &Entry, step: &str, word: &str) -> Finding {
    let means = Procedures::common_practice().ok().and_then(|table| table.step(step)?.on(word));
    let found = of_air(entry, &item_of_step(step), &word_of_step(word));
    match means {
        Some(OnNotSo::Lock(severity)) => Finding { parts: locks(Some(severity), step), ..found },
        _ => found,
    }
}

/// A finding that locks nothing.
pub(super) fn note(entry: &Entry, item: &str, word: &str) -> Finding {
    Finding { parts: Vec::new(), ..of_air(entry, item, word) }
}

pub(super) fn person(entry: &Entry) -> Uuid {
    entry.person.map_or(Uuid::nil(), |person| person.0)
}
