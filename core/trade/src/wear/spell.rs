//! For how long what was said of a site holds.

use chrono::{DateTime, FixedOffset, NaiveDate, NaiveTime};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use crate::day::yard_moment;
use crate::record::SiteDust;

/// A site's condition as someone said it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Said {
    /// When.
    pub at: DateTime<FixedOffset>,
    /// How dusty.
    pub dust: SiteDust,
}

/// A time in which a site was in one condition, all of it on one day of the yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Spell {
    /// From here.
    pub from: DateTime<FixedOffset>,
    /// Up to here.
    pub to: DateTime<FixedOffset>,
    /// The day.
    pub day: NaiveDate,
    /// How dusty.
    pub dust: SiteDust,
}

/// What holds when. The first word of a day holds from its midnight, each other one from when it was said; the
/// last one holds to the day's last end-of-day report after it, or to midnight. Days without a word have no
/// spell: an hour there counts as in a clean place.
///
/// `said` and `day_ends` in any order; `zone` is the yard's (R9).
pub fn spells(said: &[Said], day_ends: &[DateTime<FixedOffset>], zone: Tz) -> Vec<Spell> {
    let day_of = |at: DateTime<FixedOffset>| at.with_timezone(&zone).date_naive();
    let mut said = said.to_vec();
    said.sort_by_key(|s| (s.at, s.dust));
    let mut spells: Vec<Spell> = Vec::with_capacity(said.len());
    for of_day in said.chunk_by(|a, b| day_of(a.at) == day_of(b.at)) {
        let (Some(first), Some(last)) = (of_day.first(), of_day.last()) else { continue };
        let day = day_of(first.at);
        let midnight = |day| yard_moment(day, NaiveTime::MIN, zone);
        let bounds = midnight(day).zip(day.succ_opt().and_then(midnight));
        let Some((begins, next)) = bounds else { continue };
        let ended = day_ends.iter().filter(|end| day_of(**end) == day && **end >= last.at).max();
        let end = ended.copied().unwrap_or(next);
        for (n, one) in of_day.iter().enumerate() {
            let from = if n == 0 { begins } else { one.at };
            let to = of_day.get(n + 1).map_or(end, |following| following.at);
            spells.push(Spell { from, to, day, dust: one.dust });
        }
    }
    spells
}
