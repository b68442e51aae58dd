//! `phone DIR photo`: a photo is kept before an entry names it.

use std::path::Path;

use sumpbook_daybook::phone::PhoneError;

use super::super::CommandError;
use super::super::args::Phone;
use super::super::out::Said;
use super::open;

/// Keeps a photo and says its name.
///
/// # Errors
/// When it cannot be read or kept; every entry is.
pub(super) fn keep(args: &Phone, file: &Path) -> Result<Said, CommandError> {
    let mut phone = open(args)?;
    let bytes = std::fs::read(file).map_err(|reason| CommandError::File { path: file.to_owned(), reason })?;
    let photo = phone.keep_photo(&bytes).map_err(PhoneError::from)?;
    Said::new(photo.to_string(), &serde_json::json!({ "photo": photo }))
}
