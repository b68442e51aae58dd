//! After something was lost: on the phone, at the hub, or on both.

use super::forks::copy_of;
use super::online::settled;
use super::*;
use crate::exchange::{
    Declined, Whereabouts, counts, follow, follow_trucks, give_trucks, not_known, respond, standing_of,
};
use crate::gate::{Actor, KeyId};

/// The shop as a copy of its database had it: the same life, the same key.
fn rolled_back(shop: &Shop, upto: i64) -> Shop {
    let mut older = Shop { ledger: shop.ledger.as_of(upto).unwrap() };
    let epochs = crate::exchange::memory::epochs(shop.ledger.store()).unwrap();
    crate::exchange::memory::set_epochs(older.ledger.store_mut(), epochs).unwrap();
    for (device, _) in &shop.ledger.fleet().devices {
        let trucks = follow::remembered(shop.ledger.store(), KeyId(*device)).unwrap();
        follow::remember(older.ledger.store_mut(), KeyId(*device), &trucks).unwrap();
    }
    older
}

/// As if the settings and receipts of a phone were gone.
fn forgets(phone: &mut Phone) {
    let store = phone.book.ledger_mut().store_mut();
    crate::exchange::memory::drop_cursor(store).unwrap();
    store.forget_receipts().unwrap();
}

fn busy_week(shop: &mut Shop, phones: &mut [Phone], first: i64) {
    for day in 0..7 {
        for (number, phone) in phones.iter_mut().enumerate() {
            let minute = (first + day) * 1_440 + i64::try_from(number).unwrap();
            phone.reads(truck(1), 12_000 + day, at(minute));
            phone.reads(truck(2), 9_000 + day, at(minute));
            shop.exchanges(phone, at(minute + 20));
        }
    }
    for phone in phones.iter_mut() {
        shop.exchanges(phone, at((first + 8) * 1_440));
    }
}

fn two_phones() -> (Shop, Vec<Phone>) {
    let mut shop = Shop::new(1);
    let phones = ["yard phone 1", "yard phone 2"];
    let phones = phones.map(|name| shop.lets_in(name, &[truck(1), truck(2), truck(3)])).into();
    (shop, phones)
}

#[test]
fn a_phone_that_lost_its_sync_state_but_not_its_books_finds_the_difference() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    phones[1].reads(truck(1), 12_050, at(15_000));
    shop.exchanges(&mut phones[1], at(15_001));
    let mine = phones[0].reads(truck(2), 9_100, at(15_002));
    // Once in order, once after it was forgotten.
    let mut straight = copy_of(&phones[0]);
    let mut other_shop = rolled_back(&shop, i64::MAX);
    let plain = other_shop.exchanges(&mut straight, at(15_010));
    forgets(&mut phones[0]);
    let done = shop.exchanges(&mut phones[0], at(15_010));
    settled(&shop, &phones[0]);
    assert_eq!((done.admitted, done.taken), (1, 1));
    let standing = standing_of(phones[0].book.ledger(), mine).unwrap().unwrap();
    assert_eq!(standing.whereabouts, Whereabouts::AtTheShop);
    assert!(done.trips <= plain.trips + 3, "{} trips", done.trips);
    let (more, delta) = (done.up + done.down, plain.up + plain.down);
    assert!(more <= delta + 2_048, "{more} bytes to {delta}");
}

#[test]
fn both_lost_something_in_one_book_and_find_it_by_months_and_ids() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    busy_week(&mut shop, &mut phones, 40);
    // New at the shop since this phone last heard of it, and new on the phone, in the same book.
    phones[1].reads(truck(1), 12_050, at(100_000));
    shop.exchanges(&mut phones[1], at(100_001));
    phones[0].reads(truck(1), 12_051, at(100_002));
    let mut straight = copy_of(&phones[0]);
    let plain = rolled_back(&shop, i64::MAX).exchanges(&mut straight, at(100_010));
    forgets(&mut phones[0]);
    let done = shop.exchanges(&mut phones[0], at(100_010));
    settled(&shop, &phones[0]);
    assert_eq!((done.admitted, done.taken), (1, 1), "only what was lacking travels");
    assert!(done.trips <= plain.trips + 3, "{} trips", done.trips);
    let (more, delta) = (done.up + done.down, plain.up + plain.down);
    assert!(more <= delta + 2_048, "{more} bytes to {delta}");
}

#[test]
fn a_hub_rolled_back_by_an_old_copy_is_noticed_and_filled_again() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    let backup = shop.ledger.store().truth().last_n().unwrap();
    busy_week(&mut shop, &mut phones, 10);
    let whole = shop.ledger.store().truth().count().unwrap();
    let mut older = rolled_back(&shop, backup);
    let asked = phones[0].asks(at(30_000));
    let answered = older.answers(&asked, at(30_000));
    let came = phones[0].hears(&asked, &answered, at(30_000));
    assert!(came.more && !came.taken.two_shops);
    let turned = counts(phones[0].book.ledger()).unwrap().on_this_phone;
    assert_eq!(turned, whole - older.ledger.store().truth().count().unwrap(), "it turns back, and says so");
    let done = older.exchanges(&mut phones[0], at(30_001));
    assert_eq!(done.admitted as u64, turned);
    settled(&older, &phones[0]);
    // The other writes first, then meets it: both have something the hub lacks, and each other.
    phones[1].reads(truck(1), 12_300, at(30_002));
    older.exchanges(&mut phones[1], at(30_003));
    older.exchanges(&mut phones[0], at(30_004));
    for phone in &phones {
        settled(&older, phone);
    }
    assert_eq!(older.ledger.store().truth().count().unwrap(), whole + 1);
}

#[test]
fn a_hub_rolled_back_and_written_to_meets_phones_that_hold_more() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    let backup = shop.ledger.store().truth().last_n().unwrap() - 3;
    let mut older = rolled_back(&shop, backup);
    older.says(Some(truck(1)), reading(1));
    older.says(Some(truck(2)), reading(2));
    for round in 0..2 {
        for phone in &mut phones {
            older.exchanges(phone, at(30_000 + round));
        }
    }
    for phone in &phones {
        settled(&older, phone);
    }
    let whole = shop.ledger.store().truth().count().unwrap();
    assert_eq!(older.ledger.store().truth().count().unwrap(), whole + 2);
}

#[test]
fn a_phone_let_in_after_the_backup_shows_its_enrolment_and_need_not_ask_again() {
    let mut shop = Shop::new(1);
    let backup = shop.ledger.store().truth().last_n().unwrap();
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    shop.exchanges(&mut phone, at(2));
    let id = phone.reads(truck(1), 12_262, at(3));
    shop.exchanges(&mut phone, at(4));
    // Restored: a new life.
    let mut restored = Shop { ledger: shop.ledger.as_of(backup).unwrap() };
    let asked = phone.asks(at(10));
    let told = respond(&mut restored.ledger, &asked.bytes, &super::online::DOOR, at(10)).unwrap_err();
    assert!(matches!(told, Declined::UnknownSender(_)));
    not_known(phone.book.ledger_mut()).unwrap();
    let done = restored.exchanges(&mut phone, at(11));
    assert!(restored.ledger.key(phone.book.ledger().own_key().id()).is_some());
    assert!(done.trips <= 4, "{}", done.trips);
    settled(&restored, &phone);
    assert!(standing_of(&restored.ledger, id).unwrap().unwrap().aside.is_none());
    let small = restored.exchanges(&mut phone, at(12));
    assert!(small.trips == 1 && small.up < 300, "it is shown no longer");
    // The shop of before answers again: two answer with one key.
    let asked = phone.asks(at(13));
    let answered = shop.answers(&asked, at(13));
    let came = phone.hears(&asked, &answered, at(13));
    assert!(came.taken.two_shops && !came.more);
    // Somebody else cannot show it for themselves.
    let mut thief = Phone::new("other", &shop.invite(&[truck(1)]));
    shop.exchanges(&mut phone, at(14));
    not_known(thief.book.ledger_mut()).unwrap();
    assert!(thief.asks(at(14)).asks);
}

#[test]
fn a_phone_restored_from_a_copy_and_the_phone_itself_exchange_in_turn() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    let mut copy = copy_of(&phones[0]);
    for round in 0..3 {
        phones[0].reads(truck(1), 12_100 + round, at(20_000 + round * 10));
        copy.reads(truck(1), 12_200 + round, at(20_001 + round * 10));
        shop.exchanges(&mut phones[0], at(20_002 + round * 10));
        shop.exchanges(&mut copy, at(20_003 + round * 10));
    }
    shop.exchanges(&mut phones[0], at(20_100));
    settled(&shop, &phones[0]);
    settled(&shop, &copy);
    let count = |phone: &Phone| phone.book.ledger().store().truth().count().unwrap();
    assert_eq!(count(&phones[0]), count(&copy));
}

#[test]
fn a_copy_that_wrote_as_the_same_hand_takes_a_new_place() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    let mut copy = copy_of(&phones[0]);
    let hand = Actor::from_parts(copy.book.ledger().own_key().id(), [5; 8]);
    phones[0].book.ledger_mut().write_as(hand);
    copy.book.ledger_mut().write_as(hand);
    phones[0].reads(truck(1), 12_300, at(20_000));
    let lost = copy.reads(truck(1), 12_301, at(20_001));
    let behind = copy.reads(truck(1), 12_302, at(20_002));
    shop.exchanges(&mut phones[0], at(20_003));
    let done = shop.exchanges(&mut copy, at(20_004));
    assert_eq!(done.admitted, 2);
    shop.exchanges(&mut phones[0], at(20_005));
    settled(&shop, &phones[0]);
    settled(&shop, &copy);
    for id in [lost, behind] {
        assert_eq!(standing_of(phones[0].book.ledger(), id).unwrap().unwrap().aside, None);
    }
    assert!(shop.ledger.store().refused().unwrap().iter().any(|row| row.reason == "fork"));
}

#[test]
fn a_truck_followed_anew_brings_all_its_years() {
    let (mut shop, mut phones) = two_phones();
    let next_year = at(365 * 1_440);
    phones[0].reads(truck(1), 12_000, at(10));
    phones[0].reads(truck(1), 13_000, next_year);
    shop.exchanges(&mut phones[0], next_year);
    let mut fresh = shop.lets_in("yard phone 3", &[truck(3)]);
    shop.exchanges(&mut fresh, next_year);
    assert!(fresh.book.ledger().store().truth().books_of(truck(1)).unwrap().is_empty());
    follow_trucks(fresh.book.ledger_mut(), &[truck(1)], next_year).unwrap();
    shop.exchanges(&mut fresh, next_year);
    settled(&shop, &fresh);
    assert_eq!(fresh.book.ledger().store().truth().books_of(truck(1)).unwrap().len(), 2);
    // The shop may give trucks as well, one with books and one without any.
    let mut given = shop.lets_in("yard phone 4", &[]);
    shop.exchanges(&mut given, next_year);
    let key = given.book.ledger().own_key().id();
    give_trucks(&mut shop.ledger, key, &[truck(1), truck(2)]).unwrap();
    shop.exchanges(&mut given, next_year);
    settled(&shop, &given);
    assert_eq!(given.book.ledger().store().truth().books_of(truck(1)).unwrap().len(), 2);
    let quiet = shop.exchanges(&mut given, next_year);
    assert!(quiet.trips == 1 && quiet.up < 300 && quiet.down < 300, "{} {}", quiet.up, quiet.down);
}

#[test]
fn a_set_that_moved_brings_the_books_of_the_truck_it_was_on() {
    let (mut shop, mut phones) = two_phones();
    phones[0].reads(truck(1), 12_000, at(10));
    shop.exchanges(&mut phones[0], at(11));
    let mut phone = shop.lets_in("yard phone 3", &[truck(3)]);
    shop.exchanges(&mut phone, at(12));
    let set = |number: u8, on: Option<TruckId>| {
        let profile = shop_profile();
        Fact::SetRegistered(SetRegistered { set: SetId::from_bytes([number; 16]), serial: None, on, profile })
    };
    shop.says(None, set(101, Some(truck(3))));
    shop.exchanges(&mut phone, at(13));
    settled(&shop, &phone);
    assert_eq!(phone.book.ledger().store().truth().books_of(truck(1)).unwrap().len(), 1);
}

fn shop_profile() -> SetProfile {
    SetProfile {
        delivery: None,
        glass: None,
        oil_family: None,
        oil_grade: None,
        weights: vec![],
        load_share: None,
        oil_volume: None,
    }
}

#[test]
fn what_hangs_on_something_the_hub_lacks_is_not_kept_there_and_comes_after_it() {
    let (mut shop, mut phones) = two_phones();
    busy_week(&mut shop, &mut phones, 0);
    let last = shop.ledger.store().truth().last_n().unwrap();
    // The newest own entry of phone 1 is gone at the hub, and its cursor still stands there.
    let book = BookId::Truck { truck: truck(1), year: 2026 };
    let cursor = crate::exchange::memory::cursor(phones[0].book.ledger().store()).unwrap().unwrap();
    let truth = shop.ledger.store().truth();
    let gone: std::collections::BTreeSet<i64> = truth
        .of_book(book)
        .unwrap()
        .iter()
        .rev()
        .take(1)
        .map(|held| held.n)
        .filter(|n| n.unsigned_abs() != cursor.n)
        .collect();
    let mut lossy = Shop { ledger: shop.ledger.as_of_without(last, &gone).unwrap() };
    let epochs = crate::exchange::memory::epochs(shop.ledger.store()).unwrap();
    crate::exchange::memory::set_epochs(lossy.ledger.store_mut(), epochs).unwrap();
    phones[0].reads(truck(1), 13_000, at(30_000));
    let asked = phones[0].asks(at(30_001));
    let answered = lossy.answers(&asked, at(30_001));
    if !gone.is_empty() {
        assert_eq!((answered.admitted, answered.missing), (0, 1));
        assert!(lossy.ledger.store().waiting().unwrap().is_empty(), "nothing waits at the hub");
    }
    let came = phones[0].hears(&asked, &answered, at(30_001));
    assert_eq!((came.missing, came.more), (gone.len(), !gone.is_empty()));
    lossy.exchanges(&mut phones[0], at(30_002));
    settled(&lossy, &phones[0]);
}
