//! The exponentially weighted moving average: a smooth line that sees small lasting changes.

/// Limits of the average at one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EwmaLimits {
    /// Below it something has changed.
    pub low: f64,
    /// Above it something has changed.
    pub high: f64,
}

/// The average after each figure, with where it started from.
#[derive(Clone, Debug, PartialEq)]
pub struct Ewma {
    target: f64,
    lambda: f64,
    /// The average after each figure, in order.
    pub values: Vec<f64>,
}

/// The average of `figures`, started at `target`; `lambda` is the weight of the newest figure, 0 to 1.
///
/// Source: NIST/SEMATECH e-Handbook 6.3.2.4.
pub fn ewma(figures: &[f64], target: f64, lambda: f64) -> Ewma {
    let mut average = target;
    let values = figures
        .iter()
        .map(|figure| {
            average = lambda * figure + (1.0 - lambda) * average;
            average
        })
        .collect();
    Ewma { target, lambda, values }
}

impl Ewma {
    /// The limits that hold in the long run: `target` plus or minus `k` spreads of the average.
    pub fn limits(&self, spread: f64, k: f64) -> EwmaLimits {
        self.around(k * spread * (self.lambda / (2.0 - self.lambda)).sqrt())
    }

    /// The limits after step `n`, the first being 1: narrower while few figures are in.
    pub fn limits_at(&self, n: u32, spread: f64, k: f64) -> EwmaLimits {
        let settled = 1.0 - (1.0 - self.lambda).powi(2 * i32::try_from(n).unwrap_or(i32::MAX / 2));
        self.around(k * spread * (self.lambda / (2.0 - self.lambda) * settled).sqrt())
    }

    fn around(&self, half: f64) -> EwmaLimits {
        EwmaLimits { low: self.target - half, high: self.target + half }
    }
}

#[cfg(test)]
mod tests {
    use super::ewma;

    #[test]
    fn it_starts_at_the_target_and_moves_by_its_share() {
        assert_eq!(ewma(&[20.0, 20.0], 10.0, 0.5).values, [15.0, 17.5]);
        assert!(ewma(&[], 10.0, 0.3).values.is_empty());
    }
}
