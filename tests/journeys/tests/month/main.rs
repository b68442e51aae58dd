//! The worked month of Tern Hollow Water, lived once by real phones, then asked what was known when.
//!
//! Invented data; every outcome worked by rule (R1 to R12), by hand, and here exact.

mod first_week;
mod november;
mod opening;
mod second_week;

use std::sync::{Mutex, MutexGuard, OnceLock, PoisonError};

use sumpbook_journeys::Lived;

/// The month, lived once for all tests of this file.
fn month() -> MutexGuard<'static, Lived> {
    static MONTH: OnceLock<Mutex<Lived>> = OnceLock::new();
    // A test that failed while it read has changed nothing.
    MONTH.get_or_init(|| Mutex::new(Lived::month())).lock().unwrap_or_else(PoisonError::into_inner)
}
