//! The form in which an entry with its place is kept outside the books.
//!
//! An entry whose predecessors are known by their whole hashes stands alone. One that names a predecessor
//! by the beginning of its hash has no place yet: it is kept as the run it came in.

use minicbor::bytes::ByteArray;
use minicbor::{Decoder, Encoder};
use sumpbook_trade::{EntryId, FleetId};

use crate::book::BookId;
use crate::gate::{Actor, ChangeHash, MOST_DEPS, Place};
use crate::ledger::Incoming;
use crate::parcel::decode::decode;
use crate::parcel::{Link, Parcel, Run};

/// What lies on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub enum Shelved {
    /// An entry with its place.
    Entry(Incoming),
    /// Runs of one book whose beginnings are not here yet.
    Runs(Vec<Run>),
}

/// Reads either form; `None` when the bytes are neither.
pub fn read_part(bytes: &[u8]) -> Option<Shelved> {
    unwrap(bytes).map(Shelved::Entry).or_else(|| decode(bytes).ok().map(|parcel| Shelved::Runs(parcel.runs)))
}

/// Wraps runs of one book; a parcel that is never sent, so that one decoder with its bounds reads both.
pub fn wrap_runs(fleet: FleetId, runs: Vec<Run>) -> Vec<u8> {
    let mut parcel = Parcel::new(fleet, Link::File, 0, [0; 8]);
    parcel.runs = runs;
    // Writing to a Vec cannot fail.
    minicbor::to_vec(&parcel).unwrap_or_default()
}

/// Wraps an entry with its place: `[fleet, book, actor, seq, [* dep], id, payload, signature]`.
pub fn wrap(entry: &Incoming) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut e = Encoder::new(&mut bytes);
    let place = &entry.place;
    // Writing to a Vec cannot fail.
    let _ = (|| {
        e.array(8)?.encode(place.fleet)?.encode(place.book)?.encode(place.actor)?.u64(place.seq)?;
        e.array(place.deps.len() as u64)?;
        for dep in &place.deps {
            e.encode(dep)?;
        }
        e.encode(place.id)?.bytes(&entry.payload)?.bytes(&entry.signature)?.ok()
    })();
    bytes
}

/// Unwraps it again; `None` when the bytes are not of that form.
pub fn unwrap(bytes: &[u8]) -> Option<Incoming> {
    let mut d = Decoder::new(bytes);
    read(&mut d).ok().filter(|_| d.position() == bytes.len())
}

fn read(d: &mut Decoder<'_>) -> Result<Incoming, minicbor::decode::Error> {
    let wrong = || minicbor::decode::Error::message("not an entry with its place");
    if d.array()? != Some(8) {
        return Err(wrong());
    }
    let fleet: FleetId = d.decode()?;
    let book: BookId = d.decode()?;
    let actor: Actor = d.decode()?;
    let seq = d.u64()?;
    let count = d.array()?.filter(|n| *n <= MOST_DEPS as u64).ok_or_else(wrong)?;
    let deps = (0..count).map(|_| d.decode()).collect::<Result<Vec<ChangeHash>, _>>()?;
    let id: EntryId = d.decode()?;
    let payload = d.bytes()?.to_vec();
    let signature = *d.decode::<ByteArray<64>>()?;
    Ok(Incoming { place: Place { fleet, book, actor, seq, deps, id }, payload, signature })
}
