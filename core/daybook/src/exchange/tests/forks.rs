//! Copies: a folder copied, a copy restored, a shop set back.

use super::*;
use crate::exchange::{Whereabouts, counts, standing_of};
use crate::gate::Actor;

/// A second phone of the same folder as it is now.
pub(super) fn copy_of(phone: &Phone) -> Phone {
    let folder = tempfile::tempdir().unwrap();
    for file in std::fs::read_dir(phone.folder.path()).unwrap() {
        let file = file.unwrap();
        std::fs::copy(file.path(), folder.path().join(file.file_name())).unwrap();
    }
    let book = Daybook::open(folder.path(), &FileSeal::beside(folder.path())).unwrap();
    assert!(book.salvaged().is_none());
    Phone { folder, book }
}

#[test]
fn a_copied_folder_writing_as_the_same_hand_loses_its_place_and_takes_a_new_one() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = copy_of(&one);
    let hand = Actor::from_parts(one.book.ledger().own_key().id(), [5; 8]);
    one.book.ledger_mut().write_as(hand);
    two.book.ledger_mut().write_as(hand);
    one.reads(truck(1), 12_262, at(10));
    let lost = two.reads(truck(1), 12_300, at(11));
    let behind = two.reads(truck(1), 12_301, at(12));
    let (_, back) = shop.meets(&one.hands_over(at(20)), at(21));
    one.book.take_in(&back, at(22)).unwrap();

    let file = two.hands_over(at(23));
    let (taken, back) = shop.meets(&file, at(24));
    // The second too: the entry before it is not the one the shop holds there.
    assert_eq!((taken.refused.len(), taken.waiting), (2, 0), "{taken:?}");
    let told = two.book.take_in(&back, at(25)).unwrap();
    assert_eq!((told.placed_again, told.admitted), (2, 1), "{told:?}");
    // The same answer again moves nothing.
    assert_eq!(two.book.take_in(&back, at(26)).unwrap().placed_again, 0);
    let (taken, back) = shop.meets(&two.hands_over(at(27)), at(28));
    assert_eq!((taken.admitted, taken.refused.len()), (2, 0), "{taken:?}");
    two.book.take_in(&back, at(29)).unwrap();
    let (_, back) = shop.meets(&one.hands_over(at(30)), at(31));
    one.book.take_in(&back, at(32)).unwrap();
    same_books(&shop.ledger, two.book.ledger());
    same_books(&shop.ledger, one.book.ledger());
    for id in [lost, behind] {
        let standing = standing_of(one.book.ledger(), id).unwrap().unwrap();
        assert_eq!((standing.aside, standing.whereabouts), (None, Whereabouts::AtTheShop));
    }
    let kept = shop.ledger.store().refused().unwrap();
    assert_eq!(kept[0].reason, "fork", "the other content is kept as proof");
}

#[test]
fn a_restored_copy_gets_back_what_it_lost() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    phone.reads(truck(1), 12_262, at(10));
    let mut restored = copy_of(&phone);
    let lost = phone.reads(truck(1), 12_270, at(11));
    let (_, back) = shop.meets(&phone.hands_over(at(12)), at(13));
    phone.book.take_in(&back, at(14)).unwrap();
    drop(phone);
    assert_eq!(standing_of(restored.book.ledger(), lost).unwrap(), None);
    let fresh = restored.reads(truck(1), 12_280, at(20));
    let (taken, back) = shop.meets(&restored.hands_over(at(21)), at(22));
    assert_eq!(taken.refused, []);
    restored.book.take_in(&back, at(23)).unwrap();
    same_books(&shop.ledger, restored.book.ledger());
    for id in [lost, fresh] {
        let standing = standing_of(restored.book.ledger(), id).unwrap().unwrap();
        assert_eq!(standing.whereabouts, Whereabouts::AtTheShop);
    }
}

#[test]
fn entries_lost_below_the_cursor_come_back_by_the_heads() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    phone.reads(truck(1), 12_262, at(10));
    let mut lossy = copy_of(&phone);
    let lost = phone.reads(truck(1), 12_270, at(11));
    let (_, back) = shop.meets(&phone.hands_over(at(12)), at(13));
    phone.book.take_in(&back, at(14)).unwrap();
    let cursor = crate::exchange::memory::cursor(phone.book.ledger().store()).unwrap().unwrap();
    crate::exchange::memory::set_cursor(lossy.book.ledger_mut().store_mut(), &cursor).unwrap();
    let (_, back) = shop.meets(&lossy.hands_over(at(20)), at(21));
    lossy.book.take_in(&back, at(22)).unwrap();
    assert!(standing_of(lossy.book.ledger(), lost).unwrap().is_some());
    same_books(&shop.ledger, lossy.book.ledger());
}

#[test]
fn another_phone_that_built_on_the_lost_branch_moves_only_its_own() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut other = shop.lets_in("yard phone 2", &[truck(1)]);
    let mut two = copy_of(&one);
    let hand = Actor::from_parts(one.book.ledger().own_key().id(), [5; 8]);
    one.book.ledger_mut().write_as(hand);
    two.book.ledger_mut().write_as(hand);
    one.reads(truck(1), 12_262, at(10));
    let lost = two.reads(truck(1), 12_300, at(11));
    other.book.take_in(&two.hands_over(at(12)), at(13)).unwrap();
    let built = other.reads(truck(1), 12_310, at(14));
    shop.meets(&one.hands_over(at(20)), at(21));

    let (taken, back) = shop.meets(&other.hands_over(at(22)), at(23));
    assert_eq!((taken.admitted, taken.refused.len(), taken.waiting), (0, 1, 1), "{taken:?}");
    let told = other.book.take_in(&back, at(24)).unwrap();
    assert_eq!(told.placed_again, 1, "{told:?}");
    assert!(other.book.ledger().store().truth().by_id(lost).unwrap().is_empty());
    assert!(other.book.ledger().store().refused().unwrap().iter().any(|row| row.reason == "lost-fork"));
    // Its writer places it again, and everyone ends with the same books.
    let (_, back) = shop.meets(&two.hands_over(at(25)), at(26));
    two.book.take_in(&back, at(27)).unwrap();
    for _ in 0..2 {
        for phone in [&mut two, &mut other, &mut one] {
            let (_, back) = shop.meets(&phone.hands_over(at(30)), at(31));
            phone.book.take_in(&back, at(32)).unwrap();
        }
    }
    assert!(shop.ledger.store().waiting().unwrap().is_empty(), "nothing waits for a branch that never comes");
    for ledger in [one.book.ledger(), two.book.ledger(), other.book.ledger()] {
        same_books(&shop.ledger, ledger);
        for id in [lost, built] {
            let standing = standing_of(ledger, id).unwrap().unwrap();
            assert_eq!((standing.aside, standing.whereabouts), (None, Whereabouts::AtTheShop));
        }
    }
}

#[test]
fn a_shop_set_back_takes_back_what_it_acknowledged_and_gets_it_again() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let backup = shop.ledger.store().truth().last_n().unwrap();
    let id = phone.reads(truck(1), 12_262, at(10));
    let (_, back) = shop.meets(&phone.hands_over(at(11)), at(12));
    phone.book.take_in(&back, at(13)).unwrap();
    assert_eq!(counts(phone.book.ledger()).unwrap().on_this_phone, 0);

    // Restored from a backup: the same key, the entries of then, a new epoch.
    let mut restored = Shop { ledger: shop.ledger.as_of(backup).unwrap() };
    let (taken, answer) = restored.meets(&phone.hands_over(at(20)), at(21));
    assert_eq!(taken.admitted, 0, "the phone believes it is all there");
    let told = phone.book.take_in(&answer, at(22)).unwrap();
    assert!(told.receipt && told.shop_set_back && !told.two_shops);
    let standing = standing_of(phone.book.ledger(), id).unwrap().unwrap();
    assert_eq!(standing.whereabouts, Whereabouts::OnThisPhone, "it turns back and says so");
    let (taken, answer) = restored.meets(&phone.hands_over(at(23)), at(24));
    assert_eq!(taken.admitted, 1);
    phone.book.take_in(&answer, at(25)).unwrap();
    same_books(&restored.ledger, phone.book.ledger());
    assert_eq!(counts(phone.book.ledger()).unwrap().on_this_phone, 0);
    // An old file of the shop's earlier life is only old.
    let told = phone.book.take_in(&back, at(26)).unwrap();
    assert!(!told.two_shops);
    assert_eq!(counts(phone.book.ledger()).unwrap().on_this_phone, 0);
    // The shop of before answers again: two answer with one key.
    let (_, old) = shop.meets(&phone.hands_over(at(30)), at(31));
    assert!(phone.book.take_in(&old, at(32)).unwrap().two_shops);
}

#[test]
fn one_id_with_two_contents_sets_both_aside_everywhere() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    let id = new_id(at(10)).unwrap();
    for (phone, tenths) in [(&mut one, 12_262), (&mut two, 12_999)] {
        let parts = Parts { id: Some(id), ..Parts::about(truck(1), reading(tenths)) };
        assert_eq!(phone.book.record(parts, at(10)).unwrap(), id);
        let (_, back) = shop.meets(&phone.hands_over(at(11)), at(12));
        phone.book.take_in(&back, at(13)).unwrap();
    }
    for ledger in [&shop.ledger, two.book.ledger()] {
        let rows = ledger.store().truth().by_id(id).unwrap();
        assert_eq!(rows.len(), 2);
        for held in rows {
            let judged = ledger.store().truth().fact(held.n).unwrap().unwrap().judged;
            assert_eq!(judged, crate::judgement::Judged::TwoContents);
        }
    }
    assert_eq!(counts(two.book.ledger()).unwrap().aside, 2);
}
