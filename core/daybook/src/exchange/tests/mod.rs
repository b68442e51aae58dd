//! Phones and a shop that meet only by files.

mod bad_files;
mod codes;
mod compare;
mod forks;
mod online;
mod paging;
mod phones;
mod relay;
mod schedule;
mod thread;

use sumpbook_trade::record::{
    FleetNamed, HourReading, How, Meter, SetProfile, SetRegistered, Source, TruckRegistered,
};
use sumpbook_trade::unit::Features;
use sumpbook_trade::{Entry, EntryId, Fact, FleetId, SetId, Stamp, Tenths, TruckId};
use tempfile::TempDir;

use super::{accept, answer, invite, take_in};
use crate::book::BookId;
use crate::gate::DeviceKey;
use crate::ledger::new_id;
use crate::ledger::{Ledger, NewEntry, Root};
use crate::phone::{Daybook, FileSeal, Parts};
use crate::store::Store;

pub(super) fn truck(number: u8) -> TruckId {
    TruckId::from_bytes([number; 16])
}

/// So many minutes into a working day in October.
pub(super) fn at(minutes: i64) -> Stamp {
    let start: Stamp = "2026-10-19T06:00:00-06:00".parse().unwrap();
    Stamp::from_parts(start.unix_ms() + minutes * 60_000, -360).unwrap()
}

pub(super) struct Shop {
    pub(super) ledger: Ledger,
}

impl Shop {
    pub(super) fn new(fleet: u8) -> Shop {
        let own = DeviceKey::from_secret(&[fleet; 32]);
        let root = Root { fleet: FleetId::from_bytes([fleet; 16]), shop: own.public() };
        let ledger = Ledger::over(Store::in_memory().unwrap(), root, own).unwrap();
        let mut shop = Shop { ledger };
        shop.says(
            None,
            Fact::FleetNamed(FleetNamed {
                name: "Tern Hollow Water".into(),
                zone: "America/Denver".into(),
                shop_key: sumpbook_trade::record::Digest(shop.ledger.root().shop.bytes()),
                demo: true,
            }),
        );
        for number in 1..=3 {
            shop.says(
                None,
                Fact::TruckRegistered(TruckRegistered {
                    truck: truck(number),
                    door: format!("TH-0{number}"),
                    serial: None,
                    plate: None,
                    features: Features::default(),
                    in_service: "2024-03-01".parse().unwrap(),
                    in_service_hours: Tenths(0),
                    annual_inspection: None,
                }),
            );
            shop.says(
                None,
                Fact::SetRegistered(SetRegistered {
                    set: SetId::from_bytes([number + 100; 16]),
                    serial: None,
                    on: Some(truck(number)),
                    profile: SetProfile {
                        delivery: None,
                        glass: None,
                        oil_family: None,
                        oil_grade: None,
                        weights: vec![],
                        load_share: None,
                        oil_volume: None,
                    },
                }),
            );
        }
        shop
    }

    /// The shop records at minute 0 of the day before.
    pub(super) fn says(&mut self, unit: Option<TruckId>, fact: Fact) -> EntryId {
        let id = new_id(at(-1440)).unwrap();
        let entry = Entry {
            id,
            unit,
            set: None,
            at: at(-1440),
            clock_off_ms: None,
            person: None,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Shop,
            fact,
        };
        self.ledger.record(&[NewEntry { entry, truck: unit }], at(-1440).unix_ms()).unwrap();
        id
    }

    pub(super) fn invite(&mut self, trucks: &[TruckId]) -> Vec<u8> {
        invite(&mut self.ledger, trucks, at(0), 7).unwrap()
    }

    /// Takes a file in and gives the answer.
    pub(super) fn meets(&mut self, file: &[u8], now: Stamp) -> (super::TakenIn, Vec<u8>) {
        let taken = take_in(&mut self.ledger, file, now).unwrap();
        let answer = answer(&mut self.ledger, &taken, now).unwrap();
        (taken, answer)
    }

    /// Invites a phone, lets it in, and gives it the answer.
    pub(super) fn lets_in(&mut self, name: &str, trucks: &[TruckId]) -> Phone {
        let mut phone = Phone::new(name, &self.invite(trucks));
        let file = phone.book.hand_over(at(1)).unwrap().bytes;
        let taken = take_in(&mut self.ledger, &file, at(1)).unwrap();
        accept(&mut self.ledger, &taken.pending.as_ref().unwrap().fingerprint, None, at(1)).unwrap();
        let back = answer(&mut self.ledger, &taken, at(1)).unwrap();
        phone.book.take_in(&back, at(1)).unwrap();
        phone
    }
}

pub(super) struct Phone {
    pub(super) folder: TempDir,
    pub(super) book: Daybook,
}

impl Phone {
    pub(super) fn new(name: &str, invitation: &[u8]) -> Phone {
        let folder = tempfile::tempdir().unwrap();
        let seal = FileSeal::beside(folder.path());
        let book = Daybook::enrol(folder.path(), invitation, name, &seal, at(0)).unwrap();
        Phone { folder, book }
    }

    pub(super) fn reads(&mut self, truck: TruckId, tenths: i64, now: Stamp) -> EntryId {
        self.book.record(Parts::about(truck, reading(tenths)), now).unwrap()
    }

    pub(super) fn hands_over(&mut self, now: Stamp) -> Vec<u8> {
        self.book.hand_over(now).unwrap().bytes
    }
}

pub(super) fn reading(tenths: i64) -> Fact {
    Fact::HourReading(HourReading {
        meter: Meter::Compressor,
        figure: Tenths(tenths),
        how: How::Asked,
        kept_when_asked: false,
        photo: None,
    })
}

/// The books of two ledgers that both hold, compared by heads.
pub(super) fn same_books(a: &Ledger, b: &Ledger) {
    let books = |ledger: &Ledger| ledger.store().truth().books().unwrap();
    let shared: Vec<BookId> = books(a).into_iter().filter(|book| books(b).contains(book)).collect();
    assert!(shared.contains(&BookId::Fleet));
    for book in shared {
        assert_eq!(
            a.store().truth().heads(book).unwrap(),
            b.store().truth().heads(book).unwrap(),
            "{book:?}"
        );
    }
}
