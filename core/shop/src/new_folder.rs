//! A shop's folder made whole or not at all: put together beside its place, then put there.

use std::path::{Path, PathBuf};

use sumpbook_daybook::gate::DeviceKey;
use sumpbook_trade::FleetId;
use sumpbook_trade::record::Digest;

use crate::archive::Archive;
use crate::shop::{FLEET_FILE, KEY_FILE, private};
use crate::{ShopError, photo_files, sealed_key};

pub(crate) struct NewFolder {
    made: tempfile::TempDir,
    place: PathBuf,
}

impl NewFolder {
    /// Begins one. At its place nothing may stand but an empty folder.
    ///
    /// # Errors
    /// When something stands there, or nothing can be made beside it.
    pub(crate) fn beside(place: &Path) -> Result<NewFolder, ShopError> {
        let failed = |reason| ShopError::Folder { path: place.to_owned(), reason };
        match std::fs::read_dir(place) {
            Ok(files) => {
                if files.count() > 0 {
                    return Err(ShopError::NotEmpty(place.to_owned()));
                }
            }
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => {}
            Err(error) => return Err(failed(error)),
        }
        let parent = place.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
        std::fs::create_dir_all(parent).map_err(failed)?;
        let made = tempfile::Builder::new().prefix(".sumpbook-").tempdir_in(parent).map_err(failed)?;
        Ok(NewFolder { made, place: place.to_owned() })
    }

    /// Where it is put together.
    pub(crate) fn path(&self) -> &Path {
        self.made.path()
    }

    /// Keeps the shop's key, open and sealed, and the fleet's id.
    ///
    /// # Errors
    /// When they cannot be written.
    pub(crate) fn keep_key(&self, key: &DeviceKey, fleet: FleetId, sealed: &[u8]) -> Result<(), ShopError> {
        let sealed = String::from_utf8_lossy(sealed);
        private(&self.path().join(KEY_FILE), &format!("{}\n", Digest(*key.secret())))
            .map_err(|e| self.failed(e))?;
        private(&self.path().join(sealed_key::FILE), &sealed).map_err(|e| self.failed(e))?;
        std::fs::write(self.path().join(FLEET_FILE), format!("{fleet}\n")).map_err(|e| self.failed(e))
    }

    /// Takes the photos of an archive, each of which must be what its name says.
    ///
    /// # Errors
    /// When one cannot be written or was changed.
    pub(crate) fn take_photos(&self, archive: &mut Archive) -> Result<(), ShopError> {
        let prefix = format!("{}/", photo_files::FOLDER);
        let listed = &archive.manifest().files;
        let named = listed.iter().filter_map(|(name, file)| {
            let photo = name.strip_prefix(&prefix).filter(|photo| photo_files::is_digest(photo))?;
            (file.sha256.to_string() == photo).then(|| (name.clone(), photo.to_owned()))
        });
        let named: Vec<(String, String)> = named.collect();
        let folder = self.path().join(photo_files::FOLDER);
        if !named.is_empty() {
            std::fs::create_dir_all(&folder).map_err(|e| self.failed(e))?;
        }
        for (name, photo) in named {
            archive.extract(&name, &folder.join(photo))?;
        }
        Ok(())
    }

    /// Puts it in its place.
    ///
    /// # Errors
    /// When something stands there meanwhile.
    pub(crate) fn put_in_place(self) -> Result<(), ShopError> {
        // Only an empty one goes: whatever came meanwhile stays and is told.
        let _ = std::fs::remove_dir(&self.place);
        let made = self.made.keep();
        std::fs::rename(&made, &self.place).map_err(|reason| {
            let _ = std::fs::remove_dir_all(&made);
            ShopError::Folder { path: self.place.clone(), reason }
        })
    }

    fn failed(&self, reason: std::io::Error) -> ShopError {
        ShopError::Folder { path: self.place.clone(), reason }
    }
}
