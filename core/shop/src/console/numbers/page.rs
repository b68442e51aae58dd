//! The page of the rules' numbers.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::{NumberRow, NumbersView};
use crate::console::visit::{Body, Telling};

/// Numbers that are read together.
const GROUPS: [(&str, &[&str]); 6] = [
    ("numbers-clocks", &["coming-up-percent", "coming-up-days", "twice-percent", "twice-days"]),
    ("numbers-day", &["covers-minutes", "clock-moved-seconds"]),
    (
        "numbers-readings",
        &["neighbour-days", "unlike-window-days", "unlike-least-days", "unlike-percentile", "unlike-times"],
    ),
    (
        "numbers-forecast",
        &["forecast-days", "forecast-least-readings", "forecast-least-days", "forecast-spreads"],
    ),
    ("numbers-glass", &["middle-from", "middle-to", "glass-error", "oil-growth"]),
    ("numbers-oil", &["settle-hours", "verdict-hours", "oil-density", "most-oil"]),
];

pub(super) fn body(telling: &Telling, view: &NumbersView) -> Body {
    let known = telling.at(view.known_at);
    let title = telling.t("numbers-title");
    let main = html! {
        div class="head" {
            h1 { (title) }
            p class="known" { (telling.with("known-at-short", &[("when", Arg::Text(&known))])) }
            ul class="ways" {
                li { a href="/due" { (telling.t("place-due")) } }
                li { a href="/severities" { (telling.t("severities-way")) } }
            }
        }
        p { (telling.t("numbers-beside")) }
        @if telling.writes() {
            form method="post" action="/numbers" class="sheet-form" {
                (telling.token())
                (groups(telling, view, &|row| field(telling, row)))
                button { (telling.t("numbers-set")) }
            }
        } @else {
            (groups(telling, view, &|row| html! {
                p { (name(telling, row)) ": " (row.value) " " (usual(telling, row)) }
            }))
        }
    };
    Body { title, main }
}

fn groups(telling: &Telling, view: &NumbersView, draw: &dyn Fn(&NumberRow) -> Markup) -> Markup {
    html! {
        @for (group, ids) in GROUPS {
            fieldset {
                legend { (telling.t(group)) }
                @for id in ids {
                    @if let Some(row) = view.numbers.iter().find(|row| row.id == *id) { (draw(row)) }
                }
            }
        }
    }
}

fn name(telling: &Telling, row: &NumberRow) -> String {
    telling.t(&format!("number-{}", row.id))
}

/// "usual 14"; in words of its own where the shop has another.
fn usual(telling: &Telling, row: &NumberRow) -> Markup {
    let args =
        [("usual", Arg::Text(&row.usual)), ("least", Arg::Text(&row.least)), ("most", Arg::Text(&row.most))];
    html! {
        @if row.value == row.usual {
            span class="beside" { (telling.with("numbers-usual", &args)) }
        } @else {
            strong { (telling.with("numbers-own", &args)) }
        }
    }
}

fn field(telling: &Telling, row: &NumberRow) -> Markup {
    let at = format!("number-{}", row.id);
    html! {
        p class="pair" {
            label for=(at) { (name(telling, row)) }
            " "
            input id=(at) name=(row.id) size="6" inputmode="decimal" autocomplete="off" value=(row.value)
                aria-describedby=(format!("{at}-usual"));
            " " span id=(format!("{at}-usual")) { (usual(telling, row)) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_stands_in_one_group() {
        let mut shown: Vec<&str> = GROUPS.iter().flat_map(|(_, ids)| ids.iter().copied()).collect();
        let mut all: Vec<&str> =
            sumpbook_trade::record::RuleNumber::ALL.iter().map(|number| number.id).collect();
        shown.sort_unstable();
        all.sort_unstable();
        assert_eq!(shown, all);
    }
}
