//! The one thread that writes the shop's books.
//!
//! Parcels that wait at one moment are answered under one commit, each a part of its own; no answer leaves
//! before that commit is on the disk. The longer a commit takes, the more wait for the next: nobody is made to
//! wait for company.

use std::sync::mpsc::{Receiver, RecvTimeoutError, SyncSender, TryRecvError, TrySendError, sync_channel};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::Duration;

use axum::body::Bytes;
use sumpbook_daybook::exchange::{Ahead, Answered, Declined, Door, respond, respond_ahead};
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::store::StoreError;
use tokio::sync::oneshot;

use super::challenge::Challenges;
use super::photo::Tokens;
use super::{HubClock, HubError};
use crate::{Shop, ShopError};

/// As many wait at most; the next one is told to come again.
const MOST_WAITING: usize = 1_024;
/// Parcels under one commit at most.
const AT_ONCE: usize = 32;
/// So long nothing came: time to fold what was written, so that pages read it folded.
const QUIET: Duration = Duration::from_millis(50);
/// Units folded in one go: whoever comes meanwhile waits no longer than for these.
const FOLDED_AT_ONCE: usize = 16;
/// When it is never quiet, units are folded after so many commits all the same.
const BUSY: u32 = 8;

/// The answer to a parcel, or why there is none.
pub(super) type Response = Result<Answered, Declined>;

enum Job {
    Work(Box<dyn FnOnce(&mut Shop) + Send>),
    Parcel(Box<Waiting>),
}

struct Waiting {
    parcel: Bytes,
    ahead: Option<Ahead>,
    answer: oneshot::Sender<Result<Response, HubError>>,
}

pub(super) struct Writer {
    jobs: Mutex<Option<SyncSender<Job>>>,
    thread: Mutex<Option<JoinHandle<()>>>,
}

impl Writer {
    pub(super) fn begin(
        shop: Shop,
        clock: HubClock,
        challenges: Arc<Challenges>,
        tokens: Arc<Tokens>,
    ) -> Result<Writer, HubError> {
        let (jobs, taken) = sync_channel(MOST_WAITING);
        let desk = Desk { shop, clock, challenges, tokens };
        let thread = std::thread::Builder::new()
            .name("writer".to_owned())
            .spawn(move || run(desk, &taken))
            .map_err(|error| HubError::Thread(error.to_string()))?;
        Ok(Writer { jobs: Mutex::new(Some(jobs)), thread: Mutex::new(Some(thread)) })
    }

    pub(super) async fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Shop) -> Result<T, ShopError> + Send + 'static,
    ) -> Result<T, HubError> {
        let (answer, done) = oneshot::channel();
        self.give(Job::Work(Box::new(move |shop| {
            // Whoever was entered beside this hub, from a command line, is known to it as to every page.
            let done = shop.ledger.refresh().map_err(ShopError::from).and_then(|()| work(shop));
            // Nobody waits for it any more: it is done all the same.
            let _ = answer.send(done);
        })))?;
        done.await.map_err(|_| HubError::Stopping)?.map_err(HubError::from)
    }

    pub(super) async fn respond(&self, parcel: Bytes, ahead: Option<Ahead>) -> Result<Response, HubError> {
        let (answer, done) = oneshot::channel();
        self.give(Job::Parcel(Box::new(Waiting { parcel, ahead, answer })))?;
        done.await.map_err(|_| HubError::Stopping)?
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

struct Desk {
    shop: Shop,
    clock: HubClock,
    challenges: Arc<Challenges>,
    tokens: Arc<Tokens>,
}

fn run(mut desk: Desk, jobs: &Receiver<Job>) {
    let mut pause = QUIET;
    let (mut next, mut commits) = (None, 0_u32);
    loop {
        let job = match next.take() {
            Some(job) => Ok(job),
            None => jobs.recv_timeout(pause),
        };
        match job {
            Ok(Job::Work(work)) => {
                work(&mut desk.shop);
                pause = QUIET;
            }
            Ok(Job::Parcel(first)) => {
                let mut waiting = vec![*first];
                while waiting.len() < AT_ONCE {
                    match jobs.try_recv() {
                        Ok(Job::Parcel(more)) => waiting.push(*more),
                        Ok(other) => {
                            next = Some(other);
                            break;
                        }
                        Err(TryRecvError::Empty | TryRecvError::Disconnected) => break,
                    }
                }
                desk.answer(waiting);
                commits = commits.wrapping_add(1);
                if commits.is_multiple_of(BUSY) {
                    desk.fold();
                }
                pause = QUIET;
            }
            // As long as there is more to fold only work that waits is put before it.
            Err(RecvTimeoutError::Timeout) => {
                pause = if desk.fold() { Duration::from_secs(3_600) } else { Duration::ZERO };
            }
            Err(RecvTimeoutError::Disconnected) => return,
        }
    }
}

impl Desk {
    /// Folds a few of the units that were touched. Returns whether none is left for now.
    fn fold(&mut self) -> bool {
        self.shop.ledger.settle_some(FOLDED_AT_ONCE).unwrap_or_else(|error| {
            // Pages fold by themselves what this could not: slower, and never wrong.
            tracing::warn!(%error, "states were not folded");
            true
        })
    }

    /// Answers them under one commit.
    fn answer(&mut self, mut waiting: Vec<Waiting>) {
        let now = self.clock.now();
        let challenges = &self.challenges;
        let holds = |challenge: &[u8; 16]| {
            let holds = challenges.holds(challenge, now.unix_ms());
            // The signature was seen to hold by now.
            if holds {
                challenges.use_up(*challenge, now.unix_ms());
            }
            holds
        };
        let token = |phone| Some(self.tokens.of(phone, now.unix_ms()));
        let door = Door { challenge: &holds, token: &token };
        let done: Result<Vec<Response>, LedgerError> = self.shop.ledger.in_one_commit(|ledger| {
            let answer = |one: &mut Waiting| match one.ahead.take() {
                Some(ahead) => respond_ahead(ledger, ahead, &door, now),
                None => respond(ledger, &one.parcel, &door, now),
            };
            Ok(waiting.iter_mut().map(answer).collect())
        });
        match done {
            Ok(responses) => {
                for (one, response) in waiting.into_iter().zip(responses) {
                    // Whoever hung up asks again and is told the same.
                    let _ = one.answer.send(Ok(response));
                }
            }
            Err(error) => {
                // The whole did not become durable: nobody is told that anything did.
                tracing::error!(%error, parcels = waiting.len(), "nothing was written");
                let full = matches!(error, LedgerError::Store(StoreError::Full));
                for one in waiting {
                    let _ = one.answer.send(Err(HubError::Unwritten { full }));
                }
            }
        }
    }
}
