//! Oil that is not where it was said to go: a pour the glass does not show, a level that rose by itself.

use serde::{Deserialize, Serialize};

use super::amount::Millilitres;
use super::level::InGlass::{AboveView, BelowView, Percent};
use super::level::{Level, OilNumbers, OilSystem, surplus};

/// What the glass shows of a pour.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Astray {
    /// What the level rose by.
    pub seen: Millilitres,
    /// What was poured and is not in the glass; below zero: more came than was poured.
    pub astray: Millilitres,
    /// Farther off than two readings of the glass can be: ask (another unit of measure? spilt? a leak?).
    pub ask: bool,
}

/// Compares a pour with what the glass shows of it; `None` when one of the levels gives no volume, or the
/// glass's volume is not known.
pub fn astray(
    before: &Level,
    poured: Millilitres,
    after: &Level,
    system: &OilSystem,
    numbers: &OilNumbers,
) -> Option<Astray> {
    let glass = system.glass?;
    let over = |level| surplus(level, system, numbers).ok().map(|s| s.volume);
    let seen = over(after)? - over(before)?;
    let astray = poured - seen;
    let ask = astray.0.abs() > glass.times(2.0 * numbers.reading_error / 100.0).0;
    Some(Astray { seen, astray, ask })
}

/// Whether a level stands higher than an earlier one by more than two readings can be off, with no pour
/// recorded in between: ask (a pour nobody wrote down, a slope, read too soon), then drain-check for water.
///
/// Levels that do not compare, hot with cold or read too soon, tell nothing.
pub fn rose(before: &Level, now: &Level, system: &OilSystem, numbers: &OilNumbers) -> bool {
    let whole = OilSystem { glass: system.glass.or(Some(Millilitres(1.0))), ..*system };
    let compares = |level: &Level| match level.glass {
        Percent(_) => surplus(level, &whole, numbers).is_ok(),
        _ => level.stood != Some(false),
    };
    if !compares(before) || !compares(now) {
        return false;
    }
    match (before.glass, now.glass) {
        (Percent(_), Percent(_)) => {
            let over = |level| surplus(level, &whole, numbers).map_or(0.0, |s| s.volume.0);
            let both_off = whole.glass.map_or(0.0, |glass| glass.0 * 2.0 * numbers.reading_error / 100.0);
            over(now) - over(before) > both_off
        }
        (BelowView, Percent(p)) => p > 2.0 * numbers.reading_error,
        (Percent(p), AboveView) => p < 100.0 - 2.0 * numbers.reading_error,
        (BelowView, AboveView) => true,
        _ => false,
    }
}
