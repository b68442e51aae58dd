//! Reading requests beside the writer, on as many threads as the machine has processors.

use std::num::NonZero;
use std::path::PathBuf;
use std::sync::{Arc, Mutex};

use axum::body::Bytes;
use sumpbook_daybook::exchange::{Ahead, read_ahead};
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::{Ledger, Root};
use sumpbook_daybook::store::Store;
use tokio::sync::Semaphore;

/// Books opened for reading requests, kept open from one to the next.
#[derive(Clone)]
pub(super) struct Readers(Arc<Inner>);

struct Inner {
    folder: PathBuf,
    root: Root,
    secret: [u8; 32],
    idle: Mutex<Vec<Ledger>>,
    turns: Semaphore,
}

impl Readers {
    pub(super) fn of(folder: PathBuf, root: Root, secret: [u8; 32]) -> Readers {
        let turns = std::thread::available_parallelism().map_or(1, NonZero::get);
        let idle = Mutex::default();
        Readers(Arc::new(Inner { folder, root, secret, idle, turns: Semaphore::new(turns) }))
    }

    /// Reads a request; none when the writer must.
    pub(super) async fn read(&self, parcel: Bytes) -> Option<Ahead> {
        let _turn = self.0.turns.acquire().await.ok()?;
        let readers = self.clone();
        tokio::task::spawn_blocking(move || readers.0.read(&parcel)).await.ok()?
    }

    /// Reads no more, and closes what is open: the last to close the books takes their log in.
    pub(super) fn stop(&self) {
        self.0.turns.close();
        if let Ok(mut idle) = self.0.idle.lock() {
            idle.clear();
        }
    }
}

impl Inner {
    fn read(&self, parcel: &[u8]) -> Option<Ahead> {
        let idle = self.idle.lock().ok()?.pop();
        let mut ledger = match idle {
            Some(ledger) => ledger,
            None => {
                let store = Store::reader(&self.folder).ok()?;
                Ledger::over(store, self.root, DeviceKey::from_secret(&self.secret)).ok()?
            }
        };
        let ahead = read_ahead(&mut ledger, parcel);
        if !self.turns.is_closed() {
            self.idle.lock().ok()?.push(ledger);
        }
        ahead
    }
}
