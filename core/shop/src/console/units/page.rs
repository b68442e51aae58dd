//! The page of all units.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::view::{Sort, UnitRow, UnitsView, prefix};
use crate::console::language::escaped;
use crate::console::mark::{self, LockNow};
use crate::console::table::{Table, door, said};
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;
use crate::console::{day, due_words, oil_use};

/// Heads with what each sorts by.
const HEADS: [(&str, Option<Sort>); 8] = [
    ("head-unit", Some(Sort::Unit)),
    ("head-road-air", Some(Sort::RoadAir)),
    ("head-today", Some(Sort::Today)),
    ("head-hours-read", Some(Sort::Hours)),
    ("head-runs-out-first", Some(Sort::First)),
    ("head-oil-use", Some(Sort::Oil)),
    ("head-last-heard", Some(Sort::Heard)),
    ("head-open", Some(Sort::Open)),
];

pub(super) fn body(telling: &Telling, view: &UnitsView) -> Body {
    let words: &Words = telling;
    let known = words.at(view.known_at);
    let main = html! {
        div class="head" {
            h1 { (words.t("place-units")) " " span class="count" { (view.count) } }
            p class="known" { (words.with("known-at-short", &[("when", Arg::Text(&known))])) }
            ul class="ways" {
                li { (look(words, view)) }
                @if view.count > 0 {
                    @if view.table {
                        li { a href="/units" { (words.t("units-needing-only")) } }
                    } @else {
                        li { a href="/units?table=true" { (words.t("as-a-table")) } }
                    }
                }
                li { button type="button" class="print" id="print" hidden { (words.t("print")) } }
            }
        }
        @if view.count == 0 {
            p class="strip" {
                (words.t("units-none")) " "
                // A reader finds no form there.
                @if telling.writes() {
                    a href="/in-and-out" { (words.t("units-bring-in")) } " "
                    a href="/in-and-out#one" { (words.t("units-add-one")) }
                } @else { (words.t("in-out-reader")) }
            }
        } @else if view.table {
            (all(words, view))
        } @else {
            (needing(words, view))
            (quiet(words, view))
        }
    };
    Body { title: telling.t("place-units"), main }
}

/// Finding by door number.
fn look(words: &Words, view: &UnitsView) -> Markup {
    html! {
        form class="find" role="search" aria-label=(words.t("find-in-list")) method="get" action="/units" {
            label for="look" { (words.t("find-in-list")) }
            input id="look" name="find" type="search" size="8" autocomplete="off" value=[view.find.as_deref()];
            button { (words.t("find-go")) }
        }
    }
}

fn needing(words: &Words, view: &UnitsView) -> Markup {
    let name = words.t("units-need");
    html! {
        section id="needing" aria-labelledby="needing-head" class=[(view.needing == 0).then_some("none")] {
            h2 id="needing-head" { span class="count" { (view.needing) } " " (name) }
            @if view.needing == 0 { p class="beside" { (words.t("units-none-need")) } }
            (pages(words, view))
            (table(words, "needing-table", &name, view))
        }
    }
}

fn quiet(words: &Words, view: &UnitsView) -> Markup {
    let small = prefix(&view.quiet);
    html! {
        section id="quiet" aria-labelledby="quiet-head" class=[view.quiet.is_empty().then_some("none")] {
            h2 id="quiet-head" { span class="count" { (view.quiet.len()) } " " (words.t("units-quiet")) }
            @if !view.quiet.is_empty() {
                ul class="doors" {
                    @for unit in &view.quiet {
                        li {
                            a class="door" href=(format!("/units/{}", escaped(unit))) {
                                @if !small.is_empty() { small { (small) } }
                                (unit.strip_prefix(small).unwrap_or(unit))
                            }
                        }
                    }
                }
            }
        }
    }
}

fn all(words: &Words, view: &UnitsView) -> Markup {
    let name = match &view.find {
        Some(find) => words.with("units-found", &[("find", Arg::Text(find))]),
        None => words.t("units-all"),
    };
    html! {
        section id="all" aria-labelledby="all-head" {
            h2 id="all-head" { (name) }
            @if view.rows.is_empty() { p { (words.t("units-none-found")) } }
            (pages(words, view))
            (table(words, "all-table", &name, view))
            (pages(words, view))
        }
    }
}

/// Pages by door number; nothing when one holds all.
fn pages(words: &Words, view: &UnitsView) -> Markup {
    if view.pages.len() < 2 {
        return html! {};
    }
    html! {
        nav class="paged" aria-label=(words.t("pages-by-number")) {
            ul class="run" {
                @for (place, (from, to)) in view.pages.iter().enumerate() {
                    @let page = place.saturating_add(1);
                    li {
                        a href=(address(view, view.sort, page))
                            aria-current=[(page == view.page).then_some("page")] { (from) " - " (to) }
                    }
                }
            }
        }
    }
}

/// The same page otherwise sorted, or another page of it.
fn address(view: &UnitsView, sort: Sort, page: usize) -> String {
    let sort = serde_json::to_value(sort).ok();
    let mut asked = vec![format!("sort={}", sort.as_ref().and_then(|s| s.as_str()).unwrap_or("unit"))];
    if let Some(find) = &view.find {
        asked.push(format!("find={}", escaped(find)));
    } else if view.table {
        asked.push("table=true".to_owned());
    }
    if page > 1 {
        asked.push(format!("page={page}"));
    }
    format!("/units?{}", asked.join("&"))
}

fn table(words: &Words, id: &str, caption: &str, view: &UnitsView) -> Markup {
    let heads = HEADS.map(|(key, _)| words.t(key));
    let sorted = HEADS.map(|(_, sort)| sort.map(|sort| (address(view, sort, view.page), sort == view.sort)));
    let rows = view.rows.iter().map(|row| cells(words, row));
    Table::new(id, caption, heads).sorted(sorted).rows(rows).draw()
}

fn cells(words: &Words, row: &UnitRow) -> Vec<Markup> {
    vec![
        door(&row.unit),
        html! { span class="lock" { (mark::pair(&row.pair)) " " span { (lock_words(words, row)) } } },
        said(day::expected(words, &row.today)),
        said(hours(words, row)),
        runs_out(words, &row.first),
        said(oil_use::said(words, row.oil.as_ref())),
        said(words.at_or(row.heard, "never")),
        said(open(words, row)),
    ]
}

/// "road LOCKED, 1 of 3 outlets"; that nothing is on record when nothing is.
fn lock_words(words: &Words, row: &UnitRow) -> String {
    let part = |key: &str, state: LockNow| {
        (state != LockNow::None).then(|| format!("{} {}", words.t(key), words.t(state.key())))
    };
    let outlets = (!row.outlets.is_empty()).then(|| {
        let of = row.outlets_of.max(row.outlets.len());
        let count = [("count", count(row.outlets.len())), ("of", count(of))];
        words.with("outlets-locked", &count)
    });
    let all: Vec<String> = [part("lock-road", row.road.state), part("lock-air", row.air.state), outlets]
        .into_iter()
        .flatten()
        .collect();
    if all.is_empty() { words.t("no-lock") } else { words.listed(all) }
}

/// "2,862.4 h, Mon 19 Oct 06:32", and that it is disputed.
pub(in crate::console) fn hours(words: &Words, row: &UnitRow) -> String {
    let Some(hours) = row.hours else { return words.t("hours-never-read") };
    let mut said = words.meter(hours);
    if let Some(at) = row.read_at {
        said = format!("{said}, {}", words.at(at));
    }
    if row.disputed {
        said = format!("{said} ({})", words.t("hours-disputed"));
    }
    said
}

/// "Oil and filters: coming up 33.1 h left, 109 days left, to Fri 12 Feb 2027, hours, likely Thu 5 Nov (..)"
fn runs_out(words: &Words, first: &[crate::due::DueRow]) -> Markup {
    html! {
        @if first.is_empty() { (words.t("no-programme")) }
        @for (place, row) in first.iter().enumerate() {
            @if place > 0 { br; }
            (words.task(&row.task)) ": "
            @if row.state != "far-off" { (due_words::state(words, row)) " " }
            (due_words::left(words, row))
            @if row.runs_out_first == "hours" && row.forecast.is_some() { ", " (due_words::first(words, row)) }
        }
    }
}

fn open(words: &Words, row: &UnitRow) -> String {
    let defects =
        (row.open_defects > 0).then(|| words.with("open-defects", &[("count", count(row.open_defects))]));
    let settle =
        (row.to_settle > 0).then(|| words.with("open-to-settle", &[("count", count(row.to_settle))]));
    let reminder = row.needs.contains(&"reminder").then(|| words.t("open-reminder"));
    let campaigns =
        (row.campaigns > 0).then(|| words.with("open-campaigns", &[("count", count(row.campaigns))]));
    let look = (row.campaigns_to_look > 0)
        .then(|| words.with("open-campaigns-look", &[("count", count(row.campaigns_to_look))]));
    let all: Vec<String> = [defects, settle, reminder, campaigns, look].into_iter().flatten().collect();
    if all.is_empty() { words.t("none-dash") } else { words.listed(all) }
}

fn count(n: usize) -> Arg<'static> {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}
