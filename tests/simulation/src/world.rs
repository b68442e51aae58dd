//! The shop and three phones, and everything that may happen between them.

use sumpbook_daybook::book::BookId;
use sumpbook_daybook::ledger::{Admission, Incoming, Ledger, NewEntry};
use sumpbook_trade::record::{BookHead, DeviceRevoked, Digest};
use sumpbook_trade::{EntryId, Fact};

use crate::entries::{About, by_phone, by_shop, of_fleet_book, pick};
use crate::fleet::{
    BEGIN_MS, beginning, enrolled, entry, entry_id, ledger_in_memory, of_fleet, of_truck, phone_key, restart,
    root, shop_key, truck,
};

/// One thing that happens: who, what, and three numbers that say how.
pub type Step = (u8, u8, u32, u32, u32);

/// Trucks in this world.
pub const TRUCKS: u32 = 2;
/// Ledgers in this world: the shop is the first.
pub const HANDS: usize = 4;
/// Ids that steps draw from; small, so that entries are often about one another.
const IDS: u32 = 40;
/// Ids of the shop's first entries lie beyond those.
const FIRST: u32 = 1_000;

/// The shop (0) and phones 1 to 3. Phone 3 is enrolled only when the shop says so.
pub struct World {
    /// Their ledgers.
    pub hands: Vec<Ledger>,
    /// Entries that came before what they need, as they came.
    waiting: Vec<Vec<Incoming>>,
    now_ms: i64,
    starts: u64,
    fresh: u32,
}

impl Default for World {
    fn default() -> World {
        World::new()
    }
}

impl World {
    /// Everyone with the shop's first entries.
    pub fn new() -> World {
        let mut hands = vec![ledger_in_memory(shop_key(), 0)];
        hands.extend((1..HANDS as u8).map(|number| ledger_in_memory(phone_key(number), 0)));
        hands[0].record(&beginning(TRUCKS, &[1, 2], FIRST), BEGIN_MS).unwrap();
        let mut world = World {
            hands,
            waiting: vec![Vec::new(); HANDS],
            now_ms: BEGIN_MS,
            starts: 0,
            fresh: FIRST + 100,
        };
        for to in 1..HANDS {
            let first = world.sent(0, 0, i64::MAX);
            world.give(to, &first);
        }
        world
    }

    /// Does one step.
    pub fn step(&mut self, (who, what, a, b, c): Step) {
        // Mostly minutes, now and then a day or a year's turn.
        self.now_ms += match a % 23 {
            0 => 86_400_000,
            1 => 40 * 86_400_000,
            _ => i64::from(a % 7_000) * 1_000,
        };
        let hand = who as usize % HANDS;
        match what % 20 {
            0..=8 => self.record_by(hand, what, a, b, c),
            9 => self.fleet_change(what, a, b, c),
            10 => self.enrol_last(),
            11 if c.is_multiple_of(3) => self.revoke(1 + (a % 2) as u8),
            12 => {
                self.starts += 1;
                restart(&mut self.hands[hand], self.starts);
            }
            _ => self.pass(hand, b as usize % HANDS, a, c),
        }
    }

    fn record_by(&mut self, hand: usize, what: u8, a: u32, b: u32, c: u32) {
        let about = About {
            target: self.target(b),
            other: self.target(c),
            number: c,
            meter: 12_000 + (self.now_ms - BEGIN_MS) / 3_600_000,
            elsewhere: truck((a + 1) % TRUCKS),
        };
        // A clock may be wrong by days, and an id may be one that stands already.
        let wrong = if c.is_multiple_of(17) { -3 * 86_400_000 } else { 0 };
        let id = if b.is_multiple_of(5) { entry_id(c % IDS) } else { self.new_id(a, b) };
        let mut new =
            entry(id, Some(truck(a % TRUCKS)), self.now_ms + wrong, crate::entries::section(0, &[]));
        new.person = Some(crate::fleet::person(c % 3));
        match hand {
            0 if !c.is_multiple_of(4) => by_shop(&mut new, (a % 251) as u8, about),
            _ => by_phone(&mut new, (a % 251) as u8, about),
        }
        let mut new = of_truck(new);
        if what == 0 && b.is_multiple_of(3) {
            // About one unit, in another's book.
            new.truck = Some(about.elsewhere);
        }
        self.record(hand, new);
    }

    fn new_id(&mut self, a: u32, b: u32) -> EntryId {
        // Most ids are from the drawn range, so that a target named earlier does come.
        if (a ^ b).is_multiple_of(3) {
            self.fresh += 1;
            return entry_id(self.fresh);
        }
        entry_id((a ^ b) % IDS)
    }

    fn target(&self, number: u32) -> EntryId {
        if number.is_multiple_of(19) {
            // One of the shop's own.
            return entry_id(FIRST + number % 12);
        }
        entry_id(number % IDS)
    }

    fn fleet_change(&mut self, what: u8, a: u32, b: u32, c: u32) {
        let fact = match c % 8 {
            // A decision about a matter of the fleet.
            0 => {
                let mut about = entry(entry_id(0), None, self.now_ms, enrolled(1));
                let target = self.target(b);
                let elsewhere = truck(0);
                by_shop(&mut about, 2, About { target, other: target, number: a, meter: 0, elsewhere });
                about.fact
            }
            _ => of_fleet_book(what.wrapping_add(b as u8), c, TRUCKS),
        };
        self.fresh += 1;
        let id = entry_id(self.fresh);
        // Now and then someone else writes what only the shop may write.
        let hand = if a.is_multiple_of(9) { 1 } else { 0 };
        self.record(hand, of_fleet(id, self.now_ms, fact));
    }

    fn enrol_last(&mut self) {
        self.fresh += 1;
        let id = entry_id(self.fresh);
        self.record(0, of_fleet(id, self.now_ms, enrolled(3)));
    }

    /// The shop stops a phone at the heads it holds of every book.
    fn revoke(&mut self, phone: u8) {
        let truth = self.hands[0].store().truth();
        let mut books = Vec::new();
        for book in truth.books().unwrap() {
            let heads = truth.heads(book).unwrap().into_iter().map(|head| Digest(head.0)).collect();
            books.push(match book {
                BookId::Fleet => BookHead { truck: None, year: None, heads },
                BookId::Truck { truck, year } => BookHead { truck: Some(truck), year: Some(year), heads },
            });
        }
        let key = Digest(phone_key(phone).public().bytes());
        let fact: Fact = DeviceRevoked { key, books, why: "lost".to_owned() }.into();
        self.fresh += 1;
        let id = entry_id(self.fresh);
        self.record(0, of_fleet(id, self.now_ms, fact));
    }

    fn record(&mut self, hand: usize, new: NewEntry) {
        self.hands[hand].record(&[new], self.now_ms).unwrap();
    }

    fn sent(&self, from: usize, after: i64, most: i64) -> Vec<Incoming> {
        let truth = self.hands[from].store().truth();
        let rows = truth.between(after, i64::MAX, most).unwrap();
        rows.iter().map(|held| Incoming::of_row(root().fleet, &held.row)).collect()
    }

    /// A part of what one holds comes to another: cut anywhere, out of order, some of it twice.
    fn pass(&mut self, from: usize, to: usize, a: u32, c: u32) {
        let last = self.hands[from].store().truth().last_n().unwrap();
        let after = i64::from(a) % (last + 1);
        let mut parts = self.sent(from, if c.is_multiple_of(2) { 0 } else { after }, 1 + i64::from(c % 40));
        shuffle(&mut parts, c);
        if c.is_multiple_of(5) {
            let again: Vec<_> = parts.iter().take(3).cloned().collect();
            parts.extend(again);
        }
        let split = a as usize % (parts.len() + 1);
        let rest = parts.split_off(split);
        self.give(to, &parts);
        self.give(to, &rest);
    }

    /// Gives entries to one; what must wait is tried again after each that came in.
    pub fn give(&mut self, to: usize, parts: &[Incoming]) {
        let mut open = std::mem::take(&mut self.waiting[to]);
        open.extend(parts.iter().cloned());
        self.waiting[to] = settle_in(&mut self.hands[to], open, self.now_ms);
    }

    /// Everyone gets everything, each in another order.
    pub fn meet(&mut self, order: u32) {
        self.enrol_last();
        for round in 0..2 {
            for from in 0..HANDS {
                let mut all = self.sent(from, 0, i64::MAX);
                for to in (0..HANDS).filter(|to| *to != from) {
                    shuffle(&mut all, order.wrapping_add((round * HANDS + from * 7 + to) as u32));
                    self.give(to, &all);
                }
            }
        }
    }

    /// Everything one holds, in an order of its own.
    pub fn all_of(&self, hand: usize, order: Option<u32>) -> Vec<Incoming> {
        let mut all = self.sent(hand, 0, i64::MAX);
        if let Some(order) = order {
            shuffle(&mut all, order);
        }
        all
    }
}

/// Admits what can be admitted, again and again, until nothing more comes in. Returns what still waits.
pub fn settle_in(ledger: &mut Ledger, mut open: Vec<Incoming>, now_ms: i64) -> Vec<Incoming> {
    loop {
        let told = ledger.admit(&open, now_ms, None).unwrap();
        let before = open.len();
        let mut still = Vec::new();
        for (part, admission) in open.into_iter().zip(told) {
            match admission {
                Admission::Waiting { .. } => still.push(part),
                Admission::Admitted(_) | Admission::Known(_) => {}
                Admission::Refused(why) => panic!("an honest entry was refused: {why}"),
            }
        }
        if still.is_empty() || still.len() == before {
            return still;
        }
        open = still;
    }
}

/// The same numbers in another order, the same in every run (Fisher and Yates, a multiplicative generator).
pub fn shuffle<T>(items: &mut [T], order: u32) {
    let mut state = u64::from(order) | 1 << 40;
    for last in (1..items.len()).rev() {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        items.swap(last, (state >> 33) as usize % (last + 1));
    }
}

/// One of the hands that is not the shop.
pub fn some_phone(number: u32) -> usize {
    pick(&[1, 2, 3], number)
}
