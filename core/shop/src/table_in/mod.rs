//! History in: tables out of older records, read row by row and never guessed.
//!
//! A dry run tells what would come in, what is here already, and of each refused row the field, as it is written,
//! and why. Only what was seen in a dry run can be brought in: it is bound to the digest of the file and of what
//! was said about it. What comes in is signed by the shop and marked "brought in".

mod ask;
mod cells;
mod columns;
mod dates;
mod error;
mod figures;
mod refused;
mod rows;
mod same;
mod table;
mod told;
mod units;
mod why;

use std::collections::BTreeMap;

use sha2::{Digest, Sha256};
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_trade::record::{Pour, SetRegistered, Source, TruckRegistered};
use sumpbook_trade::{Entry, EntryId, Fact, SetId, Stamp, TruckId};

use crate::sheet::{key, poured};
use crate::shop::new_id;
use crate::{Hand, Shop, ShopError};

pub use ask::Ask;
pub(crate) use columns::volume_unit;
pub use columns::{Column, What};
pub use dates::DateStyle;
pub use error::TableError;
pub use figures::DecimalStyle;
pub use refused::refused_csv;
pub use told::{Already, DryRun, Here, ReadAs, Refused, Rounded};
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
        rounded: Vec::new(),
        unused,
    };
    let mut planned = Vec::new();
    if told.ask.is_some() {
        return Ok(Plan { told, planned });
    }
    let fleet = ledger.fleet();
    let template = fleet.checklist().map_err(|_| TableError::NotATable("no checklist".to_owned()))?;
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
                match (near.iter().find(is_twin).and_then(|at| rows_of.get(*at)), &next) {
                    // Two rows register no unit twice, and what the second says is not here.
                    (Some(_), Planned::Unit(_)) => {
                        cells.refuse(Column::Unit, Why::TwiceInFile);
                        told.refused.append(&mut cells.refused);
                        told.refused_rows += 1;
                    }
                    (Some(same_as), Planned::Entry(_)) => {
                        told.already.push(Already { row: *row, here: Here::Row { same_as: *same_as } });
                    }
                    (None, _) => {
                        told.rounded.append(&mut cells.rounded);
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
            if row.set_serial.as_ref().is_some_and(|serial| fleet.set_by_serial(serial).is_some()) {
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
            let (unit, day, hours) = (unit.door.clone(), unit.in_service, Some(unit.in_service_hours));
            ReadAs { row, unit, day, hours, tasks: Vec::new(), fluid: None, volume: None }
        }
        Planned::Entry(entry) => {
            let mut read = ReadAs {
                row,
                unit: entry.unit.map(|truck| fleet.door(truck)).unwrap_or_default(),
                day: fleet.yard_day(entry.at),
                hours: entry.hours,
                tasks: Vec::new(),
                fluid: None,
                volume: None,
            };
            match &entry.fact {
                Fact::HourReading(reading) => read.hours = Some(reading.figure),
                Fact::ServiceDone(done) => {
                    read.tasks = done.tasks.iter().map(ToString::to_string).collect();
                    let volume = done.oil.as_ref().and_then(|oil| oil.volume);
                    read.volume =
                        volume.map(|volume| poured(&[Pour { volume, after: None, waited_ms: None }]));
                }
                Fact::TopUp(top_up) => {
                    read.fluid = Some(key(&top_up.fluid));
                    read.volume = Some(poured(&top_up.pours));
                }
                _ => {}
            }
            read
        }
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
        annual_inspection: None,
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
            trainer_pin_given: false,
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
