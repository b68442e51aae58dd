//! The due list's forecast: 10,000 units with 200 readings each, on two threads.

use std::hint::black_box;
use std::time::Duration;

use chrono::{DateTime, FixedOffset, TimeDelta};
use chrono_tz::America::Denver;
use sumpbook_trade::Tenths;
use sumpbook_trade::clock::FineHours;
use sumpbook_trade::forecast::{ForecastNumbers, HoursAt, pace};

use crate::said::{time, timed};

const UNITS: u64 = 10_000;
const READINGS: u64 = 200;
const LIMIT: Duration = Duration::from_secs(1);

/// A unit read each morning and each evening, with weekends off and no two days alike.
fn readings(unit: u64) -> Vec<HoursAt> {
    let mut at: DateTime<FixedOffset> = "2026-07-06T06:30:00-06:00".parse().unwrap();
    let (mut total, mut state) = (10_000, unit | 1);
    (0..READINGS)
        .map(|n| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let works = n % 2 == 1 && (n / 2) % 7 < 5;
            total += if works { 20 + (state >> 58) as i64 } else { 0 };
            let reading = HoursAt { at, total: Tenths(total) };
            at += if n % 2 == 0 { TimeDelta::hours(10) } else { TimeDelta::hours(14) };
            reading
        })
        .collect()
}

pub(crate) fn run() {
    let fleet: Vec<Vec<HoursAt>> = (0..UNITS).map(readings).collect();
    let (took, named) = timed(|| {
        std::thread::scope(|scope| {
            let work = |half: &[Vec<HoursAt>]| half.iter().filter(|rows| names_a_day(rows)).count();
            let halves = fleet.chunks(fleet.len().div_ceil(2));
            let running: Vec<_> = halves.map(|half| scope.spawn(move || work(half))).collect();
            running.into_iter().map(|thread| thread.join().unwrap()).sum::<usize>()
        })
    });
    time(&format!("forecast of {named} units, {READINGS} readings each, two threads"), took, LIMIT);
}

fn names_a_day(rows: &[HoursAt]) -> bool {
    let pace = pace(black_box(rows), Denver, ForecastNumbers::default());
    pace.is_ok_and(|pace| pace.runs_out(FineHours(755_000), Denver).is_some())
}
