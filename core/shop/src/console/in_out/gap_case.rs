//! One case of a gap in a reader's words, on the page and in the pack: its days and moments as the yard had them, what
//! was recorded, which task, which item.

use chrono::{NaiveDate, NaiveDateTime};
use sumpbook_daybook::text::item_key;
use sumpbook_trade::Stamp;

use crate::console::words::{Words, grouped};

/// Said word by word: what is a day is told as a day, what names something by its name, and the rest stands as it was.
pub(in crate::console) fn said(words: &Words, case: &str) -> String {
    let word = |word: &str| {
        let (bare, colon) = word.strip_suffix(':').map_or((word, ""), |bare| (bare, ":"));
        format!("{}{colon}", day(words, bare).or_else(|| name(words, bare)).as_deref().unwrap_or(bare))
    };
    let said: Vec<String> = case.split(' ').map(word).collect();
    amounts(words, &said).join(" ")
}

/// Hours and days with a comma at the thousands, and days in full: "2,368.0 h", "(1,042 days)".
fn amounts(words: &Words, said: &[String]) -> Vec<String> {
    let mut told: Vec<String> = Vec::new();
    for part in said {
        let (unit, after) = part.split_at(part.find([',', ')']).unwrap_or(part.len()));
        let amount = told.last().map(|last| last.trim_start_matches('(')).filter(|last| is_figure(last));
        let amount = amount.map(str::to_owned).filter(|_| matches!(unit, "h" | "d"));
        let (Some(amount), Some(last)) = (amount, told.last_mut()) else {
            told.push(part.clone());
            continue;
        };
        let before = if last.starts_with('(') { "(" } else { "" };
        *last = format!("{before}{}", grouped(&amount));
        told.push(match (unit, amount.as_str()) {
            ("h", _) => part.clone(),
            (_, "1") => format!("{}{after}", words.t("gap-day")),
            _ => format!("{}{after}", words.t("gap-days")),
        });
    }
    told
}

fn is_figure(text: &str) -> bool {
    text.starts_with(|first: char| first.is_ascii_digit()) && text.parse::<f64>().is_ok()
}

/// "12 Feb 2026", "12 Feb 2026 16:40": with its year, for a pack is read years later.
fn day(words: &Words, bare: &str) -> Option<String> {
    let at = |at: NaiveDateTime| format!("{} {}", words.plain_day(at.date()), at.format("%H:%M"));
    if let Ok(stamp) = bare.parse::<Stamp>() {
        return Some(at(stamp.moment().with_timezone(&words.zone).naive_local()));
    }
    bare.parse::<NaiveDate>().ok().map(|day| words.plain_day(day))
}

fn name(words: &Words, bare: &str) -> Option<String> {
    let keys = [format!("kind-{bare}"), format!("task-{bare}"), item_key(bare)];
    keys.iter().find_map(|key| words.or_none(key))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::console::language::{Choice, Language};

    #[test]
    fn hours_and_days_are_told_as_elsewhere_and_other_figures_stay() {
        let day = NaiveDate::from_ymd_opt(2026, 10, 20).unwrap();
        let in_language = |language| {
            let choice = Choice { language, ..Choice::default() };
            let words = Words { choice, zone: chrono_tz::America::Denver, day };
            move |case: &str| said(&words, case)
        };
        let (en, es) = (in_language(Language::En), in_language(Language::Es));
        assert_eq!(en("2368.0 h, 1042 d"), "2,368.0 h, 1,042 days");
        assert_eq!(es("2368.0 h, 1 d"), "2,368.0 h, 1 día");
        assert_eq!(en("2026-02-12 - 2026-03-01 (1042 d)"), "12 Feb 2026 - 1 Mar 2026 (1,042 days)");
        assert_eq!(en("claim 2368 d-nine"), "claim 2368 d-nine");
        assert_eq!(en("h d"), "h d");
    }
}
