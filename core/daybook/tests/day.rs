//! A driver's day, screen by screen: what each record holds, from before the walk to after the report.
//!
//! Invented data, figures of the worked month, outcomes worked by rule. Each snapshot is one screen.

mod tern_hollow;

use serde_json::{Value, json};
use sumpbook_daybook::draft::Draft;
use sumpbook_daybook::screen::*;
use sumpbook_daybook::text::Texts;
use sumpbook_trade::record::{Answer, AnswerKind, Glass, How, ItemFigure, Pour};
use sumpbook_trade::{Figure, OilFamily, Tenths, Unit};
use tern_hollow::{AMOS, BETTINA, TH_01, TH_02, Yard, at, signing, template};

/// The main button in words, as it would stand on the phone.
fn button(door: &str, main: &Main) -> String {
    let texts = Texts::english();
    let args = json!(main.act);
    let inner = args.as_object().and_then(|act| act.values().next()).cloned().unwrap_or(Value::Null);
    let text = |name: &str| inner.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
    let (stop, figure) = (text("stop"), text("figure"));
    let lines = inner.get("lines").and_then(Value::as_i64).unwrap_or_default();
    let label = texts.get(
        main.act.text_key(),
        &[
            ("door", door.into()),
            ("stop", stop.as_str().into()),
            ("figure", figure.as_str().into()),
            ("lines", lines.into()),
            ("level", "the level".into()),
        ],
    );
    match &main.why_not {
        None => format!("[ {label} ]"),
        Some(DisabledReason::MoreBelow { left }) => {
            format!("( {label} ) {}", texts.get("why-not-more-below", &[("left", (*left).into())]))
        }
        Some(DisabledReason::FigureMissing { item }) => {
            let item = texts.get(&format!("item-{item}"), &[]);
            format!("( {label} ) {}", texts.get("why-not-figure-missing", &[("item", item.as_str().into())]))
        }
        Some(why) => format!("( {label} ) {}", texts.get(why.text_key(), &[])),
    }
}

fn see_today(yard: &Yard, person: sumpbook_trade::PersonId, now: &str) -> Value {
    let screen = today(&yard.ledger, &TodayQuery { person }, &yard.standing, at(now)).unwrap();
    let buttons: Vec<String> = screen.units.iter().map(|row| button(&row.door, &row.main)).collect();
    json!({ "buttons": buttons, "screen": screen })
}

/// A stop without the words each line offers: they are the checklist's and would fill the page.
fn see_stop(screen: &StopScreen) -> Value {
    let lines: Vec<String> = screen
        .lines
        .iter()
        .map(|line| {
            let name = Texts::english().get(&format!("item-{}", line.item), &[]);
            let answer = line.answer.as_ref().map_or("open".to_owned(), |answer| {
                let mut told = json!(answer.answer).as_str().unwrap().to_owned();
                for more in [&answer.word, &answer.by] {
                    told += &more.as_ref().map(|more| format!(", {more}")).unwrap_or_default();
                }
                told
            });
            format!("{} ({name}): {answer}", line.id)
        })
        .collect();
    json!({
        "header": format!("{} {} of {}, stop {}", screen.door, screen.index, screen.of, screen.label),
        "where": (screen.place, screen.engine),
        "lines": lines,
        "left": screen.left,
        "together": screen.together,
        "marks": screen.marks,
        "back": screen.back,
        "button": button(&screen.door, &screen.main),
    })
}

fn unseen(open_ms: u32) -> StopQuery {
    StopQuery { stop: None, seen: Default::default(), open_ms }
}

fn seen(screen: &StopScreen, open_ms: u32) -> StopQuery {
    let rows = screen.lines.iter().map(|line| line.id.clone()).collect();
    StopQuery { stop: Some(screen.label.clone()), seen: rows, open_ms }
}

/// Mon 19 Oct: Amos has walked round TH-01 and signed at 06:32.
fn walked() -> Yard {
    let mut yard = Yard::new();
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T06:32:00-06:00","hours":"2862.4","kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000901","edition":1,"answers":[{"item":"horn","answer":"ok"},{"item":"oil-level","answer":"ok","figures":[{"figure":{"value":"38","unit":"%"},"how":"asked"}]}],"seconds":430,"complete":true}}"#,
    );
    yard
}

/// TH-02: Bettina found the left stop lamp out at 06:44 and signed her day; Wren repaired it.
fn lamp_out() -> (Yard, sumpbook_trade::EntryId) {
    let mut yard = Yard::new();
    let found = yard.phone(
        r#"{"unit":"TH-02","person":"Bettina Quaye","at":"2026-10-19T06:44:00-06:00","hours":"1204.7","kind":"end-of-day","body":{"none-found":false,"defects":[{"item":"lamps-stop","place":"rear","answer":"defect","word":"out","words":"left one"}],"to-next":"Fuse is fine."}}"#,
    );
    (yard, found)
}

fn certify(yard: &mut Yard, found: sumpbook_trade::EntryId) {
    yard.shop(&format!(
        r#"{{"unit":"TH-02","person":"Wren Castellane","source":"shop","at":"2026-10-19T07:55:00-06:00","kind":"certificate","body":{{"defect":{{"entry":"{found}","item":"lamps-stop","place":"rear"}},"verdict":"repaired","words":"bulb changed"}}}}"#
    ));
}

#[test]
fn a_today_before_the_walk() {
    let yard = Yard::new();
    insta::assert_yaml_snapshot!(see_today(&yard, AMOS, "2026-10-19T06:20:00-06:00"));
}

#[test]
fn b_the_unit_before_the_walk() {
    let mut yard = walked();
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T07:05:00-06:00","kind":"top-up","body":{"fluid":"compressor-oil","family":"mineral","grade":"ISO VG 46","before":{"percent":38},"pours":[{"volume":{"value":"0.07","unit":"qt"},"after":{"percent":50}}],"after":{"percent":50}}}"#,
    );
    let query = UnitQuery { unit: TH_01, person: AMOS };
    let screen = unit(&yard.ledger, &query, &yard.standing, at("2026-10-19T07:10:00-06:00")).unwrap();
    insta::assert_yaml_snapshot!(screen);
}

#[test]
fn c_a_unit_unlike_ones_own_says_what_differs() {
    let yard = walked();
    let query = UnitQuery { unit: TH_02, person: AMOS };
    let screen = unit(&yard.ledger, &query, &yard.standing, at("2026-10-19T07:10:00-06:00")).unwrap();
    insta::assert_yaml_snapshot!(json!({ "unlike": screen.unlike, "hours": screen.hours }));
}

#[test]
fn d_a_stop_opens_is_seen_and_is_answered_by_one_tap() {
    let mut yard = Yard::new();
    let mut walk = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    let now = at("2026-10-19T06:26:00-06:00");
    let show =
        |yard: &Yard, walk: &_, query: &_| stop(&yard.ledger, walk, query, template(), now).unwrap().unwrap();

    let opened = show(&yard, &walk, &unseen(100));
    let part = show(&yard, &walk, &unseen(2_000));
    let whole = show(&yard, &walk, &seen(&opened, 14_000));
    let defect = Answer {
        item: "coolant".into(),
        place: None,
        answer: AnswerKind::Defect,
        word: Some("low".into()),
        severity: None,
        figures: Vec::new(),
        on_screen_ms: Some(9_000),
        together: None,
        words: None,
        photos: Vec::new(),
    };
    walk.answer(template(), defect).unwrap();
    let other = show(&yard, &walk, &seen(&opened, 14_000));
    let stops = yard.walk(TH_01);
    let answered = walk.ok_together(template(), &stops[0], &Default::default(), 14_000).unwrap();
    assert_eq!(answered, stops[0].lines.len() - 1);
    let done = show(&yard, &walk, &seen(&opened, 14_100));
    walk.reach(&stops[1]);
    yard.ledger.keep_draft(&Draft::PreTrip(walk), 0).unwrap();
    insta::assert_yaml_snapshot!(json!({
        "just opened": button("TH-01", &opened.main),
        "not all seen": button("TH-01", &part.main),
        "all seen": button("TH-01", &whole.main),
        "one defect": button("TH-01", &other.main),
        "answered": see_stop(&done),
        "today meanwhile": see_today(&yard, AMOS, "2026-10-19T06:27:00-06:00")["buttons"],
    }));
}

#[test]
fn e_the_glass_stop_waits_for_its_figure() {
    let mut yard = Yard::new();
    let mut walk = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    let now = at("2026-10-19T06:29:00-06:00");
    let stops = yard.walk(TH_01);
    let glass_stop =
        stops.iter().find(|stop| stop.lines.iter().any(|line| line.item == "oil-level")).unwrap();
    let at_glass = |yard: &Yard, walk: &_| {
        let open = StopQuery { stop: Some(glass_stop.label()), ..unseen(3_000) };
        let first = stop(&yard.ledger, walk, &open, template(), now).unwrap().unwrap();
        stop(&yard.ledger, walk, &seen(&first, 3_000), template(), now).unwrap().unwrap()
    };
    let before = see_stop(&at_glass(&yard, &walk));
    let level = Answer {
        item: "oil-level".into(),
        place: None,
        answer: AnswerKind::Ok,
        word: None,
        severity: None,
        figures: vec![ItemFigure { figure: Figure::parse("38", Unit::Percent).unwrap(), how: How::Asked }],
        on_screen_ms: Some(5_000),
        together: None,
        words: None,
        photos: Vec::new(),
    };
    walk.answer(template(), level).unwrap();
    let after = button("TH-01", &at_glass(&yard, &walk).main);
    insta::assert_yaml_snapshot!(json!({ "before the figure": before, "button after it": after }));
}

#[test]
fn f_the_lock_before_the_certificate() {
    let (yard, _) = lamp_out();
    let now = at("2026-10-19T07:00:00-06:00");
    let query = LastReportQuery { unit: TH_02, seen: Default::default() };
    let screen = last_report(&yard.ledger, &query, template(), &yard.standing, now).unwrap();
    insta::assert_yaml_snapshot!(json!({
        "today": see_today(&yard, BETTINA, "2026-10-19T07:00:00-06:00")["screen"]["units"][0]["road_air"],
        "report": &screen,
        "button": button("TH-02", &screen.main),
    }));
}

#[test]
fn g_the_certificate_waits_for_the_review_and_the_review_frees_the_road() {
    let (mut yard, found) = lamp_out();
    certify(&mut yard, found);
    let now = at("2026-10-19T08:00:00-06:00");
    yard.exchanged("2026-10-19T07:58:00-06:00");
    let query = LastReportQuery { unit: TH_02, seen: Default::default() };
    let rows = last_report(&yard.ledger, &query, template(), &yard.standing, now).unwrap();
    let seen = rows.defects.iter().map(|row| row.id.clone()).collect();
    let query = LastReportQuery { unit: TH_02, seen };
    let screen = last_report(&yard.ledger, &query, template(), &yard.standing, now).unwrap();
    let road = |yard: &Yard, now| {
        let screen =
            unit(&yard.ledger, &UnitQuery { unit: TH_02, person: AMOS }, &yard.standing, now).unwrap();
        screen.road_air.road
    };
    let waiting = road(&yard, now);
    let certificates = json!(screen.to_review);
    yard.phone(&format!(
        r#"{{"unit":"TH-02","person":"Amos Tillery","at":"2026-10-19T08:10:00-06:00","kind":"review","body":{{"certificates":{certificates},"report":"{found}"}}}}"#
    ));
    let free = road(&yard, at("2026-10-19T08:11:00-06:00"));
    insta::assert_yaml_snapshot!(json!({
        "road before the review": waiting,
        "report": &screen,
        "button": button("TH-02", &screen.main),
        "road after the review": free,
    }));
}

#[test]
fn h_the_glass_on_site() {
    let mut yard = walked();
    let look = |yard: &Yard, given, said_stopped, now: &str| {
        let query = GlassQuery { unit: TH_01, given, said_stopped };
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
    let fresh = see(&yard)["button"].clone();
    for (when, person, told) in [("15:22", "Gil Sandoval", false), ("15:10", "Bettina Quaye", true)] {
        yard.phone(&format!(
            r#"{{"unit":"TH-01","person":"{person}","at":"2026-10-19T{when}:00-06:00","kind":"acknowledgement","body":{{"note":"{note}","told-shop":{told}}}}}"#
        ));
    }
    insta::assert_yaml_snapshot!(json!({ "before an answer": fresh, "after two": see(&yard) }));
}

#[test]
fn k_hours_are_asked_about_and_never_refused() {
    let mut yard = walked();
    let see = |yard: &Yard, typed: Option<&str>, now: &str| {
        let query = HoursQuery { unit: TH_01, typed: typed.map(|text| text.parse::<Tenths>().unwrap()) };
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
    let after = hours(&yard.ledger, &HoursQuery { unit: TH_01, typed: None }, at(evening)).unwrap();
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

#[test]
fn n_a_record_reads_back_from_its_json() {
    let (yard, _) = lamp_out();
    let now = at("2026-10-19T07:00:00-06:00");
    let screen = today(&yard.ledger, &TodayQuery { person: AMOS }, &yard.standing, now).unwrap();
    let text = serde_json::to_string(&screen).unwrap();
    assert_eq!(serde_json::from_str::<TodayScreen>(&text).unwrap(), screen);
    let query = UnitQuery { unit: TH_02, person: AMOS };
    let screen = unit(&yard.ledger, &query, &yard.standing, now).unwrap();
    let text = serde_json::to_string(&screen).unwrap();
    assert_eq!(serde_json::from_str::<UnitScreen>(&text).unwrap(), screen);
}
