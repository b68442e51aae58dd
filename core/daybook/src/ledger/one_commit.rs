//! Several writes under one commit.

use super::{Ledger, LedgerError};
use crate::gate::Actor;

impl Ledger {
    /// Everything `work` writes becomes durable at once when it returns `Ok`, and nothing of it when it returns
    /// `Err`. Within another `in_one_commit` it is a part: it goes back alone, and is durable only with the whole.
    ///
    /// A hub answers many parcels so: the whole around all, a part around each, and no answer leaves before the
    /// whole has returned `Ok`.
    ///
    /// # Errors
    /// What `work` returned; and when the whole could not be made durable, then nothing of it is.
    pub fn in_one_commit<T, E: From<LedgerError>>(
        &mut self,
        work: impl FnOnce(&mut Ledger) -> Result<T, E>,
    ) -> Result<T, E> {
        let within = self.store.begin_all().map_err(LedgerError::from)?;
        let done = work(self);
        let ended = self.store.end_all(within, done.is_ok()).map_err(LedgerError::from);
        if done.is_err() || ended.is_err() {
            // Keys, the fleet and the actor's count may have been learnt from entries that did not stay.
            self.knows.actor = Actor::new(self.knows.own.id()).map_err(LedgerError::from)?;
            self.knows.load_fleet(&self.store.truth())?;
        }
        let done = done?;
        self.noted(ended)?;
        Ok(done)
    }
}
