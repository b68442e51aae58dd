//! Statistics against the worked examples they are published with.

use sumpbook_trade::statistics::{Cusum, Line, TheilSen, cusum, ewma, farthest, individuals, percentile};

#[track_caller]
fn near(got: f64, published: f64, within: f64) {
    assert!((got - published).abs() <= within, "{got} is not {published}");
}

const NIST_EWMA: [f64; 20] = [
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6,
    52.4, 53.6, 52.1,
];

// NIST/SEMATECH e-Handbook 6.3.2.4.
#[test]
fn ewma_of_the_handbook() {
    let printed = [
        50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05,
        49.38, 49.92, 50.73, 51.23, 51.94, 51.99,
    ];
    let chart = ewma(&NIST_EWMA, 50.0, 0.3);
    for (got, printed) in chart.values.iter().zip(printed) {
        near(*got, printed, 0.005_01);
    }
    // The page cuts the root to 0.4201, so the fourth place is its own.
    let limits = chart.limits(2.0539, 3.0);
    near(limits.high, 52.5884, 1e-4);
    near(limits.low, 47.4115, 1e-4);
    assert!(chart.values.iter().all(|v| (limits.low..limits.high).contains(v)), "no point is out of control");
}

// Computed from the same example's data: limits while few figures are in.
#[test]
fn ewma_limits_widen_with_the_steps() {
    let chart = ewma(&NIST_EWMA, 50.0, 0.3);
    for (n, low, high) in
        [(1, 48.15149, 51.84851), (2, 47.74361, 52.25639), (5, 47.44839, 52.55161), (10, 47.41260, 52.58740)]
    {
        let limits = chart.limits_at(n, 2.0539, 3.0);
        near(limits.low, low, 1e-5);
        near(limits.high, high, 1e-5);
    }
}

// NIST/SEMATECH e-Handbook 6.3.2.3: target 325, k 0.3175, h 4.1959.
#[test]
fn cusum_of_the_handbook() {
    let means = [
        324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625,
        325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
    ];
    let high = [
        0.0, 0.0, 0.0, 0.0, 0.03, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44,
        16.00, 19.04,
    ];
    let low = [
        0.0, 0.01, 0.0, 0.33, 0.0, 0.0, 0.56, 0.72, 0.17, 0.25, 0.31, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0,
        0.0,
    ];
    let by = Cusum { target: 325.0, slack: 0.3175, decision: 4.1959 };
    let steps = cusum(&means, by);
    for (step, (high, low)) in steps.iter().zip(high.into_iter().zip(low)) {
        near(step.high, high, 0.007_6);
        near(step.low, low, 0.007_6);
    }
    let signals: Vec<usize> =
        steps.iter().enumerate().filter(|(_, s)| s.signals_high(by)).map(|(n, _)| n + 1).collect();
    assert_eq!(signals, [14, 15, 16, 17, 18, 19, 20], "first signal at group 14");
    assert!(!steps.iter().any(|s| s.signals_low(by)));
    near(steps[13].high, 4.94, 1e-9);
    near(steps[17].high, 14.445, 1e-9);
    near(steps[19].high, 19.035, 1e-9);
}

// NIST/SEMATECH e-Handbook 6.3.2.2.
#[test]
fn individuals_of_the_handbook() {
    let chart = individuals(&[49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]).unwrap();
    near(chart.centre, 50.81, 1e-9);
    near(chart.moving_range, 1.8778, 5e-5);
    near(chart.limits().1, 55.8041, 5e-5);
    near(chart.limits().0, 45.8159, 5e-5);
}

// NIST/SEMATECH e-Handbook 1.3.5.17.1: G 2.4687 over 2.032, rejected.
#[test]
fn grubbs_of_the_handbook() {
    let out = farthest(&[199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]).unwrap();
    // The page cuts the last place.
    near(out.g, 2.4687, 1e-4);
    near(out.critical.unwrap(), 2.032, 5e-4);
    assert_eq!(out.place, 7);
    assert!(out.stands_out());
}

// NIST/SEMATECH e-Handbook 7.2.6.2: the 90th percentile, R7.
#[test]
fn percentile_of_the_handbook() {
    let figures = [
        95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065, 95.0925, 95.1990,
        95.1682,
    ];
    near(percentile(&figures, 90.0).unwrap(), 95.1957, 5e-5);
}

fn points(x: &[f64], y: &[f64]) -> Vec<(f64, f64)> {
    x.iter().copied().zip(y.iter().copied()).collect()
}

// Sen 1968, as quoted in scipy's tests: slope 4, 93 % interval (3.71, 4.38), intercept 4.0.
#[test]
fn theil_sen_of_sen() {
    let sen = TheilSen::of(&points(
        &[1.0, 2.0, 3.0, 4.0, 10.0, 12.0, 18.0],
        &[9.0, 15.0, 19.0, 20.0, 45.0, 55.0, 78.0],
    ))
    .unwrap();
    assert_eq!(sen.slope(), 4.0);
    assert_eq!(sen.intercept(), 4.0);
    // 93 %: the normal deviate of 0.035 to either side.
    let (low, high) = sen.interval(1.811_911);
    near(low, 3.714_285_7, 1e-7);
    near(high, 4.375, 1e-12);
}

// scipy's small case; Helsel and Hirsch (data from memory); EPA Unified Guidance, sodium (data from memory).
#[test]
fn theil_sen_of_three_books() {
    let small = TheilSen::of(&points(&[0.0, 1.0, 2.0], &[0.0, 1.0, 1.0])).unwrap();
    assert_eq!((small.slope(), small.intercept()), (0.5, 0.5));
    let wild = points(&[1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0], &[1.0, 2.0, 3.0, 4.0, 5.0, 16.0, 7.0]);
    assert_eq!(TheilSen::of(&wild).unwrap().slope(), 1.0);
    let sodium = points(
        &[89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3],
        &[56.0, 53.0, 51.0, 55.0, 52.0, 60.0, 62.0, 59.0, 61.0, 63.0],
    );
    let line = TheilSen::of(&sodium).unwrap();
    near(line.slope(), 1.33, 0.005);
    near(line.intercept() + line.slope() * 92.6, 57.5, 1e-9);
}

// Sen 1968 passes over pairs of equal x, as scipy does; where all are equal there is no slope.
#[test]
fn theil_sen_passes_over_what_stands_at_one_place() {
    let twice = points(&[0.0, 1.0, 1.0, 2.0], &[0.0, 1.0, 9.0, 2.0]);
    // Slopes 1, 9, 1, 1, -7: their median is 1, and the pair at x = 1 gives none.
    assert_eq!(TheilSen::of(&twice).unwrap().slope(), 1.0);
    assert!(TheilSen::of(&points(&[3.0, 3.0, 3.0], &[1.0, 2.0, 3.0])).is_none());
}

// NIST/SEMATECH e-Handbook 1.3.5.17.1: of eight figures none can lie farther out than (n - 1) / root n = 2.4749
// deviations, so a rule of three deviations never finds one.
#[test]
fn of_eight_figures_none_lies_three_deviations_out() {
    let most = 7.0 / 8.0_f64.sqrt();
    near(most, 2.4749, 5e-5);
    let wild = farthest(&[1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1e9]).unwrap();
    near(wild.g, most, 1e-9);
    assert!(wild.g < 3.0 && wild.stands_out());
}

const NORRIS_Y: [f64; 36] = [
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
    448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
    228.9, 668.4, 449.2, 0.2,
];
const NORRIS_X: [f64; 36] = [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
    447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
    229.2, 669.1, 448.9, 0.5,
];

/// How many digits two figures share.
fn digits(got: f64, certified: f64) -> f64 {
    let off = ((got - certified) / certified).abs();
    if off == 0.0 { 15.0 } else { -off.log10() }
}

// NIST StRD, Norris: certified values.
#[test]
fn norris_to_nine_digits() {
    let line = Line::of(&points(&NORRIS_X, &NORRIS_Y)).unwrap();
    for (got, certified) in [
        (line.intercept, -0.262_323_073_774_029),
        (line.slope, 1.002_116_818_020_45),
        (line.residual, 0.884_796_396_144_373),
        (line.errors().0, 0.232_818_234_301_152),
        (line.errors().1, 0.429_796_848_199_937e-3),
    ] {
        assert!(
            digits(got, certified) >= 9.0,
            "{got} against {certified}: {:.1} digits",
            digits(got, certified)
        );
    }
}

// NIST StRD, Norris: the sum of squares of the residuals and its share of all, by the certified values.
#[test]
fn what_norris_leaves_over() {
    let line = Line::of(&points(&NORRIS_X, &NORRIS_Y)).unwrap();
    let left: f64 = NORRIS_X.iter().zip(NORRIS_Y).map(|(x, y)| (y - line.at(*x)).powi(2)).sum();
    assert!(digits(left, 26.617_398_529_422_4) >= 8.0, "{left}");
    let mean = NORRIS_Y.iter().sum::<f64>() / 36.0;
    let all: f64 = NORRIS_Y.iter().map(|y| (y - mean).powi(2)).sum();
    near(1.0 - left / all, 0.999_993_745_883_712, 1e-12);
    // Computed from the certified fit.
    for (x, y) in [(0.0, -0.262_323_073_8), (500.0, 500.796_085_936_5), (1000.0, 1_001.854_494_946_7)] {
        near(line.at(x), y, 1e-8);
    }
}

// Computed from the certified fit; Student's t for 34 degrees of freedom and 95 %.
#[test]
fn where_the_next_figure_of_norris_is_looked_for() {
    let line = Line::of(&points(&NORRIS_X, &NORRIS_Y)).unwrap();
    for (x, low, high) in [
        (0.0, -2.121_653_543_3, 1.597_007_395_7),
        (500.0, 498.971_794_054_2, 502.620_377_818_7),
        (1000.0, 999.962_292_157_4, 1_003.746_697_695_7),
    ] {
        let (got_low, got_high) = line.next_at(x, 2.032_244_509_3);
        near(got_low, low, 1e-7);
        near(got_high, high, 1e-7);
    }
}
