//! A hub with 500 units and a year of entries: folding all, and the questions of a day sheet.

use std::time::Duration;

use sumpbook_shop::sheet::{View, day_sheet};
use sumpbook_simulation::fleet::{BEGIN_MS, beginning, ledger_in, shop_key};

use crate::fleet_year::{DAYS, IDS_A_DAY, day_of};
use crate::said::{median, time, timed};

const UNITS: u32 = 500;
const TIMES: usize = 21;
const SQL_LIMIT: Duration = Duration::from_millis(10);

pub(crate) fn run() {
    let folder = tempfile::tempdir().unwrap();
    let mut ledger = ledger_in(folder.path(), shop_key(), 0);
    ledger.record(&beginning(UNITS, &[1], 9_000_000), BEGIN_MS).unwrap();
    let (filled, ()) = timed(|| {
        for day in 0..DAYS {
            let entries: Vec<_> =
                (0..UNITS).flat_map(|unit| day_of(unit, day, (day * UNITS + unit) * IDS_A_DAY)).collect();
            ledger.record(&entries, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
            if day % 25 == 24 {
                println!("  {} entries", ledger.store().truth().last_n().unwrap());
            }
        }
    });
    let entries = ledger.store().truth().last_n().unwrap();
    println!("hub: {entries} entries of {UNITS} units recorded in {filled:.1?}");
    let (settled, done) = timed(|| ledger.settle());
    done.unwrap();
    println!("hub: all {UNITS} units folded in {settled:.1?}, {:.1?} each", settled / UNITS);

    let last = DAYS - 1;
    let last_ms = BEGIN_MS + i64::from(last / 5 * 7 + last % 5) * 86_400_000;
    let day = i32::try_from(last_ms / 86_400_000).unwrap();
    let truth = ledger.store().truth();
    let mut each: Vec<Vec<Duration>> = vec![Vec::new(); 5];
    let mut rows = [0; 5];
    for _ in 0..TIMES {
        let asked = [
            timed(|| truth.facts_of_days(day, day).unwrap().len()),
            timed(|| truth.locks_since(last_ms).unwrap().len()),
            timed(|| truth.unit_bodies().unwrap().len()),
            timed(|| truth.aside().unwrap().len()),
            timed(|| ledger.store().last_exchanges(i64::MAX).unwrap().len()),
        ];
        for (index, (took, found)) in asked.into_iter().enumerate() {
            each[index].push(took);
            rows[index] = found;
        }
    }
    let names = ["facts of the day", "lock-outs", "states of the units", "set aside", "last exchanges"];
    let mut sum = Duration::ZERO;
    for ((name, times), rows) in names.iter().zip(each).zip(rows) {
        let took = median(times);
        sum += took;
        println!("  {name}: {took:.2?}, {rows} rows");
    }
    time("hub: the questions of a day sheet", sum, SQL_LIMIT);
    let now = sumpbook_trade::Stamp::from_parts(last_ms + 10 * 3_600_000, 0).unwrap();
    let (took, sheet) =
        timed(|| day_sheet(&ledger, ledger.fleet().yard_day(now), View::Evening, now).unwrap());
    println!("hub: the whole day sheet of {UNITS} units, read and put in order: {took:.1?}");
    assert!(!sheet.sentences.is_empty());
    let plans = ledger.store().plans_of_a_day().unwrap();
    for plan in &plans {
        println!("  {}: {}", plan.question, plan.steps.join("; "));
    }
    let whole = plans.iter().filter(|plan| plan.reads_all()).count();
    println!("hub: {whole} of {} questions go through all entries or facts", plans.len());
}
