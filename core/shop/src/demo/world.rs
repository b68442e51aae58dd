//! The shop and the phones, and the month lived on them.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use sumpbook_daybook::exchange;
use sumpbook_daybook::phone::{Daybook, FileSeal, Parts};
use sumpbook_trade::record::{
    Acknowledgement, Certificate, Correction, Decision, DefectName, DisplayNote, NoteKind, Review, Source,
};
use sumpbook_trade::{EntryId, Fact, PersonId, Stamp, TruckId, WalkId};

use super::deed::{Deed, Doing, Recorded};
use super::fleet::{self, Ids};
use super::online::Online;
use super::walk::{passed_by, walk};
use super::{DemoError, PHONES, ZONE, month};
use crate::{Hand, InitOptions, Shop, close};

/// A shop, its phones, and what has been lived so far.
pub struct World {
    /// The shop.
    pub shop: Shop,
    /// The phones by their names.
    pub phones: BTreeMap<&'static str, Daybook>,
    /// Where phones reach the shop; without it files carry everything.
    online: Option<Online>,
    folder: PathBuf,
    named: BTreeMap<&'static str, EntryId>,
    to_come: std::vec::IntoIter<Deed>,
    ids: Ids,
}

impl World {
    /// Makes the fleet and its phones in a folder; files will carry everything. The month has not begun.
    ///
    /// # Errors
    /// When the folder cannot be written.
    pub fn begin(folder: &Path) -> Result<World, DemoError> {
        World::fleet(folder, None)
    }

    /// The same with a hub that listens at one of these addresses, the first that is free: phones are let in by
    /// code and reach it over TLS.
    ///
    /// # Errors
    /// When the folder cannot be written, or none of the addresses can be listened on.
    pub fn begin_online(folder: &Path, addresses: &[String]) -> Result<World, DemoError> {
        World::fleet(folder, Some(addresses))
    }

    fn fleet(folder: &Path, addresses: Option<&[String]>) -> Result<World, DemoError> {
        let now = fleet::begun()?;
        let options =
            InitOptions { name: "Tern Hollow Water".to_owned(), zone: ZONE.to_owned(), demo: true, now };
        let at_shop = folder.join("shop");
        let mut shop = Shop::init(&at_shop, &options)?;
        let mut ids = Ids::default();
        shop.ledger.record(&fleet::written(&mut ids)?, now.unix_ms())?;
        let online = addresses.map(|addresses| Online::begin(&at_shop, addresses, now)).transpose()?;
        let trucks: Vec<TruckId> = shop.ledger.fleet().trucks.keys().copied().collect();
        let mut phones = BTreeMap::new();
        for name in PHONES {
            let home = folder.join(name.replace(' ', "-"));
            let phone = match &online {
                Some(online) => online.enrol(&mut shop, &home, name, &trucks, now)?,
                None => enrol_by_file(&mut shop, &home, name, &trucks, now)?,
            };
            phones.insert(name, phone);
        }
        let to_come = month()?.into_iter();
        Ok(World { shop, phones, online, folder: folder.to_owned(), named: BTreeMap::new(), to_come, ids })
    }

    /// The hub, when phones reach one.
    pub fn online(&self) -> Option<&Online> {
        self.online.as_ref()
    }

    /// Closes every book, and gives back the hub.
    pub fn leave(self) -> Option<Online> {
        self.online
    }

    /// Lives on until a moment, that moment included; says what it does now and then.
    ///
    /// # Errors
    /// When the month is told wrongly or a folder cannot be written.
    pub fn live_until(&mut self, until: Stamp, progress: &mut dyn FnMut(&Deed)) -> Result<(), DemoError> {
        while self.to_come.as_slice().first().is_some_and(|deed| deed.at <= until) {
            let Some(deed) = self.to_come.next() else { break };
            progress(&deed);
            self.act(&deed)?;
        }
        Ok(())
    }

    /// The entry the month calls so.
    pub fn named(&self, name: &str) -> Option<EntryId> {
        self.named.get(name).copied()
    }

    /// Where the phone of this name has its folder.
    pub fn phone_folder(&self, name: &str) -> PathBuf {
        self.folder.join(name.replace(' ', "-"))
    }

    fn act(&mut self, deed: &Deed) -> Result<(), DemoError> {
        let at = deed.at;
        match &deed.what {
            Doing::Record { phone, unit, person, with, hours, name, what } => {
                let (truck, id) = (self.shop.unit(unit)?, EntryId(self.ids.next(at)));
                let (of, fact) = self.fact(at, truck, what)?;
                let parts = Parts {
                    id: Some(id),
                    at: Some(of),
                    person: Some(self.shop.person(person)?),
                    trainer: with.map(|name| self.shop.person(name)).transpose()?,
                    hours: *hours,
                    source: Source::Phone,
                    ..Parts::about(truck, fact)
                };
                self.phone(phone)?.record(parts, at)?;
                self.call(*name, id);
            }
            Doing::PassOn { from, to } => {
                let file = self.phone(from)?.hand_over(at)?;
                self.phone(to)?.take_in(&file.bytes, at)?;
            }
            Doing::HandOver { phone: name } => {
                let phone = self.phones.get_mut(name).ok_or(DemoError::Month("a phone nobody has"))?;
                if let Some(online) = &self.online {
                    return online.exchange(phone, at);
                }
                let file = phone.hand_over(at)?;
                let taken = exchange::take_in(&mut self.shop.ledger, &file.bytes, at)?;
                let answer = exchange::answer(&mut self.shop.ledger, &taken, at)?;
                phone.take_in(&answer, at)?;
            }
            Doing::Close { day } => {
                let hand = Hand::of(self.shop.person("Ilse Marrow")?, at).received(at);
                close::close(&mut self.shop, day.parse()?, &hand)?;
            }
            Doing::AtShop { unit, person, hours, fact, name } => {
                let id = self.at_shop(unit, person, at, (**fact).clone(), *hours)?;
                self.call(*name, id);
            }
            Doing::Certify { unit, person, found, item, place, verdict, words, name } => {
                let certificate = Certificate {
                    defect: DefectName {
                        entry: self.entry(found)?,
                        item: (*item).to_owned(),
                        place: place.map(str::to_owned),
                    },
                    verdict: *verdict,
                    words: (*words).to_owned(),
                };
                let id = self.at_shop(unit, person, at, certificate.into(), None)?;
                self.call(Some(*name), id);
            }
            Doing::Decide { unit, person, targets, verdict, why } => {
                let targets = targets.iter().map(|name| self.entry(name)).collect::<Result<_, _>>()?;
                let decision = Decision { targets, verdict: *verdict, why: (*why).to_owned() };
                self.at_shop(unit, person, at, decision.into(), None)?;
            }
        }
        Ok(())
    }

    fn fact(&mut self, at: Stamp, truck: TruckId, what: &Recorded) -> Result<(Stamp, Fact), DemoError> {
        let fact = match what {
            Recorded::Walk(seconds, found) => {
                let registered = self.shop.ledger.fleet().trucks.get(&truck);
                let features = &registered.ok_or(DemoError::Month("a unit of another fleet"))?.features;
                walk(WalkId(self.ids.next(at)), features, *seconds, found)?.into()
            }
            Recorded::PassedBy(found) => passed_by(WalkId(self.ids.next(at)), *found)?.into(),
            Recorded::Fact(fact) => (**fact).clone(),
            Recorded::FactOf(of, fact) => return Ok((*of, (**fact).clone())),
            Recorded::Acknowledge(note, told_shop) => {
                Acknowledgement { note: self.entry(note)?, told_shop: *told_shop }.into()
            }
            Recorded::GoneAgain(note) => DisplayNote {
                what: NoteKind::Reminder,
                as_shown: String::new(),
                stopped_by_itself: None,
                gone_again: Some(self.entry(note)?),
                photo: None,
            }
            .into(),
            Recorded::Review(names) => {
                let certificates = names.iter().map(|name| self.entry(name)).collect::<Result<_, _>>()?;
                Review { certificates, report: None }.into()
            }
            Recorded::Correct(target, why, instead) => Correction {
                target: self.entry(target)?,
                why: (*why).to_owned(),
                instead: Some(self.entry(instead)?),
            }
            .into(),
        };
        Ok((at, fact))
    }

    fn at_shop(
        &mut self,
        unit: &str,
        person: &str,
        at: Stamp,
        fact: Fact,
        hours: Option<sumpbook_trade::Tenths>,
    ) -> Result<EntryId, DemoError> {
        let (truck, person): (TruckId, PersonId) = (self.shop.unit(unit)?, self.shop.person(person)?);
        let hand = Hand::of(person, at).received(at);
        Ok(self.shop.write(Some(truck), fact, hours, &hand)?)
    }

    fn phone(&mut self, name: &str) -> Result<&mut Daybook, DemoError> {
        self.phones.get_mut(name).ok_or(DemoError::Month("a phone nobody has"))
    }

    fn entry(&self, name: &str) -> Result<EntryId, DemoError> {
        self.named(name).ok_or(DemoError::Month("an entry named before it was made"))
    }

    fn call(&mut self, name: Option<&'static str>, id: EntryId) {
        if let Some(name) = name {
            self.named.insert(name, id);
        }
    }
}

/// Lets a phone in with no network: an invitation there, its request back, the answer there again.
fn enrol_by_file(
    shop: &mut Shop,
    home: &Path,
    name: &str,
    trucks: &[TruckId],
    now: Stamp,
) -> Result<Daybook, DemoError> {
    let invitation = exchange::invite(&mut shop.ledger, trucks, now, 7)?;
    let seal = FileSeal::new(home.join("phone.key"));
    let mut phone = Daybook::enrol(home, &invitation, name, &seal, now)?;
    let file = phone.hand_over(now)?;
    let asked = exchange::take_in(&mut shop.ledger, &file.bytes, now)?;
    let device = asked.pending.as_ref().ok_or(DemoError::Month("a phone that does not ask"))?;
    let by = shop.person("Ilse Marrow")?;
    exchange::accept(&mut shop.ledger, &device.fingerprint, Some(by), now)?;
    let taken = exchange::take_in(&mut shop.ledger, &file.bytes, now)?;
    let answer = exchange::answer(&mut shop.ledger, &taken, now)?;
    phone.take_in(&answer, now)?;
    Ok(phone)
}
