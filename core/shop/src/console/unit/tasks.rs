//! What is due on one unit: its tasks with their two clocks drawn as rulers.

use chrono::NaiveDate;
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::clock::{Standing, TaskClock};
use sumpbook_trade::record::VisitPlan;
use sumpbook_trade::{Fact, FactKind, Tenths};

use super::view::Reading;
use crate::ShopError;
use crate::console::due_words;
use crate::console::ruler::{self, Track};
use crate::console::table::{Table, said};
use crate::console::words::Words;
use crate::due::{self, DueRow};
use crate::sheet::entry_of;

/// Plans of one unit looked through: more are never open at once.
const PLANS: i64 = 20;
/// The calendar is coming up so many days before its end, or the parts' lead time when that is longer (R2).
const DAYS_AHEAD: i64 = 14;
/// The hours are coming up from this share of their interval, in thousandths (R2).
const HOURS_COMING: i64 = 900;

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
    /// Its hours count by the site's dust.
    pub(super) counts_weighted: bool,
    /// The hours as they are drawn.
    pub(super) hours_track: Option<Track>,
    /// The calendar as it is drawn.
    pub(super) days_track: Option<Track>,
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
    let plans = plans(of)?;
    let in_service = of.ledger.fleet().trucks.get(&of.truck).map(|truck| truck.in_service);
    // The programme may weigh hours where this set gives no weights: each then counts once.
    let weighs = of.ledger.fleet().set_on(of.truck).is_some_and(|set| !set.profile.weights.is_empty());
    let mut tasks = Vec::new();
    for due in list.rows {
        let clock = of.state.clocks.iter().find(|clock| clock.task.0 == due.task);
        let Some(clock) = clock else { continue };
        let plan = plans.iter().find(|plan| plan.tasks.contains(&clock.task));
        let both = nearer(&due);
        tasks.push(TaskView {
            every_hours: clock.interval_hours,
            due_figure: clock.due_hours.map(|hours| hours - of.state.hours.offset),
            last: clock.last.map(|last| Last { day: last.day, hours: last.hours }),
            entered_twice: clock.entered_twice.iter().any(|two| !two.settled),
            counts_weighted: clock.counts_weighted && weighs,
            hours_track: hours_track(clock, &due, both.0),
            days_track: days_track(clock, &due, in_service, both.1),
            visit: plan.map(|plan| Visit { day: plan.day, where_and_who: plan.where_and_who.clone() }),
            due,
        });
    }
    Ok(tasks)
}

/// Visits planned for today and later, soonest first.
fn plans(of: &Reading<'_>) -> Result<Vec<VisitPlan>, ShopError> {
    let truth = of.ledger.store().truth();
    let code = FactKind::VisitPlan.code().unwrap_or(0);
    let mut plans = Vec::new();
    for fact in truth.newest_facts(of.truck, code, PLANS)? {
        if fact.judged == Judged::Counts
            && let Some((_, entry)) = entry_of(&truth, fact.n)?
            && let Fact::VisitPlan(plan) = entry.fact
            && plan.day >= of.yard.day
        {
            plans.push(plan);
        }
    }
    plans.sort_by_key(|plan| plan.day);
    Ok(plans)
}

/// Whether the hours, and whether the calendar, may be the first to run out: both where no pace tells.
fn nearer(due: &DueRow) -> (bool, bool) {
    match due.runs_out_first.as_str() {
        "hours" => (true, false),
        "calendar" => (false, true),
        _ => (true, true),
    }
}

/// Worked from what is left, so that it never says another thing than the words.
fn hours_track(clock: &TaskClock, due: &DueRow, nearer: bool) -> Option<Track> {
    let every = clock.interval_hours.filter(|every| every.0 > 0)?;
    let left: f64 = due.hours_left.as_deref()?.parse().ok()?;
    let used = 1_000.0 - 1_000.0 * left / every.as_hours();
    // Within bounds any interval gives; cut to what is drawn anyhow.
    Some(Track { used: used.clamp(0.0, 9_999.0).round() as i64, coming_from: HOURS_COMING, nearer })
}

fn days_track(clock: &TaskClock, due: &DueRow, in_service: Option<NaiveDate>, nearer: bool) -> Option<Track> {
    let (left, end) = (due.days_left?, due.last_good_day?);
    let from = clock.last.map(|last| last.day).or(in_service)?;
    let of = end.signed_duration_since(from).num_days();
    let share = |days: i64| (of > 0).then(|| days.saturating_mul(1_000) / of);
    let ahead = DAYS_AHEAD.max(i64::from(clock.lead_days));
    Some(Track {
        used: share(of.saturating_sub(left))?.clamp(0, 9_999),
        coming_from: share(of.saturating_sub(ahead))?.max(0),
        nearer,
    })
}

pub(super) fn draw(words: &Words, tasks: &[TaskView]) -> Markup {
    if tasks.is_empty() {
        return html! { p { (words.t("no-programme")) } };
    }
    let heads = ["head-task", "head-last-done", "head-ruler", "head-state", "head-part", "head-visit"];
    let rows = tasks.iter().map(|task| {
        vec![
            said(words.task(&task.due.task)),
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
        (ruler::draw(task.hours_track, task.days_track))
        @if task.due.last_good_day.is_some() {
            span class=(class(task.days_track)) { (days_words(words, task)) }
        }
        @if task.due.runs_out_first == "unknown" && task.hours_track.is_some() && task.days_track.is_some() {
            span class="ruler-words" { (words.t("pace-unknown")) }
        }
    }
}

/// "33.1 h left of 500.0, due at 2,918.0", "6.1 h past 500.0, was due at 2,918.0".
fn hours_words(words: &Words, task: &TaskView) -> String {
    let every = task.every_hours.map_or_else(String::new, |every| words.hours(every));
    let at = task.due_figure.map_or_else(|| words.t("not-said"), |figure| words.hours(figure));
    let left = task.due.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok());
    let Some(left) = left else {
        return words.with("ruler-hours-unknown", &[("every", Arg::Text(&every))]);
    };
    let (key, hours) = match left <= -0.1 {
        true => ("ruler-hours-past", due_words::tenth(words, -left)),
        false => ("ruler-hours", due_words::tenth(words, left.max(0.0))),
    };
    let args = [("hours", Arg::Text(&hours)), ("every", Arg::Text(&every)), ("at", Arg::Text(&at))];
    let mut said = words.with(key, &args);
    if task.counts_weighted {
        said = format!("{said} ({})", words.t("task-weighted"));
    }
    said
}

/// "109 days left, last good day Fri 12 Feb 2027".
fn days_words(words: &Words, task: &TaskView) -> String {
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
