//! R7: the same task again too soon after is taken for the same service, entered twice.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::service::{EnteredTwice, LastDone, ServiceDecision, ServiceRow};
use super::state::Ahead;
use crate::quantity::Tenths;

/// The numbers of the clocks, the shop's to edit. `Default` gives a fleet's usual ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClockNumbers {
    /// When a task is coming up (R2).
    pub ahead: Ahead,
    /// The same task again within so many percent of its hours is entered twice (R7). Usual: 10.
    pub twice_percent: u32,
    /// And within so many days. Usual: 30.
    pub twice_days: u32,
}

impl Default for ClockNumbers {
    fn default() -> ClockNumbers {
        ClockNumbers { ahead: Ahead::default(), twice_percent: 10, twice_days: 30 }
    }
}

/// One service as it counts, with the entries that tell of it.
#[derive(Debug)]
pub(super) struct Event {
    pub(super) counts: LastDone,
    pub(super) twice: Vec<EnteredTwice>,
}

/// The services of one task, oldest first. `interval` is the task's hours.
///
/// Each entry is compared with the one before it, so three in a row within the window are one service until
/// the shop says otherwise: the doubt must never make a clock run longer.
pub(super) fn events(
    mut rows: Vec<&ServiceRow>,
    interval: Option<Tenths>,
    decisions: &BTreeMap<Uuid, ServiceDecision>,
    numbers: &ClockNumbers,
) -> Vec<Event> {
    rows.retain(|row| decisions.get(&row.entry) != Some(&ServiceDecision::DoesNotCount));
    rows.sort_by_key(|row| (row.day, row.at, row.entry));
    let mut seen = std::collections::BTreeSet::new();
    rows.retain(|row| seen.insert(row.entry));

    let joins = joins(&rows, decisions);
    let mut events: BTreeMap<usize, Event> = BTreeMap::new();
    let mut placed: BTreeMap<Uuid, usize> = BTreeMap::new();
    let mut before: Option<&ServiceRow> = None;
    for (n, row) in rows.into_iter().enumerate() {
        let said: Vec<Uuid> = joins.get(&row.entry).cloned().unwrap_or_default();
        let stands = row.oil_reason || decisions.get(&row.entry) == Some(&ServiceDecision::BothStand);
        let guessed = before
            .filter(|before| {
                !stands && !said.contains(&before.entry) && close(before, row, interval, numbers)
            })
            .map(|before| before.entry);
        let mut event = Event {
            counts: LastDone { entry: row.entry, hours: row.hours, day: row.day },
            twice: Vec::new(),
        };
        let agreed = matches!(decisions.get(&row.entry), Some(ServiceDecision::SameService { with }) if with.is_empty());
        let links = said.iter().map(|of| (*of, true)).chain(guessed.map(|of| (of, agreed)));
        for (first, settled) in links {
            if let Some(earlier) = placed.get(&first).and_then(|at| events.remove(at)) {
                event = merge(earlier, event);
            }
            event.twice.push(EnteredTwice { first, second: row.entry, settled });
        }
        // Everything merged into this event now answers to its place.
        for link in &event.twice {
            placed.insert(link.first, n);
            placed.insert(link.second, n);
        }
        placed.insert(row.entry, n);
        events.insert(n, event);
        before = Some(row);
    }
    let mut events: Vec<Event> = events.into_values().collect();
    events.sort_by_key(|event| (event.counts.day, event.counts.hours, event.counts.entry));
    events
}

/// The shop's "same service", turned so that the later entry points at the earlier ones.
fn joins(rows: &[&ServiceRow], decisions: &BTreeMap<Uuid, ServiceDecision>) -> BTreeMap<Uuid, Vec<Uuid>> {
    let place: BTreeMap<Uuid, usize> = rows.iter().enumerate().map(|(n, row)| (row.entry, n)).collect();
    let mut joins: BTreeMap<Uuid, Vec<Uuid>> = BTreeMap::new();
    for (entry, decision) in decisions {
        let ServiceDecision::SameService { with } = decision else { continue };
        for of in with {
            let (Some(a), Some(b)) = (place.get(entry), place.get(of)) else { continue };
            let (first, second) = match a.cmp(b) {
                std::cmp::Ordering::Less => (entry, of),
                std::cmp::Ordering::Greater => (of, entry),
                std::cmp::Ordering::Equal => continue,
            };
            let earlier = joins.entry(*second).or_default();
            if !earlier.contains(first) {
                earlier.push(*first);
            }
        }
    }
    joins
}

/// So soon after in hours or in days that it looks entered twice.
fn close(before: &ServiceRow, row: &ServiceRow, interval: Option<Tenths>, numbers: &ClockNumbers) -> bool {
    let soon =
        row.day.signed_duration_since(before.day).num_days().unsigned_abs() <= u64::from(numbers.twice_days);
    let near = match (before.hours, row.hours, interval) {
        (Some(a), Some(b), Some(every)) => {
            let part = every.0.saturating_mul(i64::from(numbers.twice_percent));
            a.apart(b).0.saturating_mul(100) <= part
        }
        _ => false,
    };
    soon || near
}

/// One service from two tellings: fewer hours and earlier date, each on its own.
fn merge(earlier: Event, later: Event) -> Event {
    let (a, b) = (earlier.counts, later.counts);
    let hours = match (a.hours, b.hours) {
        (Some(x), Some(y)) => Some(x.min(y)),
        (x, y) => x.or(y),
    };
    let entry = if b.day < a.day { b.entry } else { a.entry };
    let mut twice = earlier.twice;
    twice.extend(later.twice);
    Event { counts: LastDone { entry, hours, day: a.day.min(b.day) }, twice }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn how_soon_is_too_soon_is_the_shops_to_say() {
        let row = |entry: u128, day: &str, hours: i64| ServiceRow {
            entry: Uuid::from_u128(entry),
            task: super::super::TaskId("oil".to_owned()),
            hours: Some(Tenths(hours)),
            day: day.parse().unwrap(),
            at: format!("{day}T12:00:00+00:00").parse().unwrap(),
            oil_reason: false,
            brought_in: false,
        };
        // 20 days and 60 h apart, of an interval of 500 h.
        let rows = [row(1, "2026-10-01", 10_000), row(2, "2026-10-21", 10_600)];
        let count = |twice_days, twice_percent| {
            let numbers = ClockNumbers { twice_days, twice_percent, ..ClockNumbers::default() };
            events(rows.iter().collect(), Some(Tenths(5_000)), &BTreeMap::new(), &numbers).len()
        };
        assert_eq!(count(30, 10), 1, "within 30 days");
        assert_eq!((count(20, 0), count(19, 0)), (1, 2));
        assert_eq!((count(0, 12), count(0, 11)), (1, 2));
    }
}
