//! Keeping the 32 secret bytes: a keystore on a phone, a private file on a desktop.

use std::fs::{self, OpenOptions};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use super::home::sync_folder;

/// Why the secret key could not be kept or given back.
#[derive(Debug, thiserror::Error)]
pub enum KeySealError {
    /// Others can read the key's file.
    #[error(
        "others can read the key in {} (mode {mode:o}). It was not used; nothing was changed. \
         Make it readable by you alone (chmod 600), then try again.", .path.display()
    )]
    Readable {
        /// The file.
        path: PathBuf,
        /// Its permission bits.
        mode: u32,
    },
    /// The file does not hold a key.
    #[error("{} does not hold a key of 32 bytes. Nothing was changed.", .0.display())]
    NotAKey(PathBuf),
    /// The file could not be read or written.
    #[error("the key in {} can't be used: {reason}. Nothing was changed.", .path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system said.
        reason: io::Error,
    },
    /// The platform's keystore said no.
    #[error("the keystore said: {0}. Nothing was changed.")]
    Keystore(String),
}

/// Whatever keeps a device's 32 secret bytes.
pub trait KeySeal {
    /// Keeps the secret, durably, before it returns.
    ///
    /// # Errors
    /// When it could not be kept; then no earlier secret is lost.
    fn seal(&self, secret: &[u8; 32]) -> Result<(), KeySealError>;

    /// Gives the secret back; `None` when none was ever kept.
    ///
    /// # Errors
    /// When there is one that cannot be read, or must not be used.
    fn open(&self) -> Result<Option<[u8; 32]>, KeySealError>;
}

/// A file that only its owner can read (mode 0600).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileSeal {
    path: PathBuf,
}

impl FileSeal {
    /// Keeps the key in this file; its folder is made when it is not there.
    pub fn new(path: impl Into<PathBuf>) -> FileSeal {
        FileSeal { path: path.into() }
    }

    /// Keeps the key beside a folder's book.
    pub fn beside(folder: &Path) -> FileSeal {
        FileSeal::new(folder.join("phone.key"))
    }

    fn failed(&self, reason: io::Error) -> KeySealError {
        KeySealError::File { path: self.path.clone(), reason }
    }

    fn write(&self, secret: &[u8; 32]) -> io::Result<()> {
        let folder = self.path.parent().filter(|folder| !folder.as_os_str().is_empty());
        if let Some(folder) = folder {
            fs::create_dir_all(folder)?;
        }
        let fresh = self.path.with_extension("fresh");
        // Left by a stop in between; its mode may be anything.
        match fs::remove_file(&fresh) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
            _ => {}
        }
        let mut options = OpenOptions::new();
        options.write(true).create_new(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let mut file = options.open(&fresh)?;
        file.write_all(secret)?;
        file.sync_all()?;
        fs::rename(&fresh, &self.path)?;
        folder.map_or(Ok(()), sync_folder)
    }
}

impl KeySeal for FileSeal {
    fn seal(&self, secret: &[u8; 32]) -> Result<(), KeySealError> {
        self.write(secret).map_err(|reason| self.failed(reason))
    }

    fn open(&self) -> Result<Option<[u8; 32]>, KeySealError> {
        let file = match fs::File::open(&self.path) {
            Ok(file) => file,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(reason) => return Err(self.failed(reason)),
        };
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let mode = file.metadata().map_err(|reason| self.failed(reason))?.permissions().mode() & 0o777;
            if mode & 0o077 != 0 {
                return Err(KeySealError::Readable { path: self.path.clone(), mode });
            }
        }
        let mut bytes = Vec::new();
        Read::take(&file, 33).read_to_end(&mut bytes).map_err(|reason| self.failed(reason))?;
        bytes.try_into().map(Some).map_err(|_| KeySealError::NotAKey(self.path.clone()))
    }
}
