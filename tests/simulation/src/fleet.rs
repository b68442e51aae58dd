//! A small invented fleet: one shop, some phones, some trucks, and what the shop says at its beginning.

use std::path::Path;

use sumpbook_daybook::gate::{Actor, DeviceKey};
use sumpbook_daybook::ledger::{Ledger, NewEntry, Root};
use sumpbook_daybook::store::Store;
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::{
    DeviceEnrolled, Digest, FleetNamed, PersonSet, Role, SetProfile, SetRegistered, Source, TruckRegistered,
};
use sumpbook_trade::{Entry, EntryId, Fact, Features, FleetId, PersonId, SetId, Stamp, Tenths, TruckId};

/// The first moment of every simulation: 2026-10-19T12:00:00Z, a Monday.
pub const BEGIN_MS: i64 = 1_792_411_200_000;

/// The shop's key.
pub fn shop_key() -> DeviceKey {
    DeviceKey::from_secret(&[1; 32])
}

/// The key of phone 1, 2, 3 ...
pub fn phone_key(number: u8) -> DeviceKey {
    DeviceKey::from_secret(&[number.wrapping_add(100); 32])
}

/// Where trust begins in this fleet.
pub fn root() -> Root {
    Root { fleet: FleetId::from_bytes([7; 16]), shop: shop_key().public() }
}

/// 16 bytes that name thing `number` of a sort, in the order of their numbers.
fn named(sort: u8, number: u32) -> [u8; 16] {
    let mut bytes = [0; 16];
    bytes[6] = 0x70;
    bytes[8] = 0x80;
    bytes[11] = sort;
    bytes[12..].copy_from_slice(&number.to_be_bytes());
    bytes
}

/// Truck 0, 1, 2 ...
pub fn truck(number: u32) -> TruckId {
    TruckId::from_bytes(named(1, number))
}

/// Set 0, 1, 2 ...
pub fn set(number: u32) -> SetId {
    SetId::from_bytes(named(2, number))
}

/// Person 0, 1, 2 ...
pub fn person(number: u32) -> PersonId {
    PersonId::from_bytes(named(3, number))
}

/// Entry 0, 1, 2 ...
pub fn entry_id(number: u32) -> EntryId {
    EntryId::from_bytes(named(4, number))
}

/// A moment of the yard's wall clock, six hours behind UTC.
pub fn at(ms: i64) -> Stamp {
    Stamp::from_parts(ms, -360).unwrap()
}

/// An entry with the common fields of a phone.
pub fn entry(id: EntryId, unit: Option<TruckId>, ms: i64, fact: impl Into<Fact>) -> Entry {
    Entry {
        id,
        unit,
        set: None,
        at: at(ms),
        clock_off_ms: None,
        person: Some(person(0)),
        trainer: None,
        pin_given: true,
        trainer_pin_given: false,
        hours: None,
        note: None,
        source: Source::Phone,
        fact: fact.into(),
    }
}

/// A matter of the fleet book.
pub fn of_fleet(id: EntryId, ms: i64, fact: impl Into<Fact>) -> NewEntry {
    NewEntry { entry: entry(id, None, ms, fact), truck: None }
}

/// A matter of a truck's book.
pub fn of_truck(entry: Entry) -> NewEntry {
    NewEntry::about_its_unit(entry)
}

/// The fleet's own name, with this zone.
pub fn fleet_named(zone: &str) -> FleetNamed {
    FleetNamed {
        name: "Tern Hollow Water".to_owned(),
        zone: zone.to_owned(),
        shop_key: Digest(shop_key().public().bytes()),
        demo: true,
    }
}

/// Truck `number` as it is registered.
pub fn truck_registered(number: u32, hours: i64) -> TruckRegistered {
    TruckRegistered {
        truck: truck(number),
        door: format!("TH-{:02}", number + 1),
        serial: None,
        plate: None,
        features: Features::default(),
        in_service: chrono::NaiveDate::from_ymd_opt(2026, 1, 5).unwrap(),
        in_service_hours: Tenths::hours(hours),
        annual_inspection: None,
    }
}

/// Set `number` as it is registered.
pub fn set_registered(number: u32, on: Option<u32>, family: OilFamily) -> SetRegistered {
    SetRegistered {
        set: set(number),
        serial: None,
        on: on.map(truck),
        profile: SetProfile {
            delivery: None,
            glass: None,
            oil_family: Some(family),
            oil_grade: Some("ISO VG 46".to_owned()),
            weights: Vec::new(),
            load_share: None,
            oil_volume: None,
        },
    }
}

/// The enrolment of phone `number`.
pub fn enrolled(number: u8) -> DeviceEnrolled {
    DeviceEnrolled { key: Digest(phone_key(number).public().bytes()), name: format!("phone {number}") }
}

/// What the shop says first: the fleet, its trucks each with a set, two people, these phones.
pub fn beginning(trucks: u32, phones: &[u8], first_id: u32) -> Vec<NewEntry> {
    let mut facts: Vec<Fact> = vec![fleet_named("America/Denver").into()];
    for number in 0..trucks {
        facts.push(truck_registered(number, 0).into());
        facts.push(set_registered(number, Some(number), OilFamily::Mineral).into());
    }
    for (number, role) in [(0, Role::Driver), (1, Role::Manager)] {
        let name = format!("person {number}");
        facts.push(PersonSet { person: person(number), name, role, gone: false, new_pin_asked: None }.into());
    }
    facts.extend(phones.iter().map(|number| Fact::from(enrolled(*number))));
    let numbered = facts.into_iter().zip(first_id..);
    numbered.map(|(fact, id)| of_fleet(entry_id(id), BEGIN_MS, fact)).collect()
}

/// A ledger in memory with an actor that is the same in every run.
pub fn ledger_in_memory(key: DeviceKey, start: u64) -> Ledger {
    let mut ledger = Ledger::over(Store::in_memory().unwrap(), root(), key).unwrap();
    restart(&mut ledger, start);
    ledger
}

/// A ledger in a folder with an actor that is the same in every run.
pub fn ledger_in(folder: &Path, key: DeviceKey, start: u64) -> Ledger {
    let (mut ledger, _) = Ledger::open(folder, root(), key).unwrap();
    restart(&mut ledger, start);
    ledger
}

/// As if the program had been started again, for the `start`th time.
pub fn restart(ledger: &mut Ledger, start: u64) {
    let key = ledger.own_key().id();
    ledger.write_as(Actor::from_parts(key, start.to_be_bytes()));
}
