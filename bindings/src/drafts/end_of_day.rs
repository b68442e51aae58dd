//! An end-of-day report, from its beginning to its signature.

use sumpbook_daybook::draft::{Draft, EndOfDayDraft};
use sumpbook_daybook::phone::Daybook;
use sumpbook_trade::record::{Answer, SiteDust};
use sumpbook_trade::{EntryId, Figure, PersonId, Stamp, Tenths, TruckId};

use super::{Signed, end_of_day, fresh, keep, record, signing};
use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;

/// What is said in an end-of-day report beside its defects. What is given replaces what was said before; what is left
/// out stays.
#[derive(Clone, Debug, Default, PartialEq, uniffi::Record)]
pub struct EndOfDaySaid {
    /// Compressor hours as read.
    #[uniffi(default)]
    pub hours: Option<Tenths>,
    /// Odometer as read.
    #[uniffi(default)]
    pub odometer: Option<Figure>,
    /// Whether brake tanks were drained.
    #[uniffi(default)]
    pub tanks_drained: Option<bool>,
    /// Words for the next driver.
    #[uniffi(default)]
    pub to_next: Option<String>,
    /// Display notes seen today.
    #[uniffi(default)]
    pub notes_seen: Option<Vec<EntryId>>,
    /// How dusty the site was.
    #[uniffi(default)]
    pub dust: Option<SiteDust>,
}

#[uniffi::export]
impl Phone {
    /// Begins an end-of-day report: nothing is chosen.
    ///
    /// # Errors
    /// As any write.
    pub fn begin_end_of_day(&self, unit: TruckId, person: PersonId) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let id = fresh(now)?;
            keep(book, &Draft::EndOfDay(EndOfDayDraft::begin(id, unit, person, now)), now)?;
            Ok(id)
        })
    }

    /// "None found" was said; defects named before are taken back.
    ///
    /// # Errors
    /// `Draft`; as any write.
    pub fn none_found(&self, draft: EntryId) -> Result<(), PhoneError> {
        self.reporting(draft, |_, report, _| {
            report.none_found();
            Ok(())
        })
    }

    /// A defect was found; one named before for the same item and place is replaced.
    ///
    /// # Errors
    /// `Draft` when the answer does not hold; as any write.
    pub fn defect_found(&self, draft: EntryId, defect: Answer) -> Result<(), PhoneError> {
        self.reporting(draft, |book, report, now| {
            let checklist = book.ledger().checklist_of(report.unit, now)?;
            Ok(report.defect(&checklist, defect)?)
        })
    }

    /// Says something else of the day.
    ///
    /// # Errors
    /// `Draft`; as any write.
    pub fn say_end_of_day(&self, draft: EntryId, said: EndOfDaySaid) -> Result<(), PhoneError> {
        self.reporting(draft, |_, report, _| {
            report.hours = said.hours.or(report.hours);
            report.odometer = said.odometer.or(report.odometer);
            report.tanks_drained = said.tanks_drained.or(report.tanks_drained);
            report.to_next = said.to_next.or(report.to_next.take());
            report.dust = said.dust.or(report.dust);
            if let Some(seen) = said.notes_seen {
                report.notes_seen = seen;
            }
            Ok(())
        })
    }

    /// Signs an end-of-day report.
    ///
    /// # Errors
    /// `Draft` when neither defects nor "none found" was said; then the draft is still there.
    pub fn sign_end_of_day(&self, draft: EntryId, signed: Signed) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::RECORDED, |book, now| {
            let signing = signing(book, &signed, now)?;
            let (report, fleet) = (end_of_day(book, draft)?, book.ledger().fleet());
            let entry = report.sign(fleet, &signing)?;
            let site = report.sign_site(fleet, &signing, fresh(now)?);
            record(book, site.into_iter().chain([entry]).collect(), now)?;
            Ok(draft)
        })
    }
}

impl Phone {
    fn reporting(
        &self,
        draft: EntryId,
        change: impl FnOnce(&Daybook, &mut EndOfDayDraft, Stamp) -> Result<(), PhoneError>,
    ) -> Result<(), PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let mut report = end_of_day(book, draft)?;
            change(book, &mut report, now)?;
            keep(book, &Draft::EndOfDay(report), now)
        })
    }
}
