//! A shop set back to an older day, two hubs with one key, phones restored from a copy: nothing is lost, and each
//! is told what happened.

use std::collections::BTreeSet;

use sumpbook_daybook::exchange::counts;
use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::phone::online::Exchanged;
use sumpbook_daybook::store::Store;
use sumpbook_hub_tests::{Yard, clock, copied, exchange, walk};
use sumpbook_trade::EntryId;

fn yard() -> Yard {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 3);
    yard.begin();
    yard
}

/// Everybody's entries, each once, and every phone holds what the shop holds.
fn settled(yard: &Yard, phones: &mut [Daybook], recorded: &[EntryId]) {
    for _ in 0..3 {
        for phone in phones.iter_mut() {
            exchange(phone).unwrap();
        }
    }
    let store = Store::reader(yard.folder()).unwrap();
    let truth = store.truth();
    let held: BTreeSet<EntryId> =
        truth.between(0, i64::MAX, i64::MAX).unwrap().iter().map(|held| held.row.id).collect();
    for id in recorded {
        assert!(held.contains(id), "{id} is lost");
    }
    for phone in phones {
        assert_eq!(counts(phone.ledger()).unwrap().on_this_phone, 0);
        for book in truth.books().unwrap() {
            let theirs = phone.ledger().store().truth().heads(book).unwrap();
            assert_eq!(theirs, truth.heads(book).unwrap(), "{book:?}");
        }
    }
}

fn phones(yard: &Yard, folders: &[tempfile::TempDir]) -> Vec<Daybook> {
    (1..).zip(folders).map(|(number, folder)| yard.phone(folder.path(), number, &[0, 1])).collect()
}

fn folders<const N: usize>() -> [tempfile::TempDir; N] {
    std::array::from_fn(|_| tempfile::tempdir().unwrap())
}

/// Each phone records and exchanges, so many times.
fn work(phones: &mut [Daybook], times: u32, from: u32, recorded: &mut Vec<EntryId>) {
    for turn in 0..times {
        for (number, phone) in (0..).zip(phones.iter_mut()) {
            recorded.push(walk(phone, (turn + number) % 2, from + turn * 10 + number));
            exchange(phone).unwrap();
        }
    }
}

#[test]
fn a_shop_set_back_gets_everything_again_whether_it_says_so_or_not() {
    for says_so in [true, false] {
        let mut yard = yard();
        let folders = folders::<2>();
        let mut phones = phones(&yard, &folders);
        let mut recorded = Vec::new();
        work(&mut phones, 3, 0, &mut recorded);
        yard.kill();
        let old_day = copied(yard.folder());
        yard.begin();
        work(&mut phones, 4, 100, &mut recorded);
        yard.kill();
        yard.put_back(old_day.path());
        if says_so {
            yard.begins_new_epoch();
        }
        yard.begin();
        let lost = {
            let store = Store::reader(yard.folder()).unwrap();
            recorded.iter().filter(|id| store.truth().by_id(**id).unwrap().is_empty()).count()
        };
        assert_eq!(lost, 8, "it was set back");
        let told: Vec<Exchanged> = phones.iter_mut().map(|phone| exchange(phone).unwrap()).collect();
        // Set back by copying files it says nothing: the first phone sees its receipt turn back and says so. What that
        // phone brings back nobody else misses any more.
        assert!(told.iter().all(|done| !done.two_shops), "{told:?}");
        assert!(told[0].shop_set_back && (told[1].shop_set_back || !says_so), "{told:?}");
        let keys: Vec<_> = told[0].sentences().iter().map(|sentence| sentence.key).collect();
        assert_eq!(keys, ["error-shop-set-back"]);
        // It is said once.
        assert!(!exchange(&mut phones[0]).unwrap().shop_set_back);
        settled(&yard, &mut phones, &recorded);
        work(&mut phones, 2, 200, &mut recorded);
        settled(&yard, &mut phones, &recorded);
    }
}

#[test]
fn two_hubs_with_one_key_are_noticed_and_nothing_is_lost_between_them() {
    let mut yard = yard();
    let folders = folders::<2>();
    let mut phones = phones(&yard, &folders);
    let mut recorded = Vec::new();
    work(&mut phones, 2, 0, &mut recorded);
    yard.kill();
    let mut second = yard.again_elsewhere();
    second.begins_new_epoch();
    yard.begin();
    second.begin();
    let (first_way, second_way) = (yard.way(), second.way());
    let soon = || std::time::Instant::now() + std::time::Duration::from_secs(20);
    // One phone goes to the restored shop, then meets the first again.
    let phone = &mut phones[0];
    recorded.push(walk(phone, 0, 50));
    let done = phone.exchange_over(&second_way, &clock, soon()).unwrap();
    assert!(done.shop_set_back && !done.two_shops, "{done:?}");
    recorded.push(walk(phone, 0, 51));
    let done = phone.exchange_over(&first_way, &clock, soon()).unwrap();
    assert!(done.two_shops, "{done:?}");
    // A phone that knows one of them only goes on as before.
    recorded.push(walk(&mut phones[1], 1, 52));
    assert!(!exchange(&mut phones[1]).unwrap().two_shops);
    // One of them is stopped. Carried by the phones, everything is at the other.
    second.kill();
    yard.kill();
    yard.begins_new_epoch();
    yard.begin();
    settled(&yard, &mut phones, &recorded);
}

#[test]
fn a_phone_and_its_copy_exchange_in_turn_and_both_keep_everything() {
    let yard = yard();
    let folders = folders::<1>();
    let mut phones = phones(&yard, &folders);
    let mut recorded = Vec::new();
    work(&mut phones, 2, 0, &mut recorded);
    // Something is recorded and not yet sent when the copy is made.
    recorded.push(walk(&mut phones[0], 0, 40));
    let copy = copied(folders[0].path());
    phones.push(yard.phone(copy.path(), 1, &[0, 1]));
    for turn in 0..3 {
        recorded.push(walk(&mut phones[0], 0, 60 + turn));
        recorded.push(walk(&mut phones[1], 1, 70 + turn));
        let (one, two) = (exchange(&mut phones[0]).unwrap(), exchange(&mut phones[1]).unwrap());
        assert!(one.whole && two.whole, "{one:?} {two:?}");
        // Each hears of what the other wrote with its key.
        assert!(one.own_back > 0 || turn == 0, "{one:?}");
        assert!(two.own_back > 0, "{two:?}");
        assert!(two.sentences().iter().any(|sentence| sentence.key == "error-own-back"), "{two:?}");
    }
    settled(&yard, &mut phones, &recorded);
}

#[test]
fn a_copy_that_writes_as_the_same_hand_loses_its_place_is_told_and_takes_a_new_one() {
    let yard = yard();
    let folders = folders::<1>();
    let mut phones = phones(&yard, &folders);
    let mut recorded = Vec::new();
    work(&mut phones, 1, 0, &mut recorded);
    let copy = copied(folders[0].path());
    phones.push(yard.phone(copy.path(), 1, &[0, 1]));
    // A machine that was copied while it ran: both go on as one actor.
    let hand = phones[0].ledger().actor();
    phones[1].ledger_mut().write_as(hand);
    for number in 0..3 {
        recorded.push(walk(&mut phones[0], 0, 80 + number));
        recorded.push(walk(&mut phones[1], 0, 90 + number));
    }
    assert!(exchange(&mut phones[0]).unwrap().whole);
    let done = exchange(&mut phones[1]).unwrap();
    assert_eq!(done.placed_again, 3, "{done:?}");
    settled(&yard, &mut phones, &recorded);
    let store = Store::reader(yard.folder()).unwrap();
    assert!(store.refused().unwrap().iter().any(|kept| kept.reason == "fork"), "the other is kept as proof");
}

#[test]
fn a_phone_put_back_from_an_older_copy_of_itself_gets_its_entries_back_and_says_so() {
    let yard = yard();
    let folders = folders::<1>();
    let mut phones = phones(&yard, &folders);
    let mut recorded = Vec::new();
    work(&mut phones, 1, 0, &mut recorded);
    let copy = copied(folders[0].path());
    let done = exchange(&mut phones[0]).unwrap();
    assert!(done.own_back == 0 && done.sentences().is_empty(), "{done:?}");
    work(&mut phones, 2, 100, &mut recorded);
    phones.clear();
    let mut restored = yard.phone(copy.path(), 1, &[0, 1]);
    let done = exchange(&mut restored).unwrap();
    assert_eq!((done.own_back, done.shop_set_back), (2, false), "{done:?}");
    let done = exchange(&mut restored).unwrap();
    assert!(done.sentences().is_empty(), "said once: {done:?}");
    settled(&yard, &mut [restored], &recorded);
}
