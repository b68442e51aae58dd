//! Units without a meter, and meters that stood still. Invented data, outcomes worked by rule.

use chrono::{DateTime, FixedOffset};
use proptest::prelude::*;
use uuid::Uuid;

use super::super::*;
use crate::clock::FineHours;
use crate::quantity::Tenths;

fn at(text: &str) -> DateTime<FixedOffset> {
    format!("2026-10-{text}:00-06:00").parse().unwrap()
}

fn mark(n: u128, when: &str, kind: MarkKind) -> Mark {
    Mark { entry: Uuid::from_u128(n), at: at(when), kind }
}

const NOW: &str = "21T12:00";

fn of(marks: &[Mark]) -> Counted {
    counted(Tenths(3_842), at("20T06:00"), marks, at(NOW))
}

fn shown(counted: &Counted) -> (Tenths, Tenths) {
    (counted.at_least(), counted.for_due())
}

#[test]
fn a_run_with_both_ends_is_sure() {
    let one = of(&[mark(1, "20T08:00", MarkKind::Start), mark(2, "20T10:30", MarkKind::Stop)]);
    assert_eq!(shown(&one), (Tenths(3_867), Tenths(3_867)));
    assert_eq!(one.runs[0].ends, RunEnds::Both);
}

#[test]
fn a_missing_stop_runs_to_the_next_mark_of_any_kind() {
    for next in [MarkKind::Start, MarkKind::Report] {
        let one = of(&[
            mark(1, "20T08:00", MarkKind::Start),
            mark(2, "20T10:30", next),
            mark(3, "20T16:00", MarkKind::Report),
        ]);
        assert_eq!(one.runs[0].ends, RunEnds::NoStop);
        assert_eq!(one.runs[0].to, at("20T10:30"));
        assert_eq!(one.at_least(), Tenths(3_842), "nothing of it is sure");
    }
    let open = of(&[mark(1, "21T08:00", MarkKind::Start)]);
    assert_eq!(shown(&open), (Tenths(3_842), Tenths(3_882)), "to now");
    assert_eq!(open.runs[0].ends, RunEnds::StillOpen);
}

#[test]
fn a_missing_start_runs_back_to_the_mark_before() {
    let one = of(&[mark(1, "20T06:30", MarkKind::Report), mark(2, "20T11:00", MarkKind::Stop)]);
    assert_eq!(shown(&one), (Tenths(3_842), Tenths(3_887)));
    assert_eq!(one.runs[0].ends, RunEnds::NoStart);
}

#[test]
fn a_stop_with_no_mark_before_it_runs_back_to_the_figure() {
    let one = of(&[mark(2, "20T11:00", MarkKind::Stop)]);
    assert_eq!(shown(&one), (Tenths(3_842), Tenths(3_892)));
    assert_eq!((one.runs[0].from, one.runs[0].ends), (at("20T06:00"), RunEnds::NoStart));
}

#[test]
fn a_figure_read_while_it_runs_is_no_end_of_the_run() {
    let started = mark(1, "20T05:00", MarkKind::Start);
    let one = of(&[started, mark(2, "20T08:00", MarkKind::Stop)]);
    assert_eq!(shown(&one), (Tenths(3_862), Tenths(3_862)), "what ran before the figure is in it");
    assert_eq!(of(&[started]).runs[0].ends, RunEnds::StillOpen);
    let ended = mark(2, "20T06:00", MarkKind::Stop);
    assert_eq!(of(&[started, ended]).runs, [], "read with the stop");
}

#[test]
fn the_two_bounds_are_rounded_outward() {
    let seconds = |n| at("20T08:00") + chrono::TimeDelta::seconds(n);
    let marks = [
        Mark { entry: Uuid::from_u128(1), at: seconds(0), kind: MarkKind::Start },
        Mark { entry: Uuid::from_u128(2), at: seconds(361), kind: MarkKind::Stop },
    ];
    let one = of(&marks);
    assert_eq!(shown(&one), (Tenths(3_843), Tenths(3_844)), "361 s are more than a tenth");
}

#[test]
fn the_night_the_clocks_go_back_has_its_real_hours() {
    let marks = [
        Mark {
            entry: Uuid::from_u128(1),
            at: "2026-11-01T00:50:00-06:00".parse().unwrap(),
            kind: MarkKind::Start,
        },
        Mark {
            entry: Uuid::from_u128(2),
            at: "2026-11-01T01:40:00-07:00".parse().unwrap(),
            kind: MarkKind::Stop,
        },
    ];
    let night = counted(Tenths::ZERO, marks[0].at, &marks, "2026-11-02T00:00:00-07:00".parse().unwrap());
    assert_eq!(night.high, FineHours(18_334), "1 h 50 min");
}

// Meter dead at 812.0; a new one from 0.0 after 20 workdays shows 25.5; likely 4 h a day, at most 12.
#[test]
fn case_4_an_estimate_is_shown_whole_and_counts_by_its_high_figure() {
    let gap = Estimate::of_workdays(at("19T08:00"), 20, Tenths::hours(4), Tenths::hours(12));
    assert!(gap.is_in_order());
    let read = Tenths(8_120) + Tenths(255);
    let hours = with_estimates(read, Some(at(NOW)), &[gap]);
    assert_eq!(hours.low, Some(Tenths(8_375)));
    assert_eq!(hours.likely, Some(Tenths(9_175)));
    assert_eq!(hours.hours, Some(Tenths(10_775)));
}

#[test]
fn no_estimate_is_no_estimate_and_one_out_of_order_hides_nothing() {
    let plain = with_estimates(Tenths(100), None, &[]);
    assert_eq!((plain.hours, plain.likely, plain.low), (Some(Tenths(100)), None, None));
    let wrong = Estimate { at: at(NOW), low: Tenths(50), likely: Tenths(10), high: Tenths(20) };
    assert!(!wrong.is_in_order());
    assert_eq!(with_estimates(Tenths(100), None, &[wrong]).hours, Some(Tenths(150)));
}

proptest! {
    #[test]
    fn the_low_bound_is_never_above_the_high_one_and_both_only_grow(
        kinds in proptest::collection::vec((0usize..3, 1i64..600), 1..40)
    ) {
        let begins = at("01T00:00");
        let mut when = begins;
        let mut marks = Vec::new();
        let mut last = (FineHours::from(Tenths(3_842)), FineHours::from(Tenths(3_842)));
        for (n, (kind, minutes)) in kinds.into_iter().enumerate() {
            when += chrono::TimeDelta::minutes(minutes);
            let kind = [MarkKind::Start, MarkKind::Stop, MarkKind::Report][kind];
            marks.push(Mark { entry: Uuid::from_u128(n as u128), at: when, kind });
            let now = counted(Tenths(3_842), begins, &marks, when);
            prop_assert!(now.low <= now.high);
            prop_assert!(now.low >= last.0 && now.high >= last.1);
            let mut other = marks.clone();
            other.reverse();
            prop_assert_eq!(&counted(Tenths(3_842), begins, &other, when), &now);
            last = (now.low, now.high);
        }
    }
}
