//! One entry's whole way: invited, recorded, handed over, let in, answered, at the shop.

use super::*;
use crate::exchange::{Counts, Whereabouts, counts, standing_of};

#[test]
fn an_entry_goes_to_the_shop_and_its_receipt_comes_back() {
    let mut shop = Shop::new(1);
    let mut phone = Phone::new("yard phone 1", &shop.invite(&[truck(1)]));
    let id = phone.reads(truck(1), 12_262, at(10));
    let made = phone.book.hand_over(at(11)).unwrap();
    assert_eq!((made.entries, made.own), (1, 1));

    let taken = take_in(&mut shop.ledger, &made.bytes, at(60)).unwrap();
    assert_eq!((taken.admitted, taken.waiting), (0, 1), "{taken:?}");
    let pending = taken.pending.clone().unwrap();
    assert_eq!(pending.name, "yard phone 1");
    let accepted = accept(&mut shop.ledger, &pending.fingerprint.to_lowercase(), None, at(61)).unwrap();
    assert_eq!(accepted.admitted, 1);
    let back = answer(&mut shop.ledger, &taken, at(62)).unwrap();

    let before = standing_of(phone.book.ledger(), id).unwrap().unwrap();
    assert_eq!(before.whereabouts, Whereabouts::OnThisPhone);
    let told = phone.book.take_in(&back, at(120)).unwrap();
    assert!(told.receipt);
    assert!(told.refused.is_empty(), "{told:?}");
    let after = standing_of(phone.book.ledger(), id).unwrap().unwrap();
    assert_eq!(after.whereabouts, Whereabouts::AtTheShop);
    same_books(&shop.ledger, phone.book.ledger());
    let Counts { on_this_phone, at_the_shop, aside, .. } = counts(phone.book.ledger()).unwrap();
    assert_eq!((on_this_phone, aside), (0, 0));
    assert_eq!(at_the_shop, phone.book.ledger().store().truth().count().unwrap());

    let next = phone.book.hand_over(at(130)).unwrap();
    assert_eq!(next.entries, 0, "all of it is at the shop");
    let (taken, _) = shop.meets(&next.bytes, at(140));
    assert_eq!((taken.admitted, taken.pending), (0, None));
    let row = shop.ledger.store().last_exchanges(i64::MAX).unwrap();
    assert_eq!(row[0].device, phone.book.ledger().own_key().id().0);
    assert_eq!(row[0].from_n, row[0].to_n);
}
