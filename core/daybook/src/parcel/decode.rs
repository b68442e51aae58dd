//! A parcel from CBOR. Every count is looked at before anything of that length is taken.

use minicbor::Decoder;
use minicbor::bytes::ByteArray;
use minicbor::data::Type;
use minicbor::decode::Error;

use super::encode::VERSION;
use super::limits;
use super::message::{
    BookHeads, Bucket, Cursor, Dep, EnrolmentRequest, Invitation, Link, Parcel, Reconcile, Refusal, Run,
    RunEntry,
};
use crate::book::BookId;
use crate::gate::bounded::{self, BoundedError};

/// Why bytes are not a parcel.
#[derive(Debug, thiserror::Error)]
pub enum DecodeError {
    /// Not one bounded CBOR item.
    #[error(transparent)]
    Bounded(#[from] BoundedError),
    /// One item, but not a parcel, or one beyond the limits.
    #[error("not a parcel: {0}")]
    Shape(#[from] Error),
}

/// Reads a parcel from the whole of `bytes`.
///
/// Keys must ascend. Keys this version does not know are passed over; another version is refused.
///
/// # Errors
/// [`DecodeError`], for anything but a parcel within its limits. Never panics.
pub fn decode(bytes: &[u8]) -> Result<Parcel, DecodeError> {
    bounded::check(bytes, bounded::PARCEL)?;
    Ok(parcel(&mut Decoder::new(bytes))?)
}

fn wrong<T>(what: &'static str) -> Result<T, Error> {
    Err(Error::message(what))
}

fn fixed<const N: usize>(d: &mut Decoder<'_>) -> Result<[u8; N], Error> {
    Ok(*d.decode::<ByteArray<N>>()?)
}

fn tuple(d: &mut Decoder<'_>, members: u64) -> Result<(), Error> {
    if d.array()? == Some(members) { Ok(()) } else { wrong("an array of another length") }
}

/// A list of at most `most`; the count is judged before the list begins to grow.
fn list<'b, T>(
    d: &mut Decoder<'b>,
    most: u64,
    mut item: impl FnMut(&mut Decoder<'b>) -> Result<T, Error>,
) -> Result<Vec<T>, Error> {
    match d.array()? {
        Some(count) if count <= most => (0..count).map(|_| item(d)).collect(),
        Some(_) => wrong("more of something than one parcel may hold"),
        None => wrong("an array of open length"),
    }
}

fn null_or<'b, T>(
    d: &mut Decoder<'b>,
    item: impl FnOnce(&mut Decoder<'b>) -> Result<T, Error>,
) -> Result<Option<T>, Error> {
    if d.datatype()? == Type::Null { d.null().map(|()| None) } else { item(d).map(Some) }
}

fn text(d: &mut Decoder<'_>) -> Result<String, Error> {
    let text = d.str()?;
    if text.len() <= limits::TEXT { Ok(text.to_owned()) } else { wrong("a name or an address too long") }
}

/// Walks a map with ascending integer keys; `value` says whether it knew the key and read its value.
fn map<'b>(
    d: &mut Decoder<'b>,
    mut value: impl FnMut(u64, &mut Decoder<'b>) -> Result<bool, Error>,
) -> Result<(), Error> {
    let Some(pairs) = d.map()? else { return wrong("a map of open length") };
    let mut last = None;
    for _ in 0..pairs {
        let key = d.u64()?;
        if last.is_some_and(|last| last >= key) {
            return wrong("keys that do not ascend");
        }
        last = Some(key);
        if !value(key, d)? {
            d.skip()?;
        }
    }
    Ok(())
}

fn needed<T>(part: Option<T>, what: &'static str) -> Result<T, Error> {
    part.ok_or_else(|| Error::message(what))
}

fn parcel(d: &mut Decoder<'_>) -> Result<Parcel, Error> {
    let (mut version, mut fleet, mut link, mut sender_ms, mut epoch) = (None, None, None, None, None);
    let (mut runs, mut cursors, mut heads, mut admitted) = (vec![], vec![], vec![], vec![]);
    let (mut refused, mut more, mut token, mut reconcile) = (vec![], false, None, vec![]);
    let (mut invitation, mut enrolment, mut file_entries) = (None, None, None);
    map(d, |key, d| {
        match key {
            1 => version = Some(d.u8()?).filter(|v| *v == VERSION),
            2 => fleet = Some(d.decode()?),
            3 => link = Some(link_of(d)?),
            4 => sender_ms = Some(d.u64()?),
            5 => epoch = Some(fixed(d)?),
            6 => runs = runs_of(d)?,
            7 => cursors = list(d, limits::BOOKS.saturating_add(1), cursor)?,
            8 => heads = list(d, limits::BOOKS, book_heads)?,
            9 => admitted = list(d, limits::ENTRIES, |d| d.u64())?,
            10 => refused = list(d, limits::ENTRIES, refusal)?,
            11 => more = d.bool()?,
            12 => token = Some(fixed(d)?),
            13 => reconcile = list(d, limits::BOOKS, reconcile_of)?,
            14 => invitation = Some(invitation_of(d)?),
            15 => enrolment = Some(enrolment_of(d)?),
            16 => file_entries = Some(d.u64()?),
            // The first key is the version: without it nothing else means anything.
            _ if version.is_none() => return wrong("no version that this program reads"),
            _ => return Ok(false),
        }
        if version.is_none() { wrong("no version that this program reads") } else { Ok(true) }
    })?;
    Ok(Parcel {
        fleet: needed(fleet, "no fleet")?,
        link: needed(link, "no link")?,
        sender_ms: needed(sender_ms, "no sender's time")?,
        epoch: needed(epoch, "no epoch")?,
        runs,
        cursors,
        heads,
        admitted,
        refused,
        more,
        token,
        reconcile,
        invitation,
        enrolment,
        file_entries,
    })
}

fn link_of(d: &mut Decoder<'_>) -> Result<Link, Error> {
    if d.datatype()? == Type::Null {
        return d.null().map(|()| Link::File);
    }
    let bytes = d.bytes()?;
    if let Ok(challenge) = <[u8; 16]>::try_from(bytes) {
        return Ok(Link::Challenge(challenge));
    }
    match <[u8; 32]>::try_from(bytes) {
        Ok(digest) => Ok(Link::Request(digest)),
        Err(_) => wrong("a link that is neither a challenge nor a digest"),
    }
}

/// The runs; entries and books are counted over all of them.
fn runs_of(d: &mut Decoder<'_>) -> Result<Vec<Run>, Error> {
    let mut left = limits::ENTRIES;
    let mut books: Vec<BookId> = Vec::new();
    list(d, limits::ENTRIES, |d| {
        let run = run(d, left)?;
        left = left.saturating_sub(run.entries.len() as u64);
        if !books.contains(&run.book) {
            books.push(run.book);
        }
        if books.len() as u64 > limits::BOOKS {
            wrong("more books than one parcel may hold")
        } else {
            Ok(run)
        }
    })
}

fn run(d: &mut Decoder<'_>, left: u64) -> Result<Run, Error> {
    tuple(d, 5)?;
    let (book, actor, seq) = (d.decode()?, d.decode()?, d.u64()?);
    let deps = list(d, limits::DEPS, dep)?;
    let entries = list(d, left, run_entry)?;
    let numbered = seq > 0 && seq.checked_add(entries.len() as u64).is_some();
    if entries.is_empty() || !numbered {
        return wrong("a run with no entries, or with numbers no entry can have");
    }
    Ok(Run { book, actor, seq, deps, entries })
}

fn dep(d: &mut Decoder<'_>) -> Result<Dep, Error> {
    if d.datatype()? != Type::Bytes {
        let back = d.u64()?;
        return if back > 0 { Ok(Dep::Back(back)) } else { wrong("a predecessor that is the entry itself") };
    }
    let bytes = d.bytes()?;
    if let Ok(prefix) = <[u8; 8]>::try_from(bytes) {
        return Ok(Dep::Prefix(prefix));
    }
    match <[u8; 32]>::try_from(bytes) {
        Ok(hash) => Ok(Dep::Whole(crate::gate::ChangeHash(hash))),
        Err(_) => wrong("a predecessor named by neither 8 nor 32 bytes"),
    }
}

fn run_entry(d: &mut Decoder<'_>) -> Result<RunEntry, Error> {
    tuple(d, 3)?;
    let id = d.decode()?;
    let payload = d.bytes()?;
    if payload.len() > limits::PAYLOAD {
        return wrong("a payload too long");
    }
    Ok(RunEntry { id, payload: payload.to_vec(), signature: fixed(d)? })
}

fn cursor(d: &mut Decoder<'_>) -> Result<Cursor, Error> {
    tuple(d, 3)?;
    Ok(Cursor { book: null_or(d, |d| d.decode())?, n: d.u64()?, tag: fixed(d)? })
}

fn book_heads(d: &mut Decoder<'_>) -> Result<BookHeads, Error> {
    tuple(d, 2)?;
    let book = d.decode()?;
    let heads = list(d, limits::HEADS, |d| d.decode())?;
    if heads.is_sorted_by(|a, b| a < b) {
        Ok(BookHeads { book, heads })
    } else {
        wrong("heads that do not ascend")
    }
}

fn refusal(d: &mut Decoder<'_>) -> Result<Refusal, Error> {
    tuple(d, 3)?;
    Ok(Refusal { id: d.decode()?, code: d.u64()?, missing: null_or(d, fixed)? })
}

fn reconcile_of(d: &mut Decoder<'_>) -> Result<Reconcile, Error> {
    tuple(d, 3)?;
    Ok(Reconcile { book: d.decode()?, level: d.u64()?, buckets: list(d, limits::BUCKETS, bucket)? })
}

fn bucket(d: &mut Decoder<'_>) -> Result<Bucket, Error> {
    tuple(d, 3)?;
    Ok(Bucket { part: d.u64()?, count: d.u64()?, digest: fixed(d)? })
}

fn invitation_of(d: &mut Decoder<'_>) -> Result<Invitation, Error> {
    let (mut shop, mut code, mut hub, mut fleet_name, mut expires_ms) = (None, None, None, None, None);
    map(d, |key, d| {
        match key {
            1 => shop = Some(d.decode()?),
            2 => code = Some(fixed(d)?),
            3 => hub = null_or(d, text)?,
            4 => fleet_name = Some(text(d)?),
            5 => expires_ms = Some(d.u64()?),
            _ => return Ok(false),
        }
        Ok(true)
    })?;
    Ok(Invitation {
        shop: needed(shop, "an invitation with no shop's key")?,
        code: needed(code, "an invitation with no code")?,
        hub,
        fleet_name: needed(fleet_name, "an invitation with no fleet's name")?,
        expires_ms: needed(expires_ms, "an invitation with no end")?,
    })
}

fn enrolment_of(d: &mut Decoder<'_>) -> Result<EnrolmentRequest, Error> {
    let (mut key, mut code, mut name) = (None, None, None);
    map(d, |number, d| {
        match number {
            1 => key = Some(d.decode()?),
            2 => code = Some(fixed(d)?),
            3 => name = Some(text(d)?),
            _ => return Ok(false),
        }
        Ok(true)
    })?;
    Ok(EnrolmentRequest {
        key: needed(key, "a request with no key")?,
        code: needed(code, "a request with no code")?,
        name: needed(name, "a request with no name")?,
    })
}
