//! Oil that leaves with the air: milligrams in a cubic metre, and the class that makes.

use serde::{Deserialize, Serialize};
use uom::si::f64::VolumeRate;
use uom::si::volume_rate::cubic_meter_per_hour;

use super::amount::{Millilitres, MlPerHour};
use super::level::OilNumbers;
use crate::quantity::Tenths;

/// A class of total oil by ISO 8573-1:2010.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OilClass {
    /// At most 0.01 mg/m3.
    Class1,
    /// At most 0.1 mg/m3.
    Class2,
    /// At most 1 mg/m3.
    Class3,
    /// At most 5 mg/m3.
    Class4,
    /// More than 5 mg/m3.
    ClassX,
}

impl OilClass {
    /// The class of so many milligrams in a cubic metre. Class 0 is what a maker specifies and never follows
    /// from a figure. Source: ISO 8573-1:2010, table of total oil.
    pub fn of(mg_m3: f64) -> OilClass {
        match mg_m3 {
            _ if mg_m3 <= 0.01 => OilClass::Class1,
            _ if mg_m3 <= 0.1 => OilClass::Class2,
            _ if mg_m3 <= 1.0 => OilClass::Class3,
            _ if mg_m3 <= 5.0 => OilClass::Class4,
            _ => OilClass::ClassX,
        }
    }
}

/// What leaves with the air.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct CarryOver {
    /// Milligrams of oil in a cubic metre of free air.
    pub mg_m3: f64,
    /// Reckoned with the rated delivery for every running hour, which is more air than was made: at least so
    /// much. With a load share it is the shop's estimate instead.
    pub at_least: bool,
    /// The class of that figure.
    pub class: OilClass,
    /// The class may be worse: said as "class 4 or worse". Beyond 5 mg/m3 there is no worse.
    pub or_worse: bool,
}

/// A share of running time that can be one: above 0 and up to 1. Any other is not known.
pub fn load_share(given: Option<f64>) -> Option<f64> {
    given.filter(|share| *share > 0.0 && *share <= 1.0)
}

/// What `used` oil over `hours` comes to in air delivered at `delivery`.
///
/// `share` is the part of running time in which it delivers, as the shop estimates it; by [`load_share`].
/// `None` over no hours or no delivery.
pub fn carry_over(
    used: Millilitres,
    hours: Tenths,
    delivery: VolumeRate,
    share: Option<f64>,
    numbers: &OilNumbers,
) -> Option<CarryOver> {
    let share = load_share(share);
    let air = delivery.get::<cubic_meter_per_hour>() * hours.as_hours() * share.unwrap_or(1.0);
    if air.is_nan() || air <= 0.0 {
        return None;
    }
    let mg_m3 = used.0.max(0.0) * numbers.density * 1_000.0 / air;
    let class = OilClass::of(mg_m3);
    let at_least = share.is_none();
    Some(CarryOver { mg_m3, at_least, class, or_worse: at_least && class != OilClass::ClassX })
}

/// The use that comes to `mg_m3`: what a limit on carry-over means at the glass.
pub fn use_at(mg_m3: f64, delivery: VolumeRate, share: Option<f64>, numbers: &OilNumbers) -> MlPerHour {
    let share = load_share(share).unwrap_or(1.0);
    MlPerHour(mg_m3 * delivery.get::<cubic_meter_per_hour>() * share / (numbers.density * 1_000.0))
}
