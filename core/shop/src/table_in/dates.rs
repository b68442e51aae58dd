//! Days as people write them. What can be read two ways is told as two days and never guessed.

use chrono::{Days, NaiveDate, NaiveTime, Timelike};
use serde::{Deserialize, Serialize};

use super::Why;

/// How a file writes its days.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DateStyle {
    /// Month, day, year: 10/12/2026 is 12 October.
    Mdy,
    /// Day, month, year: 10/12/2026 is 10 December.
    Dmy,
    /// Year, month, day: 2026-10-12.
    Iso,
    /// A spreadsheet's day number, 1 being 1 January 1900.
    Serial,
}

/// What a cell says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Day {
    /// One day, with a time of day where one was written.
    One {
        day: NaiveDate,
        time: Option<NaiveTime>,
        /// Only one of the two ways of writing gives a day at all.
        only: Option<DateStyle>,
    },
    /// One of two days.
    Two { mdy: NaiveDate, dmy: NaiveDate },
    /// A bare number: a day only when someone says that it is one.
    Number(NaiveDate),
    /// No day.
    Wrong(Why),
}

/// Reads a cell. With a style given it is held to it; ISO and months by name are one day in any style.
pub(super) fn read(text: &str, style: Option<DateStyle>) -> Day {
    let text = text.trim();
    if text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.') && text.matches('.').count() <= 1 {
        return number(text, style);
    }
    let Some((date, time)) = without_time(text) else { return Day::Wrong(Why::NotADate) };
    if date.chars().any(char::is_alphabetic) {
        return named(&date).map_or(Day::Wrong(Why::NotADate), |day| Day::One { day, time, only: None });
    }
    let parts: Vec<&str> = date.split(['/', '-', '.']).map(str::trim).collect();
    let [first, second, third] = parts.as_slice() else { return Day::Wrong(Why::NotADate) };
    let plain = |part: &str| (1..=4).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
    if ![first, second, third].into_iter().all(|part| plain(part)) {
        return Day::Wrong(Why::NotADate);
    }
    let n = |part: &str| part.parse::<u32>().unwrap_or(u32::MAX);
    if first.len() == 4 {
        return match made(n(first), n(second), n(third)) {
            Ok(day) => Day::One { day, time, only: None },
            Err(why) => Day::Wrong(why),
        };
    }
    let year = match (third.len(), style) {
        (4, _) => n(third),
        // In two digits only where somebody said how the file writes its days; the last century is over.
        (2, Some(DateStyle::Mdy | DateStyle::Dmy)) => n(third).saturating_add(2_000),
        (2, None) => return Day::Wrong(Why::ShortYear),
        _ => return Day::Wrong(Why::NotADate),
    };
    let (mdy, dmy) = (made(year, n(first), n(second)), made(year, n(second), n(first)));
    let one = |made: Result<NaiveDate, Why>, only| match made {
        Ok(day) => Day::One { day, time, only },
        Err(why) => Day::Wrong(why),
    };
    match style {
        Some(DateStyle::Mdy) => one(mdy, None),
        Some(DateStyle::Dmy) => one(dmy, None),
        Some(DateStyle::Iso | DateStyle::Serial) => Day::Wrong(Why::OtherDates),
        None => match (mdy, dmy) {
            (Ok(mdy), Ok(dmy)) if mdy != dmy => Day::Two { mdy, dmy },
            (Ok(day), Ok(_)) => Day::One { day, time, only: None },
            (Ok(day), Err(_)) => Day::One { day, time, only: Some(DateStyle::Mdy) },
            (Err(_), Ok(day)) => Day::One { day, time, only: Some(DateStyle::Dmy) },
            (Err(why), Err(_)) => Day::Wrong(why),
        },
    }
}

fn made(year: u32, month: u32, day: u32) -> Result<NaiveDate, Why> {
    if !(1..=12).contains(&month) {
        return Err(Why::NoSuchMonth);
    }
    let year = i32::try_from(year).map_err(|_| Why::NotADate)?;
    NaiveDate::from_ymd_opt(year, month, day).ok_or(Why::NoSuchDay)
}

/// A spreadsheet's day number: 1 is 1 January 1900, and 60 stands for a 29 February that year never had
/// (ISO/IEC 29500-1, 18.17.4.1, the 1900 base; from memory). Up to 60 nobody means one here.
fn number(text: &str, style: Option<DateStyle>) -> Day {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let day = whole
        .parse::<u64>()
        .ok()
        .filter(|n| (61..=109_574).contains(n))
        .and_then(|n| NaiveDate::from_ymd_opt(1899, 12, 30)?.checked_add_days(Days::new(n)));
    let Some(day) = day else { return Day::Wrong(Why::NotADate) };
    match style {
        Some(DateStyle::Serial) => {
            let time = (!part.is_empty()).then(|| format!("0.{part}").parse::<f64>().ok()).flatten();
            // A whole minute: spreadsheets keep 06:30 as 0.270833.
            let time = time.map(|share| (share * 1_440.0).round() as u32 * 60);
            let time = time.and_then(|s| NaiveTime::from_num_seconds_from_midnight_opt(s.min(86_340), 0));
            Day::One { day, time, only: None }
        }
        Some(_) => Day::Wrong(Why::OtherDates),
        None => Day::Number(day),
    }
}

/// The date without its time of day, and that time. None when a time is written that is none.
fn without_time(text: &str) -> Option<(String, Option<NaiveTime>)> {
    let spaced = match text.split_once('T') {
        Some((date, time)) if time.contains(':') && date.len() == 10 => format!("{date} {time}"),
        _ => text.to_owned(),
    };
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let Some(at) = words.iter().position(|word| word.contains(':')) else {
        return Some((words.join(" "), None));
    };
    let (date, time) = words.split_at(at);
    Some((date.join(" "), Some(clock(&time.join(" "))?)))
}

/// A time of day: 6:30, 06:30:15, 6:30 PM.
pub(super) fn clock(text: &str) -> Option<NaiveTime> {
    let text = text.trim().to_uppercase().replace("A. M.", "AM").replace("P. M.", "PM").replace('.', "");
    let (digits, half) =
        match text.strip_suffix("AM").map(|t| (t, 0)).or(text.strip_suffix("PM").map(|t| (t, 12))) {
            Some((digits, add)) => (digits.trim().to_owned(), Some(add)),
            None => (text, None),
        };
    let time = ["%H:%M", "%H:%M:%S"].iter().find_map(|form| NaiveTime::parse_from_str(&digits, form).ok())?;
    match half {
        None => Some(time),
        Some(_) if !(1..=12).contains(&time.hour()) => None,
        Some(add) => time.with_hour(time.hour() % 12 + add),
    }
}

/// Beginnings of months in English and Spanish, by number.
const MONTHS: [(&str, u32); 17] = [
    ("jan", 1),
    ("ene", 1),
    ("feb", 2),
    ("mar", 3),
    ("apr", 4),
    ("abr", 4),
    ("may", 5),
    ("jun", 6),
    ("jul", 7),
    ("aug", 8),
    ("ago", 8),
    ("sep", 9),
    ("oct", 10),
    ("nov", 11),
    ("dec", 12),
    ("dic", 12),
    ("set", 9),
];

/// A day with its month by name: 12 Oct 2026, Oct 12, 2026, 12-oct-2026, 12 de octubre de 2026.
fn named(text: &str) -> Option<NaiveDate> {
    let parts: Vec<String> = text
        .split([' ', ',', '-', '/', '.'])
        .filter(|part| {
            !part.is_empty() && !part.eq_ignore_ascii_case("de") && !part.eq_ignore_ascii_case("del")
        })
        .map(str::to_lowercase)
        .collect();
    let [first, second, year] = parts.as_slice() else { return None };
    let month = |part: &str| {
        let begins = part.get(..3)?;
        MONTHS.iter().find(|(name, _)| *name == begins).map(|(_, number)| *number)
    };
    let (month, day) = match (month(first), month(second)) {
        (Some(month), None) => (month, second),
        (None, Some(month)) => (month, first),
        _ => return None,
    };
    let year = year.parse().ok().filter(|_| year.len() == 4)?;
    NaiveDate::from_ymd_opt(year, month, day.parse().ok()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn one(text: &str, style: Option<DateStyle>) -> NaiveDate {
        match read(text, style) {
            Day::One { day, .. } => day,
            other => panic!("{text}: {other:?}"),
        }
    }

    #[test]
    fn what_can_be_two_days_is_two_until_someone_says() {
        let two = Day::Two { mdy: day("2026-10-12"), dmy: day("2026-12-10") };
        assert_eq!(read("10/12/2026", None), two);
        assert_eq!(read("10.12.2026", None), two);
        assert_eq!(one("10/12/2026", Some(DateStyle::Mdy)), day("2026-10-12"));
        assert_eq!(one("10/12/2026", Some(DateStyle::Dmy)), day("2026-12-10"));
        assert_eq!(read("10/12/2026", Some(DateStyle::Iso)), Day::Wrong(Why::OtherDates));
        assert_eq!(one("10/10/2026", None), day("2026-10-10"));
    }

    #[test]
    fn one_reading_is_one_day_and_says_which_way_it_was_read() {
        let is = |text: &str, only| match read(text, None) {
            Day::One { only: was, .. } => assert_eq!(was, only, "{text}"),
            other => panic!("{text}: {other:?}"),
        };
        is("10/13/2026", Some(DateStyle::Mdy));
        is("13/10/2026", Some(DateStyle::Dmy));
        for text in [
            "2026-10-12",
            "2026/10/12",
            "12 Oct 2026",
            "Oct 12, 2026",
            "12-oct-2026",
            "12 de octubre de 2026",
        ] {
            is(text, None);
            assert_eq!(one(text, Some(DateStyle::Dmy)), day("2026-10-12"), "{text}");
        }
    }

    #[test]
    fn what_is_no_day_says_why() {
        let wrong = |text: &str, style| match read(text, style) {
            Day::Wrong(why) => why,
            other => panic!("{text}: {other:?}"),
        };
        assert_eq!(wrong("13/31/2025", Some(DateStyle::Mdy)), Why::NoSuchMonth);
        assert_eq!(wrong("13/31/2025", None), Why::NoSuchMonth);
        assert_eq!(wrong("2026-02-29", None), Why::NoSuchDay);
        assert_eq!(wrong("10/12/26", None), Why::ShortYear);
        assert_eq!(one("10/12/26", Some(DateStyle::Mdy)), day("2026-10-12"));
        for text in ["", "soon", "10/12", "1/2/3/4", "2026-10-12 25:00", "46,307"] {
            assert_eq!(wrong(text, Some(DateStyle::Mdy)), Why::NotADate, "{text:?}");
        }
    }

    #[test]
    fn a_day_number_is_a_day_only_when_it_is_said_to_be_one() {
        // 2026-10-12 is 46,307 days after 1899-12-30, counted by the calendar.
        assert_eq!(read("46307", None), Day::Number(day("2026-10-12")));
        assert_eq!(one("46307", Some(DateStyle::Serial)), day("2026-10-12"));
        let half = Day::One { day: day("2026-10-12"), time: NaiveTime::from_hms_opt(6, 30, 0), only: None };
        assert_eq!(read("46307.270833", Some(DateStyle::Serial)), half);
        assert_eq!(read("46307", Some(DateStyle::Mdy)), Day::Wrong(Why::OtherDates));
        assert_eq!(read("60", Some(DateStyle::Serial)), Day::Wrong(Why::NotADate));
    }

    #[test]
    fn a_time_of_day_is_taken_along() {
        let at = |text: &str| match read(text, Some(DateStyle::Mdy)) {
            Day::One { time, .. } => time,
            other => panic!("{text}: {other:?}"),
        };
        assert_eq!(at("10/12/2026 6:30 PM"), NaiveTime::from_hms_opt(18, 30, 0));
        assert_eq!(at("10/12/2026 12:05 am"), NaiveTime::from_hms_opt(0, 5, 0));
        assert_eq!(at("2026-10-12T06:30:15"), NaiveTime::from_hms_opt(6, 30, 15));
        assert_eq!(at("10/12/2026"), None);
    }
}
