//! The cells of one row, each with what it says or why it says nothing.

use chrono::{NaiveDate, NaiveTime};
use sumpbook_trade::{Figure, Tenths, Unit};

use super::columns::{Head, volume_unit};
use super::dates::{self, Day};
use super::figures::{self, Figure as Number};
use super::{Asked, Column, Refused, Rounded, Why};

/// One row as it is read: what is wrong with it gathers in `refused`.
pub(super) struct Cells<'a> {
    pub(super) row: usize,
    pub(super) asked: &'a Asked,
    pub(super) today: NaiveDate,
    heads: &'a [Head],
    record: &'a [String],
    pub(super) refused: Vec<Refused>,
    /// Figures that were rounded to a tenth, as they were written: kept as words of the entry.
    pub(super) rounded: Vec<Rounded>,
}

/// What people write for "nobody knows", in lower case. Unknown is never zero.
const UNKNOWN: [&str; 12] =
    ["", "-", "--", "\u{2013}", "\u{2014}", "?", "n/a", "na", "unknown", "desconocido", "s/d", "#n/a"];

impl<'a> Cells<'a> {
    pub(super) fn new(
        row: usize,
        asked: &'a Asked,
        today: NaiveDate,
        heads: &'a [Head],
        record: &'a [String],
    ) -> Cells<'a> {
        Cells { row, asked, today, heads, record, refused: Vec::new(), rounded: Vec::new() }
    }

    /// Whether the file has this column.
    pub(super) fn has(&self, column: Column) -> bool {
        self.head(column).is_some()
    }

    fn head(&self, column: Column) -> Option<&'a Head> {
        self.heads.iter().find(|head| head.column == column)
    }

    /// A cell's words; none when it is blank. The sign that keeps a spreadsheet from reckoning is taken off.
    pub(super) fn text(&self, column: Column) -> Option<&'a str> {
        let written = self.record.get(self.head(column)?.place)?.trim();
        let guarded = written.strip_prefix('\'').filter(|rest| crate::table_out::would_reckon(rest));
        let text = guarded.unwrap_or(written);
        (!UNKNOWN.contains(&text.to_lowercase().as_str())).then_some(text)
    }

    /// As [`Cells::text`], refused when blank.
    pub(super) fn needed(&mut self, column: Column) -> Option<&'a str> {
        let text = self.text(column);
        if text.is_none() {
            self.refuse(column, Why::Blank);
        }
        text
    }

    /// Notes what is wrong with a cell.
    pub(super) fn refuse(&mut self, column: Column, why: Why) {
        let head = self.head(column);
        let written = head.and_then(|head| self.record.get(head.place)).cloned().unwrap_or_default();
        self.refused.push(Refused {
            row: self.row,
            field: head.map_or_else(|| column.name().to_owned(), |head| head.written.trim().to_owned()),
            as_written: written.chars().take(120).collect(),
            why,
        });
    }

    /// A day that has come, with its time of day where the cell holds one.
    pub(super) fn day(&mut self, column: Column) -> Option<(NaiveDate, Option<NaiveTime>)> {
        let text = self.needed(column)?;
        let why = match dates::read(text, self.asked.dates) {
            Day::One { day, .. } if day > self.today => Why::Ahead,
            // No set on a truck is older.
            Day::One { day, .. } if day < NaiveDate::from_ymd_opt(1980, 1, 1).unwrap_or_default() => {
                Why::LongAgo
            }
            Day::One { day, time, .. } => return Some((day, time)),
            Day::Wrong(why) => why,
            // The whole file waits for an answer: see `ask`.
            Day::Two { .. } | Day::Number(_) => return None,
        };
        self.refuse(column, why);
        None
    }

    /// A time of day of its own column.
    pub(super) fn time(&mut self) -> Option<NaiveTime> {
        let text = self.text(Column::Time)?;
        let time = dates::clock(text);
        if time.is_none() {
            self.refuse(Column::Time, Why::NotATime);
        }
        time
    }

    /// Hours of a meter; none when blank, and when refused.
    pub(super) fn hours(&mut self, column: Column) -> Option<Tenths> {
        let text = self.text(column)?;
        let read = match figures::clock_hours(text) {
            Some(read) => read.map(|hours| (hours, true)),
            None => self.plain(without_word(text)).and_then(|plain| figures::tenths(&plain)),
        };
        match read {
            Ok((hours, rounded)) => {
                if rounded {
                    let field =
                        self.head(column).map_or_else(String::new, |head| head.written.trim().to_owned());
                    let as_written = text.chars().take(120).collect();
                    self.rounded.push(Rounded { row: self.row, field, as_written, kept: hours });
                }
                Some(hours)
            }
            Err(why) => {
                self.refuse(column, why);
                None
            }
        }
    }

    /// An amount with its unit, from the head or the cell.
    pub(super) fn volume(&mut self, column: Column) -> Option<Figure> {
        let text = self.text(column)?;
        let digits_end = text.rfind(|c: char| c.is_ascii_digit()).map_or(0, |at| at + 1);
        let (number, said) = text.split_at_checked(digits_end).unwrap_or((text, ""));
        let unit = match said.trim() {
            "" => self.head(column).and_then(|head| head.unit),
            said => volume_unit(said),
        };
        let read = unit.ok_or(Why::NoVolumeUnit).and_then(|unit: Unit| {
            let plain = self.plain(number)?;
            Figure::parse(&plain, unit).map_err(|_| Why::NotAFigure)
        });
        read.map_err(|why| self.refuse(column, why)).ok()
    }

    /// Percent of the glass, whole.
    pub(super) fn percent(&mut self, column: Column) -> Option<u8> {
        let text = self.text(column)?;
        let percent = text.trim_end_matches('%').trim().parse::<u8>().ok().filter(|percent| *percent <= 100);
        if percent.is_none() {
            self.refuse(column, Why::NotAPercent);
        }
        percent
    }

    fn plain(&self, text: &str) -> Result<String, Why> {
        match figures::read(text, self.asked.decimals) {
            Number::One { plain, .. } => Ok(plain),
            Number::Wrong(why) => Err(why),
            // Asked before any row is read: see `ask`.
            Number::Two { .. } => Err(Why::OtherDecimals),
        }
    }
}

/// Hours without the word behind them.
pub(super) fn without_word(text: &str) -> &str {
    let bare = text.trim().trim_end_matches(|c: char| c.is_alphabetic() || c == '.' || c == ' ');
    // A figure that ends in a point keeps it: it is no figure.
    if text.trim().ends_with('.')
        && !text.trim().ends_with(char::is_alphabetic)
        && !text.contains(char::is_alphabetic)
    {
        return text.trim();
    }
    bare
}
