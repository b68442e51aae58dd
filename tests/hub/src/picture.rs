//! Pictures a phone takes, sounds it records, and entries that name them.

use sumpbook_daybook::phone::{Daybook, Parts};
use sumpbook_simulation::fleet::truck;
use sumpbook_trade::EntryId;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::{Answer, AnswerKind, Digest, DisplayNote, EndOfDay, NoteKind};

use crate::clock;

/// A picture of about this many bytes, another for each number. Its segments are those of a JPEG; nobody has to
/// look at it.
pub fn picture(number: u32, bytes: usize) -> Vec<u8> {
    let mut made = vec![0xff, 0xd8, 0xff, 0xdb, 0, 67];
    made.extend([1; 65]);
    made.extend([0xff, 0xc0, 0, 11, 8, 0, 1, 0, 1, 1, 1, 0x11, 0]);
    made.extend([0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0]);
    let mut random = u64::from(number) + 1;
    while made.len() + 2 < bytes {
        random = random.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        // Never the byte that begins a marker.
        made.push(((random >> 33) % 255) as u8);
    }
    made.extend([0xff, 0xd9]);
    made
}

/// Keeps a picture and records an entry that names it.
pub fn takes(phone: &mut Daybook, unit: u32, picture: &[u8]) -> (Digest, EntryId) {
    let photo = phone.keep_photo(picture).unwrap();
    (photo, names(phone, unit, photo))
}

/// Records an entry that names a photo, whether it is kept or not.
pub fn names(phone: &mut Daybook, unit: u32, photo: Digest) -> EntryId {
    let note = DisplayNote {
        what: NoteKind::Reminder,
        as_shown: "service".into(),
        stopped_by_itself: None,
        gone_again: None,
        photo: Some(photo),
    };
    phone.record(Parts::about(truck(unit), note.into()), clock()).unwrap()
}

/// So many seconds of a noise: one channel of 16 bits at 16 kHz.
pub fn noise(seconds: u32) -> Vec<u8> {
    let samples: Vec<u8> =
        (0..seconds * 16_000).flat_map(|n| ((n % 150) as i16 * 200).to_le_bytes()).collect();
    let length = samples.len() as u32;
    let mut made = b"RIFF".to_vec();
    made.extend((36 + length).to_le_bytes());
    made.extend(b"WAVEfmt \x10\0\0\0\x01\0\x01\0");
    made.extend([16_000u32, 32_000].map(u32::to_le_bytes).concat());
    made.extend(b"\x02\0\x10\0data");
    made.extend(length.to_le_bytes());
    made.extend(samples);
    made
}

/// Records a defect of the day that names a sound, whether it is kept or not.
pub fn heard(phone: &mut Daybook, unit: u32, sound: Digest) -> EntryId {
    let mounts = Answer {
        item: "mounts".into(),
        place: None,
        answer: AnswerKind::Defect,
        word: Some("broken".into()),
        severity: Some(Severity::Air),
        figures: Vec::new(),
        on_screen_ms: None,
        together: None,
        words: None,
        photos: Vec::new(),
        sound: Some(sound),
    };
    let report = EndOfDay {
        defects: vec![mounts],
        none_found: false,
        odometer: None,
        tanks_drained: None,
        to_next: None,
        notes_seen: Vec::new(),
    };
    phone.record(Parts::about(truck(unit), report.into()), clock()).unwrap()
}
