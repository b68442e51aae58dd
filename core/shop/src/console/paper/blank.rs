//! A blank page to print: only what the unit has, in both languages, nothing answered and no box for all.

use axum::extract::Path;
use axum::response::Response;
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::checklist::PlannedStop;

use super::read::{FIGURES, place_of};
use super::sheet::{Row, Sheet, sheets};
use crate::console::language::{Choice, Language, escaped};
use crate::console::place::Place;
use crate::console::refused::Refused;
use crate::console::visit::{Body, Telling, Visit};
use crate::console::words::Words;
use crate::paper::editions;

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct BlankView {
    unit: String,
    edition: String,
    /// The middle of the glass, percent.
    middle: (f64, f64),
    stops: Vec<PlannedStop>,
}

/// `GET /paper/TH-04/blank`
pub(super) async fn page(visit: Visit, Path(door): Path<String>) -> Result<Response, Refused> {
    let asked_door = door.clone();
    visit
        .show_unit(
            Place::Paper,
            &asked_door,
            move |ledger, _| {
                let Some(truck) = ledger.fleet().truck_by_door(&door) else { return Ok(None) };
                let newest = editions(ledger, truck.truck)?.pop();
                Ok(newest.map(|page| BlankView {
                    unit: truck.door.clone(),
                    edition: page.name(),
                    middle: ledger.fleet().numbers.oil().middle,
                    stops: page.stops,
                }))
            },
            body,
        )
        .await
}

fn body(telling: &Telling, view: &BlankView) -> Body {
    let sheets = sheets(&view.stops);
    let title = telling.with("paper-blank-of", &[("unit", Arg::Text(&view.unit))]);
    let main = html! {
        div class="head no-print" {
            h1 { (title) }
            p class="known" { (telling.with("paper-edition", &[("edition", Arg::Text(&view.edition))])) }
            ul class="ways" {
                li { a href=(format!("/paper/{}", escaped(&view.unit))) { (telling.t("paper-type")) } }
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
        @for words in both(telling) {
            @for (number, sheet) in sheets.iter().enumerate() {
                (drawn(&words, view, sheet, number.saturating_add(1), sheets.len()))
            }
        }
    };
    Body { title, main }
}

/// The reader's language first, then the other.
pub(in crate::console) fn both(telling: &Telling) -> [Words; 2] {
    let words: Words = **telling;
    let language = match words.choice.language {
        Language::En => Language::Es,
        Language::Es => Language::En,
    };
    [words, Words { choice: Choice { language, ..words.choice }, ..words }]
}

fn drawn(words: &Words, view: &BlankView, sheet: &Sheet<'_>, number: usize, of: usize) -> Markup {
    let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
    let line =
        |key: &str, class: &str| html! { span class=(class) { (words.t(key)) " " span class="write" {} } };
    html! {
        section class="sheet" lang=(words.choice.language.tag()) {
            div class="sheet-head" {
                strong class="door" { (view.unit) }
                span { (words.with("paper-edition", &[("edition", Arg::Text(&view.edition))])) }
                span { (words.with("paper-sheet", &[("number", count(number)), ("of", count(of))])) }
                (line("paper-date", "w"))
                (line("head-driver", "w wide-write"))
                (line("paper-number", "w"))
            }
            p class="sheet-keys" { (words.t("paper-circles")) }
            div class="columns" {
                @for column in sheet {
                    div class="column" {
                        div class="pl keys" aria-hidden="true" {
                            span {} span class="nm" {}
                            @for key in 1..=4 { span class="k" { (key) } }
                        }
                        @for row in column {
                            @match row {
                                Row::Stop(stop) => div class="ps" { (stop.label()) " " (words.t(&format!("stop-{}", stop.id))) },
                                Row::Line(line) => div class="pl" {
                                    span class="id" { (line.item) }
                                    span class="nm" { (words.item(&line.item, place_of(line).as_deref())) }
                                    @for _ in 1..=4 { span class="o" {} }
                                },
                            }
                        }
                    }
                }
            }
            @if number == of { (foot(words, view)) }
        }
    }
}

/// Figures, the glass, defects, the signature.
fn foot(words: &Words, view: &BlankView) -> Markup {
    let has = |item: &str| view.stops.iter().flat_map(|stop| &stop.lines).any(|line| line.item == item);
    html! {
        div class="sheet-foot" {
            @if has("oil-level") {
                div class="glass-to-draw" {
                    (glass(view.middle))
                    p { (words.t("paper-draw")) }
                }
            }
            div class="to-write" {
                @if has("hours") { p { (words.t("paper-hours")) " " span class="write" {} } }
                @for (field, ..) in FIGURES.iter().filter(|(field, item, _)| *field != "glass" && has(item)) {
                    p { (words.t(&format!("paper-{field}"))) " " span class="write" {} }
                }
                p { (words.t("paper-defects")) }
                @for _ in 0..4 { p class="rule" {} }
                p class="signature" {
                    (words.t("paper-signature")) " " span class="write long" {}
                    " " (words.t("form-time-of-day")) " " span class="write" {}
                }
                p { (words.t("paper-typed-on")) " " span class="write long" {} }
            }
        }
    }
}

/// The sight glass with its middle band: nothing in it, to be drawn on.
fn glass((from, to): (f64, f64)) -> Markup {
    const BOLTS: [(i32, i32); 6] = [(209, 172), (120, 223), (31, 172), (31, 69), (120, 17), (209, 69)];
    // The whole glass is 176 high and its foot stands at 208.
    let (top, high) = (format!("{:.1}", 208.0 - 1.76 * to), format!("{:.1}", 1.76 * (to - from)));
    html! {
        svg class="glass" viewBox="0 0 240 240" aria-hidden="true" {
            circle class="ring" cx="120" cy="120" r="116" {}
            circle class="window" cx="120" cy="120" r="90" {}
            @for (x, y) in BOLTS { circle class="bolt-head" cx=(x) cy=(y) r="6" {} }
            rect class="band" x="6" y=(top) width="22" height=(high) {}
            rect class="band" x="212" y=(top) width="22" height=(high) {}
        }
    }
}
