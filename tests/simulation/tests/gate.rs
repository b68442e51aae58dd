//! Entries from someone who means no good: each is told what it is, the honest ones beside it are in, and the
//! book is as whole as before.

use automerge::Automerge;
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::book::document::{export, rebuild};
use sumpbook_daybook::gate::{Actor, ChangeHash, DeviceKey, Place, sign};
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::{Admission, Incoming, Ledger, Refusal};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::*;
use sumpbook_trade::record::{Correction, DeviceRevoked, Digest, HourReading, How, Meter};
use sumpbook_trade::{Entry, EntryId, Fact, FleetId, Tenths};

const YEAR: u16 = 2026;

fn book(number: u32) -> BookId {
    BookId::Truck { truck: truck(number), year: YEAR }
}

/// The shop's ledger with three phones enrolled.
fn shop() -> Ledger {
    let mut shop = ledger_in_memory(shop_key(), 0);
    shop.record(&beginning(2, &[1, 2], 9_000), BEGIN_MS).unwrap();
    shop
}

/// Signs whatever it is told to, as an enrolled phone with a program of its own would.
struct Hand {
    key: DeviceKey,
    actor: Actor,
    seq: u64,
    last: Vec<ChangeHash>,
}

impl Hand {
    fn new(number: u8) -> Hand {
        let key = phone_key(number);
        let actor = Actor::from_parts(key.id(), [9; 8]);
        Hand { key, actor, seq: 0, last: Vec::new() }
    }

    fn place(&self, id: EntryId) -> Place {
        let (actor, deps) = (self.actor, self.last.clone());
        Place { fleet: root().fleet, book: book(0), actor, seq: self.seq + 1, deps, id }
    }

    fn signed(&self, place: Place, payload: Vec<u8>) -> Incoming {
        let signature = sign(&place, &payload, &self.key).unwrap();
        Incoming { place, payload, signature }
    }

    /// Its next honest entry; the ledger it goes to must hold the one before.
    fn next(&mut self, of: &Entry) -> Incoming {
        let incoming = self.signed(self.place(of.id), of.to_payload());
        self.seq += 1;
        incoming
    }

    fn saw(&mut self, ledger: &Ledger) {
        let hash = ledger.store().truth().at_place(book(0), self.actor, self.seq).unwrap();
        self.last = hash.into_iter().collect();
    }
}

fn walk(number: u32) -> Entry {
    entry(entry_id(number), Some(truck(0)), BEGIN_MS + i64::from(number) * 60_000, section(number, &[]))
}

fn admit(ledger: &mut Ledger, parts: &[Incoming]) -> Vec<Admission> {
    ledger.admit(parts, BEGIN_MS, None).unwrap()
}

fn assert_whole(ledger: &mut Ledger) {
    ledger.settle().unwrap();
    let before = ledger.store().projection_text().unwrap();
    ledger.rebuild().unwrap();
    ledger.settle().unwrap();
    assert_eq!(before, ledger.store().projection_text().unwrap());
    let truth = ledger.store().truth();
    for book in truth.books().unwrap() {
        let rows = || truth.of_book(book).unwrap().into_iter().map(|held| held.row);
        let document = rebuild(rows()).unwrap();
        let saved = export(rows()).unwrap();
        // Loading is what the program never does: the export must be loadable by whoever wants to.
        #[allow(clippy::disallowed_methods)]
        let loaded = Automerge::load(&saved).unwrap();
        let (mut ours, mut theirs) = (document.get_heads(), loaded.get_heads());
        ours.sort_unstable();
        theirs.sort_unstable();
        assert_eq!(ours, theirs);
    }
}

#[test]
fn each_is_told_what_it_is_and_the_honest_ones_are_in() {
    let mut shop = shop();
    let mut honest = Hand::new(1);
    let first = honest.next(&walk(1));
    assert!(matches!(admit(&mut shop, std::slice::from_ref(&first))[..], [Admission::Admitted(_)]));
    honest.saw(&shop);

    let liar = Hand { last: honest.last.clone(), ..Hand::new(2) };
    let stranger = Hand::new(77);
    let refused = Admission::Refused;
    let payload = || walk(50).to_payload();
    let place = || Place { deps: Vec::new(), ..liar.place(entry_id(50)) };
    let bad = |place: Place| Incoming { place, payload: payload(), signature: [3; 64] };

    let mut forged = liar.signed(place(), payload());
    forged.signature[20] ^= 4;
    let mut other_words = liar.signed(place(), payload());
    other_words.payload = walk(51).to_payload();
    // The same signature in its second form: S + L (RFC 8032 section 5.1.7 wants S below L).
    let mut second_form = liar.signed(place(), payload());
    add_group_order(&mut second_form.signature);
    let mut elsewhere = first.clone();
    elsewhere.place.book = book(1);
    let mut last_year = first.clone();
    last_year.place.book = BookId::Truck { truck: truck(0), year: YEAR - 1 };
    let other_fleet = Place { fleet: FleetId::from_bytes([8; 16]), ..place() };
    let second = Place { seq: 2, deps: honest.last.clone(), ..place() };
    let borrowed = Place { actor: Actor::from_parts(phone_key(1).id(), [4; 8]), ..place() };
    let nothing_seen = Place { seq: 2, deps: Vec::new(), ..place() };
    let twice = Place { deps: vec![honest.last[0]; 2], ..place() };
    let descending = Place { deps: vec![ChangeHash([9; 32]), ChangeHash([8; 32])], ..place() };
    let too_many = Place { deps: (0..65).map(|n| ChangeHash([n; 32])).collect(), ..place() };
    let unseen = Place { deps: vec![ChangeHash([6; 32])], ..place() };
    let of_fleet_book = shop.store().truth().heads(BookId::Fleet).unwrap();
    let other_book = Place { deps: of_fleet_book.clone(), ..place() };
    // A fork: the honest phone's key, restored from a copy, at a place that is taken.
    let copy = Hand::new(1);
    let fork = copy.signed(copy.place(entry_id(52)), walk(52).to_payload());
    // Its third entry with its first as predecessor, the second left out.
    let skipped = Place { seq: 3, ..honest.place(entry_id(53)) };
    let far = Place { seq: u64::MAX, ..honest.place(entry_id(54)) };
    let unseen_hash = ChangeHash([6; 32]).prefix();

    let mut next = || {
        let made = honest.next(&walk(100 + honest.seq as u32));
        honest.last.clear();
        made
    };
    let parts = vec![
        (forged, refused(Refusal::Signature)),
        (other_words, refused(Refusal::Signature)),
        (second_form, refused(Refusal::Signature)),
        (elsewhere, refused(Refusal::Signature)),
        (last_year, refused(Refusal::Signature)),
        (next(), Admission::Admitted(0)),
        (bad(other_fleet), refused(Refusal::OtherFleet)),
        (
            stranger.signed(Place { actor: stranger.actor, ..place() }, payload()),
            Admission::Waiting { missing: stranger.key.id().0 },
        ),
        (liar.signed(second, payload()), refused(Refusal::Predecessor)),
        (bad(borrowed), refused(Refusal::Signature)),
        (bad(Place { seq: 0, ..place() }), refused(Refusal::Place)),
        (bad(nothing_seen), refused(Refusal::Place)),
        (bad(twice), refused(Refusal::Place)),
        (bad(descending), refused(Refusal::Place)),
        (bad(too_many), refused(Refusal::Place)),
        (liar.signed(unseen, payload()), Admission::Waiting { missing: unseen_hash }),
        (liar.signed(other_book, payload()), Admission::Waiting { missing: of_fleet_book[0].prefix() }),
        (fork, refused(Refusal::Fork)),
        (honest_again(1, skipped, 53), refused(Refusal::Predecessor)),
        (honest_again(1, far, 54), refused(Refusal::Predecessor)),
        (Incoming { payload: vec![0x81; 1_000_000], ..bad(place()) }, refused(Refusal::Payload)),
        (Incoming { payload: vec![0x81; 9_000], ..bad(place()) }, refused(Refusal::Payload)),
        (Incoming { payload: Vec::new(), ..bad(place()) }, refused(Refusal::Payload)),
        (
            Incoming { payload: vec![0x9b, 0, 0, 0, 0x80, 0, 0, 0, 0], ..bad(place()) },
            refused(Refusal::Payload),
        ),
        (first.clone(), Admission::Known(0)),
        (liar.signed(place(), payload()), Admission::Admitted(0)),
    ];
    let (given, wanted): (Vec<_>, Vec<_>) = parts.into_iter().unzip();
    let told = admit(&mut shop, &given);
    for (index, (told, wanted)) in told.iter().zip(&wanted).enumerate() {
        match wanted {
            Admission::Admitted(_) => assert!(matches!(told, Admission::Admitted(_)), "{index}: {told:?}"),
            Admission::Known(_) => assert!(matches!(told, Admission::Known(_)), "{index}: {told:?}"),
            other => assert_eq!(told, other, "{index}"),
        }
    }
    assert_eq!(shop.store().truth().of_book(book(0)).unwrap().len(), 3);
    assert_whole(&mut shop);
}

fn honest_again(number: u8, place: Place, id: u32) -> Incoming {
    Hand::new(number).signed(place, walk(id).to_payload())
}

/// Adds the order of the group, 2^252 + 27742317777372353535851937790883648493, to the signature's S.
fn add_group_order(signature: &mut [u8; 64]) {
    // RFC 8032 section 5.1, little endian.
    let order: [u8; 32] = [
        0xed, 0xd3, 0xf5, 0x5c, 0x1a, 0x63, 0x12, 0x58, 0xd6, 0x9c, 0xf7, 0xa2, 0xde, 0xf9, 0xde, 0x14, 0, 0,
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0x10,
    ];
    let mut carry = 0;
    for (byte, add) in signature[32..].iter_mut().zip(order) {
        let sum = u16::from(*byte) + u16::from(add) + carry;
        *byte = sum as u8;
        carry = sum >> 8;
    }
}

#[test]
fn one_id_with_two_contents_is_in_and_set_aside() {
    let mut shop = shop();
    let (mut one, mut two) = (Hand::new(1), Hand::new(2));
    let other = Entry { note: Some("not the same".to_owned()), ..walk(5) };
    let told = admit(&mut shop, &[one.next(&walk(5)), two.next(&other)]);
    assert!(told.iter().all(|told| matches!(told, Admission::Admitted(_))));
    let aside = shop.store().truth().aside().unwrap();
    assert_eq!(aside.len(), 2);
    assert!(aside.iter().all(|fact| fact.judged == Judged::TwoContents));
    assert_whole(&mut shop);
}

#[test]
fn nobody_sets_aside_what_the_shop_wrote() {
    let mut shop = shop();
    let key = Digest(phone_key(2).public().bytes());
    let revoked: Fact = DeviceRevoked { key, books: Vec::new(), why: "lost".to_owned() }.into();
    let revocation = of_fleet(entry_id(60), BEGIN_MS, revoked);
    let n = shop.record(std::slice::from_ref(&revocation), BEGIN_MS).unwrap()[0];
    let mut liar = Hand::new(2);
    // Its own words under the revocation's id; then the shop's very words under its own hand, tried until
    // the hash is the lower one; then a correction of it.
    let mut parts = vec![liar.next(&walk(60))];
    for tail in 100..112 {
        let actor = Actor::from_parts(liar.key.id(), [tail; 8]);
        let place = Place { actor, seq: 1, deps: Vec::new(), ..liar.place(entry_id(60)) };
        parts.push(liar.signed(place, revocation.entry.to_payload()));
    }
    let target = entry_id(60);
    let correction = Correction { target, why: "no".to_owned(), instead: None };
    let void = entry(entry_id(61), Some(truck(0)), BEGIN_MS, correction);
    let actor = Actor::from_parts(liar.key.id(), [99; 8]);
    let place = Place { actor, seq: 1, deps: Vec::new(), ..liar.place(entry_id(61)) };
    parts.push(liar.signed(place, void.to_payload()));
    assert!(admit(&mut shop, &parts).iter().all(|told| matches!(told, Admission::Admitted(_))));
    assert_eq!(shop.store().truth().fact(n).unwrap().unwrap().judged, Judged::Counts);
    assert_eq!(shop.fleet().revoked.len(), 1);
    assert_whole(&mut shop);
}

#[test]
fn a_revocation_before_what_it_reaches_and_after_it_judges_the_same() {
    let mut phone = ledger_in_memory(phone_key(1), 0);
    let mut shop = shop();
    let all = |ledger: &Ledger, from| {
        let rows = ledger.store().truth().between(from, i64::MAX, i64::MAX).unwrap();
        rows.iter().map(|held| Incoming::of_row(root().fleet, &held.row)).collect::<Vec<_>>()
    };
    admit(&mut phone, &all(&shop, 0));
    let known = shop.store().truth().last_n().unwrap();
    for number in 0..4 {
        phone.record(&[of_truck(walk(number))], BEGIN_MS).unwrap();
    }
    let walks = all(&phone, phone.store().truth().last_n().unwrap() - 4);
    let mut late = ledger_in_memory(shop_key(), 7);
    admit(&mut late, &all(&shop, 0));
    // The shop has the first three when it stops the phone.
    admit(&mut shop, &walks[..3]);
    let heads = shop.store().truth().heads(book(0)).unwrap().into_iter().map(|h| Digest(h.0)).collect();
    let books = vec![sumpbook_trade::record::BookHead { truck: Some(truck(0)), year: Some(YEAR), heads }];
    let key = Digest(phone_key(1).public().bytes());
    let revoked: Fact = DeviceRevoked { key, books, why: "lost".to_owned() }.into();
    shop.record(&[of_fleet(entry_id(70), BEGIN_MS, revoked)], BEGIN_MS).unwrap();
    admit(&mut shop, &walks[3..]);
    // Another hub hears of the revocation first.
    let fleet_first: Vec<_> =
        all(&shop, known).into_iter().filter(|part| part.place.book == BookId::Fleet).collect();
    admit(&mut late, &fleet_first);
    admit(&mut late, &walks);
    let judged = |ledger: &Ledger| {
        let rows = ledger.store().truth().of_book(book(0)).unwrap();
        rows.iter()
            .map(|held| ledger.store().truth().fact(held.n).unwrap().unwrap().judged)
            .collect::<Vec<_>>()
    };
    use Judged::{Counts, DeviceStopped};
    assert_eq!(judged(&shop), [Counts, Counts, Counts, DeviceStopped]);
    assert_eq!(judged(&late), judged(&shop));
    assert_whole(&mut shop);
    assert_whole(&mut late);
}

#[test]
fn figures_and_times_at_the_ends_of_their_range_stop_nobody() {
    let mut shop = shop();
    let mut hand = Hand::new(1);
    let (far, near) = (chrono::DateTime::<chrono::Utc>::MAX_UTC, chrono::DateTime::<chrono::Utc>::MIN_UTC);
    let times = [far.timestamp_millis(), near.timestamp_millis(), i64::MAX, i64::MIN, 0, 253_402_300_799_999];
    let mut number = 0;
    for ms in times {
        for offset in [0i32, 1_439, -1_439] {
            for figure in [i64::MAX, i64::MIN, 0] {
                number += 1;
                let reading = HourReading {
                    meter: Meter::Compressor,
                    figure: Tenths(figure),
                    how: How::Asked,
                    kept_when_asked: false,
                    photo: None,
                };
                let mut of = match number % 3 {
                    0 => entry(entry_id(number), Some(truck(0)), BEGIN_MS, section(number, &[number])),
                    1 => {
                        let service = sumpbook_trade::record::ServiceDone {
                            tasks: vec!["oil-and-filters".into()],
                            oil: None,
                            parts: Vec::new(),
                            oil_reason: None,
                            photo: None,
                        };
                        entry(entry_id(number), Some(truck(0)), BEGIN_MS, service)
                    }
                    _ => entry(entry_id(number), Some(truck(0)), BEGIN_MS, reading),
                };
                of.hours = Some(Tenths(figure));
                of.clock_off_ms = Some(figure);
                let bytes = with_time(&of, ms, offset);
                let incoming = hand.signed(hand.place(of.id), bytes);
                let told = admit(&mut shop, &[incoming]);
                assert!(matches!(told[..], [Admission::Admitted(_)]), "{told:?}");
                hand.seq += 1;
                hand.saw(&shop);
            }
        }
    }
    shop.settle().unwrap();
    shop.unit_state(truck(0)).unwrap();
    shop.unit_state_at(truck(0), BEGIN_MS).unwrap();
    assert_whole(&mut shop);
}

/// The payload with another time in it than a [`sumpbook_trade::Stamp`] would hold.
fn with_time(of: &Entry, ms: i64, offset: i32) -> Vec<u8> {
    let usual = minicbor::to_vec(of.at).unwrap();
    let other = minicbor::to_vec((ms, offset)).unwrap();
    let bytes = of.to_payload();
    let at = bytes.windows(usual.len()).position(|window| window == usual).unwrap();
    [&bytes[..at], &other, &bytes[at + usual.len()..]].concat()
}

#[test]
fn thousands_of_entries_about_one_another_fill_no_stack() {
    const MANY: u32 = 2_000;
    let mut shop = shop();
    let mut parts = Vec::new();
    let one = Hand::new(1);
    for number in 0..MANY {
        // A correction of the one before it, in a ring; and another content under one and the same id.
        let target = entry_id((number + MANY - 1) % MANY);
        let correction = Correction { target, why: "no".to_owned(), instead: None };
        let of = entry(entry_id(number), Some(truck(0)), BEGIN_MS, correction);
        let actor = Actor::from_parts(one.key.id(), u64::from(number).to_be_bytes());
        let place = Place { actor, ..one.place(of.id) };
        parts.push(one.signed(place, of.to_payload()));
        let twin = Entry { id: entry_id(MANY), ..walk(number) };
        let actor = Actor::from_parts(one.key.id(), u64::from(number + MANY).to_be_bytes());
        let place = Place { actor, ..one.place(twin.id) };
        parts.push(one.signed(place, twin.to_payload()));
    }
    let small = std::thread::Builder::new().stack_size(512 * 1024);
    let told = small.spawn(move || admit(&mut shop, &parts).len()).unwrap().join().unwrap();
    assert_eq!(told, 2 * MANY as usize);
}
