//! A procedure step by step (P11), and keeping what was confirmed.

use sumpbook_daybook::draft::{Draft, StepsDraft};
use sumpbook_daybook::line::fact_of_steps;
use sumpbook_daybook::screen::{
    self, FigureAsk, NotSo, NotSoRow, PartNow, SiteAsk, StepRow, StepSaid, StepSaidRow, StepsQuery,
    StepsScreen,
};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::{EntryId, Figure, PersonId, Stamp, TruckId};

use crate::drafts::{fresh, keep};
use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;
use crate::record::Said;

/// A procedure of one unit.
#[uniffi::remote(Record)]
pub struct StepsScreen {
    /// The unit's door number.
    pub door: String,
    /// The procedure, for the text `procedure-...`.
    pub procedure: String,
    /// What is locked and stands before the first step; none when nothing keeps one from it.
    pub locked: Option<PartNow>,
    /// The steps this unit has, in order.
    pub steps: Vec<StepRow>,
    /// What is said of them and not recorded yet; none: nothing.
    pub draft: Option<EntryId>,
    /// That, in order.
    pub said: Vec<StepSaid>,
    /// Why it was begun although the air is locked.
    pub in_spite_of_lock: Option<String>,
    /// Steps that are behind one: they were so, or were gone on from with a mark. The next one is open.
    pub behind: u32,
    /// This person has done it fewer than three times: each step tells how as well, by its text `step-....hint`.
    #[uniffi(default = false)]
    pub hints: bool,
    /// The site's dust, where this procedure is an arrival and the dust counts.
    pub site: Option<SiteAsk>,
}

/// One step.
#[uniffi::remote(Record)]
pub struct StepRow {
    /// Its id, for the texts `step-...`, `.ok` and `.stops`.
    pub id: String,
    /// The unit's valves, when the step says them by name.
    pub names: Vec<String>,
    /// What may not be so, in order.
    pub not_so: Vec<NotSoRow>,
    /// The unit's hoses by name, one of which is chosen with a word that locks an outlet; empty where the step has no
    /// such word, and where there is nothing to choose between.
    pub places: Vec<String>,
    /// The figure it may carry.
    pub figure: Option<FigureAsk>,
    /// The caution shown with it, for the text `caution-...`.
    pub caution: Option<String>,
    /// Seconds the phone counts, on a clock that goes on through sleep.
    pub dwell_s: Option<u32>,
    /// The dwell is the most it may take, not the least.
    pub within: bool,
    /// Seconds between two looks while it goes on.
    pub every_s: Option<u32>,
    /// What was said of it last and is not recorded yet, by whomever.
    pub said: Option<StepSaidRow>,
}

/// What was said of a step before.
#[uniffi::remote(Record)]
pub struct StepSaidRow {
    /// When.
    pub at: Stamp,
    /// Who.
    pub by: Option<String>,
    /// It was not so, by this word of the step's.
    pub not_so: Option<String>,
    /// It was gone on from all the same: whoever looks reads it listed at the last step.
    pub skipped: bool,
}

/// A word for what may not be so.
#[uniffi::remote(Record)]
pub struct NotSoRow {
    /// Its key, for the text `not-so-...`.
    pub word: String,
    /// What it means.
    pub means: NotSo,
}

/// What a word for what is not so means.
#[uniffi::remote(Enum)]
pub enum NotSo {
    /// Wait until it is so.
    Wait,
    /// Do not go on; nothing is locked by it.
    Refuse,
    /// Go on; the record says that it was not so.
    Mark,
    /// Do not drive off until it is done.
    NoDriving,
    /// It locks this until the shop certifies it.
    Lock(Severity),
}

/// One step as somebody confirmed it, or said that it was not so.
#[uniffi::remote(Record)]
pub struct StepSaid {
    /// The step's id.
    pub step: String,
    /// When.
    pub at: Stamp,
    /// The word for what was not so; none: it was.
    #[uniffi(default)]
    pub not_so: Option<String>,
    /// The figure read there.
    #[uniffi(default)]
    pub figure: Option<Figure>,
    /// Which of the unit's hoses was not so.
    #[uniffi(default)]
    pub place: Option<String>,
}

fn table() -> Result<&'static Procedures, PhoneError> {
    Procedures::common_practice().map_err(|error| PhoneError::Unexpected { reason: error.to_string() })
}

#[uniffi::export]
impl Phone {
    /// A procedure of a unit, and how far this person is in it: `arrival`, `start`, `use-air`, `shut-down`,
    /// `leave-site`.
    ///
    /// # Errors
    /// `Argument` when there is no such procedure; as any read.
    pub fn procedure(
        &self,
        unit: TruckId,
        procedure: String,
        person: PersonId,
    ) -> Result<StepsScreen, PhoneError> {
        let reason = format!("there is no procedure '{procedure}'");
        let found = self.read(|book, now| {
            let query = StepsQuery { unit, procedure, person: Some(person) };
            Ok(screen::steps(book.ledger(), &query, table()?, now)?)
        })?;
        found.ok_or(PhoneError::Argument { what: "procedure".to_owned(), reason })
    }

    /// Says one step. It is kept through a kill of the app and recorded by `keep_steps` under the id given here.
    ///
    /// # Errors
    /// `Argument` when there is no such procedure; as any write.
    pub fn say_step(
        &self,
        unit: TruckId,
        procedure: String,
        person: PersonId,
        step: StepSaid,
        in_spite_of_lock: Option<String>,
    ) -> Result<EntryId, PhoneError> {
        let begun = self.procedure(unit, procedure.clone(), person)?.draft;
        self.change(ChangeSet::DRAFTS, |book, now| {
            let kept = match begun {
                Some(id) => book.ledger().draft(id)?,
                None => None,
            };
            let mut draft = match kept {
                Some(Draft::Steps(draft)) => draft,
                _ => StepsDraft::begin(fresh(now)?, unit, person, procedure, now),
            };
            draft.say(step.done());
            draft.in_spite_of_lock = in_spite_of_lock.or(draft.in_spite_of_lock);
            let id = draft.id;
            keep(book, &Draft::Steps(draft), now)?;
            Ok(id)
        })
    }

    /// Keeps the steps of a procedure as far as they went: a start or a stop once the compressor turns or stands,
    /// the steps alone before that. What a word locks is locked by it. `in_spite_of_lock` says why it was started
    /// although the air is locked.
    ///
    /// # Errors
    /// `Entry` for a procedure, step or word that is not known; as any write.
    pub fn keep_steps(
        &self,
        said: Said,
        procedure: String,
        steps: Vec<StepSaid>,
        in_spite_of_lock: Option<String>,
    ) -> Result<EntryId, PhoneError> {
        let steps = steps.into_iter().map(StepSaid::done).collect();
        let fact = fact_of_steps(table()?, &procedure, steps, in_spite_of_lock)
            .map_err(|error| PhoneError::Entry { reason: error.to_string() })?;
        self.record(said, fact)
    }
}
