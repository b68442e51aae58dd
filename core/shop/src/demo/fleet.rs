//! The invented fleet of Tern Hollow Water as its shop writes it down on Sunday 18 October 2026.

use chrono::{DateTime, FixedOffset, NaiveDate, TimeDelta};
use sumpbook_daybook::ledger::NewEntry;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::{
    DayStatusSet, Glass, HourReading, How, Meter, OnCall, PersonSet, Pour, Role, ServiceDone, SetProfile,
    SetRegistered, ShopSays, Source, TopUp, TruckRegistered, Warmth,
};
use sumpbook_trade::unit::{Feature, Features, HoseTag};
use sumpbook_trade::{Entry, EntryId, Fact, Figure, PersonId, SetId, Stamp, Tenths, TruckId, Unit};
use uuid::Uuid;

use super::DemoError;

/// Everyone at Tern Hollow Water, and what they do.
pub const PEOPLE: [(&str, Role); 12] = [
    ("Ilse Marrow", Role::Manager),
    ("Dov Petrakis", Role::Mechanic),
    ("Wren Castellane", Role::Mechanic),
    ("Amos Tillery", Role::Driver),
    ("Bettina Quaye", Role::Driver),
    ("Carmelo Ruiz", Role::Driver),
    ("Dinah Fosse", Role::Driver),
    ("Edric Loomis", Role::Driver),
    ("Fenna Adair", Role::Driver),
    ("Gil Sandoval", Role::Trainee),
    ("Hattie Brun", Role::Driver),
    ("Ivo Lindqvist", Role::Driver),
];

/// The yard's zone.
pub const ZONE: &str = "America/Denver";

/// A unit as the shop brings it in.
struct Row {
    door: &'static str,
    features: &'static [Feature],
    valves: &'static [&'static str],
    hoses: &'static [(&'static str, f64)],
    cfm: &'static str,
    glass: Option<&'static str>,
    oil: OilFamily,
    in_service: &'static str,
    in_service_hours: &'static str,
    hours: &'static str,
    /// A top-up of the binders that ended at the middle of the glass: hours, moment, quarts.
    at_the_middle: Option<(&'static str, &'static str, &'static str)>,
    /// Oil and filters last done: hours and day.
    oil_done: Option<(&'static str, &'static str)>,
    /// Cooler and scavenge last done.
    cooler_done: Option<&'static str>,
    /// Separator last done.
    separator_done: Option<(&'static str, &'static str)>,
    status: DayStatus,
    /// Expected out from this minute of the day.
    out_at: u16,
}

const MORNING: u16 = 7 * 60;

use Feature as F;

const UNITS: [Row; 8] = [
    Row {
        door: "TH-01",
        features: &[
            F::AirBrakes,
            F::IntakeHeater,
            F::Diesel,
            F::Def,
            F::ManualTankDrains,
            F::CoolerInside,
            F::ShaftDrive,
            F::TwoPressure,
            F::HourMeter,
            F::ReceiverDrain,
            F::TempShown,
            F::HoseReels,
            F::HoseOverHalfInch,
            F::OutletFilter,
            F::ToolOiler,
            F::PowerSteering,
        ],
        valves: &["gauge port", "small hose", "large hose"],
        hoses: &[("H-11", 0.5), ("H-12", 0.75)],
        cfm: "185",
        glass: Some("0.60"),
        oil: OilFamily::Mineral,
        in_service: "2022-03-31",
        in_service_hours: "0.0",
        hours: "2862.4",
        at_the_middle: Some(("2790.4", "2026-08-14T06:50:00-06:00", "0.25")),
        oil_done: Some(("2418.0", "2026-02-12")),
        cooler_done: Some("2025-11-20"),
        separator_done: None,
        status: DayStatus::Out,
        out_at: MORNING,
    },
    Row {
        door: "TH-02",
        features: &[
            F::HydraulicBrakes,
            F::GlowPlugs,
            F::Diesel,
            F::ShaftDrive,
            F::HourMeter,
            F::PowerSteering,
        ],
        valves: &["hose"],
        hoses: &[("H-21", 0.5)],
        cfm: "60",
        glass: None,
        oil: OilFamily::Mineral,
        in_service: "2021-11-30",
        in_service_hours: "0.0",
        hours: "1204.7",
        at_the_middle: None,
        oil_done: Some(("1011.3", "2025-11-14")),
        cooler_done: Some("2025-11-14"),
        separator_done: None,
        status: DayStatus::Out,
        out_at: MORNING,
    },
    Row {
        door: "TH-03",
        features: &[
            F::AirBrakes,
            F::Diesel,
            F::Def,
            F::CoolerInside,
            F::ShaftDrive,
            F::HourMeter,
            F::ReceiverDrain,
            F::TempShown,
            F::Trailer,
            F::TrailerAir,
            F::PowerSteering,
        ],
        valves: &["left", "right"],
        hoses: &[("H-31", 0.75)],
        cfm: "185",
        glass: None,
        oil: OilFamily::Mineral,
        in_service: "2024-09-16",
        in_service_hours: "0.0",
        hours: "731.9",
        at_the_middle: None,
        oil_done: Some(("402.6", "2026-04-08")),
        cooler_done: Some("2026-04-08"),
        separator_done: None,
        status: DayStatus::Out,
        out_at: MORNING,
    },
    Row {
        door: "TH-04",
        features: &[F::HydraulicBrakes, F::Gasoline, F::BeltDrive],
        valves: &["hose"],
        hoses: &[("H-41", 0.5)],
        cfm: "60",
        glass: None,
        oil: OilFamily::Mineral,
        in_service: "2023-03-06",
        in_service_hours: "0.0",
        hours: "384.2",
        at_the_middle: None,
        oil_done: Some(("200.0", "2026-03-31")),
        cooler_done: Some("2026-03-31"),
        separator_done: None,
        status: DayStatus::Out,
        out_at: MORNING,
    },
    Row {
        door: "TH-05",
        features: &[
            F::HydraulicBrakes,
            F::GlowPlugs,
            F::Diesel,
            F::Def,
            F::ShaftDrive,
            F::HourMeter,
            F::TempShown,
        ],
        valves: &["hose"],
        hoses: &[("H-51", 0.5)],
        cfm: "100",
        glass: Some("0.60"),
        oil: OilFamily::Mineral,
        in_service: "2026-09-28",
        in_service_hours: "3.2",
        hours: "38.6",
        at_the_middle: None,
        oil_done: None,
        cooler_done: None,
        separator_done: None,
        status: DayStatus::Out,
        out_at: MORNING,
    },
    Row {
        door: "TH-06",
        features: &[F::HydraulicBrakes, F::Diesel, F::ShaftDrive, F::HourMeter],
        valves: &["hose"],
        hoses: &[("H-61", 0.5)],
        cfm: "100",
        glass: None,
        oil: OilFamily::Mineral,
        in_service: "2022-01-18",
        in_service_hours: "0.0",
        hours: "1446.0",
        at_the_middle: None,
        oil_done: Some(("1004.4", "2026-01-30")),
        cooler_done: Some("2026-01-30"),
        separator_done: None,
        status: DayStatus::Out,
        out_at: MORNING,
    },
    Row {
        door: "TH-07",
        features: &[
            F::AirBrakes,
            F::Diesel,
            F::Def,
            F::TwoPressure,
            F::ShaftDrive,
            F::HourMeter,
            F::TempShown,
        ],
        valves: &["left", "right"],
        hoses: &[("H-71", 0.75)],
        cfm: "185",
        glass: None,
        oil: OilFamily::Polyglycol,
        in_service: "2021-05-10",
        in_service_hours: "0.0",
        hours: "1912.2",
        at_the_middle: None,
        oil_done: Some(("1690.2", "2026-06-15")),
        cooler_done: Some("2026-06-15"),
        separator_done: Some(("611.0", "2024-05-10")),
        status: DayStatus::Out,
        out_at: 19 * 60,
    },
    Row {
        door: "TH-08",
        features: &[F::HydraulicBrakes, F::Diesel, F::ShaftDrive, F::HourMeter],
        valves: &["hose"],
        hoses: &[("H-81", 0.5)],
        cfm: "100",
        glass: None,
        oil: OilFamily::Mineral,
        in_service: "2022-06-15",
        in_service_hours: "0.0",
        hours: "611.0",
        at_the_middle: None,
        oil_done: Some(("540.2", "2025-10-20")),
        cooler_done: Some("2025-10-20"),
        separator_done: None,
        status: DayStatus::Stored,
        out_at: MORNING,
    },
];

/// What TH-02's meter rose on its last fourteen days of use, in tenths: so that a day unlike it is known as one.
const TH_02_RISES: [i64; 14] = [24, 31, 18, 32, 27, 22, 30, 32, 15, 29, 26, 32, 20, 28];

/// Ids of the demo: version 7, of one morning, told apart by their count.
#[derive(Default)]
pub(super) struct Ids(u16);

impl Ids {
    /// The next id.
    pub(super) fn next(&mut self, at: Stamp) -> Uuid {
        self.0 = self.0.wrapping_add(1);
        let [high, low] = self.0.to_be_bytes();
        let ms = u64::try_from(at.unix_ms()).unwrap_or(0);
        uuid::Builder::from_unix_timestamp_millis(ms, &[0, 0, 0x54, 0x48, 0, 0, 0, 0, high, low]).into_uuid()
    }
}

/// The moment the fleet was written down.
pub(super) fn begun() -> Result<Stamp, DemoError> {
    Ok("2026-10-18T15:00:00-06:00".parse()?)
}

/// Everything the shop writes down before the month begins, in order.
///
/// # Errors
/// Only when a figure in the table above is mistyped.
pub(super) fn written(ids: &mut Ids) -> Result<Vec<NewEntry>, DemoError> {
    let at = begun()?;
    let mut entries = Vec::new();
    let mut manager = None;
    for (name, role) in PEOPLE {
        let person = PersonId(ids.next(at));
        manager.get_or_insert(person);
        let fact = PersonSet { person, name: name.to_owned(), role, gone: false, new_pin_asked: None };
        entries.push(fleet_entry(ids, at, manager, fact.into()));
    }
    for row in &UNITS {
        unit(ids, at, manager, row, &mut entries)?;
    }
    let says = ShopSays {
        on_call: vec![OnCall { name: "Night desk".to_owned(), number: "555-0140".to_owned() }],
        of_reminder: Some("Finish the job, tell us today.".to_owned()),
        ..ShopSays::default()
    };
    entries.push(fleet_entry(ids, at, manager, says.into()));
    Ok(entries)
}

fn unit(
    ids: &mut Ids,
    at: Stamp,
    manager: Option<PersonId>,
    row: &Row,
    entries: &mut Vec<NewEntry>,
) -> Result<(), DemoError> {
    let (truck, set) = (TruckId(ids.next(at)), SetId(ids.next(at)));
    let mut features = Features::of(row.features.iter().copied());
    features.valves = row.valves.iter().map(|&v| v.to_owned()).collect();
    features.hoses = row.hoses.iter().map(|(tag, inches)| HoseTag::inches(*tag, *inches)).collect();
    let number: String = row.door.chars().filter(char::is_ascii_digit).collect();
    let registered = TruckRegistered {
        truck,
        door: row.door.to_owned(),
        serial: Some(format!("THW-C-{number}")),
        plate: Some(format!("THW {number}4")),
        features,
        in_service: day(row.in_service)?,
        in_service_hours: row.in_service_hours.parse()?,
        annual_inspection: (row.door == "TH-03").then(|| day("2027-03-12")).transpose()?,
    };
    entries.push(fleet_entry(ids, at, manager, registered.into()));
    let profile = SetProfile {
        delivery: Some(Figure::parse(row.cfm, Unit::CubicFootPerMinute)?),
        glass: row.glass.map(|quarts| Figure::parse(quarts, Unit::Quart)).transpose()?,
        oil_family: Some(row.oil),
        oil_grade: Some("ISO VG 46".to_owned()),
        // Its service puts in so much.
        oil_volume: row.glass.map(|_| Figure::parse("8", Unit::Quart)).transpose()?,
        ..SetProfile::unknown()
    };
    let registered = SetRegistered { set, serial: Some(format!("THW-A-{number}")), on: Some(truck), profile };
    entries.push(fleet_entry(ids, at, manager, registered.into()));

    let mut about = |entry_at: Stamp, hours: Option<Tenths>, source: Source, fact: Fact| {
        let id = EntryId(ids.next(entry_at));
        let entry = Entry {
            id,
            unit: Some(truck),
            set: Some(set),
            at: entry_at,
            clock_off_ms: None,
            person: manager,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours,
            note: None,
            source,
            fact,
        };
        entries.push(NewEntry::about_its_unit(entry));
    };
    let from = match row.door {
        "TH-08" => day("2026-08-31")?,
        _ => day("2026-10-01")?,
    };
    let status = DayStatusSet { from, status: row.status, expected_minute: Some(row.out_at) };
    about(at, None, Source::Shop, status.into());
    for (at, figure) in readings(row)? {
        let reading = HourReading {
            meter: Meter::Compressor,
            figure,
            how: How::Said,
            kept_when_asked: false,
            photo: None,
        };
        about(at, None, Source::BroughtIn, reading.into());
    }
    if let Some((figure, when, quarts)) = row.at_the_middle {
        let middle = TopUp {
            pours: vec![Pour { volume: Figure::parse(quarts, Unit::Quart)?, after: None, waited_ms: None }],
            after: Some(Glass::Percent(50)),
            warmth: Some(Warmth::Cold),
            family: Some(row.oil),
            ..TopUp::of(Fluid::CompressorOil)
        };
        about(when.parse()?, Some(figure.parse()?), Source::BroughtIn, middle.into());
    }
    for (hours, done, task) in services(row)? {
        let fact = ServiceDone {
            tasks: vec![TaskId(task.to_owned())],
            oil: None,
            parts: Vec::new(),
            oil_reason: None,
            photo: None,
        };
        about(noon(done)?, hours, Source::BroughtIn, fact.into());
    }
    Ok(())
}

/// Readings from the binders: one on the Sunday, and for TH-02 its last days of use.
fn readings(row: &Row) -> Result<Vec<(Stamp, Tenths)>, DemoError> {
    let now: Tenths = row.hours.parse()?;
    if row.door != "TH-02" {
        return Ok(vec![("2026-10-18T12:00:00-06:00".parse()?, now)]);
    }
    let mut found = Vec::new();
    let mut figure = now;
    let mut at: DateTime<FixedOffset> = "2026-10-16T16:15:00-06:00".parse::<Stamp>()?.moment();
    for rise in TH_02_RISES {
        found.push((Stamp::new(at), figure));
        figure = figure - Tenths(rise);
        at -= TimeDelta::days(if at.format("%a").to_string() == "Mon" { 3 } else { 1 });
    }
    found.push((Stamp::new(at), figure));
    found.reverse();
    Ok(found)
}

type Done = (Option<Tenths>, NaiveDate, &'static str);

fn services(row: &Row) -> Result<Vec<Done>, DemoError> {
    let mut done = Vec::new();
    if let Some((hours, on)) = row.oil_done {
        done.push((Some(hours.parse()?), day(on)?, "oil-and-filters"));
    }
    if let Some(on) = row.cooler_done {
        done.push((None, day(on)?, "cooler-and-scavenge"));
    }
    if let Some((hours, on)) = row.separator_done {
        done.push((Some(hours.parse()?), day(on)?, "separator"));
    }
    Ok(done)
}

fn fleet_entry(ids: &mut Ids, at: Stamp, person: Option<PersonId>, fact: Fact) -> NewEntry {
    let entry = Entry {
        id: EntryId(ids.next(at)),
        unit: None,
        set: None,
        at,
        clock_off_ms: None,
        person,
        trainer: None,
        pin_given: false,
        trainer_pin_given: false,
        hours: None,
        note: None,
        source: Source::Shop,
        fact,
    };
    NewEntry { entry, truck: None }
}

fn day(text: &str) -> Result<NaiveDate, DemoError> {
    Ok(text.parse::<NaiveDate>()?)
}

fn noon(day: NaiveDate) -> Result<Stamp, DemoError> {
    // The binders know days only; noon of the yard's winter time lies in the day all year.
    Ok(format!("{day}T12:00:00-07:00").parse()?)
}
