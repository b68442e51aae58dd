//! What is due: one row a task, in the order of the list.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::{TaskNow, UnitState, WaitingNow};
use sumpbook_trade::clock::{
    DueRow as Order, FineHours, Nearer, Standing, TaskClock, TaskId, TaskState, due_order, not_bundled,
};
use sumpbook_trade::wear::WhyCalled;
use sumpbook_trade::{Stamp, Tenths, TruckId};

use crate::ShopError;
use crate::campaign::{self, CampaignRow, CampaignSaid};
use crate::papers::{self, DatedPaper};
use crate::sheet::Yard;

/// The due list: tasks, services done on the day, parts waited for that belong to no task, and apart from them the
/// tasks of sets that are laid up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DueList {
    /// How many rows.
    pub count: usize,
    /// One row a task, past due first.
    pub rows: Vec<DueRow>,
    /// Services recorded on the day.
    pub done: Vec<DoneRow>,
    /// Parts waited for that belong to no task.
    pub parts: Vec<PartRow>,
    /// Tasks of sets that are laid up, in the same order: their clocks run on, and they stand apart from the others.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub laid_up: Vec<DueRow>,
    /// Papers that ran out or do within 30 days, soonest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub papers: Vec<DatedPaper>,
    /// Every maker's campaign with its units. A day's sheet has its open ones among the rows and none here.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub campaigns: Vec<CampaignRow>,
}

impl DueList {
    /// Every row: those of sets that are laid up last.
    pub(crate) fn into_every_row(self) -> impl Iterator<Item = DueRow> {
        self.rows.into_iter().chain(self.laid_up)
    }
}

/// A task of a unit as it stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DueRow {
    /// Door number.
    pub unit: String,
    /// The task: a key of the texts.
    pub task: String,
    /// `past-due`, `due-today`, `coming-up`, `far-off`, `unknown`.
    pub state: String,
    /// Hours left, exact, negative when past due: "2.8", "-0.4". None without an hours clock or a figure.
    pub hours_left: Option<String>,
    /// Days left, negative when past due.
    pub days_left: Option<i64>,
    /// Due at these hours of the unit; where dust counts, at these if the hours to come weigh as the last did.
    pub due_hours: Option<Tenths>,
    /// Its hours count by the sites' dust, and this unit's are weighed: hours left are weighted hours.
    #[serde(default)]
    pub counts_weighted: bool,
    /// Hundredths an hour counts in it now: 100, or what the shop set for the dust of the last hours.
    pub weight: u32,
    /// Hours of the meter left, where they are not the hours left: "13.4".
    pub meter_hours_left: Option<String>,
    /// When the hours run out at the pace of the last weeks; none when the pace is unknown.
    pub forecast: Option<ForecastRow>,
    /// The oil calls for it now: `wrong-oil`, `milky`, `burnt`.
    pub called_by: Option<String>,
    /// The hours used are counted from starts and stops, or estimated: at most so many.
    pub at_most: bool,
    /// Of hours counted or estimated, the hours left at most: "117.5".
    pub hours_left_at_most: Option<String>,
    /// Of hours estimated, the hours likely left: "37.5".
    pub hours_left_likely: Option<String>,
    /// The last good day by the calendar.
    pub last_good_day: Option<NaiveDate>,
    /// Which clock runs out first: `hours`, `calendar`, `unknown`.
    pub runs_out_first: String,
    /// Hours the list uses.
    pub hours: Option<Tenths>,
    /// When they were read.
    pub read_at: Option<Stamp>,
    /// The higher of figures in dispute is used.
    pub higher_of_disputed: bool,
    /// The figure stands on the far side of a jump nobody explained.
    pub across_unanswered_jump: bool,
    /// The part waited for. The task is still due.
    pub waiting_for: Option<PartRow>,
    /// The set is laid up since then; its clocks ran on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub laid_up_since: Option<Stamp>,
    /// The maker's campaign it is; none of a task of the programme.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub campaign: Option<CampaignSaid>,
    /// The state in words, with its amount.
    pub said: String,
}

/// The day the hours run out, as days of the yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ForecastRow {
    /// Not before, 9 times in 10.
    pub earliest: NaiveDate,
    /// Likely.
    pub likely: NaiveDate,
    /// Not after, 9 times in 10; none beyond ten years.
    pub latest: Option<NaiveDate>,
    /// The likely day lies before the day of the list: no hours that count were told since.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub gone_by: bool,
}

/// A wait for a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct PartRow {
    /// Door number.
    pub unit: String,
    /// Which part.
    pub part: String,
    /// Promised for.
    pub promised: Option<NaiveDate>,
    /// Waited for since.
    pub since: Stamp,
    /// The defect it is for, its item and its place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub defect: Option<(String, Option<String>)>,
}

impl PartRow {
    /// A wait of a unit as it stands.
    pub(crate) fn of(yard: &Yard, door: &str, wait: &WaitingNow) -> PartRow {
        PartRow {
            unit: door.to_owned(),
            part: wait.what.part.clone(),
            promised: wait.what.promised,
            since: yard.stamp(wait.at),
            defect: wait.what.defect.as_ref().map(|of| (of.item.clone(), of.place.clone())),
        }
    }
}

/// A service recorded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DoneRow {
    /// Door number.
    pub unit: String,
    /// When.
    pub at: Stamp,
    /// Who; none when not said.
    pub who: Option<String>,
    /// Which tasks.
    pub tasks: Vec<String>,
    /// Hours then.
    pub hours: Option<Tenths>,
    /// By how much each came late: "oil-and-filters 8.0 h".
    pub late: Vec<String>,
    /// Tasks that were near and were not done in the same visit.
    pub not_bundled: Vec<String>,
    /// Tasks of which the shop has said that this tells again of a service told before (R7).
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub again: Vec<String>,
}

/// Every task of every unit as it stands at `now`, far off ones too.
///
/// # Errors
/// As any read.
pub fn due_list(ledger: &Ledger, now: Stamp) -> Result<DueList, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let doors = yard.units(ledger)?;
    let mut states = ledger.unit_states(&doors.iter().map(|(_, truck)| *truck).collect())?;
    for state in states.values_mut() {
        if let Some(earlier) = ledger.earlier_state(state, yard.cut_ms)? {
            *state = earlier;
        }
    }
    let states: Vec<(&str, &UnitState)> =
        doors.iter().filter_map(|(door, truck)| Some((door.as_str(), states.get(truck)?))).collect();
    let campaigns = campaign::campaigns(ledger, &yard, &states);
    Ok(DueList { campaigns, ..list(ledger, &yard, &states, Standing::Closed)? })
}

/// The list of these units, rows of at least this standing.
pub(crate) fn list(
    ledger: &Ledger,
    yard: &Yard,
    states: &[(&str, &UnitState)],
    least: Standing,
) -> Result<DueList, ShopError> {
    let mut order = Vec::new();
    let mut told: BTreeMap<(String, TaskId), DueRow> = BTreeMap::new();
    let (mut done, mut parts) = (Vec::new(), Vec::new());
    // The programme may weigh hours where a set gives no weights: each then counts once.
    let sets = ledger.fleet().sets.values().filter(|set| !set.profile.weights.is_empty());
    let weighed: BTreeSet<TruckId> = sets.filter_map(|set| set.on).collect();
    for (door, state) in states {
        let sold = state.is_sold(yard.day);
        for clock in state.clocks.iter().filter(|_| !sold) {
            let stands = state.stands(clock, yard.day, yard.cut(), ledger.fleet().zone);
            if stands.state.standing < least {
                continue;
            }
            let said = match ledger.fleet().campaigns.get(&clock.task) {
                // One that was entered after the cut is not of this day.
                Some(known) => match known.by(yard.cut_ms).last() {
                    Some(told) => Some(campaign::said(&told.what)),
                    None => continue,
                },
                None => None,
            };
            let likely = stands.runs_out.map(|out| out.likely);
            order.push(Order::new(door, clock, stands.state, likely, yard.day));
            let weighs = clock.counts_weighted && weighed.contains(&state.truck);
            let row = DueRow { campaign: said, ..row(yard, door, state, (clock, weighs), &stands) };
            told.insert(((*door).to_owned(), clock.task.clone()), row);
        }
        done.extend(services(ledger, yard, door, state)?);
        let of_no_task = state.waiting.iter().filter(|wait| wait.what.task.is_none());
        parts.extend(of_no_task.map(|wait| PartRow::of(yard, door, wait)));
    }
    due_order(&mut order);
    let every = order.into_iter().filter_map(|next| told.remove(&(next.unit, next.task)));
    let (laid_up, rows): (Vec<DueRow>, Vec<DueRow>) = every.partition(|row| row.laid_up_since.is_some());
    let papers = papers::near(ledger.fleet(), yard.day, states.iter().map(|(_, state)| *state));
    Ok(DueList { count: rows.len(), rows, done, parts, laid_up, papers, campaigns: Vec::new() })
}

fn row(
    yard: &Yard,
    door: &str,
    state: &UnitState,
    (clock, counts_weighted): (&TaskClock, bool),
    task: &TaskNow,
) -> DueRow {
    let stands = &task.state;
    let left_of = |used| clock.interval_hours.map(|every| (FineHours::from(every) - used).to_string());
    let weighs = task.due_reading.filter(|reading| reading.hundredths != 100 && !clock.closed);
    let waiting = state.waiting.iter().find(|wait| wait.what.task.as_ref() == Some(&clock.task));
    let laid_up_since = state.laid_up_at(yard.cut()).map(|spell| yard.stamp(spell.since));
    let mut said = said(clock, stands, task.called.map(|called| called.why), waiting.is_some());
    if let Some(since) = laid_up_since {
        let since = since.moment().format("%-d %b %Y");
        said.push_str(&format!("; laid up since {since}, its clocks ran on"));
    }
    DueRow {
        unit: door.to_owned(),
        task: clock.task.to_string(),
        state: standing_word(stands.standing).to_owned(),
        hours_left: stands.hours_left.map(|left| left.to_string()),
        days_left: stands.days_left,
        due_hours: weighs.map(|reading| reading.at).or(clock.due_hours),
        counts_weighted,
        weight: weighs.map_or(100, |reading| reading.hundredths),
        meter_hours_left: weighs.map(|reading| reading.meter_left.to_string()),
        forecast: task.runs_out.map(|out| ForecastRow {
            earliest: out.earliest,
            likely: out.likely,
            latest: out.latest,
            gone_by: out.gone_by(yard.day),
        }),
        called_by: task.called.map(|called| why_called(called.why).to_owned()),
        at_most: task.used_least.is_some(),
        hours_left_at_most: task.used_least.and_then(left_of),
        hours_left_likely: task.used_likely.and_then(left_of),
        last_good_day: clock.due_day,
        runs_out_first: match stands.nearer {
            Nearer::Hours => "hours",
            Nearer::Calendar => "calendar",
            Nearer::Unknown => "unknown",
        }
        .to_owned(),
        hours: state.hours_at(yard.cut()),
        read_at: state.hours.due_at.map(|at| yard.stamp(at)),
        higher_of_disputed: state.hours.higher_of_disputed,
        across_unanswered_jump: state.hours.across_unanswered_jump,
        waiting_for: waiting.map(|wait| PartRow::of(yard, door, wait)),
        laid_up_since,
        campaign: None,
        said,
    }
}

/// "past due 6.1 h", "coming up, 2.8 h left", "due today, 429.2 h left".
fn said(clock: &TaskClock, stands: &TaskState, called: Option<WhyCalled>, waiting: bool) -> String {
    let hours = stands
        .hours_left
        .map(|left| if left.0 < 0 { format!("{} h", -left) } else { format!("{left} h left") });
    let days = stands.days_left.map(|left| match left {
        -1 => "1 day".to_owned(),
        left if left < 0 => format!("{} days", left.unsigned_abs()),
        1 => "1 day left".to_owned(),
        left => format!("{left} days left"),
    });
    let over: Vec<String> = [
        hours.clone().filter(|_| stands.hours_left.is_some_and(|left| left.0 <= -1_000)),
        days.clone().filter(|_| stands.days_left.is_some_and(|left| left < 0)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let left: Vec<String> = [hours, days].into_iter().flatten().collect();
    let mut said = match stands.standing {
        Standing::PastDue => format!("past due {}", over.join(" and ")),
        Standing::DueToday => match called {
            Some(_) => format!("due today, {}", left.join(", ")),
            None => "due today".to_owned(),
        },
        Standing::ComingUp => format!("coming up, {}", left.join(", ")),
        Standing::FarOff => format!("far off, {}", left.join(", ")),
        Standing::Unknown => "not known: a figure is missing".to_owned(),
        Standing::Closed => "done".to_owned(),
    };
    if clock.interval_hours.is_some() && stands.hours_left.is_none() && stands.standing != Standing::Unknown {
        said.push_str(", hours not known");
    }
    if let Some(why) = called.filter(|_| stands.standing != Standing::Closed) {
        said.push_str(match why {
            WhyCalled::WrongOil => ", called now: wrong oil",
            WhyCalled::Milky => ", called now: milky oil",
            WhyCalled::Burnt => ", called now: burnt oil",
        });
    }
    if waiting {
        said.push_str(", waiting for part");
    }
    said
}

fn why_called(why: WhyCalled) -> &'static str {
    match why {
        WhyCalled::WrongOil => "wrong-oil",
        WhyCalled::Milky => "milky",
        WhyCalled::Burnt => "burnt",
    }
}

fn standing_word(standing: Standing) -> &'static str {
    match standing {
        Standing::Closed => "closed",
        Standing::FarOff => "far-off",
        Standing::Unknown => "unknown",
        Standing::ComingUp => "coming-up",
        Standing::DueToday => "due-today",
        Standing::PastDue => "past-due",
    }
}

/// Services of the day, with what came late and what was left undone in the bay.
fn services(ledger: &Ledger, yard: &Yard, door: &str, state: &UnitState) -> Result<Vec<DoneRow>, ShopError> {
    let mut rows = Vec::new();
    let of_day = |at: chrono::DateTime<chrono::FixedOffset>| yard.day_of(at) == yard.day;
    for service in state.services.iter().rev().filter(|service| of_day(service.at)) {
        let before = ledger.unit_state_at(state.truck, service.at.timestamp_millis().saturating_sub(1))?;
        let left = not_bundled(&before.clocks, &service.tasks, service.hours, yard.day);
        let of_this = |clock: &&TaskClock| clock.last.is_some_and(|last| last.entry == service.entry.0);
        let late = state.clocks.iter().filter(of_this).filter_map(|clock| {
            let late = clock.late_by?;
            let hours = late.hours.map(|hours| format!("{hours} h"));
            let days = late.days.map(|days| format!("{days} d"));
            let by: Vec<String> = [hours, days].into_iter().flatten().collect();
            Some(format!("{} {}", clock.task, by.join(" and ")))
        });
        // A first service and the task it opens tell of the same entries: the task alone is named.
        let again = state.clocks.iter().filter(|clock| {
            let mut twice = clock.entered_twice.iter();
            clock.first_of.is_none() && twice.any(|two| two.settled && two.second == service.entry.0)
        });
        rows.push(DoneRow {
            unit: door.to_owned(),
            at: yard.stamp(service.at),
            who: yard.name(ledger, service.person),
            tasks: service.tasks.iter().map(TaskId::to_string).collect(),
            hours: service.hours,
            late: late.collect(),
            not_bundled: left.into_iter().map(TaskId::to_string).collect(),
            again: again.map(|clock| clock.task.to_string()).collect(),
        });
    }
    Ok(rows)
}
