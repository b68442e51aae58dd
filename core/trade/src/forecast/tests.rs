use chrono::{Datelike, NaiveDate, TimeDelta, Weekday};
use chrono_tz::America::Denver;
use proptest::prelude::*;

use super::*;
use crate::clock::{FineHours, Standing};
use crate::quantity::Tenths;

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn read(at: &str, total: i64) -> HoursAt {
    HoursAt { at: at.parse().unwrap(), total: Tenths(total) }
}

/// Readings at 16:00 of each day from a Monday on, with what each day used.
fn evenings(uses: &[i64]) -> Vec<HoursAt> {
    let mut at: chrono::DateTime<chrono::FixedOffset> = "2026-08-31T16:00:00-06:00".parse().unwrap();
    let mut total = 10_000;
    let mut readings = Vec::new();
    for used in uses {
        total += used;
        readings.push(HoursAt { at, total: Tenths(total) });
        at += TimeDelta::days(1);
    }
    readings
}

fn usual(readings: &[HoursAt]) -> Result<Pace, PaceUnknown> {
    pace(readings, Denver, ForecastNumbers::default())
}

// Invented data, outcome worked by rule: 75.5 h at 2.5 h a day are 30.2 days.
#[test]
fn an_even_pace_runs_out_on_the_day_it_says() {
    let readings: Vec<HoursAt> = (0..20)
        .map(|n| {
            let last: chrono::DateTime<chrono::FixedOffset> = "2026-11-13T16:00:00-07:00".parse().unwrap();
            HoursAt { at: last - TimeDelta::days(19 - n), total: Tenths(17_429 - 25 * (19 - n)) }
        })
        .collect();
    let pace = usual(&readings).unwrap();
    assert!((pace.per_day - 2.5).abs() < 1e-12);
    let out = pace.runs_out(FineHours(755_000), Denver).unwrap();
    assert_eq!(out.likely, day("2026-12-13"));
    assert_eq!((out.earliest, out.latest), (day("2026-12-13"), Some(day("2026-12-13"))), "no spread at all");
    assert!(!out.gone_by(day("2026-12-13")), "the likely day itself is not over");
    assert!(out.gone_by(day("2026-12-14")));
}

#[test]
fn too_little_is_unknown_and_never_zero() {
    assert_eq!(usual(&[]), Err(PaceUnknown::TooFewReadings));
    let two = [read("2026-10-01T16:00:00-06:00", 0), read("2026-10-20T16:00:00-06:00", 500)];
    assert_eq!(usual(&two), Err(PaceUnknown::TooFewReadings));
    let near = [
        read("2026-10-01T16:00:00-06:00", 0),
        read("2026-10-03T16:00:00-06:00", 50),
        read("2026-10-06T15:59:00-06:00", 90),
    ];
    assert_eq!(usual(&near), Err(PaceUnknown::TooFewDays));
    // Two of the three lie before the window.
    let old = [
        read("2026-06-01T16:00:00-06:00", 0),
        read("2026-07-01T16:00:00-06:00", 100),
        read("2026-10-06T16:00:00-06:00", 200),
    ];
    assert_eq!(usual(&old), Err(PaceUnknown::TooFewReadings));
}

#[test]
fn a_unit_that_stands_names_no_day() {
    let pace = usual(&evenings(&[0; 12])).unwrap();
    assert_eq!(pace.per_day, 0.0);
    assert_eq!(pace.runs_out(FineHours(100_000), Denver), None);
}

#[test]
fn what_has_run_out_needs_no_forecast() {
    let pace = usual(&evenings(&[50; 12])).unwrap();
    assert_eq!(pace.runs_out(FineHours(0), Denver), None);
    assert_eq!(pace.runs_out(FineHours(-10_000), Denver), None);
}

#[test]
fn a_last_reading_two_months_old_says_nothing_of_today() {
    let pace = usual(&evenings(&[50; 12])).unwrap();
    let at = |text: &str| text.parse::<chrono::DateTime<chrono::FixedOffset>>().unwrap();
    // Read last on 11 September at 16:00 -06:00.
    assert!(!pace.stale_at(at("2026-11-10T15:00:00-07:00")));
    assert!(pace.stale_at(at("2026-11-10T15:00:01-07:00")));
}

#[test]
fn a_working_week_is_seen_and_the_band_ends_on_working_days() {
    // Five days of about 6 h, two of none, for six weeks.
    let week = [58, 61, 60, 63, 58, 0, 0];
    let pace = usual(&evenings(&week.repeat(6))).unwrap();
    let shape = pace.week.unwrap();
    assert!(shape.use_on[5] == 0.0 && shape.use_on[6] == 0.0);
    assert!((shape.use_on.iter().sum::<f64>() - 7.0 * pace.per_day).abs() < 1e-9);
    for left in [60_000, 300_000, 750_000, 1_500_000] {
        let out = pace.runs_out(FineHours(left), Denver).unwrap();
        assert!(out.earliest <= out.likely && Some(out.likely) <= out.latest);
        let works = |d: NaiveDate| !matches!(d.weekday(), Weekday::Sat | Weekday::Sun);
        assert!(works(out.earliest) || out.earliest == out.likely);
    }
}

#[test]
fn morning_readings_tell_of_the_day_before() {
    let evening = evenings(&[60, 60, 60, 60, 60, 0, 0].repeat(6));
    let morning: Vec<HoursAt> =
        evening.iter().map(|r| HoursAt { at: r.at + TimeDelta::hours(14), ..*r }).collect();
    assert_eq!(usual(&morning).unwrap().week, usual(&evening).unwrap().week);
}

#[test]
fn even_days_show_no_week() {
    let uses: Vec<i64> = (0..42).map(|n| 40 + (n * 7919) % 13).collect();
    assert_eq!(usual(&evenings(&uses)).unwrap().week, None);
}

#[test]
fn one_wild_figure_does_not_bend_the_pace() {
    let mut readings = evenings(&[50; 30]);
    readings[12].total = Tenths(99_999);
    assert!((usual(&readings).unwrap().per_day - 5.0).abs() < 0.05);
}

#[test]
fn the_feed_counts_up_only_when_the_answer_is_another() {
    let out =
        RunsOut { earliest: day("2026-11-02"), likely: day("2026-11-05"), latest: Some(day("2026-11-09")) };
    let answer = FeedAnswer {
        standing: Standing::ComingUp,
        last_good_day: Some(day("2027-02-12")),
        runs_out: Some(out),
        planned: None,
    };
    assert_eq!(next_sequence(None, &answer), 0);
    assert_eq!(next_sequence(Some((4, &answer)), &answer.clone()), 4);
    let moved = FeedAnswer { runs_out: Some(RunsOut { likely: day("2026-11-06"), ..out }), ..answer.clone() };
    assert_eq!(next_sequence(Some((4, &answer)), &moved), 5);
    let unknown = FeedAnswer { runs_out: None, ..answer.clone() };
    assert_eq!(next_sequence(Some((5, &moved)), &unknown), 6);
}

/// A day's work of a simulated truck: most workdays some hours, now and then none.
fn simulated(seed: u64, days: usize, weekends: bool) -> Vec<i64> {
    let mut state = seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1;
    let mut next = move || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 11) as f64 / (1u64 << 53) as f64
    };
    let usual = 25.0 + 40.0 * next();
    (0..days)
        .map(|n| {
            let (idle, share) = (next() < 0.2, 0.3 + 1.4 * next());
            let off = !weekends && n % 7 > 4;
            if idle || off { 0 } else { (usual * share).round() as i64 }
        })
        .collect()
}

// The band is meant to hold the true day 8 times in 10. Simulated trucks, half of them with weekends off.
#[test]
fn the_band_holds_the_true_day_about_eight_times_in_ten() {
    let (mut held, mut all) = (0, 0);
    for seed in 1..=400 {
        let uses = simulated(seed, 140, seed % 2 == 0);
        let (past, to_come) = uses.split_at(56);
        let readings = evenings(past);
        let pace = usual(&readings).unwrap();
        let left = 600 + (seed as i64 % 7) * 100;
        let Some(out) = pace.runs_out(FineHours(left * 1_000), Denver) else { continue };
        let mut used = 0;
        let Some(n) = to_come.iter().position(|u| {
            used += u;
            used >= left
        }) else {
            continue;
        };
        let truly = day("2026-08-31") + TimeDelta::days(56 + n as i64);
        all += 1;
        held += i32::from(out.earliest <= truly && out.latest.is_none_or(|latest| truly <= latest));
    }
    assert!(all > 350, "{all}");
    let share = f64::from(held) / f64::from(all);
    assert!((0.70..=0.92).contains(&share), "{held} of {all}");
}

proptest! {
    #[test]
    fn shifting_days_shifts_the_answer(
        uses in proptest::collection::vec(0i64..120, 8..40), weeks in 1i64..200, left in 1i64..3_000_000
    ) {
        let readings = evenings(&uses);
        let later: Vec<HoursAt> =
            readings.iter().map(|r| HoursAt { at: r.at + TimeDelta::weeks(weeks), ..*r }).collect();
        let zone = chrono_tz::UTC;
        let of = |rows: &[HoursAt]| {
            pace(rows, zone, ForecastNumbers::default()).ok().and_then(|p| p.runs_out(FineHours(left), zone))
        };
        let moved = |out: RunsOut| RunsOut {
            earliest: out.earliest + TimeDelta::weeks(weeks),
            likely: out.likely + TimeDelta::weeks(weeks),
            latest: out.latest.map(|d| d + TimeDelta::weeks(weeks)),
        };
        prop_assert_eq!(of(&later), of(&readings).map(moved));
    }

    #[test]
    fn shifting_hours_changes_nothing(
        uses in proptest::collection::vec(0i64..120, 8..40), more in 0i64..100_000, left in 1i64..3_000_000
    ) {
        let readings = evenings(&uses);
        let higher: Vec<HoursAt> =
            readings.iter().map(|r| HoursAt { total: r.total + Tenths(more), ..*r }).collect();
        let of = |rows: &[HoursAt]| usual(rows).ok().and_then(|p| p.runs_out(FineHours(left), Denver));
        prop_assert_eq!(of(&higher), of(&readings));
    }

    #[test]
    fn more_left_never_runs_out_sooner(
        uses in proptest::collection::vec(0i64..120, 8..40), left in 1i64..2_000_000, more in 0i64..500_000
    ) {
        let Ok(pace) = usual(&evenings(&uses)) else { return Ok(()) };
        let (Some(a), Some(b)) =
            (pace.runs_out(FineHours(left), Denver), pace.runs_out(FineHours(left + more), Denver))
        else {
            return Ok(());
        };
        prop_assert!(a.earliest <= b.earliest && a.likely <= b.likely);
        prop_assert!(b.latest.is_none() || a.latest <= b.latest);
    }
}
