//! How much oil stands over or under the middle of the glass.

use serde::{Deserialize, Serialize};

use uom::si::thermodynamic_temperature::degree_celsius;

use super::amount::Millilitres;
use crate::Figure;
use crate::record::{Glass, How, LevelCheck, SetProfile, StopWait, TopUp, Warmth};

/// The numbers of R11, the shop's to edit. `Default` gives a fleet's usual ones.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OilNumbers {
    /// The middle band of the glass in percent, both ends in it. Usual: 45 to 55.
    pub middle: (f64, f64),
    /// What one reading of the glass may be off, percent of the glass. Usual: 5.
    pub reading_error: f64,
    /// Running hours after a fill before it can have settled. Usual: 10.
    pub settle_hours: f64,
    /// A balance over fewer running hours gives no verdict. Usual: 50.
    pub least_hours: f64,
    /// How much oil grows with each degree Celsius. Usual: 0.0007 (value from memory).
    pub growth: f64,
    /// Grams in a millilitre. Usual: 0.86.
    pub density: f64,
    /// Milligrams of oil in a cubic metre of air from which use is too much. Usual: 5, the end of class 4.
    pub most_mg_m3: f64,
}

impl Default for OilNumbers {
    fn default() -> OilNumbers {
        OilNumbers {
            middle: (45.0, 55.0),
            reading_error: 5.0,
            settle_hours: 10.0,
            least_hours: 50.0,
            growth: 0.0007,
            density: 0.86,
            most_mg_m3: 5.0,
        }
    }
}

/// What is known of a set's oil system. What is not is `None`, never zero.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct OilSystem {
    /// From the glass's 0 to its 100 %.
    pub glass: Option<Millilitres>,
    /// All the oil in it: what grows when it is hot.
    pub whole: Option<Millilitres>,
}

impl OilSystem {
    /// As a set's profile has it; nothing is known of a set that is none.
    pub fn of(profile: Option<&SetProfile>) -> OilSystem {
        let volume =
            |pick: fn(&SetProfile) -> Option<Figure>| profile.and_then(pick).and_then(Millilitres::of);
        OilSystem { glass: volume(|profile| profile.glass), whole: volume(|profile| profile.oil_volume) }
    }
}

/// Where the oil stands in the glass.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum InGlass {
    /// Percent of the glass; the middle is 50.
    Percent(f64),
    /// Under it: nothing to be seen.
    BelowView,
    /// Over it: nothing but oil.
    AboveView,
}

impl From<Glass> for InGlass {
    fn from(glass: Glass) -> InGlass {
        match glass {
            Glass::Percent(percent) => InGlass::Percent(f64::from(percent)),
            Glass::BelowView => InGlass::BelowView,
            Glass::AboveView => InGlass::AboveView,
        }
    }
}

/// A level as it was read.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Level {
    /// Where it stood.
    pub glass: InGlass,
    /// Cold or hot; `None` when nobody said.
    pub warmth: Option<Warmth>,
    /// The oil's temperature in degrees Celsius, where one was shown.
    pub celsius: Option<f64>,
    /// Whether the unit had stood at least the five minutes; `None` when nobody said.
    pub stood: Option<bool>,
}

/// Minutes a unit stands before its glass is read. Common practice, no source.
pub const LEAST_MINUTES: u32 = 5;

impl Level {
    /// A level as its entry says it was read.
    pub fn read(
        glass: Glass,
        warmth: Option<Warmth>,
        temperature: Option<Figure>,
        stopped: Option<&StopWait>,
    ) -> Level {
        let celsius = temperature.and_then(Figure::temperature).map(|t| t.get::<degree_celsius>());
        let stood = stopped.and_then(|wait| match wait.minutes {
            Some(minutes) => Some(minutes >= LEAST_MINUTES),
            None => (wait.how == How::Said).then_some(true),
        });
        Level { glass: glass.into(), warmth, celsius, stood }
    }

    /// A level that was looked at by itself.
    pub fn of_check(check: &LevelCheck) -> Level {
        Level::read(check.glass, check.warmth, check.oil_temperature, check.stopped.as_ref())
    }

    /// The level of a walk: the stop of the glass is walked cold, with the compressor stopped.
    pub fn of_walk(glass: Glass) -> Level {
        Level::read(glass, Some(Warmth::Cold), None, None)
    }

    /// A level a top-up ends with; none when nobody looked.
    pub fn after(top_up: &TopUp) -> Option<Level> {
        let stopped = top_up.stopped.as_ref();
        top_up.after.map(|glass| Level::read(glass, top_up.warmth, top_up.oil_temperature, stopped))
    }

    /// A level a top-up begins with; none when nobody looked.
    pub fn before(top_up: &TopUp) -> Option<Level> {
        let stopped = top_up.stopped.as_ref();
        top_up.before.map(|glass| Level::read(glass, top_up.warmth, top_up.oil_temperature, stopped))
    }

    /// A cold level, read after standing long enough.
    pub fn cold(percent: f64) -> Level {
        Level {
            glass: InGlass::Percent(percent),
            warmth: Some(Warmth::Cold),
            celsius: None,
            stood: Some(true),
        }
    }

    /// Whether it stands in the middle band.
    pub fn in_the_middle(&self, numbers: &OilNumbers) -> bool {
        let (low, high) = numbers.middle;
        matches!(self.glass, InGlass::Percent(p) if (low..=high).contains(&p))
    }
}

/// What stands over the middle; below zero what is missing to it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Surplus {
    /// How much, at 15 degC.
    pub volume: Millilitres,
    /// A hot level was corrected to compare with cold ones.
    pub corrected: bool,
}

/// Why a level gives no volume, and so closes no balance. It is kept and shown all the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoVolume {
    /// Read before the unit had stood long enough.
    TooSoon,
    /// Under or over what the glass shows.
    OutOfView,
    /// Not in the middle, and the glass's volume is not known.
    GlassUnknown,
    /// Hot, and its temperature or the whole volume is not known.
    HotUncorrected,
}

/// The temperature volumes are told at, degrees Celsius.
const TOLD_AT: f64 = 15.0;

/// What stands over the middle of the glass.
///
/// A level of 45 to 55 % counts as the middle where the glass's volume is not known. A hot level is corrected by
/// the growth of the whole oil over 15 degC; one that cannot be is not compared with cold ones.
pub fn surplus(level: &Level, system: &OilSystem, numbers: &OilNumbers) -> Result<Surplus, NoVolume> {
    if level.stood == Some(false) {
        return Err(NoVolume::TooSoon);
    }
    let InGlass::Percent(percent) = level.glass else { return Err(NoVolume::OutOfView) };
    let hot = level.warmth == Some(Warmth::Hot);
    let grown = match (hot, system.whole, level.celsius) {
        (false, _, _) => Millilitres::ZERO,
        (true, Some(whole), Some(celsius)) => whole.times(numbers.growth * (celsius - TOLD_AT)),
        (true, _, _) => return Err(NoVolume::HotUncorrected),
    };
    let shown = match system.glass {
        Some(glass) => glass.times((percent - 50.0) / 100.0),
        None if level.in_the_middle(numbers) => Millilitres::ZERO,
        None => return Err(NoVolume::GlassUnknown),
    };
    Ok(Surplus { volume: shown - grown, corrected: hot })
}
