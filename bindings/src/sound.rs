//! Sounds, kept before an answer names them.

use sumpbook_daybook::sound::SoundError;
use sumpbook_trade::record::Digest;

use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;

#[uniffi::export]
impl Phone {
    /// Keeps a sound (WAV of one channel, AAC in MP4; at most 10 s and 512 KiB) and gives the name an answer says it by.
    /// What a recorder wrote about itself, its owner and the place is taken out first.
    ///
    /// # Errors
    /// `Photo`; then nothing of it is kept.
    pub fn keep_sound(&self, bytes: Vec<u8>) -> Result<Digest, PhoneError> {
        self.change(ChangeSet::PHOTOS, |book, _| Ok(book.keep_sound(&bytes)?))
    }

    /// A sound this phone holds; none when it does not.
    ///
    /// # Errors
    /// `Photo` when its file is damaged.
    pub fn sound(&self, sound: Digest) -> Result<Option<Vec<u8>>, PhoneError> {
        self.read(|book, _| Ok(book.photos().read(sound).map_err(SoundError::from)?))
    }
}
