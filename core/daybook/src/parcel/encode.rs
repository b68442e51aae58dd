//! A parcel as CBOR: integer keys ascending, empty parts left out.
//!
//! What compresses stands together and what does not stands last: runs, then the entries one after another, then
//! their signatures. An entry that begins with its id, as every one of ours does, does not travel with a second.

use minicbor::encode::{Error, Write};
use minicbor::{Decoder, Encode, Encoder};
use sumpbook_trade::EntryId;

use super::message::{
    BookHeads, Bucket, Cursor, Dep, EnrolmentRequest, Invitation, Link, Parcel, Reconcile, Refusal, Run,
    RunEntry,
};
use crate::gate::bounded;

/// The version this program writes and reads.
pub const VERSION: u8 = 1;

/// The body of an `Encode` for a type with no context of its own.
macro_rules! encode {
    ($type:ty, |$it:ident, $e:ident| $body:block) => {
        impl<C> Encode<C> for $type {
            fn encode<W: Write>(&self, $e: &mut Encoder<W>, _: &mut C) -> Result<(), Error<W::Error>> {
                let $it = self;
                $body
                Ok(())
            }
        }
    };
}

fn list<W: Write, T: Encode<()>>(e: &mut Encoder<W>, key: u8, items: &[T]) -> Result<(), Error<W::Error>> {
    if items.is_empty() { Ok(()) } else { e.u8(key)?.encode(items)?.ok() }
}

encode!(Parcel, |it, e| {
    let lists = [
        it.runs.len(),
        it.cursors.len(),
        it.heads.len(),
        it.admitted.len(),
        it.refused.len(),
        usize::from(it.more),
        usize::from(it.token.is_some()),
        it.reconcile.len(),
        usize::from(it.invitation.is_some()),
        usize::from(it.enrolment.is_some()),
        usize::from(it.file_entries.is_some()),
        it.held_heads.len(),
        // Entries and their signatures.
        it.runs.len(),
        it.runs.len(),
        usize::from(it.link != Link::Asked),
        usize::from(it.epoch != [0; 8]),
        usize::from(it.program.is_some()),
    ];
    let present = lists.iter().filter(|count| **count > 0).count() as u64;
    e.map(present.saturating_add(3))?.u8(1)?.u8(VERSION)?;
    if it.link != Link::Asked {
        e.u8(2)?.encode(it.fleet)?;
    }
    e.u8(3)?.encode(it.link)?.u8(4)?.u64(it.sender_ms)?;
    if it.epoch != [0; 8] {
        e.u8(5)?.bytes(&it.epoch)?;
    }
    list(e, 6, &it.runs)?;
    list(e, 7, &it.cursors)?;
    list(e, 8, &it.heads)?;
    list(e, 9, &it.admitted)?;
    list(e, 10, &it.refused)?;
    if it.more {
        e.u8(11)?.bool(true)?;
    }
    if let Some(token) = it.token {
        e.u8(12)?.bytes(&token)?;
    }
    list(e, 13, &it.reconcile)?;
    if let Some(invitation) = &it.invitation {
        e.u8(14)?.encode(invitation)?;
    }
    if let Some(request) = &it.enrolment {
        e.u8(15)?.encode(request)?;
    }
    if let Some(entries) = it.file_entries {
        e.u8(16)?.u64(entries)?;
    }
    if !it.held_heads.is_empty() {
        e.u8(17)?.bytes(&it.held_heads.concat())?;
    }
    if !it.runs.is_empty() {
        let entries = || it.runs.iter().flat_map(|run| &run.entries);
        let mut payloads = Vec::new();
        entries().for_each(|entry| put_entry(entry, &mut payloads));
        let signatures: Vec<u8> = entries().flat_map(|entry| entry.signature).collect();
        e.u8(18)?.bytes(&payloads)?.u8(19)?.bytes(&signatures)?;
    }
    if let Some(program) = &it.program {
        e.u8(20)?.str(program)?;
    }
});

encode!(Link, |it, e| {
    match it {
        Link::Challenge(bytes) => e.bytes(bytes)?,
        Link::Request(digest) => e.bytes(digest)?,
        Link::Asked => e.bytes(&[])?,
        Link::File => e.null()?,
    };
});

encode!(Run, |it, e| {
    e.array(5)?.encode(it.book)?.encode(it.actor)?.u64(it.seq)?.encode(&it.deps)?;
    e.u64(it.entries.len() as u64)?;
});

/// The id a payload begins with, when it is a map whose first pair is `0: bstr16`.
pub(super) fn id_within(payload: &[u8]) -> Option<EntryId> {
    let mut d = Decoder::new(payload);
    if d.map().ok()?? == 0 || d.u64().ok()? != 0 {
        return None;
    }
    d.bytes().ok()?.try_into().ok().map(EntryId::from_bytes)
}

/// The payload itself where it begins with its id, else `[id, payload]`.
fn put_entry(entry: &RunEntry, bytes: &mut Vec<u8>) {
    let alone = bounded::check(&entry.payload, bounded::ENTRY).is_ok();
    if alone && id_within(&entry.payload) == Some(entry.id) {
        bytes.extend(&entry.payload);
        return;
    }
    // Writing to a Vec cannot fail.
    let _ = Encoder::new(bytes).array(2).and_then(|e| e.encode(entry.id)?.bytes(&entry.payload)?.ok());
}

encode!(Dep, |it, e| {
    match it {
        Dep::Back(back) => e.u64(*back)?,
        Dep::Prefix(prefix) => e.bytes(prefix)?,
        Dep::Whole(hash) => e.encode(hash)?,
    };
});

encode!(Cursor, |it, e| {
    e.array(3)?.encode(it.book)?.u64(it.n)?.bytes(&it.tag)?;
});

encode!(BookHeads, |it, e| {
    e.array(2)?.encode(it.book)?.array(it.prefixes.len().saturating_add(it.heads.len()) as u64)?;
    for prefix in &it.prefixes {
        e.bytes(prefix)?;
    }
    for head in &it.heads {
        e.encode(head)?;
    }
});

encode!(Refusal, |it, e| {
    e.array(3)?.encode(it.id)?.u64(it.code)?;
    match it.missing {
        Some(prefix) => e.bytes(&prefix)?,
        None => e.null()?,
    };
});

encode!(Reconcile, |it, e| {
    e.array(3)?.encode(it.book)?.u64(it.level)?;
    let named = |bucket: &Bucket| bucket.count == 1 && bucket.digest == [0; 16];
    if it.buckets.is_empty() || !it.buckets.iter().all(named) {
        e.encode(&it.buckets)?;
    } else {
        // Only numbers: entries by the first 8 bytes of their hashes.
        let numbers: Vec<u8> = it.buckets.iter().flat_map(|bucket| bucket.part.to_be_bytes()).collect();
        e.bytes(&numbers)?;
    }
});

encode!(Bucket, |it, e| {
    e.array(3)?.u64(it.part)?.u64(it.count)?.bytes(&it.digest)?;
});

encode!(Invitation, |it, e| {
    e.map(5)?.u8(1)?.encode(it.shop)?.u8(2)?.bytes(&it.code)?.u8(3)?.encode(&it.hub)?;
    e.u8(4)?.str(&it.fleet_name)?.u8(5)?.u64(it.expires_ms)?;
});

encode!(EnrolmentRequest, |it, e| {
    e.map(3)?.u8(1)?.encode(it.key)?.u8(2)?.bytes(&it.code)?.u8(3)?.str(&it.name)?;
});
