//! The shop's folder: its key, its fleet, its books.

use std::fs::{self, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};

use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::{Ledger, LedgerError, NewEntry, Root};
use sumpbook_daybook::store::Salvaged;
use sumpbook_trade::record::{Digest, FleetNamed, Source};
use sumpbook_trade::{Entry, EntryId, Fact, FleetId, PersonId, Stamp, Tenths, TruckId};
use uuid::Uuid;

use crate::ShopError;

pub(crate) const KEY_FILE: &str = "shop.key";
pub(crate) const FLEET_FILE: &str = "fleet.id";

/// A shop: one folder with the fleet's books, written with the shop's own key.
pub struct Shop {
    /// The books and what follows from them.
    pub ledger: Ledger,
    /// Where they are.
    pub folder: PathBuf,
    /// What was taken over out of a damaged file when the folder was opened.
    pub salvaged: Option<Salvaged>,
}

/// What a new fleet begins with.
#[derive(Clone, Debug)]
pub struct InitOptions {
    /// Its name.
    pub name: String,
    /// The yard's zone by its IANA name.
    pub zone: String,
    /// Invented, for showing and testing: its shop may write with given times of receipt.
    pub demo: bool,
    /// The moment.
    pub now: Stamp,
}

/// Who writes at the shop, and when.
#[derive(Clone, Copy, Debug)]
pub struct Hand {
    /// Who; none only before anybody is known.
    pub person: Option<PersonId>,
    /// The moment.
    pub at: Stamp,
    /// When it counts as received, in an invented fleet; otherwise none, and `at` counts.
    pub received: Option<Stamp>,
}

impl Hand {
    /// This person, now.
    pub fn of(person: PersonId, at: Stamp) -> Hand {
        Hand { person: Some(person), at, received: None }
    }

    /// Nobody by name, now.
    pub fn nobody(at: Stamp) -> Hand {
        Hand { person: None, at, received: None }
    }

    /// The same with a given time of receipt.
    pub fn received(self, received: Stamp) -> Hand {
        Hand { received: Some(received), ..self }
    }
}

/// Something that is written down at the shop and was done by another hand, or earlier.
#[derive(Clone, Debug)]
pub struct Told {
    /// Who did it or signed it.
    pub person: Option<PersonId>,
    /// When.
    pub at: Stamp,
    /// What it was written down from.
    pub source: Source,
    /// Hours of the meter then.
    pub hours: Option<Tenths>,
    /// Words added.
    pub note: Option<String>,
}

impl Shop {
    /// Makes a shop in a folder: its key (a file for its owner alone), its fleet, the fleet's first entry.
    ///
    /// # Errors
    /// When the zone is unknown, a shop stands there already, or the folder cannot be written.
    pub fn init(folder: &Path, options: &InitOptions) -> Result<Shop, ShopError> {
        if options.zone.parse::<chrono_tz::Tz>().is_err() {
            return Err(ShopError::Zone(options.zone.clone()));
        }
        let at = |reason| ShopError::Folder { path: folder.to_owned(), reason };
        fs::create_dir_all(folder).map_err(at)?;
        if folder.join(KEY_FILE).exists() || folder.join(FLEET_FILE).exists() {
            return Err(ShopError::Taken(folder.to_owned()));
        }
        let key = DeviceKey::generate().map_err(LedgerError::from)?;
        let fleet = FleetId(new_id(options.now)?);
        private(&folder.join(KEY_FILE), &format!("{}\n", Digest(*key.secret()))).map_err(at)?;
        fs::write(folder.join(FLEET_FILE), format!("{fleet}\n")).map_err(at)?;
        let root = Root { fleet, shop: key.public() };
        let (ledger, salvaged) = Ledger::open(folder, root, key)?;
        let mut shop = Shop { ledger, folder: folder.to_owned(), salvaged };
        let named = FleetNamed {
            name: options.name.clone(),
            zone: options.zone.clone(),
            shop_key: Digest(root.shop.bytes()),
            demo: options.demo,
        };
        shop.write(None, named.into(), None, &Hand::nobody(options.now))?;
        Ok(shop)
    }

    /// Opens the shop of a folder.
    ///
    /// # Errors
    /// When no shop stands there, its key does not read, or its books cannot be opened.
    pub fn open(folder: &Path) -> Result<Shop, ShopError> {
        let is_shop = folder.join(KEY_FILE).exists() || folder.join(FLEET_FILE).exists();
        let missing = |what| match is_shop {
            true => ShopError::Broken { path: folder.to_owned(), what },
            false => ShopError::NoShop { path: folder.to_owned(), what },
        };
        let read = |name: &str, what| fs::read_to_string(folder.join(name)).map_err(|_| missing(what));
        let secret: Digest = read(KEY_FILE, "its key is missing")?
            .trim()
            .parse()
            .map_err(|_| missing("its key does not read"))?;
        let fleet: FleetId = read(FLEET_FILE, "its fleet's id is missing")?
            .trim()
            .parse()
            .map_err(|_| missing("its fleet's id does not read"))?;
        let key = DeviceKey::from_secret(&secret.0);
        let root = Root { fleet, shop: key.public() };
        let (ledger, salvaged) = Ledger::open(folder, root, key)?;
        Ok(Shop { ledger, folder: folder.to_owned(), salvaged })
    }

    /// Records a fact signed by the shop, naming the person. `truck` none writes in the fleet's book.
    ///
    /// # Errors
    /// When a time of receipt is given outside an invented fleet, the person is not of this fleet, or the
    /// books cannot be written; then nothing is recorded.
    pub fn write(
        &mut self,
        truck: Option<TruckId>,
        fact: Fact,
        hours: Option<Tenths>,
        hand: &Hand,
    ) -> Result<EntryId, ShopError> {
        let told = Told { person: hand.person, at: hand.at, source: Source::Shop, hours, note: None };
        self.write_told(truck, fact, told, hand)
    }

    /// Records what another did, or what was done earlier, as it was told at the shop. `hand` dates its coming.
    ///
    /// # Errors
    /// As [`Shop::write`].
    pub fn write_told(
        &mut self,
        truck: Option<TruckId>,
        fact: Fact,
        told: Told,
        hand: &Hand,
    ) -> Result<EntryId, ShopError> {
        let entry = self.entry(truck, fact, told, hand)?;
        let id = entry.id;
        let received = hand.received.unwrap_or(hand.at).unix_ms();
        self.ledger.record(&[NewEntry { entry, truck }], received)?;
        Ok(id)
    }

    /// The entry that [`Shop::write_told`] records.
    pub(crate) fn entry(
        &self,
        truck: Option<TruckId>,
        fact: Fact,
        told: Told,
        hand: &Hand,
    ) -> Result<Entry, ShopError> {
        if hand.received.is_some() && !self.ledger.fleet().demo {
            return Err(ShopError::ReceivedGiven);
        }
        let set = truck.and_then(|truck| self.ledger.fleet().set_on(truck)).map(|set| set.set);
        let about_air = matches!(
            fact,
            Fact::ServiceDone(_)
                | Fact::Certificate(_)
                | Fact::HourReading(_)
                | Fact::LayUp(_)
                | Fact::ReturnToService(_)
        );
        Ok(Entry {
            id: EntryId(new_id(hand.at)?),
            unit: truck,
            set: set.filter(|_| about_air),
            at: told.at,
            clock_off_ms: Some(0),
            person: told.person,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: told.hours,
            note: told.note,
            source: told.source,
            fact,
        })
    }

    /// The person of this name.
    ///
    /// # Errors
    /// When nobody, or nobody who is still here, has it; names who is known.
    pub fn person(&self, name: &str) -> Result<PersonId, ShopError> {
        let fleet = self.ledger.fleet();
        let here = || fleet.people.values().filter(|person| !person.gone);
        let asked = name.trim();
        here().find(|p| p.name.eq_ignore_ascii_case(asked)).map(|p| p.person).ok_or_else(|| {
            let mut known: Vec<&str> = here().map(|p| p.name.as_str()).collect();
            known.sort_unstable();
            ShopError::UnknownPerson { name: asked.to_owned(), known: listed(&known) }
        })
    }

    /// The unit of this door number.
    ///
    /// # Errors
    /// When there is none; names those there are.
    pub fn unit(&self, door: &str) -> Result<TruckId, ShopError> {
        let fleet = self.ledger.fleet();
        fleet.truck_by_door(door).map(|truck| truck.truck).ok_or_else(|| {
            let mut known: Vec<&str> = fleet.trucks.values().map(|t| t.door.as_str()).collect();
            known.sort_unstable();
            ShopError::UnknownUnit { door: door.trim().to_owned(), known: listed(&known) }
        })
    }
}

/// A new name of something, version 7 (RFC 9562) from this moment.
pub(crate) fn new_id(at: Stamp) -> Result<Uuid, ShopError> {
    Ok(sumpbook_daybook::ledger::new_id(at).map_err(LedgerError::from)?.0)
}

/// Names as a list for a sentence.
pub(crate) fn listed(names: &[&str]) -> String {
    if names.is_empty() { "nobody and nothing yet".to_owned() } else { names.join(", ") }
}

/// Writes a file that only its owner can read, and never over another.
pub(crate) fn private(path: &Path, text: &str) -> std::io::Result<()> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut file = options.open(path)?;
    file.write_all(text.as_bytes())?;
    file.sync_all()
}
