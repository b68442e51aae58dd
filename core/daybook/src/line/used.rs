//! A unit that was used although it was locked, as it is recorded: with the reason in the driver's own words.

use sumpbook_trade::Fact;
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::record::{Drive, DriveWhat, StartAir};

/// The use that a lock of this part forbade: driving for the road, air for the rest.
pub fn fact_of_use(part: &LockPart, why: String) -> Fact {
    let in_spite_of_lock = Some(why);
    match part {
        LockPart::Road => Drive { what: DriveWhat::LeftYard, in_spite_of_lock }.into(),
        LockPart::Air | LockPart::Outlet(_) => StartAir { steps: Vec::new(), in_spite_of_lock }.into(),
    }
}
