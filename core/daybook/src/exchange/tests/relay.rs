//! One phone carries another's entries; files come in any order.

use super::*;
use crate::exchange::{Whereabouts, counts, newest, standing_of};

#[test]
fn one_phone_carries_another_s_entries_to_the_shop() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    let id = two.reads(truck(1), 12_262, at(10));
    let given = two.hands_over(at(11));
    let taken = one.book.take_in(&given, at(20)).unwrap();
    // The second phone was let in after the first one's last answer: its enrolment came along.
    assert_eq!((taken.admitted, taken.waiting, taken.pending), (2, 0, None));
    assert_eq!(standing_of(one.book.ledger(), id).unwrap().unwrap().whereabouts, Whereabouts::OnThisPhone);
    one.reads(truck(1), 12_270, at(21));
    let carried = one.book.hand_over(at(22)).unwrap();
    assert_eq!((carried.entries, carried.own), (3, 1));
    let (taken, back) = shop.meets(&carried.bytes, at(60));
    // Both enrolments went along.
    assert_eq!((taken.admitted, taken.known), (2, 2));
    assert_eq!(taken.senders.len(), 1);
    one.book.take_in(&back, at(70)).unwrap();
    same_books(&shop.ledger, one.book.ledger());
    // The other phone reads that answer: it stands on an entry that this phone does not hold, so it shows
    // nothing more, and takes back nothing of what was acknowledged before.
    let before = counts(two.book.ledger()).unwrap();
    assert!(before.at_the_shop > 0);
    two.book.take_in(&back, at(80)).unwrap();
    assert_eq!(counts(two.book.ledger()).unwrap(), before);
    // Its own file brings what the first phone wrote, and with it the receipt.
    let (_, back) = shop.meets(&two.hands_over(at(90)), at(91));
    two.book.take_in(&back, at(92)).unwrap();
    same_books(one.book.ledger(), two.book.ledger());
    assert_eq!(standing_of(two.book.ledger(), id).unwrap().unwrap().whereabouts, Whereabouts::AtTheShop);
    assert!(newest(two.book.ledger(), 2).unwrap().iter().all(|s| s.whereabouts == Whereabouts::AtTheShop));
}

#[test]
fn the_second_file_first_waits_and_comes_in_by_itself() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    let mut files = Vec::new();
    for round in 0..4 {
        two.reads(truck(1), 12_262 + round, at(10 + round));
        two.reads(truck(2), 9_000 + round, at(10 + round));
        let file = two.hands_over(at(10 + round));
        let (_, back) = shop.meets(&file, at(10 + round));
        two.book.take_in(&back, at(10 + round)).unwrap();
        files.push(file);
    }
    for file in files[1..].iter().rev() {
        let taken = one.book.take_in(file, at(30)).unwrap();
        assert_eq!((taken.admitted, taken.waiting), (if file == &files[3] { 1 } else { 0 }, 2));
    }
    let waiting = one.book.ledger().store().waiting().unwrap().len();
    assert!(waiting >= 6, "{waiting}");
    // The same again puts nothing more on the shelf.
    one.book.take_in(&files[2], at(31)).unwrap();
    assert_eq!(one.book.ledger().store().waiting().unwrap().len(), waiting);
    let taken = one.book.take_in(&files[0], at(32)).unwrap();
    assert_eq!(taken.admitted, 8, "{taken:?}");
    assert!(one.book.ledger().store().waiting().unwrap().is_empty());
    let again = one.book.take_in(&files[0], at(33)).unwrap();
    assert_eq!((again.admitted, again.waiting), (0, 0));
    same_books(&shop.ledger, one.book.ledger());
}

#[test]
fn a_large_fleet_s_books_come_in_several_parcels() {
    let mut shop = Shop::new(1);
    for n in 0..1_200 {
        shop.says(Some(truck(1 + (n % 2) as u8)), reading(n));
    }
    let file = shop.invite(&[truck(1), truck(2), truck(3)]);
    let phone = Phone::new("yard phone 1", &file);
    same_books(&shop.ledger, phone.book.ledger());
    let count = |ledger: &Ledger| ledger.store().truth().count().unwrap();
    assert_eq!(count(phone.book.ledger()), count(&shop.ledger));
    let frames = crate::parcel::FileReader::new(&file[..]).unwrap().count();
    assert!(frames >= 3, "{frames}");
}

#[test]
fn what_is_lacking_is_what_ancestry_says() {
    use crate::exchange::coverage::beyond;
    use crate::ledger::Reach;
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    for round in 0..12 {
        one.reads(truck(1), 12_000 + round, at(10 + round));
        two.reads(truck(1), 12_100 + round, at(10 + round));
        if round % 3 == 0 {
            let file = two.hands_over(at(10 + round));
            one.book.take_in(&file, at(10 + round)).unwrap();
        }
    }
    let ledger = one.book.ledger();
    let truth = ledger.store().truth();
    let rows = truth.of_book(BookId::Truck { truck: truck(1), year: 2026 }).unwrap();
    assert!(rows.len() > 20);
    for pair in rows.windows(5) {
        let heads = [pair[0].row.hash, pair[4].row.hash];
        let told: Vec<i64> =
            beyond(&truth, pair[0].row.book, &heads).unwrap().iter().map(|held| held.n).collect();
        let mut reach = Reach::default();
        let truly: Vec<i64> = rows
            .iter()
            .filter(|held| !reach.reached(&truth, held.row.book, &heads, (held.n, held.row.hash)).unwrap())
            .map(|held| held.n)
            .collect();
        assert_eq!(told, truly);
    }
}

#[test]
fn of_what_waits_in_one_book_each_comes_in_when_its_own_beginning_comes() {
    let mut shop = Shop::new(1);
    let [mut b, mut c, mut d] =
        ["yard phone 1", "yard phone 2", "yard phone 3"].map(|name| shop.lets_in(name, &[truck(1)]));
    let mut a = shop.lets_in("yard phone 4", &[truck(1)]);
    b.reads(truck(1), 12_262, at(10));
    c.reads(truck(1), 12_263, at(10));
    let (first_b, first_c) = (b.hands_over(at(11)), c.hands_over(at(11)));
    for file in [&first_b, &first_c] {
        d.book.take_in(file, at(12)).unwrap();
    }
    let (_, back) = shop.meets(&d.hands_over(at(13)), at(14));
    d.book.take_in(&back, at(15)).unwrap();
    b.reads(truck(1), 12_272, at(20));
    c.reads(truck(1), 12_273, at(20));
    for file in [b.hands_over(at(21)), c.hands_over(at(21))] {
        d.book.take_in(&file, at(22)).unwrap();
    }
    let taken = a.book.take_in(&d.hands_over(at(23)), at(24)).unwrap();
    assert_eq!((taken.admitted, taken.waiting), (0, 2), "{taken:?}");
    assert_eq!(a.book.ledger().store().waiting().unwrap().len(), 1, "one part for the book");
    for first in [&first_c, &first_b] {
        let taken = a.book.take_in(first, at(25)).unwrap();
        assert_eq!(taken.admitted, 2, "{taken:?}");
    }
    assert!(a.book.ledger().store().waiting().unwrap().is_empty());
    same_books(d.book.ledger(), a.book.ledger());
}
