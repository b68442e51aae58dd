//! `phone DIR sound`: a sound is kept before a defect names it.

use std::path::Path;

use sumpbook_daybook::phone::PhoneError;

use super::super::CommandError;
use super::super::args::Phone;
use super::super::out::Said;
use super::open;

/// Keeps a sound and says its name.
///
/// # Errors
/// When it cannot be read or kept; every entry is.
pub(super) fn keep(args: &Phone, file: &Path) -> Result<Said, CommandError> {
    let mut phone = open(args)?;
    let bytes = std::fs::read(file).map_err(|reason| CommandError::File { path: file.to_owned(), reason })?;
    let sound = phone.keep_sound(&bytes).map_err(PhoneError::from)?;
    Said::new(sound.to_string(), &serde_json::json!({ "sound": sound }))
}
