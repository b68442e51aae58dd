//! Photos, kept before an entry names them.

use sumpbook_trade::record::Digest;

use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;

#[uniffi::export]
impl Phone {
    /// Keeps a photo (JPEG, PNG, WebP, at most 4 MiB) and gives the name an entry says it by. What the camera wrote
    /// about place, owner and device is taken out first.
    ///
    /// # Errors
    /// `Photo`; then nothing of it is kept.
    pub fn keep_photo(&self, bytes: Vec<u8>) -> Result<Digest, PhoneError> {
        self.change(ChangeSet::PHOTOS, |book, _| Ok(book.keep_photo(&bytes)?))
    }

    /// A photo this phone holds; none when it does not.
    ///
    /// # Errors
    /// `Photo` when its file is damaged.
    pub fn photo(&self, photo: Digest) -> Result<Option<Vec<u8>>, PhoneError> {
        self.read(|book, _| Ok(book.photos().read(photo)?))
    }
}
