//! The page that signs certificates: the defect in the driver's words, both answers, and neither verdict chosen.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::view::{Queue, named};
use crate::console::table::{Table, door, said};
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;
use crate::console::{day, photo, sound};
use crate::sheet::DefectRow;

pub(super) fn body(telling: &Telling, view: &Queue) -> Body {
    let words: &Words = telling;
    let known = words.at(view.known_at);
    let main = html! {
        div class="head" {
            h1 { (words.t("section-certify")) " " span class="count" { (view.count) } }
            p class="known" { (words.with("known-at-short", &[("when", Arg::Text(&known))])) }
            ul class="ways" {
                li { a href="/?view=morning" { (words.t("go-to-day-sheet")) } }
                li { a href="/severities" { (words.t("severities-way")) } }
            }
        }
        @if let Some(slip) = &view.signed {
            p class="strip" role="status" {
                (words.with("certify-signed", &[
                    ("unit", Arg::Text(&slip.unit)),
                    ("what", Arg::Text(&words.item(&slip.item, slip.place.as_deref()))),
                    ("verdict", Arg::Text(&words.t(&format!("verdict-{}", slip.verdict)))),
                ]))
                " "
                @if !slip.codes.is_empty() {
                    a href=(format!("/certificates/{}/slip", slip.entry)) { (words.t("certify-print-slip")) }
                }
            }
        }
        @if view.gone { p class="strip" role="status" { (words.t("certify-gone")) } }
        @match &view.now {
            Some(row) => (one(telling, row)),
            None => @if !view.gone { p { (words.t("none-to-certify")) } },
        }
        (rest(words, &view.rest))
    };
    Body { title: words.t("section-certify"), main }
}

/// The one to sign.
fn one(telling: &Telling, row: &DefectRow) -> Markup {
    let words: &Words = telling;
    html! {
        section id="now" aria-labelledby="now-head" {
            h2 id="now-head" { (door(&row.unit)) " " (words.item(&row.item, row.place.as_deref())) }
            dl class="facts" {
                dt { (words.t("head-one-answer")) }
                dd class="says" { (day::answer(words, &row.one_answer)) }
                @if let Some(other) = &row.other_answer {
                    dt { (words.t("head-other-answer")) }
                    dd class="says" { (day::answer(words, other)) }
                }
                @for more in &row.more_answers {
                    dt { (words.t("more-said")) }
                    dd { (day::answer(words, more)) }
                }
                dt { (words.t("head-since")) } dd { (words.at(row.since)) }
                dt { (words.t("head-locks")) } dd { (day::locks(words, &row.locks)) }
                @if !row.photos.is_empty() {
                    dt { (words.t("head-photo")) }
                    dd class="photos" {
                        @for (place, sha256) in row.photos.iter().enumerate() {
                            @let to = photo::href(sha256);
                            a href=(to) { img src=(to) alt=(day::numbered(words, place)) loading="lazy"; }
                        }
                    }
                }
                @if !row.sounds.is_empty() {
                    dt { (words.t("head-sound")) }
                    dd { @for sha256 in &row.sounds { (sound::heard(words, sha256)) } }
                }
                @if row.repeat { dt { (words.t("head-why")) } dd { (words.t("defect-again")) } }
            }
            @if telling.writes() { (form(telling, row)) } @else { p class="strip" { (words.t("certify-reader")) } }
        }
    }
}

fn form(telling: &Telling, row: &DefectRow) -> Markup {
    let words: &Words = telling;
    html! {
        form class="stack wide" method="post" action="/certificates" {
            (telling.token())
            input type="hidden" name="unit" value=(row.unit);
            input type="hidden" name="item" value=(named(row));
            fieldset {
                legend { (words.t("certify-legend")) }
                label { input type="radio" name="verdict" value="repaired" required; " " (words.t("verdict-repaired")) }
                label { input type="radio" name="verdict" value="not-needed" required; " " (words.t("verdict-not-needed")) }
            }
            label for="words" { (words.t("certify-in-words")) }
            textarea id="words" name="words" rows="3" required maxlength="2000" {}
            p { (words.with("certify-by", &[("name", Arg::Text(&telling.name))])) }
            p { (words.t("certify-then")) }
            button class="main" { (words.t("sign-and-next")) }
        }
    }
}

/// What waits after it.
fn rest(words: &Words, rows: &[DefectRow]) -> Markup {
    if rows.is_empty() {
        return html! {};
    }
    let heads =
        ["head-unit", "head-what", "head-one-answer", "head-other-answer", "head-locks", "head-next-step"];
    let cells = rows.iter().map(|row| {
        vec![
            door(&row.unit),
            said(words.item(&row.item, row.place.as_deref())),
            day::answer(words, &row.one_answer),
            day::others(words, row),
            said(day::locks(words, &row.locks)),
            day::next_step(words, row, &day::Steps::default()),
        ]
    });
    html! {
        section id="rest" aria-labelledby="rest-head" {
            h2 id="rest-head" { span class="count" { (rows.len()) } " " (words.t("certify-rest")) }
            (Table::new("rest-table", &words.t("certify-rest"), heads.map(|key| words.t(key))).rows(cells).draw())
        }
    }
}
