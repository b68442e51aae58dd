//! A percentile of a few figures.

/// The percentile by R-7 (Hyndman and Fan, type 7): linear between the two nearest of the sorted figures.
///
/// `percent` from 0 to 100; beyond, the nearer end. `None` of no figures. Source: NIST/SEMATECH e-Handbook
/// 7.2.6.2, where it is called R7.
pub fn percentile(figures: &[f64], percent: f64) -> Option<f64> {
    let mut sorted = figures.to_vec();
    sorted.sort_unstable_by(f64::total_cmp);
    let place = sorted.len().checked_sub(1)? as f64 * (percent / 100.0).clamp(0.0, 1.0);
    let low = *sorted.get(place.floor() as usize)?;
    let high = sorted.get(place.floor() as usize + 1).copied().unwrap_or(low);
    Some(low + (high - low) * place.fract())
}

#[cfg(test)]
mod tests {
    use super::percentile;

    #[test]
    fn it_lies_between_the_two_nearest() {
        let ten: Vec<f64> = (1..=10).map(f64::from).collect();
        assert_eq!(percentile(&ten, 90.0), Some(9.1));
        assert_eq!(percentile(&ten, 100.0), Some(10.0));
        assert_eq!(percentile(&[4.0], 50.0), Some(4.0));
        assert_eq!(percentile(&[], 50.0), None);
    }
}
