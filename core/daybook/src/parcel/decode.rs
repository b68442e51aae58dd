//! A parcel from CBOR. Every count is looked at before anything of that length is taken.

use minicbor::Decoder;
use minicbor::bytes::ByteArray;
use minicbor::data::Type;
use minicbor::decode::Error;
use sumpbook_trade::FleetId;

use super::encode::{VERSION, id_within};
use super::limits;
use super::message::{
    BookHeads, Bucket, Cursor, Dep, EnrolmentRequest, Invitation, Link, Parcel, Reconcile, Refusal, Run,
    RunEntry,
};
use crate::book::BookId;
use crate::gate::ChangeHash;
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
    Ok(parcel(&mut Decoder::new(bytes), None)?)
}

/// Reads an answer to what was asked just now, of this fleet: it does not name the fleet again.
///
/// # Errors
/// As [`decode`]; and for a parcel that is not such an answer.
pub fn decode_answer(bytes: &[u8], fleet: FleetId) -> Result<Parcel, DecodeError> {
    bounded::check(bytes, bounded::PARCEL)?;
    Ok(parcel(&mut Decoder::new(bytes), Some(fleet))?)
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

fn parcel(d: &mut Decoder<'_>, asked_of: Option<FleetId>) -> Result<Parcel, Error> {
    let (mut version, mut fleet, mut link, mut sender_ms, mut epoch) = (None, None, None, None, [0; 8]);
    let (mut runs, mut payloads, mut signatures, mut held_heads) = (vec![], &[][..], &[][..], vec![]);
    let (mut cursors, mut heads, mut admitted) = (vec![], vec![], vec![]);
    let (mut refused, mut more, mut token, mut reconcile) = (vec![], false, None, vec![]);
    let (mut invitation, mut enrolment, mut file_entries, mut program) = (None, None, None, None);
    map(d, |key, d| {
        match key {
            1 => version = Some(d.u8()?).filter(|v| *v == VERSION),
            2 => fleet = Some(d.decode()?),
            3 => link = Some(link_of(d)?),
            4 => sender_ms = Some(d.u64()?),
            5 => epoch = fixed(d)?,
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
            17 => held_heads = prefixes(d.bytes()?, limits::HELD_HEADS)?,
            18 => payloads = d.bytes()?,
            19 => signatures = d.bytes()?,
            20 => program = Some(text(d)?),
            // The first key is the version: without it nothing else means anything.
            _ if version.is_none() => return wrong("no version that this program reads"),
            _ => return Ok(false),
        }
        if version.is_none() { wrong("no version that this program reads") } else { Ok(true) }
    })?;
    let link = needed(link, "no link")?;
    if asked_of.is_some() != (link == Link::Asked) || (asked_of.is_some() && fleet.is_some()) {
        return wrong("an answer to another than whoever asked");
    }
    let runs = fill(runs, payloads, signatures)?;
    Ok(Parcel {
        fleet: needed(fleet.or(asked_of), "no fleet")?,
        link,
        sender_ms: needed(sender_ms, "no sender's time")?,
        epoch,
        runs,
        held_heads,
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
        program,
    })
}

fn link_of(d: &mut Decoder<'_>) -> Result<Link, Error> {
    if d.datatype()? == Type::Null {
        return d.null().map(|()| Link::File);
    }
    let bytes = d.bytes()?;
    if bytes.is_empty() {
        return Ok(Link::Asked);
    }
    if let Ok(challenge) = <[u8; 16]>::try_from(bytes) {
        return Ok(Link::Challenge(challenge));
    }
    match <[u8; 32]>::try_from(bytes) {
        Ok(digest) => Ok(Link::Request(digest)),
        Err(_) => wrong("a link that is neither a challenge nor a digest"),
    }
}

/// The runs, still without their entries; entries and books are counted over all of them.
fn runs_of(d: &mut Decoder<'_>) -> Result<Vec<(Run, u64)>, Error> {
    let mut left = limits::ENTRIES;
    let mut books: Vec<BookId> = Vec::new();
    list(d, limits::ENTRIES, |d| {
        let run = run(d, left)?;
        left = left.saturating_sub(run.1);
        if !books.contains(&run.0.book) {
            books.push(run.0.book);
        }
        if books.len() as u64 > limits::BOOKS {
            wrong("more books than one parcel may hold")
        } else {
            Ok(run)
        }
    })
}

fn run(d: &mut Decoder<'_>, left: u64) -> Result<(Run, u64), Error> {
    tuple(d, 5)?;
    let (book, actor, seq) = (d.decode()?, d.decode()?, d.u64()?);
    let deps = list(d, limits::DEPS, dep)?;
    let count = d.u64()?;
    if count > left {
        return wrong("more of something than one parcel may hold");
    }
    let numbered = seq > 0 && seq.checked_add(count).is_some();
    if count == 0 || !numbered {
        return wrong("a run with no entries, or with numbers no entry can have");
    }
    Ok((Run { book, actor, seq, deps, entries: Vec::new() }, count))
}

/// Gives each run its entries: there are as many payloads and signatures as the runs say, and not one more.
fn fill(runs: Vec<(Run, u64)>, payloads: &[u8], signatures: &[u8]) -> Result<Vec<Run>, Error> {
    let mut payloads = Decoder::new(payloads);
    let (signatures, rest) = signatures.as_chunks::<64>();
    let mut signatures = signatures.iter();
    let mut filled = Vec::with_capacity(runs.len());
    for (mut run, count) in runs {
        for _ in 0..count {
            let signature = *needed(signatures.next(), "an entry with no signature")?;
            run.entries.push(run_entry(&mut payloads, signature)?);
        }
        filled.push(run);
    }
    if signatures.next().is_some() || !rest.is_empty() || payloads.position() != payloads.input().len() {
        return wrong("more entries or signatures than the runs have");
    }
    Ok(filled)
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

/// An entry that begins with its id, or one behind its id.
fn run_entry(d: &mut Decoder<'_>, signature: [u8; 64]) -> Result<RunEntry, Error> {
    if d.datatype()? == Type::Array {
        tuple(d, 2)?;
        let id = d.decode()?;
        let payload = d.bytes()?;
        if payload.len() > limits::PAYLOAD {
            return wrong("a payload too long");
        }
        return Ok(RunEntry { id, payload: payload.to_vec(), signature });
    }
    let begin = d.position();
    d.skip()?;
    let payload = d.input().get(begin..d.position()).unwrap_or_default();
    if payload.len() > limits::PAYLOAD {
        return wrong("a payload too long");
    }
    // Whether it is well formed within is the gate's to see.
    let id = needed(id_within(payload), "an entry that does not begin with its id")?;
    Ok(RunEntry { id, payload: payload.to_vec(), signature })
}

fn cursor(d: &mut Decoder<'_>) -> Result<Cursor, Error> {
    tuple(d, 3)?;
    Ok(Cursor { book: null_or(d, |d| d.decode())?, n: d.u64()?, tag: fixed(d)? })
}

fn book_heads(d: &mut Decoder<'_>) -> Result<BookHeads, Error> {
    tuple(d, 2)?;
    let book = d.decode()?;
    let (mut heads, mut prefixes): (Vec<ChangeHash>, Vec<[u8; 8]>) = (Vec::new(), Vec::new());
    list(d, limits::HEADS, |d| {
        let bytes = d.bytes()?;
        if let (Ok(prefix), true) = (bytes.try_into(), heads.is_empty()) {
            prefixes.push(prefix);
        } else if let Ok(hash) = bytes.try_into() {
            heads.push(ChangeHash(hash));
        } else {
            return wrong("a head named by neither 8 nor 32 bytes");
        }
        Ok(())
    })?;
    if heads.is_sorted_by(|a, b| a < b) && prefixes.is_sorted_by(|a, b| a < b) {
        Ok(BookHeads { book, heads, prefixes })
    } else {
        wrong("heads that do not ascend")
    }
}

/// Beginnings of hashes, one after another, as many as may stand there.
fn prefixes(bytes: &[u8], most: usize) -> Result<Vec<[u8; 8]>, Error> {
    match bytes.as_chunks::<8>() {
        (prefixes, []) if prefixes.len() <= most => Ok(prefixes.to_vec()),
        _ => wrong("beginnings of hashes that are cut, or more than one parcel may hold"),
    }
}

fn refusal(d: &mut Decoder<'_>) -> Result<Refusal, Error> {
    tuple(d, 3)?;
    Ok(Refusal { id: d.decode()?, code: d.u64()?, missing: null_or(d, fixed)? })
}

fn reconcile_of(d: &mut Decoder<'_>) -> Result<Reconcile, Error> {
    tuple(d, 3)?;
    let (book, level) = (d.decode()?, d.u64()?);
    if d.datatype()? != Type::Bytes {
        return Ok(Reconcile { book, level, buckets: list(d, limits::BUCKETS, bucket)? });
    }
    let numbers = prefixes(d.bytes()?, usize::try_from(limits::BUCKETS).unwrap_or(usize::MAX))?;
    let named = |number| Bucket { part: u64::from_be_bytes(number), count: 1, digest: [0; 16] };
    Ok(Reconcile { book, level, buckets: numbers.into_iter().map(named).collect() })
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
