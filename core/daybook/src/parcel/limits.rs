//! How much one parcel may be. Each is looked at before anything of that size is taken.

use crate::gate::bounded;

/// Bytes of a sealed parcel, as they travel.
pub const WIRE: usize = 1024 * 1024;
/// Bytes of a parcel after inflating, envelope included.
pub const INFLATED: usize = bounded::PARCEL.bytes;
/// Window of the compression as a power of two: 4 MiB. A frame may ask a reader for far more.
pub const WINDOW_LOG: u32 = 22;
/// Bytes of one page of an answer, as it travels.
pub const ANSWER_PAGE: usize = 512 * 1024;
/// Entries in one parcel.
pub const ENTRIES: u64 = 2_000;
/// Books whose entries, heads, cursors or digests stand in one parcel.
pub const BOOKS: u64 = 64;
/// Predecessors of one entry.
pub const DEPS: u64 = crate::gate::MOST_DEPS as u64;
/// Bytes of one entry's payload.
pub const PAYLOAD: usize = bounded::ENTRY.bytes;
/// Heads of one book.
pub const HEADS: u64 = 1_024;
/// Heads told by their first 8 bytes alone.
pub const HELD_HEADS: usize = 8_192;
/// Digests of one book.
pub const BUCKETS: u64 = 4_096;
/// Bytes of a name or an address.
pub const TEXT: usize = 256;
