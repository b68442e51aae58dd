//! A day's exchange: its bodies against the bare signed entries, its cost with ten years of history against one,
//! and what it takes after a phone lost all it remembered of earlier exchanges.

use std::path::Path;
use std::time::Duration;

use rusqlite::Connection;
use sumpbook_daybook::exchange::{Door, follow_trucks, request, respond, take_answer};
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::{
    BEGIN_MS, at, beginning, entry, entry_id, ledger_in, of_truck, phone_key, restart, shop_key, truck,
};
use sumpbook_trade::Fact;
use sumpbook_trade::record::{HourReading, How, Meter, StartAir};

use crate::exchange_headers;
use crate::fleet_year::{DAYS, IDS_A_DAY, day_of, walk};
use crate::said::{bytes, median, ratio, timed};

const TRUCKS: u32 = 10;
const ENTRIES: u32 = 40;
const STARTS: u32 = 4;
const BODIES_LIMIT: f64 = 1.1;
const YEARS_LIMIT: f64 = 1.1;
const TIMES: u32 = 41;
const CHALLENGE: [u8; 16] = [7; 16];

/// What an exchange took.
#[derive(Default)]
struct Took {
    up: usize,
    down: usize,
    trips: usize,
}

fn exchange(shop: &mut Ledger, phone: &mut Ledger, ms: i64) -> Took {
    let door = Door { challenge: &|given| *given == CHALLENGE, token: &|_| None };
    let (mut took, now) = (Took::default(), at(ms));
    loop {
        let asked = request(phone, CHALLENGE, now).unwrap();
        let answered = respond(shop, &asked.bytes, &door, now).unwrap();
        let came = take_answer(phone, asked.digest, &answered.bytes, now, now).unwrap();
        took.trips += 1;
        took.up += asked.bytes.len();
        took.down += answered.bytes.len();
        if !came.more {
            return took;
        }
    }
}

/// A shop and a phone in folders, both with so many days of ten trucks.
fn with_history(folder: &Path, days: u32) -> (Ledger, Ledger) {
    let mut shop = ledger_in(&folder.join("shop"), shop_key(), 0);
    shop.record(&beginning(TRUCKS, &[1], 9_000_000), BEGIN_MS).unwrap();
    for day in 0..days {
        let entries: Vec<NewEntry> =
            (0..TRUCKS).flat_map(|unit| day_of(unit, day, (day * TRUCKS + unit) * IDS_A_DAY)).collect();
        shop.record(&entries, BEGIN_MS).unwrap();
    }
    let mut phone = ledger_in(&folder.join("phone"), phone_key(1), 0);
    let trucks: Vec<_> = (0..TRUCKS).map(truck).collect();
    let ms = end_of(days);
    follow_trucks(&mut phone, &trucks, at(ms)).unwrap();
    exchange(&mut shop, &mut phone, ms);
    (shop, phone)
}

fn end_of(days: u32) -> i64 {
    BEGIN_MS + i64::from(days / 5 * 7 + days % 5) * 86_400_000
}

/// A driver's day: so many entries about `trucks` trucks, after a start of the program each quarter of it.
fn day(phone: &mut Ledger, days: u32, number: u32, trucks: u32, first_id: u32, walks: bool) -> Vec<NewEntry> {
    let mut all = Vec::new();
    for index in 0..ENTRIES {
        if index % (ENTRIES / STARTS) == 0 {
            restart(phone, u64::from(number * STARTS + index / (ENTRIES / STARTS)) + 1);
        }
        let ms = end_of(days) + i64::from(number) * 86_400_000 + i64::from(index) * 600_000;
        let reading = HourReading {
            meter: Meter::Compressor,
            figure: sumpbook_trade::Tenths(20_000 + i64::from(index)),
            how: How::Asked,
            kept_when_asked: false,
            photo: None,
        };
        let fact: Fact = match index % 10 {
            0 if walks => walk(index, false).into(),
            1 => section(index % 6, &[]).into(),
            2 | 5 => StartAir { steps: Vec::new(), in_spite_of_lock: None }.into(),
            _ => reading.into(),
        };
        let id = entry_id(first_id + number * ENTRIES + index);
        let new = of_truck(entry(id, Some(truck(index % trucks)), ms, fact));
        phone.record(std::slice::from_ref(&new), ms).unwrap();
        all.push(new);
    }
    all
}

/// The day's entries as they are signed, one after another, compressed as far as zstd goes in practice.
fn bare(phone: &Ledger, entries: &[NewEntry]) -> usize {
    let mut raw = Vec::new();
    for new in entries {
        for held in phone.store().truth().by_id(new.entry.id).unwrap() {
            raw.extend(&held.row.payload);
            raw.extend(held.row.signature);
        }
    }
    zstd::bulk::compress(&raw, 19).unwrap().len()
}

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let (short, long) = (folder.path().join("short"), folder.path().join("long"));
    let (mut shop, mut phone) = with_history(&short, DAYS);
    let mut number = 0;
    for (what, trucks, walks) in [
        ("one truck, readings and answers", 1, false),
        ("one truck, with whole walks", 1, true),
        ("three trucks, with whole walks", 3, true),
        ("ten trucks, with whole walks", 10, true),
    ] {
        let entries = day(&mut phone, DAYS, number, trucks, 10_000_000, walks);
        let raw = bare(&phone, &entries);
        let ms = end_of(DAYS) + i64::from(number + 1) * 86_400_000;
        let took = exchange(&mut shop, &mut phone, ms);
        number += 1;
        let both = took.up + took.down;
        bytes(
            &format!(
                "exchange: bodies of a day, {what}, {} up {} down in {} trip(s), to zstd-19 of {ENTRIES} signed entries",
                took.up, took.down, took.trips
            ),
            both,
            raw,
            BODIES_LIMIT,
        );
    }
    let entries = day(&mut phone, DAYS, number, 1, 10_000_000, true);
    let raw = bare(&phone, &entries);
    drop(shop);
    let ms = end_of(DAYS) + i64::from(number + 1) * 86_400_000;
    exchange_headers::run(&short.join("shop"), &mut phone, at(ms), raw);
    number += 1;
    let mut shop = ledger_in(&short.join("shop"), shop_key(), 700_000);
    lost(&short, &mut shop, &mut phone, number);
    let (mut old_shop, mut old_phone) = with_history(&long, DAYS * 10);
    println!(
        "exchange: {} entries with ten years, {} with one",
        old_phone.store().truth().last_n().unwrap(),
        phone.store().truth().last_n().unwrap()
    );
    let (mut ten, mut one): (Vec<Duration>, Vec<Duration>) = (Vec::new(), Vec::new());
    let (mut ten_bytes, mut one_bytes) = (0, 0);
    for turn in 0..TIMES {
        for old in [turn % 2 == 0, turn % 2 == 1] {
            let (shop, phone, days) = match old {
                true => (&mut old_shop, &mut old_phone, DAYS * 10),
                false => (&mut shop, &mut phone, DAYS),
            };
            day(phone, days, number + 10 + turn, 3, 20_000_000, true);
            let ms = end_of(days) + i64::from(number + 11 + turn) * 86_400_000;
            let (took, sent) = timed(|| exchange(shop, phone, ms));
            match old {
                true => {
                    ten.push(took);
                    ten_bytes += sent.up + sent.down;
                }
                false => {
                    one.push(took);
                    one_bytes += sent.up + sent.down;
                }
            }
        }
    }
    ratio(
        "exchange: time of a day's exchange, both sides, ten years of history to one",
        median(ten),
        median(one),
        YEARS_LIMIT,
    );
    bytes("exchange: its bodies, ten years to one", ten_bytes, one_bytes, YEARS_LIMIT);
}

/// The same day twice: in order, and by a phone that lost its settings and receipts, from copies of both folders.
fn lost(folder: &Path, shop: &mut Ledger, phone: &mut Ledger, number: u32) {
    let ms = end_of(DAYS) + i64::from(number + 1) * 86_400_000;
    for (what, trucks) in [("one truck's book", 1), ("ten trucks' books", TRUCKS)] {
        exchange(shop, phone, ms);
        let first = 30_000_000 + trucks * 1_000;
        day(phone, DAYS, number, trucks, first, true);
        let theirs: Vec<NewEntry> = (0..trucks)
            .map(|unit| {
                let fact = StartAir { steps: Vec::new(), in_spite_of_lock: None };
                of_truck(entry(entry_id(first + 500 + unit), Some(truck(unit)), ms, fact))
            })
            .collect();
        shop.record(&theirs, ms).unwrap();
        let mut took = Vec::new();
        for forgets in [false, true] {
            let copy = folder.join(format!("copy-{trucks}-{forgets}"));
            for half in ["shop", "phone"] {
                std::fs::create_dir_all(copy.join(half)).unwrap();
                let from = Connection::open(folder.join(half).join("book.db")).unwrap();
                let to = copy.join(half).join("book.db");
                from.execute("VACUUM INTO ?1", [to.to_string_lossy()]).unwrap();
                if forgets && half == "phone" {
                    Connection::open(&to)
                        .unwrap()
                        .execute_batch("DELETE FROM setting; DELETE FROM receipt")
                        .unwrap();
                }
            }
            let mut shop = ledger_in(&copy.join("shop"), shop_key(), 900_000);
            let mut phone = ledger_in(&copy.join("phone"), phone_key(1), 900_000);
            took.push(exchange(&mut shop, &mut phone, ms));
            for unit in 0..TRUCKS {
                let book = sumpbook_daybook::book::BookId::Truck { truck: truck(unit), year: 2027 };
                assert_eq!(
                    shop.store().truth().heads(book).unwrap(),
                    phone.store().truth().heads(book).unwrap()
                );
            }
        }
        let [plain, after] = took.as_slice() else { continue };
        let (more, trips) = ((after.up + after.down) - (plain.up + plain.down), after.trips - plain.trips);
        let verdict = if more <= 2_048 && trips <= 3 { "within" } else { "over" };
        println!(
            "exchange: after losing its sync state, {what} changed on both sides: {more} bytes and {trips} trips more than the delta ({} bytes), limit 2048 and 3: {verdict}",
            plain.up + plain.down
        );
    }
}
