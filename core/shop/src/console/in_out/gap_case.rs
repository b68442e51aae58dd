//! One case of a gap in a reader's words, on the page and in the pack: its days and moments as the yard had them, what
//! was recorded, which task, which item.

use chrono::{NaiveDate, NaiveDateTime};
use sumpbook_daybook::text::item_key;
use sumpbook_trade::Stamp;

use crate::console::words::Words;

/// Said word by word: what is a day is told as a day, what names something by its name, and the rest stands as it was.
pub(in crate::console) fn said(words: &Words, case: &str) -> String {
    let word = |word: &str| {
        let (bare, colon) = word.strip_suffix(':').map_or((word, ""), |bare| (bare, ":"));
        format!("{}{colon}", day(words, bare).or_else(|| name(words, bare)).as_deref().unwrap_or(bare))
    };
    case.split(' ').map(word).collect::<Vec<_>>().join(" ")
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
