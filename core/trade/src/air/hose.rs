//! What pressure a hose costs.

use uom::si::f64::{Length, Pressure, VolumeRate};
use uom::si::length::{meter, millimeter};
use uom::si::pressure::bar;
use uom::si::volume_rate::liter_per_second;

/// A fitting in the line, told as the hose that costs as much. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fitting {
    /// A claw coupling with its two tails.
    Coupling,
    /// A plug and socket with a valve in it.
    QuickCoupling,
    /// An elbow.
    Elbow,
    /// A service valve, full open.
    Valve,
    /// A filter or an oiler in the line.
    Oiler,
}

impl Fitting {
    /// How many inside diameters of hose cost as much.
    fn diameters(self) -> f64 {
        match self {
            Fitting::Coupling => 15.0,
            Fitting::QuickCoupling => 100.0,
            Fitting::Elbow => 30.0,
            Fitting::Valve => 10.0,
            Fitting::Oiler => 150.0,
        }
    }
}

/// A hose with what is screwed into it.
#[derive(Clone, Debug, PartialEq)]
pub struct HoseRun {
    /// Inside diameter.
    pub bore: Length,
    /// Length of hose.
    pub length: Length,
    /// Fittings in it.
    pub fittings: Vec<Fitting>,
}

/// Pressure lost in a hose by free air `flow`, with `inlet` absolute at its beginning; never more than that.
///
/// dp = 450 q^1.85 L / (d^5 p), with dp and p in bar, q in litres of free air a second, L in metres, d in
/// millimetres: the common form of handbooks. Charts of hoses and this form of pipes differ by up to two times,
/// so a figure from it warns and never decides. `None` for a hose that is not known or is none.
pub fn hose_loss(run: &HoseRun, flow: VolumeRate, inlet: Pressure) -> Option<Pressure> {
    let d = run.bore.get::<millimeter>();
    let q = flow.get::<liter_per_second>().max(0.0);
    let p = inlet.get::<bar>();
    if d.is_nan() || d <= 0.0 || p.is_nan() || p <= 0.0 {
        return None;
    }
    let more: f64 = run.fittings.iter().map(|fitting| fitting.diameters() * d / 1_000.0).sum();
    let length = run.length.get::<meter>().max(0.0) + more;
    let lost = 450.0 * q.powf(1.85) * length / (d.powi(5) * p);
    Some(Pressure::new::<bar>(lost.min(p)))
}
