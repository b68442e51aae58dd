//! What is past due, due and coming up, as the day sheet lists it: five rows, then the rest.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use crate::console::due_words as told;
use crate::console::papers;
use crate::console::table::{Table, door, said, section};
use crate::console::words::Words;
use crate::due::{DueList, DueRow};
use crate::sheet::PartIn;

/// As many rows stand open.
const OPEN: usize = 5;

/// Of the evening.
pub(super) fn evening(words: &Words, list: &DueList) -> Markup {
    drawn(words, list, "section-due", &[])
}

/// Of the morning.
pub(super) fn morning(words: &Words, list: &DueList, parts_in: &[PartIn]) -> Markup {
    drawn(words, list, "section-due-today", parts_in)
}

fn drawn(words: &Words, list: &DueList, key: &str, parts_in: &[PartIn]) -> Markup {
    let name = words.t(key);
    let none = (list.count == 0).then(|| words.t("none-due"));
    let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
    let parts = (!parts_in.is_empty()).then(|| words.with("parts-in", &[("count", count(parts_in.len()))]));
    let near =
        (!list.papers.is_empty()).then(|| words.with("papers-near", &[("count", count(list.papers.len()))]));
    let beside = words.listed([none, parts, near].into_iter().flatten());
    let (first, rest) = list.rows.split_at(list.rows.len().min(OPEN));
    let below = html! {
        (table(words, "due-table", &name, first))
        @if !rest.is_empty() {
            details class="rows" {
                summary { (words.with("all-of", &[("count", Arg::Count(list.count as i64))])) }
                (table(words, "due-rest", &name, rest))
            }
        }
        @if !list.laid_up.is_empty() {
            h3 { (words.with("section-laid-up", &[("count", Arg::Count(list.laid_up.len() as i64))])) }
            (table(words, "due-laid-up", &words.t("laid-up-rows"), &list.laid_up))
        }
        @for done in &list.done {
            p {
                (door(&done.unit)) " "
                (words.with("service-done", &[
                    ("tasks", Arg::Text(&words.listed(done.tasks.iter().map(|task| words.task(task))))),
                    ("when", Arg::Text(&words.at(done.at))),
                ]))
                @if !done.again.is_empty() {
                    " "
                    (words.with("service-again", &[
                        ("tasks", Arg::Text(&words.listed(done.again.iter().map(|task| words.task(task))))),
                    ]))
                }
                @if !done.not_bundled.is_empty() {
                    " "
                    (words.with("not-bundled", &[
                        ("tasks", Arg::Text(&words.listed(done.not_bundled.iter().map(|t| words.task(t))))),
                    ]))
                }
            }
        }
        @for part in parts_in {
            p {
                (door(&part.unit)) " "
                (words.with("part-is-in", &[("part", Arg::Text(&part.part)), ("when", Arg::Text(&words.at(part.at)))]))
                @if let Some(task) = &part.task { ", " (words.task(task)) }
            }
        }
        @for paper in &list.papers {
            p class=[(paper.state == "ran-out").then_some("strip")] {
                (door(&paper.unit)) ": " (papers::said(words, paper))
            }
        }
        @for part in &list.parts {
            p {
                (door(&part.unit)) " "
                (told::waits(words, part))
            }
        }
    };
    section("due", list.count, &name, &beside, &below)
}

fn table(words: &Words, id: &str, caption: &str, rows: &[DueRow]) -> Markup {
    let heads = ["head-unit", "head-task", "head-state", "head-hours-left", "head-last-good-day"];
    let heads = heads.iter().chain(&["head-runs-out-first", "head-part"]).map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        vec![
            door(&row.unit),
            html! {
                (words.task(&row.task))
                @if let Some(campaign) = &row.campaign { ": " (told::campaign(words, campaign)) }
            },
            told::state(words, row),
            said(told::hours_left(words, row)),
            said(told::last_good_day(words, row)),
            said(told::first(words, row)),
            said(told::part(words, row.waiting_for.as_ref())),
        ]
    });
    Table::new(id, caption, heads).rows(rows).draw()
}
