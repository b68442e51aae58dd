//! What the sheet says first, told from its figures: the record's own sentences are in one language.

use sumpbook_daybook::text::Arg;
use sumpbook_trade::Stamp;

use crate::console::words::Words;
use crate::papers::ran_out;
use crate::sheet::{AgainstRow, DaySheet, Evening, ExpectedRow, Morning, NotReported, PhoneRow, Sections};

/// The sentences, without the one on phones.
pub(super) fn of(words: &Words, sheet: &DaySheet) -> Vec<String> {
    match &sheet.view {
        Sections::Evening(evening) => vec![reported(words, &evening.not_reported), locks(words, evening)],
        Sections::Morning(morning) => of_morning(words, morning, sheet.known_at),
    }
}

/// Phones: who was heard, who was not since when, and who is too new to be silent.
pub(super) fn phones(words: &Words, sheet: &DaySheet) -> String {
    let phones = &sheet.phones;
    if phones.of == 0 && phones.just_added.is_empty() {
        return words.t("phones-none");
    }
    let mut said = Vec::new();
    if phones.of > 0 {
        let since = words.at(phones.since);
        let (heard, of) = (("heard", count(phones.heard.len())), ("of", count(phones.of)));
        said.push(words.with("phones-heard", &[heard, of, ("since", Arg::Text(&since))]));
    }
    if !phones.not_heard.is_empty() {
        let quiet: Vec<String> = phones.not_heard.iter().map(|row| silent(words, row)).collect();
        said.push(words.with("phones-not-heard", &[("phones", Arg::Text(&quiet.join("; ")))]));
    }
    if !phones.just_added.is_empty() {
        let new = phones.just_added.iter().map(|row| {
            let at = words.at_or(row.added, "not-said");
            words.with("phone-added", &[("phone", Arg::Text(&row.phone)), ("when", Arg::Text(&at))])
        });
        let new = new.collect::<Vec<_>>().join("; ");
        said.push(words.with("phones-just-added", &[("phones", Arg::Text(&new))]));
    }
    said.join(" ")
}

fn silent(words: &Words, row: &PhoneRow) -> String {
    let (key, at) = match (row.last_heard, row.added) {
        (Some(at), _) => ("phone-since", at),
        (None, Some(added)) => ("phone-never-since", added),
        (None, None) => return words.with("phone-never", &[("phone", Arg::Text(&row.phone))]),
    };
    words.with(key, &[("phone", Arg::Text(&row.phone)), ("when", Arg::Text(&words.at(at)))])
}

fn count(n: usize) -> Arg<'static> {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

/// "6 of 7 expected out have reported; TH-07 is due out 19:00."
fn reported(words: &Words, of: &NotReported) -> String {
    if of.expected == 0 {
        return words.t("sentence-none-expected");
    }
    let all = [("done", count(of.reported.len())), ("of", count(of.expected))];
    let mut parts = vec![words.with("sentence-reported", &all)];
    if !of.rows.is_empty() {
        let doors = words.listed(of.rows.iter().map(|row| row.unit.clone()));
        parts.push(words.with("sentence-not-reported", &[("units", Arg::Text(&doors))]));
    }
    let out = |key: &str, row: &ExpectedRow, at: Option<Stamp>| {
        let at = words.at_or(at, "any-time");
        words.with(key, &[("unit", Arg::Text(&row.unit)), ("when", Arg::Text(&at))])
    };
    parts.extend(of.due_out.iter().map(|row| out("sentence-due-out", row, row.at)));
    let again = of.reported.iter().filter(|row| row.due_again.is_some());
    parts.extend(again.map(|row| out("sentence-due-again", row, row.due_again)));
    format!("{}.", parts.join("; "))
}

fn locks(words: &Words, evening: &Evening) -> String {
    let mut said = words.with("sentence-locks", &[("count", count(evening.locked.count))]);
    let against = &evening.against.rows;
    if !against.is_empty() {
        said.push_str("; ");
        said.push_str(&words.with("sentence-against", &[("count", count(against.len()))]));
        if against.iter().all(nobody_knew) {
            said.push_str(", ");
            said.push_str(&words.t("sentence-nobody-knew"));
        }
    }
    said.push('.');
    said
}

/// Used before the shop or the driver's phone could know of the lock.
pub(super) fn nobody_knew(row: &AgainstRow) -> bool {
    let after = |at: Option<Stamp>| at.is_none_or(|at| at > row.used);
    !row.could_know && !row.on_paper && after(row.shop_knew) && after(row.driver_knew)
}

fn of_morning(words: &Words, morning: &Morning, known_at: Stamp) -> Vec<String> {
    let doors = |road: bool| {
        let rows = morning.not_to_go_out.rows.iter().filter(|row| (row.lock == "road") == road);
        let mut doors: Vec<String> = rows.map(|row| row.unit.clone()).collect();
        doors.dedup();
        words.listed(doors)
    };
    let (road, air) = (doors(true), doors(false));
    let mut out = Vec::new();
    if road.is_empty() && air.is_empty() {
        let at = words.at(known_at);
        out.push(words.with("sentence-no-lock-known", &[("when", Arg::Text(&at))]));
    }
    if !road.is_empty() {
        out.push(words.with("sentence-not-out", &[("units", Arg::Text(&road))]));
    }
    if !air.is_empty() {
        out.push(words.with("sentence-air-locked", &[("units", Arg::Text(&air))]));
    }
    let over = words.listed(ran_out(&morning.due.papers).map(str::to_owned));
    if !over.is_empty() {
        out.push(words.with("sentence-inspection-over", &[("units", Arg::Text(&over))]));
    }
    out.push(words.with("sentence-certify", &[("count", count(morning.to_certify.count))]));
    let late = &morning.version_two;
    out.push(match late.closed {
        None => words.t("sentence-yesterday-open"),
        Some(version) => words.with(
            "sentence-yesterday-late",
            &[("count", count(late.came_late.count)), ("version", Arg::Count(i64::from(version)))],
        ),
    });
    out
}
