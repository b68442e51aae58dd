//! Cutting what is to be sent into parcels that any reader takes.

use std::collections::BTreeSet;

use super::ExchangeError;
use crate::book::BookId;
use crate::gate::DeviceKey;
use crate::parcel::{FileWriter, Parcel, Run, limits, pack, seal};
use crate::store::{HeldEntry, Truth};

/// What a place, an id and a signature take beside the payload, at most in the usual case.
const BESIDE: usize = 160;
/// Bytes that one page may have before compression: below the limit of an answer's page as it travels.
const PAGE: usize = limits::ANSWER_PAGE - 96 * 1024;
/// Entries in one parcel of a phone's file: a damaged parcel takes no more than these with it.
pub(super) const FEW: usize = 64;
/// Entries in one parcel of the shop's file, which can be made again at any time.
pub(super) const MANY: usize = 500;

/// Room in one parcel.
pub(super) struct Room {
    entries: usize,
    bytes: usize,
    books: BTreeSet<BookId>,
    most: usize,
    most_bytes: usize,
}

impl Room {
    fn new(most: usize, most_bytes: usize) -> Room {
        Room { entries: 0, bytes: 0, books: BTreeSet::new(), most, most_bytes }
    }

    /// Of one page of an answer.
    pub(super) fn of_answer() -> Room {
        Room::new(usize::try_from(limits::ENTRIES).unwrap_or(usize::MAX), PAGE)
    }

    /// Of a request: what cannot be compressed at all still travels.
    pub(super) fn of_request() -> Room {
        Room::new(usize::try_from(limits::ENTRIES).unwrap_or(usize::MAX), limits::WIRE - 192 * 1024)
    }

    /// Takes an entry when there is room for it. The first always has room.
    pub(super) fn takes(&mut self, held: &HeldEntry) -> bool {
        let size = held.row.payload.len() + 32 * held.row.deps.len() + BESIDE;
        let other_book = !self.books.contains(&held.row.book) && self.books.len() as u64 >= limits::BOOKS;
        let full = self.entries >= self.most || self.bytes + size > self.most_bytes || other_book;
        if full && self.entries > 0 {
            return false;
        }
        self.entries += 1;
        self.bytes += size;
        self.books.insert(held.row.book);
        true
    }
}

/// Packs rows of one parcel, the fleet's book first.
pub(super) fn packed(truth: &Truth<'_>, mut rows: Vec<HeldEntry>) -> Vec<Run> {
    rows.sort_by_key(|held| (held.row.book, held.n));
    rows.dedup_by_key(|held| held.n);
    let whole = |book, hash: crate::gate::ChangeHash| {
        // Held here for certain, so a prefix that finds nothing names more than one.
        truth.by_prefix(book, hash.prefix()).ok().flatten().is_none()
    };
    pack(rows.into_iter().map(|held| held.row), whole)
}

/// Cuts rows into pages of at most `most` entries, the fleet's book first, and packs each.
pub(super) fn pages(truth: &Truth<'_>, mut rows: Vec<HeldEntry>, most: usize) -> Vec<Vec<Run>> {
    rows.sort_by_key(|held| (held.row.book, held.n));
    rows.dedup_by_key(|held| held.n);
    let mut pages = Vec::new();
    let (mut page, mut room) = (Vec::new(), Room::new(most, PAGE));
    for held in rows {
        if !room.takes(&held) {
            pages.push(packed(truth, std::mem::take(&mut page)));
            room = Room::new(most, PAGE);
            room.takes(&held);
        }
        page.push(held);
    }
    if !page.is_empty() {
        pages.push(packed(truth, page));
    }
    pages
}

/// Seals parcels into one file, every one but the last saying that more follow. With their digests.
pub(super) fn file(
    mut parcels: Vec<Parcel>,
    key: &DeviceKey,
) -> Result<(Vec<u8>, Vec<[u8; 32]>), ExchangeError> {
    let last = parcels.len().saturating_sub(1);
    let entries = parcels.iter().map(Parcel::entries).sum();
    let mut writer = FileWriter::new(Vec::new())?;
    let mut digests = Vec::with_capacity(parcels.len());
    for (at, parcel) in parcels.iter_mut().enumerate() {
        parcel.more = at < last;
        parcel.file_entries = Some(entries);
        let sealed = seal(parcel, key)?;
        writer.add(&sealed.wire)?;
        digests.push(sealed.digest);
    }
    Ok((writer.finish()?, digests))
}
