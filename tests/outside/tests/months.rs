//! Months added to a day, against the libraries and pages that say how.

use chrono::NaiveDate;
use sumpbook_trade::add_months;

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

#[track_caller]
fn adds(from: &str, months: u32, to: &str) {
    assert_eq!(add_months(day(from), months), Some(day(to)), "{from} + {months} months");
}

#[test]
fn a_shorter_month_gives_its_last_day() {
    // java.time reference (ThreeTen backport, `LocalDate.plusMonths` javadoc).
    adds("2007-03-31", 1, "2007-04-30");
    // Input from the same project's test `adjustDayFromLeapYear`; result computed.
    adds("2008-02-29", 12, "2009-02-28");
    // chrono, documentation of `checked_add_months`.
    adds("2022-07-31", 2, "2022-09-30");
    // chrono's own tests.
    adds("2022-01-29", 1, "2022-02-28");
    adds("2022-10-29", 16, "2024-02-29");
    adds("2022-10-31", 2, "2022-12-31");
    // python-dateutil documentation.
    adds("2003-01-31", 1, "2003-02-28");
    adds("2003-01-31", 2, "2003-03-31");
    adds("2000-02-29", 12, "2001-02-28");
    // Computed with python-dateutil: a separator element fitted on a leap day.
    adds("2020-02-29", 60, "2025-02-28");
    adds("2024-02-29", 48, "2028-02-29");
}

#[test]
fn months_are_counted_from_the_service_and_not_chained() {
    // Computed with python-dateutil, anchored column.
    for (n, to) in [(1, "2024-02-29"), (2, "2024-03-31"), (3, "2024-04-30"), (4, "2024-05-31")] {
        adds("2024-01-31", n, to);
    }
    let chained = (0..4).try_fold(day("2024-01-31"), |at, _| add_months(at, 1));
    assert_eq!(chained, Some(day("2024-05-29")), "what a chain would have said");
    let yearly = (0..4).try_fold(day("2024-02-29"), |at, _| add_months(at, 12));
    assert_eq!(yearly, Some(day("2028-02-28")), "what a chain would have said");
}

#[test]
fn records_are_kept_to_the_clamped_day() {
    // 49 CFR 396.11(a)(4) three months and 396.21(b) fourteen months; days computed with dateutil.
    adds("2025-11-30", 3, "2026-02-28");
    adds("2025-12-31", 14, "2027-02-28");
    // 49 CFR 396.3(c): a year where the vehicle is housed, and six months after it leaves the carrier's control.
    adds("2024-02-29", 12, "2025-02-28");
    adds("2025-08-31", 6, "2026-02-28");
    adds("2026-08-30", 18, "2028-02-29");
}
