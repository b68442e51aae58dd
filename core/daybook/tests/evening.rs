//! The rest of a driver's day: glass, top-up, display, hours, end of day, where it stands.
//!
//! Invented data, figures of the worked month, outcomes worked by rule. Each snapshot is one screen.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use serde_json::json;
use sumpbook_daybook::screen::*;
use sumpbook_trade::record::{Glass, Meter, Pour, Warmth};
use sumpbook_trade::{Figure, OilFamily, Tenths, Unit};
use tern_hollow::{AMOS, TH_01, Yard, at, button, see_today, signing, template, walked};

#[test]
fn h_the_glass_on_site() {
    let mut yard = walked();
    let look = |yard: &Yard, given, said_stopped, now: &str| {
        let query = GlassQuery { unit: TH_01, given, said_stopped, warmth: None, oil_temperature: None };
        let screen = glass(&yard.ledger, &query, template(), at(now)).unwrap();
        json!({
            "stop": screen.stop, "wait": screen.wait, "level": screen.level, "word": screen.word,
            "locks": screen.locks, "rose without a pour": screen.rose_without_a_pour,
            "button": button("TH-01", &screen.main),
        })
    };
    let morning = look(&yard, None, None, "2026-10-19T06:50:00-06:00");
    let said = look(&yard, Some(Glass::Percent(44)), Some(true), "2026-10-19T06:50:00-06:00");
    yard.phone(r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T07:02:00-06:00","kind":"start-air","body":{}}"#);
    let running = look(&yard, Some(Glass::Percent(40)), None, "2026-10-19T09:00:00-06:00");
    let stands = look(&yard, Some(Glass::Percent(40)), Some(true), "2026-10-19T09:00:00-06:00");
    yard.phone(r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T10:40:00-06:00","kind":"stop-air","body":{}}"#);
    let soon = look(&yard, Some(Glass::Percent(60)), None, "2026-10-19T10:42:00-06:00");
    let below = look(&yard, Some(Glass::BelowView), None, "2026-10-19T10:46:00-06:00");
    insta::assert_yaml_snapshot!(json!({
        "nothing given": morning, "said": said, "while it runs": running,
        "no stop recorded, said to stand": stands, "after two minutes": soon,
        "below view": below,
    }));
}

#[test]
fn i_a_top_up_behind_its_gate() {
    let mut yard = walked();
    let now = at("2026-10-19T07:05:00-06:00");
    let mut pour = yard.top_up(TH_01, AMOS, "2026-10-19T07:00:00-06:00");
    pour.before = Some(Glass::Percent(30));
    let see = |yard: &Yard, draft: &_| {
        let screen = top_up(&yard.ledger, draft, now).unwrap();
        json!({
            "missing": screen.missing, "mix": screen.mix, "gels": screen.gels, "locks air": screen.locks_air,
            "poured mL": screen.poured_ml, "level": screen.level, "button": button("TH-01", &screen.main),
        })
    };
    let shut = see(&yard, &pour);
    pour.signs.gauge_zero = Some(true);
    pour.signs.blow_down_silent = Some(true);
    (pour.family, pour.grade) = (Some(OilFamily::Mineral), Some("ISO VG 46".into()));
    let open = see(&yard, &pour);
    let volume = Figure::parse("0.13", Unit::Quart).unwrap();
    let one = Pour { volume, after: Some(Glass::Percent(52)), waited_ms: Some(120_000) };
    let mut wrong = pour.clone();
    pour.pour(one.clone(), false).unwrap();
    let middle = see(&yard, &pour);
    wrong.family = Some(OilFamily::Polyglycol);
    let other = see(&yard, &wrong);
    wrong.pour(one, false).unwrap();
    let poured = see(&yard, &wrong);
    insta::assert_yaml_snapshot!(json!({
        "no sign yet": shut, "both signs": open, "in the middle": middle, "another family": other,
        "another family, poured": poured,
    }));
}

#[test]
fn j_the_display_spoke() {
    let mut yard = walked();
    let note = yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T15:05:00-06:00","kind":"display-note","body":{"what":"reminder","as-shown":"SERVICE SOON","stopped-by-itself":false}}"#,
    );
    let see = |yard: &Yard| {
        let query = DisplayQuery { unit: TH_01, note: Some(note) };
        let screen = display(&yard.ledger, &query, &yard.standing, at("2026-10-19T15:30:00-06:00")).unwrap();
        json!({ "note": screen.note, "button": button("TH-01", &screen.main) })
    };
    let only_here = |yard: &Yard, note| {
        let query = DisplayQuery { unit: TH_01, note };
        display(&yard.ledger, &query, &yard.standing, at("2026-10-19T15:30:00-06:00")).unwrap().note_only_here
    };
    assert!(only_here(&yard, Some(note)) && !only_here(&yard, None));
    yard.standing.on_phone.remove(&note);
    assert!(!only_here(&yard, Some(note)), "a receipt covers it");
    let fresh = see(&yard)["button"].clone();
    // The last one's phone is slow: what it answers was not shown yet by its clock.
    for (when, person, told) in [
        ("15:22", "Gil Sandoval", false),
        ("15:10", "Bettina Quaye", true),
        ("14:50", "Wren Castellane", true),
    ] {
        yard.phone(&format!(
            r#"{{"unit":"TH-01","person":"{person}","at":"2026-10-19T{when}:00-06:00","kind":"acknowledgement","body":{{"note":"{note}","told-shop":{told}}}}}"#
        ));
    }
    insta::assert_yaml_snapshot!(json!({ "before an answer": fresh, "after three": see(&yard) }));
}

#[test]
fn k_hours_are_asked_about_and_never_refused() {
    let mut yard = walked();
    let see = |yard: &Yard, typed: Option<&str>, now: &str| {
        let query = HoursQuery {
            unit: TH_01,
            meter: Meter::Compressor,
            typed: typed.map(|text| text.parse::<Tenths>().unwrap()),
        };
        let screen = hours(&yard.ledger, &query, at(now)).unwrap();
        let ceiling = screen.ceiling;
        json!({ "ceiling": ceiling, "rise": screen.rise, "asked": screen.asked, "button": button("TH-01", &screen.main) })
    };
    let evening = "2026-10-19T16:30:00-06:00";
    let shown = json!({
        "nothing typed": see(&yard, None, evening),
        "2866.1": see(&yard, Some("2866.1"), evening),
        "8266.1": see(&yard, Some("8266.1"), evening),
        "2862.3": see(&yard, Some("2862.3"), evening),
        "2860.0": see(&yard, Some("2860.0"), evening),
    });
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T16:30:00-06:00","kind":"hour-reading","body":{"meter":"compressor","figure":"8266.1","how":"asked","kept-when-asked":true}}"#,
    );
    let after =
        hours(&yard.ledger, &HoursQuery { unit: TH_01, meter: Meter::Compressor, typed: None }, at(evening))
            .unwrap();
    insta::assert_yaml_snapshot!(json!({ "typed": shown, "kept": after }));
}

#[test]
fn l_the_end_of_the_day() {
    let mut yard = walked();
    yard.phone(r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T07:02:00-06:00","kind":"start-air","body":{}}"#);
    let mut report = yard.end_of_day(TH_01, AMOS, "2026-10-19T16:25:00-06:00");
    let now = at("2026-10-19T16:30:00-06:00");
    let fresh = end_of_day(&yard.ledger, &report, now).unwrap();
    yard.phone(r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T15:40:00-06:00","kind":"stop-air","body":{}}"#);
    report.none_found();
    report.hours = Some("2866.1".parse().unwrap());
    let said = end_of_day(&yard.ledger, &report, now).unwrap();
    let entry = report.sign(yard.ledger.fleet(), &signing("2026-10-19T16:30:00-06:00")).unwrap();
    let before = see_today(&yard, AMOS, "2026-10-19T16:29:00-06:00")["buttons"][0].clone();
    yard.record(vec![entry]);
    let after = see_today(&yard, AMOS, "2026-10-19T16:31:00-06:00");
    insta::assert_yaml_snapshot!(json!({
        "fresh": fresh, "button": button("TH-01", &fresh.main), "said": button("TH-01", &said.main),
        "notices after stopping": said.notices, "today before": before,
        "today after": [after["buttons"][0].clone(), after["screen"]["units"][0]["pre_trip"].clone()],
    }));
}

#[test]
fn m_where_it_stands_in_the_evening() {
    let mut yard = walked();
    yard.exchanged("2026-10-19T12:00:00-06:00");
    let wrong = yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T16:30:00-06:00","kind":"hour-reading","body":{"meter":"compressor","figure":"8266.1","how":"asked","kept-when-asked":true}}"#,
    );
    yard.phone(r#"{"unit":"TH-02","person":"Bettina Quaye","at":"2026-10-19T16:35:00-06:00","kind":"site-condition","body":{"dust":"dusty"}}"#);
    yard.phone(&format!(
        r#"{{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T16:40:00-06:00","kind":"correction","body":{{"target":"{wrong}","why":"digits swapped"}}}}"#
    ));
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T16:45:00-06:00","kind":"hour-reading","body":{"meter":"compressor","figure":"9266.1","how":"asked","kept-when-asked":true}}"#,
    );
    let now = at("2026-10-19T16:52:00-06:00");
    let screen = where_it_is(&yard.ledger, &WhereQuery { days_back: 7 }, &yard.standing, now).unwrap();
    insta::assert_yaml_snapshot!(screen);
}

/// What the calculator says of a job, in English: each line of the answer, then what to look out for.
fn air_says(yard: &Yard, query: &AirQuery) -> Vec<String> {
    let words = sumpbook_daybook::text::Texts::english();
    let say = |key: &str, figure: Option<&AirFigure>| {
        let figure = figure.map(|figure| format!("{} {}", figure.value, figure.unit)).unwrap_or_default();
        words.get(key, &[("figure", figure.as_str().into())])
    };
    let screen = air_for_the_job(&yard.ledger, query, at("2026-10-19T09:00:00-06:00")).unwrap();
    let Some(answer) = screen.answer else { return vec![words.get("air-no-answer", &[])] };
    let rows = answer
        .rows
        .iter()
        .map(|row| format!("{}: {}", words.get(&row.key, &[]), say(&row.told, row.figure.as_ref())));
    let stood_in = answer.stood_in.iter().map(|key| words.get(key, &[]));
    let warnings = answer.warnings.iter().map(|row| say(&row.key, row.figure.as_ref()));
    rows.chain(stood_in).chain(warnings).collect()
}

#[test]
fn n_air_for_the_job_says_how_sure_each_figure_is() {
    let yard = walked();
    let said = |figures: &[(AirField, u8, &str)]| AirQuery {
        unit: Some(TH_01),
        said: figures
            .iter()
            .map(|&(field, tool, said)| AirSaid { field, tool, said: said.to_owned() })
            .collect(),
        ..AirQuery::default()
    };
    use AirField as F;
    // The delivery is the unit's own, 185 cfm; without the pressure it holds there is no answer, and none is made up.
    assert_eq!(
        air_says(&yard, &said(&[])),
        ["Give the delivery, or a unit that has one on record, and the pressure it holds."]
    );
    let job = [
        (F::Holds, 0, "100"),
        (F::Altitude, 0, "5,906"),
        (F::Takes, 1, "80"),
        (F::At, 1, "90"),
        (F::Bore, 0, "3/4"),
        (F::Length, 0, "50"),
    ];
    let lines = air_says(&yard, &said(&job));
    assert_eq!(
        lines[..3],
        [
            "Delivered here, in free air of sea level: about 155 cfm",
            "Taken by the tools: 80 cfm",
            "Left over: about 75 cfm",
        ]
    );
    assert!(lines.contains(
        &"Water falls out under: not known; humidity and the oil's temperature are wanted".to_owned()
    ));
    assert_eq!(
        lines.last().unwrap(),
        "A hose of 0.75 in inside is over 1/2 in: it wants a device that cuts the flow when the hose fails."
    );
    // A second tool of which nobody knows what it takes: what is left over is a bound, and that is said.
    let lines = air_says(&yard, &said(&[&job[..], &[(F::At, 2, "90")]].concat()));
    assert_eq!(lines[1..3], ["Taken by the tools: at least 80 cfm", "Left over: at most about 75 cfm"]);
    assert_eq!(lines.last().unwrap(), "A tool without what it takes: it takes air all the same.");
    // Of its one tool nobody knows what it takes: neither figure is made up.
    let lines = air_says(&yard, &said(&[(F::Holds, 0, "100"), (F::At, 1, "90")]));
    assert_eq!(lines[1], "Taken by the tools: not known; what the tool takes is wanted");
    assert!(!lines.iter().any(|line| line.starts_with("Left over")), "{lines:?}");
    // A figure that is none is named, left out and never taken for another.
    let query = said(&[&job[..], &[(F::Intake, 0, "warm")]].concat());
    let screen = air_for_the_job(&yard.ledger, &query, at("2026-10-19T09:00:00-06:00")).unwrap();
    let wrong: Vec<_> = screen.fields.iter().filter(|row| row.wrong).map(|row| row.field).collect();
    assert_eq!(wrong, [F::Intake]);
    assert!(screen.answer.unwrap().stood_in.contains(&"air-standard-intake".to_owned()));
    let wanted: Vec<_> = screen.fields.iter().filter(|row| row.wanted).map(|row| row.field).collect();
    assert_eq!(wanted, []);
    // A metric reader is answered in metric, from the same record.
    let metric = AirQuery { metric: true, ..said(&[(F::Holds, 0, "690"), (F::Altitude, 0, "1800")]) };
    assert_eq!(
        air_says(&yard, &metric)[..2],
        ["Delivered here, in free air of sea level: about 4.39 m³/min", "Taken by the tools: no tool given",]
    );
}

#[test]
fn o_a_rise_is_asked_about_beyond_two_readings_and_only_where_levels_compare() {
    let mut yard = walked();
    let looks = |yard: &mut Yard, when: &str, glass: u8, more: &str| {
        yard.phone(&format!(
            r#"{{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T{when}:00-06:00","kind":"level-check","body":{{"fluid":"compressor-oil","glass":{{"percent":{glass}}},"stopped":{{"minutes":30,"how":"timed"}}{more}}}}}"#
        ));
    };
    looks(&mut yard, "08:00", 40, r#","warmth":"cold""#);
    let rose = |yard: &Yard, percent, warmth, degrees: Option<&str>| {
        let oil_temperature = degrees.map(|degrees| Figure::parse(degrees, Unit::Celsius).unwrap());
        let given = Some(Glass::Percent(percent));
        let query = GlassQuery { unit: TH_01, given, said_stopped: Some(true), warmth, oil_temperature };
        glass(&yard.ledger, &query, template(), at("2026-10-19T09:00:00-06:00")).unwrap().rose_without_a_pour
    };
    let (cold, hot) = (Some(Warmth::Cold), Some(Warmth::Hot));
    // Two readings, 5 % each: 50 may still be 40, 51 may not.
    assert!(!rose(&yard, 50, cold, None) && rose(&yard, 51, cold, None));
    // Hot oil stands higher: without its temperature nobody knows by how much.
    assert!(!rose(&yard, 95, hot, None));
    // 8 qt at 80 degC have grown by 8 x 0.0007 x 65 = 0.364 qt, 61 % of this glass: 95 hot is 34 cold.
    assert!(!rose(&yard, 95, hot, Some("80")));
    // At 20 degC it is 0.028 qt, 5 %: 60 is 55 cold.
    assert!(rose(&yard, 60, hot, Some("20")));
    // What was shown then counts then: 40 hot at 80 degC was far less oil than 40 cold is now.
    looks(&mut yard, "08:30", 40, r#","warmth":"hot","oil-temperature":{"value":"80","unit":"degC"}"#);
    assert!(rose(&yard, 40, cold, None));
}
