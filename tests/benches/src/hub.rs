//! A hub with 500 units and a year of entries: folding all, the questions of a day sheet, and the sheet.

use std::path::Path;
use std::time::Duration;

use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_daybook::store::Store;
use sumpbook_shop::sheet::{View, day_sheet};
use sumpbook_simulation::fleet::{
    BEGIN_MS, beginning, entry, entry_id, ledger_in, of_fleet, of_truck, phone_key, restart, root, shop_key,
    truck,
};
use sumpbook_trade::record::{Certificate, DefectName, DeviceEnrolled, Digest, RepairVerdict, Review};

use crate::fleet_year::{DAYS, IDS_A_DAY, day_of};
use crate::said::{median, processor_time, time, timed};

const UNITS: u32 = 500;
const TIMES: usize = 21;
/// Exchanges of each phone on a working day.
const EXCHANGES: u32 = 6;
const SQL_LIMIT: Duration = Duration::from_millis(10);
const SHEET_LIMIT: Duration = Duration::from_millis(50);

/// The key of unit `number`'s own phone.
pub(crate) fn key_of(number: u32) -> DeviceKey {
    let mut secret = [3; 32];
    secret[..4].copy_from_slice(&number.to_be_bytes());
    DeviceKey::from_secret(&secret)
}

/// The enrolments of so many phones, ids from `first`.
pub(crate) fn enrolled(phones: u32, first: u32) -> Vec<NewEntry> {
    let enrol = |number| {
        let key = Digest(key_of(number).public().bytes());
        let fact = DeviceEnrolled { key, name: format!("phone {number}") };
        of_fleet(entry_id(first + number), BEGIN_MS, fact)
    };
    (0..phones).map(enrol).collect()
}

/// A year of exchanges of so many phones, written past the store: only reading them is measured.
fn exchanges(folder: &Path, phones: u32) {
    let mut log = rusqlite::Connection::open(folder.join("book.db")).unwrap();
    let tx = log.transaction().unwrap();
    let devices: Vec<_> = (0..phones).map(|number| key_of(number).id().0).collect();
    for day in 0..DAYS {
        for number in 0..phones * EXCHANGES {
            let at = day_ms(day) + i64::from(number) * 2_000;
            tx.prepare_cached("INSERT INTO exchange (device, at, from_n, to_n) VALUES (?1, ?2, ?3, ?4)")
                .unwrap()
                .execute((devices[(number % phones) as usize], at, 0, (day + 1) * phones * 4))
                .unwrap();
        }
    }
    tx.commit().unwrap();
}

fn day_ms(day: u32) -> i64 {
    BEGIN_MS + i64::from(day / 5 * 7 + day % 5) * 86_400_000
}

/// What the shop certifies on a day: the defects told three working days before. The driver reviews it at once.
fn repaired(day: u32, first: u32) -> (Vec<NewEntry>, Vec<NewEntry>) {
    let (mut certified, mut reviewed) = (Vec::new(), Vec::new());
    let Some(told) = day.checked_sub(3) else { return (certified, reviewed) };
    for unit in (0..UNITS).filter(|unit| (unit * 7 + told * 13).is_multiple_of(97)) {
        let found = entry_id((told * UNITS + unit) * IDS_A_DAY);
        let (id, seen) = (entry_id(first + unit * 2), entry_id(first + unit * 2 + 1));
        let certificate = Certificate {
            defect: DefectName { entry: found, item: "item-07".to_owned(), place: None },
            verdict: RepairVerdict::Repaired,
            words: "seal renewed".to_owned(),
        };
        let at = day_ms(day) - 3_600_000;
        certified.push(of_truck(entry(id, Some(truck(unit)), at, certificate)));
        let review = Review { certificates: vec![id], report: None };
        reviewed.push(of_truck(entry(seen, Some(truck(unit)), at + 60_000, review)));
    }
    (certified, reviewed)
}

/// The shop's folder with the entries of a year. One hand writes them, anew each day as a phone does.
fn filled(folder: &Path) -> Ledger {
    std::fs::create_dir_all(folder).unwrap();
    let mut shop = ledger_in(folder, shop_key(), 0);
    shop.record(&beginning(UNITS, &[1], 900_000_000), BEGIN_MS).unwrap();
    shop.record(&enrolled(UNITS, 800_000_000), BEGIN_MS).unwrap();
    let (mut phone, _) = Ledger::open(folder, root(), phone_key(1)).unwrap();
    let (filled, ()) = timed(|| {
        for day in 0..DAYS {
            restart(&mut phone, u64::from(day));
            let (certified, reviewed) = repaired(day, 100_000_000 + day * UNITS * 2);
            shop.record(&certified, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
            phone.record(&reviewed, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
            let entries: Vec<_> =
                (0..UNITS).flat_map(|unit| day_of(unit, day, (day * UNITS + unit) * IDS_A_DAY)).collect();
            phone.record(&entries, BEGIN_MS + i64::from(day) * 86_400_000).unwrap();
            if day % 50 == 49 {
                println!("  {} entries", phone.store().truth().last_n().unwrap());
            }
        }
    });
    exchanges(folder, UNITS);
    println!(
        "hub: {} entries of {UNITS} units recorded in {filled:.1?}",
        phone.store().truth().last_n().unwrap()
    );
    shop
}

pub(crate) fn run() {
    // Filling takes minutes: whoever names a folder keeps it for the next run.
    let (fresh, kept) = (tempfile::tempdir().unwrap(), std::env::var_os("SUMPBOOK_BENCH_HUB"));
    let folder = kept.map_or(fresh.path().to_owned(), std::path::PathBuf::from);
    let mut ledger = match folder.exists() && Store::exists(&folder) {
        true => ledger_in(&folder, shop_key(), 1),
        false => filled(&folder),
    };
    let (settled, done) = timed(|| ledger.settle());
    done.unwrap();
    println!("hub: all {UNITS} units folded in {settled:.1?}, {:.1?} each", settled / UNITS);

    let last_ms = day_ms(DAYS - 1);
    let day = i32::try_from(last_ms / 86_400_000).unwrap();
    let truth = ledger.store().truth();
    let mut each: Vec<Vec<Duration>> = vec![Vec::new(); 5];
    let mut rows = [0; 5];
    for _ in 0..TIMES {
        let asked = [
            timed(|| truth.told_on_days(day - 1, day, &[]).unwrap().len()),
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
    let names = ["facts of two days", "lock-outs", "states of the units", "set aside", "last exchanges"];
    let mut sum = Duration::ZERO;
    for ((name, times), rows) in names.iter().zip(each).zip(rows) {
        let took = median(times);
        sum += took;
        println!("  {name}: {took:.2?}, {rows} rows");
    }
    time("hub: the questions of a day sheet", sum, SQL_LIMIT);
    let now = sumpbook_trade::Stamp::from_parts(last_ms + 10 * 3_600_000, 0).unwrap();
    let today = ledger.fleet().yard_day(now);
    for view in [View::Evening, View::Morning] {
        let (mut each, before) = (Vec::new(), processor_time());
        for _ in 0..TIMES {
            let (took, sheet) = timed(|| day_sheet(&ledger, today, view, now).unwrap());
            assert!(!sheet.sentences.is_empty());
            each.push(took);
        }
        let own = (processor_time() - before) / TIMES as u32;
        let name = format!("hub: the whole day sheet of {UNITS} units, {view:?}").to_lowercase();
        time(&format!("{name} (processor time {own:.2?})"), median(each), SHEET_LIMIT);
    }
    let (opened, ()) =
        timed(|| drop(Ledger::over(Store::reader(&folder).unwrap(), root(), shop_key()).unwrap()));
    println!("hub: opening the books for one page: {opened:.2?}");
    let plans = ledger.store().plans_of_a_day().unwrap();
    for plan in &plans {
        println!("  {}: {}", plan.question, plan.steps.join("; "));
    }
    let whole = plans.iter().filter(|plan| plan.reads_all()).count();
    println!("hub: {whole} of {} questions go through all entries or facts", plans.len());
}
