//! Opening a phone's folder up to the first screen's data, with years of history and with none.

use std::path::Path;

use rusqlite::Connection;
use sumpbook_daybook::ledger::{Ledger, Root};
use sumpbook_simulation::fleet::{BEGIN_MS, beginning, ledger_in, phone_key, root, shop_key, truck};

use crate::fleet_year::{DAYS, IDS_A_DAY, day_of};
use crate::said::{median, ratio, timed};

const UNITS: u32 = 5;
const YEARS: u32 = 5;
const TIMES: u32 = 60;
const BARE_LIMIT: f64 = 2.0;
const YEARS_LIMIT: f64 = 1.2;

fn filled(folder: &Path, days: u32) -> i64 {
    let mut ledger = ledger_in(folder, shop_key(), 0);
    ledger.record(&beginning(UNITS, &[1], 9_000_000), BEGIN_MS).unwrap();
    for day in 0..days.max(1) {
        let entries: Vec<_> =
            (0..UNITS).flat_map(|unit| day_of(unit, day, (day * UNITS + unit) * IDS_A_DAY)).collect();
        ledger.record(&entries, BEGIN_MS).unwrap();
    }
    ledger.settle().unwrap();
    ledger.store().truth().last_n().unwrap()
}

fn ours(folder: &Path, root: Root) {
    let (ledger, _) = Ledger::open(folder, root, phone_key(1)).unwrap();
    for unit in 0..UNITS {
        assert_eq!(ledger.unit_state(truck(unit)).unwrap().truck, truck(unit));
    }
}

/// The same rows, read and thrown away.
fn bare(folder: &Path) {
    let connection = Connection::open(folder.join("book.db")).unwrap();
    connection.execute_batch("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL").unwrap();
    let fleet: Vec<u8> = connection.query_row("SELECT body FROM fleet", [], |row| row.get(0)).unwrap();
    assert!(!fleet.is_empty());
    let mut body = connection.prepare("SELECT body FROM unit WHERE truck = ?1 AND stale = 0").unwrap();
    for unit in 0..UNITS {
        let read: Vec<u8> = body.query_row([truck(unit).bytes()], |row| row.get(0)).unwrap();
        assert!(!read.is_empty());
    }
}

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let (long, short) = (folder.path().join("long"), folder.path().join("short"));
    let entries = filled(&long, DAYS * YEARS);
    let few = filled(&short, 1);
    let (mut with, mut without, mut theirs) = (Vec::new(), Vec::new(), Vec::new());
    // The shop's public half stands in a phone's home; only the phone's own key is made ready at opening.
    let root = root();
    for _ in 0..TIMES {
        with.push(timed(|| ours(&long, root)).0);
        theirs.push(timed(|| bare(&long)).0);
        without.push(timed(|| ours(&short, root)).0);
    }
    let (with, without) = (median(with), median(without));
    ratio(
        &format!("opening to the first screen, {entries} entries, to bare reading"),
        with,
        median(theirs),
        BARE_LIMIT,
    );
    ratio(
        &format!("opening with {YEARS} years ({entries} entries) to none ({few})"),
        with,
        without,
        YEARS_LIMIT,
    );
}
