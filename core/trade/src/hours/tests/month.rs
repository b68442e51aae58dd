//! A month of the invented fleet Tern Hollow Water: invented data, outcomes worked by rule.

use super::*;

#[test]
fn a_lost_point_is_set_aside_and_the_next_day_settles_it() {
    let wednesday = at("2026-10-21T16:35:00-06:00");
    let meter =
        Meter::default().read(1, at("2026-10-20T16:40:00-06:00"), "738.4").read(2, wednesday, "7421.0");
    let ledger = meter.judge();
    assert_eq!(ledger.ceiling(wednesday), Some(h("762.4")));
    assert_eq!(row(&ledger, 2).ceiling, Some(h("762.4")));
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::AboveCeiling));
    assert_eq!(asked(&ledger), [(QuestionWhy::AboveCeiling, vec![1], vec![2])]);
    assert_eq!(ledger.open_questions()[0].hints, [Hint::TypedWrong { reads: h("742.1") }]);
    let due = ledger.for_due().unwrap();
    assert_eq!((due.hours, due.higher_of_disputed, due.across_unanswered_jump), (h("738.4"), false, false));

    let thursday = meter.clone().read(3, at("2026-10-22T16:30:00-06:00"), "746.0").judge();
    assert_eq!(verdict(&thursday, 3), Verdict::Accepted);
    assert_eq!(verdict(&thursday, 2), Verdict::Aside(AsideWhy::AboveCeiling));
    assert_eq!(asked(&thursday), []);

    let corrected = Meter::default()
        .read(1, at("2026-10-20T16:40:00-06:00"), "738.4")
        .read(2, wednesday, "742.1")
        .read(3, at("2026-10-22T16:30:00-06:00"), "746.0")
        .judge();
    assert!(corrected.rows().iter().all(|r| r.verdict == Verdict::Accepted));
}

#[test]
fn a_reading_that_arrives_late_counts_from_its_own_time() {
    let known = Meter::default().read(1, at("2026-10-21T16:20:00-06:00"), "47.2");
    assert_eq!(due(&known.judge()), h("47.2"));
    assert_eq!(due(&known.read(2, at("2026-10-22T16:10:00-06:00"), "50.4").judge()), h("50.4"));
}

#[test]
fn a_night_of_three_hours_is_accepted() {
    let ledger = Meter::default()
        .read(1, at("2026-10-22T23:10:00-06:00"), "1918.0")
        .read(2, at("2026-10-23T02:25:00-06:00"), "1921.2")
        .judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    assert_eq!(asked(&ledger), []);
}

/// Tuesday's figure and what came after it, with three weeks of working days before: 4.0 to 6.0 h each.
fn late_october(history: bool) -> Meter {
    let mut meter = Meter::default();
    if history {
        let mut figure = h("1211.0");
        for (back, rise) in (1..=14).zip([40, 50, 60].into_iter().cycle()) {
            figure = figure - Tenths(rise);
            meter = meter.read(
                100 - back,
                at("2026-10-27T16:15:00-06:00") - TimeDelta::days(back as i64),
                &figure.to_string(),
            );
        }
    }
    meter
        .read(101, at("2026-10-27T16:15:00-06:00"), "1211.0")
        .read(102, at("2026-10-28T16:15:00-06:00"), "1226.2")
        .read(103, at("2026-10-29T16:20:00-06:00"), "1221.5")
}

#[test]
fn two_figures_that_cannot_both_be_are_flagged_until_a_person_picks() {
    let thursday = late_october(true);
    let ledger = thursday.judge();
    assert_eq!(verdict(&ledger, 102), Verdict::AcceptedUnlike);
    assert_eq!(verdict(&ledger, 103), Verdict::Aside(AsideWhy::Backwards));
    let of_thursday = ledger.for_due().unwrap();
    assert_eq!((of_thursday.hours, of_thursday.higher_of_disputed), (h("1226.2"), true));

    let friday = thursday.read(104, at("2026-10-30T16:20:00-06:00"), "1227.9");
    let ledger = friday.judge();
    assert_eq!(verdict(&ledger, 104), Verdict::Accepted);
    assert!(row(&ledger, 102).in_question && row(&ledger, 103).in_question);
    assert!(!row(&ledger, 104).in_question);
    assert_eq!(
        asked(&ledger),
        [(QuestionWhy::UnlikeThisUnit, vec![], vec![102]), (QuestionWhy::Tie, vec![102], vec![103])]
    );
    // B is due at 1,511.3.
    assert_eq!(h("1511.3") - due(&ledger), h("283.4"));
    assert!(!ledger.for_due().unwrap().higher_of_disputed);

    for (n, settlement) in
        [(102, Settlement::Stands), (102, Settlement::DoesNotCount), (103, Settlement::Stands)]
    {
        let picked = friday.clone().decide(n, settlement).judge();
        assert_eq!(asked(&picked), [], "{n} {settlement:?}");
        assert_eq!(due(&picked), h("1227.9"));
    }
    let without_thursday = friday.decide(103, Settlement::DoesNotCount).judge();
    assert_eq!(asked(&without_thursday), [(QuestionWhy::UnlikeThisUnit, vec![], vec![102])]);
}

#[test]
fn with_too_few_days_of_use_only_the_step_back_is_asked_about() {
    let ledger = late_october(false).read(104, at("2026-10-30T16:20:00-06:00"), "1227.9").judge();
    assert_eq!(verdict(&ledger, 102), Verdict::Accepted);
    assert_eq!(asked(&ledger), [(QuestionWhy::Tie, vec![102], vec![103])]);
    assert!(row(&ledger, 102).in_question && row(&ledger, 103).in_question);
}

#[test]
fn the_night_the_clocks_go_back_is_real_time() {
    let ledger = Meter::default()
        .read(1, at("2026-11-01T00:50:00-06:00"), "1951.0")
        .read(2, at("2026-11-01T01:40:00-07:00"), "1952.8")
        .judge();
    // 1 h 50 is 18.33 tenths: at most 1,952.9. The clock's face says 50 minutes.
    assert_eq!(row(&ledger, 2).ceiling, Some(h("1952.9")));
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    assert_eq!(asked(&ledger), []);
}

#[test]
fn three_meters_make_one_count() {
    let ledger = Meter::default()
        .read(1, at("2026-03-02T16:00:00-07:00"), "2210.0")
        .exchange(2, at("2026-03-03T09:00:00-07:00"), Some("2214.6"), "130.5")
        .read(3, at("2026-06-01T16:00:00-06:00"), "700.0")
        .exchange(4, at("2026-09-01T09:00:00-06:00"), Some("901.2"), "0.0")
        .read(5, at("2026-10-01T16:00:00-06:00"), "47.3")
        .judge();
    assert_eq!(row(&ledger, 3).total, h("2784.1"));
    assert_eq!(due(&ledger), h("3032.6"));
    assert_eq!(ledger.offset(), h("2985.3"));
    assert_eq!(asked(&ledger), []);
    assert!(ledger.splices().iter().all(|s| s.end_known));
}
