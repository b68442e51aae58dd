//! The question at the keyboard, before a figure is kept (R3, "asked about at once").

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

use super::hint::{Hint, explain};
use super::ledger::HoursLedger;
use super::span::{Point, Step};
use super::unlike::unlike;
use crate::quantity::Tenths;

/// What to say of a figure being typed. Nothing is ever refused: after a question it is kept as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum KeyboardAnswer {
    /// Nothing to ask.
    Fits,
    /// The meter cannot show so much yet.
    AboveCeiling {
        /// What it can show at most.
        ceiling: Tenths,
        /// What would explain the figure, likeliest first.
        hints: Vec<Hint>,
    },
    /// It shows less than before.
    Backwards {
        /// What it showed last.
        last: Tenths,
        /// What would explain the figure, likeliest first.
        hints: Vec<Hint>,
    },
    /// 0.1 h less than before: kept aside, nobody is asked.
    SlippedBack,
    /// It can be, and is a good deal more than this unit runs.
    UnlikeThisUnit {
        /// The rise per 24 hours.
        rise: Tenths,
        /// What a day's rise is seldom above.
        seldom_above: Tenths,
    },
}

impl HoursLedger {
    /// What to ask about `figure`, read at `at`.
    ///
    /// `recent_use_days` are the rises on days of use that "unlike this unit" compares with, in any
    /// order: usually [`recent_use_days`](HoursLedger::recent_use_days) of the same `at`. With too few of
    /// them, that question is not asked.
    pub fn ask(
        &self,
        figure: Tenths,
        at: DateTime<FixedOffset>,
        recent_use_days: &[Tenths],
    ) -> KeyboardAnswer {
        let view = self.view(at);
        let point = Point { total: figure + view.offset, instant: view.instant };
        let last = view.last.map_or(Tenths::ZERO, |last| last.total - view.offset);
        let backwards = |most| KeyboardAnswer::Backwards { last, hints: explain(figure, last, most) };
        let Some(before) = view.last else {
            return if figure < Tenths::ZERO { backwards(Tenths::ZERO) } else { KeyboardAnswer::Fits };
        };
        let most = self.ceiling(at).unwrap_or(last);
        let beyond_next = view.next.is_some_and(|next| point.total > next.total);
        let follows_rival = view.rivals.iter().any(|rival| rival.leads_to(point));
        match before.step_to(point) {
            _ if figure < Tenths::ZERO => backwards(most),
            Step::Possible if !beyond_next => {
                let mut days = recent_use_days.to_vec();
                days.sort_unstable();
                match unlike(before, point, &days, &self.numbers) {
                    Some((rise, seldom_above)) => KeyboardAnswer::UnlikeThisUnit { rise, seldom_above },
                    None => KeyboardAnswer::Fits,
                }
            }
            Step::AboveCeiling if follows_rival && !beyond_next => KeyboardAnswer::Fits,
            Step::Possible | Step::AboveCeiling => {
                KeyboardAnswer::AboveCeiling { ceiling: most, hints: explain(figure, last, most) }
            }
            Step::SlippedBack => KeyboardAnswer::SlippedBack,
            Step::Backwards => backwards(most),
        }
    }
}
