//! `init`: a fleet from nothing; and how every verb opens the shop and reads its lines.

use std::fs;
use std::io::Read;
use std::path::Path;

use sumpbook_trade::{PersonId, Stamp};

use super::archives::{PHRASE, make_phrase};
use super::args::{FromLines, Init};
use super::out::{self, Said};
use super::{CommandError, clock};
use crate::{Hand, InitOptions, Shop, ShopError};

/// Makes a shop.
///
/// # Errors
/// As [`Shop::init`].
pub(super) fn init(folder: &Path, args: &Init) -> Result<Said, CommandError> {
    let now = args.received.unwrap_or_else(clock::now);
    let name = args.name.trim();
    if name.is_empty() {
        return Err(CommandError::Asked("a fleet needs a name. Nothing was made. Give it one.".to_owned()));
    }
    let options = InitOptions { name: name.to_owned(), zone: args.zone.clone(), demo: args.demo, now };
    let shop = Shop::init(folder, &options)?;
    let key = fingerprint(&shop.ledger.root().shop.bytes());
    let phrase = make_phrase(&shop)?;
    let text = format!(
        "{} has a shop in {}.\nThe shop's key: {key}\nThe phrase: {phrase}\n{PHRASE}\nNext: register people and units, then invite a phone.\n\
         The checklist and the programme are common practice until you set your own.",
        name,
        folder.display(),
    );
    Said::new(
        text,
        &serde_json::json!({ "fleet": shop.ledger.root().fleet, "shop-key": key, "phrase": phrase.to_string() }),
    )
}

/// Opens the shop, saying so when part of its book had to be left behind.
///
/// # Errors
/// As [`Shop::open`]; when the book holds nothing.
pub(super) fn open(folder: &Path) -> Result<Shop, ShopError> {
    let shop = open_even_empty(folder)?;
    // Every fleet has its first entry: an empty book would answer "nothing is due", which nobody knows, and
    // what is written into it would stand beside the lost entries under the same key.
    if shop.ledger.fleet().name.is_empty() {
        return Err(ShopError::BookLost(folder.to_owned()));
    }
    Ok(shop)
}

/// As [`open`], and also with a book that was lost: what the phones' files bring back must find a way in.
///
/// # Errors
/// As [`Shop::open`].
pub(super) fn open_even_empty(folder: &Path) -> Result<Shop, ShopError> {
    let shop = Shop::open(folder)?;
    if let Some(salvaged) = &shop.salvaged {
        out::aside(&format!(
            "Part of the shop's book can't be read. {} of {} entries are kept, and the damaged file too, as {}. \
             Take in a file from every phone: one of them may hold the others.",
            salvaged.saved,
            salvaged.held,
            salvaged.kept.display()
        ));
    }
    Ok(shop)
}

/// Whoever writes at the shop, at the moment that counts.
pub(super) fn hand(shop: &Shop, person: Option<PersonId>, received: Option<Stamp>) -> Hand {
    let at = received.unwrap_or_else(|| clock::in_zone(clock::now(), shop.ledger.fleet().zone));
    Hand { person, at, received }
}

/// The lines of a file, or of standard input.
pub(super) fn read_lines(args: &FromLines) -> Result<String, CommandError> {
    match &args.file {
        Some(path) => {
            fs::read_to_string(path).map_err(|reason| CommandError::File { path: path.clone(), reason })
        }
        None => {
            let mut text = String::new();
            std::io::stdin().lock().read_to_string(&mut text)?;
            Ok(text)
        }
    }
}

/// A key as people compare it: its id, in pairs.
pub(super) fn fingerprint(key: &[u8; 32]) -> String {
    match sumpbook_daybook::gate::PublicKey::from_bytes(key) {
        Ok(key) => key.id().0.iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(" "),
        Err(_) => "not a key".to_owned(),
    }
}
