//! A phone whose clock is ahead: what it dates has come all the same, and a lock-out must not wait for that clock.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::*;

use super::yard::*;
use crate::close::{Closing, answer_again, as_of};

/// At 16:35 a phone hands over a defect that its clock dates 18:00, and an hour reading of 2027.
fn fast() -> Yard {
    let mut yard = Yard::new();
    let horn = answer("horn", None, Some(Severity::Road), "no sound");
    let report = EndOfDay { defects: vec![horn], ..end_of_day() };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T18:00:00-06:00", report);
    yard.sign(1, "Amos", "TH-01", "2027-01-05T09:00:00-07:00", reading(28_650));
    yard.exchange(1, "2026-10-20T16:35:00-06:00");
    yard
}

#[test]
fn a_lock_out_dated_after_it_came_stands_on_both_views_at_once_and_says_so() {
    let yard = fast();
    let sheet = yard.sheet("2026-10-20", crate::sheet::View::Evening, "2026-10-20T17:05:00-06:00");
    assert!(sheet.sentences.contains(&"One lock-out.".to_owned()), "{:?}", sheet.sentences);
    let evening = yard.evening("2026-10-20", "2026-10-20T17:05:00-06:00");
    let [lock] = evening.locked.rows.as_slice() else { panic!("{:?}", evening.locked) };
    assert_eq!((lock.unit.as_str(), lock.lock.as_str(), lock.ahead), ("TH-01", "road", true));
    assert_eq!(
        evening.new_defects.rows.iter().map(|row| (row.item.as_str(), row.ahead)).collect::<Vec<_>>(),
        [("horn", true)]
    );
    let dated: Vec<(&str, String)> =
        evening.dated_ahead.rows.iter().map(|row| (row.says.as_str(), row.at.to_string())).collect();
    assert_eq!(
        dated,
        [
            ("end-of-day", "2026-10-20T18:00:00-06:00".to_owned()),
            ("hour-reading", "2027-01-05T09:00:00-07:00".to_owned())
        ]
    );
    // A year too far is still too far in the morning; the lock-out's moment has come by then.
    let morning = yard.morning("2026-10-21", "2026-10-21T06:00:00-06:00");
    assert_eq!((morning.not_to_go_out.count, morning.to_certify.count), (1, 1));
    assert!(!morning.not_to_go_out.rows[0].ahead);
    assert_eq!(morning.dated_ahead.count, 1);
    // Looked at afterwards the day is told by its own times, and nothing of it is ahead.
    let after = yard.evening("2026-10-20", "2026-10-21T06:00:00-06:00");
    assert_eq!((after.locked.count, after.dated_ahead.count), (1, 0));
}

#[test]
fn a_day_in_the_year_that_has_not_come_locks_the_truck_today() {
    let mut yard = Yard::new();
    let horn = answer("horn", None, Some(Severity::Road), "no sound");
    yard.sign(2, "Hattie", "TH-02", "2027-10-20T06:40:00-06:00", walk(vec![horn], 7));
    yard.exchange(2, "2026-10-20T16:35:00-06:00");
    let morning = yard.morning("2026-10-21", "2026-10-21T06:00:00-06:00");
    let rows: Vec<_> = morning.not_to_go_out.rows.iter().map(|row| (row.unit.as_str(), row.ahead)).collect();
    assert_eq!(rows, [("TH-02", true)]);
    assert_eq!(morning.to_certify.count, 1);
}

#[test]
fn a_day_closed_before_its_last_time_came_is_closed_again_and_answers_as_it_did() {
    let mut yard = fast();
    let first = yard.close("2026-10-20", "2026-10-20T17:05:00-06:00");
    let Closing::Closed(first) = first else { panic!("{first:?}") };
    let again = yard.close("2026-10-20", "2026-10-21T06:05:00-06:00");
    assert!(matches!(&again, Closing::Closed(row) if row.version == 2), "{again:?}");
    assert!(matches!(yard.close("2026-10-20", "2026-10-21T06:10:00-06:00"), Closing::Unchanged(_)));
    let then = as_of(&yard.shop, at("2026-10-20T17:05:00-06:00")).unwrap();
    let body = answer_again(&then, day("2026-10-20"), at("2026-10-20T17:05:00-06:00")).unwrap();
    assert_eq!(body, first.body, "byte for byte");
}
