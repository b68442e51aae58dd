//! The page: one form for each thing, folded until it is wanted.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::NoteView;
use super::facts::{DUST, METERS, WARMTH};
use crate::console::asked_hours;
use crate::console::language::escaped;
use crate::console::table::door;
use crate::console::visit::{Body, Telling};

pub(super) fn body(telling: &Telling, view: &NoteView) -> Body {
    let title = telling.with("note-of", &[("unit", Arg::Text(&view.unit))]);
    let main = html! {
        h1 { (telling.t("note-open")) " " (door(&view.unit)) }
        p class="known" { (asked_hours::known(telling, view.hours, view.read_at)) }
        @if telling.writes() { (forms(telling, view)) } @else { p class="strip" { (telling.t("refused-reader")) } }
    };
    Body { title, main }
}

fn forms(telling: &Telling, view: &NoteView) -> Markup {
    html! {
        (form(telling, view, "meter", &html! {
            (meter(telling, "m"))
            (hours_field(telling, "m-old", "old-end", "note-old-end", false))
            (hours_field(telling, "m-new", "new-start", "note-new-start", true))
            @if view.may_have_gone_round {
                label class="show" { input type="checkbox" name="went-round" value="yes"; " " (telling.t("note-went-round")) }
            }
        }))
        (form(telling, view, "estimate", &html! {
            p class="fine" { (telling.t("note-estimate-how")) }
            (meter(telling, "e"))
            (hours_field(telling, "e-low", "low", "note-low", true))
            (hours_field(telling, "e-likely", "likely", "note-likely", true))
            (hours_field(telling, "e-high", "high", "note-high", true))
        }))
        (form(telling, view, "site", &html! {
            p class="fine" { (telling.t("note-site-how")) }
            label for="d-dust" { (telling.t("note-site")) }
            select id="d-dust" name="dust" required {
                @for (_, word) in DUST { option value=(word) { (telling.or_plain(&format!("dust-{word}"), word)) } }
            }
        }))
        (form(telling, view, "sample", &html! {
            label for="s-bottle" { (telling.t("note-bottle")) }
            input id="s-bottle" name="bottle" size="12" required;
            label for="s-point" { (telling.t("note-point")) }
            input id="s-point" name="point" size="20";
            label for="s-warmth" { (telling.t("note-warmth")) }
            select id="s-warmth" name="warmth" {
                option value="" { (telling.t("not-said")) }
                @for (_, word) in WARMTH { option value=(word) { (telling.or_plain(&format!("warmth-{word}"), word)) } }
            }
            (hours_field(telling, "s-on-oil", "hours-on-oil", "note-hours-on-oil", false))
            (hours_field(telling, "s-hours", "hours", "service-hours", false))
            (asked_hours::tick(telling))
        }))
        @if view.samples.is_empty() {
            p { (telling.t("note-no-sample")) }
        } @else {
            (form(telling, view, "answer", &html! {
                p class="fine" { (telling.t("note-answer-how")) }
                label for="a-sample" { (telling.t("note-which")) }
                select id="a-sample" name="sample" required {
                    @for row in &view.samples {
                        option value=(row.entry) { (row.bottle) ", " (telling.at(row.drawn)) }
                    }
                }
                label for="a-words" { (telling.t("note-lab-words")) }
                textarea id="a-words" name="words" rows="4" cols="30" required {}
            }))
        }
    }
}

fn form(telling: &Telling, view: &NoteView, what: &str, inside: &Markup) -> Markup {
    let now = view.now.moment();
    let id = |name: &str| format!("{what}-{name}");
    let today = now.format("%Y-%m-%d").to_string();
    html! {
        details class="part" id=(what) {
            summary { h2 { (telling.t(&format!("note-{what}"))) } }
            form method="post" action=(format!("/units/{}/note/{what}", escaped(&view.unit))) class="sheet-form" {
                (telling.token())
                (inside)
                label for=(id("day")) { (telling.t("head-day")) }
                input id=(id("day")) name="day" type="date" required value=(today) max=(today);
                label for=(id("time")) { (telling.t("form-time-of-day")) }
                input id=(id("time")) name="time" type="time" required value=(now.format("%H:%M"));
                label for=(id("who")) { (telling.t("note-who")) }
                select id=(id("who")) name="who" {
                    @for name in &view.people { option value=(name) selected[*name == telling.name] { (name) } }
                }
                label for=(id("note")) {
                    (telling.t(if what == "estimate" { "note-why" } else { "form-words" }))
                }
                input id=(id("note")) name="note" size="30" required[what == "estimate"];
                button class="main" { (telling.t(&format!("note-keep-{what}"))) }
            }
        }
    }
}

fn meter(telling: &Telling, id: &str) -> Markup {
    let id = format!("{id}-meter");
    html! {
        label for=(id) { (telling.t("note-meter-name")) }
        select id=(id) name="meter" {
            @for (_, word) in METERS { option value=(word) { (telling.or_plain(&format!("meter-{word}"), word)) } }
        }
    }
}

fn hours_field(telling: &Telling, id: &str, name: &str, key: &str, required: bool) -> Markup {
    html! {
        label for=(id) { (telling.t(key)) }
        input id=(id) name=(name) inputmode="decimal" size="10" required[required];
    }
}
