use std::collections::BTreeSet;

use super::*;
use crate::checklist::Severity;
use crate::limit::Rules;
use crate::unit::{Feature, Features};

fn of(id: &str) -> &'static Procedure {
    Procedures::common_practice().unwrap().of(id).unwrap()
}

fn ids<'a>(id: &str, features: &'a Features) -> Vec<&'a str> {
    of(id).steps_for(features).iter().map(|planned| planned.step.id.as_str()).collect()
}

#[test]
fn no_cap_without_both_signs() {
    for gauge_zero in [None, Some(false), Some(true)] {
        for blow_down_silent in [None, Some(false), Some(true)] {
            let both = gauge_zero == Some(true) && blow_down_silent == Some(true);
            assert_eq!(may_open_cap(CapSigns { gauge_zero, blow_down_silent }), both);
        }
    }
    assert!(!may_open_cap(CapSigns::default()));
}

#[test]
fn the_signs_come_before_the_cap_and_the_oil_before_the_pour() {
    let features = Features::default();
    assert_eq!(
        ids("top-up", &features),
        [
            "stopped-5",
            "zero-two-signs",
            "read-glass",
            "oil-match",
            "cap-slow",
            "pour-small",
            "stop-middle",
            "cap-tight",
            "wipe",
            "volume",
            "recheck-run",
        ]
    );
}

#[test]
fn a_unit_starts_by_its_own_steps_and_names() {
    let bare = Features::default();
    assert!(!ids("start", &bare).contains(&"sel-low"));
    let two = Features {
        valves: vec!["gauge port".into(), "small hose".into()],
        ..Features::of([Feature::TwoPressure, Feature::GlowPlugs, Feature::TempShown])
    };
    assert_eq!(
        ids("start", &two),
        [
            "preheat-out",
            "engine-run",
            "valves-closed",
            "sel-low",
            "display-checks",
            "pto-in",
            "rise-watch",
            "look-listen",
            "first-numbers",
            "sel-high",
        ]
    );
    let steps = of("start").steps_for(&two);
    assert_eq!(steps[2].names, ["gauge port", "small hose"]);
    assert!(steps[1].names.is_empty());
    assert_eq!(ids("shut-down", &two)[0], "sel-low-stop");
}

#[test]
fn leaving_is_six_things() {
    let leave = of("leave-site");
    assert_eq!(leave.steps.len(), 6);
    let blocks = |step: &Step| step.stops.iter().all(|stop| stop.1 == OnNotSo::NoDriving);
    assert!(leave.steps.iter().all(|step| !step.stops.is_empty() && blocks(step)));
    // Driven with the PTO in, the truck is worth what a PTO lamp that stays on is; all else is told and locks nothing.
    let driven: Vec<_> =
        leave.steps.iter().filter_map(|step| Some((step.id.as_str(), step.driven?))).collect();
    assert_eq!(driven, [("pto-out", Severity::RoadAndAir)]);
}

#[test]
fn waits_end_on_their_second() {
    let step = |procedure, id| of(procedure).step(id).unwrap();
    assert_eq!(step("top-up", "stopped-5").dwelt(299), Some(false));
    assert_eq!(step("top-up", "stopped-5").dwelt(300), Some(true));
    assert_eq!(step("top-up", "pour-small").dwelt(119), Some(false));
    assert_eq!(step("top-up", "pour-small").dwelt(120), Some(true));
    assert_eq!(step("shut-down", "blow-down").dwelt(120), Some(true));
    assert_eq!(step("shut-down", "blow-down").dwelt(121), Some(false));
    assert_eq!(step("top-up", "wipe").dwelt(1), None);
}

#[test]
fn what_is_not_so_locks_or_waits() {
    let on = |procedure, id, word| of(procedure).step(id).unwrap().on(word);
    assert_eq!(on("shut-down", "stop-button", "stays-on"), Some(OnNotSo::Lock(Severity::RoadAndAir)));
    assert_eq!(on("start", "display-checks", "reminder"), Some(OnNotSo::Lock(Severity::Note)));
    assert_eq!(on("top-up", "cap-slow", "hiss"), Some(OnNotSo::Wait));
    assert_eq!(on("top-up", "oil-match", "unknown-drum"), Some(OnNotSo::Refuse));
    assert_eq!(on("top-up", "stopped-5", "too-soon"), Some(OnNotSo::Mark));
    assert_eq!(on("top-up", "stopped-5", "hiss"), None);
}

#[test]
fn no_step_stands_twice_and_every_limit_exists() {
    let rules = Rules::common_practice().unwrap();
    let mut seen = BTreeSet::new();
    for step in Procedures::common_practice().unwrap().procedures.iter().flat_map(|p| &p.steps) {
        assert!(seen.insert(&step.id), "{}", step.id);
        let Some(ask) = &step.number else { continue };
        let rule = ask.limit.as_ref().map(|topic| rules.on(topic, None).unwrap());
        assert!(rule.is_none_or(|rule| ask.unit.tell(1.0, rule.unit).is_some()), "{}", step.id);
    }
}
