//! The due list from the top.

use super::fleet::{th01, th02, th05, th07};
use super::*;

fn row(name: &str, unit: &Unit, task: &str, hours: &str, likely: Option<&str>) -> DueRow {
    let today = day("2026-11-05");
    let clock = unit.clock(task);
    DueRow::new(name, &clock, clock.state(hh(hours), today), likely.map(day), today)
}

fn lines(rows: &[DueRow]) -> Vec<String> {
    rows.iter().map(|row| format!("{} {}", row.unit, row.task)).collect()
}

#[test]
fn past_due_comes_first_then_the_day_the_first_clock_runs_out() {
    let mut rows = vec![
        // Hours run out in December, before its calendar of June.
        row("TH-07", &th07(), OIL, "1960.0", Some("2026-12-20")),
        row("TH-01", &th01(), COOLER, "2924.1", None),
        // No pace: its calendar of 30 November counts.
        row("TH-02", &th02(), SEPARATOR, "1240.0", None),
        row("TH-02", &th02(), COOLER, "1240.0", None),
        // Past due by hours, and no pace that would give a day.
        row("TH-01", &th01(), OIL, "2924.1", None),
        row("TH-01", &th01(), SEPARATOR, "2924.1", Some("2026-11-25")),
    ];
    due_order(&mut rows);
    let expected = [
        "TH-01 oil-and-filters",
        "TH-02 cooler-and-scavenge",
        "TH-01 cooler-and-scavenge",
        "TH-01 separator",
        "TH-02 separator",
        "TH-07 oil-and-filters",
    ];
    assert_eq!(lines(&rows), expected);
}

#[test]
fn hours_that_are_due_now_stand_today_even_without_a_pace() {
    let mut rows =
        vec![row("TH-02", &th02(), COOLER, "1240.0", None), row("TH-05", &th05(), FIRST, "50.0", None)];
    due_order(&mut rows);
    assert_eq!(lines(&rows), ["TH-05 first-service", "TH-02 cooler-and-scavenge"]);
}

#[test]
fn a_row_with_no_day_comes_last_and_a_closed_first_service_is_not_on_the_list() {
    let mut rows = vec![
        row("TH-05", &th05(), FIRST, "20.0", None),
        row("TH-01", &th01(), FIRST, "2924.1", None),
        row("TH-07", &th07(), OIL, "1960.0", None),
    ];
    due_order(&mut rows);
    assert_eq!(lines(&rows), ["TH-07 oil-and-filters", "TH-05 first-service"]);
}
