//! The 06:00 view as text.

use sumpbook_daybook::text::word_key;

use super::words::Words;
use crate::command::due::{LAID_UP, due_rows, papers};
use crate::due::DueRow;
use crate::sheet::{LockedRow, Morning};
use crate::table::{section, table};

/// Sections in their order.
pub(super) fn told(words: &Words, sheet: &Morning, text: &mut String) {
    let below = locked_rows(words, &sheet.not_to_go_out.rows);
    text.push_str(&section(sheet.not_to_go_out.count, "Not to go out", "", &below));
    let rows = sheet.to_certify.rows.iter().map(|row| {
        // Of two answers the one that found something: whoever certifies signs for that.
        let said = row.other_answer.as_ref().filter(|_| row.one_answer.ok).unwrap_or(&row.one_answer);
        [
            row.unit.clone(),
            words.item(&row.item, row.place.as_deref()),
            format!("{}; {} {}", said.words, words.who(&said.who), words.at(said.at)),
            row.locks.iter().map(|lock| words.lock(lock)).collect::<Vec<_>>().join(" and "),
        ]
    });
    let below = table(["Unit", "What", "In whose words", "Locks"], rows);
    text.push_str(&section(sheet.to_certify.count, "Certificates to sign", "", &below));
    let rows =
        sheet.expected.rows.iter().map(|row| {
            [row.unit.clone(), row.said.clone(), row.who.clone().unwrap_or_else(|| "-".to_owned())]
        });
    let below = table(["Unit", "State", "Who"], rows);
    text.push_str(&section(sheet.expected.count, "Expected out", "", &below));
    let below = due_rows(words, &sheet.due.rows);
    let parts = match sheet.parts_in.count {
        0 => String::new(),
        count => format!("parts in: {count}"),
    };
    text.push_str(&section(sheet.due.count, "Past due, due today", &parts, &below));
    text.extend(sheet.parts_in.rows.iter().map(|row| {
        let task = row.task.as_deref().map_or_else(String::new, |task| format!(", {}", words.task(task)));
        format!("     Came in: {} {} {}{task}\n", row.unit, row.part, words.at(row.at))
    }));
    laid_up(words, &sheet.due.laid_up, text);
    papers(words, &sheet.due.papers, text);
    let rows = sheet.in_the_bays.rows.iter().map(|row| {
        let tasks = row.tasks.iter().map(|task| words.task(task));
        let defects = row.defects.iter().map(|of| words.item(&of.item, of.place.as_deref()));
        let work: Vec<String> = tasks.chain(defects).collect();
        let oil = row.oil.as_ref().map_or_else(|| "-".to_owned(), |oil| words.oil(oil));
        [row.unit.clone(), work.join(", "), row.where_and_who.clone().unwrap_or_default(), oil]
    });
    let below = table(["Unit", "What", "Where and who", "Oil, in whole jugs of 1 gal"], rows);
    text.push_str(&section(sheet.in_the_bays.count, "In the bays today", "", &below));
    let rows = sheet.phones_quiet.rows.iter().map(|row| {
        let heard = match (row.last_heard, row.added) {
            (None, Some(added)) => format!("never since it was added {}", words.at(added)),
            (heard, _) => words.at_or(heard, "never"),
        };
        [row.phone.clone(), heard]
    });
    let below = table(["Phone", "Last heard"], rows);
    text.push_str(&section(sheet.phones_quiet.count, "Phones not heard from in 24 h", "", &below));
    let late = &sheet.version_two;
    let rows = late.came_late.rows.iter().map(|row| {
        [
            row.unit.clone().unwrap_or_else(|| "the fleet".to_owned()),
            words.kind(&row.says),
            words.who(&row.who),
            words.at(row.at),
            words.at(row.came),
        ]
    });
    let below = table(["Unit", "What it says", "Who", "When", "Came"], rows);
    let aside = if late.came_late.count == 0 { "nothing came late" } else { "" };
    text.push_str(&section(late.came_late.count, "Came late for yesterday", aside, &below));
    super::evening::ahead(words, &sheet.dated_ahead.rows, text);
}

/// Tasks of sets that are laid up, apart from the others, in either view; nothing where none is.
pub(super) fn laid_up(words: &Words, rows: &[DueRow], text: &mut String) {
    if !rows.is_empty() {
        text.push_str(&section(rows.len(), LAID_UP, "", &due_rows(words, rows)));
    }
}

/// Lock-outs that stand, as rows of either view.
pub(super) fn locked_rows(words: &Words, rows: &[LockedRow]) -> String {
    let rows = rows.iter().map(|row| {
        let next = match row.certified {
            Some(at) => format!("certified {}, awaiting review", words.at(at)),
            None => row.next_step.replace('-', " "),
        };
        let why = match row.next_step.as_str() {
            "return-list" => words.text(&word_key(&row.why), &row.why),
            _ => row.why.clone(),
        };
        [
            row.unit.clone(),
            words.lock(&row.lock),
            if row.ahead { format!("{}, dated ahead", words.at(row.since)) } else { words.at(row.since) },
            format!("{}: {}", words.item(&row.item, row.place.as_deref()), why),
            words.at_or(row.shop_knew, "not yet"),
            words.at_or(row.driver_knew, "not yet"),
            next,
        ]
    });
    table(["Unit", "Road, air", "Since", "Why", "Shop knew", "Driver knew", "Next step"], rows)
}
