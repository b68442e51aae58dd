//! A sound is kept whole and short, and says nothing of who recorded it, where and with what.

use super::*;
use crate::photo::PhotoFolder;

fn chunk(name: &[u8; 4], body: &[u8]) -> Vec<u8> {
    let mut made = name.to_vec();
    made.extend(u32::try_from(body.len()).unwrap().to_le_bytes());
    made.extend(body);
    made.resize(made.len().next_multiple_of(2), 0);
    made
}

/// A recording of one channel of 16 bits, with what a recorder writes about itself before and behind.
fn wav(rate: u32, samples: usize) -> Vec<u8> {
    let mut form = [1u16, 1].map(u16::to_le_bytes).concat();
    form.extend([rate, rate * 2].map(u32::to_le_bytes).concat());
    form.extend([2u16, 16].map(u16::to_le_bytes).concat());
    let noise: Vec<u8> = (0..samples).flat_map(|n| ((n % 97) as i16 * 300).to_le_bytes()).collect();
    let chunks = [
        chunk(b"LIST", b"INFOIART\x06\0\0\0owner\0"),
        chunk(b"fmt ", &form),
        chunk(b"data", &noise),
        chunk(b"bext", b"39.7 N 104.9 W"),
    ]
    .concat();
    let mut made = b"RIFF".to_vec();
    made.extend(u32::try_from(chunks.len() + 4).unwrap().to_le_bytes());
    made.extend(b"WAVE");
    made.extend(chunks);
    made
}

fn boxed(name: &[u8; 4], body: &[u8]) -> Vec<u8> {
    let mut made = u32::try_from(body.len() + 8).unwrap().to_be_bytes().to_vec();
    made.extend(name);
    made.extend(body);
    made
}

fn words(numbers: &[u32]) -> Vec<u8> {
    numbers.iter().flat_map(|number| number.to_be_bytes()).collect()
}

/// How a test's MP4 differs from a telephone's recording of `frames` frames of AAC at 16 kHz.
struct Recorded {
    frames: u32,
    said: u32,
    handler: &'static [u8; 4],
    coded: &'static [u8; 4],
    tracks: usize,
    /// The samples have a length of 64 bits.
    wide: bool,
}

const USUAL: Recorded =
    Recorded { frames: 150, said: 150, handler: b"soun", coded: b"mp4a", tracks: 1, wide: false };

/// The boxes as a telephone writes them: the place in words, the name of its own software, an odd box, the table last.
fn mp4(of: &Recorded) -> Vec<u8> {
    let rows = [words(&[0, 1, of.frames, 1_024])].concat();
    let description = boxed(of.coded, &[7; 28]);
    let table = [
        boxed(b"stsd", &[words(&[0, 1]), description].concat()),
        boxed(b"stts", &rows),
        boxed(b"stsc", &words(&[0, 0])),
        boxed(b"stsz", &words(&[0, 4, of.frames])),
        boxed(b"stco", &words(&[0, 1, 40])),
        boxed(b"make", b""),
    ]
    .concat();
    let inside = [boxed(b"smhd", &[0; 8]), boxed(b"dinf", &[0; 8]), boxed(b"stbl", &table)].concat();
    let mut handler = words(&[0, 0]);
    handler.extend(of.handler);
    handler.extend([0; 12]);
    handler.extend(b"Telephone of somebody\0");
    let media = [
        boxed(b"mdhd", &words(&[0, 3, 3, 16_000, of.said * 1_024, 0])),
        boxed(b"hdlr", &handler),
        boxed(b"minf", &inside),
    ]
    .concat();
    let track = [boxed(b"tkhd", &[0; 84]), boxed(b"mdia", &media), boxed(b"udta", b"by somebody")].concat();
    let place = boxed(b"udta", &boxed(b"\xa9xyz", b"\0\x12\x15\xc7+39.7-104.9/"));
    let mut movie = boxed(b"mvhd", &words(&[0, 3, 3, 1_000, 9_600]));
    for _ in 0..of.tracks {
        movie.extend(boxed(b"trak", &track));
    }
    movie.extend(place);
    movie.extend(boxed(b"meta", b"com.maker.version"));
    let samples: Vec<u8> = (0..of.frames * 4).map(|n| (n % 251) as u8).collect();
    let samples = if of.wide {
        [words(&[1]), b"mdat".to_vec(), words(&[0, 16 + of.frames * 4]), samples].concat()
    } else {
        boxed(b"mdat", &samples)
    };
    [boxed(b"ftyp", b"mp42\0\0\0\0isommp42"), boxed(b"free", b"left over"), samples, boxed(b"moov", &movie)]
        .concat()
}

fn has(bytes: &[u8], words: &[u8]) -> bool {
    bytes.windows(words.len()).any(|part| part == words)
}

#[test]
fn a_wav_keeps_its_samples_alone() {
    let clean = cleaned(&wav(16_000, 16_000)).unwrap();
    assert_eq!(clean.len(), 44 + 32_000);
    assert!(!has(&clean, b"owner") && !has(&clean, b"39.7"));
    assert_eq!(&clean[..4], b"RIFF");
    assert_eq!(u32::from_le_bytes(clean[4..8].try_into().unwrap()) as usize + 8, clean.len());
    let whole = wav(16_000, 16_000);
    assert!(has(&whole, &clean[44..80]), "the samples themselves");
    assert_eq!(cleaned(&clean).unwrap(), clean, "once more changes nothing");
    // Ten seconds and the end of the frame they fall into, no more.
    assert!(cleaned(&wav(8_000, 84_000)).is_ok());
    assert!(matches!(cleaned(&wav(8_000, 84_100)), Err(SoundError::TooLong)));
    assert!(matches!(cleaned(&wav(48_000, 440_000)), Err(SoundError::TooLarge)));
    assert!(matches!(cleaned(&wav(8_000, 0)), Err(SoundError::NotASound)));
}

#[test]
fn an_mp4_keeps_its_sound_where_it_lies_and_its_makers_words_are_gone() {
    for of in [USUAL, Recorded { wide: true, ..USUAL }] {
        let whole = mp4(&of);
        let clean = cleaned(&whole).unwrap();
        assert_eq!(clean.len(), whole.len(), "nothing moved");
        for gone in [&b"+39.7"[..], b"somebody", b"com.maker", b"left over", b"make"] {
            assert!(has(&whole, gone) && !has(&clean, gone), "{}", String::from_utf8_lossy(gone));
        }
        for kept in [&b"mdat"[..], b"stco", b"mp4a", &[0, 1, 2, 3, 4, 5, 6, 7]] {
            assert!(has(&clean, kept), "{kept:?}");
        }
        assert_eq!(cleaned(&clean).unwrap(), clean, "once more changes nothing");
    }
}

#[test]
fn what_is_no_sound_or_too_much_of_one_is_said() {
    let told = |of: Recorded| cleaned(&mp4(&of)).unwrap_err();
    // 165 frames of 1,024 at 16 kHz are 10.56 s; a header that says less does not help.
    assert!(cleaned(&mp4(&Recorded { frames: 164, said: 164, ..USUAL })).is_ok());
    assert!(matches!(told(Recorded { frames: 165, said: 165, ..USUAL }), SoundError::TooLong));
    assert!(matches!(told(Recorded { frames: 4_000, said: 1, ..USUAL }), SoundError::TooLong));
    assert!(matches!(told(Recorded { said: 400, ..USUAL }), SoundError::TooLong));
    assert!(matches!(told(Recorded { handler: b"vide", ..USUAL }), SoundError::NotASound));
    assert!(matches!(told(Recorded { coded: b"samr", ..USUAL }), SoundError::NotASound));
    assert!(matches!(told(Recorded { tracks: 2, ..USUAL }), SoundError::NotASound));
    assert!(matches!(told(Recorded { tracks: 0, ..USUAL }), SoundError::Cut));
    for noise in [&b""[..], b"ID3\x04", b"OggS", b"\xff\xd8\xff\xe0", b"RIFF\0\0\0\0WEBP", b"<svg/>"] {
        assert!(matches!(cleaned(noise), Err(SoundError::NotASound)));
    }
    // Two channels, and samples that are no plain numbers.
    for (at, value) in [(22 + 26, 2), (20 + 26, 3)] {
        let mut other = wav(16_000, 1_600);
        other[at] = value;
        assert!(matches!(cleaned(&other), Err(SoundError::NotASound)), "{at}");
    }
}

#[test]
fn what_is_cut_off_anywhere_is_said_and_brings_nothing_down() {
    for whole in [wav(8_000, 400), mp4(&Recorded { frames: 20, said: 20, ..USUAL })] {
        for length in 0..whole.len() {
            let told = cleaned(&whole[..length]);
            assert!(matches!(told, Err(SoundError::Cut | SoundError::NotASound)), "{length} {told:?}");
        }
    }
}

#[test]
fn a_phone_without_room_says_that_the_defect_is_kept_and_the_sound_is_not() {
    let full = std::io::Error::from(std::io::ErrorKind::StorageFull);
    let error = SoundError::from(crate::photo::PhotoError::of(std::path::Path::new("photos"), full));
    assert_eq!(error.text_key(), Some("error-sound-full"));
    assert!(error.to_string().contains("the defect is kept, the sound is not"));
    for (error, key) in [
        (SoundError::NotASound, "error-not-a-sound"),
        (SoundError::Cut, "error-sound-cut"),
        (SoundError::TooLong, "error-sound-too-long"),
        (SoundError::TooLarge, "error-sound-too-large"),
        (SoundError::Full, "error-sound-full"),
    ] {
        assert_eq!(error.to_string(), crate::text::Texts::english().get(key, &[]));
    }
}

#[test]
fn a_sound_lies_beside_the_photos_and_a_damaged_one_is_noticed() {
    let home = tempfile::tempdir().unwrap();
    let folder = PhotoFolder::of(home.path());
    let bytes = cleaned(&wav(8_000, 800)).unwrap();
    let sound = folder.keep(&bytes).unwrap();
    assert_eq!(folder.read(sound).unwrap().unwrap(), bytes);
    std::fs::write(folder.file(sound), b"other").unwrap();
    let told = folder.read(sound).map_err(SoundError::from);
    assert_eq!(told.unwrap_err().text_key(), Some("error-sound-damaged"));
}

proptest::proptest! {
    #[test]
    fn no_bytes_bring_the_walk_down(
        start in 0usize..4,
        changes in proptest::collection::vec((0usize..900, proptest::num::u8::ANY), 0..24),
        tail in proptest::collection::vec(proptest::num::u8::ANY, 0..200),
    ) {
        let mut bytes = match start {
            0 => wav(8_000, 300),
            1 => mp4(&Recorded { frames: 30, said: 30, ..USUAL }),
            2 => [&b"RIFF\x40\0\0\0WAVEfmt \x10\0\0\0"[..], &tail].concat(),
            _ => [&b"\0\0\0\x08ftyp"[..], &tail].concat(),
        };
        for (at, value) in changes {
            if let Some(byte) = bytes.get_mut(at) {
                *byte = value;
            }
        }
        if let Ok(clean) = cleaned(&bytes) {
            proptest::prop_assert!(SoundKind::of(&clean).is_some());
            proptest::prop_assert_eq!(cleaned(&clean).unwrap(), clean);
        }
    }
}
