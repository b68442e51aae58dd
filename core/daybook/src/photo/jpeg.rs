//! JPEG without what the camera wrote about itself (ITU-T T.81, annex B).

/// Marks the EXIF part of a picture.
const EXIF: &[u8] = b"Exif\0\0";
/// Marks a colour profile.
const PROFILE: &[u8] = b"ICC_PROFILE\0";
/// The tag of the way a picture is turned (EXIF 2.32, 4.6.4 A).
const TURNED: u16 = 0x0112;

/// The same picture with its tables, scans, colour profile and the way it is turned, ending where the picture
/// ends. None when it is cut off or its segments do not fit together.
pub(super) fn cleaned(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut rest = bytes.strip_prefix(&[0xff, 0xd8])?;
    let mut clean = Vec::with_capacity(bytes.len());
    clean.extend([0xff, 0xd8]);
    let mut seen = false;
    loop {
        let [0xff, marker, after @ ..] = rest else { return None };
        match *marker {
            // A marker may have any number of these before it.
            0xff => {
                rest = rest.get(1..)?;
                continue;
            }
            0xd9 => {
                clean.extend([0xff, 0xd9]);
                return seen.then_some(clean);
            }
            0x01 | 0xd0..=0xd7 => {
                clean.extend([0xff, *marker]);
                rest = after;
                continue;
            }
            _ => {}
        }
        let [high, low, ..] = after else { return None };
        let length = usize::from(u16::from_be_bytes([*high, *low]));
        let (segment, after) = after.split_at_checked(length)?;
        let body = segment.get(2..)?;
        match *marker {
            0xe1 => {
                if let Some(way) = body.strip_prefix(EXIF).and_then(turned) {
                    clean.extend(turned_only(way));
                }
            }
            0xe2 if !body.starts_with(PROFILE) => {}
            // Of the makers' own parts only what the colours need; no comments.
            0xe3..=0xed | 0xef | 0xfe => {}
            _ => {
                clean.extend([0xff, *marker]);
                clean.extend(segment);
            }
        }
        rest = after;
        if *marker == 0xda {
            seen = true;
            let scan = scan_length(rest)?;
            clean.extend(rest.get(..scan)?);
            rest = rest.get(scan..)?;
        }
    }
}

/// Bytes up to the next marker that ends a scan.
fn scan_length(bytes: &[u8]) -> Option<usize> {
    let ends = |pair: &[u8]| matches!(pair, [0xff, next] if !matches!(next, 0x00 | 0xd0..=0xd7 | 0xff));
    bytes.windows(2).position(ends)
}

/// The way a picture is turned, 2 to 8, out of its EXIF; none when it lies as it should or nothing is said.
fn turned(tiff: &[u8]) -> Option<u8> {
    let big = match tiff.get(..4)? {
        b"MM\0*" => true,
        b"II*\0" => false,
        _ => return None,
    };
    let short = |at: usize| -> Option<u16> {
        let bytes: [u8; 2] = tiff.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if big { u16::from_be_bytes(bytes) } else { u16::from_le_bytes(bytes) })
    };
    let long: [u8; 4] = tiff.get(4..8)?.try_into().ok()?;
    let first = if big { u32::from_be_bytes(long) } else { u32::from_le_bytes(long) };
    let first = usize::try_from(first).ok()?;
    for entry in 0..usize::from(short(first)?) {
        let at = first.checked_add(2)?.checked_add(entry.checked_mul(12)?)?;
        if short(at)? == TURNED && short(at.checked_add(2)?)? == 3 {
            return u8::try_from(short(at.checked_add(8)?)?).ok().filter(|way| (2..=8).contains(way));
        }
    }
    None
}

/// EXIF that says the way a picture is turned and nothing else.
fn turned_only(way: u8) -> Vec<u8> {
    let mut segment = vec![0xff, 0xe1, 0, 34];
    segment.extend(EXIF);
    segment.extend(b"MM\0*\0\0\0\x08\0\x01");
    segment.extend(TURNED.to_be_bytes());
    segment.extend([0, 3, 0, 0, 0, 1, 0, way, 0, 0]);
    segment.extend([0; 4]);
    segment
}
