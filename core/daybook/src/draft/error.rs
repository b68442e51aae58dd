//! Why a draft does not take something, or cannot be signed yet.

use serde::{Deserialize, Serialize};

use crate::line::AnswerError;

/// Why not. The draft is as it was before.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum DraftError {
    /// The answer does not hold.
    #[error(transparent)]
    Answer(#[from] AnswerError),
    /// Every line of this stop is answered, or wants a figure of its own.
    #[error("there is no line at this stop that could be answered together")]
    NothingTogether,
    /// OK was said of a line that asks for a figure, without one.
    #[error("'{0}' is not answered without its figure")]
    FigureMissing(String),
    /// A stop has lines without an answer.
    #[error("stop {stop} is open: {left} left")]
    StopOpen {
        /// The stop's label, such as `9` or `15b`.
        stop: String,
        /// Its place in the unit's own walk, 1 first.
        at: u32,
        /// Lines without an answer.
        left: usize,
    },
    /// Nothing was answered at all.
    #[error("nothing is answered yet")]
    NothingAnswered,
    /// The two signs of zero pressure are not both there.
    #[error("the cap stays shut: {0:?} is missing")]
    GateClosed(MissingSign),
    /// A pour whose volume is no volume above zero.
    #[error("a pour has a volume above zero")]
    NoVolume,
    /// Nothing was poured.
    #[error("nothing is poured yet")]
    NothingPoured,
    /// The cap was not said to be tight.
    #[error("the cap is not said to be tight")]
    CapOpen,
    /// Neither "none found" nor a defect was said.
    #[error("say which defects were found, or that none was")]
    DefectsNotSaid,
}

/// A sign of zero pressure that is not there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MissingSign {
    /// The gauge was not read at 0.
    GaugeZero,
    /// Blow-down was not heard to end.
    BlowDownSilent,
    /// Neither.
    Both,
}
