//! Writing an archive.

use std::collections::BTreeMap;
use std::fs::{File, OpenOptions};
use std::io::{BufWriter, Read, Write};
use std::path::{Path, PathBuf};

use sha2::{Digest as _, Sha256};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Stamp;
use sumpbook_trade::record::Digest;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

use super::{ArchiveError, Listed, Manifest, Purpose, is_plain, signed};

/// An archive that is being written. Without [`ArchiveWriter::finish`] no file of its name stands there.
pub struct ArchiveWriter {
    zip: ZipWriter<BufWriter<File>>,
    manifest: Manifest,
    path: PathBuf,
    beside: Beside,
}

/// The file as it is written. One half-made beside a failed one would only puzzle whoever finds it.
struct Beside(PathBuf);

impl Drop for Beside {
    fn drop(&mut self) {
        // After it was put in its place none is there.
        let _ = std::fs::remove_file(&self.0);
    }
}

/// Files larger than this need the zip's long form.
const LONG: u64 = 0xffff_0000;

impl ArchiveWriter {
    /// Begins one beside its place, for its owner's eyes alone.
    ///
    /// # Errors
    /// When it cannot be written there.
    pub fn begin(
        path: &Path,
        purpose: Purpose,
        ledger: &Ledger,
        now: Stamp,
    ) -> Result<ArchiveWriter, ArchiveError> {
        let mut beside = path.as_os_str().to_owned();
        beside.push(".part");
        let beside = Beside(PathBuf::from(beside));
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let file =
            options.open(&beside.0).map_err(|reason| ArchiveError::File { path: path.to_owned(), reason })?;
        let fleet = ledger.fleet();
        let manifest = Manifest {
            sumpbook_archive: 1,
            purpose,
            fleet: ledger.root().fleet,
            fleet_name: fleet.name.clone(),
            shop_key: Digest(ledger.root().shop.bytes()),
            made_at: now,
            demo: fleet.demo,
            entries: 0,
            heads: BTreeMap::new(),
            files: BTreeMap::new(),
        };
        Ok(ArchiveWriter {
            zip: ZipWriter::new(BufWriter::new(file)),
            manifest,
            path: path.to_owned(),
            beside,
        })
    }

    /// Notes a book that is in it, and how many entries of it.
    pub fn book(&mut self, name: &str, heads: Vec<String>, entries: usize) {
        self.manifest.heads.insert(name.to_owned(), heads);
        self.manifest.entries = self.manifest.entries.saturating_add(entries);
    }

    /// Puts a file in.
    ///
    /// # Errors
    /// When it cannot be written, or its name stands there already.
    pub fn add(&mut self, name: &str, bytes: &[u8]) -> Result<(), ArchiveError> {
        let length = bytes.len() as u64;
        self.start(name, length)?;
        self.zip.write_all(bytes).map_err(|reason| self.failed(reason))?;
        self.listed(name, length, Sha256::digest(bytes).into());
        Ok(())
    }

    /// Puts a file of the disk in, piece by piece.
    ///
    /// # Errors
    /// When it cannot be read or written.
    pub fn add_file(&mut self, name: &str, from: &Path) -> Result<(), ArchiveError> {
        let unread = |reason| ArchiveError::File { path: from.to_owned(), reason };
        let mut file = File::open(from).map_err(unread)?;
        self.start(name, file.metadata().map_err(unread)?.len())?;
        let (mut hash, mut length, mut piece) = (Sha256::new(), 0u64, vec![0; 64 * 1024]);
        loop {
            let read = file.read(&mut piece).map_err(unread)?;
            let Some(bytes) = piece.get(..read).filter(|bytes| !bytes.is_empty()) else { break };
            hash.update(bytes);
            length = length.saturating_add(read as u64);
            self.zip.write_all(bytes).map_err(|reason| self.failed(reason))?;
        }
        self.listed(name, length, hash.finalize().into());
        Ok(())
    }

    /// Signs the list and puts the archive in its place, on the disk when this returns. Gives back the list.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn finish(mut self, ledger: &Ledger) -> Result<Manifest, ArchiveError> {
        let manifest =
            serde_json::to_vec_pretty(&self.manifest).map_err(|e| ArchiveError::Zip(e.to_string()))?;
        let cose = signed::sign(&manifest, ledger.own_key())?;
        for (name, bytes) in [("manifest.json", manifest), ("manifest.cose", cose)] {
            self.zip
                .start_file(name, options(bytes.len() as u64))
                .map_err(|e| ArchiveError::Zip(e.to_string()))?;
            self.zip.write_all(&bytes).map_err(|reason| self.failed(reason))?;
        }
        let failed = |reason| ArchiveError::File { path: self.path.clone(), reason };
        let written = self.zip.finish().map_err(|e| ArchiveError::Zip(e.to_string()))?;
        let file = written.into_inner().map_err(|error| failed(error.into_error()))?;
        file.sync_all().map_err(failed)?;
        std::fs::rename(&self.beside.0, &self.path).map_err(failed)?;
        Ok(self.manifest)
    }

    fn start(&mut self, name: &str, length: u64) -> Result<(), ArchiveError> {
        if !is_plain(name) || self.manifest.files.contains_key(name) {
            return Err(ArchiveError::Zip(format!(
                "'{name}' cannot be a file's name in it, or is one already"
            )));
        }
        self.zip.start_file(name, options(length)).map_err(|e| ArchiveError::Zip(e.to_string()))
    }

    fn listed(&mut self, name: &str, bytes: u64, sha256: [u8; 32]) {
        self.manifest.files.insert(name.to_owned(), Listed { bytes, sha256: Digest(sha256) });
    }

    fn failed(&self, reason: std::io::Error) -> ArchiveError {
        ArchiveError::File { path: self.path.clone(), reason }
    }
}

/// The same bytes for the same contents: no time of the machine stands in them.
fn options(length: u64) -> SimpleFileOptions {
    SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(zip::DateTime::default())
        .unix_permissions(0o644)
        .large_file(length > LONG)
}
