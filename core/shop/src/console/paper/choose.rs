//! Which unit: its blank page, or a signed one to type in.

use axum::response::Response;
use maud::{Markup, html};
use serde::Serialize;

use crate::console::language::escaped;
use crate::console::place::Place;
use crate::console::refused::Refused;
use crate::console::table::section;
use crate::console::visit::{Body, Telling, Visit};
use crate::console::{day, photo};
use crate::paper::to_type;

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct ChooseView {
    /// Door numbers.
    units: Vec<String>,
    /// Photos of pages that wait to be typed in.
    to_type: Vec<String>,
}

/// `GET /paper`
pub(super) async fn page(visit: Visit) -> Result<Response, Refused> {
    let folder = visit.folder();
    visit
        .show(
            Place::Paper,
            move |ledger, _| {
                let mut units: Vec<String> = ledger.fleet().trucks.values().map(|t| t.door.clone()).collect();
                units.sort();
                let to_type = to_type(ledger, &folder)?.iter().map(ToString::to_string).collect();
                Ok(Some(ChooseView { units, to_type }))
            },
            body,
        )
        .await
}

fn body(telling: &Telling, view: &ChooseView) -> Body {
    let main = html! {
        h1 { (telling.t("place-paper")) }
        @if view.units.is_empty() {
            p { a href="/in-and-out" { (telling.t("first-units")) } }
        } @else {
            @if telling.writes() { (upload(telling, view)) (waiting(telling, view)) }
            section aria-labelledby="blank-head" {
                h2 id="blank-head" { (telling.t("paper-blank")) }
                p { (telling.t("paper-blank-what")) }
                ul class="doors" {
                    @for unit in &view.units {
                        li { a class="door" href=(format!("/paper/{}/blank", escaped(unit))) { (unit) } }
                    }
                }
            }
        }
    };
    Body { title: telling.t("place-paper"), main }
}

fn upload(telling: &Telling, view: &ChooseView) -> Markup {
    html! {
        section aria-labelledby="type-head" {
            h2 id="type-head" { (telling.t("paper-type")) }
            form method="post" action="/paper/photo" enctype="multipart/form-data" class="sheet-form" {
                (telling.token())
                label for="paper-unit" { (telling.t("head-unit")) }
                input id="paper-unit" name="unit" size="10" required list="paper-units" autocomplete="off";
                datalist id="paper-units" { @for unit in &view.units { option value=(unit) {} } }
                label for="paper-photo" { (telling.t("paper-photo")) }
                input id="paper-photo" name="photo" type="file" accept="image/jpeg,image/png,image/webp";
                button class="main" { (telling.t("paper-go")) }
            }
        }
    }
}

/// Pages whose photo was kept and that nobody typed in yet: each goes on to its form, or is left out.
fn waiting(telling: &Telling, view: &ChooseView) -> Markup {
    let name = telling.t("section-pages");
    let beside = if view.to_type.is_empty() { telling.t("none-pages") } else { telling.t("pages-what") };
    let below = html! {
        ul class="plain" {
            @for (place, photo) in view.to_type.iter().enumerate() {
                li {
                    a href=(photo::href(photo)) { (day::numbered(telling, place)) }
                    form method="post" action="/paper/photo" enctype="multipart/form-data" class="inline" {
                        (telling.token())
                        input type="hidden" name="kept" value=(photo);
                        label for=(format!("page-unit-{place}")) { (telling.t("head-unit")) }
                        input id=(format!("page-unit-{place}")) name="unit" size="10" required list="paper-units" autocomplete="off";
                        button { (telling.t("pages-type")) }
                    }
                    form method="post" action="/paper/photo/leave" class="inline" {
                        (telling.token())
                        input type="hidden" name="photo" value=(photo);
                        button { (telling.t("pages-leave")) }
                    }
                }
            }
        }
    };
    section("pages", view.to_type.len(), &name, &beside, &below)
}
