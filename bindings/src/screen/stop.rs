//! One stop of the walk (P5).

use sumpbook_daybook::screen::{
    self, FigureAsk, LineAnswer, LineRow, Main, PartNow, StopMark, StopQuery, StopScreen, Together,
};
use sumpbook_trade::checklist::{EngineState, HowGiven, Severity, Side, WalkPlace};
use sumpbook_trade::record::{AnswerKind, Digest, ItemFigure};
use sumpbook_trade::{EntryId, Measure, Stamp, TruckId};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;
use crate::values::WordOffered;

/// One stop.
#[uniffi::remote(Record)]
pub struct StopScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// The stop's key, for the text `stop-...`.
    pub stop: String,
    /// Its label: `6`, `15b`.
    pub label: String,
    /// Its place in the walk, 1 first.
    pub index: u32,
    /// Stops in the walk.
    pub of: u32,
    /// Every stop's mark, in order.
    pub marks: Vec<StopMark>,
    /// Where one stands.
    pub place: WalkPlace,
    /// The state the engine is in.
    pub engine: EngineState,
    /// Chocks are in.
    pub chocks: bool,
    /// Only in the yard.
    pub yard_only: bool,
    /// It has a screen of its own (glass, timed test).
    pub own_screen: bool,
    /// The stop before, by its label.
    pub back: Option<String>,
    /// Its lines, in order.
    pub lines: Vec<LineRow>,
    /// Lines without an answer.
    pub left: u32,
    /// Groups answered together at this stop.
    pub together: Vec<Together>,
    /// The person has signed few walks: each line says what OK is.
    pub hints: bool,
    /// On a second driver's short walk, where the glass stood in the first one's record, percent.
    pub as_shown: Option<u8>,
    /// What of the unit is locked, with why. The walk goes on: looking is allowed.
    pub locked: Vec<PartNow>,
    /// The main button.
    pub main: Main,
}

/// One line.
#[uniffi::remote(Record)]
pub struct LineRow {
    /// The row's id: item, side or name.
    pub id: String,
    /// The item, for the texts `item-...`.
    pub item: String,
    /// The place as an answer names it.
    pub place: Option<String>,
    /// Sides a defect of it may be given.
    pub sides: Vec<Side>,
    /// Words offered for a defect with what each locks, in order; `other` is always the last.
    pub words: Vec<WordOffered>,
    /// The figure it may carry.
    pub figure: Option<FigureAsk>,
    /// The caution shown with it, for the text `caution-...`.
    pub caution: Option<String>,
    /// A defect of it is open since then; of a line without a place, on whichever side.
    pub open_since: Option<Stamp>,
    /// Key of the word that stands for that defect, for "still so".
    pub open_word: Option<String>,
    /// The part that this defect waits for.
    pub waits_for: Option<String>,
    /// What was answered; none yet.
    pub answer: Option<LineAnswer>,
}

/// What was answered to a line.
#[uniffi::remote(Record)]
pub struct LineAnswer {
    /// The answer.
    pub answer: AnswerKind,
    /// Key of the word chosen for a defect.
    pub word: Option<String>,
    /// What it locks.
    pub severity: Option<Severity>,
    /// Figures given.
    pub figures: Vec<ItemFigure>,
    /// Words added.
    pub words: Option<String>,
    /// How many photos.
    pub photos: u32,
    /// The sound of a defect, by its name.
    pub sound: Option<Digest>,
    /// The group it was answered in, when by one tap with others.
    pub together: Option<u32>,
    /// By whom, when somebody else signed it.
    pub by: Option<String>,
    /// When that was.
    pub at: Option<Stamp>,
}

/// The figure a line may carry.
#[uniffi::remote(Record)]
pub struct FigureAsk {
    /// Its unit.
    pub unit: Measure,
    /// How it comes.
    pub how: HowGiven,
    /// The topic of the limit it is held against.
    pub limit: Option<String>,
    /// Digits after the point when it is typed; none: it is read off no keypad (a date, water by eye).
    pub places: Option<u8>,
}

/// Lines answered by one tap.
#[uniffi::remote(Record)]
pub struct Together {
    /// The group.
    pub group: u32,
    /// How many lines.
    pub lines: u32,
    /// After so many milliseconds on the screen.
    pub after_ms: Option<u32>,
}

/// How a stop is marked on the line round the truck.
#[uniffi::remote(Enum)]
pub enum StopMark {
    /// Lines are open.
    ToCome,
    /// Every line is answered.
    Done,
    /// A defect was found here.
    Defect,
    /// Something could not be checked.
    CouldNotCheck,
    /// Somebody else did all of it.
    ByOther,
}

#[uniffi::export]
impl Phone {
    /// Every line that a unit is asked for on a walk, in order and without answers: what a defect can be told of at the
    /// end of the day.
    ///
    /// # Errors
    /// As any read.
    pub fn lines_of_unit(&self, unit: TruckId) -> Result<Vec<LineRow>, PhoneError> {
        self.read(|book, now| Ok(screen::lines_of_unit(book.ledger(), unit, template(book)?, now)?))
    }

    /// One stop of a pre-trip under way: by its label, or where the draft stands. `seen` are the lines that have
    /// lain whole on the screen since it opened, `open_ms` ago. None when the unit has no stop at all.
    ///
    /// # Errors
    /// `Draft` when there is no such pre-trip; as any read.
    pub fn stop(
        &self,
        draft: EntryId,
        stop: Option<String>,
        seen: Vec<String>,
        open_ms: u32,
    ) -> Result<Option<StopScreen>, PhoneError> {
        let query = StopQuery { stop, seen: seen.into_iter().collect(), open_ms };
        self.read(|book, now| {
            let draft = crate::drafts::pre_trip(book, draft)?;
            Ok(screen::stop(book.ledger(), &draft, &query, template(book)?, now)?)
        })
    }
}
