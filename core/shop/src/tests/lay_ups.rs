//! Sets that are laid up: what moves with them, who is expected, and records that disagree. Invented data, outcomes
//! worked by rule.

use sumpbook_daybook::state::UnitState;
use sumpbook_trade::Fact;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::lay_up::ReturnList;
use sumpbook_trade::record::*;

use super::yard::*;
use crate::NewSet;
use crate::lay_up::{answer_list, lay_up, open_lines, standing};
use crate::sheet::{AgainstRow, MissingRow};

fn fitted(yard: &mut Yard, serial: &str, door: &str, when: &str) {
    let hand = yard.hand("Ilse", when);
    let on = Some(yard.truck(door));
    let profile = SetProfile::unknown();
    yard.shop.add_set(NewSet { serial: Some(serial.to_owned()), on, profile }, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn state(yard: &Yard, door: &str) -> UnitState {
    yard.shop.ledger.unit_state(yard.truck(door)).unwrap()
}

fn air_locked(yard: &Yard, door: &str) -> bool {
    state(yard, door).locks.iter().any(|lock| lock.ended.is_none() && lock.part == LockPart::Air)
}

fn away(yard: &mut Yard, door: &str, when: &str) {
    let (truck, hand) = (yard.truck(door), yard.hand("Dov", when));
    lay_up(&mut yard.shop, truck, Some("belts slack".into()), None, None, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn lines(without: &[&str]) -> Vec<ReturnLine> {
    let list = ReturnList::common_practice().unwrap();
    let kept = list.lines.iter().filter(|line| !without.contains(&line.id.as_str()));
    kept.map(|line| ReturnLine { line: line.id.clone(), how: ReturnHow::Done, reason: None }).collect()
}

#[test]
fn a_lay_up_goes_with_the_set_and_the_list_is_answered_where_it_stands() {
    let mut yard = Yard::new();
    fitted(&mut yard, "S-91", "TH-01", "2026-10-18T13:00:00-06:00");
    away(&mut yard, "TH-01", "2026-11-30T15:00:00-07:00");
    assert!(air_locked(&yard, "TH-01"));
    let since = state(&yard, "TH-01").lay_ups[0].since;

    fitted(&mut yard, "S-91", "TH-05", "2026-12-07T09:00:00-07:00");
    fitted(&mut yard, "S-92", "TH-01", "2026-12-07T10:00:00-07:00");
    assert!(air_locked(&yard, "TH-05"), "the set is laid up, wherever it stands");
    assert_eq!(state(&yard, "TH-05").lay_ups[0].since, since);
    assert!(!air_locked(&yard, "TH-01"), "another set on the truck is not laid up");
    assert_eq!(state(&yard, "TH-01").lay_ups, []);

    let (truck, hand) = (yard.truck("TH-05"), yard.hand("Ilse", "2027-03-01T08:00:00-07:00"));
    let (_, open) = answer_list(&mut yard.shop, truck, lines(&["tires"]), None, &hand).unwrap();
    assert_eq!(open, ["tires"]);
    let last = vec![ReturnLine { line: "tires".into(), how: ReturnHow::Done, reason: None }];
    let (_, open) = answer_list(&mut yard.shop, truck, last, None, &hand).unwrap();
    assert_eq!(open, [""; 0]);
    assert!(!air_locked(&yard, "TH-05"));
    // And back on the truck on which it was put away: it is back there too.
    fitted(&mut yard, "S-91", "TH-01", "2027-03-02T09:00:00-07:00");
    assert!(!air_locked(&yard, "TH-01"));
    assert_eq!(crate::verify::verify(&mut yard.shop).unwrap().findings, []);
}

#[test]
fn two_hands_that_have_not_seen_each_other_leave_it_locked() {
    let mut yard = Yard::new();
    away(&mut yard, "TH-01", "2026-11-30T15:00:00-07:00");
    yard.exchange(1, "2026-12-01T06:00:00-07:00");
    // The shop answers the whole list; a phone that has not heard of it lays the set up again, an hour before.
    let again = LayUp { done: Some("drained as well".into()) };
    yard.sign(1, "Amos", "TH-01", "2027-03-01T07:00:00-07:00", again);
    let (truck, hand) = (yard.truck("TH-01"), yard.hand("Ilse", "2027-03-01T08:00:00-07:00"));
    let (_, open) = answer_list(&mut yard.shop, truck, lines(&[]), None, &hand).unwrap();
    assert_eq!(open, [""; 0]);
    assert!(!air_locked(&yard, "TH-01"));
    yard.exchange(1, "2027-03-01T09:00:00-07:00");
    assert!(air_locked(&yard, "TH-01"), "the list of the newer lay-up is not answered");
    let spell = standing(&yard.shop.ledger, truck).unwrap().unwrap();
    assert_eq!(open_lines(&spell).len(), ReturnList::common_practice().unwrap().lines.len());
    let phone = yard.phones[0].ledger.unit_state(truck).unwrap();
    assert_eq!(phone.lay_ups, state(&yard, "TH-01").lay_ups, "phone and shop say the same");
    // Told twice by mistake: voided, and what was answered counts.
    let target = sumpbook_trade::EntryId(spell.newest);
    let void = Correction { target, why: "told twice".into(), instead: None };
    yard.sign(1, "Amos", "TH-01", "2027-03-01T09:10:00-07:00", void);
    yard.exchange(1, "2027-03-01T09:20:00-07:00");
    assert!(!air_locked(&yard, "TH-01"));
}

#[test]
fn who_is_laid_up_is_not_expected_until_the_shop_says_so_again() {
    let mut yard = Yard::new();
    let missing = |yard: &Yard, day: &str| {
        let sheet = yard.evening(day, &format!("{day}T17:00:00-07:00"));
        let rows: Vec<MissingRow> = sheet.not_reported.rows;
        rows.into_iter().any(|row| row.unit == "TH-01")
    };
    away(&mut yard, "TH-01", "2026-11-30T15:00:00-07:00");
    assert!(missing(&yard, "2026-11-30"), "it was expected at six and put away at three");
    assert!(!missing(&yard, "2026-12-01"));
    let sheet = yard.evening("2026-12-01", "2026-12-01T17:00:00-07:00");
    let row = sheet.not_reported.not_expected.iter().find(|row| row.unit == "TH-01").unwrap();
    assert_eq!((row.state.as_str(), row.said.as_str()), ("laid-up", "laid up since 30 Nov 2026"));

    // Driven with its air locked, because the shop says so: a walk is expected again, and starting air goes against.
    let (truck, hand) = (yard.truck("TH-01"), yard.hand("Ilse", "2026-12-13T12:00:00-07:00"));
    yard.shop.set_day_status(truck, day("2026-12-14"), DayStatus::Out, None, &hand).unwrap();
    assert!(missing(&yard, "2026-12-14"));
    yard.sign(1, "Amos", "TH-01", "2026-12-14T08:00:00-07:00", drive(DriveWhat::LeftYard));
    let start: Fact = StartAir { steps: vec![], in_spite_of_lock: Some("one hole, quickly".into()) }.into();
    yard.sign(1, "Amos", "TH-01", "2026-12-14T09:00:00-07:00", start);
    yard.exchange(1, "2026-12-14T16:48:00-07:00");
    let sheet = yard.evening("2026-12-14", "2026-12-14T17:00:00-07:00");
    let rows: Vec<&AgainstRow> = sheet.against.rows.iter().collect();
    assert_eq!(rows.len(), 1, "driving goes against nothing");
    assert_eq!((rows[0].lock.as_str(), rows[0].reason.as_deref()), ("air", Some("one hole, quickly")));
    assert!(!rows[0].could_know, "the phone had not heard of it");
}

#[test]
fn a_closed_sheet_with_a_lay_up_reads_the_same_again() {
    let mut yard = Yard::new();
    away(&mut yard, "TH-01", "2026-11-30T15:00:00-07:00");
    yard.close("2026-12-01", "2026-12-01T17:00:00-07:00");
    let (truck, hand) = (yard.truck("TH-01"), yard.hand("Ilse", "2026-12-02T08:00:00-07:00"));
    answer_list(&mut yard.shop, truck, lines(&[]), None, &hand).unwrap();
    let then = crate::close::as_of(&yard.shop, at("2026-12-01T17:00:00-07:00")).unwrap();
    let again =
        crate::close::answer_again(&then, day("2026-12-01"), at("2026-12-01T17:00:00-07:00")).unwrap();
    let kept = &yard.shop.ledger.store().sheets().unwrap()[0];
    assert_eq!(String::from_utf8(again).unwrap(), String::from_utf8(kept.body.clone()).unwrap());
}
