//! The cab report drawn: the reader's language, and the other on its own sheet.

use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc};
use sumpbook_daybook::text::Arg;

use super::view::{CabView, LockRow, PartRow, SignedRow};
use crate::console::day::found;
use crate::console::language::escaped;
use crate::console::paper::both;
use crate::console::people::picture;
use crate::console::rule_words;
use crate::console::table::{Table, said};
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;
use crate::sheet::{DefectRow, SaidRow};

pub(super) fn body(telling: &Telling, view: &CabView) -> Body {
    let title = telling.with("cab-title", &[("unit", Arg::Text(&view.unit))]);
    let main = html! {
        div class="head no-print" {
            h1 { (title) }
            ul class="ways" {
                li { a href=(format!("/units/{}", escaped(&view.unit))) { (view.unit) } }
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
        @for words in both(telling) { (sheet(&words, view)) }
        p class="no-print beside" {
            a href=(format!("/units/{}/cab-report?as-of={}", escaped(&view.unit), view.known_at.unix_ms())) {
                (telling.t("cab-as-known-then"))
            }
        }
    };
    Body { title, main }
}

fn sheet(words: &Words, view: &CabView) -> Markup {
    let known = full(words, view.known_at);
    let heard = view.shop_heard.map_or_else(|| words.t("never"), |at| full(words, at));
    let or_not = |text: &Option<String>| text.clone().unwrap_or_else(|| words.t("not-said"));
    let (plate, serial, set) = (or_not(&view.plate), or_not(&view.serial), or_not(&view.set_serial));
    html! {
        section class="sheet cab" lang=(words.choice.language.tag()) {
            div class="sheet-head" {
                strong class="door" { (view.unit) }
                span { (view.fleet) }
                span { (words.with("cab-plate", &[("plate", Arg::Text(&plate))])) }
                span { (words.with("cab-serials", &[("truck", Arg::Text(&serial)), ("set", Arg::Text(&set))])) }
                span { (words.with("paper-sheet", &[("number", Arg::Count(1)), ("of", Arg::Count(1))])) }
            }
            p { (words.with("cab-known", &[("when", Arg::Text(&known)), ("heard", Arg::Text(&heard))])) }
            (locks(words, &view.locks))
            (parts(words, view))
            (defects(words, &view.defects))
            p { (annual(words, view)) }
            @if view.signed.is_empty() { p { (words.t("cab-no-report")) } }
            @for row in &view.signed { p { (signed(words, row)) } }
            div class="cab-check" {
                (check(words, view))
                p { (words.with("cab-check", &[("code", Arg::Text(&view.check))])) " " (words.t("cab-check-how")) }
            }
        }
    }
}

fn annual(words: &Words, view: &CabView) -> String {
    let Some(day) = view.annual_inspection else { return words.t("cab-annual") };
    let key = if view.annual_inspection_over { "cab-annual-over" } else { "cab-annual-by" };
    words.with(key, &[("day", Arg::Text(&words.plain_day(day)))])
}

fn full(words: &Words, at: sumpbook_trade::Stamp) -> String {
    let there = at.moment().with_timezone(&words.zone);
    format!("{} {}", words.plain_day(there.date_naive()), there.format("%H:%M %:z"))
}

fn locks(words: &Words, rows: &[LockRow]) -> Markup {
    let line = |lock: &str, key: &str| {
        // Of several the one that waits for more than a review.
        let row = rows.iter().filter(|row| row.lock == lock).min_by_key(|row| row.awaits_review);
        let state = match row {
            None => words.t("no-lock"),
            Some(row) => {
                let state = words.t(if row.awaits_review { "lock-awaiting" } else { "lock-stands" });
                words.with(
                    "cab-lock",
                    &[("state", Arg::Text(&state)), ("when", Arg::Text(&full(words, row.since)))],
                )
            }
        };
        words.with(key, &[("state", Arg::Text(&state))])
    };
    html! {
        p { strong { (line("road", "road-line")) } }
        p { strong { (line("air", "air-line")) } }
        @for row in rows.iter().filter(|row| row.lock.contains('/')) {
            p { strong { (words.lock(&row.lock)) " " (words.t(if row.awaits_review { "lock-awaiting" } else { "lock-stands" })) } }
        }
    }
}

fn parts(words: &Words, view: &CabView) -> Markup {
    let rows: &[PartRow] = &view.parts;
    let heads = ["cab-part", "cab-answer", "cab-who-when", "cab-figure"].map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let who = match (&row.who, row.at) {
            (who, Some(at)) => format!("{} {}", words.who(who.as_deref()), words.at(at)),
            _ => words.t("none-dash"),
        };
        let figures = row.figures.iter().map(|(item, figure)| with_rules(words, view, item, figure));
        vec![
            said(format!("({}) {}", row.part, words.t(&format!("part-{}", row.part)))),
            html! {
                @if row.answer == "defect" { strong { (words.t("answer-defect")) } }
                @else if row.open_elsewhere { strong { (words.t("answer-defect")) "*" } }
                @else { (words.t(&format!("cab-{}", row.answer))) }
            },
            said(who),
            said(figures.collect::<Vec<_>>().join("; ")),
        ]
    });
    let id = format!("cab-parts-{}", words.choice.language.tag());
    html! {
        (Table::new(&id, &words.t("cab-parts"), heads).rows(rows).draw())
        @if view.parts.iter().any(|row| row.open_elsewhere) { p { (words.t("cab-star")) } }
    }
}

/// A figure with every rule it does not keep. All of them stand in the JSON:
/// the sheet is one page.
fn with_rules(words: &Words, view: &CabView, item: &str, figure: &str) -> String {
    let own = view.rules.iter().filter(|rule| rule.item == item && rule.figure == figure);
    let told = own.filter(|rule| rule.keeps == Some(false));
    let head = format!("{}: {figure}", words.item(item, None));
    let mut said: Vec<String> = vec![head];
    for rule in told.map(|rule| rule_words::verdict(words, rule)) {
        // Left and right of one figure are told once.
        if !said.contains(&rule) {
            said.push(rule);
        }
    }
    words.listed(said)
}

fn defects(words: &Words, rows: &[DefectRow]) -> Markup {
    let heads = ["head-what", "cab-said-by", "cab-certificate", "cab-review"].map(|key| words.t(key));
    if rows.is_empty() {
        return html! { p { (words.t("cab-no-defect")) } };
    }
    let id = format!("cab-defects-{}", words.choice.language.tag());
    let rows = rows.iter().map(|row| {
        let certificate = row.certificate.as_ref().map_or_else(
            || words.t("cab-no-certificate"),
            |c| {
                let verdict = words.t(&format!("cab-{}", c.verdict));
                format!("{verdict}, {} {}: {}", words.who(c.who.as_deref()), words.at(c.at), c.words)
            },
        );
        let review = row.reviewed.as_ref().map_or_else(
            || words.t("cab-no-review"),
            |review| format!("{} {}", words.who(review.who.as_deref()), words.at(review.at)),
        );
        vec![
            said(words.item(&row.item, row.place.as_deref())),
            html! {
                (answer(words, &row.one_answer)) "; "
                @for other in row.other_answer.iter().chain(&row.more_answers) { (answer(words, other)) "; " }
                (found::locks(words, &row.locks))
            },
            said(certificate),
            said(review),
        ]
    });
    Table::new(&id, &words.t("cab-defects"), heads).rows(rows).draw()
}

/// "out, Hattie Brun 06:44". Not the board's, which leaves names out.
fn answer(words: &Words, row: &SaidRow) -> String {
    let what = if row.ok { words.t("answer-said-ok") } else { words.found(&row.words) };
    format!("{what}, {} {}", words.who(row.who.as_deref()), words.at(row.at))
}

fn signed(words: &Words, row: &SignedRow) -> String {
    let (who, when) = (words.who(row.who.as_deref()), full(words, row.at));
    let how = match (row.paper, row.pin_given) {
        (true, _) => words.t("cab-on-paper"),
        (false, true) => words.t("cab-pin"),
        (false, false) => words.t("cab-no-pin"),
    };
    words.with(
        "cab-signed",
        &[
            ("who", Arg::Text(&who)),
            ("when", Arg::Text(&when)),
            ("how", Arg::Text(&how)),
            ("phone", Arg::Text(&words.signer(&row.came_from))),
        ],
    )
}

fn check(words: &Words, view: &CabView) -> Markup {
    let text = format!("{} {} {}", view.unit, view.known_at.unix_ms(), view.check);
    match QrCode::encode_text(&text, QrCodeEcc::Medium) {
        Ok(code) => picture(&code, &words.t("cab-check-picture")),
        Err(_) => html! {},
    }
}
