//! Passing entries on: with the hub, or by file.

use std::sync::TryLockError;
use std::time::{Duration, Instant};

use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::phone::online::{Exchanged, PhotoStop, Wish};

use crate::error::{OnlineKind, PhoneError};
use crate::listener::ChangeSet;
use crate::phone::Phone;
use crate::text::{TextAsk, TextValue};

/// A file to hand over. Signed, not secret.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct FileMade {
    /// The file.
    pub bytes: Vec<u8>,
    /// Entries in it that the shop has not acknowledged.
    pub entries: u32,
    /// Of those, how many this phone wrote.
    pub own: u32,
}

/// What became of a file that was taken in.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct FileTaken {
    /// Entries that are new here.
    pub admitted: u32,
    /// Entries that were here already.
    pub known: u32,
    /// Entries that wait for an earlier one or for their signer.
    pub waiting: u32,
    /// What stays outside for good.
    pub refused: u32,
    /// Of those, entries with a signature that does not hold.
    pub forged: u32,
    /// Own entries placed again.
    pub placed_again: u32,
    /// It ends early, after so many entries.
    pub ended_after: Option<u64>,
    /// Of so many, when it says so.
    pub ended_of: Option<u64>,
    /// It brought the shop's receipt.
    pub receipt: bool,
    /// Two shops answer with one key.
    pub two_shops: bool,
    /// The shop was set back to an earlier state.
    pub shop_set_back: bool,
}

/// What came of an exchange with the hub.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct ExchangeReport {
    /// Entries the shop acknowledged for the first time.
    pub acknowledged: u64,
    /// Entries that came.
    pub came: u32,
    /// Entries the shop did not take.
    pub refused: u32,
    /// The shop has let this phone in.
    pub enrolled: bool,
    /// The shop stopped this phone.
    pub stopped: bool,
    /// Everything was exchanged; if not, the deadline came first.
    pub whole: bool,
    /// Photos that are whole at the shop now.
    pub photos_arrived: u32,
    /// Photos that are still to go.
    pub photos_left: u32,
    /// Why photos stopped.
    pub photos_stopped: Option<PhotoHalt>,
    /// What somebody should hear of it beside the counts: texts with their values.
    pub sentences: Vec<TextAsk>,
}

/// Why photos stopped. They go on with the next exchange.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum PhotoHalt {
    /// The signal went, or time ran out.
    NoWay,
    /// The shop has no room.
    NoRoom,
    /// The shop said no.
    Declined,
    /// A file on this phone cannot be read.
    Unreadable,
}

/// When this phone should turn to the hub.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum TryWhen {
    /// At once.
    Now,
    /// Not before this moment, milliseconds since 1970.
    NotBefore(i64),
}

#[uniffi::export]
impl Phone {
    /// Makes a file of everything the shop has not acknowledged.
    ///
    /// # Errors
    /// `File`; as any read.
    pub fn hand_over(&self) -> Result<FileMade, PhoneError> {
        self.with(|book, now| {
            let made = book.hand_over(now)?;
            Ok(FileMade { bytes: made.bytes, entries: count(made.entries), own: count(made.own) })
        })
    }

    /// Takes in a file. Twice the same changes nothing.
    ///
    /// # Errors
    /// `File`; as any write.
    pub fn take_in(&self, bytes: Vec<u8>) -> Result<FileTaken, PhoneError> {
        self.change(ChangeSet::CAME, |book, now| {
            let taken = book.take_in(&bytes, now)?;
            book.ledger_mut().settle()?;
            let ended = taken.ended_early.as_ref();
            Ok(FileTaken {
                admitted: count(taken.admitted),
                known: count(taken.known),
                waiting: count(taken.waiting),
                refused: count(taken.refused.len()),
                forged: count(taken.forged()),
                placed_again: count(taken.placed_again),
                ended_after: ended.map(|ended| ended.after),
                ended_of: ended.and_then(|ended| ended.of),
                receipt: taken.receipt,
                two_shops: taken.two_shops,
                shop_set_back: taken.shop_set_back,
            })
        })
    }

    /// Exchanges with the hub until nothing is left or so many milliseconds have gone. It works on a book of its own,
    /// so screens and recording go on meanwhile. Cut anywhere, nothing is lost or doubled.
    ///
    /// # Errors
    /// `Online`, with when it is tried again and how many entries are only here; `Closed`; as any read.
    pub fn exchange_once(&self, deadline_ms: u32) -> Result<ExchangeReport, PhoneError> {
        self.check_open()?;
        let _under_way = match self.exchanging.try_lock() {
            Ok(held) => held,
            Err(TryLockError::Poisoned(held)) => held.into_inner(),
            Err(TryLockError::WouldBlock) => return Err(under_way()),
        };
        let until = Instant::now() + Duration::from_millis(deadline_ms.into());
        let mut book = Daybook::open(&self.folder, &self.keeper)?;
        let done = book.exchange_once(&|| self.clock.now(), until);
        // Something may have come even where it failed later.
        self.open_again()?;
        self.tell(ChangeSet::CAME);
        match done {
            Ok(done) => Ok(report(&done)),
            Err(error) => Err(with_figures(error.into(), &book)),
        }
    }

    /// When to turn to the hub next.
    ///
    /// # Errors
    /// As any read.
    pub fn wish(&self) -> Result<TryWhen, PhoneError> {
        self.read(|book, now| {
            Ok(match book.wish(now)? {
                Wish::Now => TryWhen::Now,
                Wish::NotBefore(at) => TryWhen::NotBefore(at),
            })
        })
    }
}

fn report(done: &Exchanged) -> ExchangeReport {
    ExchangeReport {
        acknowledged: done.acknowledged,
        came: count(done.came),
        refused: count(done.refused),
        enrolled: done.enrolled,
        stopped: done.stopped,
        whole: done.whole,
        photos_arrived: done.photos.arrived,
        photos_left: done.photos.left,
        photos_stopped: done.photos.stopped.as_ref().map(|stop| match stop {
            PhotoStop::NoWay => PhotoHalt::NoWay,
            PhotoStop::NoRoom => PhotoHalt::NoRoom,
            PhotoStop::Declined(_) => PhotoHalt::Declined,
            PhotoStop::Unreadable => PhotoHalt::Unreadable,
        }),
        sentences: done
            .sentences()
            .into_iter()
            .map(|sentence| {
                let counted = sentence.count.and_then(|count| i64::try_from(count).ok());
                let value = counted.map(|count| ("count".to_owned(), TextValue::Count(count)));
                TextAsk { key: sentence.key.to_owned(), values: value.into_iter().collect() }
            })
            .collect(),
    }
}

fn under_way() -> PhoneError {
    PhoneError::Online {
        kind: OnlineKind::UnderWay,
        text_key: None,
        status: None,
        retry_at: None,
        since: None,
        on_phone: 0,
        reason: "an exchange of this phone is under way".to_owned(),
    }
}

/// Adds when it is tried again and how much is only here: what a screen says of it.
fn with_figures(error: PhoneError, book: &Daybook) -> PhoneError {
    match error {
        PhoneError::Online { kind, text_key, status, reason, .. } => PhoneError::Online {
            kind,
            text_key,
            status,
            retry_at: book.back_off().ok().map(|back_off| back_off.not_before_ms),
            since: since(book),
            on_phone: book.standing().map_or(0, |standing| standing.counts().on_phone),
            reason,
        },
        other => other,
    }
}

/// Since when every try has failed for the reason the last one failed for.
fn since(book: &Daybook) -> Option<String> {
    let since_ms = book.back_off().ok().map(|back_off| back_off.since_ms).filter(|ms| *ms > 0)?;
    book.ledger().fleet().yard_stamp(since_ms).map(|at| at.to_string())
}

fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}
