//! The eight units as they stand on Mon 19 Oct 2026, 06:00.

use super::*;

pub(super) fn th01() -> Unit {
    Unit::new("2022-03-31", "0.0").done(OIL, "2418.0", "2026-02-12").done(COOLER, "2350.0", "2025-11-20")
}

pub(super) fn th02() -> Unit {
    Unit::new("2021-11-30", "0.0").done(OIL, "1011.3", "2025-11-14").done(COOLER, "1011.3", "2025-11-14")
}

pub(super) fn th03() -> Unit {
    Unit::new("2024-09-16", "0.0").done(OIL, "402.6", "2026-04-08").done(COOLER, "402.6", "2026-04-08")
}

pub(super) fn th05() -> Unit {
    Unit::new("2026-09-28", "3.2")
}

pub(super) fn th07() -> Unit {
    Unit::new("2021-03-01", "0.0")
        .done(SEPARATOR, "611.0", "2024-05-10")
        .done(OIL, "1690.2", "2026-06-15")
        .done(COOLER, "1690.2", "2026-06-15")
}

#[test]
fn th_01_d_was_never_done_and_runs_from_zero_and_the_day_in_service() {
    th01().due(OIL, Some("2918.0"), "2027-02-12");
    th01().due(COOLER, None, "2026-11-20");
    th01().due(SEPARATOR, Some("3000.0"), "2027-03-31");
    assert_eq!(th01().clock(SEPARATOR).last, None);
}

#[test]
fn th_02_has_its_oil_its_cooler_and_its_separator_in_one_month() {
    th02().due(OIL, Some("1511.3"), "2026-11-14");
    th02().due(COOLER, None, "2026-11-14");
    th02().due(SEPARATOR, Some("3000.0"), "2026-11-30");
}

#[test]
fn th_03_counts_its_oil_in_weighted_hours() {
    let clock = th03().clock(OIL);
    assert!(clock.counts_weighted);
    assert_eq!((clock.from_hours, clock.interval_hours), (hh("402.6"), hh("500.0")));
    assert_eq!(clock.due_day, Some(day("2027-04-08")));
    th03().due(COOLER, None, "2027-04-08");
    th03().due(SEPARATOR, Some("3000.0"), "2029-09-16");
    assert!(!th03().clock(SEPARATOR).counts_weighted);
}

#[test]
fn th_04_has_no_meter_and_its_counted_hours_run_the_same() {
    let unit =
        Unit::new("2023-03-06", "0.0").done(OIL, "200.0", "2026-03-31").done(COOLER, "200.0", "2026-03-31");
    unit.due(OIL, Some("700.0"), "2027-03-31");
    unit.due(COOLER, None, "2027-03-31");
    unit.due(SEPARATOR, Some("3000.0"), "2028-03-06");
}

#[test]
fn th_05_is_new_and_its_first_service_is_at_50_on_the_meter_not_50_after_the_3_2_it_came_with() {
    assert_eq!(th05().clock(FIRST).due_hours, hh("50.0"));
    assert_eq!(th05().clock(FIRST).due_day, None);
    th05().due(COOLER, None, "2027-09-28");
    th05().due(SEPARATOR, Some("3000.0"), "2031-09-28");
}

#[test]
fn th_06_and_th_08_stand_as_written() {
    let th06 =
        Unit::new("2022-01-18", "0.0").done(OIL, "1004.4", "2026-01-30").done(COOLER, "1004.4", "2026-01-30");
    th06.due(OIL, Some("1504.4"), "2027-01-30");
    th06.due(COOLER, None, "2027-01-30");
    th06.due(SEPARATOR, Some("3000.0"), "2027-01-18");
    let th08 =
        Unit::new("2022-06-15", "0.0").done(OIL, "540.2", "2025-10-20").done(COOLER, "540.2", "2025-10-20");
    th08.due(OIL, Some("1040.2"), "2026-10-20");
    th08.due(COOLER, None, "2026-10-20");
    th08.due(SEPARATOR, Some("3000.0"), "2027-06-15");
    assert_eq!(th08.stands(OIL, "611.0", "2026-10-19"), (Standing::ComingUp, "429.2".into(), Some(1)));
    assert_eq!(th08.stands(OIL, "611.0", "2026-10-20").0, Standing::DueToday);
    assert_eq!(th08.stands(OIL, "611.0", "2026-10-21").0, Standing::PastDue);
}

#[test]
fn th_07_has_had_a_separator_and_it_runs_from_there() {
    th07().due(OIL, Some("2190.2"), "2027-06-15");
    th07().due(COOLER, None, "2027-06-15");
    th07().due(SEPARATOR, Some("3611.0"), "2029-05-10");
}

#[test]
fn a_first_service_that_a_regular_one_overtook_is_closed_on_every_old_unit() {
    for unit in [th01(), th02(), th03(), th07()] {
        let first = unit.clock(FIRST);
        assert!(first.closed);
        assert_eq!(first.due_hours, None);
        assert_eq!(first.state(hh("9999.0"), day("2030-01-01")).standing, Standing::Closed);
    }
}
