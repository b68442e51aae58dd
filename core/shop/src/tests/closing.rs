//! Closing a day, closing it again, and answering it again.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::*;
use sumpbook_trade::{Stamp, Tenths};

use super::yard::*;
use crate::ShopError;
use crate::close::{Closing, answer_again, as_of};
use crate::proof::gaps;
use crate::table_out::Of;
use crate::verify::verify;

/// A week in which something of everything comes late.
fn week() -> Yard {
    let mut yard = Yard::new();
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", Some(28_624), walk(vec![], 7));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    yard.close("2026-10-19", "2026-10-19T17:00:00-06:00");
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:44:00-06:00", walk(vec![out], 6));
    yard.sign(1, "Bettina", "TH-02", "2026-10-20T06:50:00-06:00", drive(DriveWhat::LeftYard));
    yard.exchange(2, "2026-10-20T11:05:00-06:00");
    yard.close("2026-10-20", "2026-10-20T17:00:00-06:00");
    yard.exchange(1, "2026-10-20T18:10:00-06:00");
    yard.close("2026-10-20", "2026-10-21T06:05:00-06:00");
    yard.sign(1, "Carmelo", "TH-03", "2026-10-21T16:35:00-06:00", reading(7_421));
    yard.close("2026-10-21", "2026-10-21T17:00:00-06:00");
    yard.exchange(1, "2026-10-22T08:00:00-06:00");
    yard.close("2026-10-21", "2026-10-22T08:05:00-06:00");
    yard
}

#[test]
fn a_late_arrival_makes_version_two_and_says_what_changed() {
    let yard = week();
    let kept = yard.shop.ledger.store().sheets().unwrap();
    let versions: Vec<(&str, u32)> = kept.iter().map(|row| (row.day.as_str(), row.version)).collect();
    assert_eq!(
        versions,
        [("2026-10-19", 1), ("2026-10-20", 1), ("2026-10-20", 2), ("2026-10-21", 1), ("2026-10-21", 2)]
    );
    assert!(kept[0].changes.is_empty());
    let told = kept[2].changes.join("\n");
    let drive = "came-late: now TH-02 drive Tue 20 Oct 06:50, came Tue 20 Oct 18:10, came from yard phone 1, \
                 who Bettina Quaye";
    assert!(told.contains(drive), "{told}");
    assert!(told.contains("against: now TH-02 road left-yard"), "{told}");
}

#[test]
fn a_day_that_was_closed_with_nothing_told_of_a_unit_expected_out_is_a_gap_of_its_proof() {
    let yard = week();
    let gaps =
        gaps(&yard.shop.ledger, Of::Fleet, yard.folder.path(), at("2026-10-22T09:00:00-06:00")).unwrap();
    let of = |door: &str| {
        let silent = gaps.iter().find(|gap| gap.unit == door && gap.what == "not-reported");
        silent.map(|gap| gap.cases.clone()).unwrap_or_default()
    };
    // Walked on Monday, used on no other day: Tuesday is covered from the evening before, Wednesday is silent.
    assert_eq!(of("TH-01"), ["2026-10-21"]);
    assert_eq!(of("TH-02"), ["2026-10-19"], "walked and driven on Tuesday");
    assert!(of("TH-08").is_empty(), "nobody expected it out: {:?}", of("TH-08"));
}

#[test]
fn nothing_new_makes_no_version() {
    let mut yard = week();
    let again = yard.close("2026-10-20", "2026-10-22T09:00:00-06:00");
    assert!(matches!(&again, Closing::Unchanged(row) if row.version == 2), "{again:?}");
    // A phone that comes by with nothing to tell changes no closed day either.
    yard.exchange(3, "2026-10-22T09:30:00-06:00");
    assert!(matches!(yard.close("2026-10-21", "2026-10-22T10:00:00-06:00"), Closing::Unchanged(_)));
    // Nor does what is recorded of another day.
    yard.sign(3, "Gil", "TH-05", "2026-10-22T09:40:00-06:00", reading(490));
    yard.exchange(3, "2026-10-22T10:10:00-06:00");
    assert!(matches!(yard.close("2026-10-21", "2026-10-22T10:20:00-06:00"), Closing::Unchanged(_)));
}

#[test]
fn history_brought_in_makes_no_version() {
    let mut yard = week();
    let truck = yard.truck("TH-03");
    let came = at("2026-10-22T09:00:00-06:00");
    let old = at("2026-10-20T15:00:00-06:00");
    brought_in(&mut yard.shop, truck, reading(7_384).into(), None, old, came);
    brought_in(&mut yard.shop, truck, reading(7_400).into(), None, at("2026-10-21T15:00:00-06:00"), came);
    let service = service(&["oil-and-filters"]).into();
    brought_in(&mut yard.shop, truck, service, Some(Tenths(7_384)), old, came);
    for day in ["2026-10-20", "2026-10-21"] {
        let again = yard.close(day, "2026-10-22T09:30:00-06:00");
        assert!(matches!(again, Closing::Unchanged(_)), "{day}: {again:?}");
    }
    assert!(
        yard.evening("2026-10-21", "2026-10-22T09:30:00-06:00")
            .came_late
            .rows
            .iter()
            .all(|r| r.hours != Some(Tenths(7_400)))
    );
    // Beside something else of another day that came, still none.
    yard.sign(3, "Gil", "TH-05", "2026-10-22T09:40:00-06:00", reading(490));
    yard.exchange(3, "2026-10-22T10:10:00-06:00");
    let again = yard.close("2026-10-20", "2026-10-22T10:20:00-06:00");
    assert!(matches!(again, Closing::Unchanged(_)), "{again:?}");
}

#[test]
fn every_closing_is_answered_again_byte_for_byte() {
    let yard = week();
    for row in yard.shop.ledger.store().sheets().unwrap() {
        let moment = Stamp::from_parts(row.at_ms, 0).unwrap();
        let then = as_of(&yard.shop, moment).unwrap();
        let again = answer_again(&then, row.day.parse().unwrap(), moment).unwrap();
        assert_eq!(
            String::from_utf8(again).unwrap(),
            String::from_utf8(row.body.clone()).unwrap(),
            "{} version {}",
            row.day,
            row.version
        );
    }
}

#[test]
fn a_day_ahead_is_not_closed() {
    let mut yard = Yard::new();
    let ilse = yard.hand("Ilse", "2026-10-19T17:00:00-06:00");
    let ahead = crate::close::close(&mut yard.shop, day("2026-10-20"), &ilse).unwrap_err();
    assert!(matches!(ahead, ShopError::DayAhead(_)), "{ahead}");
}

#[test]
fn a_folder_that_holds_verifies_and_one_that_does_not_says_where() {
    let mut yard = week();
    let report = verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings, []);
    assert_eq!(report.closings, 5);
    assert_eq!(report.books, yard.shop.ledger.store().truth().books().unwrap().len());
    assert_eq!(report.entries, usize::try_from(yard.shop.ledger.store().truth().last_n().unwrap()).unwrap());

    // A sheet nobody signed.
    let mut forged = yard.shop.ledger.store().sheets().unwrap().remove(0);
    forged.version = 9;
    yard.shop.ledger.store_mut().keep_sheet(&forged).unwrap();
    let report = verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings.len(), 1);
    assert!(report.findings[0].at.contains("2026-10-19, version 9"), "{:?}", report.findings);
}

#[test]
fn a_row_changed_behind_the_shop_s_back_is_found() {
    let mut yard = week();
    let file = std::fs::read_dir(&yard.shop.folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .find(|path| path.extension().is_some_and(|end| end == "sqlite" || end == "db"))
        .unwrap();
    let open = rusqlite::Connection::open(file).unwrap();
    // The figure 7,421 tenths in CBOR becomes 7,420.
    let changed = open
        .execute(
            "UPDATE entry SET payload = cast(replace(payload, x'191cfd', x'191cfc') AS blob) WHERE instr(payload, x'191cfd') > 0",
            [],
        )
        .unwrap();
    assert_eq!(changed, 1);
    drop(open);
    let report = verify(&mut yard.shop).unwrap();
    let told: Vec<&str> = report.findings.iter().map(|found| found.what.as_str()).collect();
    assert!(report.findings.iter().any(|found| found.at.contains("book of TH-03, 2026, entry")), "{told:?}");
    assert!(told.iter().any(|what| what.starts_with("was admitted as")), "{told:?}");
}

#[test]
fn quiet_days_count_the_closed_sheets_since_the_phone_was_heard() {
    let mut yard = Yard::new();
    yard.sign_with(1, "Amos", "TH-01", "2026-10-18T16:00:00-06:00", Some(28_600), walk(vec![], 7));
    yard.exchange(1, "2026-10-18T16:45:00-06:00");
    let quiet = |yard: &Yard, of: &str, when: &str| {
        let evening = yard.evening(of, when);
        let row = evening.not_reported.rows.iter().find(|row| row.unit == "TH-01").unwrap().clone();
        (row.phone, row.quiet_days)
    };
    let phone = Some("yard phone 1".to_owned());
    assert_eq!(quiet(&yard, "2026-10-19", "2026-10-19T17:00:00-06:00"), (phone.clone(), Some(1)));
    yard.close("2026-10-19", "2026-10-19T17:00:00-06:00");
    yard.close("2026-10-20", "2026-10-20T17:00:00-06:00");
    assert_eq!(quiet(&yard, "2026-10-21", "2026-10-21T17:00:00-06:00"), (phone.clone(), Some(3)));
    yard.exchange(1, "2026-10-22T12:00:00-06:00");
    assert_eq!(
        quiet(&yard, "2026-10-22", "2026-10-22T17:00:00-06:00"),
        (phone, None),
        "heard, and not reported"
    );
}

#[test]
fn an_answer_lost_between_signing_and_keeping_is_worked_out_again() {
    let mut yard = week();
    let before = yard.shop.ledger.store().sheets().unwrap();
    let open = rusqlite::Connection::open(yard.shop.folder.join("book.db")).unwrap();
    assert_eq!(open.execute("DELETE FROM sheet WHERE day = '2026-10-21' AND version = 2", []).unwrap(), 1);
    drop(open);
    let report = verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings[0].what, "its answer is not kept");
    let again = yard.close("2026-10-21", "2026-10-22T09:00:00-06:00");
    assert!(matches!(&again, Closing::Unchanged(row) if row.version == 2), "{again:?}");
    let after = yard.shop.ledger.store().sheets().unwrap();
    assert_eq!(after.last().unwrap().body, before.last().unwrap().body);
    assert_eq!(verify(&mut yard.shop).unwrap().findings, []);
}

#[test]
fn a_gap_in_the_numbers_is_a_gap_in_what_was_known_then() {
    let mut yard = week();
    let last = yard.shop.ledger.store().truth().last_n().unwrap();
    let held = yard.shop.ledger.store().truth().entry(last).unwrap().unwrap();
    // What a lost fork does: a row is taken out, and its number is not given again.
    let writing = yard.shop.ledger.store_mut().begin().unwrap();
    writing.remove(held.row.book, std::slice::from_ref(&held)).unwrap();
    writing.commit().unwrap();
    let hand = yard.hand("Ilse", "2026-10-22T09:00:00-06:00");
    let truck = yard.truck("TH-01");
    let parked = sumpbook_trade::day::DayStatus::Parked;
    yard.shop.set_day_status(truck, day("2026-10-23"), parked, None, &hand).unwrap();
    let numbers = |ledger: &sumpbook_daybook::ledger::Ledger| -> Vec<i64> {
        ledger.store().truth().between(0, i64::MAX, i64::MAX).unwrap().iter().map(|held| held.n).collect()
    };
    let own = numbers(&yard.shop.ledger);
    assert!(own.ends_with(&[last - 1, last + 1]), "{own:?}");
    assert_eq!(numbers(&yard.shop.ledger.as_of(i64::MAX).unwrap()), own);
}

#[test]
fn a_phone_that_brings_something_of_a_closed_day_and_history_beside_it_still_makes_a_version() {
    let mut yard = week();
    let truck = yard.truck("TH-03");
    let came = at("2026-10-22T09:00:00-06:00");
    brought_in(&mut yard.shop, truck, reading(7_384).into(), None, at("2026-10-20T15:00:00-06:00"), came);
    yard.sign(3, "Gil", "TH-05", "2026-10-20T16:40:00-06:00", reading(470));
    yard.exchange(3, "2026-10-22T10:10:00-06:00");
    let three = yard.close("2026-10-20", "2026-10-22T10:20:00-06:00");
    assert!(matches!(&three, Closing::Closed(row) if row.version == 3), "{three:?}");
    assert_eq!(verify(&mut yard.shop).unwrap().findings, []);
}
