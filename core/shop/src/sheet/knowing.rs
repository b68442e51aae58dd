//! Who knew of a lock-out, and when: from the graph and the exchange log, never from clocks.

use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::HeldEntry;
use sumpbook_trade::defect::{Answer, Defect, LockOut, Said};
use sumpbook_trade::{EntryId, Stamp};

use super::Yard;
use crate::ShopError;

/// The answer that opened a lock-out: the first that locks this part, which may be a later one than the
/// defect's first finding.
pub(super) fn opening<'a>(defects: &'a [Defect], lock: &LockOut) -> Option<&'a Answer> {
    let defect = defects.iter().find(|defect| defect.reference == lock.because)?;
    let locks = |answer: &&Answer| match &answer.said {
        Said::Defect { parts, .. } => answer.at == lock.since && parts.contains(&lock.part),
        Said::Ok => false,
    };
    defect.answers.iter().find(locks)
}

/// The entry of this id as it first came.
pub(super) fn first_held(ledger: &Ledger, entry: uuid::Uuid) -> Result<Option<HeldEntry>, ShopError> {
    Ok(ledger.store().truth().by_id(EntryId(entry))?.into_iter().next())
}

/// When the shop knew of an entry.
pub(super) fn shop_knew(yard: &Yard, held: &HeldEntry) -> Stamp {
    yard.stamp_ms(held.received_ms)
}

/// When a phone held an entry: its own at once, another's at the exchange that told it.
pub(super) fn phone_knew(
    ledger: &Ledger,
    yard: &Yard,
    phone: KeyId,
    held: &HeldEntry,
) -> Result<Option<Stamp>, ShopError> {
    if held.row.actor.key() == phone {
        return Ok(ledger.store().truth().fact(held.n)?.map(|fact| yard.stamp_ms(fact.at_ms)));
    }
    let told = ledger.store().told_at(phone.0, held.n, yard.cut_ms)?;
    Ok(told.map(|ms| yard.stamp_ms(ms)))
}
