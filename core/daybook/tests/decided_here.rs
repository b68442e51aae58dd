//! What the core decides, so that no shell has to: which lock a slip is for, which meter judges a figure, how far round a
//! walk is, which step comes next.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::draft::{Draft, PreTripDraft, StepsDraft};
use sumpbook_daybook::screen::*;
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::hours::KeyboardAnswer;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::record::{Glass, Meter};
use sumpbook_trade::{OilFamily, Tenths};
use tern_hollow::{AMOS, BETTINA, TH_01, TH_02, Yard, at, template, walked};

const NOW: &str = "2026-10-19T09:00:00-06:00";

fn seen(yard: &Yard, truck: sumpbook_trade::TruckId, person: sumpbook_trade::PersonId) -> UnitScreen {
    unit(&yard.ledger, &UnitQuery { unit: truck, person }, &yard.standing, at(NOW)).unwrap()
}

/// TH-02 whose right mirror was found cracked, and whose oil is milky.
fn locked() -> Yard {
    locked_by().0
}

/// The same, with the walk that found it.
fn locked_by() -> (Yard, sumpbook_trade::EntryId) {
    let mut yard = Yard::new();
    let found = yard.phone(
        r#"{"unit":"TH-02","person":"Bettina Quaye","at":"2026-10-19T06:41:00-06:00","kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000902","edition":1,"answers":[{"item":"mirrors","place":"right","answer":"defect","word":"no-view"},{"item":"oil-look","answer":"defect","word":"milky"},{"item":"wipers","answer":"defect","word":"torn-dry"}],"complete":false}}"#,
    );
    (yard, found)
}

#[test]
fn a_lock_is_only_here_until_the_shop_has_what_locks() {
    let (mut yard, found) = locked_by();
    let only_here = |yard: &Yard| seen(yard, TH_02, AMOS).locked_only_here;
    assert_eq!(only_here(&yard), [LockPart::Road, LockPart::Air]);
    assert_eq!(seen(&walked(), TH_01, AMOS).locked_only_here, []);
    // A receipt covers the walk.
    yard.standing.on_phone.remove(&found);
    assert_eq!(only_here(&yard), []);
    // Another reason for a lock that the shop knows of is no lock that it does not know of.
    let line = r#"{"unit":"TH-02","person":"Amos Tillery","at":"2026-10-19T07:20:00-06:00","kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000903","edition":1,"answers":[{"item":"mirrors","place":"left","answer":"defect","word":"no-view"}],"complete":false}}"#;
    yard.phone(line);
    assert_eq!(only_here(&yard), []);
}

#[test]
fn what_the_shop_has_as_a_note_and_this_phone_as_a_lock_is_only_here() {
    let mut yard = Yard::new();
    let say = |walk: u32, at: &str, severity: &str| {
        format!(
            r#"{{"unit":"TH-02","person":"Amos Tillery","at":"2026-10-19T{at}:00-06:00","kind":"pre-trip-section","body":{{"walk":"00000000-0000-0000-0000-000000000{walk}","edition":1,"answers":[{{"item":"mirrors","place":"left","answer":"defect","word":"hairline"{severity}}}],"complete":false}}}}"#
        )
    };
    let note = yard.phone(&say(904, "06:41", ""));
    yard.standing.on_phone.remove(&note);
    assert_eq!(seen(&yard, TH_02, AMOS).locked_only_here, []);
    yard.phone(&say(905, "07:20", r#","severity":"road""#));
    assert_eq!(seen(&yard, TH_02, AMOS).locked_only_here, [LockPart::Road]);
}

#[test]
fn a_unit_without_a_report_is_known_since_what_is_held_of_it_first() {
    // The shop brought in a service of 2021.
    assert_eq!(
        seen(&locked(), TH_02, AMOS).known_since.map(|day| day.to_string()).as_deref(),
        Some("2021-11-30")
    );
    let unknown = sumpbook_trade::TruckId(uuid::Uuid::from_u128(0x0109));
    assert_eq!(seen(&locked(), unknown, AMOS).known_since, None);
}

#[test]
fn a_slip_speaks_of_what_locks_and_of_nothing_else() {
    let screen = seen(&locked(), TH_02, AMOS);
    let named: Vec<(&str, Option<&str>)> =
        screen.slip_for.iter().map(|name| (name.item.as_str(), name.place.as_deref())).collect();
    let locks: Vec<&str> = screen
        .road_air
        .road
        .why
        .iter()
        .chain(&screen.road_air.air.why)
        .map(|why| why.item.as_str())
        .collect();
    assert!(!named.is_empty() && named.len() == locks.len(), "{named:?} {locks:?}");
    assert!(named.contains(&("mirrors", Some("right"))), "{named:?}");
    assert_eq!(screen.used_all_the_same, [LockPart::Road, LockPart::Air]);
    let free = seen(&walked(), TH_01, AMOS);
    assert!(free.slip_for.is_empty() && free.used_all_the_same.is_empty());
}

#[test]
fn another_walk_and_the_days_report_stand_beside_whatever_the_button_does() {
    let report = MainAct::ReportEndOfDay { draft: None };
    assert_eq!(seen(&Yard::new(), TH_01, AMOS).also, std::slice::from_ref(&report));
    let own = seen(&walked(), TH_01, AMOS);
    assert_eq!((&own.main.act, own.also.as_slice()), (&report, [MainAct::StartPreTrip].as_slice()));
    let other = seen(&walked(), TH_01, BETTINA);
    assert!(matches!(other.main.act, MainAct::TakeOver { .. }));
    assert_eq!(other.also, [MainAct::StartPreTrip, report]);
    let table = Procedures::common_practice().unwrap();
    assert!(own.procedures.iter().all(|procedure| table.of(procedure).is_some()), "{:?}", own.procedures);
}

#[test]
fn a_line_without_a_side_says_what_is_open_on_either_of_them() {
    let yard = locked();
    let rows = lines_of_unit(&yard.ledger, TH_02, template(), at(NOW)).unwrap();
    let mirrors = rows.iter().find(|row| row.item == "mirrors").unwrap();
    assert_eq!(mirrors.place, None, "one look covers both");
    assert_eq!(mirrors.open_since, Some(at("2026-10-19T06:41:00-06:00")));
    assert_eq!(mirrors.open_word.as_deref(), Some("no-view"));
    assert!(rows.iter().all(|row| row.answer.is_none()));
}

#[test]
fn how_far_round_a_walk_is_goes_by_its_own_stops() {
    let mut yard = Yard::new();
    let stops = yard.walk(TH_01);
    let skipped = stops.iter().zip(1u32..).find(|(stop, at)| stop.label() != at.to_string());
    let (stop, position) = skipped.expect("a unit without a trailer has fewer stops than the checklist");
    let mut walk: PreTripDraft = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    walk.reach(stop, position);
    yard.ledger.keep_draft(&Draft::PreTrip(walk.clone()), 1).unwrap();
    let screen = seen(&yard, TH_01, AMOS);
    let MainAct::GoOn { stop: label, at: place, .. } = &screen.main.act else { panic!("{:?}", screen.main) };
    assert_eq!((label.as_deref(), *place), (Some(stop.label().as_str()), Some(position)));
    let page = signing(&yard.ledger, &walk, template(), None, at(NOW)).unwrap();
    assert!(page.stops.iter().map(|stop| stop.at).eq(1..=u32::try_from(stops.len()).unwrap()));
    assert_eq!((page.open_at, page.quick), (Some(1), None));
    // A draft that an older version kept has no place: its label is all there is.
    let older = serde_json::to_string(&walk).unwrap().replace(&format!(",\"position\":{position}"), "");
    assert_eq!(serde_json::from_str::<PreTripDraft>(&older).unwrap().position, None);
}

#[test]
fn a_figure_is_judged_by_its_own_meters_readings() {
    let mut yard = walked();
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T06:30:00-06:00","kind":"hour-reading","body":{"meter":"engine","figure":"5120.0","how":"asked","kept-when-asked":false}}"#,
    );
    let ask = |meter, typed: &str| {
        let query = HoursQuery { unit: TH_01, meter, typed: Some(typed.parse::<Tenths>().unwrap()) };
        hours(&yard.ledger, &query, at(NOW)).unwrap()
    };
    let engine = ask(Meter::Engine, "5121.0");
    assert_eq!(engine.last.as_ref().map(|row| row.figure.to_string()).as_deref(), Some("5120.0"));
    assert_eq!(engine.asked, Some(KeyboardAnswer::Fits));
    assert!(matches!(ask(Meter::Compressor, "5121.0").asked, Some(KeyboardAnswer::AboveCeiling { .. })));
    assert!(matches!(ask(Meter::Engine, "5119.0").asked, Some(KeyboardAnswer::Backwards { .. })));
    let pto = ask(Meter::Pto, "12.0");
    assert_eq!((pto.last, pto.asked, pto.ceiling), (None, Some(KeyboardAnswer::Fits), None));
}

#[test]
fn a_top_up_says_its_caution_and_what_it_asks_for_next() {
    let mut yard = walked();
    let mut draft = yard.top_up(TH_01, AMOS, "2026-10-19T07:00:00-06:00");
    let see = |draft: &_| top_up(&yard.ledger, draft, at(NOW)).unwrap();
    let shut = see(&draft);
    assert_eq!((shut.cautions.as_slice(), shut.settle_s), (["zero-two-signs".to_owned()].as_slice(), 120));
    assert!(shut.only_if_poured && shut.wants_before && shut.wants_after && !shut.may_not_pour);
    draft.signs.gauge_zero = Some(true);
    draft.signs.blow_down_silent = Some(true);
    let open = see(&draft);
    assert_eq!((open.cautions.as_slice(), open.only_if_poured), (["oil-match".to_owned()].as_slice(), false));
    (draft.family, draft.grade) = (Some(OilFamily::Mineral), Some("ISO VG 46".into()));
    draft.before = Some(Glass::Percent(30));
    assert_eq!(see(&draft).cautions, ["cap-slow"]);
    draft.before = Some(Glass::Percent(50));
    assert_eq!(see(&draft).cautions, ["no-bleeding"]);
    draft.family = Some(OilFamily::Polyglycol);
    let other = see(&draft);
    assert!(other.may_not_pour && other.only_if_poured);
}

#[test]
fn steps_that_were_said_are_gone_on_with_after_a_kill() {
    let mut yard = walked();
    let table = Procedures::common_practice().unwrap();
    let id = yard.id();
    let mut draft = StepsDraft::begin(id, TH_01, AMOS, "start".into(), at(NOW));
    let say = |step: &str, not_so: Option<&str>| StepSaid {
        step: step.into(),
        at: at(NOW),
        not_so: not_so.map(str::to_owned),
        figure: None,
        place: None,
    };
    let see = |yard: &Yard, person| {
        let query = StepsQuery { unit: TH_01, procedure: "start".into(), person: Some(person) };
        steps(&yard.ledger, &query, table, at(NOW)).unwrap().unwrap()
    };
    assert_eq!((see(&yard, AMOS).behind, see(&yard, AMOS).draft), (0, None));
    let first = see(&yard, AMOS).steps[0].clone();
    let waits = first.not_so.iter().find(|row| row.means == NotSo::Wait);
    if let Some(word) = waits {
        draft.say(say(&first.id, Some(&word.word)).done());
        yard.ledger.keep_draft(&Draft::Steps(draft.clone()), 1).unwrap();
        assert_eq!(see(&yard, AMOS).behind, 0, "what has to wait is not behind one");
    }
    draft.say(say(&first.id, None).done());
    yard.ledger.keep_draft(&Draft::Steps(draft.clone()), 1).unwrap();
    let after = see(&yard, AMOS);
    assert_eq!((after.behind, after.draft, after.said.len()), (1, Some(id), draft.steps.len()));
    assert_eq!(see(&yard, BETTINA).behind, 0, "they are whose they are");
    assert_eq!(seen(&yard, TH_01, AMOS).steps_under_way.as_deref(), Some("start"));
}

#[test]
fn what_is_told_again_has_its_line_on_the_walk() {
    let mut yard = locked();
    let walk = yard.pre_trip(TH_02, AMOS, "2026-10-19T07:25:00-06:00");
    let rows = not_what_i_see(&yard.ledger, &walk, template(), at(NOW)).unwrap();
    assert_eq!(rows.len(), 3, "{rows:?}");
    let mirrors = rows.iter().find(|row| row.item == "mirrors").unwrap();
    assert_eq!((mirrors.place.as_deref(), mirrors.line.as_deref()), (Some("right"), Some("mirrors")));
    assert!(yard.walk(TH_02).iter().any(|stop| Some(stop.label()) == mirrors.stop));
}

#[test]
fn an_open_line_says_which_part_its_defect_waits_for_until_it_is_over() {
    let (mut yard, found) = locked_by();
    let waits = |yard: &Yard, item: &str| {
        let rows = lines_of_unit(&yard.ledger, TH_02, template(), at(NOW)).unwrap();
        rows.into_iter().find(|row| row.item == item).unwrap().waits_for
    };
    let told = |over: bool, minute: u32, defect: &str| {
        format!(
            r#"{{"unit":"TH-02","person":"Wren Castellane","at":"2026-10-19T08:{minute}:00-06:00","source":"shop","kind":"waiting-for-part","body":{{"task":null,"part":"mirror glass","promised":"2026-10-26","over":{over}{defect}}}}}"#
        )
    };
    let mirror = format!(r#","defect":{{"entry":"{found}","item":"mirrors","place":"right"}}"#);
    yard.shop(&told(false, 10, &mirror));
    assert_eq!(waits(&yard, "mirrors").as_deref(), Some("mirror glass"));
    assert_eq!(waits(&yard, "wipers"), None);
    yard.shop(&told(true, 20, &mirror));
    assert_eq!(waits(&yard, "mirrors"), None);
    // A wait that an older program kept names no defect; it is ended by naming one.
    yard.shop(&told(false, 30, ""));
    assert_eq!(waits(&yard, "mirrors"), None);
    let open = |yard: &Yard| yard.ledger.unit_state(TH_02).unwrap().waiting.len();
    assert_eq!(open(&yard), 1);
    yard.shop(&told(true, 40, &mirror));
    assert_eq!(open(&yard), 0);
    // A certified defect waits for nothing.
    yard.shop(&told(false, 50, &mirror));
    yard.shop(&format!(
        r#"{{"unit":"TH-02","person":"Wren Castellane","at":"2026-10-19T08:55:00-06:00","source":"shop","kind":"certificate","body":{{"defect":{{"entry":"{found}","item":"mirrors","place":"right"}},"verdict":"repaired","words":"glass changed"}}}}"#
    ));
    assert_eq!(open(&yard), 0);
}
