//! A folder of photos, each under the SHA-256 of what it holds.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use sumpbook_trade::record::Digest;

use super::{PhotoError, name_of};

/// The folder's name within a phone's or a shop's.
const NAME: &str = "photos";
/// Ending of a file that is being written.
const FRESH: &str = "fresh";

/// The photos of a phone, or of the shop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PhotoFolder {
    path: PathBuf,
}

impl PhotoFolder {
    /// The photos of this phone's or shop's folder. Made with the first photo.
    pub fn of(folder: &Path) -> PhotoFolder {
        PhotoFolder { path: folder.join(NAME) }
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Where a photo is, or would be.
    pub fn file(&self, photo: Digest) -> PathBuf {
        self.path.join(photo.to_string())
    }

    /// Keeps bytes under their name, durable when this returns. The same bytes again change nothing.
    ///
    /// # Errors
    /// [`PhotoError::Full`], [`PhotoError::Folder`]; then nothing is half-kept.
    pub fn keep(&self, bytes: &[u8]) -> Result<Digest, PhotoError> {
        let photo = name_of(bytes);
        let whole = u64::try_from(bytes.len()).ok();
        if self.size(photo)? == whole {
            return Ok(photo);
        }
        let fresh = self.file(photo).with_extension(FRESH);
        let write = || -> io::Result<()> {
            self.make()?;
            let mut file = fs::File::create(&fresh)?;
            file.write_all(bytes)?;
            file.sync_all()?;
            self.name(&fresh, photo)
        };
        write().map_err(|reason| {
            // Half a photo would only take room.
            let _ = fs::remove_file(&fresh);
            PhotoError::of(&self.path, reason)
        })?;
        Ok(photo)
    }

    /// Gives a whole file its name, durably.
    ///
    /// # Errors
    /// What the system said.
    pub fn name(&self, file: &Path, photo: Digest) -> io::Result<()> {
        fs::rename(file, self.file(photo))?;
        sync(&self.path)
    }

    /// Makes the folder.
    ///
    /// # Errors
    /// What the system said.
    pub fn make(&self) -> io::Result<()> {
        if self.path.is_dir() {
            return Ok(());
        }
        fs::create_dir_all(&self.path)?;
        self.path.parent().map_or(Ok(()), sync)
    }

    /// Bytes of a photo; none when it is not here.
    ///
    /// # Errors
    /// [`PhotoError::Folder`].
    pub fn size(&self, photo: Digest) -> Result<Option<u64>, PhotoError> {
        match fs::metadata(self.file(photo)) {
            Ok(found) => Ok(Some(found.len())),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(reason) => Err(PhotoError::of(&self.path, reason)),
        }
    }

    /// A photo, looked at whole; none when it is not here.
    ///
    /// # Errors
    /// [`PhotoError::Damaged`] when it is not what its name says; [`PhotoError::Folder`].
    pub fn read(&self, photo: Digest) -> Result<Option<Vec<u8>>, PhotoError> {
        let path = self.file(photo);
        match fs::read(&path) {
            Ok(bytes) if name_of(&bytes) == photo => Ok(Some(bytes)),
            Ok(_) => Err(PhotoError::Damaged(path)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(reason) => Err(PhotoError::of(&self.path, reason)),
        }
    }

    /// Every photo here, by name.
    ///
    /// # Errors
    /// [`PhotoError::Folder`].
    pub fn all(&self) -> Result<Vec<Digest>, PhotoError> {
        let listed = match fs::read_dir(&self.path) {
            Ok(listed) => listed,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
            Err(reason) => return Err(PhotoError::of(&self.path, reason)),
        };
        let names = listed.flatten().filter_map(|entry| entry.file_name().into_string().ok());
        let mut photos: Vec<Digest> = names.filter_map(|name| name.parse().ok()).collect();
        photos.sort_unstable();
        Ok(photos)
    }
}

/// Makes a new name in a folder durable; where folders cannot be opened the rename has to do.
fn sync(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { fs::File::open(folder)?.sync_all() } else { Ok(()) }
}
