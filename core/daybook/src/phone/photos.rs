//! A phone's photos and sounds: kept before an entry names them, and where each stands.

use std::collections::{BTreeMap, HashSet};

use sumpbook_trade::record::Digest;

use super::{Daybook, PhoneError};
use crate::exchange::not_at_shop;
use crate::photo::{self, PhotoError};
use crate::screen::PhotoPlace;
use crate::sound::{self, SoundError};

impl Daybook {
    /// Keeps a photo, durable when this returns, and gives the name by which an entry can say it. What the camera
    /// wrote about place, owner and device is taken out first. The same photo again changes nothing.
    ///
    /// # Errors
    /// [`PhotoError`]; then nothing of it is kept, and every entry is.
    pub fn keep_photo(&mut self, bytes: &[u8]) -> Result<Digest, PhotoError> {
        self.photos().keep(&photo::cleaned(bytes)?)
    }

    /// Keeps a sound of at most 10 s (WAV, AAC in MP4), durable when this returns, and gives the name by which an answer
    /// can say it. What a recorder wrote about itself, its owner and the place is taken out first.
    ///
    /// # Errors
    /// [`SoundError`]; then nothing of it is kept, and every entry is.
    pub fn keep_sound(&mut self, bytes: &[u8]) -> Result<Digest, SoundError> {
        Ok(self.photos().keep(&sound::cleaned(bytes)?)?)
    }

    /// Where each photo stands, and each sound, that this phone holds and an entry names.
    ///
    /// # Errors
    /// As any read.
    pub fn photos_standing(&self) -> Result<BTreeMap<Digest, PhotoPlace>, PhoneError> {
        let (store, truth) = (self.ledger().store(), self.ledger().store().truth());
        let mut places = BTreeMap::new();
        for photo in self.photos().all()? {
            if truth.naming_photo(photo)?.is_empty() {
                continue;
            }
            let place = match store.photo(photo)? {
                Some(row) if row.there_ms.is_some() => PhotoPlace::AtShop,
                Some(row) if row.reached > 0 => PhotoPlace::Part { percent: percent(row.reached, row.size) },
                _ => PhotoPlace::OnPhone,
            };
            places.insert(photo, place);
        }
        Ok(places)
    }

    /// The photos that can go to the shop: held here, not there yet, and named by an entry that is there.
    ///
    /// # Errors
    /// As any read.
    pub(super) fn photos_to_send(&self) -> Result<Vec<Digest>, PhoneError> {
        let (store, truth) = (self.ledger().store(), self.ledger().store().truth());
        let mut here: Option<HashSet<i64>> = None;
        let mut to_send = Vec::new();
        for photo in self.photos().all()? {
            if store.photo(photo)?.is_some_and(|row| row.there_ms.is_some()) {
                continue;
            }
            let naming = truth.naming_photo(photo)?;
            if naming.is_empty() {
                continue;
            }
            if here.is_none() {
                here = Some(not_at_shop(self.ledger())?.iter().map(|held| held.n).collect());
            }
            if naming.iter().any(|n| here.as_ref().is_some_and(|here| !here.contains(n))) {
                to_send.push(photo);
            }
        }
        Ok(to_send)
    }
}

/// A hundred only when it is whole.
fn percent(reached: u64, size: u64) -> u8 {
    let percent = reached.saturating_mul(100).checked_div(size).unwrap_or(0);
    u8::try_from(percent).unwrap_or(99).min(99)
}
