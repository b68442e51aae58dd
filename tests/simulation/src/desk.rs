//! What a shop's desk reads of what others wrote: tables from spreadsheets, and archives.

use std::cell::RefCell;
use std::io::Write;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_shop::archive::{Archive, Purpose};
use sumpbook_shop::proof::{Moments, pack};
use sumpbook_shop::table_in::{Asked, DateStyle, DecimalStyle, What, dry_run};
use sumpbook_shop::table_out::Of;

use crate::fleet::{BEGIN_MS, at, beginning, ledger_in_memory, shop_key};

thread_local! {
    static SHOP: RefCell<Option<Ledger>> = const { RefCell::new(None) };
}

/// Reads the bytes as a table of each kind, and as an archive of each purpose.
pub(crate) fn foreign(data: &[u8]) {
    SHOP.with_borrow_mut(|held| {
        let shop = held.get_or_insert_with(|| {
            let mut shop = ledger_in_memory(shop_key(), 0);
            shop.record(&beginning(2, &[1], 9_000), BEGIN_MS).unwrap();
            shop
        });
        // One kind of table and one way of writing days for each input, so that none pays for all.
        let at_random = data.len() + usize::from(data.first().copied().unwrap_or_default());
        let what = What::ALL[at_random % What::ALL.len()];
        let dates = [None, Some(DateStyle::Mdy), Some(DateStyle::Dmy), Some(DateStyle::Serial)];
        let decimals = [None, Some(DecimalStyle::Point), Some(DecimalStyle::Comma)];
        let asked = Asked { what, dates: dates[at_random % 4], decimals: decimals[at_random % 3] };
        if let Ok(told) = dry_run(shop, data, &asked, at(BEGIN_MS)) {
            // Each row that was there is told of.
            assert!(told.refused.len() <= told.refused_rows.max(told.refused.len()));
        }
    });
    if data.starts_with(b"PK") {
        let mut file = tempfile::NamedTempFile::new().unwrap();
        file.write_all(data).unwrap();
        for purpose in [Purpose::Evidence, Purpose::WholeFleet, Purpose::Backup] {
            if let Ok(mut archive) = Archive::open(file.path(), purpose) {
                let _ = archive.read("manifest.json", 1 << 20);
                let _ = archive.read("entries.jsonl", 1 << 20);
            }
        }
    }
}

/// Honest samples of both.
pub(crate) fn honest(shop: &Ledger) -> Vec<(String, Vec<u8>)> {
    let tables = [
        (
            "readings",
            "Unit,Date,Hours,Time,Meter,Note\nTH-01,10/12/2026,\"1,204.7\",06:40,compressor,as read\n",
        ),
        ("services", "Unit;Date;Task;Hours;Parts\nTH-02;2026-10-12;separator;1.204,7;F-118\n"),
        ("pours", "Unit\tDate\tFluid\tVolume\tBefore\tAfter\nTH-01\t46307\tcoolant\t0.5 qt\t30\t50\n"),
        ("units", "Unit,In service,In service hours,Plate,Features\nTH-31,2022-03-31,0.0,THW 314,diesel\n"),
    ];
    let mut samples: Vec<(String, Vec<u8>)> =
        tables.map(|(name, text)| (format!("table-{name}"), text.as_bytes().to_vec())).into();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("pack.zip");
    pack(shop, folder.path(), Of::Fleet, &file, false, Moments::now(at(BEGIN_MS))).unwrap();
    samples.push(("archive".to_owned(), std::fs::read(file).unwrap()));
    samples
}
