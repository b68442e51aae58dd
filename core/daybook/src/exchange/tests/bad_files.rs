//! Files that are cut, damaged, forged, or not for here.

use super::*;
use crate::exchange::{ExchangeError, Reason, TakenIn};
use crate::gate::KeyId;
use crate::parcel::{FileReader, FileWriter, Opened, Parcel, open, seal};

/// A phone's file, opened, changed and sealed again by the same phone.
fn changed(phone: &Phone, file: &[u8], change: impl Fn(&mut Parcel)) -> Vec<u8> {
    let own = phone.book.ledger().own_key();
    let mut writer = FileWriter::new(Vec::new()).unwrap();
    for frame in FileReader::new(file).unwrap() {
        let known = |id: KeyId| (id == own.id()).then(|| own.public());
        let Opened { mut parcel, .. } = open(&frame.unwrap(), known).unwrap();
        change(&mut parcel);
        writer.add(&seal(&parcel, own).unwrap().wire).unwrap();
    }
    writer.finish().unwrap()
}

fn ready(entries: i64) -> (Shop, Phone, Vec<u8>) {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    for n in 0..entries {
        phone.reads(truck(1), 12_262 + n, at(10 + n));
    }
    let file = phone.hands_over(at(600));
    (shop, phone, file)
}

#[test]
fn a_file_cut_short_says_how_much_came_and_of_how_much() {
    let (mut shop, _, file) = ready(150);
    let first = 12 + u32::from_be_bytes(file[8..12].try_into().unwrap()) as usize;
    for cut in [first, first + 3, file.len() - 1] {
        let before = shop.ledger.store().truth().count().unwrap();
        let taken = take_in(&mut shop.ledger, &file[..cut], at(700)).unwrap();
        let early = taken.ended_early.clone().unwrap();
        let read = if cut == file.len() - 1 { 128 } else { 64 };
        // The phone's own enrolment went along, as the first of them.
        assert_eq!((early.after, early.of), (read, Some(151)));
        assert!(early.to_string().starts_with(&format!("The file ends after entry {read} of 151. ")));
        let now = shop.ledger.store().truth().count().unwrap();
        assert_eq!(now - before, taken.admitted as u64);
    }
    let taken = take_in(&mut shop.ledger, &file, at(701)).unwrap();
    assert_eq!((taken.admitted, taken.known, taken.ended_early), (23, 128, None), "nothing is doubled");
}

#[test]
fn a_file_with_any_one_byte_changed_or_cut_anywhere_takes_nothing_from_the_books() {
    let (shop, _, file) = ready(3);
    let last = shop.ledger.store().truth().last_n().unwrap();
    let book = BookId::Truck { truck: truck(1), year: 2026 };
    let mut ledger = shop.ledger.as_of(last).unwrap();
    let first = take_in(&mut ledger, &file, at(700)).unwrap();
    assert_eq!(first.admitted, 3);
    let heads = ledger.store().truth().heads(book).unwrap();
    for at_byte in 0..file.len() {
        let mut bad = file.clone();
        bad[at_byte] ^= 1 << (at_byte % 8);
        for bytes in [&bad[..], &file[..at_byte]] {
            match take_in(&mut ledger, bytes, at(701)) {
                Err(ExchangeError::NotAFile) => assert!(at_byte < 8),
                Err(other) => panic!("byte {at_byte}: {other}"),
                Ok(taken) => {
                    let whole = taken.known == first.known + 3;
                    let told = taken.ended_early.is_some() || !taken.refused.is_empty();
                    assert!(whole || told || bytes.len() == 8, "byte {at_byte}: {taken:?}");
                    assert_eq!(taken.admitted, 0);
                }
            }
        }
        assert_eq!(ledger.store().truth().heads(book).unwrap(), heads, "byte {at_byte}");
    }
}

#[test]
fn three_forged_entries_are_refused_and_the_others_are_in() {
    let (mut shop, mut phone, _) = ready(0);
    // Each on a book of its own, so that nothing stands on a forged one.
    for number in 1..=40u8 {
        phone.reads(truck(number), 12_000, at(i64::from(number)));
    }
    let file = phone.hands_over(at(600));
    let bad = changed(&phone, &file, |parcel| {
        for run in parcel.runs.iter_mut().filter(|run| run.book != BookId::Fleet).take(3) {
            run.entries[0].signature[0] ^= 1;
        }
    });
    let (taken, _) = shop.meets(&bad, at(700));
    assert_eq!((taken.admitted, taken.forged(), taken.refused.len()), (37, 3, 3));
    assert!(taken.refused.iter().all(|(id, _)| id.is_some()));
    assert_eq!(shop.ledger.store().refused().unwrap().len(), 3);
    // The honest file brings the three; nothing else changes.
    let (taken, _) = shop.meets(&file, at(701));
    assert_eq!((taken.admitted, taken.refused.len()), (3, 0));
}

#[test]
fn an_entry_moved_to_another_book_number_or_hand_is_refused() {
    let (mut shop, phone, file) = ready(2);
    let other = BookId::Truck { truck: truck(2), year: 2026 };
    let changes: [&dyn Fn(&mut Parcel); 3] =
        [&|parcel| last(parcel).book = other, &|parcel| last(parcel).seq += 1, &|parcel| {
            last(parcel).entries[0].payload[3] ^= 1
        }];
    fn last(parcel: &mut Parcel) -> &mut crate::parcel::Run {
        parcel.runs.last_mut().unwrap()
    }
    for change in changes {
        let bad = changed(&phone, &file, change);
        let taken = take_in(&mut shop.ledger, &bad, at(700)).unwrap();
        assert_eq!(taken.admitted, 0, "{taken:?}");
        assert!(taken.forged() > 0, "{taken:?}");
    }
    let bad = changed(&phone, &file, |parcel| last(parcel).deps = vec![crate::parcel::Dep::Back(9)]);
    let taken = take_in(&mut shop.ledger, &bad, at(700)).unwrap();
    assert!(taken.refused.iter().all(|(_, reason)| *reason == Reason::Malformed));
    assert_eq!(take_in(&mut shop.ledger, &file, at(701)).unwrap().admitted, 2);
}

#[test]
fn a_file_that_is_not_for_here_is_told_by_its_kind() {
    let (mut shop, mut phone, file) = ready(1);
    let mut other = Shop::new(2);
    let told = take_in(&mut other.ledger, &file, at(700)).unwrap_err();
    assert!(told.to_string().starts_with("Another fleet's file: nothing taken in."), "{told}");
    assert_eq!(other.ledger.store().truth().count().unwrap(), 7);
    let told = phone.book.take_in(&other.invite(&[]), at(700)).unwrap_err();
    assert!(matches!(told, ExchangeError::OtherFleet));
    assert!(matches!(take_in(&mut shop.ledger, b"PK\x03\x04", at(700)), Err(ExchangeError::NotAFile)));
    // The fleet's name under another key.
    let own = DeviceKey::from_secret(&[66; 32]);
    let root = Root { fleet: FleetId::from_bytes([1; 16]), shop: own.public() };
    let mut false_shop = Shop { ledger: Ledger::over(Store::in_memory().unwrap(), root, own).unwrap() };
    let told = phone.book.take_in(&false_shop.invite(&[]), at(700)).unwrap_err();
    assert!(told.to_string().contains("its key is another"), "{told}");
    // An answer of the false shop is from nobody this phone knows, and acknowledges nothing.
    let taken = TakenIn::default();
    let forged = answer(&mut false_shop.ledger, &taken, at(700)).unwrap();
    let told = phone.book.take_in(&forged, at(701)).unwrap();
    assert_eq!(told.refused, [(None, Reason::UnknownSender)]);
    assert!(!told.receipt);
    let seal = FileSeal::beside(phone.folder.path());
    let folder = tempfile::tempdir().unwrap();
    let told = Daybook::enrol(folder.path(), &file, "x", &seal, at(0)).err().unwrap();
    assert!(told.to_string().contains("not an invitation"), "{told}");
}
