//! A pre-trip, from its beginning to its signature.

use sumpbook_daybook::draft::{Draft, Extent, PreTripDraft, ReviewDraft};
use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::screen::{LastReportQuery, first_walk, last_report, walk_of};
use sumpbook_trade::checklist::{Line, PlannedStop};
use sumpbook_trade::record::{Answer, AnswerKind};
use sumpbook_trade::{EntryId, FactKind, PersonId, Stamp, Tenths, TruckId, WalkId};

use super::{Signed, fresh, keep, pre_trip, record, refused, signing};
use crate::checklist::template;
use crate::error::{DraftKind, PhoneError};
use crate::listener::ChangeSet;
use crate::phone::Phone;

/// How many first walks of a person say more.
const FIRST_WALKS: u32 = 3;

#[uniffi::export]
impl Phone {
    /// Begins a pre-trip: nothing is answered. With `walk` it shares the walk of whoever looks at other stops.
    ///
    /// # Errors
    /// As any write.
    pub fn begin_pre_trip(
        &self,
        unit: TruckId,
        person: PersonId,
        walk: Option<WalkId>,
    ) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let id = fresh(now)?;
            let walk = walk.unwrap_or(WalkId(id.0));
            let mut draft = PreTripDraft::begin(id, walk, unit, person, template(book)?, now);
            draft.hints = is_new_to_it(book, person)?;
            keep(book, &Draft::PreTrip(draft), now)?;
            Ok(id)
        })
    }

    /// Begins the second driver's short pre-trip, after the walk of the entry `after`.
    ///
    /// # Errors
    /// `Argument` when no such walk of this unit is held here; as any write.
    pub fn begin_short_pre_trip(
        &self,
        unit: TruckId,
        person: PersonId,
        after: EntryId,
    ) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let first = first_walk(book.ledger(), unit, after)?.ok_or_else(|| PhoneError::Argument {
                what: "after".to_owned(),
                reason: format!("no walk {after} of this unit is held here"),
            })?;
            let id = fresh(now)?;
            let mut draft = PreTripDraft::begin(id, WalkId(id.0), unit, person, template(book)?, now);
            draft.follows = Some(first);
            draft.hints = is_new_to_it(book, person)?;
            keep(book, &Draft::PreTrip(draft), now)?;
            Ok(id)
        })
    }

    /// The walk that a short pre-trip under way follows; none for a whole one.
    ///
    /// # Errors
    /// `Draft` when there is no such pre-trip; as any read.
    pub fn follows(&self, draft: EntryId) -> Result<Option<EntryId>, PhoneError> {
        self.read(|book, _| Ok(pre_trip(book, draft)?.follows.map(|first| first.entry)))
    }

    /// The last report was read, as the screen `last_report` shows it now: it will be signed with the walk, and what
    /// that tap answers is answered.
    ///
    /// # Errors
    /// `Draft`; as any write.
    pub fn last_report_was_read(&self, draft: EntryId, seen: Vec<String>) -> Result<(), PhoneError> {
        self.walking(draft, |book, walk, now| {
            let query = LastReportQuery { unit: walk.unit, seen: seen.into_iter().collect() };
            let shown = last_report(book.ledger(), &query, template(book)?, &book.standing()?, now)?;
            let id = walk.review.as_ref().map_or_else(|| fresh(now), |review| Ok(review.id))?;
            let report = shown.report.map(|report| report.id);
            walk.review = Some(ReviewDraft { id, report, certificates: shown.to_review });
            // A short walk has no line for what stands before the walk: the first one answered it.
            let answers = if walk.follows.is_some() { Vec::new() } else { shown.answers };
            for item in answers {
                walk.answer(template(book)?, ok(item))?;
            }
            Ok(())
        })
    }

    /// A stop was opened: the draft opens there again.
    ///
    /// # Errors
    /// `Draft` when the walk has no such stop; as any write.
    pub fn reach_stop(&self, draft: EntryId, stop: String) -> Result<(), PhoneError> {
        self.walking(draft, |book, walk, now| {
            let (stops, _) = walk_of(book.ledger(), template(book)?, walk, now)?;
            let (found, position) = planned(&stops, &stop)?;
            walk.reach(found, position);
            Ok(())
        })
    }

    /// Answers one line; an earlier answer to it is replaced.
    ///
    /// # Errors
    /// `Draft` when the answer does not hold; as any write.
    pub fn answer_line(&self, draft: EntryId, answer: Answer) -> Result<(), PhoneError> {
        self.walking(draft, |book, walk, now| {
            let checklist = book.ledger().checklist_of(walk.unit, now)?;
            Ok(walk.answer(&checklist, answer)?)
        })
    }

    /// Takes the answer to a line back, by the row's id.
    ///
    /// # Errors
    /// `Argument` when that is no line; as any write.
    pub fn take_back_answer(&self, draft: EntryId, line: String) -> Result<(), PhoneError> {
        let line: Line = line
            .parse()
            .map_err(|_| PhoneError::Argument { what: "line".to_owned(), reason: line.clone() })?;
        self.walking(draft, |_, walk, _| {
            walk.take_back(&line);
            Ok(())
        })
    }

    /// One tap: every open line of the stop that asks for no figure is OK. Gives how many.
    ///
    /// # Errors
    /// `Draft` when there is no such line; as any write.
    pub fn ok_together(&self, draft: EntryId, stop: String, on_screen_ms: u32) -> Result<u32, PhoneError> {
        self.walking(draft, |book, walk, now| {
            let (stops, elsewhere) = walk_of(book.ledger(), template(book)?, walk, now)?;
            let answered =
                walk.ok_together(template(book)?, planned(&stops, &stop)?.0, &elsewhere, on_screen_ms)?;
            Ok(u32::try_from(answered).unwrap_or(u32::MAX))
        })
    }

    /// Compressor hours as read on this walk; none takes them back.
    ///
    /// # Errors
    /// `Draft`; as any write.
    pub fn pre_trip_hours(&self, draft: EntryId, hours: Option<Tenths>) -> Result<(), PhoneError> {
        self.walking(draft, |_, walk, _| {
            walk.hours = hours;
            Ok(())
        })
    }

    /// Signs a pre-trip: all of it, or with `part` what was answered so far. `walked_ms` is the time since the first
    /// stop on a clock that counts through sleep. Gives the ids recorded: the review first, where there is one.
    ///
    /// # Errors
    /// `Draft` with the first open stop; as any write. Then the draft is still there.
    pub fn sign_pre_trip(
        &self,
        draft: EntryId,
        signed: Signed,
        part: bool,
        walked_ms: Option<u64>,
    ) -> Result<Vec<EntryId>, PhoneError> {
        self.change(ChangeSet::RECORDED, |book, now| {
            let mut walk = pre_trip(book, draft)?;
            walk.walked_ms = walked_ms.or(walk.walked_ms);
            let (stops, elsewhere) = walk_of(book.ledger(), template(book)?, &walk, now)?;
            let extent = if part { Extent::Part } else { Extent::Whole };
            let signing = signing(book, &signed, now)?;
            let entries = walk.sign(book.ledger().fleet(), &stops, &elsewhere, extent, &signing)?;
            let ids = entries.iter().map(|entry| entry.id).collect();
            record(book, entries, now)?;
            Ok(ids)
        })
    }
}

impl Phone {
    /// Changes a pre-trip under way and keeps it.
    fn walking<T>(
        &self,
        draft: EntryId,
        change: impl FnOnce(&Daybook, &mut PreTripDraft, Stamp) -> Result<T, PhoneError>,
    ) -> Result<T, PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let mut walk = pre_trip(book, draft)?;
            let done = change(book, &mut walk, now)?;
            keep(book, &Draft::PreTrip(walk), now)?;
            Ok(done)
        })
    }
}

/// Somebody's first walks say under each line what OK is.
fn is_new_to_it(book: &Daybook, person: PersonId) -> Result<bool, PhoneError> {
    let kind = FactKind::PreTripSection.code().unwrap_or(0);
    Ok(book.ledger().store().truth().signed_fewer(person, kind, FIRST_WALKS)?)
}

/// The stop of this label, and its place in the unit's own walk.
fn planned<'a>(stops: &'a [PlannedStop], label: &str) -> Result<(&'a PlannedStop, u32), PhoneError> {
    let found = stops.iter().zip(1u32..).find(|(stop, _)| stop.label() == label);
    found.ok_or_else(|| refused(DraftKind::NotThere, format!("this walk has no stop {label}")))
}

fn ok(item: String) -> Answer {
    Answer {
        item,
        place: None,
        answer: AnswerKind::Ok,
        word: None,
        severity: None,
        figures: Vec::new(),
        on_screen_ms: None,
        together: None,
        words: None,
        photos: Vec::new(),
        sound: None,
    }
}
