//! The shop's folder, who may write what, and what is refused.

use sumpbook_daybook::judgement::Judged;
use sumpbook_trade::EntryId;
use sumpbook_trade::record::*;

use super::yard::*;
use crate::service::service_done;
use crate::settle::decide;
use crate::{Hand, InitOptions, NewPerson, Shop, ShopError};

fn options(demo: bool) -> InitOptions {
    let now = at("2026-10-18T12:00:00-06:00");
    InitOptions { name: "Tern Hollow Water".into(), zone: "America/Denver".into(), demo, now }
}

#[test]
fn a_shop_is_made_once_and_opened_again() {
    let folder = tempfile::tempdir().unwrap();
    let root = Shop::init(folder.path(), &options(false)).unwrap().ledger.root();
    let again = Shop::init(folder.path(), &options(false)).map(|_| ()).unwrap_err();
    assert!(matches!(again, ShopError::Taken(_)), "{again}");
    let shop = Shop::open(folder.path()).unwrap();
    assert_eq!(shop.ledger.root(), root);
    assert_eq!(shop.ledger.fleet().name, "Tern Hollow Water");
    assert_eq!(shop.ledger.fleet().zone, chrono_tz::America::Denver);
    assert_eq!(root.fleet.0.get_version_num(), 7);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mode = std::fs::metadata(folder.path().join("shop.key")).unwrap().permissions().mode();
        assert_eq!(mode & 0o777, 0o600);
    }
}

#[test]
fn what_is_no_shop_or_no_zone_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let none = Shop::open(folder.path()).map(|_| ()).unwrap_err();
    assert!(none.to_string().contains("holds no shop"), "{none}");
    let zone = InitOptions { zone: "Mountain".into(), ..options(false) };
    let wrong = Shop::init(folder.path(), &zone).map(|_| ()).unwrap_err();
    assert!(matches!(wrong, ShopError::Zone(_)), "{wrong}");
    assert!(std::fs::read_dir(folder.path()).unwrap().next().is_none(), "nothing was made");
}

#[test]
fn a_time_of_receipt_is_given_only_in_an_invented_fleet() {
    let folder = tempfile::tempdir().unwrap();
    let mut shop = Shop::init(folder.path(), &options(false)).unwrap();
    let now = at("2026-10-18T12:00:00-06:00");
    let ilse = NewPerson { name: "Ilse Marrow".into(), role: Role::Manager, gone: false };
    let last = shop.ledger.store().truth().last_n().unwrap();
    let refused = shop.add_person(ilse.clone(), &Hand::nobody(now).received(now)).unwrap_err();
    assert!(matches!(refused, ShopError::ReceivedGiven), "{refused}");
    assert_eq!(shop.ledger.store().truth().last_n().unwrap(), last);
    shop.add_person(ilse, &Hand::nobody(now)).unwrap();
}

#[test]
fn decisions_name_a_person_a_reason_and_entries_that_are_here() {
    let mut yard = Yard::new();
    let one = yard.sign(1, "Carmelo", "TH-03", "2026-10-20T16:40:00-06:00", reading(7_384));
    let other = yard.sign(1, "Amos", "TH-01", "2026-10-20T16:40:00-06:00", reading(28_640));
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let ilse = yard.hand("Ilse", "2026-10-20T17:00:00-06:00");
    let shop = &mut yard.shop;
    let unknown = EntryId::from_bytes([9; 16]);
    let say = |shop: &mut Shop, targets: &[EntryId], why: &str, hand: &Hand| {
        decide(shop, targets, Verdict::DoNotUse, why, hand).unwrap_err()
    };
    assert!(matches!(say(shop, &[unknown], "why", &ilse), ShopError::UnknownTarget(id) if id == unknown));
    assert!(matches!(say(shop, &[one, other], "why", &ilse), ShopError::SeveralUnits));
    assert!(matches!(say(shop, &[], "why", &ilse), ShopError::NoTargets));
    assert!(matches!(say(shop, &[one], "  ", &ilse), ShopError::NoWords));
    let nobody = Hand { person: None, ..ilse };
    assert!(matches!(say(shop, &[one], "why", &nobody), ShopError::NoPerson));
    let decision = decide(shop, &[one], Verdict::DoNotUse, "read off another truck", &ilse).unwrap();
    let held = shop.ledger.store().truth().by_id(decision).unwrap().remove(0);
    let truck = shop.unit("TH-03").unwrap();
    assert_eq!(held.row.book, sumpbook_daybook::book::BookId::Truck { truck, year: 2026 });
    assert_eq!(shop.ledger.store().truth().fact(held.n).unwrap().unwrap().judged, Judged::Counts);
}

#[test]
fn unknown_tasks_units_and_people_name_those_there_are() {
    let mut yard = Yard::new();
    let (truck, dov) = (yard.truck("TH-01"), yard.hand("Dov", "2026-10-20T12:00:00-06:00"));
    let task = service_done(&mut yard.shop, truck, service(&["gearbox"]), None, &dov).unwrap_err();
    assert!(task.to_string().contains("first-service, oil-and-filters"), "{task}");
    let unit = yard.shop.unit("TH-99").unwrap_err();
    assert!(unit.to_string().contains("TH-01, TH-02"), "{unit}");
    let person = yard.shop.person("Nobody").unwrap_err();
    assert!(person.to_string().contains("Amos Tillery"), "{person}");
}

#[test]
fn what_only_the_shop_may_write_is_set_aside_from_a_phone() {
    let mut yard = Yard::new();
    let target = yard.sign(1, "Amos", "TH-01", "2026-10-20T16:00:00-06:00", reading(28_640));
    let decision = Decision { targets: vec![target], verdict: Verdict::DoNotUse, why: "no".into() };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:01:00-06:00", decision);
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let row = &evening.set_aside.rows[0];
    assert_eq!((row.says.as_str(), row.why.as_str()), ("decision", "shop-only"));
    assert_eq!((row.came_from.as_str(), row.unit.as_deref()), ("yard phone 1", Some("TH-01")));
}

#[test]
fn used_without_a_pre_trip_and_what_was_poured() {
    let mut yard = Yard::new();
    let start = StartAir { steps: vec![], in_spite_of_lock: None };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T06:50:00-06:00", start);
    let volume = |text: &str| sumpbook_trade::Figure::parse(text, sumpbook_trade::Unit::Quart).unwrap();
    let pour = |text: &str| Pour { volume: volume(text), after: None, waited_ms: Some(120_000) };
    let top_up = TopUp {
        fluid: sumpbook_trade::fluid::Fluid::CompressorOil,
        family: None,
        grade: Some("ISO VG 46".into()),
        gauge_zero: Some(true),
        blow_down_silent: Some(true),
        before: Some(Glass::Percent(30)),
        pours: vec![pour("0.2"), pour("0.05")],
        after: Some(Glass::Percent(65)),
        warmth: Some(Warmth::Cold),
        stopped: None,
        cap_tight: Some(true),
        oil_temperature: None,
        label_scanned: None,
    };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:05:00-06:00", top_up);
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:30:00-06:00", walk(vec![], 7));
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let row = &evening.without.rows[0];
    assert_eq!((row.what.as_str(), row.more, row.who.as_deref()), ("start", 1, Some("Amos Tillery")));
    assert_eq!(row.pre_trip_came, Some(at("2026-10-20T07:30:00-06:00")));
    let poured = &evening.top_ups.rows[0];
    assert_eq!((poured.poured.as_str(), poured.before.as_deref()), ("0.25 qt", Some("30 %")));
    assert_eq!(poured.fluid, "compressor-oil");
}
