//! One parcel in, one parcel out: a phone and the hub, with nothing between them that could be lost but bytes.

use sumpbook_trade::record::{DeviceRevoked, Digest, LateAccepted, ShopSays};

use super::*;
use crate::exchange::{
    Answered, Came, CodeState, Declined, Door, ExchangeError, Request, Whereabouts, counts, pending, request,
    respond, standing_of, take_answer,
};
use crate::judgement::Judged;
use crate::parcel::{FileReader, OpenError, Sealed, open, open_answer, seal, seal_answer};

pub(super) const CHALLENGE: [u8; 16] = [7; 16];

pub(super) const DOOR: Door<'static> = Door { challenge: &|c| *c == CHALLENGE, token: &|_| None };

/// What a whole exchange took.
#[derive(Default)]
pub(super) struct Whole {
    pub(super) trips: usize,
    pub(super) up: usize,
    pub(super) down: usize,
    pub(super) admitted: usize,
    pub(super) taken: usize,
    pub(super) last: Came,
}

impl Phone {
    pub(super) fn asks(&mut self, now: Stamp) -> Request {
        request(self.book.ledger_mut(), CHALLENGE, now).unwrap()
    }

    pub(super) fn hears(&mut self, asked: &Request, answered: &Answered, now: Stamp) -> Came {
        take_answer(self.book.ledger_mut(), asked.digest, &answered.bytes, now, now).unwrap()
    }
}

impl Shop {
    pub(super) fn answers(&mut self, asked: &Request, now: Stamp) -> Answered {
        respond(&mut self.ledger, &asked.bytes, &DOOR, now).unwrap()
    }

    /// Requests and answers until neither has more.
    pub(super) fn exchanges(&mut self, phone: &mut Phone, now: Stamp) -> Whole {
        let mut whole = Whole::default();
        loop {
            let asked = phone.asks(now);
            let answered = self.answers(&asked, now);
            let came = phone.hears(&asked, &answered, now);
            whole.trips += 1;
            whole.up += asked.bytes.len();
            whole.down += answered.bytes.len();
            whole.admitted += answered.admitted;
            whole.taken += came.taken.admitted;
            assert!(whole.trips < 100, "it never ends: {answered:?} {came:?}");
            if !came.more {
                whole.last = came;
                return whole;
            }
        }
    }
}

/// All that a phone holds is at the shop, and of its books both hold the same.
pub(super) fn settled(shop: &Shop, phone: &Phone) {
    same_books(&shop.ledger, phone.book.ledger());
    assert_eq!(counts(phone.book.ledger()).unwrap().on_this_phone, 0);
}

#[test]
fn a_day_goes_both_ways_between_two_phones_and_the_shop() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1), truck(2)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    for phone in [&mut one, &mut two] {
        shop.exchanges(phone, at(2));
        settled(&shop, phone);
    }
    let mine = one.reads(truck(1), 12_262, at(10));
    let other = one.reads(truck(2), 9_000, at(11));
    let theirs = two.reads(truck(1), 12_263, at(12));
    let done = shop.exchanges(&mut one, at(20));
    assert_eq!((done.trips, done.admitted, done.taken), (1, 2, 0));
    let done = shop.exchanges(&mut two, at(21));
    assert_eq!((done.trips, done.admitted, done.taken), (1, 1, 1), "truck 2 is none of its trucks");
    let done = shop.exchanges(&mut one, at(22));
    assert_eq!((done.trips, done.admitted, done.taken), (1, 0, 1));
    for phone in [&one, &two] {
        settled(&shop, phone);
        for id in [mine, theirs] {
            let standing = standing_of(phone.book.ledger(), id).unwrap().unwrap();
            assert_eq!(standing.whereabouts, Whereabouts::AtTheShop);
        }
    }
    assert_eq!(standing_of(two.book.ledger(), other).unwrap(), None);
    // Nothing new: one trip, and nothing in it.
    let done = shop.exchanges(&mut one, at(23));
    assert_eq!((done.trips, done.admitted, done.taken), (1, 0, 0));
    assert!(done.up < 300 && done.down < 300, "{} {}", done.up, done.down);
    let log = shop.ledger.store().exchanges(i64::MAX).unwrap();
    let last = log.last().unwrap();
    assert_eq!(last.device, one.book.ledger().own_key().id().0);
    assert_eq!((last.from_n, last.to_n), (last.to_n, shop.ledger.store().truth().last_n().unwrap()));
    assert_eq!(last.off_ms, Some(0));
}

#[test]
fn what_was_recorded_offline_for_a_truck_nobody_follows_arrives_and_is_followed() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(3)]);
    shop.exchanges(&mut phone, at(2));
    shop.exchanges(&mut two, at(2));
    two.reads(truck(3), 500, at(3));
    shop.exchanges(&mut two, at(4));
    let id = phone.reads(truck(3), 510, at(5));
    let done = shop.exchanges(&mut phone, at(6));
    assert_eq!(done.admitted, 1);
    settled(&shop, &phone);
    let book = BookId::Truck { truck: truck(3), year: 2026 };
    assert_eq!(phone.book.ledger().store().truth().of_book(book).unwrap().len(), 2);
    assert!(standing_of(phone.book.ledger(), id).unwrap().is_some());
    two.reads(truck(3), 520, at(7));
    shop.exchanges(&mut two, at(8));
    assert_eq!(shop.exchanges(&mut phone, at(9)).taken, 1);
    settled(&shop, &phone);
}

#[test]
fn a_request_twice_and_an_answer_lost_or_twice_double_nothing() {
    let mut shop = Shop::new(1);
    let mut one = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    shop.exchanges(&mut one, at(2));
    shop.exchanges(&mut two, at(2));
    two.reads(truck(1), 12_250, at(3));
    shop.exchanges(&mut two, at(4));
    one.reads(truck(1), 12_262, at(10));
    let asked = one.asks(at(11));
    let count = |shop: &Shop| shop.ledger.store().truth().count().unwrap();
    let first = shop.answers(&asked, at(11));
    let held = count(&shop);
    assert_eq!((first.admitted, first.known, first.given), (1, 0, 1));
    let again = shop.answers(&asked, at(12));
    assert_eq!((again.admitted, again.known, again.given), (0, 1, 1));
    assert_eq!(count(&shop), held);
    // The first answer was lost; the phone asks anew and goes on recording meanwhile.
    one.reads(truck(1), 12_263, at(13));
    let asked = one.asks(at(14));
    let answered = shop.answers(&asked, at(14));
    assert_eq!((answered.admitted, answered.known), (1, 1));
    let came = one.hears(&asked, &answered, at(14));
    assert!(!came.more && came.taken.receipt);
    let mine = one.book.ledger().store().truth().count().unwrap();
    let came = one.hears(&asked, &answered, at(15));
    assert_eq!((came.taken.admitted, came.more), (0, false));
    assert_eq!(one.book.ledger().store().truth().count().unwrap(), mine);
    settled(&shop, &one);
}

#[test]
fn a_phone_asks_to_be_let_in_waits_and_is_let_in() {
    let mut shop = Shop::new(1);
    let mut phone = Phone::new("yard phone 1", &shop.invite(&[truck(1)]));
    let id = phone.reads(truck(1), 12_262, at(1));
    let asked = phone.asks(at(2));
    assert!(asked.asks && asked.entries == 0);
    let answered = shop.answers(&asked, at(2));
    let waits = answered.pending.clone().unwrap();
    assert_eq!((waits.name.as_str(), waits.code), ("yard phone 1", CodeState::Open));
    let came = phone.hears(&asked, &answered, at(2));
    assert!(!came.enrolled && !came.more && !came.taken.receipt);
    assert_eq!(pending(&shop.ledger, at(3)).unwrap().len(), 1);
    accept(&mut shop.ledger, &waits.fingerprint, None, at(3)).unwrap();
    let done = shop.exchanges(&mut phone, at(4));
    assert!(done.last.enrolled);
    assert_eq!((done.trips, done.admitted), (2, 1));
    settled(&shop, &phone);
    let standing = standing_of(phone.book.ledger(), id).unwrap().unwrap();
    assert_eq!((standing.whereabouts, standing.aside), (Whereabouts::AtTheShop, None));
    // Another phone under the used code is told so, and nothing of it is remembered.
    let mut late = Phone::new("yard phone 2", &shop.invite(&[]));
    let code = crate::exchange::memory::asking(phone.book.ledger().store()).unwrap().unwrap().0;
    crate::exchange::memory::set_code(late.book.ledger_mut().store_mut(), &code).unwrap();
    let asked = late.asks(at(5));
    let told = respond(&mut shop.ledger, &asked.bytes, &DOOR, at(5)).unwrap_err();
    assert!(matches!(told, Declined::Code(CodeState::Used(_))), "{told}");
    let told = respond(&mut shop.ledger, &late.asks(at(5)).bytes, &DOOR, at(9 * 24 * 60)).unwrap_err();
    assert!(matches!(told, Declined::Code(_)));
    assert!(pending(&shop.ledger, at(5)).unwrap().is_empty());
}

#[test]
fn what_is_no_request_for_here_is_declined_and_stores_nothing() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    phone.reads(truck(1), 12_262, at(10));
    let asked = phone.asks(at(11));
    let before = shop.ledger.store().truth().count().unwrap();
    let no = Door { challenge: &|_| false, token: &|_| None };
    let told = respond(&mut shop.ledger, &asked.bytes, &no, at(11)).unwrap_err();
    assert!(matches!(told, Declined::StaleChallenge));
    let mut other = Shop::new(2);
    let told = respond(&mut other.ledger, &asked.bytes, &DOOR, at(11)).unwrap_err();
    assert!(matches!(told, Declined::UnknownSender(_)));
    for byte in 0..asked.bytes.len() {
        let mut bad = asked.bytes.clone();
        bad[byte] ^= 1 << (byte % 8);
        // Byte 4 is the frame's descriptor, with a bit that says nothing (RFC 8878, 3.1.1.1.1.3).
        assert!(byte == 4 || respond(&mut shop.ledger, &bad, &DOOR, at(11)).is_err(), "byte {byte}");
        assert!(respond(&mut shop.ledger, &asked.bytes[..byte], &DOOR, at(11)).is_err());
    }
    let own = phone.book.ledger().own_key();
    let opened = open(&asked.bytes, |_| Some(own.public())).unwrap();
    let mut elsewhere = opened.parcel.clone();
    elsewhere.fleet = FleetId::from_bytes([2; 16]);
    let Sealed { wire, .. } = seal(&elsewhere, own).unwrap();
    assert!(matches!(respond(&mut shop.ledger, &wire, &DOOR, at(11)), Err(Declined::OtherFleet)));
    let file = phone.hands_over(at(11));
    let frame = FileReader::new(&file[..]).unwrap().next().unwrap().unwrap();
    assert!(matches!(respond(&mut shop.ledger, &frame, &DOOR, at(11)), Err(Declined::NotARequest)));
    let told = respond(&mut shop.ledger, &vec![0; 1024 * 1024 + 1], &DOOR, at(11)).unwrap_err();
    assert!(matches!(told, Declined::NotAParcel(OpenError::TooLong(_))));
    let told = respond(phone.book.ledger_mut(), &asked.bytes, &DOOR, at(11)).unwrap_err();
    assert!(matches!(told, Declined::NotTheShop));
    assert_eq!(shop.ledger.store().truth().count().unwrap(), before);
    assert_eq!(shop.answers(&asked, at(12)).admitted, 1);
}

#[test]
fn an_answer_that_is_not_the_shop_s_or_not_to_this_changes_nothing() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    phone.reads(truck(1), 12_262, at(10));
    let asked = phone.asks(at(11));
    let answered = shop.answers(&asked, at(11));
    let take = |phone: &mut Phone, digest, bytes: &[u8]| {
        take_answer(phone.book.ledger_mut(), digest, bytes, at(11), at(11))
    };
    assert!(matches!(take(&mut phone, [0; 32], &answered.bytes), Err(ExchangeError::NotTheAnswer(_))));
    for byte in 0..answered.bytes.len() {
        let mut bad = answered.bytes.clone();
        bad[byte] ^= 1 << (byte % 8);
        assert!(byte == 4 || take(&mut phone, asked.digest, &bad).is_err(), "byte {byte}");
    }
    let own = DeviceKey::from_secret(&[66; 32]);
    let shops_own = shop.ledger.root().shop;
    let fleet = shop.ledger.root().fleet;
    let said = open_answer(&answered.bytes, &shops_own, fleet, asked.digest).unwrap();
    let forged = seal_answer(&said, asked.digest, &own).unwrap().wire;
    assert!(matches!(take(&mut phone, asked.digest, &forged), Err(ExchangeError::NotTheAnswer(_))));
    assert_eq!(counts(phone.book.ledger()).unwrap().on_this_phone, 1);
    assert!(take(&mut phone, asked.digest, &answered.bytes).unwrap().taken.receipt);
    assert_eq!(counts(phone.book.ledger()).unwrap().on_this_phone, 0);
}

#[test]
fn a_stopped_phone_is_told_so_and_nothing_else() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let mut two = shop.lets_in("yard phone 2", &[truck(1)]);
    shop.exchanges(&mut phone, at(2));
    shop.exchanges(&mut two, at(2));
    shop.says(
        None,
        Fact::DeviceRevoked(DeviceRevoked {
            key: Digest(phone.book.ledger().own_key().public().bytes()),
            books: vec![],
            why: "left on a bus".into(),
        }),
    );
    two.reads(truck(1), 12_000, at(9));
    shop.exchanges(&mut two, at(9));
    let id = phone.reads(truck(1), 12_262, at(10));
    let asked = phone.asks(at(11));
    let answered = shop.answers(&asked, at(11));
    assert!(answered.stopped);
    assert_eq!((answered.admitted, answered.given), (1, 1), "the fleet's book, not the truck's");
    let aside = standing_of(&shop.ledger, id).unwrap().unwrap().aside;
    assert_eq!(aside, Some(Judged::DeviceStopped));
    let came = phone.hears(&asked, &answered, at(11));
    assert!(came.stopped && came.enrolled);
    assert!(shop.exchanges(&mut phone, at(12)).trips < 3);
    // What the shop says to its phones since then is none of its business, people and programme no more than trucks.
    let heard = phone.book.ledger().store().truth().count().unwrap();
    shop.says(None, Fact::ShopSays(ShopSays { on_call: vec![], ..ShopSays::default() }));
    let asked = phone.asks(at(12));
    let answered = shop.answers(&asked, at(12));
    assert_eq!((answered.stopped, answered.given), (true, 1), "that it is stopped, once more");
    phone.hears(&asked, &answered, at(12));
    assert!(shop.exchanges(&mut phone, at(12)).trips < 3);
    assert_eq!(phone.book.ledger().store().truth().count().unwrap(), heard);
    // Decided otherwise for one of them, the others learn it.
    shop.says(Some(truck(1)), Fact::LateAccepted(LateAccepted { targets: vec![id], why: "asked".into() }));
    shop.exchanges(&mut two, at(13));
    assert_eq!(standing_of(two.book.ledger(), id).unwrap().unwrap().aside, None);
    settled(&shop, &two);
}

#[test]
fn many_parcels_share_one_commit_and_one_that_is_declined_goes_back_alone() {
    let mut shop = Shop::new(1);
    let mut phones: Vec<Phone> =
        (1..=3).map(|n| shop.lets_in(&format!("yard phone {n}"), &[truck(1)])).collect();
    for (phone, minute) in phones.iter_mut().zip(10..) {
        phone.reads(truck(1), 12_000, at(minute));
    }
    let asked: Vec<Request> = phones.iter_mut().map(|phone| phone.asks(at(20))).collect();
    let before = shop.ledger.store().truth().count().unwrap();
    // Not made durable: nothing of any of them stays, and what was learnt on the way is forgotten.
    let gone: Result<(), ExchangeError> = shop.ledger.in_one_commit(|ledger| {
        for asked in &asked {
            respond(ledger, &asked.bytes, &DOOR, at(21)).unwrap();
        }
        Err(ExchangeError::NotAFile)
    });
    assert!(gone.is_err());
    assert_eq!(shop.ledger.store().truth().count().unwrap(), before);
    let answers = shop.ledger.in_one_commit(|ledger| {
        let mut answers = Vec::new();
        for (at_place, asked) in asked.iter().enumerate() {
            let end = asked.bytes.len() - usize::from(at_place == 1);
            answers.push(respond(ledger, &asked.bytes[..end], &DOOR, at(22)));
        }
        Ok::<_, ExchangeError>(answers)
    });
    let answers = answers.unwrap();
    assert!(answers[1].is_err());
    assert_eq!(shop.ledger.store().truth().count().unwrap(), before + 2);
    for place in [0, 2] {
        phones[place].hears(&asked[place], answers[place].as_ref().unwrap(), at(22));
    }
    for phone in &mut phones {
        shop.exchanges(phone, at(30));
    }
    for phone in &mut phones {
        shop.exchanges(phone, at(31));
        settled(&shop, phone);
    }
}

#[test]
fn the_hub_s_clock_is_learnt_with_half_of_the_way() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let asked = phone.asks(at(10));
    let answered = shop.answers(&asked, at(15));
    assert_eq!(answered.off_ms, 300_000);
    let sent = at(10);
    let back = Stamp::from_parts(sent.unix_ms() + 4_000, -360).unwrap();
    let ledger = phone.book.ledger_mut();
    let came = take_answer(ledger, asked.digest, &answered.bytes, sent, back).unwrap();
    assert_eq!(came.clock_off_ms, Some(298_000));
    assert_eq!(phone.book.clock_off_ms().unwrap(), Some(298_000));
    // Somebody set the clock meanwhile: nothing is learnt.
    let asked = phone.asks(at(20));
    let answered = shop.answers(&asked, at(25));
    let ledger = phone.book.ledger_mut();
    let came = take_answer(ledger, asked.digest, &answered.bytes, at(20), at(19)).unwrap();
    assert_eq!(came.clock_off_ms, None);
    assert_eq!(phone.book.clock_off_ms().unwrap(), Some(298_000));
}

#[test]
fn the_first_exchange_of_a_phone_that_is_up_to_date_is_one_trip() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1), truck(2)]);
    let asked = phone.asks(at(2));
    let answered = shop.answers(&asked, at(2));
    let came = phone.hears(&asked, &answered, at(2));
    assert!(!came.more);
    let queue = crate::exchange::queue::open(phone.book.ledger(), at(2)).unwrap();
    assert_eq!(queue, crate::exchange::queue::Queue::new());
}

#[test]
fn a_phone_says_once_which_program_it_runs_and_again_to_a_hub_that_was_set_back() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let said = |asked: &Request, phone: &Phone| {
        let key = phone.book.ledger().own_key().public();
        open(&asked.bytes, |id| (key.id() == id).then_some(key)).unwrap().parcel.program
    };
    let device = phone.book.ledger().own_key().id().0;
    let kept = |shop: &Shop| {
        let rows = shop.ledger.store().programs().unwrap();
        rows.into_iter().find(|row| row.device == device).map(|row| (row.version, row.since_ms))
    };
    let own = crate::PROGRAM.to_owned();
    let first = phone.asks(at(10));
    assert_eq!(said(&first, &phone), Some(own.clone()));
    // An answer that is lost tells the phone nothing: it says so again.
    shop.answers(&first, at(10));
    let again = phone.asks(at(11));
    assert_eq!(said(&again, &phone), Some(own.clone()));
    let answered = shop.answers(&again, at(11));
    phone.hears(&again, &answered, at(11));
    assert_eq!(said(&phone.asks(at(12)), &phone), None);
    let (version, since) = kept(&shop).unwrap();
    assert_eq!((version, since), (own.clone(), at(10).unix_ms()));
    // The next version is told, and the day it came.
    shop.ledger.store_mut().keep_program(device, "0.0.9", at(12).unix_ms()).unwrap();
    crate::exchange::begin_epoch(&mut shop.ledger).unwrap();
    shop.exchanges(&mut phone, at(20));
    assert_eq!(kept(&shop).unwrap().0, "0.0.9", "the hub's new life is not known before its first answer");
    let after = phone.asks(at(21));
    assert_eq!(said(&after, &phone), Some(own.clone()));
    let answered = shop.answers(&after, at(21));
    phone.hears(&after, &answered, at(21));
    assert_eq!(kept(&shop), Some((own, at(21).unix_ms())));
}
