//! Photos in the shop's folder: each a file named by the SHA-256 of its bytes.

use std::path::{Path, PathBuf};

/// Their folder within the shop's.
pub(crate) const FOLDER: &str = "photos";

/// Every photo kept here: its name and its file, by name.
pub(crate) fn kept(shop: &Path) -> Vec<(String, PathBuf)> {
    let Ok(files) = std::fs::read_dir(shop.join(FOLDER)) else { return Vec::new() };
    let mut photos: Vec<(String, PathBuf)> = files
        .filter_map(Result::ok)
        .filter_map(|file| Some((file.file_name().to_str()?.to_owned(), file.path())))
        .filter(|(name, path)| is_digest(name) && path.is_file())
        .collect();
    photos.sort();
    photos
}

/// Whether a name is a SHA-256 in hexadecimal.
pub(crate) fn is_digest(name: &str) -> bool {
    name.len() == 64 && name.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}
