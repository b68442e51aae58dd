//! What would explain a figure that does not fit (R3, "a hint says which fits").

use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::splice::turns_that_fit;
use crate::quantity::Tenths;

/// What would explain a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hint {
    /// Typed wrong: with two digits swapped or the point moved it would fit and read this.
    TypedWrong {
        /// What it would read.
        reads: Tenths,
    },
    /// The accepted figure was typed wrong: with two digits swapped or the point moved it would read
    /// this, and everything would fit.
    EarlierTypedWrong {
        /// The entry of the accepted figure.
        entry: Uuid,
        /// What it would read.
        reads: Tenths,
    },
    /// The meter went round at this figure.
    WentRound {
        /// One step past the highest figure it can show.
        end: Tenths,
    },
    /// A new meter from 0.0 can have counted this since the last accepted reading.
    MeterChanged,
    /// Nothing else fits: another meter of this unit, or another truck.
    OtherMeterOrTruck,
}

/// What explains `figure`, read when the meter, last at `last`, could show at most `most`.
pub(super) fn explain(figure: Tenths, last: Tenths, most: Tenths) -> Vec<Hint> {
    let mut hints: Vec<Hint> =
        misread(figure, last, most).into_iter().map(|reads| Hint::TypedWrong { reads }).collect();
    hints.extend(turns_that_fit(last, figure, most).into_iter().map(|end| Hint::WentRound { end }));
    if figure >= Tenths::ZERO && figure < last && figure <= most - last {
        hints.push(Hint::MeterChanged);
    }
    if hints.is_empty() {
        hints.push(Hint::OtherMeterOrTruck);
    }
    hints
}

/// Figures from `least` to `most` that a slip of the finger turns into `figure`:
/// the point moved by one place, or two neighbouring digits swapped.
pub(super) fn misread(figure: Tenths, least: Tenths, most: Tenths) -> Vec<Tenths> {
    let mut found = Vec::new();
    if figure.0 % 10 == 0 {
        found.push(Tenths(figure.0 / 10));
    }
    found.extend(figure.0.checked_mul(10).map(Tenths));
    let mut place: i64 = 1;
    while let Some(next) = place.checked_mul(10).filter(|next| *next <= figure.0) {
        let low = (figure.0 / place) % 10;
        let high = (figure.0 / next) % 10;
        found.extend(
            (high - low).checked_mul(place).and_then(|d| figure.0.checked_add(d - d * 10)).map(Tenths),
        );
        place = next;
    }
    found.retain(|reads| *reads != figure && *reads >= least && *reads <= most);
    found.sort_unstable();
    found.dedup();
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lost_point_is_seen() {
        assert_eq!(
            explain(Tenths(74210), Tenths(7384), Tenths(7624)),
            [Hint::TypedWrong { reads: Tenths(7421) }]
        );
    }

    #[test]
    fn two_swapped_digits_are_seen() {
        assert_eq!(misread(Tenths(12622), Tenths(12210), Tenths(12300)), [Tenths(12262)]);
    }

    #[test]
    fn a_turn_is_offered_only_when_the_rise_is_possible() {
        let round = Hint::WentRound { end: Tenths(100_000) };
        assert!(explain(Tenths(31), Tenths(99_987), Tenths(100_227)).contains(&round));
        // 9,900.0 a day before leaves 100 h to the turn.
        assert!(!explain(Tenths(31), Tenths(99_000), Tenths(99_240)).contains(&round));
        let small = Hint::WentRound { end: Tenths(65_536) };
        assert!(explain(Tenths(4), Tenths(65_530), Tenths(65_770)).contains(&small));
    }

    #[test]
    fn a_new_meter_is_offered_only_when_it_can_have_counted_so_much() {
        assert!(explain(Tenths(55), Tenths(50_000), Tenths(50_240)).contains(&Hint::MeterChanged));
        assert_eq!(explain(Tenths(555), Tenths(50_000), Tenths(50_240)), [Hint::OtherMeterOrTruck]);
    }

    #[test]
    fn extreme_figures_are_harmless() {
        for figure in [i64::MIN, -1, 0, i64::MAX] {
            assert!(!explain(Tenths(figure), Tenths(i64::MIN), Tenths(i64::MIN)).is_empty());
            misread(Tenths(figure), Tenths(i64::MIN), Tenths(i64::MAX));
        }
    }
}
