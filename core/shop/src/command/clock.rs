//! The clock at the edge: the one place where the command asks what time it is.

use chrono::{DateTime, Utc};
use sumpbook_trade::Stamp;

/// Now, by this machine's clock.
#[allow(clippy::disallowed_methods, reason = "the edge: everything below takes the moment as an argument")]
pub(super) fn now() -> Stamp {
    Stamp::from(Utc::now())
}

/// The same moment as the yard's wall clock has it.
pub(super) fn in_zone(at: Stamp, zone: chrono_tz::Tz) -> Stamp {
    let there: DateTime<chrono_tz::Tz> = at.moment().with_timezone(&zone);
    Stamp::new(there.fixed_offset())
}
