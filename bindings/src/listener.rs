//! Telling the shell that something changed: coarse, and never more often than it listens.

use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::thread;

use crate::error::PhoneError;

/// What changed since the last call. A screen that may show it is asked for again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, uniffi::Record)]
pub struct ChangeSet {
    /// Entries: recorded here, or come from the shop.
    pub entries: bool,
    /// Drafts.
    pub drafts: bool,
    /// Photos.
    pub photos: bool,
    /// What the shop has of this phone's entries, or when it was heard.
    pub standing: bool,
    /// The fleet: people, units, programme.
    pub fleet: bool,
}

impl ChangeSet {
    pub(crate) const DRAFTS: ChangeSet = ChangeSet { drafts: true, ..ChangeSet::NOTHING };
    pub(crate) const PHOTOS: ChangeSet = ChangeSet { photos: true, ..ChangeSet::NOTHING };
    /// An entry was recorded: its draft is gone, and it is only here.
    pub(crate) const RECORDED: ChangeSet =
        ChangeSet { entries: true, drafts: true, standing: true, ..ChangeSet::NOTHING };
    /// News came: it may hold anything.
    pub(crate) const CAME: ChangeSet =
        ChangeSet { entries: true, standing: true, fleet: true, photos: true, drafts: false };
    const NOTHING: ChangeSet =
        ChangeSet { entries: false, drafts: false, photos: false, standing: false, fleet: false };

    fn and(self, more: ChangeSet) -> ChangeSet {
        ChangeSet {
            entries: self.entries || more.entries,
            drafts: self.drafts || more.drafts,
            photos: self.photos || more.photos,
            standing: self.standing || more.standing,
            fleet: self.fleet || more.fleet,
        }
    }
}

/// Hears of changes, on a thread of the core's: the shell hops to its own.
#[uniffi::export(foreign)]
pub trait ChangeListener: Send + Sync {
    /// Something changed. Whatever changes while this runs comes together in the next call.
    ///
    /// # Errors
    /// Nobody reads them.
    fn changed(&self, what: ChangeSet) -> Result<(), PhoneError>;
}

#[derive(Default)]
struct Waiting {
    what: Option<ChangeSet>,
    over: bool,
}

/// The way to one listener; dropped, its thread ends.
pub(crate) struct Told {
    shared: Arc<(Mutex<Waiting>, Condvar)>,
}

impl Told {
    /// Begins to tell a listener, on a thread of its own that ends with [`Told`].
    pub(crate) fn to(listener: Arc<dyn ChangeListener>) -> Result<Told, PhoneError> {
        let shared = Arc::new((Mutex::new(Waiting::default()), Condvar::new()));
        let theirs = Arc::clone(&shared);
        thread::Builder::new()
            .name("sumpbook-changes".to_owned())
            .spawn(move || tell(&theirs, listener.as_ref()))
            .map_err(|error| PhoneError::Unexpected { reason: error.to_string() })?;
        Ok(Told { shared })
    }

    pub(crate) fn of(&self, what: ChangeSet) {
        let (waiting, bell) = self.shared.as_ref();
        let mut waiting = waiting.lock().unwrap_or_else(PoisonError::into_inner);
        waiting.what = Some(waiting.what.map_or(what, |before| before.and(what)));
        bell.notify_one();
    }
}

impl Drop for Told {
    fn drop(&mut self) {
        let (waiting, bell) = self.shared.as_ref();
        waiting.lock().unwrap_or_else(PoisonError::into_inner).over = true;
        bell.notify_all();
    }
}

fn tell((waiting, bell): &(Mutex<Waiting>, Condvar), listener: &dyn ChangeListener) {
    loop {
        let mut now = waiting.lock().unwrap_or_else(PoisonError::into_inner);
        while now.what.is_none() && !now.over {
            now = bell.wait(now).unwrap_or_else(PoisonError::into_inner);
        }
        if now.over {
            return;
        }
        let what = now.what.take().unwrap_or_default();
        // Never called while something is held: the listener may call the phone.
        drop(now);
        let _ = listener.changed(what);
    }
}

#[cfg(test)]
mod tests {
    use std::sync::mpsc;
    use std::time::Duration;

    use super::*;

    struct Slow(mpsc::SyncSender<ChangeSet>);

    impl ChangeListener for Slow {
        fn changed(&self, what: ChangeSet) -> Result<(), PhoneError> {
            // Waits until the test takes it.
            self.0.send(what).map_err(|error| PhoneError::Unexpected { reason: error.to_string() })
        }
    }

    #[test]
    fn what_changes_while_the_listener_is_busy_comes_as_one() {
        let (sent, got) = mpsc::sync_channel(0);
        let told = Told::to(Arc::new(Slow(sent))).unwrap();
        told.of(ChangeSet::PHOTOS);
        assert_eq!(got.recv_timeout(Duration::from_secs(5)).unwrap(), ChangeSet::PHOTOS);
        told.of(ChangeSet::DRAFTS);
        // The thread may stand in the call for the drafts already; two more join in one.
        thread::sleep(Duration::from_millis(50));
        for _ in 0..100 {
            told.of(ChangeSet::RECORDED);
        }
        let first = got.recv_timeout(Duration::from_secs(5)).unwrap();
        let second = got.recv_timeout(Duration::from_secs(5)).unwrap();
        assert_eq!((first, second), (ChangeSet::DRAFTS, ChangeSet::RECORDED));
        assert!(got.recv_timeout(Duration::from_millis(100)).is_err(), "a hundred changes, one call");
        drop(told);
        assert!(got.recv_timeout(Duration::from_secs(5)).is_err(), "and none when it is over");
    }
}
