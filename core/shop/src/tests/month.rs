//! Events of the month, cut at 17:00 and 06:00.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::*;
use sumpbook_trade::{Stamp, Tenths};

use super::yard::*;
use crate::certify::certify;
use crate::service::service_done;
use crate::settle::decide;
use crate::sheet::View;
use crate::shop::Told;
use crate::wait::wait_for_part;

fn hm(at: Option<Stamp>) -> String {
    at.map_or_else(|| "never".into(), |at| at.moment().format("%H:%M").to_string())
}

#[test]
fn event_1_a_walk_with_no_defect() {
    let mut yard = Yard::new();
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", Some(28_624), walk(vec![], 7));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let evening = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00");
    let row = evening.not_reported.reported.iter().find(|row| row.unit == "TH-01").unwrap();
    assert_eq!((row.said.as_str(), row.who.as_deref()), ("done 06:32", Some("Amos Tillery")));
    assert_eq!(evening.without.count, 0);
    let now = "2026-10-19T17:00:00-06:00";
    assert_eq!(yard.due("TH-01", "oil-and-filters", now), "far off, 55.6 h left, 116 days left");
    assert_eq!(yard.due("TH-01", "separator", now), "coming up, 137.6 h left, 163 days left");
    assert!(evening.due.rows.iter().any(|row| row.unit == "TH-01" && row.task == "separator"));
    assert!(!evening.due.rows.iter().any(|row| row.unit == "TH-01" && row.task == "oil-and-filters"));
}

#[test]
fn event_2_two_phones_differ_and_the_truck_left_before_either_could_know() {
    let mut yard = Yard::new();
    yard.sign(
        1,
        "Bettina",
        "TH-02",
        "2026-10-20T06:41:00-06:00",
        walk(vec![answer("lamps-stop", Some("left"), None, "")], 6),
    );
    yard.sign(
        2,
        "Hattie",
        "TH-02",
        "2026-10-20T06:44:00-06:00",
        walk(vec![answer("lamps-stop", Some("left"), Some(Severity::Road), "out")], 6),
    );
    yard.sign(1, "Bettina", "TH-02", "2026-10-20T06:50:00-06:00", drive(DriveWhat::LeftYard));
    yard.exchange(2, "2026-10-20T11:05:00-06:00");
    let noon = yard.evening("2026-10-20", "2026-10-20T12:00:00-06:00");
    assert_eq!((noon.locked.count, noon.against.count), (1, 0), "the drive is not known yet");
    assert_eq!(hm(noon.locked.rows[0].driver_knew), "06:44", "the only phone heard of is Hattie's own");
    yard.exchange(1, "2026-10-20T15:50:00-06:00");
    let sheet = yard.sheet("2026-10-20", crate::sheet::View::Evening, "2026-10-20T17:00:00-06:00");
    assert_eq!(sheet.sentences[1], "One lock-out; used against once, before either could know.");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");

    assert_eq!(evening.new_defects.count, 1, "one defect");
    let defect = &evening.new_defects.rows[0];
    let other = defect.other_answer.as_ref().unwrap();
    assert_eq!((defect.one_answer.ok, defect.one_answer.who.as_deref()), (true, Some("Bettina Quaye")));
    assert_eq!((other.ok, other.who.as_deref(), other.words.as_str()), (false, Some("Hattie Brun"), "out"));
    assert_eq!(defect.locks, ["road"]);

    let locked = &evening.locked.rows[0];
    assert_eq!((locked.unit.as_str(), locked.lock.as_str()), ("TH-02", "road"));
    assert_eq!(hm(Some(locked.since)), "06:44");
    assert_eq!((hm(locked.shop_knew), hm(locked.driver_knew)), ("11:05".into(), "15:50".into()));
    assert_eq!(locked.next_step, "certify");

    let against = &evening.against.rows[0];
    assert_eq!(
        (evening.against.count, against.what.as_str(), hm(Some(against.used)).as_str()),
        (1, "left-yard", "06:50")
    );
    assert!(!against.could_know);
    assert_eq!(against.said, "no: shop knew 11:05, driver 15:50");
    assert_eq!(evening.without.count, 0, "Bettina's walk covers it");
}

#[test]
fn of_a_use_on_paper_nobody_can_tell_what_its_driver_knew() {
    let mut yard = Yard::new();
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:30:00-06:00", walk(vec![out], 6));
    yard.exchange(2, "2026-10-20T06:35:00-06:00");
    // Typed in at the desk at 15:50: the shop's key signs, and the shop has known of the lock since 06:35.
    let hand = yard.hand("Bettina", "2026-10-20T15:50:00-06:00");
    let used = Told {
        person: hand.person,
        at: at("2026-10-20T06:50:00-06:00"),
        source: Source::Paper,
        hours: None,
        note: None,
    };
    let truck = yard.truck("TH-02");
    yard.shop.write_told(Some(truck), drive(DriveWhat::LeftYard).into(), used, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let against = &evening.against.rows[0];
    assert!(!against.could_know && against.on_paper && against.driver_knew.is_none());
    assert_eq!(against.said, "not known: it came on paper; shop knew 06:35");
    let sheet = yard.sheet("2026-10-20", View::Evening, "2026-10-20T17:00:00-06:00");
    assert!(!sheet.sentences.join(" ").contains("before either could know"));
}

#[test]
fn a_driver_who_had_the_lock_on_the_phone_could_know() {
    let mut yard = Yard::new();
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:30:00-06:00", walk(vec![out], 6));
    yard.exchange(2, "2026-10-20T06:35:00-06:00");
    yard.exchange(1, "2026-10-20T06:40:00-06:00");
    yard.sign(1, "Bettina", "TH-02", "2026-10-20T06:50:00-06:00", drive(DriveWhat::LeftYard));
    yard.exchange(1, "2026-10-20T15:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    assert!(evening.against.rows[0].could_know);
    assert_eq!(hm(evening.against.rows[0].driver_knew), "06:40");
}

#[test]
fn event_3_a_figure_above_the_ceiling_waits_and_the_corrected_one_stays_seen() {
    let mut yard = Yard::new();
    yard.sign(1, "Carmelo", "TH-03", "2026-10-20T16:40:00-06:00", reading(7_384));
    let wrong = yard.sign(1, "Carmelo", "TH-03", "2026-10-21T16:35:00-06:00", reading(74_210));
    yard.exchange(1, "2026-10-21T16:50:00-06:00");
    let wednesday = yard.evening("2026-10-21", "2026-10-21T17:00:00-06:00");
    assert_eq!(wednesday.to_settle.count, 1);
    let asked = &wednesday.to_settle.rows[0];
    assert_eq!((asked.why.as_str(), asked.used), ("above-ceiling", Some(Tenths(7_384))));
    let struck = asked.figures.iter().find(|figure| figure.struck).unwrap();
    assert_eq!((struck.figure, struck.ceiling), (Tenths(74_210), Some(Tenths(7_624))));
    assert_eq!(asked.hints[0], "typed-wrong");

    yard.sign(1, "Carmelo", "TH-03", "2026-10-22T16:30:00-06:00", reading(7_460));
    let right = yard.sign(1, "Carmelo", "TH-03", "2026-10-21T16:35:00-06:00", reading(7_421));
    let correction = Correction { target: wrong, why: "a slipped point".into(), instead: Some(right) };
    yard.sign(1, "Carmelo", "TH-03", "2026-10-22T16:31:00-06:00", correction);
    yard.exchange(1, "2026-10-22T16:50:00-06:00");
    let thursday = yard.evening("2026-10-22", "2026-10-22T17:00:00-06:00");
    assert_eq!(thursday.to_settle.count, 0);
    let again = yard.evening("2026-10-21", "2026-10-22T17:00:00-06:00");
    let row = &again.corrected.rows[0];
    assert_eq!((row.struck, row.instead), (Tenths(74_210), Some(Tenths(7_421))));
    assert_eq!(row.who.as_deref(), Some("Carmelo Ruiz"));
}

#[test]
fn event_4_what_thursday_did_not_know_friday_at_six_does() {
    let mut yard = Yard::new();
    yard.sign(3, "Gil", "TH-05", "2026-10-21T16:20:00-06:00", reading(472));
    yard.exchange(3, "2026-10-21T16:30:00-06:00");
    let reminder =
        yard.sign(3, "Gil", "TH-05", "2026-10-22T15:05:00-06:00", note(NoteKind::Reminder, "SERVICE", None));
    yard.sign(
        3,
        "Gil",
        "TH-05",
        "2026-10-22T15:22:00-06:00",
        Acknowledgement { note: reminder, told_shop: false },
    );
    yard.sign(3, "Gil", "TH-05", "2026-10-22T16:10:00-06:00", reading(504));
    yard.sign(
        2,
        "Hattie",
        "TH-05",
        "2026-10-22T15:10:00-06:00",
        Acknowledgement { note: reminder, told_shop: true },
    );

    let five = "2026-10-22T17:00:00-06:00";
    assert_eq!(yard.due("TH-05", "first-service", five), "coming up, 2.8 h left");
    let first = yard.evening("2026-10-22", five);
    let row = first.due.rows.iter().find(|row| row.task == "first-service").unwrap();
    assert_eq!((row.hours, row.hours_left.as_deref()), (Some(Tenths(472)), Some("2.8")));
    assert_eq!(first.reminders.count, 0, "nothing of Thursday has come");
    let one = yard.close("2026-10-22", five).sheet().clone();
    assert_eq!(one.version, 1);

    yard.exchange(3, "2026-10-22T18:20:00-06:00");
    let morning = yard.morning("2026-10-23", "2026-10-23T06:00:00-06:00");
    let due = morning.due.rows.iter().find(|row| row.task == "first-service").unwrap();
    assert_eq!((due.said.as_str(), due.hours), ("past due 0.4 h", Some(Tenths(504))));
    assert_eq!(morning.version_two.came_late.count, 3);
    let known = yard.evening("2026-10-22", "2026-10-23T06:00:00-06:00");
    let seen = known.reminders.rows[0].seen_by.as_ref().unwrap();
    assert_eq!((seen.who.as_deref(), hm(Some(seen.at)).as_str()), (Some("Gil Sandoval"), "15:22"));

    yard.exchange(2, "2026-10-23T07:02:00-06:00");
    let known = yard.evening("2026-10-22", "2026-10-23T07:10:00-06:00");
    let row = &known.reminders.rows[0];
    let told = row.shop_told_by.as_ref().unwrap();
    assert_eq!(row.seen_by.as_ref().unwrap().who.as_deref(), Some("Hattie Brun"));
    assert_eq!((told.who.as_deref(), hm(Some(told.at)).as_str()), (Some("Hattie Brun"), "15:10"));
    assert_eq!(row.others[0].who.as_deref(), Some("Gil Sandoval"));
    let two = yard.close("2026-10-22", "2026-10-23T07:15:00-06:00").sheet().clone();
    assert_eq!(two.version, 2);
    let told = two.changes.join("\n");
    assert!(
        told.contains("due: TH-05 first-service: hours was 47.2, now 50.4; hours left was 2.8, now -0.4;"),
        "{told}"
    );
    assert!(
        told.contains("came-late: now TH-05 acknowledgement Thu 22 Oct 15:10, came Fri 23 Oct 07:02"),
        "{told}"
    );
}

#[test]
fn event_5_the_first_service_is_closed_and_never_returns() {
    let mut yard = Yard::new();
    yard.sign(3, "Gil", "TH-05", "2026-10-22T16:10:00-06:00", reading(504));
    yard.exchange(3, "2026-10-22T18:20:00-06:00");
    let (truck, dov) = (yard.truck("TH-05"), yard.hand("Dov", "2026-10-23T10:30:00-06:00"));
    service_done(&mut yard.shop, truck, service(&["first-service"]), Some(Tenths(519)), &dov).unwrap();
    let now = "2026-10-23T17:00:00-06:00";
    let evening = yard.evening("2026-10-23", now);
    assert_eq!(evening.due.done[0].late, ["first-service 1.9 h"]);
    assert_eq!(yard.due("TH-05", "first-service", now), "not on the list");
    let list = crate::due::due_list(&yard.shop.ledger, at(now)).unwrap();
    let of = |task: &str| {
        let row = list.rows.iter().find(|row| row.unit == "TH-05" && row.task == task).unwrap();
        (row.due_hours, row.last_good_day)
    };
    assert_eq!(of("oil-and-filters"), (Some(Tenths(5_519)), Some(day("2027-10-23"))));
    assert_eq!(of("cooler-and-scavenge"), (None, Some(day("2027-09-28"))));
    assert_eq!(of("separator"), (Some(Tenths(30_000)), Some(day("2031-09-28"))));
}

#[test]
fn event_6_a_night_truck_is_due_out_and_then_covered() {
    let mut yard = Yard::new();
    let thursday = yard.sheet("2026-10-22", crate::sheet::View::Evening, "2026-10-22T17:00:00-06:00");
    assert_eq!(
        thursday.sentences[0],
        "0 of 5 expected out have reported; not reported: TH-01, TH-02, TH-03, TH-05; TH-07 is due out 19:00."
    );
    yard.sign(1, "Ivo", "TH-07", "2026-10-22T18:52:00-06:00", walk(vec![], 8));
    yard.sign_with(
        1,
        "Ivo",
        "TH-07",
        "2026-10-22T23:10:00-06:00",
        Some(19_180),
        StartAir { steps: vec![], in_spite_of_lock: None },
    );
    yard.sign_with(
        1,
        "Ivo",
        "TH-07",
        "2026-10-23T02:25:00-06:00",
        Some(19_212),
        StopAir { steps: vec![], blew_down: Some(true) },
    );
    yard.sign(1, "Ivo", "TH-07", "2026-10-23T04:40:00-06:00", end_of_day());
    yard.exchange(1, "2026-10-23T04:45:00-06:00");
    let friday = yard.evening("2026-10-23", "2026-10-23T17:00:00-06:00");
    let row = friday.not_reported.reported.iter().find(|row| row.unit == "TH-07").unwrap();
    assert_eq!(row.said, "covered Thu 18:52-Fri 04:40");
    assert!(friday.not_reported.rows.iter().all(|row| row.unit != "TH-07"));
    assert_eq!((friday.without.count, friday.to_settle.count), (0, 0));
    let hours = yard.shop.ledger.unit_state(yard.truck("TH-07")).unwrap().hours;
    assert_eq!(hours.due, Some(Tenths(19_212)), "+3.2 h in 3 h 15");
}

#[test]
fn event_10_two_figures_wait_and_the_hours_left_are_the_same_either_way() {
    let mut yard = Yard::new();
    for (when, figure) in [
        ("2026-10-27T16:15:00-06:00", 12_110),
        ("2026-10-28T16:15:00-06:00", 12_262),
        ("2026-10-29T16:20:00-06:00", 12_215),
        ("2026-10-30T16:20:00-06:00", 12_279),
    ] {
        yard.sign(1, "Bettina", "TH-02", when, reading(figure));
    }
    yard.exchange(1, "2026-10-30T16:40:00-06:00");
    let friday = yard.evening("2026-10-30", "2026-10-30T17:00:00-06:00");
    let mut flagged: Vec<_> =
        friday.to_settle.rows.iter().flat_map(|row| &row.figures).map(|figure| figure.figure.0).collect();
    flagged.sort_unstable();
    flagged.dedup();
    assert_eq!(flagged, [12_215, 12_262]);
    let left = |yard: &Yard| yard.due("TH-02", "oil-and-filters", "2026-10-30T17:00:00-06:00");
    assert_eq!(left(&yard), "far off, 283.4 h left, 15 days left");
    let all: Vec<_> = friday.to_settle.rows.iter().flat_map(|row| &row.figures).collect();
    let wednesday = all.iter().find(|figure| figure.figure == Tenths(12_262)).unwrap().entry;
    let ilse = yard.hand("Ilse", "2026-10-30T17:05:00-06:00");
    decide(&mut yard.shop, &[wednesday], Verdict::DoNotUse, "two digits swapped", &ilse).unwrap();
    assert_eq!(left(&yard), "far off, 283.4 h left, 15 days left", "either way");
    let settled = yard.evening("2026-10-30", "2026-10-30T17:10:00-06:00");
    assert!(settled.to_settle.rows.iter().all(|row| row.unit != "TH-02"), "{:?}", settled.to_settle);
}

#[test]
fn event_11_the_night_the_clock_goes_back() {
    let mut yard = Yard::new();
    yard.sign_with(
        1,
        "Ivo",
        "TH-07",
        "2026-11-01T00:50:00-06:00",
        Some(19_510),
        StartAir { steps: vec![], in_spite_of_lock: None },
    );
    yard.sign_with(
        1,
        "Ivo",
        "TH-07",
        "2026-11-01T01:40:00-07:00",
        Some(19_528),
        StopAir { steps: vec![], blew_down: None },
    );
    yard.exchange(1, "2026-11-01T06:00:00-07:00");
    let evening = yard.evening("2026-11-01", "2026-11-01T17:00:00-07:00");
    assert_eq!(evening.to_settle.count, 0);
    let state = yard.shop.ledger.unit_state(yard.truck("TH-07")).unwrap();
    assert_eq!((state.hours.due, state.hours.struck.len()), (Some(Tenths(19_528)), 0));
}

#[test]
fn event_12_a_reminder_gone_with_no_service_is_a_question_and_moves_no_clock() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-11-02T16:00:00-07:00", reading(29_083));
    yard.sign(1, "Amos", "TH-01", "2026-11-04T15:40:00-07:00", reading(29_196));
    let shown = yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-11-04T15:40:00-07:00",
        note(NoteKind::Reminder, "SERVICE DUE", None),
    );
    yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-11-04T15:45:00-07:00",
        Acknowledgement { note: shown, told_shop: true },
    );
    yard.exchange(1, "2026-11-04T16:30:00-07:00");
    assert_eq!(yard.due("TH-01", "oil-and-filters", "2026-11-04T17:00:00-07:00"), "past due 1.6 h");
    yard.sign(1, "Amos", "TH-01", "2026-11-05T16:20:00-07:00", reading(29_241));
    yard.sign(1, "Amos", "TH-01", "2026-11-05T16:20:00-07:00", note(NoteKind::Reminder, "", Some(shown)));
    yard.exchange(1, "2026-11-05T16:40:00-07:00");
    let thursday = yard.evening("2026-11-05", "2026-11-05T17:00:00-07:00");
    assert_eq!(yard.due("TH-01", "oil-and-filters", "2026-11-05T17:00:00-07:00"), "past due 6.1 h");
    assert_eq!(
        thursday.reminders.rows[0].ask.as_deref(),
        Some(
            "reminder cleared on the display, no service recorded; last seen Wed 15:40, gone by Thu 16:20: ask"
        )
    );
}

#[test]
fn event_13_repair_not_needed_and_still_locked_until_the_review() {
    let mut yard = Yard::new();
    let cracked = answer("mirrors", Some("right"), Some(Severity::Road), "cracked");
    yard.sign(1, "Carmelo", "TH-03", "2026-11-03T06:35:00-07:00", walk(vec![cracked], 6));
    yard.exchange(1, "2026-11-03T07:00:00-07:00");
    let seven = yard.morning("2026-11-03", "2026-11-03T07:30:00-07:00");
    assert_eq!((seven.not_to_go_out.count, seven.to_certify.count), (1, 1));
    let (truck, wren) = (yard.truck("TH-03"), yard.hand("Wren", "2026-11-03T07:55:00-07:00"));
    let other =
        certify(&mut yard.shop, truck, "horn", RepairVerdict::Repaired, "new horn", &wren).unwrap_err();
    assert!(other.to_string().contains("Open: mirrors/right."), "{other}");
    let reason = "hairline outside the view; glass ordered";
    let certificate =
        certify(&mut yard.shop, truck, "mirrors", RepairVerdict::NotNeeded, reason, &wren).unwrap();
    let glass =
        WaitingForPart { task: None, part: "mirror glass".into(), promised: None, over: false, defect: None };
    wait_for_part(&mut yard.shop, truck, glass, &wren).unwrap();
    let eight = yard.morning("2026-11-03", "2026-11-03T08:00:00-07:00");
    assert_eq!(eight.not_to_go_out.rows[0].next_step, "review", "still not to be driven");
    let again = certify(&mut yard.shop, truck, "mirrors", RepairVerdict::Repaired, "x", &wren).unwrap_err();
    assert!(again.to_string().contains("awaiting the driver's review: mirrors/right"), "{again}");

    yard.exchange(1, "2026-11-03T08:05:00-07:00");
    yard.sign(
        1,
        "Dinah",
        "TH-03",
        "2026-11-03T08:10:00-07:00",
        Review { certificates: vec![certificate], report: None },
    );
    yard.exchange(1, "2026-11-03T16:00:00-07:00");
    let evening = yard.evening("2026-11-03", "2026-11-03T17:00:00-07:00");
    assert_eq!(evening.locked.count, 0);
    let row = &evening.new_defects.rows[0];
    let certified = row.certificate.as_ref().unwrap();
    assert_eq!((row.state.as_str(), certified.verdict.as_str()), ("closed", "not-needed"));
    assert_eq!((certified.who.as_deref(), certified.words.as_str()), (Some("Wren Castellane"), reason));
    assert_eq!(row.reviewed.as_ref().unwrap().who.as_deref(), Some("Dinah Fosse"));
    assert_eq!(evening.due.parts[0].part, "mirror glass");
}

#[test]
fn event_14_one_service_entered_twice() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-11-05T16:20:00-07:00", reading(29_241));
    yard.exchange(1, "2026-11-05T16:40:00-07:00");
    let (truck, dov) = (yard.truck("TH-01"), yard.hand("Dov", "2026-11-06T13:30:00-07:00"));
    service_done(&mut yard.shop, truck, service(&["oil-and-filters"]), Some(Tenths(29_260)), &dov).unwrap();
    let friday = yard.evening("2026-11-06", "2026-11-06T17:00:00-07:00");
    assert_eq!(friday.due.done[0].late, ["oil-and-filters 8.0 h"]);
    // The cooler 14 days off, the separator with 74.0 h of 3,000 left: both near, neither done.
    assert_eq!(friday.due.done[0].not_bundled, ["cooler-and-scavenge", "separator"]);
    yard.sign_with(
        1,
        "Amos",
        "TH-01",
        "2026-11-09T06:40:00-07:00",
        Some(29_263),
        service(&["oil-and-filters"]),
    );
    yard.exchange(1, "2026-11-09T16:30:00-07:00");
    let monday = yard.evening("2026-11-09", "2026-11-09T17:00:00-07:00");
    assert_eq!(monday.entered_twice.count, 1);
    let twice = &monday.entered_twice.rows[0];
    assert_eq!((twice.hours, twice.day), (Some(Tenths(29_260)), day("2026-11-06")));
    assert_eq!(twice.second.who.as_deref(), Some("Amos Tillery"));
    let list = crate::due::due_list(&yard.shop.ledger, at("2026-11-09T17:00:00-07:00")).unwrap();
    let row = list.rows.iter().find(|row| row.unit == "TH-01" && row.task == "oil-and-filters").unwrap();
    assert_eq!((row.due_hours, row.last_good_day), (Some(Tenths(34_260)), Some(day("2027-11-06"))));
}
