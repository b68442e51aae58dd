//! What locks the air without anybody answering a line: a pour, a level, a second stop. And what covers a day.

use sumpbook_trade::defect::{LockPart, Said};
use sumpbook_trade::record::{
    Answer, DisplayNote, Glass, ItemFigure, LevelCheck, NoteKind, OilCondition, OilLook, Pour, SetProfile,
    StartAir, StopWait, TopUp, Warmth, WaterAmount, WaterDrained, WaterFrom,
};
use sumpbook_trade::{Fact, Figure, Fluid, OilFamily, Unit};

use super::yard::{Yard, answer, reading, walk};
use crate::NewSet;

fn with_set() -> Yard {
    let mut yard = Yard::new();
    let (on, hand) = (Some(yard.truck("TH-01")), yard.hand("Ilse", "2026-10-19T08:00:00-06:00"));
    let profile = SetProfile {
        oil_family: Some(OilFamily::Mineral),
        oil_grade: Some("ISO VG 46".to_owned()),
        ..SetProfile::unknown()
    };
    yard.shop.add_set(NewSet { serial: None, on, profile }, &hand).unwrap();
    yard
}

fn poured(family: Option<OilFamily>, grade: Option<&str>, after: Glass) -> TopUp {
    let volume = Figure::parse("0.2", Unit::Quart).unwrap();
    TopUp {
        family,
        grade: grade.map(str::to_owned),
        pours: vec![Pour { volume, after: None, waited_ms: None }],
        after: Some(after),
        ..TopUp::of(Fluid::CompressorOil)
    }
}

fn looked(glass: Glass, look: Option<OilLook>) -> LevelCheck {
    LevelCheck {
        fluid: Fluid::CompressorOil,
        glass,
        warmth: None,
        stopped: None,
        look,
        photo: None,
        oil_temperature: None,
    }
}

fn stopped() -> DisplayNote {
    DisplayNote {
        what: NoteKind::Warning,
        as_shown: "HIGH TEMP".to_owned(),
        stopped_by_itself: Some(true),
        gone_again: None,
        photo: None,
    }
}

/// Words of what locks the air of TH-01 after this was signed on a phone and came to the shop.
fn locks(facts: Vec<Fact>) -> Vec<String> {
    let mut yard = with_set();
    for (minute, fact) in (10..).zip(facts) {
        yard.sign(1, "Amos", "TH-01", &format!("2026-10-20T07:{minute}:00-06:00"), fact);
    }
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let state = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap();
    let open = state.locks.iter().filter(|lock| lock.ended.is_none() && lock.part == LockPart::Air);
    let because: Vec<_> = open.map(|lock| lock.because.clone()).collect();
    let defects = state.defects.iter().filter(|defect| because.contains(&defect.reference));
    let said = defects.flat_map(|defect| &defect.answers).filter_map(|answer| match &answer.said {
        Said::Defect { words, .. } => Some(words.clone()),
        Said::Ok => None,
    });
    said.collect()
}

#[test]
fn oil_that_is_not_known_to_be_the_units_own_locks_the_air_once_it_is_poured() {
    let (mineral, middle) = (Some(OilFamily::Mineral), Glass::Percent(50));
    assert!(locks(vec![poured(mineral, Some("ISO VG 46"), middle).into()]).is_empty());
    let ester = poured(Some(OilFamily::Ester), Some("ISO VG 46"), middle);
    assert_eq!(locks(vec![ester.into()]), ["wrong-oil"]);
    assert_eq!(locks(vec![poured(mineral, Some("ISO VG 68"), middle).into()]), ["other-grade"]);
    assert_eq!(locks(vec![poured(None, None, middle).into()]), ["unknown-oil"]);
}

#[test]
fn the_service_is_called_by_an_unknown_drum_too() {
    let mut yard = with_set();
    let pour = poured(None, None, Glass::Percent(50));
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:05:00-06:00", pour);
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let due = yard.due("TH-01", "oil-and-filters", "2026-10-20T17:00:00-06:00");
    assert!(due.contains("called now"), "{due}");
}

#[test]
fn a_level_out_of_view_and_milky_oil_lock_the_air_wherever_they_are_kept() {
    assert!(locks(vec![looked(Glass::Percent(62), Some(OilLook::Dark)).into()]).is_empty());
    assert_eq!(locks(vec![looked(Glass::BelowView, None).into()]), ["below-view"]);
    assert_eq!(locks(vec![looked(Glass::Percent(50), Some(OilLook::Milky)).into()]), ["milky"]);
    let over = poured(Some(OilFamily::Mineral), Some("ISO VG 46"), Glass::AboveView);
    assert_eq!(locks(vec![over.into()]), ["above-view"]);
}

#[test]
fn oil_that_was_looked_at_alone_is_on_the_sheet_and_calls_its_service() {
    let milky = || Fact::from(OilCondition { look: OilLook::Milky });
    assert_eq!(locks(vec![milky()]), ["milky"]);
    let mut yard = with_set();
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:05:00-06:00", milky());
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let new = &evening.new_defects.rows[0];
    assert_eq!((new.item.as_str(), new.one_answer.words.as_str()), ("oil-look", "milky"));
    assert_eq!(evening.locked.rows[0].lock, "air");
    let due = yard.due("TH-01", "oil-and-filters", "2026-10-20T17:00:00-06:00");
    assert!(due.contains("called now: milky oil"), "{due}");
}

#[test]
fn a_restart_without_a_cause_and_a_look_at_the_oil_are_new_on_the_days_sheet() {
    let mut yard = with_set();
    yard.sign(1, "Amos", "TH-01", "2026-10-20T09:00:00-06:00", stopped());
    let start = StartAir { steps: vec![], in_spite_of_lock: None };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T09:20:00-06:00", start);
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let new: Vec<_> = evening
        .new_defects
        .rows
        .iter()
        .map(|row| (row.item.as_str(), row.one_answer.words.as_str(), row.locks.len()))
        .collect();
    assert_eq!(new, [("oil-look", "burnt-suspected", 0), ("step-mid-watch", "not-so-no-cause-written", 0)]);
    assert_eq!(evening.locked.count, 0);
    // The oil is looked at first: it calls no service yet.
    let due = yard.due("TH-01", "oil-and-filters", "2026-10-20T17:00:00-06:00");
    assert!(!due.contains("called now"), "{due}");
}

#[test]
fn stopping_by_itself_a_second_time_in_a_day_locks_the_air() {
    assert!(locks(vec![stopped().into()]).is_empty());
    assert_eq!(locks(vec![stopped().into(), stopped().into()]), ["not-so-stopped-hot-twice"]);
    let told = DisplayNote { stopped_by_itself: None, ..stopped() };
    assert!(locks(vec![told.into(), stopped().into()]).is_empty());
}

#[test]
fn what_was_drained_tells_what_the_walk_s_line_about_it_would() {
    let drained = |from, amount, oil_in_it| Fact::from(WaterDrained { from, amount, oil_in_it });
    let (receiver, tanks) = (WaterFrom::Receiver, WaterFrom::BrakeTanks);
    assert_eq!(locks(vec![drained(receiver, WaterAmount::More, false)]), ["more-than-cup"]);
    assert!(locks(vec![drained(receiver, WaterAmount::Spoon, false)]).is_empty());
    let open = |facts: Vec<Fact>| {
        let mut yard = with_set();
        for (minute, fact) in (10..).zip(facts) {
            yard.sign(1, "Amos", "TH-01", &format!("2026-10-20T07:{minute}:00-06:00"), fact);
        }
        yard.exchange(1, "2026-10-20T16:50:00-06:00");
        let state = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap();
        assert!(state.locks.is_empty());
        state.defects.iter().map(|defect| defect.item.clone()).collect::<Vec<_>>()
    };
    assert_eq!(open(vec![drained(tanks, WaterAmount::Spoon, true)]), ["tank-drain"]);
    assert!(open(vec![drained(tanks, WaterAmount::Cup, false)]).is_empty());
    let cup = || drained(receiver, WaterAmount::Cup, false);
    assert!(open(vec![cup()]).is_empty());
    assert_eq!(open(vec![cup(), cup()]), ["drain-water"]);
    assert_eq!(open(vec![drained(WaterFrom::FuelTrap, WaterAmount::Spoon, false)]), ["water-trap"]);
}

#[test]
fn a_level_that_rose_with_no_pour_is_told_on_its_days_sheet() {
    let mut yard = with_set();
    let at_40 = ItemFigure {
        figure: Figure { digits: 40, places: 0, unit: Unit::Percent },
        how: sumpbook_trade::record::How::Chosen,
    };
    let level = Answer { figures: vec![at_40], ..answer("oil-level", None, None, "") };
    yard.sign(1, "Amos", "TH-01", "2026-10-19T06:30:00-06:00", walk(vec![level], 7));
    let stood = |minutes| Some(StopWait { minutes: Some(minutes), how: sumpbook_trade::record::How::Timed });
    let check = |percent| LevelCheck {
        warmth: Some(Warmth::Cold),
        stopped: stood(30),
        ..looked(Glass::Percent(percent), None)
    };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T06:30:00-06:00", check(43));
    yard.exchange(1, "2026-10-20T07:00:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    assert_eq!(evening.oil.count, 0, "two readings can be off by so much");
    yard.sign(1, "Amos", "TH-01", "2026-10-20T12:00:00-06:00", check(60));
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let rose = evening.oil.rows[0].rose.as_ref().unwrap();
    assert_eq!(
        (evening.oil.rows[0].unit.as_str(), rose.from.as_str(), rose.to.as_str()),
        ("TH-01", "43 %", "60 %")
    );
    // A pour explains any level after it.
    yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-10-20T13:00:00-06:00",
        poured(Some(OilFamily::Mineral), Some("46"), Glass::Percent(70)),
    );
    yard.exchange(1, "2026-10-20T16:55:00-06:00");
    assert_eq!(yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00").oil.count, 0);
}

#[test]
fn a_signed_part_of_a_walk_covers_nothing_until_the_walk_is_whole() {
    let mut yard = with_set();
    let part = sumpbook_trade::record::PreTripSection { complete: false, ..walk(vec![], 3) };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T06:30:00-06:00", part);
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:00:00-06:00", reading(28_640));
    yard.exchange(1, "2026-10-20T08:00:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let without = |evening: &crate::sheet::Evening| -> Vec<String> {
        evening.without.rows.iter().map(|row| row.unit.clone()).collect()
    };
    assert_eq!(without(&evening), ["TH-01"]);
    // Signed to its end before the next use, it covers that one.
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:10:00-06:00", walk(vec![], 7));
    yard.sign(1, "Amos", "TH-01", "2026-10-20T09:00:00-06:00", reading(28_650));
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    assert_eq!(without(&evening), ["TH-01"], "of the reading before it alone");
    assert!(evening.not_reported.rows.iter().all(|row| row.unit != "TH-01"));
}
