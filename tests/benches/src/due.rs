//! The due list of 10,000 units, each with 200 readings to forecast from: every task of each as it stands, in the order
//! of the list.

use std::time::Duration;

use sumpbook_shop::due::due_list;
use sumpbook_simulation::fleet::{BEGIN_MS, beginning, ledger_in, shop_key, truck};

use crate::fleet_year::{IDS_A_DAY, day_of, reading_of};
use crate::said::{median, processor_time, time, timed};

const UNITS: u32 = 10_000;
/// Working days on which the meter alone is read, and when: with the days after them 200 readings a unit and a few.
const READ_DAYS: std::ops::Range<u32> = 9..58;
const READ_AT: [(i64, i64); 4] = [(100, 8), (200, 16), (300, 24), (400, 31)];
/// Working days that are recorded whole; the first service of each unit comes on the last but two.
const DAYS: std::ops::Range<u32> = 58..63;
const TIMES: u32 = 5;
const LIMIT: Duration = Duration::from_secs(1);

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let mut ledger = ledger_in(folder.path(), shop_key(), 0);
    ledger.record(&beginning(UNITS, &[1], 900_000_000), BEGIN_MS).unwrap();
    for day in READ_DAYS {
        let read = |unit| READ_AT.map(|(minute, rise)| reading_of(unit, day, minute, rise));
        let entries: Vec<_> = (0..UNITS).flat_map(read).collect();
        ledger.record(&entries, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
    }
    for day in DAYS {
        let entries: Vec<_> =
            (0..UNITS).flat_map(|unit| day_of(unit, day, (day * UNITS + unit) * IDS_A_DAY)).collect();
        ledger.record(&entries, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
    }
    let entries = ledger.store().truth().last_n().unwrap();
    let (settled, done) = timed(|| ledger.settle());
    done.unwrap();
    println!("due: {entries} entries of {UNITS} units, folded in {settled:.1?}");
    let read = ledger.hours_ledger(truck(UNITS / 2), i64::MAX).unwrap().accepted().count();
    assert!(read >= 200, "{read} readings a unit");
    let now = sumpbook_trade::Stamp::from_parts(BEGIN_MS + 100 * 86_400_000, 0).unwrap();
    let mut rows = 0;
    let (mut each, before) = (Vec::new(), processor_time());
    for _ in 0..TIMES {
        let (took, list) = timed(|| due_list(&ledger, now).unwrap());
        rows = list.count;
        each.push(took);
    }
    let own = (processor_time() - before) / TIMES;
    let forecast = due_list(&ledger, now).unwrap().rows.iter().filter(|row| row.forecast.is_some()).count();
    println!("due: {read} readings a unit, {forecast} rows with a forecast");
    assert!(forecast >= UNITS as usize, "every unit has a forecast");
    let what = format!(
        "due: the list of {UNITS} units, {rows} tasks, forecast from {read} readings each (processor time {own:.2?})"
    );
    time(&what, median(each), LIMIT);
}
