//! The numbers of the rules, the shop's to edit.

use chrono::TimeDelta;
use serde::Serialize;

use crate::clock::{Ahead, ClockNumbers};
use crate::forecast::ForecastNumbers;
use crate::hours::HoursNumbers;
use crate::oil::OilNumbers;

record! {
    /// The numbers of R1 to R14 and of the forecast. Each one set replaces the one before whole, and is read over
    /// all that was ever recorded. `Default` gives a fleet's usual ones; in JSON what is left out is the usual.
    #[derive(Eq)]
    #[serde(default)]
    pub struct RuleNumbers {
        /// R2: coming up from so many percent of a task's hours left. Usual: 10.
        #[n(0)] pub coming_up_percent: u32,
        /// R2: and from so many days before its last good day. Usual: 14.
        #[n(1)] pub coming_up_days: u32,
        /// R7: the same task again within so many percent of its hours is "entered twice". Usual: 10.
        #[n(2)] pub twice_percent: u32,
        /// R7: and within so many days. Usual: 30.
        #[n(3)] pub twice_days: u32,
        /// R9: a pre-trip covers so many minutes from its signature. Usual: 840, which is 14 h.
        #[n(4)] pub covers_minutes: u32,
        /// R3: a run whose accepted neighbour is older than so many days goes to a person. Usual: 14.
        #[n(5)] pub neighbour_days: u32,
        /// Unlike this unit: looks so many days back. Usual: 60.
        #[n(6)] pub unlike_window_days: u32,
        /// Unlike this unit: asked only with so many days of use. Usual: 10.
        #[n(7)] pub unlike_least_days: u32,
        /// Unlike this unit: the percentile of a day's rise. Usual: 90.
        #[n(8)] pub unlike_percentile: u32,
        /// Unlike this unit: so many times that percentile. Usual: 2.
        #[n(9)] pub unlike_times: u32,
        /// Forecast: readings of so many days. Usual: 60.
        #[n(10)] pub forecast_days: u32,
        /// Forecast: at least so many readings. Usual: 3.
        #[n(11)] pub forecast_least_readings: u32,
        /// Forecast: over at least so many days. Usual: 5.
        #[n(12)] pub forecast_least_days: u32,
        /// Forecast: spreads to either side, hundredths. Usual: 128, which holds the true day 8 times in 10.
        #[n(13)] pub forecast_spreads: u32,
        /// R11: the middle of the glass from, percent. Usual: 45.
        #[n(14)] pub middle_from: u32,
        /// R11: and up to, percent. Usual: 55.
        #[n(15)] pub middle_to: u32,
        /// R11: what one reading of the glass may be off, percent. Usual: 5.
        #[n(16)] pub glass_error: u32,
        /// R11: running hours after a fill before it can have settled, tenths. Usual: 100.
        #[n(17)] pub settle_hours: u32,
        /// R11: hours a balance must cover for a verdict, tenths. Usual: 500.
        #[n(18)] pub verdict_hours: u32,
        /// R11: growth of oil with each degree Celsius, hundredths of a percent. Usual: 7.
        #[n(19)] pub oil_growth: u32,
        /// Grams in a millilitre of oil, hundredths. Usual: 86.
        #[n(20)] pub oil_density: u32,
        /// Milligrams of oil in a cubic metre of air from which use is too much, tenths. Usual: 50.
        #[n(21)] pub most_oil: u32,
        /// R13: a clock that moved by more than so many seconds is told. Usual: 120.
        #[n(22)] pub clock_moved_seconds: u32,
    }
}

impl Default for RuleNumbers {
    fn default() -> RuleNumbers {
        RuleNumbers {
            coming_up_percent: 10,
            coming_up_days: 14,
            twice_percent: 10,
            twice_days: 30,
            covers_minutes: 840,
            neighbour_days: 14,
            unlike_window_days: 60,
            unlike_least_days: 10,
            unlike_percentile: 90,
            unlike_times: 2,
            forecast_days: 60,
            forecast_least_readings: 3,
            forecast_least_days: 5,
            forecast_spreads: 128,
            middle_from: 45,
            middle_to: 55,
            glass_error: 5,
            settle_hours: 100,
            verdict_hours: 500,
            oil_growth: 7,
            oil_density: 86,
            most_oil: 50,
            clock_moved_seconds: 120,
        }
    }
}

/// One of the numbers: where it stands, and what it may be.
#[derive(Clone, Copy, Debug)]
pub struct RuleNumber {
    /// Its name in JSON.
    pub id: &'static str,
    /// The least it may be.
    pub least: u32,
    /// The most it may be.
    pub most: u32,
    /// Decimal places of the figure as people read it: 2 where 128 is 1.28.
    pub places: u32,
    get: fn(&RuleNumbers) -> u32,
    set: fn(&mut RuleNumbers, u32),
}

/// A number that is none of a rule's.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, thiserror::Error)]
#[serde(rename_all = "kebab-case")]
pub enum NotANumberOfARule {
    /// Out of its bounds.
    #[error("{id} is {given}: it goes from {least} to {most}")]
    OutOfBounds {
        /// Which.
        id: &'static str,
        /// As given.
        given: u32,
        /// The least.
        least: u32,
        /// The most.
        most: u32,
    },
}

macro_rules! numbers {
    ($($id:literal $field:ident $least:literal..=$most:literal $places:literal;)*) => {
        /// Every number, in the order in which people read them.
        pub const ALL: &'static [RuleNumber] = &[$(RuleNumber {
            id: $id,
            least: $least,
            most: $most,
            places: $places,
            get: |of| of.$field,
            set: |of, to| of.$field = to,
        }),*];
    };
}

impl RuleNumber {
    numbers! {
        "coming-up-percent" coming_up_percent 0..=100 0;
        "coming-up-days" coming_up_days 0..=366 0;
        "twice-percent" twice_percent 0..=100 0;
        "twice-days" twice_days 0..=366 0;
        "covers-minutes" covers_minutes 60..=1_440 0;
        "neighbour-days" neighbour_days 1..=366 0;
        "unlike-window-days" unlike_window_days 7..=366 0;
        "unlike-least-days" unlike_least_days 2..=366 0;
        "unlike-percentile" unlike_percentile 50..=100 0;
        "unlike-times" unlike_times 1..=10 0;
        "forecast-days" forecast_days 7..=366 0;
        "forecast-least-readings" forecast_least_readings 2..=100 0;
        "forecast-least-days" forecast_least_days 1..=100 0;
        "forecast-spreads" forecast_spreads 0..=400 2;
        "middle-from" middle_from 0..=50 0;
        "middle-to" middle_to 50..=100 0;
        "glass-error" glass_error 0..=50 0;
        "settle-hours" settle_hours 0..=1_000 1;
        "verdict-hours" verdict_hours 0..=10_000 1;
        "oil-growth" oil_growth 0..=20 2;
        "oil-density" oil_density 50..=150 2;
        "most-oil" most_oil 1..=10_000 1;
        "clock-moved-seconds" clock_moved_seconds 1..=3_600 0;
    }

    /// What it is among these.
    pub fn of(&self, numbers: &RuleNumbers) -> u32 {
        (self.get)(numbers)
    }

    /// Makes it this among these.
    pub fn put(&self, numbers: &mut RuleNumbers, to: u32) {
        (self.set)(numbers, to);
    }
}

impl RuleNumbers {
    /// Whether each stands within its bounds.
    ///
    /// # Errors
    /// The first that does not.
    pub fn check(&self) -> Result<(), NotANumberOfARule> {
        for number in RuleNumber::ALL {
            let given = number.of(self);
            if !(number.least..=number.most).contains(&given) {
                let RuleNumber { id, least, most, .. } = *number;
                return Err(NotANumberOfARule::OutOfBounds { id, given, least, most });
            }
        }
        Ok(())
    }

    /// Of R1, R2 and R7.
    pub fn clocks(&self) -> ClockNumbers {
        ClockNumbers {
            ahead: Ahead { percent: self.coming_up_percent, days: self.coming_up_days },
            twice_percent: self.twice_percent,
            twice_days: self.twice_days,
        }
    }

    /// Of R3 and "unlike this unit".
    pub fn hours(&self) -> HoursNumbers {
        HoursNumbers {
            neighbour_days: self.neighbour_days,
            window_days: self.unlike_window_days,
            least_use_days: self.unlike_least_days,
            percentile: self.unlike_percentile,
            times: self.unlike_times,
        }
    }

    /// Of the forecast.
    pub fn forecast(&self) -> ForecastNumbers {
        ForecastNumbers {
            window_days: self.forecast_days,
            least_readings: usize::try_from(self.forecast_least_readings).unwrap_or(usize::MAX),
            least_days: f64::from(self.forecast_least_days),
            spreads: f64::from(self.forecast_spreads) / 100.0,
            stale_days: self.forecast_days,
        }
    }

    /// Of R11.
    pub fn oil(&self) -> OilNumbers {
        OilNumbers {
            middle: (f64::from(self.middle_from), f64::from(self.middle_to)),
            reading_error: f64::from(self.glass_error),
            settle_hours: f64::from(self.settle_hours) / 10.0,
            least_hours: f64::from(self.verdict_hours) / 10.0,
            growth: f64::from(self.oil_growth) / 10_000.0,
            density: f64::from(self.oil_density) / 100.0,
            most_mg_m3: f64::from(self.most_oil) / 10.0,
        }
    }

    /// R9: how long a pre-trip covers at most.
    pub fn covers(&self) -> TimeDelta {
        TimeDelta::minutes(i64::from(self.covers_minutes))
    }

    /// R13: what a clock may move by untold, milliseconds.
    pub fn clock_moved_ms(&self) -> u64 {
        u64::from(self.clock_moved_seconds).saturating_mul(1_000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_ones_are_those_of_each_rule() {
        let usual = RuleNumbers::default();
        usual.check().unwrap();
        assert_eq!(usual.clocks(), ClockNumbers::default());
        assert_eq!(usual.hours(), HoursNumbers::default());
        assert_eq!(usual.forecast(), ForecastNumbers::default());
        assert_eq!(usual.oil(), OilNumbers::default());
        assert_eq!(usual.covers(), crate::day::DEFAULT_LIMIT);
    }

    #[test]
    fn each_has_one_name_and_bounds_of_its_own() {
        for number in RuleNumber::ALL {
            let usual = serde_json::to_value(RuleNumbers::default()).unwrap();
            for to in [number.least, number.most] {
                let line = format!(r#"{{"{}":{to}}}"#, number.id);
                let read: RuleNumbers = serde_json::from_str(&line).unwrap();
                assert_eq!(number.of(&read), to, "{}", number.id);
                read.check().unwrap();
                // And no other one is another.
                let mut put = RuleNumbers::default();
                number.put(&mut put, to);
                assert_eq!(put, read);
                let now = serde_json::to_value(&read).unwrap();
                let moved = usual.as_object().unwrap().iter().filter(|(id, was)| now[*id] != **was);
                assert!(moved.map(|(id, _)| id.as_str()).all(|id| id == number.id));
            }
            let mut over = RuleNumbers::default();
            number.put(&mut over, number.most + 1);
            let told = over.check().unwrap_err().to_string();
            assert!(told.starts_with(number.id) && told.contains(&number.most.to_string()), "{told}");
        }
        assert_eq!(
            RuleNumber::ALL.len(),
            serde_json::to_value(RuleNumbers::default()).unwrap().as_object().unwrap().len()
        );
    }
}
