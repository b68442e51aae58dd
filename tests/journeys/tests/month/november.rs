//! Events 12 to 14: Tuesday 3 to Monday 9 November. Invented data, outcomes worked by rule.

use sumpbook_journeys::{Lived, at, day, hm};
use sumpbook_trade::Tenths;

use crate::month;

const ASK: &str =
    "reminder cleared on the display, no service recorded; last seen Wed 15:40, gone by Thu 16:20: ask";

#[test]
fn event_12_wednesday_is_past_due_1_6_h_and_the_shop_was_told() {
    let lived = month();
    let five = "2026-11-04T17:00:00-07:00";
    assert_eq!(lived.said("TH-01", "oil-and-filters", five), "past due 1.6 h");
    let evening = lived.evening("2026-11-04", five);
    let note = evening.reminders.rows.iter().find(|row| row.unit == "TH-01").unwrap();
    let told = note.shop_told_by.as_ref().unwrap();
    assert_eq!((note.kind.as_str(), hm(Some(note.shown))), ("reminder", "15:40".into()));
    assert_eq!(told.who.as_deref(), Some("Amos Tillery"));
    assert_eq!((note.gone, note.ask.as_deref()), (None, None));
}

#[test]
fn event_12_thursday_is_past_due_6_1_h_and_a_vanished_reminder_is_a_question() {
    let lived = month();
    let five = "2026-11-05T17:00:00-07:00";
    let row = lived.due("TH-01", "oil-and-filters", five).unwrap();
    assert_eq!((row.hours, row.said.as_str()), (Some(Tenths(29_241)), "past due 6.1 h"));
    assert_eq!(row.due_hours, Some(Tenths(29_180)), "a cleared reminder moves no clock");
    let evening = lived.evening("2026-11-05", five);
    let note = evening.reminders.rows.iter().find(|row| row.unit == "TH-01" && row.ask.is_some()).unwrap();
    assert_eq!(note.ask.as_deref(), Some(ASK));
    assert_eq!(note.service, None);
}

#[test]
fn event_12_the_oil_went_past_due_between_monday_and_wednesday() {
    let lived = month();
    // 2,918.0 - 2,908.3 = 9.7.
    assert_eq!(
        lived.due("TH-01", "oil-and-filters", "2026-11-02T17:00:00-07:00").unwrap().hours_left.as_deref(),
        Some("9.7")
    );
}

/// Whether the road was locked at a moment, and by when certified, as all of it is known in the end.
fn road_at(lived: &Lived, moment: &str) -> Option<bool> {
    let state = lived.unit("TH-03", "2026-11-03T17:00:00-07:00");
    let moment = at(moment).moment();
    let lock = state.locks_at(moment).next().cloned()?;
    assert_eq!(String::from(lock.part), "road");
    Some(lock.certified.is_some_and(|certified| certified <= moment))
}

#[test]
fn event_13_locked_then_awaiting_review_then_free() {
    let lived = month();
    assert_eq!(road_at(&lived, "2026-11-03T06:34:00-07:00"), None);
    assert_eq!(road_at(&lived, "2026-11-03T06:36:00-07:00"), Some(false), "since 06:35");
    assert_eq!(road_at(&lived, "2026-11-03T07:00:00-07:00"), Some(false), "locked");
    assert_eq!(road_at(&lived, "2026-11-03T08:00:00-07:00"), Some(true), "awaiting review");
    assert_eq!(road_at(&lived, "2026-11-03T08:09:00-07:00"), Some(true), "still not to be driven");
    assert_eq!(road_at(&lived, "2026-11-03T08:15:00-07:00"), None, "free");
}

#[test]
fn event_13_the_shop_s_morning_sheet_follows_what_had_come() {
    let lived = month();
    let morning = |known: &str| lived.morning("2026-11-03", known).not_to_go_out;
    assert_eq!(morning("2026-11-03T07:00:00-07:00").count, 0, "Carmelo's file comes at 07:30");
    let half_past = morning("2026-11-03T07:30:00-07:00");
    assert_eq!((half_past.count, half_past.rows[0].next_step.as_str()), (1, "certify"));
    assert_eq!(
        (hm(Some(half_past.rows[0].since)), hm(half_past.rows[0].shop_knew)),
        ("06:35".into(), "07:30".into())
    );
    let eight = morning("2026-11-03T08:00:00-07:00");
    assert_eq!((eight.count, eight.rows[0].next_step.as_str()), (1, "review"));
    assert_eq!(hm(eight.rows[0].certified), "07:55");
    assert_eq!(morning("2026-11-03T08:14:00-07:00").count, 1, "signed on the phone, not here yet");
    assert_eq!(morning("2026-11-03T08:15:00-07:00").count, 0);
}

#[test]
fn event_13_it_is_closed_as_not_needed_with_who_and_why_and_the_glass_stays_on_order() {
    let lived = month();
    let evening = lived.evening("2026-11-03", "2026-11-03T17:00:00-07:00");
    let row = evening.new_defects.rows.iter().find(|row| row.unit == "TH-03").unwrap();
    let certified = row.certificate.as_ref().unwrap();
    assert_eq!((row.item.as_str(), row.state.as_str()), ("mirrors", "closed"));
    assert_eq!(
        (certified.verdict.as_str(), certified.who.as_deref()),
        ("not-needed", Some("Wren Castellane"))
    );
    assert_eq!(certified.words, "hairline outside the view; glass ordered");
    let reviewed = row.reviewed.as_ref().unwrap();
    assert_eq!((reviewed.who.as_deref(), hm(Some(reviewed.at))), (Some("Dinah Fosse"), "08:10".into()));
    let glass = evening.due.parts.iter().find(|part| part.unit == "TH-03").unwrap();
    assert_eq!((glass.part.as_str(), glass.promised), ("right mirror glass", Some(day("2026-11-17"))));
    let end = lived.evening("2026-11-09", "2026-11-09T17:00:00-07:00");
    assert!(end.due.parts.iter().any(|part| part.unit == "TH-03"), "still on order a week later");
}

#[test]
fn event_14_dov_s_service_closes_the_oil_8_0_h_late_and_remarks_on_the_cooler() {
    let lived = month();
    let friday = lived.evening("2026-11-06", "2026-11-06T17:00:00-07:00");
    let done = friday.due.done.iter().find(|row| row.unit == "TH-01").unwrap();
    assert_eq!((done.who.as_deref(), done.hours), (Some("Dov Petrakis"), Some(Tenths(29_260))));
    assert_eq!(done.late, ["oil-and-filters 8.0 h"]);
    assert!(done.not_bundled.iter().any(|task| task == "cooler-and-scavenge"), "{:?}", done.not_bundled);
    let cooler = lived.due("TH-01", "cooler-and-scavenge", "2026-11-06T17:00:00-07:00").unwrap();
    assert_eq!((cooler.days_left, cooler.last_good_day), (Some(14), Some(day("2026-11-20"))));
}

#[test]
fn event_14_one_service_entered_twice_counts_once_by_the_fewer_hours_and_the_earlier_day() {
    let lived = month();
    let five = "2026-11-09T17:00:00-07:00";
    let monday = lived.evening("2026-11-09", five);
    assert_eq!(monday.entered_twice.count, 1);
    let twice = &monday.entered_twice.rows[0];
    assert_eq!((twice.unit.as_str(), twice.task.as_str()), ("TH-01", "oil-and-filters"));
    assert_eq!((twice.hours, twice.day), (Some(Tenths(29_260)), day("2026-11-06")));
    let told =
        |service: &sumpbook_shop::sheet::ToldService| (service.entry, service.hours, service.who.clone());
    let named = |name: &str| lived.world.named(name).unwrap();
    assert_eq!(
        told(&twice.first),
        (named("oil by the shop"), Some(Tenths(29_260)), Some("Dov Petrakis".to_owned()))
    );
    assert_eq!(
        told(&twice.second),
        (named("oil by the driver"), Some(Tenths(29_263)), Some("Amos Tillery".to_owned()))
    );
    let row = lived.due("TH-01", "oil-and-filters", five).unwrap();
    assert_eq!((row.due_hours, row.last_good_day), (Some(Tenths(34_260)), Some(day("2027-11-06"))));
}
