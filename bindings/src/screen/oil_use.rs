//! Where a unit's oil goes.

use chrono::NaiveDate;
use sumpbook_daybook::screen::{BalanceRow, CarryOverRow, ChangeRow, ChangeWords, LabRow, OilUseRow};
use sumpbook_trade::oil::{Direction, OilClass, OilVerdict};
use sumpbook_trade::{EntryId, Stamp, Tenths};

use crate::values::UseBand;

/// The oil of a unit.
#[uniffi::remote(Record)]
pub struct OilUseRow {
    /// When the oil in it went in; none when records begin after that.
    pub filled: Option<Stamp>,
    /// Hours of the unit then.
    pub filled_hours: Option<Tenths>,
    /// Poured since, millilitres.
    pub made_up_ml: i64,
    /// It still settles: nothing is said of its use yet.
    pub settling: bool,
    /// What it uses when all is as it was, hundredths of a millilitre in an hour.
    pub usual_hundredths: Option<i64>,
    /// What may be used in an hour: the carry-over limit at this delivery.
    pub limit_hundredths: Option<i64>,
    /// What the newest balance says of the limit: key `oil-verdict-...`.
    pub verdict: Option<OilVerdict>,
    /// What leaves with the air.
    pub carry_over: Option<CarryOverRow>,
    /// Its use has changed.
    pub change: Option<ChangeRow>,
    /// Its balances, newest first.
    pub balances: Vec<BalanceRow>,
    /// Answers of the laboratory, newest first.
    pub lab: Vec<LabRow>,
}

/// What a fill used from one known level to the next.
#[uniffi::remote(Record)]
pub struct BalanceRow {
    /// The pour that closed it.
    pub id: EntryId,
    /// From when.
    pub from: Stamp,
    /// To when.
    pub to: Stamp,
    /// Hours of the unit at its end: where a chart draws it.
    pub at_hours: Tenths,
    /// Running hours it covers.
    pub hours: Tenths,
    /// Used, millilitres.
    pub used_ml: i64,
    /// Over the middle at its end, carried to the next; below zero what was missing, millilitres.
    pub carried_ml: i64,
    /// Used in an hour, hundredths of a millilitre.
    pub ml_per_hour_hundredths: Option<i64>,
    /// The least and the most it can have been; none when the glass's volume is not known.
    pub between_hundredths: Option<UseBand>,
    /// The fill was settling: kept apart.
    pub settling: bool,
    /// A hot level was corrected in it.
    pub corrected: bool,
}

/// What leaves with the air.
#[uniffi::remote(Record)]
pub struct CarryOverRow {
    /// Milligrams in a cubic metre, tenths.
    pub mg_m3_tenths: i64,
    /// It is a floor: said as "at least".
    pub at_least: bool,
    /// The class of ISO 8573-1.
    pub class: OilClass,
    /// Said as "class 4 or worse".
    pub or_worse: bool,
}

/// "Using 2.1x its usual since 3 Nov."
#[uniffi::remote(Record)]
pub struct ChangeRow {
    /// More or less.
    pub direction: Direction,
    /// Use since then over what is usual, tenths; none when nothing is usual.
    pub times_tenths: Option<i64>,
    /// Since this day of the yard.
    pub since: NaiveDate,
    /// Key of the words: what to look at.
    pub words: ChangeWords,
}

/// What to look at.
#[uniffi::remote(Enum)]
pub enum ChangeWords {
    /// Separator, scavenge line, leaks: `oil-use-more`.
    OilUseMore,
    /// Water, a pour not written down: `oil-use-less`.
    OilUseLess,
}

/// An answer of the laboratory, with the fill it belongs to.
#[uniffi::remote(Record)]
pub struct LabRow {
    /// Its entry.
    pub id: EntryId,
    /// When it came.
    pub at: Stamp,
    /// When the sample was drawn.
    pub drawn: Stamp,
    /// The bottle's number.
    pub bottle: String,
    /// Hours on the oil then.
    pub hours_on_oil: Option<Tenths>,
    /// The oil was changed since.
    pub changed_since: bool,
    /// In its words.
    pub words: String,
}
