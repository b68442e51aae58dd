//! Phones that were just let in, and when silence begins.

use sumpbook_daybook::gate::DeviceKey;
use sumpbook_trade::record::{DeviceEnrolled, Digest};

use super::yard::{Yard, at};
use crate::sheet::View;
use crate::*;

const ADDED: &str = "2026-10-20T11:05:00-06:00";

/// The yard with a fourth phone let in on Tuesday at 11:05, never heard from.
fn with_a_new_phone() -> Yard {
    let mut yard = Yard::new();
    for phone in 1..=3 {
        yard.exchange(phone, "2026-10-20T16:40:00-06:00");
    }
    let key = DeviceKey::from_secret(&[44; 32]);
    let enrolled = DeviceEnrolled { key: Digest(key.public().bytes()), name: "yard phone 9".into() };
    yard.shop.write(None, enrolled.into(), None, &Hand::nobody(at(ADDED))).unwrap();
    yard
}

fn quiet(yard: &Yard, day: &str, when: &str) -> Vec<String> {
    yard.morning(day, when).phones_quiet.rows.into_iter().map(|row| row.phone).collect()
}

#[test]
fn a_phone_just_let_in_is_told_as_added_and_is_silent_only_a_day_later() {
    let yard = with_a_new_phone();
    let evening = yard.sheet("2026-10-20", View::Evening, "2026-10-20T17:00:00-06:00");
    assert_eq!(
        evening.sentences.last().unwrap(),
        "Phones: 3 of 3 heard from since Mon 17:00. Added and not heard from yet: yard phone 9, Tue 20 Oct 11:05."
    );
    let row = &evening.phones.just_added[0];
    assert_eq!((row.last_heard, row.added.map(|at| at.to_string())), (None, Some(ADDED.to_owned())));
    assert!(quiet(&yard, "2026-10-21", "2026-10-21T06:00:00-06:00").is_empty());
    assert!(quiet(&yard, "2026-10-21", "2026-10-21T11:05:00-06:00").is_empty(), "24 h to the minute");
    assert_eq!(quiet(&yard, "2026-10-21", "2026-10-21T11:06:00-06:00"), ["yard phone 9"]);
    let later = yard.sheet("2026-10-21", View::Evening, "2026-10-21T17:00:00-06:00");
    let said = later.sentences.last().unwrap();
    assert!(
        said.contains("Not heard: ")
            && said.contains("yard phone 9, never since it was added Tue 20 Oct 11:05"),
        "{said}"
    );
}

#[test]
fn a_phone_let_in_later_is_not_of_an_earlier_day() {
    let yard = with_a_new_phone();
    let sunday = yard.sheet("2026-10-18", View::Evening, "2026-10-20T17:00:00-06:00");
    assert_eq!(sunday.phones.of, 3);
    assert!(sunday.phones.just_added.is_empty() && sunday.phones.not_heard.is_empty());
}
