//! The yard's zone says which day it is.

use chrono::{DateTime, FixedOffset, NaiveDate, NaiveTime, TimeDelta, TimeZone};
use chrono_tz::Tz;

/// The yard's day of a moment, whatever the offset of the clock that recorded it (R9).
pub fn yard_day(at: DateTime<FixedOffset>, tz: Tz) -> NaiveDate {
    at.with_timezone(&tz).date_naive()
}

/// The moment at which the yard's clock shows `time` on `day`.
///
/// When the clock shows it twice, the first; when it is skipped, the moment an hour on. `None` beyond what a
/// calendar holds.
pub fn yard_moment(day: NaiveDate, time: NaiveTime, tz: Tz) -> Option<DateTime<FixedOffset>> {
    let local = day.and_time(time);
    let moment = tz.from_local_datetime(&local).earliest().or_else(|| {
        let skipped = local.checked_add_signed(TimeDelta::hours(1))?;
        tz.from_local_datetime(&skipped).earliest()
    })?;
    Some(moment.fixed_offset())
}
