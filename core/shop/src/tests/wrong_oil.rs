//! A pour is judged by the oil that its set was to have at that moment: no lock begins, ends or changes its truck because
//! a set was moved or got another oil since. Invented data, outcomes worked by rule.

use sumpbook_trade::defect::LockPart;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::*;
use sumpbook_trade::{Figure, Unit};

use super::yard::*;
use crate::NewSet;
use crate::sheet::View;

fn filled_with(yard: &mut Yard, serial: &str, door: &str, family: OilFamily, when: &str) {
    let hand = yard.hand("Ilse", when).received(at(when));
    let profile = SetProfile { oil_family: Some(family), ..SetProfile::unknown() };
    let on = Some(yard.truck(door));
    yard.shop.add_set(NewSet { serial: Some(serial.to_owned()), on, profile }, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn poured(yard: &mut Yard, door: &str, family: OilFamily, when: &str) {
    let volume = Figure::parse("0.2", Unit::Quart).unwrap();
    let pour = TopUp {
        family: Some(family),
        pours: vec![Pour { volume, after: None, waited_ms: None }],
        after: Some(Glass::Percent(50)),
        ..TopUp::of(Fluid::CompressorOil)
    };
    yard.sign(1, "Amos", door, when, pour);
}

fn air_locked(yard: &Yard, door: &str) -> bool {
    let state = yard.shop.ledger.unit_state(yard.truck(door)).unwrap();
    state.locks.iter().any(|lock| lock.ended.is_none() && lock.part == LockPart::Air)
}

#[test]
fn a_change_to_another_oil_makes_no_earlier_pour_wrong() {
    let mut yard = Yard::new();
    filled_with(&mut yard, "S-91", "TH-01", OilFamily::Mineral, "2026-10-18T13:00:00-06:00");
    poured(&mut yard, "TH-01", OilFamily::Mineral, "2026-10-19T07:00:00-06:00");
    yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-10-19T07:30:00-06:00",
        StartAir { steps: vec![], in_spite_of_lock: None },
    );
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    assert!(!air_locked(&yard, "TH-01"));

    filled_with(&mut yard, "S-91", "TH-01", OilFamily::Polyglycol, "2026-10-21T10:00:00-06:00");
    assert!(!air_locked(&yard, "TH-01"));
    let evening = yard.evening("2026-10-19", "2026-10-21T17:00:00-06:00");
    assert!(evening.against.is_empty(), "{:?}", evening.against);
    // From then on the other one is the wrong one.
    poured(&mut yard, "TH-01", OilFamily::Mineral, "2026-10-21T11:00:00-06:00");
    yard.exchange(1, "2026-10-21T16:48:00-06:00");
    assert!(air_locked(&yard, "TH-01"));
}

#[test]
fn the_lock_of_a_wrong_pour_goes_with_the_set_and_stays_until_it_is_certified() {
    let mut yard = Yard::new();
    filled_with(&mut yard, "S-97", "TH-07", OilFamily::Polyglycol, "2026-10-18T13:00:00-06:00");
    poured(&mut yard, "TH-07", OilFamily::Mineral, "2026-10-19T07:00:00-06:00");
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    assert!(air_locked(&yard, "TH-07"));

    filled_with(&mut yard, "S-97", "TH-05", OilFamily::Polyglycol, "2026-10-20T09:00:00-06:00");
    assert_eq!(["TH-07", "TH-05"].map(|door| air_locked(&yard, door)), [false, true]);
    // Another set comes to the truck it left: what was poured into the other one is none of its.
    filled_with(&mut yard, "S-98", "TH-07", OilFamily::Ester, "2026-10-21T09:00:00-06:00");
    assert_eq!(["TH-07", "TH-05"].map(|door| air_locked(&yard, door)), [false, true]);
    let called = yard.sheet("2026-10-21", View::Evening, "2026-10-21T17:00:00-06:00");
    assert_eq!(called.day, day("2026-10-21"));
    assert!(yard.due("TH-05", "oil-and-filters", "2026-10-21T17:00:00-06:00").contains("called now"));
    let report = crate::verify::verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings, []);
}

#[test]
fn a_registration_dated_between_two_that_agree_changes_only_what_lies_between() {
    let mut yard = Yard::new();
    filled_with(&mut yard, "S-91", "TH-01", OilFamily::Mineral, "2026-10-18T13:00:00-06:00");
    filled_with(&mut yard, "S-91", "TH-01", OilFamily::Mineral, "2026-10-21T10:00:00-06:00");
    filled_with(&mut yard, "S-91", "TH-01", OilFamily::Ester, "2026-10-20T10:00:00-06:00");
    poured(&mut yard, "TH-01", OilFamily::Mineral, "2026-10-21T11:00:00-06:00");
    yard.exchange(1, "2026-10-21T16:48:00-06:00");
    assert!(!air_locked(&yard, "TH-01"), "mineral was right again from the morning of the 21st");
    poured(&mut yard, "TH-01", OilFamily::Mineral, "2026-10-20T11:00:00-06:00");
    yard.exchange(1, "2026-10-21T17:48:00-06:00");
    assert!(air_locked(&yard, "TH-01"));
}
