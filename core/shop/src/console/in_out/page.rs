//! The page itself.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::{InOutView, one};
use crate::console::language::Language;
use crate::console::visit::{Body, Telling};
use crate::table_in::What;
use crate::table_out::Kind;

pub(super) fn body(telling: &Telling, view: &InOutView) -> Body {
    let t = |key: &str| telling.t(key);
    let main = html! {
        div class="head" { h1 { (t("place-in-out")) } }
        @if let Some(count) = view.brought_in {
            p class="strip" { (telling.with("brought-in", &[("count", Arg::Count(i64::try_from(count).unwrap_or(i64::MAX)))])) }
        }
        section id="in" aria-labelledby="in-head" {
            h2 id="in-head" { (t("in-out-in")) }
            @if telling.writes() { (bring_in(telling)) (one::form(telling)) } @else { p { (t("in-out-reader")) } }
        }
        section id="out" aria-labelledby="out-head" {
            h2 id="out-head" { (t("in-out-out")) }
            (tables(telling))
            (pack(telling, view))
            @if telling.writes() {
                (calendar(telling, view))
                (whole(telling, view))
            }
        }
    };
    Body { title: t("place-in-out"), main }
}

fn bring_in(telling: &Telling) -> Markup {
    let t = |key: &str| telling.t(key);
    let what: Vec<(&str, String)> =
        What::ALL.iter().map(|w| (w.name(), t(&format!("what-{}", w.name())))).collect();
    html! {
        p { (t("in-out-in-help")) }
        form class="sheet-form" method="post" action="/in-and-out/look" enctype="multipart/form-data" {
            (telling.token())
            label for="file" { (t("in-out-file")) }
            input id="file" name="file" type="file" accept=".csv,.txt,.tsv,text/csv" required;
            label for="what" { (t("in-out-what")) }
            (choice(telling, "what", &what, false))
            label for="dates" { (t("in-out-dates")) }
            (dates(telling))
            label for="decimals" { (t("in-out-decimals")) }
            (decimals(telling))
            button { (t("in-out-look")) }
        }
        details {
            summary { (t("in-out-columns")) }
            ul {
                @for what in What::ALL {
                    li {
                        (telling.with("what-columns", &[
                            ("what", Arg::Text(&t(&format!("what-{}", what.name())))),
                            ("columns", Arg::Text(&what.columns().iter().map(|c| c.name_in(telling.choice.language.tag())).collect::<Vec<_>>().join(", "))),
                        ]))
                    }
                }
            }
        }
    }
}

/// How days are written.
pub(super) fn dates(telling: &Telling) -> Markup {
    let styles = ["mdy", "dmy", "iso", "serial"].map(|style| (style, telling.t(&format!("dates-{style}"))));
    choice(telling, "dates", &styles, true)
}

/// How decimals are written.
pub(super) fn decimals(telling: &Telling) -> Markup {
    let styles = ["point", "comma"].map(|style| (style, telling.t(&format!("decimals-{style}"))));
    choice(telling, "decimals", &styles, true)
}

/// `open`: it may be left unsaid.
fn choice(telling: &Telling, name: &str, options: &[(&str, String)], open: bool) -> Markup {
    html! {
        select id=(name) name=(name) {
            @if open { option value="" { (telling.t("in-out-not-said")) } }
            @for (value, words) in options { option value=(value) { (words) } }
        }
    }
}

fn tables(telling: &Telling) -> Markup {
    html! {
        h3 { (telling.t("out-tables")) }
        ul class="run" {
            @for kind in Kind::ALL {
                li {
                    a href={ "/in-and-out/table/" (kind.name()) } download="" { (telling.t(&format!("out-kind-{}", kind.name()))) }
                    " ("
                    a href={ "/in-and-out/table/" (kind.name()) "?mark=true" } download="" { (telling.t("out-marked")) }
                    ")"
                }
            }
        }
        p class="beside" { (telling.t("out-marked")) ": " (telling.t("out-mark")) }
    }
}

fn pack(telling: &Telling, view: &InOutView) -> Markup {
    html! {
        h3 { (telling.t("out-pack")) }
        p { (telling.t("out-pack-help")) }
        form class="inline" method="get" action="/in-and-out/pack" {
            label for="pack-unit" { (telling.t("out-pack-unit")) }
            select id="pack-unit" name="unit" {
                option value="" { (telling.t("out-pack-all")) }
                @for door in &view.units { option { (door) } }
            }
            label class="show" {
                input type="checkbox" name="spanish" value="yes" checked[telling.choice.language == Language::Es];
                " " (telling.t("out-pack-spanish"))
            }
            button { (telling.t("out-pack-make")) }
            button formaction="/in-and-out/gaps" { (telling.t("out-pack-gaps")) }
        }
    }
}

fn calendar(telling: &Telling, view: &InOutView) -> Markup {
    let act = |act: &str, key: &str| {
        html! {
            form class="inline" method="post" action="/in-and-out/calendar" {
                (telling.token())
                input type="hidden" name="act" value=(act);
                button { (telling.t(key)) }
            }
        }
    };
    html! {
        h3 { (telling.t("out-calendar")) }
        p { (telling.t("out-calendar-help")) }
        @match &view.calendar {
            Some(address) => {
                p { a href=(address) { code { (address) } } }
                (act("make", "out-calendar-again"))
                (act("end", "out-calendar-end"))
            }
            None => {
                p { (telling.t("out-calendar-none")) }
                (act("make", "out-calendar-make"))
            }
        }
    }
}

fn whole(telling: &Telling, view: &InOutView) -> Markup {
    let act = |to: &str, key: &str| {
        html! {
            form class="inline" method="post" action=(to) { (telling.token()) button { (telling.t(key)) } }
        }
    };
    html! {
        h3 { (telling.t("out-fleet")) }
        p { (telling.t("out-fleet-help")) }
        @if view.phrase { (act("/in-and-out/fleet", "out-fleet-make")) } @else { p class="strip" { (telling.t("out-backup-no-phrase")) } }
        h3 { (telling.t("out-backup")) }
        p { (telling.t("out-backup-help")) }
        @if view.phrase { (act("/in-and-out/backup", "out-backup-make")) } @else { p class="strip" { (telling.t("out-backup-no-phrase")) } }
    }
}
