//! The letter of R4, R12 and 49 CFR 396.11(a)(3), 396.13.

use super::*;

const ROAD: &[LockPart] = &[LockPart::Road];
const AIR: &[LockPart] = &[LockPart::Air];

fn horn() -> Recorded {
    Recorded::default().found(1, "horn", ROAD, CARMELO, "2026-11-03T06:35:00-07:00")
}

#[test]
fn nobody_signs_to_drive_while_a_defect_is_not_certified() {
    // 49 CFR 396.11(a)(3): repaired, or repair not needed, certified before the vehicle is driven again.
    assert_eq!(horn().all().not_certified().count(), 1);
    for verdict in [Verdict::Repaired, Verdict::NotNeeded] {
        let certified = horn().certified(2, 1, "horn", verdict, "2026-11-03T07:00:00-07:00");
        assert_eq!(certified.all().not_certified().count(), 0);
        assert_eq!(certified.all().to_review().count(), 1);
    }
}

#[test]
fn a_review_that_does_not_name_the_certificate_ends_nothing() {
    let recorded = horn()
        .certified(2, 1, "horn", Verdict::Repaired, "2026-11-03T07:00:00-07:00")
        .reviewed(3, &[], DINAH, "2026-11-03T07:10:00-07:00")
        .reviewed(4, &[99], DINAH, "2026-11-03T07:11:00-07:00");
    assert!(matches!(recorded.only().state, DefectState::AwaitingReview { .. }));
}

#[test]
fn a_later_ok_closes_nothing_and_is_shown() {
    let recorded = horn().ok(2, "horn", DINAH, "2026-11-05T06:30:00-07:00");
    assert_eq!(recorded.only().state, DefectState::Open);
    assert_eq!(recorded.only().answers.len(), 2);
}

#[test]
fn an_ok_of_another_day_before_it_is_not_an_answer_to_it() {
    let recorded = horn().ok(2, "horn", DINAH, "2026-11-02T06:30:00-07:00");
    assert_eq!(recorded.only().answers.len(), 1);
    let other_item = horn().ok(2, "wipers", DINAH, "2026-11-03T06:30:00-07:00");
    assert_eq!(other_item.only().answers.len(), 1);
}

#[test]
fn answers_of_one_night_are_of_one_day() {
    let mut night = Recorded::default().ok(1, "horn", BETTINA, "2026-11-02T23:58:00-07:00").found(
        2,
        "horn",
        ROAD,
        CARMELO,
        "2026-11-03T00:04:00-07:00",
    );
    assert_eq!(night.only().answers.len(), 1, "two yard days, and no walk that spans them");
    night.covered.push(Coverage {
        from: at("2026-11-03T00:01:00-07:00"),
        to: at("2026-11-03T08:00:00-07:00"),
        entry: id(1),
        person: BETTINA,
        ended_by: None,
    });
    assert_eq!(night.only().answers.len(), 2, "hers was of the walk that covers his");
}

#[test]
fn each_part_is_locked_from_the_first_answer_that_says_so() {
    let recorded = Recorded::default()
        .found(1, "body-pto-lamp", AIR, CARMELO, "2026-11-03T06:35:00-07:00")
        .found(2, "body-pto-lamp", &[LockPart::Road, LockPart::Air], DINAH, "2026-11-03T06:50:00-07:00");
    let locks = recorded.locks();
    let parts: Vec<_> = locks.iter().map(|lock| (lock.part.clone(), lock.since)).collect();
    assert_eq!(
        parts,
        [(LockPart::Road, at("2026-11-03T06:50:00-07:00")), (LockPart::Air, at("2026-11-03T06:35:00-07:00"))]
    );
    assert!(locks.iter().all(|lock| lock.because.entry == id(1)));
}

#[test]
fn found_again_while_open_is_the_same_defect() {
    let recorded = horn().found(2, "horn", ROAD, DINAH, "2026-11-05T06:30:00-07:00");
    assert_eq!(recorded.only().answers.len(), 2);
    let by_the_second = recorded.certified(3, 2, "horn", Verdict::Repaired, "2026-11-05T08:00:00-07:00");
    assert!(matches!(by_the_second.only().state, DefectState::AwaitingReview { .. }));
}

#[test]
fn found_again_after_the_certificate_needs_another_certificate() {
    let recorded = horn()
        .certified(2, 1, "horn", Verdict::Repaired, "2026-11-03T07:00:00-07:00")
        .found(3, "horn", ROAD, DINAH, "2026-11-03T07:05:00-07:00")
        .reviewed(4, &[2], DINAH, "2026-11-03T07:10:00-07:00");
    assert_eq!(recorded.only().state, DefectState::Open);
    assert_eq!(recorded.only().certificates.len(), 1, "the first one stays to be seen");
    let lock = &recorded.locks()[0];
    assert_eq!((lock.since, lock.certified), (at("2026-11-03T06:35:00-07:00"), None));
    let again = recorded.certified(5, 3, "horn", Verdict::Repaired, "2026-11-03T07:40:00-07:00").reviewed(
        6,
        &[5],
        DINAH,
        "2026-11-03T07:50:00-07:00",
    );
    assert_eq!(again.locks()[0].ended, Some(at("2026-11-03T07:50:00-07:00")));
}

fn closed() -> Recorded {
    horn().certified(2, 1, "horn", Verdict::Repaired, "2026-11-03T07:00:00-07:00").reviewed(
        3,
        &[2],
        DINAH,
        "2026-11-03T07:10:00-07:00",
    )
}

#[test]
fn an_ok_after_it_was_closed_is_no_answer_to_it() {
    let during = closed().ok(4, "horn", DINAH, "2026-11-03T07:10:00-07:00");
    assert_eq!(during.only().answers.len(), 2);
    let after = closed().ok(4, "horn", DINAH, "2026-11-03T07:10:01-07:00");
    assert_eq!(after.only().answers.len(), 1);
}

#[test]
fn found_again_after_it_was_closed_is_a_new_defect_and_a_repeat_for_thirty_days() {
    let soon = closed().found(4, "horn", ROAD, DINAH, "2026-12-03T07:00:00-07:00").all().defects;
    let repeat = soon[1].repeats.as_ref().unwrap();
    assert_eq!((repeat.of.entry, repeat.certified.by), (id(1), WREN));
    let later = closed().found(4, "horn", ROAD, DINAH, "2026-12-03T07:00:01-07:00").all().defects;
    assert_eq!((later.len(), &later[1].repeats), (2, &None));
}

#[test]
fn a_certificate_of_the_old_defect_does_not_certify_the_new_one() {
    let recorded = closed().found(4, "horn", ROAD, DINAH, "2026-11-09T06:30:00-07:00").certified(
        5,
        1,
        "horn",
        Verdict::NotNeeded,
        "2026-11-09T09:00:00-07:00",
    );
    let all = recorded.all().defects;
    assert_eq!(all[1].state, DefectState::Open);
    assert_eq!(all[0].certificates.len(), 2);
}

#[test]
fn two_certificates_and_a_review_of_either() {
    let recorded = horn()
        .certified(2, 1, "horn", Verdict::Repaired, "2026-11-03T07:00:00-07:00")
        .certified(3, 1, "horn", Verdict::NotNeeded, "2026-11-03T07:02:00-07:00")
        .reviewed(4, &[3], DINAH, "2026-11-03T07:10:00-07:00");
    let DefectState::Closed { certified, .. } = recorded.only().state else { panic!() };
    assert_eq!(certified.certificate, id(3));
}

#[test]
fn a_slow_clock_does_not_certify_before_it_was_found_or_review_before_it_was_certified() {
    let recorded = horn().certified(2, 1, "horn", Verdict::Repaired, "2026-11-03T05:00:00-07:00").reviewed(
        3,
        &[2],
        DINAH,
        "2026-11-03T04:00:00-07:00",
    );
    let DefectState::Closed { certified, reviewed } = recorded.only().state else { panic!() };
    let found = at("2026-11-03T06:35:00-07:00");
    assert_eq!((certified.at, reviewed.unwrap().at), (found, found));
}

#[test]
fn a_certificate_whose_finding_has_not_come_waits_for_it() {
    let early = Recorded::default().certified(2, 1, "horn", Verdict::Repaired, "2026-11-03T07:00:00-07:00");
    assert_eq!(early.all(), Defects { defects: vec![], waiting: vec![id(2)] });
    let late = early.found(1, "horn", ROAD, CARMELO, "2026-11-03T06:35:00-07:00");
    assert!(late.all().waiting.is_empty());
    assert!(matches!(late.only().state, DefectState::AwaitingReview { .. }));
}

#[test]
fn a_note_locks_nothing_and_its_certificate_ends_it() {
    let note = Recorded::default().found(1, "labels", &[], CARMELO, "2026-11-03T06:35:00-07:00");
    assert_eq!(note.locks(), []);
    assert_eq!(note.all().not_certified().count(), 0);
    let done = note.certified(2, 1, "labels", Verdict::Repaired, "2026-11-03T07:00:00-07:00");
    assert!(matches!(done.only().state, DefectState::Closed { reviewed: None, .. }));
}

#[test]
fn a_note_that_somebody_else_found_worse_needs_the_review_too() {
    let recorded = Recorded::default()
        .found(1, "mirrors", &[], CARMELO, "2026-11-03T06:35:00-07:00")
        .certified(2, 1, "mirrors", Verdict::NotNeeded, "2026-11-03T07:00:00-07:00")
        .found(3, "mirrors", ROAD, DINAH, "2026-11-03T06:40:00-07:00");
    assert!(matches!(recorded.only().state, DefectState::AwaitingReview { .. }));
    assert_eq!(recorded.locks()[0].since, at("2026-11-03T06:40:00-07:00"));
}

#[test]
fn two_wheels_are_two_defects() {
    let mut recorded = Recorded::default()
        .found(1, "wheels", ROAD, CARMELO, "2026-11-03T06:35:00-07:00")
        .found(1, "wheels", ROAD, CARMELO, "2026-11-03T06:35:00-07:00");
    recorded.findings[0].place = Some("left front".into());
    recorded.findings[1].place = Some("right front".into());
    assert_eq!(recorded.all().defects.len(), 2);
}

#[test]
fn starting_goes_against_air_driving_against_road_and_neither_against_an_outlet() {
    let when = "2026-11-03T06:35:00-07:00";
    let against = |part: LockPart| {
        let locks = Recorded::default().found(1, "hose:12", &[part], CARMELO, when).locks();
        let uses = [
            used(2, UseKind::Start, "2026-11-03T07:00:00-07:00"),
            used(3, UseKind::Drive, "2026-11-03T07:00:00-07:00"),
            used(4, UseKind::Pour, "2026-11-03T07:00:00-07:00"),
        ];
        uses_against(&locks, &uses).into_iter().map(|against| against.used.what).collect::<Vec<_>>()
    };
    assert_eq!(against(LockPart::Air), [UseKind::Start]);
    assert_eq!(against(LockPart::Road), [UseKind::Drive]);
    assert_eq!(against(LockPart::Outlet("small hose".into())), []);
}

#[test]
fn a_use_at_the_lock_outs_own_moment_is_not_after_it() {
    let locks = horn().locks();
    assert_eq!(uses_against(&locks, &[used(2, UseKind::Drive, "2026-11-03T06:35:00-07:00")]), []);
    assert_eq!(uses_against(&locks, &[used(2, UseKind::Drive, "2026-11-03T06:35:01-07:00")]).len(), 1);
}
