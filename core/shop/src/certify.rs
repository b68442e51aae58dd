//! A certificate for a defect: repaired, or repair not needed.

use sumpbook_trade::defect::{Defect, DefectState};
use sumpbook_trade::record::{Certificate, DefectName, RepairVerdict};
use sumpbook_trade::{EntryId, TruckId};

use crate::{Hand, Shop, ShopError};

/// Certifies the open defect of a unit named by its item, or `item/place` where it has several places. What
/// it locks stays locked until the next driver's review. Returns the certificate's entry.
///
/// # Errors
/// When nobody is named, no words are given, or the unit has no such open defect: it then says what is open.
pub fn certify(
    shop: &mut Shop,
    truck: TruckId,
    item: &str,
    verdict: RepairVerdict,
    words: &str,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    if words.trim().is_empty() {
        return Err(ShopError::NoWords);
    }
    let defect = open_defect(shop, truck, item)?;
    let certificate = Certificate { defect, verdict, words: words.trim().to_owned() };
    shop.write(Some(truck), certificate.into(), None, hand)
}

/// The open defect of a unit named by its item, or `item/place`.
///
/// # Errors
/// When the unit has none of that name, or several by the item alone: it then says what is open.
pub(crate) fn open_defect(shop: &Shop, truck: TruckId, item: &str) -> Result<DefectName, ShopError> {
    let state = shop.ledger.unit_state(truck)?;
    let asked = item.trim();
    let open: Vec<&Defect> =
        state.defects.iter().filter(|defect| defect.state == DefectState::Open).collect();
    let exact: Vec<&&Defect> = open.iter().filter(|defect| name(defect) == asked).collect();
    let by_item: Vec<&&Defect> = open.iter().filter(|defect| defect.item == asked).collect();
    let found = match (exact.as_slice(), by_item.as_slice()) {
        ([one], _) | ([], [one]) => one,
        _ => {
            let unit = shop.ledger.fleet().door(truck);
            let open = told(&state.defects, &open);
            return Err(ShopError::NoSuchDefect { unit, item: asked.to_owned(), open });
        }
    };
    Ok(DefectName {
        entry: EntryId(found.reference.entry),
        item: found.item.clone(),
        place: found.place.clone(),
    })
}

/// `item`, or `item/place`.
fn name(defect: &Defect) -> String {
    match &defect.place {
        Some(place) => format!("{}/{place}", defect.item),
        None => defect.item.clone(),
    }
}

fn told(all: &[Defect], open: &[&Defect]) -> String {
    let names: Vec<String> = open.iter().map(|defect| name(defect)).collect();
    let mut said =
        if names.is_empty() { "Nothing is open.".to_owned() } else { format!("Open: {}.", names.join(", ")) };
    let waits = |defect: &&Defect| matches!(defect.state, DefectState::AwaitingReview { .. });
    let waiting: Vec<String> = all.iter().filter(waits).map(name).collect();
    if !waiting.is_empty() {
        said.push_str(&format!(" Certified and awaiting the driver's review: {}.", waiting.join(", ")));
    }
    said
}
