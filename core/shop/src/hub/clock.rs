//! The hub's clock: one of the two places of this crate that ask what time it is.

use chrono::{DateTime, TimeDelta, Utc};
use sumpbook_trade::Stamp;

/// Where the hub's time comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct HubClock {
    ahead: TimeDelta,
}

impl HubClock {
    /// This machine's clock.
    pub fn real() -> HubClock {
        HubClock::default()
    }

    /// A clock that stands at `at` now and runs on from there: for an invented fleet, whose days are past.
    pub fn beginning_at(at: Stamp) -> HubClock {
        HubClock { ahead: at.moment().with_timezone(&Utc) - utc_now() }
    }

    /// Now.
    pub fn now(self) -> Stamp {
        Stamp::from(utc_now() + self.ahead)
    }
}

#[allow(clippy::disallowed_methods, reason = "the edge: everything below takes the moment as an argument")]
fn utc_now() -> DateTime<Utc> {
    Utc::now()
}
