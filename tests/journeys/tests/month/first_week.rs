//! Events 1 to 6: Monday 19 to Friday 23 October. Invented data, outcomes worked by rule.

use sumpbook_journeys::{at, day, evening_of, hm};
use sumpbook_shop::sheet::View;
use sumpbook_trade::record::{OilPut, ServiceDone};
use sumpbook_trade::{Entry, Fact, Tenths};

use crate::month;

#[test]
fn event_1_a_walk_with_no_defect_is_done_and_the_oil_is_far_off() {
    let lived = month();
    let five = "2026-10-19T17:00:00-06:00";
    let evening = lived.evening("2026-10-19", five);
    let row = evening.not_reported.reported.iter().find(|row| row.unit == "TH-01").unwrap();
    assert_eq!((row.said.as_str(), row.who.as_deref()), ("done 06:32", Some("Amos Tillery")));
    assert_eq!((evening.new_defects.count, evening.locked.count, evening.without.count), (0, 0, 0));
    assert_eq!(lived.unit("TH-01", five).hours.due, Some(Tenths(28_624)));

    let oil = lived.due("TH-01", "oil-and-filters", five).unwrap();
    assert_eq!((oil.hours_left.as_deref(), oil.state.as_str()), (Some("55.6"), "far-off"));
    let separator = lived.due("TH-01", "separator", five).unwrap();
    assert_eq!((separator.hours_left.as_deref(), separator.state.as_str()), (Some("137.6"), "coming-up"));
    let on_sheet = |task: &str| evening.due.rows.iter().any(|row| row.unit == "TH-01" && row.task == task);
    assert!(on_sheet("separator") && !on_sheet("oil-and-filters"));
}

#[test]
fn event_1_the_walk_took_seven_minutes_and_waited_for_no_network() {
    let lived = month();
    let truth_at = |known: &str| lived.unit("TH-01", known).hours.due;
    assert_eq!(truth_at("2026-10-19T16:44:00-06:00"), Some(Tenths(28_624)), "brought in, the same figure");
    let before = lived.evening("2026-10-19", "2026-10-19T16:44:00-06:00");
    assert!(before.not_reported.rows.iter().any(|row| row.unit == "TH-01"), "on the phone alone until 16:45");
    let ledger = lived.known("2026-10-19T17:00:00-06:00");
    let mut seconds = Vec::new();
    for held in ledger.store().truth().between(0, i64::MAX, i64::MAX).unwrap() {
        let entry = Entry::from_payload(&held.row.payload).unwrap();
        if let Fact::PreTripSection(walk) = entry.fact
            && entry.at == at("2026-10-19T06:32:00-06:00")
        {
            seconds.push(walk.seconds);
        }
    }
    assert_eq!(seconds, [Some(420)]);
}

#[test]
fn event_2_two_answers_are_one_defect_and_the_worse_one_locks_since_its_own_time() {
    let lived = month();
    let evening = lived.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    assert_eq!(evening.new_defects.count, 1, "one defect");
    let defect = &evening.new_defects.rows[0];
    let other = defect.other_answer.as_ref().unwrap();
    let (ok, found) = (&defect.one_answer, other);
    assert_eq!((ok.ok, ok.who.as_deref(), hm(Some(ok.at))), (true, Some("Bettina Quaye"), "06:41".into()));
    assert_eq!(
        (found.ok, found.who.as_deref(), hm(Some(found.at))),
        (false, Some("Hattie Brun"), "06:44".into())
    );
    assert!(found.words.contains("left stop lamp"), "{}", found.words);
    assert_eq!(defect.locks, ["road"]);

    assert_eq!(evening.locked.count, 1);
    let locked = &evening.locked.rows[0];
    assert_eq!((locked.unit.as_str(), locked.lock.as_str()), ("TH-02", "road"));
    assert_eq!(hm(Some(locked.since)), "06:44");
    assert_eq!((hm(locked.shop_knew), hm(locked.driver_knew)), ("11:05".into(), "15:50".into()));
    assert_eq!(locked.next_step, "certify");
}

#[test]
fn event_2_the_truck_left_before_either_could_know() {
    let lived = month();
    let five = "2026-10-20T17:00:00-06:00";
    let sheet = lived.sheet("2026-10-20", View::Evening, five);
    assert!(
        sheet.sentences.contains(&"One lock-out; used against once, before either could know.".to_owned()),
        "{:?}",
        sheet.sentences
    );
    let evening = evening_of(sheet);
    assert_eq!(evening.against.count, 1);
    let against = &evening.against.rows[0];
    assert_eq!((against.what.as_str(), hm(Some(against.used))), ("left-yard", "06:50".into()));
    assert!(!against.could_know);
    assert_eq!(against.said, "no: shop knew 11:05, driver 15:50");
    assert_eq!(evening.without.count, 0, "Bettina's own walk covers the drive");
}

#[test]
fn event_2_noon_knows_of_the_lock_and_not_yet_of_the_drive() {
    let lived = month();
    let early = lived.evening("2026-10-20", "2026-10-20T11:04:00-06:00");
    assert_eq!((early.locked.count, early.against.count), (0, 0), "11:04: nothing has come");
    let noon = lived.evening("2026-10-20", "2026-10-20T12:00:00-06:00");
    assert_eq!((noon.locked.count, noon.against.count), (1, 0));
    assert_eq!(noon.new_defects.rows[0].other_answer, None, "Bettina's answer is still on her phone");
}

#[test]
fn event_3_a_figure_above_the_ceiling_is_set_aside_and_wednesday_runs_on_738_4() {
    let lived = month();
    let five = "2026-10-21T17:00:00-06:00";
    let evening = lived.evening("2026-10-21", five);
    assert_eq!(evening.to_settle.count, 1);
    let asked = &evening.to_settle.rows[0];
    assert_eq!((asked.unit.as_str(), asked.why.as_str()), ("TH-03", "above-ceiling"));
    assert_eq!(asked.used, Some(Tenths(7_384)));
    let struck = asked.figures.iter().find(|figure| figure.struck).unwrap();
    // 738.4 and 23 h 55 min, which is 23.917 h, rounded up.
    assert_eq!((struck.figure, struck.ceiling), (Tenths(74_210), Some(Tenths(7_624))));
    assert_eq!(lived.due("TH-03", "oil-and-filters", five).unwrap().hours, Some(Tenths(7_384)));
}

#[test]
fn event_3_thursday_is_accepted_and_wednesday_shows_742_1_with_the_struck_figure() {
    let lived = month();
    let five = "2026-10-22T17:00:00-06:00";
    let state = lived.unit("TH-03", five);
    assert_eq!(state.hours.due, Some(Tenths(7_460)));
    assert!(state.hours.last.as_ref().is_some_and(|last| last.counts && last.figure == Tenths(7_460)));
    assert_eq!(state.hours.questions, []);
    assert_eq!(lived.evening("2026-10-22", five).to_settle.count, 0);
    let again = lived.evening("2026-10-21", five);
    assert_eq!(again.corrected.count, 1);
    let row = &again.corrected.rows[0];
    assert_eq!((row.unit.as_str(), row.struck, row.instead), ("TH-03", Tenths(74_210), Some(Tenths(7_421))));
    assert_eq!((row.who.as_deref(), hm(Some(row.at))), (Some("Carmelo Ruiz"), "16:35".into()));
    assert!(lived.evening("2026-10-21", "2026-10-21T17:00:00-06:00").corrected.rows.is_empty());
}

#[test]
fn event_4_thursday_at_five_runs_on_wednesday_s_figure() {
    let lived = month();
    let five = "2026-10-22T17:00:00-06:00";
    let row = lived.due("TH-05", "first-service", five).unwrap();
    assert_eq!((row.hours, row.hours_left.as_deref()), (Some(Tenths(472)), Some("2.8")));
    assert_eq!(row.said, "coming up, 2.8 h left");
    assert_eq!(hm(row.read_at), "16:20");
    let evening = lived.evening("2026-10-22", five);
    assert!(evening.reminders.rows.iter().all(|row| row.unit != "TH-05"), "nothing of Thursday has come");
}

#[test]
fn event_4_friday_at_six_is_past_due_and_gil_is_the_one_who_saw() {
    let lived = month();
    let six = "2026-10-23T06:00:00-06:00";
    let row = lived.due("TH-05", "first-service", six).unwrap();
    assert_eq!((row.hours, row.said.as_str()), (Some(Tenths(504)), "past due 0.4 h"));
    let morning = lived.morning("2026-10-23", six);
    assert!(morning.due.rows.iter().any(|row| row.unit == "TH-05" && row.said == "past due 0.4 h"));
    let thursday = lived.evening("2026-10-22", six);
    let note = thursday.reminders.rows.iter().find(|row| row.unit == "TH-05").unwrap();
    let seen = note.seen_by.as_ref().unwrap();
    assert_eq!((seen.who.as_deref(), hm(Some(seen.at))), (Some("Gil Sandoval"), "15:22".into()));
    assert!(!seen.told_shop && note.shop_told_by.is_none() && note.others.is_empty());
}

#[test]
fn event_4_after_two_past_seven_hattie_was_first_and_gil_second() {
    let lived = month();
    let thursday = lived.evening("2026-10-22", "2026-10-23T07:02:00-06:00");
    let note = thursday.reminders.rows.iter().find(|row| row.unit == "TH-05").unwrap();
    let first = note.seen_by.as_ref().unwrap();
    assert_eq!((first.who.as_deref(), hm(Some(first.at))), (Some("Hattie Brun"), "15:10".into()));
    assert!(first.told_shop);
    assert_eq!(note.shop_told_by.as_ref(), Some(first));
    let second: Vec<_> = note.others.iter().map(|ack| (ack.who.as_deref(), hm(Some(ack.at)))).collect();
    assert_eq!(second, [(Some("Gil Sandoval"), "15:22".to_owned())]);
    let late = thursday.came_late.rows.iter().find(|row| row.who.as_deref() == Some("Hattie Brun")).unwrap();
    assert_eq!((hm(Some(late.at)), hm(Some(late.came))), ("15:10".into(), "07:02".into()));
}

#[test]
fn event_5_the_first_service_is_closed_1_9_h_late_and_resets_oil_alone() {
    let lived = month();
    let five = "2026-10-23T17:00:00-06:00";
    let evening = lived.evening("2026-10-23", five);
    let done = evening.due.done.iter().find(|row| row.unit == "TH-05").unwrap();
    assert_eq!((done.who.as_deref(), done.hours), (Some("Dov Petrakis"), Some(Tenths(519))));
    assert_eq!(
        (done.tasks.as_slice(), done.late.as_slice()),
        (["first-service".to_owned()].as_slice(), ["first-service 1.9 h".to_owned()].as_slice())
    );
    let of = |task: &str| {
        let row = lived.due("TH-05", task, five).unwrap();
        (row.due_hours, row.last_good_day)
    };
    assert_eq!(of("oil-and-filters"), (Some(Tenths(5_519)), Some(day("2027-10-23"))));
    assert_eq!(of("cooler-and-scavenge"), (None, Some(day("2027-09-28"))));
    assert_eq!(of("separator"), (Some(Tenths(30_000)), Some(day("2031-09-28"))));
}

#[test]
fn event_5_the_first_service_never_returns() {
    let lived = month();
    let mut evenings = 0;
    for row in lived.world.shop.ledger.store().sheets().unwrap() {
        if row.day.as_str() < "2026-10-23" {
            continue;
        }
        let known = format!("{}T23:00:00-07:00", row.day);
        assert_eq!(lived.due("TH-05", "first-service", &known), None, "{known}");
        evenings += 1;
    }
    assert_eq!(evenings, 12);
}

#[test]
fn event_5_eight_quarts_are_7_57_litres() {
    let lived = month();
    let id = lived.world.named("first service").unwrap();
    let held = lived.world.shop.ledger.store().truth().by_id(id).unwrap().remove(0);
    let Fact::ServiceDone(ServiceDone { oil: Some(OilPut { volume: Some(volume), .. }), .. }) =
        Entry::from_payload(&held.row.payload).unwrap().fact
    else {
        panic!("the first service tells of its oil");
    };
    assert_eq!(volume.to_string(), "8 qt", "kept as it was given");
    // A US gallon is 3.785411784 L exactly (NIST SP 811, B.8), a quart is a quarter of it.
    let litres = volume.volume().unwrap().value * 1_000.0;
    assert!((litres - 7.570_823_568).abs() < 1e-9, "{litres}");
}

#[test]
fn event_6_a_night_unit_is_due_out_and_then_covered_over_midnight() {
    let lived = month();
    let thursday = lived.evening("2026-10-22", "2026-10-22T17:00:00-06:00");
    assert!(thursday.not_reported.rows.iter().all(|row| row.unit != "TH-07"), "not missing");
    let row = thursday.not_reported.reported.iter().find(|row| row.unit == "TH-07").unwrap();
    assert_eq!((row.said.as_str(), hm(row.due_again)), ("covered Wed 18:52-Thu 04:40", "19:00".into()));

    let friday = lived.evening("2026-10-23", "2026-10-23T17:00:00-06:00");
    let row = friday.not_reported.reported.iter().find(|row| row.unit == "TH-07").unwrap();
    assert_eq!(row.said, "covered Thu 18:52-Fri 04:40");
    assert!(friday.not_reported.rows.iter().all(|row| row.unit != "TH-07"));
    assert!(friday.without.rows.iter().all(|row| row.unit != "TH-07"));
}

#[test]
fn event_6_3_2_hours_in_three_hours_and_a_quarter_are_accepted() {
    let lived = month();
    let state = lived.unit("TH-07", "2026-10-23T17:00:00-06:00");
    assert_eq!(state.hours.due, Some(Tenths(19_212)));
    assert_eq!((state.hours.questions.len(), state.hours.struck.len()), (0, 0));
    assert_eq!(Tenths(19_212) - Tenths(19_180), Tenths(32));
    assert!(state.hours.last.is_some_and(|last| last.counts && last.figure == Tenths(19_212)));
}
