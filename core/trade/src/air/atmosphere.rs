//! The air at a height, by the standard atmosphere.

use uom::si::f64::{Length, Pressure, Ratio, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

use super::vapour::vapour_at;

/// Sea level of the standard atmosphere (ICAO Doc 7488; US Standard Atmosphere 1976).
const SEA_LEVEL_K: f64 = 288.15;
const SEA_LEVEL_PA: f64 = 101_325.0;
/// Kelvin lost with each metre up, to 11 km.
const LAPSE: f64 = 0.006_5;
/// g0 M / (R L).
const EXPONENT: f64 = 5.255_879_7;
/// The radius heights are reckoned with, metres.
const EARTH_M: f64 = 6_356_766.0;

/// What a compressor breathes. What is not known is `None`, and the standard atmosphere stands in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Intake {
    /// Height over the sea.
    pub altitude: Length,
    /// Temperature at the intake.
    pub temperature: Option<ThermodynamicTemperature>,
    /// Relative humidity, 0 to 1.
    pub humidity: Option<f64>,
}

impl Intake {
    /// Sea level in the standard atmosphere.
    pub fn standard() -> Intake {
        Intake { altitude: Length::new::<meter>(0.0), temperature: None, humidity: None }
    }
}

/// Heights as gravity has them; the difference is 0.03 % at 2,000 m.
fn geopotential(altitude: Length) -> f64 {
    // From the Dead Sea to the top of the lowest layer.
    let metres = altitude.get::<meter>().clamp(-500.0, 11_000.0);
    EARTH_M * metres / (EARTH_M + metres)
}

/// The standard temperature at a height.
pub fn standard_temperature(altitude: Length) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(SEA_LEVEL_K - LAPSE * geopotential(altitude))
}

/// The standard pressure at a height, absolute.
pub fn standard_pressure(altitude: Length) -> Pressure {
    let share = standard_temperature(altitude).get::<kelvin>() / SEA_LEVEL_K;
    Pressure::new::<pascal>(SEA_LEVEL_PA * share.powf(EXPONENT))
}

/// How dense the dry part of the intake air is against that of the standard sea level: a screw keeps its swept
/// volume, so what it delivers shrinks by this.
///
/// Water vapour takes the place of air; it falls out again behind the compressor.
pub fn density_ratio(intake: &Intake) -> Ratio {
    let pressure = standard_pressure(intake.altitude).get::<pascal>();
    let temperature = intake.temperature.unwrap_or_else(|| standard_temperature(intake.altitude));
    let wet = intake.humidity.map_or(0.0, |share| vapour_at(temperature, share).get::<pascal>());
    let dry = (pressure - wet).max(0.0);
    Ratio::new::<ratio>(dry / SEA_LEVEL_PA * SEA_LEVEL_K / temperature.get::<kelvin>())
}
