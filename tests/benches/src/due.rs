//! The due list of 10,000 units: every task of each as it stands, in the order of the list.

use std::time::Duration;

use sumpbook_shop::due::due_list;
use sumpbook_simulation::fleet::{BEGIN_MS, beginning, ledger_in, shop_key};

use crate::fleet_year::{IDS_A_DAY, day_of};
use crate::said::{median, processor_time, time, timed};

const UNITS: u32 = 10_000;
/// Working days that are recorded; the first service of each unit comes on the last but two.
const DAYS: std::ops::Range<u32> = 58..63;
const TIMES: u32 = 5;
const LIMIT: Duration = Duration::from_secs(1);

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let mut ledger = ledger_in(folder.path(), shop_key(), 0);
    ledger.record(&beginning(UNITS, &[1], 900_000_000), BEGIN_MS).unwrap();
    for day in DAYS {
        let entries: Vec<_> =
            (0..UNITS).flat_map(|unit| day_of(unit, day, (day * UNITS + unit) * IDS_A_DAY)).collect();
        ledger.record(&entries, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
    }
    let entries = ledger.store().truth().last_n().unwrap();
    let (settled, done) = timed(|| ledger.settle());
    done.unwrap();
    println!("due: {entries} entries of {UNITS} units, folded in {settled:.1?}");
    let now = sumpbook_trade::Stamp::from_parts(BEGIN_MS + 100 * 86_400_000, 0).unwrap();
    let mut rows = 0;
    let (mut each, before) = (Vec::new(), processor_time());
    for _ in 0..TIMES {
        let (took, list) = timed(|| due_list(&ledger, now).unwrap());
        rows = list.count;
        each.push(took);
    }
    let own = (processor_time() - before) / TIMES;
    let what = format!("due: the list of {UNITS} units, {rows} tasks (processor time {own:.2?})");
    time(&what, median(each), LIMIT);
}
