//! One unit, for people.

use sumpbook_daybook::screen::{LeftHours, OilLine, PourRow, TaskRow, UnitScreen};
use sumpbook_daybook::text::Arg;

use super::today::pre_trip;
use super::words::Words;
use crate::table::table;

pub(super) fn told(words: &Words, screen: &UnitScreen) -> Vec<String> {
    let mut lines = vec![screen.door.clone()];
    lines.extend(words.news(&screen.news));
    lines.extend(words.road_air(&screen.road_air));
    if !screen.locked_only_here.is_empty() {
        let parts: Vec<String> = screen.locked_only_here.iter().map(|part| words.part(part)).collect();
        lines.push(words.with("lock-only-here", &[("parts", Arg::Text(&parts.join(", ")))]));
    }
    if let Some(spell) = &screen.lay_up {
        lines.push(words.with("lay-up-since", &[("when", Arg::Text(&words.at(spell.since)))]));
    }
    lines.push(match (&screen.left_by, screen.known_since) {
        (Some(report), _) => {
            let (by, when) = (words.who(&report.by), words.at(report.at));
            let left = words.with("unit-left-by", &[("by", Arg::Text(&by)), ("when", Arg::Text(&when))]);
            match &report.to_next {
                Some(said) => format!("{left}: '{said}'"),
                None => left,
            }
        }
        (None, Some(day)) => {
            let day = words.day(Some(day));
            words.with("unit-known-since", &[("door", Arg::Text(&screen.door)), ("day", Arg::Text(&day))])
        }
        (None, None) => words.with("unit-nothing-known", &[("door", Arg::Text(&screen.door))]),
    });
    lines.push(words.with("report-listed", &[("count", Arg::Count(i64::from(screen.open_defects)))]));
    if screen.open_notes > 0 {
        lines.push(words.with("unit-notes-open", &[("count", Arg::Count(i64::from(screen.open_notes)))]));
    }
    lines.push(oil(words, &screen.oil));
    lines.extend(hours(words, screen));
    if let Some(unlike) = &screen.unlike {
        let usual = words.with("unit-unlike", &[("usual", Arg::Text(&unlike.usual))]);
        let more = [("unit-only-here", &unlike.only_here), ("unit-not-here", &unlike.not_here)];
        let more = more.into_iter().filter(|(_, features)| !features.is_empty());
        let more: Vec<String> = more
            .map(|(key, features)| format!("{}: {}", words.t(key), words.choices("feature", features)))
            .collect();
        lines.push(format!("{usual}. {}", more.join("; ")));
    }
    lines.push(pre_trip(words, &screen.pre_trip));
    if screen.tasks.is_empty() {
        lines.push(words.t("unit-no-programme"));
    } else {
        let rows = screen.tasks.iter().map(|task| task_row(words, task));
        lines.push(table(["Task", "Hours", "Calendar", "State", "Part"], rows));
    }
    if !screen.pours.is_empty() {
        lines.push(pours(words, &screen.pours));
    }
    lines.push(words.main(&screen.main, &screen.door, None));
    lines
}

fn hours(words: &Words, screen: &UnitScreen) -> Vec<String> {
    let mut lines = Vec::new();
    match (&screen.reading, screen.hours) {
        (Some(reading), hours) => {
            lines.push(format!("{} h, read {}", reading.figure, words.at(reading.at)));
            if screen.open_questions > 0 || reading.in_question {
                lines.push(words.t("unit-higher-used"));
            }
            if let Some(used) = hours.filter(|used| *used != reading.figure) {
                lines.push(format!("{used} h used until settled"));
            }
        }
        (None, Some(most)) => {
            let low = screen.counted_at_least.unwrap_or(most).to_string();
            let between = [("low", Arg::Text(&low)), ("high", Arg::Text(&most.to_string()))];
            lines.push(words.with("hours-counted-between", &between));
        }
        (None, None) => lines.push("hours unknown".to_owned()),
    }
    for row in &screen.estimates {
        let (low, likely, high) = (row.low.to_string(), row.likely.to_string(), row.high.to_string());
        let args = [("low", Arg::Text(&low)), ("likely", Arg::Text(&likely)), ("high", Arg::Text(&high))];
        lines.push(words.with("hours-estimated", &args));
    }
    lines
}

/// Which oil the unit takes and where it was last seen.
pub(super) fn oil(words: &Words, line: &OilLine) -> String {
    let family = line.family.map(|family| words.choice("family", &family));
    let kind: Vec<String> = family.into_iter().chain(line.grade.clone()).collect();
    let kind = if kind.is_empty() { "not on record".to_owned() } else { kind.join(" ") };
    let last = line.last.as_ref().map_or_else(String::new, |last| {
        format!("; {} {}, {}", words.glass(Some(last.glass)), words.at(last.at), words.who(&last.by))
    });
    format!("Oil: {kind}{last}")
}

/// Pours as rows of a table.
pub(super) fn pours(words: &Words, rows: &[PourRow]) -> String {
    let rows = rows.iter().map(|row| {
        let volumes: Vec<String> = row.volumes.iter().map(ToString::to_string).collect();
        let levels = match (row.before, row.after) {
            (None, None) => String::new(),
            (before, after) => format!("{} > {}", words.glass(before), words.glass(after)),
        };
        [words.at(row.at), words.choice("fluid", &row.fluid), volumes.join(" + "), levels, words.who(&row.by)]
    });
    table(["Poured", "Fluid", "How much", "Before and after", "Who"], rows)
}

fn task_row(words: &Words, task: &TaskRow) -> [String; 5] {
    let every = task.every_hours.map(|every| every.to_string()).unwrap_or_default();
    let hours = match task.hours_left {
        Some(LeftHours::Left(left)) => {
            let left = left.to_string();
            words.with("task-hours-left", &[("hours", Arg::Text(&left)), ("every", Arg::Text(&every))])
        }
        Some(LeftHours::Past(past)) => {
            words.with("task-hours-past", &[("hours", Arg::Text(&past.to_string()))])
        }
        None => "-".to_owned(),
    };
    let days = match task.days_left {
        Some(left) if left < 0 => words.with("task-days-past", &[("days", Arg::Count(-left))]),
        Some(left) => words.with("task-days-left", &[("days", Arg::Count(left))]),
        None => "-".to_owned(),
    };
    let days = match task.last_good_day {
        Some(day) => format!("{days}, {}", words.day(Some(day))),
        None => days,
    };
    let part = task
        .waiting
        .as_ref()
        .map_or_else(String::new, |wait| format!("{}, promised {}", wait.part, words.day(wait.promised)));
    let state = words.choice("standing", &task.standing);
    [words.task(&task.id), hours, days, state, part]
}
