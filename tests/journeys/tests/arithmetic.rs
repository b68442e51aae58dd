//! Where the arithmetic of hours, dust and oil is easily a comfortable lie: real entries, exact figures.
//!
//! Invented data; every outcome worked by rule (R10, R11, R14, forecast).

use sumpbook_daybook::ledger::NewEntry;
use sumpbook_daybook::state::UnitState;
use sumpbook_journeys::{at, day, due_row};
use sumpbook_shop::due::DueRow;
use sumpbook_shop::{Hand, InitOptions, NewPerson, NewSet, NewTruck, Shop};
use sumpbook_trade::oil::{NoVerdict, OilClass, OilVerdict};
use sumpbook_trade::record::{
    EndOfDay, Glass, HourReading, HoursEstimate, How, LevelCheck, Meter, MeterExchange, OilPut, OilReason,
    Pour, Role, ServiceDone, SetProfile, SiteCondition, SiteDust, Source, StartAir, StopAir, StopWait, TopUp,
    Warmth,
};
use sumpbook_trade::{
    Entry, EntryId, Fact, Feature, Features, Figure, Fluid, OilFamily, Tenths, TruckId, Unit,
};
use uuid::Uuid;

const OIL: &str = "oil-and-filters";

/// A shop with one unit and the set on it.
struct Case {
    shop: Shop,
    truck: TruckId,
    hand: Hand,
    entries: u128,
    _folder: tempfile::TempDir,
}

impl Case {
    fn of(profile: SetProfile, meter: bool) -> Case {
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
            door: "TH-91".to_owned(),
            serial: None,
            plate: None,
            features: if meter { Features::of([Feature::HourMeter]) } else { Features::default() },
            in_service: day("2024-01-08"),
            in_service_hours: Tenths::ZERO,
            annual_inspection: None,
        };
        let truck = shop.add_truck(unit, &hand).unwrap();
        shop.add_set(NewSet { serial: Some("S-91".to_owned()), on: Some(truck), profile }, &hand).unwrap();
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

    /// A day in one condition, its hours read with the report at its end.
    fn works(&mut self, on: &str, dust: SiteDust, hours: &str) {
        self.says(&format!("{on}T08:00:00-06:00"), None, SiteCondition { dust });
        let report = EndOfDay {
            defects: vec![],
            none_found: true,
            odometer: None,
            tanks_drained: None,
            to_next: None,
            notes_seen: vec![],
        };
        self.says(&format!("{on}T16:30:00-06:00"), Some(hours), report);
    }

    fn serviced(&mut self, when: &str, hours: &str, oil_reason: Option<OilReason>) {
        let oil = Some(OilPut { volume: None, family: None, grade: None });
        let done = ServiceDone { tasks: vec![OIL.into()], oil, parts: vec![], oil_reason, photo: None };
        self.says(when, Some(hours), done);
    }

    fn looks(&mut self, when: &str, hours: &str, percent: u8) {
        let level = LevelCheck {
            fluid: Fluid::CompressorOil,
            glass: Glass::Percent(percent),
            warmth: Some(Warmth::Cold),
            stopped: Some(StopWait { minutes: Some(540), how: How::Said }),
            look: None,
            photo: None,
            oil_temperature: None,
        };
        self.says(when, Some(hours), level);
    }

    fn pours(
        &mut self,
        when: &str,
        hours: &str,
        fluid: Fluid,
        family: OilFamily,
        quarts: &str,
        levels: Option<(u8, u8)>,
    ) {
        let volume = Figure::parse(quarts, Unit::Quart).unwrap();
        let top_up = TopUp {
            fluid,
            family: Some(family),
            grade: Some("ISO VG 46".to_owned()),
            gauge_zero: Some(true),
            blow_down_silent: Some(true),
            before: levels.map(|(before, _)| Glass::Percent(before)),
            pours: vec![Pour { volume, after: None, waited_ms: None }],
            after: levels.map(|(_, after)| Glass::Percent(after)),
            warmth: Some(Warmth::Cold),
            stopped: Some(StopWait { minutes: Some(540), how: How::Said }),
            cap_tight: Some(true),
            oil_temperature: None,
            label_scanned: None,
        };
        // Empty: nobody read the meter.
        self.says(when, Some(hours).filter(|hours| !hours.is_empty()), top_up);
    }

    fn due(&self, now: &str) -> DueRow {
        due_row(&self.shop.ledger, "TH-91", OIL, now).unwrap()
    }

    fn state(&self) -> UnitState {
        self.shop.ledger.unit_state(self.truck).unwrap()
    }
}

fn tenths(text: &str) -> Tenths {
    text.parse().unwrap()
}

fn profile(glass: Option<&str>, cfm: &str, family: OilFamily, dusty: Option<u32>) -> SetProfile {
    SetProfile {
        delivery: Some(Figure::parse(cfm, Unit::CubicFootPerMinute).unwrap()),
        glass: glass.map(|quarts| Figure::parse(quarts, Unit::Quart).unwrap()),
        oil_family: Some(family),
        oil_grade: Some("ISO VG 46".to_owned()),
        weights: dusty
            .map(|dusty| vec![(SiteDust::Clean, 100), (SiteDust::Dusty, dusty), (SiteDust::VeryDusty, 200)])
            .unwrap_or_default(),
        load_share: None,
        oil_volume: None,
    }
}

fn mineral(glass: Option<&str>, cfm: &str) -> SetProfile {
    profile(glass, cfm, OilFamily::Mineral, None)
}

/// Read at 812.0 on 21 September, a new meter from 0.0 on 19 October; 20 workdays between: none at least, 4 h a day
/// likely, 12 at most. Serviced in March at 455.0. And the estimate, to be signed again.
fn a_meter_that_died() -> (Case, HoursEstimate) {
    let mut case = Case::of(mineral(None, "100"), true);
    case.serviced("2026-03-02T12:00:00-07:00", "455.0", None);
    case.reads("2026-09-21T16:00:00-06:00", "812.0");
    let exchange = MeterExchange {
        meter: Meter::Compressor,
        old_end: Some(tenths("812.0")),
        new_start: Tenths::ZERO,
        went_round: false,
    };
    case.says("2026-10-19T08:00:00-06:00", None, exchange);
    let gap = HoursEstimate {
        meter: Meter::Compressor,
        low: Tenths::ZERO,
        likely: tenths("80.0"),
        high: tenths("240.0"),
    };
    case.says("2026-10-19T08:05:00-06:00", None, gap.clone());
    (case, gap)
}

#[test]
fn case_4_a_dead_meter_is_shown_with_its_three_figures_and_stands_by_the_highest() {
    let (mut case, _) = a_meter_that_died();
    case.reads("2026-10-28T16:00:00-06:00", "25.5");
    let row = case.due("2026-10-28T17:00:00-06:00");
    assert_eq!(row.hours, Some(tenths("1077.5")));
    assert_eq!((row.state.as_str(), row.hours_left.as_deref()), ("past-due", Some("-122.5")));
    assert!(row.at_most);
    assert_eq!(row.hours_left_likely.as_deref(), Some("37.5"));
    assert_eq!(row.hours_left_at_most.as_deref(), Some("117.5"));
}

#[test]
fn what_was_estimated_before_a_service_is_not_used_after_it() {
    let (mut case, gap) = a_meter_that_died();
    case.serviced("2026-10-28T16:00:00-06:00", "25.5", None);
    case.reads("2026-10-29T16:00:00-06:00", "26.5");
    let row = case.due("2026-10-29T17:00:00-06:00");
    // One hour since the service, and nothing about it is estimated.
    assert_eq!((row.state.as_str(), row.hours_left.as_deref()), ("far-off", Some("499.0")));
    assert!(!row.at_most && row.hours_left_likely.is_none());
    // What is estimated later counts after it, up to its high figure.
    case.says("2026-11-02T08:00:00-07:00", None, gap);
    let row = case.due("2026-11-02T17:00:00-07:00");
    assert_eq!(row.hours_left.as_deref(), Some("259.0"));
    assert_eq!(row.hours_left_at_most.as_deref(), Some("499.0"));
}

#[test]
fn a_unit_without_a_meter_is_counted_and_due_by_the_most_it_can_have_run() {
    let mut case = Case::of(mineral(None, "100"), false);
    case.reads("2026-10-19T06:00:00-06:00", "384.2");
    let start = || StartAir { steps: vec![], in_spite_of_lock: None };
    let stop = || StopAir { steps: vec![], blew_down: None };
    case.says("2026-10-19T08:00:00-06:00", None, start());
    case.says("2026-10-19T10:30:00-06:00", None, stop());
    // The stop of the second run is missing; the next start bounds it.
    case.says("2026-10-19T13:00:00-06:00", None, start());
    case.says("2026-10-19T15:00:00-06:00", None, start());
    case.says("2026-10-19T16:00:00-06:00", None, stop());
    let row = case.due("2026-10-19T17:00:00-06:00");
    assert_eq!(row.hours, Some(tenths("389.7")));
    let counted = case.state().hours.counted.unwrap();
    assert_eq!((counted.low, counted.unsure_runs), (tenths("387.7"), 1));
    // Started again and nothing more is known: it may run to this moment.
    case.says("2026-10-20T08:00:00-06:00", None, start());
    assert_eq!(case.due("2026-10-20T09:00:00-06:00").hours, Some(tenths("390.7")));
    assert_eq!(case.due("2026-10-20T11:00:00-06:00").hours, Some(tenths("392.7")));
}

#[test]
fn case_5_three_pours_from_the_middle_to_the_middle() {
    let mut case = Case::of(mineral(None, "125"), true);
    case.looks("2026-09-01T07:00:00-06:00", "1000.0", 50);
    // 8 fl oz are a quarter of a quart.
    for (when, hours, after) in [
        ("2026-09-10T07:00:00-06:00", "1040.0", 40),
        ("2026-09-20T07:00:00-06:00", "1080.0", 43),
        ("2026-10-01T07:00:00-06:00", "1128.4", 50),
    ] {
        case.pours(when, hours, Fluid::CompressorOil, OilFamily::Mineral, "0.25", Some((30, after)));
    }
    let oil = case.state().oil;
    let balance = *oil.fill.as_ref().unwrap().last_balance().unwrap();
    assert!((balance.used().0 - 709.8).abs() < 0.05 && balance.hours() == tenths("128.4"));
    assert!((balance.rate().unwrap().0 - 5.53).abs() < 0.005);
    let air = oil.carry_over.unwrap();
    assert!((air.mg_m3 - 22.4).abs() < 0.05 && air.at_least && !air.or_worse);
    assert_eq!(air.class, OilClass::ClassX);
    assert!((oil.limit.unwrap().0 - 1.23).abs() < 0.005);
    assert_eq!(oil.verdict, Some(OilVerdict::None(NoVerdict::GlassUnknown)));
}

#[test]
fn event_7_a_pour_over_the_middle_is_not_all_used() {
    let mut case = Case::of(mineral(Some("0.60"), "185"), true);
    case.looks("2026-10-01T07:05:00-06:00", "2790.4", 50);
    let (when, family) = ("2026-10-26T07:05:00-06:00", OilFamily::Mineral);
    case.pours(when, "2884.9", Fluid::CompressorOil, family, "0.21", Some((30, 65)));
    let oil = case.state().oil;
    let balance = *oil.fill.as_ref().unwrap().last_balance().unwrap();
    assert!((balance.used().0 - 113.6).abs() < 0.05 && balance.hours() == tenths("94.5"));
    assert!((balance.rate().unwrap().0 - 1.20).abs() < 0.005);
    assert!((balance.carried_out.0 - 0.09 * 946.352_946).abs() < 1e-6);
    let air = oil.carry_over.unwrap();
    assert!((air.mg_m3 - 3.3).abs() < 0.05 && air.at_least && air.or_worse);
    // The limit is that of the rated delivery, the most air there can have been: under it is no verdict.
    let unknown = Some(OilVerdict::None(NoVerdict::LoadShareUnknown));
    assert_eq!((air.class, oil.verdict), (OilClass::Class4, unknown));
    // A share of nothing is none.
    let mut case = Case::of(SetProfile { load_share: Some(0), ..mineral(Some("0.60"), "185") }, true);
    case.looks("2026-10-01T07:05:00-06:00", "2790.4", 50);
    case.pours(when, "2884.9", Fluid::CompressorOil, family, "0.21", Some((30, 65)));
    assert_eq!(case.state().oil.verdict, unknown);
}

#[test]
fn a_pour_nobody_read_the_meter_at_closes_nothing_on_a_figure_of_days_ago() {
    let (glass, family) = (Some("0.60"), OilFamily::Mineral);
    let pour = |case: &mut Case| {
        case.pours("2026-10-26T07:05:00-06:00", "", Fluid::CompressorOil, family, "0.21", Some((30, 65)));
        case.state().oil.fill.as_ref().and_then(|fill| fill.last_balance().copied())
    };
    let mut case = Case::of(mineral(glass, "185"), true);
    case.looks("2026-10-01T07:05:00-06:00", "2790.4", 50);
    case.reads("2026-10-14T16:15:00-06:00", "2830.0");
    assert!(pour(&mut case).is_none(), "twelve days of running lie between");
    // Read on the evening before, it is the same figure.
    let mut case = Case::of(mineral(glass, "185"), true);
    case.looks("2026-10-01T07:05:00-06:00", "2790.4", 50);
    case.reads("2026-10-25T16:15:00-06:00", "2884.9");
    assert_eq!(pour(&mut case).unwrap().hours(), tenths("94.5"));
}

#[test]
fn event_8_the_wrong_oil_calls_the_service_and_a_flush_ends_it() {
    let mut case = Case::of(profile(Some("0.60"), "185", OilFamily::Polyglycol, None), true);
    case.serviced("2026-06-15T12:00:00-06:00", "1690.2", None);
    case.pours("2026-10-27T21:40:00-06:00", "1934.0", Fluid::CompressorOil, OilFamily::Mineral, "0.25", None);
    let row = case.due("2026-10-27T22:00:00-06:00");
    assert_eq!(row.hours_left.as_deref(), Some("256.2"));
    assert_eq!((row.state.as_str(), row.called_by.as_deref()), ("due-today", Some("wrong-oil")));
    assert_eq!(row.said, "due today, 256.2 h left, 231 days left, called now: wrong oil");
    let locked = case.state().locks;
    assert_eq!(locked.len(), 1);
    assert_eq!(locked[0].since, at("2026-10-27T21:40:00-06:00").moment());

    case.serviced("2026-10-28T12:00:00-06:00", "1934.5", Some(OilReason::Mixed));
    let row = case.due("2026-10-28T13:00:00-06:00");
    assert_eq!((row.called_by, row.due_hours), (None, Some(tenths("2434.5"))));
    assert_eq!(row.last_good_day, Some(day("2027-10-28")));
    let fill = case.state().oil.fill.unwrap();
    assert_eq!((fill.begun.unwrap().hours, fill.balances.len()), (tenths("1934.5"), 0), "a new account");
}

#[test]
fn event_9_dusty_hours_run_out_long_before_the_meter_says_so() {
    let mut case = Case::of(profile(None, "185", OilFamily::Mineral, Some(150)), true);
    case.serviced("2026-04-08T12:00:00-06:00", "402.6", None);
    for (on, dust, hours) in [
        ("2026-08-14", SiteDust::Clean, "596.0"),
        ("2026-09-25", SiteDust::Dusty, "716.0"),
        ("2026-10-22", SiteDust::VeryDusty, "746.0"),
    ] {
        case.works(on, dust, hours);
    }
    let row = case.due("2026-10-22T17:00:00-06:00");
    assert_eq!((row.state.as_str(), row.hours_left.as_deref()), ("far-off", Some("66.6")));
    case.works("2026-10-30", SiteDust::Dusty, "777.0");
    let row = case.due("2026-10-30T17:00:00-06:00");
    assert_eq!((row.state.as_str(), row.hours_left.as_deref()), ("coming-up", Some("20.1")));
    assert_eq!((row.meter_hours_left.as_deref(), row.due_hours), (Some("13.4"), Some(tenths("790.4"))));
    for (on, hours, left, state) in [
        ("2026-11-02", "783.0", "11.1", "coming-up"),
        ("2026-11-03", "788.5", "2.85", "coming-up"),
        ("2026-11-04", "794.6", "-6.3", "past-due"),
    ] {
        case.works(on, SiteDust::Dusty, hours);
        let row = case.due(&format!("{on}T17:00:00-07:00"));
        assert_eq!((row.state.as_str(), row.hours_left.as_deref()), (state, Some(left)), "{on}");
    }
    case.serviced("2026-11-09T12:00:00-07:00", "797.3", None);
    let clock = case.state().clocks.into_iter().find(|clock| clock.task.0 == OIL).unwrap();
    assert_eq!(clock.late_by.unwrap().hours.unwrap().to_string(), "9.0");
    let row = case.due("2026-11-09T13:00:00-07:00");
    assert_eq!((row.hours_left.as_deref(), row.last_good_day), (Some("500.0"), Some(day("2027-11-09"))));
}

#[test]
fn case_8_a_weight_set_today_leaves_yesterdays_hours_alone() {
    let mut case = Case::of(profile(None, "185", OilFamily::Mineral, Some(150)), true);
    case.serviced("2026-06-01T12:00:00-06:00", "0.0", None);
    for (on, dust, hours) in [
        ("2026-09-20", SiteDust::Clean, "212.0"),
        ("2026-10-10", SiteDust::Dusty, "268.5"),
        ("2026-10-25", SiteDust::VeryDusty, "286.5"),
    ] {
        case.works(on, dust, hours);
    }
    case.works("2026-11-13", SiteDust::Dusty, "326.5");
    let now = "2026-11-13T17:00:00-07:00";
    let row = case.due(now);
    assert_eq!((row.hours_left.as_deref(), row.meter_hours_left.as_deref()), (Some("107.25"), Some("71.5")));
    let first = at("2026-11-01T08:00:00-07:00");
    let hand = Hand { at: first, ..case.hand.received(first) };
    let heavier = profile(None, "185", OilFamily::Mineral, Some(180));
    case.shop
        .add_set(NewSet { serial: Some("S-91".to_owned()), on: Some(case.truck), profile: heavier }, &hand)
        .unwrap();
    let row = case.due(now);
    assert_eq!(row.hours_left.as_deref(), Some("95.25"), "not 78.3, all dusty hours at the new weight");
    assert_eq!((row.meter_hours_left.as_deref(), row.weight), (Some("52.9166"), 180));
}

#[test]
fn a_forecast_names_three_days_and_changes_no_state() {
    let mut case = Case::of(mineral(None, "100"), true);
    case.serviced("2026-06-01T12:00:00-06:00", "1000.0", None);
    assert_eq!(case.due("2026-06-02T08:00:00-06:00").forecast, None, "one figure is no pace");
    // 2.5 h a day for three weeks.
    for n in 0..21 {
        let on = day("2026-10-01") + chrono::TimeDelta::days(n);
        case.reads(&format!("{on}T16:00:00-06:00"), &Tenths(14_000 + 25 * n).to_string());
    }
    let row = case.due("2026-10-21T17:00:00-06:00");
    assert_eq!((row.state.as_str(), row.hours_left.as_deref()), ("coming-up", Some("50.0")));
    let forecast = row.forecast.unwrap();
    assert_eq!(forecast.likely, day("2026-11-10"), "20 days of 24 h; the clock goes back in between");
    assert!(forecast.earliest <= forecast.likely && Some(forecast.likely) <= forecast.latest);
    assert_eq!(row.runs_out_first, "hours");
    // The likely day came and went, and nobody read the meter: the list says so, and the state is still by the figure.
    assert!(!forecast.gone_by && !case.due("2026-11-10T17:00:00-07:00").forecast.unwrap().gone_by);
    let after = case.due("2026-11-11T06:00:00-07:00");
    assert_eq!(
        after.forecast.map(|forecast| (forecast.likely, forecast.gone_by)),
        Some((day("2026-11-10"), true))
    );
    assert_eq!((after.state.as_str(), after.hours_left.as_deref()), ("coming-up", Some("50.0")));
    // Two months without a figure: how it ran in October says nothing of January.
    assert_eq!(case.due("2027-01-05T17:00:00-07:00").forecast, None);
}

#[test]
fn a_poured_brake_fluid_locks_the_road_by_itself() {
    let mut case = Case::of(mineral(None, "100"), true);
    case.pours("2026-10-20T07:00:00-06:00", "10.0", Fluid::BrakeFluid, OilFamily::Mineral, "0.1", None);
    let state = case.state();
    assert_eq!((state.defects.len(), state.defects[0].item.as_str()), (1, "brake-fluid"));
    assert_eq!(state.locks.len(), 1);
}
