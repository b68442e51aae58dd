//! A compressor set that is put away, and what is done before it gives air again.
//!
//! A lay-up belongs to the set and goes with it to another truck. It locks the air and nothing else: the truck may
//! be driven by the rules of the road, and another set on it is not laid up. No clock stands still meanwhile: oil,
//! hoses and separator age on the shelf as well.
//!
//! Each lay-up opens a list. The air is free when every line of it was done or waived by somebody with a name, a
//! waived one with a reason. Where records disagree the worse stands: of two lay-ups the earlier moment and the
//! newer list; of two answers to a line both are kept, and "waived" is what is said.

mod fold;
mod list;
#[cfg(test)]
mod tests;

pub use fold::{LineAnswer, LineNow, LineStanding, PutAway, Returned, Returning, Spell, spells};
pub use list::{ReturnItem, ReturnList, ReturnListError};

use crate::defect::{DefectRef, LockOut, LockPart};

/// What a lay-up stands as where a lock-out names the item that locks.
pub const LAID_UP: &str = "laid-up";
/// The word beside it: the list before the return is not done.
pub const LIST_OPEN: &str = "return-list-open";

/// The lock-out of the air that a spell of lay-up is: from its own first moment to the last line of its list. No
/// certificate and no review ends it.
pub fn lock_out(spell: &Spell) -> LockOut {
    LockOut {
        part: LockPart::Air,
        since: spell.since,
        because: DefectRef { entry: spell.entry, item: LAID_UP.to_owned(), place: None },
        certified: None,
        ended: spell.returned.as_ref().map(|returned| returned.at),
    }
}

/// Whether a lock-out is a lay-up's.
pub fn is_lay_up(lock: &LockOut) -> bool {
    lock.because.item == LAID_UP
}
