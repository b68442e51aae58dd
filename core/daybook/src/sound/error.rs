//! What can go wrong with a sound.

use std::path::PathBuf;

use crate::photo::PhotoError;

/// Why a sound was not kept or cannot be read. No entry is harmed by any of these.
#[derive(Debug, thiserror::Error)]
pub enum SoundError {
    /// Not one of the kinds.
    #[error(
        "This is no sound that can be kept: WAV of one channel and AAC in MP4 are. What you told stays; this is not kept. Record it here."
    )]
    NotASound,
    /// It ends too early, or its parts do not fit together.
    #[error("This sound is cut off. What you told stays; this sound is not kept. Record it again.")]
    Cut,
    /// It goes on for too long.
    #[error(
        "This sound is longer than 10 seconds. What you told stays; this sound is not kept. Record it again, shorter."
    )]
    TooLong,
    /// Too many bytes.
    #[error(
        "This sound has more than 512 KiB. What you told stays; this sound is not kept. Record it here: that is smaller."
    )]
    TooLarge,
    /// The disk is full.
    #[error("No room on this phone: the defect is kept, the sound is not. Make room, then record it again.")]
    Full,
    /// The file is not what it was.
    #[error("The sound in {} is damaged. The entry that names it is kept. Record it again, in a new entry.", .0.display())]
    Damaged(PathBuf),
    /// The folder cannot be read or written.
    #[error("{} can't be used: {reason}. What you told stays; this sound is not kept.", .path.display())]
    Folder {
        /// Where.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
}

impl SoundError {
    /// Key of its words; none for what only a person at a computer can mend.
    pub fn text_key(&self) -> Option<&'static str> {
        match self {
            SoundError::NotASound => Some("error-not-a-sound"),
            SoundError::Cut => Some("error-sound-cut"),
            SoundError::TooLong => Some("error-sound-too-long"),
            SoundError::TooLarge => Some("error-sound-too-large"),
            SoundError::Full => Some("error-sound-full"),
            SoundError::Damaged(_) => Some("error-sound-damaged"),
            SoundError::Folder { .. } => None,
        }
    }
}

/// What happened to a sound's file: photos and sounds lie in one folder.
impl From<PhotoError> for SoundError {
    fn from(error: PhotoError) -> SoundError {
        match error {
            PhotoError::NotAPhoto => SoundError::NotASound,
            PhotoError::Cut => SoundError::Cut,
            PhotoError::TooLarge => SoundError::TooLarge,
            PhotoError::Full => SoundError::Full,
            PhotoError::Damaged(path) => SoundError::Damaged(path),
            PhotoError::Folder { path, reason } => SoundError::Folder { path, reason },
        }
    }
}
