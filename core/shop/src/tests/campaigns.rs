//! A maker's campaign: who is meant, what it locks, how it ends. Invented data, outcomes worked by rule.

use sumpbook_daybook::screen::{LockState, News, Standing as Heard, UnitQuery, unit};
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::campaign::{Hit, LookWhy};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::clock::{Standing, TaskId};
use sumpbook_trade::record::*;
use sumpbook_trade::{EntryId, Stamp};

use super::yard::*;
use crate::calendar_feed::Feed;
use crate::campaign::{CampaignError, CampaignRow, NewCampaign, ranges_of};
use crate::due::due_list;
use crate::proof::gaps;
use crate::table_out::{Kind, Of, table};
use crate::{NewSet, ShopError};

const TASK: &str = "campaign:KX 24-07";

fn campaign() -> NewCampaign {
    NewCampaign {
        name: "KX 24-07".into(),
        words: "change the scavenge line".into(),
        paper: Some("KX 24-07 rev B".into()),
        read_at: Some("binder 4, shelf 2".into()),
        of: CampaignOf::Set,
        ranges: ranges_of("KX-1000..KX-1999\nKX-4000..KX-4099"),
        deadline: day("2026-10-23"),
        hours: None,
        severity: Severity::Air,
        stop: false,
    }
}

/// TH-01 has set KX-1500, TH-02 KX-2000, TH-03 a plate nobody could read; of the others' sets nothing is known.
fn numbered() -> Yard {
    let mut yard = Yard::new();
    for (door, serial) in [("TH-01", "kx 01500"), ("TH-02", "KX-2000"), ("TH-03", "KX-15?")] {
        fitted(&mut yard, door, serial, "2026-10-18T13:00:00-06:00");
    }
    yard
}

fn fitted(yard: &mut Yard, door: &str, serial: &str, when: &str) {
    let hand = yard.hand("Ilse", when);
    let on = Some(yard.truck(door));
    let set = NewSet { serial: Some(serial.to_owned()), on, profile: SetProfile::unknown() };
    yard.shop.add_set(set, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn enter(yard: &mut Yard, new: NewCampaign, when: &str) -> EntryId {
    let hand = yard.hand("Ilse", when);
    let id = yard.shop.enter_campaign(new, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    id
}

fn state(yard: &Yard, door: &str) -> UnitState {
    yard.shop.ledger.unit_state(yard.truck(door)).unwrap()
}

fn listed(yard: &Yard, when: &str) -> CampaignRow {
    let mut rows = due_list(&yard.shop.ledger, at(when)).unwrap().campaigns;
    assert_eq!(rows.len(), 1);
    rows.remove(0)
}

fn stands(yard: &Yard, door: &str, when: &str) -> String {
    let row = listed(yard, when);
    row.units.iter().find(|unit| unit.unit == door).map_or("not meant".into(), |unit| unit.state.clone())
}

fn ics(yard: &Yard, when: &str) -> String {
    Feed::read(&yard.shop.ledger, at(when)).unwrap().to_ics("en").replace("\r\n ", "")
}

const ENTERED: &str = "2026-10-19T08:00:00-06:00";
const NOON: &str = "2026-10-19T12:00:00-06:00";

#[test]
fn each_unit_is_meant_or_not_or_to_be_looked_at() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    let row = listed(&yard, NOON);
    let of = |door: &str| row.units.iter().find(|unit| unit.unit == door).cloned();
    let one = of("TH-01").unwrap();
    assert_eq!(
        (one.state.as_str(), one.serial.as_deref(), one.days_left),
        ("open", Some("kx 01500"), Some(4))
    );
    assert_eq!(of("TH-02"), None, "KX-2000 is the first beyond");
    assert_eq!(of("TH-03").unwrap().look_why.as_deref(), Some("no-number"));
    assert_eq!(of("TH-05").unwrap().look_why.as_deref(), Some("no-serial"));
    assert_eq!((row.looked_at, row.count("open"), row.count("look")), (6, 1, 4));
    // It stands in the list with its own column, and nowhere else.
    let list = due_list(&yard.shop.ledger, at(NOON)).unwrap();
    let due: Vec<_> = list.rows.iter().filter(|row| row.task == TASK).collect();
    assert_eq!(due.len(), 1);
    assert_eq!((due[0].unit.as_str(), due[0].state.as_str()), ("TH-01", "coming-up"));
    let said = due[0].campaign.as_ref().unwrap();
    assert_eq!(
        (said.words.as_str(), said.locks.as_str(), said.stop),
        ("change the scavenge line", "air", false)
    );
    assert!(list.rows.iter().all(|row| (row.task == TASK) == row.campaign.is_some()));
}

#[test]
fn after_its_last_good_day_it_is_past_due_locks_and_is_used_against_until_the_work_is_done() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    yard.exchange(1, "2026-10-19T16:00:00-06:00");
    let start = || StartAir { steps: Vec::new(), in_spite_of_lock: None };
    yard.sign(1, "Amos", "TH-01", "2026-10-23T16:00:00-06:00", start());
    yard.sign(1, "Amos", "TH-01", "2026-10-24T09:00:00-06:00", start());
    yard.exchange(1, "2026-10-24T16:00:00-06:00");
    let last = yard.evening("2026-10-23", "2026-10-23T17:00:00-06:00");
    assert_eq!((last.locked.count, last.against.count), (0, 0), "the last good day is good");
    let row = last.due.rows.iter().find(|row| row.task == TASK).unwrap();
    assert_eq!(row.said, "due today");
    let next = yard.evening("2026-10-24", "2026-10-24T17:00:00-06:00");
    let locked = &next.locked.rows[0];
    assert_eq!(
        (locked.unit.as_str(), locked.lock.as_str(), locked.item.as_str()),
        ("TH-01", "air", "campaign")
    );
    assert_eq!(locked.since, at("2026-10-24T00:00:00-06:00"));
    assert_eq!(
        (locked.why.as_str(), locked.who.as_deref()),
        ("change the scavenge line", Some("Ilse Marrow"))
    );
    assert_eq!(locked.next_step, "service");
    assert_eq!(next.against.count, 1);
    assert!(next.against.rows[0].could_know, "the campaign was on the phone");
    assert_eq!(yard.due("TH-01", TASK, "2026-10-24T17:00:00-06:00"), "past due 1 day");
    assert_eq!(stands(&yard, "TH-01", "2026-10-24T17:00:00-06:00"), "past-deadline");

    // The work frees it, with no certificate and no review.
    let done = yard.sign_with(2, "Dov", "TH-01", "2026-10-25T10:00:00-06:00", Some(28_624), service(&[TASK]));
    yard.exchange(2, "2026-10-25T11:00:00-06:00");
    let now = "2026-10-25T17:00:00-06:00";
    let evening = yard.evening("2026-10-25", now);
    assert_eq!(evening.locked.count, 0);
    assert_eq!(evening.due.done[0].late, [format!("{TASK} 2 d")]);
    let row = listed(&yard, now);
    let unit = row.units.iter().find(|unit| unit.unit == "TH-01").unwrap();
    assert_eq!(
        (unit.state.as_str(), unit.done_on, unit.late_days),
        ("done", Some(day("2026-10-25")), Some(2))
    );
    assert_eq!(yard.due("TH-01", TASK, now), "not on the list");
    // Once for ever: the same again moves nothing.
    yard.sign_with(2, "Dov", "TH-01", "2026-10-26T10:00:00-06:00", None, service(&[TASK]));
    yard.exchange(2, "2026-10-26T11:00:00-06:00");
    let again = listed(&yard, "2026-10-26T17:00:00-06:00");
    assert_eq!(
        again.units.iter().find(|unit| unit.unit == "TH-01").unwrap().done_on,
        Some(day("2026-10-25"))
    );
    // Taken back by who wrote them, it is open again and locks from where it did.
    let wrong = Correction { target: done, why: "that was TH-02".into(), instead: None };
    yard.sign(2, "Dov", "TH-01", "2026-10-26T12:00:00-06:00", wrong);
    yard.exchange(2, "2026-10-26T12:30:00-06:00");
    let later = listed(&yard, "2026-10-26T17:00:00-06:00");
    let unit = later.units.iter().find(|unit| unit.unit == "TH-01").unwrap();
    assert_eq!(unit.done_on, Some(day("2026-10-26")), "the second service counts now");
}

#[test]
fn a_service_taken_back_opens_it_again() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    yard.exchange(2, "2026-10-19T09:00:00-06:00");
    let done = yard.sign(2, "Dov", "TH-01", "2026-10-20T10:00:00-06:00", service(&[TASK]));
    yard.exchange(2, "2026-10-20T11:00:00-06:00");
    assert_eq!(stands(&yard, "TH-01", "2026-10-20T12:00:00-06:00"), "done");
    let feed = ics(&yard, "2026-10-20T12:00:00-06:00");
    assert!(!feed.contains("KX 24-07"), "it was never in a feed that was kept: {feed}");
    let wrong = Correction { target: done, why: "that was TH-02".into(), instead: None };
    yard.sign(2, "Dov", "TH-01", "2026-10-20T13:00:00-06:00", wrong);
    yard.exchange(2, "2026-10-20T14:00:00-06:00");
    assert_eq!(stands(&yard, "TH-01", "2026-10-20T15:00:00-06:00"), "open");
    assert_eq!(yard.due("TH-01", TASK, "2026-10-20T15:00:00-06:00"), "coming up, 3 days left");
}

#[test]
fn the_maker_says_stop_and_the_phone_says_why() {
    let mut yard = numbered();
    enter(&mut yard, NewCampaign { stop: true, ..campaign() }, ENTERED);
    yard.exchange(1, "2026-10-19T09:00:00-06:00");
    let truck = yard.truck("TH-01");
    let query = UnitQuery { unit: truck, person: yard.who("Amos") };
    let screen = |ledger: &sumpbook_daybook::ledger::Ledger, now: &str| {
        unit(ledger, &query, &Heard::default(), at(now)).unwrap()
    };
    let seen = screen(&yard.phones[0].ledger, NOON);
    let _: &News = &seen.news;
    assert_eq!(seen.road_air.air.state, LockState::Locked);
    assert_eq!(seen.road_air.air.since, Some(at(ENTERED)));
    let why = &seen.road_air.air.why[0];
    assert_eq!(why.item, "campaign");
    assert_eq!(why.place.as_deref(), Some("KX 24-07: change the scavenge line"));
    assert_eq!(why.by.as_deref(), Some("Ilse Marrow"));
    assert_eq!(seen.road_air.road.state, LockState::NoLockOnRecord);
    let task = seen.tasks.iter().find(|task| task.id.starts_with(TASK)).unwrap();
    assert_eq!(task.standing, Standing::ComingUp);
    // One text for every campaign, with its words in it, in both languages.
    let said = |texts: &sumpbook_daybook::text::Texts| texts.get(&format!("task-{}", task.id), &[]);
    use sumpbook_daybook::text::Texts;
    assert_eq!(said(Texts::english()), "Maker's campaign KX 24-07: change the scavenge line");
    assert_eq!(said(Texts::spanish()), "Campaña del fabricante KX 24-07: change the scavenge line");
    // A day that is still to come locks nothing yet on a phone either.
    let mut other = numbered();
    enter(&mut other, campaign(), ENTERED);
    other.exchange(1, "2026-10-19T09:00:00-06:00");
    let query = UnitQuery { unit: other.truck("TH-01"), person: other.who("Amos") };
    let of = |now: &str| unit(&other.phones[0].ledger, &query, &Heard::default(), at(now)).unwrap();
    assert_eq!(of("2026-10-23T23:59:00-06:00").road_air.air.state, LockState::NoLockOnRecord);
    assert_eq!(of("2026-10-24T00:01:00-06:00").road_air.air.state, LockState::Locked);
}

#[test]
fn done_on_the_set_it_follows_the_set_and_of_the_truck_it_stays() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    let trucks = NewCampaign {
        name: "TR-9".into(),
        words: "check the frame bolts".into(),
        of: CampaignOf::Truck,
        ranges: ranges_of("AB-1..AB-9"),
        severity: Severity::Note,
        ..campaign()
    };
    let hand = yard.hand("Ilse", ENTERED);
    yard.shop.enter_campaign(trucks, &hand).unwrap();
    for door in ["TH-01", "TH-05"] {
        let truck = yard.truck(door);
        yard.shop.look_campaign("tr-9", truck, true, "plate under the seat", &hand).unwrap();
    }
    yard.shop.ledger.settle().unwrap();
    yard.exchange(2, "2026-10-19T09:00:00-06:00");
    yard.sign(2, "Dov", "TH-01", "2026-10-20T10:00:00-06:00", service(&[TASK, "campaign:TR-9"]));
    yard.exchange(2, "2026-10-20T11:00:00-06:00");
    fitted(&mut yard, "TH-05", "kx 01500", "2026-10-21T08:00:00-06:00");
    let of = |yard: &Yard, task: &str, door: &str| {
        let list = due_list(&yard.shop.ledger, at("2026-10-22T12:00:00-06:00")).unwrap();
        let row = list.campaigns.into_iter().find(|row| row.task == task).unwrap();
        row.units.into_iter().find(|unit| unit.unit == door).map(|unit| unit.state)
    };
    assert_eq!(of(&yard, TASK, "TH-05").as_deref(), Some("done"), "with the set");
    assert_eq!(of(&yard, TASK, "TH-01"), None, "it has no set any more");
    assert_eq!(of(&yard, "campaign:TR-9", "TH-01").as_deref(), Some("done"), "with the truck");
    assert_eq!(of(&yard, "campaign:TR-9", "TH-05").as_deref(), Some("open"));
    let report = crate::verify::verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings, []);
}

#[test]
fn a_unit_that_is_numbered_or_registered_later_is_hit_too() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    assert_eq!(stands(&yard, "TH-03", NOON), "look");
    assert_eq!(stands(&yard, "TH-07", NOON), "look");
    // The plate was read after all; another unit's is typed in; a third is outside.
    let before = state(&yard, "TH-07").campaigns[0].is;
    assert_eq!(before, Hit::Look(LookWhy::NoSerial));
    fitted(&mut yard, "TH-07", "KX-4099", "2026-10-20T08:00:00-06:00");
    fitted(&mut yard, "TH-08", "ZZ-1", "2026-10-20T08:00:00-06:00");
    let noon = "2026-10-20T12:00:00-06:00";
    assert_eq!(stands(&yard, "TH-07", noon), "open");
    assert_eq!(stands(&yard, "TH-08", noon), "not meant");
    // The range is made wider.
    let wider = NewCampaign { ranges: ranges_of("KX-1000..KX-2000\nKX-4000..KX-4099"), ..campaign() };
    enter(&mut yard, wider, "2026-10-20T13:00:00-06:00");
    assert_eq!(stands(&yard, "TH-02", "2026-10-20T14:00:00-06:00"), "open");
    assert_eq!(listed(&yard, "2026-10-20T14:00:00-06:00").entered, at(ENTERED));
    // Folded anew from nothing it is the same, on the phone as at the shop.
    yard.exchange(1, "2026-10-20T15:00:00-06:00");
    for door in ["TH-01", "TH-02", "TH-03", "TH-07", "TH-08"] {
        let truck = yard.truck(door);
        let there = yard.phones[0].ledger.unit_state(truck).unwrap();
        assert_eq!(there.campaigns, state(&yard, door).campaigns, "{door}");
        assert_eq!(there.locks, state(&yard, door).locks, "{door}");
    }
    let report = crate::verify::verify(&mut yard.shop).unwrap();
    assert_eq!(report.findings, []);
}

#[test]
fn who_looks_says_so_by_name_and_a_serial_that_tells_is_not_overruled() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    let hand = yard.hand("Wren", "2026-10-19T10:00:00-06:00");
    let (three, five, one) = (yard.truck("TH-03"), yard.truck("TH-05"), yard.truck("TH-01"));
    yard.shop.look_campaign("KX 24-07", three, true, "plate cleaned: KX-1512", &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    assert_eq!(stands(&yard, "TH-03", NOON), "open");
    let refused = |told: Result<EntryId, ShopError>| told.unwrap_err().to_string();
    let told = refused(yard.shop.look_campaign("KX 24-07", one, false, "looked", &hand));
    assert!(told.contains("the serial of TH-01 tells"), "{told}");
    let told = refused(yard.shop.look_campaign("KX 24-07", five, true, "looked", &hand));
    assert!(told.contains("no compressor set stands on TH-05"), "{told}");
    let told = refused(yard.shop.look_campaign("KX 24-08", three, true, "looked", &hand));
    assert!(told.contains("no campaign here is called 'KX 24-08'. Known: KX 24-07."), "{told}");
    assert!(refused(yard.shop.look_campaign("KX 24-07", three, true, " ", &hand)).contains("say why"));
    // Said otherwise later, the later stands.
    yard.shop.look_campaign("KX 24-07", three, false, "it was KX-5512", &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    assert_eq!(stands(&yard, "TH-03", NOON), "not meant");
}

#[test]
fn taken_back_it_is_due_nowhere_and_the_calendar_says_so() {
    let mut yard = numbered();
    enter(&mut yard, NewCampaign { stop: true, ..campaign() }, ENTERED);
    crate::calendar_feed::keep(&mut yard.shop, at("2026-10-19T09:00:00-06:00")).unwrap();
    let feed = ics(&yard, NOON);
    let event = feed.split("BEGIN:VEVENT").find(|event| event.contains("Maker's campaign KX 24-07")).unwrap();
    assert!(event.contains("DTSTART;VALUE=DATE:20261023"), "{event}");
    assert!(event.contains("SEQUENCE:0"), "{event}");
    let uid = event.lines().find(|line| line.starts_with("UID:")).unwrap().to_owned();
    let later = NewCampaign { deadline: day("2026-10-30"), stop: true, ..campaign() };
    enter(&mut yard, later, "2026-10-19T13:00:00-06:00");
    let feed = ics(&yard, "2026-10-19T14:00:00-06:00");
    let moved = feed.split("BEGIN:VEVENT").find(|event| event.contains(&uid)).expect("its name stays");
    assert!(moved.contains("DTSTART;VALUE=DATE:20261030") && moved.contains("SEQUENCE:1"), "{moved}");

    let hand = yard.hand("Ilse", "2026-10-20T08:00:00-06:00");
    assert!(yard.shop.withdraw_campaign("KX 24-07", "", &hand).is_err());
    yard.shop.withdraw_campaign("kx 24-07", "the maker took it back", &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    let noon = "2026-10-20T12:00:00-06:00";
    assert_eq!(yard.due("TH-01", TASK, noon), "not on the list");
    let row = listed(&yard, noon);
    assert_eq!(row.withdrawn.as_ref().unwrap().why, "the maker took it back");
    assert_eq!(stands(&yard, "TH-01", noon), "withdrawn");
    assert_eq!(yard.evening("2026-10-20", noon).locked.count, 0);
    let feed = ics(&yard, noon);
    let gone = feed.split("BEGIN:VEVENT").find(|event| event.contains(&uid)).unwrap();
    assert!(gone.contains("STATUS:CANCELLED"), "{gone}");
    let again = yard.shop.withdraw_campaign("KX 24-07", "again", &hand).unwrap_err();
    assert!(again.to_string().contains("was taken back before"), "{again}");
    // Entered again it stands again.
    enter(&mut yard, campaign(), "2026-10-21T08:00:00-06:00");
    assert_eq!(stands(&yard, "TH-01", "2026-10-21T09:00:00-06:00"), "open");
}

#[test]
fn what_cannot_be_used_is_refused_and_nothing_is_recorded() {
    let mut yard = numbered();
    let hand = yard.hand("Ilse", ENTERED);
    let before = yard.shop.ledger.store().truth().last_n().unwrap();
    let long = "x".repeat(41);
    let bad = |change: &dyn Fn(&mut NewCampaign)| {
        let mut new = campaign();
        change(&mut new);
        new
    };
    let refused: [(NewCampaign, &str); 9] = [
        (bad(&|c| c.name = " ".into()), "needs a name"),
        (bad(&|c| c.name = "KX@24".into()), "needs a name"),
        (bad(&|c| c.name = long.clone()), "needs a name"),
        (bad(&|c| c.words = String::new()), "what is to be done"),
        (bad(&|c| c.ranges = vec![]), "1 to 100 serial ranges"),
        (bad(&|c| c.ranges = ranges_of("KX-1..KY-2")), "'KX-1' and 'KY-2' do not compare"),
        (bad(&|c| c.ranges = ranges_of("KX-9..KX-2")), "'KX-2' comes before 'KX-9'"),
        (bad(&|c| c.severity = Severity::Outlet), "locks the road, the air"),
        (
            bad(&|c| {
                c.severity = Severity::Note;
                c.stop = true;
            }),
            "a note locks nothing",
        ),
    ];
    for (new, said) in refused {
        let told = yard.shop.enter_campaign(new, &hand).unwrap_err().to_string();
        assert!(told.contains(said) && told.ends_with("Nothing was recorded."), "{told}");
    }
    let nobody = crate::Hand::nobody(at(ENTERED));
    assert!(matches!(yard.shop.enter_campaign(campaign(), &nobody), Err(ShopError::NoPerson)));
    let unknown = yard.shop.withdraw_campaign("KX 24-07", "why", &hand).unwrap_err();
    assert!(matches!(unknown, ShopError::Campaign(CampaignError::Unknown { .. })));
    assert_eq!(yard.shop.ledger.store().truth().last_n().unwrap(), before);
    // The same twice is recorded once.
    let one = yard.shop.enter_campaign(campaign(), &hand).unwrap();
    assert_eq!(yard.shop.enter_campaign(campaign(), &hand).unwrap(), one);
    let small = NewCampaign { name: " kx  24-07 ".into(), ..campaign() };
    assert_eq!(
        yard.shop.enter_campaign(small, &hand).unwrap(),
        one,
        "capitals and blanks make no second one"
    );
}

#[test]
fn only_the_shops_key_may_say_it() {
    let mut yard = numbered();
    let id = enter(&mut yard, campaign(), ENTERED);
    let told = &yard.shop.ledger.fleet().campaigns[&TaskId::from(TASK)].told;
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].entry, id);
    let forged = told[0].what.clone();
    let truck = yard.truck("TH-01");
    yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-10-19T09:00:00-06:00",
        CampaignSet { withdrawn: Some("x".into()), ..forged },
    );
    yard.exchange(1, "2026-10-19T09:30:00-06:00");
    assert_eq!(stands(&yard, "TH-01", NOON), "open");
    let aside = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00").set_aside;
    assert!(aside.rows.iter().any(|row| row.says == "campaign-set" && row.why == "shop-only"), "{aside:?}");
    assert!(state(&yard, "TH-01").truck == truck);
}

#[test]
fn it_goes_out_as_a_table_and_the_pack_names_it_as_a_gap() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    let now: Stamp = at(NOON);
    let sheet = table(&yard.shop.ledger, Kind::Campaigns, Of::Fleet, now).unwrap();
    assert_eq!(sheet.rows.len(), 5);
    let column = |name: &str| sheet.heads.iter().position(|head| head == name).unwrap();
    let first: Vec<&str> = ["Unit", "Campaign", "Serial", "State", "Locks", "Last good day"]
        .iter()
        .map(|name| sheet.rows[0][column(name)].as_str())
        .collect();
    assert_eq!(first, ["TH-03", "KX 24-07", "KX-15?", "look", "air", "2026-10-23"]);
    let missing = gaps(&yard.shop.ledger, Of::Fleet, yard.folder.path(), now).unwrap();
    let of = |door: &str, what: &str| missing.iter().find(|gap| gap.unit == door && gap.what == what);
    assert_eq!(of("TH-01", "campaign-open").unwrap().cases, ["KX 24-07 - 2026-10-23"]);
    assert_eq!(of("TH-03", "campaign-look").unwrap().cases, ["KX 24-07"]);
    assert_eq!(of("TH-02", "campaign-look"), None);
    let never = of("TH-01", "task-never").map(|gap| gap.cases.clone()).unwrap_or_default();
    assert!(never.iter().all(|case| !case.contains("campaign")), "{never:?}");
    // A campaign about nobody still stands in the table of the whole fleet.
    let nobody = NewCampaign { name: "QQ-1".into(), ranges: ranges_of("QQ-1..QQ-2"), ..campaign() };
    enter(&mut yard, nobody, "2026-10-19T08:30:00-06:00");
    let rows = due_list(&yard.shop.ledger, now).unwrap().campaigns;
    assert_eq!(rows.iter().map(|row| row.name.as_str()).collect::<Vec<_>>(), ["KX 24-07", "QQ-1"]);
}

#[test]
fn a_visit_bundles_it_and_a_sheet_of_an_earlier_day_knows_nothing_of_it() {
    let mut yard = numbered();
    enter(&mut yard, campaign(), ENTERED);
    let hand = yard.hand("Ilse", "2026-10-19T09:00:00-06:00");
    let tasks = vec![TaskId::from(TASK), TaskId::from("oil-and-filters")];
    let visits = [(yard.truck("TH-01"), crate::plan::Work { tasks, ..Default::default() })];
    crate::plan::plan_visits(&mut yard.shop, &visits, day("2026-10-21"), None, &hand).unwrap();
    let due = crate::plan::fleet_due(&yard.shop.ledger, at(NOON)).unwrap();
    assert_eq!(due.visits[0].tasks, [TASK, "oil-and-filters"]);
    let row = due.rows.iter().find(|row| row.due.task == TASK).unwrap();
    assert_eq!(row.visit.as_ref().unwrap().day, day("2026-10-21"));
    // A unit that is not meant has no such task.
    let of_another = crate::plan::Work { tasks: vec![TaskId::from(TASK)], ..Default::default() };
    let wrong = [(yard.truck("TH-02"), of_another)];
    let told = crate::plan::plan_visits(&mut yard.shop, &wrong, day("2026-10-21"), None, &hand).unwrap_err();
    assert!(told.to_string().contains("is not in the programme of TH-02"), "{told}");
    let sunday = yard.evening("2026-10-18", "2026-10-18T23:00:00-06:00");
    assert!(sunday.due.rows.iter().all(|row| row.campaign.is_none()), "{:?}", sunday.due.rows);
    // A service of something else while it was near is remarked upon.
    yard.sign_with(
        2,
        "Dov",
        "TH-01",
        "2026-10-20T10:00:00-06:00",
        Some(28_624),
        service(&["oil-and-filters"]),
    );
    yard.exchange(2, "2026-10-20T11:00:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    assert!(evening.due.done[0].not_bundled.contains(&TASK.to_owned()), "{:?}", evening.due.done);
}
