//! The least-squares line, and where the next figure is to be looked for.

/// A line through points by least squares.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// y where x is zero.
    pub intercept: f64,
    /// y for one of x.
    pub slope: f64,
    /// The standard deviation of what is left over; zero of two points.
    pub residual: f64,
    points: f64,
    mean_x: f64,
    sxx: f64,
}

impl Line {
    /// Of points `(x, y)`; `None` of fewer than two, or when all have one x.
    pub fn of(points: &[(f64, f64)]) -> Option<Line> {
        let n = points.len() as f64;
        let mean = |pick: fn(&(f64, f64)) -> f64| points.iter().map(pick).sum::<f64>() / n;
        let (mean_x, mean_y) = (mean(|p| p.0), mean(|p| p.1));
        // Sums about the means keep the digits that plain sums of squares lose.
        let sxx: f64 = points.iter().map(|(x, _)| (x - mean_x).powi(2)).sum();
        let sxy: f64 = points.iter().map(|(x, y)| (x - mean_x) * (y - mean_y)).sum();
        if points.len() < 2 || sxx <= 0.0 {
            return None;
        }
        let slope = sxy / sxx;
        let intercept = mean_y - slope * mean_x;
        let left: f64 = points.iter().map(|(x, y)| (y - intercept - slope * x).powi(2)).sum();
        let residual = if n > 2.0 { (left / (n - 2.0)).sqrt() } else { 0.0 };
        Some(Line { intercept, slope, residual, points: n, mean_x, sxx })
    }

    /// y at x on the line.
    pub fn at(&self, x: f64) -> f64 {
        self.intercept + self.slope * x
    }

    /// The standard errors of intercept and slope.
    pub fn errors(&self) -> (f64, f64) {
        let root = (1.0 / self.points + self.mean_x.powi(2) / self.sxx).sqrt();
        (self.residual * root, self.residual / self.sxx.sqrt())
    }

    /// Where one more figure at x is to be looked for, `t` being Student's for the share wanted and two fewer
    /// degrees of freedom than points.
    pub fn next_at(&self, x: f64, t: f64) -> (f64, f64) {
        let half =
            t * self.residual * (1.0 + 1.0 / self.points + (x - self.mean_x).powi(2) / self.sxx).sqrt();
        (self.at(x) - half, self.at(x) + half)
    }
}
