//! R3 by cases. All units and people are invented; every outcome is worked by the rule.

mod ceiling;
mod counted;
mod exchanges;
mod keyboard;
mod moments;
mod month;
mod persons;
mod properties;
mod runs;

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, TimeDelta};
use uuid::Uuid;

use super::*;
use crate::quantity::Tenths;

/// The rows of one meter, entries numbered by the test.
#[derive(Clone, Debug, Default)]
struct Meter {
    readings: Vec<ReadingRow>,
    exchanges: Vec<ExchangeRow>,
    decisions: BTreeMap<Uuid, Settlement>,
}

fn id(n: u128) -> Uuid {
    Uuid::from_u128(n)
}

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

/// `hours` after Monday 5 October 2026, 06:00 in the yard.
fn hour(hours: i64) -> DateTime<FixedOffset> {
    at("2026-10-05T06:00:00-06:00") + TimeDelta::hours(hours)
}

fn h(text: &str) -> Tenths {
    text.parse().unwrap()
}

impl Meter {
    fn read(mut self, n: u128, at: DateTime<FixedOffset>, figure: &str) -> Meter {
        self.readings.push(ReadingRow {
            entry: id(n),
            at,
            figure: h(figure),
            order: n as u64,
            source_brought_in: false,
        });
        self
    }

    fn exchange(mut self, n: u128, at: DateTime<FixedOffset>, end: Option<&str>, start: &str) -> Meter {
        self.exchanges.push(ExchangeRow {
            entry: id(n),
            at,
            old_end: end.map(h),
            new_start: h(start),
            went_round: false,
        });
        self
    }

    fn turn(mut self, n: u128, at: DateTime<FixedOffset>, end: &str) -> Meter {
        self.exchanges.push(ExchangeRow {
            entry: id(n),
            at,
            old_end: Some(h(end)),
            new_start: h("0.0"),
            went_round: true,
        });
        self
    }

    fn decide(mut self, n: u128, settlement: Settlement) -> Meter {
        self.decisions.insert(id(n), settlement);
        self
    }

    fn judge(&self) -> HoursLedger {
        HoursLedger::judge(&self.readings, &self.exchanges, &self.decisions)
    }
}

fn row(ledger: &HoursLedger, n: u128) -> &JudgedReading {
    ledger.rows().iter().find(|r| r.entry == id(n)).unwrap()
}

fn verdict(ledger: &HoursLedger, n: u128) -> Verdict {
    row(ledger, n).verdict
}

/// Why, and the numbers of the entries on each side.
fn asked(ledger: &HoursLedger) -> Vec<(QuestionWhy, Vec<u128>, Vec<u128>)> {
    let numbers = |entries: &[Uuid]| entries.iter().map(Uuid::as_u128).collect();
    ledger.open_questions().iter().map(|q| (q.why, numbers(&q.standing), numbers(&q.disputing))).collect()
}

fn due(ledger: &HoursLedger) -> Tenths {
    ledger.for_due().unwrap().hours
}
