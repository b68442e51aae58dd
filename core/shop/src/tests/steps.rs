//! What is not so at a step of a procedure, and what happened, as the shop reads them.

use sumpbook_daybook::line::fact_of_steps;
use sumpbook_trade::Fact;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::record::*;

use super::yard::*;
use crate::certify::certify;

fn step(id: &str, when: &str, word: Option<&str>) -> StepDone {
    let word = word.map(str::to_owned);
    StepDone {
        step: id.into(),
        at: at(when),
        not_so: word.is_some(),
        word,
        locks: None,
        figure: None,
        place: None,
    }
}

fn start(steps: Vec<StepDone>) -> Fact {
    fact_of_steps(Procedures::common_practice().unwrap(), "start", steps, None).unwrap()
}

#[test]
fn a_selector_that_sticks_locks_the_air_and_nobody_is_said_to_have_started() {
    let mut yard = Yard::new();
    let steps = vec![
        step("engine-run", "2026-10-19T07:00:00-06:00", None),
        step("sel-low", "2026-10-19T07:01:00-06:00", Some("stuck")),
    ];
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:01:30-06:00", start(steps));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let evening = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00");
    assert_eq!(evening.without.count, 0, "the compressor did not turn");
    let locked = &evening.locked.rows[0];
    assert_eq!((locked.unit.as_str(), locked.lock.as_str()), ("TH-01", "air"));
    assert_eq!(evening.new_defects.rows[0].item, "step-sel-low");

    // The shop certifies it as any defect; the next driver's review ends it.
    let ilse = yard.hand("Ilse", "2026-10-19T17:10:00-06:00");
    let truck = yard.truck("TH-01");
    certify(&mut yard.shop, truck, "step-sel-low", RepairVerdict::Repaired, "cable greased", &ilse).unwrap();
    let after = yard.evening("2026-10-19", "2026-10-19T17:20:00-06:00");
    assert_eq!(after.locked.rows[0].next_step, "review");
}

#[test]
fn a_start_that_went_wrong_after_the_shaft_turned_is_a_use_and_a_lock() {
    let mut yard = Yard::new();
    let steps = vec![step("pto-in", "2026-10-19T07:02:00-06:00", Some("grinds"))];
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:02:30-06:00", start(steps));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let evening = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00");
    assert_eq!(evening.without.count, 1, "started with no pre-trip");
    assert_eq!(evening.locked.rows[0].lock, "air");
}

#[test]
fn what_happened_stands_first_on_the_sheet_of_its_day() {
    let mut yard = Yard::new();
    assert!(yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00").happened.is_empty());
    let spill = Happened {
        what: Some(HappenedWhat::Spill),
        when: Some(at("2026-10-19T10:20:00-06:00")),
        place: Some("by the pump house".into()),
        how_much: Some("a quart of oil".into()),
        told: None,
        photos: vec![],
    };
    yard.sign(1, "Gil", "TH-05", "2026-10-19T10:31:00-06:00", spill);
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let evening = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00");
    let row = &evening.happened.rows[0];
    assert_eq!((row.unit.as_str(), row.what.as_deref()), ("TH-05", Some("spill")));
    assert_eq!(row.when, at("2026-10-19T10:20:00-06:00"));
    assert_eq!((row.how_much.as_deref(), row.told.as_deref()), (Some("a quart of oil"), None));
    assert_eq!(evening.locked.count, 0, "it locks nothing by itself");
}

#[test]
fn a_stop_whose_start_nobody_recorded_is_a_use() {
    let mut yard = Yard::new();
    let stop = || StopAir { steps: vec![], blew_down: Some(true) };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T11:00:00-06:00", stop());
    yard.sign(
        1,
        "Bettina",
        "TH-02",
        "2026-10-20T09:00:00-06:00",
        StartAir { steps: vec![], in_spite_of_lock: None },
    );
    yard.sign(1, "Bettina", "TH-02", "2026-10-20T11:00:00-06:00", stop());
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    let without = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00").without.rows;
    let said: Vec<_> = without
        .iter()
        .map(|row| (row.unit.as_str(), row.what.as_str(), row.more, row.who.as_deref()))
        .collect();
    assert_eq!(
        said,
        [("TH-02", "start", 0, Some("Bettina Quaye")), ("TH-01", "stop", 0, Some("Amos Tillery"))]
    );
}
