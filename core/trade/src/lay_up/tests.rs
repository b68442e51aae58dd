//! A set is put away and comes back; records that disagree; records in any order.

use chrono::{DateTime, FixedOffset};
use proptest::prelude::*;
use uuid::Uuid;

use super::*;
use crate::Tenths;
use crate::day::{Use, UseKind};
use crate::defect::uses_against;
use crate::record::ReturnHow;

const DOV: Uuid = Uuid::from_u128(70);
const ILSE: Uuid = Uuid::from_u128(71);

fn list() -> &'static ReturnList {
    ReturnList::common_practice().unwrap()
}

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn put(entry: u128, when: &str) -> PutAway {
    PutAway {
        at: at(when),
        entry: Uuid::from_u128(entry),
        person: Some(DOV),
        hours: Some(Tenths(12_047)),
        done: Some("oil changed, belts slack".to_owned()),
    }
}

/// All lines done, but for those named: these are waived.
fn back(entry: u128, when: &str, names: Option<u128>, waived: &[&str]) -> Returning {
    let line = |id: &str| match waived.contains(&id) {
        true => (id.to_owned(), ReturnHow::Waived, Some("none on this set".to_owned())),
        false => (id.to_owned(), ReturnHow::Done, None),
    };
    Returning {
        at: at(when),
        entry: Uuid::from_u128(entry),
        person: Some(ILSE),
        lay_up: names.map(Uuid::from_u128),
        lines: list().lines.iter().map(|item| line(&item.id)).collect(),
    }
}

fn only(spells: Vec<Spell>) -> Spell {
    assert_eq!(spells.len(), 1);
    spells.into_iter().next().unwrap()
}

#[test]
fn the_list_that_ships_says_what_it_stands_on_and_defers_to_the_manual() {
    assert_eq!(list().cites, "common practice, no source");
    assert_eq!(list().lines[0].id, "manual");
    for (text, wrong) in [
        ("edition = 1\ncites = \"\"\nlines = []", ReturnListError::Empty),
        (
            "edition = 1\ncites = \"\"\nlines = [{ id = \"a\" }, { id = \"a\" }]",
            ReturnListError::Twice("a".into()),
        ),
    ] {
        assert_eq!(ReturnList::read(text), Err(wrong));
    }
    assert!(matches!(ReturnList::read("edition = 1"), Err(ReturnListError::Shape(_))));
}

#[test]
fn a_set_is_laid_up_until_the_last_line_is_answered() {
    let away = [put(1, "2026-11-30T15:00:00-07:00")];
    let laid = only(spells(&away, &[], list()));
    assert_eq!((laid.open_lines(), laid.returned), (list().lines.len(), None));
    let lock = lock_out(&laid);
    assert_eq!((lock.part.clone(), lock.since, lock.ended), (LockPart::Air, away[0].at, None));
    assert!(is_lay_up(&lock));
    // Driving goes against nothing of it, starting air does.
    let used = |what| Use { at: at("2027-01-05T09:00:00-07:00"), entry: Uuid::from_u128(9), what };
    assert_eq!(
        uses_against(std::slice::from_ref(&lock), &[used(UseKind::Start), used(UseKind::Drive)]).len(),
        1
    );

    let mut first = back(2, "2027-03-01T08:00:00-07:00", Some(1), &["belts-shaft"]);
    let last = first.lines.pop().unwrap();
    let begun = only(spells(&away, &[first.clone()], list()));
    assert_eq!((begun.open_lines(), begun.returned), (1, None));
    let rest = Returning { lines: vec![last], ..back(3, "2027-03-01T11:30:00-07:00", Some(1), &[]) };
    let done = only(spells(&away, &[rest.clone(), first], list()));
    let returned = done.returned.unwrap();
    assert_eq!((returned.at, returned.entry, returned.person), (rest.at, rest.entry, ILSE));
    let belts = done.lines.iter().find(|line| line.line == "belts-shaft").unwrap();
    assert_eq!(belts.standing(), LineStanding::Waived);
    assert_eq!(lock_out(&done).ended, Some(rest.at));
}

#[test]
fn what_has_no_name_no_reason_or_no_line_brings_nothing_back() {
    let away = [put(1, "2026-11-30T15:00:00-07:00")];
    let when = "2027-03-01T08:00:00-07:00";
    let nobody = Returning { person: None, ..back(2, when, Some(1), &[]) };
    let words_alone = Returning { lines: Vec::new(), ..back(3, when, None, &[]) };
    let mut no_reason = back(4, when, Some(1), &["water"]);
    for line in no_reason.lines.iter_mut().filter(|line| line.1 == ReturnHow::Waived) {
        line.2 = Some("  ".to_owned());
    }
    let mut unknown = back(5, when, Some(1), &[]);
    unknown.lines = vec![("warp-drive".to_owned(), ReturnHow::Done, None)];
    let spell = only(spells(&away, &[nobody, words_alone, no_reason, unknown], list()));
    assert_eq!((spell.open_lines(), spell.returned), (1, None));
    assert_eq!(spells(&[], &[back(6, when, None, &[])], list()), [], "nothing was put away");
    let before = back(7, "2026-11-30T14:59:00-07:00", None, &[]);
    assert_eq!(only(spells(&away, &[before], list())).returned, None, "said before it was put away");
}

#[test]
fn two_answers_to_a_line_both_stand_and_waived_is_said() {
    let away = [put(1, "2026-11-30T15:00:00-07:00")];
    let phone = back(2, "2027-03-01T08:00:00-07:00", Some(1), &[]);
    let mut shop = back(3, "2027-03-01T07:00:00-07:00", Some(1), &["hoses"]);
    shop.lines.retain(|line| line.0 == "hoses");
    let spell = only(spells(&away, &[phone, shop], list()));
    let hoses = spell.lines.iter().find(|line| line.line == "hoses").unwrap();
    assert_eq!((hoses.answers.len(), hoses.standing()), (2, LineStanding::Waived));
    assert!(spell.returned.is_some());
}

#[test]
fn a_later_lay_up_opens_a_new_list_and_one_told_twice_keeps_the_earlier_moment() {
    let first = put(1, "2026-11-30T15:00:00-07:00");
    let second = put(2, "2026-12-02T09:00:00-07:00");
    // Told twice: the list of the first is answered by somebody who had not seen the second.
    let done = back(3, "2027-03-01T08:00:00-07:00", Some(1), &[]);
    let spell = only(spells(&[second.clone(), first.clone()], std::slice::from_ref(&done), list()));
    assert_eq!((spell.since, spell.newest, spell.returned), (first.at, second.entry, None));
    let again = back(4, "2027-03-01T09:00:00-07:00", Some(2), &[]);
    let spell = only(spells(&[first.clone(), second], &[done.clone(), again.clone()], list()));
    assert_eq!(spell.returned.map(|returned| returned.at), Some(again.at));
    // A season later: a spell of its own with an open list.
    let next = put(5, "2027-11-29T15:00:00-07:00");
    let all = spells(&[first, next.clone()], std::slice::from_ref(&done), list());
    assert_eq!(all.len(), 2);
    assert_eq!((all[0].returned.map(|r| r.at), all[1].returned), (Some(done.at), None));
    assert_eq!(all[1].open_lines(), list().lines.len());
}

#[test]
fn of_one_moment_the_lock_stands_and_a_slow_clock_does_not_answer_before_the_question() {
    let away = put(1, "2026-11-30T15:00:00-07:00");
    let same = back(2, "2026-11-30T15:00:00-07:00", None, &[]);
    assert_eq!(only(spells(std::slice::from_ref(&away), &[same], list())).returned, None);
    let slow = back(3, "2026-11-30T12:00:00-07:00", Some(1), &[]);
    let spell = only(spells(std::slice::from_ref(&away), &[slow], list()));
    assert_eq!(spell.returned.map(|returned| returned.at), Some(away.at));
}

proptest! {
    #[test]
    fn the_order_in_which_records_come_changes_nothing(
        away in proptest::collection::vec((1u128..6, 0i64..40), 1..4),
        said in proptest::collection::vec((10u128..20, 0i64..40, proptest::option::of(1u128..6), 0usize..14), 0..6),
        turn in 0usize..24,
    ) {
        let start = at("2026-11-30T15:00:00-07:00");
        let later = |hours: i64| start + chrono::TimeDelta::hours(hours);
        let mut away: Vec<PutAway> =
            away.into_iter().map(|(n, h)| PutAway { at: later(h), ..put(n, "2026-11-30T15:00:00-07:00") }).collect();
        // One entry is one fact.
        away.sort_by_key(|put| put.entry);
        away.dedup_by_key(|put| put.entry);
        let mut said: Vec<Returning> = said
            .into_iter()
            .map(|(n, h, names, cut)| {
                let mut one = back(n, "2026-11-30T15:00:00-07:00", names, &["tires"]);
                one.at = later(h);
                one.lines.truncate(cut);
                one
            })
            .collect();
        said.sort_by_key(|one| one.entry);
        said.dedup_by_key(|one| one.entry);
        let one = spells(&away, &said, list());
        let turned = turn % away.len();
        away.rotate_left(turned);
        said.reverse();
        prop_assert_eq!(&spells(&away, &said, list()), &one);
        // One more lay-up at the end always locks.
        away.push(PutAway { at: later(41), ..put(99, "2026-11-30T15:00:00-07:00") });
        prop_assert!(spells(&away, &said, list()).last().unwrap().returned.is_none());
    }
}
