//! Ordering of serials, who is meant, and how a campaign stands. Invented data, outcomes worked by rule.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, NaiveDate};
use chrono_tz::America::Denver;
use proptest::prelude::*;
use uuid::Uuid;

use super::*;
use crate::checklist::Severity;
use crate::clock::{Ahead, ServiceDecision, ServiceRow, Standing, TaskId};
use crate::defect::{LockOut, LockPart};
use crate::quantity::Tenths;
use crate::record::{CampaignOf, CampaignSet, SerialRange};

fn range(from: &str, to: &str) -> SerialRange {
    SerialRange { from: from.to_owned(), to: to.to_owned() }
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn at(text: &str) -> DateTime<FixedOffset> {
    text.parse().unwrap()
}

/// Of sets KX-1000 to KX-1999, by 30 Nov 2026.
fn campaign() -> CampaignSet {
    CampaignSet {
        task: TaskId::of_campaign("KX 24-07"),
        words: "change the scavenge line".to_owned(),
        paper: Some("KX 24-07".to_owned()),
        read_at: None,
        of: CampaignOf::Set,
        ranges: vec![range("KX-1000", "KX-1999")],
        deadline: day("2026-11-30"),
        hours: None,
        severity: Severity::Note,
        stop: false,
        withdrawn: None,
        looked: Vec::new(),
    }
}

fn told(n: u128, day_: &str, at_: &str, hours: Option<i64>) -> ServiceRow {
    ServiceRow {
        entry: Uuid::from_u128(n),
        task: campaign().task,
        hours: hours.map(Tenths),
        day: day(day_),
        at: at(at_),
        oil_reason: false,
        brought_in: false,
    }
}

#[test]
fn a_serial_is_a_text_and_the_number_at_its_end() {
    let same = |a: &str, b: &str| assert_eq!(Serial::read(a), Serial::read(b), "{a} {b}");
    same("KX-1500", " kx 1500 ");
    same("KX-0150", "kx/150");
    same("KX-0", "KX-000");
    let ordered = ["99", "100", "AB-2", "AB-10", "AB-9999999999999999999999", "KX-1"];
    for pair in ordered.windows(2) {
        assert!(Serial::read(pair[0]) < Serial::read(pair[1]), "{pair:?}");
    }
    for none in ["", "KX", "1500B", "KX-1500-", "٣"] {
        assert_eq!(Serial::read(none), None, "{none}");
    }
}

#[test]
fn a_range_whose_ends_do_not_compare_is_refused() {
    let refused = |from: &str, to: &str| check(&range(from, to)).unwrap_err();
    assert!(matches!(refused("KX-1000", "KY-1999"), RangeError::DoNotCompare(..)));
    assert!(matches!(refused("KX-1000", "1999"), RangeError::DoNotCompare(..)));
    assert!(matches!(refused("KX-1000", "KX-19B"), RangeError::DoNotCompare(..)));
    assert!(matches!(refused("KX-1000A", "KX-1999A"), RangeError::DoNotCompare(..)));
    assert!(matches!(refused("KX-2000", "KX-1999"), RangeError::Backwards(..)));
    assert_eq!(refused("KX-2000", " - "), RangeError::Empty);
    for (from, to) in [("KX-1000", "kx 1000"), ("KX-9", "KX-10"), ("7C-A", "7ca"), ("1", "2")] {
        assert_eq!(check(&range(from, to)), Ok(()), "{from} {to}");
    }
}

#[test]
fn both_ends_are_in_and_the_next_on_either_side_is_out() {
    let of = |serial: &str| hit(&campaign(), Some(serial), None);
    for serial in ["KX-1000", "KX-1999", "kx1500", "KX 01500"] {
        assert_eq!(of(serial), Hit::Yes, "{serial}");
    }
    for serial in ["KX-999", "KX-2000", "KX-10000", "TR-1500", "AKXB-1500"] {
        assert_eq!(of(serial), Hit::No, "{serial}");
    }
}

#[test]
fn a_serial_that_does_not_compare_is_to_be_looked_at() {
    let of = |serial: Option<&str>| hit(&campaign(), serial, None);
    assert_eq!(of(None), Hit::Look(LookWhy::NoSerial));
    assert_eq!(of(Some("  ")), Hit::Look(LookWhy::NoSerial));
    assert_eq!(of(Some("not legible")), Hit::Look(LookWhy::NoNumber));
    assert_eq!(of(Some("KX-1500B")), Hit::Look(LookWhy::NoNumber));
    // The number alone, the text cut short, a sign in another place.
    for serial in ["1500", "K-1500", "X1500", "KX1-500"] {
        assert_eq!(of(Some(serial)), Hit::Look(LookWhy::OtherText), "{serial}");
    }
    // What lies clearly in one range is meant, whatever another leaves open.
    let mut two = campaign();
    two.ranges.insert(0, range("KX1-100", "KX1-200"));
    assert_eq!(hit(&two, Some("KX-1500"), None), Hit::Yes);
    // One serial alone that ends in no number.
    let one = CampaignSet { ranges: vec![range("7C-A", "7C-A")], ..campaign() };
    assert_eq!(hit(&one, Some("7c a"), None), Hit::Yes);
    assert_eq!(hit(&one, Some("7C-B"), None), Hit::No);
    assert_eq!(hit(&one, Some("C-A"), None), Hit::Look(LookWhy::OtherText));
}

#[test]
fn who_looked_settles_what_was_open_and_no_more() {
    let of = |serial, looked| hit(&campaign(), serial, Some(looked));
    assert_eq!(of(None, true), Hit::Yes);
    assert_eq!(of(None, false), Hit::No);
    assert_eq!(of(Some("TR-1"), true), Hit::Yes, "a person's 'it is meant' holds");
    assert_eq!(of(Some("KX-1500"), false), Hit::Yes, "put right later, the serial is compared again");
}

#[test]
fn it_is_open_then_past_its_deadline_then_done_for_ever() {
    let of = |done, today| stands(&campaign(), Hit::Yes, done, Some(Tenths(10_000)), day(today));
    assert_eq!(of(None, "2026-11-30"), CampaignStands::Open, "the last good day is good");
    assert_eq!(of(None, "2026-12-01"), CampaignStands::PastDeadline);
    let rows = [
        told(2, "2027-03-01", "2027-03-01T10:00:00-07:00", Some(12_000)),
        told(1, "2026-12-02", "2026-12-02T10:00:00-07:00", Some(11_000)),
    ];
    let first = done(&campaign(), &rows, &BTreeMap::new()).unwrap();
    assert_eq!(first.0.entry, Uuid::from_u128(1));
    let clock = clock(&campaign(), Some(first.0), Ahead::default());
    assert_eq!(clock.state(None, day("2030-01-01")).standing, Standing::Closed);
    assert_eq!(clock.late_by.unwrap().days, Some(2));
    assert_eq!(of(Some(first.0), "2030-01-01"), CampaignStands::Done);
    // The shop leaves the first out by name: the second did it.
    let left_out = BTreeMap::from([(Uuid::from_u128(1), ServiceDecision::DoesNotCount)]);
    assert_eq!(done(&campaign(), &rows, &left_out).unwrap().0.entry, Uuid::from_u128(2));
    assert_eq!(done(&campaign(), &[], &BTreeMap::new()), None);
}

#[test]
fn hours_end_it_too_whichever_comes_first() {
    let by_hours = CampaignSet { hours: Some(Tenths(10_000)), ..campaign() };
    let of = |hours: Option<i64>| stands(&by_hours, Hit::Yes, None, hours.map(Tenths), day("2026-11-01"));
    assert_eq!(of(Some(10_000)), CampaignStands::Open);
    assert_eq!(of(Some(10_001)), CampaignStands::PastDeadline);
    assert_eq!(of(None), CampaignStands::Open);
    assert_eq!(
        clock(&by_hours, None, Ahead::default()).state(None, day("2026-11-01")).standing,
        Standing::Unknown
    );
}

#[test]
fn withdrawn_it_is_no_more_open_and_what_was_done_stays_done() {
    let gone = CampaignSet { withdrawn: Some("sent to us by mistake".to_owned()), ..campaign() };
    let of = |is, done| stands(&gone, is, done, None, day("2026-12-24"));
    assert_eq!(of(Hit::Yes, None), CampaignStands::Withdrawn);
    assert_eq!(of(Hit::Look(LookWhy::NoSerial), None), CampaignStands::Withdrawn);
    assert_eq!(of(Hit::No, None), CampaignStands::NotOfThisUnit);
    let last = done(&gone, &[told(1, "2026-11-20", "2026-11-20T10:00:00-07:00", None)], &BTreeMap::new());
    assert_eq!(of(Hit::No, Some(last.unwrap().0)), CampaignStands::Done);
}

fn locks(versions: &[(&str, CampaignSet, bool)], done: Option<&str>) -> Vec<LockOut> {
    let of: Vec<Version<'_>> = versions
        .iter()
        .enumerate()
        .map(|(n, (when, what, hits))| Version {
            entry: Uuid::from_u128(n as u128 + 1),
            at: at(when),
            what,
            hits: *hits,
        })
        .collect();
    lock_outs(&of, done.map(at), Denver)
}

fn spans(locks: &[LockOut]) -> Vec<(LockPart, String, Option<String>)> {
    let text = |at: DateTime<FixedOffset>| at.to_rfc3339();
    locks.iter().map(|lock| (lock.part.clone(), text(lock.since), lock.ended.map(text))).collect()
}

const ENTERED: &str = "2026-11-02T08:00:00-07:00";

#[test]
fn it_locks_from_the_end_of_its_last_good_day_in_the_yard() {
    let air = CampaignSet { severity: Severity::Air, ..campaign() };
    let locked = locks(&[(ENTERED, air.clone(), true)], None);
    assert_eq!(spans(&locked), [(LockPart::Air, "2026-12-01T00:00:00-07:00".into(), None)]);
    assert_eq!(locked[0].because.item, CAMPAIGN_ITEM);
    assert_eq!(locked[0].because.place.as_deref(), Some("KX 24-07"));
    assert_eq!(locks(&[(ENTERED, air.clone(), false)], None), []);
    assert_eq!(locks(&[(ENTERED, campaign(), true)], None), [], "a note locks nothing");
    // Done in time it never locks; done late it locks until then.
    assert_eq!(locks(&[(ENTERED, air.clone(), true)], Some("2026-11-20T10:00:00-07:00")), []);
    let late = locks(&[(ENTERED, air, true)], Some("2026-12-02T10:00:00-07:00"));
    assert_eq!(spans(&late)[0].2.as_deref(), Some("2026-12-02T10:00:00-07:00"));
}

#[test]
fn the_maker_says_stop_and_it_locks_at_once_until_it_is_done_or_taken_back() {
    let stop = CampaignSet { severity: Severity::RoadAndAir, stop: true, ..campaign() };
    let both = locks(&[(ENTERED, stop.clone(), true)], None);
    assert_eq!(
        both.iter().map(|lock| lock.part.clone()).collect::<Vec<_>>(),
        [LockPart::Road, LockPart::Air]
    );
    assert!(both.iter().all(|lock| lock.since == at(ENTERED) && lock.ended.is_none()));
    // Told again in other words it is the same lock; taken back it ends.
    let again = CampaignSet { words: "change both lines".to_owned(), ..stop.clone() };
    let gone = CampaignSet { withdrawn: Some("wrong range".to_owned()), ..stop.clone() };
    let told = [
        (ENTERED, stop, true),
        ("2026-11-03T08:00:00-07:00", again, true),
        ("2026-11-04T08:00:00-07:00", gone, true),
    ];
    let locked = locks(&told, None);
    assert_eq!(locked.len(), 2);
    let until = Some("2026-11-04T08:00:00-07:00".to_owned());
    assert!(spans(&locked).iter().all(|(_, since, ended)| since == ENTERED && *ended == until));
}

#[test]
fn a_range_that_is_made_wider_locks_from_then_on() {
    let stop = CampaignSet { severity: Severity::Air, stop: true, ..campaign() };
    let told = [(ENTERED, stop.clone(), false), ("2026-11-05T08:00:00-07:00", stop, true)];
    let locked = locks(&told, None);
    assert_eq!(spans(&locked), [(LockPart::Air, "2026-11-05T08:00:00-07:00".into(), None)]);
    assert_eq!(locked[0].because.entry, Uuid::from_u128(2));
}

fn serial() -> impl Strategy<Value = String> {
    prop_oneof!["[A-Cb ]{0,3}-?[0-9]{1,4}", "[A-C]{1,2}[0-9]{18,24}", "\\PC{0,8}"]
}

proptest! {
    #[test]
    fn serials_are_in_one_order(a in serial(), b in serial(), c in serial()) {
        let (a, b, c) = (Serial::read(&a), Serial::read(&b), Serial::read(&c));
        prop_assert_eq!(a.cmp(&b), b.cmp(&a).reverse());
        prop_assert_eq!(a.cmp(&b).is_eq(), a == b);
        if a <= b && b <= c {
            prop_assert!(a <= c);
        }
    }

    #[test]
    fn of_one_text_the_numbers_give_the_order(text in "[A-Z]{0,4}-?", a in any::<u64>(), b in any::<u64>(), zeros in 0usize..4) {
        let written = |n: u64| format!("{text}{}{n}", "0".repeat(zeros));
        let read = |n: u64| Serial::read(&written(n)).unwrap();
        prop_assert_eq!(read(a).cmp(&read(b)), a.cmp(&b));
    }

    #[test]
    fn a_number_is_in_a_range_when_it_lies_between_its_ends(
        text in "[A-Z]{1,4}-?", from in 0u64..3_000, more in 0u64..2_000, one in 0u64..6_000,
    ) {
        let ends = range(&format!("{text}{from}"), &format!("{text}{}", from + more));
        prop_assert_eq!(check(&ends), Ok(()));
        let of = CampaignSet { ranges: vec![ends], ..campaign() };
        let is = hit(&of, Some(&format!("{}{one:05}", text.to_lowercase())), None);
        prop_assert_eq!(is, if (from..=from + more).contains(&one) { Hit::Yes } else { Hit::No });
    }

    #[test]
    fn every_serial_is_told_something(serial in serial(), from in serial(), to in serial()) {
        // Whatever was entered, nothing panics, and blank is never left out.
        let of = CampaignSet { ranges: vec![range(&from, &to)], ..campaign() };
        let is = hit(&of, Some(&serial), None);
        if serial.trim().is_empty() {
            prop_assert_eq!(is, Hit::Look(LookWhy::NoSerial));
        }
    }
}
