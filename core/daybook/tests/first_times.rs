//! Each step tells how it is done for the first three times that a person does a procedure, and no longer.
//!
//! Invented data: the fleet Tern Hollow Water.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::screen::{StepsQuery, UnitQuery, steps, unit};
use sumpbook_daybook::text::Texts;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::{PersonId, TruckId};
use tern_hollow::{AMOS, BETTINA, TH_01, TH_02, Yard, at};

const NOW: &str = "2026-10-19T12:00:00-06:00";

fn hints(yard: &Yard, unit: TruckId, procedure: &str, person: Option<PersonId>) -> bool {
    let query = StepsQuery { unit, procedure: procedure.to_owned(), person };
    let table = Procedures::common_practice().unwrap();
    steps(&yard.ledger, &query, table, at(NOW)).unwrap().unwrap().hints
}

#[test]
fn three_times_of_one_person_at_one_procedure() {
    let mut yard = Yard::new();
    for hour in 7..10 {
        assert!(hints(&yard, TH_01, "start", Some(AMOS)), "before {hour}");
        for (kind, minute) in [("start-air", "00"), ("stop-air", "30")] {
            yard.phone(&format!(
                r#"{{"unit":"TH-02","person":"Amos Tillery","at":"2026-10-19T0{hour}:{minute}:00-06:00","kind":"{kind}","body":{{}}}}"#
            ));
        }
    }
    assert!(!hints(&yard, TH_01, "start", Some(AMOS)), "on whatever unit");
    assert!(!hints(&yard, TH_02, "shut-down", Some(AMOS)));
    assert!(hints(&yard, TH_01, "arrival", Some(AMOS)), "another procedure");
    assert!(hints(&yard, TH_01, "start", Some(BETTINA)), "another person");
    assert!(!hints(&yard, TH_01, "start", None), "nobody is asked for");
}

#[test]
fn steps_recorded_by_themselves_are_told_apart_by_their_procedure() {
    let mut yard = Yard::new();
    for minute in 10..13 {
        assert!(hints(&yard, TH_01, "arrival", Some(AMOS)));
        yard.phone(&format!(
            r#"{{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T07:{minute}:00-06:00","kind":"steps-done","body":{{"procedure":"arrival","steps":[{{"step":"chock","at":"2026-10-19T07:{minute}:00-06:00","not-so":false}}]}}}}"#
        ));
    }
    assert!(!hints(&yard, TH_01, "arrival", Some(AMOS)));
    assert!(hints(&yard, TH_01, "leave-site", Some(AMOS)));
}

#[test]
fn a_hint_says_something_that_its_step_does_not_say_already() {
    let table = Procedures::common_practice().unwrap();
    let mut told = 0;
    for procedure in ["arrival", "start", "use-air", "shut-down", "leave-site"] {
        for step in &table.of(procedure).unwrap().steps {
            let key = format!("step-{}.hint", step.id);
            if !Texts::english().has(&key) {
                continue;
            }
            told += 1;
            for texts in [Texts::english(), Texts::spanish()] {
                let hint = texts.get(&key, &[]);
                for other in ["ok", "stops"] {
                    assert_ne!(hint, texts.get(&format!("step-{}.{other}", step.id), &[]));
                }
                assert!(hint.len() < 170, "{key} is too long to be read at a step: {hint}");
            }
        }
    }
    assert!(told >= 35, "{told} steps tell how");
}

#[test]
fn the_unit_offers_the_airs_next_procedure_by_itself() {
    let mut yard = Yard::new();
    let shown = |yard: &Yard| {
        let query = UnitQuery { unit: TH_02, person: AMOS };
        unit(&yard.ledger, &query, &yard.standing, at(NOW)).unwrap()
    };
    assert_eq!(shown(&yard).air, "start");
    assert_eq!(shown(&yard).procedures, ["arrival", "use-air", "shut-down", "leave-site"]);
    yard.phone(
        r#"{"unit":"TH-02","person":"Amos Tillery","at":"2026-10-19T07:00:00-06:00","kind":"start-air","body":{}}"#,
    );
    assert_eq!(shown(&yard).air, "shut-down");
    assert_eq!(shown(&yard).procedures, ["arrival", "start", "use-air", "leave-site"]);
    assert_eq!(shown(&yard).day.to_string(), "2026-10-19");
}
