//! Phones that hand in a day at one hub: how many a second, how long an acknowledgement takes, and what memory a
//! hub of 5,000 units takes. Against a plain log that checks the same signatures and commits the same way, and
//! against a sync server of the same documents as its own packages make one.
//!
//! Hub and plain log stand behind the same TLS and HTTP on this machine; requests are made before the clock runs,
//! because on a phone that is the phone's work.

mod plain_log;
mod sync_server;

use std::collections::VecDeque;
use std::path::Path;
use std::sync::Mutex;
use std::time::{Duration, Instant};

use sumpbook_daybook::exchange::{Door, Request, follow_trucks, request, respond, take_answer};
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_daybook::phone::online::Hub as Way;
use sumpbook_daybook::store::HeldEntry;
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::{
    BEGIN_MS, at, beginning, entry, entry_id, ledger_in, of_truck, root, shop_key, truck,
};
use sumpbook_trade::record::Digest;

use crate::hub::{enrolled, key_of};
use crate::hub_process::HubProcess;
use crate::said::{at_least, at_most, median, timed};

const PHONES: u32 = 500;
const ENTRIES: u32 = 40;
const UNITS: u32 = 5_000;
/// Phones that wait for an answer at one moment.
const HANDS: usize = 32;
const LOG_GOAL: f64 = 0.7;
const SYNC_GOAL: f64 = 10.0;
const MEMORY_LIMIT: u64 = 100 * 1024 * 1024;

/// A day as phone `number` recorded it.
fn day(number: u32) -> Vec<NewEntry> {
    (0..ENTRIES)
        .map(|n| {
            let id = entry_id(number * ENTRIES + n);
            of_truck(entry(id, Some(truck(number)), BEGIN_MS + i64::from(n) * 60_000, section(n, &[])))
        })
        .collect()
}

/// What a phone wrote itself.
fn own(phone: &Ledger) -> Vec<HeldEntry> {
    let truth = phone.store().truth();
    let own = phone.own_key().id();
    truth.books().unwrap().into_iter().flat_map(|book| truth.of_signer(book, own).unwrap()).collect()
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
        "{name}: {PHONES} phones with {ENTRIES} entries each in {:.2?}, {rate:.0} phones/s; \
         an acknowledgement: median {:.1?}, p99 {p99:.1?}",
        took.whole,
        median(each)
    );
    rate
}

/// The shop's folder with its fleet, and that of a phone which has heard all of it.
fn fleet(shop: &Path, phone: &Path) {
    std::fs::create_dir_all(shop).unwrap();
    std::fs::write(shop.join("shop.key"), format!("{}\n", Digest(*shop_key().secret()))).unwrap();
    std::fs::write(shop.join("fleet.id"), format!("{}\n", root().fleet)).unwrap();
    let (mut ledger, _) = Ledger::open(shop, root(), shop_key()).unwrap();
    ledger.record(&beginning(UNITS, &[], 900_000_000), BEGIN_MS).unwrap();
    ledger.record(&enrolled(UNITS, 800_000_000), BEGIN_MS).unwrap();
    ledger.settle().unwrap();
    let mut heard = ledger_in(phone, key_of(UNITS - 1), 0);
    // Beforehand: a fleet of this size is given by a file, and is not what is measured.
    let rows = ledger.store().truth().of_book(sumpbook_daybook::book::BookId::Fleet).unwrap();
    let parts: Vec<_> =
        rows.iter().map(|held| sumpbook_daybook::ledger::Incoming::of_row(root().fleet, &held.row)).collect();
    heard.admit(&parts, BEGIN_MS, Some(root().shop.id().0)).unwrap();
    let door = Door { challenge: &|_| true, token: &|_| None };
    loop {
        let asked = request(&mut heard, [0; 16], at(BEGIN_MS)).unwrap();
        let answered = respond(&mut ledger, &asked.bytes, &door, at(BEGIN_MS)).unwrap();
        if !take_answer(&mut heard, asked.digest, &answered.bytes, at(BEGIN_MS), at(BEGIN_MS)).unwrap().more {
            break;
        }
    }
    heard.settle().unwrap();
}

/// One phone with its day and what it asks the hub.
struct Phone {
    ledger: Option<Ledger>,
    asked: Request,
    plain: Vec<u8>,
    day: Vec<u8>,
}

/// Phone `number`: a copy of what `heard` has, as this phone, with a day recorded.
fn phone(number: u32, heard: &Path, folder: &Path, challenge: [u8; 16]) -> Phone {
    std::fs::create_dir_all(folder).unwrap();
    std::fs::copy(heard.join("book.db"), folder.join("book.db")).unwrap();
    let (mut ledger, _) = Ledger::open(folder, root(), key_of(number)).unwrap();
    follow_trucks(&mut ledger, &[truck(number)], at(BEGIN_MS)).unwrap();
    ledger.record(&day(number), BEGIN_MS).unwrap();
    let asked = request(&mut ledger, challenge, at(BEGIN_MS)).unwrap();
    assert_eq!(asked.entries, ENTRIES as usize);
    let plain = plain_log::body(&ledger);
    let day = sync_server::day(&ledger);
    // A few look at their answers; of the others only what they send is kept.
    let ledger = (number < 5).then_some(ledger);
    if ledger.is_none() {
        std::fs::remove_dir_all(folder).unwrap();
    }
    Phone { ledger, asked, plain, day }
}

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let (shop, heard) = (folder.path().join("shop"), folder.path().join("phone"));
    let (took, ()) = timed(|| fleet(&shop, &heard));
    println!("phones: a fleet of {UNITS} units with a phone each, made in {took:.1?}");
    let mut hub = HubProcess::begin(&shop);
    let at_rest = hub.memory();
    let mut phones: Vec<Phone> = (0..PHONES)
        .map(|number| phone(number, &heard, &folder.path().join(number.to_string()), hub.challenge()))
        .collect();
    let bodies: Vec<Vec<u8>> = phones.iter().map(|phone| phone.asked.bytes.clone()).collect();
    let worked = hub.processor_time();
    let (took, answers) = drive(&hub.address, &bodies);
    let ours = said("hub", &took);
    let worked = hub.processor_time() - worked;
    println!("hub: its own processor time {worked:.2?}");
    at_most(
        &format!("hub: most memory while {PHONES} of {UNITS} phones exchange"),
        hub.memory(),
        MEMORY_LIMIT,
    );
    println!("hub: at rest before {:.1} MiB", at_rest as f64 / 1_048_576.0);
    for (phone, answer) in phones.iter_mut().zip(&answers) {
        if let Some(ledger) = &mut phone.ledger {
            let came = take_answer(ledger, phone.asked.digest, answer, at(BEGIN_MS), at(BEGIN_MS)).unwrap();
            assert!(came.taken.receipt, "{came:?}");
        }
    }
    hub.stop();

    let threads = tokio::runtime::Runtime::new().unwrap();
    let log = plain_log::PlainLog::begin(&threads, &shop);
    let days: Vec<Vec<u8>> = phones.iter().map(|phone| phone.plain.clone()).collect();
    let (took, _) = drive(&log.address, &days);
    let theirs = said("plain signed log", &took);
    log.stop(&threads);
    at_least("phones a second, hub to a plain signed log", ours / theirs, LOG_GOAL);

    let days: Vec<u8> = phones.iter().flat_map(|phone| phone.day.clone()).collect();
    match sync_server::drive(folder.path(), &days, PHONES, ENTRIES, HANDS) {
        Ok(theirs) => {
            at_least(
                "phones a second, hub to a sync server of documents",
                ours / theirs.by_the_clock,
                SYNC_GOAL,
            );
            let ours = f64::from(PHONES) / worked.as_secs_f64();
            println!(
                "the same by their own processor time alone: {ours:.0} to {:.0} = {:.2}",
                theirs.by_its_work,
                ours / theirs.by_its_work
            );
        }
        Err(why) => println!("phones a second, hub to a sync server of documents: skipped, {why}"),
    }
}
