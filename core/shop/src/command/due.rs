//! `due`: what runs out first.

use std::path::Path;

use super::args::Reading;
use super::day_sheet::Words;
use super::exchange::known_at;
use super::out::Said;
use super::CommandError;
use crate::Shop;
use crate::due::{DueRow, due_list};
use crate::table::table;

/// The due list of the fleet.
///
/// # Errors
/// As any read.
pub fn due(folder: &Path, args: &Reading) -> Result<Said, CommandError> {
    let mut shop = Shop::open(folder)?;
    let (then, now) = known_at(&mut shop, args.as_of)?;
    let ledger = then.as_ref().unwrap_or(&shop.ledger);
    let list = due_list(ledger, now)?;
    let words = Words::new(ledger.fleet(), ledger.fleet().yard_day(now));
    let text = format!(
        "Due, as known at {}: what runs out first stands first\n{}",
        now.moment().format("%a %-d %b %Y %H:%M"),
        due_rows(&words, &list.rows)
    );
    Said::new(text, &list)
}

/// Tasks as rows of a table.
pub(super) fn due_rows(words: &Words, rows: &[DueRow]) -> String {
    let rows = rows.iter().map(|row| {
        let mut hours = row.hours_left.clone().unwrap_or_else(|| "-".to_owned());
        if row.higher_of_disputed {
            hours.push_str(" (higher of disputed)");
        }
        if row.across_unanswered_jump {
            hours.push_str(" (across an unanswered jump)");
        }
        let part = row.waiting_for.as_ref().map_or_else(String::new, |part| {
            format!("{}, promised {}", part.part, words.day(part.promised))
        });
        [
            row.unit.clone(),
            words.task(&row.task),
            hours,
            words.day(row.last_good_day),
            row.runs_out_first.clone(),
            row.said.clone(),
            part,
        ]
    });
    table(["Unit", "Task", "Hours left", "Last good day", "First to run out", "State", "Part"], rows)
}
