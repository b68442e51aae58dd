//! A folder in trouble: newer, read-only, full, damaged, or written by two at once.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use sumpbook_daybook::book::document::rebuild;
use sumpbook_daybook::ledger::{Admission, Incoming, Ledger, LedgerError};
use sumpbook_daybook::store::{DraftRow, Salvaged, Store, StoreError};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::*;
use sumpbook_simulation::world::settle_in;
use sumpbook_trade::record::{Glass, LevelCheck};
use sumpbook_trade::{Entry, Fluid};

fn walk(number: u32) -> Entry {
    let at = BEGIN_MS + i64::from(number) * 60_000;
    entry(entry_id(number), Some(truck(number % 2)), at, section(number, &[number]))
}

fn all_of(ledger: &Ledger) -> Vec<Incoming> {
    let rows = ledger.store().truth().between(0, i64::MAX, i64::MAX).unwrap();
    rows.iter().map(|held| Incoming::of_row(root().fleet, &held.row)).collect()
}

/// A shop's folder with this many walks in it, one phone's; everything stands in the file itself.
fn filled(folder: &Path, walks: u32) -> Vec<Incoming> {
    let mut shop = ledger_in(folder, shop_key(), 0);
    shop.record(&beginning(2, &[1], 90_000), BEGIN_MS).unwrap();
    let mut phone = ledger_in_memory(phone_key(1), 0);
    phone.admit(&all_of(&shop), BEGIN_MS, None).unwrap();
    let new: Vec<_> = (0..walks).map(|number| of_truck(walk(number))).collect();
    phone.record(&new, BEGIN_MS).unwrap();
    assert!(settle_in(&mut shop, all_of(&phone), BEGIN_MS).is_empty());
    let draft = DraftRow { id: entry_id(500_000), body: "begun".to_owned(), changed_ms: 1 };
    shop.store_mut().keep_draft(&draft).unwrap();
    shop.settle().unwrap();
    all_of(&shop)
}

fn file(folder: &Path) -> PathBuf {
    folder.join("book.db")
}

fn assert_whole(ledger: &Ledger) {
    ledger.store().check().unwrap();
    let truth = ledger.store().truth();
    for book in truth.books().unwrap() {
        let rows = truth.of_book(book).unwrap();
        let mut heads: Vec<_> =
            rebuild(rows.into_iter().map(|held| held.row)).unwrap().get_heads().iter().map(|h| h.0).collect();
        heads.sort_unstable();
        assert_eq!(heads, truth.heads(book).unwrap().iter().map(|h| h.0).collect::<Vec<_>>());
    }
}

#[test]
fn a_newer_file_is_left_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let raw = rusqlite::Connection::open(file(folder.path())).unwrap();
    raw.execute_batch("CREATE TABLE later (x); PRAGMA user_version = 99").unwrap();
    drop(raw);
    let before = std::fs::read(file(folder.path())).unwrap();
    let told = Store::open(folder.path()).unwrap_err();
    assert!(matches!(told, StoreError::NewerVersion { found: 99, .. }), "{told}");
    assert!(told.to_string().contains("Update this program"), "{told}");
    assert!(std::fs::read(file(folder.path())).unwrap() == before, "the newer file was changed");
    let names: Vec<_> = std::fs::read_dir(folder.path()).unwrap().map(|e| e.unwrap().file_name()).collect();
    assert_eq!(names, ["book.db"]);
}

/// Something mounted for as long as this lives. Only root may mount, and not in every container.
struct Mount(PathBuf);

impl Mount {
    fn new(at: &Path, arguments: &[&str]) -> Option<Mount> {
        let done = Command::new("mount").args(arguments).arg(at).stderr(Stdio::null()).status();
        done.is_ok_and(|status| status.success()).then(|| Mount(at.to_owned()))
    }
}

impl Drop for Mount {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg("-l").arg(&self.0).stderr(Stdio::null()).status();
    }
}

#[test]
fn a_folder_that_cannot_be_written_says_so_and_is_read() {
    let folder = tempfile::tempdir().unwrap();
    let Some(_mount) = Mount::new(folder.path(), &["-t", "tmpfs", "-o", "size=16m", "tmpfs"]) else {
        println!("skipped: a read-only folder needs a mount, and this user may not mount");
        return;
    };
    let held = filled(folder.path(), 20).len();
    let read_only = Command::new("mount").args(["-o", "remount,ro"]).arg(folder.path()).status().unwrap();
    assert!(read_only.success());
    let told = Store::open(folder.path()).unwrap_err();
    assert!(matches!(&told, StoreError::ReadOnly(path) if path.starts_with(folder.path())), "{told:?}");
    assert!(told.to_string().contains("can be read"), "{told}");
    let reader = Store::reader(folder.path()).unwrap();
    assert_eq!(reader.truth().between(0, i64::MAX, i64::MAX).unwrap().len(), held);
    let ledger = Ledger::over(reader, root(), shop_key()).unwrap();
    assert_eq!(ledger.fleet().trucks.len(), 2);
    assert!(!ledger.unit_state(truck(0)).unwrap().defects.is_empty());
}

#[test]
fn a_full_disk_loses_nothing_and_takes_more_when_there_is_room() {
    let folder = tempfile::tempdir().unwrap();
    let Some(_mount) = Mount::new(folder.path(), &["-t", "tmpfs", "-o", "size=6m", "tmpfs"]) else {
        println!("skipped: a full disk needs a mount, and this user may not mount");
        return;
    };
    filled(folder.path(), 5);
    let mut shop = ledger_in(folder.path(), shop_key(), 1);
    std::fs::write(folder.path().join("ballast"), vec![0u8; 1 << 20]).unwrap();
    let mut recorded = Vec::new();
    let told = loop {
        let number = 1_000 + recorded.len() as u32;
        let mut new = walk(number);
        new.note = Some("n".repeat(4_000));
        match shop.record(&[of_truck(new)], BEGIN_MS) {
            Ok(_) => recorded.push(number),
            Err(error) => break error,
        }
        assert!(recorded.len() < 2_000, "the disk never filled");
    };
    assert!(matches!(told, LedgerError::Store(StoreError::Full)), "{told:?}");
    println!("{} recorded before it was full", recorded.len());
    assert!(recorded.len() > 20);
    let there = |ledger: &Ledger| {
        let truth = ledger.store().truth();
        recorded.iter().all(|number| truth.by_id(entry_id(*number)).unwrap().len() == 1)
    };
    assert!(there(&shop));
    std::fs::remove_file(folder.path().join("ballast")).unwrap();
    let last = 1_000 + recorded.len() as u32;
    shop.record(&[of_truck(walk(last))], BEGIN_MS).unwrap();
    drop(shop);
    let again = ledger_in(folder.path(), shop_key(), 2);
    assert!(there(&again));
    assert_eq!(again.store().truth().by_id(entry_id(last)).unwrap().len(), 1);
    assert_whole(&again);
}

/// Opens a damaged folder, shows that nothing was thrown away, gives it everything again, and compares.
fn mended(folder: &Path, held: &[Incoming], damaged: &[u8]) -> Salvaged {
    let (mut shop, salvaged) = Ledger::open(folder, root(), shop_key()).unwrap();
    let salvaged = salvaged.expect("a damaged file is told of");
    assert!(std::fs::read(&salvaged.kept).unwrap() == damaged, "the damaged file is not as it was");
    assert_whole(&shop);
    let truth = shop.store().truth();
    let here = truth.between(0, i64::MAX, i64::MAX).unwrap().len();
    let waiting = shop.store().waiting().unwrap().len();
    assert!(here <= held.len());
    println!("{} held, {} saved, {here} in their books, {waiting} waiting", salvaged.held, salvaged.saved);
    // Everything that was saved is in its book, waits, or is kept outside with its reason.
    let outside = shop.store().refused().unwrap().len();
    assert_eq!(here + waiting + outside, usize::try_from(salvaged.saved).unwrap());
    assert!(settle_in(&mut shop, held.to_vec(), BEGIN_MS).is_empty());
    assert_eq!(shop.store().truth().between(0, i64::MAX, i64::MAX).unwrap().len(), held.len());
    shop.settle().unwrap();
    let text = shop.store().projection_text().unwrap();
    let mut fresh = ledger_in_memory(shop_key(), 5);
    fresh.admit(held, BEGIN_MS, None).unwrap();
    fresh.settle().unwrap();
    assert_eq!(text, fresh.store().projection_text().unwrap());
    drop(shop);
    let (shop, again) = Ledger::open(folder, root(), shop_key()).unwrap();
    assert!(again.is_none(), "once is enough");
    assert_whole(&shop);
    salvaged
}

#[test]
fn a_file_cut_short_is_kept_and_what_is_readable_is_taken_over() {
    let folder = tempfile::tempdir().unwrap();
    let held = filled(folder.path(), 400);
    let whole = std::fs::read(file(folder.path())).unwrap();
    let cut = &whole[..whole.len() * 6 / 10];
    std::fs::write(file(folder.path()), cut).unwrap();
    let salvaged = mended(folder.path(), &held, cut);
    assert!(salvaged.saved > 50, "{salvaged:?}");
}

#[test]
fn a_file_without_its_header_is_kept_and_a_new_one_begun() {
    let folder = tempfile::tempdir().unwrap();
    let held = filled(folder.path(), 50);
    let mut bytes = std::fs::read(file(folder.path())).unwrap();
    bytes[..100].fill(0x5a);
    std::fs::write(file(folder.path()), &bytes).unwrap();
    let salvaged = mended(folder.path(), &held, &bytes);
    assert_eq!(salvaged.saved, 0);
}

#[test]
fn an_empty_page_in_the_middle_is_noticed_at_the_latest_when_it_is_read() {
    let folder = tempfile::tempdir().unwrap();
    let held = filled(folder.path(), 400);
    let whole = std::fs::read(file(folder.path())).unwrap();
    let pages = whole.len() / 4096;
    let (mut noticed, mut waited) = (0, 0);
    for page in (3..pages).step_by(pages / 12) {
        let folder = tempfile::tempdir().unwrap();
        let mut bytes = whole.clone();
        bytes[page * 4096..(page + 1) * 4096].fill(0);
        std::fs::write(file(folder.path()), &bytes).unwrap();
        // Either opening tells, or reading does, and then the next opening.
        let salvaged = match Ledger::open(folder.path(), root(), shop_key()) {
            Ok((_, Some(_))) => {
                std::fs::remove_dir_all(folder.path()).unwrap();
                std::fs::create_dir(folder.path()).unwrap();
                std::fs::write(file(folder.path()), &bytes).unwrap();
                true
            }
            Ok((mut shop, None)) => shop.rebuild().is_err() || shop.store().check().is_err(),
            Err(error) => panic!("page {page}: {error}"),
        };
        if !salvaged {
            // A page that nothing needs.
            continue;
        }
        noticed += 1;
        let damaged = std::fs::read(file(folder.path())).unwrap();
        let salvaged = mended(folder.path(), &held, &damaged);
        waited += i64::from(salvaged.saved < salvaged.held);
    }
    println!("{noticed} damaged pages noticed, {waited} of them with entries on them");
    assert!(noticed > 5 && waited > 0);
}

#[test]
fn two_programs_on_one_folder_record_at_once() {
    const EACH: u32 = 60;
    let folder = tempfile::tempdir().unwrap();
    // Both begin at once, even with making the folder.
    let run = || {
        Command::new(env!("CARGO_BIN_EXE_recorder"))
            .arg(folder.path())
            .arg(EACH.to_string())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap()
    };
    let outputs = [run(), run(), run()].map(|child| child.wait_with_output().unwrap());
    let ledger = ledger_in(folder.path(), phone_key(1), 3);
    assert_whole(&ledger);
    let truth = ledger.store().truth();
    let mut said = 0;
    for output in &outputs {
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        for line in String::from_utf8_lossy(&output.stdout).lines().filter(|l| !l.starts_with("draft")) {
            assert_eq!(truth.by_id(line.parse().unwrap()).unwrap().len(), 1);
            said += 1;
        }
    }
    assert_eq!(said, 3 * EACH);
    assert_eq!(truth.between(0, i64::MAX, i64::MAX).unwrap().len(), said as usize);
}

#[test]
fn what_one_of_two_learns_the_other_knows() {
    let folder = tempfile::tempdir().unwrap();
    let mut one = ledger_in(folder.path(), shop_key(), 1);
    let mut two = ledger_in(folder.path(), shop_key(), 2);
    one.record(&beginning(2, &[1], 90_000), BEGIN_MS).unwrap();
    let mut phone = ledger_in_memory(phone_key(1), 0);
    phone.admit(&all_of(&one), BEGIN_MS, None).unwrap();
    let n = phone.record(&[of_truck(walk(1))], BEGIN_MS).unwrap()[0];
    let held = phone.store().truth().entry(n).unwrap().unwrap();
    // The other never admitted the phone's enrolment itself.
    let told = two.admit(&[Incoming::of_row(root().fleet, &held.row)], BEGIN_MS, None).unwrap();
    assert!(matches!(told[..], [Admission::Admitted(_)]), "{told:?}");
    assert_eq!(two.fleet(), one.fleet());
    two.settle().unwrap();
    let text = two.store().projection_text().unwrap();
    one.rebuild().unwrap();
    one.settle().unwrap();
    assert_eq!(text, one.store().projection_text().unwrap());
}

#[test]
fn what_an_older_form_of_the_file_projected_is_projected_once_more_at_opening() {
    let folder = tempfile::tempdir().unwrap();
    let mut ledger = ledger_in(folder.path(), shop_key(), 1);
    ledger.record(&beginning(1, &[1], 90_000), BEGIN_MS).unwrap();
    let glass = LevelCheck {
        fluid: Fluid::CompressorOil,
        glass: Glass::BelowView,
        warmth: None,
        stopped: None,
        look: None,
        photo: None,
        oil_temperature: None,
    };
    let level = entry(entry_id(1), Some(truck(0)), BEGIN_MS, glass);
    ledger.record(&[of_truck(level)], BEGIN_MS).unwrap();
    ledger.settle().unwrap();
    let text = ledger.store().projection_text().unwrap();
    assert_eq!(ledger.unit_state(truck(0)).unwrap().locks.len(), 1);
    drop(ledger);
    // As a file of form 7 has it: a level bears on nothing, sounds are not told from photos, and the steps from form 8 on
    // have not been taken.
    let raw = rusqlite::Connection::open(file(folder.path())).unwrap();
    raw.execute_batch(
        "ALTER TABLE photo_named DROP COLUMN sound; UPDATE fact SET bears = 0;
         UPDATE unit SET body = NULL, stale = 1; PRAGMA user_version = 7",
    )
    .unwrap();
    drop(raw);
    let mut ledger = ledger_in(folder.path(), shop_key(), 2);
    assert_eq!(ledger.unit_state(truck(0)).unwrap().locks.len(), 1);
    ledger.settle().unwrap();
    assert_eq!(ledger.store().projection_text().unwrap(), text);
}
