//! Cross-checks against general reference libraries from PyPI: scipy, CoolProp, fluids, numpy.
//!
//! `tests/run` puts them into `.tools`. Without them the check skips itself and says so.

use std::collections::BTreeMap;

use sumpbook_outside::program::{answers, ask};
use sumpbook_trade::air::{saturation, standard_pressure, standard_temperature};
use sumpbook_trade::statistics::{Line, TheilSen, percentile};
use uom::si::f64::{Length, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

/// Figures of a day's use, pseudo-random and always the same.
fn figures(seed: u64, count: usize) -> Vec<f64> {
    let mut state = seed;
    (0..count)
        .map(|_| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 44) as f64 / 1_000.0
        })
        .collect()
}

#[track_caller]
fn near(what: &str, got: f64, library: f64, share: f64) {
    assert!((got - library).abs() <= library.abs() * share, "{what}: {got} is not {library}");
}

#[test]
fn the_same_figures_as_scipy_numpy_coolprop_and_fluids() {
    if !answers("python3", &["-c", "import scipy, numpy, CoolProp, fluids"]) {
        println!("skipped: python3 without scipy, CoolProp and fluids; tests/run installs them");
        return;
    }
    let lines: Vec<(Vec<f64>, Vec<f64>)> = (1..=12)
        .map(|n| {
            let count = 3 + n * 4;
            let x: Vec<f64> = (0..count).map(|i| i as f64 / 2.0).collect();
            let noise = figures(n as u64, count);
            let y = x.iter().zip(noise).map(|(x, e)| 4.2 * x + e / 200.0).collect();
            (x, y)
        })
        .collect();
    let percentiles: Vec<(Vec<f64>, f64)> =
        (1..=8).map(|n| (figures(100 + n, 4 + n as usize * 3), 10.0 * n as f64 + 5.0)).collect();
    let celsius = [1.0, 5.0, 20.0, 25.0, 40.0, 60.0, 80.0, 95.0];
    let heights = [0.0, 500.0, 1_000.0, 1_800.0, 2_400.0, 4_000.0];
    let data = serde_json::json!({
        "lines": lines, "percentiles": percentiles, "celsius": celsius, "heights": heights,
    });
    let said = ask("python3", &["reference.py", &data.to_string()]);
    let library: BTreeMap<&str, f64> = said
        .lines()
        .filter_map(|line| line.split_once(' '))
        .map(|(name, value)| {
            let plain = value.trim_start_matches("np.float64(").trim_end_matches(')');
            (name, plain.parse().expect("a figure"))
        })
        .collect();
    for (n, (x, y)) in lines.iter().enumerate() {
        let points: Vec<(f64, f64)> = x.iter().copied().zip(y.iter().copied()).collect();
        let sen = TheilSen::of(&points).unwrap();
        let (low, high) = sen.interval(1.644_853_626_951);
        for (what, got) in [("slope", sen.slope()), ("low", low), ("high", high)] {
            near(what, got, library[format!("{what}{n}").as_str()], 1e-12);
        }
        near("fit", Line::of(&points).unwrap().slope, library[format!("fit{n}").as_str()], 1e-12);
    }
    for (n, (figures, percent)) in percentiles.iter().enumerate() {
        let got = percentile(figures, *percent).unwrap();
        near("percentile", got, library[format!("percentile{n}").as_str()], 1e-12);
    }
    for t in celsius {
        let got = saturation(ThermodynamicTemperature::new::<degree_celsius>(t)).get::<pascal>();
        // The library's equation of state is a newer one than IF97: they part by less than 0.01 %.
        near("saturation", got, library[format!("saturation{t:?}").as_str()], 1e-4);
    }
    for height in heights {
        let at = Length::new::<meter>(height);
        let name = format!("{height:?}");
        near(
            "pressure",
            standard_pressure(at).get::<pascal>(),
            library[format!("pressure{name}").as_str()],
            1e-5,
        );
        let got = standard_temperature(at).get::<kelvin>();
        near("temperature", got, library[format!("temperature{name}").as_str()], 1e-6);
    }
}
