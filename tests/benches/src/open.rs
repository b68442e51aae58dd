//! Opening a phone's folder up to the first screen's data and up to that screen, with years of history and with none.

use std::path::Path;

use rusqlite::Connection;
use sumpbook_daybook::ledger::{Ledger, Root};
use sumpbook_daybook::screen::{Standing, TodayQuery, today};
use sumpbook_simulation::fleet::{
    BEGIN_MS, at, beginning, ledger_in, person, phone_key, root, shop_key, truck,
};

use crate::fleet_year::{DAYS, IDS_A_DAY, day_of};
use crate::said::{median, ratio, timed};

const UNITS: u32 = 5;
const YEARS: u32 = 5;
/// Working days of a phone of three weeks: Today looks two weeks back.
const WEEKS: u32 = 15;
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

/// Opens and makes the record of the screen Today at the end of the day `day`.
fn ours_to_today(folder: &Path, root: Root, day: u32) {
    let (ledger, _) = Ledger::open(folder, root, phone_key(1)).unwrap();
    let now = at(end_of(day));
    let screen = today(&ledger, &TodayQuery { person: person(0) }, &Standing::default(), now).unwrap();
    assert_eq!(screen.units.len(), usize::try_from(UNITS).unwrap());
}

/// The evening of working day `day`, as [`day_of`] counts them.
fn end_of(day: u32) -> i64 {
    BEGIN_MS + i64::from(day / 5 * 7 + day % 5) * 86_400_000 + 10 * 3_600_000
}

/// What that screen asks of the store, read and thrown away: the same rows by the same indexes.
fn bare_to_today(folder: &Path, day: u32) {
    let connection = bare(folder);
    let columns = "SELECT f.entry, e.id, u.truck, f.kind, f.at, f.day, f.person, f.hours, f.bears, f.judged
        FROM fact f JOIN entry e ON e.n = f.entry LEFT JOIN unit u ON u.no = f.unit WHERE";
    let read = |such: &str, values: &[&dyn rusqlite::ToSql]| {
        let mut query = connection.prepare_cached(&format!("{columns} {such}")).unwrap();
        let rows = query.query_map(values, |row| {
            Ok((
                row.get::<_, i64>(0)?,
                row.get::<_, [u8; 16]>(1)?,
                row.get::<_, u16>(3)?,
                row.get::<_, i64>(4)?,
            ))
        });
        rows.unwrap().map(Result::unwrap).count()
    };
    let drafts: i64 = connection.query_row("SELECT count(*) FROM draft", [], |row| row.get(0)).unwrap();
    assert_eq!(drafts, 0);
    let day = i32::try_from(end_of(day).div_euclid(86_400_000)).unwrap();
    let mine = connection.prepare_cached(
        "SELECT u.truck, max(f.at) FROM fact f JOIN unit u ON u.no = f.unit
         WHERE f.day BETWEEN ?1 AND ?2 AND f.person = ?3 GROUP BY f.unit",
    );
    let count = mine
        .unwrap()
        .query_map((day - 14, day, person(0).bytes()), |row| {
            Ok((row.get::<_, [u8; 16]>(0)?, row.get::<_, i64>(1)?))
        })
        .unwrap()
        .map(Result::unwrap)
        .count();
    assert!(count > 0);
    for unit in 0..UNITS {
        let mut number = connection.prepare_cached("SELECT no FROM unit WHERE truck = ?1").unwrap();
        let number: i64 = number.query_row([truck(unit).bytes()], |row| row.get(0)).unwrap();
        for day in day - 1..=day + 1 {
            read("f.day = ?2 AND f.unit = ?1 ORDER BY f.at, f.entry", &[&number, &day]);
        }
    }
}

/// The same rows, read and thrown away.
fn bare(folder: &Path) -> Connection {
    let connection = Connection::open(folder.join("book.db")).unwrap();
    connection.execute_batch("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL").unwrap();
    let fleet: Vec<u8> = connection.query_row("SELECT body FROM fleet", [], |row| row.get(0)).unwrap();
    assert!(!fleet.is_empty());
    let mut body = connection.prepare("SELECT body FROM unit WHERE truck = ?1 AND stale = 0").unwrap();
    for unit in 0..UNITS {
        let read: Vec<u8> = body.query_row([truck(unit).bytes()], |row| row.get(0)).unwrap();
        assert!(!read.is_empty());
    }
    drop(body);
    connection
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
    let weeks = folder.path().join("weeks");
    filled(&weeks, WEEKS);
    to_today([&long, &weeks], root);
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

/// The same up to the record of the screen itself.
fn to_today([long, weeks]: [&Path; 2], root: Root) {
    let last = DAYS * YEARS - 1;
    let (mut with, mut without, mut theirs) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..TIMES {
        with.push(timed(|| ours_to_today(long, root, last)).0);
        theirs.push(timed(|| bare_to_today(long, last)).0);
        without.push(timed(|| ours_to_today(weeks, root, WEEKS - 1)).0);
    }
    let with = median(with);
    ratio("opening to the screen Today, to bare reading of the same rows", with, median(theirs), BARE_LIMIT);
    ratio(
        &format!("opening to the screen Today, {YEARS} years to three weeks"),
        with,
        median(without),
        YEARS_LIMIT,
    );
}
