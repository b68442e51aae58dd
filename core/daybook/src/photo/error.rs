//! What can go wrong with a photo.

use std::io;
use std::path::{Path, PathBuf};

/// Why a photo was not kept or cannot be read. No entry is harmed by any of these.
#[derive(Debug, thiserror::Error)]
pub enum PhotoError {
    /// Not one of the kinds.
    #[error(
        "This is no photo: JPEG, PNG and WebP are kept. What you signed is kept; this is not. Take another."
    )]
    NotAPhoto,
    /// It ends too early, or its parts do not fit together.
    #[error("This photo is cut off. What you signed is kept; this photo is not. Take it again.")]
    Cut,
    /// Too many bytes.
    #[error(
        "This photo has more than 4 MiB. What you signed is kept; this photo is not. Take it again, smaller."
    )]
    TooLarge,
    /// The disk is full.
    #[error("This phone is full. What you signed is kept; this photo is not. Make room, then take it again.")]
    Full,
    /// The file is not what it was.
    #[error("The photo in {} is damaged. The entry that names it is kept. Take it again, in a new entry.", .0.display())]
    Damaged(PathBuf),
    /// The folder cannot be read or written.
    #[error("{} can't be used: {reason}. What you signed is kept; this photo is not.", .path.display())]
    Folder {
        /// Where.
        path: PathBuf,
        /// What the system said.
        reason: io::Error,
    },
}

impl PhotoError {
    /// Key of its words; none for what only a person at a computer can mend.
    pub fn text_key(&self) -> Option<&'static str> {
        match self {
            PhotoError::NotAPhoto => Some("error-not-a-photo"),
            PhotoError::Cut => Some("error-photo-cut"),
            PhotoError::TooLarge => Some("error-photo-too-large"),
            PhotoError::Full => Some("error-phone-full"),
            PhotoError::Damaged(_) => Some("error-photo-damaged"),
            PhotoError::Folder { .. } => None,
        }
    }

    /// What the system said about a file there.
    pub fn of(path: &Path, reason: io::Error) -> PhotoError {
        match reason.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => PhotoError::Full,
            _ => PhotoError::Folder { path: path.to_owned(), reason },
        }
    }
}
