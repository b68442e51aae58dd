//! The day sheet as a record: sections in their order, each with its count, and the rows of the first ones.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::Stamp;

use super::found_rows::{DefectRow, LockedRow};
use super::rows::{
    AsideRow, CorrectedRow, HappenedRow, LateRow, OilRow, ReminderRow, SetRow, SettleRow, TopUpRow, TwiceRow,
};
use crate::due::DueList;
use crate::parts::OilNeed;
use crate::plan::PlannedDefect;

/// A section: how many, and which. Nothing is an answer too.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Section<T> {
    /// How many rows.
    pub count: usize,
    /// The rows in their order.
    pub rows: Vec<T>,
}

impl<T> Section<T> {
    /// A section of these rows.
    pub fn of(rows: Vec<T>) -> Section<T> {
        Section { count: rows.len(), rows }
    }

    /// Whether it has no row.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
}

impl<T> Default for Section<T> {
    fn default() -> Section<T> {
        Section::of(Vec::new())
    }
}

/// One day of the yard as it was known at a moment. Its JSON is what a closing stores.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DaySheet {
    /// The fleet.
    pub fleet: String,
    /// The yard's day.
    pub day: NaiveDate,
    /// As known at, on the yard's clock.
    pub known_at: Stamp,
    /// What is said first, one sentence each.
    pub sentences: Vec<String>,
    /// Phones heard from and not.
    pub phones: Phones,
    /// The sections of the view.
    #[serde(flatten)]
    pub view: Sections,
}

/// The two views of a day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "view", content = "sections", rename_all = "kebab-case")]
pub enum Sections {
    /// 17:00: what happened.
    Evening(Box<Evening>),
    /// 06:00: who may go out.
    Morning(Box<Morning>),
}

/// The evening's sections in their order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Evening {
    /// What happened: somebody hurt, something spilt or hit. Left out where nothing did.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub happened: Section<HappenedRow>,
    /// Used without a pre-trip.
    pub without: Section<WithoutRow>,
    /// Used against a lock-out.
    pub against: Section<AgainstRow>,
    /// Not reported, of those expected out.
    pub not_reported: NotReported,
    /// Found on this day, worst first.
    pub new_defects: Section<DefectRow>,
    /// Locked now.
    pub locked: Section<LockedRow>,
    /// Past due, due, coming up; services done and parts waited for.
    pub due: DueList,
    /// What displays said and who knew.
    pub reminders: Section<ReminderRow>,
    /// What was poured.
    pub top_ups: Section<TopUpRow>,
    /// Who drinks oil: units whose use has changed or lies over its limit. Sheets closed before this was told have
    /// none.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub oil: Section<OilRow>,
    /// Readings that wait for a person.
    pub to_settle: Section<SettleRow>,
    /// Sets recorded on another truck than they are registered on. Left out where none is.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub sets: Section<SetRow>,
    /// Readings of this day that somebody took back.
    pub corrected: Section<CorrectedRow>,
    /// Services that look entered twice.
    pub entered_twice: Section<TwiceRow>,
    /// Entries that do not count until a person says so.
    pub set_aside: Section<AsideRow>,
    /// Entries of this day that came after its first closing.
    pub came_late: Section<LateRow>,
    /// Entries that are dated after the moment at which the sheet was made. Left out where none is.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub dated_ahead: Section<LateRow>,
    /// Visits planned for the day after. What is locked now is not to go out then.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub bays_tomorrow: Section<VisitRow>,
}

/// The morning's sections in their order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Morning {
    /// Locked: not to go out.
    pub not_to_go_out: Section<LockedRow>,
    /// Open defects that wait for a certificate.
    pub to_certify: Section<DefectRow>,
    /// Expected out, and how far each is.
    pub expected: Section<ExpectedRow>,
    /// Past due and due.
    pub due: DueList,
    /// Parts that came in.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub parts_in: Section<PartIn>,
    /// Visits planned for today.
    pub in_the_bays: Section<VisitRow>,
    /// Phones not heard from in 24 h.
    pub phones_quiet: Section<PhoneRow>,
    /// What came late for yesterday.
    pub version_two: Yesterday,
    /// Entries that are dated after the moment at which the sheet was made. Left out where none is.
    #[serde(default, skip_serializing_if = "Section::is_empty")]
    pub dated_ahead: Section<LateRow>,
}

/// A unit used while no pre-trip covered it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WithoutRow {
    /// Door number.
    pub unit: String,
    /// First use.
    pub first_use: Stamp,
    /// What: `start`, `drive`, `pour`, `reading`.
    pub what: String,
    /// Further uses of the day that nothing covered.
    pub more: usize,
    /// Who; none when not said.
    pub who: Option<String>,
    /// When a pre-trip came after all.
    pub pre_trip_came: Option<Stamp>,
    /// The reason typed, if any.
    pub reason: Option<String>,
}

/// A use against a lock-out. The row says what was recorded and blames nobody.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AgainstRow {
    /// Door number.
    pub unit: String,
    /// `road`, `air`, or `outlet/` with its name.
    pub lock: String,
    /// Locked since.
    pub since: Stamp,
    /// Used when.
    pub used: Stamp,
    /// `left-yard`, `left-site`, `came-back`, `started-air`.
    pub what: String,
    /// Who; none when not said.
    pub driver: Option<String>,
    /// Whether the phone that recorded the use held the lock-out's entry, read from what it signed.
    pub could_know: bool,
    /// The use was written down on paper: what its driver knew nobody can tell.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub on_paper: bool,
    /// When the shop knew of the lock-out.
    pub shop_knew: Option<Stamp>,
    /// When the driver's phone held it; none while it was never told.
    pub driver_knew: Option<Stamp>,
    /// The same in a sentence.
    pub said: String,
    /// The reason typed, if any.
    pub reason: Option<String>,
}

/// Who has not reported, of those expected out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct NotReported {
    /// How many.
    pub count: usize,
    /// Of how many expected out.
    pub expected: usize,
    /// Those not reported.
    pub rows: Vec<MissingRow>,
    /// Those that have reported: done, or covered by a walk of the day before.
    pub reported: Vec<ExpectedRow>,
    /// Those not due out yet.
    pub due_out: Vec<ExpectedRow>,
    /// Those that stand in the yard, in the shop, stored, lent, or of which nothing is said.
    pub not_expected: Vec<ExpectedRow>,
}

/// A unit expected out of which nothing came.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MissingRow {
    /// Door number.
    pub unit: String,
    /// Expected from; none when it may be any time of the day.
    pub expected: Option<Stamp>,
    /// The phone that last wrote of it.
    pub phone: Option<String>,
    /// When anything was last heard from that phone.
    pub last_heard: Option<Stamp>,
    /// "Not heard from, day n": the closed sheets, and this one, of days it was expected out with nothing
    /// heard. None when its phone was heard from on this day.
    pub quiet_days: Option<usize>,
}

/// A unit's one line of the day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ExpectedRow {
    /// Door number.
    pub unit: String,
    /// `done`, `covered`, `due-out`, `not-reported`, `laid-up`, or the status: `parked`, `in-shop`, `stored`, `lent`, `rented-out`, `sold`,
    /// `no-day-status`.
    pub state: String,
    /// Signed at, due out at, or laid up since.
    pub at: Option<Stamp>,
    /// Of a walk that reaches in from the day before: covered until.
    pub until: Option<Stamp>,
    /// Who signed.
    pub who: Option<String>,
    /// Reported for a shift that is over, and due out again from then.
    pub due_again: Option<Stamp>,
    /// Whoever signed is learning, and no trainer signed with him.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub trainee_alone: bool,
    /// The same in words: "done 06:32".
    pub said: String,
}

/// A visit planned for the day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct VisitRow {
    /// Door number.
    pub unit: String,
    /// Which tasks: keys of the texts.
    pub tasks: Vec<String>,
    /// Which defects.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub defects: Vec<PlannedDefect>,
    /// Bay and mechanic.
    pub where_and_who: Option<String>,
    /// Oil, where one of the tasks changes it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub oil: Option<OilNeed>,
}

/// A part that was waited for and came.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct PartIn {
    /// Door number.
    pub unit: String,
    /// The task it is for: told until that task is done. One for no task is told on the morning after it came.
    pub task: Option<String>,
    /// Which part.
    pub part: String,
    /// Since when it is here.
    pub at: Stamp,
}

/// A phone.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct PhoneRow {
    /// What the yard calls it.
    pub phone: String,
    /// Last heard from; none when never.
    pub last_heard: Option<Stamp>,
    /// Let in at, of one that was never heard from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub added: Option<Stamp>,
}

/// Phones since the evening before.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Phones {
    /// Since 17:00 of the day before.
    pub since: Stamp,
    /// How many of which one may expect to have heard: those heard from and those not.
    pub of: usize,
    /// Those heard from.
    pub heard: Vec<PhoneRow>,
    /// Those not.
    pub not_heard: Vec<PhoneRow>,
    /// Let in less than 24 hours ago and not heard from yet: not silent.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub just_added: Vec<PhoneRow>,
}

/// What became of yesterday's sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Yesterday {
    /// The day before.
    pub day: NaiveDate,
    /// The newest version closed; none while it is open.
    pub closed: Option<u32>,
    /// What came after its first closing.
    pub came_late: Section<LateRow>,
}
