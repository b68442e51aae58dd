//! Drafts survive a kill, carry the id their entry will have, and are gone once it is recorded.
//!
//! Invented data: the fleet Tern Hollow Water.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::draft::{
    Draft, DraftError, Elsewhere, Extent, MissingSign, PreTripDraft, ReviewDraft, place_of,
};
use sumpbook_daybook::ledger::{Ledger, NewEntry, Root};
use sumpbook_daybook::store::DraftRow;
use sumpbook_trade::checklist::{Line, PlannedStop, Severity};
use sumpbook_trade::record::{Answer, AnswerKind, Glass, How, ItemFigure, Pour};
use sumpbook_trade::{Entry, EntryId, Fact, Figure, Unit};
use tern_hollow::{AMOS, BETTINA, TH_01, Yard, signing, template};

fn answer(line: &Line, kind: AnswerKind) -> Answer {
    Answer {
        item: line.item.clone(),
        place: place_of(line),
        answer: kind,
        word: None,
        severity: None,
        figures: Vec::new(),
        on_screen_ms: Some(3_000),
        together: None,
        words: None,
        photos: Vec::new(),
        sound: None,
    }
}

/// Answers a stop as a driver would: figures first, the rest by one tap.
fn answer_stop(walk: &mut PreTripDraft, stop: &PlannedStop, elsewhere: &Elsewhere) {
    walk.reach(stop, walk.position.map_or(1, |before| before + 1));
    for line in &stop.lines {
        let mut ok = answer(line, AnswerKind::Ok);
        if walk.answer(template(), ok.clone()).is_err() {
            let unit = if line.item == "oil-level" { Unit::Percent } else { Unit::Psi };
            ok.figures = vec![ItemFigure { figure: Figure::parse("2", unit).unwrap(), how: How::Timed }];
            walk.answer(template(), ok).unwrap();
        } else {
            walk.take_back(line);
        }
    }
    let _ = walk.ok_together(template(), stop, elsewhere, 14_000);
}

#[test]
fn a_walk_goes_on_after_a_kill_and_is_signed_under_the_id_it_had() {
    let mut yard = Yard::new();
    let stops = yard.walk(TH_01);
    let mut walk = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    assert!(walk.answers.is_empty() && walk.stop.is_none(), "nothing is answered beforehand");
    walk.hours = Some("2862.4".parse().unwrap());
    for stop in &stops[..5] {
        answer_stop(&mut walk, stop, &Elsewhere::new());
        yard.ledger.keep_draft(&Draft::PreTrip(walk.clone()), 1).unwrap();
    }
    let id = walk.id;
    let folder = tempfile::tempdir().unwrap();
    let root = Root { fleet: yard.ledger.root().fleet, shop: yard.ledger.root().shop };
    // A kill: another program opens the same folder and finds the draft as it was last kept.
    {
        let (mut first, _) = Ledger::open(folder.path(), root, key()).unwrap();
        first.keep_draft(&Draft::PreTrip(walk.clone()), 1).unwrap();
    }
    let (mut second, _) = Ledger::open(folder.path(), root, key()).unwrap();
    let Some(Draft::PreTrip(mut walk)) = second.draft(id).unwrap() else { panic!("the draft is gone") };
    assert_eq!((walk.stop.clone(), walk.position), (Some(stops[4].label()), Some(5)));

    let sign = signing("2026-10-19T06:32:00-06:00");
    let early = walk.sign(yard.ledger.fleet(), &stops, &Elsewhere::new(), Extent::Whole, &sign);
    let left = stops[5].lines.len();
    assert_eq!(early, Err(DraftError::StopOpen { stop: stops[5].label(), at: 6, left }));
    for stop in &stops[5..] {
        answer_stop(&mut walk, stop, &Elsewhere::new());
    }
    walk.walked_ms = Some(430_000);
    let entries = walk.sign(yard.ledger.fleet(), &stops, &Elsewhere::new(), Extent::Whole, &sign).unwrap();
    assert_eq!(entries.len(), 1);
    assert_eq!(entries[0].id, id);
    let Fact::PreTripSection(section) = &entries[0].fact else { panic!() };
    assert!(section.complete && section.seconds == Some(430));
    assert_eq!(section.answers.len(), stops.iter().map(|stop| stop.lines.len()).sum::<usize>());

    let first = second.record_signed(entries.clone(), 2).unwrap();
    assert_eq!(second.drafts().unwrap().drafts, [], "the draft went with its entry");
    assert_eq!(second.record_signed(entries, 3).unwrap(), first, "once more records nothing twice");
}

fn key() -> sumpbook_daybook::gate::DeviceKey {
    sumpbook_daybook::gate::DeviceKey::from_secret(&[2; 32])
}

#[test]
fn a_draft_stays_when_its_entry_is_refused() {
    let mut yard = Yard::new();
    let mut report = yard.end_of_day(TH_01, AMOS, "2026-10-19T16:25:00-06:00");
    report.none_found();
    report.to_next = Some("a".repeat(17_000));
    yard.ledger.keep_draft(&Draft::EndOfDay(report.clone()), 0).unwrap();
    let entry = report.sign(yard.ledger.fleet(), &signing("2026-10-19T16:30:00-06:00")).unwrap();
    assert!(yard.ledger.record(&[NewEntry::about_its_unit(entry)], 0).is_err());
    assert_eq!(yard.ledger.drafts().unwrap().drafts, [Draft::EndOfDay(report)]);
}

#[test]
fn two_people_share_a_walk() {
    let mut yard = Yard::new();
    let stops = yard.walk(TH_01);
    let mut amos = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    amos.hours = Some("2862.4".parse().unwrap());
    for stop in &stops[..9] {
        answer_stop(&mut amos, stop, &Elsewhere::new());
    }
    let sign = signing("2026-10-19T06:30:00-06:00");
    let part = amos.sign(yard.ledger.fleet(), &stops, &Elsewhere::new(), Extent::Part, &sign).unwrap();
    let Fact::PreTripSection(section) = &part[0].fact else { panic!() };
    assert!(!section.complete);
    let elsewhere: Elsewhere =
        section.answers.iter().map(|answer| (answer.item.clone(), answer.place.clone())).collect();

    let mut bettina =
        PreTripDraft { walk: amos.walk, ..yard.pre_trip(TH_01, BETTINA, "2026-10-19T06:26:00-06:00") };
    bettina.hours = amos.hours;
    for stop in &stops[9..] {
        answer_stop(&mut bettina, stop, &elsewhere);
    }
    let rest = bettina.sign(yard.ledger.fleet(), &stops, &elsewhere, Extent::Whole, &sign).unwrap();
    let Fact::PreTripSection(section) = &rest[0].fact else { panic!() };
    assert!(section.complete, "with what Amos signed");
    let tap = bettina.ok_together(template(), &stops[0], &elsewhere, 14_000);
    assert_eq!(tap, Err(DraftError::NothingTogether), "those lines are Amos's");
}

#[test]
fn a_review_is_signed_with_the_walk_as_its_own_entry() {
    let mut yard = Yard::new();
    let stops = yard.walk(TH_01);
    let mut walk = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    let (id, certificate) = (yard.id(), yard.id());
    walk.review = Some(ReviewDraft { id, report: None, certificates: vec![certificate] });
    answer_stop(&mut walk, &stops[0], &Elsewhere::new());
    let sign = signing("2026-10-19T06:32:00-06:00");
    let entries = walk.sign(yard.ledger.fleet(), &stops, &Elsewhere::new(), Extent::Part, &sign).unwrap();
    let ids: Vec<EntryId> = entries.iter().map(|entry| entry.id).collect();
    assert_eq!(ids, [id, walk.id]);
    assert!(matches!(&entries[0].fact, Fact::Review(review) if review.certificates == [certificate]));
}

#[test]
fn an_answer_without_its_figure_is_none_and_a_defect_locks_by_the_checklist() {
    let mut yard = Yard::new();
    let mut walk = yard.pre_trip(TH_01, AMOS, "2026-10-19T06:25:00-06:00");
    let level = Line::of("oil-level");
    let told = walk.answer(template(), answer(&level, AnswerKind::Ok));
    assert_eq!(told, Err(DraftError::FigureMissing("oil-level".into())));
    let hours = Line::of("hours");
    assert!(walk.answer(template(), answer(&hours, AnswerKind::Ok)).is_err());
    walk.hours = Some("2862.4".parse().unwrap());
    walk.answer(template(), answer(&hours, AnswerKind::Ok)).unwrap();
    let defect = Answer { word: Some("below-view".into()), ..answer(&level, AnswerKind::Defect) };
    walk.answer(template(), defect).unwrap();
    assert_eq!(walk.answer_to(&level).unwrap().severity, Some(Severity::Air));
}

#[test]
fn no_pour_without_both_signs_unless_it_is_poured_already() {
    let mut yard = Yard::new();
    let mut top_up = yard.top_up(TH_01, AMOS, "2026-10-19T07:00:00-06:00");
    let volume = Figure::parse("0.13", Unit::Quart).unwrap();
    let pour = Pour { volume, after: Some(Glass::Percent(52)), waited_ms: None };
    assert_eq!(top_up.pour(pour.clone(), false), Err(DraftError::GateClosed(MissingSign::Both)));
    top_up.signs.gauge_zero = Some(true);
    assert_eq!(top_up.pour(pour.clone(), false), Err(DraftError::GateClosed(MissingSign::BlowDownSilent)));
    top_up.signs.blow_down_silent = Some(false);
    assert_eq!(top_up.pour(pour.clone(), false), Err(DraftError::GateClosed(MissingSign::BlowDownSilent)));
    let sign = signing("2026-10-19T07:10:00-06:00");
    assert_eq!(top_up.sign(yard.ledger.fleet(), &sign), Err(DraftError::NothingPoured));
    let none = Pour { volume: Figure::parse("0.00", Unit::Quart).unwrap(), ..pour.clone() };
    assert_eq!(top_up.pour(none, true), Err(DraftError::NoVolume));
    top_up.pour(pour, true).unwrap();
    assert_eq!(top_up.sign(yard.ledger.fleet(), &sign), Err(DraftError::CapOpen));
    top_up.cap_tight = Some(true);
    let entry = top_up.sign(yard.ledger.fleet(), &sign).unwrap();
    let Fact::TopUp(told) = &entry.fact else { panic!() };
    assert_eq!((told.blow_down_silent, told.after), (Some(false), Some(Glass::Percent(52))));
    assert!(entry.set.is_some() && entry.id == top_up.id);
}

#[test]
fn a_report_says_one_thing_or_the_other() {
    let mut yard = Yard::new();
    let mut report = yard.end_of_day(TH_01, AMOS, "2026-10-19T16:25:00-06:00");
    let sign = signing("2026-10-19T16:30:00-06:00");
    assert_eq!(report.sign(yard.ledger.fleet(), &sign), Err(DraftError::DefectsNotSaid));
    report.none_found();
    let horn = Answer { word: Some("weak".into()), ..answer(&Line::of("horn"), AnswerKind::Defect) };
    report.defect(template(), horn).unwrap();
    assert!(!report.none_found, "a defect takes 'none found' back");
    let entry: Entry = report.sign(yard.ledger.fleet(), &sign).unwrap();
    let Fact::EndOfDay(told) = &entry.fact else { panic!() };
    assert_eq!(told.defects[0].severity, Some(Severity::Road));
    report.none_found();
    assert!(report.defects.is_empty());
}

#[test]
fn a_draft_of_a_newer_version_is_kept_and_told() {
    let mut yard = Yard::new();
    let id = yard.id();
    let body = r#"{"kind":"lift-plan","draft":{}}"#.to_owned();
    yard.ledger.store_mut().keep_draft(&DraftRow { id, body: body.clone(), changed_ms: 0 }).unwrap();
    let all = yard.ledger.drafts().unwrap();
    assert_eq!((all.drafts.len(), all.unreadable), (0, vec![id]));
    assert_eq!(yard.ledger.store().draft(id).unwrap().unwrap().body, body);
    yard.ledger.give_up_draft(id).unwrap();
    assert_eq!(yard.ledger.drafts().unwrap().unreadable, []);
}
