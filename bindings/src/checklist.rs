//! The checklist every walk follows.

use sumpbook_trade::Template;

use crate::error::PhoneError;

/// The checklist built into this library.
pub(crate) fn template() -> Result<&'static Template, PhoneError> {
    Template::common_practice().map_err(|error| PhoneError::Unexpected { reason: error.to_string() })
}
