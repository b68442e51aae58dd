//! A driver's day, screen by screen: what each record holds, from before the walk to the review of a repair.
//!
//! Invented data, figures of the worked month, outcomes worked by rule. Each snapshot is one screen.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use serde_json::{Value, json};
use sumpbook_daybook::draft::Draft;
use sumpbook_daybook::screen::*;
use sumpbook_daybook::text::Texts;
use sumpbook_trade::record::{Answer, AnswerKind, How, ItemFigure};
use sumpbook_trade::{Figure, Unit};
use tern_hollow::{AMOS, BETTINA, TH_01, TH_02, Yard, at, button, see_today, template, walked};

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
        sound: None,
    };
    walk.answer(template(), defect).unwrap();
    let other = show(&yard, &walk, &seen(&opened, 14_000));
    let stops = yard.walk(TH_01);
    let answered = walk.ok_together(template(), &stops[0], &Default::default(), 14_000).unwrap();
    assert_eq!(answered, stops[0].lines.len() - 1);
    let done = show(&yard, &walk, &seen(&opened, 14_100));
    walk.reach(&stops[1], 2);
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
        sound: None,
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

#[test]
fn whoever_looks_at_the_papers_is_told_that_the_annual_inspection_ran_out() {
    let mut yard = Yard::new();
    let registered = include_str!("tern_hollow/fleet.jsonl").lines().nth(1).unwrap();
    let mut caution = |until: &str| {
        let until = format!(r#""annual-inspection":"{until}","in-service""#);
        yard.shop(&registered.replacen(r#""in-service""#, &until, 1).replace("T08:00", "T09:00"));
        let now = at("2026-10-19T06:20:00-06:00");
        let walk = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:20:00-06:00");
        let screen = stop(&yard.ledger, &walk, &unseen(0), template(), now).unwrap().unwrap();
        let papers = (1..=screen.of).find_map(|number| {
            let query = StopQuery { stop: Some(number.to_string()), seen: Default::default(), open_ms: 0 };
            let screen = stop(&yard.ledger, &walk, &query, template(), now).unwrap()?;
            screen.lines.into_iter().find(|line| line.item == "papers")
        });
        papers.unwrap().caution
    };
    assert_eq!(caution("2026-10-18").as_deref(), Some("inspection-over"));
    assert_eq!(caution("2026-10-19").as_deref(), Some("inspection-near"), "its last day");
    assert_eq!(caution("2026-11-18").as_deref(), Some("inspection-near"));
    assert_eq!(caution("2026-11-19"), None);
}
