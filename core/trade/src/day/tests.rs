//! Days of the worked month, nights and clock changes. Invented data, outcomes worked by rule.

use chrono::{DateTime, FixedOffset, NaiveDate, NaiveTime};
use chrono_tz::America::Denver;
use uuid::Uuid;

use super::*;

const AMOS: Uuid = Uuid::from_u128(1);
const BETTINA: Uuid = Uuid::from_u128(2);
const IVO: Uuid = Uuid::from_u128(9);

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn out(from: &str) -> Roster {
    let expected_from = NaiveTime::parse_from_str(from, "%H:%M").ok();
    Roster { status: DayStatus::Out, expected_from }
}

fn walk(entry: u128, person: Uuid, signed: &str) -> PreTrip {
    PreTrip { signed_at: at(signed), entry: Uuid::from_u128(entry), person }
}

fn end(entry: u128, person: Uuid, signed: &str) -> EndOfDay {
    EndOfDay { at: at(signed), entry: Uuid::from_u128(entry), person }
}

fn used(entry: u128, what: UseKind, when: &str) -> Use {
    Use { at: at(when), entry: Uuid::from_u128(entry), what }
}

fn records<'a>(
    roster: Roster,
    walks: &'a [PreTrip],
    ends: &'a [EndOfDay],
    uses: &'a [Use],
) -> DayRecords<'a> {
    DayRecords { roster, pre_trips: walks, ends, uses, limit: DEFAULT_LIMIT, tz: Denver }
}

#[test]
fn the_yards_zone_says_which_day_it_is() {
    assert_eq!(yard_day(at("2026-10-20T05:30:00+00:00"), Denver), day("2026-10-19"));
    assert_eq!(yard_day(at("2026-10-19T23:59:59-06:00"), Denver), day("2026-10-19"));
    assert_eq!(yard_day(at("2026-10-20T01:00:00-05:00"), Denver), day("2026-10-20"));
}

#[test]
fn a_time_the_clock_shows_twice_is_the_first_and_one_it_skips_is_an_hour_on() {
    let half_past_one = NaiveTime::from_hms_opt(1, 30, 0).unwrap();
    let twice = yard_moment(day("2026-11-01"), half_past_one, Denver);
    assert_eq!(twice, Some(at("2026-11-01T01:30:00-06:00")));
    let half_past_two = NaiveTime::from_hms_opt(2, 30, 0).unwrap();
    let skipped = yard_moment(day("2026-03-08"), half_past_two, Denver);
    assert_eq!(skipped, Some(at("2026-03-08T03:30:00-06:00")));
}

#[test]
fn event_1_amos_is_done_at_06_32() {
    let walks = [walk(1, AMOS, "2026-10-19T06:32:00-06:00")];
    let state = day_state(
        day("2026-10-19"),
        at("2026-10-19T17:00:00-06:00"),
        &records(out("06:00"), &walks, &[], &[]),
    );
    let signed = at("2026-10-19T06:32:00-06:00");
    assert_eq!(state.heading, Heading::Done { at: signed, entry: Uuid::from_u128(1), person: AMOS });
}

#[test]
fn event_6_thursday_at_five_ivo_is_due_out_at_seven_and_not_missing() {
    let state =
        day_state(day("2026-10-22"), at("2026-10-22T17:00:00-06:00"), &records(out("19:00"), &[], &[], &[]));
    assert_eq!(state.heading, Heading::DueOut { at: at("2026-10-22T19:00:00-06:00") });
    assert!(!state.missing());
    let late =
        day_state(day("2026-10-22"), at("2026-10-22T19:00:00-06:00"), &records(out("19:00"), &[], &[], &[]));
    assert!(late.missing());
}

#[test]
fn event_6_friday_is_covered_by_the_night_and_not_missing() {
    let walks = [walk(1, IVO, "2026-10-22T18:52:00-06:00")];
    let ends = [end(2, IVO, "2026-10-23T04:40:00-06:00")];
    let uses = [
        used(3, UseKind::Start, "2026-10-22T23:10:00-06:00"),
        used(4, UseKind::Reading, "2026-10-23T02:25:00-06:00"),
    ];
    for roster in [out("19:00"), out("any time")] {
        let records = records(roster, &walks, &ends, &uses);
        let friday = day_state(day("2026-10-23"), at("2026-10-23T17:00:00-06:00"), &records);
        let Heading::Covered(span) = friday.heading else { panic!("{:?}", friday.heading) };
        assert_eq!((span.from, span.to), (at("2026-10-22T18:52:00-06:00"), at("2026-10-23T04:40:00-06:00")));
        assert!(!friday.missing());
        assert_eq!(friday.without, []);
        let thursday = day_state(day("2026-10-22"), at("2026-10-23T06:00:00-06:00"), &records);
        assert!(matches!(thursday.heading, Heading::Done { .. }));
    }
}

#[test]
fn a_night_that_ended_says_nothing_of_the_next_shift_once_that_is_due() {
    let walks = [walk(1, IVO, "2026-10-22T18:52:00-06:00")];
    let ends = [end(2, IVO, "2026-10-23T04:40:00-06:00")];
    let records = records(out("19:00"), &walks, &ends, &[]);
    let state = day_state(day("2026-10-23"), at("2026-10-23T20:00:00-06:00"), &records);
    assert!(state.missing());
    assert_eq!(state.covered.len(), 1, "the span is still shown");
}

#[test]
fn without_an_end_of_day_a_pre_trip_covers_fourteen_real_hours() {
    let walks = [walk(1, AMOS, "2026-10-19T06:30:00-06:00")];
    let span = coverages(&walks, &[], DEFAULT_LIMIT)[0];
    assert_eq!(span.to, at("2026-10-19T20:30:00-06:00"));
    assert!(span.holds(span.to));
    let late_report = [end(2, AMOS, "2026-10-19T20:30:01-06:00")];
    assert_eq!(coverages(&walks, &late_report, DEFAULT_LIMIT)[0].ended_by, None);
    // The clock goes back at 02:00: fourteen hours from 18:52 end at 07:52 by the wall.
    let night = [walk(1, IVO, "2026-10-31T18:52:00-06:00")];
    assert_eq!(coverages(&night, &[], DEFAULT_LIMIT)[0].to, at("2026-11-01T07:52:00-07:00"));
}

#[test]
fn what_no_pre_trip_covers_is_used_without_one() {
    let walks = [walk(1, AMOS, "2026-10-19T06:32:00-06:00")];
    let ends = [end(2, AMOS, "2026-10-19T16:30:00-06:00")];
    let uses = [
        used(6, UseKind::Drive, "2026-10-19T17:10:00-06:00"),
        used(1, UseKind::Reading, "2026-10-19T06:28:00-06:00"),
        used(3, UseKind::Drive, "2026-10-19T06:20:00-06:00"),
        used(4, UseKind::Start, "2026-10-19T09:00:00-06:00"),
        used(5, UseKind::Reading, "2026-10-19T16:30:00-06:00"),
        used(7, UseKind::Start, "2026-10-20T09:00:00-06:00"),
    ];
    let records = records(out("06:00"), &walks, &ends, &uses);
    let state = day_state(day("2026-10-19"), at("2026-10-19T18:00:00-06:00"), &records);
    let without: Vec<u128> = state.without.iter().map(|used| used.entry.as_u128()).collect();
    assert_eq!(without, [3, 6], "before the walk and after the report");
}

#[test]
fn a_hand_over_is_not_ended_by_the_first_driver_signing_off() {
    let walks = [walk(1, AMOS, "2026-10-19T06:32:00-06:00"), walk(2, BETTINA, "2026-10-19T11:55:00-06:00")];
    let amos_off = end(3, AMOS, "2026-10-19T12:00:00-06:00");
    let bettina_off = end(4, BETTINA, "2026-10-19T16:30:00-06:00");
    let spans = coverages(&walks, &[bettina_off, amos_off], DEFAULT_LIMIT);
    assert_eq!(spans[0].ended_by, Some(amos_off.entry));
    assert_eq!(spans[1].ended_by, Some(bettina_off.entry));
    let spans = coverages(&walks, &[bettina_off], DEFAULT_LIMIT);
    assert_eq!(spans[0].ended_by, Some(bettina_off.entry), "the truck's day is over for both");
    // Whoever has no walk of their own running ends what is running.
    let dov_off = end(5, Uuid::from_u128(40), "2026-10-19T15:00:00-06:00");
    let spans = coverages(&walks, &[dov_off], DEFAULT_LIMIT);
    assert!(spans.iter().all(|span| span.ended_by == Some(dov_off.entry)));
}

#[test]
fn a_unit_that_is_not_out_is_not_missing_but_its_use_is_still_seen() {
    let uses = [used(1, UseKind::Start, "2026-10-19T09:00:00-06:00")];
    for status in DayStatus::ALL.into_iter().filter(|status| *status != DayStatus::Out) {
        let roster = Roster { status, expected_from: None };
        let records = records(roster, &[], &[], &uses);
        let state = day_state(day("2026-10-19"), at("2026-10-19T17:00:00-06:00"), &records);
        assert_eq!(state.heading, Heading::NotExpected(status));
        assert_eq!(state.without, uses);
    }
}

#[test]
fn a_span_that_ends_at_midnight_does_not_cover_the_next_day() {
    let walks = [walk(1, AMOS, "2026-10-19T10:00:00-06:00")];
    let records = records(out("06:00"), &walks, &[], &[]);
    let next = day_state(day("2026-10-20"), at("2026-10-20T17:00:00-06:00"), &records);
    assert_eq!(next.covered, []);
    assert!(next.missing());
}
