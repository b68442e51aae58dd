//! Recording an inspection durably, against the bare insert of the same bytes.

use rusqlite::Connection;
use sumpbook_simulation::fleet::{
    BEGIN_MS, beginning, entry, entry_id, ledger_in, of_truck, shop_key, truck,
};

use crate::fleet_year::walk;
use crate::said::{median, ratio, timed};

const TIMES: u32 = 400;
const LIMIT: f64 = 1.25;

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let mut ledger = ledger_in(&folder.path().join("ours"), shop_key(), 0);
    ledger.record(&beginning(5, &[1], 900_000), BEGIN_MS).unwrap();
    let bare = Connection::open(folder.path().join("bare.db")).unwrap();
    bare.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
         CREATE TABLE entry (n INTEGER PRIMARY KEY, bytes BLOB NOT NULL)",
    )
    .unwrap();
    let (mut ours, mut theirs, mut bytes) = (Vec::new(), Vec::new(), 0);
    for number in 0..TIMES {
        let at = BEGIN_MS + i64::from(number) * 60_000;
        let new = [of_truck(entry(entry_id(number), Some(truck(number % 5)), at, walk(number, false)))];
        let payload = new[0].entry.to_payload();
        bytes = payload.len();
        let mut turns = [true, false];
        if number % 2 == 1 {
            turns.reverse();
        }
        for turn in turns {
            if turn {
                ours.push(timed(|| ledger.record(&new, at).unwrap()).0);
            } else {
                let insert = || {
                    bare.prepare_cached("INSERT INTO entry (bytes) VALUES (?1)").unwrap().execute([&payload])
                };
                theirs.push(timed(|| insert().unwrap()).0);
            }
        }
    }
    ratio(&format!("durable record of an inspection ({bytes} bytes)"), median(ours), median(theirs), LIMIT);
}
