//! What is begun and not signed. Every call keeps the draft before it returns, so a killed app goes on where it was.

mod end_of_day;
mod pre_trip;
mod top_up;

use sumpbook_daybook::draft::{Draft, EndOfDayDraft, PreTripDraft, Signing, TopUpDraft};
use sumpbook_daybook::ledger::new_id;
use sumpbook_daybook::phone::Daybook;
use sumpbook_trade::{Entry, EntryId, PersonId, Stamp, TruckId};

pub use end_of_day::EndOfDaySaid;
pub use top_up::TopUpSaid;

use crate::error::{DraftKind, PhoneError};
use crate::listener::ChangeSet;
use crate::phone::Phone;

/// A signature.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct Signed {
    /// The person's own PIN was given.
    pub pin_given: bool,
    /// The trainer, while the person is learning.
    #[uniffi(default)]
    pub trainer: Option<PersonId>,
    /// The trainer's own PIN was given.
    #[uniffi(default)]
    pub trainer_pin_given: bool,
}

/// Something begun.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct DraftRow {
    /// The id its entry will have.
    pub id: EntryId,
    /// `pre-trip`, `top-up`, `end-of-day` or `steps`.
    pub kind: String,
    /// The unit.
    pub unit: TruckId,
    /// Who began it.
    pub person: PersonId,
}

/// The drafts of this phone.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct DraftsKept {
    /// Oldest change first.
    pub drafts: Vec<DraftRow>,
    /// Drafts of a newer version of this program: kept, and not for this one to touch.
    pub unreadable: Vec<EntryId>,
}

#[uniffi::export]
impl Phone {
    /// Every draft on this phone.
    ///
    /// # Errors
    /// As any read.
    pub fn drafts(&self) -> Result<DraftsKept, PhoneError> {
        self.read(|book, _| {
            let kept = book.ledger().drafts()?;
            let row = |draft: &Draft| DraftRow {
                id: draft.id(),
                kind: kind(draft).to_owned(),
                unit: draft.unit(),
                person: draft.person(),
            };
            Ok(DraftsKept { drafts: kept.drafts.iter().map(row).collect(), unreadable: kept.unreadable })
        })
    }

    /// A draft as JSON, all of it.
    ///
    /// # Errors
    /// `Draft` when there is none, or it is of a newer version.
    pub fn draft_json(&self, draft: EntryId) -> Result<String, PhoneError> {
        self.read(|book, _| {
            let draft = any(book, draft)?;
            serde_json::to_string(&draft).map_err(|e| PhoneError::Unexpected { reason: e.to_string() })
        })
    }

    /// Keeps a draft given as JSON, as `draft_json` gives it. One of the same id is replaced.
    ///
    /// # Errors
    /// `Entry` when it does not read as a draft; as any write.
    pub fn keep_draft_json(&self, json: String) -> Result<(), PhoneError> {
        let draft: Draft =
            serde_json::from_str(&json).map_err(|e| PhoneError::Entry { reason: e.to_string() })?;
        self.change(ChangeSet::DRAFTS, |book, now| keep(book, &draft, now))
    }

    /// Gives a draft up.
    ///
    /// # Errors
    /// As any write.
    pub fn drop_draft(&self, draft: EntryId) -> Result<(), PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, _| Ok(book.ledger_mut().give_up_draft(draft)?))
    }
}

fn kind(draft: &Draft) -> &'static str {
    match draft {
        Draft::PreTrip(_) => "pre-trip",
        Draft::TopUp(_) => "top-up",
        Draft::EndOfDay(_) => "end-of-day",
        Draft::Steps(_) => "steps",
    }
}

fn refused(kind: DraftKind, reason: String) -> PhoneError {
    PhoneError::Draft { kind, item: None, stop: None, at: None, left: 0, reason }
}

fn any(book: &Daybook, id: EntryId) -> Result<Draft, PhoneError> {
    match book.ledger().draft(id)? {
        Some(draft) => Ok(draft),
        None if book.ledger().store().draft(id)?.is_some() => {
            Err(refused(DraftKind::Newer, format!("a newer version began the draft {id}")))
        }
        None => Err(not_there(id)),
    }
}

fn not_there(id: EntryId) -> PhoneError {
    refused(DraftKind::NotThere, format!("there is no such draft here: {id}"))
}

/// The pre-trip of this id.
pub(crate) fn pre_trip(book: &Daybook, id: EntryId) -> Result<PreTripDraft, PhoneError> {
    match any(book, id)? {
        Draft::PreTrip(draft) => Ok(draft),
        Draft::TopUp(_) | Draft::EndOfDay(_) | Draft::Steps(_) => Err(not_there(id)),
    }
}

/// The top-up of this id.
pub(crate) fn top_up(book: &Daybook, id: EntryId) -> Result<TopUpDraft, PhoneError> {
    match any(book, id)? {
        Draft::TopUp(draft) => Ok(draft),
        Draft::PreTrip(_) | Draft::EndOfDay(_) | Draft::Steps(_) => Err(not_there(id)),
    }
}

/// The end-of-day report of this id.
pub(crate) fn end_of_day(book: &Daybook, id: EntryId) -> Result<EndOfDayDraft, PhoneError> {
    match any(book, id)? {
        Draft::EndOfDay(draft) => Ok(draft),
        Draft::PreTrip(_) | Draft::TopUp(_) | Draft::Steps(_) => Err(not_there(id)),
    }
}

pub(crate) fn keep(book: &mut Daybook, draft: &Draft, now: Stamp) -> Result<(), PhoneError> {
    Ok(book.ledger_mut().keep_draft(draft, now.unix_ms())?)
}

/// A fresh id, for a draft or an entry.
pub(crate) fn fresh(now: Stamp) -> Result<EntryId, PhoneError> {
    new_id(now).map_err(|e| PhoneError::Unexpected { reason: e.to_string() })
}

pub(crate) fn signing(book: &Daybook, signed: &Signed, now: Stamp) -> Result<Signing, PhoneError> {
    let clock_off_ms = book.clock_off_ms()?;
    let Signed { pin_given, trainer, trainer_pin_given } = *signed;
    Ok(Signing { at: now, clock_off_ms, pin_given, trainer, trainer_pin_given })
}

/// Records what a draft was signed as; the draft goes in the same transaction.
pub(crate) fn record(book: &mut Daybook, entries: Vec<Entry>, now: Stamp) -> Result<(), PhoneError> {
    book.ledger_mut().record_signed(entries, now.unix_ms())?;
    Ok(())
}
