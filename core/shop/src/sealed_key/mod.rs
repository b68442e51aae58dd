//! The shop's key, sealed by a phrase: so that a backup can be carried about and is worth nothing without it.
//!
//! Argon2id (RFC 9106) works a key out of the phrase, ChaCha20-Poly1305 (RFC 8439) seals the shop's key with it. The
//! phrase is shown once and never kept; the sealed key stands in the shop's folder beside the open one.

mod phrase;

use std::path::{Path, PathBuf};

use argon2::{Algorithm, Argon2, Params, Version};
use chacha20poly1305::aead::{Aead, KeyInit, Payload};
use chacha20poly1305::{ChaCha20Poly1305, Key, Nonce};
use data_encoding::HEXLOWER;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::gate::{DeviceKey, PublicKey};
use sumpbook_trade::FleetId;

pub use phrase::{Phrase, PhraseError};

/// The sealed key's file, in the shop's folder and in every backup.
pub const FILE: &str = "shop.key.sealed";

/// RFC 9106, section 4, second recommended option: 3 passes over 64 MiB; one lane instead of four.
const MEMORY_KIB: u32 = 64 * 1024;
const PASSES: u32 = 3;
const LANES: u32 = 1;
/// More than this nobody's file may ask of this computer.
const MOST_MEMORY_KIB: u32 = 1024 * 1024;
const MOST_PASSES: u32 = 32;

/// A sealed key as it stands in its file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct Sealed {
    /// The form of this file: 1.
    sumpbook_sealed_key: u32,
    argon2id: Cost,
    salt: String,
    nonce: String,
    sealed: String,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct Cost {
    memory_kib: u32,
    passes: u32,
    lanes: u32,
}

/// Why a key cannot be sealed or opened.
#[derive(Debug, thiserror::Error)]
pub enum SealError {
    /// The phrase is none.
    #[error(transparent)]
    Phrase(#[from] PhraseError),
    /// Another phrase, or a changed file.
    #[error(
        "this phrase does not open the shop's key. Nothing was changed. It is the one shown when this shop was made, or by the last `sumpbook phrase`."
    )]
    Closed,
    /// The file does not read.
    #[error("the sealed key does not read. Nothing was changed. Take another backup.")]
    Broken,
    /// No phrase was ever made.
    #[error("{} has no phrase yet, so its key cannot be sealed. Nothing was written. Make one: sumpbook phrase", .0.display())]
    NoPhrase(PathBuf),
    /// The file cannot be written.
    #[error("{} cannot be written: {}. The phrase shown before still holds.", .path.display(), crate::error::plain(.reason))]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// The system has no randomness.
    #[error("the system gives no random numbers. Nothing was changed.")]
    Random,
}

/// Seals the shop's key anew and keeps it in the folder; gives back the phrase, which is kept nowhere. An earlier
/// phrase opens earlier backups and no later ones.
///
/// # Errors
/// When the file cannot be written; and when the system has no randomness.
pub fn make_phrase(folder: &Path, fleet: FleetId, key: &DeviceKey) -> Result<Phrase, SealError> {
    let phrase = Phrase::generate().map_err(|_| SealError::Random)?;
    let sealed = seal(&phrase, fleet, key)?;
    let path = folder.join(FILE);
    let beside = folder.join(format!("{FILE}.new"));
    let failed = |reason| SealError::File { path: path.clone(), reason };
    let _ = std::fs::remove_file(&beside);
    crate::shop::private(&beside, &sealed).map_err(failed)?;
    std::fs::rename(&beside, &path).map_err(failed)?;
    Ok(phrase)
}

/// The sealed key of a folder.
///
/// # Errors
/// When none was made.
pub fn kept(folder: &Path) -> Result<Vec<u8>, SealError> {
    std::fs::read(folder.join(FILE)).map_err(|_| SealError::NoPhrase(folder.to_owned()))
}

/// Opens a sealed key. It must be the private half of the shop's public one.
///
/// # Errors
/// When the phrase is another, or the file was changed.
pub fn open(
    sealed: &[u8],
    phrase: &Phrase,
    fleet: FleetId,
    shop: &PublicKey,
) -> Result<DeviceKey, SealError> {
    let sealed: Sealed = serde_json::from_slice(sealed).map_err(|_| SealError::Broken)?;
    let cost = sealed.argon2id;
    if sealed.sumpbook_sealed_key != 1
        || cost.memory_kib > MOST_MEMORY_KIB
        || cost.passes > MOST_PASSES
        || cost.lanes > 16
    {
        return Err(SealError::Broken);
    }
    let bytes = |text: &str| HEXLOWER.decode(text.as_bytes()).map_err(|_| SealError::Broken);
    let nonce: [u8; 12] = bytes(&sealed.nonce)?.try_into().map_err(|_| SealError::Broken)?;
    let cipher = cipher(phrase, &bytes(&sealed.salt)?, cost)?;
    let aad = beside(fleet, shop);
    let payload = Payload { msg: &bytes(&sealed.sealed)?, aad: &aad };
    let opened = cipher.decrypt(&Nonce::from(nonce), payload).map_err(|_| SealError::Closed)?;
    let secret: [u8; 32] = opened.try_into().map_err(|_| SealError::Broken)?;
    let key = DeviceKey::from_secret(&secret);
    if key.public() == *shop { Ok(key) } else { Err(SealError::Closed) }
}

fn seal(phrase: &Phrase, fleet: FleetId, key: &DeviceKey) -> Result<String, SealError> {
    let (mut salt, mut nonce) = ([0; 16], [0; 12]);
    getrandom::fill(&mut salt).and_then(|()| getrandom::fill(&mut nonce)).map_err(|_| SealError::Random)?;
    let cost = Cost { memory_kib: MEMORY_KIB, passes: PASSES, lanes: LANES };
    let aad = beside(fleet, &key.public());
    let payload = Payload { msg: key.secret(), aad: &aad };
    let sealed =
        cipher(phrase, &salt, cost)?.encrypt(&Nonce::from(nonce), payload).map_err(|_| SealError::Broken)?;
    let file = Sealed {
        sumpbook_sealed_key: 1,
        argon2id: cost,
        salt: HEXLOWER.encode(&salt),
        nonce: HEXLOWER.encode(&nonce),
        sealed: HEXLOWER.encode(&sealed),
    };
    serde_json::to_string_pretty(&file).map(|text| text + "\n").map_err(|_| SealError::Broken)
}

fn cipher(phrase: &Phrase, salt: &[u8], cost: Cost) -> Result<ChaCha20Poly1305, SealError> {
    let params =
        Params::new(cost.memory_kib, cost.passes, cost.lanes, Some(32)).map_err(|_| SealError::Broken)?;
    let mut key = [0; 32];
    Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
        .hash_password_into(phrase.secret(), salt, &mut key)
        .map_err(|_| SealError::Broken)?;
    Ok(ChaCha20Poly1305::new(&Key::from(key)))
}

/// What is bound to the sealed key and not secret: a key of one fleet cannot be given out as another's.
fn beside(fleet: FleetId, shop: &PublicKey) -> Vec<u8> {
    [b"sumpbook shop key 1".as_slice(), &fleet.bytes(), &shop.bytes()].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_phrase_opens_its_key_and_nothing_else_does() {
        let folder = tempfile::tempdir().unwrap();
        let (fleet, key) = (FleetId::from_bytes([5; 16]), DeviceKey::from_secret(&[7; 32]));
        assert!(matches!(kept(folder.path()), Err(SealError::NoPhrase(_))));
        let phrase = make_phrase(folder.path(), fleet, &key).unwrap();
        let sealed = kept(folder.path()).unwrap();
        let text = String::from_utf8(sealed.clone()).unwrap();
        assert!(!text.contains(&HEXLOWER.encode(key.secret())), "the key stands in the open");
        assert_eq!(open(&sealed, &phrase, fleet, &key.public()).unwrap().secret(), key.secret());
        let other = Phrase::generate().unwrap();
        assert!(matches!(open(&sealed, &other, fleet, &key.public()), Err(SealError::Closed)));
        let elsewhere = FleetId::from_bytes([6; 16]);
        assert!(matches!(open(&sealed, &phrase, elsewhere, &key.public()), Err(SealError::Closed)));
        let costly = text.replace("65536", "4000000000");
        assert!(matches!(open(costly.as_bytes(), &phrase, fleet, &key.public()), Err(SealError::Broken)));
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let mode = std::fs::metadata(folder.path().join(FILE)).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, 0o600);
        }
        make_phrase(folder.path(), fleet, &key).unwrap();
        let anew = kept(folder.path()).unwrap();
        assert!(matches!(open(&anew, &phrase, fleet, &key.public()), Err(SealError::Closed)));
    }
}
