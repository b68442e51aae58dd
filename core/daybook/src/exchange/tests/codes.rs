//! Codes that ran out or were used, and devices that were stopped.

use sumpbook_trade::record::{BookHead, DeviceRevoked, Digest, LateAccepted};

use super::*;
use crate::exchange::{CodeState, ExchangeError, pending, standing_of};
use crate::gate::DeviceKey;
use crate::judgement::Judged;
use crate::phone::PhoneError;

fn asks(shop: &mut Shop, phone: &mut Phone, now: Stamp) -> super::super::PendingDevice {
    let file = phone.hands_over(now);
    take_in(&mut shop.ledger, &file, now).unwrap().pending.unwrap()
}

#[test]
fn a_code_is_used_once() {
    let mut shop = Shop::new(1);
    let invitation = shop.invite(&[truck(1)]);
    let mut one = Phone::new("yard phone 1", &invitation);
    let mut two = Phone::new("yard phone 2", &invitation);
    let (first, second) = (asks(&mut shop, &mut one, at(1)), asks(&mut shop, &mut two, at(1)));
    assert_eq!((first.code, second.code), (CodeState::Open, CodeState::Open));
    assert_eq!(pending(&shop.ledger, at(2)).unwrap().len(), 2);
    accept(&mut shop.ledger, &first.fingerprint, None, at(2)).unwrap();
    let told = accept(&mut shop.ledger, &second.fingerprint, None, at(3)).unwrap_err().to_string();
    assert!(told.contains("used already by yard phone 1") && told.contains("Nothing was added"), "{told}");
    assert_eq!(shop.ledger.fleet().devices.len(), 1);
    // A new invitation brings the second in, with what it recorded under the old one.
    two.reads(truck(1), 12_262, at(4));
    let fresh = shop.invite(&[truck(1)]);
    two.book.take_in(&fresh, at(5)).unwrap();
    let second = asks(&mut shop, &mut two, at(6));
    assert_eq!(accept(&mut shop.ledger, &second.fingerprint, None, at(7)).unwrap().admitted, 1);
}

#[test]
fn a_code_runs_out_and_an_unknown_one_never_held() {
    let mut shop = Shop::new(1);
    let mut phone = Phone::new("yard phone 1", &shop.invite(&[truck(1)]));
    let late = at(8 * 24 * 60);
    let device = asks(&mut shop, &mut phone, late);
    assert!(matches!(device.code, CodeState::Expired(_)));
    let told = accept(&mut shop.ledger, &device.fingerprint, None, late).unwrap_err().to_string();
    assert!(told.contains("ran out on 2026-10-26") && told.contains("Ask the shop for a new one"), "{told}");

    let other_life = Shop::new(1);
    let mut shop = other_life;
    let device = asks(&mut shop, &mut phone, at(3));
    assert_eq!(device.code, CodeState::Unknown);
    let refused = accept(&mut shop.ledger, &device.fingerprint, None, at(3)).unwrap_err();
    assert!(matches!(refused, ExchangeError::CodeUnknown));
    let nobody = accept(&mut shop.ledger, "00 11", None, at(3)).unwrap_err();
    assert!(matches!(nobody, ExchangeError::NobodyWaiting(_)));
    let invitation = shop.invite(&[truck(1)]);
    let folder = tempfile::tempdir().unwrap();
    let seal = FileSeal::beside(folder.path());
    let refused = Daybook::enrol(folder.path(), &invitation, "late", &seal, late).err().unwrap();
    assert!(matches!(refused, PhoneError::Exchange(ExchangeError::CodeExpired(_))));
}

#[test]
fn a_phone_does_none_of_the_shop_s_work() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let ledger = phone.book.ledger_mut();
    assert!(matches!(invite(ledger, &[truck(1)], at(2), 1), Err(ExchangeError::NotTheShop)));
    assert!(matches!(accept(ledger, "00", None, at(2)), Err(ExchangeError::NotTheShop)));
    assert!(matches!(
        answer(ledger, &super::super::TakenIn::default(), at(2)),
        Err(ExchangeError::NotTheShop)
    ));
    let unknown = invite(&mut shop.ledger, &[truck(9)], at(2), 1);
    assert!(matches!(unknown, Err(ExchangeError::UnknownTruck(_))));
}

#[test]
fn of_a_stopped_device_what_the_shop_had_seen_counts_and_the_rest_waits_for_a_person() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let before = phone.reads(truck(1), 12_262, at(10));
    let (_, back) = shop.meets(&phone.hands_over(at(11)), at(12));
    phone.book.take_in(&back, at(13)).unwrap();
    let book = BookId::Truck { truck: truck(1), year: 2026 };
    let heads = shop.ledger.store().truth().heads(book).unwrap();
    shop.says(
        None,
        Fact::DeviceRevoked(DeviceRevoked {
            key: Digest(phone.book.ledger().own_key().public().bytes()),
            books: vec![BookHead {
                truck: Some(truck(1)),
                year: Some(2026),
                heads: heads.iter().map(|head| Digest(head.0)).collect(),
            }],
            why: "left on a bus".into(),
        }),
    );
    let after = phone.reads(truck(1), 12_300, at(20));
    let (taken, back) = shop.meets(&phone.hands_over(at(21)), at(22));
    assert_eq!(
        (taken.admitted, taken.refused.len()),
        (1, 0),
        "admitted all the same: nothing behind it is stuck"
    );
    let aside = |ledger: &Ledger, id| standing_of(ledger, id).unwrap().unwrap().aside;
    assert_eq!(aside(&shop.ledger, before), None);
    assert_eq!(aside(&shop.ledger, after), Some(Judged::DeviceStopped));
    phone.book.take_in(&back, at(23)).unwrap();
    assert_eq!(aside(phone.book.ledger(), after), Some(Judged::DeviceStopped), "the phone says so too");
    shop.says(
        Some(truck(1)),
        Fact::LateAccepted(LateAccepted { targets: vec![after], why: "asked her".into() }),
    );
    assert_eq!(aside(&shop.ledger, after), None);
    let (_, back) = shop.meets(&phone.hands_over(at(31)), at(32));
    phone.book.take_in(&back, at(33)).unwrap();
    assert_eq!(aside(phone.book.ledger(), after), None);
}

#[test]
fn a_stranger_s_entries_wait_and_fill_no_book() {
    let mut shop = Shop::new(1);
    let mut phone = Phone::new("yard phone 1", &shop.invite(&[truck(1)]));
    phone.reads(truck(1), 12_262, at(10));
    let stranger = DeviceKey::from_secret(&[77; 32]);
    assert!(shop.ledger.key(stranger.id()).is_none());
    let before = shop.ledger.store().truth().count().unwrap();
    let (taken, back) = shop.meets(&phone.hands_over(at(11)), at(12));
    assert_eq!((taken.admitted, taken.waiting), (0, 1));
    assert_eq!(shop.ledger.store().truth().count().unwrap(), before);
    let told = phone.book.take_in(&back, at(13)).unwrap();
    assert!(told.receipt, "the answer says what the shop holds, and this is not in it");
    assert_eq!(phone.book.hand_over(at(14)).unwrap().entries, 1, "so it goes again");
}
