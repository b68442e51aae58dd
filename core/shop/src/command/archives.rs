//! Whole files out of the shop and into it: `pack`, `export`, `import`, `backup`, `restore`, `phrase`, `calendar`.

use std::path::Path;

use super::args::in_out::{Calendar, FromFile, Pack, ToFile, Verify};
use super::exchange::{known_at, write_whole};
use super::found::open;
use super::in_out::now;
use super::out::{Said, counted};
use super::{CommandError, password, verify};
use crate::archive::Manifest;
use crate::proof::PackPhotos;
use crate::sealed_key::{self, Phrase};
use crate::table_out::Of;
use crate::{Shop, ShopError, backup, calendar_feed, proof, whole_fleet};

/// Writes an evidence pack.
///
/// # Errors
/// As any read; when the file cannot be written.
pub(super) fn pack(folder: &Path, args: &Pack) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let trucks = args.units.iter().map(|door| shop.unit(door)).collect::<Result<Vec<_>, _>>()?;
    let of = if trucks.is_empty() { Of::Fleet } else { Of::Units(&trucks) };
    let (then, at) = known_at(&mut shop, args.as_of)?;
    let ledger = match then {
        Some(then) => then,
        None => whole_fleet::still(&shop)?,
    };
    let gaps = proof::gaps(&ledger, of, folder, at)?;
    let spoken = args.spanish;
    let manifest =
        proof::pack(&ledger, folder, of, &args.file, spoken, proof::Moments { known: at, made: now(&shop) })?;
    let text = format!(
        "{} holds {} signed, {} of {}. It states {} first.\nWhoever gets it reads READ-ME-FIRST.html and checks it with check.py, or: sumpbook verify --pack {}",
        args.file.display(),
        counted(manifest.entries, "entry", "entries"),
        counted(manifest.heads.len(), "book", "books"),
        manifest.fleet_name,
        counted(gaps.len(), "kind of gap", "kinds of gaps"),
        args.file.display()
    );
    Said::new(text, &serde_json::json!({ "file": args.file, "entries": manifest.entries, "gaps": gaps }))
}

/// Verifies an evidence pack.
///
/// # Errors
/// When something does not hold, or the key is not the shop's.
pub(super) fn verify(folder: &Path, args: &Verify) -> Result<Said, CommandError> {
    let Some(file) = &args.pack else { return verify::verify(folder, args.as_of) };
    // The shop's own folder knows its key, when it is here; without it the reader compares.
    let own = Shop::open(folder).ok().map(|shop| crate::heads::fingerprint(&shop.ledger.root().shop));
    let key = args.key.clone().or(own);
    let report = proof::verify_pack(file, key.as_deref())?;
    let mut text = format!(
        "{}: {}, {} and {} hold, as {} signed them at {}.\nThe shop's key: {}",
        file.display(),
        counted(report.files, "file", "files"),
        counted(report.entries, "entry", "entries"),
        counted(report.books, "book", "books"),
        report.fleet,
        report.made_at,
        report.key
    );
    text.push_str(&photos(&report.photos));
    match report.is_the_key_asked_for {
        Some(true) => text.push_str("\nThat is the key asked for."),
        None => text.push_str("\nAsk the shop by another way whether that is its key."),
        Some(false) => {
            text.push_str("\nThat is NOT the key asked for: another shop signed this.");
            return Err(CommandError::Found(Box::new(Said::new(text, &report)?)));
        }
    }
    if !report.photos.hold() {
        return Err(CommandError::Found(Box::new(Said::new(text, &report)?)));
    }
    Said::new(text, &report)
}

/// What the photos of a pack are against its entries.
fn photos(photos: &PackPhotos) -> String {
    let mut text = format!(
        "\n{} that its entries name {} as it was taken.",
        counted(photos.held, "photo or sound", "photos and sounds"),
        if photos.held == 1 { "is" } else { "are" },
    );
    let mut list = |names: &[String], what: &str| {
        if !names.is_empty() {
            text.push_str(&format!("\n{what}: {}", names.join(", ")));
        }
    };
    list(&photos.missing, "Named by an entry and not in it");
    list(&photos.foreign, "In it and named by no entry");
    list(&photos.altered, "In it under another name than the SHA-256 of its bytes");
    text
}

/// Writes the whole fleet into a file.
///
/// # Errors
/// When no phrase was made, or the file cannot be written.
pub(super) fn export(folder: &Path, args: &ToFile) -> Result<Said, CommandError> {
    let shop = open(folder)?;
    let manifest = whole_fleet::export(&whole_fleet::still(&shop)?, folder, &args.file, now(&shop))?;
    let text = format!(
        "{} holds {} of {}.\nIts phrase opens it: sumpbook --shop NEW-FOLDER import {}",
        args.file.display(),
        counted(manifest.entries, "entry", "entries"),
        counted(manifest.heads.len(), "book", "books"),
        args.file.display()
    );
    told(text, &args.file, &manifest)
}

/// Takes a whole fleet into a new folder.
///
/// # Errors
/// As [`whole_fleet::import`].
pub(super) fn import(folder: &Path, args: &FromFile) -> Result<Said, CommandError> {
    let manifest = whole_fleet::import(&args.file, folder, &phrase()?)?;
    told(restored(folder, &manifest), folder, &manifest)
}

/// Writes a backup, whoever writes meanwhile.
///
/// # Errors
/// When no phrase was made, or the file cannot be written.
pub(super) fn backup(folder: &Path, args: &ToFile) -> Result<Said, CommandError> {
    let shop = open(folder)?;
    let manifest = backup::backup(&whole_fleet::still(&shop)?, folder, &args.file, now(&shop))?;
    let text = format!(
        "{} holds {} of {} as they stood at {}.\nKeep it elsewhere, and the phrase elsewhere again.",
        args.file.display(),
        counted(manifest.entries, "entry", "entries"),
        counted(manifest.heads.len(), "book", "books"),
        manifest.made_at
    );
    told(text, &args.file, &manifest)
}

/// Restores a backup into a new folder.
///
/// # Errors
/// As [`backup::restore`].
pub(super) fn restore(folder: &Path, args: &FromFile) -> Result<Said, CommandError> {
    let manifest = backup::restore(&args.file, folder, &phrase()?)?;
    told(restored(folder, &manifest), folder, &manifest)
}

fn restored(folder: &Path, manifest: &Manifest) -> String {
    format!(
        "{} holds the shop of {} as it stood at {}: {} of {}.\nPhones notice and send again what it lost; none is enrolled anew. \
         Do not let the old folder answer phones again.",
        folder.display(),
        manifest.fleet_name,
        manifest.made_at,
        counted(manifest.entries, "entry", "entries"),
        counted(manifest.heads.len(), "book", "books"),
    )
}

fn told(text: String, file: &Path, manifest: &Manifest) -> Result<Said, CommandError> {
    let json = serde_json::json!({
        "file": file, "entries": manifest.entries, "books": manifest.heads.len(), "made-at": manifest.made_at,
        "heads": manifest.heads,
    });
    Said::new(text, &json)
}

/// Makes a new phrase.
///
/// # Errors
/// When it cannot be kept.
pub(super) fn new_phrase(folder: &Path) -> Result<Said, CommandError> {
    let shop = open(folder)?;
    let phrase = make_phrase(&shop)?;
    let text = format!("{phrase}\n{PHRASE}\nBackups made before open with the phrase of their time.");
    Said::new(text, &serde_json::json!({ "phrase": phrase.to_string() }))
}

/// What must be said with a phrase, which is shown once.
pub(super) const PHRASE: &str = "This phrase opens backups of the shop, and nothing else does. It is shown once and kept nowhere: write it down, keep it elsewhere.";

/// Seals the shop's key anew.
pub(super) fn make_phrase(shop: &Shop) -> Result<Phrase, ShopError> {
    Ok(sealed_key::make_phrase(&shop.folder, shop.ledger.root().fleet, shop.ledger.own_key())?)
}

/// The phrase, typed where nobody sees it, or the first line of standard input.
fn phrase() -> Result<Phrase, CommandError> {
    let typed = password::secret("Phrase: ")?;
    Phrase::read(&typed).map_err(|error| ShopError::from(sealed_key::SealError::from(error)).into())
}

/// The calendar feed: a file, its address, or the end of it.
///
/// # Errors
/// As any read or write.
pub(super) fn calendar(folder: &Path, args: &Calendar) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    if let (Some(_), Some(path)) = (args.as_of, &args.to) {
        let (then, at) = known_at(&mut shop, args.as_of)?;
        let feed = calendar_feed::Feed::read(then.as_ref().unwrap_or(&shop.ledger), at)?;
        write_whole(path, feed.to_ics(&args.language).as_bytes(), "Nothing was changed.")?;
        let text = format!("{} holds the feed as it was known then.", path.display());
        return Said::new(text, &serde_json::json!({ "file": path, "as-of": at }));
    }
    let at = now(&shop);
    if args.make {
        calendar_feed::make_address(&mut shop)?;
    }
    if args.end {
        calendar_feed::end_address(&mut shop)?;
    }
    let feed = calendar_feed::keep(&mut shop, at)?;
    let address = calendar_feed::address(&shop.ledger)?.map(|token| calendar_feed::path(&token));
    let mut lines = Vec::new();
    if let Some(path) = &args.to {
        write_whole(path, feed.to_ics(&args.language).as_bytes(), "Nothing was changed.")?;
        lines.push(format!("{} holds the feed.", path.display()));
    }
    lines.push(match &address {
        Some(address) => format!("The hub serves it, without signing in, at https://HUB{address}"),
        None => "It has no address. Make one with --make.".to_owned(),
    });
    Said::new(lines.join("\n"), &serde_json::json!({ "file": args.to, "address": address }))
}
