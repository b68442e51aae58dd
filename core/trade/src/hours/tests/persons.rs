//! What a person decides, and what stays open until one does.

use super::*;

fn disputed() -> Meter {
    Meter::default().read(1, hour(0), "1221.0").read(2, hour(24), "1230.0").read(3, hour(48), "1226.0")
}

#[test]
fn a_figure_that_stands_puts_higher_ones_before_it_aside() {
    let ledger = disputed().decide(3, Settlement::Stands).judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::Displaced));
    assert_eq!((due(&ledger), asked(&ledger)), (h("1226.0"), vec![]));
    assert!(row(&ledger, 3).settled);
}

#[test]
fn a_figure_that_does_not_count_is_still_shown() {
    let ledger = disputed().decide(3, Settlement::DoesNotCount).judge();
    assert_eq!(verdict(&ledger, 3), Verdict::Aside(AsideWhy::DoesNotCount));
    assert_eq!((due(&ledger), asked(&ledger)), (h("1230.0"), vec![]));
}

#[test]
fn no_run_outvotes_a_figure_a_person_let_stand_but_it_asks_again() {
    let settled = disputed().decide(2, Settlement::Stands);
    assert_eq!(asked(&settled.judge()), []);
    let ledger = settled.read(4, hour(50), "1227.0").read(5, hour(72), "1229.0").judge();
    assert_eq!(due(&ledger), h("1230.0"));
    assert_eq!(asked(&ledger), [(QuestionWhy::Backwards, vec![2], vec![4, 5])]);
    assert_eq!(ledger.open_questions()[0].never_alone, Some(NeverAlone::PersonSettled));
}

#[test]
fn what_disputed_a_settled_figure_is_answered_once_the_unit_moves_on() {
    let ledger = disputed()
        .decide(2, Settlement::Stands)
        .read(4, hour(50), "1227.0")
        .read(5, hour(72), "1235.0")
        .judge();
    assert_eq!((due(&ledger), asked(&ledger)), (h("1235.0"), vec![]));
}

#[test]
fn a_figure_that_stands_brings_in_the_one_it_agrees_with() {
    let voted = disputed().read(4, hour(50), "1227.0");
    assert_eq!(verdict(&voted.judge(), 2), Verdict::OutvotedByLater);
    let ledger = voted.decide(4, Settlement::Stands).judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::Displaced));
    assert_eq!(verdict(&ledger, 3), Verdict::Accepted);
    assert_eq!(asked(&ledger), []);
    // A lower one still makes both of the run give way, and there is nothing left to nod to.
    let lower = disputed()
        .read(4, hour(50), "1227.0")
        .read(5, hour(72), "1222.0")
        .decide(5, Settlement::Stands)
        .judge();
    assert_eq!((due(&lower), asked(&lower)), (h("1222.0"), vec![]));
    // One that agrees, but stands above the disputed figure, leaves it alone.
    let above = disputed().read(4, hour(50), "1231.0").decide(4, Settlement::Stands).judge();
    assert_eq!(verdict(&above, 2), Verdict::Accepted);
    assert_eq!(verdict(&above, 3), Verdict::Aside(AsideWhy::Backwards));
}

#[test]
fn a_figure_above_the_ceiling_can_stand() {
    let ledger = Meter::default().read(1, hour(0), "100.0").read(2, hour(1), "200.0");
    assert_eq!(due(&ledger.decide(2, Settlement::Stands).judge()), h("200.0"));
}

#[test]
fn two_that_stand_and_contradict_are_asked_about_and_the_higher_counts() {
    let ledger = disputed().decide(2, Settlement::Stands).decide(3, Settlement::Stands).judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::BothStand, vec![3], vec![2])]);
    let hours = ledger.for_due().unwrap();
    assert_eq!((hours.hours, hours.higher_of_disputed), (h("1230.0"), true));
}

#[test]
fn brought_in_rows_are_judged_in_the_same_order_of_time() {
    let mut meter = disputed();
    let plain = meter.judge();
    meter.readings[0].source_brought_in = true;
    let ledger = meter.judge();
    assert!(row(&ledger, 1).brought_in);
    assert_eq!(asked(&ledger), asked(&plain));
    // A paper page of Tuesday evening typed on Friday dislodges what it makes impossible.
    meter = Meter::default().read(1, hour(0), "100.0").read(3, hour(48), "140.0").read(2, hour(40), "105.0");
    assert_eq!(verdict(&meter.judge(), 3), Verdict::Aside(AsideWhy::AboveCeiling));
}

#[test]
fn a_long_line_of_disputed_readings_is_named_by_its_newest() {
    let mut meter = Meter::default();
    for day in 0..30 {
        meter = meter.read(day as u128 + 1, hour(day * 24), &format!("{}.0", 1000 + day * 5));
    }
    let ledger = meter.read(99, hour(720), "1000.5").judge();
    let question = &ledger.open_questions()[0];
    assert_eq!(question.standing, (23..=30).map(id).collect::<Vec<_>>());
    assert_eq!(question.never_alone, Some(NeverAlone::DisputesSeveral));
}

#[test]
fn looking_up_by_time() {
    let ledger = disputed().judge();
    assert_eq!(ledger.accepted_at_or_before(hour(-1)), None);
    assert_eq!(ledger.accepted_at_or_before(hour(24)).unwrap().entry, id(2));
    assert_eq!(ledger.accepted_at_or_before(hour(23)).unwrap().entry, id(1));
    assert_eq!(ledger.last_accepted().unwrap().entry, id(2));
    assert_eq!(ledger.accepted().count(), 2);
}
