//! A maker's campaign: a paper names serials, and each such unit has one piece of work to be done once, by a day.
//!
//! Common practice, no source: makers write such papers for a range of serials, and a fleet that does not look its own
//! serials up finds out from the failure. So every unit is compared by itself, whenever it is registered or numbered
//! anew, and one whose serial cannot be compared is told by name to be looked at. The maker's paper comes first.

mod hit;
mod lock;
mod serial;
mod state;

#[cfg(test)]
mod tests;

pub use hit::{Hit, LookWhy, hit};
pub use lock::{CAMPAIGN_ITEM, Version, lock_outs};
pub use serial::{RangeError, Serial, check};
pub use state::{CampaignStands, clock, done, stands};
