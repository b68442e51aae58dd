//! Tables out: one for each kind of record, for whoever reckons with it elsewhere.
//!
//! Moments stand in UTC and as the yard's clock showed them, units stand in the heads, and every row says who, on which
//! device, how it came to be written down, and whether it is void. Unknown is blank. Words that a spreadsheet would
//! reckon with are kept from it.

mod campaigns;
mod cell;
mod entries;
mod lay_ups;
mod records;
mod standing;

use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::{Stamp, TruckId};

use crate::ShopError;
use crate::sheet::Yard;

pub use cell::{Cell, sheet_of, would_reckon};

/// A kind of table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Units as they stand.
    Units,
    /// Every task of every unit.
    Due,
    /// Makers' campaigns, one row a unit.
    Campaigns,
    /// Figures of meters.
    Readings,
    /// Services.
    Services,
    /// Fluids poured.
    Pours,
    /// Defects with every answer about them.
    Defects,
    /// Certificates.
    Certificates,
    /// Display notes and who acknowledged them.
    Acknowledgements,
    /// Pre-trips and end-of-day reports, one row an answer.
    Inspections,
    /// People.
    People,
    /// Phones.
    Phones,
    /// Lay-ups and the answers to their lists.
    LayUps,
    /// What does not count, and why.
    SetAside,
    /// Every entry about units, whatever its kind.
    AllRecords,
}

impl Kind {
    /// All of them.
    pub const ALL: [Kind; 15] = [
        Kind::Units,
        Kind::Due,
        Kind::Campaigns,
        Kind::Readings,
        Kind::Services,
        Kind::Pours,
        Kind::Defects,
        Kind::Certificates,
        Kind::Acknowledgements,
        Kind::Inspections,
        Kind::LayUps,
        Kind::People,
        Kind::Phones,
        Kind::SetAside,
        Kind::AllRecords,
    ];

    /// Its name, also of its file.
    pub fn name(self) -> &'static str {
        match self {
            Kind::Units => "units",
            Kind::Due => "due",
            Kind::Campaigns => "campaigns",
            Kind::Readings => "readings",
            Kind::Services => "services",
            Kind::Pours => "pours",
            Kind::Defects => "defects",
            Kind::Certificates => "certificates",
            Kind::Acknowledgements => "acknowledgements",
            Kind::Inspections => "inspections",
            Kind::LayUps => "lay-ups",
            Kind::People => "people",
            Kind::Phones => "phones",
            Kind::SetAside => "set-aside",
            Kind::AllRecords => "all-records",
        }
    }

    /// The kind of this name.
    pub fn named(name: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|kind| kind.name() == name)
    }
}

/// The units a table is about.
#[derive(Clone, Copy, Debug)]
pub enum Of<'a> {
    /// All of them.
    Fleet,
    /// These.
    Units(&'a [TruckId]),
}

impl Of<'_> {
    /// Whether this unit is among them.
    pub fn holds(self, truck: TruckId) -> bool {
        match self {
            Of::Fleet => true,
            Of::Units(trucks) => trucks.contains(&truck),
        }
    }
}

/// A table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Heads of its columns.
    pub heads: Vec<String>,
    /// Its rows.
    pub rows: Vec<Vec<Cell>>,
}

/// The key of a head's text: "Hours left (h)" is `csv-hours-left-h`.
fn head_key(head: &str) -> String {
    let plain = head.to_lowercase().replace('\'', "");
    let parts = plain.split(|c: char| !c.is_ascii_alphanumeric()).filter(|part| !part.is_empty());
    std::iter::once("csv").chain(parts).collect::<Vec<_>>().join("-")
}

impl Sheet {
    /// The same rows under heads in a language, by its tag.
    pub fn headed_in(&self, tag: &str) -> Sheet {
        let said = |head: &String| crate::console::say_in(tag, &head_key(head), &[]);
        Sheet { heads: self.heads.iter().map(said).collect(), rows: self.rows.clone() }
    }

    /// As a file; `mark` as in [`sheet_of`].
    pub fn to_csv(&self, mark: bool) -> Vec<u8> {
        sheet_of(&self.heads, self.rows.iter().cloned(), mark)
    }
}

/// A table of one kind as it is known now.
///
/// # Errors
/// As any read.
pub fn table(ledger: &Ledger, kind: Kind, of: Of<'_>, now: Stamp) -> Result<Sheet, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    match kind {
        Kind::Units => standing::of_units(ledger, &yard, of),
        Kind::Due => standing::due(ledger, &yard, of),
        Kind::Campaigns => campaigns::campaigns(ledger, &yard, of),
        Kind::Readings => standing::readings(ledger, &yard, of),
        Kind::Services => records::services(ledger, &yard, of),
        Kind::Pours => records::pours(ledger, &yard, of),
        Kind::Defects => standing::defects(ledger, &yard, of),
        Kind::Certificates => records::certificates(ledger, &yard, of),
        Kind::Acknowledgements => records::acknowledgements(ledger, &yard, of),
        Kind::Inspections => records::inspections(ledger, &yard, of),
        Kind::LayUps => lay_ups::of_sets(ledger, &yard, of),
        Kind::People => Ok(standing::people(ledger)),
        Kind::Phones => standing::phones(ledger, &yard),
        Kind::SetAside => standing::aside(ledger, &yard, of),
        Kind::AllRecords => records::all(ledger, &yard, of),
    }
}
