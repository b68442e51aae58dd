//! Exchanges of meters, and a meter that goes round.

use super::*;

#[test]
fn a_reading_of_the_very_moment_is_the_old_meters() {
    let ledger = Meter::default()
        .read(1, hour(0), "2210.0")
        .read(2, hour(24), "2214.6")
        .exchange(3, hour(24), Some("2214.6"), "0.0")
        .read(4, hour(32), "4.0")
        .judge();
    assert_eq!(row(&ledger, 2).total, h("2214.6"));
    assert_eq!(due(&ledger), h("2218.6"));
    assert_eq!(asked(&ledger), []);
    assert_eq!(ledger.ceiling(hour(24)), Some(h("2214.6")));
    assert_eq!(ledger.ceiling(hour(25)), Some(h("1.0")));
}

#[test]
fn the_figures_of_an_exchange_are_readings_too() {
    let ledger = Meter::default().exchange(1, hour(0), Some("2214.6"), "130.5").judge();
    assert_eq!(due(&ledger), h("2214.6"));
    assert_eq!(ledger.last_accepted().unwrap().part, Part::NewStart);
    let above =
        Meter::default().exchange(1, hour(0), Some("2214.6"), "130.5").read(2, hour(8), "140.0").judge();
    assert_eq!(verdict(&above, 2), Verdict::Aside(AsideWhy::AboveCeiling));
    assert_eq!(row(&above, 2).ceiling, Some(h("138.5")));
}

#[test]
fn an_end_nobody_could_read_is_the_last_accepted_figure_and_marked() {
    let ledger = Meter::default()
        .read(1, hour(0), "812.0")
        .exchange(2, hour(480), None, "0.0")
        .read(3, hour(600), "25.5")
        .judge();
    assert_eq!(due(&ledger), h("837.5"));
    assert!(!ledger.splices()[0].end_known);
}

#[test]
fn an_end_that_does_not_fit_is_asked_about_and_shifts_nothing() {
    for end in ["2114.6", "2314.6"] {
        let meter = Meter::default().read(1, hour(0), "2210.0").exchange(2, hour(8), Some(end), "0.0").read(
            3,
            hour(16),
            "4.0",
        );
        let ledger = meter.judge();
        assert_eq!(due(&ledger), h("2214.0"), "{end}");
        assert_eq!(ledger.open_questions()[0].disputing, [id(2)]);
        assert!(!ledger.splices()[0].end_known);
        let stands = meter.decide(2, Settlement::Stands).judge();
        assert_eq!(due(&stands), h(end) + h("4.0"));
        assert_eq!(asked(&stands), []);
    }
}

#[test]
fn the_end_of_a_meter_can_complete_a_run() {
    let ledger = Meter::default()
        .read(1, hour(0), "1221.0")
        .read(2, hour(72), "1262.2")
        .read(3, hour(96), "1231.0")
        .exchange(4, hour(120), Some("1236.0"), "0.0")
        .judge();
    assert_eq!(verdict(&ledger, 2), Verdict::OutvotedByLater);
    assert_eq!(due(&ledger), h("1236.0"));
}

#[test]
fn one_exchange_written_twice_is_one_exchange() {
    let ledger = Meter::default()
        .read(1, hour(0), "2210.0")
        .exchange(2, hour(8), Some("2214.6"), "0.0")
        .exchange(3, hour(9), Some("2214.6"), "0.0")
        .read(4, hour(24), "3.0")
        .judge();
    assert_eq!(due(&ledger), h("2217.6"));
    assert_eq!(asked(&ledger), [(QuestionWhy::AboveCeiling, vec![2], vec![3])]);
    let dropped = |n| {
        Meter::default()
            .read(1, hour(0), "2210.0")
            .exchange(2, hour(8), Some("2214.6"), "0.0")
            .decide(n, Settlement::DoesNotCount)
            .judge()
    };
    assert_eq!(dropped(2).rows().len(), 1);
}

#[test]
fn a_run_does_not_reach_across_an_exchange() {
    let ledger = Meter::default()
        .read(1, hour(0), "1221.0")
        .exchange(2, hour(24), Some("1225.0"), "130.5")
        .read(3, hour(48), "128.0")
        .read(4, hour(72), "129.0")
        .judge();
    assert_eq!(due(&ledger), h("1225.0"));
    assert_eq!(ledger.open_questions()[0].never_alone, Some(NeverAlone::BelowEvery));
}

#[test]
fn a_meter_goes_round_when_a_person_says_so() {
    let low = Meter::default().read(1, hour(0), "9998.7").read(2, hour(24), "3.1");
    let ledger = low.judge();
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::Backwards));
    assert!(ledger.open_questions()[0].hints.contains(&Hint::WentRound { end: h("10000.0") }));
    let round = low.turn(3, hour(0), "10000.0").judge();
    assert_eq!(due(&round), h("10003.1"));
    assert_eq!(asked(&round), []);
    assert_eq!(round.last_accepted().unwrap().figure, h("3.1"));
}

#[test]
fn one_turn_written_twice_is_one_turn() {
    let ledger = Meter::default()
        .read(1, hour(0), "9998.7")
        .turn(2, hour(0), "10000.0")
        .turn(3, hour(0), "10000.0")
        .read(4, hour(24), "3.1")
        .judge();
    assert_eq!((due(&ledger), asked(&ledger)), (h("10003.1"), vec![]));
}

#[test]
fn a_small_meter_goes_round_sooner() {
    let small = Meter::default().read(1, hour(0), "6550.0").turn(2, hour(0), "6553.6");
    assert_eq!(due(&small.clone().read(3, hour(24), "1.4").judge()), h("6555.0"));
    // A turn whose place was not written as such is the next one ahead.
    let unnamed =
        Meter::default().read(1, hour(0), "6550.0").turn(2, hour(0), "6553.5").read(3, hour(24), "1.4");
    assert_eq!(due(&unnamed.judge()), h("6555.0"));
    // And the reading after a turn must still be possible.
    assert_eq!(verdict(&small.read(3, hour(24), "30.0").judge(), 3), Verdict::Aside(AsideWhy::AboveCeiling));
}

#[test]
fn a_turn_is_offered_only_when_the_rise_is_possible() {
    let ledger = Meter::default().read(1, hour(0), "9990.0").judge();
    // 10,000.0 - 9,990.0 + 14.0 = 24.0 h in 24 h; a tenth more is too much.
    assert_eq!(ledger.turns_offered(h("14.0"), hour(24)), [h("10000.0")]);
    assert_eq!(ledger.turns_offered(h("14.1"), hour(24)), []);
    assert_eq!(due(&ledger), h("9990.0"));
}

#[test]
fn runs_reach_across_a_turn() {
    let ledger = Meter::default()
        .read(1, hour(0), "9990.0")
        .read(2, hour(24), "9998.0")
        .turn(3, hour(24), "10000.0")
        .read(4, hour(72), "40.0")
        .read(5, hour(96), "8.0")
        .read(6, hour(120), "12.0")
        .judge();
    assert_eq!(verdict(&ledger, 4), Verdict::OutvotedByLater);
    assert_eq!(due(&ledger), h("10012.0"));
}
