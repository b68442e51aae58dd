//! How a task of a unit stands at a moment: its clocks, the sites' dust, the pace and the oil together.

use chrono::{DateTime, FixedOffset, NaiveDate};
use chrono_tz::Tz;
use sumpbook_trade::Tenths;
use sumpbook_trade::clock::{FineHours, Standpoint, TaskClock, TaskState};
use sumpbook_trade::forecast::{Pace, RunsOut};
use sumpbook_trade::hours::Estimate;
use sumpbook_trade::wear::{Called, DueReading, due_reading};

use super::UnitState;

/// A task as it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaskNow {
    /// Standing, hours left and days left.
    pub state: TaskState,
    /// Hours used since it was last done, weighted where the task counts so: at most.
    pub used: Option<FineHours>,
    /// Of counted or estimated hours, used at least.
    pub used_least: Option<FineHours>,
    /// Of estimated hours, likely used.
    pub used_likely: Option<FineHours>,
    /// What the hours left mean on the meter; none without an hours clock or a figure.
    pub due_reading: Option<DueReading>,
    /// When the hours run out at the pace of the last weeks; none when they have, or no pace is known.
    pub runs_out: Option<RunsOut>,
    /// The oil calls for it now.
    pub called: Option<Called>,
}

impl UnitState {
    /// How `clock` stands at `now`, which the yard in `zone` calls `today`.
    pub fn stands(
        &self,
        clock: &TaskClock,
        today: NaiveDate,
        now: DateTime<FixedOffset>,
        zone: Tz,
    ) -> TaskNow {
        let hours = self.hours_at(now);
        let from = clock.from_hours;
        let plain = hours.zip(from).map(|(hours, from)| FineHours::from(hours - from));
        let weighted = self.wear.used.iter().find(|(task, _)| *task == clock.task).map(|(_, used)| *used);
        // Hours counted on since the fold weigh as the last ones did.
        let running = self.hours.due.zip(hours).map(|(then, now)| now - then);
        let on = running.map(|more| FineHours::weighted(more, self.wear.hundredths.saturating_mul(10)));
        let used = match clock.counts_weighted {
            true => weighted.zip(on).map(|(used, on)| used + on).or(plain),
            false => plain,
        };
        let weight = if clock.counts_weighted { self.wear.hundredths } else { 100 };
        let left = clock.interval_hours.zip(used).map(|(every, used)| FineHours::from(every) - used);
        let reading = left.zip(hours).and_then(|(left, hours)| due_reading(left, hours, weight));
        let runs_out = reading.and_then(|reading| self.pace_at(now)?.runs_out(reading.meter_left, zone));
        let runs_out = runs_out.filter(|_| !clock.closed);
        let from = Standpoint {
            used,
            today,
            earliest: runs_out.map(|out| out.earliest),
            likely: runs_out.map(|out| out.likely),
        };
        let called = self.called.filter(|_| clock.counts_weighted && !clock.closed);
        let state = clock.state_from(&from);
        // What was estimated by the day of the service stands on both sides of it.
        let since = |one: &&Estimate| {
            clock.last.is_none_or(|last| one.at.with_timezone(&zone).date_naive() > last.day)
        };
        let unsure = |pick: fn(&Estimate) -> Tenths| {
            let gap: Tenths =
                self.hours.estimates.iter().filter(since).map(pick).fold(Tenths::ZERO, |a, b| a + b);
            FineHours::weighted(gap, weight.saturating_mul(10))
        };
        let uncertain = self.hours.estimates.iter().any(|one| since(&one));
        let counted = self.hours.counted.as_ref().map(|counted| {
            FineHours::weighted(hours.unwrap_or_default() - counted.low, weight.saturating_mul(10))
        });
        let least = if uncertain { Some(unsure(|one| one.at_most() - one.low)) } else { counted };
        TaskNow {
            state: if called.is_some() { state.called() } else { state },
            used,
            used_least: used.zip(least).map(|(used, gap)| (used - gap).max(FineHours::ZERO)),
            used_likely: used
                .filter(|_| uncertain)
                .map(|used| (used - unsure(|one| one.at_most() - one.likely)).max(FineHours::ZERO)),
            due_reading: reading,
            runs_out,
            called,
        }
    }

    /// Hours the due list goes by at `now`: of a unit without a meter that was started and not stopped, up to now.
    pub fn hours_at(&self, now: DateTime<FixedOffset>) -> Option<Tenths> {
        let due = self.hours.due?;
        let open = self.hours.counted.as_ref().and_then(|counted| counted.open_since);
        let Some(since) = open.filter(|since| *since < now) else { return Some(due) };
        let ms = now.signed_duration_since(since).num_milliseconds();
        // A ten-thousandth of an hour is 360 ms; what is not sure is rounded outward (R14).
        Some(due + FineHours((ms + 359) / 360).tenths_up())
    }

    /// The pace, unless the last reading is too old to tell of today.
    pub fn pace_at(&self, now: DateTime<FixedOffset>) -> Option<&Pace> {
        self.hours.pace.as_ref().filter(|pace| !pace.stale_at(now))
    }
}
