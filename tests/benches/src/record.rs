//! Recording an inspection durably, against the bare insert of the same bytes.

use std::path::Path;
use std::time::Duration;

use rusqlite::Connection;
use sumpbook_daybook::BookId;
use sumpbook_daybook::gate::{Actor, ChangeHash, DeviceKey, Place, change, sign};
use sumpbook_daybook::ledger::NewEntry;
use sumpbook_simulation::fleet::{
    BEGIN_MS, beginning, entry, entry_id, ledger_in, of_truck, root, shop_key, truck,
};

use crate::fleet_year::walk;
use crate::said::{median, ratio, timed};

/// Days of a phone: the program is opened, writes a day's entries and is closed, so its log begins anew.
const DAYS: u32 = 25;
const ENTRIES_A_DAY: u32 = 40;
/// One long run: the log has been full once and is written over, as in a program that is never closed.
const LONG_RUN: u32 = 3_000;
const LIMIT: f64 = 1.25;
/// Asks for the measurement alone.
pub(crate) const ALONE: &str = "record-alone";

/// The inspection number `number` and the bytes it is kept as.
fn inspection(number: u32) -> ([NewEntry; 1], Vec<u8>, i64) {
    let at = BEGIN_MS + i64::from(number) * 60_000;
    let new = of_truck(entry(entry_id(number), Some(truck(number % 5)), at, walk(number, false)));
    let payload = new.entry.to_payload();
    ([new], payload, at)
}

fn bare(folder: &Path) -> Connection {
    let bare = Connection::open(folder.join("bare.db")).unwrap();
    bare.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
         CREATE TABLE IF NOT EXISTS entry (n INTEGER PRIMARY KEY, bytes BLOB NOT NULL)",
    )
    .unwrap();
    bare
}

/// Signs an inspection and names its change, and keeps nothing: what no store can take away.
fn signed_and_named(key: &DeviceKey, new: &NewEntry, seq: u64, before: ChangeHash) -> ChangeHash {
    let place = Place {
        fleet: root().fleet,
        book: BookId::Truck { truck: new.truck.unwrap(), year: 2026 },
        actor: Actor::new(key.id()).unwrap(),
        seq,
        deps: vec![before],
        id: new.entry.id,
    };
    let payload = new.entry.to_payload();
    let signature = sign::sign(&place, &payload, key).unwrap();
    let value = sign::cose(&payload, &signature).unwrap();
    let parts =
        change::Parts { actor: place.actor, seq, op: seq, deps: &place.deps, id: place.id, value: &value };
    change::build(parts).unwrap().hash
}

/// Times of `count` entries from number `first` on, by turns: ours, bare, and signing and naming without a store.
fn session(folder: &Path, first: u32, count: u32) -> [Vec<Duration>; 3] {
    let mut ledger = ledger_in(&folder.join("ours"), shop_key(), 0);
    let bare = bare(folder);
    let key = shop_key();
    let mut before = ChangeHash([0; 32]);
    let mut times = [Vec::new(), Vec::new(), Vec::new()];
    for number in first..first + count {
        let (new, payload, at) = inspection(number);
        let (took, hash) = timed(|| signed_and_named(&key, &new[0], u64::from(number) + 2, before));
        before = hash;
        times[2].push(took);
        for turn in 0..2 {
            if (number + turn) % 2 == 0 {
                times[0].push(timed(|| ledger.record(&new, at).unwrap()).0);
            } else {
                let insert = || {
                    bare.prepare_cached("INSERT INTO entry (bytes) VALUES (?1)").unwrap().execute([&payload])
                };
                times[1].push(timed(|| insert().unwrap()).0);
            }
        }
    }
    times
}

pub(crate) fn run() {
    measure();
    with_a_flush_of_a_millisecond();
}

/// The same once more where each flush takes a millisecond longer, for both: what is measured first hangs on how
/// little this disk's flush costs. A telephone's flash takes a millisecond and more (from memory).
fn with_a_flush_of_a_millisecond() {
    println!("the same, each flush a millisecond longer:");
    let again = std::env::current_exe().and_then(|own| {
        std::process::Command::new("strace")
            .args(["-f", "--seccomp-bpf", "-e", "trace=fsync,fdatasync"])
            .args(["-e", "inject=fsync,fdatasync:delay_exit=1000", "-o", "/dev/null"])
            .arg(own)
            .arg(ALONE)
            .status()
    });
    match again {
        Ok(status) if status.success() => {}
        Ok(status) => println!("  skipped: strace ended with {status}"),
        Err(reason) => println!("  skipped: strace, which delays the flush, did not start: {reason}"),
    }
}

/// Says the ratios on this disk as it is.
pub(crate) fn measure() {
    let folder = tempfile::tempdir().unwrap();
    ledger_in(&folder.path().join("ours"), shop_key(), 0)
        .record(&beginning(5, &[1], 900_000), BEGIN_MS)
        .unwrap();
    let bytes = inspection(0).1.len();
    let mut days = [Vec::new(), Vec::new(), Vec::new()];
    for day in 0..DAYS {
        for (all, times) in days.iter_mut().zip(session(folder.path(), day * ENTRIES_A_DAY, ENTRIES_A_DAY)) {
            all.extend(times);
        }
    }
    let [ours, theirs, alone] = days.map(median);
    ratio(&format!("durable record of an inspection ({bytes} bytes), days of a phone"), ours, theirs, LIMIT);
    ratio(
        "of it, what no store takes away: signing, naming, and the bare insert",
        theirs + alone,
        theirs,
        LIMIT,
    );
    let long = session(folder.path(), DAYS * ENTRIES_A_DAY, LONG_RUN);
    let half = usize::try_from(LONG_RUN / 2).unwrap();
    let [ours, theirs, alone] = long.map(|times| median(times.into_iter().skip(half).collect()));
    ratio("the same in a program that was never closed since", ours, theirs, LIMIT);
    ratio("of it, what no store takes away", theirs + alone, theirs, LIMIT);
}
