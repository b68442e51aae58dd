//! What is due on one unit: its tasks with their two clocks drawn as rulers.

use chrono::NaiveDate;
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::state::PlannedNow;
use sumpbook_daybook::state::estimated_by;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::clock::{Standing, TaskClock};
use sumpbook_trade::{Stamp, Tenths};

use super::view::Reading;
use crate::ShopError;
use crate::console::due_words;
use crate::console::ruler::{self, Span, Track};
use crate::console::table::{Table, said};
use crate::console::words::Words;
use crate::due::{self, DueRow};

/// A task with its clocks.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct TaskView {
    /// As the due list has it.
    #[serde(flatten)]
    pub(super) due: DueRow,
    /// Hours of its interval.
    pub(super) every_hours: Option<Tenths>,
    /// What this meter shows when the hours run out.
    pub(super) due_figure: Option<Tenths>,
    /// Last done.
    pub(super) last: Option<Last>,
    /// Two entries look like its last service and nobody has said so.
    pub(super) entered_twice: bool,
    /// When the oil began to call for it.
    pub(super) called_since: Option<Stamp>,
    /// The hours are estimated and not counted.
    pub(super) estimated: bool,
    /// The hours as they are drawn.
    pub(super) hours_track: Option<Track>,
    /// The calendar as it is drawn.
    pub(super) days_track: Option<Track>,
    /// When the hours run out, on the calendar as it is drawn.
    pub(super) runs_out: Option<Span>,
    /// The visit it is planned for.
    pub(super) visit: Option<Visit>,
}

/// A service as its clock has it.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Last {
    pub(super) day: NaiveDate,
    pub(super) hours: Option<Tenths>,
}

/// A visit to come.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Visit {
    pub(super) day: NaiveDate,
    pub(super) where_and_who: Option<String>,
}

pub(super) fn read(of: &Reading<'_>, door: &str) -> Result<Vec<TaskView>, ShopError> {
    let states = [(door, of.state)];
    let list = due::list(of.ledger, of.yard, &states, Standing::FarOff)?;
    let plans = plans(of);
    let in_service = of.ledger.fleet().trucks.get(&of.truck).map(|truck| truck.in_service);
    let earlier = of.state.hours.offset;
    let (estimates, zone) = (&of.state.hours.estimates, of.ledger.fleet().zone);
    let guessed = estimates.iter().fold(Tenths::ZERO, |sum, one| sum + one.at_most());
    let mut tasks = Vec::new();
    for due in list.into_every_row() {
        let clock = of.state.clocks.iter().find(|clock| clock.task.0 == due.task);
        let Some(clock) = clock else { continue };
        let plan = plans.iter().find(|plan| plan.tasks.contains(&clock.task));
        let both = nearer(&due);
        tasks.push(TaskView {
            every_hours: clock.interval_hours,
            due_figure: due.due_hours.map(|hours| hours - earlier - guessed),
            last: clock.last.map(|last| Last {
                day: last.day,
                hours: last.hours.map(|hours| hours - estimated_by(estimates, last.day, zone)),
            }),
            entered_twice: clock.entered_twice.iter().any(|two| !two.settled),
            called_since: called(of, &due),
            estimated: due.hours_left_likely.is_some(),
            hours_track: hours_track(clock, &due, both.0),
            days_track: days_track(clock, &due, in_service, both.1),
            runs_out: runs_out(clock, &due, in_service),
            visit: plan.map(|plan| Visit { day: plan.day, where_and_who: plan.where_and_who.clone() }),
            due,
        });
    }
    Ok(tasks)
}

/// Visits planned for today and later, soonest first: as they stand, moved ones where they were moved to.
fn plans<'a>(of: &Reading<'a>) -> Vec<&'a PlannedNow> {
    let mut plans: Vec<&PlannedNow> =
        of.state.planned.iter().filter(|plan| plan.day >= of.yard.day).collect();
    plans.sort_by_key(|plan| plan.day);
    plans
}

/// Whether the hours, and whether the calendar, may be the first to run out: both where no pace tells.
fn nearer(due: &DueRow) -> (bool, bool) {
    match due.runs_out_first.as_str() {
        "hours" => (true, false),
        "calendar" => (false, true),
        _ => (true, true),
    }
}

fn called(of: &Reading<'_>, due: &DueRow) -> Option<Stamp> {
    of.state.called.filter(|_| due.called_by.is_some()).map(|called| of.yard.stamp(called.since))
}

/// Worked from what is left, so that it never says another thing than the words.
fn hours_track(clock: &TaskClock, due: &DueRow, nearer: bool) -> Option<Track> {
    let every = clock.interval_hours.filter(|every| every.0 > 0)?;
    // Within bounds any interval gives; cut to what is drawn anyhow.
    let used = |left: f64| (1_000.0 - 1_000.0 * left / every.as_hours()).clamp(0.0, 9_999.0).round() as i64;
    let left = figure(due.hours_left.as_deref())?;
    let least = figure(due.hours_left_at_most.as_deref()).map(used);
    Some(Track { used: used(left), least, coming_from: clock.coming_up_from(None).0?, nearer })
}

fn figure(text: Option<&str>) -> Option<f64> {
    text?.parse().ok()
}

fn days_track(clock: &TaskClock, due: &DueRow, in_service: Option<NaiveDate>, nearer: bool) -> Option<Track> {
    let (left, end) = (due.days_left?, due.last_good_day?);
    let from = clock.last.map(|last| last.day).or(in_service)?;
    let of = end.signed_duration_since(from).num_days();
    let share = |days: i64| (of > 0).then(|| days.saturating_mul(1_000) / of);
    Some(Track {
        used: share(of.saturating_sub(left))?.clamp(0, 9_999),
        least: None,
        coming_from: clock.coming_up_from(Some(from)).1?,
        nearer,
    })
}

/// The forecast's days as shares of the calendar's interval.
fn runs_out(clock: &TaskClock, due: &DueRow, in_service: Option<NaiveDate>) -> Option<Span> {
    let (forecast, end) = (due.forecast?, due.last_good_day?);
    let from = clock.last.map(|last| last.day).or(in_service)?;
    let of = end.signed_duration_since(from).num_days();
    let share = |day: NaiveDate| {
        let days = day.signed_duration_since(from).num_days().max(0);
        (of > 0).then(|| days.saturating_mul(1_000) / of)
    };
    Some(Span {
        earliest: share(forecast.earliest)?,
        likely: share(forecast.likely)?,
        latest: forecast.latest.and_then(share),
    })
}

pub(super) fn draw(words: &Words, tasks: &[TaskView]) -> Markup {
    if tasks.is_empty() {
        return html! { p { (words.t("no-programme")) } };
    }
    let heads = ["head-task", "head-last-done", "head-ruler", "head-state", "head-part", "head-visit"];
    let rows = tasks.iter().map(|task| {
        vec![
            html! {
                (words.task(&task.due.task))
                @if let Some(campaign) = &task.due.campaign { br; (due_words::campaign(words, campaign)) }
            },
            said(last(words, task)),
            ruler(words, task),
            due_words::state(words, &task.due),
            said(due_words::part(words, task.due.waiting_for.as_ref())),
            said(visit(words, task)),
        ]
    });
    Table::new("due-table", &words.t("part-due"), heads.map(|key| words.t(key))).rows(rows).draw()
}

fn last(words: &Words, task: &TaskView) -> String {
    let Some(last) = task.last else { return words.t("never-done") };
    let day = words.short_day(last.day);
    let hours = last.hours.map_or_else(|| words.t("no-hours"), |hours| format!("{} h", words.hours(hours)));
    match task.entered_twice {
        true => format!("{day}, {hours} ({})", words.t("entered-twice")),
        false => format!("{day}, {hours}"),
    }
}

/// The tracks between their words: hours above, calendar below.
fn ruler(words: &Words, task: &TaskView) -> Markup {
    let class = |track: Option<Track>| match track {
        Some(Track { nearer: true, .. }) => "ruler-words nearer",
        _ => "ruler-words",
    };
    html! {
        @if task.every_hours.is_some() {
            span class=(class(task.hours_track)) { (hours_words(words, task)) }
        }
        (ruler::draw(task.hours_track, task.days_track, task.runs_out))
        @if task.due.last_good_day.is_some() {
            span class=(class(task.days_track)) { (days_words(words, task)) }
        }
        @for said in beside(words, task) { span class="ruler-words" { (said) } }
    }
}

/// What is told beside the two clocks: the forecast, bounds, weights, and that the oil calls.
fn beside(words: &Words, task: &TaskView) -> Vec<String> {
    let due = &task.due;
    let left = figure(due.hours_left.as_deref()).unwrap_or_default();
    let unknown = task.every_hours.is_some() && left > 0.0 && due.last_good_day.is_some();
    let forecast = due_words::forecast(words, due);
    let forecast = forecast.or_else(|| unknown.then(|| words.t("pace-unknown")));
    [called_words(words, task), bounds(words, task), weights(words, task), forecast]
        .into_iter()
        .flatten()
        .collect()
}

/// "Due now: another oil family was poured. Tue 27 Oct 21:40"
fn called_words(words: &Words, task: &TaskView) -> Option<String> {
    let why = task.due.called_by.as_deref()?;
    let since = words.at_or(task.called_since, "not-said");
    Some(format!("{} {since}", words.t(&format!("called-{why}"))))
}

/// Hours that are counted or estimated, with their bounds.
fn bounds(words: &Words, task: &TaskView) -> Option<String> {
    let due = &task.due;
    if !due_words::is_bound(due) {
        return None;
    }
    let told = |left: &Option<String>| Some(due_words::tenth(words, figure(left.as_deref())?));
    let (least, most) = (told(&due.hours_left)?, told(&due.hours_left_at_most)?);
    let likely = told(&due.hours_left_likely).unwrap_or_default();
    let key = if task.estimated { "ruler-estimated" } else { "ruler-counted" };
    let args = [("least", Arg::Text(&least)), ("likely", Arg::Text(&likely)), ("most", Arg::Text(&most))];
    Some(words.with(key, &args))
}

/// "Weighted: an hour counts 1.5 now, so 13.4 h on the meter, to 790.4."
fn weights(words: &Words, task: &TaskView) -> Option<String> {
    let due = &task.due;
    let weight = due.weight;
    if !due.counts_weighted || weight == 100 {
        return None;
    }
    let weight = f64::from(weight) / 100.0;
    let weight = weight.to_string();
    let meter = figure(due.meter_hours_left.as_deref()).filter(|left| *left > 0.0);
    let Some((meter, at)) = meter.zip(task.due_figure) else {
        return Some(words.with("ruler-weighted-past", &[("weight", Arg::Text(&weight))]));
    };
    let (meter, at) = (due_words::tenth(words, meter), words.hours(at));
    let args = [("weight", Arg::Text(&weight)), ("meter", Arg::Text(&meter)), ("at", Arg::Text(&at))];
    Some(words.with("ruler-weighted", &args))
}

/// "33.1 h left of 500.0, due at 2,918.0", "6.1 h past 500.0, was due at 2,918.0".
fn hours_words(words: &Words, task: &TaskView) -> String {
    let every = task.every_hours.map_or_else(String::new, |every| words.hours(every));
    let at = task.due_figure.map_or_else(|| words.t("not-said"), |figure| words.hours(figure));
    let Some(left) = figure(task.due.hours_left.as_deref()) else {
        return words.with("ruler-hours-unknown", &[("every", Arg::Text(&every))]);
    };
    let (key, hours) = match left <= -0.1 {
        true => ("ruler-hours-past", due_words::tenth(words, -left)),
        false => ("ruler-hours", due_words::tenth(words, left.max(0.0))),
    };
    let args = [("hours", Arg::Text(&hours)), ("every", Arg::Text(&every)), ("at", Arg::Text(&at))];
    let mut said = words.with(key, &args);
    if task.due.counts_weighted {
        said = format!("{said} ({})", words.t("task-weighted"));
    }
    said
}

/// "109 days left, last good day Fri 12 Feb 2027". What is called for now has no such day to wait for.
fn days_words(words: &Words, task: &TaskView) -> String {
    if task.due.called_by.is_some() {
        return words.t("none-dash");
    }
    let day = task.due.last_good_day.map_or_else(String::new, |day| words.plain_day(day));
    let (key, days) = match task.due.days_left {
        Some(left) if left < 0 => ("ruler-days-past", left.saturating_neg()),
        Some(left) => ("ruler-days", left),
        None => return day,
    };
    words.with(key, &[("days", Arg::Count(days)), ("day", Arg::Text(&day))])
}

fn visit(words: &Words, task: &TaskView) -> String {
    let Some(visit) = &task.visit else { return words.t("none-dash") };
    let day = words.short_day(visit.day);
    match &visit.where_and_who {
        Some(who) => format!("{day}, {who}"),
        None => day,
    }
}
