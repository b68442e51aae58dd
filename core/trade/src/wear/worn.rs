//! Weighted hours between two readings of a unit's hours (R10).

use chrono::{DateTime, FixedOffset, NaiveDate};
use chrono_tz::Tz;

use super::spell::Spell;
use super::weights::Weights;
use crate::clock::FineHours;
use crate::forecast::HoursAt;
use crate::quantity::Tenths;
use crate::record::SiteDust;

/// From one total to the next, each hour with one weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Stretch {
    /// Up to this total.
    to: Tenths,
    hundredths: u32,
}

/// How hours of a unit weigh, from its accepted readings and what was said of its sites.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Worn {
    /// By rising totals; an hour before the first reading counts as its own day says.
    stretches: Vec<Stretch>,
    last_weight: u32,
}

impl Worn {
    /// Weighs the hours between `readings`, which are the accepted ones, oldest first.
    ///
    /// Hours before the first reading, and days nobody said anything of, weigh as a clean place does.
    pub fn of(readings: &[HoursAt], spells: &[Spell], weights: &Weights, zone: Tz) -> Worn {
        let mut by_start = spells.to_vec();
        by_start.sort_by_key(|spell| spell.from);
        let day_of = |at: DateTime<FixedOffset>| at.with_timezone(&zone).date_naive();
        let clean = |day: NaiveDate| weights.on(day, SiteDust::Clean);
        let mut stretches: Vec<Stretch> = Vec::with_capacity(readings.len());
        let mut before: Option<HoursAt> = None;
        for reading in readings {
            let Some(earlier) = before.replace(*reading) else {
                stretches.push(Stretch { to: reading.total, hundredths: clean(day_of(reading.at)) });
                continue;
            };
            if reading.total <= earlier.total {
                continue;
            }
            // Of spells that touch the rise only in a moment nothing was run.
            let first = by_start.partition_point(|spell| spell.to <= earlier.at);
            let touching = by_start.iter().skip(first).take_while(|spell| spell.from < reading.at);
            let said = touching.filter(|spell| spell.to > earlier.at);
            let (mut heaviest, mut last_day) = (None, None);
            for spell in said {
                heaviest = heaviest.max(Some(weights.on(spell.day, spell.dust)));
                last_day = Some(spell.day);
            }
            // The day of the reading itself takes part even when nobody said anything of it.
            let own = day_of(reading.at);
            let unsaid = (last_day != Some(own)).then(|| clean(own));
            let hundredths = heaviest.max(unsaid).unwrap_or_else(|| clean(own));
            stretches.push(Stretch { to: reading.total, hundredths });
        }
        let last_weight = stretches.last().map_or(100, |stretch| stretch.hundredths);
        Worn { stretches, last_weight }
    }

    /// Weighted hours from one total to another; below zero when they run backwards. Beyond the last reading
    /// hours weigh as the last ones did.
    pub fn between(&self, from: Tenths, to: Tenths) -> FineHours {
        if to < from {
            return -self.between(to, from);
        }
        let mut sum = FineHours::ZERO;
        let mut at = from;
        for stretch in self.stretches.iter().filter(|stretch| stretch.to > from) {
            let upto = stretch.to.min(to);
            sum = sum + weigh(upto - at, stretch.hundredths);
            at = upto;
            if at == to {
                return sum;
            }
        }
        sum + weigh(to - at, self.last_weight)
    }

    /// Hundredths the last hours counted: what an hour to come is reckoned at.
    pub fn weight_now(&self) -> u32 {
        self.last_weight
    }
}

fn weigh(hours: Tenths, hundredths: u32) -> FineHours {
    FineHours::weighted(hours, hundredths.saturating_mul(10))
}
