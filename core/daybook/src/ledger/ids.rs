//! New ids: UUID version 7 (RFC 9562) of a given moment.

use sumpbook_trade::{EntryId, Stamp};

/// An id of this moment: 48 bits of milliseconds, the rest from the system's randomness.
///
/// # Errors
/// When the system has no randomness to give.
pub fn new_id(now: Stamp) -> Result<EntryId, getrandom::Error> {
    let mut random = [0; 10];
    getrandom::fill(&mut random)?;
    let millis = u64::try_from(now.unix_ms()).unwrap_or(0);
    Ok(EntryId(uuid::Builder::from_unix_timestamp_millis(millis, &random).into_uuid()))
}
