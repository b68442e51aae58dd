//! Where a unit's oil goes, as the unit's page and the top-up show it.
//!
//! Whole numbers with their step in the name: a shell writes the unit beside them and never rounds again.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::oil::{Balance, Direction, MlPerHour, NoVerdict, OilClass, OilVerdict};
use sumpbook_trade::{EntryId, Stamp, Tenths};

use crate::fleet::Fleet;
use crate::state::{LabNow, OilNow};

/// What a fill used from one known level to the next.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
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
    pub between_hundredths: Option<(i64, i64)>,
    /// The fill was settling: kept apart.
    pub settling: bool,
    /// A hot level was corrected in it.
    pub corrected: bool,
}

/// What leaves with the air.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ChangeWords {
    /// Separator, scavenge line, leaks: `oil-use-more`.
    OilUseMore,
    /// Water, a pour not written down: `oil-use-less`.
    OilUseLess,
}

/// An answer of the laboratory, with the fill it belongs to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
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

/// The oil of a unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
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

/// Key of the words for a verdict.
pub fn verdict_key(verdict: OilVerdict) -> &'static str {
    match verdict {
        OilVerdict::Under => "oil-verdict-under",
        OilVerdict::Over => "oil-verdict-over",
        OilVerdict::None(NoVerdict::TooFewHours) => "oil-verdict-too-few-hours",
        OilVerdict::None(NoVerdict::BandTooWide) => "oil-verdict-band-too-wide",
        OilVerdict::None(NoVerdict::GlassUnknown) => "oil-verdict-glass-unknown",
        OilVerdict::None(NoVerdict::Settling) => "oil-verdict-settling",
        OilVerdict::None(NoVerdict::LoadShareUnknown) => "oil-verdict-load-share-unknown",
        OilVerdict::None(NoVerdict::LessThanNothing) => "oil-verdict-less-than-nothing",
    }
}

impl OilUseRow {
    /// Of a unit's state; none before anything of its oil is known.
    pub fn of(oil: &OilNow, fleet: &Fleet) -> Option<OilUseRow> {
        let fill = oil.fill.as_ref()?;
        let mut balances: Vec<BalanceRow> = fill.balances.iter().map(balance).collect();
        balances.reverse();
        let change = oil.against.as_ref().and_then(|against| against.change);
        Some(OilUseRow {
            filled: fill.begun.map(|begun| begun.at.into()),
            filled_hours: fill.begun.map(|begun| begun.hours),
            made_up_ml: fill.made_up.0.round() as i64,
            settling: fill.begun.is_some() && fill.settled.is_none(),
            usual_hundredths: oil
                .against
                .as_ref()
                .and_then(|against| against.usual)
                .map(|usual| hundredths(usual.rate)),
            limit_hundredths: oil.limit.map(hundredths),
            verdict: oil.verdict,
            carry_over: oil.carry_over.map(|air| CarryOverRow {
                mg_m3_tenths: (air.mg_m3 * 10.0).round() as i64,
                at_least: air.at_least,
                class: air.class,
                or_worse: air.or_worse,
            }),
            change: change.map(|change| ChangeRow {
                direction: change.direction,
                times_tenths: change.factor.map(|factor| (factor * 10.0).round() as i64),
                since: fleet.yard_day(change.since.into()),
                words: match change.direction {
                    Direction::More => ChangeWords::OilUseMore,
                    Direction::Less => ChangeWords::OilUseLess,
                },
            }),
            balances,
            lab: oil.lab.iter().map(lab).collect(),
        })
    }
}

fn hundredths(rate: MlPerHour) -> i64 {
    (rate.0 * 100.0).round() as i64
}

fn balance(balance: &Balance) -> BalanceRow {
    BalanceRow {
        id: EntryId(balance.to.entry),
        from: balance.from.at.into(),
        to: balance.to.at.into(),
        at_hours: balance.to.hours,
        hours: balance.hours(),
        used_ml: balance.used().0.round() as i64,
        carried_ml: balance.carried_out.0.round() as i64,
        ml_per_hour_hundredths: balance.rate().map(hundredths),
        // A band is rounded outward: it must hold what it says it holds.
        between_hundredths: balance
            .band()
            .map(|(low, high)| ((low.0 * 100.0).floor() as i64, (high.0 * 100.0).ceil() as i64)),
        settling: balance.settling,
        corrected: balance.corrected,
    }
}

fn lab(lab: &LabNow) -> LabRow {
    LabRow {
        id: lab.entry,
        at: lab.at.into(),
        drawn: lab.drawn.into(),
        bottle: lab.bottle.clone(),
        hours_on_oil: lab.hours_on_oil,
        changed_since: lab.changed_since,
        words: lab.words.clone(),
    }
}
