//! The numbers of the rules are the shop's: one set holds for all that was recorded, on the phones too.

use super::yard::{Yard, at, day, end_of_day, walk};
use crate::sheet::{Sections, View, day_sheet};
use sumpbook_trade::record::{RuleNumbers, StartAir};

const MONDAY: &str = "2026-10-19T08:00:00-06:00";

fn set(yard: &mut Yard, numbers: RuleNumbers, when: &str) {
    let hand = yard.hand("Ilse", when);
    yard.shop.set_numbers(numbers, &hand).unwrap();
}

#[test]
fn a_task_is_coming_up_from_the_day_the_shop_says() {
    let mut yard = Yard::new();
    // Its last good day is 20 November, 32 days ahead.
    let says = |yard: &Yard| {
        let list = crate::due::due_list(&yard.shop.ledger, at(MONDAY)).unwrap();
        let row = list.rows.iter().find(|row| row.unit == "TH-01" && row.task == "cooler-and-scavenge");
        row.unwrap().state.clone()
    };
    assert_eq!(says(&yard), "far-off");
    set(&mut yard, RuleNumbers { coming_up_days: 32, ..RuleNumbers::default() }, MONDAY);
    assert_eq!(says(&yard), "coming-up");
    set(&mut yard, RuleNumbers { coming_up_days: 31, ..RuleNumbers::default() }, MONDAY);
    assert_eq!(says(&yard), "far-off");
}

#[test]
fn a_walk_covers_as_long_as_the_shop_says() {
    let mut yard = Yard::new();
    yard.sign(1, "Ivo", "TH-07", "2026-10-22T18:52:00-06:00", walk(vec![], 8));
    let start = StartAir { steps: vec![], in_spite_of_lock: None };
    yard.sign_with(1, "Ivo", "TH-07", "2026-10-22T23:10:00-06:00", Some(19_180), start);
    yard.sign(1, "Ivo", "TH-07", "2026-10-23T04:40:00-06:00", end_of_day());
    yard.exchange(1, "2026-10-23T04:45:00-06:00");
    let without = |yard: &Yard| yard.evening("2026-10-22", "2026-10-23T08:00:00-06:00").without.count;
    assert_eq!(without(&yard), 0);
    // 18:52 to 23:10 is 258 minutes.
    set(
        &mut yard,
        RuleNumbers { covers_minutes: 257, ..RuleNumbers::default() },
        "2026-10-23T07:00:00-06:00",
    );
    assert_eq!(without(&yard), 1, "covered up to the minute before");
    set(
        &mut yard,
        RuleNumbers { covers_minutes: 258, ..RuleNumbers::default() },
        "2026-10-23T07:01:00-06:00",
    );
    assert_eq!(without(&yard), 0);
}

#[test]
fn a_phone_counts_with_the_same_numbers_and_keeps_its_own_against_nonsense() {
    let mut yard = Yard::new();
    let own = RuleNumbers { middle_from: 40, middle_to: 60, verdict_hours: 300, ..RuleNumbers::default() };
    set(&mut yard, own.clone(), MONDAY);
    yard.exchange(1, "2026-10-19T08:05:00-06:00");
    assert_eq!(yard.phones[0].ledger.fleet().numbers, own);
    for door in ["TH-01", "TH-02", "TH-03"] {
        let truck = yard.truck(door);
        let (here, there) = (yard.shop.ledger.unit_state(truck), yard.phones[0].ledger.unit_state(truck));
        assert_eq!(here.unwrap().clocks, there.unwrap().clocks, "{door}");
    }

    let hand = yard.hand("Ilse", "2026-10-19T09:00:00-06:00");
    let told = yard.shop.set_numbers(RuleNumbers { covers_minutes: 0, ..own.clone() }, &hand).unwrap_err();
    assert_eq!(
        told.to_string(),
        "covers-minutes is 0: it goes from 60 to 1440. Nothing was changed. Give it within its bounds."
    );
    // What another program wrote under the shop's key.
    let wrong = RuleNumbers { covers_minutes: 0, ..own.clone() };
    yard.shop.write(None, wrong.into(), None, &hand).unwrap();
    assert_eq!(yard.shop.ledger.fleet().numbers, own);
    yard.exchange(1, "2026-10-19T09:05:00-06:00");
    assert_eq!(yard.phones[0].ledger.fleet().numbers, own);
}

#[test]
fn a_closed_sheet_stays_as_it_is() {
    let mut yard = Yard::new();
    yard.sign(1, "Ivo", "TH-07", "2026-10-19T18:52:00-06:00", walk(vec![], 8));
    let start = StartAir { steps: vec![], in_spite_of_lock: None };
    yard.sign_with(1, "Ivo", "TH-07", "2026-10-19T23:10:00-06:00", Some(19_180), start);
    yard.exchange(1, "2026-10-19T23:20:00-06:00");
    let closing = yard.close("2026-10-19", "2026-10-20T04:00:00-06:00");
    set(&mut yard, RuleNumbers { covers_minutes: 60, ..RuleNumbers::default() }, "2026-10-20T07:00:00-06:00");
    let then = crate::close::as_of(&yard.shop, at("2026-10-20T04:00:00-06:00")).unwrap();
    let then = day_sheet(&then, day("2026-10-19"), View::Evening, at("2026-10-20T04:00:00-06:00")).unwrap();
    let Sections::Evening(then) = then.view else { panic!("an evening") };
    assert_eq!(then.without.count, 0, "{closing:?}");
    assert_eq!(yard.evening("2026-10-19", "2026-10-20T08:00:00-06:00").without.count, 1);
}
