//! When a name comes off the phone by itself.

use sumpbook_trade::{FactKind, PersonId, Stamp};

use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};

/// Whether a person's shift is over, whose name has stood on this phone since `since`: an end-of-day report was signed
/// by that name since then and nothing of theirs is under way, or a pre-trip of that moment would no longer cover.
///
/// # Errors
/// As reading the store.
pub fn shift_is_over(
    ledger: &Ledger,
    person: PersonId,
    since: Stamp,
    now: Stamp,
) -> Result<bool, LedgerError> {
    if now.moment().signed_duration_since(since.moment()) >= ledger.fleet().numbers.covers() {
        return Ok(true);
    }
    if ledger.drafts()?.drafts.iter().any(|draft| draft.person() == person) {
        return Ok(false);
    }
    let fleet = ledger.fleet();
    let (from, to) = (day_number(fleet.yard_day(since)), day_number(fleet.yard_day(now)));
    let ended = ledger.store().truth().facts_of_days(from, to)?.into_iter().any(|fact| {
        FactKind::from_code(fact.kind) == FactKind::EndOfDay
            && fact.person == Some(person)
            && fact.judged == Judged::Counts
            && fact.at_ms >= since.unix_ms()
    });
    Ok(ended)
}
