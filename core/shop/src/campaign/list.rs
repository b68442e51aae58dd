//! Every campaign with the units it is about, those done and those to be looked at too.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::fleet::{Campaign, CampaignTold};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::{CampaignNow, UnitState};
use sumpbook_trade::campaign::{CampaignStands, LookWhy, clock, stands};
use sumpbook_trade::record::{CampaignOf, CampaignSet, SerialRange};
use sumpbook_trade::{EntryId, Stamp, Tenths};

use crate::sheet::{Yard, key};

/// A campaign and how far it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CampaignRow {
    /// What the shop calls it.
    pub name: String,
    /// Its task: a key of the texts.
    pub task: String,
    /// The entry that says it as it is now.
    pub entry: EntryId,
    /// What is to be done.
    pub words: String,
    /// The number of the maker's paper.
    pub paper: Option<String>,
    /// Where that can be read.
    pub read_at: Option<String>,
    /// `set` or `truck`.
    pub of: CampaignOf,
    /// Which serials.
    pub ranges: Vec<SerialRange>,
    /// The last good day.
    pub deadline: NaiveDate,
    /// The last good figure of a unit's hours.
    pub hours: Option<Tenths>,
    /// What it locks: `note`, `air`, `road`, `road-and-air`.
    pub locks: String,
    /// It locks at once, not after its day.
    pub stop: bool,
    /// First entered.
    pub entered: Stamp,
    /// By whom it was said as it is now.
    pub by: Option<String>,
    /// Taken back.
    pub withdrawn: Option<WithdrawnRow>,
    /// Units looked at.
    pub looked_at: usize,
    /// Units it is about, done ones too, and those to be looked at: what presses most first.
    pub units: Vec<CampaignUnitRow>,
}

/// That a campaign was taken back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WithdrawnRow {
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// Why.
    pub why: String,
}

/// A campaign on one unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CampaignUnitRow {
    /// Door number.
    pub unit: String,
    /// The serial it was compared by; none on record.
    pub serial: Option<String>,
    /// `past-deadline`, `look`, `open`, `done`, `withdrawn`.
    pub state: String,
    /// Of a unit to be looked at, why: `no-serial`, `no-number`, `other-text`.
    pub look_why: Option<String>,
    /// A person looked and said what is meant: their words.
    pub looked: Option<String>,
    /// Days left, negative when past; none once it is done or taken back, or while somebody must look.
    pub days_left: Option<i64>,
    /// Hours left, likewise.
    pub hours_left: Option<String>,
    /// Done on this day of the yard.
    pub done_on: Option<NaiveDate>,
    /// At these hours.
    pub done_hours: Option<Tenths>,
    /// Days it was late.
    pub late_days: Option<i64>,
}

impl CampaignRow {
    /// How many of its units stand so.
    pub fn count(&self, state: &str) -> usize {
        self.units.iter().filter(|unit| unit.state == state).count()
    }
}

/// A campaign as a row of the due list tells of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CampaignSaid {
    /// What is to be done.
    pub words: String,
    /// The number of the maker's paper.
    pub paper: Option<String>,
    /// What it locks: `note`, `air`, `road`, `road-and-air`.
    pub locks: String,
    /// It locks at once, not after its day.
    pub stop: bool,
}

/// What a row of the due list says of its campaign.
pub(crate) fn said(what: &CampaignSet) -> CampaignSaid {
    let (words, paper) = (what.words.clone(), what.paper.clone());
    CampaignSaid { words, paper, locks: key(&what.severity), stop: what.stop }
}

/// Every campaign entered by the cut, those taken back last, else by its last good day.
pub(crate) fn campaigns(ledger: &Ledger, yard: &Yard, states: &[(&str, &UnitState)]) -> Vec<CampaignRow> {
    let mut rows: Vec<CampaignRow> = ledger
        .fleet()
        .campaigns
        .values()
        .filter_map(|campaign| row(ledger, yard, campaign, states))
        .collect();
    rows.sort_by(|a, b| {
        (a.withdrawn.is_some(), a.deadline, &a.name).cmp(&(b.withdrawn.is_some(), b.deadline, &b.name))
    });
    rows
}

fn row(
    ledger: &Ledger,
    yard: &Yard,
    campaign: &Campaign,
    states: &[(&str, &UnitState)],
) -> Option<CampaignRow> {
    let told: Vec<&CampaignTold> = campaign.by(yard.cut_ms).collect();
    let (first, newest) = (told.first()?, told.last()?);
    let what = &newest.what;
    let of_it = states.iter().filter_map(|(door, state)| {
        let now = state.campaigns.iter().find(|now| now.task == what.task)?;
        Some(unit(ledger, yard, what, (*door, *state, now)))
    });
    let mut units: Vec<CampaignUnitRow> = of_it.collect();
    units.sort_by(|a, b| (pressing(&a.state), &a.unit).cmp(&(pressing(&b.state), &b.unit)));
    Some(CampaignRow {
        name: what.task.campaign().unwrap_or(&what.task.0).to_owned(),
        task: what.task.to_string(),
        entry: newest.entry,
        words: what.words.clone(),
        paper: what.paper.clone(),
        read_at: what.read_at.clone(),
        of: what.of,
        ranges: what.ranges.clone(),
        deadline: what.deadline,
        hours: what.hours,
        locks: key(&what.severity),
        stop: what.stop,
        entered: yard.stamp(first.at.moment()),
        by: yard.name(ledger, newest.by),
        withdrawn: what.withdrawn.as_ref().map(|why| WithdrawnRow {
            at: yard.stamp(newest.at.moment()),
            by: yard.name(ledger, newest.by),
            why: why.clone(),
        }),
        looked_at: states.len(),
        units,
    })
}

fn unit(
    ledger: &Ledger,
    yard: &Yard,
    what: &CampaignSet,
    (door, state, now): (&str, &UnitState, &CampaignNow),
) -> CampaignUnitRow {
    let hours = state.hours_at(yard.cut());
    let (word, look_why) = match stands(what, now.is, now.done, hours, yard.day) {
        CampaignStands::NotOfThisUnit => ("not-of-this-unit", None),
        CampaignStands::Look(why) => ("look", Some(why)),
        CampaignStands::Withdrawn => ("withdrawn", None),
        CampaignStands::Done => ("done", None),
        CampaignStands::Open => ("open", None),
        CampaignStands::PastDeadline => ("past-deadline", None),
    };
    let is_open = matches!(word, "open" | "past-deadline");
    let task = clock(what, now.done, ledger.fleet().numbers.clocks().ahead);
    let left = task.state(hours, yard.day);
    let fleet = ledger.fleet();
    let set = fleet.set_on(state.truck).map(|set| set.set);
    let here = |one: &&sumpbook_trade::record::CampaignLooked| match what.of {
        CampaignOf::Truck => one.truck == Some(state.truck),
        CampaignOf::Set => set.is_some() && one.set == set,
    };
    CampaignUnitRow {
        unit: door.to_owned(),
        serial: fleet.serial_for(what.of, state.truck).map(str::to_owned),
        state: word.to_owned(),
        look_why: look_why.map(|why: LookWhy| key(&why)),
        looked: what.looked.iter().rev().find(here).map(|one| one.why.clone()),
        days_left: left.days_left.filter(|_| is_open),
        hours_left: left.hours_left.filter(|_| is_open).map(|left| left.to_string()),
        done_on: now.done.map(|done| done.day),
        done_hours: now.done.and_then(|done| done.hours),
        late_days: task.late_by.and_then(|late| late.days),
    }
}

/// What presses most first.
fn pressing(state: &str) -> u8 {
    match state {
        "past-deadline" => 0,
        "look" => 1,
        "open" => 2,
        "done" => 3,
        _ => 4,
    }
}
