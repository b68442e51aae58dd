//! History in: tables out of older records, read row by row and never guessed.
//!
//! A dry run tells what would come in, what is here already, and of each refused row the field, as it is written,
//! and why. Only what was seen in a dry run can be brought in: it is bound to the digest of the file and of what
//! was said about it. What comes in is signed by the shop and marked "brought in".

mod ask;
mod cells;
mod columns;
mod dates;
mod figures;
mod refused;
mod rows;
mod same;
mod table;
mod units;
mod why;

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::Serialize;
use sha2::{Digest, Sha256};
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_trade::record::{SetRegistered, Source, TruckRegistered};
use sumpbook_trade::{Entry, EntryId, Fact, SetId, Stamp, Template, Tenths, TruckId};

use crate::shop::new_id;
use crate::{Hand, Shop, ShopError};

pub use ask::Ask;
pub use columns::{Column, What};
pub use dates::DateStyle;
pub use figures::DecimalStyle;
pub use refused::refused_csv;
pub use why::Why;

use cells::Cells;
use rows::Reader;
use table::Table;
use units::{There, UnitRow};

/// A file holds at most so many bytes.
pub const MOST_BYTES: usize = 4 * 1024 * 1024;
/// So many good rows are shown as they were read.
const SHOWN: usize = 12;

/// What someone says about a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    /// What it holds.
    pub what: What,
    /// How it writes its days; none when that was not said.
    pub dates: Option<DateStyle>,
    /// How it writes its decimals; none when that was not said.
    pub decimals: Option<DecimalStyle>,
}

/// What bringing a file in would do.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct DryRun {
    /// What it holds.
    pub what: What,
    /// How it writes its days, as far as it was said.
    pub dates: Option<DateStyle>,
    /// How it writes its decimals, as far as it was said.
    pub decimals: Option<DecimalStyle>,
    /// SHA-256 over the file and what was said about it: bringing in asks for it.
    pub seen: String,
    /// What must be said first; then nothing else was worked out.
    pub ask: Option<Ask>,
    /// Rows that would come in.
    pub good: usize,
    /// Rows that are refused.
    pub refused_rows: usize,
    /// Rows that are here already.
    pub here: usize,
    /// Each refused field.
    pub refused: Vec<Refused>,
    /// Each row that is here already.
    pub already: Vec<Already>,
    /// The first good rows as they were read.
    pub first: Vec<ReadAs>,
    /// Heads of columns with which nothing is done.
    pub unused: Vec<String>,
}

/// A field that cannot be brought in, and its row with it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Refused {
    /// The row as a spreadsheet counts: the heads are row 1.
    pub row: usize,
    /// The column's head.
    pub field: String,
    /// As it is written.
    pub as_written: String,
    /// Why.
    pub why: Why,
}

/// A row that is here already.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Already {
    /// The row.
    pub row: usize,
    /// Where.
    #[serde(flatten)]
    pub here: Here,
}

/// Where a row is already.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "here", rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum Here {
    /// In the books.
    Recorded {
        /// The entry.
        entry: EntryId,
        /// Its moment.
        at: Stamp,
        /// How it came to be written down.
        source: Source,
    },
    /// The unit is registered so.
    Registered,
    /// In an earlier row of the same file.
    Row {
        /// That row.
        same_as: usize,
    },
}

/// A good row as it was read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct ReadAs {
    /// The row.
    pub row: usize,
    /// The unit.
    pub unit: String,
    /// The day.
    pub day: NaiveDate,
    /// The hours.
    pub hours: Option<Tenths>,
}

/// Why a file cannot be read as a table at all, or not be brought in.
#[derive(Debug, thiserror::Error)]
pub enum TableError {
    /// Too large.
    #[error("this file is larger than {} MiB. Nothing was brought in. Part it and bring in one part after the other.", MOST_BYTES / 1024 / 1024)]
    TooLarge,
    /// Not text.
    #[error("this file is not text in UTF-8. Nothing was brought in. Save it again as CSV in UTF-8.")]
    NotText,
    /// Nothing in it.
    #[error("this file holds no rows. Nothing was brought in. Its first row holds the heads of its columns.")]
    Empty,
    /// Not a table.
    #[error(
        "this file does not read as a table: {0}. Nothing was brought in. Save it again as CSV in UTF-8."
    )]
    NotATable(String),
    /// A column is missing.
    #[error(
        "this file has no column '{missing}', which {what} need. Nothing was brought in. Columns that are known: {known}."
    )]
    Column {
        /// What it was said to hold.
        what: &'static str,
        /// The column.
        missing: &'static str,
        /// The columns it may have.
        known: String,
    },
    /// It must be said how it is written.
    #[error("{0}")]
    Ask(Box<Ask>),
    /// Another file, or other words about it, than the dry run saw.
    #[error(
        "this is not what the dry run saw: the file, or what was said about it, is another, or something came in since. Nothing was brought in. Look at the dry run again."
    )]
    NotSeen,
}

/// What one row comes to.
enum Planned {
    Entry(Box<Entry>),
    Unit(Box<UnitRow>),
}

struct Plan {
    told: DryRun,
    planned: Vec<Planned>,
}

/// Reads a file and tells what would come in. Nothing is written.
///
/// # Errors
/// When the file is no table, or lacks a column it needs; and as any read.
pub fn dry_run(ledger: &Ledger, file: &[u8], asked: &Asked, now: Stamp) -> Result<DryRun, ShopError> {
    let hand = Hand::nobody(now);
    Ok(plan(ledger, file, asked, &hand)?.told)
}

/// Brings in the good rows of a file, all of them or none. `seen` is the digest its dry run gave.
///
/// # Errors
/// [`TableError::NotSeen`] when it is not what the dry run saw; as [`dry_run`]; and as any write.
pub fn bring_in(
    shop: &mut Shop,
    file: &[u8],
    asked: &Asked,
    seen: &str,
    hand: &Hand,
) -> Result<DryRun, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    let Plan { told, planned } = plan(&shop.ledger, file, asked, hand)?;
    if let Some(ask) = told.ask {
        return Err(TableError::Ask(Box::new(ask)).into());
    }
    if told.seen != seen.trim().to_lowercase() {
        return Err(TableError::NotSeen.into());
    }
    let mut entries = Vec::new();
    for planned in planned {
        match planned {
            Planned::Entry(entry) => entries.push(NewEntry::about_its_unit(*entry)),
            Planned::Unit(row) => entries.extend(registered(*row, hand)?),
        }
    }
    let received = hand.received.unwrap_or(hand.at).unix_ms();
    shop.ledger.record(&entries, received)?;
    shop.ledger.settle()?;
    Ok(told)
}

fn plan(ledger: &Ledger, file: &[u8], asked: &Asked, hand: &Hand) -> Result<Plan, ShopError> {
    let now = hand.at;
    let table = Table::read(file)?;
    let (heads, unused) = table.heads(asked.what)?;
    let mut told = DryRun {
        what: asked.what,
        dates: asked.dates,
        decimals: asked.decimals,
        seen: seen(ledger, file, asked),
        ask: ask::ask(asked, &heads, &table.rows),
        good: 0,
        refused_rows: 0,
        here: 0,
        refused: Vec::new(),
        already: Vec::new(),
        first: Vec::new(),
        unused,
    };
    let mut planned = Vec::new();
    if told.ask.is_some() {
        return Ok(Plan { told, planned });
    }
    let fleet = ledger.fleet();
    let template =
        Template::common_practice().map_err(|_| TableError::NotATable("no checklist".to_owned()))?;
    let reader = Reader { fleet, person: hand.person, now, template };
    let mut rows_of: Vec<usize> = Vec::new();
    let mut places: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    for (row, record) in &table.rows {
        let mut cells = Cells::new(*row, asked, fleet.yard_day(now), &heads, record);
        let found = match asked.what {
            What::Units => unit(fleet, &mut cells),
            _ => entry(ledger, &reader, asked.what, &mut cells)?,
        };
        told.refused.append(&mut cells.refused);
        match found {
            None => told.refused_rows += 1,
            Some(Err(here)) => told.already.push(Already { row: *row, here }),
            Some(Ok(next)) => {
                let near = places.entry(nearby(&next)).or_default();
                let is_twin = |at: &&usize| planned.get(**at).is_some_and(|earlier| is_same(earlier, &next));
                match near.iter().find(is_twin).and_then(|at| rows_of.get(*at)) {
                    Some(same_as) => {
                        told.already.push(Already { row: *row, here: Here::Row { same_as: *same_as } });
                    }
                    None => {
                        if told.first.len() < SHOWN {
                            told.first.push(read_as(fleet, *row, &next));
                        }
                        near.push(planned.len());
                        planned.push(next);
                        rows_of.push(*row);
                    }
                }
            }
        }
    }
    (told.good, told.here) = (planned.len(), told.already.len());
    Ok(Plan { told, planned })
}

type Found = Option<Result<Planned, Here>>;

fn entry(
    ledger: &Ledger,
    reader: &Reader<'_>,
    what: What,
    cells: &mut Cells<'_>,
) -> Result<Found, ShopError> {
    let Some(entry) = reader.entry(what, cells) else { return Ok(None) };
    Ok(Some(match same::here(ledger, &entry)? {
        Some(here) => Err(here),
        None => Ok(Planned::Entry(Box::new(entry))),
    }))
}

fn unit(fleet: &sumpbook_daybook::fleet::Fleet, cells: &mut Cells<'_>) -> Found {
    let row = units::read(cells)?;
    match units::there(fleet, &row) {
        There::Same => Some(Err(Here::Registered)),
        There::Otherwise(column) => {
            cells.refuse(column, Why::HereOtherwise);
            None
        }
        There::No => {
            let taken = |serial: &String| fleet.sets.values().any(|set| set.serial.as_ref() == Some(serial));
            if row.set_serial.as_ref().is_some_and(taken) {
                cells.refuse(Column::SetSerial, Why::SetElsewhere);
                return None;
            }
            Some(Ok(Planned::Unit(Box::new(row))))
        }
    }
}

/// What two rows that can be one have in common: so a row is compared with few others.
fn nearby(planned: &Planned) -> String {
    match planned {
        Planned::Entry(entry) => {
            let unit = entry.unit.map(|truck| truck.to_string()).unwrap_or_default();
            format!("{unit} {}", entry.at.moment().date_naive())
        }
        Planned::Unit(row) => row.door.to_lowercase(),
    }
}

fn is_same(one: &Planned, other: &Planned) -> bool {
    match (one, other) {
        (Planned::Entry(a), Planned::Entry(b)) => {
            a.id == b.id
                || (a.unit == b.unit
                    && a.at.moment().date_naive() == b.at.moment().date_naive()
                    && same::says_the_same(a, b))
        }
        (Planned::Unit(a), Planned::Unit(b)) => a.door.eq_ignore_ascii_case(&b.door),
        _ => false,
    }
}

fn read_as(fleet: &sumpbook_daybook::fleet::Fleet, row: usize, planned: &Planned) -> ReadAs {
    match planned {
        Planned::Unit(unit) => {
            ReadAs { row, unit: unit.door.clone(), day: unit.in_service, hours: Some(unit.in_service_hours) }
        }
        Planned::Entry(entry) => ReadAs {
            row,
            unit: entry.unit.map(|truck| fleet.door(truck)).unwrap_or_default(),
            day: fleet.yard_day(entry.at),
            hours: match &entry.fact {
                Fact::HourReading(reading) => Some(reading.figure),
                _ => entry.hours,
            },
        },
    }
}

/// The truck and its set, as entries of the fleet.
fn registered(row: UnitRow, hand: &Hand) -> Result<[NewEntry; 2], ShopError> {
    let truck = TruckId(new_id(hand.at)?);
    let on_truck = TruckRegistered {
        truck,
        door: row.door,
        serial: row.serial,
        plate: row.plate,
        features: row.features.unwrap_or_default(),
        in_service: row.in_service,
        in_service_hours: row.in_service_hours,
    };
    let set = SetId(new_id(hand.at)?);
    let on_set = SetRegistered { set, serial: row.set_serial, on: Some(truck), profile: row.profile };
    let entry = |fact: Fact| -> Result<NewEntry, ShopError> {
        let entry = Entry {
            id: EntryId(new_id(hand.at)?),
            unit: None,
            set: None,
            at: hand.at,
            clock_off_ms: Some(0),
            person: hand.person,
            trainer: None,
            pin_given: false,
            hours: None,
            note: None,
            source: Source::BroughtIn,
            fact,
        };
        Ok(NewEntry { entry, truck: None })
    };
    Ok([entry(on_truck.into())?, entry(on_set.into())?])
}

/// The file and what was said about it, as one digest.
fn seen(ledger: &Ledger, file: &[u8], asked: &Asked) -> String {
    let said = serde_json::json!([asked.what, asked.dates, asked.decimals]).to_string();
    let digest = Sha256::new_with_prefix(b"sumpbook dry run 1")
        .chain_update(ledger.root().fleet.bytes())
        .chain_update(said)
        .chain_update(file)
        .finalize();
    digest.iter().map(|byte| format!("{byte:02x}")).collect()
}
