//! Air for the job: a calculator that records nothing.

use sumpbook_daybook::screen::{
    self, AirAnswer, AirAnswerRow, AirField, AirFieldRow, AirFigure, AirForTheJob, AirOffered, AirPart,
    AirQuery, AirSaid, AirWarningRow, ShortRuns,
};
use sumpbook_trade::TruckId;

use crate::error::PhoneError;
use crate::phone::Phone;

/// A figure that is asked for.
#[uniffi::remote(Enum)]
pub enum AirField {
    /// Rated delivery; the unit's own where nothing is said.
    Delivery,
    /// The pressure it holds, gauge.
    Holds,
    /// Height over the sea.
    Altitude,
    /// Temperature at the intake.
    Intake,
    /// Relative humidity.
    Humidity,
    /// The oil's temperature in the receiver.
    Oil,
    /// Free air one tool takes.
    Takes,
    /// The pressure it wants, gauge.
    At,
    /// How many of it.
    Count,
    /// Part of the time it is pulled.
    Share,
    /// The hose's inside diameter.
    Bore,
    /// The hose's length.
    Length,
    /// Claw couplings in it.
    Couplings,
    /// Quick couplings in it.
    QuickCouplings,
    /// Elbows in it.
    Elbows,
    /// Valves in it, full open.
    Valves,
    /// Filters and oilers in it.
    Oilers,
    /// Pressure at the nozzle when cleaning with air, gauge.
    Nozzle,
}

/// What a figure is about.
#[uniffi::remote(Enum)]
pub enum AirPart {
    /// Unit and place.
    Place,
    /// A tool.
    Tool,
    /// The hose.
    Hose,
    /// Cleaning with air.
    Cleaning,
}

/// What was said of one figure.
#[uniffi::remote(Record)]
pub struct AirSaid {
    /// Which.
    pub field: AirField,
    /// Of which tool, from 1; 0 of none.
    pub tool: u8,
    /// As it was written: "100", "3/4", "1 1/4", "5,906".
    pub said: String,
}

/// A width that may be meant: a hose of the unit by its tag, or a usual one.
#[uniffi::remote(Record)]
pub struct AirOffered {
    /// The tag of a hose of the unit; none: a usual width.
    pub tag: Option<String>,
    /// What is said by taking it.
    pub said: String,
}

/// One figure of the form.
#[uniffi::remote(Record)]
pub struct AirFieldRow {
    /// Which.
    pub field: AirField,
    /// Of which tool, from 1; 0 of none.
    pub tool: u8,
    /// What it is about.
    pub part: AirPart,
    /// Key of its name.
    pub key: String,
    /// Its unit as it is written beside it; empty for a bare number.
    pub unit: String,
    /// Decimals, for keys without a point.
    pub places: u8,
    /// It may lie below zero.
    pub below_zero: bool,
    /// What was said, at most 20 letters of it; none: nothing.
    pub said: Option<String>,
    /// What was said is no figure for it: it was left out.
    pub wrong: bool,
    /// The unit's own figure, taken where nothing is said.
    pub own: Option<String>,
    /// Widths that may be meant.
    pub offered: Vec<AirOffered>,
    /// Without it something stays unknown that a job wants to know.
    pub wanted: bool,
}

/// A rounded figure with its unit.
#[uniffi::remote(Record)]
pub struct AirFigure {
    /// The number as text.
    pub value: String,
    /// The unit as it is written beside it.
    pub unit: String,
}

/// One line of the answer.
#[uniffi::remote(Record)]
pub struct AirAnswerRow {
    /// Key of what it is.
    pub key: String,
    /// Key of how it is told, about `$figure`: about, at least, at most; or that it is not known.
    pub told: String,
    /// The figure; none: it is not known.
    pub figure: Option<AirFigure>,
}

/// One thing to look out for. It refuses nothing.
#[uniffi::remote(Record)]
pub struct AirWarningRow {
    /// Key of what, about `$figure`.
    pub key: String,
    /// By how much, or the figure it is about.
    pub figure: Option<AirFigure>,
    /// Where the limit is written; none: the text `<key>-source` says where it comes from.
    pub cites: Option<String>,
}

/// The answer.
#[uniffi::remote(Record)]
pub struct AirAnswer {
    /// Its lines, in order.
    pub rows: Vec<AirAnswerRow>,
    /// Keys of what stood in for figures that were not given.
    pub stood_in: Vec<String>,
    /// What to look out for.
    pub warnings: Vec<AirWarningRow>,
}

/// Runs of the last 60 days.
#[uniffi::remote(Record)]
pub struct ShortRuns {
    /// Runs with a start and a stop.
    pub runs: u32,
    /// Of them under 15 minutes.
    pub short: u32,
    /// Short ones of a hundred, to the nearest.
    pub percent: u32,
    /// Half or more, of at least four.
    pub run_it_warm: bool,
}

/// The calculator: what is asked, and what comes of it.
#[uniffi::remote(Record)]
pub struct AirForTheJob {
    /// The unit's door number; none: no unit was named.
    pub door: Option<String>,
    /// m3/min, kPa, m, degC, mm instead of cfm, psi, ft, degF, in.
    pub metric: bool,
    /// The figures it asks for, in the order of the form. A tool's stand once for each tool there is room for.
    pub fields: Vec<AirFieldRow>,
    /// A device that cuts the flow is there; none: nobody said.
    pub cut_off: Option<bool>,
    /// Cleaning with air is part of the job.
    pub blowing: bool,
    /// A chip guard and eye protection are there.
    pub guarded: bool,
    /// The answer; none while delivery or pressure are not known.
    pub answer: Option<AirAnswer>,
    /// How many of the unit's runs are too short to boil water off; none: no whole run is on record.
    pub short_runs: Option<ShortRuns>,
}

/// What is said of a job beside its figures.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct JobSaid {
    /// The figures.
    pub figures: Vec<AirSaid>,
    /// A device that cuts the flow when the hose fails is there; none: nobody said.
    pub cut_off: Option<bool>,
    /// Cleaning with air is part of the job.
    pub blowing: bool,
    /// A chip guard and eye protection are there.
    pub guarded: bool,
}

#[uniffi::export]
impl Phone {
    /// Whether there is air enough for a job with this unit, in US units or metric ones. It keeps nothing.
    ///
    /// # Errors
    /// As any read.
    pub fn air_for_the_job(
        &self,
        unit: TruckId,
        metric: bool,
        said: JobSaid,
    ) -> Result<AirForTheJob, PhoneError> {
        let query = AirQuery {
            unit: Some(unit),
            metric,
            said: said.figures,
            cut_off: said.cut_off,
            blowing: said.blowing,
            guarded: said.guarded,
        };
        self.read(|book, now| Ok(screen::air_for_the_job(book.ledger(), &query, now)?))
    }
}
