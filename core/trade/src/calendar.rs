//! Months added to a day, the way a service clock counts them.

use chrono::{Months, NaiveDate};

/// The day `months` after `day`, clamped to the last day of a shorter month.
///
/// Count always from the day the work was done and never from an earlier answer: a service of 31 January
/// falls due monthly on 29 February and 31 March, where a chain of single steps would slide to 29 March (R1).
/// `None` beyond what a calendar holds.
pub fn add_months(day: NaiveDate, months: u32) -> Option<NaiveDate> {
    day.checked_add_months(Months::new(months))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[track_caller]
    fn adds(from: &str, months: u32, to: &str) {
        assert_eq!(add_months(day(from), months), Some(day(to)), "{from} + {months} months");
    }

    #[test]
    fn half_a_year_from_the_end_of_august_is_the_leap_day() {
        // Invented data, outcome worked by rule.
        adds("2027-08-31", 6, "2028-02-29");
    }

    #[test]
    fn beyond_the_calendar_there_is_no_day() {
        assert_eq!(add_months(day("2026-01-01"), u32::MAX), None);
    }
}
