//! How much air an open hole lets go.

use uom::si::area::square_inch;
use uom::si::f64::{Area, Length, Pressure, VolumeRate};
use uom::si::pressure::psi;
use uom::si::volume_rate::cubic_foot_per_minute;

/// The edge the air leaves by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Edge {
    /// A nozzle, well shaped.
    Nozzle,
    /// Rounded.
    Rounded,
    /// Sharp.
    Sharp,
}

impl Edge {
    fn coefficient(self) -> f64 {
        match self {
            Edge::Nozzle => 1.0,
            Edge::Rounded => 0.97,
            Edge::Sharp => 0.65,
        }
    }
}

/// Under this gauge pressure the air does not choke and the formula does not hold.
const LEAST_PSI: f64 = 15.0;
const OUTSIDE_PSI: f64 = 14.7;
/// 70 degF in degrees Rankine, and the weight of a cubic foot of free air then, pounds.
const RANKINE: f64 = 530.0;
const POUND_PER_FT3: f64 = 0.074_94;

/// Free air (14.7 psia, 70 degF) through a round hole with `inside` gauge pressure behind it; `None` under
/// 15 psi, where it does not choke.
///
/// W = 0.5303 A C P / sqrt(T), pounds a second (Moss), as in the handbooks' table of discharge through orifices.
pub fn orifice_flow(bore: Length, inside: Pressure, edge: Edge) -> Option<VolumeRate> {
    let gauge = inside.get::<psi>();
    if gauge.is_nan() || gauge < LEAST_PSI {
        return None;
    }
    let area: Area = bore * bore * (std::f64::consts::PI / 4.0);
    let pounds =
        0.530_3 * area.get::<square_inch>() * edge.coefficient() * (gauge + OUTSIDE_PSI) / RANKINE.sqrt();
    Some(VolumeRate::new::<cubic_foot_per_minute>(pounds * 60.0 / POUND_PER_FT3))
}

/// The bore of a hole given in 64ths of an inch, as drills are.
#[cfg(test)]
pub(super) fn sixty_fourths(n: f64) -> Length {
    Length::new::<uom::si::length::inch>(n / 64.0)
}
