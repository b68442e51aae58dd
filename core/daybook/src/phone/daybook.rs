//! The daybook: enrolled once, opened at every start, recording at any time.

use std::path::{Path, PathBuf};

use sumpbook_trade::record::Source;
use sumpbook_trade::{Entry, EntryId, Fact, PersonId, SetId, Stamp, Tenths, TruckId};

use super::{Home, KeySeal, PhoneError};
use crate::exchange::{self, ExchangeError, HandOver, ShopCode, TakenIn, memory};
use crate::gate::DeviceKey;
use crate::ledger::{Ledger, NewEntry, Root, new_id};
use crate::parcel::{FileReader, Invitation, Standing, open};
use crate::photo::PhotoFolder;
use crate::store::{DraftRow, Salvaged, Store};

/// The fleet a book was begun for: a setting up that was stopped must not go on with another.
const FLEET: &str = "fleet";
/// Characters of a device's name.
const MOST_NAME: usize = 64;

/// What someone records; the daybook adds what it knows itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Parts {
    /// The id of its draft; a new one when none.
    pub id: Option<EntryId>,
    /// The truck it is about.
    pub unit: Option<TruckId>,
    /// The compressor set; the one now on the truck when none.
    pub set: Option<SetId>,
    /// When; now when none.
    pub at: Option<Stamp>,
    /// Who.
    pub person: Option<PersonId>,
    /// With whom, while the person is learning.
    pub trainer: Option<PersonId>,
    /// Whether the person's own PIN was given.
    pub pin_given: bool,
    /// Whether the trainer's own PIN was given.
    pub trainer_pin_given: bool,
    /// Compressor hours as read for this entry.
    pub hours: Option<Tenths>,
    /// Words added.
    pub note: Option<String>,
    /// How it came to be written down.
    pub source: Source,
    /// What is recorded.
    pub fact: Fact,
}

impl Parts {
    /// A fact about a truck, seen on this phone, with nothing else known.
    pub fn about(unit: TruckId, fact: Fact) -> Parts {
        Parts {
            id: None,
            unit: Some(unit),
            set: None,
            at: None,
            person: None,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Phone,
            fact,
        }
    }
}

/// A phone's daybook.
pub struct Daybook {
    ledger: Ledger,
    home: Home,
    folder: PathBuf,
    salvaged: Option<Salvaged>,
}

impl Daybook {
    /// Sets a folder up from a shop's invitation: a key of its own, the books, and last its home. Stopped
    /// in between, the same call goes on with the same key. From then on it records, network or not.
    ///
    /// # Errors
    /// [`PhoneError::AlreadyEnrolled`]; a file that is no invitation, is damaged, or whose code ran out by
    /// `now`; a key or a folder that cannot be used.
    pub fn enrol(
        folder: &Path,
        invitation: &[u8],
        name: &str,
        seal: &dyn KeySeal,
        now: Stamp,
    ) -> Result<Daybook, PhoneError> {
        let (root, invited) = invited(invitation)?;
        let home = Home::new(root, &invited.fleet_name, name.trim(), invited.hub.clone());
        let expires = i64::try_from(invited.expires_ms).unwrap_or(i64::MAX);
        if now.unix_ms() > expires {
            let at = Stamp::from_parts(expires, now.offset_minutes()).map(|at| at.to_string());
            return Err(ExchangeError::CodeExpired(at.unwrap_or_default()).into());
        }
        let mut ledger = begin(folder, root, &home.device, seal)?;
        exchange::take_in(&mut ledger, invitation, now)?;
        memory::set_code(ledger.store_mut(), &invited.code)?;
        home.write(folder)?;
        Ok(Daybook { ledger, home, folder: folder.to_owned(), salvaged: None })
    }

    /// Sets a folder up from the code the shop's screen shows. It holds no books yet: they come with the
    /// first exchange after the shop has let it in. Whether the code still holds the hub says: this clock may
    /// be wrong, and a quarter of an hour is short. A folder that asked with a code that ran out is given the next
    /// one by the same call, and keeps its key.
    ///
    /// # Errors
    /// As [`Daybook::enrol`], but for the file.
    pub fn enrol_by_code(
        folder: &Path,
        code: &ShopCode,
        name: &str,
        seal: &dyn KeySeal,
    ) -> Result<Daybook, PhoneError> {
        let invited = &code.invitation;
        let home = Home::new(code.root, &invited.fleet_name, name.trim(), invited.hub.clone());
        let mut ledger = begin(folder, code.root, &home.device, seal)?;
        memory::follow(ledger.store_mut(), &code.units.iter().copied().collect())?;
        memory::set_code(ledger.store_mut(), &invited.code)?;
        home.write(folder)?;
        Ok(Daybook { ledger, home, folder: folder.to_owned(), salvaged: None })
    }

    /// Opens an enrolled folder.
    ///
    /// # Errors
    /// [`PhoneError::NotEnrolled`], [`PhoneError::KeyGone`], and as opening the books.
    pub fn open(folder: &Path, seal: &dyn KeySeal) -> Result<Daybook, PhoneError> {
        let home = Home::read(folder)?;
        let root = home.root(folder)?;
        let secret = seal.open()?.ok_or(PhoneError::KeyGone)?;
        let (mut ledger, salvaged) = Ledger::open(folder, root, DeviceKey::from_secret(&secret))?;
        if let Some(saved) = &salvaged {
            memory::drop_cursor(ledger.store_mut())?;
            memory::set_salvaged(ledger.store_mut(), saved)?;
        }
        // A book that was saved says so at every opening, until the shop has given what it had of the rest.
        let salvaged = match salvaged {
            None => memory::salvaged(ledger.store())?,
            now => now,
        };
        Ok(Daybook { ledger, home, folder: folder.to_owned(), salvaged })
    }

    /// Records one entry, durable when this returns, and drops its draft. An id that this device recorded
    /// already is not recorded again.
    ///
    /// # Errors
    /// As [`Ledger::record`]; then nothing was recorded.
    pub fn record(&mut self, parts: Parts, now: Stamp) -> Result<EntryId, PhoneError> {
        let id = match parts.id {
            Some(id) => id,
            None => new_id(now)?,
        };
        let own = self.ledger.own_key().id();
        let twins = self.ledger.store().truth().by_id(id)?;
        if parts.id.is_some() && twins.iter().any(|held| held.row.actor.key() == own) {
            // Tried again after a doubtful end: the first words stand, whatever the clock says now.
            self.ledger.store_mut().drop_draft(id)?;
            return Ok(id);
        }
        let on_truck = parts.unit.and_then(|truck| self.ledger.fleet().set_on(truck)).map(|set| set.set);
        let entry = Entry {
            id,
            unit: parts.unit,
            set: parts.set.or(on_truck),
            at: parts.at.unwrap_or(now),
            clock_off_ms: self.clock_off_ms()?,
            person: parts.person,
            trainer: parts.trainer,
            pin_given: parts.pin_given,
            trainer_pin_given: parts.trainer_pin_given,
            hours: parts.hours,
            note: parts.note,
            source: parts.source,
            fact: parts.fact,
        };
        self.ledger.record(&[NewEntry::about_its_unit(entry)], now.unix_ms())?;
        Ok(id)
    }

    /// Makes a file of everything the shop has not acknowledged.
    ///
    /// # Errors
    /// As [`exchange::hand_over`].
    pub fn hand_over(&mut self, now: Stamp) -> Result<HandOver, ExchangeError> {
        exchange::hand_over(&mut self.ledger, now)
    }

    /// Takes in a file.
    ///
    /// # Errors
    /// As [`exchange::take_in`].
    pub fn take_in(&mut self, bytes: &[u8], now: Stamp) -> Result<TakenIn, ExchangeError> {
        exchange::take_in(&mut self.ledger, bytes, now)
    }

    /// Drafts, oldest change first.
    ///
    /// # Errors
    /// As any read.
    pub fn drafts(&self) -> Result<Vec<DraftRow>, PhoneError> {
        Ok(self.ledger.store().drafts()?)
    }

    /// Keeps a draft.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_draft(&mut self, draft: &DraftRow) -> Result<(), PhoneError> {
        Ok(self.ledger.store_mut().keep_draft(draft)?)
    }

    /// Gives a draft up.
    ///
    /// # Errors
    /// As any write.
    pub fn drop_draft(&mut self, id: EntryId) -> Result<(), PhoneError> {
        Ok(self.ledger.store_mut().drop_draft(id)?)
    }

    /// Hub time minus this clock, milliseconds; none before the first exchange with the hub.
    ///
    /// # Errors
    /// As any read.
    pub fn clock_off_ms(&self) -> Result<Option<i64>, PhoneError> {
        Ok(memory::clock_off_ms(self.ledger.store())?)
    }

    /// Remembers how far this clock is from the hub's. A file says nothing of it: nobody knows how long it
    /// was on its way.
    ///
    /// # Errors
    /// As any write.
    pub fn set_clock_off_ms(&mut self, off_ms: i64) -> Result<(), PhoneError> {
        Ok(memory::set_clock_off_ms(self.ledger.store_mut(), off_ms)?)
    }

    /// Whether its books have not come yet: it began with a code and waits for the shop's yes. A book that was
    /// lost remembers no code.
    ///
    /// # Errors
    /// As any read.
    pub fn waits_for_its_books(&self) -> Result<bool, PhoneError> {
        Ok(self.ledger.fleet().name.is_empty() && memory::asking(self.ledger.store())?.is_some())
    }

    /// What this folder is.
    pub fn home(&self) -> &Home {
        &self.home
    }

    /// This phone's photos.
    pub fn photos(&self) -> PhotoFolder {
        PhotoFolder::of(&self.folder)
    }

    /// What was saved when the book was found damaged at an opening; none when all was well, and once a whole exchange
    /// with the shop came after it.
    pub fn salvaged(&self) -> Option<&Salvaged> {
        self.salvaged.as_ref()
    }

    /// The books, for reading.
    pub fn ledger(&self) -> &Ledger {
        &self.ledger
    }

    /// The books.
    pub fn ledger_mut(&mut self) -> &mut Ledger {
        &mut self.ledger
    }
}

/// Whether a folder has asked this shop with a code and holds nothing yet: its code may have run out, and another
/// one takes its place.
fn still_asks(folder: &Path, root: Root) -> Result<bool, PhoneError> {
    if Home::read(folder)?.root(folder)? != root {
        return Ok(false);
    }
    let store = Store::open(folder)?.store;
    Ok(store.truth().last_n()? == 0 && memory::asking(&store)?.is_some())
}

/// A folder with a key and an empty book of this fleet; begun before with the same, it goes on.
fn begin(folder: &Path, root: Root, name: &str, seal: &dyn KeySeal) -> Result<Ledger, PhoneError> {
    if Home::exists(folder) && !still_asks(folder, root)? {
        let home = Home::read(folder)?;
        let (fleet, device) = (home.fleet_name, home.device);
        return Err(PhoneError::AlreadyEnrolled { folder: folder.to_owned(), fleet, device });
    }
    if name.is_empty() || name.chars().count() > MOST_NAME {
        return Err(PhoneError::Name);
    }
    let own = match seal.open()? {
        Some(secret) => DeviceKey::from_secret(&secret),
        None => {
            let own = DeviceKey::generate()?;
            seal.seal(own.secret())?;
            own
        }
    };
    let mut store = Store::open(folder)?.store;
    match store.setting(FLEET)? {
        Some(fleet) if fleet != root.fleet.bytes() => {
            return Err(PhoneError::OtherBook(folder.to_owned()));
        }
        Some(_) => {}
        None if store.truth().last_n()? > 0 => return Err(PhoneError::OtherBook(folder.to_owned())),
        None => store.set_setting(FLEET, &root.fleet.bytes())?,
    }
    let mut ledger = Ledger::over(store, root, own)?;
    memory::set_name(ledger.store_mut(), name)?;
    Ok(ledger)
}

/// Who invites, and to what. Whoever handed the file over vouches for the key in it; nothing else does.
fn invited(bytes: &[u8]) -> Result<(Root, Invitation), ExchangeError> {
    let mut reader = FileReader::new(bytes).map_err(|_| ExchangeError::NotAFile)?;
    let damaged = |reason: String| ExchangeError::Invitation(reason);
    let wire = reader.next().ok_or(ExchangeError::NotAnInvitation)?.map_err(|e| damaged(e.to_string()))?;
    let opened = open(&wire, |_| None).map_err(|error| match error {
        crate::parcel::OpenError::UnknownSigner(_) => ExchangeError::NotAnInvitation,
        other => damaged(other.to_string()),
    })?;
    match opened.parcel.invitation {
        Some(invitation) if opened.standing == Standing::Inviting => {
            Ok((Root { fleet: opened.parcel.fleet, shop: invitation.shop }, invitation))
        }
        _ => Err(ExchangeError::NotAnInvitation),
    }
}
