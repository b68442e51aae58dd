//! Photos are kept whole, named by what they hold, and say nothing of place, owner or device.

use super::*;

fn segment(marker: u8, body: &[u8]) -> Vec<u8> {
    let mut made = vec![0xff, marker];
    made.extend(u16::try_from(body.len() + 2).unwrap().to_be_bytes());
    made.extend(body);
    made
}

/// A picture's segments as a camera writes them: EXIF of `way`, place and words, two scans, a clip behind.
fn camera(way: Option<u8>) -> Vec<u8> {
    let mut exif = b"Exif\0\0II*\0\x08\0\0\0\x02\0".to_vec();
    exif.extend([0x0f, 0x01, 2, 0, 4, 0, 0, 0, b'C', b'a', b'm', 0]);
    exif.extend([0x12, 0x01, 3, 0, 1, 0, 0, 0, way.unwrap_or(1), 0, 0, 0]);
    exif.extend(b"\0\0\0\0GPS 39.7 N 104.9 W");
    let mut bytes = vec![0xff, 0xd8];
    bytes.extend(segment(0xe0, b"JFIF\0\x01\x02\0\0\x01\0\x01\0\0"));
    bytes.extend(segment(0xe1, &exif));
    bytes.extend(segment(0xe1, b"http://ns.adobe.com/xap/1.0/\0<owner/>"));
    bytes.extend(segment(0xe2, b"ICC_PROFILE\0\x01\x01colours"));
    bytes.extend(segment(0xe2, b"MPF\0more pictures"));
    bytes.extend(segment(0xed, b"Photoshop 3.0\0words"));
    bytes.extend(segment(0xfe, b"taken by"));
    bytes.extend(segment(0xdb, &[0; 65]));
    bytes.extend(segment(0xc2, &[8, 0, 1, 0, 1, 1, 1, 0x11, 0]));
    for scan in [[1, 2, 0xff, 0x00, 3], [4, 0xff, 0xd0, 5, 6]] {
        bytes.extend([0xff]);
        bytes.extend(segment(0xda, &[1, 1, 0, 0, 63, 0]));
        bytes.extend(scan);
    }
    bytes.extend([0xff, 0xd9]);
    bytes.extend(b"a clip of three seconds with sound");
    bytes
}

fn has(bytes: &[u8], words: &[u8]) -> bool {
    bytes.windows(words.len()).any(|part| part == words)
}

#[test]
fn a_jpeg_keeps_its_picture_its_colours_and_the_way_it_is_turned() {
    let clean = cleaned(&camera(Some(6))).unwrap();
    for gone in [&b"GPS"[..], b"Cam", b"owner", b"words", b"taken by", b"clip", b"MPF"] {
        assert!(!has(&clean, gone), "{}", String::from_utf8_lossy(gone));
    }
    for kept in [&b"JFIF"[..], b"colours", &[1, 2, 0xff, 0x00, 3], &[4, 0xff, 0xd0, 5, 6]] {
        assert!(has(&clean, kept), "{kept:?}");
    }
    assert!(has(&clean, &[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6]), "turned by 6");
    assert!(clean.ends_with(&[0xff, 0xd9]));
    assert_eq!(cleaned(&clean).unwrap(), clean, "once more changes nothing");
    assert!(!has(&cleaned(&camera(None)).unwrap(), b"Exif"));
}

#[test]
fn a_png_and_a_webp_keep_their_picture_alone() {
    let chunk = |name: &[u8], body: &[u8]| {
        let mut made = u32::try_from(body.len()).unwrap().to_be_bytes().to_vec();
        made.extend([name, body, &[9; 4]].concat());
        made
    };
    let png = [
        b"\x89PNG\r\n\x1a\n".to_vec(),
        chunk(b"IHDR", &[0; 13]),
        chunk(b"eXIf", b"GPS"),
        chunk(b"gAMA", &[0; 4]),
        chunk(b"tEXt", b"Author\0me"),
        chunk(b"IDAT", b"picture"),
        chunk(b"IEND", b""),
        b"behind".to_vec(),
    ];
    let clean = cleaned(&png.concat()).unwrap();
    assert!(has(&clean, b"IDATpicture") && has(&clean, b"gAMA") && clean.ends_with(&[9; 4]));
    assert!(!has(&clean, b"GPS") && !has(&clean, b"Author") && !has(&clean, b"behind"));
    let chunk = |name: &[u8], body: &[u8]| {
        let mut made = name.to_vec();
        made.extend(u32::try_from(body.len()).unwrap().to_le_bytes());
        made.extend(body);
        made.resize(made.len().next_multiple_of(2), 0);
        made
    };
    let chunks = [
        chunk(b"VP8X", &[0x0c | 0x10, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
        chunk(b"VP8L", b"picture"),
        chunk(b"EXIF", b"GPS"),
        chunk(b"XMP ", b"owner"),
    ];
    let chunks = chunks.concat();
    let mut webp = b"RIFF".to_vec();
    webp.extend(u32::try_from(chunks.len() + 4).unwrap().to_le_bytes());
    webp.extend(b"WEBP");
    webp.extend(&chunks);
    let clean = cleaned(&webp).unwrap();
    assert!(has(&clean, b"picture") && !has(&clean, b"GPS") && !has(&clean, b"owner"));
    assert_eq!(clean[20], 0x10, "the flags no longer promise them");
    assert_eq!(
        usize::try_from(u32::from_le_bytes(clean[4..8].try_into().unwrap())).unwrap() + 8,
        clean.len()
    );
}

#[test]
fn what_is_cut_off_or_no_photo_is_said_and_brings_nothing_down() {
    let whole = camera(Some(3));
    let end = whole.len() - b"a clip of three seconds with sound".len();
    for length in 0..end {
        let told = cleaned(&whole[..length]);
        assert!(matches!(told, Err(PhotoError::Cut | PhotoError::NotAPhoto)), "{length}");
    }
    for noise in [&b""[..], b"GIF89a", b"<svg/>", b"%PDF-1.7", &[0xff, 0xd8]] {
        assert!(matches!(cleaned(noise), Err(PhotoError::NotAPhoto)));
    }
    let mut huge = camera(None);
    let at = huge.len() - 40;
    huge.splice(at..at, vec![7; MOST]);
    assert!(matches!(cleaned(&huge), Err(PhotoError::TooLarge)));
}

#[test]
fn a_photo_is_kept_once_and_a_damaged_one_is_noticed() {
    let home = tempfile::tempdir().unwrap();
    let folder = PhotoFolder::of(home.path());
    assert!(folder.all().unwrap().is_empty());
    let bytes = cleaned(&camera(None)).unwrap();
    let photo = folder.keep(&bytes).unwrap();
    assert_eq!(folder.keep(&bytes).unwrap(), photo);
    assert_eq!(folder.all().unwrap(), [photo]);
    assert_eq!(folder.read(photo).unwrap().unwrap(), bytes);
    std::fs::write(folder.file(photo), b"other").unwrap();
    assert!(matches!(folder.read(photo), Err(PhotoError::Damaged(_))));
}

proptest::proptest! {
    #[test]
    fn no_bytes_bring_the_walk_down(
        start in 0usize..3,
        changes in proptest::collection::vec((0usize..400, proptest::num::u8::ANY), 0..20),
        tail in proptest::collection::vec(proptest::num::u8::ANY, 0..200),
    ) {
        let mut bytes = match start {
            0 => camera(Some(8)),
            1 => [&b"\x89PNG\r\n\x1a\n"[..], &tail].concat(),
            _ => [&b"RIFF\x40\0\0\0WEBPVP8X"[..], &tail].concat(),
        };
        for (at, value) in changes {
            if let Some(byte) = bytes.get_mut(at) {
                *byte = value;
            }
        }
        if let Ok(clean) = cleaned(&bytes) {
            proptest::prop_assert!(PhotoKind::of(&clean).is_some());
            proptest::prop_assert_eq!(cleaned(&clean).unwrap(), clean);
        }
    }
}
