//! Checking a pack: every file, every signature, every book's end.

use std::path::Path;

use serde::Serialize;
use sumpbook_daybook::gate::{DeviceKey, PublicKey};
use sumpbook_daybook::ledger::{Ledger, Root};
use sumpbook_daybook::store::Store;

use crate::archive::{Archive, Purpose};
use crate::whole_fleet::Entries;
use crate::{ShopError, heads};

/// What a pack's check found; every part of it holds when there is a report at all.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct PackReport {
    /// The fleet's name as the pack says it.
    pub fleet: String,
    /// The shop's key, as people compare it.
    pub key: String,
    /// Whether that is the key that was asked for; none when nobody said one.
    pub is_the_key_asked_for: Option<bool>,
    /// When it was made.
    pub made_at: sumpbook_trade::Stamp,
    /// Files whose bytes are those that were signed.
    pub files: usize,
    /// Entries whose signatures, hashes and places hold.
    pub entries: usize,
    /// Books that end where the list says.
    pub books: usize,
}

/// Checks a pack with nothing but what it holds: its list and the shop's signature over it, every file, every entry
/// through the gate, every book's end. Whether its key is the shop's must be known from elsewhere: `key`.
///
/// # Errors
/// The first thing that does not hold.
pub fn verify_pack(file: &Path, key: Option<&str>) -> Result<PackReport, ShopError> {
    let mut archive = Archive::open(file, Purpose::Evidence)?;
    archive.check()?;
    let manifest = archive.manifest().clone();
    let shop: PublicKey = archive.key();
    let root = Root { fleet: manifest.fleet, shop };
    // It writes nothing: any key will do.
    let own = DeviceKey::generate().map_err(sumpbook_daybook::ledger::LedgerError::from)?;
    let mut ledger = Ledger::over(Store::in_memory()?, root, own)?;
    let entries = Entries::read(&mut archive, &manifest)?;
    entries.take_into(&mut ledger, &manifest)?;
    let fingerprint = heads::fingerprint(&shop);
    let plain = |text: &str| text.replace([' ', ':', '-'], "").to_uppercase();
    Ok(PackReport {
        fleet: manifest.fleet_name,
        is_the_key_asked_for: key.map(|key| plain(key) == plain(&fingerprint)),
        key: fingerprint,
        made_at: manifest.made_at,
        files: manifest.files.len(),
        entries: manifest.entries,
        books: manifest.heads.len(),
    })
}
