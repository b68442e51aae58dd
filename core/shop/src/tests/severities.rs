//! What findings lock is the shop's to edit, from its own moment on; a word that comes again within days locks more.

use sumpbook_daybook::line::{AnswerError, with_severity};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::record::{Answer, AnswerKind, Glass, LevelCheck, OwnSeverity, SeveritiesSet, TopUp};
use sumpbook_trade::{Entry, EntryId, Fluid};

use super::yard::{Yard, answer, at, walk};

const MONDAY: &str = "2026-10-19T08:00:00-06:00";

fn own(item: &str, word: &str, severity: Severity, again: Option<Severity>) -> OwnSeverity {
    OwnSeverity { item: item.into(), word: word.into(), severity, again }
}

fn set(yard: &mut Yard, own: Vec<OwnSeverity>, when: &str) {
    let hand = yard.hand("Ilse", when);
    yard.shop.set_severities(own, Some("said in a test"), &hand).unwrap();
}

fn word(item: &str, word: &str) -> Answer {
    Answer { answer: AnswerKind::Defect, word: Some(word.into()), ..answer(item, None, None, "") }
}

/// A walk with this word on a phone, which locks what that phone knows of it.
fn tells(yard: &mut Yard, phone: usize, when: &str, item: &str, said: &str) -> Option<Severity> {
    let truck = yard.truck("TH-01");
    let checklist = yard.phones[phone - 1].ledger.checklist_of(truck, at(when)).unwrap();
    let told = with_severity(&checklist, word(item, said)).unwrap();
    let severity = told.severity;
    yard.sign(phone, "Amos", "TH-01", when, walk(vec![told], 8));
    severity
}

fn is_well(yard: &mut Yard, phone: usize, when: &str) {
    yard.sign(phone, "Amos", "TH-01", when, walk(vec![answer("coolant", None, None, "")], 8));
}

fn pours_coolant(yard: &mut Yard, phone: usize, when: &str) -> EntryId {
    yard.sign(phone, "Amos", "TH-01", when, TopUp::of(Fluid::Coolant))
}

/// What is locked of TH-01, as the shop has it.
fn locked(yard: &Yard) -> Vec<LockPart> {
    let state = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap();
    let open = state.locks.iter().filter(|lock| lock.ended.is_none());
    open.map(|lock| lock.part.clone()).collect()
}

#[test]
fn a_word_locks_what_the_shop_says_on_the_phones_and_not_what_was_found_before() {
    let mut yard = Yard::new();
    assert_eq!(tells(&mut yard, 1, "2026-10-19T07:00:00-06:00", "mirrors", "hairline"), Some(Severity::Note));
    yard.exchange(1, "2026-10-19T07:30:00-06:00");
    set(&mut yard, vec![own("mirrors", "hairline", Severity::Road, None)], MONDAY);
    assert!(locked(&yard).is_empty(), "what was found before stays a note");

    let not_heard = tells(&mut yard, 2, "2026-10-19T09:00:00-06:00", "mirrors", "hairline");
    assert_eq!(not_heard, Some(Severity::Note), "a phone knows what it has heard");
    yard.exchange(1, "2026-10-19T09:00:00-06:00");
    let checklist = yard.phones[0].ledger.fleet().checklist().unwrap().clone();
    let lowered = Answer { severity: Some(Severity::Note), ..word("mirrors", "hairline") };
    assert!(matches!(with_severity(&checklist, lowered), Err(AnswerError::Lowered { own: "road", .. })));
    assert_eq!(tells(&mut yard, 1, "2026-10-19T09:05:00-06:00", "mirrors", "hairline"), Some(Severity::Road));
    yard.exchange(1, "2026-10-19T09:10:00-06:00");
    assert_eq!(locked(&yard), [LockPart::Road]);

    // Back to the checklist's own: what is locked stays so until it is certified.
    set(&mut yard, vec![], "2026-10-19T10:00:00-06:00");
    assert_eq!(locked(&yard), [LockPart::Road]);
    yard.exchange(1, "2026-10-19T10:05:00-06:00");
    assert_eq!(tells(&mut yard, 1, "2026-10-19T10:10:00-06:00", "mirrors", "hairline"), Some(Severity::Note));
}

#[test]
fn what_locks_without_an_answer_follows_the_same_list_from_the_same_moment() {
    let mut yard = Yard::new();
    let below = || LevelCheck {
        fluid: Fluid::CompressorOil,
        glass: Glass::BelowView,
        warmth: None,
        stopped: None,
        look: None,
        photo: None,
        oil_temperature: None,
    };
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:00:00-06:00", below());
    yard.exchange(1, "2026-10-19T07:30:00-06:00");
    assert_eq!(locked(&yard), [LockPart::Air]);
    set(&mut yard, vec![own("oil-level", "below-view", Severity::RoadAndAir, None)], MONDAY);
    assert_eq!(locked(&yard), [LockPart::Air], "found before");
    yard.sign(1, "Amos", "TH-01", "2026-10-19T09:00:00-06:00", below());
    yard.exchange(1, "2026-10-19T09:30:00-06:00");
    assert_eq!(locked(&yard), [LockPart::Road, LockPart::Air]);
}

// Common practice, no source: coolant low twice in 7 days.
#[test]
fn coolant_low_again_within_the_week_locks_the_road_though_no_phone_knew_of_the_other() {
    let mut yard = Yard::new();
    assert_eq!(tells(&mut yard, 1, "2026-10-19T07:00:00-06:00", "coolant", "low"), Some(Severity::Note));
    pours_coolant(&mut yard, 1, "2026-10-19T07:10:00-06:00");
    assert_eq!(tells(&mut yard, 2, "2026-10-22T07:00:00-06:00", "coolant", "low"), Some(Severity::Note));
    yard.exchange(2, "2026-10-22T16:00:00-06:00");
    assert!(locked(&yard).is_empty());
    yard.exchange(1, "2026-10-22T16:30:00-06:00");
    assert_eq!(locked(&yard), [LockPart::Road]);
    // From its own time: driving at noon went against it, whoever knew (R12).
    let state = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap();
    assert_eq!(state.locks[0].since, at("2026-10-22T07:00:00-06:00").moment());
}

#[test]
fn a_phone_that_knows_of_the_first_time_says_so_before_the_word_is_kept() {
    let mut yard = Yard::new();
    tells(&mut yard, 1, "2026-10-19T07:00:00-06:00", "coolant", "low");
    pours_coolant(&mut yard, 1, "2026-10-19T07:10:00-06:00");
    assert_eq!(tells(&mut yard, 1, "2026-10-26T07:10:00-06:00", "coolant", "low"), Some(Severity::Road));
    let mut late = Yard::new();
    pours_coolant(&mut late, 1, "2026-10-19T07:10:00-06:00");
    assert_eq!(tells(&mut late, 1, "2026-10-26T07:11:00-06:00", "coolant", "low"), Some(Severity::Note));
}

#[test]
fn low_in_the_evening_and_still_low_in_the_morning_is_one_time() {
    let mut yard = Yard::new();
    tells(&mut yard, 1, "2026-10-19T17:00:00-06:00", "coolant", "low");
    assert_eq!(tells(&mut yard, 1, "2026-10-20T07:00:00-06:00", "coolant", "low"), Some(Severity::Note));
    pours_coolant(&mut yard, 1, "2026-10-20T07:10:00-06:00");
    yard.exchange(1, "2026-10-20T16:00:00-06:00");
    assert!(locked(&yard).is_empty());
}

#[test]
fn a_walk_that_found_it_well_ends_the_first_time_though_it_found_nothing_else() {
    let mut yard = Yard::new();
    tells(&mut yard, 1, "2026-10-19T07:00:00-06:00", "coolant", "low");
    is_well(&mut yard, 1, "2026-10-20T07:00:00-06:00");
    assert_eq!(tells(&mut yard, 1, "2026-10-22T07:00:00-06:00", "coolant", "low"), Some(Severity::Road));
    let mut quiet = Yard::new();
    tells(&mut quiet, 1, "2026-10-19T07:00:00-06:00", "coolant", "low");
    assert_eq!(tells(&mut quiet, 1, "2026-10-22T07:00:00-06:00", "coolant", "low"), Some(Severity::Note));
}

#[test]
fn two_pours_of_coolant_in_a_week_lock_the_road_and_the_shop_may_have_it_otherwise() {
    let pours = |own: Vec<OwnSeverity>| {
        let mut yard = Yard::new();
        set(&mut yard, own, "2026-10-18T13:00:00-06:00");
        pours_coolant(&mut yard, 1, "2026-10-19T07:10:00-06:00");
        pours_coolant(&mut yard, 1, "2026-10-22T07:10:00-06:00");
        yard.exchange(1, "2026-10-22T16:00:00-06:00");
        locked(&yard)
    };
    assert_eq!(pours(vec![]), [LockPart::Road]);
    assert!(pours(vec![own("coolant", "low", Severity::Note, Some(Severity::Note))]).is_empty());
}

#[test]
fn what_is_not_on_the_checklist_is_refused_and_passed_over_when_another_program_signed_it() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", MONDAY);
    let wrong = vec![own("wings", "bent", Severity::Road, None), own("horn", "weak", Severity::Note, None)];
    let told = yard.shop.set_severities(wrong.clone(), None, &hand).unwrap_err();
    assert_eq!(told.to_string(), "the checklist has no item 'wings'. Nothing was changed.");
    assert!(yard.shop.ledger.fleet().own_severities().is_empty());
    yard.shop.write(None, SeveritiesSet { own: wrong }.into(), None, &hand).unwrap();
    yard.exchange(1, "2026-10-19T08:05:00-06:00");
    for ledger in [&yard.shop.ledger, &yard.phones[0].ledger] {
        let horn = ledger.fleet().checklist().unwrap().item("horn").unwrap().severity("weak");
        assert_eq!(horn, Some(Severity::Note));
    }
}

#[test]
fn to_lock_less_than_the_checklist_asks_why_and_the_reason_is_kept() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", MONDAY);
    let weak = || own("horn", "weak", Severity::Note, None);
    let mut change = |one: OwnSeverity, why: Option<&str>| yard.shop.change_severities(vec![one], why, &hand);
    for no in [None, Some("  ")] {
        let told = change(weak(), no).unwrap_err().to_string();
        assert!(told.starts_with("'horn: weak' would lock less than the checklist has it."), "{told}");
    }
    let second = change(own("coolant", "low", Severity::Note, Some(Severity::Note)), None);
    assert!(second.unwrap_err().to_string().contains("coolant: low"), "the second time counts as well");
    // Road alone opens the air: that is less too.
    assert!(change(own("mirrors", "cracked", Severity::Air, None), None).is_err());
    // To lock more, and what was said before, need no word.
    assert!(change(own("mirrors", "hairline", Severity::Road, None), None).unwrap());
    assert!(change(weak(), Some("two horns on ours")).unwrap());
    assert!(change(own("mirrors", "hairline", Severity::Note, None), None).unwrap(), "back to the usual");
    assert_eq!(yard.shop.ledger.fleet().own_severities().len(), 1);
    let truth = yard.shop.ledger.store().truth();
    let all = truth.between(0, i64::MAX, i64::MAX).unwrap();
    let notes: Vec<_> =
        all.iter().filter_map(|held| Entry::from_payload(&held.row.payload).ok()?.note).collect();
    assert!(notes.contains(&"two horns on ours".to_owned()), "{notes:?}");
}

#[test]
fn one_word_changed_leaves_the_others_and_no_change_writes_nothing() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", MONDAY);
    let change =
        |yard: &mut Yard, one| yard.shop.change_severities(vec![one], Some("said in a test"), &hand).unwrap();
    assert!(change(&mut yard, own("horn", "weak", Severity::Note, None)));
    assert!(change(&mut yard, own("mirrors", "hairline", Severity::Road, None)));
    assert!(!change(&mut yard, own("mirrors", "hairline", Severity::Road, None)));
    let items = |yard: &Yard| -> Vec<String> {
        yard.shop.ledger.fleet().own_severities().iter().map(|own| own.item.clone()).collect()
    };
    assert_eq!(items(&yard), ["horn", "mirrors"]);
    assert!(change(&mut yard, own("horn", "weak", Severity::Road, None)), "back to the usual");
    assert_eq!(items(&yard), ["mirrors"]);
    assert!(!change(&mut yard, own("coolant", "low", Severity::Note, Some(Severity::Road))), "as it ships");
}
