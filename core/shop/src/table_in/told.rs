//! What a dry run tells.

use chrono::NaiveDate;
use serde::Serialize;
use sumpbook_trade::record::Source;
use sumpbook_trade::{EntryId, Stamp, Tenths};

use super::{Ask, DateStyle, DecimalStyle, What, Why};

/// What bringing a file in would do.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct DryRun {
    /// What it holds.
    pub what: What,
    /// How it writes its days, as far as it was said.
    pub dates: Option<DateStyle>,
    /// How it writes its decimals, as far as it was said.
    pub decimals: Option<DecimalStyle>,
    /// SHA-256 over the file and what was said about it: bringing in asks for it.
    pub seen: String,
    /// What must be said first; then nothing else was worked out.
    pub ask: Option<Ask>,
    /// Rows that would come in.
    pub good: usize,
    /// Rows that are refused.
    pub refused_rows: usize,
    /// Rows that are here already.
    pub here: usize,
    /// Each refused field.
    pub refused: Vec<Refused>,
    /// Each row that is here already.
    pub already: Vec<Already>,
    /// The first good rows as they were read.
    pub first: Vec<ReadAs>,
    /// Each figure of a good row that is kept otherwise than it is written.
    pub rounded: Vec<Rounded>,
    /// Heads of columns with which nothing is done.
    pub unused: Vec<String>,
}

/// A field that cannot be brought in, and its row with it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Refused {
    /// The row as a spreadsheet counts: the heads are row 1.
    pub row: usize,
    /// The column's head.
    pub field: String,
    /// As it is written.
    pub as_written: String,
    /// Why.
    pub why: Why,
}

/// A row that is here already.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Already {
    /// The row.
    pub row: usize,
    /// Where.
    #[serde(flatten)]
    pub here: Here,
}

/// Where a row is already.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "here", rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum Here {
    /// In the books.
    Recorded {
        /// The entry.
        entry: EntryId,
        /// Its moment.
        at: Stamp,
        /// How it came to be written down.
        source: Source,
    },
    /// The unit is registered so.
    Registered,
    /// In an earlier row of the same file.
    Row {
        /// That row.
        same_as: usize,
    },
}

/// A good row as it was read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct ReadAs {
    /// The row.
    pub row: usize,
    /// The unit.
    pub unit: String,
    /// The day.
    pub day: NaiveDate,
    /// The hours.
    pub hours: Option<Tenths>,
    /// Of a service its tasks.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub tasks: Vec<String>,
    /// Of a pour its fluid: a key of the texts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fluid: Option<String>,
    /// What was poured in, or put in at a service: "0.21 qt".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume: Option<String>,
}

/// Hours that are kept to the tenth, and so otherwise than they are written.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Rounded {
    /// The row.
    pub row: usize,
    /// The column's head.
    pub field: String,
    /// As they are written.
    pub as_written: String,
    /// As they are kept.
    pub kept: Tenths,
}
