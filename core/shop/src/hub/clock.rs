//! The hub's clock: one of the two places of this crate that ask what time it is.

use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

use chrono::{DateTime, TimeDelta, Utc};
use sumpbook_trade::Stamp;

/// Where the hub's time comes from. Copies tell the same time.
#[derive(Clone, Debug, Default)]
pub struct HubClock {
    /// Milliseconds ahead of this machine's clock.
    ahead: Arc<AtomicI64>,
}

impl HubClock {
    /// This machine's clock.
    pub fn real() -> HubClock {
        HubClock::default()
    }

    /// A clock that stands at `at` now and runs on from there: for an invented fleet, whose days are past.
    pub fn beginning_at(at: Stamp) -> HubClock {
        let clock = HubClock::default();
        clock.set(at);
        clock
    }

    /// Sets this clock and its copies: they stand at `at` now and run on from there.
    pub fn set(&self, at: Stamp) {
        let ahead = at.moment().with_timezone(&Utc) - utc_now();
        self.ahead.store(ahead.num_milliseconds(), Ordering::Relaxed);
    }

    /// Now.
    pub fn now(&self) -> Stamp {
        Stamp::from(utc_now() + TimeDelta::milliseconds(self.ahead.load(Ordering::Relaxed)))
    }
}

#[allow(clippy::disallowed_methods, reason = "the edge: everything below takes the moment as an argument")]
fn utc_now() -> DateTime<Utc> {
    Utc::now()
}
