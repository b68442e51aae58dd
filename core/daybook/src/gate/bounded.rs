//! Are these bytes one well-formed CBOR item of a bearable size? Asked before anything reads them.
//!
//! Nothing is allocated and nothing recurses: the open containers stand in an array of eight counts.

/// How many arrays, maps and tags may stand inside one another.
pub const DEPTH: usize = 8;

/// What one item may be at most.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Bytes of the whole item.
    pub bytes: usize,
    /// Elements of one array, or pairs of one map.
    pub members: u64,
}

/// The payload of one entry: 16 KiB.
pub const ENTRY: Limits = Limits { bytes: 16 * 1024, members: 1_024 };

/// A parcel after inflating: 4 MiB.
pub const PARCEL: Limits = Limits { bytes: 4 * 1024 * 1024, members: 4_096 };

/// Why bytes are not one bounded item. `at` is the offset of the item's first byte.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BoundedError {
    /// More bytes than the limit.
    #[error("{bytes} bytes where at most {limit} may stand")]
    TooLong {
        /// Bytes given.
        bytes: usize,
        /// Bytes allowed.
        limit: usize,
    },
    /// The bytes end inside an item, or a length promises more than there is.
    #[error("the item at byte {at} ends after the last byte")]
    Truncated {
        /// Offset of the item.
        at: usize,
    },
    /// An array or a map of too many members.
    #[error("the array or map at byte {at} claims {claimed} members")]
    TooMany {
        /// Offset of the item.
        at: usize,
        /// Members claimed.
        claimed: u64,
    },
    /// More than [`DEPTH`] containers inside one another.
    #[error("nested deeper than {DEPTH} at byte {at}")]
    TooDeep {
        /// Offset of the item.
        at: usize,
    },
    /// A length left open, or its break: only definite lengths are read.
    #[error("indefinite length at byte {at}")]
    Indefinite {
        /// Offset of the item.
        at: usize,
    },
    /// A first byte, or a simple value, that RFC 8949 leaves reserved.
    #[error("reserved encoding at byte {at}")]
    Reserved {
        /// Offset of the item.
        at: usize,
    },
    /// A text that is not UTF-8.
    #[error("text at byte {at} is not UTF-8")]
    Text {
        /// Offset of the item.
        at: usize,
    },
    /// Bytes after the end of the item.
    #[error("more bytes after the item's end at byte {at}")]
    Trailing {
        /// Offset of the first byte too many.
        at: usize,
    },
}

/// The first byte and its argument (RFC 8949 section 3).
struct Head {
    at: usize,
    major: u8,
    info: u8,
    argument: u64,
}

/// Checks that `bytes` are exactly one well-formed item within `limits`: definite lengths, at most
/// [`DEPTH`] containers deep, texts in UTF-8, and nothing after its end.
///
/// # Errors
/// The first thing found wrong, with its offset.
pub fn check(bytes: &[u8], limits: Limits) -> Result<(), BoundedError> {
    if bytes.len() > limits.bytes {
        return Err(BoundedError::TooLong { bytes: bytes.len(), limit: limits.bytes });
    }
    let mut open = [0u64; DEPTH];
    let mut depth = 0usize;
    let mut at = 0usize;
    loop {
        let head = head(bytes, at)?;
        at = at.saturating_add(head_len(head.info));
        let left = bytes.len().saturating_sub(at) as u64;
        let members = match head.major {
            2 | 3 => {
                at = string_end(bytes, at, left, &head)?;
                0
            }
            4 => members(&head, head.argument, left, limits)?,
            5 => members(&head, head.argument.saturating_mul(2), left, limits)?,
            6 => 1,
            _ => 0,
        };
        if members > 0 {
            let slot = open.get_mut(depth).ok_or(BoundedError::TooDeep { at: head.at })?;
            *slot = members;
            depth = depth.saturating_add(1);
            continue;
        }
        // An empty container would be the innermost one too, were it counted: it counts as well.
        if matches!(head.major, 4 | 5) && depth >= DEPTH {
            return Err(BoundedError::TooDeep { at: head.at });
        }
        depth = close(&mut open, depth);
        if depth == 0 {
            break;
        }
    }
    if at < bytes.len() { Err(BoundedError::Trailing { at }) } else { Ok(()) }
}

/// One item has ended: the depth that stays open after it.
fn close(open: &mut [u64; DEPTH], mut depth: usize) -> usize {
    while let Some(count) = depth.checked_sub(1).and_then(|top| open.get_mut(top)) {
        *count = count.saturating_sub(1);
        if *count > 0 {
            break;
        }
        depth = depth.saturating_sub(1);
    }
    depth
}

fn head(bytes: &[u8], at: usize) -> Result<Head, BoundedError> {
    let short = BoundedError::Truncated { at };
    let first = *bytes.get(at).ok_or(short)?;
    let (major, info) = (first >> 5, first & 0x1f);
    let argument = match info {
        0..=23 => u64::from(info),
        24..=27 => {
            let start = at.saturating_add(1);
            let digits = bytes.get(start..at.saturating_add(head_len(info))).ok_or(short)?;
            digits.iter().fold(0u64, |sum, byte| (sum << 8) | u64::from(*byte))
        }
        31 if matches!(major, 2..=5 | 7) => return Err(BoundedError::Indefinite { at }),
        _ => return Err(BoundedError::Reserved { at }),
    };
    // RFC 8949 section 3.3: a simple value below 32 has no second form.
    if major == 7 && info == 24 && argument < 32 {
        return Err(BoundedError::Reserved { at });
    }
    Ok(Head { at, major, info, argument })
}

fn head_len(info: u8) -> usize {
    match info {
        24 => 2,
        25 => 3,
        26 => 5,
        27 => 9,
        _ => 1,
    }
}

fn string_end(bytes: &[u8], at: usize, left: u64, head: &Head) -> Result<usize, BoundedError> {
    let short = BoundedError::Truncated { at: head.at };
    if head.argument > left {
        return Err(short);
    }
    let end = usize::try_from(head.argument).ok().and_then(|n| at.checked_add(n)).ok_or(short)?;
    if head.major == 3 {
        let text = bytes.get(at..end).ok_or(short)?;
        std::str::from_utf8(text).map_err(|_| BoundedError::Text { at: head.at })?;
    }
    Ok(end)
}

/// The items an array or a map holds: every one takes at least a byte, so a claim can be judged at once.
fn members(head: &Head, items: u64, left: u64, limits: Limits) -> Result<u64, BoundedError> {
    if head.argument > limits.members {
        return Err(BoundedError::TooMany { at: head.at, claimed: head.argument });
    }
    if items > left { Err(BoundedError::Truncated { at: head.at }) } else { Ok(items) }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn nested(depth: usize) -> Vec<u8> {
        let mut bytes = vec![0x81; depth];
        bytes.push(0x00);
        bytes
    }

    #[test]
    fn eight_deep_is_read_and_nine_is_not() {
        assert_eq!(check(&nested(8), ENTRY), Ok(()));
        assert_eq!(check(&nested(9), ENTRY), Err(BoundedError::TooDeep { at: 8 }));
        // An empty array, a tag and a map are containers like any other.
        assert_eq!(check(&[vec![0x81; 8], vec![0x80]].concat(), ENTRY), Err(BoundedError::TooDeep { at: 8 }));
        assert_eq!(check(&[vec![0xc1; 8], vec![0x00]].concat(), ENTRY), Ok(()));
        assert_eq!(check(&[vec![0xc1; 9], vec![0x00]].concat(), ENTRY), Err(BoundedError::TooDeep { at: 8 }));
    }

    #[test]
    fn a_million_nested_arrays_are_refused_at_the_ninth() {
        assert_eq!(check(&vec![0x81; 1_000_000], PARCEL), Err(BoundedError::TooDeep { at: 8 }));
        assert!(matches!(check(&vec![0x81; 1_000_000], ENTRY), Err(BoundedError::TooLong { .. })));
    }

    #[test]
    fn a_length_of_512_gigabytes_is_refused_before_anything_is_taken() {
        let claim = 0x80_0000_0000u64.to_be_bytes();
        for major in [0x5b, 0x7b] {
            let bytes = [&[major][..], &claim].concat();
            assert_eq!(check(&bytes, PARCEL), Err(BoundedError::Truncated { at: 0 }));
        }
        for major in [0x9b, 0xbb] {
            let bytes = [&[major][..], &claim].concat();
            assert_eq!(check(&bytes, PARCEL), Err(BoundedError::TooMany { at: 0, claimed: 1 << 39 }));
        }
        assert_eq!(check(&[0x83, 1, 2], ENTRY), Err(BoundedError::Truncated { at: 0 }));
        assert_eq!(check(&[0xa2, 1, 2, 3], ENTRY), Err(BoundedError::Truncated { at: 0 }));
    }

    #[test]
    fn only_definite_lengths_and_known_forms_are_read() {
        for first in [0x5f, 0x7f, 0x9f, 0xbf, 0xff] {
            assert_eq!(check(&[first, 0xff], ENTRY), Err(BoundedError::Indefinite { at: 0 }));
        }
        for first in [0x1c, 0x1f, 0x3e, 0x5d, 0xdf, 0xfc] {
            assert_eq!(check(&[first], ENTRY), Err(BoundedError::Reserved { at: 0 }));
        }
        assert_eq!(check(&[0xf8, 0x1f], ENTRY), Err(BoundedError::Reserved { at: 0 }));
        assert_eq!(check(&[0xf8, 0x20], ENTRY), Ok(()));
        assert_eq!(check(&[0x62, 0xc3, 0x28], ENTRY), Err(BoundedError::Text { at: 0 }));
    }

    #[test]
    fn the_last_byte_is_the_last_byte() {
        assert_eq!(check(&[], ENTRY), Err(BoundedError::Truncated { at: 0 }));
        assert_eq!(check(&[0x00, 0x00], ENTRY), Err(BoundedError::Trailing { at: 1 }));
        assert_eq!(check(&[0x80, 0x80], ENTRY), Err(BoundedError::Trailing { at: 1 }));
        assert_eq!(check(&[0x82, 0x80, 0xa0], ENTRY), Ok(()));
        assert_eq!(check(&[0x82, 0x80, 0xa0, 0xf6], ENTRY), Err(BoundedError::Trailing { at: 3 }));
    }

    proptest! {
        #[test]
        fn whatever_is_accepted_the_decoder_walks_to_its_end(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            if check(&bytes, ENTRY).is_ok() {
                let mut decoder = minicbor::Decoder::new(&bytes);
                prop_assert!(decoder.skip().is_ok());
                prop_assert_eq!(decoder.position(), bytes.len());
            }
        }
    }
}
