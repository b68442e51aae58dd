//! The clocks against the worked month, the liar's cases, and each other. Invented data, outcomes worked by
//! rule, unless a source is named.

mod entered_twice;
mod fleet;
mod liars;
mod month;
mod order;
mod properties;
mod states;

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, NaiveDate};
use uuid::Uuid;

use super::*;
use crate::quantity::Tenths;

const OIL: &str = "oil-and-filters";
const COOLER: &str = "cooler-and-scavenge";
const SEPARATOR: &str = "separator";
const FIRST: &str = "first-service";

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn h(text: &str) -> Tenths {
    text.parse().unwrap()
}

fn hh(text: &str) -> Option<Tenths> {
    Some(h(text))
}

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn id(n: u128) -> Uuid {
    Uuid::from_u128(n)
}

/// A service at noon of a yard's day.
fn service(entry: u128, task: &str, hours: &str, on: &str) -> ServiceRow {
    ServiceRow {
        entry: id(entry),
        task: task.into(),
        hours: hh(hours),
        day: day(on),
        at: at(&format!("{on}T12:00:00-06:00")),
        oil_reason: false,
        brought_in: false,
    }
}

/// A unit's services with the usual programme.
#[derive(Default)]
struct Unit {
    in_service: Option<InService>,
    services: Vec<ServiceRow>,
    decisions: BTreeMap<Uuid, ServiceDecision>,
}

impl Unit {
    fn new(in_service: &str, hours: &str) -> Unit {
        let in_service = Some(InService { day: day(in_service), hours: h(hours) });
        Unit { in_service, ..Unit::default() }
    }

    fn done(mut self, task: &str, hours: &str, on: &str) -> Unit {
        let entry = self.services.len() as u128 + 1;
        self.services.push(service(entry, task, hours, on));
        self
    }

    fn clocks(&self) -> Vec<TaskClock> {
        task_clocks(&Programme::common_practice(), self.in_service.as_ref(), &self.services, &self.decisions)
    }

    fn clock(&self, task: &str) -> TaskClock {
        self.clocks().into_iter().find(|clock| clock.task.0 == task).unwrap()
    }

    /// Standing, hours left as shown, days left.
    fn stands(&self, task: &str, hours: &str, today: &str) -> (Standing, String, Option<i64>) {
        let state = self.clock(task).state(hh(hours), day(today));
        (state.standing, state.hours_left.map(|h| h.to_string()).unwrap_or_default(), state.days_left)
    }

    #[track_caller]
    fn due(&self, task: &str, hours: Option<&str>, on: &str) {
        let clock = self.clock(task);
        assert_eq!(clock.due_hours, hours.map(h), "{task} hours");
        assert_eq!(clock.due_day, Some(day(on)), "{task} day");
    }
}
