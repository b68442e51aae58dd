//! Taking off a photo what is not the picture. JPEG: ISO/IEC 10918-1, annex B; PNG: ISO/IEC 15948, clause 5.
//! Nothing is decoded: parts are copied whole or left out whole, and whatever follows the end is left out.

/// A JPEG without Exif, XMP, comments and what else makers add; none when it does not hang together.
///
/// Kept of the application parts: JFIF, the colour profile, and Adobe's note on how colours are written, without
/// which the picture would look otherwise.
pub(super) fn jpeg(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut rest = bytes.strip_prefix(&[0xff, 0xd8])?;
    let mut bare = vec![0xff, 0xd8];
    loop {
        let (marker, after) = marker(rest)?;
        rest = after;
        if marker == 0xd9 {
            bare.extend([0xff, 0xd9]);
            return Some(bare);
        }
        // Markers that stand alone have no place between parts.
        if matches!(marker, 0x00 | 0x01 | 0xd0..=0xd8) {
            return None;
        }
        let length = usize::from(u16::from_be_bytes(*rest.first_chunk::<2>()?));
        let (part, after) = rest.split_at_checked(length)?;
        let body = part.get(2..)?;
        let keep = match marker {
            0xe0 => body.starts_with(b"JFIF\0"),
            0xe2 => body.starts_with(b"ICC_PROFILE\0"),
            0xee => body.starts_with(b"Adobe"),
            0xe1..=0xef | 0xfe => false,
            _ => true,
        };
        if keep {
            bare.extend([0xff, marker]);
            bare.extend(part);
        }
        rest = after;
        if marker == 0xda {
            let scan = scan_ends(rest)?;
            let (scan, after) = rest.split_at_checked(scan)?;
            bare.extend(scan);
            rest = after;
        }
    }
}

/// The next marker, past bytes that fill.
fn marker(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let mut rest = bytes.strip_prefix(&[0xff])?;
    loop {
        match rest.split_first()? {
            (0xff, after) => rest = after,
            (marker, after) => return Some((*marker, after)),
        }
    }
}

/// Where the data of a scan ends: at the next marker that is not of the data itself.
fn scan_ends(bytes: &[u8]) -> Option<usize> {
    bytes.windows(2).position(|two| matches!(two, [0xff, next] if !matches!(next, 0x00 | 0xd0..=0xd7)))
}

/// A PNG with the picture, its colours and its size, and nothing else; none when it does not hang together.
pub(super) fn png(bytes: &[u8]) -> Option<Vec<u8>> {
    const HEAD: usize = 8;
    const KEPT: [&[u8; 4]; 11] =
        [b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"iCCP", b"sBIT", b"pHYs"];
    let (head, mut rest) = bytes.split_at_checked(HEAD)?;
    let mut bare = head.to_vec();
    loop {
        let length = usize::try_from(u32::from_be_bytes(*rest.first_chunk::<4>()?)).ok()?;
        // Length, name, what it holds, check.
        let (chunk, after) = rest.split_at_checked(length.checked_add(12)?)?;
        let name = chunk.get(4..8)?;
        if KEPT.iter().any(|kept| kept.as_slice() == name) {
            bare.extend(chunk);
        }
        if name == b"IEND" {
            return Some(bare);
        }
        rest = after;
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    fn part(marker: u8, body: &[u8]) -> Vec<u8> {
        let length = u16::try_from(body.len() + 2).unwrap().to_be_bytes();
        [&[0xff, marker][..], &length, body].concat()
    }

    /// As a camera writes one: its words before, two scans, and more behind the end.
    pub(in crate::photos) fn jpeg_of_a_camera() -> Vec<u8> {
        [
            vec![0xff, 0xd8],
            part(0xe0, b"JFIF\0\x01\x02\x00\x00\x01\x00\x01\x00\x00"),
            part(0xe1, b"Exif\0\0II*\0 41.1 N 104.8 W"),
            part(0xe2, b"MPF\0 more pictures"),
            part(0xfe, b"taken by someone"),
            part(0xdb, &[7; 65]),
            part(0xc2, &[8, 0, 1, 0, 1, 1, 1, 0x11, 0]),
            part(0xc4, &[0; 17]),
            part(0xda, &[1, 1, 0, 0, 63, 0]),
            vec![0x12, 0xff, 0x00, 0x34, 0xff, 0xd3, 0x56],
            part(0xda, &[1, 1, 0, 0, 63, 1]),
            vec![0x78, 0x9a],
            vec![0xff, 0xff, 0xd9],
        ]
        .concat()
    }

    #[test]
    fn a_jpeg_keeps_its_picture_and_loses_the_cameras_words() {
        let mut whole = jpeg_of_a_camera();
        whole.extend(b"a film hidden behind the end");
        let bare = jpeg(&whole).unwrap();
        for gone in [&b"Exif"[..], b"MPF", b"someone", b"film"] {
            assert!(!bare.windows(gone.len()).any(|part| part == gone), "{gone:?}");
        }
        for kept in [&b"JFIF"[..], &[0x12, 0xff, 0x00, 0x34, 0xff, 0xd3, 0x56], &[0x78, 0x9a, 0xff, 0xd9]] {
            assert!(bare.windows(kept.len()).any(|part| part == kept), "{kept:?}");
        }
        assert_eq!(jpeg(&bare).unwrap(), bare);
    }

    #[test]
    fn a_png_keeps_its_picture_and_loses_its_words() {
        let chunk = |name: &[u8; 4], body: &[u8]| {
            [&u32::try_from(body.len()).unwrap().to_be_bytes()[..], name, body, &[0; 4]].concat()
        };
        let head = [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a].to_vec();
        let whole = [
            head,
            chunk(b"IHDR", &[0; 13]),
            chunk(b"eXIf", b"41.1 N"),
            chunk(b"tEXt", b"Author someone"),
            chunk(b"IDAT", &[1, 2, 3]),
            chunk(b"IEND", b""),
            b"more".to_vec(),
        ]
        .concat();
        let bare = png(&whole).unwrap();
        assert!(!bare.windows(4).any(|name| name == b"eXIf" || name == b"tEXt" || name == b"more"));
        assert!(bare.ends_with(&[b'I', b'E', b'N', b'D', 0, 0, 0, 0]));
        for end in 8..whole.len() - 4 {
            assert_eq!(png(&whole[..end]), None, "cut at {end}");
        }
    }

    #[test]
    fn lengths_that_are_none_are_refused() {
        assert_eq!(jpeg(&[0xff, 0xd8, 0xff, 0xe1, 0, 0]), None);
        assert_eq!(jpeg(&[0xff, 0xd8, 0xff, 0xe1, 0, 1, 0xff, 0xd9]), None);
        assert_eq!(jpeg(&[0xff, 0xd8, 0xff, 0xd0]), None);
        assert_eq!(png(&[0x89, b'P', b'N', b'G', 13, 10, 26, 10, 0xff, 0xff, 0xff, 0xff, 0, 0, 0, 0]), None);
    }
}
