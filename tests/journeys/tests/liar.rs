//! Cases in which a careless tool tells a comfortable lie: real entries, exact figures.
//!
//! Invented data; every outcome worked by rule (R1, R2, R3).

use chrono::NaiveDate;
use sumpbook_daybook::ledger::NewEntry;
use sumpbook_journeys::{at, day, due_row};
use sumpbook_shop::due::DueRow;
use sumpbook_shop::{Hand, InitOptions, NewPerson, NewTruck, Shop};
use sumpbook_trade::clock::{Nearer, Programme, Standpoint};
use sumpbook_trade::record::{HourReading, How, Meter, MeterExchange, Role, ServiceDone, Source};
use sumpbook_trade::{Entry, EntryId, Fact, Features, Stamp, Tenths, TruckId};
use uuid::Uuid;

const OIL: &str = "oil-and-filters";
const COOLER: &str = "cooler-and-scavenge";
const SEPARATOR: &str = "separator";
const FIRST: &str = "first-service";

/// A shop with one unit, and what its binders and its driver say.
struct Case {
    shop: Shop,
    truck: TruckId,
    hand: Hand,
    entries: u128,
    _folder: tempfile::TempDir,
}

impl Case {
    /// A unit in service since a day at these hours.
    fn of(in_service: &str, hours: &str) -> Case {
        let folder = tempfile::tempdir().unwrap();
        let now = at("2026-01-05T08:00:00-07:00");
        let options = InitOptions {
            name: "Tern Hollow Water".to_owned(),
            zone: "America/Denver".to_owned(),
            demo: true,
            now,
        };
        let mut shop = Shop::init(folder.path(), &options).unwrap();
        let ilse = NewPerson { name: "Ilse Marrow".to_owned(), role: Role::Manager, gone: false };
        let person = shop.add_person(ilse, &Hand::nobody(now)).unwrap();
        let hand = Hand::of(person, now).received(now);
        let unit = NewTruck {
            door: "TH-90".to_owned(),
            serial: None,
            plate: None,
            features: Features::default(),
            in_service: day(in_service),
            in_service_hours: hours.parse().unwrap(),
            annual_inspection: None,
        };
        let truck = shop.add_truck(unit, &hand).unwrap();
        Case { shop, truck, hand, entries: 0, _folder: folder }
    }

    fn says(&mut self, when: &str, hours: Option<&str>, fact: impl Into<Fact>) {
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
            hours: hours.map(tenths),
            note: None,
            source: Source::Shop,
            fact: fact.into(),
        };
        let ms = at(when).unix_ms();
        self.shop.ledger.record(&[NewEntry::about_its_unit(entry)], ms).unwrap();
    }

    fn reads(&mut self, when: &str, figure: &str) {
        let (figure, meter) = (tenths(figure), Meter::Compressor);
        self.says(
            when,
            None,
            HourReading { meter, figure, how: How::Asked, kept_when_asked: false, photo: None },
        );
    }

    fn serviced(&mut self, when: &str, hours: &str, task: &str) {
        let tasks = vec![task.into()];
        let done = ServiceDone { tasks, oil: None, parts: vec![], oil_reason: None, photo: None };
        self.says(when, Some(hours), done);
    }

    fn exchanged(&mut self, when: &str, old_end: &str, new_start: &str) {
        let (old_end, new_start) = (Some(tenths(old_end)), tenths(new_start));
        let meter = Meter::Compressor;
        self.says(when, None, MeterExchange { meter, old_end, new_start, went_round: false });
    }

    fn due(&self, task: &str, now: &str) -> DueRow {
        due_row(&self.shop.ledger, "TH-90", task, now).unwrap()
    }
}

fn tenths(text: &str) -> Tenths {
    text.parse().unwrap()
}

/// The day of the yard that a number of tenths of days after a moment lies in.
fn after(from: Stamp, tenths_of_days: i64) -> NaiveDate {
    (from.moment() + chrono::TimeDelta::minutes(tenths_of_days * 144)).date_naive()
}

#[test]
fn case_1_the_hours_run_out_ten_weeks_before_the_calendar() {
    let mut case = Case::of("2023-02-28", "0.0");
    case.serviced("2026-02-28T12:00:00-07:00", "1318.4", OIL);
    case.reads("2026-11-13T16:00:00-07:00", "1742.9");
    let now = "2026-11-13T17:00:00-07:00";
    let row = case.due(OIL, now);
    assert_eq!((row.due_hours, row.hours), (Some(Tenths(18_184)), Some(Tenths(17_429))));
    assert_eq!(row.hours_left.as_deref(), Some("75.5"));
    assert_eq!((row.days_left, row.last_good_day), (Some(107), Some(day("2027-02-28"))));
    assert_eq!(row.state, "far-off", "more than 50 hours, more than 14 days");

    // 75.5 h at 2.5 h a day are 30.2 days.
    let likely = after(at(now), 755 * 10 / 25);
    assert_eq!(likely, day("2026-12-13"));
    let state = case.shop.ledger.unit_state(case.truck).unwrap();
    let clock = state.clocks.iter().find(|clock| clock.task.0 == OIL).unwrap();
    let used = state.hours.due.map(|hours| (hours - tenths("1318.4")).into());
    let (today, likely) = (day("2026-11-13"), Some(likely));
    let stands = clock.state_from(&Standpoint { used, today, earliest: None, likely });
    assert_eq!(stands.nearer, Nearer::Hours, "not 2027-02-28");
}

#[test]
fn case_1_six_months_from_the_end_of_august_end_with_february() {
    let mut case = Case::of("2026-08-31", "0.0");
    let mut programme = Programme::common_practice();
    programme.edition = 2;
    for task in &mut programme.tasks {
        if task.id.0 == OIL {
            task.months = Some(6);
        }
    }
    case.shop.set_programme(Some(case.truck), programme, &case.hand).unwrap();
    case.serviced("2027-08-31T12:00:00-06:00", "100.0", OIL);
    let row = case.due(OIL, "2027-09-01T08:00:00-06:00");
    assert_eq!(row.last_good_day, Some(day("2028-02-29")));
    assert_eq!(row.days_left, Some(181));
}

#[test]
fn case_2_a_unit_that_never_reached_its_first_service_is_past_due_by_the_calendar() {
    let mut case = Case::of("2026-09-28", "3.2");
    case.reads("2027-09-28T16:00:00-06:00", "41.0");
    let now = "2027-09-29T08:00:00-06:00";
    let first = case.due(FIRST, now);
    assert_eq!((first.hours, first.hours_left.as_deref()), (Some(Tenths(410)), Some("9.0")));
    for task in [OIL, COOLER] {
        let row = case.due(task, now);
        assert_eq!((row.state.as_str(), row.days_left), ("past-due", Some(-1)), "{task}");
        assert_eq!(row.last_good_day, Some(day("2027-09-28")), "{task}");
        assert_eq!(row.said, "past due 1 day", "{task}");
    }
    // The day before was the last good one.
    assert_eq!(case.due(OIL, "2027-09-28T23:00:00-06:00").state, "due-today");
}

#[test]
fn case_3_three_meters_are_one_sum() {
    let mut case = Case::of("2024-01-08", "0.0");
    case.reads("2026-02-02T16:00:00-07:00", "2214.6");
    case.exchanged("2026-02-03T10:00:00-07:00", "2214.6", "130.5");
    case.reads("2026-07-06T16:00:00-06:00", "901.2");
    case.exchanged("2026-07-07T10:00:00-06:00", "901.2", "0.0");
    case.reads("2026-07-20T16:00:00-06:00", "47.3");
    let now = "2026-07-20T17:00:00-06:00";
    let hours = case.shop.ledger.unit_state(case.truck).unwrap().hours;
    // 2,214.6 + (901.2 - 130.5) + (47.3 - 0.0)
    assert_eq!(hours.due, Some(Tenths(30_326)));
    assert_eq!(hours.offset, Tenths(29_853));
    assert_eq!((hours.questions.len(), hours.struck.len()), (0, 0));
    assert_eq!(hours.last.map(|last| last.figure), Some(Tenths(473)), "the meter itself still shows 47.3");
    let row = case.due(SEPARATOR, now);
    assert_eq!((row.due_hours, row.hours_left.as_deref()), (Some(Tenths(30_000)), Some("-32.6")));
    assert_eq!(row.said, "past due 32.6 h");
}
