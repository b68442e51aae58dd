//! Files that leave the shop whole: a zip with a list of its contents, signed by the shop's key.
//!
//! `manifest.json` names every other file with its length and SHA-256; `manifest.cose` is the shop's signature over
//! it (COSE_Sign1, RFC 9052, Ed25519). A file changed, taken out or put in does not agree with what was signed.

mod read;
mod signed;
mod write;

use std::collections::BTreeMap;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::Digest;
use sumpbook_trade::{FleetId, Stamp};

pub use read::Archive;
pub use write::ArchiveWriter;

/// What an archive is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// Proof about units.
    Evidence,
    /// Every book, for another folder.
    WholeFleet,
    /// The shop's folder, to be restored.
    Backup,
}

/// What stands in `manifest.json`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Manifest {
    /// The form of this file: 1.
    pub sumpbook_archive: u32,
    /// What it is for.
    pub purpose: Purpose,
    /// The fleet.
    pub fleet: FleetId,
    /// Its name.
    pub fleet_name: String,
    /// The shop's public key, in hexadecimal: trust begins here.
    pub shop_key: Digest,
    /// When it was made.
    pub made_at: Stamp,
    /// An invented fleet.
    pub demo: bool,
    /// Entries in it.
    pub entries: usize,
    /// Heads of every book in it, by the book's name: every head in hexadecimal, ascending.
    pub heads: BTreeMap<String, Vec<String>>,
    /// Every other file.
    pub files: BTreeMap<String, Listed>,
}

/// A file of the list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Listed {
    /// Its length.
    pub bytes: u64,
    /// SHA-256 of its bytes, in hexadecimal.
    pub sha256: Digest,
}

/// Why an archive cannot be written or does not hold.
#[derive(Debug, thiserror::Error)]
pub enum ArchiveError {
    /// The file cannot be read or written.
    #[error("{} cannot be used: {}. Nothing was changed.", .path.display(), crate::error::plain(.reason))]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// Not such a file.
    #[error(
        "this is not a file that a shop wrote: {0}. Nothing was changed. Choose the file you were given."
    )]
    NotOurs(&'static str),
    /// Made by a newer version.
    #[error(
        "a newer version made this file (form {0}). Nothing was changed. Update this program, then open it."
    )]
    Newer(u32),
    /// Made for something else.
    #[error("this file was made for something else: it is {}. Nothing was changed.", purpose(*.0))]
    OtherPurpose(Purpose),
    /// What is in it is not what was signed.
    #[error(
        "this file was changed after the shop signed it: {0}. Nothing was changed here. Ask for it again."
    )]
    Changed(String),
    /// It cannot be put together.
    #[error("the file could not be put together: {0}")]
    Zip(String),
}

fn purpose(purpose: Purpose) -> &'static str {
    match purpose {
        Purpose::Evidence => "an evidence pack",
        Purpose::WholeFleet => "a whole fleet",
        Purpose::Backup => "a backup",
    }
}

/// Whether a name may stand in an archive: parts of letters, digits, `-`, `_` and points, none of which leads upwards.
fn is_plain(name: &str) -> bool {
    let part = |part: &str| {
        !part.is_empty()
            && !part.starts_with('.')
            && part.bytes().all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_' | b'.'))
    };
    name.len() <= 200 && name.split('/').all(part)
}

/// A text as part of a file's name: a door number can hold anything.
pub(crate) fn file_name(text: &str) -> String {
    let plain: String =
        text.chars().map(|c| if c.is_ascii_alphanumeric() || c == '-' { c } else { '_' }).take(40).collect();
    if plain.is_empty() { "unit".to_owned() } else { plain }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_lead_nowhere_else() {
        for name in ["books/TH-01-2026.automerge", "a", "photos/00ff"] {
            assert!(is_plain(name), "{name}");
        }
        for name in ["", "/a", "a/../b", "..", "a//b", "a\\b", ".x", "a\0", "ä", "c:x"] {
            assert!(!is_plain(name), "{name}");
        }
        assert_eq!(file_name("TH 01/../x\r\n"), "TH_01____x__");
    }
}
