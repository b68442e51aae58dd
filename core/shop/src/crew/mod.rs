//! What the crew's records say over weeks: patterns, never one morning, and no figure of a person that he does not
//! see on his own phone first.
//!
//! How quick the walks were is told of the whole crew. Of a person stands only how much of the records is his, once
//! there are enough of them; who has fewer stands among the others.

mod repairs;
mod walks;

use chrono::{Days, NaiveDate};
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Stamp;

use crate::ShopError;
use crate::due::due_list;
use crate::sheet::Yard;
pub use repairs::{OpenDefect, RepairedInDays, Repeated};
pub use walks::{ShareRow, Walks};

/// Checks below which nothing is a pattern: as many as a person's own figures are of.
pub const ENOUGH: usize = 20;

/// The crew over some weeks.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct CrewWeeks {
    /// First day of the yard.
    pub from: NaiveDate,
    /// Last day: today.
    pub to: NaiveDate,
    /// Whole walks of everybody.
    pub walks: Walks,
    /// How much of the records is whose, in the order of names; only of those with at least [`ENOUGH`].
    pub shares: Vec<ShareRow>,
    /// Everybody else together.
    pub others: Option<ShareRow>,
    /// Defects found in these weeks at an item that was certified within 30 days before, newest first.
    pub repeats: Vec<Repeated>,
    /// How long repairs took.
    pub repairs: RepairedInDays,
    /// Tasks past due now.
    pub past_due: PastDue,
}

/// Tasks past due now.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct PastDue {
    /// Tasks, of sets that are laid up too.
    pub tasks: usize,
    /// Units they are on.
    pub units: usize,
    /// Of the tasks, those that wait for a part.
    pub waiting_for_part: usize,
}

/// The crew over the last weeks, today included.
///
/// # Errors
/// As any read; and for weeks before the calendar.
pub fn crew_weeks(ledger: &Ledger, weeks: u32, now: Stamp) -> Result<CrewWeeks, ShopError> {
    let to = ledger.fleet().yard_day(now);
    let yard = Yard::of(ledger, to, now)?;
    let days = u64::from(weeks).saturating_mul(7).saturating_sub(1);
    let from = to.checked_sub_days(Days::new(days)).ok_or(ShopError::DayBeyond(to))?;
    let (walks, shares, others) = walks::read(ledger, &yard, from)?;
    let (repeats, repairs) = repairs::read(ledger, &yard, from)?;
    Ok(CrewWeeks { from, to, walks, shares, others, repeats, repairs, past_due: past_due(ledger, now)? })
}

fn past_due(ledger: &Ledger, now: Stamp) -> Result<PastDue, ShopError> {
    let rows: Vec<_> =
        due_list(ledger, now)?.into_every_row().filter(|row| row.state == "past-due").collect();
    let units: std::collections::BTreeSet<&str> = rows.iter().map(|row| row.unit.as_str()).collect();
    Ok(PastDue {
        tasks: rows.len(),
        units: units.len(),
        waiting_for_part: rows.iter().filter(|row| row.waiting_for.is_some()).count(),
    })
}

/// So many hundredths, to the nearest; none of nothing.
pub(crate) fn percent(part: usize, of: usize) -> Option<u32> {
    let of = u64::try_from(of).ok().filter(|of| *of > 0)?;
    let part = u64::try_from(part).ok()?.saturating_mul(200).saturating_add(of);
    u32::try_from(part.checked_div(of.saturating_mul(2))?).ok()
}

#[cfg(test)]
mod tests {
    use super::percent;

    #[test]
    fn a_share_is_to_the_nearest_and_of_nothing_there_is_none() {
        assert_eq!(percent(1, 3), Some(33));
        assert_eq!(percent(2, 3), Some(67));
        assert_eq!(percent(1, 200), Some(1));
        assert_eq!(percent(0, 7), Some(0));
        assert_eq!(percent(7, 7), Some(100));
        assert_eq!(percent(0, 0), None);
    }
}
