//! The one thread that writes the shop's books.

use std::sync::Mutex;
use std::sync::mpsc::{Receiver, RecvTimeoutError, SyncSender, TrySendError, sync_channel};
use std::thread::JoinHandle;
use std::time::Duration;

use tokio::sync::oneshot;

use super::HubError;
use crate::{Shop, ShopError};

/// As many wait at most; the next one is told to come again.
const MOST_WAITING: usize = 256;
/// So long nothing came: time to fold what was written, so that pages read it folded.
const QUIET: Duration = Duration::from_millis(50);

type Job = Box<dyn FnOnce(&mut Shop) + Send>;

pub(super) struct Writer {
    jobs: Mutex<Option<SyncSender<Job>>>,
    thread: Mutex<Option<JoinHandle<()>>>,
}

impl Writer {
    pub(super) fn begin(shop: Shop) -> Result<Writer, HubError> {
        let (jobs, taken) = sync_channel(MOST_WAITING);
        let thread = std::thread::Builder::new()
            .name("writer".to_owned())
            .spawn(move || run(shop, &taken))
            .map_err(|error| HubError::Thread(error.to_string()))?;
        Ok(Writer { jobs: Mutex::new(Some(jobs)), thread: Mutex::new(Some(thread)) })
    }

    pub(super) async fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Shop) -> Result<T, ShopError> + Send + 'static,
    ) -> Result<T, HubError> {
        let (answer, done) = oneshot::channel();
        let job: Job = Box::new(move |shop| {
            // Nobody waits for it any more: it is done all the same.
            let _ = answer.send(work(shop));
        });
        self.give(job)?;
        done.await.map_err(|_| HubError::Stopping)?.map_err(HubError::from)
    }

    fn give(&self, job: Job) -> Result<(), HubError> {
        let jobs = self.jobs.lock().map_err(|_| HubError::Stopping)?;
        match jobs.as_ref().ok_or(HubError::Stopping)?.try_send(job) {
            Ok(()) => Ok(()),
            Err(TrySendError::Full(_)) => Err(HubError::Busy),
            Err(TrySendError::Disconnected(_)) => Err(HubError::Stopping),
        }
    }

    pub(super) fn stop(&self) {
        if let Ok(mut jobs) = self.jobs.lock() {
            jobs.take();
        }
        if let Some(thread) = self.thread.lock().ok().and_then(|mut thread| thread.take()) {
            let _ = thread.join();
        }
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        self.stop();
    }
}

fn run(mut shop: Shop, jobs: &Receiver<Job>) {
    let mut folded = false;
    loop {
        match jobs.recv_timeout(if folded { Duration::from_secs(3600) } else { QUIET }) {
            Ok(job) => {
                job(&mut shop);
                folded = false;
            }
            Err(RecvTimeoutError::Timeout) if !folded => {
                // Pages fold by themselves what this could not: slower, and never wrong.
                if let Err(error) = shop.ledger.settle() {
                    tracing::warn!(%error, "states were not folded");
                }
                folded = true;
            }
            Err(RecvTimeoutError::Timeout) => {}
            Err(RecvTimeoutError::Disconnected) => return,
        }
    }
}
