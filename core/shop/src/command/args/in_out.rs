//! What comes in and goes out of the shop as tables and files.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use sumpbook_trade::Stamp;

use crate::table_in::{DateStyle, DecimalStyle, What};
use crate::table_out::Kind;

/// `bring-in`
#[derive(Debug, Args)]
pub(in crate::command) struct BringIn {
    /// The table, as CSV
    pub file: PathBuf,
    /// What it holds
    #[arg(long, value_enum)]
    pub what: WhatAsked,
    /// How it writes its days; asked when it must be known
    #[arg(long, value_enum)]
    pub dates: Option<DatesAsked>,
    /// Which sign stands before its decimals; asked when it must be known
    #[arg(long, value_enum)]
    pub decimals: Option<DecimalsAsked>,
    /// Bring in what the dry run saw: the digest it printed, whole
    #[arg(long, value_name = "DIGEST", requires = "by")]
    pub seen: Option<String>,
    /// Who brings it in
    #[arg(long, value_name = "NAME")]
    pub by: Option<String>,
    /// Write the refused rows into this file, to be mended
    #[arg(long, value_name = "FILE")]
    pub refused: Option<PathBuf>,
    /// When they count as received; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// What a table holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::command) enum WhatAsked {
    /// Units: unit, in service, in service hours, truck serial, plate, set serial, features, oil family, oil grade
    Units,
    /// Services: unit, date, task, hours, time, parts, volume, oil family, oil grade, note
    Services,
    /// Readings of meters: unit, date, hours, time, meter, note
    Readings,
    /// Fluids poured: unit, date, fluid, volume, hours, time, oil family, oil grade, before, after, note
    Pours,
}

impl WhatAsked {
    pub(in crate::command) fn what(self) -> What {
        match self {
            WhatAsked::Units => What::Units,
            WhatAsked::Services => What::Services,
            WhatAsked::Readings => What::Readings,
            WhatAsked::Pours => What::Pours,
        }
    }
}

/// How days are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::command) enum DatesAsked {
    /// Month first: 10/12/2026 is 12 October
    Mdy,
    /// Day first: 10/12/2026 is 10 December
    Dmy,
    /// Only 2026-10-12
    Iso,
    /// Numbers of a spreadsheet
    Serial,
}

impl DatesAsked {
    pub(in crate::command) fn style(self) -> DateStyle {
        match self {
            DatesAsked::Mdy => DateStyle::Mdy,
            DatesAsked::Dmy => DateStyle::Dmy,
            DatesAsked::Iso => DateStyle::Iso,
            DatesAsked::Serial => DateStyle::Serial,
        }
    }
}

/// How decimals are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::command) enum DecimalsAsked {
    /// 1,204.7
    Point,
    /// 1.204,7
    Comma,
}

impl DecimalsAsked {
    pub(in crate::command) fn style(self) -> DecimalStyle {
        match self {
            DecimalsAsked::Point => DecimalStyle::Point,
            DecimalsAsked::Comma => DecimalStyle::Comma,
        }
    }
}

/// `take-out`
#[derive(Debug, Args)]
pub(in crate::command) struct TakeOut {
    /// Which table
    #[arg(value_parser = kind, value_name = "KIND")]
    pub kind: Kind,
    /// Where to write it; standard output when left out
    #[arg(long, value_name = "FILE")]
    pub to: Option<PathBuf>,
    /// A unit it is about; may be given several times; all units when left out
    #[arg(long = "unit", value_name = "DOOR")]
    pub units: Vec<String>,
    /// Begin with the mark by which some spreadsheets see that it is UTF-8
    #[arg(long)]
    pub mark: bool,
    /// What the shop knew then
    #[arg(long, value_name = "TIME")]
    pub as_of: Option<Stamp>,
}

fn kind(text: &str) -> Result<Kind, String> {
    Kind::named(text).ok_or_else(|| {
        let all: Vec<&str> = Kind::ALL.iter().map(|kind| kind.name()).collect();
        format!("there is no such table. Tables: {}", all.join(", "))
    })
}

/// `calendar`
#[derive(Debug, Args)]
pub(in crate::command) struct Calendar {
    /// Write the feed into this file
    #[arg(long, value_name = "FILE")]
    pub to: Option<PathBuf>,
    /// Make an address under which the hub serves it; one made before ends
    #[arg(long, conflicts_with = "end")]
    pub make: bool,
    /// End the address
    #[arg(long)]
    pub end: bool,
    /// Words of the feed, by the language's tag
    #[arg(long, default_value = "en", value_name = "TAG")]
    pub language: String,
    /// The feed as the shop knew it then; it is written and not kept, so its numbers begin anew
    #[arg(long, value_name = "TIME", requires = "to", conflicts_with_all = ["make", "end"])]
    pub as_of: Option<Stamp>,
}

/// `pack`
#[derive(Debug, Args)]
pub(in crate::command) struct Pack {
    /// Where to write it
    pub file: PathBuf,
    /// A unit it is about; may be given several times; all units when left out
    #[arg(long = "unit", value_name = "DOOR")]
    pub units: Vec<String>,
    /// The page that is read first, and the heads of the tables, in Spanish too
    #[arg(long)]
    pub spanish: bool,
    /// What the shop knew then
    #[arg(long, value_name = "TIME")]
    pub as_of: Option<Stamp>,
}

/// `verify`
#[derive(Debug, Args)]
pub(in crate::command) struct Verify {
    /// What the shop knew then
    #[arg(long, value_name = "TIME", conflicts_with = "pack")]
    pub as_of: Option<Stamp>,
    /// Verify this evidence pack instead of the shop's books
    #[arg(long, value_name = "FILE")]
    pub pack: Option<PathBuf>,
    /// The fingerprint of the shop's key, as the shop says it; the shop's own folder is asked when left out
    #[arg(long, value_name = "FINGERPRINT", requires = "pack")]
    pub key: Option<String>,
}

/// A verb that writes one file.
#[derive(Debug, Args)]
pub(in crate::command) struct ToFile {
    /// Where to write it
    pub file: PathBuf,
}

/// `restore` and `import`
#[derive(Debug, Args)]
pub(in crate::command) struct FromFile {
    /// The file
    pub file: PathBuf,
}
