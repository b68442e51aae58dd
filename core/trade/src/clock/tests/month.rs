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
