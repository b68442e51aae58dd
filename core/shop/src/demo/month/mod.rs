//! A month in the life of Tern Hollow Water, Monday 19 October to Monday 9 November 2026. Invented.
//!
//! The yard keeps Denver time: -06:00 until Sunday 1 November 02:00, then -07:00. Days without an event are
//! the yard's routine: a walk in the morning, a report in the evening, a file handed over.

mod first_week;
mod november;
mod second_week;

use chrono::{Datelike, NaiveDate, TimeDelta, Weekday};
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::{
    DisplayNote, Drive, DriveWhat, EndOfDay, Glass, HourReading, How, Meter, NoteKind, OilPut, OilReason,
    Pour, RepairVerdict, ServiceDone, StartAir, StopAir, StopWait, TopUp, WaitingForPart, Warmth,
};
use sumpbook_trade::{Fact, Figure, Tenths, Unit};

use super::DemoError;
use super::deed::{Deed, Doing, Recorded, moment};
use super::walk::Found;

/// A unit's usual phone, driver and hours of the day.
struct Usual {
    unit: &'static str,
    phone: &'static str,
    person: &'static str,
    with: Option<&'static str>,
    walk: &'static str,
    report: &'static str,
    handed_over: &'static str,
    seconds: u32,
}

const USUAL: [Usual; 6] = [
    usual("TH-01", "yard phone 1", "Amos Tillery", None, ["06:32", "16:35", "16:45"], 430),
    usual("TH-02", "yard phone 2", "Bettina Quaye", None, ["06:41", "16:30", "16:40"], 340),
    usual("TH-03", "yard phone 4", "Carmelo Ruiz", None, ["06:35", "16:40", "16:50"], 520),
    usual("TH-04", "yard phone 7", "Edric Loomis", None, ["06:50", "16:05", "16:20"], 310),
    usual("TH-05", "yard phone 5", "Gil Sandoval", Some("Hattie Brun"), ["06:55", "16:25", "16:35"], 480),
    usual("TH-06", "camp phone", "Fenna Adair", None, ["06:20", "16:00", "16:55"], 300),
];

const fn usual(
    unit: &'static str,
    phone: &'static str,
    person: &'static str,
    with: Option<&'static str>,
    [walk, report, handed_over]: [&'static str; 3],
    seconds: u32,
) -> Usual {
    Usual { unit, phone, person, with, walk, report, handed_over, seconds }
}

/// Every phone of the fleet.
pub const PHONES: [&str; 8] = [
    "yard phone 1",
    "yard phone 2",
    "yard phone 3",
    "yard phone 4",
    "yard phone 5",
    "yard phone 6",
    "yard phone 7",
    "camp phone",
];

/// Walks, reports and hand-overs that an event replaces: unit, day, which.
const REPLACED: [(&str, &str, Part); 9] = [
    ("TH-02", "2026-10-20", Part::Walk),
    ("TH-02", "2026-10-20", Part::HandOver),
    ("TH-05", "2026-10-22", Part::HandOver),
    ("TH-03", "2026-11-03", Part::Walk),
    ("TH-01", "2026-11-04", Part::HandOver),
    ("TH-01", "2026-11-09", Part::Walk),
    ("TH-03", "2026-10-22", Part::HandOver),
    ("TH-02", "2026-10-22", Part::Walk),
    ("TH-01", "2026-10-19", Part::Walk),
];

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Walk,
    Report,
    HandOver,
}

/// Every deed of the month, in the order of their moments.
///
/// # Errors
/// When a moment or a figure below is mistyped.
pub fn month() -> Result<Vec<Deed>, DemoError> {
    let mut deeds = Vec::new();
    let first = "2026-10-19".parse::<NaiveDate>()?;
    let last = "2026-11-09".parse::<NaiveDate>()?;
    for day in first.iter_days().take_while(|day| *day <= last) {
        if !matches!(day.weekday(), Weekday::Sat | Weekday::Sun) {
            routine(day, &mut deeds)?;
            nights(day, &mut deeds)?;
            closing(day, &mut deeds)?;
        }
    }
    first_week::first_week(&mut deeds)?;
    second_week::second_week(&mut deeds)?;
    november::november(&mut deeds)?;
    deeds.sort_by_key(|deed| deed.at);
    Ok(deeds)
}

fn offset(day: NaiveDate) -> &'static str {
    if NaiveDate::from_ymd_opt(2026, 11, 1).is_some_and(|change| day > change) { "-07:00" } else { "-06:00" }
}

fn routine(day: NaiveDate, deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let is_replaced = |unit: &str, part: Part| {
        REPLACED.iter().any(|(u, d, p)| *u == unit && *p == part && day.to_string() == *d)
    };
    for usual in &USUAL {
        let at = |time: &str| moment(&format!("{day}T{time}:00{}", offset(day)));
        if !is_replaced(usual.unit, Part::Walk) {
            deeds.push(record(at(usual.walk)?, usual, None, Recorded::Walk(usual.seconds, &[])));
        }
        if !is_replaced(usual.unit, Part::Report) {
            deeds.push(record(at(usual.report)?, usual, None, Recorded::Fact(Box::new(report().into()))));
        }
        if !is_replaced(usual.unit, Part::HandOver) {
            let what = Doing::HandOver { phone: usual.phone };
            deeds.push(Deed { at: at(usual.handed_over)?, what });
        }
    }
    Ok(())
}

/// TH-07 works from the evening to the morning, Monday to Thursday.
fn nights(day: NaiveDate, deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    if day.weekday() == Weekday::Fri {
        return Ok(());
    }
    let next = day + TimeDelta::days(1);
    let evening = moment(&format!("{day}T18:52:00{}", offset(day)))?;
    deeds.push(ivo(evening, None, None, Recorded::Walk(500, &[])));
    let morning = moment(&format!("{next}T04:40:00{}", offset(next)))?;
    deeds.push(ivo(morning, None, None, Recorded::Fact(Box::new(report().into()))));
    let handed = moment(&format!("{next}T05:00:00{}", offset(next)))?;
    deeds.push(Deed { at: handed, what: Doing::HandOver { phone: "yard phone 6" } });
    Ok(())
}

fn closing(day: NaiveDate, deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let text: &'static str = CLOSED_DAYS
        .iter()
        .copied()
        .find(|known| *known == day.to_string())
        .ok_or(DemoError::Month("a working day without a closing"))?;
    let at = moment(&format!("{day}T17:00:00{}", offset(day)))?;
    deeds.push(Deed { at, what: Doing::Close { day: text } });
    Ok(())
}

/// Days whose sheet the shop closes at 17:00.
pub const CLOSED_DAYS: [&str; 16] = [
    "2026-10-19",
    "2026-10-20",
    "2026-10-21",
    "2026-10-22",
    "2026-10-23",
    "2026-10-26",
    "2026-10-27",
    "2026-10-28",
    "2026-10-29",
    "2026-10-30",
    "2026-11-02",
    "2026-11-03",
    "2026-11-04",
    "2026-11-05",
    "2026-11-06",
    "2026-11-09",
];

const STOP_LAMP: Found =
    Found { item: "lamps-stop", place: Some("rear"), word: "out", words: "left stop lamp" };
const MIRROR: Found =
    Found { item: "mirrors", place: None, word: "cracked", words: "right mirror, low corner" };

fn record(at: sumpbook_trade::Stamp, usual: &Usual, hours: Option<Tenths>, what: Recorded) -> Deed {
    let what = Doing::Record {
        phone: usual.phone,
        unit: usual.unit,
        person: usual.person,
        with: usual.with,
        hours,
        name: None,
        what,
    };
    Deed { at, what }
}

fn on(
    phone: &'static str,
    unit: &'static str,
    person: &'static str,
    at: sumpbook_trade::Stamp,
    what: Recorded,
) -> Deed {
    Deed { at, what: Doing::Record { phone, unit, person, with: None, hours: None, name: None, what } }
}

fn ivo(at: sumpbook_trade::Stamp, hours: Option<Tenths>, name: Option<&'static str>, what: Recorded) -> Deed {
    let what = Doing::Record {
        phone: "yard phone 6",
        unit: "TH-07",
        person: "Ivo Lindqvist",
        with: None,
        hours,
        name,
        what,
    };
    Deed { at, what }
}

fn named(called: &'static str, mut deed: Deed) -> Deed {
    if let Doing::Record { name, .. } = &mut deed.what {
        *name = Some(called);
    }
    deed
}

fn hand_over(phone: &'static str, at: &str) -> Result<Deed, DemoError> {
    Ok(Deed { at: moment(at)?, what: Doing::HandOver { phone } })
}

fn reading(
    at: sumpbook_trade::Stamp,
    usual: &Usual,
    figure: &str,
    name: Option<&'static str>,
) -> Result<Deed, DemoError> {
    let mut deed = record(at, usual, None, fact(read(figure)?));
    if let Doing::Record { name: called, .. } = &mut deed.what {
        *called = name;
    }
    Ok(deed)
}

fn read(figure: &str) -> Result<HourReading, DemoError> {
    let figure = figure.parse()?;
    Ok(HourReading { meter: Meter::Compressor, figure, how: How::Asked, kept_when_asked: false, photo: None })
}

fn fact(fact: impl Into<Fact>) -> Recorded {
    Recorded::Fact(Box::new(fact.into()))
}

fn hours(text: &str) -> Result<Option<Tenths>, DemoError> {
    Ok(Some(text.parse()?))
}

fn report() -> EndOfDay {
    EndOfDay {
        defects: Vec::new(),
        none_found: true,
        odometer: None,
        tanks_drained: None,
        to_next: None,
        notes_seen: Vec::new(),
    }
}

fn started() -> StartAir {
    StartAir { steps: Vec::new(), in_spite_of_lock: None }
}

fn stopped() -> StopAir {
    StopAir { steps: Vec::new(), blew_down: Some(true) }
}

fn pour(quarts: &str, after: Option<u8>) -> Result<Pour, DemoError> {
    Ok(Pour {
        volume: Figure::parse(quarts, Unit::Quart)?,
        after: after.map(Glass::Percent),
        waited_ms: Some(120_000),
    })
}

fn poured(family: OilFamily, before: Option<u8>, pours: Vec<Pour>, after: Option<u8>) -> TopUp {
    TopUp {
        fluid: Fluid::CompressorOil,
        family: Some(family),
        grade: Some("ISO VG 46".to_owned()),
        gauge_zero: Some(true),
        blow_down_silent: Some(true),
        before: before.map(Glass::Percent),
        pours,
        after: after.map(Glass::Percent),
        warmth: Some(Warmth::Cold),
        stopped: Some(StopWait { minutes: Some(540), how: How::Said }),
        cap_tight: Some(true),
        oil_temperature: None,
        label_scanned: None,
    }
}

fn service(
    task: &str,
    oil: Option<(&str, OilFamily)>,
    oil_reason: Option<OilReason>,
) -> Result<ServiceDone, DemoError> {
    let oil = match oil {
        Some((quarts, family)) => Some(OilPut {
            volume: Some(Figure::parse(quarts, Unit::Quart)?),
            family: Some(family),
            grade: Some("ISO VG 46".to_owned()),
        }),
        None => None,
    };
    Ok(ServiceDone { tasks: vec![TaskId(task.to_owned())], oil, parts: Vec::new(), oil_reason, photo: None })
}
