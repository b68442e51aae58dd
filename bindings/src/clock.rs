//! The clock at the edge. A test brings its own.

use std::sync::Arc;

use chrono::Utc;
use sumpbook_trade::Stamp;

use crate::error::PhoneError;

/// A clock of the shell's, for tests and for demonstrations.
#[uniffi::export(foreign)]
pub trait PhoneClock: Send + Sync {
    /// The moment now (RFC 3339).
    ///
    /// # Errors
    /// Then the machine's clock is asked.
    fn now(&self) -> Result<Stamp, PhoneError>;
}

/// The shell's clock, or the machine's.
#[derive(Clone)]
pub(crate) struct Clock(pub(crate) Option<Arc<dyn PhoneClock>>);

impl Clock {
    pub(crate) fn now(&self) -> Stamp {
        self.0.as_ref().and_then(|clock| clock.now().ok()).unwrap_or_else(machine)
    }
}

#[allow(clippy::disallowed_methods, reason = "the edge: everything below takes the moment as an argument")]
fn machine() -> Stamp {
    Stamp::from(Utc::now())
}
