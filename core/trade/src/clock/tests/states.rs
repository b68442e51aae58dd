//! The borders of R1 and R2.

use super::*;

fn hours_only(every: &str, lead: u32) -> TaskClock {
    let mut clock = Unit::default().clock(SEPARATOR);
    clock.interval_hours = hh(every);
    clock.counts_days = false;
    clock.lead_days = lead;
    clock
}

fn left(every: &str, left: i64) -> Standing {
    let used = Some(FineHours::from(h(every)) - FineHours(left));
    let from = Standpoint { used, today: day("2026-10-19"), earliest: None, likely: None };
    hours_only(every, 0).state_from(&from).standing
}

#[test]
fn the_last_good_tenth_is_due_and_a_whole_tenth_over_is_past_due() {
    assert_eq!(left("500.0", 1), Standing::ComingUp, "0.0001 h left is not due");
    assert_eq!(left("500.0", 0), Standing::DueToday);
    assert_eq!(left("500.0", -999), Standing::DueToday, "0.0999 h over");
    assert_eq!(left("500.0", -1_000), Standing::PastDue, "0.1 h over");
}

#[test]
fn coming_up_begins_at_a_tenth_of_the_hours() {
    for (every, near) in [("50.0", 50_000), ("500.0", 500_000), ("3000.0", 3_000_000)] {
        assert_eq!(left(every, near), Standing::ComingUp, "{every}");
        assert_eq!(left(every, near + 1), Standing::FarOff, "{every}");
    }
}

#[test]
fn the_last_good_day_is_due_and_the_next_is_past_due() {
    let unit = Unit::default().done(COOLER, "10.0", "2025-11-20");
    let on = |today: &str| unit.stands(COOLER, "10.0", today).0;
    assert_eq!(on("2026-11-05"), Standing::FarOff, "15 days");
    assert_eq!(on("2026-11-06"), Standing::ComingUp, "14 days");
    assert_eq!(on("2026-11-19"), Standing::ComingUp);
    assert_eq!(on("2026-11-20"), Standing::DueToday);
    assert_eq!(on("2026-11-21"), Standing::PastDue);
}

#[test]
fn parts_that_take_longer_bring_the_calendar_nearer() {
    let mut clock = Unit::default().done(COOLER, "10.0", "2025-11-20").clock(COOLER);
    clock.lead_days = 21;
    assert_eq!(clock.state(None, day("2026-10-29")).standing, Standing::FarOff);
    assert_eq!(clock.state(None, day("2026-10-30")).standing, Standing::ComingUp);
    clock.lead_days = 3;
    assert_eq!(clock.state(None, day("2026-11-06")).standing, Standing::ComingUp, "never under 14 days");
}

#[test]
fn a_forecast_changes_no_state_but_that_parts_must_be_ordered() {
    let stands = |lead, earliest: &str| {
        let used = Some(FineHours::from(h("2000.0")));
        let earliest = Some(day(earliest));
        let from = Standpoint { used, today: day("2026-10-19"), earliest, likely: earliest };
        hours_only("3000.0", lead).state_from(&from).standing
    };
    assert_eq!(stands(0, "2026-10-19"), Standing::FarOff);
    assert_eq!(stands(21, "2026-11-10"), Standing::FarOff);
    assert_eq!(stands(21, "2026-11-09"), Standing::ComingUp);
}

#[test]
fn what_is_not_known_is_not_far_off() {
    let never_heard = Unit::new("2026-09-28", "3.2");
    let state = never_heard.clock(SEPARATOR).state(None, day("2026-10-19"));
    assert_eq!((state.standing, state.hours_left), (Standing::Unknown, None));
    assert_eq!(state.nearer, Nearer::Unknown);

    let no_day = Unit::default();
    assert_eq!(no_day.clock(COOLER).state(hh("10.0"), day("2026-10-19")).standing, Standing::Unknown);
    assert_eq!(no_day.clock(OIL).state(hh("500.1"), day("2026-10-19")).standing, Standing::PastDue);
}

#[test]
fn a_service_without_hours_leaves_the_hours_clock_unknown_and_the_calendar_running() {
    let mut unit = Unit::default().done(OIL, "0.0", "2026-01-10");
    unit.services[0].hours = None;
    let clock = unit.clock(OIL);
    assert_eq!((clock.due_hours, clock.due_day), (None, Some(day("2027-01-10"))));
    assert_eq!(clock.state(hh("300.0"), day("2026-10-19")).standing, Standing::Unknown);
    assert_eq!(clock.state(hh("300.0"), day("2027-01-11")).standing, Standing::PastDue);
}

#[test]
fn without_a_pace_only_a_clock_that_ran_out_can_be_called_the_nearer() {
    use Standing::{ComingUp, DueToday, FarOff, PastDue};
    let (soon, later) = (Some(day("2026-11-01")), Some(day("2026-12-01")));
    assert_eq!(nearer(Some(FarOff), Some(FarOff), soon, later), Nearer::Hours);
    assert_eq!(nearer(Some(ComingUp), Some(FarOff), later, soon), Nearer::Calendar);
    assert_eq!(nearer(Some(ComingUp), Some(FarOff), None, later), Nearer::Unknown);
    assert_eq!(nearer(Some(DueToday), Some(ComingUp), None, later), Nearer::Hours);
    assert_eq!(nearer(Some(DueToday), Some(PastDue), None, soon), Nearer::Calendar);
    assert_eq!(nearer(None, Some(FarOff), None, later), Nearer::Calendar);
    assert_eq!(nearer(Some(FarOff), None, None, None), Nearer::Hours);
}
