//! The ceiling, steps back, and what time alone lets back in.

use super::*;

#[test]
fn a_day_of_23_hours_has_a_ceiling_of_23() {
    let spring = |end: &str, figure: &str| {
        let ledger = Meter::default()
            .read(1, at("2027-03-13T16:00:00-07:00"), "100.0")
            .read(2, at(end), figure)
            .judge();
        verdict(&ledger, 2)
    };
    assert_eq!(spring("2027-03-14T16:00:00-06:00", "123.0"), Verdict::Accepted);
    assert_eq!(spring("2027-03-14T16:00:00-06:00", "123.1"), Verdict::Aside(AsideWhy::AboveCeiling));
    assert_eq!(spring("2027-03-14T16:00:00-07:00", "124.0"), Verdict::Accepted);
}

#[test]
fn a_day_of_25_hours_has_a_ceiling_of_25() {
    let autumn = |figure: &str| {
        let ledger = Meter::default()
            .read(1, at("2026-10-31T16:00:00-06:00"), "100.0")
            .read(2, at("2026-11-01T16:00:00-07:00"), figure)
            .judge();
        verdict(&ledger, 2)
    };
    assert_eq!(autumn("125.0"), Verdict::Accepted);
    assert_eq!(autumn("125.1"), Verdict::Aside(AsideWhy::AboveCeiling));
}

#[test]
fn seconds_count_toward_the_next_tenth() {
    let ledger = |figure: &str| {
        Meter::default()
            .read(1, at("2026-10-05T06:00:00-06:00"), "10.0")
            .read(2, at("2026-10-05T06:06:01-06:00"), figure)
            .judge()
    };
    assert_eq!(verdict(&ledger("10.2"), 2), Verdict::Accepted);
    assert_eq!(verdict(&ledger("10.3"), 2), Verdict::Aside(AsideWhy::AboveCeiling));
}

#[test]
fn a_tenth_back_is_set_aside_and_nobody_is_asked() {
    let ledger = Meter::default()
        .read(1, hour(0), "100.0")
        .read(2, hour(8), "99.9")
        .read(3, hour(24), "104.0")
        .judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::SlippedBack));
    assert_eq!(verdict(&ledger, 3), Verdict::Accepted);
    assert_eq!(asked(&ledger), []);
}

#[test]
fn two_tenths_back_is_asked_about_on_the_first_one() {
    let ledger = Meter::default().read(1, hour(0), "100.0").read(2, hour(8), "99.8").judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::Backwards));
    assert_eq!(ledger.open_questions().len(), 1);
}

#[test]
fn a_first_reading_has_no_ceiling_and_is_accepted() {
    let ledger = Meter::default().read(1, hour(0), "731.9").judge();
    assert_eq!(row(&ledger, 1).ceiling, None);
    assert_eq!(verdict(&ledger, 1), Verdict::Accepted);
    assert_eq!(Meter::default().judge().for_due(), None);
    assert_eq!(Meter::default().judge().ceiling(hour(0)), None);
}

#[test]
fn a_figure_below_zero_is_set_aside() {
    let ledger = Meter::default().read(1, hour(0), "-0.1").read(2, hour(8), "3.0").judge();
    assert_eq!(verdict(&ledger, 1), Verdict::Aside(AsideWhy::Backwards));
    assert_eq!(due(&ledger), h("3.0"));
}

/// A jump of 100 h nobody explained, and readings that carry on from it.
fn jump() -> Meter {
    Meter::default().read(1, hour(0), "5000.0").read(2, hour(8), "5100.0").read(3, hour(32), "5104.0")
}

#[test]
fn readings_above_the_ceiling_never_outvote_what_is_below() {
    let ledger = jump().judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::AboveCeiling, vec![1], vec![2, 3])]);
    assert_eq!(due(&ledger), h("5000.0"));
}

#[test]
fn what_time_alone_lets_back_in_leaves_the_question_open_and_the_due_list_marked() {
    // After 120 h the ceiling is 5,120.0.
    let ledger = jump().read(4, hour(120), "5116.0").judge();
    assert_eq!(verdict(&ledger, 4), Verdict::Accepted);
    assert!(row(&ledger, 4).across_unanswered_jump);
    assert_eq!(asked(&ledger), [(QuestionWhy::UnansweredJump, vec![1], vec![2, 3])]);
    let hours = ledger.for_due().unwrap();
    assert_eq!((hours.hours, hours.across_unanswered_jump), (h("5116.0"), true));

    let later = jump().read(4, hour(120), "5116.0").read(5, hour(144), "5120.0").judge();
    assert!(later.for_due().unwrap().across_unanswered_jump);

    let answered = jump().read(4, hour(120), "5116.0").decide(2, Settlement::Stands).judge();
    assert_eq!(verdict(&answered, 3), Verdict::Accepted);
    assert_eq!(asked(&answered), []);
    assert!(!answered.for_due().unwrap().across_unanswered_jump);
}

#[test]
fn a_jump_that_a_later_reading_contradicts_is_no_jump() {
    let ledger = jump().read(4, hour(120), "5010.0").judge();
    assert_eq!(asked(&ledger), []);
    assert!(!row(&ledger, 4).across_unanswered_jump);
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::AboveCeiling));
}

#[test]
fn two_figures_that_do_not_agree_are_two_questions() {
    let ledger = Meter::default()
        .read(1, hour(0), "100.0")
        .read(2, hour(8), "1040.0")
        .read(3, hour(9), "1900.0")
        .judge();
    assert_eq!(
        asked(&ledger),
        [(QuestionWhy::AboveCeiling, vec![1], vec![2]), (QuestionWhy::AboveCeiling, vec![1], vec![3])]
    );
}
