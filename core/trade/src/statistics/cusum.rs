//! The tabular cumulative sum: how much has gathered above or below what is usual.

use serde::{Deserialize, Serialize};

/// One step of the two sums.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct CusumStep {
    /// What has gathered above the target.
    pub high: f64,
    /// What has gathered below it.
    pub low: f64,
    /// How many steps, this one included, `high` has been above zero without a break; 0 when it is zero.
    pub high_run: usize,
    /// The same of `low`.
    pub low_run: usize,
}

/// What the sums are held against. All in the figures' own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cusum {
    /// What is usual.
    pub target: f64,
    /// What a figure may be off without gathering: usually half a spread.
    pub slack: f64,
    /// From here on something has changed: usually four or five spreads.
    pub decision: f64,
}

/// Both sums after each figure. Source: NIST/SEMATECH e-Handbook 6.3.2.3.
pub fn cusum(figures: &[f64], by: Cusum) -> Vec<CusumStep> {
    let mut step = CusumStep { high: 0.0, low: 0.0, high_run: 0, low_run: 0 };
    figures
        .iter()
        .map(|figure| {
            step.high = (step.high + figure - by.target - by.slack).max(0.0);
            step.low = (step.low + by.target - by.slack - figure).max(0.0);
            step.high_run = if step.high > 0.0 { step.high_run + 1 } else { 0 };
            step.low_run = if step.low > 0.0 { step.low_run + 1 } else { 0 };
            step
        })
        .collect()
}

impl CusumStep {
    /// More than is usual has gathered.
    pub fn signals_high(&self, by: Cusum) -> bool {
        self.high > by.decision
    }

    /// Less than is usual has gathered.
    pub fn signals_low(&self, by: Cusum) -> bool {
        self.low > by.decision
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_run_counts_from_where_the_sum_left_zero() {
        let by = Cusum { target: 10.0, slack: 0.5, decision: 4.0 };
        let steps = cusum(&[10.0, 13.0, 12.0, 9.0], by);
        let high: Vec<f64> = steps.iter().map(|s| s.high).collect();
        assert_eq!(high, [0.0, 2.5, 4.0, 2.5]);
        assert_eq!(steps[3].high_run, 3);
        assert!(!steps[2].signals_high(by), "at the decision itself nothing is called yet");
        assert_eq!((steps[3].low, steps[3].low_run), (0.5, 1));
    }
}
