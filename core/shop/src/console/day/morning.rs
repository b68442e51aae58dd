//! The 06:00 view: who may go out.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::evening::state;
use super::steps::Steps;
use super::visits::work as visit_work;
use super::{due, found, later};
use crate::console::parts;
use crate::console::table::{Table, door, said, section};
use crate::console::words::Words;
use crate::sheet::{ExpectedRow, Morning, PhoneRow, VisitRow};

/// `pages`: photos of paper pages kept at the desk that no page typed in names yet; none where that is not known,
/// of a closed sheet or an earlier day.
pub(super) fn draw(words: &Words, sheet: &Morning, pages: Option<usize>, steps: &Steps) -> Markup {
    let none = |count: usize, key: &str| if count == 0 { words.t(key) } else { String::new() };
    let name = |key: &str| words.t(key);
    let late = &sheet.version_two;
    let late_name = words.with("section-late-yesterday", &[("day", Arg::Text(&words.short_day(late.day)))]);
    html! {
        (section("not-to-go-out", sheet.not_to_go_out.count, &name("section-not-out"),
            &none(sheet.not_to_go_out.count, "no-lock"),
            &found::locked(words, ("not-out-table", &name("section-not-out")), &sheet.not_to_go_out.rows, steps)))
        (section("certificates", sheet.to_certify.count, &name("section-certify"),
            &none(sheet.to_certify.count, "none-to-certify"),
            &html! {
                @if sheet.to_certify.count > 0 && !steps.is_of_then() {
                    p { a class="button" href="/certificates" { (words.t("sign-the-next")) } }
                }
                (found::defects(words, ("certify-table", &name("section-certify")), &sheet.to_certify.rows, steps))
            }))
        (section("expected", sheet.expected.count, &name("section-expected"),
            &none(sheet.expected.count, "sentence-none-expected"), &expected(words, &sheet.expected.rows)))
        (due::morning(words, &sheet.due, &sheet.parts_in.rows))
        (section("bays", sheet.in_the_bays.count, &name("section-bays"),
            &none(sheet.in_the_bays.count, "none-planned"), &bays(words, &sheet.in_the_bays.rows)))
        (section("phones", sheet.phones_quiet.count, &name("section-phones"),
            &none(sheet.phones_quiet.count, "all-heard"), &phones(words, &sheet.phones_quiet.rows)))
        @if let Some(pages) = pages {
            (section("pages", pages, &name("section-pages"), &none(pages, "none-pages"), &html! {
                @if pages > 0 { p { (name("pages-what")) " " a class="button" href="/paper" { (name("pages-type")) } } }
            }))
        }
        (section("late", late.came_late.count, &late_name,
            &none(late.came_late.count, "none-late"),
            &later::late(words, "late-table", &late_name, &late.came_late.rows)))
        (later::ahead(words, &sheet.dated_ahead))
    }
}

fn expected(words: &Words, rows: &[ExpectedRow]) -> Markup {
    let rows = rows
        .iter()
        .map(|row| vec![door(&row.unit), said(state(words, row)), said(row.who.clone().unwrap_or_default())]);
    let heads = ["head-unit", "head-state", "head-who"].map(|key| words.t(key));
    Table::new("expected-table", &words.t("section-expected"), heads).named(&[2]).rows(rows).draw()
}

fn bays(words: &Words, rows: &[VisitRow]) -> Markup {
    let rows = rows.iter().map(|row| {
        vec![
            door(&row.unit),
            said(visit_work(words, row)),
            said(row.where_and_who.clone().unwrap_or_else(|| words.t("not-said"))),
            said(row.oil.as_ref().map_or_else(|| words.t("none-dash"), |oil| parts::oil(words, oil))),
        ]
    });
    let heads = ["head-unit", "head-what", "head-where-who", "head-oil-in-jugs"].map(|key| words.t(key));
    Table::new("bays-table", &words.t("section-bays"), heads).rows(rows).draw()
}

fn phones(words: &Words, rows: &[PhoneRow]) -> Markup {
    let rows = rows.iter().map(|row| vec![said(&row.phone), said(heard(words, row))]);
    let heads = ["head-phone", "head-last-heard"].map(|key| words.t(key));
    Table::new("phones-table", &words.t("section-phones"), heads).rows(rows).draw()
}

fn heard(words: &Words, row: &PhoneRow) -> String {
    match (row.last_heard, row.added) {
        (None, Some(added)) => words.with("never-since-added", &[("when", Arg::Text(&words.at(added)))]),
        (heard, _) => words.at_or(heard, "never"),
    }
}
