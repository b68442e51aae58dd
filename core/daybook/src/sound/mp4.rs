//! MP4 with one track of AAC, and nothing told of who, where and with what.
//!
//! Samples are found by their place in the file, so nothing may move: a box that is not the sound's becomes one of
//! kind `free` of the same length, filled with zeros.

use std::ops::Range;

use super::{SoundError, lasts};

/// The way to the sound's table: what is kept of each box, and which of them is opened.
const MOVIE: Keeps = Keeps { names: &[b"mvhd", b"trak"], opens: b"trak" };
const TRACK: Keeps = Keeps { names: &[b"tkhd", b"edts", b"mdia"], opens: b"mdia" };
const MEDIA: Keeps = Keeps { names: &[b"mdhd", b"hdlr", b"minf"], opens: b"minf" };
const INSIDE: Keeps = Keeps { names: &[b"smhd", b"dinf", b"stbl"], opens: b"stbl" };
const TABLE: Keeps = Keeps {
    names: &[b"stsd", b"stts", b"stsc", b"stsz", b"stz2", b"stco", b"co64", b"sgpd", b"sbgp"],
    opens: b"stsd",
};

struct Keeps {
    names: &'static [&'static [u8; 4]],
    opens: &'static [u8; 4],
}

/// One box: its name and where it lies.
#[derive(Clone)]
struct Part {
    name: [u8; 4],
    /// All of it, its head too.
    whole: Range<usize>,
    /// What is in it.
    body: Range<usize>,
}

/// The same file with only the sound in it.
pub(super) fn cleaned(bytes: &[u8]) -> Result<Vec<u8>, SoundError> {
    let mut clean = bytes.to_vec();
    let top = parts(bytes, 0..bytes.len())?;
    let named = |name: &[u8; 4]| top.iter().filter(|part| part.name == *name).cloned().collect::<Vec<_>>();
    let movie = match (named(b"moov").as_slice(), named(b"mdat").is_empty(), named(b"moof").is_empty()) {
        ([movie], false, true) => movie.clone(),
        // It was not ended: its table or its samples are not there.
        ([], ..) | (_, true, _) => return Err(SoundError::Cut),
        // In fragments, or with two tables: no recorder of a telephone writes so.
        _ => return Err(SoundError::NotASound),
    };
    for part in top.iter().filter(|part| !matches!(&part.name, b"ftyp" | b"moov" | b"mdat")) {
        blank(&mut clean, part);
    }
    let mut at = movie;
    let mut media = Vec::new();
    for keeps in [MOVIE, TRACK, MEDIA, INSIDE, TABLE] {
        let inner = parts(bytes, at.body.clone())?;
        for part in inner.iter().filter(|part| !keeps.names.contains(&&part.name)) {
            blank(&mut clean, part);
        }
        let mut opened = inner.iter().filter(|part| part.name == *keeps.opens);
        at = match (opened.next(), opened.next()) {
            (Some(one), None) => one.clone(),
            (None, _) => return Err(SoundError::Cut),
            // A second track is a picture, or another sound.
            _ => return Err(SoundError::NotASound),
        };
        media.extend(inner);
    }
    let one = |name: &[u8; 4]| -> Result<Range<usize>, SoundError> {
        let part = media.iter().find(|part| part.name == *name).ok_or(SoundError::Cut)?;
        Ok(part.body.clone())
    };
    let handler = one(b"hdlr")?;
    let body = bytes.get(handler.clone()).unwrap_or_default();
    // Version and flags, a zero, the kind of track, three zeros, then the writer's name.
    if body.get(8..12) != Some(&b"soun"[..]) {
        return Err(SoundError::NotASound);
    }
    if let Some(name) = clean.get_mut(handler).and_then(|body| body.get_mut(24..)) {
        name.fill(0);
    }
    // Version and flags, one entry, its length, its kind.
    let table = bytes.get(at.body).unwrap_or_default();
    if table.get(4..8) != Some(&1u32.to_be_bytes()[..]) || table.get(12..16) != Some(&b"mp4a"[..]) {
        return Err(SoundError::NotASound);
    }
    let (a_second, said) = clock(bytes.get(one(b"mdhd")?).unwrap_or_default()).ok_or(SoundError::Cut)?;
    let counted = ticks(bytes.get(one(b"stts")?).unwrap_or_default()).ok_or(SoundError::Cut)?;
    lasts(said, a_second)?;
    lasts(counted, a_second)?;
    Ok(clean)
}

/// The boxes that lie in `within`, end to end.
fn parts(bytes: &[u8], within: Range<usize>) -> Result<Vec<Part>, SoundError> {
    let mut parts = Vec::new();
    let mut at = within.start;
    while at < within.end {
        let part = part(bytes, at, within.end).ok_or(SoundError::Cut)?;
        at = part.whole.end;
        parts.push(part);
    }
    Ok(parts)
}

fn part(bytes: &[u8], at: usize, end: usize) -> Option<Part> {
    let within = bytes.get(at..end)?;
    let (length, rest) = within.split_first_chunk::<4>()?;
    let (name, rest) = rest.split_first_chunk::<4>()?;
    let (head, length) = match u32::from_be_bytes(*length) {
        // As long as all that is left.
        0 => (8, within.len()),
        // The length follows in 64 bits.
        1 => (16, usize::try_from(u64::from_be_bytes(*rest.first_chunk::<8>()?)).ok()?),
        length => (8, usize::try_from(length).ok()?),
    };
    let whole = at..at.checked_add(length)?;
    let body = at.checked_add(head)?..whole.end;
    (length >= head && whole.end <= end).then_some(Part { name: *name, whole, body })
}

/// Leaves its length and nothing else of it.
fn blank(bytes: &mut [u8], part: &Part) {
    let name = part.whole.start.saturating_add(4);
    if let Some(name) = bytes.get_mut(name..name.saturating_add(4)) {
        name.copy_from_slice(b"free");
    }
    if let Some(body) = bytes.get_mut(part.body.clone()) {
        body.fill(0);
    }
}

/// Of a media header: ticks a second, and how many the track has.
fn clock(body: &[u8]) -> Option<(u32, u64)> {
    let (times, wide) = match body.first()? {
        0 => (8, false),
        1 => (16, true),
        _ => return None,
    };
    let (a_second, rest) = body.get(4usize.checked_add(times)?..)?.split_first_chunk::<4>()?;
    let ticks = match wide {
        true => u64::from_be_bytes(*rest.first_chunk::<8>()?),
        false => u64::from(u32::from_be_bytes(*rest.first_chunk::<4>()?)),
    };
    Some((u32::from_be_bytes(*a_second), ticks))
}

/// Of a table of times: ticks of all samples together. A header may say less.
fn ticks(body: &[u8]) -> Option<u64> {
    let (rows, rest) = body.get(4..)?.split_first_chunk::<4>()?;
    let rows = usize::try_from(u32::from_be_bytes(*rows)).ok()?;
    let rest = rest.get(..rows.checked_mul(8)?)?;
    let one = |row: &[u8]| {
        let (count, each) = row.split_first_chunk::<4>()?;
        let each = u32::from_be_bytes(*each.first_chunk::<4>()?);
        Some(u64::from(u32::from_be_bytes(*count)).saturating_mul(u64::from(each)))
    };
    rest.chunks(8).map(one).try_fold(0u64, |sum, ticks| Some(sum.saturating_add(ticks?)))
}
