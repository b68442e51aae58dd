//! An end-of-day report under way: what the next driver will read.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Template;
use sumpbook_trade::record::{Answer, EndOfDay, SiteCondition, SiteDust};
use sumpbook_trade::{Entry, EntryId, Figure, PersonId, Stamp, Tenths, TruckId};

use super::{DraftError, Signing};
use crate::fleet::Fleet;
use crate::line::with_severity;

/// An end-of-day report under way. Nothing is chosen beforehand.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct EndOfDayDraft {
    /// The id its entry will have.
    pub id: EntryId,
    /// The unit.
    pub unit: TruckId,
    /// Who reports.
    pub person: PersonId,
    /// Since when.
    pub begun: Stamp,
    /// Defects of the day, truck or air.
    pub defects: Vec<Answer>,
    /// "None found" was said.
    pub none_found: bool,
    /// Compressor hours as read.
    pub hours: Option<Tenths>,
    /// Odometer as read.
    pub odometer: Option<Figure>,
    /// Whether brake tanks were drained.
    pub tanks_drained: Option<bool>,
    /// Words for the next driver.
    pub to_next: Option<String>,
    /// Display notes of the day.
    pub notes_seen: Vec<EntryId>,
    /// How dusty the site was: signed with the report, so that a slip of the thumb weighs no hour.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dust: Option<SiteDust>,
}

impl EndOfDayDraft {
    /// A report that has just begun.
    pub fn begin(id: EntryId, unit: TruckId, person: PersonId, begun: Stamp) -> EndOfDayDraft {
        EndOfDayDraft {
            id,
            unit,
            person,
            begun,
            defects: Vec::new(),
            none_found: false,
            hours: None,
            odometer: None,
            tanks_drained: None,
            to_next: None,
            notes_seen: Vec::new(),
            dust: None,
        }
    }

    /// "None found" was said; defects named before are taken back.
    pub fn none_found(&mut self) {
        self.none_found = true;
        self.defects.clear();
    }

    /// A defect was found; one named before for the same item and place is replaced.
    ///
    /// # Errors
    /// An answer that does not hold.
    pub fn defect(&mut self, template: &Template, answer: Answer) -> Result<(), DraftError> {
        let answer = with_severity(template, answer)?;
        self.none_found = false;
        self.defects.retain(|known| known.item != answer.item || known.place != answer.place);
        self.defects.push(answer);
        Ok(())
    }

    /// The report as an entry.
    ///
    /// # Errors
    /// Neither a defect nor "none found" was said.
    pub fn sign(&self, fleet: &Fleet, signing: &Signing) -> Result<Entry, DraftError> {
        if self.defects.is_empty() && !self.none_found {
            return Err(DraftError::DefectsNotSaid);
        }
        let fact = EndOfDay {
            defects: self.defects.clone(),
            none_found: self.none_found,
            odometer: self.odometer,
            tanks_drained: self.tanks_drained,
            to_next: self.to_next.clone(),
            notes_seen: self.notes_seen.clone(),
        };
        let mut entry = signing.entry(fleet, self.id, self.unit, self.person, fact.into());
        entry.hours = self.hours;
        Ok(entry)
    }

    /// What was said of the site, as an entry of its own under this id; none when nothing was.
    pub fn sign_site(&self, fleet: &Fleet, signing: &Signing, id: EntryId) -> Option<Entry> {
        let dust = self.dust?;
        Some(signing.entry(fleet, id, self.unit, self.person, SiteCondition { dust }.into()))
    }
}
