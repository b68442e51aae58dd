//! Checking a pack: every file, every signature, every book's end.

use std::collections::BTreeSet;
use std::path::Path;

use serde::Serialize;
use sumpbook_daybook::gate::{DeviceKey, PublicKey};
use sumpbook_daybook::ledger::{Ledger, Root};
use sumpbook_daybook::store::Store;

use crate::archive::{Archive, Manifest, Purpose};
use crate::whole_fleet::Entries;
use crate::{ShopError, heads, photo_files};

/// What a pack's check found; when there is a report at all, everything holds but what `photos` says.
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
    /// Its photos against what its entries name.
    pub photos: PackPhotos,
}

/// The photos of a pack: each is named by the SHA-256 of its bytes, and an entry names it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct PackPhotos {
    /// Photos that entries name and that are what their names say.
    pub held: usize,
    /// Named by an entry and not in the pack: the shop did not have them. The pack's gaps say so too.
    pub missing: Vec<String>,
    /// In the pack, and no entry names them.
    pub foreign: Vec<String>,
    /// In the pack under a name that is not the SHA-256 of their bytes.
    pub altered: Vec<String>,
}

impl PackPhotos {
    /// Whether every photo in the pack is one that an entry names, and is what its name says.
    pub fn hold(&self) -> bool {
        self.foreign.is_empty() && self.altered.is_empty()
    }

    fn of(ledger: &Ledger, manifest: &Manifest) -> Result<PackPhotos, ShopError> {
        let truth = ledger.store().truth();
        let mut named = BTreeSet::new();
        for book in truth.books()? {
            for held in truth.of_book(book)? {
                named.extend(truth.photos_named_by(held.n)?.into_iter().map(|photo| photo.to_string()));
            }
        }
        let mut photos = PackPhotos::default();
        let prefix = format!("{}/", photo_files::FOLDER);
        let here = manifest.files.iter().filter_map(|(name, file)| Some((name.strip_prefix(&prefix)?, file)));
        for (name, file) in here {
            if file.sha256.to_string() != name {
                photos.altered.push(name.to_owned());
            } else if named.remove(name) {
                photos.held = photos.held.saturating_add(1);
            } else {
                photos.foreign.push(name.to_owned());
            }
        }
        photos.missing = named.into_iter().filter(|name| !photos.altered.contains(name)).collect();
        Ok(photos)
    }
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
    let photos = PackPhotos::of(&ledger, &manifest)?;
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
        photos,
    })
}
