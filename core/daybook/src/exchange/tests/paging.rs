//! More than one parcel holds, either way.

use super::online::settled;
use super::*;
use crate::ledger::NewEntry;
use crate::parcel::limits;

/// So many entries of a shop in the books of some trucks, with long notes.
fn fills(ledger: &mut Ledger, count: u16, trucks: u8, years: u16, note: usize) {
    let mut entries = Vec::new();
    for number in 0..count {
        let year = i64::from(number % years) * 366 * 1_440;
        let now = at(i64::from(number) + year);
        let unit = truck(1 + u8::try_from(number % u16::from(trucks)).unwrap());
        let mut noise = u64::from(number) + 1;
        let words = (0..note).map(|_| {
            noise = noise.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            char::from(b'a' + u8::try_from(noise >> 60).unwrap())
        });
        let entry = Entry {
            id: new_id(now).unwrap(),
            unit: Some(unit),
            set: None,
            at: now,
            clock_off_ms: None,
            person: None,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: Some(words.collect()),
            source: Source::Phone,
            fact: reading(i64::from(number)),
        };
        entries.push(NewEntry { entry, truck: Some(unit) });
    }
    ledger.record(&entries, at(0).unix_ms()).unwrap();
}

#[test]
fn a_phone_with_much_sends_it_in_parcels_that_fit() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1), truck(2)]);
    shop.exchanges(&mut phone, at(2));
    fills(phone.book.ledger_mut(), 2_500, 2, 1, 20);
    let asked = phone.asks(at(3));
    assert!(asked.more && asked.entries <= 2_000 && asked.bytes.len() <= limits::WIRE);
    let done = shop.exchanges(&mut phone, at(3));
    assert_eq!((done.trips, done.admitted, done.taken), (2, 2_500, 0));
    settled(&shop, &phone);
    fills(phone.book.ledger_mut(), 200, 2, 1, 8_000);
    let done = shop.exchanges(&mut phone, at(4));
    assert_eq!(done.admitted, 200);
    assert!(done.trips > 1);
    settled(&shop, &phone);
}

#[test]
fn a_phone_that_was_away_gets_pages_each_a_valid_state_and_receipts_for_all() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1), truck(2)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1), truck(2)]);
    shop.exchanges(&mut phone, at(2));
    shop.exchanges(&mut two, at(2));
    fills(two.book.ledger_mut(), 300, 2, 1, 5_000);
    shop.exchanges(&mut two, at(3));
    phone.reads(truck(1), 12_000, at(4));
    let mut trips = 0;
    loop {
        let asked = phone.asks(at(5));
        let answered = shop.answers(&asked, at(5));
        assert!(answered.bytes.len() <= limits::ANSWER_PAGE);
        trips += 1;
        if trips == 2 {
            // Lost on the way: asked once more, the same page comes.
            continue;
        }
        let came = phone.hears(&asked, &answered, at(5));
        assert_eq!(came.taken.waiting, 0);
        if !came.more {
            break;
        }
    }
    assert!(trips > 3);
    settled(&shop, &phone);
}

#[test]
fn more_books_than_one_parcel_names_come_all_the_same() {
    let mut shop = Shop::new(1);
    let trucks: Vec<TruckId> = (1..=3).map(truck).collect();
    let mut phone = shop.lets_in("yard phone 1", &trucks);
    shop.exchanges(&mut phone, at(2));
    fills(&mut shop.ledger, 210, 3, 70, 3);
    let done = shop.exchanges(&mut phone, at(3));
    assert_eq!(done.taken, 210);
    settled(&shop, &phone);
    assert!(phone.book.ledger().store().truth().books().unwrap().len() > 200);
    // Forgotten, it is found again without sending it.
    crate::exchange::memory::drop_cursor(phone.book.ledger_mut().store_mut()).unwrap();
    phone.book.ledger_mut().store_mut().forget_receipts().unwrap();
    let done = shop.exchanges(&mut phone, at(4));
    assert_eq!((done.taken, done.admitted), (0, 0));
    settled(&shop, &phone);
    assert!(shop.exchanges(&mut phone, at(5)).up < 300);
    // And the other way: as many books of a phone's own.
    let mut two = shop.lets_in("yard phone 2", &trucks);
    shop.exchanges(&mut two, at(6));
    fills(two.book.ledger_mut(), 210, 3, 70, 3);
    assert_eq!(shop.exchanges(&mut two, at(7)).admitted, 210);
    settled(&shop, &two);
}

#[test]
fn what_came_after_a_number_is_found_from_the_heads_as_by_looking_through_all() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1), truck(2)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1), truck(2)]);
    for round in 0..12 {
        // Both write to the same books before either hears of the other: branches that meet again.
        one.reads(truck(1), 12_262 + round, at(10 + round));
        two.reads(truck(1), 12_263 + round, at(10 + round));
        two.reads(truck(1 + u8::try_from(round % 2).unwrap()), 9_000 + round, at(10 + round));
        for phone in [&mut one, &mut two] {
            let (_, back) = shop.meets(&phone.hands_over(at(20 + round)), at(20 + round));
            phone.book.take_in(&back, at(20 + round)).unwrap();
        }
    }
    let truth = shop.ledger.store().truth();
    let all = truth.books().unwrap();
    assert!(all.len() >= 3 && truth.last_n().unwrap() > 40);
    for n in 0..=truth.last_n().unwrap() {
        for books in [all.as_slice(), &all[..1], &all[1..2], &[]] {
            let mut held: Vec<_> = books.iter().flat_map(|book| truth.of_book(*book).unwrap()).collect();
            held.retain(|held| held.n > n);
            held.sort_by_key(|held| held.n);
            let numbers: Vec<i64> = held.iter().map(|held| held.n).collect();
            let found = truth.numbers_after(n, books).unwrap().unwrap();
            assert_eq!(found.into_iter().collect::<Vec<_>>(), numbers, "after {n}");
            assert_eq!(truth.after(n, books, 1_000).unwrap(), held);
            let mut changed: Vec<(BookId, i64)> = Vec::new();
            for held in &held {
                changed.retain(|(book, _)| *book != held.row.book);
                changed.push((held.row.book, held.n));
            }
            assert_eq!(truth.changed_after(n, books).unwrap(), changed);
        }
    }
}
