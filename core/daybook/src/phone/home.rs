//! What a folder is: whose fleet, which shop, what this device is called.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use sumpbook_trade::FleetId;
use sumpbook_trade::record::Digest;

use super::PhoneError;
use crate::gate::PublicKey;
use crate::ledger::Root;

/// The file's name within the folder.
const FILE: &str = "home.json";
/// The form this program writes.
const FORM: u32 = 1;

/// Written last when a phone is set up, so that a folder with a home is complete.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Home {
    /// The form of this file.
    pub form: u32,
    /// The fleet.
    pub fleet: FleetId,
    /// What the fleet called itself when it invited.
    pub fleet_name: String,
    /// The shop's public key, 32 bytes.
    pub shop: Digest,
    /// What this device is called.
    pub device: String,
    /// Where the hub stands, `host:port`; none while files are the only way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hub: Option<String>,
}

impl Home {
    /// A home of this fleet.
    pub fn new(root: Root, fleet_name: &str, device: &str, hub: Option<String>) -> Home {
        Home {
            form: FORM,
            fleet: root.fleet,
            fleet_name: fleet_name.to_owned(),
            shop: Digest(root.shop.bytes()),
            device: device.to_owned(),
            hub,
        }
    }

    /// Whether the folder has a home.
    pub fn exists(folder: &Path) -> bool {
        folder.join(FILE).exists()
    }

    /// Where trust begins.
    ///
    /// # Errors
    /// [`PhoneError::Home`] when the shop's key is no key.
    pub fn root(&self, folder: &Path) -> Result<Root, PhoneError> {
        let shop = PublicKey::from_bytes(&self.shop.0)
            .map_err(|error| unreadable(&folder.join(FILE), error.to_string()))?;
        Ok(Root { fleet: self.fleet, shop })
    }

    /// Reads a folder's home.
    ///
    /// # Errors
    /// [`PhoneError::NotEnrolled`] when there is none, [`PhoneError::NewerHome`], [`PhoneError::Home`].
    pub fn read(folder: &Path) -> Result<Home, PhoneError> {
        let path = folder.join(FILE);
        let bytes = match fs::read(&path) {
            Ok(bytes) => bytes,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                return Err(PhoneError::NotEnrolled(folder.to_owned()));
            }
            Err(error) => return Err(unreadable(&path, error.to_string())),
        };
        let home: Home =
            serde_json::from_slice(&bytes).map_err(|error| unreadable(&path, error.to_string()))?;
        if home.form > FORM { Err(PhoneError::NewerHome) } else { Ok(home) }
    }

    /// Writes it beside, forces it to the disk, and only then gives it its name: stopped at any moment, the
    /// folder has the whole file or none.
    ///
    /// # Errors
    /// [`PhoneError::Home`].
    pub fn write(&self, folder: &Path) -> Result<(), PhoneError> {
        let path = folder.join(FILE);
        let write = || -> io::Result<()> {
            fs::create_dir_all(folder)?;
            let fresh = path.with_extension("fresh");
            let mut file = fs::File::create(&fresh)?;
            file.write_all(&serde_json::to_vec_pretty(self)?)?;
            file.sync_all()?;
            fs::rename(&fresh, &path)?;
            sync_folder(folder)
        };
        write().map_err(|error| unreadable(&path, error.to_string()))
    }
}

fn unreadable(path: &Path, reason: String) -> PhoneError {
    PhoneError::Home { path: PathBuf::from(path), reason }
}

/// Makes a new name in a folder durable; where folders cannot be opened the rename has to do.
pub(super) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { fs::File::open(folder)?.sync_all() } else { Ok(()) }
}
