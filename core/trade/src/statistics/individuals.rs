//! The chart of single figures: its middle, and its spread from one figure to the next.

/// The middle and the spread of single figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Individuals {
    /// The mean.
    pub centre: f64,
    /// The mean of the differences from one figure to the next, each without its sign.
    pub moving_range: f64,
}

/// The mean of a range of two figures over their spread (d2 for two).
const D2_OF_TWO: f64 = 1.128;

/// The chart of `figures` in the order they came; `None` of fewer than two.
///
/// Source: NIST/SEMATECH e-Handbook 6.3.2.2.
pub fn individuals(figures: &[f64]) -> Option<Individuals> {
    if figures.len() < 2 {
        return None;
    }
    let centre = figures.iter().sum::<f64>() / figures.len() as f64;
    let steps = figures.iter().zip(figures.iter().skip(1));
    let moving_range = steps.map(|(a, b)| (b - a).abs()).sum::<f64>() / (figures.len() - 1) as f64;
    Some(Individuals { centre, moving_range })
}

impl Individuals {
    /// The spread of one figure.
    pub fn spread(&self) -> f64 {
        self.moving_range / D2_OF_TWO
    }

    /// The middle less and plus three spreads.
    pub fn limits(&self) -> (f64, f64) {
        (self.centre - 3.0 * self.spread(), self.centre + 3.0 * self.spread())
    }
}
