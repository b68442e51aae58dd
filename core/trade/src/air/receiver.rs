//! What a receiver holds between two pressures.

use uom::si::f64::{Pressure, Time, Volume, VolumeRate};

/// Free air that comes out of a receiver between two pressures, with `outside` absolute.
///
/// V = receiver x (from - to) / outside. Source: the worked figures of the US DOE compressed air tools.
pub fn content(receiver: Volume, from: Pressure, to: Pressure, outside: Pressure) -> Volume {
    receiver * ((from - to) / outside)
}

/// The receiver that gives `out` for `time` while `refill` comes in, falling from `from` to `to`.
pub fn size_for(
    out: VolumeRate,
    refill: VolumeRate,
    time: Time,
    (from, to): (Pressure, Pressure),
    outside: Pressure,
) -> Volume {
    let missing: Volume = (out - refill) * time;
    missing * (outside / (from - to))
}

/// How long a receiver makes good what is taken beyond what is delivered; `None` when nothing is.
pub fn lasts(
    receiver: Volume,
    taken: VolumeRate,
    delivered: VolumeRate,
    (from, to): (Pressure, Pressure),
    outside: Pressure,
) -> Option<Time> {
    let missing = taken - delivered;
    (missing.value > 0.0).then(|| content(receiver, from, to, outside) / missing)
}
