//! Figures, moments, names and states as one reader has them: language, units, the yard's zone.

use chrono::{Datelike, NaiveDate};
use chrono_tz::Tz;
use sumpbook_daybook::text::{Arg, item_key, word_key};
use sumpbook_trade::{Stamp, Tenths};

use super::language::{Choice, Measures};
use super::texts;

/// How one page speaks to one reader.
#[derive(Clone, Copy, Debug)]
pub(super) struct Words {
    pub(super) choice: Choice,
    pub(super) zone: Tz,
    /// The day the page is about: moments on it are told by their time alone.
    pub(super) day: NaiveDate,
}

impl Words {
    /// A text by its key.
    pub(super) fn t(&self, key: &str) -> String {
        self.choice.language.say(key, &[])
    }

    /// A text with its values.
    pub(super) fn with(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.choice.language.say(key, args)
    }

    /// A text by its key; the plain word where a fleet has made one of its own.
    pub(super) fn or_plain(&self, key: &str, plain: &str) -> String {
        texts::find(self.choice.language, key, &[]).unwrap_or_else(|| plain.replace('-', " "))
    }

    /// A text by its key, where there is one.
    pub(super) fn or_none(&self, key: &str) -> Option<String> {
        texts::find(self.choice.language, key, &[])
    }

    /// The name of whoever signed: a phone's own, or the shop.
    pub(super) fn signer(&self, name: &str) -> String {
        if name == "the shop" { self.t("the-shop") } else { name.to_owned() }
    }

    /// A moment on the yard's clock: "06:32" on the page's day, else "Mon 19 Oct 06:32", with the year when
    /// it is another.
    pub(super) fn at(&self, at: Stamp) -> String {
        let there = at.moment().with_timezone(&self.zone);
        let (day, time) = (there.date_naive(), there.format("%H:%M").to_string());
        if day == self.day { time } else { format!("{} {time}", self.short_day(day)) }
    }

    /// A moment with its day, whatever the page's: "Tue 20 Oct 07:55".
    pub(super) fn short_day_at(&self, at: Stamp) -> String {
        let there = at.moment().with_timezone(&self.zone);
        format!("{} {}", self.short_day(there.date_naive()), there.format("%H:%M"))
    }

    /// A moment that may be unknown.
    pub(super) fn at_or(&self, at: Option<Stamp>, unknown: &str) -> String {
        at.map_or_else(|| self.t(unknown), |at| self.at(at))
    }

    /// "Mon 19 Oct", with the year when it is another than the page's.
    pub(super) fn short_day(&self, day: NaiveDate) -> String {
        let key = if day.year() == self.day.year() { "date-short" } else { "date-short-year" };
        self.dated(key, day)
    }

    /// "Tuesday 20 October 2026".
    pub(super) fn long_day(&self, day: NaiveDate) -> String {
        self.dated("date-long", day)
    }

    /// "20 Oct 2026".
    pub(super) fn plain_day(&self, day: NaiveDate) -> String {
        self.dated("date-plain", day)
    }

    /// "20 Oct", where the year is plain.
    pub(super) fn tick_day(&self, day: NaiveDate) -> String {
        self.dated("date-tick", day)
    }

    /// "October 2026".
    pub(super) fn month(&self, day: NaiveDate) -> String {
        self.dated("date-month", day)
    }

    fn dated(&self, key: &str, day: NaiveDate) -> String {
        let named = |kind: &str, n: u32| self.t(&format!("{kind}-{n}"));
        let weekday = day.weekday().number_from_monday();
        let (number, year) = (day.day().to_string(), day.year().to_string());
        self.with(
            key,
            &[
                ("weekday", Arg::Text(&named("weekday", weekday))),
                ("wday", Arg::Text(&named("wday", weekday))),
                ("month", Arg::Text(&named("month", day.month()))),
                ("mon", Arg::Text(&named("mon", day.month()))),
                ("day", Arg::Text(&number)),
                ("year", Arg::Text(&year)),
            ],
        )
    }

    /// A name, or that nobody said one.
    pub(super) fn who(&self, who: Option<&str>) -> String {
        who.map_or_else(|| self.t("not-said"), str::to_owned)
    }

    /// An item of the checklist with its place.
    pub(super) fn item(&self, item: &str, place: Option<&str>) -> String {
        let name = self.or_plain(&item_key(item), item);
        match place {
            Some(place) => {
                // A valve's or a hose's own name stands as it was given.
                let side = texts::find(self.choice.language, &format!("side-{place}"), &[]);
                format!("{name}, {}", side.map_or_else(|| place.to_owned(), |side| side.to_lowercase()))
            }
            None => name,
        }
    }

    /// What was found, which an entry keeps as the word's key, a colon, and the finder's own words.
    pub(super) fn found(&self, said: &str) -> String {
        let is_key =
            |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_lowercase() || b == b'-');
        let choice = |key: &str| self.or_plain(&word_key(key), key);
        match said.split_once(": ") {
            Some((key, own)) if is_key(key) => format!("{}: {own}", choice(key)),
            _ if is_key(said) => choice(said),
            _ => said.to_owned(),
        }
    }

    /// A task of the programme.
    pub(super) fn task(&self, task: &str) -> String {
        self.or_plain(&format!("task-{task}"), task)
    }

    /// What an entry records.
    pub(super) fn kind(&self, kind: &str) -> String {
        self.or_plain(&format!("kind-{kind}"), kind)
    }

    /// What is locked.
    pub(super) fn lock(&self, lock: &str) -> String {
        match lock.split_once('/') {
            Some((_, name)) => self.with("lock-outlet", &[("name", Arg::Text(name))]),
            None => self.t(&format!("lock-{lock}")),
        }
    }

    /// Hours with a comma at the thousands: "2,918.0".
    pub(super) fn hours(&self, hours: Tenths) -> String {
        grouped(&hours.to_string())
    }

    /// Hours with their unit, where no head says it: "2,918.0 h".
    pub(super) fn meter(&self, hours: Tenths) -> String {
        format!("{} h", self.hours(hours))
    }

    /// Words of several, with commas.
    pub(super) fn listed(&self, parts: impl IntoIterator<Item = String>) -> String {
        parts.into_iter().collect::<Vec<_>>().join(", ")
    }

    /// A figure and its unit, such as "0.21 qt", as it was given; in the other units beside it when the
    /// reader has chosen them.
    pub(super) fn measure(&self, given: &str) -> String {
        let shown: Vec<String> = given.split(" + ").map(|one| self.one_measure(one)).collect();
        shown.join(" + ")
    }

    fn one_measure(&self, given: &str) -> String {
        let Some((value, unit)) = given.split_once(' ') else { return given.to_owned() };
        let Ok(number) = value.parse::<f64>() else { return given.to_owned() };
        // NIST SP 811 (2008), appendix B.8; values from memory.
        let (factor, other, places) = match (self.choice.measures, unit) {
            (Measures::Metric, "qt") => (0.946_352_9, "L", 2),
            (Measures::Metric, "gal") => (3.785_412, "L", 2),
            (Measures::Metric, "fl-oz") => (29.573_53, "mL", 0),
            (Measures::Metric, "cfm") => (0.028_316_85, "m³/min", 1),
            (Measures::Metric, "psi") => (6.894_757, "kPa", 0),
            (Measures::Us, "L") => (1.0 / 0.946_352_9, "qt", 2),
            (Measures::Us, "mL") => (1.0 / 29.573_53, "fl oz", 1),
            (Measures::Us, "kPa") => (1.0 / 6.894_757, "psi", 0),
            (Measures::Us, "bar") => (14.503_77, "psi", 0),
            _ => return format!("{value} {}", unit.replace('-', " ")),
        };
        format!("{:.*} {other} ({value} {})", places, number * factor, unit.replace('-', " "))
    }
}

/// A comma at the thousands of a plain number.
pub(super) fn grouped(number: &str) -> String {
    let (sign, digits) = number.strip_prefix('-').map_or(("", number), |rest| ("-", rest));
    let (whole, rest) = digits.split_once('.').map_or((digits, None), |(whole, rest)| (whole, Some(rest)));
    let mut shown = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && whole.len().saturating_sub(place) % 3 == 0 {
            shown.push(',');
        }
        shown.push(digit);
    }
    match rest {
        Some(rest) => format!("{sign}{shown}.{rest}"),
        None => format!("{sign}{shown}"),
    }
}

/// "+0:02", minutes and seconds; hours before them when there are any.
pub(super) fn clock_off(ms: i64) -> String {
    let sign = if ms < 0 { '-' } else { '+' };
    let seconds = ms.unsigned_abs().saturating_add(500) / 1_000;
    let (hours, minutes, seconds) = (seconds / 3_600, seconds / 60 % 60, seconds % 60);
    match hours {
        0 => format!("{sign}{minutes}:{seconds:02}"),
        _ => format!("{sign}{hours}:{minutes:02}:{seconds:02}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::console::language::Language;

    fn words(language: Language, measures: Measures) -> Words {
        let day = NaiveDate::from_ymd_opt(2026, 10, 20).unwrap();
        Words { choice: Choice { language, measures }, zone: chrono_tz::America::Denver, day }
    }

    #[test]
    fn moments_are_the_yards() {
        let (en, es) = (words(Language::En, Measures::Us), words(Language::Es, Measures::Us));
        let at: Stamp = "2026-10-20T12:32:00Z".parse().unwrap();
        assert_eq!(en.at(at), "06:32");
        let other: Stamp = "2026-10-18T22:40:00Z".parse().unwrap();
        assert_eq!(en.at(other), "Sun 18 Oct 16:40");
        assert_eq!(es.at(other), "dom 18 oct 16:40");
        let old = NaiveDate::from_ymd_opt(2025, 11, 14).unwrap();
        assert_eq!(en.short_day(old), "Fri 14 Nov 2025");
        assert_eq!(en.long_day(en.day), "Tuesday 20 October 2026");
        assert_eq!(es.long_day(en.day), "martes 20 de octubre de 2026");
    }

    #[test]
    fn figures_keep_what_was_given() {
        let (us, metric) = (words(Language::En, Measures::Us), words(Language::En, Measures::Metric));
        assert_eq!(us.measure("0.21 qt"), "0.21 qt");
        assert_eq!(metric.measure("0.21 qt"), "0.20 L (0.21 qt)");
        assert_eq!(us.measure("100 mL"), "3.4 fl oz (100 mL)");
        assert_eq!(metric.measure("185 cfm"), "5.2 m³/min (185 cfm)");
        assert_eq!(us.measure("nothing"), "nothing");
        assert_eq!(us.hours(Tenths(29_180)), "2,918.0");
        assert_eq!(us.hours(Tenths(-4)), "-0.4");
        assert_eq!(us.meter(Tenths(29_180)), "2,918.0 h");
        assert_eq!(grouped("1234567.8"), "1,234,567.8");
    }

    #[test]
    fn what_was_found_is_told_in_words() {
        let en = words(Language::En, Measures::Us);
        assert_eq!(en.found("cracked: hairline, low corner"), "cracked: hairline, low corner");
        assert_eq!(en.found("Left lamp: out"), "Left lamp: out");
        assert_eq!(en.lock("outlet/small hose"), "outlet small hose");
        assert_eq!(en.item("wheels", Some("left")), "Wheels, left");
        assert_eq!(en.item("hose", Some("H-11")), "Hose, H-11");
    }

    #[test]
    fn a_clock_is_off_by_minutes_and_seconds() {
        assert_eq!(clock_off(2_000), "+0:02");
        assert_eq!(clock_off(-90_400), "-1:30");
        assert_eq!(clock_off(3_725_000), "+1:02:05");
        assert_eq!(clock_off(0), "+0:00");
    }
}
