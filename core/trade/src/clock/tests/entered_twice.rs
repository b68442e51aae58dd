//! R7, and what the shop decides about it.

use proptest::prelude::*;

use super::*;

fn unit(second: (&str, &str)) -> Unit {
    Unit::default().done(OIL, "1000.0", "2026-03-02").done(OIL, second.0, second.1)
}

#[test]
fn within_a_tenth_of_the_hours_or_thirty_days_is_one_service() {
    for second in [("1050.0", "2026-08-01"), ("1400.0", "2026-04-01"), ("950.0", "2026-03-20")] {
        assert_eq!(unit(second).clock(OIL).entered_twice.len(), 1, "{second:?}");
    }
    let apart = unit(("1050.1", "2026-04-02"));
    assert!(apart.clock(OIL).entered_twice.is_empty());
    apart.due(OIL, Some("1550.1"), "2027-04-02");
}

#[test]
fn fewer_hours_and_the_earlier_date_count_each_on_its_own() {
    unit(("990.0", "2026-03-09")).due(OIL, Some("1490.0"), "2027-03-02");
}

#[test]
fn a_task_by_the_calendar_alone_is_compared_by_days() {
    let unit = Unit::default().done(COOLER, "1000.0", "2026-03-02").done(COOLER, "1000.1", "2026-04-02");
    assert!(unit.clock(COOLER).entered_twice.is_empty());
    unit.due(COOLER, None, "2027-04-02");
}

#[test]
fn another_task_is_never_the_same_service() {
    let unit = Unit::default().done(OIL, "1000.0", "2026-03-02").done(COOLER, "1000.0", "2026-03-03");
    assert!(unit.clocks().iter().all(|clock| clock.entered_twice.is_empty()));
}

#[test]
fn a_first_service_and_an_oil_service_of_one_day_are_one() {
    let unit =
        Unit::new("2026-09-28", "3.2").done(FIRST, "51.9", "2026-10-23").done(OIL, "52.0", "2026-10-23");
    assert_eq!(unit.clock(OIL).entered_twice.len(), 1);
    unit.due(OIL, Some("551.9"), "2027-10-23");
}

#[test]
fn one_entry_that_names_both_tasks_is_not_entered_twice() {
    let mut unit =
        Unit::new("2026-09-28", "3.2").done(FIRST, "51.9", "2026-10-23").done(OIL, "51.9", "2026-10-23");
    unit.services[1].entry = unit.services[0].entry;
    assert!(unit.clock(OIL).entered_twice.is_empty());
}

#[test]
fn a_service_for_spoilt_oil_stands_however_soon() {
    let mut unit = unit(("1010.0", "2026-03-09"));
    unit.services[1].oil_reason = true;
    unit.due(OIL, Some("1510.0"), "2027-03-09");
    assert!(unit.clock(OIL).entered_twice.is_empty());
}

#[test]
fn the_shop_says_both_stand() {
    let mut unit = unit(("1010.0", "2026-03-09"));
    unit.decisions.insert(id(2), ServiceDecision::BothStand);
    unit.due(OIL, Some("1510.0"), "2027-03-09");
    assert!(unit.clock(OIL).entered_twice.is_empty());
}

#[test]
fn the_shop_says_it_is_the_same_service_and_the_question_is_settled() {
    for (of, entry) in [(1, 2), (2, 1)] {
        let mut unit = unit(("1200.0", "2026-07-09"));
        unit.decisions.insert(id(entry), ServiceDecision::SameService { with: vec![id(of)] });
        unit.due(OIL, Some("1500.0"), "2027-03-02");
        let twice = EnteredTwice { first: id(1), second: id(2), settled: true };
        assert_eq!(unit.clock(OIL).entered_twice, [twice]);
    }
}

#[test]
fn the_shop_says_one_does_not_count() {
    let mut unit = unit(("1010.0", "2026-03-09"));
    unit.decisions.insert(id(1), ServiceDecision::DoesNotCount);
    unit.due(OIL, Some("1510.0"), "2027-03-09");
    unit.decisions.insert(id(2), ServiceDecision::DoesNotCount);
    assert_eq!(unit.clock(OIL).last, None);
    assert_eq!(unit.clock(OIL).due_hours, hh("500.0"));
    assert!(!unit.clock(FIRST).closed);
}

#[test]
fn while_in_doubt_three_in_a_row_run_from_the_first() {
    let unit = unit(("1010.0", "2026-03-25")).done(OIL, "1020.0", "2026-04-20");
    unit.due(OIL, Some("1500.0"), "2027-03-02");
    assert_eq!(unit.clock(OIL).entered_twice.len(), 2);
}

#[test]
fn a_decision_about_an_entry_that_has_not_come_yet_waits() {
    let mut unit = unit(("1200.0", "2026-07-09"));
    unit.decisions.insert(id(2), ServiceDecision::SameService { with: vec![id(99)] });
    unit.due(OIL, Some("1700.0"), "2027-07-09");
}

fn any_decision() -> impl Strategy<Value = ServiceDecision> {
    prop_oneof![
        (0u128..9).prop_map(|of| ServiceDecision::SameService { with: vec![id(of)] }),
        Just(ServiceDecision::BothStand),
        Just(ServiceDecision::DoesNotCount),
    ]
}

fn any_row() -> impl Strategy<Value = ServiceRow> {
    let tasks = prop_oneof![Just(OIL), Just(FIRST), Just(COOLER)];
    (tasks, proptest::option::of(0i64..9_000), 0u64..900, any::<bool>()).prop_map(
        |(task, hours, n, reason)| ServiceRow {
            entry: id(0),
            task: task.into(),
            hours: hours.map(Tenths),
            day: day("2024-01-01") + chrono::Days::new(n),
            at: at("2024-01-01T12:00:00-07:00") + chrono::TimeDelta::days(n as i64),
            oil_reason: reason,
            brought_in: false,
        },
    )
}

proptest! {
    #[test]
    fn the_order_in_which_services_arrive_changes_nothing(
        rows in proptest::collection::vec(any_row(), 0..9).prop_map(|mut rows| {
            rows.iter_mut().enumerate().for_each(|(n, row)| row.entry = id(n as u128));
            rows
        }),
        decisions in proptest::collection::btree_map((0u128..9).prop_map(id), any_decision(), 0..5),
        turn in 0usize..9,
    ) {
        let clocks = |services: Vec<ServiceRow>| {
            let unit = Unit { services, decisions: decisions.clone(), ..Unit::default() };
            unit.clocks()
        };
        let mut turned = rows.clone();
        turned.reverse();
        let by = turn.min(turned.len());
        turned.rotate_left(by);
        prop_assert_eq!(clocks(rows), clocks(turned));
    }

    #[test]
    fn a_double_never_makes_a_clock_run_longer(hours in 0i64..9_000, days in 0u64..=30, more in -60i64..9_000) {
        let one = Unit::default().done(OIL, &Tenths(hours).to_string(), "2025-01-01");
        let on = (day("2025-01-01") + chrono::Days::new(days)).to_string();
        let two = Unit::default()
            .done(OIL, &Tenths(hours).to_string(), "2025-01-01")
            .done(OIL, &Tenths((hours + more).max(0)).to_string(), &on);
        prop_assert!(two.clock(OIL).due_hours <= one.clock(OIL).due_hours);
        prop_assert!(two.clock(OIL).due_day <= one.clock(OIL).due_day);
    }
}
