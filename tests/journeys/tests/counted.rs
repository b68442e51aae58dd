//! A unit without an hour meter: counted by its starts and stops, and how a meter takes over (R14, R3).
//!
//! Invented data; every outcome worked by rule.

use sumpbook_daybook::ledger::NewEntry;
use sumpbook_daybook::state::HoursNow;
use sumpbook_journeys::{at, day, due_row};
use sumpbook_shop::due::DueRow;
use sumpbook_shop::{Hand, InitOptions, NewPerson, NewSet, NewTruck, Shop};
use sumpbook_trade::record::{
    HourReading, How, Meter, MeterExchange, Role, SetProfile, Source, StartAir, StopAir,
};
use sumpbook_trade::{Entry, EntryId, Fact, Feature, Features, Tenths, TruckId};
use uuid::Uuid;

/// A yard with one unit, new on 19 October with 0.0 h, that has no hour meter.
struct Yard {
    shop: Shop,
    truck: TruckId,
    hand: Hand,
    entries: u128,
    _folder: tempfile::TempDir,
}

impl Yard {
    fn new() -> Yard {
        let folder = tempfile::tempdir().unwrap();
        let now = at("2026-10-19T05:00:00-06:00");
        let (name, zone) = ("Tern Hollow Water".to_owned(), "America/Denver".to_owned());
        let mut shop = Shop::init(folder.path(), &InitOptions { name, zone, demo: true, now }).unwrap();
        let ilse = NewPerson { name: "Ilse Marrow".to_owned(), role: Role::Manager, gone: false };
        let person = shop.add_person(ilse, &Hand::nobody(now)).unwrap();
        let hand = Hand::of(person, now).received(now);
        let truck = shop.add_truck(unit(false), &hand).unwrap();
        let set = NewSet { serial: Some("S-92".to_owned()), on: Some(truck), profile: SetProfile::unknown() };
        shop.add_set(set, &hand).unwrap();
        Yard { shop, truck, hand, entries: 0, _folder: folder }
    }

    fn says(&mut self, when: &str, fact: impl Into<Fact>) {
        self.entries += 1;
        let entry = Entry {
            id: EntryId(Uuid::from_u128(self.entries)),
            unit: Some(self.truck),
            set: None,
            at: at(when),
            clock_off_ms: None,
            person: self.hand.person,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Shop,
            fact: fact.into(),
        };
        let ms = at(when).unix_ms();
        self.shop.ledger.record(&[NewEntry::about_its_unit(entry)], ms).unwrap();
    }

    fn starts(&mut self, when: &str) {
        self.says(when, StartAir { steps: vec![], in_spite_of_lock: None });
    }

    fn stops(&mut self, when: &str) {
        self.says(when, StopAir { steps: vec![], blew_down: None });
    }

    fn reads(&mut self, when: &str, figure: &str) {
        let (figure, meter) = (tenths(figure), Meter::Compressor);
        self.says(when, HourReading { meter, figure, how: How::Asked, kept_when_asked: false, photo: None });
    }

    fn exchanges(&mut self, when: &str, old_end: Option<&str>) {
        let (meter, old_end) = (Meter::Compressor, old_end.map(tenths));
        self.says(when, MeterExchange { meter, old_end, new_start: Tenths::ZERO, went_round: false });
    }

    /// The shop registers the unit again, with or without a meter.
    fn registers(&mut self, when: &str, meter: bool) {
        let hand = Hand::of(self.hand.person.unwrap(), at(when)).received(at(when));
        self.shop.add_truck(unit(meter), &hand).unwrap();
    }

    fn due(&self, task: &str, now: &str) -> DueRow {
        due_row(&self.shop.ledger, "TH-92", task, now).unwrap()
    }

    fn hours(&self) -> HoursNow {
        self.shop.ledger.unit_state(self.truck).unwrap().hours
    }
}

fn unit(meter: bool) -> NewTruck {
    NewTruck {
        door: "TH-92".to_owned(),
        serial: None,
        plate: None,
        features: if meter { Features::of([Feature::HourMeter]) } else { Features::default() },
        in_service: day("2026-10-19"),
        in_service_hours: Tenths::ZERO,
        annual_inspection: None,
    }
}

fn tenths(text: &str) -> Tenths {
    text.parse().unwrap()
}

#[test]
fn a_stop_without_a_start_runs_back_to_the_figure_before_it() {
    let mut yard = Yard::new();
    yard.reads("2026-10-20T06:00:00-06:00", "3.0");
    yard.stops("2026-10-20T11:00:00-06:00");
    let row = yard.due("oil-and-filters", "2026-10-20T17:00:00-06:00");
    assert_eq!((row.hours, row.at_most), (Some(tenths("8.0")), true));
    assert_eq!(
        (yard.hours().counted.unwrap().low, yard.hours().counted.unwrap().unsure_runs),
        (tenths("3.0"), 1)
    );
}

#[test]
fn a_figure_read_while_it_runs_ends_no_run() {
    let mut yard = Yard::new();
    yard.starts("2026-10-20T07:00:00-06:00");
    yard.reads("2026-10-20T08:00:00-06:00", "4.0");
    assert_eq!(yard.due("oil-and-filters", "2026-10-20T09:00:00-06:00").hours, Some(tenths("5.0")));
    yard.stops("2026-10-20T10:00:00-06:00");
    assert_eq!(yard.hours().due, Some(tenths("6.0")));
    assert_eq!(yard.hours().counted.unwrap().unsure_runs, 0);
}

#[test]
fn a_new_unit_counts_from_the_hours_it_came_into_service_with() {
    let mut yard = Yard::new();
    let unknown = yard.due("first-service", "2026-10-19T06:00:00-06:00");
    assert_eq!((unknown.hours, unknown.said.as_str()), (None, "not known: a figure is missing"));
    for day in 19..24 {
        yard.starts(&format!("2026-10-{day}T07:00:00-06:00"));
        yard.stops(&format!("2026-10-{day}T17:00:00-06:00"));
    }
    let row = yard.due("first-service", "2026-10-23T18:00:00-06:00");
    assert_eq!((row.hours, row.state.as_str()), (Some(tenths("50.0")), "due-today"));
    yard.starts("2026-10-24T07:00:00-06:00");
    yard.stops("2026-10-24T09:00:00-06:00");
    let row = yard.due("first-service", "2026-10-24T18:00:00-06:00");
    assert_eq!((row.state.as_str(), row.hours_left.as_deref()), ("past-due", Some("-2.0")));
}

/// Read at 40.0, and 5.0 h counted since.
fn counted_to_45() -> Yard {
    let mut yard = Yard::new();
    yard.reads("2026-10-21T06:00:00-06:00", "40.0");
    yard.starts("2026-10-21T08:00:00-06:00");
    yard.stops("2026-10-21T13:00:00-06:00");
    assert_eq!(yard.hours().due, Some(tenths("45.0")));
    yard
}

#[test]
fn hours_counted_stand_when_a_meter_is_registered_and_its_first_reading_rules() {
    let mut yard = counted_to_45();
    yard.registers("2026-10-22T07:00:00-06:00", true);
    let row = yard.due("oil-and-filters", "2026-10-22T07:30:00-06:00");
    assert_eq!(row.hours, Some(tenths("45.0")), "nobody has read it yet");
    yard.starts("2026-10-22T08:00:00-06:00");
    yard.stops("2026-10-22T10:00:00-06:00");
    assert_eq!(yard.hours().due, Some(tenths("47.0")), "still counted");
    yard.reads("2026-10-22T16:00:00-06:00", "46.5");
    let hours = yard.hours();
    assert_eq!((hours.due, hours.counted, hours.questions.len()), (Some(tenths("46.5")), None, 0));
    yard.starts("2026-10-23T08:00:00-06:00");
    yard.stops("2026-10-23T10:00:00-06:00");
    assert_eq!(yard.hours().due, Some(tenths("46.5")), "a metered unit stands on its last reading");
    // What was known before stays as it was.
    let then = at("2026-10-21T18:00:00-06:00").unix_ms();
    let then = yard.shop.ledger.unit_state_at(yard.truck, then).unwrap().hours;
    assert_eq!((then.due, then.counted.is_some()), (Some(tenths("45.0")), true));
}

#[test]
fn a_new_meter_goes_on_from_the_hours_that_were_counted() {
    for old_end in [None, Some("40.0")] {
        let mut yard = counted_to_45();
        yard.registers("2026-10-22T07:00:00-06:00", true);
        yard.exchanges("2026-10-22T07:30:00-06:00", old_end);
        yard.reads("2026-10-22T16:00:00-06:00", "1.5");
        let hours = yard.hours();
        assert_eq!((hours.due, hours.offset), (Some(tenths("46.5")), tenths("45.0")), "{old_end:?}");
        assert_eq!((hours.counted, hours.questions.len()), (None, 0));
    }
}

#[test]
fn a_meter_fitted_before_it_was_registered_goes_on_from_there_too() {
    let mut yard = counted_to_45();
    yard.exchanges("2026-10-21T18:00:00-06:00", None);
    yard.reads("2026-10-22T16:00:00-06:00", "1.5");
    yard.registers("2026-10-23T07:00:00-06:00", true);
    yard.reads("2026-10-23T16:00:00-06:00", "2.5");
    let hours = yard.hours();
    assert_eq!((hours.due, hours.questions.len()), (Some(tenths("47.5")), 0));
}

#[test]
fn a_meter_that_shows_less_than_is_sure_is_asked_about() {
    // Never read: counted from 0.0 alone.
    let mut yard = Yard::new();
    for day in 19..24 {
        yard.starts(&format!("2026-10-{day}T07:00:00-06:00"));
        yard.stops(&format!("2026-10-{day}T17:00:00-06:00"));
    }
    yard.registers("2026-10-24T07:00:00-06:00", true);
    yard.reads("2026-10-24T16:00:00-06:00", "0.3");
    let hours = yard.hours();
    assert_eq!((hours.due, hours.questions.len()), (Some(tenths("50.0")), 1));
    assert_eq!(hours.questions[0].why, "backwards");
    // Whoever fitted it says so: nothing that was counted is lost.
    yard.exchanges("2026-10-24T08:00:00-06:00", None);
    let hours = yard.hours();
    assert_eq!((hours.due, hours.questions.len()), (Some(tenths("50.3")), 0));
}
