//! A backup of the shop's folder while it is written, and a folder restored from one.

use std::path::Path;

use sumpbook_daybook::gate::ChangeHash;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Stamp;

use crate::archive::{Archive, ArchiveError, ArchiveWriter, Manifest, Purpose};
use crate::entry_lines::BookNames;
use crate::new_folder::NewFolder;
use crate::sealed_key::{self, Phrase};
use crate::whole_fleet::needed;
use crate::{Shop, ShopError, photo_files};

const BOOK: &str = "book.db";
/// Who may sign in to the console.
const USERS: &str = "console.json";

/// Writes a backup: the shop's file as it stands at one moment, its key sealed by the phrase, who may sign in, and
/// the photos. The ledger must hold still meanwhile; whoever writes goes on writing.
///
/// # Errors
/// When no phrase was made, or the file cannot be written.
pub fn backup(ledger: &Ledger, folder: &Path, to: &Path, now: Stamp) -> Result<Manifest, ShopError> {
    let sealed = sealed_key::kept(folder)?;
    let mut archive = ArchiveWriter::begin(to, Purpose::Backup, ledger, now)?;
    let names = BookNames::of(ledger)?;
    let truth = ledger.store().truth();
    for book in truth.books()? {
        let heads = truth.heads(book)?.iter().map(ChangeHash::to_string).collect();
        archive.book(names.name(book), heads, truth.of_book(book)?.len());
    }
    let parent = to.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let beside = tempfile::Builder::new().prefix(".sumpbook-").tempdir_in(parent);
    let beside = beside.map_err(|reason| ArchiveError::File { path: to.to_owned(), reason })?;
    let copy = beside.path().join(BOOK);
    ledger.store().copy_to(&copy)?;
    archive.add_file(BOOK, &copy)?;
    archive.add(sealed_key::FILE, &sealed)?;
    let users = folder.join(USERS);
    if users.exists() {
        archive.add_file(USERS, &users)?;
    }
    for (name, path) in photo_files::kept(folder) {
        archive.add_file(&format!("{}/{name}", photo_files::FOLDER), &path)?;
    }
    Ok(archive.finish(ledger)?)
}

/// Restores a backup into a new folder, and begins a new epoch there: phones notice at their next exchange, find what
/// the shop lost, and send it again. No phone is enrolled anew, for the key is the same.
///
/// # Errors
/// When something stands there, the file does not hold, or the phrase is another. Then no folder is made.
pub fn restore(file: &Path, folder: &Path, phrase: &Phrase) -> Result<Manifest, ShopError> {
    let new = NewFolder::beside(folder)?;
    let mut archive = Archive::open(file, Purpose::Backup)?;
    let manifest = archive.manifest().clone();
    let sealed = needed(&mut archive, sealed_key::FILE, 64 * 1024)?;
    let key = sealed_key::open(&sealed, phrase, manifest.fleet, &archive.key())?;
    new.keep_key(&key, manifest.fleet, &sealed)?;
    if !archive.extract(BOOK, &new.path().join(BOOK))? {
        return Err(ArchiveError::Changed(format!("{BOOK} is missing")).into());
    }
    archive.extract(USERS, &new.path().join(USERS))?;
    new.take_photos(&mut archive)?;
    let mut shop = Shop::open(new.path())?;
    let names = BookNames::of(&shop.ledger)?;
    let truth = shop.ledger.store().truth();
    for book in truth.books()? {
        let heads: Vec<String> = truth.heads(book)?.iter().map(ChangeHash::to_string).collect();
        if manifest.heads.get(names.name(book)) != Some(&heads) {
            return Err(ArchiveError::Changed(format!("the book {} ends elsewhere", names.name(book))).into());
        }
    }
    sumpbook_daybook::exchange::begin_epoch(&mut shop.ledger)
        .map_err(|error| ArchiveError::Zip(error.to_string()))?;
    shop.ledger.settle()?;
    drop(shop);
    new.put_in_place()?;
    Ok(manifest)
}
