//! The fleet as its book tells it: who, what, which keys, which programme, which campaigns.

mod campaigns;
mod meters;
#[cfg(test)]
mod tests;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use chrono::NaiveDate;
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{Template, TemplateError};
use sumpbook_trade::clock::{Programme, TaskId};
use sumpbook_trade::fluid::Oil;
use sumpbook_trade::record::{
    DeviceRevoked, Digest, OwnSeverity, PersonSet, ProgrammeSet, RuleNumbers, SetRegistered, ShopSays,
    TruckRegistered,
};
use sumpbook_trade::wear::{WeightSet, Weights};
use sumpbook_trade::{Entry, EntryId, Fact, OilFamily, PersonId, SetId, Stamp, TruckId};

use crate::gate::PublicKey;

pub use campaigns::{Campaign, CampaignTold};
pub use meters::MeterFrom;

/// A device whose key the shop enrolled.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Device {
    /// Its public key.
    pub key: Digest,
    /// What the yard calls it.
    pub name: String,
    /// When it was let in, milliseconds. No default: a fleet folded without it is folded again from its book.
    pub let_in_ms: i64,
}

/// What findings lock in this fleet, from a moment on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SeveritiesFrom {
    /// That moment, milliseconds.
    pub from_ms: i64,
    /// Where the shop has it otherwise than the checklist.
    pub own: Vec<OwnSeverity>,
}

/// The oil a set is to be filled with, from a moment on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OilFrom {
    /// That moment, milliseconds.
    pub from_ms: i64,
    /// Its family; none where the profile does not say.
    pub family: Option<OilFamily>,
    /// Its grade as the label has it.
    pub grade: Option<String>,
}

/// Everything the fleet book says, folded. Built from entries in the order of their ops, so it is the same
/// whatever order they came in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Fleet {
    /// Name of the fleet.
    pub name: String,
    /// The yard's zone.
    pub zone: Tz,
    /// An invented fleet.
    pub demo: bool,
    /// Trucks.
    pub trucks: BTreeMap<TruckId, TruckRegistered>,
    /// Compressor sets.
    pub sets: BTreeMap<SetId, SetRegistered>,
    /// Which set stood on each truck, and from which moment on, milliseconds, oldest first.
    pub stood: BTreeMap<TruckId, Vec<(i64, Option<SetId>)>>,
    /// The same the other way round: the trucks each set ever stood on. Every unit asks it, so nobody looks through
    /// the whole fleet for one set. Not kept: it follows from where sets stood.
    #[serde(skip)]
    pub(crate) homes: BTreeMap<SetId, BTreeSet<TruckId>>,
    /// Trucks that have or had no hour meter on their compressor: from when on there was one, or none, oldest first.
    #[serde(default)]
    pub meters: BTreeMap<TruckId, Vec<MeterFrom>>,
    /// What the shop set of each set's weights, oldest first: hours weigh by what was in force on their day (R10).
    pub weights: BTreeMap<SetId, Vec<WeightSet>>,
    /// The oil of each set, oldest first: a pour is judged by what held at its own moment, so that no lock begins or
    /// ends because a set was moved or got another oil since.
    #[serde(default)]
    pub oils: BTreeMap<SetId, Vec<OilFrom>>,
    /// People.
    pub people: BTreeMap<PersonId, PersonSet>,
    /// Enrolled devices by the first 8 bytes of SHA-256 of their key, as a list so that JSON can hold it.
    pub devices: Vec<([u8; 8], Device)>,
    /// Revocations, each with the entry that says it.
    pub revoked: Vec<([u8; 8], EntryId, DeviceRevoked)>,
    /// The programme of the whole fleet.
    pub programme: Programme,
    /// What the shop has its phones say.
    #[serde(default)]
    pub says: ShopSays,
    /// The numbers of the rules.
    #[serde(default)]
    pub numbers: RuleNumbers,
    /// What findings lock where the shop has it otherwise than the checklist, each from its own moment on.
    #[serde(default)]
    pub severities: Vec<SeveritiesFrom>,
    /// The checklist with each of these. Not kept: it follows from them.
    #[serde(skip)]
    pub(crate) own_checklists: Vec<Arc<Template>>,
    /// Programmes of single units.
    pub own_programmes: BTreeMap<TruckId, Programme>,
    /// Makers' campaigns by their task, those that were taken back too.
    #[serde(default)]
    pub campaigns: BTreeMap<TaskId, Campaign>,
}

impl Default for Fleet {
    fn default() -> Fleet {
        Fleet {
            name: String::new(),
            zone: Tz::UTC,
            demo: false,
            trucks: BTreeMap::new(),
            sets: BTreeMap::new(),
            stood: BTreeMap::new(),
            homes: BTreeMap::new(),
            meters: BTreeMap::new(),
            weights: BTreeMap::new(),
            oils: BTreeMap::new(),
            people: BTreeMap::new(),
            devices: Vec::new(),
            revoked: Vec::new(),
            programme: Programme::common_practice(),
            own_programmes: BTreeMap::new(),
            says: ShopSays::default(),
            numbers: RuleNumbers::default(),
            severities: Vec::new(),
            own_checklists: Vec::new(),
            campaigns: BTreeMap::new(),
        }
    }
}

impl Fleet {
    /// Takes in the next fleet entry, already judged to count.
    pub fn take(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::FleetNamed(named) => {
                self.name.clone_from(&named.name);
                // An unknown zone is read as UTC: days may then be off, no record is.
                self.zone = named.zone.parse().unwrap_or(Tz::UTC);
                self.demo = named.demo;
            }
            Fact::TruckRegistered(truck) => {
                self.keep_meter(entry, truck);
                self.trucks.insert(truck.truck, truck.clone());
            }
            Fact::SetRegistered(set) => {
                self.weigh(entry, set);
                self.oil(entry, set);
                self.fit(entry, set);
                self.sets.insert(set.set, set.clone());
            }
            Fact::ShopSays(says) => self.says.clone_from(says),
            // One out of its bounds is another program's mistake: what held before goes on.
            Fact::RuleNumbers(numbers) if numbers.check().is_ok() => self.numbers = numbers.clone(),
            Fact::SeveritiesSet(set) => {
                let from_ms = entry.at.unix_ms();
                let at = self.severities.partition_point(|known| known.from_ms <= from_ms);
                self.severities.insert(at, SeveritiesFrom { from_ms, own: set.own.clone() });
                self.find_checklists();
            }
            Fact::PersonSet(person) => {
                self.people.insert(person.person, person.clone());
            }
            Fact::DeviceEnrolled(device) => {
                let Ok(key) = PublicKey::from_bytes(&device.key.0) else { return };
                let id = key.id().0;
                if !self.devices.iter().any(|(known, _)| *known == id) {
                    let let_in_ms = entry.at.unix_ms();
                    self.devices.push((id, Device { key: device.key, name: device.name.clone(), let_in_ms }));
                }
            }
            Fact::DeviceRevoked(revoked) => {
                let Ok(key) = PublicKey::from_bytes(&revoked.key.0) else { return };
                let id = key.id().0;
                self.revoked.push((id, entry.id, revoked.clone()));
            }
            Fact::ProgrammeSet(ProgrammeSet { truck, programme }) => match truck {
                Some(truck) => {
                    self.own_programmes.insert(*truck, programme.clone());
                }
                None => self.programme = programme.clone(),
            },
            Fact::CampaignSet(what) => {
                let campaign = self.campaigns.entry(what.task.clone()).or_default();
                campaign.told.push(CampaignTold::of(entry, what));
            }
            _ => {}
        }
    }

    /// Takes in the next fleet entry when it is about one truck, set, person or device, and returns the trucks
    /// about which it says something else than before. Of any other nothing is taken, and nothing returned.
    pub(crate) fn take_one(&mut self, entry: &Entry) -> Option<BTreeSet<TruckId>> {
        let mut differing = BTreeSet::new();
        match &entry.fact {
            Fact::TruckRegistered(truck) => {
                if self.trucks.get(&truck.truck) != Some(truck) {
                    differing.insert(truck.truck);
                }
            }
            Fact::SetRegistered(set) => {
                let before = self.sets.get(&set.set);
                if before != Some(set) {
                    differing.extend(before.and_then(|before| before.on).into_iter().chain(set.on));
                }
            }
            Fact::PersonSet(_) | Fact::DeviceEnrolled(_) | Fact::ShopSays(_) => {}
            Fact::CampaignSet(what) => {
                let before = self.campaigns.get(&what.task).and_then(Campaign::now);
                differing.extend(before.into_iter().chain([what]).flat_map(|what| self.not_outside(what)));
            }
            _ => return None,
        }
        self.take(entry);
        Some(differing)
    }

    /// Keeps where a set stands from that moment on. A truck carries one set: another one that stood on it is off it.
    fn fit(&mut self, entry: &Entry, set: &SetRegistered) {
        let at = entry.at.unix_ms();
        let before = self.sets.get(&set.set).and_then(|known| known.on);
        if self.sets.contains_key(&set.set) && before == set.on {
            return;
        }
        let moved = self.sets.contains_key(&set.set);
        if let Some(left) = before {
            self.stood.entry(left).or_default().push((at, None));
        }
        if let Some(truck) = set.on {
            let others: Vec<SetId> = self.sets_of(truck).filter(|other| *other != set.set).collect();
            for other in others {
                if let Some(known) = self.sets.get_mut(&other).filter(|known| known.on == Some(truck)) {
                    known.on = None;
                }
            }
            self.homes.entry(set.set).or_default().insert(truck);
            let stood = self.stood.entry(truck).or_default();
            // What a truck's book says from before a set came to it from elsewhere is not about that set.
            if moved && stood.is_empty() {
                stood.push((i64::MIN, None));
            }
            stood.push((at, Some(set.set)));
        }
        for truck in before.into_iter().chain(set.on) {
            if let Some(stood) = self.stood.get_mut(&truck) {
                stood.sort_by_key(|(from, _)| *from);
            }
        }
    }

    /// Finds anew what was not kept of a fleet, for it follows from the rest.
    pub(crate) fn find_what_follows(&mut self) {
        self.find_checklists();
        self.homes.clear();
        for (truck, stood) in &self.stood {
            for set in stood.iter().filter_map(|(_, set)| *set) {
                self.homes.entry(set).or_default().insert(*truck);
            }
        }
    }

    fn find_checklists(&mut self) {
        let Ok(shipped) = Template::common_practice() else { return };
        let own = self.severities.iter().map(|set| Arc::new(shipped.with_what_fits(&set.own)));
        self.own_checklists = own.collect();
    }

    /// The checklist, as the shop has it.
    ///
    /// # Errors
    /// A checklist in this program that does not hang together.
    pub fn checklist(&self) -> Result<&Arc<Template>, TemplateError> {
        match self.own_checklists.last() {
            Some(own) => Ok(own),
            None => Template::common_practice(),
        }
    }

    /// The checklist as the shop had it at a moment, milliseconds: what was found then locks what it locked then.
    ///
    /// # Errors
    /// As [`Fleet::checklist`].
    pub fn checklist_at(&self, at_ms: i64) -> Result<&Arc<Template>, TemplateError> {
        let before = self.severities.partition_point(|set| set.from_ms <= at_ms);
        match before.checked_sub(1).and_then(|last| self.own_checklists.get(last)) {
            Some(then) => Ok(then),
            None => Template::common_practice(),
        }
    }

    /// What findings lock where the shop now has it otherwise than the checklist.
    pub fn own_severities(&self) -> &[OwnSeverity] {
        self.severities.last().map_or(&[], |set| &set.own)
    }

    /// The set that stood on a truck at a moment, milliseconds. Before the first was written down it is that one: the
    /// binders are older than this book.
    pub fn set_at(&self, truck: TruckId, at_ms: i64) -> Option<SetId> {
        let stood = self.stood.get(&truck)?;
        let then = stood.iter().rev().find(|(from, _)| *from <= at_ms).or_else(|| stood.first());
        then.and_then(|(_, set)| *set)
    }

    /// The trucks a set ever stood on.
    pub fn trucks_of(&self, set: SetId) -> Vec<TruckId> {
        self.homes.get(&set).into_iter().flatten().copied().collect()
    }

    /// The sets that ever stood on a truck.
    pub fn sets_of(&self, truck: TruckId) -> impl Iterator<Item = SetId> {
        self.stood.get(&truck).into_iter().flatten().filter_map(|(_, set)| *set)
    }

    /// The truck a set first stood on.
    pub fn first_truck_of(&self, set: SetId) -> Option<TruckId> {
        let first = |stood: &Vec<(i64, Option<SetId>)>| {
            stood.iter().find(|(_, there)| *there == Some(set)).map(|(from, _)| *from)
        };
        let homes = self.homes.get(&set).into_iter().flatten();
        let all = homes.filter_map(|truck| Some((first(self.stood.get(truck)?)?, *truck)));
        all.min().map(|(_, truck)| truck)
    }

    /// Keeps the weights a set is registered with, from that day of the yard on.
    fn weigh(&mut self, entry: &Entry, set: &SetRegistered) {
        let known = self.weights.entry(set.set).or_default();
        let before = known.last().map(|last| last.hundredths.as_slice()).unwrap_or_default();
        if before != set.profile.weights {
            let from = entry.at.moment().with_timezone(&self.zone).date_naive();
            known.push(WeightSet { from, hundredths: set.profile.weights.clone() });
        }
    }

    /// Keeps the oil a set is registered with, from that moment on.
    fn oil(&mut self, entry: &Entry, set: &SetRegistered) {
        let from_ms = entry.at.unix_ms();
        let known = self.oils.entry(set.set).or_default();
        let at = known.partition_point(|oil| oil.from_ms <= from_ms);
        // One that says the same stays as well: another, dated between, may still come.
        let (family, grade) = (set.profile.oil_family, set.profile.oil_grade.clone());
        known.insert(at, OilFrom { from_ms, family, grade });
    }

    /// The oil of the set that stood on a truck at a moment, milliseconds, as its profile had it then. Before the
    /// first was written down it is that one.
    pub fn oil_at(&self, truck: TruckId, at_ms: i64) -> Option<Oil> {
        let known = self.oils.get(&self.set_at(truck, at_ms)?)?;
        let then = known.iter().rev().find(|oil| oil.from_ms <= at_ms).or_else(|| known.first())?;
        Some(Oil::labelled(then.family, then.grade.as_deref()))
    }

    /// The weights of the set on a truck; none set, every hour counts once.
    pub fn weights_on(&self, truck: TruckId) -> Weights {
        let sets = self.set_on(truck).and_then(|set| self.weights.get(&set.set));
        Weights::of(sets.into_iter().flatten().cloned())
    }

    /// Trucks about which this fleet says something else than another: registered, fitted or serviced
    /// otherwise.
    pub fn differing(&self, other: &Fleet) -> BTreeSet<TruckId> {
        let mut trucks: BTreeSet<TruckId> = BTreeSet::new();
        for (one, two) in [(self, other), (other, self)] {
            trucks
                .extend(one.trucks.iter().filter(|(id, t)| two.trucks.get(id) != Some(t)).map(|(id, _)| *id));
            let own = one.own_programmes.iter().filter(|(id, p)| two.own_programmes.get(id) != Some(p));
            trucks.extend(own.map(|(id, _)| *id));
            let sets = one.sets.iter().filter(|(id, set)| two.sets.get(id) != Some(set));
            trucks.extend(sets.filter_map(|(_, set)| set.on));
            let stood = one.stood.iter().filter(|(id, stood)| two.stood.get(id) != Some(stood));
            trucks.extend(stood.map(|(id, _)| *id));
            let oils = one.oils.iter().filter(|(id, oils)| two.oils.get(id) != Some(oils));
            trucks.extend(oils.flat_map(|(id, _)| one.trucks_of(*id)));
            let meters = one.meters.iter().filter(|(id, meters)| two.meters.get(id) != Some(meters));
            trucks.extend(meters.map(|(id, _)| *id));
            let told = one.campaigns.iter().filter(|(task, told)| two.campaigns.get(task) != Some(told));
            let now = told.filter_map(|(_, campaign)| campaign.now());
            trucks.extend(now.flat_map(|what| one.not_outside(what)));
        }
        trucks
    }

    /// The programme that holds for a truck.
    pub fn programme_of(&self, truck: TruckId) -> &Programme {
        self.own_programmes.get(&truck).unwrap_or(&self.programme)
    }

    /// The set now on a truck.
    pub fn set_on(&self, truck: TruckId) -> Option<&SetRegistered> {
        self.sets_of(truck).filter_map(|set| self.sets.get(&set)).find(|set| set.on == Some(truck))
    }

    /// The set with this serial, wherever it stands.
    pub fn set_by_serial(&self, serial: &str) -> Option<&SetRegistered> {
        self.sets.values().find(|set| set.serial.as_deref() == Some(serial))
    }

    /// The truck with this door number.
    pub fn truck_by_door(&self, door: &str) -> Option<&TruckRegistered> {
        self.trucks.values().find(|truck| truck.door.eq_ignore_ascii_case(door.trim()))
    }

    /// What the yard calls a truck; its id when it is not in the fleet yet.
    pub fn door(&self, truck: TruckId) -> String {
        self.trucks.get(&truck).map_or_else(|| truck.to_string(), |t| t.door.clone())
    }

    /// The person of this name.
    pub fn person_by_name(&self, name: &str) -> Option<&PersonSet> {
        self.people.values().find(|person| person.name.eq_ignore_ascii_case(name.trim()))
    }

    /// Names of everybody who is still here, in the order of the alphabet.
    pub fn names_here(&self) -> Vec<String> {
        let mut names: Vec<String> =
            self.people.values().filter(|person| !person.gone).map(|person| person.name.clone()).collect();
        names.sort();
        names
    }

    /// A person's name; none when unknown.
    pub fn person_name(&self, person: PersonId) -> Option<&str> {
        self.people.get(&person).map(|p| p.name.as_str())
    }

    /// A device by its key id.
    pub fn device(&self, id: [u8; 8]) -> Option<&Device> {
        self.devices.iter().find(|(known, _)| *known == id).map(|(_, device)| device)
    }

    /// So many milliseconds after 1970 by the yard's clock; none beyond what a moment may be.
    pub fn yard_stamp(&self, ms: i64) -> Option<Stamp> {
        let at = chrono::DateTime::from_timestamp_millis(ms)?;
        Some(Stamp::new(at.with_timezone(&self.zone).fixed_offset()))
    }

    /// The yard's day of a moment (R9).
    pub fn yard_day(&self, at: Stamp) -> NaiveDate {
        at.moment().with_timezone(&self.zone).date_naive()
    }
}
