//! The ledger: one folder's books with what follows from them. The same on a phone and at the shop.
//!
//! Entries come in by [`Ledger::admit`] and [`Ledger::record`]; both write the truth and its projection in
//! one transaction. A unit's state is folded when it is next asked for, so recording stays as fast as the
//! disk, and the first screen after opening reads a folded state whatever the length of the history.

mod admit;
mod ancestry;
mod error;
mod fleet;
mod fork;
mod ids;
mod keys;
mod one_commit;
mod project;
mod read_once;
mod rebuild;
mod record;
mod take_over;

use std::path::Path;

use sumpbook_trade::FleetId;

use crate::fleet::Fleet;
use crate::gate::{Actor, DeviceKey, KeyId, PublicKey};
use crate::store::{Salvaged, Store, StoreError};

use keys::Keys;
use read_once::ReadOnce;

pub(crate) use admit::Built;
pub use admit::{Admission, Incoming, Refusal};
pub use ancestry::Reach;
pub use error::LedgerError;
pub use ids::new_id;
pub(crate) use project::{day_number, decided_with, decision_about};
pub use record::NewEntry;
pub use take_over::Carried;

/// What never changes about a fleet: where trust begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Root {
    /// The fleet.
    pub fleet: FleetId,
    /// The shop's public key.
    pub shop: PublicKey,
}

/// One folder's books.
pub struct Ledger {
    store: Store,
    knows: Knowledge,
    states: ReadOnce,
}

/// What a ledger knows beside its store: apart from it, so that both can be used within one transaction.
struct Knowledge {
    root: Root,
    own: DeviceKey,
    actor: Actor,
    fleet: Fleet,
    /// Highest op of the fleet book folded so far.
    fleet_op: u64,
    /// The number the store gave this fold: another writer of the folder may have changed it since.
    fleet_version: i64,
    /// Every key the fleet book ever enrolled.
    keys: Keys,
}

impl Ledger {
    /// Opens the books of a folder, writing as `own`.
    ///
    /// # Errors
    /// As opening the store; and when the system has no randomness for this start's actor.
    pub fn open(
        folder: &Path,
        root: Root,
        own: DeviceKey,
    ) -> Result<(Ledger, Option<Salvaged>), LedgerError> {
        let opened = Store::open(folder)?;
        let again = own.again();
        let (mut ledger, salvaged) = match Ledger::over(opened.store, root, own) {
            // Damage where opening the file did not look: look at all of it, save what is readable.
            Err(LedgerError::Store(StoreError::Damaged(_))) => {
                Store::suspect_in(folder);
                let opened = Store::open(folder)?;
                (Ledger::over(opened.store, root, again)?, opened.salvaged)
            }
            ledger => (ledger?, opened.salvaged),
        };
        if salvaged.is_some() {
            ledger.place_salvaged()?;
        }
        ledger.project_older()?;
        ledger.read_photos()?;
        Ok((ledger, salvaged))
    }

    /// A ledger over an open store.
    ///
    /// # Errors
    /// As reading the fleet book; and when the system has no randomness.
    pub fn over(store: Store, root: Root, own: DeviceKey) -> Result<Ledger, LedgerError> {
        let actor = Actor::new(own.id())?;
        let keys = Keys::of_shop(root.shop);
        let mut knows =
            Knowledge { root, own, actor, fleet: Fleet::default(), fleet_op: 0, fleet_version: 0, keys };
        knows.load_fleet(&store.truth())?;
        Ok(Ledger { store, knows, states: ReadOnce::default() })
    }

    /// The store, for reading.
    pub fn store(&self) -> &Store {
        &self.store
    }

    /// The store, for what is not an entry: drafts, settings, the exchange log, sheets.
    pub fn store_mut(&mut self) -> &mut Store {
        &mut self.store
    }

    /// The fleet as its book tells it.
    pub fn fleet(&self) -> &Fleet {
        &self.knows.fleet
    }

    /// Kept states that were read already.
    pub(crate) fn states(&self) -> &ReadOnce {
        &self.states
    }

    /// Where trust begins.
    pub fn root(&self) -> Root {
        self.knows.root
    }

    /// The key this ledger writes with.
    pub fn own_key(&self) -> &DeviceKey {
        &self.knows.own
    }

    /// The actor of this start.
    pub fn actor(&self) -> Actor {
        self.knows.actor
    }

    /// Notes in the folder when something in its file could not be read: the next opening then saves what is
    /// readable.
    pub(crate) fn noted<T>(&self, result: Result<T, LedgerError>) -> Result<T, LedgerError> {
        if let Err(LedgerError::Store(StoreError::Damaged(_))) = &result {
            self.store.suspect();
        }
        result
    }

    /// A key the fleet ever enrolled, by its id.
    pub fn key(&self, id: KeyId) -> Option<PublicKey> {
        self.knows.keys.get(id)
    }

    /// Writes as another actor of the same key from now on: after a commit that failed, and in tests.
    pub fn write_as(&mut self, actor: Actor) {
        self.knows.actor = actor;
    }
}
