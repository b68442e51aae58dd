//! Tern Hollow Water for tests: the shop, its people, its units, and phones that write without a clock.

use chrono::NaiveDate;
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::{Admission, Incoming, Ledger, NewEntry};
use sumpbook_daybook::store::{ExchangeRow, Store};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::record::*;
use sumpbook_trade::{Entry, EntryId, Fact, Features, PersonId, Stamp, Tenths, TruckId, WalkId};
use uuid::Uuid;

use crate::close::{Closing, close};
use crate::sheet::{DaySheet, Evening, Morning, Sections, View, day_sheet};
use crate::*;

/// A phone: a ledger of its own that follows the shop when it exchanges.
pub(crate) struct Phone {
    pub(crate) ledger: Ledger,
    sent: i64,
}

pub(crate) struct Yard {
    pub(crate) shop: Shop,
    pub(crate) phones: Vec<Phone>,
    pub(crate) folder: tempfile::TempDir,
}

pub(crate) const PEOPLE: [(&str, Role); 12] = [
    ("Ilse Marrow", Role::Manager),
    ("Dov Petrakis", Role::Mechanic),
    ("Wren Castellane", Role::Mechanic),
    ("Amos Tillery", Role::Driver),
    ("Bettina Quaye", Role::Driver),
    ("Carmelo Ruiz", Role::Driver),
    ("Dinah Fosse", Role::Driver),
    ("Edric Loomis", Role::Crew),
    ("Fenna Adair", Role::Crew),
    ("Gil Sandoval", Role::Trainee),
    ("Hattie Brun", Role::Driver),
    ("Ivo Lindqvist", Role::Driver),
];

/// Door, in service, hours then, last regular oil service, last of the cooler, last of the separator.
type Unit = (
    &'static str,
    &'static str,
    i64,
    Option<(i64, &'static str)>,
    Option<&'static str>,
    Option<(i64, &'static str)>,
);
const UNITS: [Unit; 6] = [
    ("TH-01", "2022-03-31", 0, Some((24_180, "2026-02-12")), Some("2025-11-20"), None),
    ("TH-02", "2021-11-30", 0, Some((10_113, "2025-11-14")), Some("2025-11-14"), None),
    ("TH-03", "2024-09-16", 0, Some((4_026, "2026-04-08")), Some("2026-04-08"), None),
    ("TH-05", "2026-09-28", 32, None, None, None),
    (
        "TH-07",
        "2024-05-10",
        6_110,
        Some((16_902, "2026-06-15")),
        Some("2026-06-15"),
        Some((6_110, "2024-05-10")),
    ),
    ("TH-08", "2022-06-15", 0, Some((5_402, "2025-10-20")), Some("2025-10-20"), None),
];

pub(crate) fn at(text: &str) -> Stamp {
    text.parse().unwrap()
}

pub(crate) fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

impl Yard {
    /// The yard on Sunday evening, everything known of it brought in.
    pub(crate) fn new() -> Yard {
        let folder = tempfile::tempdir().unwrap();
        let begin = at("2026-10-18T12:00:00-06:00");
        let options = InitOptions {
            name: "Tern Hollow Water".into(),
            zone: "America/Denver".into(),
            demo: true,
            now: begin,
        };
        let mut shop = Shop::init(folder.path(), &options).unwrap();
        let mut ilse = Hand::nobody(begin);
        for (name, role) in PEOPLE {
            let who = shop.add_person(NewPerson { name: name.into(), role, gone: false }, &ilse).unwrap();
            ilse.person = ilse.person.or(Some(who));
        }
        for (door, since, hours, oil, cooler, separator) in UNITS {
            let truck = shop
                .add_truck(
                    NewTruck {
                        door: door.into(),
                        serial: None,
                        plate: None,
                        features: Features::default(),
                        in_service: day(since),
                        in_service_hours: Tenths(hours),
                        annual_inspection: None,
                    },
                    &ilse,
                )
                .unwrap();
            let told = [
                oil.map(|(hours, when)| ("oil-and-filters", Some(hours), when)),
                cooler.map(|when| ("cooler-and-scavenge", None, when)),
                separator.map(|(hours, when)| ("separator", Some(hours), when)),
            ];
            for (task, hours, when) in told.into_iter().flatten() {
                let fact = ServiceDone {
                    tasks: vec![task.into()],
                    oil: None,
                    parts: vec![],
                    oil_reason: None,
                    photo: None,
                };
                let when = at(&format!("{when}T12:00:00-07:00"));
                brought_in(&mut shop, truck, fact.into(), hours.map(Tenths), when, begin);
            }
            let (status, minute) = match door {
                "TH-07" => (DayStatus::Out, Some(19 * 60)),
                "TH-08" => (DayStatus::Stored, None),
                _ => (DayStatus::Out, None),
            };
            shop.set_day_status(truck, day("2026-10-18"), status, minute, &ilse).unwrap();
        }
        let mut phones = Vec::new();
        for n in 1..=3u8 {
            let key = DeviceKey::from_secret(&[n; 32]);
            let enrolled =
                DeviceEnrolled { key: Digest(key.public().bytes()), name: format!("yard phone {n}") };
            shop.write(None, enrolled.into(), None, &ilse).unwrap();
            let ledger = Ledger::over(Store::in_memory().unwrap(), shop.ledger.root(), key).unwrap();
            phones.push(Phone { ledger, sent: 0 });
        }
        let mut yard = Yard { shop, phones, folder };
        for phone in 1..=3 {
            yard.exchange(phone, "2026-10-18T16:40:00-06:00");
        }
        yard
    }

    /// The shop alone, with the folder it lives in.
    pub(crate) fn into_shop(self) -> (Shop, tempfile::TempDir) {
        (self.shop, self.folder)
    }

    pub(crate) fn who(&self, name: &str) -> PersonId {
        let first = |full: &str| full.split(' ').next() == Some(name);
        self.shop.ledger.fleet().people.values().find(|p| first(&p.name)).unwrap().person
    }

    pub(crate) fn hand(&self, name: &str, when: &str) -> Hand {
        Hand::of(self.who(name), at(when)).received(at(when))
    }

    pub(crate) fn truck(&self, door: &str) -> TruckId {
        self.shop.unit(door).unwrap()
    }

    /// Someone signs a fact on a phone of the yard; it comes to the shop at that phone's next exchange.
    pub(crate) fn sign(
        &mut self,
        phone: usize,
        who: &str,
        door: &str,
        when: &str,
        fact: impl Into<Fact>,
    ) -> EntryId {
        self.sign_with(phone, who, door, when, None, fact)
    }

    pub(crate) fn sign_with(
        &mut self,
        phone: usize,
        who: &str,
        door: &str,
        when: &str,
        hours: Option<i64>,
        fact: impl Into<Fact>,
    ) -> EntryId {
        let (person, truck) = (self.who(who), self.truck(door));
        let entry = Entry {
            id: EntryId(crate::shop::new_id(at(when)).unwrap()),
            unit: Some(truck),
            set: None,
            at: at(when),
            clock_off_ms: Some(0),
            person: Some(person),
            trainer: None,
            pin_given: true,
            trainer_pin_given: false,
            hours: hours.map(Tenths),
            note: None,
            source: Source::Phone,
            fact: fact.into(),
        };
        let id = entry.id;
        let held = &mut self.phones[phone - 1].ledger;
        held.record(&[NewEntry { entry, truck: Some(truck) }], at(when).unix_ms()).unwrap();
        id
    }

    /// A phone meets the shop: what either has that the other lacks goes over, and the log says so.
    pub(crate) fn exchange(&mut self, phone: usize, when: &str) {
        self.exchange_off(phone, when, 0);
    }

    /// The same over a phone whose clock stands so far from the shop's.
    pub(crate) fn exchange_off(&mut self, phone: usize, when: &str, off_ms: i64) {
        let ms = at(when).unix_ms();
        let Phone { ledger, sent } = &mut self.phones[phone - 1];
        let fleet = self.shop.ledger.root().fleet;
        let own = ledger.own_key().id();
        let rows = ledger.store().truth().between(*sent, i64::MAX, i64::MAX).unwrap();
        let up: Vec<Incoming> = rows
            .iter()
            .filter(|h| h.row.actor.key() == own)
            .map(|h| Incoming::of_row(fleet, &h.row))
            .collect();
        for told in self.shop.ledger.admit(&up, ms, Some(own.0)).unwrap() {
            assert!(matches!(told, Admission::Admitted(_) | Admission::Known(_)), "{told:?}");
        }
        let all = self.shop.ledger.store().truth().between(0, i64::MAX, i64::MAX).unwrap();
        let down: Vec<Incoming> = all.iter().map(|held| Incoming::of_row(fleet, &held.row)).collect();
        ledger.admit(&down, ms, None).unwrap();
        *sent = ledger.store().truth().last_n().unwrap();
        let to_n = self.shop.ledger.store().truth().last_n().unwrap();
        let row = ExchangeRow { device: own.0, at_ms: ms, from_n: 0, to_n, off_ms: Some(off_ms) };
        self.shop.ledger.store_mut().log_exchange(&row).unwrap();
    }

    pub(crate) fn sheet(&self, of: &str, view: View, when: &str) -> DaySheet {
        day_sheet(&self.shop.ledger, day(of), view, at(when)).unwrap()
    }

    pub(crate) fn evening(&self, of: &str, when: &str) -> Evening {
        match self.sheet(of, View::Evening, when).view {
            Sections::Evening(evening) => *evening,
            Sections::Morning(_) => panic!("a morning"),
        }
    }

    pub(crate) fn morning(&self, of: &str, when: &str) -> Morning {
        match self.sheet(of, View::Morning, when).view {
            Sections::Morning(morning) => *morning,
            Sections::Evening(_) => panic!("an evening"),
        }
    }

    pub(crate) fn close(&mut self, of: &str, when: &str) -> Closing {
        let hand = self.hand("Ilse", when);
        close(&mut self.shop, day(of), &hand).unwrap()
    }

    /// The due list's words for one task.
    pub(crate) fn due(&self, door: &str, task: &str, when: &str) -> String {
        let list = crate::due::due_list(&self.shop.ledger, at(when)).unwrap();
        let row = list.rows.iter().find(|row| row.unit == door && row.task == task);
        row.map_or_else(|| "not on the list".to_owned(), |row| row.said.clone())
    }
}

/// History from an old binder.
pub(crate) fn brought_in(
    shop: &mut Shop,
    truck: TruckId,
    fact: Fact,
    hours: Option<Tenths>,
    when: Stamp,
    came: Stamp,
) {
    let entry = Entry {
        id: EntryId(crate::shop::new_id(when).unwrap()),
        unit: Some(truck),
        set: None,
        at: when,
        clock_off_ms: None,
        person: None,
        trainer: None,
        pin_given: false,
        trainer_pin_given: false,
        hours,
        note: None,
        source: Source::BroughtIn,
        fact,
    };
    shop.ledger.record(&[NewEntry { entry, truck: Some(truck) }], came.unix_ms()).unwrap();
}

pub(crate) fn answer(item: &str, place: Option<&str>, severity: Option<Severity>, words: &str) -> Answer {
    Answer {
        item: item.into(),
        place: place.map(str::to_owned),
        answer: if severity.is_some() { AnswerKind::Defect } else { AnswerKind::Ok },
        word: None,
        severity,
        figures: vec![],
        on_screen_ms: Some(14_000),
        together: None,
        words: Some(words.to_owned()).filter(|words| !words.is_empty()),
        photos: vec![],
        sound: None,
    }
}

/// So many seconds of a noise, as a desk records it: one channel of 8 bits at 8 kHz, and words of who recorded it.
pub(crate) fn noise(seconds: u32) -> Vec<u8> {
    let samples: Vec<u8> = (0..seconds * 8_000).map(|n| (n % 200) as u8).collect();
    let length = samples.len() as u32;
    let mut made = b"RIFF".to_vec();
    made.extend((36 + 8 + 6 + length).to_le_bytes());
    made.extend(b"WAVEfmt \x10\0\0\0\x01\0\x01\0");
    made.extend([8_000u32, 8_000].map(u32::to_le_bytes).concat());
    made.extend(b"\x01\0\x08\0LIST\x06\0\0\0owner\0data");
    made.extend(length.to_le_bytes());
    made.extend(samples);
    made
}

/// A whole walk: what was answered, or else that the horn was all right.
pub(crate) fn walk(mut answers: Vec<Answer>, minutes: u32) -> PreTripSection {
    if answers.is_empty() {
        answers.push(answer("horn", None, None, ""));
    }
    let walk = WalkId(Uuid::from_u128(7));
    PreTripSection { walk, edition: 1, answers, seconds: Some(minutes * 60), complete: true, follows: None }
}

pub(crate) fn reading(figure: i64) -> HourReading {
    HourReading {
        meter: Meter::Compressor,
        figure: Tenths(figure),
        how: How::Asked,
        kept_when_asked: false,
        photo: None,
    }
}

pub(crate) fn drive(what: DriveWhat) -> Drive {
    Drive { what, in_spite_of_lock: None }
}

pub(crate) fn end_of_day() -> EndOfDay {
    EndOfDay {
        defects: vec![],
        none_found: true,
        odometer: None,
        tanks_drained: None,
        to_next: None,
        notes_seen: vec![],
    }
}

pub(crate) fn note(what: NoteKind, as_shown: &str, gone: Option<EntryId>) -> DisplayNote {
    DisplayNote { what, as_shown: as_shown.into(), stopped_by_itself: None, gone_again: gone, photo: None }
}

pub(crate) fn service(tasks: &[&str]) -> ServiceDone {
    let tasks = tasks.iter().map(|task| TaskId::from(*task)).collect();
    ServiceDone { tasks, oil: None, parts: vec![], oil_reason: None, photo: None }
}
