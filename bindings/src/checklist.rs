//! The checklist every walk follows.

use sumpbook_daybook::phone::Daybook;
use sumpbook_trade::Template;

use crate::error::PhoneError;

/// The checklist built into this library, as the shop has it.
pub(crate) fn template(book: &Daybook) -> Result<&Template, PhoneError> {
    let known = book.ledger().fleet().checklist();
    known.map(|known| &**known).map_err(|error| PhoneError::Unexpected { reason: error.to_string() })
}
