//! Fluids of which some use is normal, and too much of it is not: engine oil between changes, exhaust fluid.

use sumpbook_trade::defect::Finding;
use sumpbook_trade::fluid::{Filled, Fluid, Fluids, is_engine_oil_task, passes_a_quart, sudden_thirst};
use sumpbook_trade::oil::Millilitres;
use sumpbook_trade::record::{Source, TopUp};
use sumpbook_trade::{Entry, Fact};

use super::defects::locks;
use super::found::note;
use super::inputs::Bearing;
use crate::fleet::Fleet;

/// What the pours of a unit tell together. What was brought in counts and opens nothing: it was over long ago.
pub(super) fn found(fleet: &Fleet, entries: &[Bearing]) -> Vec<Finding> {
    let mut found = engine_oil(entries);
    found.extend(exhaust_fluid(fleet, entries));
    found
}

fn engine_oil(entries: &[Bearing]) -> Vec<Finding> {
    let (mut poured, mut found) = (Millilitres::ZERO, Vec::new());
    for Bearing { entry, .. } in entries {
        match &entry.fact {
            Fact::ServiceDone(done) if done.tasks.iter().any(is_engine_oil_task) => {
                poured = Millilitres::ZERO;
            }
            Fact::TopUp(top_up) if top_up.fluid == Fluid::EngineOil => {
                let pour = volume(top_up);
                if passes_a_quart(poured, pour) {
                    found.extend(told(entry, Fluid::EngineOil, "engine-oil", "over-a-quart"));
                }
                poured = poured + pour;
            }
            _ => {}
        }
    }
    found
}

fn exhaust_fluid(fleet: &Fleet, entries: &[Bearing]) -> Vec<Finding> {
    let mut fills: Vec<(Filled, &Entry)> = Vec::new();
    for Bearing { entry, .. } in entries {
        let Fact::TopUp(top_up) = &entry.fact else { continue };
        let (day, poured) = (fleet.yard_day(entry.at), volume(top_up));
        if top_up.fluid != Fluid::Def || poured <= Millilitres::ZERO {
            continue;
        }
        match fills.last_mut() {
            Some((fill, last)) if fill.day == day => {
                fill.volume = fill.volume + poured;
                fill.hours = entry.hours.or(fill.hours);
                *last = entry;
            }
            _ => fills.push((Filled { day, hours: entry.hours, volume: poured }, entry)),
        }
    }
    let days: Vec<Filled> = fills.iter().map(|(fill, _)| *fill).collect();
    let thirsty = sudden_thirst(&days);
    let of_them = fills.iter().filter(|(fill, _)| thirsty.contains(&fill.day));
    of_them.filter_map(|(_, entry)| told(entry, Fluid::Def, "def-level", "sudden-thirst")).collect()
}

fn volume(top_up: &TopUp) -> Millilitres {
    let volumes = top_up.pours.iter().filter_map(|pour| Millilitres::of(pour.volume));
    volumes.fold(Millilitres::ZERO, |sum, one| sum + one)
}

/// What the table of fluids says that such a finding locks.
fn told(entry: &Entry, fluid: Fluid, item: &str, word: &str) -> Option<Finding> {
    let severity = Fluids::common_practice().ok()?.of(fluid)?.severity(word);
    let found = Finding { parts: locks(severity, item), ..note(entry, item, word) };
    (entry.source != Source::BroughtIn).then_some(found)
}
