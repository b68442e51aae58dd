//! Defects: who found what, what it locks, and how it ends (R4, R12).
//!
//! A defect is open until the shop certifies "repaired" or "repair not needed", and what it locks stays
//! locked until the next driver has reviewed that certificate: 49 CFR 396.11(a)(3) and 396.13. An answer
//! "OK" by somebody else closes nothing.

mod life;
mod lock;
mod outcome;
mod record;

#[cfg(test)]
mod tests;

pub use life::{Records, defects};
pub use lock::{LockOut, UseAgainst, lock_outs, uses_against};
pub use outcome::{Answer, Certified, Defect, DefectState, Defects, Repeat, Reviewed, Said};
pub use record::{Certificate, DefectRef, Finding, LockPart, OkAnswer, Review, Verdict};
