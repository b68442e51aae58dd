//! What a record finds though nobody answered a line of a walk: what oil looks like, where it stood, a stop, a step.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::screen::*;
use sumpbook_daybook::text::{Texts, item_key, word_key};
use sumpbook_trade::defect::Said;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::record::Glass;
use sumpbook_trade::{OilFamily, TruckId};
use tern_hollow::{AMOS, TH_01, TH_02, Yard, at, signing, walked};

/// Every line of a defect of a unit, in order: what, with which word, and what it locks; a note has nothing after it.
fn told(yard: &Yard, unit: TruckId) -> Vec<String> {
    let state = yard.ledger.unit_state(unit).unwrap();
    let mut lines = Vec::new();
    for defect in &state.defects {
        let place = defect.place.as_deref().map(|place| format!(" {place}")).unwrap_or_default();
        for answer in &defect.answers {
            let Said::Defect { parts, words } = &answer.said else { continue };
            let parts: Vec<String> = parts.iter().cloned().map(String::from).collect();
            lines.push(format!("{}{place}: {words} {}", defect.item, parts.join("+")).trim_end().to_owned());
        }
    }
    lines
}

fn air_state(yard: &Yard, unit: TruckId) -> LockState {
    let query = UnitQuery { unit, person: AMOS };
    sumpbook_daybook::screen::unit(&yard.ledger, &query, &yard.standing, at("2026-10-20T18:00:00-06:00"))
        .unwrap()
        .road_air
        .air
        .state
}

/// Amos records on TH-01, on 20 October at that time.
fn amos(yard: &mut Yard, when: &str, kind: &str, body: &str) -> sumpbook_trade::EntryId {
    amos_noting(yard, when, kind, body, "")
}

fn amos_noting(yard: &mut Yard, when: &str, kind: &str, body: &str, more: &str) -> sumpbook_trade::EntryId {
    amos_on(yard, ("TH-01", "2026-10-20", when), kind, body, more)
}

fn amos_on(
    yard: &mut Yard,
    (unit, day, when): (&str, &str, &str),
    kind: &str,
    body: &str,
    more: &str,
) -> sumpbook_trade::EntryId {
    yard.phone(&format!(
        r#"{{"unit":"{unit}","person":"Amos Tillery","at":"{day}T{when}:00-06:00"{more},"kind":"{kind}","body":{body}}}"#
    ))
}

const STOPPED: &str = r#"{"what":"warning","as-shown":"HIGH TEMP","stopped-by-itself":true}"#;

#[test]
fn oil_that_is_looked_at_alone_is_told_as_on_the_walk() {
    let after = |look: &str| {
        let mut yard = walked();
        amos(&mut yard, "07:05", "oil-condition", &format!(r#"{{"look":"{look}"}}"#));
        (told(&yard, TH_01), air_state(&yard, TH_01), yard.ledger.unit_state(TH_01).unwrap().called.is_some())
    };
    assert_eq!(after("milky"), (vec!["oil-look: milky air".into()], LockState::Locked, true));
    assert_eq!(after("burnt"), (vec!["oil-look: burnt".into()], LockState::NoLockOnRecord, true));
    assert_eq!(after("dark"), (vec!["oil-look: dark".into()], LockState::NoLockOnRecord, false));
    assert_eq!(after("foaming"), (vec!["oil-look: foam".into()], LockState::NoLockOnRecord, false));
    assert_eq!(after("clear"), (vec![], LockState::NoLockOnRecord, false));
}

#[test]
fn a_level_looked_at_alone_is_told_as_the_walks_glass_tells_it() {
    let after = |level: &str| {
        let mut yard = walked();
        let body = format!(r#"{{"fluid":"compressor-oil",{level}}}"#);
        amos(&mut yard, "07:05", "level-check", &body);
        told(&yard, TH_01)
    };
    assert_eq!(after(r#""glass":{"percent":50},"look":"burnt""#), ["oil-look: burnt"]);
    assert_eq!(after(r#""glass":{"percent":56}"#), ["oil-level: over-middle"]);
    // What the glass of the walk answers with OK, a level by itself finds nothing in: oil is poured in.
    assert!(after(r#""glass":{"percent":55}"#).is_empty() && after(r#""glass":{"percent":20}"#).is_empty());
    assert_eq!(after(r#""glass":"below-view""#), ["oil-level: below-view air"]);
}

#[test]
fn oil_that_was_below_view_before_a_pour_locks_the_air_until_the_shop_says() {
    let mut yard = walked();
    let mut draft = yard.top_up(TH_01, AMOS, "2026-10-20T07:00:00-06:00");
    let see = |draft: &_| top_up(&yard.ledger, draft, at("2026-10-20T07:02:00-06:00")).unwrap();
    assert!(!see(&draft).locks_air);
    draft.before = Some(Glass::BelowView);
    let seen = see(&draft);
    assert!(seen.locks_air, "before anything is poured");
    assert!(!seen.wants_before && seen.level == LevelNow::BelowView);
    (draft.signs.gauge_zero, draft.signs.blow_down_silent) = (Some(true), Some(true));
    (draft.family, draft.grade) = (Some(OilFamily::Mineral), Some("ISO VG 46".into()));
    let pour = sumpbook_trade::record::Pour {
        volume: sumpbook_trade::Figure::parse("0.25", sumpbook_trade::Unit::Quart).unwrap(),
        after: Some(Glass::Percent(50)),
        waited_ms: Some(120_000),
    };
    draft.pour(pour, false).unwrap();
    draft.cap_tight = Some(true);
    let seen = see(&draft);
    assert!(seen.locks_air && seen.main.why_not.is_none() && seen.main.act == MainAct::FinishTopUp);
    let entry = draft.sign(yard.ledger.fleet(), &signing("2026-10-20T07:05:00-06:00")).unwrap();
    yard.record(vec![entry]);
    assert_eq!(told(&yard, TH_01), ["oil-level: below-view air"]);
    assert_eq!(air_state(&yard, TH_01), LockState::Locked);
    let opened = yard.ledger.unit_state(TH_01).unwrap().defects[0].since;
    assert_eq!(opened, at("2026-10-20T07:05:00-06:00").moment());
}

#[test]
fn a_pressure_that_hangs_after_the_stop_locks_the_air_told_at_the_step_or_not() {
    let after = |body: &str| {
        let mut yard = walked();
        amos(&mut yard, "15:40", "stop-air", body);
        told(&yard, TH_01)
    };
    let hangs = "step-blow-down: not-so-holds-pressure air";
    assert_eq!(after(r#"{"blew-down":false}"#), [hangs]);
    let step =
        r#"{"step":"blow-down","at":"2026-10-20T15:39:00-06:00","not-so":true,"word":"holds-pressure"}"#;
    assert_eq!(after(&format!(r#"{{"steps":[{step}],"blew-down":false}}"#)), [hangs]);
    assert!(after(r#"{"blew-down":true}"#).is_empty() && after("{}").is_empty());
}

#[test]
fn a_stop_in_the_heat_calls_for_a_look_at_the_oil_and_a_cause_before_the_restart() {
    let suspected = "oil-look: burnt-suspected";
    let restarted = "step-mid-watch: not-so-no-cause-written";
    let mut yard = walked();
    amos(&mut yard, "09:00", "display-note", STOPPED);
    assert_eq!(told(&yard, TH_01), [suspected]);
    assert_eq!(yard.ledger.unit_state(TH_01).unwrap().called, None, "looked at, before it is called burnt");
    amos(&mut yard, "09:20", "start-air", "{}");
    assert_eq!(told(&yard, TH_01), [suspected, restarted]);
    // Stopped and started again in the afternoon: the restart was the one before.
    amos(&mut yard, "11:00", "stop-air", "{}");
    amos(&mut yard, "12:00", "start-air", "{}");
    assert_eq!(told(&yard, TH_01), [suspected, restarted]);
    assert_eq!(air_state(&yard, TH_01), LockState::NoLockOnRecord);
    // The second one in a day is the same matter, and locks.
    amos(&mut yard, "13:00", "display-note", STOPPED);
    let twice = "step-mid-watch: not-so-stopped-hot-twice air";
    assert_eq!(told(&yard, TH_01), [suspected, suspected, restarted, twice]);
    assert_eq!(air_state(&yard, TH_01), LockState::Locked);
}

#[test]
fn a_cause_is_written_with_the_stop_with_its_answer_at_the_restart_or_as_a_defect() {
    let restarted = |between: &dyn Fn(&mut Yard), start: &str| {
        let mut yard = walked();
        between(&mut yard);
        amos_noting(&mut yard, "09:20", "start-air", "{}", start);
        told(&yard, TH_01).iter().any(|line| line.contains("no-cause-written"))
    };
    let noted = r#","note":"cooler door had fallen shut""#;
    let stop = |yard: &mut Yard, more: &str| amos_noting(yard, "09:00", "display-note", STOPPED, more);
    let plainly = |yard: &mut Yard| {
        stop(yard, "");
    };
    assert!(restarted(&plainly, ""));
    assert!(restarted(&plainly, r#","note":"  ""#), "a blank is no word");
    assert!(!restarted(&plainly, noted));
    assert!(!restarted(
        &|yard| {
            stop(yard, noted);
        },
        ""
    ));
    let answered = |yard: &mut Yard, more: &str| {
        let note = stop(yard, "");
        amos_noting(
            yard,
            "09:05",
            "acknowledgement",
            &format!(r#"{{"note":"{note}","told-shop":true}}"#),
            more,
        );
    };
    assert!(restarted(&|yard| answered(yard, ""), ""), "told, and no cause with it");
    assert!(!restarted(&|yard| answered(yard, noted), ""));
    let blocked =
        r#"{"defects":[{"item":"cooler-face","answer":"defect","word":"blocked"}],"none-found":false}"#;
    assert!(!restarted(
        &|yard| {
            stop(yard, "");
            amos(yard, "09:10", "end-of-day", blocked);
        },
        ""
    ));
}

#[test]
fn more_than_a_quart_of_engine_oil_between_two_changes_is_a_note() {
    let mut yard = walked();
    let pour = |yard: &mut Yard, day: &str, quarts: &str| {
        let body =
            format!(r#"{{"fluid":"engine-oil","pours":[{{"volume":{{"value":"{quarts}","unit":"qt"}}}}]}}"#);
        amos_on(yard, ("TH-01", day, "07:00"), "top-up", &body, "");
    };
    pour(&mut yard, "2026-10-01", "0.5");
    pour(&mut yard, "2026-10-05", "0.5");
    assert!(told(&yard, TH_01).is_empty(), "one quart is not over one");
    pour(&mut yard, "2026-10-08", "0.25");
    assert_eq!(told(&yard, TH_01), ["engine-oil: over-a-quart"]);
    // From a change on it counts anew; an oil change of the compressor is none.
    yard.phone(r#"{"unit":"TH-01","person":"Wren Castellane","at":"2026-10-09T12:00:00-06:00","kind":"service-done","body":{"tasks":["engine-oil"]}}"#);
    pour(&mut yard, "2026-10-12", "1");
    yard.phone(r#"{"unit":"TH-01","person":"Wren Castellane","at":"2026-10-13T12:00:00-06:00","kind":"service-done","body":{"tasks":["oil-and-filters"]}}"#);
    assert_eq!(told(&yard, TH_01).len(), 1);
    pour(&mut yard, "2026-10-14", "0.1");
    assert_eq!(told(&yard, TH_01).len(), 2);
    assert_eq!(yard.ledger.unit_state(TH_01).unwrap().locks, []);
}

#[test]
fn exhaust_fluid_that_goes_twice_as_fast_as_it_used_to_is_a_note() {
    let mut yard = walked();
    let pour = |yard: &mut Yard, day: u32, when: &str, litres: &str| {
        let body = format!(r#"{{"fluid":"def","pours":[{{"volume":{{"value":"{litres}","unit":"L"}}}}]}}"#);
        amos_on(yard, ("TH-01", &format!("2026-09-{day:02}"), when), "top-up", &body, "");
    };
    for day in [1, 4, 7, 10, 13, 16] {
        pour(&mut yard, day, "07:00", "3");
    }
    pour(&mut yard, 19, "07:00", "4");
    pour(&mut yard, 19, "15:00", "2");
    assert!(told(&yard, TH_01).is_empty(), "twice as fast is not more than twice");
    pour(&mut yard, 22, "07:00", "7");
    assert_eq!(told(&yard, TH_01), ["def-level: sudden-thirst"]);
}

/// `use-air` of a unit as it stopped at the hose that is laid out.
fn hose_cut(unit: &str, place: &str) -> String {
    let mut yard = walked();
    let body = format!(
        r#"{{"procedure":"use-air","steps":[{{"step":"hose-out","at":"2026-10-20T10:00:00-06:00","not-so":true,"word":"cut"{place}}}]}}"#
    );
    amos_on(&mut yard, (unit, "2026-10-20", "10:01"), "steps-done", &body, "");
    told(&yard, if unit == "TH-01" { TH_01 } else { TH_02 }).join(", ")
}

#[test]
fn a_cut_hose_locks_the_hose_that_was_named_and_all_air_while_nobody_knows_which() {
    let named = hose_cut("TH-01", r#","place":"large hose""#);
    assert_eq!(named, "step-hose-out large hose: not-so-cut outlet/large hose");
    assert_eq!(hose_cut("TH-01", ""), "step-hose-out: not-so-cut air", "one of three");
    assert_eq!(hose_cut("TH-02", ""), "step-hose-out hose: not-so-cut outlet/hose", "its only one");
}

#[test]
fn the_phone_offers_the_units_own_hoses_where_a_step_is_of_one_of_several() {
    let yard = walked();
    let places = |unit, step: &str| {
        let query = StepsQuery { unit, procedure: "use-air".into(), person: None };
        let table = Procedures::common_practice().unwrap();
        let screen = steps(&yard.ledger, &query, table, at("2026-10-20T10:00:00-06:00")).unwrap().unwrap();
        screen.steps.into_iter().find(|row| row.id == step).unwrap().places
    };
    assert_eq!(places(TH_01, "hose-out"), ["gauge port", "small hose", "large hose"]);
    assert!(places(TH_01, "couple-lock").is_empty());
    assert!(places(TH_02, "hose-out").is_empty(), "there is nothing to choose");
}

#[test]
fn a_pto_that_is_still_in_is_told_and_driving_off_with_it_locks_road_and_air() {
    let leaving = |word: Option<&str>, when: &str| {
        let word = word.map(|word| format!(r#","word":"{word}""#)).unwrap_or_default();
        let not_so = !word.is_empty();
        format!(
            r#"{{"procedure":"leave-site","steps":[{{"step":"pto-out","at":"2026-10-20T{when}:00-06:00","not-so":{not_so}{word}}}]}}"#
        )
    };
    let still_in = "step-pto-out: not-so-pto-still-in";
    let drove = r#"{"what":"left-site"}"#;
    let mut yard = walked();
    amos(&mut yard, "15:00", "steps-done", &leaving(Some("pto-still-in"), "15:00"));
    assert_eq!(told(&yard, TH_01), [still_in]);
    amos(&mut yard, "15:10", "drive", drove);
    assert_eq!(told(&yard, TH_01), [still_in.to_owned(), format!("{still_in} road+air")]);
    assert_eq!(air_state(&yard, TH_01), LockState::Locked);

    let mut yard = walked();
    amos(&mut yard, "15:00", "steps-done", &leaving(Some("pto-still-in"), "15:00"));
    amos(&mut yard, "15:05", "steps-done", &leaving(None, "15:05"));
    amos(&mut yard, "15:10", "drive", drove);
    assert!(told(&yard, TH_01).is_empty(), "it was taken out before the truck moved");
}

#[test]
fn all_of_it_can_be_said_in_both_languages() {
    let found = [
        ("oil-look", "burnt-suspected"),
        ("step-mid-watch", "not-so-no-cause-written"),
        ("engine-oil", "over-a-quart"),
        ("def-level", "sudden-thirst"),
        ("step-pto-out", "not-so-pto-still-in"),
        ("step-blow-down", "not-so-holds-pressure"),
    ];
    for texts in [Texts::english(), Texts::spanish()] {
        let keys = found.iter().flat_map(|(item, word)| [item_key(item), word_key(word)]);
        let missing: Vec<String> = keys.filter(|key| !texts.has(key)).collect();
        assert!(missing.is_empty(), "{missing:?}");
    }
}
