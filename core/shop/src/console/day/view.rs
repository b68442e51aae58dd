//! One day as the page and its JSON hold it: the sheet, its versions, and the mark of what was known.

use std::path::Path;

use chrono::{NaiveDate, Timelike};
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::SheetRow;
use sumpbook_trade::Stamp;

use crate::ShopError;
use crate::close::changes::{Change, changes};
use crate::paper;
use crate::sheet::{DaySheet, Sections, View, Yard, closings, day_sheet, to_certify};

use super::steps::Open;

/// A day of the yard.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::console) struct DayView {
    /// The number of the last entry known to it: what came after is new.
    pub(super) mark: i64,
    /// Today in the yard.
    pub(super) today: NaiveDate,
    /// The closed version that is shown; none when it is worked out now.
    pub(super) version: Option<u32>,
    /// Every closed version of the day, oldest first.
    pub(super) versions: Vec<VersionRow>,
    /// What is still to be done before a sheet can tell anything.
    pub(super) first: First,
    /// Photos of paper pages kept at the desk of which no page is typed in yet; only in the morning view of today.
    pub(super) pages_to_type: Option<usize>,
    /// What is open today, where the sheet tells of an earlier moment: it offers no step for what is over.
    #[serde(skip)]
    pub(super) open_now: Option<Open>,
    /// The sheet.
    pub(super) sheet: DaySheet,
}

/// A closed version.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct VersionRow {
    /// 1 at the first closing.
    pub(super) version: u32,
    /// As known at.
    pub(super) known_at: Stamp,
    /// Who closed it.
    pub(super) by: Option<String>,
    /// What changed since the version before, one line each, as it is kept.
    pub(super) changes: Vec<String>,
    /// The same, to be told in the reader's language.
    #[serde(skip)]
    pub(super) told: Vec<Change>,
}

/// How far a new shop has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct First {
    /// Units entered.
    pub(super) units: usize,
    /// People entered.
    pub(super) people: usize,
    /// Phones added.
    pub(super) phones: usize,
}

/// Today's.
pub(super) fn of_today(
    ledger: &Ledger,
    folder: &Path,
    view: Option<View>,
    now: Stamp,
) -> Result<DayView, ShopError> {
    open(ledger, folder, ledger.fleet().yard_day(now), view, now)
}

/// A day as it is known now. Without a view asked for: the morning's before noon of the day itself.
pub(super) fn open(
    ledger: &Ledger,
    folder: &Path,
    day: NaiveDate,
    view: Option<View>,
    now: Stamp,
) -> Result<DayView, ShopError> {
    let there = now.moment().with_timezone(&ledger.fleet().zone);
    let morning = there.date_naive() == day && there.hour() < 12;
    let view = view.unwrap_or(if morning { View::Morning } else { View::Evening });
    let here = (view == View::Morning && day == ledger.fleet().yard_day(now)).then_some(folder);
    let pages_to_type =
        here.map(|folder| paper::to_type(ledger, folder)).transpose()?.map(|pages| pages.len());
    let view = around(ledger, now, None, day_sheet(ledger, day, view, now)?)?;
    Ok(DayView { pages_to_type, ..view })
}

/// A closed version, read back as it was answered; none when there is no such version.
pub(super) fn closed(
    ledger: &Ledger,
    day: NaiveDate,
    version: u32,
    now: Stamp,
) -> Result<Option<DayView>, ShopError> {
    let kept = of_day(ledger, day)?.into_iter().find(|row| row.version == version);
    let Some(kept) = kept else { return Ok(None) };
    Ok(Some(around(ledger, now, Some(version), serde_json::from_slice(&kept.body)?)?))
}

fn of_day(ledger: &Ledger, day: NaiveDate) -> Result<Vec<SheetRow>, ShopError> {
    Ok(ledger.store().sheets_of(&day.to_string())?)
}

/// What a version says otherwise than the one before it; nothing where there is none, or one of them does not read.
fn since_before(kept: &[SheetRow], row: &SheetRow) -> Vec<Change> {
    let before = kept.iter().filter(|other| other.version < row.version).max_by_key(|other| other.version);
    let read = |row: &SheetRow| serde_json::from_slice::<DaySheet>(&row.body).ok();
    let both = before.and_then(|before| Some((read(before)?, read(row)?)));
    both.and_then(|(old, new)| changes(&old, &new).ok()).unwrap_or_default()
}

fn around(ledger: &Ledger, now: Stamp, version: Option<u32>, sheet: DaySheet) -> Result<DayView, ShopError> {
    let fleet = ledger.fleet();
    let closings = closings(ledger)?;
    let stamp = |ms: i64| {
        chrono::DateTime::from_timestamp_millis(ms)
            .map_or(now, |at| Stamp::from(at.with_timezone(&fleet.zone).fixed_offset()))
    };
    let kept = of_day(ledger, sheet.day)?;
    let told: Vec<Vec<Change>> = kept.iter().map(|row| since_before(&kept, row)).collect();
    let versions = kept.into_iter().zip(told).map(|(row, told)| {
        let closing = closings.iter().find(|(_, c)| c.day == sheet.day && c.version == row.version);
        let entry = closing.and_then(|(held, _)| sumpbook_trade::Entry::from_payload(&held.row.payload).ok());
        let by = entry.and_then(|entry| fleet.person_name(entry.person?).map(str::to_owned));
        VersionRow { version: row.version, known_at: stamp(row.at_ms), by, changes: row.changes, told }
    });
    let today = fleet.yard_day(now);
    let open_now = if version.is_some() || sheet.day != today {
        let rows = to_certify(ledger, &Yard::of(ledger, today, now)?)?;
        Some(rows.into_iter().map(|row| (row.unit, row.item, row.place)).collect())
    } else {
        None
    };
    let people = fleet.people.values().filter(|person| !person.gone).count();
    Ok(DayView {
        mark: ledger.store().truth().last_n()?,
        today,
        version,
        versions: versions.collect(),
        first: First { units: fleet.trucks.len(), people, phones: fleet.devices.len() },
        pages_to_type: None,
        open_now,
        sheet,
    })
}

impl DayView {
    /// The view that is shown.
    pub(super) fn view(&self) -> View {
        match &self.sheet.view {
            Sections::Evening(_) => View::Evening,
            Sections::Morning(_) => View::Morning,
        }
    }
}
