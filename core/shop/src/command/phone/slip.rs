//! `phone DIR slip`: a certificate's slip typed in where no network reaches.

use sumpbook_daybook::phone::Daybook;
use sumpbook_trade::record::{DefectName, RepairVerdict};
use sumpbook_trade::{EntryId, PersonId, Stamp, TruckId};

use crate::ShopError;
use crate::command::CommandError;
use crate::command::out::Said;

/// What the slip says.
pub(super) struct Asked<'a> {
    pub(super) code: &'a str,
    pub(super) unit: &'a str,
    pub(super) item: &'a str,
    pub(super) place: Option<&'a str>,
    pub(super) person: Option<&'a str>,
}

/// Takes the code for the open defect of this item.
pub(super) fn take(phone: &mut Daybook, asked: &Asked<'_>, now: Stamp) -> Result<Said, CommandError> {
    let (truck, who) = named(phone, asked)?;
    let defect = finding(phone, truck, asked)?;
    let verdict = phone
        .accept_slip(asked.code, truck, &defect, who, now)
        .map_err(|why| CommandError::Asked(why.to_string()))?;
    let said = match verdict {
        RepairVerdict::Repaired => "repaired",
        RepairVerdict::NotNeeded => "repair not needed",
    };
    let text = format!(
        "{} {}: certified, {said}, by the shop's slip. It awaits a driver's review on this phone; the lock ends \
         when the certificate itself has come and been reviewed.",
        asked.unit, asked.item
    );
    let json = serde_json::json!({
        "unit": asked.unit, "item": asked.item, "place": asked.place, "verdict": verdict, "state": "awaiting-review",
    });
    Said::new(text, &json)
}

fn named(phone: &Daybook, asked: &Asked<'_>) -> Result<(TruckId, Option<PersonId>), CommandError> {
    let fleet = phone.ledger().fleet();
    let doors = || fleet.trucks.values().map(|t| t.door.as_str()).collect::<Vec<_>>().join(", ");
    let truck = fleet
        .truck_by_door(asked.unit)
        .ok_or_else(|| ShopError::UnknownUnit { door: asked.unit.to_owned(), known: doors() })?;
    let people = || fleet.people.values().map(|p| p.name.as_str()).collect::<Vec<_>>().join(", ");
    let person = asked.person.map(|name| {
        let unknown = || ShopError::UnknownPerson { name: name.to_owned(), known: people() };
        fleet.person_by_name(name).map(|person| person.person).ok_or_else(unknown)
    });
    Ok((truck.truck, person.transpose()?))
}

/// The open defect's own name: a slip is about a finding, and the item says which.
fn finding(phone: &Daybook, truck: TruckId, asked: &Asked<'_>) -> Result<DefectName, CommandError> {
    let state = phone.ledger().unit_state(truck)?;
    let of_item = |item: &str, place: Option<&str>| {
        item == asked.item && (asked.place.is_none() || place == asked.place)
    };
    let mut found = state.defects.iter().filter(|defect| of_item(&defect.item, defect.place.as_deref()));
    let Some(defect) = found.next() else {
        return Err(CommandError::Asked(format!(
            "nothing is on record of '{}' on {}. Nothing was changed. `show unit` names what is locked.",
            asked.item, asked.unit
        )));
    };
    if found.next().is_some() {
        return Err(CommandError::Asked(format!(
            "'{}' on {} is on record at more than one place. Nothing was changed. Say which: --place left",
            asked.item, asked.unit
        )));
    }
    Ok(DefectName {
        entry: EntryId(defect.reference.entry),
        item: defect.item.clone(),
        place: defect.place.clone(),
    })
}
