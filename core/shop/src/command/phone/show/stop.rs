//! One stop of the walk, for people.

use sumpbook_daybook::screen::{LineAnswer, LineRow, StopScreen};
use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::table::table;

pub(super) fn told(words: &Words, screen: &StopScreen) -> Vec<String> {
    let of = [("index", Arg::Count(i64::from(screen.index))), ("of", Arg::Count(i64::from(screen.of)))];
    let name = words.t(&format!("stop-{}", screen.stop));
    let mut lines = vec![format!("{}, {name}, {}", screen.door, words.with("stop-of", &of))];
    lines.push(words.choice("engine", &screen.engine));
    lines.extend(screen.locked.iter().map(|part| words.part_now(part)));
    for group in &screen.together {
        let seconds = group.after_ms.map_or_else(|| "-".to_owned(), |ms| (ms / 1000).to_string());
        let lines_of = ("lines", Arg::Count(i64::from(group.lines)));
        lines.push(words.with("stop-answered-together", &[lines_of, ("seconds", Arg::Text(&seconds))]));
    }
    let rows = screen.lines.iter().map(|row| {
        let what = words.item(&row.item, row.place.as_deref());
        let ok = words.named(&format!("item-{}.ok", row.item), "");
        [row.item.clone(), what, ok, answer(words, row)]
    });
    lines.push(table(["Line", "What", "What OK is", "Answer"], rows));
    lines.push(words.main(&screen.main, &screen.door, None));
    lines
}

fn answer(words: &Words, row: &LineRow) -> String {
    match (&row.answer, row.open_since) {
        (Some(answer), _) => answered(words, answer),
        (None, Some(since)) => words.with("stop-open-since", &[("when", Arg::Text(&words.at(since)))]),
        (None, None) => "-".to_owned(),
    }
}

fn answered(words: &Words, answer: &LineAnswer) -> String {
    let mut said = vec![words.choice("answer", &answer.answer)];
    said.extend(answer.word.iter().map(|word| words.wrong(word)));
    said.extend(answer.figures.iter().map(|given| given.figure.to_string()));
    said.extend(answer.words.iter().map(|more| format!("'{more}'")));
    said.extend(answer.by.clone());
    said.join(", ")
}
