//! The dry run as a page: counts, each refused field, how the first rows were read, and then the one button.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::page;
use crate::console::table::{Table, said};
use crate::console::visit::{Body, Telling};
use crate::sheet::key;
use crate::table_in::{Ask, DryRun, Here, ReadAs};

/// More rows than this are not shown on the page; the file of refused rows holds all.
const SHOWN: usize = 200;

pub(super) fn body(telling: &Telling, told: &DryRun) -> Body {
    let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
    let at = format!("/in-and-out/dry-run/{}", told.seen);
    let main = html! {
        div class="head" { h1 { (telling.t("dry-title")) } }
        @if let Some(ask) = &told.ask {
            p class="strip" { (super::asked(telling.choice.language, ask)) }
            @if telling.writes() {
                form class="sheet-form" method="post" action={ (at) "/say" } {
                    (telling.token())
                    @if about_days(ask) {
                        label for="dates" { (telling.t("in-out-dates")) }
                        (page::dates(telling))
                    } @else {
                        label for="decimals" { (telling.t("in-out-decimals")) }
                        (page::decimals(telling))
                    }
                    button { (telling.t("in-out-look")) }
                }
            }
        } @else {
            p class="says" { (telling.with("dry-counts", &[("good", count(told.good)), ("refused", count(told.refused_rows)), ("here", count(told.here))])) }
            p { (telling.t("dry-nothing")) }
            @if !told.unused.is_empty() {
                p { (telling.with("dry-unused", &[("columns", Arg::Text(&told.unused.join(", ")))])) }
            }
            @if !told.refused.is_empty() { (refused(telling, told)) }
            @if !told.first.is_empty() { (first(telling, told)) }
            @if !told.rounded.is_empty() { (rounded(telling, told)) }
            @if !told.already.is_empty() { (already(telling, told)) }
            @if telling.writes() && told.good > 0 {
                form method="post" action={ (at) "/bring-in" } {
                    (telling.token())
                    p { button class="main" { (telling.with("dry-bring-in", &[("good", count(told.good))])) } }
                }
            }
            @if told.refused_rows > 0 {
                p { a class="button" href={ (at) "/refused" } download="" { (telling.with("dry-save", &[("refused", count(told.refused_rows))])) } }
            }
        }
        p { a href="/in-and-out" { (telling.t("dry-other")) } }
    };
    Body { title: telling.t("dry-title"), main }
}

fn about_days(ask: &Ask) -> bool {
    matches!(ask, Ask::Dates { .. } | Ask::DatesMixed { .. } | Ask::DayNumber { .. })
}

fn refused(telling: &Telling, told: &DryRun) -> Markup {
    let heads =
        ["dry-head-row", "dry-head-field", "dry-head-as-written", "dry-head-why"].map(|key| telling.t(key));
    let rows = told.refused.iter().take(SHOWN).map(|refused| {
        vec![
            said(refused.row.to_string()),
            said(&refused.field),
            said(&refused.as_written),
            said(telling.t(&format!("why-{}", refused.why.key()))),
        ]
    });
    html! {
        h2 { (telling.t("dry-refused")) }
        (Table::new("refused-table", &telling.t("dry-refused"), heads).rows(rows).draw())
        (more(telling, told.refused.len()))
    }
}

fn first(telling: &Telling, told: &DryRun) -> Markup {
    // What a row is about stands in it where the table is of such: tasks, fluids, how much.
    let any = |has: fn(&ReadAs) -> bool| told.first.iter().any(has);
    let (tasks, fluids, volumes) =
        (any(|r| !r.tasks.is_empty()), any(|r| r.fluid.is_some()), any(|r| r.volume.is_some()));
    let more = [(tasks, "head-task"), (fluids, "head-fluid"), (volumes, "dry-head-volume")];
    let more = more.iter().filter(|(any, _)| *any).map(|(_, key)| key);
    let heads = ["dry-head-row", "head-unit", "dry-head-day", "dry-head-hours"];
    let heads: Vec<String> = heads.iter().chain(more).map(|key| telling.t(key)).collect();
    let dash = || telling.t("none-dash");
    let rows = told.first.iter().map(|read| {
        let mut cells = vec![
            said(read.row.to_string()),
            said(&read.unit),
            said(telling.long_day(read.day)),
            said(read.hours.map_or_else(dash, |hours| telling.hours(hours))),
        ];
        if tasks {
            cells.push(said(telling.listed(read.tasks.iter().map(|task| telling.task(task)))));
        }
        if fluids {
            let fluid = |fluid: &String| telling.or_plain(&format!("fluid-{fluid}"), fluid);
            cells.push(said(read.fluid.as_ref().map_or_else(dash, fluid)));
        }
        if volumes {
            cells.push(said(read.volume.as_ref().map_or_else(dash, |volume| telling.measure(volume))));
        }
        cells
    });
    html! {
        h2 { (telling.t("dry-first")) }
        (Table::new("first-table", &telling.t("dry-first"), heads).rows(rows).draw())
        (more_of(telling, told.good.saturating_sub(told.first.len())))
    }
}

/// Hours that are kept otherwise than they are written: each is told, none is rounded silently.
fn rounded(telling: &Telling, told: &DryRun) -> Markup {
    let heads =
        ["dry-head-row", "dry-head-field", "dry-head-as-written", "dry-head-kept"].map(|key| telling.t(key));
    let rows = told.rounded.iter().take(SHOWN).map(|row| {
        vec![
            said(row.row.to_string()),
            said(&row.field),
            said(&row.as_written),
            said(telling.hours(row.kept)),
        ]
    });
    html! {
        h2 { (telling.t("dry-rounded")) " " (told.rounded.len()) }
        (Table::new("rounded-table", &telling.t("dry-rounded"), heads).rows(rows).draw())
        (more(telling, told.rounded.len()))
    }
}

fn already(telling: &Telling, told: &DryRun) -> Markup {
    let heads = ["dry-head-row", "dry-head-where"].map(|key| telling.t(key));
    let rows = told.already.iter().take(SHOWN).map(|already| {
        let place = match &already.here {
            Here::Registered => telling.t("dry-here-registered"),
            Here::Row { same_as } => {
                telling.with("dry-here-row", &[("row", Arg::Text(&same_as.to_string()))])
            }
            Here::Recorded { at, source, .. } => {
                let source = telling.t(&format!("source-{}", key(source)));
                telling.with(
                    "dry-here-recorded",
                    &[("when", Arg::Text(&telling.at(*at))), ("source", Arg::Text(&source))],
                )
            }
        };
        vec![said(already.row.to_string()), said(place)]
    });
    html! {
        details {
            summary { (telling.t("dry-already")) " " (told.already.len()) }
            (Table::new("already-table", &telling.t("dry-already"), heads).rows(rows).draw())
            (more(telling, told.already.len()))
        }
    }
}

fn more(telling: &Telling, all: usize) -> Markup {
    more_of(telling, all.saturating_sub(SHOWN))
}

fn more_of(telling: &Telling, more: usize) -> Markup {
    html! {
        @if more > 0 { p { (telling.with("dry-more", &[("count", Arg::Count(i64::try_from(more).unwrap_or(i64::MAX)))])) } }
    }
}
