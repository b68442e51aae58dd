//! A parcel as CBOR: integer keys ascending, empty parts left out.

use minicbor::encode::{Error, Write};
use minicbor::{Encode, Encoder};

use super::message::{
    BookHeads, Bucket, Cursor, Dep, EnrolmentRequest, Invitation, Link, Parcel, Reconcile, Refusal, Run,
    RunEntry,
};

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
    ];
    let present = lists.iter().filter(|count| **count > 0).count() as u64;
    e.map(present.saturating_add(5))?;
    e.u8(1)?.u8(VERSION)?.u8(2)?.encode(it.fleet)?.u8(3)?.encode(it.link)?;
    e.u8(4)?.u64(it.sender_ms)?.u8(5)?.bytes(&it.epoch)?;
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
});

encode!(Link, |it, e| {
    match it {
        Link::Challenge(bytes) => e.bytes(bytes)?,
        Link::Request(digest) => e.bytes(digest)?,
        Link::File => e.null()?,
    };
});

encode!(Run, |it, e| {
    e.array(5)?.encode(it.book)?.encode(it.actor)?.u64(it.seq)?.encode(&it.deps)?.encode(&it.entries)?;
});

encode!(Dep, |it, e| {
    match it {
        Dep::Back(back) => e.u64(*back)?,
        Dep::Prefix(prefix) => e.bytes(prefix)?,
        Dep::Whole(hash) => e.encode(hash)?,
    };
});

encode!(RunEntry, |it, e| {
    e.array(3)?.encode(it.id)?.bytes(&it.payload)?.bytes(&it.signature)?;
});

encode!(Cursor, |it, e| {
    e.array(3)?.encode(it.book)?.u64(it.n)?.bytes(&it.tag)?;
});

encode!(BookHeads, |it, e| {
    e.array(2)?.encode(it.book)?.encode(&it.heads)?;
});

encode!(Refusal, |it, e| {
    e.array(3)?.encode(it.id)?.u64(it.code)?;
    match it.missing {
        Some(prefix) => e.bytes(&prefix)?,
        None => e.null()?,
    };
});

encode!(Reconcile, |it, e| {
    e.array(3)?.encode(it.book)?.u64(it.level)?.encode(&it.buckets)?;
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
