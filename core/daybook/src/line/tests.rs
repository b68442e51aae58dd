//! What a line is refused for, and what the refusal says. Invented data.

use sumpbook_trade::checklist::{Severity, Template};
use sumpbook_trade::record::{PersonSet, Role, Source, TruckRegistered};
use sumpbook_trade::{Entry, Fact, Features, PersonId, Stamp, Tenths, TruckId};
use uuid::Uuid;

use super::{Line, LineError, Writer};
use crate::fleet::Fleet;
use crate::ledger::new_id;

fn fleet() -> Fleet {
    let mut fleet = Fleet::default();
    for (n, door) in [(1, "TH-01"), (2, "TH-02")] {
        let truck = TruckId(Uuid::from_u128(n));
        let registered = TruckRegistered {
            truck,
            door: door.into(),
            serial: None,
            plate: None,
            features: Features::default(),
            in_service: chrono::NaiveDate::from_ymd_opt(2026, 9, 28).unwrap(),
            in_service_hours: Tenths::ZERO,
            annual_inspection: None,
        };
        fleet.trucks.insert(truck, registered);
    }
    for (n, name) in [(3, "Amos Tillery"), (4, "Gil Sandoval")] {
        let person = PersonId(Uuid::from_u128(n));
        let set =
            PersonSet { person, name: name.into(), role: Role::Driver, gone: false, new_pin_asked: None };
        fleet.people.insert(person, set);
    }
    fleet
}

fn resolve(text: &str, fleet: &Fleet) -> Result<Entry, LineError> {
    let now: Stamp = "2026-10-19T06:32:00-06:00".parse().unwrap();
    let writer = Writer { now, clock_off_ms: Some(-40), id: new_id(now).unwrap() };
    Line::read(text)?.resolve(fleet, Template::common_practice().unwrap(), &writer)
}

fn refused(text: &str) -> String {
    resolve(text, &fleet()).unwrap_err().to_string()
}

#[test]
fn a_short_line_is_dated_by_the_phone_and_is_the_phones() {
    let entry = resolve(
        r#"{"unit":"th-01","person":"amos tillery","kind":"site-condition","body":{"dust":"dusty"}}"#,
        &fleet(),
    )
    .unwrap();
    assert_eq!(entry.unit, Some(TruckId(Uuid::from_u128(1))));
    assert_eq!(entry.person, Some(PersonId(Uuid::from_u128(3))));
    assert_eq!((entry.source, entry.clock_off_ms), (Source::Phone, Some(-40)));
    assert_eq!(entry.at.to_string(), "2026-10-19T06:32:00-06:00");
    assert_eq!(entry.id.0.get_version_num(), 7);
}

#[test]
fn what_nobody_knows_is_named_with_what_is_known() {
    for (line, told) in [
        ("not json", "not JSON"),
        ("[]", "not a JSON object"),
        (r#"{"unit":"TH-01","hourz":"1.0","kind":"lay-up","body":{}}"#, "no entry has a field 'hourz'"),
        (r#"{"unit":"TH-01"}"#, "Give \"kind\""),
        (r#"{"unit":"TH-01","kind":"weather","body":{}}"#, "no kind of entry 'weather'"),
        (
            r#"{"unit":"TH-01","kind":"site-condition","body":{"dust":"foggy"}}"#,
            "'site-condition': unknown variant `foggy`",
        ),
        (r#"{"unit":"TH-01","kind":"lay-up","body":{"dome":"x"}}"#, "unknown field `dome`"),
        (r#"{"unit":"TH-09","kind":"lay-up","body":{}}"#, "'TH-09'. Known are: TH-01, TH-02."),
        (
            r#"{"unit":"TH-01","person":"Amos","kind":"lay-up","body":{}}"#,
            "'Amos'. Known are: Amos Tillery, Gil Sandoval.",
        ),
        (r#"{"kind":"lay-up","body":{}}"#, "'lay-up' is about a unit"),
        (
            r#"{"unit":"TH-01","kind":"device-enrolled","body":{"key":"00","name":"x"}}"#,
            "64 hexadecimal digits",
        ),
        (
            r#"{"unit":"TH-01","kind":"end-of-day","body":{"none-found":false}}"#,
            "names its defects or says \"none-found\"",
        ),
    ] {
        let why = refused(line);
        assert!(why.contains(told), "{line}\n{why}");
    }
}

#[test]
fn a_phones_entry_takes_no_time_from_outside() {
    let line = |source: &str| {
        format!(
            r#"{{"unit":"TH-01","at":"2026-10-18T07:00:00-06:00","source":"{source}","kind":"lay-up","body":{{}}}}"#
        )
    };
    assert_eq!(resolve(&line("phone"), &fleet()), Err(LineError::TimeGiven));
    assert!(LineError::TimeGiven.to_string().contains("clock dates"));
    let paper = resolve(&line("paper"), &fleet()).unwrap();
    assert_eq!((paper.at.to_string().as_str(), paper.clock_off_ms), ("2026-10-18T07:00:00-06:00", None));
    let demo = Fleet { demo: true, ..fleet() };
    assert!(resolve(&line("phone"), &demo).is_ok());
}

fn defect(word: &str, severity: &str) -> String {
    format!(
        r#"{{"unit":"TH-01","person":"Amos Tillery","kind":"end-of-day","body":{{"none-found":false,"defects":[
        {{"item":"mirrors","place":"right","answer":"defect"{word}{severity}}}]}}}}"#
    )
}

fn locked(line: &str) -> Option<Severity> {
    match resolve(line, &fleet()).unwrap().fact {
        Fact::EndOfDay(report) => report.defects[0].severity,
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_a_defect_locks_comes_from_the_checklist_and_may_only_be_raised() {
    let word = |word: &str| format!(r#","word":"{word}""#);
    let severity = |severity: &str| format!(r#","severity":"{severity}""#);
    assert_eq!(locked(&defect(&word("cracked"), "")), Some(Severity::Road));
    assert_eq!(locked(&defect(&word("dirty"), "")), Some(Severity::Note));
    assert_eq!(locked(&defect(&word("other"), "")), Some(Severity::Road), "the worst of the item");
    assert_eq!(locked(&defect(&word("dirty"), &severity("road"))), Some(Severity::Road), "raised");
    assert_eq!(
        locked(&defect(&word("cracked"), &severity("road-and-air"))),
        Some(Severity::RoadAndAir),
        "raised"
    );
    for lower in ["note", "air", "outlet"] {
        let why = refused(&defect(&word("cracked"), &severity(lower)));
        assert!(why.contains("never lowered"), "{lower}: {why}");
    }
    assert!(refused(&defect("", "")).contains("needs a \"word\", one of: cracked"));
    assert!(refused(&defect(&word("bent"), "")).contains("no word 'bent'. Its words are: cracked"));
    let unknown = defect(&word("cracked"), "").replace("mirrors", "mirror");
    assert!(refused(&unknown).contains("no item 'mirror'. Items near it: mirrors."));
    let ok = defect(&word("cracked"), "").replace(r#""answer":"defect""#, r#""answer":"ok""#);
    assert!(refused(&ok).contains("no defect here"));
    let place = defect(&word("cord"), "").replace("mirrors", "tyre-wall").replace("right", "front");
    assert!(refused(&place).contains("'tyre-wall' is not looked at 'front'. Its places are: left, right"));
}

#[test]
fn a_line_too_large_for_an_entry_says_by_how_much() {
    let words = "a".repeat(17_000);
    let why = refused(&format!(r#"{{"unit":"TH-01","note":"{words}","kind":"lay-up","body":{{}}}}"#));
    assert!(why.contains("bytes, and an entry has room for 16384"), "{why}");
    assert!(why.starts_with("this entry takes 170"), "{why}");
}

#[test]
fn a_name_two_people_share_is_asked_about() {
    let mut fleet = fleet();
    let person = PersonId(Uuid::from_u128(9));
    fleet.people.insert(
        person,
        PersonSet { person, name: "Amos Tillery".into(), role: Role::Crew, gone: false, new_pin_asked: None },
    );
    let line = r#"{"unit":"TH-01","person":"Amos Tillery","kind":"lay-up","body":{}}"#;
    assert!(matches!(resolve(line, &fleet), Err(LineError::SeveralPeople { .. })));
    let by_id = line.replace("Amos Tillery", &person.to_string());
    let entry = resolve(&by_id, &fleet).unwrap();
    assert_eq!(entry.person, Some(person));
    assert_eq!(Line::of(&entry, &fleet).person, Some(person.to_string()));
}

#[test]
fn lines_of_a_file_carry_their_numbers() {
    let text = "\n{\"unit\":\"TH-01\",\"kind\":\"lay-up\",\"body\":{}}\n\noops\n";
    let read: Vec<(usize, bool)> = Line::read_all(text).map(|(n, line)| (n, line.is_ok())).collect();
    assert_eq!(read, [(2, true), (4, false)]);
}

#[test]
fn a_figure_in_a_unit_that_cannot_be_its_own_is_refused() {
    let pour = r#"{"unit":"TH-01","kind":"top-up","body":{"fluid":"compressor-oil","pours":[{"volume":{"value":"0.13","unit":"psi"}}]}}"#;
    let why = refused(pour);
    assert!(why.contains("'0.13 psi' is not in one of its units: qt, gal, fl-oz, L, mL"), "{why}");
    assert!(resolve(&pour.replace("psi", "qt"), &fleet()).is_ok());
    let running =
        r#"{"unit":"TH-01","kind":"running-numbers","body":{"air-end":{"value":"180","unit":"bar"}}}"#;
    assert!(refused(running).contains("degF, degC"));
    let report = r#"{"unit":"TH-01","kind":"end-of-day","body":{"none-found":true,"odometer":{"value":"9","unit":"L"}}}"#;
    assert!(refused(report).contains("mi, km"));
}

#[test]
fn a_defect_has_one_sound_at_most_and_nothing_else_has_any() {
    let name = "ab".repeat(32);
    let sound = format!(r#","word":"cracked","sound":"{name}""#);
    let entry = resolve(&defect(&sound, ""), &fleet()).unwrap();
    assert_eq!(entry.fact.sounds(), [name.parse().unwrap()]);
    assert!(entry.fact.photos().is_empty());
    let ok = r#"{"item":"horn","answer":"ok"}"#.replace('}', &format!(r#","sound":"{name}"}}"#));
    assert!(refused(&walked(&ok, true)).contains("'horn' is no defect here, so it has no sound"));
    let two = defect(&format!(r#","word":"cracked","sound":["{name}"]"#), "");
    assert!(Line::read(&two).is_err());
}

fn walked(answers: &str, complete: bool) -> String {
    format!(
        r#"{{"unit":"TH-01","person":"Amos Tillery","kind":"pre-trip-section","body":{{"walk":"01929e00-0000-7000-8000-000000000031","edition":1,"answers":[{answers}],"complete":{complete}}}}}"#
    )
}

#[test]
fn what_nobody_can_have_seen_is_refused_with_what_to_do() {
    let pour = |volume: &str, after: &str| {
        format!(
            r#"{{"unit":"TH-01","kind":"top-up","body":{{"fluid":"compressor-oil","after":{{"percent":{after}}},"pours":[{{"volume":{{"value":"{volume}","unit":"qt"}}}}]}}}}"#
        )
    };
    let level = |percent: &str| {
        format!(
            r#"{{"unit":"TH-01","kind":"level-check","body":{{"fluid":"compressor-oil","glass":{{"percent":{percent}}}}}}}"#
        )
    };
    let glass = |value: &str| {
        walked(
            &format!(
                r#"{{"item":"oil-level","answer":"ok","figures":[{{"figure":{{"value":"{value}","unit":"%"}},"how":"asked"}}]}}"#
            ),
            true,
        )
    };
    let oil = r#"{"unit":"TH-01","kind":"service-done","body":{"tasks":["oil-and-filters"],"oil":{"volume":{"value":"-8","unit":"qt"}}}}"#;
    let outlet = defect(r#","word":"dirty""#, r#","severity":"outlet""#);
    let no_why = r#"{"item":"horn","answer":"could-not-check"}"#;
    for (line, told) in [
        (pour("-0.13", "50"), "'-0.13 qt' was poured"),
        (pour("0.13", "101"), "the glass reads 101 %"),
        (oil.to_owned(), "'-8 qt' was poured"),
        (level("120"), "the glass reads 120 %"),
        (glass("-5"), "the glass reads -5 %"),
        (glass("100.5"), "the glass reads 100.5 %"),
        (walked(no_why, true), "'horn' could not be checked, and it does not say why"),
        (outlet, "'mirrors' is looked at on no outlet"),
        (walked("", true), "a walk without an answer is no walk"),
    ] {
        let why = refused(&line);
        assert!(why.contains(told) && why.contains("Nothing was recorded."), "{line}\n{why}");
    }
    for line in [
        pour("0.13", "100"),
        level("0"),
        glass("50"),
        walked(r#"{"item":"horn","answer":"could-not-check","words":"battery dead"}"#, true),
        walked("", false),
    ] {
        assert!(resolve(&line, &fleet()).is_ok(), "{line}");
    }
}

#[test]
fn an_outlet_is_one_the_unit_has() {
    let mut fleet = fleet();
    let valve = |place: &str| {
        walked(&format!(r#"{{"item":"valve","place":"{place}","answer":"defect","word":"passing"}}"#), true)
    };
    assert!(resolve(&valve("large hose"), &fleet).is_ok(), "nobody has named its valves yet");
    let truck = fleet.trucks.values_mut().next().unwrap();
    truck.features.valves = vec!["gauge port".into(), "small hose".into()];
    let why = resolve(&valve("large hose"), &fleet).unwrap_err().to_string();
    assert!(
        why.contains("no 'valve' called 'large hose'") && why.contains("It has: gauge port, small hose."),
        "{why}"
    );
    assert!(resolve(&valve("small hose"), &fleet).is_ok());
}

#[test]
fn paper_is_written_down_as_it_stands() {
    let paper =
        |line: String| line.replacen('{', r#"{"source":"paper","at":"2026-10-18T07:00:00-06:00","#, 1);
    let line = paper(walked(r#"{"item":"horn","answer":"could-not-check"}"#, true));
    assert!(resolve(&line, &fleet()).is_ok());
    // Whoever types a page has it before him; in an old binder nobody can look again, and it covers nothing.
    assert!(refused(&paper(walked("", true))).contains("a walk without an answer is no walk"));
    assert!(resolve(&paper(walked("", false)), &fleet()).is_ok(), "the page goes on");
    let binder =
        walked("", true).replacen('{', r#"{"source":"brought-in","at":"2025-10-18T07:00:00-06:00","#, 1);
    assert!(resolve(&binder, &fleet()).is_ok());
    let negative = r#"{"unit":"TH-01","kind":"top-up","body":{"fluid":"compressor-oil","pours":[{"volume":{"value":"-1","unit":"qt"}}]}}"#;
    assert!(refused(&paper(negative.to_owned())).contains("nobody pours less than nothing"));
}

#[test]
fn what_lies_on_a_truck_is_some_of_what_a_truck_carries() {
    let count = |value: &str, unit: &str| {
        format!(
            r#"{{"unit":"TH-01","kind":"stock-counted","body":{{"fluid":"compressor-oil","volume":{{"value":"{value}","unit":"{unit}"}}}}}}"#
        )
    };
    assert!(refused(&count("-1", "qt")).contains("lies on no truck"));
    assert!(refused(&count("99999999", "gal")).contains("more than a truck carries in cans"));
    // A jug too many is no reason to say no.
    assert!(resolve(&count("1000", "gal"), &fleet()).is_ok());
    assert!(resolve(&count("0", "qt"), &fleet()).is_ok());
}
