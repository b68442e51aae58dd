//! The page of a service programme.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::{ProgrammeView, TaskRow};
use crate::console::language::{Language, escaped};
use crate::console::texts;
use crate::console::visit::{Body, Telling};

/// Empty places for tasks to be added at once.
const ADDED: usize = 2;

pub(super) fn body(telling: &Telling, view: &ProgrammeView) -> Body {
    let known = telling.at(view.known_at);
    let title = match &view.unit {
        Some(unit) => telling.with("programme-title-of", &[("unit", Arg::Text(unit))]),
        None => telling.t("programme-title"),
    };
    let main = html! {
        div class="head" {
            h1 { (title) }
            p class="known" { (telling.with("known-at-short", &[("when", Arg::Text(&known))])) }
            ul class="ways" {
                li { a href="/due" { (telling.t("place-due")) } }
                li { a href="/numbers" { (telling.t("numbers-way")) } }
            }
        }
        p { (whose(telling, view)) " " (telling.with("programme-edition", &[("edition", Arg::Text(&view.edition.to_string()))])) }
        p { (telling.t("programme-beside")) }
        (others(telling, view))
        @if telling.writes() {
            form method="post" action="/programme" class="sheet-form" {
                (telling.token())
                input type="hidden" name="edition" value=(view.edition);
                @if let Some(unit) = &view.unit { input type="hidden" name="unit" value=(unit); }
                @for (nth, row) in view.tasks.iter().enumerate() { (known_task(telling, nth, row)) }
                @for nth in view.tasks.len()..view.tasks.len().saturating_add(ADDED) { (new_task(telling, nth)) }
                button {
                    @match &view.unit {
                        Some(unit) => (telling.with("programme-set-of", &[("unit", Arg::Text(unit))])),
                        None => (telling.t("programme-set")),
                    }
                }
            }
            @if let Some(unit) = view.unit.as_ref().filter(|_| view.own) {
                form method="post" action="/programme/fleets" class="sheet-form" {
                    (telling.token())
                    input type="hidden" name="unit" value=(unit);
                    p { (telling.with("programme-give-back-then", &[("unit", Arg::Text(unit))])) }
                    button { (telling.t("programme-give-back")) }
                }
            }
        } @else {
            @for row in &view.tasks { (read_only(telling, row)) }
        }
    };
    Body { title, main }
}

/// A task's name; the plain word where the fleet has made one of its own.
pub(super) fn name_in(language: Language, task: &str) -> String {
    texts::find(language, &format!("task-{task}"), &[]).unwrap_or_else(|| task.replace('-', " "))
}

fn whose(telling: &Telling, view: &ProgrammeView) -> String {
    let with = |key: &str, unit: &str| telling.with(key, &[("unit", Arg::Text(unit))]);
    match (&view.unit, view.own) {
        (Some(unit), true) => with("programme-its-own", unit),
        (Some(unit), false) => with("programme-the-fleets", unit),
        (None, _) => telling.t("programme-of-all"),
    }
}

fn others(telling: &Telling, view: &ProgrammeView) -> Markup {
    html! {
        form method="get" action="/programme" class="filter" {
            label for="programme-unit" { (telling.t("programme-of-unit")) }
            " "
            select id="programme-unit" name="unit" {
                option value="" { (telling.t("programme-all")) }
                @for unit in &view.units {
                    option value=(unit) selected[view.unit.as_ref() == Some(unit)] { (unit) }
                }
            }
            " " button { (telling.t("programme-show")) }
        }
        @if !view.own_units.is_empty() {
            p {
                (telling.t("programme-own-units")) " "
                @for (nth, unit) in view.own_units.iter().enumerate() {
                    @if nth > 0 { ", " }
                    a href=(format!("/programme?unit={}", escaped(unit))) { (unit) }
                }
            }
        }
    }
}

fn known_task(telling: &Telling, nth: usize, row: &TaskRow) -> Markup {
    html! {
        fieldset {
            legend { (telling.task(&row.task)) }
            input type="hidden" name=(format!("task-{nth}")) value=(row.task);
            (figures(telling, nth, Some(row)))
            (tick(telling, nth, "gone", "programme-gone", false))
        }
    }
}

fn new_task(telling: &Telling, nth: usize) -> Markup {
    let id = format!("name-{nth}");
    html! {
        fieldset {
            legend { (telling.t("programme-new")) }
            p class="pair" {
                label for=(id) { (telling.t("programme-name")) }
                " " input id=(id) name=(id) size="24" maxlength="60" autocomplete="off";
            }
            (figures(telling, nth, None))
        }
    }
}

fn figures(telling: &Telling, nth: usize, row: Option<&TaskRow>) -> Markup {
    let hours = row.and_then(|row| row.hours).map(|hours| hours.to_string());
    let months = row.and_then(|row| row.months).map(|months| months.to_string());
    let first = row.and_then(|row| row.first_at).map(|hours| hours.to_string());
    let lead = row.map(|row| row.parts_lead_days.to_string());
    html! {
        (figure(telling, nth, "hours", hours))
        (figure(telling, nth, "months", months))
        (figure(telling, nth, "first", first))
        (figure(telling, nth, "lead", lead))
        (tick(telling, nth, "weighted", "programme-weighted", row.is_some_and(|row| row.counts_weighted)))
        (tick(telling, nth, "display", "programme-display", row.is_some_and(|row| row.display_counts)))
    }
}

fn figure(telling: &Telling, nth: usize, field: &str, value: Option<String>) -> Markup {
    let id = format!("{field}-{nth}");
    html! {
        p class="pair" {
            label for=(id) { (telling.t(&format!("programme-{field}"))) }
            " " input id=(id) name=(id) size="8" inputmode="decimal" autocomplete="off" value=[value];
        }
    }
}

fn tick(telling: &Telling, nth: usize, field: &str, key: &str, on: bool) -> Markup {
    html! {
        label class="show" {
            input type="checkbox" name=(format!("{field}-{nth}")) value="yes" checked[on];
            " " (telling.t(key))
        }
    }
}

fn read_only(telling: &Telling, row: &TaskRow) -> Markup {
    let said = |key: &str, value: String| format!("{}: {value}", telling.t(key));
    let all = [
        row.hours.map(|hours| said("programme-hours", hours.to_string())),
        row.months.map(|months| said("programme-months", months.to_string())),
        row.first_at.map(|hours| said("programme-first", hours.to_string())),
        (row.parts_lead_days > 0).then(|| said("programme-lead", row.parts_lead_days.to_string())),
        row.counts_weighted.then(|| telling.t("programme-weighted")),
        row.display_counts.then(|| telling.t("programme-display")),
    ];
    html! {
        fieldset {
            legend { (telling.task(&row.task)) }
            @for said in all.into_iter().flatten() { p { (said) } }
        }
    }
}
