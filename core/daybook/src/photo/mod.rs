//! Photos: named by what they hold, kept apart from entries, never in their way.
//!
//! An entry names a photo by SHA-256; the photo itself is a file of that name. What a camera writes about place,
//! owner and device is taken out before it is named, so it never leaves the phone. Nothing here decodes a
//! picture: foreign bytes are walked segment by segment and no further.

mod error;
mod folder;
mod jpeg;
mod kind;
mod png;
#[cfg(test)]
mod tests;
mod webp;

pub use error::PhotoError;
pub use folder::PhotoFolder;
pub use kind::PhotoKind;

use sha2::Digest as _;
use sumpbook_trade::record::Digest;

/// Bytes of one photo at most.
pub const MOST: usize = 4 * 1024 * 1024;
/// Bytes of one piece on its way at most.
pub const PIECE: usize = 256 * 1024;

/// The name of a photo: SHA-256 of its bytes.
pub fn name_of(bytes: &[u8]) -> Digest {
    Digest(sha2::Sha256::digest(bytes).into())
}

/// A photo as it is kept: of a kind we know, whole, without what the camera wrote about place, owner and device.
/// Of EXIF only the way it is turned stays, or it would lie on its side.
///
/// # Errors
/// [`PhotoError::NotAPhoto`], [`PhotoError::Cut`], [`PhotoError::TooLarge`].
pub fn cleaned(bytes: &[u8]) -> Result<Vec<u8>, PhotoError> {
    let kind = PhotoKind::of(bytes).ok_or(PhotoError::NotAPhoto)?;
    let clean = match kind {
        PhotoKind::Jpeg => jpeg::cleaned(bytes),
        PhotoKind::Png => png::cleaned(bytes),
        PhotoKind::Webp => webp::cleaned(bytes),
    };
    let clean = clean.ok_or(PhotoError::Cut)?;
    // A motion clip behind the picture is gone by now: what is left is what counts.
    if clean.len() > MOST { Err(PhotoError::TooLarge) } else { Ok(clean) }
}
