//! The list drawn: rows to tick, what can be done with them, visits, what to order.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::{DueView, PAGE, campaigns, visits};
use crate::console::language::escaped;
use crate::console::table::{Table, door, said, section};
use crate::console::visit::{Body, Telling};
use crate::console::{day, due_words as told, papers, parts, waits};
use crate::papers::DatedPaper;
use crate::parts::OilToLoad;
use crate::plan::{OrderRow, PlanRow};
use crate::sheet::DefectRow;

pub(super) fn body(telling: &Telling, view: &DueView) -> Body {
    let known = telling.at(view.known_at);
    let main = html! {
        div class="head" {
            h1 { (telling.t("place-due")) }
            p class="known" { (telling.with("due-known", &[("when", Arg::Text(&known))])) }
            ul class="ways" {
                li { a href="/programme" { (telling.t("programme-way")) } }
                li { a href="/stock" { (telling.t("stock-open")) } }
                li { a href="/numbers" { (telling.t("numbers-way")) } }
                li { a href="/severities" { (telling.t("severities-way")) } }
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
        (filter(telling, view))
        (rows(telling, view))
        (laid_up(telling, view))
        (visits::draw(telling, view))
        (waits::draw(telling, &view.due.waits))
        (needs(telling, view))
        (orders(telling, &view.due.orders))
        (papers(telling, &view.due.papers))
        (campaigns::draw(telling, view))
    };
    Body { title: telling.t("place-due"), main }
}

fn filter(telling: &Telling, view: &DueView) -> Markup {
    let choice = |value: &str, key: &str| {
        html! { option value=(value) selected[view.asked.first == value] { (telling.t(key)) } }
    };
    html! {
        form class="inline" method="get" action="/due" {
            label for="due-unit" {
                (telling.with("due-units", &[("count", Arg::Count(count(view.due.units)))]))
            }
            input id="due-unit" name="unit" size="8" value=(view.asked.unit);
            label for="due-first" { (telling.t("head-runs-out-first")) }
            select id="due-first" name="first" {
                (choice("", "due-both"))
                (choice("hours", "first-hours"))
                (choice("calendar", "first-calendar"))
            }
            button { (telling.t("due-show")) }
        }
    }
}

fn rows(telling: &Telling, view: &DueView) -> Markup {
    let name = match &view.of_unit {
        Some(unit) => telling.with("section-of-unit", &[("unit", Arg::Text(unit))]),
        None => telling.t("section-near"),
    };
    let beside = match (view.count, &view.of_unit) {
        (0, Some(_)) => telling.t("due-no-task"),
        (0, None) => telling.t("due-nothing"),
        _ => String::new(),
    };
    let ticks = telling.writes();
    let table =
        html! { (table(telling, ("near-table", &name), &view.due.rows, ticks)) (pages(telling, view)) };
    let below = html! {
        @if ticks && (view.count > 0 || !view.defects.is_empty()) {
            form method="post" action="/due/plan" {
                (telling.token())
                (table)
                (defects(telling, view, ticks))
                (acts(telling, view))
            }
        } @else {
            (table)
            (defects(telling, view, ticks))
            // Whoever followed a button here is told why no form stands.
            @if view.of_unit.is_some() {
                p id="visit" {
                    span id="wait" { (telling.t(if ticks { "due-nothing-to-tick" } else { "refused-reader" })) }
                }
            }
        }
    };
    section("near", view.count, &name, &beside, &below)
}

/// What was found on the unit that is asked about: a visit and a part can be for it too.
fn defects(telling: &Telling, view: &DueView, ticks: bool) -> Markup {
    let Some(unit) = view.of_unit.as_ref().filter(|_| !view.defects.is_empty()) else { return html! {} };
    let item = |row: &DefectRow| match &row.place {
        Some(place) => format!("{}/{place}", row.item),
        None => row.item.clone(),
    };
    html! {
        fieldset class="acts" id="defects" {
            legend { (telling.with("due-defects", &[("unit", Arg::Text(unit))])) }
            @for row in &view.defects {
                @let named = item(row);
                label class="show" {
                    @if ticks {
                        input type="checkbox" name="defect" value=(format!("{named}@{unit}"))
                            checked[view.asked.defect == named];
                        " "
                    }
                    (telling.item(&row.item, row.place.as_deref())) ": " (day::answer(telling, &row.one_answer))
                }
            }
        }
    }
}

/// The same of sets that are laid up, apart: they are looked at before the return.
fn laid_up(telling: &Telling, view: &DueView) -> Markup {
    let rows = &view.due.laid_up;
    if rows.is_empty() {
        return html! {};
    }
    let name = telling.t("laid-up-rows");
    section("laid-up", rows.len(), &name, "", &table(telling, ("laid-up-table", &name), rows, false))
}

fn table(telling: &Telling, (id, caption): (&str, &str), rows: &[PlanRow], ticks: bool) -> Markup {
    // Where nothing can be ticked the door number heads its row.
    let tick: &[&str] = if ticks { &["head-tick"] } else { &[] };
    let heads = ["head-unit", "head-task", "head-hours-left", "head-last-good-day", "head-runs-out-first"];
    let heads = tick.iter().chain(&heads).chain(&["head-state", "head-part"]);
    // The own column of campaigns stands there when one of the rows is of a campaign.
    let any = rows.iter().any(|row| row.due.campaign.is_some());
    let own: &[&str] = if any { &["head-campaign"] } else { &[] };
    let heads = heads.chain(&["head-promised", "head-visit"]).chain(own).map(|key| telling.t(key));
    let rows = rows.iter().map(|row| {
        let due = &row.due;
        let task = telling.task(&due.task);
        let dash = || telling.t("none-dash");
        let of = format!("{}, {task}", due.unit);
        let asks = due.campaign.as_ref().map_or_else(dash, |campaign| told::campaign(telling, campaign));
        let tick = ticks.then(|| {
            html! {
                label class="tick" {
                    input type="checkbox" name="tick" value=(format!("{}@{}", due.task, due.unit)) aria-label=(of);
                    span class="narrow" { (door(&due.unit)) " " (task) }
                }
            }
        });
        let mut cells: Vec<Markup> = tick.into_iter().collect();
        cells.extend([
            door(&due.unit),
            said(&task),
            said(told::hours_left(telling, due)),
            said(told::last_good_day(telling, due)),
            said(told::first(telling, due)),
            told::state(telling, due),
            said(due.waiting_for.as_ref().map_or_else(dash, |part| part.part.clone())),
            said(due.waiting_for.as_ref().and_then(|p| p.promised).map_or_else(dash, |day| telling.short_day(day))),
            said(row.visit.as_ref().map_or_else(dash, |visit| visits::when(telling, visit))),
        ]);
        if any {
            cells.push(said(asks));
        }
        cells
    });
    Table::new(id, caption, heads).wide(if ticks { &[1, 2] } else { &[] }).rows(rows).draw()
}

fn pages(telling: &Telling, view: &DueView) -> Markup {
    let (from, shown) = (view.asked.from, view.due.rows.len());
    if view.count <= PAGE && from == 0 {
        return html! {};
    }
    let to = |from: usize| {
        format!("/due?unit={}&first={}&from={from}", escaped(&view.asked.unit), escaped(&view.asked.first))
    };
    let last = from.saturating_add(shown);
    html! {
        p class="turn" {
            (telling.with("due-of", &[
                ("first", Arg::Count(count(from.saturating_add(1)))),
                ("last", Arg::Count(count(last))),
                ("count", Arg::Count(count(view.count))),
            ])) " "
            @if from > 0 { a href=(to(from.saturating_sub(PAGE))) { (telling.t("due-before")) } " " }
            @if last < view.count { a href=(to(last)) { (telling.t("due-after")) } }
        }
    }
}

/// What becomes of the ticked rows.
fn acts(telling: &Telling, view: &DueView) -> Markup {
    html! {
        p class="ticked" role="status" data-ticked hidden {
            span data-count { "0" } " "
            span data-one=(telling.t("due-ticked-one")) data-several=(telling.t("due-ticked")) {
                (telling.t("due-ticked"))
            }
        }
        fieldset class="acts" id="visit" {
            legend { (telling.t("plan-visit")) }
            label for="plan-day" { (telling.t("head-day")) }
            input id="plan-day" name="day" type="date" min=(view.due.today);
            label for="plan-bay" { (telling.t("plan-bay")) }
            input id="plan-bay" name="bay" size="6";
            label for="plan-who" { (telling.t("head-who")) }
            input id="plan-who" name="who" size="16" list="plan-people";
            datalist id="plan-people" { @for name in &view.who { option value=(name) {} } }
            button { (telling.t("plan-visit")) }
        }
        fieldset class="acts" id="wait" {
            legend { (telling.t("wait-part")) }
            label for="wait-part" { (telling.t("head-part")) }
            input id="wait-part" name="part" size="20";
            label for="wait-promised" { (telling.t("head-promised")) }
            input id="wait-promised" name="promised" type="date";
            button formaction="/due/wait" { (telling.t("wait-keep")) }
        }
        p { button formaction="/due/ticked" { (telling.t("service-open")) } }
    }
}

/// Parts and oil for the week's visits: what to lay out, and what to load.
fn needs(telling: &Telling, view: &DueView) -> Markup {
    let (needs, name) = (&view.due.needs, telling.t("section-needs"));
    let beside = if needs.is_empty() { telling.t("none-planned") } else { String::new() };
    let heads = ["head-unit", "head-day", "head-parts", "head-oil-in-jugs", "head-waits"];
    let rows = needs.iter().map(|needs| {
        let unknown: Vec<String> = needs.parts_unknown.iter().map(|task| telling.task(task)).collect();
        let unknown = (!unknown.is_empty())
            .then(|| telling.with("parts-not-known", &[("tasks", Arg::Text(&telling.listed(unknown)))]));
        let parts = telling.listed(needs.parts.iter().cloned().chain(unknown));
        let waits = telling.listed(needs.waits.iter().map(|part| told::part(telling, Some(part))));
        let dash = |text: String| if text.is_empty() { telling.t("none-dash") } else { text };
        vec![
            door(&needs.unit),
            said(telling.short_day(needs.day)),
            said(dash(parts)),
            said(needs.oil.as_ref().map_or_else(|| telling.t("none-dash"), |oil| parts::oil(telling, oil))),
            said(dash(waits)),
        ]
    });
    let below = html! {
        (Table::new("needs-table", &name, heads.map(|key| telling.t(key))).rows(rows).draw())
        ul class="plain" { @for row in &view.due.oil { li { (to_load(telling, row)) } } }
    };
    section("needs", needs.len(), &name, &beside, &below)
}

/// "mineral VG 46: 10.00 qt (9.46 L), 3 jugs, for TH-02, TH-06".
fn to_load(telling: &Telling, row: &OilToLoad) -> String {
    let kind = parts::kind(telling, row.family.as_deref(), row.grade.as_deref());
    let mut said = Vec::new();
    if row.jugs > 0 {
        let (volume, units) =
            (telling.measure(&format!("{:.2} L", row.litres)), telling.listed(row.units.clone()));
        said.push(telling.with(
            "oil-to-load",
            &[
                ("kind", Arg::Text(&kind)),
                ("volume", Arg::Text(&volume)),
                ("count", Arg::Count(i64::from(row.jugs))),
                ("units", Arg::Text(&units)),
            ],
        ));
    }
    if !row.not_known.is_empty() {
        let units = telling.listed(row.not_known.clone());
        let args = [("kind", Arg::Text(&kind)), ("units", Arg::Text(&units))];
        said.push(telling.with("oil-not-known", &args));
    }
    said.join(" ")
}

/// Papers that ran out or soon do.
fn papers(telling: &Telling, rows: &[DatedPaper]) -> Markup {
    let name = telling.t("section-papers");
    let beside = if rows.is_empty() { telling.t("none-papers") } else { String::new() };
    let below = html! {
        ul class="plain" {
            @for row in rows { li { (door(&row.unit)) " " (papers::said(telling, row)) } }
        }
    };
    section("papers", rows.len(), &name, &beside, &below)
}

fn orders(telling: &Telling, rows: &[OrderRow]) -> Markup {
    let name = telling.t("section-order");
    let beside = if rows.is_empty() { telling.t("none-to-order") } else { String::new() };
    let below = html! {
        ul class="plain" {
            @for row in rows {
                li {
                    (order(telling, row)) ": "
                    @for (place, unit) in row.units.iter().take(30).enumerate() {
                        @if place > 0 { ", " }
                        (door(unit))
                    }
                    @if row.units.len() > 30 { " ..." }
                }
            }
        }
    };
    section("order", rows.len(), &name, &beside, &below)
}

/// "1 for Separator, 21 days' lead, by Mon 2 Nov".
fn order(telling: &Telling, row: &OrderRow) -> String {
    let task = telling.task(&row.task);
    let mut said = telling.with(
        "order-row",
        &[
            ("count", Arg::Count(count(row.units.len()))),
            ("task", Arg::Text(&task)),
            ("days", Arg::Count(row.lead_days.into())),
        ],
    );
    said.push_str(", ");
    said.push_str(&match row.by {
        Some(day) if day < telling.day => telling.t("order-now"),
        Some(day) => telling.with("order-by", &[("day", Arg::Text(&telling.short_day(day)))]),
        None => telling.t("order-no-day"),
    });
    said
}

pub(super) fn count(n: usize) -> i64 {
    i64::try_from(n).unwrap_or(i64::MAX)
}
