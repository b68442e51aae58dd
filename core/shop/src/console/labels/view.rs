//! What a door tag and a drum's label say, as the page and its JSON hold it.

use serde::Serialize;
use sumpbook_daybook::label::Label;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::OilFamily;

use super::Asked;
use crate::sheet::key;

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct DoorView {
    pub(super) fleet: String,
    pub(super) unit: String,
    /// The text of its code.
    pub(super) code: String,
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct DrumView {
    pub(super) fleet: String,
    /// A key of the texts.
    pub(super) family: String,
    pub(super) grade: String,
    /// The units it belongs in, by door number.
    pub(super) units: Vec<String>,
    /// The text of its code.
    pub(super) code: String,
}

pub(super) fn door(ledger: &Ledger, door: &str) -> Option<DoorView> {
    let fleet = ledger.fleet();
    let truck = fleet.truck_by_door(door)?;
    Some(DoorView {
        fleet: fleet.name.clone(),
        unit: truck.door.clone(),
        code: Label::of_unit(ledger.root().fleet, truck.truck, &truck.door).to_text(),
    })
}

pub(super) fn drum(ledger: &Ledger, asked: &Asked) -> Option<DrumView> {
    let fleet = ledger.fleet();
    let family = OilFamily::ALL.into_iter().find(|family| Some(&key(family)) == asked.family.as_ref())?;
    let grade = asked.grade.as_deref()?;
    let mut units: Vec<String> = fleet
        .trucks
        .values()
        .filter(|truck| {
            let profile = fleet.set_on(truck.truck).map(|set| &set.profile);
            profile.is_some_and(|p| p.oil_family == Some(family) && p.oil_grade.as_deref() == Some(grade))
        })
        .map(|truck| truck.door.clone())
        .collect();
    units.sort();
    if units.is_empty() {
        return None;
    }
    let code = Label::Drum { family: Some(family), grade: Some(grade.to_owned()) }.to_text();
    Some(DrumView { fleet: fleet.name.clone(), family: key(&family), grade: grade.to_owned(), units, code })
}
