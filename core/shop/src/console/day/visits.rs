//! Who comes in: a visit's work in words, and what the board says of tomorrow.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use crate::console::words::Words;
use crate::sheet::{Evening, VisitRow};

/// Its tasks, then the items of its defects.
pub(super) fn work(words: &Words, row: &VisitRow) -> String {
    let tasks = row.tasks.iter().map(|task| words.task(task));
    words.listed(tasks.chain(row.defects.iter().map(|of| words.item(&of.item, of.place.as_deref()))))
}

/// "Tomorrow: not to go out TH-02; bay TH-08", which ends the board.
pub(super) fn tomorrow(words: &Words, sheet: &Evening) -> Markup {
    let locked = |road: bool| {
        let rows = sheet.locked.rows.iter().filter(|row| (row.lock == "road") == road);
        doors(rows.map(|row| &row.unit))
    };
    let bays = doors(sheet.bays_tomorrow.rows.iter().map(|row| &row.unit));
    let parts = [("tomorrow-not-out", locked(true)), ("tomorrow-air", locked(false)), ("tomorrow-bay", bays)];
    let part = |(key, units): (&str, Vec<String>)| {
        let count = i64::try_from(units.len()).unwrap_or(i64::MAX);
        let said = words.listed(units);
        (count > 0).then(|| words.with(key, &[("count", Arg::Count(count)), ("units", Arg::Text(&said))]))
    };
    let said: Vec<String> = parts.into_iter().filter_map(part).collect();
    let said = if said.is_empty() { words.t("tomorrow-nothing") } else { said.join("; ") };
    html! { p class="says" id="tomorrow" { (words.with("tomorrow", &[("what", Arg::Text(&said))])) } }
}

/// Door numbers, each once.
fn doors<'a>(units: impl Iterator<Item = &'a String>) -> Vec<String> {
    let mut units: Vec<String> = units.cloned().collect();
    units.sort();
    units.dedup();
    units
}
