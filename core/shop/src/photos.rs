//! Photos: files in the shop's folder, each named by the SHA-256 of what it holds, so that an entry that names
//! one can be checked against it. What a camera writes beside the picture (place, owner, device) is taken off
//! before it is named.

mod strip;

use std::fs::{self, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};

use sha2::{Digest as _, Sha256};
use sumpbook_trade::record::Digest;

use crate::error::plain;

const FOLDER: &str = "photos";
/// A photo has at most so many bytes.
pub const MOST: usize = 4 * 1024 * 1024;

/// Why a photo is not kept, or not read.
#[derive(Debug, thiserror::Error)]
pub enum PhotoError {
    /// More than a photo may have.
    #[error("this photo has {0} bytes, and a photo has at most 4 MiB. It was not kept. Take it smaller.")]
    TooLarge(usize),
    /// Neither JPEG nor PNG.
    #[error(
        "this is no photo that can be kept: only JPEG and PNG are. It was not kept. Save it as one of them."
    )]
    NotAPhoto,
    /// It ends before its end, or a length in it is none.
    #[error("this photo is damaged. It was not kept. Take it again.")]
    Damaged,
    /// The folder cannot be read or written.
    #[error("{} cannot be used: {}. The photo was not kept; entries are.", .path.display(), plain(.reason))]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
}

/// The photos of one shop.
#[derive(Clone, Debug)]
pub struct Photos {
    folder: PathBuf,
}

impl Photos {
    /// Those of a shop's folder.
    pub fn of(shop: &Path) -> Photos {
        Photos { folder: shop.join(FOLDER) }
    }

    /// Keeps a photo, without what the camera wrote beside it; it is on the disk when this returns. The same
    /// picture is kept once.
    ///
    /// # Errors
    /// When it is too large, no photo, damaged, or cannot be written; then nothing is kept.
    pub fn keep(&self, bytes: &[u8]) -> Result<Digest, PhotoError> {
        if bytes.len() > MOST {
            return Err(PhotoError::TooLarge(bytes.len()));
        }
        let bare = match kind(bytes) {
            Some("image/jpeg") => strip::jpeg(bytes).ok_or(PhotoError::Damaged)?,
            Some("image/png") => strip::png(bytes).ok_or(PhotoError::Damaged)?,
            _ => return Err(PhotoError::NotAPhoto),
        };
        let digest = Digest(Sha256::digest(&bare).into());
        let path = self.path(digest);
        if path.exists() {
            return Ok(digest);
        }
        fs::create_dir_all(&self.folder).map_err(|reason| self.failed(reason))?;
        // Beside it and then in its place: a file of that name is always whole.
        let beside = self.folder.join(format!("{digest}.new"));
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let mut file = options.open(&beside).map_err(|reason| self.failed(reason))?;
        file.write_all(&bare).and_then(|()| file.sync_all()).map_err(|reason| self.failed(reason))?;
        fs::rename(&beside, &path).map_err(|reason| self.failed(reason))?;
        // The name too must outlive a loss of power, where the system lets a folder be synced.
        #[cfg(unix)]
        fs::File::open(&self.folder)
            .and_then(|folder| folder.sync_all())
            .map_err(|reason| self.failed(reason))?;
        Ok(digest)
    }

    /// A photo with its kind (a media type); none when it is not here, or its bytes are no longer those of its
    /// name.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn read(&self, digest: Digest) -> Result<Option<(&'static str, Vec<u8>)>, PhotoError> {
        match fs::read(self.path(digest)) {
            Ok(bytes) if Digest(Sha256::digest(&bytes).into()) == digest => {
                Ok(kind(&bytes).map(|kind| (kind, bytes)))
            }
            Ok(_) => Ok(None),
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(None),
            Err(reason) => Err(self.failed(reason)),
        }
    }

    fn path(&self, digest: Digest) -> PathBuf {
        self.folder.join(digest.to_string())
    }

    fn failed(&self, reason: std::io::Error) -> PhotoError {
        PhotoError::File { path: self.folder.clone(), reason }
    }
}

/// What the first bytes say it is.
fn kind(bytes: &[u8]) -> Option<&'static str> {
    match bytes {
        [0xff, 0xd8, 0xff, ..] => Some("image/jpeg"),
        [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, ..] => Some("image/png"),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_photo_is_named_by_what_it_holds_and_kept_once() {
        let folder = tempfile::tempdir().unwrap();
        let photos = Photos::of(folder.path());
        let photo = strip::tests::jpeg_of_a_camera();
        let digest = photos.keep(&photo).unwrap();
        assert_eq!(photos.keep(&photo).unwrap(), digest);
        let (kind, bytes) = photos.read(digest).unwrap().unwrap();
        assert_eq!(kind, "image/jpeg");
        assert_eq!(Digest(Sha256::digest(&bytes).into()), digest);
        assert!(!bytes.windows(4).any(|four| four == b"Exif"), "the camera's words are off");
        assert_eq!(photos.keep(&bytes).unwrap(), digest, "a bare photo is itself");
        let held: Vec<_> = fs::read_dir(folder.path().join(FOLDER)).unwrap().collect();
        assert_eq!(held.len(), 1);
        fs::write(folder.path().join(FOLDER).join(digest.to_string()), b"other").unwrap();
        assert!(photos.read(digest).unwrap().is_none(), "bytes that are not its name's are not shown");
    }

    #[test]
    fn what_is_no_photo_is_refused() {
        let folder = tempfile::tempdir().unwrap();
        let photos = Photos::of(folder.path());
        assert!(matches!(photos.keep(&vec![0; MOST + 1]), Err(PhotoError::TooLarge(_))));
        assert!(matches!(photos.keep(b"<svg onload='x'/>"), Err(PhotoError::NotAPhoto)));
        assert!(matches!(photos.keep(b""), Err(PhotoError::NotAPhoto)));
        let whole = strip::tests::jpeg_of_a_camera();
        for end in 3..whole.len() {
            assert!(matches!(photos.keep(&whole[..end]), Err(PhotoError::Damaged)), "cut at {end}");
        }
        assert!(!folder.path().join(FOLDER).exists());
        assert!(photos.read(Digest([7; 32])).unwrap().is_none());
    }
}
