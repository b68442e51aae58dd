//! What lies on the trucks, drawn: what to load first, then truck by truck, then the form that counts.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::fluid::Fluid;

use super::StockView;
use crate::console::parts;
use crate::console::table::{Table, door, said, section};
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;
use crate::sheet::key;
use crate::stock::{OilKind, StockRow};

pub(super) fn body(telling: &Telling, view: &StockView) -> Body {
    let main = html! {
        div class="head" {
            h1 { (telling.t("stock-title")) }
            ul class="ways" {
                li { a href="/due" { (telling.t("place-due")) } }
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
        p { (telling.t("stock-says")) }
        (to_load(telling, view))
        (rows(telling, view))
        @if telling.writes() && !view.units.is_empty() { (form(telling, view)) }
    };
    Body { title: telling.t("stock-title"), main }
}

fn fluid(words: &Words, fluid: &str) -> String {
    words.or_plain(&format!("fluid-{fluid}"), fluid)
}

/// "Compressor oil, mineral ISO VG 46".
fn of_kind(words: &Words, named: &str, oil: Option<&OilKind>) -> String {
    let kind = oil.map(|oil| parts::kind(words, oil.family.as_deref(), oil.grade.as_deref()));
    words.listed([Some(fluid(words, named)), kind].into_iter().flatten())
}

fn to_load(telling: &Telling, view: &StockView) -> Markup {
    let name = telling.t("section-to-load");
    let heads = ["head-fluid", "head-to-load", "head-jugs"].map(|key| telling.t(key));
    let all = &view.stock.to_load;
    let rows = all.iter().map(|row| {
        vec![
            said(of_kind(telling, &row.fluid, row.oil.as_ref())),
            said(telling.measure(&row.volume)),
            said(row.jugs.to_string()),
        ]
    });
    let beside = if all.is_empty() { telling.t("stock-nothing") } else { String::new() };
    section(
        "to-load",
        all.len(),
        &name,
        &beside,
        &Table::new("to-load-table", &name, heads).rows(rows).draw(),
    )
}

fn rows(telling: &Telling, view: &StockView) -> Markup {
    let name = telling.t("section-stock");
    let heads = ["head-unit", "head-fluid", "head-counted", "head-poured-since", "head-left"];
    let all = &view.stock.rows;
    let rows = all.iter().map(|row| {
        let counted = match (&row.counted, row.counted_at) {
            (Some(volume), Some(at)) => format!("{}, {}", telling.measure(volume), telling.short_day_at(at)),
            _ => telling.t("stock-never"),
        };
        vec![
            door(&row.unit),
            said(of_kind(telling, &row.fluid, row.oil.as_ref())),
            said(counted),
            said(telling.measure(&row.poured)),
            said(left(telling, row)),
        ]
    });
    let beside = if all.is_empty() { telling.t("stock-none") } else { String::new() };
    let table = Table::new("stock-table", &name, heads.map(|key| telling.t(key))).rows(rows).draw();
    section("stock", all.len(), &name, &beside, &table)
}

fn left(words: &Words, row: &StockRow) -> String {
    let left = row.left.as_deref().map_or_else(|| words.t("stock-left-unknown"), |left| words.measure(left));
    if row.more_than_counted { format!("{left}; {}", words.t("stock-more")) } else { left }
}

/// "On the truck: Compressor oil 3.79 qt left of 4.00 qt, counted Fri 6 Nov 16:00": one line of a unit's page.
pub(in crate::console) fn line(words: &Words, row: &StockRow) -> Option<String> {
    let (counted, left, at) = (row.counted.as_deref()?, row.left.as_deref()?, row.counted_at?);
    Some(words.with(
        "stock-line",
        &[
            ("fluid", Arg::Text(&fluid(words, &row.fluid))),
            ("left", Arg::Text(&words.measure(left))),
            ("counted", Arg::Text(&words.measure(counted))),
            ("when", Arg::Text(&words.short_day_at(at))),
        ],
    ))
}

fn form(telling: &Telling, view: &StockView) -> Markup {
    html! {
        section id="count" aria-labelledby="count-head" {
            h2 id="count-head" { (telling.t("stock-count")) }
            form method="post" action="/stock" class="sheet-form" {
                (telling.token())
                p class="fine" { (telling.t("stock-count-how")) }
                label for="stock-unit" { (telling.t("head-unit")) }
                select id="stock-unit" name="unit" required {
                    option value="" {}
                    @for unit in &view.units { option value=(unit) { (unit) } }
                }
                label for="stock-fluid" { (telling.t("head-fluid")) }
                select id="stock-fluid" name="fluid" {
                    @for word in Fluid::ALL.iter().map(key) { option value=(word) { (fluid(telling, &word)) } }
                }
                label for="stock-volume" { (telling.t("stock-volume")) }
                input id="stock-volume" name="volume" size="10" required autocomplete="off";
                button class="main" { (telling.t("stock-keep")) }
            }
        }
    }
}
