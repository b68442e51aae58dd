//! What a unit's oil use comes to in a word: against its own usual, and against the limit.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::state::OilNow;
use sumpbook_trade::oil::{Direction, OilVerdict};

/// Oil use in a word.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OilUse {
    /// Use over what is usual for this fill, tenths; none when nothing is usual yet.
    pub times_tenths: Option<i64>,
    /// Use has changed since this day of the yard: an alarm.
    pub since: Option<NaiveDate>,
    /// It changed to less, and not to more.
    pub less: bool,
    /// Used in an hour by the newest balance, hundredths of a millilitre.
    pub ml_per_hour_hundredths: Option<i64>,
    /// The newest balance lies wholly over the limit: an alarm.
    pub over_limit: bool,
}

impl OilUse {
    /// Of a unit's oil; none when no balance of its own is closed.
    pub fn of(oil: &OilNow, fleet: &Fleet) -> Option<OilUse> {
        let newest = oil.fill.as_ref()?.last_balance()?;
        let rate = newest.rate();
        let change = oil.against.as_ref().and_then(|against| against.change);
        let usual = oil.against.as_ref().and_then(|against| against.usual);
        let plain = usual.zip(rate).filter(|(usual, _)| usual.rate.0 > 0.0);
        let times = match change {
            Some(change) => change.factor,
            None => plain.map(|(usual, rate)| rate.0 / usual.rate.0),
        };
        Some(OilUse {
            times_tenths: times.map(|times| (times * 10.0).round() as i64),
            since: change.map(|change| fleet.yard_day(change.since.into())),
            less: change.is_some_and(|change| change.direction == Direction::Less),
            ml_per_hour_hundredths: rate.map(|rate| (rate.0 * 100.0).round() as i64),
            over_limit: oil.verdict == Some(OilVerdict::Over),
        })
    }

    /// Whether somebody should look.
    pub fn is_alarm(&self) -> bool {
        self.since.is_some() || self.over_limit
    }
}
