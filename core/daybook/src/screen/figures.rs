//! Figures as screens carry them: typed, never formatted.

use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::FineHours;
use sumpbook_trade::{EntryId, Stamp, Tenths};

use crate::state::ReadingNow;

/// Hours left on a clock, to a tenth and never rosier than they are (R14).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LeftHours {
    /// At least so many are left.
    Left(Tenths),
    /// So many past due.
    Past(Tenths),
}

impl LeftHours {
    pub(super) fn of(left: FineHours) -> LeftHours {
        // The last tenth is still a good one: past due begins a whole tenth beyond (R1).
        match left <= -FineHours::TENTH {
            true => LeftHours::Past(-left.tenths_up()),
            false => LeftHours::Left(left.tenths_down().max(Tenths::ZERO)),
        }
    }
}

/// A reading as a row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReadingRow {
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// What the meter showed.
    pub figure: Tenths,
    /// Whether it counts.
    pub counts: bool,
    /// The most the meter could show then.
    pub ceiling: Option<Tenths>,
    /// A question about it is open.
    pub in_question: bool,
}

impl From<&ReadingNow> for ReadingRow {
    fn from(reading: &ReadingNow) -> ReadingRow {
        ReadingRow {
            id: reading.entry,
            at: reading.at.into(),
            figure: reading.figure,
            counts: reading.counts,
            ceiling: reading.ceiling,
            in_question: reading.in_question,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_is_rounded_down_and_what_is_past_is_told_to_its_tenth() {
        assert_eq!(LeftHours::of(FineHours(28_500)), LeftHours::Left(Tenths(28)));
        assert_eq!(LeftHours::of(FineHours(0)), LeftHours::Left(Tenths(0)));
        assert_eq!(LeftHours::of(FineHours(-61_000)), LeftHours::Past(Tenths(61)));
        // 9.05 h over is at least 9.0 past, and never 9.1.
        assert_eq!(LeftHours::of(FineHours(-90_500)), LeftHours::Past(Tenths(90)));
        assert_eq!(LeftHours::of(FineHours(-999)), LeftHours::Left(Tenths(0)));
        assert_eq!(LeftHours::of(FineHours(-1_000)), LeftHours::Past(Tenths(1)));
    }
}
