//! Whether the receiver runs warm enough to keep water out of the oil.

use uom::si::f64::{Pressure, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

use super::atmosphere::{Intake, standard_pressure, standard_temperature};
use super::vapour::{dew_point, vapour_at};

/// The dew point of air pressed from `from` to `to`, both absolute: its vapour's pressure rises with it.
/// `None` of air without vapour.
pub fn pressure_dew_point(
    vapour: Pressure,
    from: Pressure,
    to: Pressure,
) -> Option<ThermodynamicTemperature> {
    dew_point(vapour * (to / from))
}

/// Water in the receiver, or not.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunWarm {
    /// Under this the receiver collects water.
    pub dew_point: ThermodynamicTemperature,
    /// Kelvins the oil stands over it; below zero water stays in the oil: run it warm once a day.
    pub over_by: f64,
}

/// Holds the oil's temperature in the receiver against the dew point at the receiver's pressure (gauge).
///
/// `None` when the humidity is not known: unknown is never dry.
pub fn run_warm(intake: &Intake, receiver: Pressure, oil: ThermodynamicTemperature) -> Option<RunWarm> {
    let outside = standard_pressure(intake.altitude);
    let temperature = intake.temperature.unwrap_or_else(|| standard_temperature(intake.altitude));
    let vapour = vapour_at(temperature, intake.humidity?);
    let inside = Pressure::new::<pascal>(outside.get::<pascal>() + receiver.get::<pascal>().max(0.0));
    let dew_point = pressure_dew_point(vapour, outside, inside)?;
    Some(RunWarm { dew_point, over_by: oil.get::<kelvin>() - dew_point.get::<kelvin>() })
}
