//! A shop set back to an earlier state.

use super::{ExchangeError, memory};
use crate::ledger::Ledger;

/// Begins a new epoch: the shop was restored from a copy, and may lack what came after it. Phones notice the new
/// epoch at their next exchange and send again what the shop lost. Returns the epoch.
///
/// # Errors
/// As any write; and when the system has no randomness.
pub fn begin_epoch(ledger: &mut Ledger) -> Result<[u8; 8], ExchangeError> {
    memory::begin_epoch(ledger)
}

/// The epochs this folder knows, the newest last: at the shop its own lives, on a phone those it met.
///
/// # Errors
/// As any read.
pub fn epochs(ledger: &Ledger) -> Result<Vec<[u8; 8]>, ExchangeError> {
    Ok(memory::epochs(ledger.store())?)
}
