//! The question about a whole file, in words.

use chrono::{Datelike, NaiveDate};
use sumpbook_daybook::text::Arg;

use crate::console::language::Language;
use crate::table_in::Ask;

/// What must be said before a file can be brought in.
pub(in crate::console) fn asked(language: Language, ask: &Ask) -> String {
    let told = |key: &str, day: NaiveDate| {
        let month = language.say(&format!("month-{}", day.month()), &[]);
        let (number, year) = (day.day().to_string(), day.year().to_string());
        let args = [("day", Arg::Text(&number)), ("month", Arg::Text(&month)), ("year", Arg::Text(&year))];
        language.say(key, &args)
    };
    let say = |args: &[(&str, &str)]| {
        let args: Vec<(&str, Arg<'_>)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        language.say(ask.key(), &args)
    };
    match ask {
        Ask::Dates { as_written, mdy, dmy, .. } => {
            say(&[("written", as_written), ("mdy", &told("ask-day", *mdy)), ("dmy", &told("ask-day", *dmy))])
        }
        Ask::DayNumber { row, as_written, day } => {
            say(&[("written", as_written), ("row", &row.to_string()), ("day", &told("ask-day-year", *day))])
        }
        Ask::Decimals { as_written, point, comma, .. } => {
            say(&[("written", as_written), ("point", point), ("comma", comma)])
        }
        Ask::DatesMixed { row, as_written, other_row, other_as_written }
        | Ask::DecimalsMixed { row, as_written, other_row, other_as_written } => say(&[
            ("written", as_written),
            ("row", &row.to_string()),
            ("other", other_as_written),
            ("other-row", &other_row.to_string()),
        ]),
    }
}
