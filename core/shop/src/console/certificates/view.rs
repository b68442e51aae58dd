//! The queue as the page and its JSON hold it: the one to sign, and what waits after it.

use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::{EntryId, Stamp};

use crate::ShopError;
use crate::sheet::{DefectRow, Yard, to_certify};
use crate::slip::{Slip, slip};

/// What is asked of the page.
#[derive(Clone, Debug, Default, Deserialize)]
pub(super) struct Asked {
    /// Of this unit only.
    pub(super) unit: Option<String>,
    /// Of this item, with its place behind a slash.
    pub(super) item: Option<String>,
    /// The certificate that was just signed.
    pub(super) signed: Option<EntryId>,
}

/// The page.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Queue {
    /// As known at.
    pub(super) known_at: Stamp,
    /// What was just signed: its slip can be printed.
    pub(super) signed: Option<Slip>,
    /// How many wait.
    pub(super) count: usize,
    /// The one to sign; none when none waits.
    pub(super) now: Option<DefectRow>,
    /// What was asked for waits no longer.
    pub(super) gone: bool,
    /// The others, worst first.
    pub(super) rest: Vec<DefectRow>,
}

pub(super) fn read(ledger: &Ledger, now: Stamp, asked: &Asked) -> Result<Queue, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let mut rest = to_certify(ledger, &yard)?;
    let count = rest.len();
    let is_asked = |row: &DefectRow| {
        asked.unit.as_deref().is_none_or(|unit| row.unit.eq_ignore_ascii_case(unit.trim()))
            && asked.item.as_deref().is_none_or(|item| named(row) == item.trim())
    };
    let place = rest.iter().position(is_asked);
    let this = place.map(|place| rest.remove(place));
    let signed = match asked.signed {
        Some(entry) => slip(ledger, entry, now)?,
        None => None,
    };
    let gone = this.is_none() && (asked.unit.is_some() || asked.item.is_some());
    Ok(Queue { known_at: yard.stamp(now.moment()), signed, count, now: this, gone, rest })
}

/// `item`, or `item/place`: as a certificate names it.
pub(super) fn named(row: &DefectRow) -> String {
    match &row.place {
        Some(place) => format!("{}/{place}", row.item),
        None => row.item.clone(),
    }
}
