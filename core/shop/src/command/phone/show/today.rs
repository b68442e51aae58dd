//! Today, for people.

use sumpbook_daybook::screen::{BecameNow, BecameRow, PreTripNow, TodayRow, TodayScreen};
use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::table::table;

pub(super) fn told(words: &Words, screen: &TodayScreen) -> Vec<String> {
    let who = screen.person.clone().unwrap_or_default();
    let mut lines = vec![format!("{who}, {}", screen.day.format("%a %-d %b %Y"))];
    lines.extend(words.news(&screen.news));
    if words.of_now {
        let here = Arg::Count(i64::from(screen.counts.on_phone));
        lines.push(words.with("counts-on-phone", &[("count", here)]));
    }
    if screen.unreadable_drafts > 0 {
        lines.push(format!("{} begun by a newer version, kept and not shown", screen.unreadable_drafts));
    }
    if screen.units.is_empty() {
        lines.push(words.t("today-empty"));
        return lines;
    }
    let rows = screen.units.iter().map(|row| {
        [
            row.door.clone(),
            words.road_air(&row.road_air).join("\n"),
            status(words, row),
            pre_trip(words, &row.pre_trip),
            words.main(&row.main, &row.door, None),
        ]
    });
    lines.push(table(["Unit", "Road and air", "Status", "Pre-trip", "Main button"], rows));
    if words.of_now && !screen.became.is_empty() {
        lines.push(words.t("became-title"));
        let rows = screen.became.iter().map(|row| {
            let word = row.word.as_deref().map_or_else(String::new, |word| words.wrong(word));
            [row.door.clone(), words.item(&row.item, row.place.as_deref()), word, became(words, row)]
        });
        lines.push(table(["Unit", "What", "You told", "What became of it"], rows));
    }
    lines
}

fn became(words: &Words, row: &BecameRow) -> String {
    match &row.now {
        BecameNow::NotYetAtShop => words.t("became-not-yet-at-shop"),
        BecameNow::AtShop => words.t("became-at-shop"),
        BecameNow::Visit { day } => words.with("became-visit", &[("day", Arg::Text(&words.day(Some(*day))))]),
        BecameNow::WaitingForPart { part, promised: None } => {
            words.with("became-waiting-for-part", &[("part", Arg::Text(part))])
        }
        BecameNow::WaitingForPart { part, promised: Some(day) } => {
            let day = words.day(Some(*day));
            words.with("became-waiting-promised", &[("part", Arg::Text(part)), ("day", Arg::Text(&day))])
        }
        BecameNow::Certified { verdict, by, words: said } => {
            let when = row.since.map_or_else(String::new, |since| format!(" {}", words.at(since)));
            format!("{}, {}{when}: '{said}'", words.choice("verdict", verdict), words.who(by))
        }
    }
}

fn status(words: &Words, row: &TodayRow) -> String {
    let mut said: Vec<String> = row.status.iter().map(|status| words.choice("status", status)).collect();
    if let Some(minute) = row.expected_minute {
        let when = format!("{:02}:{:02}", minute / 60, minute % 60);
        said.push(words.with("expected-out", &[("when", Arg::Text(&when))]));
    }
    said.join(", ")
}

/// Where a unit's pre-trip stands.
pub(super) fn pre_trip(words: &Words, now: &PreTripNow) -> String {
    let by_when = |by: &Option<String>, at| {
        words.with(now.text_key(), &[("by", Arg::Text(&words.who(by))), ("when", Arg::Text(&words.at(at)))])
    };
    match now {
        PreTripNow::NotStarted => words.t(now.text_key()),
        PreTripNow::UnderWay { stop, at, answered, .. } => {
            let stop = at.map_or_else(|| stop.clone().unwrap_or_else(|| "-".to_owned()), |at| at.to_string());
            let answered = ("answered", Arg::Count(i64::from(*answered)));
            words.with(now.text_key(), &[("stop", Arg::Text(&stop)), answered])
        }
        PreTripNow::Covers { by, from, .. } => by_when(by, *from),
        PreTripNow::Ended { by, at, .. } => by_when(by, *at),
    }
}
