//! A phone that was let in and means no good, entry by entry, over TLS: each is told what it is, and the honest
//! phone beside it goes on.

use std::time::{Duration, Instant};

use sumpbook_daybook::book::BookId;
use sumpbook_daybook::exchange::counts;
use sumpbook_daybook::gate::{Actor, DeviceKey, Place, sign};
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::parcel::{Dep, Link, Parcel, Refusal, Run, RunEntry, open_answer, seal};
use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::phone::online::Hub;
use sumpbook_daybook::store::Store;
use sumpbook_hub_tests::{Yard, clock, walk};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::{BEGIN_MS, entry, entry_id, phone_key, root, shop_key, truck};
use sumpbook_trade::{Entry, EntryId};

const BOOK: BookId = BookId::Truck { truck: TRUCK, year: 2026 };
const TRUCK: sumpbook_trade::TruckId =
    sumpbook_trade::TruckId(uuid::Uuid::from_bytes([0, 0, 0, 0, 0, 0, 0x70, 0, 0x80, 0, 0, 1, 0, 0, 0, 0]));

fn soon() -> Instant {
    Instant::now() + Duration::from_secs(30)
}

fn yard() -> Yard {
    assert_eq!(TRUCK, truck(0));
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 3);
    yard.begin();
    yard
}

/// Signs whatever it is told to, and sends it as phone 2.
struct Hand {
    key: DeviceKey,
    way: Hub,
}

impl Hand {
    fn new(yard: &Yard) -> Hand {
        Hand { key: phone_key(2), way: yard.way() }
    }

    fn actor(&self, tail: u32) -> Actor {
        let mut bytes = [9; 8];
        bytes[..4].copy_from_slice(&tail.to_be_bytes());
        Actor::from_parts(self.key.id(), bytes)
    }

    /// One entry at a place without predecessors.
    fn run(&self, actor: Actor, seq: u64, of: &Entry) -> Run {
        let place = Place { fleet: root().fleet, book: BOOK, actor, seq, deps: Vec::new(), id: of.id };
        let payload = of.to_payload();
        // The key of another actor would refuse to sign; this hand signs for whoever it says it is.
        let signature = sign(&place, &payload, &self.key).unwrap_or([7; 64]);
        Run {
            book: BOOK,
            actor,
            seq,
            deps: Vec::<Dep>::new(),
            entries: vec![RunEntry { id: of.id, payload, signature }],
        }
    }

    /// Sends runs; how many were admitted, and what was refused.
    fn sends(&self, runs: Vec<Run>) -> (u64, Vec<Refusal>) {
        let challenge = self.way.exchange(b"", soon()).unwrap().challenge.unwrap();
        let mut parcel =
            Parcel::new(root().fleet, Link::Challenge(challenge), clock().unix_ms() as u64, [0; 8]);
        parcel.runs = runs;
        let sent: usize = parcel.runs.iter().map(|run| run.entries.len()).sum();
        let sealed = seal(&parcel, &self.key).unwrap();
        let said = self.way.exchange(&sealed.wire, soon()).unwrap();
        assert_eq!(said.status, 200, "{}", String::from_utf8_lossy(&said.body));
        let answer = open_answer(&said.body, &shop_key().public(), root().fleet, sealed.digest).unwrap();
        // An answer that refuses nothing counts nothing: all are in.
        let counted: u64 = answer.admitted.iter().sum();
        let all = answer.admitted.is_empty() && answer.refused.is_empty();
        (if all { sent as u64 } else { counted }, answer.refused)
    }
}

fn said(id: u32, words: &str) -> Entry {
    let mut said = entry(entry_id(700_000 + id), Some(truck(0)), clock().unix_ms(), section(id, &[]));
    said.note = Some(words.to_owned());
    said
}

/// The honest phone records, exchanges, and everything of it is at the shop and counts.
fn goes_on(yard: &Yard, honest: &mut Daybook, number: u32) -> EntryId {
    let id = walk(honest, 0, number);
    // A machine that is busy with other tests takes its time over a flooded book.
    let done = honest.exchange_once(&clock, Instant::now() + Duration::from_secs(60)).unwrap();
    assert!(done.whole && !done.shop_set_back && !done.two_shops, "{done:?}");
    assert_eq!(counts(honest.ledger()).unwrap().own_on_this_phone, 0);
    assert_eq!(judged(yard, id), [Judged::Counts]);
    id
}

fn judged(yard: &Yard, id: EntryId) -> Vec<Judged> {
    let store = Store::reader(yard.folder()).unwrap();
    let truth = store.truth();
    let held = truth.by_id(id).unwrap();
    held.iter().map(|held| truth.fact(held.n).unwrap().unwrap().judged).collect()
}

#[test]
fn it_rewrites_forks_forges_and_squats_and_nobody_else_is_harmed() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut honest = yard.phone(folder.path(), 1, &[0, 1]);
    let first = goes_on(&yard, &mut honest, 1);
    let hand = Hand::new(&yard);

    // It rewrites: the same place with other words. What stood there first stands.
    let told = said(1, "as it was");
    assert_eq!(hand.sends(vec![hand.run(hand.actor(1), 1, &told)]), (1, vec![]));
    let (admitted, refused) =
        hand.sends(vec![hand.run(hand.actor(1), 1, &said(2, "as it should have been"))]);
    assert_eq!((admitted, refused.len()), (0, 1));
    assert_eq!(judged(&yard, told.id), [Judged::Counts]);
    {
        let store = Store::reader(yard.folder()).unwrap();
        assert!(store.refused().unwrap().iter().any(|kept| kept.reason == "fork"), "kept as proof");
    }
    goes_on(&yard, &mut honest, 2);

    // It forges: an entry in the name of the honest phone's hand, and of the shop's.
    for other in [honest.ledger().actor(), Actor::from_parts(shop_key().id(), [1; 8])] {
        let forged = said(3, "not mine");
        let (admitted, refused) = hand.sends(vec![hand.run(other, 900, &forged)]);
        assert_eq!((admitted, refused.len()), (0, 1), "{refused:?}");
        assert!(judged(&yard, forged.id).is_empty());
    }
    // It takes the honest hand's next place before the honest hand does: the place stays free.
    let next = hand.run(honest.ledger().actor(), 3, &said(4, "I was here first"));
    assert_eq!(hand.sends(vec![next]).0, 0);
    goes_on(&yard, &mut honest, 3);

    // It squats on an entry's name with other words: both are set aside and shown, nothing is chosen silently.
    let mut squatted = said(5, "another walk");
    squatted.id = first;
    assert_eq!(hand.sends(vec![hand.run(hand.actor(2), 1, &squatted)]).0, 1);
    assert_eq!(judged(&yard, first), [Judged::TwoContents, Judged::TwoContents]);
    goes_on(&yard, &mut honest, 4);
    // The same words under the same name are the same entry.
    let twice = said(6, "said twice");
    assert_eq!(hand.sends(vec![hand.run(hand.actor(3), 1, &twice), hand.run(hand.actor(4), 1, &twice)]).0, 2);
    let mut both = judged(&yard, twice.id);
    both.sort_by_key(|judged| *judged != Judged::Counts);
    assert_eq!(both, [Judged::Counts, Judged::Void]);
    goes_on(&yard, &mut honest, 5);
}

#[test]
fn it_back_dates_and_the_shop_says_when_it_came() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut honest = yard.phone(folder.path(), 1, &[0]);
    goes_on(&yard, &mut honest, 1);
    let hand = Hand::new(&yard);
    let before = Store::reader(yard.folder()).unwrap().truth().last_n().unwrap();
    let mut old = entry(entry_id(800_000), Some(truck(0)), BEGIN_MS - 30 * 86_400_000, section(9, &[]));
    old.clock_off_ms = Some(-1_000_000_000_000);
    assert_eq!(hand.sends(vec![hand.run(hand.actor(5), 1, &old)]).0, 1);
    let store = Store::reader(yard.folder()).unwrap();
    let truth = store.truth();
    let held = truth.by_id(old.id).unwrap().remove(0);
    let last = truth.entry(before).unwrap().unwrap();
    assert!(held.n > before && held.received_ms >= last.received_ms, "it is told by when it came");
    assert!(
        truth.upto(last.received_ms - 1).unwrap() < held.n,
        "what was known before it is not changed by it"
    );
    goes_on(&yard, &mut honest, 2);
}

#[test]
fn it_floods_a_book_with_beginnings_and_the_honest_phone_hardly_notices() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut honest = yard.phone(folder.path(), 1, &[0]);
    goes_on(&yard, &mut honest, 1);
    let hand = Hand::new(&yard);
    let mut number = 0;
    let begun = Instant::now();
    for _ in 0..3 {
        let runs = (0..1_000).map(|_| {
            number += 1;
            hand.run(hand.actor(1_000 + number), 1, &said(number, ""))
        });
        assert_eq!(hand.sends(runs.collect()), (1_000, vec![]));
    }
    let flooded = begun.elapsed();
    let begun = Instant::now();
    for turn in 0..3 {
        goes_on(&yard, &mut honest, 10 + turn);
    }
    println!("3,000 beginnings in {flooded:?}; three honest exchanges after them in {:?}", begun.elapsed());
    assert!(begun.elapsed() < Duration::from_secs(60));
    let store = Store::reader(yard.folder()).unwrap();
    store.check().unwrap();
    let theirs = honest.ledger().store().truth().heads(BOOK).unwrap();
    assert_eq!(theirs, store.truth().heads(BOOK).unwrap(), "and holds all of it");
}
