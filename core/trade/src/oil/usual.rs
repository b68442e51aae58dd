//! Whether a fill uses more than is usual for it, and since when.
//!
//! The fill's own first balances after it settled are its baseline. Each later balance is told in spreads from
//! it (a balance over few hours weighs little, because two readings of the glass are a large part of it), and
//! two charts watch those: an EWMA for small lasting changes, a tabular CUSUM for when one began.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::amount::MlPerHour;
use super::balance::Balance;
use super::fill::Fill;
use crate::quantity::Tenths;
use crate::statistics::{Cusum, cusum, ewma, farthest, individuals};

/// What a fill uses when all is as it was.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Usual {
    /// Used in an hour, over all its balances.
    pub rate: MlPerHour,
    /// How far one balance's use lies from it by itself, without what the glass may be off.
    pub spread: MlPerHour,
    /// How many balances it stands on.
    pub balances: usize,
    /// Running hours they cover.
    pub hours: Tenths,
}

/// A balance on the two charts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct UsePoint {
    /// The pour that closed it.
    pub entry: Uuid,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Used in an hour.
    pub rate: MlPerHour,
    /// Spreads from what is usual; `None` for a balance of the baseline.
    pub spreads: Option<f64>,
    /// The smoothed spreads (EWMA).
    pub smooth: Option<f64>,
    /// What has gathered above what is usual, in spreads (CUSUM).
    pub gathered: Option<f64>,
}

/// More or less.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// More than usual: look at separator, scavenge line, leaks.
    More,
    /// Less than usual: look for water, a pour not written down, a wrong glass volume.
    Less,
}

/// Use has changed: "using 2.1x its usual since 3 Nov".
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Change {
    /// More or less.
    pub direction: Direction,
    /// Since this moment: the beginning of the first balance that took part.
    pub since: DateTime<FixedOffset>,
    /// The hours then.
    pub since_hours: Tenths,
    /// Use since then over what is usual; `None` when nothing is usual.
    pub factor: Option<f64>,
    /// Use since then.
    pub rate: MlPerHour,
}

/// A fill against its own baseline.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Against {
    /// What is usual; `None` while too few balances are in.
    pub usual: Option<Usual>,
    /// Every balance after it settled, oldest first.
    pub points: Vec<UsePoint>,
    /// Use has changed, and stands so at the newest balance.
    pub change: Option<Change>,
}

/// Balances a baseline wants at least, and running hours.
const LEAST_BALANCES: usize = 2;
const LEAST_HOURS: Tenths = Tenths(1_000);
/// From so many balances on their own spread is known; before, a fifth of the rate stands for it. Common
/// practice, no source.
const KNOWS_SPREAD: usize = 3;
const GUESSED_SPREAD: f64 = 0.2;
/// No machine's use is steadier than this share of it from pour to pour. Common practice, no source.
const LEAST_SPREAD: f64 = 0.1;
/// The EWMA's weight of the newest figure and its limits in spreads, as in NIST/SEMATECH 6.3.2.4.
const LAMBDA: f64 = 0.3;
const LIMITS: f64 = 3.0;
/// The CUSUM's slack and decision in spreads: a change of one spread is seen within about ten balances, and
/// chance alone signals once in several hundred.
const SLACK: f64 = 0.5;
const DECISION: f64 = 4.0;

/// Holds a fill's balances against its own baseline.
pub fn against_usual(fill: &Fill) -> Against {
    let own: Vec<(&Balance, MlPerHour)> =
        fill.own_balances().filter_map(|balance| Some((balance, balance.rate()?))).collect();
    let mut points: Vec<UsePoint> = own
        .iter()
        .map(|(balance, rate)| UsePoint {
            entry: balance.to.entry,
            at: balance.to.at,
            rate: *rate,
            spreads: None,
            smooth: None,
            gathered: None,
        })
        .collect();
    let Some(count) = baseline_count(&own) else { return Against { usual: None, points, change: None } };
    let (base, later) = own.split_at(count);
    let usual = baseline(base);
    let spreads: Vec<f64> = later.iter().map(|(balance, rate)| in_spreads(balance, *rate, &usual)).collect();
    let by = Cusum { target: 0.0, slack: SLACK, decision: DECISION };
    let sums = cusum(&spreads, by);
    let smooth = ewma(&spreads, 0.0, LAMBDA);
    let charted = spreads.iter().zip(&smooth.values).zip(&sums);
    for (point, ((off, smooth), sum)) in points.iter_mut().skip(count).zip(charted) {
        point.spreads = Some(*off);
        point.smooth = Some(*smooth);
        point.gathered = Some(sum.high);
    }
    let change = sums.last().zip(smooth.values.last()).and_then(|(sum, average)| {
        let limits = smooth.limits_at(u32::try_from(spreads.len()).unwrap_or(u32::MAX), 1.0, LIMITS);
        let (direction, run) = if sum.signals_high(by) || *average > limits.high {
            (Direction::More, sum.high_run)
        } else if sum.signals_low(by) || *average < limits.low {
            (Direction::Less, sum.low_run)
        } else {
            return None;
        };
        let took_part = later.get(later.len().checked_sub(run.max(1))?..)?;
        let first = took_part.first()?.0;
        let rate = mean_rate(took_part)?;
        Some(Change {
            direction,
            since: first.from.at,
            since_hours: first.from.hours,
            factor: (usual.rate.0 > 0.0).then(|| rate.0 / usual.rate.0),
            rate,
        })
    });
    Against { usual: Some(usual), points, change }
}

/// How many of the first balances make the baseline.
fn baseline_count(own: &[(&Balance, MlPerHour)]) -> Option<usize> {
    let mut hours = Tenths::ZERO;
    for (n, (balance, _)) in own.iter().enumerate() {
        hours = hours + balance.hours();
        if n + 1 >= LEAST_BALANCES && hours >= LEAST_HOURS {
            return Some(n + 1);
        }
    }
    None
}

fn baseline(base: &[(&Balance, MlPerHour)]) -> Usual {
    let rates: Vec<f64> = base.iter().map(|(_, rate)| rate.0).collect();
    // One balance gone wrong must not become what is usual.
    let out = farthest(&rates).filter(|out| out.stands_out()).map(|out| out.place);
    let kept: Vec<(&Balance, MlPerHour)> =
        base.iter().enumerate().filter(|(n, _)| Some(*n) != out).map(|(_, one)| *one).collect();
    let rate = mean_rate(&kept).unwrap_or(MlPerHour(0.0));
    let rates: Vec<f64> = kept.iter().map(|(_, rate)| rate.0).collect();
    let own = individuals(&rates).filter(|_| rates.len() >= KNOWS_SPREAD).map(|chart| chart.spread());
    let spread = own.unwrap_or(rate.0 * GUESSED_SPREAD).max(rate.0 * LEAST_SPREAD);
    let hours = kept.iter().fold(Tenths::ZERO, |sum, (balance, _)| sum + balance.hours());
    Usual { rate, spread: MlPerHour(spread.abs()), balances: kept.len(), hours }
}

/// Use over all of them together.
fn mean_rate(balances: &[(&Balance, MlPerHour)]) -> Option<MlPerHour> {
    let used: f64 = balances.iter().map(|(balance, _)| balance.used().0).sum();
    let hours: f64 = balances.iter().map(|(balance, _)| balance.hours().as_hours()).sum();
    (hours > 0.0).then(|| MlPerHour(used / hours))
}

/// How far a balance lies from what is usual, in spreads of its own and of the glass together.
fn in_spreads(balance: &Balance, rate: MlPerHour, usual: &Usual) -> f64 {
    // Two readings, each anywhere within its error: the root of the sum of two even spreads, error / sqrt(3)
    // each; the balance's error is both of them added.
    let glass = balance.error.map_or(0.0, |error| error.0 / 2.0 / 3.0_f64.sqrt() * 2.0_f64.sqrt());
    let glass = glass / balance.hours().as_hours();
    let spread = usual.spread.0.hypot(glass);
    if spread > 0.0 { (rate.0 - usual.rate.0) / spread } else { 0.0 }
}
