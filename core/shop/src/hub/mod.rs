//! The hub: the shop's books, reached by phones and by a browser.
//!
//! One thread writes (`writer`), and requests are read before it comes to them (`readers`); whoever reads
//! opens the books for that one answer, so no reader waits for a writer. Sockets, threads and the clock stand
//! here and nowhere below.

mod browsers;
mod calendar;
mod certificate;
mod challenge;
mod clock;
mod closing;
mod error;
mod exchange;
mod health;
mod limits;
mod openapi;
mod photo;
mod readers;
mod serve;
#[cfg(test)]
mod tests;
mod writer;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::body::Bytes;
use sumpbook_daybook::exchange::{Ahead, Answered, Declined};
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::{Ledger, Root};
use sumpbook_daybook::store::Store;
use sumpbook_trade::Stamp;

use crate::{Shop, ShopError};

pub use certificate::Certificate;
use challenge::Challenges;
pub use clock::HubClock;
pub use error::HubError;
pub use health::Figures;
use photo::{Coming, Tokens};
use readers::Readers;
pub use serve::{Running, ServeOptions, serve};
use writer::Writer;

/// Of the books' file the writer keeps so many KiB in memory: phones of the whole fleet touch it all over.
const WRITER_KIB: u32 = 16 * 1024;

/// The books of one shop, shared by everything that answers.
#[derive(Clone)]
pub struct Hub(Arc<Inner>);

struct Inner {
    folder: PathBuf,
    root: Root,
    secret: [u8; 32],
    clock: HubClock,
    challenges: Arc<Challenges>,
    tokens: Arc<Tokens>,
    coming: Coming,
    writer: Writer,
    readers: Readers,
    figures: Figures,
}

impl Hub {
    /// Takes over an open shop: from here on one thread writes it.
    ///
    /// # Errors
    /// When that thread cannot be begun.
    pub fn over(shop: Shop, clock: HubClock) -> Result<Hub, HubError> {
        shop.ledger.store().keep_in_memory(WRITER_KIB).map_err(ShopError::from)?;
        let folder = shop.folder.clone();
        let root = shop.ledger.root();
        let secret = *shop.ledger.own_key().secret();
        let challenges = Arc::new(Challenges::new()?);
        let tokens = Arc::new(Tokens::new()?);
        let coming = Coming::of(&folder);
        let writer = Writer::begin(shop, clock.clone(), challenges.clone(), tokens.clone())?;
        let readers = Readers::of(folder.clone(), root, secret);
        let figures = Figures::default();
        let inner =
            Inner { folder, root, secret, clock, challenges, tokens, coming, writer, readers, figures };
        Ok(Hub(Arc::new(inner)))
    }

    /// Reads the books as they stand now. Everything one call asks is of one moment. Runs beside the
    /// answering threads, for it waits for the disk.
    ///
    /// # Errors
    /// As `work`; and when the books cannot be opened.
    pub async fn read<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Ledger) -> Result<T, ShopError> + Send + 'static,
    ) -> Result<T, HubError> {
        let hub = self.clone();
        tokio::task::spawn_blocking(move || work(&hub.reader()?)).await?.map_err(HubError::from)
    }

    /// Writes: `work` has the shop for itself until it returns, and what it recorded is durable by then.
    ///
    /// # Errors
    /// As `work`; [`HubError::Busy`] when too many wait, [`HubError::Stopping`] when the hub ends.
    pub async fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Shop) -> Result<T, ShopError> + Send + 'static,
    ) -> Result<T, HubError> {
        self.0.writer.write(work).await
    }

    /// Answers a phone's parcel; what the answer acknowledges is durable.
    ///
    /// # Errors
    /// [`HubError::Busy`], [`HubError::Stopping`], [`HubError::Unwritten`]; inside, why it was declined.
    pub async fn respond(
        &self,
        parcel: Bytes,
        ahead: Option<Ahead>,
    ) -> Result<Result<Answered, Declined>, HubError> {
        self.0.writer.respond(parcel, ahead).await
    }

    /// Reads a phone's parcel beside the writer; none when nobody known signed it, or only the writer can read it.
    pub async fn read_ahead(&self, parcel: Bytes) -> Option<Ahead> {
        self.0.readers.read(parcel).await
    }

    /// A challenge for a phone's next parcel.
    ///
    /// # Errors
    /// When the system has no randomness.
    pub fn fresh_challenge(&self) -> Result<[u8; 16], HubError> {
        Ok(self.0.challenges.fresh(self.now().unix_ms())?)
    }

    /// The books opened for reading, as of this moment.
    ///
    /// # Errors
    /// When they cannot be opened.
    pub fn reader(&self) -> Result<Ledger, ShopError> {
        let store = Store::reader(&self.0.folder)?;
        store.hold_still()?;
        Ok(Ledger::over(store, self.0.root, DeviceKey::from_secret(&self.0.secret))?)
    }

    /// Now, by the hub's clock.
    pub fn now(&self) -> Stamp {
        self.0.clock.now()
    }

    /// Where trust begins.
    pub fn root(&self) -> Root {
        self.0.root
    }

    /// SHA-256 of the certificate that browsers are shown, as they show it.
    ///
    /// # Errors
    /// When it cannot be read or made.
    pub fn shown_fingerprint(&self) -> Result<String, HubError> {
        let shop = DeviceKey::from_secret(&self.0.secret);
        let made = Certificate::of(self.folder(), self.root().fleet, &shop)?;
        Ok(browsers::Shown::of(self.folder(), &made.key)?.fingerprint())
    }

    /// The shop's folder.
    pub fn folder(&self) -> &Path {
        &self.0.folder
    }

    /// What was counted since the hub began.
    pub fn figures(&self) -> &Figures {
        &self.0.figures
    }

    /// Writes what is asked for already, takes nothing more, and ends the writing thread.
    pub fn stop(&self) {
        self.0.readers.stop();
        self.0.writer.stop();
    }
}
