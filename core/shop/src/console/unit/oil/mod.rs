//! The oil of one unit: where it stood, what was poured, what is used in an hour and what that tells.

mod levels;
mod page;

use serde::Serialize;
use sumpbook_daybook::screen::OilUseRow;
use sumpbook_trade::Stamp;

use super::view::Reading;
use crate::ShopError;
use crate::sheet::key;

pub(super) use levels::LevelRow;
pub(super) use page::draw;

/// The oil.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Oil {
    /// The fill that is in it, its balances and what they say; none before anything is known of it.
    pub(super) fill: Option<OilUseRow>,
    /// What the last level tells beyond the last balance.
    pub(super) so_far: Option<SoFarRow>,
    /// The oil calls its service now: why, and since when.
    pub(super) called: Option<CalledRow>,
    /// The middle of the glass, percent, both ends in it.
    pub(super) middle: (f64, f64),
    /// Milligrams in a cubic metre beyond which use is too much.
    pub(super) most_mg_m3: f64,
    /// Levels, pours and fills, newest first.
    pub(super) levels: Vec<LevelRow>,
}

/// A balance that no pour has closed.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct SoFarRow {
    pub(super) from: Stamp,
    pub(super) to: Stamp,
    /// Used between the two, millilitres; below zero the level rose.
    pub(super) used_ml: i64,
    /// In an hour, hundredths of a millilitre.
    pub(super) ml_per_hour_hundredths: Option<i64>,
}

/// Oil that calls for its service.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct CalledRow {
    pub(super) why: String,
    pub(super) since: Stamp,
}

pub(super) fn read(of: &Reading<'_>) -> Result<Oil, ShopError> {
    let oil = &of.state.oil;
    let so_far = oil.fill.as_ref().and_then(|fill| fill.so_far);
    Ok(Oil {
        fill: OilUseRow::of(oil, of.ledger.fleet()),
        so_far: so_far.map(|so_far| SoFarRow {
            from: of.yard.stamp(so_far.from.at),
            to: of.yard.stamp(so_far.to.at),
            used_ml: so_far.used.0.round() as i64,
            ml_per_hour_hundredths: so_far.rate().map(|rate| (rate.0 * 100.0).round() as i64),
        }),
        called: of
            .state
            .called
            .map(|called| CalledRow { why: key(&called.why), since: of.yard.stamp(called.since) }),
        middle: of.ledger.fleet().numbers.oil().middle,
        most_mg_m3: of.ledger.fleet().numbers.oil().most_mg_m3,
        levels: levels::read(of)?,
    })
}
