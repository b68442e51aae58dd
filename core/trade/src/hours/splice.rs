//! Where one meter's figures are joined to the next one's (R3, exchanges and turns).

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::numbers::TURNS;
use super::rows::ExchangeRow;
use crate::quantity::Tenths;

/// A joint: from here on a figure plus `offset` is the total.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Splice {
    /// The entry of the exchange or the turn.
    pub entry: Uuid,
    /// Its moment. A reading of this very moment is still the old meter's.
    pub at: DateTime<FixedOffset>,
    /// What is added to a figure after it.
    pub offset: Tenths,
    /// `false` when the old meter's end was not read, or its figure was set aside: the last accepted
    /// figure stands in for it, and hours may be missing.
    pub end_known: bool,
    /// Same meter, past its highest figure.
    pub went_round: bool,
}

/// Where a meter that showed `last` turns over: as written if that is a place where meters turn,
/// else the nearest one ahead. `None` when no meter turns beyond `last`.
pub(super) fn turn_of(exchange: &ExchangeRow, last: Tenths) -> Option<Tenths> {
    let written = exchange.old_end.filter(|end| TURNS.contains(end) && *end > last);
    written.or_else(|| TURNS.into_iter().find(|end| *end > last))
}

/// Where the meter may have turned over, if `figure` were read after `last` with the ceiling at `most`:
/// only places for which the rise across the turn is possible.
pub(super) fn turns_that_fit(last: Tenths, figure: Tenths, most: Tenths) -> Vec<Tenths> {
    if figure < Tenths::ZERO || last < Tenths::ZERO {
        return Vec::new();
    }
    TURNS.into_iter().filter(|end| last < *end && figure < *end && *end + figure <= most).collect()
}
