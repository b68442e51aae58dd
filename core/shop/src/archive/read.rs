//! Reading an archive: nothing in it is believed before the list and the signature over it hold.

use std::collections::BTreeSet;
use std::fs::File;
use std::io::{BufReader, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use sha2::{Digest as _, Sha256};
use sumpbook_daybook::gate::PublicKey;
use zip::ZipArchive;

use super::{ArchiveError, Manifest, Purpose, is_plain, signed};

/// The list holds at most so many bytes.
const MOST_LIST: u64 = 32 * 1024 * 1024;
/// An archive holds at most so many files.
const MOST_FILES: usize = 100_000;

/// An archive whose list was signed by the key it names. Whether that is the key of one's own shop is for the
/// caller to ask.
pub struct Archive {
    zip: ZipArchive<BufReader<File>>,
    manifest: Manifest,
    key: PublicKey,
    path: PathBuf,
}

impl Archive {
    /// Opens one and checks its list: the signature over it, and that it names exactly the files that are there.
    ///
    /// # Errors
    /// When it is no such file, is for something else, or was changed.
    pub fn open(path: &Path, purpose: Purpose) -> Result<Archive, ArchiveError> {
        let file = File::open(path).map_err(|reason| ArchiveError::File { path: path.to_owned(), reason })?;
        let mut file = BufReader::new(file);
        let counted = counted(&mut file).ok_or(ArchiveError::NotOurs("it is no zip"))?;
        let mut zip = ZipArchive::new(file).map_err(|_| ArchiveError::NotOurs("it is no zip"))?;
        // A zip can name one file twice, and readers differ in which of the two they show.
        if counted != zip.len() as u64 {
            return Err(ArchiveError::Changed("it holds a file twice".to_owned()));
        }
        if zip.len() > MOST_FILES {
            return Err(ArchiveError::NotOurs("it holds too many files"));
        }
        let bytes =
            whole(&mut zip, "manifest.json", MOST_LIST).ok_or(ArchiveError::NotOurs("it has no list"))?;
        let cose = whole(&mut zip, "manifest.cose", MOST_LIST)
            .ok_or(ArchiveError::NotOurs("its list is not signed"))?;
        let form: Option<u64> = serde_json::from_slice::<serde_json::Value>(&bytes)
            .ok()
            .and_then(|value| value.get("sumpbook-archive")?.as_u64());
        match form {
            Some(1) => {}
            Some(newer) if newer > 1 => {
                return Err(ArchiveError::Newer(u32::try_from(newer).unwrap_or(u32::MAX)));
            }
            _ => return Err(ArchiveError::NotOurs("its list does not read")),
        }
        let manifest: Manifest =
            serde_json::from_slice(&bytes).map_err(|_| ArchiveError::NotOurs("its list does not read"))?;
        let key = PublicKey::from_bytes(&manifest.shop_key.0)
            .map_err(|_| ArchiveError::NotOurs("the key in its list is none"))?;
        if !signed::holds(&bytes, &cose, &key) {
            return Err(ArchiveError::Changed("the signature over its list does not hold".to_owned()));
        }
        if manifest.purpose != purpose {
            return Err(ArchiveError::OtherPurpose(manifest.purpose));
        }
        let mut there = BTreeSet::new();
        for name in zip.file_names() {
            if !is_plain(name) {
                return Err(ArchiveError::Changed("it holds a file whose name leads elsewhere".to_owned()));
            }
            if !matches!(name, "manifest.json" | "manifest.cose") {
                there.insert(name.to_owned());
            }
        }
        if let Some(more) = there.iter().find(|name| !manifest.files.contains_key(*name)) {
            return Err(ArchiveError::Changed(format!("{more} was put in")));
        }
        if let Some(lost) = manifest.files.keys().find(|name| !there.contains(*name)) {
            return Err(ArchiveError::Changed(format!("{lost} was taken out")));
        }
        Ok(Archive { zip, manifest, key, path: path.to_owned() })
    }

    /// Its list.
    pub fn manifest(&self) -> &Manifest {
        &self.manifest
    }

    /// The key that signed it.
    pub fn key(&self) -> PublicKey {
        self.key
    }

    /// One file, whole, when it is there. `most` bytes at most are read.
    ///
    /// # Errors
    /// When it is larger, or is not what was signed.
    pub fn read(&mut self, name: &str, most: u64) -> Result<Option<Vec<u8>>, ArchiveError> {
        let mut bytes = Vec::new();
        Ok(self.copy(name, most, &mut bytes)?.then_some(bytes))
    }

    /// Writes one file into a new file of the disk, when it is there.
    ///
    /// # Errors
    /// When it is not what was signed, or cannot be written.
    pub fn extract(&mut self, name: &str, to: &Path) -> Result<bool, ArchiveError> {
        let unwritten = |reason| ArchiveError::File { path: to.to_owned(), reason };
        let mut options = std::fs::OpenOptions::new();
        options.write(true).create_new(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        if !self.manifest.files.contains_key(name) {
            return Ok(false);
        }
        let mut file = options.open(to).map_err(unwritten)?;
        self.copy(name, u64::MAX, &mut file)?;
        file.sync_all().map_err(unwritten)?;
        Ok(true)
    }

    /// Checks every file against the list.
    ///
    /// # Errors
    /// The first that is not what was signed.
    pub fn check(&mut self) -> Result<(), ArchiveError> {
        let names: Vec<String> = self.manifest.files.keys().cloned().collect();
        for name in names {
            self.copy(&name, u64::MAX, &mut std::io::sink())?;
        }
        Ok(())
    }

    /// Copies one file as far as its signed length and holds it to its digest: a small file that says it is
    /// short and inflates without end is cut off there.
    fn copy(&mut self, name: &str, most: u64, to: &mut impl Write) -> Result<bool, ArchiveError> {
        let Some(listed) = self.manifest.files.get(name).cloned() else { return Ok(false) };
        let changed = || ArchiveError::Changed(format!("{name} is not as it was"));
        if listed.bytes > most {
            return Err(ArchiveError::NotOurs("a file in it is larger than such a file can be"));
        }
        let file = self.zip.by_name(name).map_err(|_| changed())?;
        let mut limited = file.take(listed.bytes.saturating_add(1));
        let (mut hash, mut length, mut piece) = (Sha256::new(), 0u64, vec![0; 64 * 1024]);
        loop {
            let read = limited.read(&mut piece).map_err(|_| changed())?;
            let Some(bytes) = piece.get(..read).filter(|bytes| !bytes.is_empty()) else { break };
            hash.update(bytes);
            length = length.saturating_add(read as u64);
            if length > listed.bytes {
                return Err(changed());
            }
            to.write_all(bytes).map_err(|reason| ArchiveError::File { path: self.path.clone(), reason })?;
        }
        let digest: [u8; 32] = hash.finalize().into();
        if length != listed.bytes || digest != listed.sha256.0 {
            return Err(changed());
        }
        Ok(true)
    }
}

/// How many files a zip says it has, in the record at its very end (APPNOTE 4.3.16, and 4.3.14 for many).
fn counted(file: &mut BufReader<File>) -> Option<u64> {
    let mut end = [0; 22];
    let at = file.seek(SeekFrom::End(-22)).ok()?;
    file.read_exact(&mut end).ok()?;
    let [b'P', b'K', 5, 6, _, _, _, _, _, _, low, high, ..] = end else { return None };
    let few = u16::from_le_bytes([low, high]);
    if few < u16::MAX {
        return Some(u64::from(few));
    }
    let mut locator = [0; 20];
    file.seek(SeekFrom::Start(at.checked_sub(20)?)).ok()?;
    file.read_exact(&mut locator).ok()?;
    let record = locator.strip_prefix(b"PK\x06\x07".as_slice())?.get(4..12)?;
    file.seek(SeekFrom::Start(u64::from_le_bytes(record.try_into().ok()?))).ok()?;
    let mut many = [0; 56];
    file.read_exact(&mut many).ok()?;
    let many = many.strip_prefix(b"PK\x06\x06".as_slice())?;
    Some(u64::from_le_bytes(many.get(28..36)?.try_into().ok()?))
}

fn whole(zip: &mut ZipArchive<BufReader<File>>, name: &str, most: u64) -> Option<Vec<u8>> {
    let file = zip.by_name(name).ok()?;
    let mut bytes = Vec::new();
    let read = file.take(most.saturating_add(1)).read_to_end(&mut bytes).ok()?;
    (read as u64 <= most).then_some(bytes)
}
