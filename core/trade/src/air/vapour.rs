//! Water vapour: what air can hold, and when it lets go of it.

use uom::si::f64::{Pressure, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

/// The saturation line of IAPWS-IF97, region 4.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// The triple point: under it vapour stands over ice.
const TRIPLE_K: f64 = 273.16;
const TRIPLE_PA: f64 = 611.657;

/// The pressure at which water and its vapour, under the triple point ice and its vapour, stand together.
///
/// Sources: IAPWS-IF97 (2007), equation 30; IAPWS R14-08 (2011), equation 6, over ice. From -70 degC to the
/// critical point; beyond, the nearer end.
pub fn saturation(temperature: ThermodynamicTemperature) -> Pressure {
    let kelvins = temperature.get::<kelvin>().clamp(203.15, 647.096);
    Pressure::new::<pascal>(if kelvins < TRIPLE_K { over_ice(kelvins) } else { over_water(kelvins) })
}

fn over_water(kelvins: f64) -> f64 {
    let [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N;
    let theta = kelvins + n9 / (kelvins - n10);
    let a = theta * theta + n1 * theta + n2;
    let b = n3 * theta * theta + n4 * theta + n5;
    let c = n6 * theta * theta + n7 * theta + n8;
    1e6 * (2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt())).powi(4)
}

fn over_ice(kelvins: f64) -> f64 {
    let theta = kelvins / TRIPLE_K;
    let sum = -21.214_400_6 * theta.powf(0.003_333_333_33) + 27.320_381_9 * theta.powf(1.206_666_67)
        - 6.105_981_30 * theta.powf(1.703_333_33);
    TRIPLE_PA * (sum / theta).exp()
}

/// The pressure of the vapour in air of this relative humidity, 0 to 1.
pub fn vapour_at(temperature: ThermodynamicTemperature, humidity: f64) -> Pressure {
    saturation(temperature) * humidity.clamp(0.0, 1.0)
}

/// The temperature at which air with vapour of this pressure begins to let go of it; `None` of no vapour.
pub fn dew_point(vapour: Pressure) -> Option<ThermodynamicTemperature> {
    let pascals = vapour.get::<pascal>();
    if pascals.is_nan() || pascals <= 0.0 {
        return None;
    }
    let (mut low, mut high) = (203.15, 647.096);
    // Saturation only rises with temperature: halving finds it to a billionth of a degree.
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        let at = saturation(ThermodynamicTemperature::new::<kelvin>(middle)).get::<pascal>();
        if at < pascals { low = middle } else { high = middle }
    }
    Some(ThermodynamicTemperature::new::<kelvin>(f64::midpoint(low, high)))
}
