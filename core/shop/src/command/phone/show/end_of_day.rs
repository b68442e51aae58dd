//! The end-of-day report, for people.

use sumpbook_daybook::screen::EndOfDayScreen;

use super::notes::notes;
use super::unit::pours;
use super::words::Words;

pub(super) fn told(words: &Words, screen: &EndOfDayScreen) -> Vec<String> {
    let mut lines = vec![screen.door.clone()];
    lines.extend(screen.notices.iter().map(|notice| words.t(notice.text_key())));
    lines.extend(screen.covers_from.iter().map(|from| format!("covers from {}", words.at(*from))));
    if screen.none_found {
        lines.push(words.t("end-none-found"));
    }
    for found in &screen.found {
        let word = found.word.as_deref().map_or_else(String::new, |word| format!(", {}", words.wrong(word)));
        lines.push(format!("Defect: {}{word}", words.item(&found.item, found.place.as_deref())));
    }
    if !screen.notes.is_empty() {
        lines.push(notes(words, &screen.notes));
    }
    match screen.poured.as_slice() {
        [] => lines.push("Poured: nothing recorded".to_owned()),
        rows => lines.push(pours(words, rows)),
    }
    lines.push(match (&screen.last_hours, screen.hours) {
        (_, Some(given)) => format!("Hours: {given} h"),
        (Some(last), None) => format!("Hours: not given; {} h read {}", last.figure, words.at(last.at)),
        (None, None) => "Hours: not given".to_owned(),
    });
    lines.extend(screen.odometer.iter().map(|figure| format!("Odometer: {figure}")));
    if screen.asks_tanks {
        let said = match screen.tanks_drained {
            Some(true) => "yes",
            Some(false) => "no",
            None => "not said",
        };
        lines.push(format!("Tanks drained: {said}"));
    }
    lines.extend(screen.to_next.iter().map(|said| format!("To next driver: '{said}'")));
    lines.push(words.main(&screen.main, &screen.door, None));
    lines
}
