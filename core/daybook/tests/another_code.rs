//! A phone that asked with a code that ran out is given the next one.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop where it stands")]

use std::path::Path;

use sumpbook_daybook::exchange::ShopCode;
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::Root;
use sumpbook_daybook::parcel::Invitation;
use sumpbook_daybook::phone::{Daybook, FileSeal, Parts, PhoneError};
use sumpbook_trade::record::{Drive, DriveWhat};
use sumpbook_trade::{FleetId, Stamp, TruckId};
use uuid::Uuid;

fn asks(folder: &Path, shop: u8, code: u8, hub: &str) -> Result<Daybook, PhoneError> {
    let shop = DeviceKey::from_secret(&[shop; 32]).public();
    let root = Root { fleet: FleetId(Uuid::from_u128(1)), shop };
    let (hub, fleet_name) = (Some(hub.to_owned()), "Tern Hollow Water".to_owned());
    let invitation = Invitation { shop, code: [code; 16], hub, fleet_name, expires_ms: 4_000_000_000_000 };
    let code = ShopCode { root, invitation, units: Vec::new() };
    Daybook::enrol_by_code(folder, &code, "yard phone 3", &FileSeal::beside(folder))
}

#[test]
fn the_next_code_takes_the_place_of_one_that_ran_out_and_the_key_stays() {
    let folder = tempfile::tempdir().unwrap();
    let first = asks(folder.path(), 1, 3, "yard.example:8443").unwrap();
    let key = first.ledger().own_key().id();
    drop(first);
    let second = asks(folder.path(), 1, 4, "yard.example:9443").unwrap();
    assert_eq!(second.ledger().own_key().id(), key, "the shop sees the same phone");
    assert_eq!(second.home().hub.as_deref(), Some("yard.example:9443"));
    assert!(second.waits_for_its_books().unwrap());
    drop(second);

    let other = asks(folder.path(), 2, 5, "other.example:8443");
    assert!(matches!(other, Err(PhoneError::AlreadyEnrolled { .. })), "another shop's code is not for it");
    let opened = Daybook::open(folder.path(), &FileSeal::beside(folder.path())).unwrap();
    assert_eq!(opened.home().hub.as_deref(), Some("yard.example:9443"), "and changed nothing");
}

#[test]
fn a_phone_with_anything_in_its_book_keeps_to_what_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let mut phone = asks(folder.path(), 1, 3, "yard.example:8443").unwrap();
    let drive = Drive { what: DriveWhat::LeftYard, in_spite_of_lock: None };
    let now: Stamp = "2026-10-19T06:50:00-06:00".parse().unwrap();
    let parts = Parts::about(TruckId(Uuid::from_u128(7)), drive.into());
    phone.record(parts, now).unwrap();
    drop(phone);
    let again = asks(folder.path(), 1, 4, "yard.example:8443");
    assert!(matches!(again, Err(PhoneError::AlreadyEnrolled { .. })));
}
