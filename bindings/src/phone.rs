//! The one object: a phone's daybook, open, paused or shut down.

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use sumpbook_daybook::phone::Daybook;
use sumpbook_trade::Stamp;

use crate::PhoneClock;
use crate::clock::Clock;
use crate::error::PhoneError;
use crate::key_keeper::{Keeper, KeyKeeper};
use crate::listener::{ChangeListener, ChangeSet, Told};

/// A phone's daybook. Every call blocks for a few milliseconds, but for `exchange_once`: call from a thread that may
/// wait. What a call recorded is durable when it returns. One for the whole app; any thread may call it.
#[derive(uniffi::Object)]
pub struct Phone {
    pub(crate) folder: PathBuf,
    pub(crate) keeper: Keeper,
    pub(crate) clock: Clock,
    state: Mutex<State>,
    told: Mutex<Option<Told>>,
    /// Held through an exchange: a second one is told that one is under way.
    pub(crate) exchanging: Mutex<()>,
}

/// Boxed: a paused phone need not have room for a book.
enum State {
    Open(Box<Daybook>),
    Paused,
    Shut,
}

impl Phone {
    pub(crate) fn over(
        folder: PathBuf,
        keeper: Keeper,
        clock: Option<Arc<dyn PhoneClock>>,
        begin: impl FnOnce(&Path, &Keeper, Stamp) -> Result<Daybook, PhoneError>,
    ) -> Result<Arc<Phone>, PhoneError> {
        let clock = Clock(clock);
        let book = begin(&folder, &keeper, clock.now())?;
        let state = Mutex::new(State::Open(Box::new(book)));
        Ok(Arc::new(Phone {
            folder,
            keeper,
            clock,
            state,
            told: Mutex::new(None),
            exchanging: Mutex::new(()),
        }))
    }

    /// Reads something of the open book, as of now.
    pub(crate) fn read<T>(
        &self,
        read: impl FnOnce(&Daybook, Stamp) -> Result<T, PhoneError>,
    ) -> Result<T, PhoneError> {
        self.with(|book, now| {
            // What cannot be kept is folded for this once: a full or read-only phone still shows its screens.
            let _ = book.ledger_mut().settle();
            let book = &*book;
            let _of_one_moment = book.ledger().store().still()?;
            read(book, now)
        })
    }

    /// Changes something of the open book, and tells the listener when it was done.
    pub(crate) fn change<T>(
        &self,
        what: ChangeSet,
        change: impl FnOnce(&mut Daybook, Stamp) -> Result<T, PhoneError>,
    ) -> Result<T, PhoneError> {
        let done = self.with(change)?;
        self.tell(what);
        Ok(done)
    }

    pub(crate) fn with<T>(
        &self,
        act: impl FnOnce(&mut Daybook, Stamp) -> Result<T, PhoneError>,
    ) -> Result<T, PhoneError> {
        // Asked before the lock: a shell's clock may call the phone.
        let now = self.clock.now();
        match &mut *self.state() {
            State::Open(book) => {
                // The wall clock of the yard, whatever zone the machine is in.
                let zone = book.ledger().fleet().zone;
                let now = Stamp::new(now.moment().with_timezone(&zone).fixed_offset());
                act(book, now)
            }
            State::Paused => Err(PhoneError::Closed { paused: true }),
            State::Shut => Err(PhoneError::Closed { paused: false }),
        }
    }

    /// Whether it is open at all; an exchange works on a book of its own.
    pub(crate) fn check_open(&self) -> Result<(), PhoneError> {
        match &*self.state() {
            State::Open(_) => Ok(()),
            State::Paused => Err(PhoneError::Closed { paused: true }),
            State::Shut => Err(PhoneError::Closed { paused: false }),
        }
    }

    pub(crate) fn tell(&self, what: ChangeSet) {
        if let Some(told) = self.told.lock().unwrap_or_else(PoisonError::into_inner).as_ref() {
            told.of(what);
        }
    }

    /// Opens the book anew, so that it knows what another writer of the folder brought.
    pub(crate) fn open_again(&self) -> Result<(), PhoneError> {
        let mut state = self.state();
        if matches!(*state, State::Open(_)) {
            let book = Daybook::open(&self.folder, &self.keeper)?;
            *state = State::Open(Box::new(book));
        }
        Ok(())
    }

    fn state(&self) -> MutexGuard<'_, State> {
        // A call that panicked changed nothing that was not durable: the next one goes on.
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[uniffi::export]
impl Phone {
    /// Opens the folder of an enrolled phone. Without a keeper its key is in a file beside the book that only its
    /// owner can read; without a clock the machine's is asked.
    ///
    /// # Errors
    /// `Enrolment` with `NotEnrolled`, `Key`, `Storage`.
    #[uniffi::constructor]
    pub fn open(
        folder: String,
        keeper: Option<Arc<dyn KeyKeeper>>,
        clock: Option<Arc<dyn PhoneClock>>,
    ) -> Result<Arc<Self>, PhoneError> {
        let folder = PathBuf::from(folder);
        let keeper = Keeper::of(&folder, keeper);
        Phone::over(folder, keeper, clock, |folder, keeper, _| Ok(Daybook::open(folder, keeper)?))
    }

    /// Who hears of changes from now on; none: nobody.
    ///
    /// # Errors
    /// `Unexpected` when the system gives no thread.
    pub fn set_listener(&self, listener: Option<Arc<dyn ChangeListener>>) -> Result<(), PhoneError> {
        let told = listener.map(Told::to).transpose()?;
        *self.told.lock().unwrap_or_else(PoisonError::into_inner) = told;
        Ok(())
    }

    /// Lets go of the folder's files, for a system that ends who holds them in the background. Calls answer `Closed`
    /// until `resume`.
    ///
    /// # Errors
    /// `Closed` after `shutdown`.
    pub fn pause(&self) -> Result<(), PhoneError> {
        let mut state = self.state();
        match *state {
            State::Shut => Err(PhoneError::Closed { paused: false }),
            State::Open(_) | State::Paused => {
                *state = State::Paused;
                Ok(())
            }
        }
    }

    /// Opens the folder again.
    ///
    /// # Errors
    /// As `open`; `Closed` after `shutdown`.
    pub fn resume(&self) -> Result<(), PhoneError> {
        let mut state = self.state();
        match *state {
            State::Open(_) => Ok(()),
            State::Shut => Err(PhoneError::Closed { paused: false }),
            State::Paused => {
                *state = State::Open(Box::new(Daybook::open(&self.folder, &self.keeper)?));
                Ok(())
            }
        }
    }

    /// Ends it: files are let go of, the listener hears no more, every later call answers `Closed`. A second time
    /// does nothing.
    pub fn shutdown(&self) {
        *self.state() = State::Shut;
        *self.told.lock().unwrap_or_else(PoisonError::into_inner) = None;
    }
}
