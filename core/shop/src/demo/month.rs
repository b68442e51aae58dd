//! A month in the life of Tern Hollow Water, Monday 19 October to Monday 9 November 2026. Invented.
//!
//! The yard keeps Denver time: -06:00 until Sunday 1 November 02:00, then -07:00. Days without an event are
//! the yard's routine: a walk in the morning, a report in the evening, a file handed over.

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
    first_week(&mut deeds)?;
    second_week(&mut deeds)?;
    november(&mut deeds)?;
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

fn first_week(deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let mut add = |deed: Deed| deeds.push(deed);
    let [amos, bettina, carmelo, edric, gil, _] = &USUAL;
    // 1: a quiet walk.
    add(record(moment("2026-10-19T06:32:00-06:00")?, amos, hours("2862.4")?, Recorded::Walk(420, &[])));
    // 2: two people look at one lamp.
    add(record(moment("2026-10-20T06:41:00-06:00")?, bettina, None, Recorded::Walk(340, &[])));
    add(named(
        "lamp",
        on(
            "yard phone 3",
            "TH-02",
            "Hattie Brun",
            moment("2026-10-20T06:44:00-06:00")?,
            Recorded::PassedBy(STOP_LAMP),
        ),
    ));
    let left = Drive { what: DriveWhat::LeftYard, in_spite_of_lock: None };
    add(record(moment("2026-10-20T06:50:00-06:00")?, bettina, None, fact(left)));
    add(hand_over("yard phone 3", "2026-10-20T11:05:00-06:00")?);
    add(hand_over("yard phone 2", "2026-10-20T15:50:00-06:00")?);
    add(hand_over("yard phone 2", "2026-10-20T17:20:00-06:00")?);
    add(Deed {
        at: moment("2026-10-22T06:10:00-06:00")?,
        what: Doing::Certify {
            unit: "TH-02",
            person: "Wren Castellane",
            found: "lamp",
            item: "lamps-stop",
            place: Some("rear"),
            verdict: RepairVerdict::Repaired,
            words: "new bulb, socket cleaned",
            name: "lamp repaired",
        },
    });
    add(hand_over("yard phone 2", "2026-10-22T06:20:00-06:00")?);
    add(record(moment("2026-10-22T06:38:00-06:00")?, bettina, None, Recorded::Review(&["lamp repaired"])));
    add(record(moment("2026-10-22T06:41:00-06:00")?, bettina, None, Recorded::Walk(340, &[])));
    // 3: a slipped decimal point.
    add(reading(moment("2026-10-20T16:40:00-06:00")?, carmelo, "738.4", None)?);
    add(reading(moment("2026-10-21T16:35:00-06:00")?, carmelo, "7421.0", Some("typed wrong"))?);
    add(reading(moment("2026-10-22T16:30:00-06:00")?, carmelo, "746.0", None)?);
    let of = moment("2026-10-21T16:35:00-06:00")?;
    let right = Recorded::FactOf(of, Box::new(read("742.1")?.into()));
    add(named("read right", record(moment("2026-10-22T16:33:00-06:00")?, carmelo, None, right)));
    add(record(
        moment("2026-10-22T16:34:00-06:00")?,
        carmelo,
        None,
        Recorded::Correct("typed wrong", "the decimal point slipped: it read 742.1", "read right"),
    ));
    add(hand_over("yard phone 4", "2026-10-22T16:45:00-06:00")?);
    // 4: a reminder, two who answer it.
    add(reading(moment("2026-10-21T16:20:00-06:00")?, gil, "47.2", None)?);
    let shown = DisplayNote {
        what: NoteKind::Reminder,
        as_shown: "service due".to_owned(),
        stopped_by_itself: Some(false),
        gone_again: None,
        photo: None,
    };
    add(named("first reminder", record(moment("2026-10-22T15:05:00-06:00")?, gil, None, fact(shown))));
    add(Deed {
        at: moment("2026-10-22T15:07:00-06:00")?,
        what: Doing::PassOn { from: "yard phone 5", to: "yard phone 3" },
    });
    let told = Recorded::Acknowledge("first reminder", true);
    add(on("yard phone 3", "TH-05", "Hattie Brun", moment("2026-10-22T15:10:00-06:00")?, told));
    let seen = Recorded::Acknowledge("first reminder", false);
    add(record(moment("2026-10-22T15:22:00-06:00")?, gil, None, seen));
    add(reading(moment("2026-10-22T16:10:00-06:00")?, gil, "50.4", None)?);
    add(hand_over("yard phone 5", "2026-10-22T18:20:00-06:00")?);
    add(hand_over("yard phone 3", "2026-10-23T07:02:00-06:00")?);
    // 5: the first service.
    add(Deed {
        at: moment("2026-10-23T14:00:00-06:00")?,
        what: Doing::AtShop {
            unit: "TH-05",
            person: "Dov Petrakis",
            hours: hours("51.9")?,
            fact: Box::new(service("first-service", Some(("8", OilFamily::Mineral)), None)?.into()),
            name: Some("first service"),
        },
    });
    // Of no event: a small pour, so that a day has one.
    let a_little = poured(OilFamily::Mineral, Some(38), vec![pour("0.13", Some(52))?], Some(52));
    add(record(moment("2026-10-21T15:20:00-06:00")?, edric, None, fact(a_little)));
    // 6: a night across two days.
    add(ivo(moment("2026-10-22T23:10:00-06:00")?, hours("1918.0")?, None, fact(started())));
    add(ivo(moment("2026-10-23T02:25:00-06:00")?, hours("1921.2")?, None, fact(stopped())));
    Ok(())
}

fn second_week(deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let mut add = |deed: Deed| deeds.push(deed);
    let [amos, bettina, ..] = &USUAL;
    // A top-up in the morning, over the middle.
    let pours = vec![pour("0.08", Some(44))?, pour("0.13", Some(65))?];
    let top_up = poured(OilFamily::Mineral, Some(30), pours, Some(65));
    add(record(moment("2026-10-26T07:05:00-06:00")?, amos, hours("2884.9")?, fact(top_up)));
    // Another family of oil than the unit's own, and what it takes to put that right.
    let wrong = poured(OilFamily::Mineral, None, vec![pour("0.25", None)?], None);
    add(named("wrong oil", ivo(moment("2026-10-27T21:40:00-06:00")?, hours("1934.0")?, None, fact(wrong))));
    let flushed = service("oil-and-filters", Some(("8", OilFamily::Polyglycol)), Some(OilReason::Mixed))?;
    add(Deed {
        at: moment("2026-10-28T13:10:00-06:00")?,
        what: Doing::AtShop {
            unit: "TH-07",
            person: "Dov Petrakis",
            hours: hours("1934.5")?,
            fact: Box::new(flushed.into()),
            name: None,
        },
    });
    add(Deed {
        at: moment("2026-10-28T13:30:00-06:00")?,
        what: Doing::Certify {
            unit: "TH-07",
            person: "Dov Petrakis",
            found: "wrong oil",
            item: "oil-look",
            place: None,
            verdict: RepairVerdict::Repaired,
            words: "drained and flushed by the manual, filled with polyglycol",
            name: "oil flushed",
        },
    });
    add(hand_over("yard phone 6", "2026-10-28T18:30:00-06:00")?);
    add(ivo(moment("2026-10-28T18:45:00-06:00")?, None, None, Recorded::Review(&["oil flushed"])));
    // 10: four evenings, one figure of two is wrong.
    for (at, figure, name) in [
        ("2026-10-27T16:15:00-06:00", "1211.0", None),
        ("2026-10-28T16:15:00-06:00", "1226.2", Some("wednesday")),
        ("2026-10-29T16:20:00-06:00", "1221.5", Some("thursday")),
        ("2026-10-30T16:15:00-06:00", "1227.9", None),
    ] {
        add(reading(moment(at)?, bettina, figure, name)?);
    }
    // 11: the night the clocks go back.
    add(ivo(moment("2026-10-31T23:50:00-06:00")?, None, None, Recorded::Walk(500, &[])));
    add(ivo(moment("2026-11-01T00:50:00-06:00")?, hours("1951.0")?, None, fact(started())));
    add(ivo(moment("2026-11-01T01:40:00-07:00")?, hours("1952.8")?, None, fact(stopped())));
    add(ivo(moment("2026-11-01T04:40:00-07:00")?, None, None, fact(report())));
    add(hand_over("yard phone 6", "2026-11-01T05:00:00-07:00")?);
    Ok(())
}

fn november(deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let mut add = |deed: Deed| deeds.push(deed);
    let [amos, _, carmelo, ..] = &USUAL;
    // 12: a reminder that goes away by itself.
    add(reading(moment("2026-11-02T16:00:00-07:00")?, amos, "2908.3", None)?);
    let shown = DisplayNote {
        what: NoteKind::Reminder,
        as_shown: "change oil".to_owned(),
        stopped_by_itself: Some(false),
        gone_again: None,
        photo: None,
    };
    let at = moment("2026-11-04T15:40:00-07:00")?;
    add(named("oil reminder", record(at, amos, hours("2919.6")?, fact(shown))));
    let told = Recorded::Acknowledge("oil reminder", true);
    add(record(moment("2026-11-04T15:44:00-07:00")?, amos, None, told));
    add(hand_over("yard phone 1", "2026-11-04T16:45:00-07:00")?);
    let gone = Recorded::GoneAgain("oil reminder");
    add(record(moment("2026-11-05T16:20:00-07:00")?, amos, hours("2924.1")?, gone));
    // 13: a cracked mirror that needs no repair.
    let cracked = record(moment("2026-11-03T06:35:00-07:00")?, carmelo, None, Recorded::Walk(520, &[MIRROR]));
    add(named("mirror", cracked));
    add(hand_over("yard phone 4", "2026-11-03T07:30:00-07:00")?);
    add(Deed {
        at: moment("2026-11-03T07:55:00-07:00")?,
        what: Doing::Certify {
            unit: "TH-03",
            person: "Wren Castellane",
            found: "mirror",
            item: "mirrors",
            place: None,
            verdict: RepairVerdict::NotNeeded,
            words: "hairline outside the view; glass ordered",
            name: "mirror not needed",
        },
    });
    let ordered = WaitingForPart {
        task: None,
        part: "right mirror glass".to_owned(),
        promised: NaiveDate::from_ymd_opt(2026, 11, 17),
        over: false,
    };
    add(Deed {
        at: moment("2026-11-03T07:56:00-07:00")?,
        what: Doing::AtShop {
            unit: "TH-03",
            person: "Wren Castellane",
            hours: None,
            fact: Box::new(ordered.into()),
            name: None,
        },
    });
    add(hand_over("yard phone 4", "2026-11-03T08:00:00-07:00")?);
    let read = Recorded::Review(&["mirror not needed"]);
    add(on("yard phone 4", "TH-03", "Dinah Fosse", moment("2026-11-03T08:10:00-07:00")?, read));
    add(hand_over("yard phone 4", "2026-11-03T08:15:00-07:00")?);
    // 14: one service, entered twice.
    add(Deed {
        at: moment("2026-11-06T13:30:00-07:00")?,
        what: Doing::AtShop {
            unit: "TH-01",
            person: "Dov Petrakis",
            hours: hours("2926.0")?,
            fact: Box::new(service("oil-and-filters", Some(("8", OilFamily::Mineral)), None)?.into()),
            name: Some("oil by the shop"),
        },
    });
    let again = service("oil-and-filters", None, None)?;
    let amos_says = record(moment("2026-11-09T06:40:00-07:00")?, amos, hours("2926.3")?, fact(again));
    add(named("oil by the driver", amos_says));
    add(record(moment("2026-11-09T06:45:00-07:00")?, amos, None, Recorded::Walk(430, &[])));
    Ok(())
}

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
    Ok(HourReading { meter: Meter::Compressor, figure, how: How::Asked, kept_when_asked: false })
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
