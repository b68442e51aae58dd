//! What one puts one's name to (P8).

use sumpbook_daybook::screen::{self, FoundRow, Quick, SignRow, SignScreen, SignStop, StopMark, Together};
use sumpbook_trade::record::{AnswerKind, ItemFigure};
use sumpbook_trade::{EntryId, Tenths};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;

/// The page that is signed.
#[uniffi::remote(Record)]
pub struct SignScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// Whose name.
    pub person: Option<String>,
    /// It is the second driver's short walk.
    pub short: bool,
    /// Every stop, in order.
    pub stops: Vec<SignStop>,
    /// Lines that are OK.
    pub ok: u32,
    /// Of them, answered together with others of their stop.
    pub ok_together: u32,
    /// Lines that somebody else signed in this walk.
    pub by_other: u32,
    /// Defects, as they will stand.
    pub defects: Vec<FoundRow>,
    /// What could not be checked, and what this unit was said not to have.
    pub not_checked: Vec<SignRow>,
    /// Answers that carry a figure.
    pub figures: Vec<SignRow>,
    /// Compressor hours as read on this walk.
    pub hours: Option<Tenths>,
    /// Milliseconds from the first stop on.
    pub walked_ms: Option<u64>,
    /// Why it was quick: said to the driver, who may look again. It is signed as it is. None: it was not.
    pub quick: Option<Quick>,
    /// Label of the first stop that is open; none: it can be signed.
    pub open_stop: Option<String>,
    /// That stop's place in the unit's own walk.
    pub open_at: Option<u32>,
}

/// One stop of the walk.
#[uniffi::remote(Record)]
pub struct SignStop {
    /// Its label: `6`, `15b`.
    pub label: String,
    /// Its place in the unit's own walk, 1 first.
    pub at: u32,
    /// Its key, for the text `stop-...`.
    pub stop: String,
    /// How it is marked.
    pub mark: StopMark,
    /// Its lines.
    pub lines: u32,
    /// Lines without an answer.
    pub left: u32,
    /// Groups answered together there.
    pub together: Vec<Together>,
}

/// An answer that is not OK, or that carries a figure.
#[uniffi::remote(Record)]
pub struct SignRow {
    /// The item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// What was answered.
    pub answer: AnswerKind,
    /// Key of the word chosen.
    pub word: Option<String>,
    /// Words added, or why it could not be checked.
    pub words: Option<String>,
    /// Figures given.
    pub figures: Vec<ItemFigure>,
}

/// Why a walk is called quick.
#[uniffi::remote(Enum)]
pub enum Quick {
    /// A brake test was answered before its minute was over.
    BrakeTest,
    /// The whole of it took less time than looking does.
    Walk,
}

#[uniffi::export]
impl Phone {
    /// The sum of a pre-trip before it is signed. `walked_ms` is the time since the first stop, on a clock that counts
    /// through sleep.
    ///
    /// # Errors
    /// `Draft` when there is no such pre-trip; as any read.
    pub fn signing(&self, draft: EntryId, walked_ms: Option<u64>) -> Result<SignScreen, PhoneError> {
        self.read(|book, now| {
            let draft = crate::drafts::pre_trip(book, draft)?;
            Ok(screen::signing(book.ledger(), &draft, template(book)?, walked_ms, now)?)
        })
    }
}
