use sumpbook_trade::FleetId;
use uuid::Uuid;

use super::*;
use crate::exchange::ShopCode;
use crate::gate::DeviceKey;
use crate::ledger::Root;
use crate::parcel::Invitation;
use crate::phone::FileSeal;

const AMOS: PersonId = PersonId(Uuid::from_u128(0x0201));
const GIL: PersonId = PersonId(Uuid::from_u128(0x0203));

fn at(text: &str) -> Stamp {
    text.parse().unwrap()
}

fn phone(folder: &std::path::Path) -> Daybook {
    let shop = DeviceKey::from_secret(&[1; 32]).public();
    let root = Root { fleet: FleetId(Uuid::from_u128(1)), shop };
    let fleet_name = "Tern Hollow Water".to_owned();
    let invitation = Invitation { shop, code: [3; 16], hub: None, fleet_name, expires_ms: 4_000_000_000_000 };
    let code = ShopCode { root, invitation, units: Vec::new() };
    Daybook::enrol_by_code(folder, &code, "yard phone 3", &FileSeal::beside(folder)).unwrap()
}

#[test]
fn a_pin_is_one_persons_on_one_phone_and_outlives_a_restart() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let now = at("2026-10-19T06:30:00-06:00");
    let mut book = phone(here.path());
    assert_eq!(book.give_pin(AMOS, "271828", now).unwrap(), PinSaid::NotChosen);
    book.choose_pin(AMOS, "271828", None, now).unwrap();
    drop(book);
    let mut book = Daybook::open(here.path(), &FileSeal::beside(here.path())).unwrap();
    assert!(book.pin_chosen(AMOS).unwrap() && !book.pin_chosen(GIL).unwrap());
    assert_eq!(book.give_pin(AMOS, "271828", now).unwrap(), PinSaid::Right);
    assert_eq!(book.give_pin(GIL, "271828", now).unwrap(), PinSaid::NotChosen);
    assert_eq!(phone(there.path()).give_pin(AMOS, "271828", now).unwrap(), PinSaid::NotChosen);

    // What is kept is worth nothing on a phone with another key.
    let kept = book.ledger().store().setting(&verifier_of(AMOS)).unwrap().unwrap();
    let pepper = DeviceKey::from_secret(&[9; 32]).secret_for(PURPOSE);
    assert!(!matches(&pepper, "271828", &kept));
    assert!(std::str::from_utf8(&kept).unwrap().starts_with("$argon2id$v=19$"));
}

#[test]
fn wrong_tries_slow_down_over_a_restart_and_the_right_one_forgets_them() {
    let here = tempfile::tempdir().unwrap();
    let now = at("2026-10-19T06:30:00-06:00");
    let mut book = phone(here.path());
    book.choose_pin(AMOS, "271828", None, now).unwrap();
    assert_eq!(book.give_pin(AMOS, "000000", now).unwrap(), PinSaid::Wrong { wait_s: 0 });
    assert_eq!(book.give_pin(AMOS, "271829", now).unwrap(), PinSaid::Wrong { wait_s: 0 });
    drop(book);
    let mut book = Daybook::open(here.path(), &FileSeal::beside(here.path())).unwrap();
    assert_eq!(book.give_pin(AMOS, "", now).unwrap(), PinSaid::Wrong { wait_s: 30 });
    // Even the right one is not looked at before its time.
    assert_eq!(book.give_pin(AMOS, "271828", now).unwrap(), PinSaid::Wait { wait_s: 30 });
    assert_eq!(book.give_pin(AMOS, "271828", at("2026-10-19T06:30:30-06:00")).unwrap(), PinSaid::Right);
    assert_eq!(book.give_pin(AMOS, "1", now).unwrap(), PinSaid::Wrong { wait_s: 0 });
}

#[test]
fn a_pin_has_digits_that_are_not_soon_guessed_and_is_changed_by_who_knows_it() {
    let here = tempfile::tempdir().unwrap();
    let now = at("2026-10-19T06:30:00-06:00");
    let mut book = phone(here.path());
    for short in ["", "12", "27182", "2718281828459", "27182x", "27 182", "２７１８２８"] {
        assert!(matches!(book.choose_pin(AMOS, short, None, now), Err(PinError::Digits)), "{short}");
    }
    for plain in ["000000", "123456", "987654"] {
        assert!(matches!(book.choose_pin(AMOS, plain, None, now), Err(PinError::TooPlain)), "{plain}");
    }
    book.choose_pin(AMOS, "271828", None, now).unwrap();
    let refused = book.choose_pin(AMOS, "314159", None, now).unwrap_err();
    assert!(matches!(refused, PinError::NotTheOld(PinSaid::Wrong { .. })), "{refused}");
    book.choose_pin(AMOS, "314159", Some("271828"), now).unwrap();
    assert_eq!(book.give_pin(AMOS, "271828", now).unwrap(), PinSaid::Wrong { wait_s: 0 });
    assert_eq!(book.give_pin(AMOS, "314159", now).unwrap(), PinSaid::Right);
}
