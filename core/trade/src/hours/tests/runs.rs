//! One mistyped reading must not freeze a unit: runs, ties, and what never goes without a person.

use super::*;

/// Friday 1,221.0; Monday 1,262.2 typed for 1,226.2 and possible after a weekend; Tuesday the true one.
fn swapped() -> Meter {
    Meter::default().read(1, hour(0), "1221.0").read(2, hour(72), "1262.2").read(3, hour(96), "1231.0")
}

#[test]
fn one_against_one_is_a_tie_and_the_higher_counts_meanwhile() {
    let ledger = swapped().judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::Tie, vec![2], vec![3])]);
    assert_eq!(ledger.open_questions()[0].never_alone, None);
    assert!(
        ledger.open_questions()[0]
            .hints
            .contains(&Hint::EarlierTypedWrong { entry: id(2), reads: h("1226.2") })
    );
    let hours = ledger.for_due().unwrap();
    assert_eq!((hours.hours, hours.higher_of_disputed), (h("1262.2"), true));
}

#[test]
fn two_that_agree_outvote_one_and_the_outvote_is_shown() {
    let ledger = swapped().read(4, hour(120), "1236.0").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::OutvotedByLater);
    assert_eq!((verdict(&ledger, 3), verdict(&ledger, 4)), (Verdict::Accepted, Verdict::Accepted));
    assert_eq!(asked(&ledger), [(QuestionWhy::OutvotedForNod, vec![3, 4], vec![2])]);
    assert_eq!(due(&ledger), h("1236.0"));
    assert!(!ledger.for_due().unwrap().higher_of_disputed);
}

#[test]
fn a_nod_closes_an_outvote() {
    let voted = swapped().read(4, hour(120), "1236.0");
    assert_eq!(asked(&voted.clone().decide(2, Settlement::DoesNotCount).judge()), []);
    let both = voted
        .decide(3, Settlement::Stands)
        .decide(4, Settlement::Stands)
        .read(5, hour(144), "1240.0")
        .judge();
    assert_eq!(asked(&both), []);
    assert_eq!(verdict(&both, 2), Verdict::Aside(AsideWhy::Displaced));
}

#[test]
fn a_stray_inside_a_run_is_passed_over() {
    let ledger = swapped().read(4, hour(100), "123.1").read(5, hour(120), "1236.0").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::OutvotedByLater);
    assert_eq!(verdict(&ledger, 4), Verdict::Aside(AsideWhy::Backwards));
    assert_eq!(due(&ledger), h("1236.0"));
    assert_eq!(asked(&ledger), [(QuestionWhy::OutvotedForNod, vec![3, 5], vec![2])]);
}

#[test]
fn a_stray_before_the_run_does_not_hold_it_up() {
    let ledger = Meter::default()
        .read(1, hour(0), "1221.0")
        .read(2, hour(72), "1262.2")
        .read(3, hour(90), "1250.0")
        .read(4, hour(96), "1231.0")
        .read(5, hour(120), "1236.0")
        .judge();
    assert_eq!(verdict(&ledger, 2), Verdict::OutvotedByLater);
    assert_eq!(verdict(&ledger, 3), Verdict::Aside(AsideWhy::Backwards));
    assert_eq!(due(&ledger), h("1236.0"));
}

#[test]
fn a_good_reading_between_ends_a_run() {
    // 1,263.0 follows the disputed figure, so 1,231.0 and 1,236.0 are no run; the later one disputes two.
    let ledger = swapped().read(4, hour(110), "1263.0").read(5, hour(120), "1236.0").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    assert_eq!(verdict(&ledger, 5), Verdict::Aside(AsideWhy::Backwards));
    let question = ledger.open_questions().into_iter().find(|q| q.disputing == [id(5)]).unwrap();
    assert_eq!(question.never_alone, Some(NeverAlone::DisputesSeveral));
    assert_eq!(question.standing, [id(2), id(4)]);
}

#[test]
fn a_tie_ends_when_what_follows_can_follow_only_one_side() {
    // From 1,262.2 the ceiling is 1,310.2, from 1,231.0 a day later 1,255.0.
    let ledger = swapped().read(4, hour(120), "1280.0").judge();
    assert_eq!(asked(&ledger), []);
    assert_eq!(verdict(&ledger, 3), Verdict::Aside(AsideWhy::Backwards));
    assert!(!row(&ledger, 2).in_question);
}

#[test]
fn a_tie_stays_when_what_follows_can_follow_both() {
    let ledger = swapped().read(4, hour(200), "1270.0").judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::Tie, vec![2], vec![3])]);
    assert_eq!(due(&ledger), h("1270.0"));
}

#[test]
fn a_tenth_back_takes_no_part_in_a_run() {
    // 1,230.9 is 0.1 h below 1,231.0: it does not make two.
    let ledger = swapped().read(4, hour(97), "1230.9").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    // Nor do two of them make a run of their own.
    let ledger = swapped().read(4, hour(97), "1230.9").read(5, hour(98), "1230.9").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    // And 1,220.9 is 0.1 h below the reading before the disputed one: it begins none.
    let start = Meter::default()
        .read(1, hour(0), "1221.0")
        .read(2, hour(72), "1262.2")
        .read(3, hour(96), "1220.9")
        .read(4, hour(120), "1236.0")
        .judge();
    assert_eq!(verdict(&start, 2), Verdict::Accepted);
    // A slip below the disputed figure itself agrees with it and is no vote against it.
    let slip = swapped().read(4, hour(97), "1262.1").judge();
    assert_eq!(verdict(&slip, 4), Verdict::Aside(AsideWhy::SlippedBack));
    assert_eq!(asked(&slip), [(QuestionWhy::Tie, vec![2], vec![3])]);
}

#[test]
fn a_step_inside_a_run_must_be_possible() {
    // 1,231.0 to 1,256.0 in 24 h is one too many.
    let ledger = swapped().read(4, hour(120), "1256.0").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    assert_eq!(verdict(&ledger, 4), Verdict::Aside(AsideWhy::Backwards));
}

fn why_never(ledger: &HoursLedger) -> Option<NeverAlone> {
    ledger.open_questions().into_iter().find_map(|q| q.never_alone)
}

#[test]
fn a_run_below_every_accepted_figure_needs_a_person() {
    let ledger = Meter::default()
        .read(1, hour(0), "12047.0")
        .read(2, hour(24), "1208.0")
        .read(3, hour(48), "1213.0")
        .read(4, hour(72), "1217.0")
        .judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::Backwards, vec![1], vec![2, 3, 4])]);
    assert_eq!(why_never(&ledger), Some(NeverAlone::BelowEvery));
    assert_eq!(due(&ledger), h("12047.0"));
    let two = Meter::default()
        .read(1, hour(0), "12047.0")
        .read(2, hour(24), "12051.0")
        .read(3, hour(48), "1213.0")
        .judge();
    assert_eq!(why_never(&two), Some(NeverAlone::BelowEvery));
}

#[test]
fn a_run_that_disputes_two_accepted_readings_needs_a_person() {
    let ledger = Meter::default()
        .read(1, hour(0), "1221.0")
        .read(2, hour(72), "1262.2")
        .read(3, hour(73), "1262.4")
        .read(4, hour(96), "1231.0")
        .read(5, hour(120), "1236.0")
        .read(6, hour(144), "1240.0")
        .judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::Backwards, vec![2, 3], vec![4, 5, 6])]);
    assert_eq!(why_never(&ledger), Some(NeverAlone::DisputesSeveral));
    assert_eq!(due(&ledger), h("1262.4"));
}

#[test]
fn a_run_whose_neighbour_is_too_old_needs_a_person() {
    let after = |days: i64, minutes: i64| {
        let first = hour(24 * days) + TimeDelta::minutes(minutes);
        Meter::default()
            .read(1, hour(0), "1221.0")
            .read(2, hour(240), "1290.0")
            .read(3, first, "1280.0")
            .read(4, first + TimeDelta::days(1), "1284.0")
            .judge()
    };
    assert_eq!(verdict(&after(14, 0), 2), Verdict::OutvotedByLater);
    let old = after(14, 1);
    assert_eq!(verdict(&old, 2), Verdict::Accepted);
    assert_eq!(why_never(&old), Some(NeverAlone::NeighbourTooOld));
}

#[test]
fn a_run_whose_first_step_is_above_the_ceiling_needs_a_person() {
    let ledger = Meter::default()
        .read(1, hour(0), "1221.0")
        .read(2, hour(24), "1400.0")
        .read(3, hour(26), "1402.0")
        .read(4, hour(28), "1404.0")
        .judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::AboveCeiling, vec![1], vec![2, 3, 4])]);
    assert_eq!(why_never(&ledger), Some(NeverAlone::FirstStepAboveCeiling));
    assert_eq!(due(&ledger), h("1221.0"));
}
