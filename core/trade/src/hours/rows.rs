//! What goes into a judgement, and what comes out of it row by row (R3).

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::quantity::Tenths;

/// One figure somebody read off the meter, from whatever entry carried it.
///
/// Hours written in a service, a pour or an inspection are readings like any other.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ReadingRow {
    /// The entry that carries the figure.
    pub entry: Uuid,
    /// When it was read; the offset tells the local day.
    pub at: DateTime<FixedOffset>,
    /// What the meter showed.
    pub figure: Tenths,
    /// Breaks ties between rows of one moment; must be the same on every device.
    pub order: u64,
    /// Came from an old binder or table. Judged like any other; only carried through to be shown.
    pub source_brought_in: bool,
}

/// One exchange of meters, or a meter that went round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ExchangeRow {
    /// The entry that carries it.
    pub entry: Uuid,
    /// When the new meter began to count. For a turn: the moment of the last reading before the turn.
    pub at: DateTime<FixedOffset>,
    /// What the old meter showed at the end; `None` when nobody could read it.
    /// For a turn: where the meter turns over, one of [`TURNS`](super::TURNS).
    pub old_end: Option<Tenths>,
    /// What the new meter showed when fitted (a used one seldom shows 0.0). Not read for a turn,
    /// which always begins at 0.0.
    pub new_start: Tenths,
    /// Same meter, past its highest figure.
    pub went_round: bool,
}

/// What a person decided about one entry's figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Settlement {
    /// It is true. Accepted figures before it that are higher give way; no run outvotes it.
    /// Of an exchange: its old end counts as written.
    Stands,
    /// It is left out of the count (and still shown). Of an exchange: it never happened.
    DoesNotCount,
}

/// Which figure of an entry a row is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Part {
    /// A reading.
    Reading,
    /// The last figure of a meter taken off.
    OldEnd,
    /// The first figure of a meter put on.
    NewStart,
}

/// Why a figure takes no part in the count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum AsideWhy {
    /// More than the meter can have counted since the last accepted figure.
    AboveCeiling,
    /// More than 0.1 h below the last accepted figure, or below zero.
    Backwards,
    /// Exactly 0.1 h below, or the lower of two figures of one moment 0.1 h apart: nobody is asked.
    SlippedBack,
    /// Another figure of the very moment is more than 0.1 h away, and both are possible.
    SameMoment,
    /// A person said it does not count.
    DoesNotCount,
    /// A person said that a later, lower figure stands.
    Displaced,
}

/// What became of a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Verdict {
    /// It counts.
    Accepted,
    /// It counts, and is a good deal more than this unit runs in a day.
    AcceptedUnlike,
    /// It counted until later readings agreed against it.
    OutvotedByLater,
    /// It does not count.
    Aside(AsideWhy),
}

impl Verdict {
    /// Whether the figure counts.
    pub fn counts(self) -> bool {
        matches!(self, Verdict::Accepted | Verdict::AcceptedUnlike)
    }
}

/// One figure with its judgement.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct JudgedReading {
    /// The entry that carries the figure.
    pub entry: Uuid,
    /// When it was read.
    pub at: DateTime<FixedOffset>,
    /// What the meter showed.
    pub figure: Tenths,
    /// The figure carried over all exchanges before it: hours of the unit, not of the meter.
    pub total: Tenths,
    /// A reading, or one of the two figures of an exchange.
    pub part: Part,
    /// As given in [`ReadingRow::source_brought_in`]; `false` for an exchange.
    pub brought_in: bool,
    /// What the meter could show at most at that moment; `None` for a first reading.
    pub ceiling: Option<Tenths>,
    /// What became of it.
    pub verdict: Verdict,
    /// A person said that it stands.
    pub settled: bool,
    /// Some open question names it.
    pub in_question: bool,
    /// Accepted only because time went by after a jump nobody has explained.
    pub across_unanswered_jump: bool,
}
