//! The day sheet: one day of the yard, as it was known at a moment.
//!
//! What happened is cut at the end of the yard's day, what is known is whatever the ledger holds: of an
//! earlier moment that is another ledger (`Ledger::as_of`). The same ledger and the same moment give the same
//! bytes, so a closed sheet can be answered again.

mod aside;
mod day_facts;
mod defects;
mod expected;
mod found_rows;
mod happened;
mod knowing;
mod morning;
mod notes;
mod phones;
mod pours;
mod readings;
mod record;
mod rows;
mod sentences;
mod sets;
mod trainee;
mod twice;
mod unit_day;
mod unit_now;
mod uses;
mod visits;
mod words;
mod yard;

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_daybook::store::HeldEntry;
use sumpbook_trade::Stamp;
use sumpbook_trade::clock::Standing;
use sumpbook_trade::record::SheetClosed;

pub(crate) use aside::{closings, set_aside};
pub(crate) use defects::row as defect_row;
pub use found_rows::{CertificateSaid, DefectRow, LockedRow, SaidRow};
pub(crate) use phones::is_silent;
pub(crate) use readings::questions;
pub use record::{
    AgainstRow, DaySheet, Evening, ExpectedRow, MissingRow, Morning, NotReported, PartIn, PhoneRow, Phones,
    Section, Sections, VisitRow, WithoutRow, Yesterday,
};
pub use rows::{
    AnsweredBy, AsideRow, CorrectedRow, FigureRow, HappenedRow, LateRow, OilFound, OilRow, ReminderRow,
    RoseRow, SetRow, SettleRow, ToldService, TopUpRow, TwiceRow,
};
pub(crate) use sets::row as set_row;
pub(crate) use trainee::signed_alone;
pub(crate) use twice::doubles;
pub(crate) use unit_day::{day_number, entry_of};
pub(crate) use unit_now::{UnitNow, is_old_news, open_defects, to_certify, unit_now, units_now};
pub(crate) use words::key as word;
pub(crate) use words::{glass, key, poured};
pub(crate) use yard::Yard;

use crate::ShopError;
use crate::due;
use day_facts::DayFacts;
use unit_day::UnitDay;

/// Which view of a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum View {
    /// 06:00: who may go out.
    Morning,
    /// 17:00: what came in.
    Evening,
}

/// The sheet of a day, from what the ledger holds, as known at `now`.
///
/// # Errors
/// As any read; and for a day outside the calendar.
pub fn day_sheet(ledger: &Ledger, day: NaiveDate, view: View, now: Stamp) -> Result<DaySheet, ShopError> {
    let yard = Yard::of(ledger, day, now)?;
    let facts = DayFacts::read(ledger, &yard)?;
    let read = Read {
        units: UnitDay::read_all(ledger, &yard, &facts)?,
        facts,
        closings: closings(ledger)?,
        heard: phones::last_heard(ledger, &yard)?,
    };
    let phones = phones::since_yesterday(ledger, &yard, &read.heard)?;
    let (sentences, view) = match view {
        View::Evening => {
            let evening = evening(ledger, &yard, &read)?;
            (sentences::evening(&yard, &evening, &phones), Sections::Evening(Box::new(evening)))
        }
        View::Morning => {
            let morning = morning::morning(ledger, &yard, &read)?;
            (sentences::morning(&yard, &morning), Sections::Morning(Box::new(morning)))
        }
    };
    let known_at = yard.stamp(now.moment());
    Ok(DaySheet { fleet: ledger.fleet().name.clone(), day, known_at, sentences, phones, view })
}

/// What the sections are put together from, each read once.
struct Read {
    facts: DayFacts,
    units: Vec<UnitDay>,
    closings: Vec<(HeldEntry, SheetClosed)>,
    /// The last exchange of each device up to the cut, milliseconds, by key id.
    heard: BTreeMap<[u8; 8], i64>,
}

impl Read {
    /// The folded states with their door numbers, for the due list.
    fn states(&self) -> Vec<(&str, &UnitState)> {
        self.units.iter().map(|unit| (unit.door.as_str(), &unit.state)).collect()
    }
}

fn evening(ledger: &Ledger, yard: &Yard, read: &Read) -> Result<Evening, ShopError> {
    let units = &read.units;
    Ok(Evening {
        happened: Section::of(happened::rows(ledger, yard, units)),
        without: Section::of(uses::without(ledger, yard, units)),
        against: Section::of(uses::against(ledger, yard, units)?),
        not_reported: expected::not_reported(ledger, yard, read)?,
        new_defects: Section::of(defects::new_on(ledger, yard, units)?),
        locked: Section::of(defects::locked(ledger, yard, units)?),
        due: due::list(ledger, yard, &read.states(), Standing::ComingUp)?,
        reminders: Section::of(notes::reminders(ledger, yard, units)),
        top_ups: Section::of(pours::top_ups(ledger, yard, units)),
        oil: Section::of(pours::drinking(ledger, yard, units)),
        to_settle: Section::of(readings::to_settle(ledger, yard, units)?),
        sets: Section::of(sets::disagreeing(ledger, yard, units)),
        corrected: Section::of(readings::corrected(ledger, yard, read)?),
        entered_twice: Section::of(twice::entered_twice(ledger, yard, units)?),
        set_aside: Section::of(aside::set_aside(ledger, yard)?),
        came_late: Section::of(aside::came_late(ledger, yard, &read.closings, yard.day, &read.facts)?),
        dated_ahead: Section::of(aside::dated_ahead(ledger, yard, &read.facts)?),
        bays_tomorrow: Section::of(visits::planned_for(ledger, units, yard.tomorrow()?)?),
    })
}
