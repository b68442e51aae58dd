//! A compressor set moves to another truck: what is about the air goes with it, what is about the road stays.
//! Invented data, outcomes worked by rule.

use sumpbook_daybook::screen::{GlassQuery, glass};
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::Severity;
use sumpbook_trade::checklist::Template;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::*;

use super::yard::*;
use crate::NewSet;

fn fitted(yard: &mut Yard, serial: &str, door: &str, when: &str) {
    let hand = yard.hand("Ilse", when).received(at(when));
    let on = Some(yard.truck(door));
    let known = yard.shop.set_meant(Some(&serial.to_owned()), None).map(|set| set.profile.clone());
    let profile = SetProfile { oil_family: Some(OilFamily::Mineral), ..SetProfile::unknown() };
    let profile = known.unwrap_or(profile);
    yard.shop.add_set(NewSet { serial: Some(serial.to_owned()), on, profile }, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn state(yard: &Yard, door: &str) -> UnitState {
    yard.shop.ledger.unit_state(yard.truck(door)).unwrap()
}

fn figure(state: &UnitState) -> Option<String> {
    state.hours.last.as_ref().map(|last| last.figure.to_string())
}

fn oil_done(state: &UnitState) -> Option<String> {
    let oil = TaskId("oil-and-filters".into());
    let clock = state.clocks.iter().find(|clock| clock.task == oil)?;
    Some(clock.last?.hours?.to_string())
}

fn locked(state: &UnitState) -> Vec<LockPart> {
    state.locks.iter().filter(|lock| lock.ended.is_none()).map(|lock| lock.part.clone()).collect()
}

/// TH-01 with the set S-91 on it: hours, a service, a pour, and a defect of the road and one of the air.
fn worked() -> Yard {
    let mut yard = Yard::new();
    fitted(&mut yard, "S-91", "TH-01", "2026-10-18T13:00:00-06:00");
    yard.sign_with(
        1,
        "Amos",
        "TH-01",
        "2026-10-19T10:00:00-06:00",
        Some(28_650),
        service(&["oil-and-filters"]),
    );
    let middle = TopUp { after: Some(Glass::Percent(50)), ..TopUp::of(Fluid::CompressorOil) };
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T11:00:00-06:00", Some(28_660), middle);
    let found = vec![
        answer("mirrors", None, Some(Severity::Road), "cracked"),
        answer("fan", None, Some(Severity::Air), "broken"),
    ];
    yard.sign(1, "Amos", "TH-01", "2026-10-20T06:32:00-06:00", walk(found, 7));
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    yard
}

#[test]
fn hours_clocks_oil_and_air_defects_follow_the_set_and_the_road_stays_with_the_truck() {
    let mut yard = worked();
    let before = state(&yard, "TH-01");
    assert_eq!((figure(&before), oil_done(&before)), (Some("2866.0".into()), Some("2865.0".into())));
    assert_eq!(locked(&before), [LockPart::Road, LockPart::Air]);

    fitted(&mut yard, "S-91", "TH-05", "2026-10-21T08:00:00-06:00");
    let (left, now) = (state(&yard, "TH-01"), state(&yard, "TH-05"));
    let level = |yard: &Yard, door: &str| {
        let query = GlassQuery {
            unit: yard.truck(door),
            given: None,
            said_stopped: None,
            warmth: None,
            oil_temperature: None,
        };
        let now = at("2026-10-21T09:00:00-06:00");
        glass(&yard.shop.ledger, &query, Template::common_practice().unwrap(), now).unwrap().oil.last
    };
    assert_eq!(level(&yard, "TH-05").map(|last| last.glass), Some(Glass::Percent(50)));
    assert_eq!(level(&yard, "TH-01"), None);
    assert_eq!((figure(&now), oil_done(&now)), (Some("2866.0".into()), Some("2865.0".into())));
    assert_eq!(now.oil.fill.as_ref().unwrap().begun.unwrap().hours.to_string(), "2865.0");
    assert_eq!(locked(&now), [LockPart::Air]);
    assert_eq!((figure(&left), oil_done(&left)), (None, None));
    assert_eq!(locked(&left), [LockPart::Road]);
    // Its walk of the old truck covers the new one not at all.
    assert!(now.newest_ms >= before.newest_ms);

    // The set works on from its own figure, and is certified where it stands.
    yard.sign(1, "Amos", "TH-05", "2026-10-21T16:00:00-06:00", reading(28_690));
    yard.exchange(1, "2026-10-21T16:48:00-06:00");
    assert_eq!(figure(&state(&yard, "TH-05")), Some("2869.0".into()));
    assert_eq!(state(&yard, "TH-05").hours.questions, []);
    // What comes late about its time on the old truck is about it, wherever it stands.
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:00:00-06:00", reading(28_670));
    yard.exchange(1, "2026-10-21T17:48:00-06:00");
    let readings = yard.shop.ledger.every_reading(yard.truck("TH-05")).unwrap();
    let figures: Vec<String> = readings.iter().map(|row| row.figure.to_string()).collect();
    assert!(figures.ends_with(&["2867.0".into(), "2869.0".into()]), "{figures:?}");
    assert_eq!(yard.shop.ledger.every_reading(yard.truck("TH-01")).unwrap().len(), 0);

    // And back: all of it comes along.
    fitted(&mut yard, "S-91", "TH-01", "2026-10-23T08:00:00-06:00");
    assert_eq!(figure(&state(&yard, "TH-01")), Some("2869.0".into()));
    assert_eq!(figure(&state(&yard, "TH-05")), None);
    let report = crate::verify::verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings, []);
}

#[test]
fn another_set_on_a_truck_begins_with_nothing_of_the_one_before() {
    let mut yard = worked();
    fitted(&mut yard, "S-92", "TH-01", "2026-10-21T08:00:00-06:00");
    let fleet = yard.shop.ledger.fleet();
    assert_eq!(
        fleet.set_on(yard.truck("TH-01")).unwrap().serial.as_deref(),
        Some("S-92"),
        "a truck carries one"
    );
    let now = state(&yard, "TH-01");
    assert_eq!((figure(&now), locked(&now)), (None, vec![LockPart::Road]));
    yard.sign(1, "Amos", "TH-01", "2026-10-21T16:00:00-06:00", reading(130));
    yard.exchange(1, "2026-10-21T16:48:00-06:00");
    let now = state(&yard, "TH-01");
    assert_eq!(
        (figure(&now), now.hours.questions.len()),
        (Some("13.0".into()), 0),
        "no figure of the old one stands above"
    );
}

/// A phone or the shop records a set at a truck.
fn told(
    yard: &mut Yard,
    door: &str,
    when: &str,
    fact: impl Into<sumpbook_trade::Fact>,
) -> sumpbook_trade::EntryId {
    let entry = yard.sign(1, "Amos", door, when, fact);
    yard.exchange(1, when);
    entry
}

#[test]
fn what_is_recorded_at_a_truck_is_held_against_the_registration_which_rules() {
    let mut yard = worked();
    let set = yard.shop.ledger.fleet().set_on(yard.truck("TH-01")).unwrap().set;
    let rows = |yard: &Yard, when: &str| {
        let evening = yard.evening(&when[..10], when);
        evening.sets.rows.into_iter().map(|row| (row.unit, row.what, row.registered_on)).collect::<Vec<_>>()
    };
    // The crew records the move, the shop has not registered it: asked about, and nothing moves by it.
    let entry = told(
        &mut yard,
        "TH-05",
        "2026-10-21T08:00:00-06:00",
        SetFitted { set, hours: Some(sumpbook_trade::Tenths(28_660)) },
    );
    assert_eq!(
        rows(&yard, "2026-10-21T17:00:00-06:00"),
        [("TH-05".to_owned(), "fitted".to_owned(), Some("TH-01".to_owned()))]
    );
    assert_eq!(figure(&state(&yard, "TH-05")), None, "the registration rules");
    assert_eq!(figure(&state(&yard, "TH-01")), Some("2866.0".into()));
    // Registered a day later: the two agree.
    fitted(&mut yard, "S-91", "TH-05", "2026-10-22T08:00:00-06:00");
    assert_eq!(rows(&yard, "2026-10-22T17:00:00-06:00"), []);
    told(&mut yard, "TH-01", "2026-10-22T09:00:00-06:00", SetRemoved { set });
    assert_eq!(rows(&yard, "2026-10-22T17:00:00-06:00"), [], "off, as it is registered");
    // Taken off by the record, on by the registration: asked, until the shop leaves the entry out by name.
    let off = told(&mut yard, "TH-05", "2026-10-23T09:00:00-06:00", SetRemoved { set });
    assert_eq!(
        rows(&yard, "2026-10-23T17:00:00-06:00"),
        [("TH-05".to_owned(), "removed".to_owned(), Some("TH-05".to_owned()))]
    );
    let hand = yard.hand("Ilse", "2026-10-23T18:00:00-06:00");
    crate::settle::decide(&mut yard.shop, &[off], Verdict::DoNotUse, "another truck", &hand).unwrap();
    assert_eq!(rows(&yard, "2026-10-23T18:30:00-06:00"), []);
    assert_ne!(entry, off);
}

#[test]
fn a_truck_whose_set_went_has_no_tasks_of_the_air_until_another_comes() {
    let mut yard = worked();
    assert!(!state(&yard, "TH-01").clocks.is_empty());
    fitted(&mut yard, "S-91", "TH-05", "2026-10-21T08:00:00-06:00");
    assert!(state(&yard, "TH-01").clocks.is_empty(), "{:?}", state(&yard, "TH-01").clocks);
    let due = crate::due::due_list(&yard.shop.ledger, at("2026-10-21T17:00:00-06:00")).unwrap();
    assert!(due.rows.iter().all(|row| row.unit != "TH-01"));
    // One of which no set was ever registered keeps its programme: there may be one that nobody entered.
    assert!(due.rows.iter().any(|row| row.unit == "TH-02"));
    fitted(&mut yard, "S-92", "TH-01", "2026-10-22T08:00:00-06:00");
    assert!(!state(&yard, "TH-01").clocks.is_empty());
}
