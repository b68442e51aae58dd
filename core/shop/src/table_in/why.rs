//! Why a row is refused.

use std::fmt;

use serde::Serialize;

/// Why one field of a row cannot be brought in. Its kebab-case name is a key of the console's texts after `why-`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Why {
    /// Nothing stands there, and without it there is no record.
    Blank,
    /// Not a day.
    NotADate,
    /// No month of that number.
    NoSuchMonth,
    /// That month has no such day.
    NoSuchDay,
    /// A year in two digits, and nobody said how this file writes its days.
    ShortYear,
    /// Not written the way that was said for the whole file.
    OtherDates,
    /// It has not come yet.
    Ahead,
    /// Before any unit here can have run.
    LongAgo,
    /// Not a time of day.
    NotATime,
    /// Not a figure.
    NotAFigure,
    /// Its decimals are not written the way that was said for the whole file.
    OtherDecimals,
    /// Below zero.
    Negative,
    /// More than a meter or a can holds.
    TooLarge,
    /// An hour has no such minute.
    NoSuchMinute,
    /// No unit of that door number.
    UnknownUnit,
    /// Not a task of that unit's programme.
    UnknownTask,
    /// Not a fluid.
    UnknownFluid,
    /// Not a family of oil.
    UnknownFamily,
    /// Not a meter.
    UnknownMeter,
    /// Not something a unit has or has not.
    UnknownFeature,
    /// An amount without its unit.
    NoVolumeUnit,
    /// Not a percentage of the glass.
    NotAPercent,
    /// A unit of that door number is here and is registered otherwise.
    HereOtherwise,
    /// A set of that serial stands on another unit.
    SetElsewhere,
    /// An earlier row of the file has that door number.
    TwiceInFile,
    /// More than an entry holds.
    TooLong,
}

impl Why {
    /// Every reason.
    pub const ALL: [Why; 26] = [
        Why::Blank,
        Why::NotADate,
        Why::NoSuchMonth,
        Why::NoSuchDay,
        Why::ShortYear,
        Why::OtherDates,
        Why::Ahead,
        Why::LongAgo,
        Why::NotATime,
        Why::NotAFigure,
        Why::OtherDecimals,
        Why::Negative,
        Why::TooLarge,
        Why::NoSuchMinute,
        Why::UnknownUnit,
        Why::UnknownTask,
        Why::UnknownFluid,
        Why::UnknownFamily,
        Why::UnknownMeter,
        Why::UnknownFeature,
        Why::NoVolumeUnit,
        Why::NotAPercent,
        Why::HereOtherwise,
        Why::SetElsewhere,
        Why::TwiceInFile,
        Why::TooLong,
    ];

    /// Its name, a key of the console's texts after `why-`.
    pub fn key(self) -> &'static str {
        match self {
            Why::Blank => "blank",
            Why::NotADate => "not-a-date",
            Why::NoSuchMonth => "no-such-month",
            Why::NoSuchDay => "no-such-day",
            Why::ShortYear => "short-year",
            Why::OtherDates => "other-dates",
            Why::Ahead => "ahead",
            Why::LongAgo => "long-ago",
            Why::NotATime => "not-a-time",
            Why::NotAFigure => "not-a-figure",
            Why::OtherDecimals => "other-decimals",
            Why::Negative => "negative",
            Why::TooLarge => "too-large",
            Why::NoSuchMinute => "no-such-minute",
            Why::UnknownUnit => "unknown-unit",
            Why::UnknownTask => "unknown-task",
            Why::UnknownFluid => "unknown-fluid",
            Why::UnknownFamily => "unknown-family",
            Why::UnknownMeter => "unknown-meter",
            Why::UnknownFeature => "unknown-feature",
            Why::NoVolumeUnit => "no-volume-unit",
            Why::NotAPercent => "not-a-percent",
            Why::HereOtherwise => "here-otherwise",
            Why::SetElsewhere => "set-elsewhere",
            Why::TwiceInFile => "twice-in-file",
            Why::TooLong => "too-long",
        }
    }
}

/// In English, as the command line says it; the console has it in its own texts.
impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&crate::console::said_in_english(&format!("why-{}", self.key())))
    }
}
