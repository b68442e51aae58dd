//! The second driver at noon, the page that is signed, sides, first walks, the officer's page, a person's own figures.
//!
//! Invented data, outcomes worked by rule.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::draft::{Draft, Elsewhere, Extent, PreTripDraft};
use sumpbook_daybook::screen::*;
use sumpbook_trade::checklist::{HowGiven, Part};
use sumpbook_trade::record::{Answer, AnswerKind, How, ItemFigure};
use sumpbook_trade::{Fact, Figure, Unit};
use tern_hollow::{AMOS, BETTINA, TH_01, Yard, at, signing as sign_at, template, walked};

const NOON: &str = "2026-10-19T12:10:00-06:00";

fn answer(item: &str, place: Option<&str>, kind: AnswerKind, word: Option<&str>) -> Answer {
    Answer {
        item: item.to_owned(),
        place: place.map(str::to_owned),
        answer: kind,
        word: word.map(str::to_owned),
        severity: None,
        figures: vec![],
        on_screen_ms: Some(9_000),
        together: None,
        words: None,
        photos: vec![],
        sound: None,
    }
}

fn unit_main(yard: &Yard, person: sumpbook_trade::PersonId, now: &str) -> MainAct {
    let query = UnitQuery { unit: TH_01, person };
    unit(&yard.ledger, &query, &yard.standing, at(now)).unwrap().main.act
}

/// Answers every stop of a draft by one tap each, the drop by its figure after `test_ms`.
fn walk_all(yard: &Yard, draft: &mut PreTripDraft, now: &str, test_ms: u32) -> Vec<String> {
    let (stops, elsewhere) = walk_of(&yard.ledger, template(), draft, at(now)).unwrap();
    for stop in &stops {
        for line in &stop.lines {
            let number = template().item(&line.item).unwrap().number.as_ref();
            let figure = match number.map(|number| number.how) {
                Some(HowGiven::Chosen) => ("2", Unit::Psi, How::Chosen),
                Some(HowGiven::Timed) => ("31", Unit::Second, How::Timed),
                _ => continue,
            };
            let given = ItemFigure { figure: Figure::parse(figure.0, figure.1).unwrap(), how: figure.2 };
            let answered = answer(&line.item, None, AnswerKind::Ok, None);
            let answered = Answer { figures: vec![given], on_screen_ms: Some(test_ms), ..answered };
            draft.answer(template(), answered).unwrap();
        }
        // A stop whose one line was given by its figure has nothing left to answer together.
        let _ = draft.ok_together(template(), stop, &elsewhere, 14_000);
    }
    stops.iter().map(|stop| stop.id.clone()).collect()
}

#[test]
fn the_second_driver_reads_the_firsts_record_and_walks_a_short_one() {
    let mut yard = walked();
    assert!(matches!(unit_main(&yard, AMOS, NOON), MainAct::ReportEndOfDay { .. }), "his own walk covers");
    let MainAct::TakeOver { after } = unit_main(&yard, BETTINA, NOON) else { panic!("a take-over") };

    let query = TakeOverQuery { unit: TH_01, after, seen: Default::default() };
    let read = take_over(&yard.ledger, &query, template(), &yard.standing, at(NOON))
        .unwrap()
        .expect("the walk is held");
    assert_eq!((read.by.as_slice(), read.ok), (&["Amos Tillery".to_owned()][..], 2));
    assert_eq!(read.hours.map(|hours| hours.to_string()).as_deref(), Some("2862.4"));
    assert_eq!(read.figures[0].figures[0].figure.to_string(), "38 %");

    let mut draft = yard.pre_trip(TH_01, BETTINA, NOON);
    draft.follows = first_walk(&yard.ledger, TH_01, after).unwrap();
    assert_eq!(draft.follows.unwrap().glass, Some(38));
    let glass = StopQuery { stop: Some("11".to_owned()), seen: Default::default(), open_ms: 5_000 };
    let screen = stop(&yard.ledger, &draft, &glass, template(), at(NOON)).unwrap().unwrap();
    assert_eq!(screen.main.act, MainAct::StillAsShown { percent: 38, lines: 3 });
    assert_eq!(screen.of, read.stops);

    let stops = walk_all(&yard, &mut draft, NOON, 60_500);
    assert_eq!(stops, ["front", "left-side", "rear", "right-side", "glass", "leak-applied"]);
    let page = signing(&yard.ledger, &draft, template(), Some(70_000), at(NOON)).unwrap();
    assert_eq!((page.short, page.quick, page.open_stop), (true, None, None), "a short walk is short");

    let (planned, elsewhere) = walk_of(&yard.ledger, template(), &draft, at(NOON)).unwrap();
    let entries =
        draft.sign(yard.ledger.fleet(), &planned, &elsewhere, Extent::Whole, &sign_at(NOON)).unwrap();
    let Fact::PreTripSection(section) = &entries[0].fact else { panic!("a section") };
    assert_eq!((section.follows, section.complete), (Some(after), true));
    let level = section.answers.iter().find(|answer| answer.item == "oil-level").unwrap();
    assert_eq!((level.figures[0].figure.to_string().as_str(), level.figures[0].how), ("38 %", How::Said));
    yard.record(entries);
    assert!(matches!(unit_main(&yard, BETTINA, NOON), MainAct::ReportEndOfDay { .. }), "hers covers now");
    assert!(matches!(unit_main(&yard, AMOS, NOON), MainAct::ReportEndOfDay { .. }), "his still does");
}

#[test]
fn the_page_that_is_signed_says_what_was_together_what_was_not_looked_at_and_that_it_was_quick() {
    let yard = Yard::new();
    let when = "2026-10-19T06:30:00-06:00";
    let mut walk = yard_walk(&yard, when);
    walk.hours = Some("2862.4".parse().unwrap());
    let glass = ItemFigure { figure: Figure::parse("48", Unit::Percent).unwrap(), how: How::Asked };
    let level = answer("oil-level", None, AnswerKind::Ok, None);
    walk.answer(template(), Answer { figures: vec![glass], ..level }).unwrap();
    walk.answer(template(), answer("horn", None, AnswerKind::Defect, Some("weak"))).unwrap();
    walk.answer(template(), answer("belts", None, AnswerKind::CouldNotCheck, None)).unwrap();
    let page = signing(&yard.ledger, &walk, template(), None, at(when)).unwrap();
    assert_eq!(page.open_stop.as_deref(), Some("1"), "the first that is open");

    walk_all(&yard, &mut walk, when, 60_000);
    let page = signing(&yard.ledger, &walk, template(), Some(430_000), at(when)).unwrap();
    let all: u32 = page.stops.iter().map(|stop| stop.lines).sum();
    let timed = 3;
    assert_eq!((page.open_stop, page.quick), (None, None));
    assert_eq!(page.ok, all - 2, "all but the horn and the belts");
    assert_eq!(
        page.ok_together,
        page.ok - timed - 1,
        "two drops, the build-up and the glass were given by themselves"
    );
    assert_eq!((page.defects.len(), page.not_checked.len()), (1, 1));
    assert_eq!(page.figures.len(), 4);

    let quick = |walk: &PreTripDraft, ms| {
        signing(&yard.ledger, walk, template(), Some(ms), at(when)).unwrap().quick.is_some()
    };
    assert!(quick(&walk, 179_999) && !quick(&walk, 180_000), "3 minutes with air brakes");
    let drop = ItemFigure { figure: Figure::parse("2", Unit::Psi).unwrap(), how: How::Chosen };
    let early = answer("air-leak-applied", None, AnswerKind::Ok, None);
    walk.answer(template(), Answer { figures: vec![drop], on_screen_ms: Some(59_999), ..early }).unwrap();
    assert!(quick(&walk, 430_000), "a test answered before its minute");
}

#[test]
fn what_is_locked_stays_locked_for_whoever_takes_over() {
    let mut yard = walked();
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T09:00:00-06:00","kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000901","edition":1,"answers":[{"item":"wheels","place":"right","answer":"defect","word":"cracked"}],"seconds":20,"complete":false}}"#,
    );
    let MainAct::TakeOver { after } = unit_main(&yard, BETTINA, NOON) else { panic!("a take-over") };
    let mut query = TakeOverQuery { unit: TH_01, after, seen: Default::default() };
    let read = |query: &TakeOverQuery| {
        take_over(&yard.ledger, query, template(), &yard.standing, at(NOON)).unwrap().unwrap()
    };
    let unread = read(&query);
    assert_eq!(unread.ok, 2, "both parts of the one walk");
    assert_eq!(unread.main.why_not, Some(DisabledReason::MoreBelow { left: 1 }));
    query.seen = unread.defects.iter().map(|row| row.id.clone()).collect();
    assert_eq!(read(&query).main, Main { act: MainAct::ReadRoadStaysLocked, why_not: None });
}

fn yard_walk(yard: &Yard, when: &str) -> PreTripDraft {
    let id = sumpbook_trade::EntryId(uuid::Uuid::from_u128(77));
    let walk = sumpbook_trade::WalkId(id.0);
    assert!(yard.ledger.fleet().trucks.contains_key(&TH_01));
    PreTripDraft::begin(id, walk, TH_01, AMOS, template(), at(when))
}

#[test]
fn a_side_answers_the_line_that_covers_both_and_left_and_right_stand_beside_each_other() {
    let yard = Yard::new();
    let mut walk = yard_walk(&yard, "2026-10-19T06:30:00-06:00");
    let stops = yard.walk(TH_01);
    let (stop, line) = stops
        .iter()
        .find_map(|stop| stop.lines.iter().find(|line| line.item == "mirrors").map(|line| (stop, line)))
        .unwrap();
    let open = |walk: &PreTripDraft| walk.open_lines(stop, &Elsewhere::new()).count();
    let all = open(&walk);
    walk.answer(template(), answer("mirrors", Some("right"), AnswerKind::Defect, Some("cracked"))).unwrap();
    assert_eq!(open(&walk), all - 1);
    walk.answer(template(), answer("mirrors", Some("left"), AnswerKind::Defect, Some("loose"))).unwrap();
    assert_eq!(walk.answers.len(), 2, "each of its own side");
    walk.answer(template(), answer("mirrors", None, AnswerKind::Ok, None)).unwrap();
    assert_eq!(walk.answers.len(), 1, "the whole line takes the sides' place");
    walk.answer(template(), answer("mirrors", Some("right"), AnswerKind::Defect, Some("cracked"))).unwrap();
    assert_eq!(walk.answers.len(), 1, "and a side the whole line's");
    walk.take_back(line);
    assert_eq!((walk.answers.len(), open(&walk)), (0, all));
}

#[test]
fn an_officer_is_shown_the_eleven_parts_with_a_code_that_changes_with_the_books() {
    let mut yard = walked();
    let page = |yard: &Yard, when: &str| {
        roadside(&yard.ledger, TH_01, template(), &yard.standing, at(when)).unwrap()
    };
    let before = page(&yard, NOON);
    assert_eq!(before.parts.len(), 11);
    let horn = |page: &RoadsideScreen| page.parts.iter().find(|row| row.part == Part::Horn).unwrap().clone();
    assert_eq!((horn(&before).answer, horn(&before).by.as_deref()), (PartAnswer::Ok, Some("Amos Tillery")));
    let wipers = before.parts.iter().find(|row| row.part == Part::Wipers).unwrap();
    assert_eq!(wipers.answer, PartAnswer::NotAnswered, "not a word of it is made up");
    assert_eq!(before.signed.len(), 1);
    assert_eq!(page(&yard, NOON).check, before.check);

    yard.phone(
        r#"{"unit":"TH-01","person":"Bettina Quaye","at":"2026-10-19T11:58:00-06:00","kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000902","edition":1,"answers":[{"item":"horn","answer":"defect","word":"weak"}],"seconds":60,"complete":false}}"#,
    );
    let after = page(&yard, NOON);
    assert_eq!(
        (horn(&after).answer, horn(&after).by.as_deref()),
        (PartAnswer::Defect, Some("Bettina Quaye"))
    );
    assert_eq!((after.signed.len(), after.defects.len()), (2, 1));
    assert_ne!(after.check, before.check);
}

#[test]
fn own_figures_are_patterns_of_the_last_walks_and_say_of_how_many() {
    let mut yard = walked();
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-20T06:32:00-06:00","hours":"2865.0","pin-given":true,"kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000903","edition":1,"answers":[{"item":"oil-level","answer":"ok","figures":[{"figure":{"value":"50","unit":"%"},"how":"asked"}]},{"item":"horn","answer":"defect","word":"weak"}],"seconds":100,"complete":true}}"#,
    );
    let own = own_figures(&yard.ledger, AMOS, template(), at("2026-10-20T07:00:00-06:00")).unwrap();
    assert_eq!((own.walks, own.of, own.with_pin), (2, 20, 1));
    assert_eq!((own.median_s, own.crew_median_s), (Some(265), Some(265)));
    assert_eq!((own.quick, own.defects), (1, 1));
    assert_eq!((own.hours, own.hours_end_in_0), (2, 1));
    assert_eq!((own.glass, own.glass_at_50), (2, 1));
    let truth = yard.ledger.store().truth();
    let kind = sumpbook_trade::FactKind::PreTripSection.code().unwrap();
    assert!(truth.signed_fewer(AMOS, kind, 3).unwrap(), "two walks: the third still says more");
    assert!(!truth.signed_fewer(AMOS, kind, 2).unwrap());
}

#[test]
fn a_name_comes_off_after_its_end_of_day_and_not_with_something_under_way() {
    let mut yard = walked();
    let since = at("2026-10-19T06:00:00-06:00");
    let over = |yard: &Yard, now: &str| shift_is_over(&yard.ledger, AMOS, since, at(now)).unwrap();
    assert!(!over(&yard, NOON));
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T16:31:00-06:00","kind":"end-of-day","body":{"none-found":true}}"#,
    );
    let evening = "2026-10-19T16:32:00-06:00";
    assert!(over(&yard, evening));
    let draft = yard.top_up(TH_01, AMOS, evening);
    yard.ledger.keep_draft(&Draft::TopUp(draft), at(evening).unix_ms()).unwrap();
    assert!(!over(&yard, evening), "a top-up is under way");
    assert!(over(&yard, "2026-10-19T20:00:00-06:00"), "14 hours after the name was put there");
}
