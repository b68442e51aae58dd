//! Entering a fleet: trucks, sets, people, programmes, what a unit does from a day on.

use chrono::NaiveDate;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_trade::checklist::Template;
use sumpbook_trade::clock::Programme;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::record::{
    DayStatusSet, OwnSeverity, PersonSet, ProgrammeSet, Role, RuleNumbers, SetProfile, SetRegistered,
    SeveritiesSet, ShopSays, Source, TruckRegistered, Verdict,
};
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Features, PersonId, SetId, Tenths, TruckId};

use crate::settle::decide;
use crate::shop::new_id;
use crate::{Hand, Shop, ShopError, Told};

/// A truck to be registered, or changed when its door number is known.
#[derive(Clone, Debug)]
pub struct NewTruck {
    /// Door number, such as `TH-01`.
    pub door: String,
    /// Serial number of the chassis.
    pub serial: Option<String>,
    /// Plate.
    pub plate: Option<String>,
    /// What it has.
    pub features: Features,
    /// In service since this day of the yard.
    pub in_service: NaiveDate,
    /// Compressor hours on that day.
    pub in_service_hours: Tenths,
    /// The last day on which its annual inspection holds.
    pub annual_inspection: Option<NaiveDate>,
}

/// A compressor set to be registered.
#[derive(Clone, Debug)]
pub struct NewSet {
    /// Serial number.
    pub serial: Option<String>,
    /// The truck it stands on.
    pub on: Option<TruckId>,
    /// What is particular to it.
    pub profile: SetProfile,
}

/// Someone to be added, or changed when the name is known.
#[derive(Clone, Debug)]
pub struct NewPerson {
    /// Name.
    pub name: String,
    /// What they do.
    pub role: Role,
    /// No longer here.
    pub gone: bool,
}

/// Letters of a person's name at most: it stands on one line of a phone.
const MOST_OF_A_NAME: usize = 60;

impl Shop {
    /// Sets what the phones say in the shop's own words, whole.
    ///
    /// # Errors
    /// As [`Shop::write`].
    pub fn set_says(&mut self, says: ShopSays, hand: &Hand) -> Result<EntryId, ShopError> {
        self.write(None, says.into(), None, hand)
    }

    /// Sets the numbers of the rules, whole.
    ///
    /// # Errors
    /// A number out of its bounds; else as [`Shop::write`].
    pub fn set_numbers(&mut self, numbers: RuleNumbers, hand: &Hand) -> Result<EntryId, ShopError> {
        numbers.check()?;
        self.write(None, numbers.into(), None, hand)
    }

    /// Sets what findings lock where it is otherwise than on the checklist, whole. What was found before keeps what it
    /// locked. `why` is kept with it.
    ///
    /// # Errors
    /// A word that is not the checklist's; one that is to lock less than it does there and did not before, and no reason
    /// is given; else as [`Shop::write`].
    pub fn set_severities(
        &mut self,
        own: Vec<OwnSeverity>,
        why: Option<&str>,
        hand: &Hand,
    ) -> Result<EntryId, ShopError> {
        let shipped = Template::common_practice().map_err(LedgerError::from)?;
        shipped.with_own(&own)?;
        let why = why.map(str::trim).filter(|why| !why.is_empty());
        let before = self.ledger.fleet().own_severities();
        let mut less = own.iter().filter(|own| own.locks_less(shipped) && !before.contains(own));
        if let (Some(less), None) = (less.next(), why) {
            return Err(ShopError::LocksLess { item: less.item.clone(), word: less.word.clone() });
        }
        let told = Told {
            person: hand.person,
            at: hand.at,
            source: Source::Shop,
            hours: None,
            note: why.map(str::to_owned),
        };
        self.write_told(None, SeveritiesSet { own }.into(), told, hand)
    }

    /// Sets what these words lock and leaves every other as it is. Returns whether that is a change.
    ///
    /// # Errors
    /// As [`Shop::set_severities`].
    pub fn change_severities(
        &mut self,
        changed: Vec<OwnSeverity>,
        why: Option<&str>,
        hand: &Hand,
    ) -> Result<bool, ShopError> {
        let shipped = Template::common_practice().map_err(LedgerError::from)?;
        let before = self.ledger.fleet().own_severities();
        let same = |one: &OwnSeverity, other: &OwnSeverity| one.item == other.item && one.word == other.word;
        let stays = before.iter().filter(|old| !changed.iter().any(|new| same(old, new)));
        let mut own: Vec<OwnSeverity> = stays.chain(&changed).cloned().collect();
        own.retain(|own| !own.is_usual(shipped));
        own.sort_by(|one, other| (&one.item, &one.word).cmp(&(&other.item, &other.word)));
        if own == before {
            return Ok(false);
        }
        self.set_severities(own, why, hand).map(|_| true)
    }

    /// Registers a truck; one of the same door number is changed. Returns which.
    ///
    /// # Errors
    /// When it would come into service after its own records; else as [`Shop::write`].
    pub fn add_truck(&mut self, new: NewTruck, hand: &Hand) -> Result<TruckId, ShopError> {
        let known = self.ledger.fleet().truck_by_door(&new.door);
        if let Some(known) = known.filter(|known| new.in_service > known.in_service) {
            self.in_service_may_move(known.truck, &new)?;
        }
        let truck = match known.map(|truck| truck.truck) {
            Some(known) => known,
            None => TruckId(new_id(hand.at)?),
        };
        let NewTruck { door, serial, plate, features, in_service, in_service_hours, annual_inspection } = new;
        let registered = TruckRegistered {
            truck,
            door,
            serial,
            plate,
            features,
            in_service,
            in_service_hours,
            annual_inspection,
        };
        self.write(None, registered.into(), None, hand)?;
        Ok(truck)
    }

    /// A year typed wrong would take a working unit off every list, its records with it.
    fn in_service_may_move(&self, truck: TruckId, new: &NewTruck) -> Result<(), ShopError> {
        let (fleet, truth) = (self.ledger.fleet(), self.ledger.store().truth());
        let first = truth.first_ms_of_unit(truck).map_err(LedgerError::from)?;
        match first.and_then(|ms| fleet.yard_stamp(ms)).map(|at| fleet.yard_day(at)) {
            Some(first) if new.in_service > first => {
                Err(ShopError::InServiceLater { door: new.door.clone(), first, said: new.in_service })
            }
            _ => Ok(()),
        }
    }

    /// Registers a compressor set; one of the same serial is changed, and so is the one without a serial that
    /// stands on the same truck. Returns which.
    ///
    /// # Errors
    /// As [`Shop::write`].
    pub fn add_set(&mut self, new: NewSet, hand: &Hand) -> Result<SetId, ShopError> {
        let known = self.set_meant(new.serial.as_ref(), new.on).map(|set| set.set);
        let set = match known {
            Some(known) => known,
            None => SetId(new_id(hand.at)?),
        };
        let registered = SetRegistered { set, serial: new.serial, on: new.on, profile: new.profile };
        self.write(None, registered.into(), None, hand)?;
        Ok(set)
    }

    /// Adds a person; one of the same name is changed. Whoever is added first may add themselves: with
    /// nobody named in `hand` the new person signs. Returns who.
    ///
    /// # Errors
    /// A name of no letters, or of more than a line holds; else as [`Shop::write`].
    pub fn add_person(&mut self, new: NewPerson, hand: &Hand) -> Result<PersonId, ShopError> {
        // Two names that differ in their blanks alone look the same on every list.
        let name = new.name.split_whitespace().collect::<Vec<_>>().join(" ");
        if name.is_empty() || name.chars().count() > MOST_OF_A_NAME {
            return Err(ShopError::Name);
        }
        let new = NewPerson { name, ..new };
        let known = self.ledger.fleet().person_by_name(&new.name);
        let new_pin_asked = known.and_then(|person| person.new_pin_asked);
        let person = match known {
            Some(known) => known.person,
            None => PersonId(new_id(hand.at)?),
        };
        let set = PersonSet { person, name: new.name, role: new.role, gone: new.gone, new_pin_asked };
        let hand = Hand { person: hand.person.or(Some(person)), ..*hand };
        self.write(None, set.into(), None, &hand)?;
        Ok(person)
    }

    /// Asks a person for a new PIN: the one they chose holds on no phone any more that hears of this, and they choose
    /// another there at their next signature. Nobody learns the old one.
    ///
    /// # Errors
    /// When nobody asks, or the person is not known; and as [`Shop::write`].
    pub fn ask_new_pin(&mut self, person: PersonId, hand: &Hand) -> Result<EntryId, ShopError> {
        if hand.person.is_none() {
            return Err(ShopError::NoPerson);
        }
        let fleet = self.ledger.fleet();
        let Some(known) = fleet.people.get(&person) else {
            let names: Vec<&str> = fleet.people.values().map(|person| person.name.as_str()).collect();
            return Err(ShopError::UnknownPerson { name: person.to_string(), known: names.join(", ") });
        };
        let asked = PersonSet { new_pin_asked: Some(hand.at), ..known.clone() };
        self.write(None, asked.into(), None, hand)
    }

    /// Sets the programme of one truck, or of every truck without one of its own.
    ///
    /// # Errors
    /// A programme that does not hang together; else as [`Shop::write`].
    pub fn set_programme(
        &mut self,
        truck: Option<TruckId>,
        programme: Programme,
        hand: &Hand,
    ) -> Result<(), ShopError> {
        programme.check()?;
        self.write(None, ProgrammeSet { truck, programme }.into(), None, hand)?;
        Ok(())
    }

    /// Gives a truck the fleet's programme again: what was set for it alone counts no more. Returns whether there was any.
    ///
    /// # Errors
    /// When nobody says so or no reason is given; else as [`Shop::write`].
    pub fn give_back_programme(&mut self, truck: TruckId, why: &str, hand: &Hand) -> Result<bool, ShopError> {
        let truth = self.ledger.store().truth();
        let mut set = Vec::new();
        for fact in truth.fleet_facts(FactKind::ProgrammeSet.code().unwrap_or(0))? {
            let Some(held) = truth.entry(fact.n)?.filter(|_| fact.judged == Judged::Counts) else { continue };
            let said = Entry::from_payload(&held.row.payload).map(|entry| entry.fact);
            if matches!(said, Ok(Fact::ProgrammeSet(ProgrammeSet { truck: Some(of), .. })) if of == truck) {
                set.push(fact.id);
            }
        }
        if !set.is_empty() {
            decide(self, &set, Verdict::DoNotUse, why, hand)?;
        }
        Ok(!set.is_empty())
    }

    /// Says what a unit does from a day on. Written only when it says something new; returns whether it did.
    ///
    /// # Errors
    /// As [`Shop::write`].
    pub fn set_day_status(
        &mut self,
        truck: TruckId,
        from: NaiveDate,
        status: DayStatus,
        expected_minute: Option<u16>,
        hand: &Hand,
    ) -> Result<bool, ShopError> {
        let state = self.ledger.unit_state(truck)?;
        let same = state.status_on(from) == Some((status, expected_minute));
        // Of a unit that was laid up meanwhile the same word says something new: that it is driven all the same.
        let said_of_day = state.roster.iter().any(|change| change.from == from);
        let laid_up = state.lay_ups.iter().any(|spell| spell.returned.is_none());
        if same && (said_of_day || !laid_up) {
            return Ok(false);
        }
        self.write(Some(truck), DayStatusSet { from, status, expected_minute }.into(), None, hand)?;
        Ok(true)
    }
}
