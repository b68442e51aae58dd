//! The first screenful: the day, as known when, the sentence, phones, versions, what can be done.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::view::{DayView, VersionRow};
use super::{changes, sentence};
use crate::console::visit::Telling;
use crate::console::words::Words;
use crate::sheet::View;

pub(super) fn draw(telling: &Telling, words: &Words, view: &DayView) -> Markup {
    let sheet = &view.sheet;
    let known = words.at(sheet.known_at);
    let zone = sheet.known_at.moment().format("%:z").to_string();
    let args = [("when", Arg::Text(&known)), ("zone", Arg::Text(&zone))];
    html! {
        div class="head" {
            h1 { (words.long_day(sheet.day)) }
            p class="known" {
                (words.with("known-at", &args)) ", " (standing(words, view))
            }
            p class="on-paper" {
                (words.with("printed-at", &[("when", Arg::Text(&words.short_day_at(telling.around.now)))]))
            }
            (ways(telling, words, view))
        }
        @for said in sentence::of(words, sheet) { p class="says" { (said) } }
        p class="phones-line" { (sentence::phones(words, sheet)) }
        (first_steps(telling, view))
        (versions(words, view))
        @if view.version.is_none() {
            p class="came-in" role="status" id="came-in" {
                a href=(telling.back) hidden {
                    (words.with("came-in-show", &[("when", Arg::Text(&known))]))
                }
            }
            a id="mark" href=(format!("/day/{}/mark?after={}", sheet.day, view.mark)) hidden {}
        }
    }
}

/// "open", or "version 2, closed".
fn standing(words: &Words, view: &DayView) -> String {
    match view.version {
        Some(version) => words.with("standing-version", &[("version", Arg::Count(version.into()))]),
        None if view.versions.is_empty() => words.t("standing-open"),
        None => words.t("standing-now"),
    }
}

/// The other view, the days beside it, print, close.
fn ways(telling: &Telling, words: &Words, view: &DayView) -> Markup {
    let day = view.sheet.day;
    let (other, key) = match view.view() {
        View::Morning => ("evening", "view-evening"),
        View::Evening => ("morning", "view-morning"),
    };
    let next = u32::try_from(view.versions.len()).unwrap_or(u32::MAX).saturating_add(1);
    html! {
        ul class="ways" {
            @if let Some(before) = day.pred_opt() {
                li { a href=(format!("/day/{before}")) { (words.t("day-before")) } }
            }
            @if let Some(after) = day.succ_opt().filter(|after| *after <= view.today) {
                li { a href=(format!("/day/{after}")) { (words.t("day-after")) } }
            }
            li { a href=(format!("/day/{day}?view={other}")) { (words.t(key)) } }
            li { button type="button" class="print" id="print" hidden { (words.t("print")) } }
            @if telling.writes() && view.version.is_none() && day <= view.today {
                li {
                    form method="post" action=(format!("/day/{day}/close")) {
                        (telling.token())
                        button { (words.with("close-as", &[("version", Arg::Count(next.into()))])) }
                    }
                }
            }
        }
    }
}

fn versions(words: &Words, view: &DayView) -> Markup {
    if view.versions.is_empty() {
        return html! {};
    }
    let day = view.sheet.day;
    html! {
        details class="versions" open[view.version.is_some()] {
            summary { (words.with("versions", &[("count", Arg::Count(view.versions.len() as i64))])) }
            ol {
                @for row in &view.versions {
                    li {
                        a href=(format!("/day/{day}?version={}", row.version))
                            aria-current=[(view.version == Some(row.version)).then_some("page")] {
                            (closed(words, row))
                        }
                        @if !row.told.is_empty() {
                            ul { @for change in &row.told { li { (changes::said(words, change)) } } }
                        } @else if !row.changes.is_empty() {
                            // Of a version before it that is not here any more only the kept lines tell.
                            ul lang="en" { @for change in &row.changes { li { (change) } } }
                        }
                    }
                }
            }
            @if view.version.is_some() {
                p { a href=(format!("/day/{day}")) { (words.t("as-known-now")) } }
            }
        }
    }
}

fn closed(words: &Words, row: &VersionRow) -> String {
    let (at, by) = (words.at(row.known_at), words.who(row.by.as_deref()));
    let args =
        [("version", Arg::Count(row.version.into())), ("when", Arg::Text(&at)), ("by", Arg::Text(&by))];
    words.with("version-closed", &args)
}

/// What a new shop does next, each a way there.
fn first_steps(telling: &Telling, view: &DayView) -> Markup {
    let first = view.first;
    if first.units > 0 && first.people > 0 && first.phones > 0 {
        return html! {};
    }
    html! {
        section class="first" aria-labelledby="first-head" {
            h2 id="first-head" { (telling.t("first-title")) }
            ol {
                @if first.units == 0 { li { a href="/in-and-out" { (telling.t("first-units")) } } }
                @if first.people == 0 { li { a href="/people" { (telling.t("first-people")) } } }
                @if first.phones == 0 { li { a href="/people" { (telling.t("first-phone")) } } }
            }
        }
    }
}
