//! A door tag and a drum's label drawn: one sheet each, in both languages.

use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc};
use sumpbook_daybook::text::Arg;

use super::view::{DoorView, DrumView};
use crate::console::language::escaped;
use crate::console::paper::both;
use crate::console::people::picture;
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;

/// Where a drum's label of this oil is printed.
pub(in crate::console) fn drum_address(family: &str, grade: &str) -> String {
    format!("/drum-label?family={}&grade={}", escaped(family), escaped(grade))
}

pub(super) fn door(telling: &Telling, view: &DoorView) -> Body {
    let title = telling.with("door-tag-of", &[("unit", Arg::Text(&view.unit))]);
    let back = html! { a href=(format!("/units/{}", escaped(&view.unit))) { (view.unit) } };
    let main = html! {
        (head(telling, &title, &back))
        p class="no-print" { (telling.t("door-tag-how")) }
        section class="sheet label" {
            strong class="big" { (view.unit) }
            (code(telling, &view.code))
            @for words in both(telling) { p lang=(words.choice.language.tag()) { (words.t("door-tag-scan")) } }
            p class="whose" { (view.fleet) }
        }
    };
    Body { title, main }
}

pub(super) fn drum(telling: &Telling, view: &DrumView) -> Body {
    let title = telling.t("drum-label");
    let back = html! { a href="/units" { (telling.t("place-units")) } };
    let [here, there] = both(telling);
    let units = telling.listed(view.units.iter().cloned());
    let main = html! {
        (head(telling, &title, &back))
        p class="no-print" { (telling.with("drum-label-how", &[("units", Arg::Text(&units))])) }
        section class="sheet label" {
            strong class="oil" lang=(here.choice.language.tag()) { (family(&here, &view.family)) }
            @if family(&there, &view.family) != family(&here, &view.family) {
                strong class="oil" lang=(there.choice.language.tag()) { (family(&there, &view.family)) }
            }
            strong class="big" { (view.grade) }
            (code(telling, &view.code))
            @for words in both(telling) { p lang=(words.choice.language.tag()) { (words.t("drum-label-scan")) } }
            p class="whose" { (view.fleet) }
        }
    };
    Body { title, main }
}

fn head(telling: &Telling, title: &str, back: &Markup) -> Markup {
    html! {
        div class="head no-print" {
            h1 { (title) }
            ul class="ways" {
                li { (back) }
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
    }
}

fn family(words: &Words, family: &str) -> String {
    words.or_plain(&format!("family-{family}"), family)
}

/// The code, with as many of its squares to spare as a code can have: what is printed here gets dirty.
fn code(telling: &Telling, text: &str) -> Markup {
    match QrCode::encode_text(text, QrCodeEcc::High) {
        Ok(code) => picture(&code, &telling.t("label-picture")),
        Err(_) => html! {},
    }
}
