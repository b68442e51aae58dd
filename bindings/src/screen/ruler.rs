//! The two clocks of a task.

use chrono::NaiveDate;
use sumpbook_daybook::screen::{CalledRow, ForecastRow, LeftHours, TaskRow, WaitRow};
use sumpbook_trade::clock::{EnteredTwice, Nearer, Standing};
use sumpbook_trade::wear::WhyCalled;
use sumpbook_trade::{EntryId, Stamp, Tenths};

/// One task with its two clocks.
#[uniffi::remote(Record)]
pub struct TaskRow {
    /// The task's id, and its text `task-...`. Of a maker's campaign it holds the words of what is to be done, too, and
    /// so does its text.
    pub id: String,
    /// How it stands.
    pub standing: Standing,
    /// The clock that runs out first.
    pub nearer: Nearer,
    /// Hours of its interval.
    pub every_hours: Option<Tenths>,
    /// Hours left or past.
    pub hours_left: Option<LeftHours>,
    /// What this meter shows when they run out.
    pub due_figure: Option<Tenths>,
    /// Thousandths of the hours interval used; over 1000 past due.
    pub hours_used_share: Option<i64>,
    /// Days left; negative when past.
    pub days_left: Option<i64>,
    /// The last good day.
    pub last_good_day: Option<NaiveDate>,
    /// Thousandths of the calendar interval used.
    pub days_used_share: Option<i64>,
    /// Where "coming up" begins on the hours' track, thousandths of the interval.
    pub hours_coming_up_share: Option<i64>,
    /// Where it begins on the calendar's.
    pub days_coming_up_share: Option<i64>,
    /// Its hours count by the site's dust: hours left and used are weighted.
    pub counts_weighted: bool,
    /// Hundredths an hour counts now; 100 where the dust makes no difference.
    pub weight: u32,
    /// Hours of the meter left, each counting as the last ones did, where they are not the hours left.
    pub meter_hours_left: Option<LeftHours>,
    /// When its hours run out at the pace of the last weeks; none when the pace is unknown or they have.
    pub forecast: Option<ForecastRow>,
    /// Thousandths of the hours interval used at least, where hours are counted or estimated: solid up to here,
    /// hatched from here to what is used at most.
    pub hours_used_least_share: Option<i64>,
    /// Thousandths likely used, where hours are estimated.
    pub hours_used_likely_share: Option<i64>,
    /// Hours left at most, where hours are counted or estimated; `hours_left` are at least left then.
    pub hours_left_at_most: Option<LeftHours>,
    /// Hours likely left, where hours are estimated.
    pub hours_left_likely: Option<LeftHours>,
    /// The oil calls for it now, and why: `called-...`.
    pub called: Option<CalledRow>,
    /// Entries that look like one service.
    pub entered_twice: Vec<EnteredTwice>,
    /// It waits for a part. It is still due.
    pub waiting: Option<WaitRow>,
}

/// When hours run out, as days of the yard.
#[uniffi::remote(Record)]
pub struct ForecastRow {
    /// Not before, 9 times in 10.
    pub earliest: NaiveDate,
    /// Likely.
    pub likely: NaiveDate,
    /// Not after, 9 times in 10; none beyond ten years.
    pub latest: Option<NaiveDate>,
    /// Where the likely day lies on the calendar's track, thousandths of its interval; none without a calendar.
    pub likely_share: Option<i64>,
    /// The likely day lies before today: no hours that count were told since, for the text `forecast-gone-by`.
    #[uniffi(default = false)]
    pub gone_by: bool,
}

/// Oil that calls for its service.
#[uniffi::remote(Record)]
pub struct CalledRow {
    /// Why.
    pub why: WhyCalled,
    /// Since when.
    pub since: Stamp,
}

/// A wait for a part.
#[uniffi::remote(Record)]
pub struct WaitRow {
    /// Its entry.
    pub id: EntryId,
    /// Which part.
    pub part: String,
    /// Promised for this day.
    pub promised: Option<NaiveDate>,
}
