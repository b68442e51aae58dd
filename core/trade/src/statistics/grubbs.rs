//! How far the farthest of a few figures stands from the others.

/// The figure farthest from the mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outlier {
    /// Its place among the figures.
    pub place: usize,
    /// Its distance from the mean in spreads (Grubbs' G).
    pub g: f64,
    /// What G of so many figures is seldom above; `None` beyond the table.
    pub critical: Option<f64>,
}

/// What the larger side's G of n figures is above once in twenty, n from 3 (Grubbs, one-sided 5 %).
/// Recomputed from Student's t; n = 8 is the 2.032 of NIST/SEMATECH e-Handbook 1.3.5.17.1.
const SELDOM: [f64; 28] = [
    1.1531, 1.4625, 1.6714, 1.8221, 1.9381, 2.0317, 2.1096, 2.1761, 2.2339, 2.2850, 2.3305, 2.3717, 2.4090,
    2.4433, 2.4748, 2.5040, 2.5312, 2.5566, 2.5804, 2.6028, 2.6239, 2.6439, 2.6629, 2.6809, 2.6981, 2.7145,
    2.7301, 2.7451,
];

/// The figure farthest from the mean; `None` of fewer than three, or when all are equal.
///
/// Source: NIST/SEMATECH e-Handbook 1.3.5.17.1.
pub fn farthest(figures: &[f64]) -> Option<Outlier> {
    let n = figures.len();
    let mean = figures.iter().sum::<f64>() / n as f64;
    let variance = figures.iter().map(|f| (f - mean).powi(2)).sum::<f64>() / n.saturating_sub(1) as f64;
    if n < 3 || variance.is_nan() || variance <= 0.0 {
        return None;
    }
    let off = |(place, figure): (usize, &f64)| (place, (figure - mean).abs() / variance.sqrt());
    let (place, g) = figures.iter().enumerate().map(off).max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(Outlier { place, g, critical: SELDOM.get(n - 3).copied() })
}

impl Outlier {
    /// Whether it stands farther off than chance alone does once in twenty.
    pub fn stands_out(&self) -> bool {
        self.critical.is_some_and(|critical| self.g > critical)
    }
}
