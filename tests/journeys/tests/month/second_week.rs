//! Events 10 and 11: Tuesday 27 October to Sunday 1 November. Invented data, outcomes worked by rule.

use sumpbook_daybook::ledger::NewEntry;
use sumpbook_journeys::{Lived, at, due_row};
use sumpbook_trade::record::{Decision, Source, Verdict};
use sumpbook_trade::{Entry, EntryId, Tenths};
use uuid::Uuid;

use crate::month;

/// Figures of a unit that wait for a person: ascending, each once.
fn flagged(lived: &Lived, of: &str, known: &str) -> Vec<i64> {
    let evening = lived.evening(of, known);
    let of_unit = evening.to_settle.rows.iter().filter(|row| row.unit == "TH-02");
    let mut figures: Vec<i64> = of_unit.flat_map(|row| &row.figures).map(|row| row.figure.0).collect();
    figures.sort_unstable();
    figures.dedup();
    figures
}

#[test]
fn event_10_wednesday_is_accepted_and_unlike_this_unit() {
    let lived = month();
    let five = "2026-10-28T17:00:00-06:00";
    let state = lived.unit("TH-02", five);
    assert_eq!(state.hours.due, Some(Tenths(12_262)), "accepted: 15.2 h in 24 h can be");
    let why: Vec<&str> = state.hours.questions.iter().map(|question| question.why.as_str()).collect();
    assert_eq!(why, ["unlike-this-unit"]);
    assert_eq!(Tenths(12_262) - Tenths(12_110), Tenths(152));
}

#[test]
fn event_10_thursday_runs_backwards_and_is_set_aside() {
    let lived = month();
    let state = lived.unit("TH-02", "2026-10-29T17:00:00-06:00");
    let set_aside = state.hours.struck.iter().find(|row| row.figure == Tenths(12_215)).unwrap();
    assert!(!set_aside.counts);
    // One figure on each side: the readings alone cannot say which of the two days is wrong.
    let why: Vec<&str> = state.hours.questions.iter().map(|question| question.why.as_str()).collect();
    assert_eq!(why, ["unlike-this-unit", "tie"]);
    assert_eq!(state.hours.due, Some(Tenths(12_262)), "the higher one, until it is settled");
    assert!(state.hours.higher_of_disputed);
}

#[test]
fn event_10_friday_is_accepted_and_both_days_wait_until_a_person_picks() {
    let lived = month();
    let five = "2026-10-30T17:00:00-06:00";
    assert_eq!(flagged(&lived, "2026-10-30", five), [12_215, 12_262]);
    let row = lived.due("TH-02", "oil-and-filters", five).unwrap();
    assert_eq!((row.hours, row.hours_left.as_deref()), (Some(Tenths(12_279)), Some("283.4")));
    // Nobody decides in this month: ten days later both still wait.
    assert_eq!(flagged(&lived, "2026-11-09", "2026-11-09T17:00:00-07:00"), [12_215, 12_262]);
}

#[test]
fn event_10_the_hours_left_are_283_4_either_way() {
    let lived = month();
    let five = "2026-10-30T17:00:00-06:00";
    for (wrong, number) in [("wednesday", 1), ("thursday", 2)] {
        let mut then = lived.known(five);
        let entry = Entry {
            id: EntryId(Uuid::from_u128(number)),
            unit: Some(lived.truck("TH-02")),
            set: None,
            at: at(five),
            clock_off_ms: Some(0),
            person: Some(lived.world.shop.person("Ilse Marrow").unwrap()),
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Shop,
            fact: Decision {
                targets: vec![lived.world.named(wrong).unwrap()],
                verdict: Verdict::DoNotUse,
                why: "the other one is right".to_owned(),
            }
            .into(),
        };
        then.record(&[NewEntry::about_its_unit(entry)], at(five).unix_ms()).unwrap();
        let row = due_row(&then, "TH-02", "oil-and-filters", five).unwrap();
        assert_eq!(row.hours_left.as_deref(), Some("283.4"), "without {wrong}");
        assert_eq!(row.hours, Some(Tenths(12_279)));
    }
}

#[test]
fn event_11_the_night_the_clock_goes_back_has_one_hour_fifty() {
    let lived = month();
    let (start, stop) = (at("2026-11-01T00:50:00-06:00"), at("2026-11-01T01:40:00-07:00"));
    assert_eq!(stop.unix_ms() - start.unix_ms(), 110 * 60_000, "the clock's face says 50 minutes");
    let sunday = "2026-11-01T17:00:00-07:00";
    let state = lived.unit("TH-07", sunday);
    assert_eq!(state.hours.due, Some(Tenths(19_528)));
    assert_eq!((state.hours.questions.len(), state.hours.struck.len()), (0, 0), "no flag");
    assert_eq!(Tenths(19_528) - Tenths(19_510), Tenths(18));
    let evening = lived.evening("2026-11-01", sunday);
    assert!(evening.to_settle.rows.iter().all(|row| row.unit != "TH-07"));
    assert!(evening.without.rows.iter().all(|row| row.unit != "TH-07"), "the walk of 23:50 covers it");
}
