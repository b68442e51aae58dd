//! Ids of new entries: UUID version 7 (RFC 9562), so that ids sort by the time they were given.

use sumpbook_trade::{EntryId, Stamp};
use uuid::Builder;

/// A new id for an entry begun at this moment.
///
/// # Errors
/// When the system has no randomness to give.
pub fn entry_id(at: Stamp) -> Result<EntryId, getrandom::Error> {
    let mut random = [0u8; 10];
    getrandom::fill(&mut random)?;
    // A clock set before 1970 still gives an id; it only sorts first.
    let ms = u64::try_from(at.unix_ms()).unwrap_or(0);
    Ok(EntryId(Builder::from_unix_timestamp_millis(ms, &random).into_uuid()))
}
