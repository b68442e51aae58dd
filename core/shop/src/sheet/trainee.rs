//! Walks that a trainee signed alone: the trainer signs with him until he has learnt it.

use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::record::{Role, Source};
use sumpbook_trade::{Entry, EntryId, Fact, PersonId};
use uuid::Uuid;

use crate::ShopError;

/// Whether a walk was signed by somebody who is learning, with no trainer named. Of a page of paper and an old binder
/// nobody knows who stood beside.
pub(crate) fn signed_alone(fleet: &Fleet, entry: &Entry) -> bool {
    let known = !matches!(entry.source, Source::Paper | Source::BroughtIn);
    let walk = matches!(entry.fact, Fact::PreTripSection(_));
    walk && known && entry.trainer.is_none() && entry.person.is_some_and(|person| learns(fleet, person))
}

/// The same of a signature by its entry's id, which is read only when its person is learning.
pub(super) fn alone(ledger: &Ledger, person: Uuid, entry: Uuid) -> Result<bool, ShopError> {
    if !learns(ledger.fleet(), PersonId(person)) {
        return Ok(false);
    }
    let held = ledger.store().truth().by_id(EntryId(entry))?;
    let read = held.iter().min_by_key(|held| held.row.hash);
    let read = read.and_then(|held| Entry::from_payload(&held.row.payload).ok());
    Ok(read.is_some_and(|entry| signed_alone(ledger.fleet(), &entry)))
}

fn learns(fleet: &Fleet, person: PersonId) -> bool {
    fleet.people.get(&person).is_some_and(|person| person.role == Role::Trainee)
}
