//! What every unit was due on the first morning, Monday 19 October 06:00. Invented data, worked by rule.

use sumpbook_journeys::{at, day};
use sumpbook_shop::due::due_list;

use crate::month;

const OPENING: &str = "2026-10-19T06:00:00-06:00";
const OIL: &str = "oil-and-filters";
const COOLER: &str = "cooler-and-scavenge";
const SEPARATOR: &str = "separator";

/// Door, hours, oil due at hours and day, cooler due by, separator due at hours and day.
type Row = (&'static str, i64, Option<i64>, &'static str, &'static str, i64, &'static str);

const TABLE: [Row; 8] = [
    ("TH-01", 28_624, Some(29_180), "2027-02-12", "2026-11-20", 30_000, "2027-03-31"),
    ("TH-02", 12_047, Some(15_113), "2026-11-14", "2026-11-14", 30_000, "2026-11-30"),
    // 500 weighted hours from 402.6; no dust is told of yet, so each hour counts once.
    ("TH-03", 7_319, Some(9_026), "2027-04-08", "2027-04-08", 30_000, "2029-09-16"),
    ("TH-04", 3_842, Some(7_000), "2027-03-31", "2027-03-31", 30_000, "2028-03-06"),
    // New: the calendar of its oil runs from the day it went into service, beside the first service.
    ("TH-05", 386, None, "2027-09-28", "2027-09-28", 30_000, "2031-09-28"),
    ("TH-06", 14_460, Some(15_044), "2027-01-30", "2027-01-30", 30_000, "2027-01-18"),
    ("TH-07", 19_122, Some(21_902), "2027-06-15", "2027-06-15", 36_110, "2029-05-10"),
    ("TH-08", 6_110, Some(10_402), "2026-10-20", "2026-10-20", 30_000, "2027-06-15"),
];

#[test]
fn every_unit_opens_with_its_hours_and_three_dates_to_keep() {
    let lived = month();
    for (door, hours, oil_hours, oil_day, cooler_day, separator_hours, separator_day) in TABLE {
        let of = |task| {
            let row = lived.due(door, task, OPENING).unwrap_or_else(|| panic!("{door} {task}"));
            assert_eq!(row.hours.map(|hours| hours.0), Some(hours), "{door} {task}");
            (row.due_hours.map(|hours| hours.0), row.last_good_day)
        };
        let (oil_due, oil_by) = of(OIL);
        if oil_hours.is_some() {
            assert_eq!(oil_due, oil_hours, "{door}");
        }
        assert_eq!(oil_by, Some(day(oil_day)), "{door}");
        assert_eq!(of(COOLER), (None, Some(day(cooler_day))), "{door}");
        assert_eq!(of(SEPARATOR), (Some(separator_hours), Some(day(separator_day))), "{door}");
    }
}

#[test]
fn only_the_new_unit_has_a_first_service_ahead_of_it() {
    let lived = month();
    for (door, ..) in TABLE {
        let first = lived.due(door, "first-service", OPENING);
        match door {
            "TH-05" => {
                let row = first.unwrap();
                assert_eq!(row.due_hours.map(|hours| hours.0), Some(500));
                assert_eq!((row.hours_left.as_deref(), row.state.as_str()), (Some("11.4"), "far-off"));
            }
            _ => assert_eq!(first, None, "{door}"),
        }
    }
}

#[test]
fn the_first_morning_s_list_says_what_is_near() {
    let lived = month();
    let list = due_list(&lived.known(OPENING), at(OPENING)).unwrap();
    let near: Vec<(&str, &str, &str)> = list
        .rows
        .iter()
        .filter(|row| row.state != "far-off")
        .map(|row| (row.unit.as_str(), row.task.as_str(), row.said.as_str()))
        .collect();
    assert_eq!(
        near,
        [
            ("TH-08", COOLER, "coming up, 1 day left"),
            // 1,040.2 - 611.0
            ("TH-08", OIL, "coming up, 429.2 h left, 1 day left"),
            // 3,000.0 - 2,862.4
            ("TH-01", SEPARATOR, "coming up, 137.6 h left, 163 days left"),
        ]
    );
}

#[test]
fn a_unit_put_away_is_not_expected_out_and_its_calendar_runs_on() {
    let lived = month();
    let evening = lived.evening("2026-10-21", "2026-10-21T17:00:00-06:00");
    let stored = evening.not_reported.not_expected.iter().find(|row| row.unit == "TH-08").unwrap();
    assert_eq!(stored.said, "stored");
    // 2025-10-20 and twelve months: the last good day was Tuesday the 20th.
    assert_eq!(lived.said("TH-08", OIL, "2026-10-20T17:00:00-06:00"), "due today");
    assert_eq!(lived.said("TH-08", OIL, "2026-10-21T17:00:00-06:00"), "past due 1 day");
}
