//! One unit's day: done, covered, due out, not reported, and what was used without a pre-trip.

use chrono::{DateTime, FixedOffset, NaiveDate, NaiveTime, TimeDelta};
use chrono_tz::Tz;
use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::coverage::{Coverage, EndOfDay, PreTrip, coverages};
use super::yard::{yard_day, yard_moment};

/// What the shop has a unit down as for a day.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, Hash, Encode, Decode, CborLen, Serialize, Deserialize, JsonSchema,
)]
#[cbor(index_only)]
#[serde(rename_all = "kebab-case")]
pub enum DayStatus {
    /// Expected to work.
    #[n(0)]
    Out,
    /// Standing in the yard.
    #[n(1)]
    Parked,
    /// In the shop.
    #[n(2)]
    InShop,
    /// Laid up.
    #[n(3)]
    Stored,
    /// With somebody else.
    #[n(4)]
    Lent,
    /// With somebody else who pays for it.
    #[n(5)]
    RentedOut,
    /// Not the fleet's any more.
    #[n(6)]
    Sold,
}

impl DayStatus {
    /// Every one, in the order they are offered.
    pub const ALL: [DayStatus; 7] = [
        DayStatus::Out,
        DayStatus::Parked,
        DayStatus::InShop,
        DayStatus::Stored,
        DayStatus::Lent,
        DayStatus::RentedOut,
        DayStatus::Sold,
    ];
}

/// A unit's line of the roster for a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Roster {
    /// Its status.
    pub status: DayStatus,
    /// The yard's time from which it is expected out; `None` when it may be any time of the day.
    pub expected_from: Option<NaiveTime>,
}

/// What somebody did with a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum UseKind {
    /// The compressor was started.
    Start,
    /// The truck was driven.
    Drive,
    /// A fluid was poured in.
    Pour,
    /// A meter was read.
    Reading,
    /// The compressor was stopped, and no start before it is on record.
    Stop,
}

/// An entry that shows a unit in use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Use {
    /// When.
    pub at: DateTime<FixedOffset>,
    /// The entry that says so.
    pub entry: Uuid,
    /// What was done.
    pub what: UseKind,
}

/// What is known of one unit around a day, in any order. Voided entries are left out by the caller.
#[derive(Clone, Copy, Debug)]
pub struct DayRecords<'a> {
    /// Its line of the roster.
    pub roster: Roster,
    /// Pre-trips of the day and of the day before.
    pub pre_trips: &'a [PreTrip],
    /// End-of-day reports of the day and of the days beside it.
    pub ends: &'a [EndOfDay],
    /// Uses of the day.
    pub uses: &'a [Use],
    /// How long a pre-trip covers without an end-of-day report.
    pub limit: TimeDelta,
    /// The yard's zone.
    pub tz: Tz,
}

/// The one thing said of a unit's day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heading {
    /// A pre-trip was signed on the day: the first of them.
    Done {
        /// Its signature.
        at: DateTime<FixedOffset>,
        /// Its entry.
        entry: Uuid,
        /// Who signed.
        person: Uuid,
    },
    /// A pre-trip of the day before reaches into it.
    Covered(Coverage),
    /// Expected out, but not yet.
    DueOut {
        /// From when.
        at: DateTime<FixedOffset>,
    },
    /// Expected out, and nothing has come.
    NotReported,
    /// Not expected to work.
    NotExpected(DayStatus),
}

/// A unit's day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DayState {
    /// The one thing said of it.
    pub heading: Heading,
    /// Every span of it that a pre-trip covers.
    pub covered: Vec<Coverage>,
    /// Uses that no pre-trip covers, in order of time: a line of their own, above what is missing.
    pub without: Vec<Use>,
}

impl DayState {
    /// Whether the unit counts as missing: expected, and not reported.
    pub fn missing(&self) -> bool {
        self.heading == Heading::NotReported
    }
}

/// One unit's day as it looks at `now`, from what is known by then.
pub fn day_state(day: NaiveDate, now: DateTime<FixedOffset>, records: &DayRecords<'_>) -> DayState {
    let tz = records.tz;
    let all = coverages(records.pre_trips, records.ends, records.limit);
    let mut without: Vec<Use> = records
        .uses
        .iter()
        .filter(|used| yard_day(used.at, tz) == day)
        // Figures read on the walk itself are part of it, though the signature comes last.
        .filter(|used| !all.iter().any(|span| span.holds(used.at) || span.entry == used.entry))
        .copied()
        .collect();
    without.sort_by_key(|used| (used.at, used.entry, used.what));
    let covered: Vec<Coverage> = all.into_iter().filter(|span| touches(span, day, tz)).collect();
    let heading = heading(day, now, records, &covered);
    DayState { heading, covered, without }
}

fn heading(
    day: NaiveDate,
    now: DateTime<FixedOffset>,
    records: &DayRecords<'_>,
    covered: &[Coverage],
) -> Heading {
    if let Some(span) = covered.iter().find(|span| yard_day(span.from, records.tz) == day) {
        return Heading::Done { at: span.from, entry: span.entry, person: span.person };
    }
    let Roster { status, expected_from } = records.roster;
    let from = yard_moment(day, expected_from.unwrap_or(NaiveTime::MIN), records.tz);
    let waiting = from.filter(|from| now < *from);
    // A night's coverage that ended before a later shift is due says nothing of that shift once it is due.
    let reaches = |span: &&Coverage| {
        status != DayStatus::Out
            || expected_from.is_none()
            || waiting.is_some()
            || from.is_some_and(|from| span.to > from)
    };
    if let Some(span) = covered.iter().rev().find(reaches) {
        return Heading::Covered(*span);
    }
    match (status, waiting) {
        (DayStatus::Out, Some(at)) => Heading::DueOut { at },
        (DayStatus::Out, None) => Heading::NotReported,
        (status, _) => Heading::NotExpected(status),
    }
}

/// Whether any of a span lies in the day; one that ends at its very midnight does not.
fn touches(span: &Coverage, day: NaiveDate, tz: Tz) -> bool {
    let last = span.to.checked_sub_signed(TimeDelta::nanoseconds(1)).unwrap_or(span.to);
    yard_day(span.from, tz) <= day && day <= yard_day(last.max(span.from), tz)
}
