//! The whole fleet out of one folder and into another: every book as an automerge document, every signed entry.

use std::collections::BTreeMap;
use std::io::{BufWriter, Write};
use std::path::Path;

use serde::{Deserialize, Serialize};
use sumpbook_daybook::book::{BookId, document};
use sumpbook_daybook::gate::ChangeHash;
use sumpbook_daybook::ledger::{Carried, Ledger, Root};
use sumpbook_daybook::store::{ExchangeRow, SheetRow};
use sumpbook_trade::Stamp;

use crate::archive::{Archive, ArchiveError, ArchiveWriter, Manifest, Purpose};
use crate::entry_lines::{self, BookNames};
use crate::new_folder::NewFolder;
use crate::sealed_key::{self, Phrase};
use crate::{ShopError, photo_files};

const ENTRIES: &str = "entries.jsonl";
const EXCHANGES: &str = "exchanges.jsonl";
const SHEETS: &str = "sheets.jsonl";
/// A fleet of 500 units writes 400 MB of lines a year.
const MOST: u64 = 8 * 1024 * 1024 * 1024;

/// An exchange with a phone, as a line.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct ExchangeLine {
    device: [u8; 8],
    at: i64,
    from: i64,
    to: i64,
    off: Option<i64>,
}

/// A closed sheet, as a line.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct SheetLine {
    day: String,
    version: u32,
    at: i64,
    n: i64,
    heads: [u8; 32],
    body: String,
    changes: Vec<String>,
}

/// Writes the whole fleet into a file. The ledger must hold still meanwhile: see
/// [`sumpbook_daybook::store::Store::hold_still`].
///
/// # Errors
/// When no phrase was made, or the file cannot be written.
pub fn export(ledger: &Ledger, folder: &Path, to: &Path, now: Stamp) -> Result<Manifest, ShopError> {
    let sealed = sealed_key::kept(folder)?;
    let mut archive = ArchiveWriter::begin(to, Purpose::WholeFleet, ledger, now)?;
    let names = BookNames::of(ledger)?;
    let truth = ledger.store().truth();
    let beside = tempfile::NamedTempFile::new_in(
        to.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new(".")),
    );
    let beside = beside.map_err(|reason| ArchiveError::File { path: to.to_owned(), reason })?;
    let mut lines = BufWriter::new(beside.as_file());
    let counts = entry_lines::write(ledger, &names, &mut lines, |_| true)?;
    lines.flush().map_err(|reason| ArchiveError::File { path: to.to_owned(), reason })?;
    drop(lines);
    archive.add_file(ENTRIES, beside.path())?;
    for book in truth.books()? {
        let rows = truth.of_book(book)?.into_iter().map(|held| held.row);
        let document = document::export(rows).map_err(|error| ArchiveError::Zip(error.to_string()))?;
        archive.add(&format!("books/{}.automerge", names.name(book)), &document)?;
        let heads = truth.heads(book)?.iter().map(ChangeHash::to_string).collect();
        archive.book(names.name(book), heads, counts.get(&book).copied().unwrap_or(0));
    }
    let exchanges = ledger.store().exchanges(i64::MAX)?.into_iter().map(|row| ExchangeLine {
        device: row.device,
        at: row.at_ms,
        from: row.from_n,
        to: row.to_n,
        off: row.off_ms,
    });
    archive.add(EXCHANGES, lined(exchanges)?.as_bytes())?;
    let sheets = ledger.store().sheets()?.into_iter().map(|row| SheetLine {
        day: row.day,
        version: row.version,
        at: row.at_ms,
        n: row.n,
        heads: row.heads,
        body: String::from_utf8_lossy(&row.body).into_owned(),
        changes: row.changes,
    });
    archive.add(SHEETS, lined(sheets)?.as_bytes())?;
    archive.add(sealed_key::FILE, &sealed)?;
    for (name, path) in photo_files::kept(folder) {
        archive.add_file(&format!("{}/{name}", photo_files::FOLDER), &path)?;
    }
    Ok(archive.finish(ledger)?)
}

/// Takes a whole fleet into a new folder: every entry through the gate again, every book with the heads it had.
/// The folder is a shop then, with the same key; phones notice the new epoch.
///
/// # Errors
/// When a shop stands there, the file does not hold, the phrase is another, or an entry is not admitted. Then no
/// folder is made.
pub fn import(file: &Path, folder: &Path, phrase: &Phrase) -> Result<Manifest, ShopError> {
    let new = NewFolder::beside(folder)?;
    let mut archive = Archive::open(file, Purpose::WholeFleet)?;
    archive.check()?;
    let manifest = archive.manifest().clone();
    let sealed = needed(&mut archive, sealed_key::FILE, 64 * 1024)?;
    let key = sealed_key::open(&sealed, phrase, manifest.fleet, &archive.key())?;
    new.keep_key(&key, manifest.fleet, &sealed)?;
    let root = Root { fleet: manifest.fleet, shop: archive.key() };
    let (mut ledger, _) = Ledger::open(new.path(), root, key)?;
    let entries = Entries::read(&mut archive, &manifest)?;
    entries.take_into(&mut ledger, &manifest)?;
    for row in lines::<ExchangeLine>(&mut archive, EXCHANGES)? {
        let ExchangeLine { device, at: at_ms, from: from_n, to: to_n, off: off_ms } = row;
        ledger.store_mut().log_exchange(&ExchangeRow { device, at_ms, from_n, to_n, off_ms })?;
    }
    for row in lines::<SheetLine>(&mut archive, SHEETS)? {
        let SheetLine { day, version, at: at_ms, n, heads, body, changes } = row;
        ledger.store_mut().keep_sheet(&SheetRow {
            day,
            version,
            at_ms,
            n,
            heads,
            body: body.into_bytes(),
            changes,
        })?;
    }
    new.take_photos(&mut archive)?;
    // Twice: once for the life it was taken out of, whose name nobody here knows.
    for _ in 0..2 {
        sumpbook_daybook::exchange::begin_epoch(&mut ledger)
            .map_err(|error| ArchiveError::Zip(error.to_string()))?;
    }
    ledger.settle()?;
    drop(ledger);
    new.put_in_place()?;
    Ok(manifest)
}

/// The entries of an archive, in their order.
pub(crate) struct Entries {
    carried: Vec<Carried>,
    hashes: Vec<ChangeHash>,
    /// The name each book has in the archive.
    names: BTreeMap<BookId, String>,
}

impl Entries {
    /// Reads them; nothing of them is believed yet.
    pub(crate) fn read(archive: &mut Archive, manifest: &Manifest) -> Result<Entries, ShopError> {
        let bytes = needed(archive, ENTRIES, MOST)?;
        let text =
            std::str::from_utf8(&bytes).map_err(|_| ArchiveError::NotOurs("its entries are no text"))?;
        let mut entries = Entries { carried: Vec::new(), hashes: Vec::new(), names: BTreeMap::new() };
        for line in text.lines() {
            let read = entry_lines::read(line, manifest.fleet);
            let read = read.ok_or(ArchiveError::NotOurs("an entry in it does not read"))?;
            entries.names.entry(read.carried.incoming.place.book).or_insert(read.book);
            entries.hashes.push(read.hash);
            entries.carried.push(read.carried);
        }
        if entries.carried.len() != manifest.entries || entries.names.len() != manifest.heads.len() {
            return Err(ArchiveError::Changed("it holds other entries than its list says".to_owned()).into());
        }
        Ok(entries)
    }

    /// Takes them all through the gate; then each must have the hash it had, and each book end where it did.
    pub(crate) fn take_into(&self, ledger: &mut Ledger, manifest: &Manifest) -> Result<(), ShopError> {
        let changed = |what: String| Err(ArchiveError::Changed(what).into());
        if let Err((place, why)) = ledger.take_over(&self.carried)? {
            let id =
                self.carried.get(place).map(|carried| carried.incoming.id().to_string()).unwrap_or_default();
            return changed(format!("entry {id} is not admitted: {why:?}"));
        }
        let truth = ledger.store().truth();
        for (carried, hash) in self.carried.iter().zip(&self.hashes) {
            if truth.entry(carried.n)?.is_none_or(|held| held.row.hash != *hash) {
                return changed(format!("entry {} has another hash", carried.incoming.id()));
            }
        }
        for (book, name) in &self.names {
            let heads: Vec<String> = truth.heads(*book)?.iter().map(ChangeHash::to_string).collect();
            if manifest.heads.get(name) != Some(&heads) {
                return changed(format!("the book {name} ends elsewhere than its list says"));
            }
        }
        Ok(())
    }
}

pub(crate) fn needed(archive: &mut Archive, name: &str, most: u64) -> Result<Vec<u8>, ArchiveError> {
    archive.read(name, most)?.ok_or_else(|| ArchiveError::Changed(format!("{name} is missing")))
}

fn lined(rows: impl Iterator<Item = impl Serialize>) -> Result<String, ShopError> {
    let mut text = String::new();
    for row in rows {
        text.push_str(&serde_json::to_string(&row)?);
        text.push('\n');
    }
    Ok(text)
}

fn lines<T: serde::de::DeserializeOwned>(archive: &mut Archive, name: &str) -> Result<Vec<T>, ShopError> {
    let bytes = needed(archive, name, MOST)?;
    let text = std::str::from_utf8(&bytes).map_err(|_| ArchiveError::NotOurs("what it holds is no text"))?;
    let rows: Result<Vec<T>, _> = text.lines().map(serde_json::from_str).collect();
    Ok(rows.map_err(|_| ArchiveError::NotOurs("a line in it does not read"))?)
}

/// A ledger over a shop's folder that stands still while it is read, whoever writes.
///
/// # Errors
/// When the folder cannot be read.
pub fn still(shop: &crate::Shop) -> Result<Ledger, ShopError> {
    let store = sumpbook_daybook::store::Store::reader(&shop.folder)?;
    store.hold_still()?;
    let key = sumpbook_daybook::gate::DeviceKey::from_secret(shop.ledger.own_key().secret());
    Ok(Ledger::over(store, shop.ledger.root(), key)?)
}
