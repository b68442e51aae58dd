//! What a signature adds to a draft.

use sumpbook_trade::record::Source;
use sumpbook_trade::{Entry, EntryId, Fact, PersonId, Stamp, TruckId};

use crate::fleet::Fleet;

/// A person's signature on this phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Signing {
    /// When, by this phone's clock.
    pub at: Stamp,
    /// Hub time minus that clock in milliseconds, as last learnt.
    pub clock_off_ms: Option<i64>,
    /// The person's own PIN was given.
    pub pin_given: bool,
    /// The trainer, while the person is learning.
    pub trainer: Option<PersonId>,
    /// The trainer's own PIN was given.
    pub trainer_pin_given: bool,
}

impl Signing {
    /// The entry of a draft under its own id.
    pub(super) fn entry(
        &self,
        fleet: &Fleet,
        id: EntryId,
        unit: TruckId,
        person: PersonId,
        fact: Fact,
    ) -> Entry {
        Entry {
            id,
            unit: Some(unit),
            set: fleet.set_on(unit).map(|set| set.set),
            at: self.at,
            clock_off_ms: self.clock_off_ms,
            person: Some(person),
            trainer: self.trainer,
            pin_given: self.pin_given,
            trainer_pin_given: self.trainer_pin_given,
            hours: None,
            note: None,
            source: Source::Phone,
            fact,
        }
    }
}
