//! An entry that belongs to another unit: void here, anew there.

use sumpbook_trade::record::{OtherUnit, Source};
use sumpbook_trade::{Entry, EntryId, Fact, TruckId};

use super::Signing;
use crate::fleet::Fleet;

/// Whether an entry can be moved as it stands: it says what was read, poured or done, and names nothing else of its
/// unit. A walk and a report of the day are not moved: what was looked at is looked at again, on the truck itself.
pub fn may_be_moved(fact: &Fact) -> bool {
    match fact {
        Fact::HourReading(_)
        | Fact::LevelCheck(_)
        | Fact::TopUp(_)
        | Fact::WaterDrained(_)
        | Fact::StockCounted(_)
        | Fact::StartAir(_)
        | Fact::StopAir(_)
        | Fact::RunningNumbers(_)
        | Fact::SiteCondition(_)
        | Fact::OilCondition(_)
        | Fact::Drive(_)
        | Fact::Happened(_) => true,
        Fact::DisplayNote(note) => note.gone_again.is_none(),
        _ => false,
    }
}

/// The two entries that move one: the same fact anew in the other unit's book, of the moment it was first said, and
/// in this unit's book that the first one is void.
///
/// `anew` and `void` are the ids they get. Both carry whoever signs now.
pub fn moved(
    fleet: &Fleet,
    wrong: &Entry,
    to: TruckId,
    signing: &Signing,
    (anew, void): (EntryId, EntryId),
) -> [Entry; 2] {
    let again = Entry {
        id: anew,
        unit: Some(to),
        set: fleet.set_on(to).map(|set| set.set),
        pin_given: signing.pin_given,
        trainer: signing.trainer,
        trainer_pin_given: signing.trainer_pin_given,
        source: Source::Phone,
        ..wrong.clone()
    };
    let fact = OtherUnit { target: wrong.id, unit: to, anew };
    let void = Entry {
        id: void,
        at: signing.at,
        clock_off_ms: signing.clock_off_ms,
        pin_given: signing.pin_given,
        trainer: signing.trainer,
        trainer_pin_given: signing.trainer_pin_given,
        hours: None,
        note: None,
        source: Source::Phone,
        fact: fact.into(),
        ..wrong.clone()
    };
    [again, void]
}
