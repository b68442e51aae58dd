//! What is asked while a figure is typed.

use super::*;

fn working_days() -> HoursLedger {
    let mut meter = Meter::default();
    for day in 0..12 {
        meter = meter.read(day as u128, hour(day * 24 + 10), &format!("{}.0", 100 + day * 5));
    }
    meter.judge()
}

#[test]
fn each_answer_has_its_figure() {
    let ledger = working_days();
    let days = ledger.recent_use_days(hour(12 * 24 + 10));
    assert_eq!(days, [h("5.0"); 11]);
    let ask = |figure: &str| ledger.ask(h(figure), hour(12 * 24 + 10), &days);
    assert_eq!(ask("160.0"), KeyboardAnswer::Fits);
    assert_eq!(ask("155.0"), KeyboardAnswer::Fits);
    assert_eq!(ask("154.9"), KeyboardAnswer::SlippedBack);
    assert_eq!(ask("165.0"), KeyboardAnswer::Fits);
    assert_eq!(ask("165.1"), KeyboardAnswer::UnlikeThisUnit { rise: h("10.1"), seldom_above: h("5.0") });
    assert_eq!(
        ask("1600.0"),
        KeyboardAnswer::AboveCeiling {
            ceiling: h("179.0"),
            hints: vec![Hint::TypedWrong { reads: h("160.0") }]
        }
    );
    assert_eq!(
        ask("16.0"),
        KeyboardAnswer::Backwards {
            last: h("155.0"),
            hints: vec![Hint::TypedWrong { reads: h("160.0") }, Hint::MeterChanged]
        }
    );
    assert!(matches!(ask("-1.0"), KeyboardAnswer::Backwards { .. }));
}

#[test]
fn unlike_is_asked_only_with_ten_days_of_use() {
    let ledger = working_days();
    let ask = |days: usize| ledger.ask(h("175.0"), hour(12 * 24 + 10), &vec![h("5.0"); days]);
    assert_eq!(ask(9), KeyboardAnswer::Fits);
    assert!(matches!(ask(10), KeyboardAnswer::UnlikeThisUnit { .. }));
}

#[test]
fn days_the_meter_stood_and_days_beyond_the_window_are_no_days_of_use() {
    let mut meter = Meter::default();
    for day in 0..80 {
        let worked = (day + 1) / 2;
        meter = meter.read(day as u128, hour(day * 24 + 10), &format!("{}.0", 100 + worked * 5));
    }
    let days = meter.judge().recent_use_days(hour(80 * 24));
    assert_eq!(days, [h("5.0"); 30]);
}

#[test]
fn two_readings_of_a_day_make_one_day_of_use() {
    let mut meter = Meter::default();
    for day in 0..12 {
        let start = 100 + day * 5;
        meter = meter.read(day as u128 * 2, hour(day * 24), &format!("{start}.0")).read(
            day as u128 * 2 + 1,
            hour(day * 24 + 10),
            &format!("{}.0", start + 5),
        );
    }
    let ledger = meter.judge();
    assert_eq!(ledger.recent_use_days(hour(12 * 24)), [h("5.0"); 12]);
    assert!(ledger.rows().iter().all(|r| r.verdict == Verdict::Accepted));
}

#[test]
fn a_day_of_use_is_the_local_one() {
    // 16:00 and 19:00 in the yard; the second is past midnight in UTC.
    let mut meter = Meter::default();
    for day in 0..12 {
        let start = 100 + day * 5;
        meter = meter.read(day as u128 * 2, hour(day * 24 + 10), &format!("{}.0", start + 3)).read(
            day as u128 * 2 + 1,
            hour(day * 24 + 13),
            &format!("{}.0", start + 5),
        );
    }
    let mut expected = vec![h("2.0")];
    expected.extend([h("5.0"); 11]);
    assert_eq!(meter.judge().recent_use_days(hour(12 * 24)), expected);
}

#[test]
fn a_figure_for_the_past_is_bounded_by_what_came_after() {
    let ledger = working_days();
    assert_eq!(ledger.ceiling(hour(24)), Some(h("105.0")));
    assert!(matches!(ledger.ask(h("106.0"), hour(24), &[]), KeyboardAnswer::AboveCeiling { .. }));
    assert_eq!(ledger.ask(h("104.0"), hour(24), &[]), KeyboardAnswer::Fits);
    assert!(ledger.could_show(h("104.0"), hour(24)) && !ledger.could_show(h("106.0"), hour(24)));
}

#[test]
fn after_a_tie_a_figure_that_follows_either_side_fits() {
    let ledger = Meter::default()
        .read(1, hour(0), "738.4")
        .read(2, hour(24), "742.1")
        .read(3, hour(24), "745.0")
        .judge();
    for figure in ["743.0", "754.0"] {
        assert_eq!(ledger.ask(h(figure), hour(34), &[]), KeyboardAnswer::Fits);
    }
}

#[test]
fn the_first_figure_of_a_meter_fits() {
    let ledger = Meter::default().judge();
    assert_eq!(ledger.ask(h("7421.0"), hour(0), &[]), KeyboardAnswer::Fits);
    let new = Meter::default().read(1, hour(0), "0.0").judge();
    for ledger in [ledger, new] {
        assert!(matches!(ledger.ask(h("-0.1"), hour(1), &[]), KeyboardAnswer::Backwards { .. }));
    }
}
