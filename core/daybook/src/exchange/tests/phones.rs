//! The daybook of one phone: set up once, stopped at any moment, its key its own.

use super::*;
use crate::phone::{Home, KeySeal, KeySealError, PhoneError};
use crate::store::DraftRow;

#[test]
fn a_folder_is_enrolled_once() {
    let mut shop = Shop::new(1);
    let invitation = shop.invite(&[truck(1)]);
    let phone = Phone::new("yard phone 1", &invitation);
    let seal = FileSeal::beside(phone.folder.path());
    let told = Daybook::enrol(phone.folder.path(), &invitation, "again", &seal, at(1)).err().unwrap();
    let text = told.to_string();
    assert!(
        text.contains("Tern Hollow Water as yard phone 1") && text.contains("Nothing was changed"),
        "{text}"
    );
    let empty = tempfile::tempdir().unwrap();
    let told = Daybook::open(empty.path(), &FileSeal::beside(empty.path())).err().unwrap();
    assert!(matches!(told, PhoneError::NotEnrolled(_)));
    let told = Daybook::enrol(empty.path(), &invitation, "  ", &seal, at(1)).err().unwrap();
    assert!(matches!(told, PhoneError::Name));
}

#[test]
fn setting_up_that_was_stopped_goes_on_with_the_same_key() {
    let mut shop = Shop::new(1);
    let invitation = shop.invite(&[truck(1)]);
    let phone = Phone::new("yard phone 1", &invitation);
    let key = phone.book.ledger().own_key().id();
    let Phone { folder, book } = phone;
    drop(book);
    // As if stopped before the home was written, which comes last.
    std::fs::remove_file(folder.path().join("home.json")).unwrap();
    let seal = FileSeal::beside(folder.path());
    assert!(matches!(Daybook::open(folder.path(), &seal), Err(PhoneError::NotEnrolled(_))));
    let mut other = Shop::new(2);
    let told = Daybook::enrol(folder.path(), &other.invite(&[]), "x", &seal, at(0)).err().unwrap();
    assert!(matches!(told, PhoneError::OtherBook(_)));
    let book = Daybook::enrol(folder.path(), &invitation, "yard phone 1", &seal, at(0)).unwrap();
    assert_eq!(book.ledger().own_key().id(), key);
    same_books(&shop.ledger, book.ledger());
    drop(book);
    let book = Daybook::open(folder.path(), &seal).unwrap();
    assert_eq!(book.home(), &Home::read(folder.path()).unwrap());
    assert_eq!(book.home().device, "yard phone 1");
}

#[cfg(unix)]
#[test]
fn a_key_others_can_read_is_not_used() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("keys").join("device.key");
    let seal = FileSeal::new(&path);
    assert!(seal.open().unwrap().is_none());
    seal.seal(&[7; 32]).unwrap();
    assert_eq!(std::fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
    assert_eq!(seal.open().unwrap(), Some([7; 32]));
    for mode in [0o640, 0o604, 0o620] {
        std::fs::set_permissions(&path, std::fs::Permissions::from_mode(mode)).unwrap();
        let told = seal.open().unwrap_err();
        assert!(matches!(told, KeySealError::Readable { .. }), "{mode:o}");
        assert!(told.to_string().contains(&format!("{mode:o}")));
    }
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o600)).unwrap();
    for length in [0, 31, 33] {
        std::fs::write(&path, vec![1; length]).unwrap();
        assert!(matches!(seal.open(), Err(KeySealError::NotAKey(_))), "{length}");
    }
}

#[test]
fn recording_fills_in_what_the_phone_knows_and_trying_again_records_nothing_twice() {
    let mut shop = Shop::new(1);
    let mut phone = shop.lets_in("yard phone 1", &[truck(1)]);
    let id = new_id(at(10)).unwrap();
    let draft = DraftRow { id, body: "{}".into(), changed_ms: 1 };
    phone.book.keep_draft(&draft).unwrap();
    assert_eq!(phone.book.drafts().unwrap(), std::slice::from_ref(&draft));
    phone.book.set_clock_off_ms(-1_500).unwrap();
    let parts = Parts { id: Some(id), ..Parts::about(truck(1), reading(12_262)) };
    assert_eq!(phone.book.record(parts.clone(), at(10)).unwrap(), id);
    assert!(phone.book.drafts().unwrap().is_empty());
    // The clock went on between the two tries; the entry is still one.
    phone.book.keep_draft(&draft).unwrap();
    assert_eq!(phone.book.record(parts, at(11)).unwrap(), id);
    assert!(phone.book.drafts().unwrap().is_empty());
    let rows = phone.book.ledger().store().truth().by_id(id).unwrap();
    assert_eq!(rows.len(), 1);
    let entry = Entry::from_payload(&rows[0].row.payload).unwrap();
    assert_eq!(entry.set, Some(SetId::from_bytes([101; 16])));
    assert_eq!((entry.at, entry.clock_off_ms), (at(10), Some(-1_500)));
}

#[test]
fn an_id_is_a_version_7_of_its_moment() {
    let id = new_id(at(10)).unwrap();
    assert_eq!((id.0.get_version_num(), id.0.get_variant()), (7, uuid::Variant::RFC4122));
    let first_six = u64::from_be_bytes([&[0, 0][..], &id.bytes()[..6]].concat().try_into().unwrap());
    assert_eq!(i64::try_from(first_six).unwrap(), at(10).unix_ms());
    assert_ne!(new_id(at(10)).unwrap(), id);
}
