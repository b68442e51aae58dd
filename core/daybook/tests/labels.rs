//! Door tags and drum labels, scanned: the unit that is meant, what the drum says, and a reason for everything else.
//!
//! Invented data: the fleet Tern Hollow Water.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::exchange::ShopCode;
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::label::{DoorScan, Label, NotADrum, NotAUnit, door_scan};
use sumpbook_daybook::ledger::Root;
use sumpbook_daybook::parcel::Invitation;
use sumpbook_daybook::screen::{DisabledReason, TopUpScreen, top_up};
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::record::{Glass, Pour};
use sumpbook_trade::{Entry, Fact, Figure, FleetId, Mix, OilFamily, TruckId, Unit};
use tern_hollow::{AMOS, TH_01, Yard, at, signing};

fn shop_code(fleet: FleetId) -> String {
    let shop = DeviceKey::from_secret(&[1; 32]).public();
    let invitation = Invitation {
        shop,
        code: [9; 16],
        hub: Some("hub.yard:8443".to_owned()),
        fleet_name: "Tern Hollow Water".to_owned(),
        expires_ms: 1_792_526_400_000,
    };
    ShopCode { root: Root { fleet, shop }, invitation, units: Vec::new() }.to_text().unwrap()
}

#[test]
fn a_door_tag_opens_its_unit_and_anything_else_says_why_not() {
    let yard = Yard::new();
    let fleet = yard.ledger.root().fleet;
    let scan = |text: &str| door_scan(fleet, yard.ledger.fleet(), text);
    let tag = |fleet, truck, door| Label::of_unit(fleet, truck, door).to_text();
    let opens = |unit, door: &str| DoorScan { unit: Some(unit), no: None, says: Some(door.to_owned()) };
    assert_eq!(scan(&tag(fleet, TH_01, "TH-01")), opens(TH_01, "TH-01"));
    // The truck is meant, whatever number it bore when the tag was printed.
    assert_eq!(scan(&tag(fleet, TH_01, "TH-99")), opens(TH_01, "TH-01"));
    assert_eq!(scan(" th-01 "), opens(TH_01, "TH-01"));

    let no = |no, says: Option<&str>| DoorScan { unit: None, no: Some(no), says: says.map(str::to_owned) };
    let (sold, other) = (TruckId::from_bytes([9; 16]), FleetId::from_bytes([9; 16]));
    assert_eq!(scan(&tag(other, TH_01, "TH-01")), no(NotAUnit::OtherFleet, None));
    assert_eq!(scan(&tag(fleet, sold, "TH-44")), no(NotAUnit::NotHere, Some("TH-44")));
    assert_eq!(scan(&tag(fleet, sold, "TH-01")), no(NotAUnit::OtherTruck, Some("TH-01")));
    assert_eq!(scan("SUMPBOOK:OIL:MINERAL:ISO VG 46"), no(NotAUnit::DrumLabel, None));
    assert_eq!(scan(&shop_code(fleet)), no(NotAUnit::ShopCode, None));
    assert_eq!(scan("ladder 12"), no(NotAUnit::NoTag, Some("ladder 12")));
    assert_eq!(scan(&"x".repeat(500)), no(NotAUnit::NoTag, Some(&"x".repeat(40))));
}

#[test]
fn a_drums_label_says_family_and_grade_and_the_verdict_is_the_cores() {
    let mut yard = Yard::new();
    let mut draft = yard.top_up(TH_01, AMOS, "2026-10-19T07:00:00-06:00");
    let shown = |yard: &Yard, draft: &_| -> TopUpScreen {
        top_up(&yard.ledger, draft, at("2026-10-19T07:01:00-06:00")).unwrap()
    };
    assert_eq!(shown(&yard, &draft).mix, None);
    draft.scans_drum("SUMPBOOK:OIL:MINERAL:ISO VG 46").unwrap();
    let own = shown(&yard, &draft);
    assert_eq!((own.mix, own.drum_scanned, own.may_not_pour), (Some(Mix::Same), true, false));

    draft.scans_drum("SUMPBOOK:OIL:POLYGLYCOL:ISO VG 46").unwrap();
    let other = shown(&yard, &draft);
    assert_eq!((other.mix, other.may_not_pour, other.gels), (Some(Mix::OtherFamily), true, true));
    // Not the two signs that are still to be looked at: for this oil nobody opens the cap.
    let why_not = other.main.why_not;
    assert_eq!(why_not, Some(DisabledReason::OilMayNotMeet(Mix::OtherFamily)));

    // A label of nobody's here is an unknown drum, not the one that was scanned before.
    draft.scans_drum("4006381333931").unwrap();
    let unknown = shown(&yard, &draft);
    assert_eq!((unknown.mix, unknown.drum_family, unknown.drum_grade), (Some(Mix::Unknown), None, None));
    assert!(unknown.may_not_pour && unknown.drum_scanned);

    // What is no drum's changes nothing.
    let tag = Label::of_unit(yard.ledger.root().fleet, TH_01, "TH-01").to_text();
    assert_eq!(draft.scans_drum(&tag), Err(NotADrum::DoorTag));
    assert_eq!(draft.scans_drum(&shop_code(yard.ledger.root().fleet)), Err(NotADrum::ShopCode));
    assert_eq!(shown(&yard, &draft).mix, Some(Mix::Unknown));

    // Somebody's own eyes say it otherwise: then no camera said it.
    draft.says_drum(Some(OilFamily::Mineral), Some("ISO VG 46".to_owned()));
    let said = shown(&yard, &draft);
    assert_eq!((said.mix, said.drum_scanned), (Some(Mix::Same), false));
}

#[test]
fn the_record_says_that_the_label_was_scanned_and_an_unknown_drum_locks_the_air() {
    let mut yard = Yard::new();
    for (text, family, locks) in
        [("SUMPBOOK:OIL:MINERAL:ISO VG 46", Some(OilFamily::Mineral), false), ("4006381333931", None, true)]
    {
        let mut draft = yard.top_up(TH_01, AMOS, "2026-10-19T07:00:00-06:00");
        draft.scans_drum(text).unwrap();
        let volume = Figure::parse("0.125", Unit::Quart).unwrap();
        draft.pour(Pour { volume, after: Some(Glass::Percent(50)), waited_ms: None }, true).unwrap();
        draft.cap_tight = Some(true);
        let entry = draft.sign(yard.ledger.fleet(), &signing("2026-10-19T07:05:00-06:00")).unwrap();
        let kept = Entry::from_payload(&entry.to_payload()).unwrap();
        let Fact::TopUp(fact) = &kept.fact else { panic!("{kept:?}") };
        assert_eq!((fact.label_scanned, fact.family), (Some(true), family));
        yard.record(vec![entry]);
        let state = yard.ledger.unit_state(TH_01).unwrap();
        assert_eq!(state.locks.iter().any(|lock| lock.part == LockPart::Air), locks, "{text}");
    }
    // Said by hand, nothing of it stands in the record: older readers see what they always saw.
    let mut draft = yard.top_up(TH_01, AMOS, "2026-10-19T08:00:00-06:00");
    draft.says_drum(Some(OilFamily::Mineral), None);
    let volume = Figure::parse("0.125", Unit::Quart).unwrap();
    draft.pour(Pour { volume, after: None, waited_ms: None }, true).unwrap();
    draft.cap_tight = Some(true);
    let entry = draft.sign(yard.ledger.fleet(), &signing("2026-10-19T08:05:00-06:00")).unwrap();
    let Fact::TopUp(fact) = &entry.fact else { panic!("{entry:?}") };
    assert_eq!(fact.label_scanned, None);
}
