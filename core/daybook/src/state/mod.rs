//! A unit's state: what its entries add up to. Folded from the store, kept until an entry touches the unit.
//!
//! Nothing in it depends on the time of day it is read at: what does (due today, covered now) is worked
//! out by whoever reads, with `now` as an argument.

mod again;
mod campaigns;
mod counted;
mod defects;
mod fold;
pub(crate) mod folded;
mod found;
mod history;
mod hot_stops;
pub(crate) mod hours;
mod inputs;
mod lay_up;
mod left_site;
mod notes;
mod oil;
mod rose;
mod roster;
pub(crate) mod scope;
mod services;
mod sets;
mod slips;
mod stands;
mod thirst;
mod tries;
mod unit_books;
mod wear;

use chrono::{DateTime, FixedOffset, NaiveDate};
use serde::{Deserialize, Serialize};
use sumpbook_trade::campaign::Hit;
use sumpbook_trade::clock::{LastDone, TaskClock, TaskId};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::defect::{Defect, LockOut};
use sumpbook_trade::lay_up::Spell;
use sumpbook_trade::notes::{Acknowledged, ClearedReminder};
use sumpbook_trade::record::{DefectName, NoteKind, TopUp, WaitingForPart};
use sumpbook_trade::wear::Called;
use sumpbook_trade::{EntryId, PersonId, Tenths, TruckId};

pub use again::AgainNow;
pub use counted::CountedNow;
pub(crate) use found::locks_something;
pub use hours::{HoursNow, OtherMeterNow, QuestionNow, ReadingNow, estimated_by, hint_key};
pub use oil::{LabNow, OilNow};
pub use rose::RoseNow;
pub use roster::RosterChange;
pub use sets::{SetDisagrees, SetToldNow};
pub use slips::SlipShown;
pub use stands::TaskNow;
pub(crate) use tries::Tries;
pub use unit_books::UnitHistory;
pub use wear::WearNow;

/// Days for which closed matters stay in the folded state; older ones are read from the entries.
pub(crate) const KEPT_DAYS: i64 = 45;

/// Days back from a unit's newest entry in which the device that wrote of it last is looked for.
pub const WROTE_DAYS: i32 = 45;

/// What a unit's entries add up to.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct UnitState {
    /// The unit.
    pub truck: TruckId,
    /// Time of its newest entry, milliseconds; 0 when it has none.
    pub newest_ms: i64,
    /// Who wrote of it last, the shop itself aside; none in the 45 days up to its newest entry.
    pub wrote_last: Option<WroteLast>,
    /// Compressor hours (R3).
    pub hours: HoursNow,
    /// The clocks of its programme (R1, R6, R7), then those of makers' campaigns.
    pub clocks: Vec<TaskClock>,
    /// Makers' campaigns that are about it, may be, or were done on it; those taken back too.
    #[serde(default)]
    pub campaigns: Vec<CampaignNow>,
    /// The engine's and the PTO's meters: apart, they feed no clock.
    pub other_meters: Vec<OtherMeterNow>,
    /// Weighted hours (R10).
    pub wear: WearNow,
    /// The oil calls for its service now.
    pub called: Option<Called>,
    /// Where the compressor's oil goes (R11).
    pub oil: OilNow,
    /// Defects that are not closed, and those closed in the last 45 days (R4).
    pub defects: Vec<Defect>,
    /// Words that lock more when they are given now: low again within the week.
    pub again: Vec<AgainNow>,
    /// Lock-outs that stand, and those that ended in the last 45 days, a lay-up's too.
    pub locks: Vec<LockOut>,
    /// Lay-ups of its set that stand, and those that ended in the last 45 days, oldest first.
    pub lay_ups: Vec<Spell>,
    /// What was last recorded at this truck of the set on it, beside the shop's registration.
    pub set_told: Option<SetToldNow>,
    /// Display notes that are not answered by the shop's work, and those of the last 45 days (R5).
    pub notes: Vec<NoteNow>,
    /// The newest reminder went away and no service is recorded.
    pub cleared: Option<ClearedReminder>,
    /// Waits for parts that are not over.
    pub waiting: Vec<WaitingNow>,
    /// Visits that are planned: what of them is not done yet and was not moved to another day.
    pub planned: Vec<PlannedNow>,
    /// What the unit does from which day on, oldest first.
    pub roster: Vec<RosterChange>,
    /// The last three top-ups, newest first.
    pub top_ups: Vec<TopUpNow>,
    /// Services of the last 45 days, newest first.
    pub services: Vec<ServiceNow>,
}

/// The device that wrote of a unit last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WroteLast {
    /// Day of that entry in the yard, days since 1970-01-01.
    pub day: i32,
    /// The device's key id.
    pub device: [u8; 8],
}

/// A display note and who knows of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NoteNow {
    /// Its entry.
    pub entry: EntryId,
    /// When it was seen.
    pub at: DateTime<FixedOffset>,
    /// By whom.
    pub person: Option<PersonId>,
    /// What kind.
    pub what: NoteKind,
    /// As it stood there.
    pub as_shown: String,
    /// The unit stopped by itself.
    pub stopped_by_itself: Option<bool>,
    /// Who answered.
    pub answered: Acknowledged,
    /// First seen gone again.
    pub gone: Option<DateTime<FixedOffset>>,
}

/// A maker's campaign on this unit. What it says stands in the fleet's book.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CampaignNow {
    /// Its task.
    pub task: TaskId,
    /// The entry it was read from.
    pub entry: EntryId,
    /// Whether the unit is meant.
    pub is: Hit,
    /// The service that did it.
    pub done: Option<LastDone>,
}

/// A wait for a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WaitingNow {
    /// Its entry.
    pub entry: EntryId,
    /// Since when.
    pub at: DateTime<FixedOffset>,
    /// What is waited for.
    pub what: WaitingForPart,
}

/// A visit that is planned.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlannedNow {
    /// Its entry.
    pub entry: EntryId,
    /// When it was planned.
    pub at: DateTime<FixedOffset>,
    /// By whom.
    pub person: Option<PersonId>,
    /// Its tasks that are still to be done.
    pub tasks: Vec<sumpbook_trade::clock::TaskId>,
    /// Its defects that are still to be certified.
    #[serde(default)]
    pub defects: Vec<DefectName>,
    /// For this day of the yard.
    pub day: NaiveDate,
    /// In which bay, by whom.
    pub where_and_who: Option<String>,
}

/// A top-up as it was recorded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TopUpNow {
    /// Its entry.
    pub entry: EntryId,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Who.
    pub person: Option<PersonId>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
    /// What was poured.
    pub what: TopUp,
}

/// A service as it was recorded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ServiceNow {
    /// Its entry.
    pub entry: EntryId,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Who.
    pub person: Option<PersonId>,
    /// Hours of the meter then.
    pub hours: Option<Tenths>,
    /// Which tasks.
    pub tasks: Vec<sumpbook_trade::clock::TaskId>,
    /// Hours and days each was late, where it was.
    pub late: Vec<String>,
}

impl UnitState {
    /// The part that the defect of an item at a place waits for.
    pub fn waits_for(&self, item: &str, place: Option<&str>) -> Option<&str> {
        let of = |wait: &&WaitingNow| {
            wait.what.defect.as_ref().is_some_and(|of| of.item == item && of.place.as_deref() == place)
        };
        self.waiting.iter().rev().find(of).map(|wait| wait.what.part.as_str())
    }

    /// What the unit is down as on a day of the yard; none before anything was said.
    pub fn status_on(&self, day: NaiveDate) -> Option<(DayStatus, Option<u16>)> {
        self.roster.iter().rev().find(|change| change.from <= day).map(|c| (c.status, c.expected_minute))
    }

    /// Whether it is the fleet's no more on a day of the yard: somebody else services it then.
    pub fn is_sold(&self, day: NaiveDate) -> bool {
        matches!(self.status_on(day), Some((DayStatus::Sold, _)))
    }

    /// Lock-outs that stand at a moment.
    pub fn locks_at(&self, at: DateTime<FixedOffset>) -> impl Iterator<Item = &LockOut> {
        self.locks.iter().filter(move |lock| lock.stands_at(at))
    }
}
