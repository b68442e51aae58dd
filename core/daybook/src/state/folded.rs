//! The bytes a folded state is kept as: CBOR with field names, so that a newer program's extra fields do no
//! harm and what does not read is folded again.

use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::ledger::LedgerError;

/// The bytes of a folded state.
///
/// # Errors
/// A value CBOR cannot hold.
pub(crate) fn to_bytes(state: &impl Serialize) -> Result<Vec<u8>, LedgerError> {
    minicbor_serde::to_vec(state).map_err(|error| LedgerError::Folded(error.to_string()))
}

/// The state; none when another version wrote the bytes.
pub(crate) fn from_bytes<T: DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    minicbor_serde::from_slice(bytes).ok()
}
