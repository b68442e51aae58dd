//! What the shop decides about an exchange of meters, an estimate and services told twice moves just that. Invented
//! data, outcomes worked by rule.

use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::*;
use sumpbook_trade::{EntryId, Tenths};

use super::yard::*;
use crate::settle::decide;

fn decided(yard: &mut Yard, about: &[EntryId], verdict: Verdict, when: &str) {
    let hand = yard.hand("Ilse", when);
    decide(&mut yard.shop, about, verdict, "asked the driver", &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn hours(yard: &Yard, door: &str) -> (Option<Tenths>, Option<Tenths>) {
    let hours = yard.shop.ledger.unit_state(yard.truck(door)).unwrap().hours;
    (hours.last.as_ref().map(|last| last.figure), hours.due)
}

/// Hours and day from which a task of TH-01 runs.
fn runs_from(yard: &Yard, task: &str) -> (Option<Tenths>, String) {
    let state = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap();
    let clock = state.clocks.iter().find(|clock| clock.task == TaskId(task.into())).unwrap();
    let last = clock.last.unwrap();
    (last.hours, last.day.to_string())
}

#[test]
fn an_exchange_that_never_happened_is_taken_out_and_the_true_reading_counts() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:00:00-06:00", reading(28_650));
    let exchange = MeterExchange {
        meter: Meter::Compressor,
        old_end: Some(Tenths(28_650)),
        new_start: Tenths(0),
        went_round: false,
    };
    let exchange = yard.sign(1, "Amos", "TH-01", "2026-10-19T07:05:00-06:00", exchange);
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:00:00-06:00", reading(28_670));
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    assert_ne!(hours(&yard, "TH-01").0, Some(Tenths(28_670)));

    decided(&mut yard, &[exchange], Verdict::DoNotUse, "2026-10-20T17:00:00-06:00");
    assert_eq!(hours(&yard, "TH-01"), (Some(Tenths(28_670)), Some(Tenths(28_670))));
    // And it can be taken in again.
    decided(&mut yard, &[exchange], Verdict::Use, "2026-10-20T17:05:00-06:00");
    assert_ne!(hours(&yard, "TH-01").0, Some(Tenths(28_670)));
}

#[test]
fn an_estimate_on_the_wrong_truck_adds_nothing_once_the_shop_says_so() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-02", "2026-10-19T07:00:00-06:00", reading(12_047));
    let estimate = HoursEstimate {
        meter: Meter::Compressor,
        low: Tenths(2_000),
        likely: Tenths(2_500),
        high: Tenths(3_000),
    };
    let estimate = yard.sign(1, "Amos", "TH-02", "2026-10-19T07:05:00-06:00", estimate);
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    assert_eq!(hours(&yard, "TH-02").1, Some(Tenths(15_047)));
    decided(&mut yard, &[estimate], Verdict::DoNotUse, "2026-10-19T17:00:00-06:00");
    assert_eq!(hours(&yard, "TH-02").1, Some(Tenths(12_047)));
}

#[test]
fn two_tellings_of_one_service_join_each_other_and_no_older_one() {
    let mut yard = Yard::new();
    let told = |yard: &mut Yard, when: &str, hours: i64, tasks: &[&str]| {
        yard.sign_with(1, "Dov", "TH-01", when, Some(hours), service(tasks))
    };
    let first = told(&mut yard, "2026-10-19T09:00:00-06:00", 28_660, &["oil-and-filters"]);
    let again = told(&mut yard, "2026-10-20T15:00:00-06:00", 28_700, &["oil-and-filters", "separator"]);
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    let (oil, separator) =
        ((Some(Tenths(28_660)), "2026-10-19".to_owned()), (Some(Tenths(28_700)), "2026-10-20".to_owned()));
    assert_eq!(runs_from(&yard, "oil-and-filters"), oil);

    decided(&mut yard, &[first, again], Verdict::SameService, "2026-10-20T17:00:00-06:00");
    assert_eq!(runs_from(&yard, "oil-and-filters"), oil, "not joined with February's");
    assert_eq!(runs_from(&yard, "separator"), separator, "told once");
    let state = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap();
    let doubts: Vec<bool> =
        state.clocks.iter().flat_map(|clock| &clock.entered_twice).map(|twice| twice.settled).collect();
    assert!(doubts.iter().all(|settled| *settled), "{doubts:?}");
    // The sheet of the later day does not tell of it as of a second one.
    let done = yard.evening("2026-10-20", "2026-10-20T17:05:00-06:00").due.done;
    assert_eq!((done.len(), done[0].again.as_slice()), (1, ["oil-and-filters".to_owned()].as_slice()));
    let first = yard.evening("2026-10-19", "2026-10-20T17:05:00-06:00").due.done;
    assert!(first[0].again.is_empty(), "{first:?}");
}

#[test]
fn said_of_the_later_one_alone_it_joins_what_it_was_asked_about() {
    let mut yard = Yard::new();
    yard.sign_with(
        1,
        "Dov",
        "TH-01",
        "2026-10-19T09:00:00-06:00",
        Some(28_660),
        service(&["oil-and-filters"]),
    );
    let both = service(&["oil-and-filters", "cooler-and-scavenge"]);
    let again = yard.sign_with(1, "Dov", "TH-01", "2026-10-20T15:00:00-06:00", Some(28_700), both);
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    decided(&mut yard, &[again], Verdict::SameService, "2026-10-20T17:00:00-06:00");
    assert_eq!(runs_from(&yard, "oil-and-filters"), (Some(Tenths(28_660)), "2026-10-19".to_owned()));
    // The cooler's last was in November: another service.
    assert_eq!(runs_from(&yard, "cooler-and-scavenge").1, "2026-10-20");
}

#[test]
fn hours_of_a_service_that_cannot_be_move_no_clock() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:00:00-06:00", reading(28_660));
    let done = service(&["oil-and-filters"]);
    // One figure typed wrong: 3,286.6 for 2,866.2.
    let told = yard.sign_with(1, "Dov", "TH-01", "2026-10-19T15:00:00-06:00", Some(32_866), done);
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let accepted = (Some(Tenths(28_660)), "2026-10-19".to_owned());
    assert_eq!(runs_from(&yard, "oil-and-filters"), accepted);
    let done = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00").due.done;
    assert!(done[0].late.iter().all(|late| !late.contains("368.6")), "{done:?}");
    // Readings that go on from what was accepted leave it so; a figure that a person says stands is the clock's.
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:00:00-06:00", reading(28_670));
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    assert_eq!(runs_from(&yard, "oil-and-filters"), accepted);
    decided(&mut yard, &[told], Verdict::ReadingStands, "2026-10-20T17:00:00-06:00");
    assert_eq!(runs_from(&yard, "oil-and-filters").0, Some(Tenths(32_866)));
}
