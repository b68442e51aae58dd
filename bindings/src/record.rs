//! Recording what has no draft: one tap, one entry.

use sumpbook_daybook::judgement::is_shop_only;
use sumpbook_daybook::line::{Line, Writer, fact_of_use};
use sumpbook_daybook::phone::Parts;
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::record::{
    Acknowledgement, Digest, DisplayNote, Glass, HourReading, How, LevelCheck, Meter, NoteKind, OilLook,
    SiteCondition, SiteDust, Source, StopWait, Warmth,
};
use sumpbook_trade::{EntryId, Fact, Figure, Fluid, PersonId, Tenths, TruckId};

use crate::checklist::template;
use crate::drafts::fresh;
use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;

/// What every entry says beside what it records.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct Said {
    /// The unit.
    pub unit: TruckId,
    /// Who says it.
    pub person: PersonId,
    /// The entry's own id, kept by the shell before the call, so that trying again records nothing twice.
    #[uniffi(default)]
    pub id: Option<EntryId>,
    /// The trainer, while the person is learning.
    #[uniffi(default)]
    pub trainer: Option<PersonId>,
    /// The person's own PIN was given.
    #[uniffi(default)]
    pub pin_given: bool,
    /// The trainer's own PIN was given.
    #[uniffi(default)]
    pub trainer_pin_given: bool,
    /// Compressor hours as read for this entry.
    #[uniffi(default)]
    pub hours: Option<Tenths>,
    /// Words added.
    #[uniffi(default)]
    pub note: Option<String>,
}

/// What the display shows.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct ShownNote {
    /// What kind.
    pub what: NoteKind,
    /// As it stands there.
    pub as_shown: String,
    /// The unit stopped by itself.
    #[uniffi(default)]
    pub stopped_by_itself: Option<bool>,
    /// It is gone again: the note it ends.
    #[uniffi(default)]
    pub gone_again: Option<EntryId>,
    /// A photo of the display.
    #[uniffi(default)]
    pub photo: Option<Digest>,
}

/// A level of the compressor's glass. What nobody said is left out.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct LevelSaid {
    /// Where it stood.
    pub glass: Glass,
    /// Cold or hot.
    #[uniffi(default)]
    pub warmth: Option<Warmth>,
    /// How long the unit had stood.
    #[uniffi(default)]
    pub stopped: Option<StopWait>,
    /// How the oil looks.
    #[uniffi(default)]
    pub look: Option<OilLook>,
    /// A photo of the glass.
    #[uniffi(default)]
    pub photo: Option<Digest>,
    /// The oil's temperature, where a display shows it.
    #[uniffi(default)]
    pub oil_temperature: Option<Figure>,
}

#[uniffi::export]
impl Phone {
    /// A fresh id, for an entry that may have to be tried again.
    ///
    /// # Errors
    /// `Unexpected` when the system has no randomness.
    pub fn new_id(&self) -> Result<EntryId, PhoneError> {
        fresh(self.clock.now())
    }

    /// Writes down what the display shows.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_note(&self, said: Said, shown: ShownNote) -> Result<EntryId, PhoneError> {
        let ShownNote { what, as_shown, stopped_by_itself, gone_again, photo } = shown;
        self.record(said, DisplayNote { what, as_shown, stopped_by_itself, gone_again, photo }.into())
    }

    /// Answers a display note: the shop was told, or it was only seen.
    ///
    /// # Errors
    /// As any write.
    pub fn acknowledge(&self, said: Said, note: EntryId, told_shop: bool) -> Result<EntryId, PhoneError> {
        self.record(said, Acknowledgement { note, told_shop }.into())
    }

    /// Keeps the level of the compressor's glass.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_level(&self, said: Said, level: LevelSaid) -> Result<EntryId, PhoneError> {
        let LevelSaid { glass, warmth, stopped, look, photo, oil_temperature } = level;
        let fluid = Fluid::CompressorOil;
        self.record(said, LevelCheck { fluid, glass, warmth, stopped, look, photo, oil_temperature }.into())
    }

    /// Says how dusty the site is, from now on today; the day's first word holds from its midnight.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_site(&self, said: Said, dust: SiteDust) -> Result<EntryId, PhoneError> {
        self.record(said, SiteCondition { dust }.into())
    }

    /// Gives a meter's figure; `kept_when_asked` when the screen asked about it and the person kept it.
    ///
    /// # Errors
    /// As any write.
    #[uniffi::method(default(photo = None))]
    pub fn give_hours(
        &self,
        said: Said,
        meter: Meter,
        figure: Tenths,
        kept_when_asked: bool,
        photo: Option<Digest>,
    ) -> Result<EntryId, PhoneError> {
        self.record(said, HourReading { meter, figure, how: How::Asked, kept_when_asked, photo }.into())
    }

    /// Keeps that a unit was used although this of it was locked, and why.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_used_all_the_same(
        &self,
        said: Said,
        part: LockPart,
        why: String,
    ) -> Result<EntryId, PhoneError> {
        self.record(said, fact_of_use(&part, why))
    }

    /// Records any entry a phone may write, as one line of JSON: door number and names instead of ids.
    ///
    /// # Errors
    /// `Entry` when it does not read, or only the shop writes its kind; as any write.
    pub fn record_line(&self, json: String) -> Result<EntryId, PhoneError> {
        let line = Line::read(&json)?;
        if is_shop_only(line.fact.kind()) {
            let reason =
                "only the shop writes this kind: it would be set aside there. Tell the shop instead.";
            return Err(PhoneError::Entry { reason: reason.to_owned() });
        }
        self.change(ChangeSet::RECORDED, |book, now| {
            let writer = Writer { now, clock_off_ms: book.clock_off_ms()?, id: fresh(now)? };
            let template = template(book)?.clone();
            book.ledger_mut().record_line(&line, &template, &writer)
        })
    }
}

impl Phone {
    pub(crate) fn record(&self, said: Said, fact: Fact) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::RECORDED, |book, now| {
            let parts = Parts {
                id: said.id,
                unit: Some(said.unit),
                set: None,
                at: None,
                person: Some(said.person),
                trainer: said.trainer,
                pin_given: said.pin_given,
                trainer_pin_given: said.trainer_pin_given,
                hours: said.hours,
                note: said.note,
                source: Source::Phone,
                fact,
            };
            Ok(book.record(parts, now)?)
        })
    }
}
