//! The worked month, event by event.

use super::fleet::{th01, th02, th03, th05, th07};
use super::*;

#[test]
fn event_1_amos_finds_the_oil_far_off_and_the_separator_coming_up() {
    let (standing, left, _) = th01().stands(OIL, "2862.4", "2026-10-19");
    assert_eq!((standing, left.as_str()), (Standing::FarOff, "55.6"));
    let (standing, left, _) = th01().stands(SEPARATOR, "2862.4", "2026-10-19");
    assert_eq!((standing, left.as_str()), (Standing::ComingUp, "137.6"));
}

#[test]
fn event_4_the_first_service_comes_up_and_is_past_due_by_four_tenths() {
    assert_eq!(th05().stands(FIRST, "47.2", "2026-10-22"), (Standing::ComingUp, "2.8".into(), None));
    assert_eq!(th05().stands(FIRST, "50.4", "2026-10-23"), (Standing::PastDue, "-0.4".into(), None));
}

#[test]
fn event_5_the_first_service_done_counts_as_the_oil_service_and_resets_nothing_else() {
    let unit = th05().done(FIRST, "51.9", "2026-10-23");
    let first = unit.clock(FIRST);
    assert!(first.closed);
    assert_eq!(first.late_by.unwrap().hours.unwrap().to_string(), "1.9");
    assert_eq!(first.state(hh("551.0"), day("2028-01-01")).standing, Standing::Closed);
    unit.due(OIL, Some("551.9"), "2027-10-23");
    assert_eq!(unit.clock(OIL).late_by, None, "the oil's own 500 h were not over");
    unit.due(COOLER, None, "2027-09-28");
    unit.due(SEPARATOR, Some("3000.0"), "2031-09-28");
}

#[test]
fn event_8_the_wrong_oil_is_flushed_long_before_its_hours_and_the_flush_stands_by_itself() {
    assert_eq!(th07().stands(OIL, "1934.0", "2026-10-27").1, "256.2");
    let mut unit = th07().done(OIL, "1934.5", "2026-10-28");
    unit.services.last_mut().unwrap().oil_reason = true;
    unit.due(OIL, Some("2434.5"), "2027-10-28");
    unit.due(COOLER, None, "2027-06-15");
    unit.due(SEPARATOR, Some("3611.0"), "2029-05-10");
    assert_eq!(unit.clock(OIL).late_by, None);
}

/// TH-03's hours since its oil service: meter figure and weight in thousandths up to it. The clean hours
/// are laid first; only the sums up to the figures asked about matter.
const TH03_SITES: [(i64, u32); 4] = [(5_960, 1_000), (7_160, 1_500), (7_460, 2_000), (7_946, 1_500)];

fn th03_weighed(from: Tenths, to: Tenths) -> FineHours {
    let mut at = Tenths(4_026);
    let mut sum = FineHours::ZERO;
    let ends = TH03_SITES.into_iter().chain([(i64::MAX, 1_000)]);
    for (end, weight) in ends {
        let (a, b) = (at.max(from), Tenths(end).min(to));
        if b > a {
            sum = sum + FineHours::weighted(b - a, weight);
        }
        at = Tenths(end);
    }
    sum
}

#[test]
fn event_9_dust_uses_the_hours_up_faster() {
    let clock = th03().clock(OIL);
    let stands = |meter: &str, today: &str| {
        let used = Some(th03_weighed(h("402.6"), h(meter)));
        let from = Standpoint { used, today: day(today), earliest: None, likely: None };
        let state = clock.state_from(&from);
        (state.standing, state.hours_left.unwrap().to_string())
    };
    assert_eq!(th03_weighed(h("402.6"), h("746.0")).to_string(), "433.4");
    assert_eq!(stands("746.0", "2026-10-22"), (Standing::FarOff, "66.6".into()));
    assert_eq!(stands("777.0", "2026-10-30"), (Standing::ComingUp, "20.1".into()));
    assert_eq!(stands("783.0", "2026-11-02"), (Standing::ComingUp, "11.1".into()));
    assert_eq!(stands("788.5", "2026-11-03"), (Standing::ComingUp, "2.85".into()));
    assert_eq!(stands("794.6", "2026-11-04"), (Standing::PastDue, "-6.3".into()));
}

#[test]
fn event_9_the_filter_comes_and_the_service_is_nine_weighted_hours_late() {
    let unit = th03().done(OIL, "797.3", "2026-11-09");
    let clocks = task_clocks_weighed(
        &Programme::common_practice(),
        unit.in_service.as_ref(),
        &unit.services,
        &unit.decisions,
        &ClockNumbers::default(),
        &|from, to| Some(th03_weighed(from, to)),
    );
    let oil = clocks.iter().find(|clock| clock.task.0 == OIL).unwrap();
    assert_eq!(oil.late_by.unwrap().hours.unwrap().to_string(), "9.0");
    assert_eq!((oil.from_hours, oil.due_day), (hh("797.3"), Some(day("2027-11-09"))));
}

#[test]
fn event_10_the_hours_left_are_the_same_whichever_reading_is_right() {
    assert_eq!(th02().stands(OIL, "1227.9", "2026-10-30").1, "283.4");
}

#[test]
fn event_12_a_reminder_that_went_away_moves_no_clock() {
    assert_eq!(th01().stands(OIL, "2919.6", "2026-11-04").0, Standing::PastDue);
    assert_eq!(th01().stands(OIL, "2919.6", "2026-11-04").1, "-1.6");
    assert_eq!(th01().stands(OIL, "2924.1", "2026-11-05").1, "-6.1");
}

fn event_14() -> Unit {
    let mut unit = th01().done(OIL, "2926.0", "2026-11-06").done(OIL, "2926.3", "2026-11-09");
    unit.services[2].at = at("2026-11-06T13:30:00-07:00");
    unit.services[3].at = at("2026-11-09T06:40:00-07:00");
    unit
}

#[test]
fn event_14_dov_and_amos_entered_one_service_and_the_first_figures_count() {
    let unit = event_14();
    unit.due(OIL, Some("3426.0"), "2027-11-06");
    let clock = unit.clock(OIL);
    let twice =
        EnteredTwice { first: unit.services[2].entry, second: unit.services[3].entry, settled: false };
    assert_eq!(clock.entered_twice, [twice]);
    assert_eq!(clock.last.unwrap().entry, unit.services[2].entry);
    let late = clock.late_by.unwrap();
    assert_eq!((late.hours.unwrap().to_string().as_str(), late.days), ("8.0", None));
}

#[test]
fn event_14_the_cooler_was_14_days_off_and_was_not_taken_along() {
    let before = th01().clocks();
    let near = not_bundled(&before, &[OIL.into()], hh("2926.0"), day("2026-11-06"));
    let near: Vec<&str> = near.into_iter().map(|task| task.0.as_str()).collect();
    assert_eq!(near, [COOLER, SEPARATOR]);
    assert_eq!(th01().stands(COOLER, "2926.0", "2026-11-06"), (Standing::ComingUp, String::new(), Some(14)));
}

#[test]
fn a_visit_that_does_the_first_service_has_not_left_out_the_oil() {
    let clocks = th05().clocks();
    assert!(not_bundled(&clocks, &[FIRST.into()], hh("51.9"), day("2026-10-23")).is_empty());
    assert!(not_bundled(&clocks, &[OIL.into()], hh("51.9"), day("2026-10-23")).is_empty());
    assert_eq!(not_bundled(&clocks, &[COOLER.into()], hh("51.9"), day("2026-10-23")), [&FIRST.into()]);
}

#[test]
fn event_9_as_its_readings_and_sites_were_recorded() {
    use crate::forecast::HoursAt;
    use crate::record::SiteDust;
    use crate::wear::{Said, WeightSet, Weights, Worn, due_reading, spells};

    let weights = Weights::of([WeightSet {
        from: day("2026-01-05"),
        hundredths: vec![(SiteDust::Clean, 100), (SiteDust::Dusty, 150), (SiteDust::VeryDusty, 200)],
    }]);
    let read = |when: &str, total: &str| HoursAt { at: at(when), total: h(total) };
    let mut readings = vec![read("2026-04-08T12:00:00-06:00", "402.6")];
    let mut said = Vec::new();
    // To 22 October: 193.4 h clean, 120.0 dusty, 30.0 very dusty, each split by a reading.
    for (on, total, dust) in [
        ("2026-08-14", "596.0", SiteDust::Clean),
        ("2026-09-25", "716.0", SiteDust::Dusty),
        ("2026-10-22", "746.0", SiteDust::VeryDusty),
        ("2026-10-30", "777.0", SiteDust::Dusty),
        ("2026-11-02", "783.0", SiteDust::Dusty),
        ("2026-11-03", "788.5", SiteDust::Dusty),
        ("2026-11-04", "794.6", SiteDust::Dusty),
        ("2026-11-09", "797.3", SiteDust::Clean),
    ] {
        let evening = format!("{on}T16:30:00-07:00");
        said.push(Said { at: at(&format!("{on}T08:00:00-07:00")), dust });
        readings.push(read(&evening, total));
    }
    let ends: Vec<_> = readings.iter().map(|r| r.at).collect();
    let worn = Worn::of(
        &readings,
        &spells(&said, &ends, chrono_tz::America::Denver),
        &weights,
        chrono_tz::America::Denver,
    );
    let weigh = |from, to| Some(worn.between(from, to));
    let used = |total: &str| worn.between(h("402.6"), h(total)).to_string();
    for (total, weighted) in [
        ("746.0", "433.4"),
        ("777.0", "479.9"),
        ("783.0", "488.9"),
        ("788.5", "497.15"),
        ("794.6", "506.3"),
        ("797.3", "509.0"),
    ] {
        assert_eq!(used(total), weighted, "at {total}");
    }
    // 20.1 left are 13.4 dusty hours, 790.4 on the meter.
    let left = FineHours::from(h("500.0")) - worn.between(h("402.6"), h("777.0"));
    let due = due_reading(left, h("777.0"), 150).unwrap();
    assert_eq!((left.to_string().as_str(), due.meter_left.to_string().as_str()), ("20.1", "13.4"));
    assert_eq!(due.at, h("790.4"));

    let done = th03().done(OIL, "797.3", "2026-11-09");
    let clocks = task_clocks_weighed(
        &Programme::common_practice(),
        done.in_service.as_ref(),
        &done.services,
        &done.decisions,
        &ClockNumbers::default(),
        &weigh,
    );
    let oil = clocks.iter().find(|clock| clock.task.0 == OIL).unwrap();
    assert_eq!(oil.late_by.unwrap().hours.unwrap().to_string(), "9.0");
    assert_eq!((oil.from_hours, oil.due_day), (Some(h("797.3")), Some(day("2027-11-09"))));
}
