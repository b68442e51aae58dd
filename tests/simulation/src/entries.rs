//! Entries of every kind that bears on a unit, made out of a few small numbers.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::clock::{Programme, TaskId};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::{
    Acknowledgement, Answer, AnswerKind, Certificate, Correction, DayStatusSet, Decision, DefectName,
    DisplayNote, EndOfDay, HourReading, How, LateAccepted, Meter, MeterExchange, NoteKind, OilReason,
    OtherUnit, PersonSet, Pour, PreTripSection, ProgrammeSet, RepairVerdict, Review, Role, ServiceDone,
    StartAir, TopUp, Verdict, WaitingForPart,
};
use sumpbook_trade::{Entry, EntryId, Fact, Figure, Tenths, TruckId, Unit, WalkId};

use crate::fleet::{fleet_named, person, set_registered, truck_registered};

/// Kinds a phone records, by number modulo this.
pub const PHONE_KINDS: u8 = 16;
/// Kinds the shop records in a truck's book.
pub const SHOP_KINDS: u8 = 6;
/// Kinds the shop records in the fleet book.
pub const FLEET_KINDS: u8 = 6;

const ITEMS: [&str; 3] = ["lamps-stop", "oil-leaks", "tyre-wall"];
const SEVERITIES: [Severity; 5] =
    [Severity::RoadAndAir, Severity::Road, Severity::Air, Severity::Outlet, Severity::Note];
const TASKS: [&str; 4] = ["oil-and-filters", "first-service", "separator", "cooler-and-scavenge"];
const VERDICTS: [Verdict; 4] =
    [Verdict::Use, Verdict::DoNotUse, Verdict::SameService, Verdict::ReadingStands];

/// One of a few, by any number.
pub fn pick<T: Copy>(from: &[T], number: u32) -> T {
    from[number as usize % from.len()]
}

/// An answer that is as it should be, or a defect.
pub fn answer(number: u32, defect: bool) -> Answer {
    Answer {
        item: pick(&ITEMS, number).to_owned(),
        place: number.is_multiple_of(4).then(|| "left".to_owned()),
        answer: if defect { AnswerKind::Defect } else { AnswerKind::Ok },
        word: defect.then(|| "weeping".to_owned()),
        severity: defect.then(|| pick(&SEVERITIES, number / 3)),
        figures: Vec::new(),
        on_screen_ms: Some(900),
        together: None,
        words: None,
        photos: Vec::new(),
        sound: None,
    }
}

/// A section with one answer of each item; those `defects` names are defects.
pub fn section(walk: u32, defects: &[u32]) -> PreTripSection {
    let answers = (0..3).map(|item| match defects.iter().find(|d| **d % 3 == item) {
        Some(defect) => answer(*defect, true),
        None => answer(item, false),
    });
    PreTripSection {
        walk: WalkId::from_bytes([walk as u8; 16]),
        edition: 1,
        answers: answers.collect(),
        seconds: Some(480),
        complete: true,
        follows: None,
    }
}

/// Figures a meter might show, the odd ones among them.
pub fn figure(base: i64, number: u32) -> Tenths {
    match number % 12 {
        0 => Tenths(base * 10),
        1 => Tenths(base - 36),
        2 => Tenths(base - 1),
        3 => Tenths(base + 2_400),
        4 if number.is_multiple_of(7) => Tenths(i64::MAX),
        5 if number.is_multiple_of(7) => Tenths(i64::MIN),
        6 => Tenths(0),
        _ => Tenths(base + i64::from(number % 9)),
    }
}

/// What phone entries may be about: other entries by id, and a figure of the meter.
#[derive(Clone, Copy, Debug)]
pub struct About {
    /// An entry that may be here, or come, or never be.
    pub target: EntryId,
    /// Another one.
    pub other: EntryId,
    /// Any number.
    pub number: u32,
    /// About what the meter shows.
    pub meter: i64,
    /// Another truck than the entry's own.
    pub elsewhere: TruckId,
}

/// Fills in what a phone records.
pub fn by_phone(entry: &mut Entry, kind: u8, about: About) {
    let About { target, other, number, meter, elsewhere } = about;
    entry.fact = match kind % PHONE_KINDS {
        0 => section(number, &[]).into(),
        1 => section(number, &[number]).into(),
        2 => section(number, &[number, number / 2 + 1]).into(),
        3 => {
            let defects = if number.is_multiple_of(2) { vec![answer(number, true)] } else { Vec::new() };
            let none_found = defects.is_empty();
            EndOfDay {
                defects,
                none_found,
                odometer: None,
                tanks_drained: None,
                to_next: None,
                notes_seen: vec![],
            }
            .into()
        }
        4..=6 => {
            let meter_kind = if number.is_multiple_of(11) { Meter::Engine } else { Meter::Compressor };
            let figure = figure(meter, number);
            HourReading { meter: meter_kind, figure, how: How::Asked, kept_when_asked: false, photo: None }
                .into()
        }
        7 => {
            entry.hours = Some(Tenths(meter));
            service(number).into()
        }
        8 => MeterExchange {
            meter: Meter::Compressor,
            old_end: (!number.is_multiple_of(3)).then_some(Tenths(meter)),
            new_start: Tenths(i64::from(number % 40)),
            went_round: number.is_multiple_of(13),
        }
        .into(),
        9 => DisplayNote {
            what: pick(&[NoteKind::Fault, NoteKind::Warning, NoteKind::Reminder], number),
            as_shown: "SERVICE SOON".to_owned(),
            stopped_by_itself: Some(number.is_multiple_of(5)),
            gone_again: number.is_multiple_of(3).then_some(target),
            photo: None,
        }
        .into(),
        10 => Acknowledgement { note: target, told_shop: number.is_multiple_of(2) }.into(),
        11 => Correction { target, why: "typed wrong".to_owned(), instead: None }.into(),
        12 => Review { certificates: vec![target, other], report: Some(other) }.into(),
        13 => top_up(number).into(),
        14 if number.is_multiple_of(2) => OtherUnit { target, unit: elsewhere, anew: other }.into(),
        14 => {
            let part = pick(&["element", "hose"], number).to_owned();
            WaitingForPart { task: None, part, promised: None, over: number.is_multiple_of(3), defect: None }
                .into()
        }
        _ => StartAir { steps: Vec::new(), in_spite_of_lock: None }.into(),
    };
}

fn service(number: u32) -> ServiceDone {
    ServiceDone {
        tasks: vec![TaskId::from(pick(&TASKS, number)), TaskId::from(pick(&TASKS, number / 4))],
        oil: None,
        parts: Vec::new(),
        oil_reason: number.is_multiple_of(6).then_some(OilReason::Milky),
        photo: None,
    }
}

fn top_up(number: u32) -> TopUp {
    let quart = Figure::parse("1", Unit::Quart).unwrap();
    TopUp {
        fluid: Fluid::CompressorOil,
        family: Some(pick(&[OilFamily::Mineral, OilFamily::Polyglycol], number)),
        grade: None,
        gauge_zero: Some(true),
        blow_down_silent: Some(true),
        before: None,
        pours: vec![Pour { volume: quart, after: None, waited_ms: None }],
        after: None,
        warmth: None,
        stopped: None,
        cap_tight: Some(true),
        oil_temperature: None,
        label_scanned: None,
    }
}

/// Fills in what the shop records in a truck's book.
pub fn by_shop(entry: &mut Entry, kind: u8, about: About) {
    let About { target, other, number, .. } = about;
    let day = entry.at.moment().date_naive();
    entry.fact = match kind % SHOP_KINDS {
        0 | 1 => {
            let defect = DefectName {
                entry: target,
                item: pick(&ITEMS, number).to_owned(),
                place: number.is_multiple_of(4).then(|| "left".to_owned()),
            };
            let verdict = pick(&[RepairVerdict::Repaired, RepairVerdict::NotNeeded], number);
            Certificate { defect, verdict, words: "seen to".to_owned() }.into()
        }
        2 | 3 => Decision {
            targets: vec![target, other],
            verdict: pick(&VERDICTS, number),
            why: "asked".to_owned(),
        }
        .into(),
        4 => LateAccepted { targets: vec![target, other], why: "he rang".to_owned() }.into(),
        _ => {
            let status = pick(&[DayStatus::Out, DayStatus::Parked, DayStatus::InShop], number);
            DayStatusSet { from: day, status, expected_minute: Some(390) }.into()
        }
    };
}

/// What the shop changes about the fleet.
pub fn of_fleet_book(kind: u8, number: u32, trucks: u32) -> Fact {
    let mut programme = Programme::common_practice();
    programme.edition = number;
    if let Some(task) = programme.tasks.first_mut() {
        task.hours = Some(Tenths::hours(200 + i64::from(number % 5) * 50));
    }
    let one = number % trucks;
    match kind % FLEET_KINDS {
        0 => fleet_named(pick(&["America/Denver", "Pacific/Auckland", "Nowhere/Known"], number)).into(),
        1 => truck_registered(one, i64::from(number % 100)).into(),
        2 => {
            let on = (!number.is_multiple_of(4)).then_some(number / 2 % trucks);
            set_registered(one, on, pick(&[OilFamily::Mineral, OilFamily::Polyglycol], number)).into()
        }
        3 => ProgrammeSet { truck: Some(crate::fleet::truck(one)), programme }.into(),
        4 => ProgrammeSet { truck: None, programme }.into(),
        _ => PersonSet {
            person: person(one),
            name: format!("person {number}"),
            role: Role::Crew,
            gone: false,
            new_pin_asked: None,
        }
        .into(),
    }
}
