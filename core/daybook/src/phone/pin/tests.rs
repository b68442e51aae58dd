use sumpbook_trade::record::{PersonSet, Role, Source};
use sumpbook_trade::{Entry, EntryId, FleetId};
use uuid::Uuid;

use super::*;
use crate::exchange::ShopCode;
use crate::gate::DeviceKey;
use crate::ledger::{Admission, Incoming, Ledger, NewEntry, Root};
use crate::parcel::Invitation;
use crate::phone::FileSeal;
use crate::store::Store;

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

#[test]
fn a_new_pin_that_the_shop_asks_for_is_set_without_the_old_one() {
    let here = tempfile::tempdir().unwrap();
    let now = at("2026-10-19T06:30:00-06:00");
    let mut book = phone(here.path());
    book.choose_pin(AMOS, "271828", None, now).unwrap();
    book.choose_pin(GIL, "161803", None, now).unwrap();
    let (root, key) = (book.ledger().root(), DeviceKey::from_secret(&[1; 32]));
    let mut shop = Ledger::over(Store::in_memory().unwrap(), root, key).unwrap();
    let mut ask = |book: &mut Daybook, when: &str| {
        let amos = PersonSet {
            person: AMOS,
            name: "Amos Tillery".to_owned(),
            role: Role::Driver,
            gone: false,
            new_pin_asked: Some(at(when)),
        };
        let entry = Entry {
            id: EntryId(crate::ledger::new_id(at(when)).unwrap().0),
            unit: None,
            set: None,
            at: at(when),
            clock_off_ms: Some(0),
            person: None,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Shop,
            fact: amos.into(),
        };
        shop.record(&[NewEntry { entry, truck: None }], at(when).unix_ms()).unwrap();
        let rows = shop.store().truth().between(0, i64::MAX, i64::MAX).unwrap();
        let rows: Vec<Incoming> = rows.iter().map(|held| Incoming::of_row(root.fleet, &held.row)).collect();
        for told in book.ledger_mut().admit(&rows, at(when).unix_ms(), None).unwrap() {
            assert!(matches!(told, Admission::Admitted(_) | Admission::Known(_)), "{told:?}");
        }
    };
    // The phone's clock is a day behind the shop's: that decides nothing.
    ask(&mut book, "2026-10-20T09:00:00-06:00");
    assert!(book.new_pin_asked(AMOS).unwrap() && !book.pin_chosen(AMOS).unwrap());
    assert!(!book.new_pin_asked(GIL).unwrap() && book.pin_chosen(GIL).unwrap());
    assert_eq!(book.give_pin(AMOS, "271828", now).unwrap(), PinSaid::NotChosen);
    assert_eq!(book.give_pin(GIL, "161803", now).unwrap(), PinSaid::Right);
    book.choose_pin(AMOS, "314159", None, now).unwrap();
    assert!(!book.new_pin_asked(AMOS).unwrap() && book.pin_chosen(AMOS).unwrap());
    assert_eq!(book.give_pin(AMOS, "314159", now).unwrap(), PinSaid::Right);
    assert!(matches!(book.give_pin(AMOS, "271828", now).unwrap(), PinSaid::Wrong { .. }));
    // Asked again, it is asked again, over a restart too.
    ask(&mut book, "2026-10-21T09:00:00-06:00");
    drop(book);
    let book = Daybook::open(here.path(), &FileSeal::beside(here.path())).unwrap();
    assert!(book.new_pin_asked(AMOS).unwrap());
}
