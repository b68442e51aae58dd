//! The hub killed at any moment while phones exchange: nothing acknowledged is lost, nothing is doubled.

use std::collections::{HashMap, HashSet};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::time::Duration;

use sumpbook_daybook::exchange::counts;
use sumpbook_daybook::store::Store;
use sumpbook_hub_tests::{Yard, exchange, walk};
use sumpbook_trade::EntryId;

/// Exchanges that are tried while the hub is killed, and phones that try them.
const EXCHANGES: u32 = 200;
const PHONES: u8 = 6;

#[test]
fn nothing_acknowledged_is_lost_and_nothing_is_doubled() {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 3, PHONES);
    yard.begin();
    let folders: Vec<_> = (0..PHONES).map(|_| tempfile::tempdir().unwrap()).collect();
    let (tried, cut, over) = (AtomicU32::new(0), AtomicU32::new(0), AtomicBool::new(false));
    let mut kills = 0;
    let (recorded, acknowledged) = std::thread::scope(|scope| {
        let mut hands = Vec::new();
        for (number, folder) in (1..=PHONES).zip(&folders) {
            let mut phone = yard.phone(folder.path(), number, &[0, 1, 2]);
            let (tried, cut, over) = (&tried, &cut, &over);
            hands.push(scope.spawn(move || {
                let (mut recorded, mut acknowledged) = (Vec::new(), HashSet::new());
                while !over.load(Ordering::Relaxed) {
                    for _ in 0..3 {
                        let next = u32::from(number) * 10_000 + recorded.len() as u32;
                        recorded.push(walk(&mut phone, next % 3, next));
                    }
                    tried.fetch_add(1, Ordering::Relaxed);
                    match exchange(&mut phone) {
                        Ok(done) => assert!(!done.shop_set_back && !done.two_shops, "{done:?}"),
                        Err(_) => {
                            cut.fetch_add(1, Ordering::Relaxed);
                        }
                    }
                    // What this phone now believes to be at the shop must never be lost.
                    let there = counts(phone.ledger()).unwrap();
                    if there.on_this_phone == 0 {
                        acknowledged.extend(recorded.iter().copied());
                    }
                }
                (recorded, acknowledged)
            }));
        }
        let mut random = 0x5eed_u64;
        while tried.load(Ordering::Relaxed) < EXCHANGES {
            random = random.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            std::thread::sleep(Duration::from_millis(20 + (random >> 33) % 180));
            yard.kill();
            kills += 1;
            yard.begin();
        }
        over.store(true, Ordering::Relaxed);
        let mut recorded: Vec<EntryId> = Vec::new();
        let mut acknowledged: HashSet<EntryId> = HashSet::new();
        for hand in hands {
            let (own, said) = hand.join().unwrap();
            recorded.extend(own);
            acknowledged.extend(said);
        }
        (recorded, acknowledged)
    });
    // The last kill's hub stands: whatever was acknowledged before any kill is in its books.
    let held = |ids: &HashSet<EntryId>| {
        let store = Store::reader(yard.folder()).unwrap();
        let truth = store.truth();
        let missing: Vec<_> = ids.iter().filter(|id| truth.by_id(**id).unwrap().is_empty()).collect();
        assert!(missing.is_empty(), "{} of {} are lost", missing.len(), ids.len());
    };
    held(&acknowledged);
    // Twice round, so that each hears what the others brought.
    for _ in 0..2 {
        for (number, folder) in (1..=PHONES).zip(&folders) {
            let mut phone = yard.phone(folder.path(), number, &[0, 1, 2]);
            assert!(exchange(&mut phone).unwrap().whole);
            assert_eq!(counts(phone.ledger()).unwrap().on_this_phone, 0);
        }
    }
    held(&recorded.iter().copied().collect());
    let store = Store::reader(yard.folder()).unwrap();
    store.check().unwrap();
    let truth = store.truth();
    let mut placings: HashMap<EntryId, usize> = HashMap::new();
    for entry in truth.between(0, i64::MAX, i64::MAX).unwrap() {
        *placings.entry(entry.row.id).or_default() += 1;
    }
    assert!(placings.values().all(|times| *times == 1), "an entry stands twice");
    for (number, folder) in (1..=PHONES).zip(&folders) {
        let phone = yard.phone(folder.path(), number, &[0, 1, 2]);
        for book in truth.books().unwrap() {
            let theirs = phone.ledger().store().truth().heads(book).unwrap();
            assert_eq!(theirs, truth.heads(book).unwrap(), "phone {number}, {book:?}");
        }
    }
    let (tried, cut) = (tried.into_inner(), cut.into_inner());
    println!(
        "{kills} kills in {tried} exchanges, {cut} of them cut; {} entries, {} acknowledged before the end",
        recorded.len(),
        acknowledged.len()
    );
    assert!(cut > 0 && !acknowledged.is_empty());
}
