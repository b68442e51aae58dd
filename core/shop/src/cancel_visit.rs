//! A visit that is called off.

use sumpbook_daybook::state::PlannedNow;
use sumpbook_trade::record::{Verdict, VisitPlan};
use sumpbook_trade::{EntryId, TruckId};

use crate::settle::decide;
use crate::{Hand, Shop, ShopError};

/// Calls a planned visit off, by name and for a reason: the shop decides that its entry does not count, which
/// programs of before this one understand. What it had moved would stand on its former day again; that is called off
/// with it, and what else was planned for that day stays planned.
///
/// # Errors
/// When nobody is named, no reason is given, or the unit has no such visit.
pub fn cancel_visit(
    shop: &mut Shop,
    truck: TruckId,
    visit: EntryId,
    why: &str,
    hand: &Hand,
) -> Result<(), ShopError> {
    let planned = shop.ledger.unit_state(truck)?.planned;
    let Some(gone) = planned.into_iter().find(|known| known.entry == visit) else {
        return Err(ShopError::NoSuchVisit(shop.ledger.fleet().door(truck)));
    };
    let mut next = Some(gone.clone());
    while let Some(known) = next {
        if let Some(kept) = without(&known, &gone) {
            shop.write(Some(truck), kept.into(), None, hand)?;
        }
        decide(shop, &[known.entry], Verdict::DoNotUse, why, hand)?;
        let planned = shop.ledger.unit_state(truck)?.planned;
        // Each turn leaves one more entry out, so there is a last one.
        next = planned.into_iter().find(|other| other.entry != known.entry && shares(other, &gone));
    }
    Ok(())
}

/// What of a visit is not called off; none when nothing is.
fn without(known: &PlannedNow, gone: &PlannedNow) -> Option<VisitPlan> {
    let tasks: Vec<_> = known.tasks.iter().filter(|task| !gone.tasks.contains(task)).cloned().collect();
    let defects: Vec<_> = known.defects.iter().filter(|of| !gone.defects.contains(of)).cloned().collect();
    let kept = !tasks.is_empty() || !defects.is_empty();
    let (day, where_and_who) = (known.day, known.where_and_who.clone());
    kept.then_some(VisitPlan { tasks, day, where_and_who, defects })
}

fn shares(other: &PlannedNow, gone: &PlannedNow) -> bool {
    other.tasks.iter().any(|task| gone.tasks.contains(task))
        || other.defects.iter().any(|of| gone.defects.contains(of))
}
