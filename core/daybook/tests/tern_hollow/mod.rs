//! Two units of the invented fleet Tern Hollow Water in a folder, with a shop's key and a phone's.
#![allow(
    dead_code,
    unused_imports,
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "each test file uses a part of it, and a test may stop where it stands"
)]

mod told;

use std::collections::BTreeSet;

use chrono::Datelike;
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::draft::{EndOfDayDraft, PreTripDraft, Signing, TopUpDraft};
use sumpbook_daybook::gate::{Actor, ChangeHash, DeviceKey, Place, sign};
use sumpbook_daybook::ledger::{Admission, Incoming, Ledger, NewEntry, Root};
use sumpbook_daybook::line::{Line, Writer};
use sumpbook_daybook::screen::Standing;
use sumpbook_trade::checklist::{PlannedStop, Template, plan};
use sumpbook_trade::{Entry, EntryId, FleetId, PersonId, Stamp, TruckId, WalkId};
use uuid::Uuid;

pub(crate) use told::{button, see_today, walked};

pub(crate) const TH_01: TruckId = TruckId(Uuid::from_u128(0x0101));
pub(crate) const TH_02: TruckId = TruckId(Uuid::from_u128(0x0102));
pub(crate) const AMOS: PersonId = PersonId(Uuid::from_u128(0x0201));
pub(crate) const BETTINA: PersonId = PersonId(Uuid::from_u128(0x0202));
pub(crate) const GIL: PersonId = PersonId(Uuid::from_u128(0x0203));
pub(crate) const WREN: PersonId = PersonId(Uuid::from_u128(0x0204));

const FLEET: FleetId = FleetId(Uuid::from_u128(0x0001));

/// A phone's folder with what shop and phone wrote into it.
pub(crate) struct Yard {
    pub(crate) ledger: Ledger,
    pub(crate) standing: Standing,
    shop: DeviceKey,
    shop_actor: Actor,
    shop_places: Vec<(BookId, u64, ChangeHash)>,
    next_id: u128,
    _folder: tempfile::TempDir,
}

pub(crate) fn at(text: &str) -> Stamp {
    text.parse().unwrap()
}

pub(crate) fn template() -> &'static Template {
    Template::common_practice().unwrap()
}

impl Yard {
    /// The fleet as the shop made it: two trucks, one set, three drivers, a mechanic. Morning of Mon 19 Oct.
    pub(crate) fn new() -> Yard {
        let folder = tempfile::tempdir().unwrap();
        let shop = DeviceKey::from_secret(&[1; 32]);
        let phone = DeviceKey::from_secret(&[2; 32]);
        let root = Root { fleet: FLEET, shop: shop.public() };
        let (ledger, _) = Ledger::open(folder.path(), root, phone).unwrap();
        let shop_actor = Actor::new(shop.id()).unwrap();
        let mut yard = Yard {
            ledger,
            standing: Standing { heard: Some(at("2026-10-18T16:48:00-06:00")), ..Standing::default() },
            shop,
            shop_actor,
            shop_places: Vec::new(),
            next_id: 0x1000,
            _folder: folder,
        };
        for line in include_str!("fleet.jsonl").lines() {
            yard.shop(line);
        }
        yard
    }

    /// A new id, in order.
    pub(crate) fn id(&mut self) -> EntryId {
        self.next_id += 1;
        EntryId(Uuid::from_u128(self.next_id))
    }

    fn entry(&mut self, line: &str) -> Entry {
        let id = self.id();
        let writer = Writer { now: at("2026-10-19T06:00:00-06:00"), clock_off_ms: None, id };
        let read = Line::read(line).unwrap_or_else(|e| panic!("{line}: {e}"));
        read.resolve(self.ledger.fleet(), template(), &writer).unwrap_or_else(|e| panic!("{line}: {e}"))
    }

    /// The phone records a line.
    pub(crate) fn phone(&mut self, line: &str) -> EntryId {
        let entry = self.entry(line);
        self.record(vec![entry])
    }

    /// The phone records entries; the last one's id.
    pub(crate) fn record(&mut self, entries: Vec<Entry>) -> EntryId {
        let now = entries.iter().map(|entry| entry.at.unix_ms()).max().unwrap();
        let ids: Vec<EntryId> = entries.iter().map(|entry| entry.id).collect();
        self.ledger.record_signed(entries, now).unwrap();
        self.standing.on_phone.extend(&ids);
        *ids.last().unwrap()
    }

    /// The shop wrote a line and the phone took it in.
    pub(crate) fn shop(&mut self, line: &str) -> EntryId {
        let entry = self.entry(line);
        let new = NewEntry::about_its_unit(entry);
        let book = match new.truck {
            Some(truck) => {
                let year = u16::try_from(new.entry.at.moment().to_utc().year()).unwrap();
                BookId::Truck { truck, year }
            }
            None => BookId::Fleet,
        };
        let own = self.shop_places.iter().rev().find(|(known, _, _)| *known == book);
        let place = Place {
            fleet: FLEET,
            book,
            actor: self.shop_actor,
            seq: own.map_or(1, |(_, seq, _)| seq + 1),
            deps: own.map(|(_, _, hash)| *hash).into_iter().collect(),
            id: new.entry.id,
        };
        let payload = new.entry.to_payload();
        let signature = sign(&place, &payload, &self.shop).unwrap();
        let seq = place.seq;
        let told = self.ledger.admit(&[Incoming { place, payload, signature }], 0, None).unwrap();
        assert!(matches!(told.as_slice(), [Admission::Admitted(_)]), "{line}: {told:?}");
        let held = self.ledger.store().truth().by_id(new.entry.id).unwrap();
        self.shop_places.push((book, seq, held[0].row.hash));
        new.entry.id
    }

    /// A receipt of the shop covers everything up to now.
    pub(crate) fn exchanged(&mut self, when: &str) {
        self.standing.at_shop += u32::try_from(self.standing.on_phone.len()).unwrap();
        self.standing.on_phone = BTreeSet::new();
        self.standing.heard = Some(at(when));
    }

    /// The stops of a unit's walk.
    pub(crate) fn walk(&self, unit: TruckId) -> Vec<PlannedStop> {
        plan(template(), &self.ledger.fleet().trucks[&unit].features)
    }

    pub(crate) fn pre_trip(&mut self, unit: TruckId, person: PersonId, when: &str) -> PreTripDraft {
        let (id, walk) = (self.id(), WalkId(self.id().0));
        PreTripDraft::begin(id, walk, unit, person, template(), at(when))
    }

    pub(crate) fn top_up(&mut self, unit: TruckId, person: PersonId, when: &str) -> TopUpDraft {
        let id = self.id();
        TopUpDraft::begin(id, unit, person, sumpbook_trade::Fluid::CompressorOil, at(when))
    }

    pub(crate) fn end_of_day(&mut self, unit: TruckId, person: PersonId, when: &str) -> EndOfDayDraft {
        let id = self.id();
        EndOfDayDraft::begin(id, unit, person, at(when))
    }
}

pub(crate) fn signing(when: &str) -> Signing {
    Signing { at: at(when), clock_off_ms: None, pin_given: true, trainer: None, trainer_pin_given: false }
}
