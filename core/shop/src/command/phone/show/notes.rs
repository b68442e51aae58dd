//! Notes of the display, for people.

use sumpbook_daybook::screen::{AckRow, DisplayScreen, NoteRow};
use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::table::table;

pub(super) fn told(words: &Words, screen: &DisplayScreen) -> Vec<String> {
    let mut lines = vec![screen.door.clone()];
    lines.extend(words.news(&screen.news));
    if screen.stopped_today > 0 {
        let count = Arg::Count(i64::from(screen.stopped_today));
        lines.push(words.with("display-stopped-again", &[("count", count)]));
    }
    let open = words
        .with("unit-notes-open", &[("count", Arg::Count(screen.open.len().try_into().unwrap_or(i64::MAX)))]);
    lines.push(open);
    lines.push(notes(words, &screen.open));
    match screen.shop_says.as_slice() {
        [] => lines.push(words.t("display-no-words")),
        said => {
            lines.extend(said.iter().map(|row| {
                format!("Your shop says of a {}: '{}'", words.choice("note", &row.what), row.words)
            }))
        }
    }
    lines.push(words.main(&screen.main, &screen.door, None));
    lines
}

/// Notes as rows of a table.
pub(super) fn notes(words: &Words, rows: &[NoteRow]) -> String {
    let rows = rows.iter().map(|note| {
        let kind = words.choice("note", &note.what);
        let answer =
            |ack: &Option<AckRow>| ack.as_ref().map_or_else(|| "-".to_owned(), |ack| seen(words, ack));
        let gone = note.gone.map_or_else(String::new, |gone| words.at(gone));
        let shown = format!("{kind}: '{}'", note.as_shown);
        [shown, words.at(note.at), words.who(&note.by), answer(&note.first), answer(&note.told), gone]
    });
    table(["Shown", "When", "Read by", "First seen by", "Shop told by", "Gone"], rows)
}

fn seen(words: &Words, ack: &AckRow) -> String {
    let note = if ack.before_note { format!(", {}", words.t("ack-before-note")) } else { String::new() };
    format!("{} {}{note}", words.who(&ack.by), words.at(ack.at))
}
