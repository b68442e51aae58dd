//! Which days close by themselves, at which moment.

use sumpbook_trade::record::*;

use super::yard::*;
use crate::Hand;
use crate::close::{Closing, close, closing_hour, to_close};

/// What a hub does once a night: the days it closes, each with its version.
fn night(yard: &mut Yard, looked: &mut i64, now: &str) -> Vec<(String, u32)> {
    let Some(days) = to_close(&yard.shop.ledger, *looked, at(now)).unwrap() else { return Vec::new() };
    *looked = yard.shop.ledger.store().truth().last_n().unwrap();
    let hand = Hand::nobody(at(now)).received(at(now));
    let closed = days.into_iter().filter_map(|day| match close(&mut yard.shop, day, &hand).unwrap() {
        Closing::Closed(row) => Some((row.day, row.version)),
        Closing::Unchanged(_) => None,
    });
    closed.collect()
}

fn closed(days: &[(&str, u32)]) -> Vec<(String, u32)> {
    days.iter().map(|(day, version)| ((*day).to_owned(), *version)).collect()
}

#[test]
fn the_hour_is_four_in_the_yard_also_where_clocks_are_changed() {
    let zone = "America/Denver".parse().unwrap();
    let hour = |now| closing_hour(zone, at(now)).to_rfc3339();
    assert_eq!(hour("2026-10-20T03:59:59-06:00"), "2026-10-19T10:00:00+00:00");
    assert_eq!(hour("2026-10-20T04:00:00-06:00"), "2026-10-20T10:00:00+00:00");
    // The night of 1 November has an hour more.
    assert_eq!(hour("2026-11-01T03:59:59-07:00"), "2026-10-31T10:00:00+00:00");
    assert_eq!(hour("2026-11-01T04:00:00-07:00"), "2026-11-01T11:00:00+00:00");
}

#[test]
fn an_ended_day_closes_once_and_again_at_the_next_hour_when_something_came_late() {
    let mut yard = Yard::new();
    let mut looked = 0;
    // What was before the fleet's first full day is closed with it.
    night(&mut yard, &mut looked, "2026-10-19T04:00:00-06:00");
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", Some(28_624), walk(vec![], 7));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    assert_eq!(night(&mut yard, &mut looked, "2026-10-19T23:59:00-06:00"), []);
    assert_eq!(night(&mut yard, &mut looked, "2026-10-20T03:59:00-06:00"), []);
    assert_eq!(night(&mut yard, &mut looked, "2026-10-20T04:00:00-06:00"), closed(&[("2026-10-19", 1)]));
    // Late entries make no version at once, however many come.
    yard.sign(2, "Hattie", "TH-02", "2026-10-19T15:00:00-06:00", drive(DriveWhat::LeftYard));
    yard.exchange(2, "2026-10-20T07:05:00-06:00");
    assert_eq!(night(&mut yard, &mut looked, "2026-10-20T07:06:00-06:00"), []);
    yard.sign(2, "Hattie", "TH-02", "2026-10-19T16:00:00-06:00", drive(DriveWhat::CameBack));
    yard.exchange(2, "2026-10-20T09:05:00-06:00");
    assert_eq!(night(&mut yard, &mut looked, "2026-10-20T12:00:00-06:00"), []);
    assert_eq!(
        night(&mut yard, &mut looked, "2026-10-21T04:00:30-06:00"),
        closed(&[("2026-10-19", 2), ("2026-10-20", 1)])
    );
    assert_eq!(night(&mut yard, &mut looked, "2026-10-21T04:01:00-06:00"), []);
    // A day of which nothing new was told stays as it is.
    yard.sign(3, "Gil", "TH-05", "2026-10-21T09:40:00-06:00", reading(490));
    yard.exchange(3, "2026-10-21T10:10:00-06:00");
    assert_eq!(night(&mut yard, &mut looked, "2026-10-22T04:00:00-06:00"), closed(&[("2026-10-21", 1)]));
}

#[test]
fn a_shop_that_was_switched_off_catches_up_and_a_person_who_closed_early_is_added_to() {
    let mut yard = Yard::new();
    let mut looked = 0;
    night(&mut yard, &mut looked, "2026-10-19T05:00:00-06:00");
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", Some(28_624), walk(vec![], 7));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    yard.close("2026-10-19", "2026-10-19T17:00:00-06:00");
    yard.sign(2, "Hattie", "TH-02", "2026-10-19T16:00:00-06:00", drive(DriveWhat::LeftYard));
    yard.exchange(2, "2026-10-19T18:05:00-06:00");
    // Off from Monday evening to Thursday noon; begun again it remembers nothing of what it looked at.
    let mut looked = 0;
    assert_eq!(
        night(&mut yard, &mut looked, "2026-10-22T12:00:00-06:00"),
        closed(&[("2026-10-19", 2), ("2026-10-20", 1), ("2026-10-21", 1)])
    );
    let mut again = 0;
    assert_eq!(night(&mut yard, &mut again, "2026-10-22T13:00:00-06:00"), []);
}
