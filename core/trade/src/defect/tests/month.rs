//! The worked month, events 2 and 13.

use super::*;

fn event_2() -> Recorded {
    Recorded::default().ok(1, "lamps-stop", BETTINA, "2026-10-20T06:41:00-06:00").found(
        2,
        "lamps-stop",
        &[LockPart::Road],
        HATTIE,
        "2026-10-20T06:44:00-06:00",
    )
}

#[test]
fn event_2_two_phones_disagree_and_it_is_one_defect_with_both_answers() {
    let defect = event_2().only();
    assert_eq!(defect.since, at("2026-10-20T06:44:00-06:00"));
    let said: Vec<(Uuid, bool)> = defect.answers.iter().map(|a| (a.person, a.said == Said::Ok)).collect();
    assert_eq!(said, [(BETTINA, true), (HATTIE, false)]);
    assert_eq!(defect.state, DefectState::Open);
}

#[test]
fn event_2_the_road_is_locked_from_hatties_own_time_and_leaving_at_06_50_goes_against_it() {
    let locks = event_2().locks();
    assert_eq!((locks.len(), &locks[0].part), (1, &LockPart::Road));
    assert_eq!(locks[0].since, at("2026-10-20T06:44:00-06:00"));
    let uses = [
        used(11, UseKind::Start, "2026-10-20T09:00:00-06:00"),
        used(10, UseKind::Drive, "2026-10-20T06:50:00-06:00"),
        used(9, UseKind::Drive, "2026-10-20T06:43:00-06:00"),
        used(12, UseKind::Reading, "2026-10-20T16:00:00-06:00"),
    ];
    let against = uses_against(&locks, &uses);
    assert_eq!(against.len(), 1, "{against:?}");
    assert_eq!(against[0].used, uses[1]);
    assert_eq!(against[0].could_know, None, "who could know is judged from what each phone held");
}

fn event_13() -> Recorded {
    Recorded::default()
        .found(1, "mirrors", &[LockPart::Road], CARMELO, "2026-11-03T06:35:00-07:00")
        .certified(2, 1, "mirrors", Verdict::NotNeeded, "2026-11-03T07:55:00-07:00")
}

#[test]
fn event_13_certified_and_not_reviewed_is_still_not_to_be_driven() {
    let recorded = event_13();
    let DefectState::AwaitingReview { certified } = recorded.only().state else { panic!() };
    assert_eq!((certified.by, certified.verdict), (WREN, Verdict::NotNeeded));
    let all = recorded.all();
    assert_eq!(all.not_certified().count(), 0);
    assert_eq!(all.to_review().map(|(_, c)| c.certificate).collect::<Vec<_>>(), [id(2)]);
    let lock = &recorded.locks()[0];
    assert_eq!((lock.certified, lock.ended), (Some(at("2026-11-03T07:55:00-07:00")), None));
    let drive = [used(9, UseKind::Drive, "2026-11-03T08:00:00-07:00")];
    assert_eq!(uses_against(&recorded.locks(), &drive).len(), 1);
}

#[test]
fn event_13_dinahs_review_ends_it_at_08_10() {
    let recorded = event_13().reviewed(3, &[2], DINAH, "2026-11-03T08:10:00-07:00");
    let DefectState::Closed { certified, reviewed } = recorded.only().state else { panic!() };
    assert_eq!(certified.words, "hairline outside the view; glass ordered");
    assert_eq!(reviewed.unwrap().person, DINAH);
    let lock = &recorded.locks()[0];
    assert_eq!(
        (lock.since, lock.ended),
        (at("2026-11-03T06:35:00-07:00"), Some(at("2026-11-03T08:10:00-07:00")))
    );
    let drive = |when| uses_against(&recorded.locks(), &[used(9, UseKind::Drive, when)]).len();
    assert_eq!(drive("2026-11-03T08:09:59-07:00"), 1);
    assert_eq!(drive("2026-11-03T08:10:00-07:00"), 0);
}
