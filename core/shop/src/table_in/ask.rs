//! What must be said before a file can be read: how it writes its days and its decimals. Never guessed.

use std::fmt;

use chrono::NaiveDate;
use serde::Serialize;

use super::cells::without_word;
use super::columns::Head;
use super::dates::{self, Day};
use super::figures::{self, Figure};
use super::{Asked, Column, DateStyle, DecimalStyle};

/// A question about the whole file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "ask", rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum Ask {
    /// A day can be two.
    Dates {
        /// The row.
        row: usize,
        /// As written.
        as_written: String,
        /// Month first.
        mdy: NaiveDate,
        /// Day first.
        dmy: NaiveDate,
    },
    /// One day can only be read month first, another only day first.
    DatesMixed {
        /// The row that is only month first.
        row: usize,
        /// As written.
        as_written: String,
        /// The row that is only day first.
        other_row: usize,
        /// As written.
        other_as_written: String,
    },
    /// A bare number stands for a day.
    DayNumber {
        /// The row.
        row: usize,
        /// As written.
        as_written: String,
        /// The day it is when it is a spreadsheet's day number.
        day: NaiveDate,
    },
    /// A figure can be two.
    Decimals {
        /// The row.
        row: usize,
        /// As written.
        as_written: String,
        /// With a point before the decimals.
        point: String,
        /// With a comma before them.
        comma: String,
    },
    /// One figure has its decimals after a point, another after a comma.
    DecimalsMixed {
        /// The row with a point.
        row: usize,
        /// As written.
        as_written: String,
        /// The row with a comma.
        other_row: usize,
        /// As written.
        other_as_written: String,
    },
}

impl Ask {
    /// Its key in the console's texts.
    pub fn key(&self) -> &'static str {
        match self {
            Ask::Dates { .. } => "ask-dates",
            Ask::DatesMixed { .. } => "ask-dates-mixed",
            Ask::DayNumber { .. } => "ask-day-number",
            Ask::Decimals { .. } => "ask-decimals",
            Ask::DecimalsMixed { .. } => "ask-decimals-mixed",
        }
    }
}

/// In English, as the command line says it.
impl fmt::Display for Ask {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&crate::console::asked_in_english(self))
    }
}

/// Goes through the columns that hold days and figures; the first thing that can be read two ways is the
/// question.
pub(super) fn ask(asked: &Asked, heads: &[Head], rows: &[(usize, Vec<String>)]) -> Option<Ask> {
    let cells = |columns: &'static [Column]| {
        rows.iter().flat_map(move |(row, record)| {
            heads
                .iter()
                .filter(move |head| columns.contains(&head.column))
                .filter_map(move |head| Some((*row, record.get(head.place)?.trim())))
        })
    };
    days(asked, cells(&[Column::Date, Column::InService]))
        .or_else(|| decimals(asked, cells(&[Column::Hours, Column::InServiceHours, Column::Volume])))
}

fn days<'a>(asked: &Asked, cells: impl Iterator<Item = (usize, &'a str)>) -> Option<Ask> {
    let mut first: [Option<(usize, &str)>; 2] = [None, None];
    for (row, text) in cells {
        let as_written = text.to_owned();
        match dates::read(text, asked.dates) {
            Day::Two { mdy, dmy } => return Some(Ask::Dates { row, as_written, mdy, dmy }),
            Day::Number(day) => return Some(Ask::DayNumber { row, as_written, day }),
            Day::One { only: Some(DateStyle::Mdy), .. } => first[0] = first[0].or(Some((row, text))),
            Day::One { only: Some(_), .. } => first[1] = first[1].or(Some((row, text))),
            Day::One { .. } | Day::Wrong(_) => {}
        }
    }
    let [Some((row, one)), Some((other_row, other))] = first else { return None };
    Some(Ask::DatesMixed { row, as_written: one.to_owned(), other_row, other_as_written: other.to_owned() })
}

fn decimals<'a>(asked: &Asked, cells: impl Iterator<Item = (usize, &'a str)>) -> Option<Ask> {
    let mut first: [Option<(usize, &str)>; 2] = [None, None];
    for (row, text) in cells {
        let as_written = text.to_owned();
        match figures::read(without_word(text), asked.decimals) {
            Figure::Two { point, comma } => return Some(Ask::Decimals { row, as_written, point, comma }),
            Figure::One { only: Some(DecimalStyle::Point), .. } => first[0] = first[0].or(Some((row, text))),
            Figure::One { only: Some(_), .. } => first[1] = first[1].or(Some((row, text))),
            Figure::One { .. } | Figure::Wrong(_) => {}
        }
    }
    let [Some((row, one)), Some((other_row, other))] = first else { return None };
    Some(Ask::DecimalsMixed {
        row,
        as_written: one.to_owned(),
        other_row,
        other_as_written: other.to_owned(),
    })
}
