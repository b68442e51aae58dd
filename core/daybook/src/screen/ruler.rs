//! The two clocks of a task, as the ruler draws them.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::{DueRow, EnteredTwice, FineHours, Nearer, Standing, TaskClock, due_order};
use sumpbook_trade::wear::WhyCalled;
use sumpbook_trade::{EntryId, Stamp, Tenths, TruckId};

use super::figures::LeftHours;
use crate::fleet::{Campaign, Fleet};
use crate::state::{TaskNow, UnitState};

/// One task with its two clocks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TaskRow {
    /// The task's id, and its text `task-...`. Of a maker's campaign it holds the words of what is to be done, too, and
    /// so does its text.
    pub id: String,
    /// How it stands.
    pub standing: Standing,
    /// The clock that runs out first.
    pub nearer: Nearer,
    /// Hours of its interval.
    pub every_hours: Option<Tenths>,
    /// Hours left or past.
    pub hours_left: Option<LeftHours>,
    /// What this meter shows when they run out.
    pub due_figure: Option<Tenths>,
    /// Thousandths of the hours interval used; over 1000 past due.
    pub hours_used_share: Option<i64>,
    /// Days left; negative when past.
    pub days_left: Option<i64>,
    /// The last good day.
    pub last_good_day: Option<NaiveDate>,
    /// Thousandths of the calendar interval used.
    pub days_used_share: Option<i64>,
    /// Where "coming up" begins on the hours' track, thousandths of the interval.
    pub hours_coming_up_share: Option<i64>,
    /// Where it begins on the calendar's.
    pub days_coming_up_share: Option<i64>,
    /// Its hours count by the site's dust: hours left and used are weighted.
    pub counts_weighted: bool,
    /// Hundredths an hour counts now; 100 where the dust makes no difference.
    pub weight: u32,
    /// Hours of the meter left, each counting as the last ones did, where they are not the hours left.
    pub meter_hours_left: Option<LeftHours>,
    /// When its hours run out at the pace of the last weeks; none when the pace is unknown or they have.
    pub forecast: Option<ForecastRow>,
    /// Thousandths of the hours interval used at least, where hours are counted or estimated: solid up to here,
    /// hatched from here to what is used at most.
    pub hours_used_least_share: Option<i64>,
    /// Thousandths likely used, where hours are estimated.
    pub hours_used_likely_share: Option<i64>,
    /// Hours left at most, where hours are counted or estimated; `hours_left` are at least left then.
    pub hours_left_at_most: Option<LeftHours>,
    /// Hours likely left, where hours are estimated.
    pub hours_left_likely: Option<LeftHours>,
    /// The oil calls for it now, and why: `called-...`.
    pub called: Option<CalledRow>,
    /// Entries that look like one service.
    pub entered_twice: Vec<EnteredTwice>,
    /// It waits for a part. It is still due.
    pub waiting: Option<WaitRow>,
}

/// When hours run out, as days of the yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ForecastRow {
    /// Not before, 9 times in 10.
    pub earliest: NaiveDate,
    /// Likely.
    pub likely: NaiveDate,
    /// Not after, 9 times in 10; none beyond ten years.
    pub latest: Option<NaiveDate>,
    /// Where the likely day lies on the calendar's track, thousandths of its interval; none without a calendar.
    pub likely_share: Option<i64>,
    /// The likely day lies before today: no hours that count were told since, for the text `forecast-gone-by`.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub gone_by: bool,
}

/// Oil that calls for its service.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CalledRow {
    /// Why.
    pub why: WhyCalled,
    /// Since when.
    pub since: Stamp,
}

/// Key of the words for why the oil calls.
pub fn called_key(why: WhyCalled) -> &'static str {
    match why {
        WhyCalled::WrongOil => "called-wrong-oil",
        WhyCalled::Milky => "called-milky",
        WhyCalled::Burnt => "called-burnt",
    }
}

/// A wait for a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WaitRow {
    /// Its entry.
    pub id: EntryId,
    /// Which part.
    pub part: String,
    /// Promised for this day.
    pub promised: Option<NaiveDate>,
}

/// Key of a standing's words.
pub fn standing_key(standing: Standing) -> &'static str {
    match standing {
        Standing::Closed => "standing-closed",
        Standing::FarOff => "standing-far-off",
        Standing::Unknown => "standing-unknown",
        Standing::ComingUp => "standing-coming-up",
        Standing::DueToday => "standing-due-today",
        Standing::PastDue => "standing-past-due",
    }
}

/// The tasks of a unit in the order in which they run out.
pub(super) fn tasks(fleet: &Fleet, truck: TruckId, state: &UnitState, now: Stamp) -> Vec<TaskRow> {
    let today = fleet.yard_day(now);
    let door = fleet.door(truck);
    let in_service = fleet.trucks.get(&truck).map(|t| t.in_service);
    let stands = |clock: &TaskClock| state.stands(clock, today, now.moment(), fleet.zone);
    let mut order: Vec<DueRow> = state
        .clocks
        .iter()
        .map(|clock| {
            let task = stands(clock);
            DueRow::new(&door, clock, task.state, task.runs_out.map(|out| out.likely), today)
        })
        .collect();
    due_order(&mut order);
    order
        .iter()
        .filter_map(|due| {
            let clock = state.clocks.iter().find(|clock| clock.task == due.task)?;
            let mut row = row(clock, due, state, &stands(clock), (in_service, today));
            if let Some(campaign) = fleet.campaigns.get(&clock.task).and_then(Campaign::now) {
                row.id = format!("{}: {}", row.id, campaign.words);
            }
            Some(row)
        })
        .collect()
}

fn row(
    clock: &TaskClock,
    due: &DueRow,
    state: &UnitState,
    task: &TaskNow,
    (in_service, today): (Option<NaiveDate>, NaiveDate),
) -> TaskRow {
    let of_hours = |used: FineHours| share(used.0, FineHours::from(clock.interval_hours?).0);
    let left = |used: FineHours| Some(LeftHours::of(FineHours::from(clock.interval_hours?) - used));
    let from_day = clock.last.map(|last| last.day).or(in_service);
    let days = |to: NaiveDate, from: NaiveDate| to.signed_duration_since(from).num_days();
    let on_calendar = |day: NaiveDate| {
        let (from, to) = from_day.zip(clock.due_day)?;
        share(days(day, from), days(to, from))
    };
    let (hours_coming_up_share, days_coming_up_share) = clock.coming_up_from(from_day);
    let weighs = task.due_reading.filter(|reading| reading.hundredths != 100);
    let estimated: Tenths = state.hours.estimates.iter().fold(Tenths::ZERO, |sum, one| sum + one.at_most());
    let wait = state.waiting.iter().find(|wait| wait.what.task.as_ref() == Some(&clock.task));
    TaskRow {
        id: clock.task.0.clone(),
        standing: due.state.standing,
        nearer: due.state.nearer,
        every_hours: clock.interval_hours,
        hours_left: due.state.hours_left.map(LeftHours::of),
        due_figure: weighs
            .map(|reading| reading.at)
            .or(clock.due_hours)
            .map(|hours| hours - state.hours.offset - estimated),
        hours_used_share: task.used.and_then(of_hours),
        days_left: due.state.days_left,
        last_good_day: clock.due_day,
        days_used_share: on_calendar(today),
        hours_coming_up_share,
        days_coming_up_share,
        counts_weighted: clock.counts_weighted,
        weight: weighs.map_or(100, |reading| reading.hundredths),
        meter_hours_left: weighs.map(|reading| LeftHours::of(reading.meter_left)),
        forecast: task.runs_out.map(|out| ForecastRow {
            earliest: out.earliest,
            likely: out.likely,
            latest: out.latest,
            likely_share: on_calendar(out.likely),
            gone_by: out.gone_by(today),
        }),
        hours_used_least_share: task.used_least.and_then(of_hours),
        hours_used_likely_share: task.used_likely.and_then(of_hours),
        hours_left_at_most: task.used_least.and_then(left),
        hours_left_likely: task.used_likely.and_then(left),
        called: task.called.map(|called| CalledRow { why: called.why, since: called.since.into() }),
        entered_twice: clock.entered_twice.clone(),
        waiting: wait.map(|wait| WaitRow {
            id: wait.entry,
            part: wait.what.part.clone(),
            promised: wait.what.promised,
        }),
    }
}

fn share(used: i64, of: i64) -> Option<i64> {
    (of > 0).then(|| used.max(0).saturating_mul(1_000) / of)
}
