//! What is set aside, drawn.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::EntryId;

use super::view::{AboutRow, AsideView, OutsideRow, SettledRow, WaitingRow};
use crate::console::table::{Table, door, said, section};
use crate::console::visit::{Body, Telling};
use crate::sheet::{FigureRow, SettleRow, TwiceRow};

pub(super) fn body(telling: &Telling, view: &AsideView) -> Body {
    let name = telling.t("section-aside");
    let oldest = view.waiting.first().map(|row| telling.at(row.row.since));
    let beside = match &oldest {
        Some(when) => telling.with("aside-oldest", &[("when", Arg::Text(when))]),
        None => telling.t("none-aside"),
    };
    let open = view.readings.len().saturating_add(view.twice.len());
    let none = |empty: bool, key: &str| if empty { telling.t(key) } else { String::new() };
    let main = html! {
        div class="head" {
            h1 { (telling.t("place-aside")) }
            ul class="ways" {
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
        (section("waiting", view.waiting.len(), &name, &beside, &html! {
            @for row in &view.waiting { (waiting(telling, row, view.decided_upto)) }
        }))
        (section("readings", open, &telling.t("section-settle"), &none(open == 0, "none-disputed"), &html! {
            @for row in &view.readings { (reading(telling, row, view.decided_upto)) }
            @for row in &view.twice { (twice(telling, row, view.decided_upto)) }
        }))
        @if !view.outside.is_empty() { (outside(telling, &view.outside)) }
        (settled(telling, view))
    };
    Body { title: telling.t("place-aside"), main }
}

fn waiting(telling: &Telling, row: &WaitingRow, seen: i64) -> Markup {
    let heads =
        ["head-came-from", "head-unit", "head-says", "head-why", "head-since"].map(|key| telling.t(key));
    let mut says = telling.kind(&row.row.says);
    if let Some(hours) = row.hours {
        says = format!("{says} {}", telling.meter(hours));
    }
    let who = row.row.who.as_deref().map(|who| format!(", {who}")).unwrap_or_default();
    let cells = vec![
        said(telling.signer(&row.row.came_from)),
        row.row.unit.as_deref().map_or_else(|| said(telling.t("the-fleet")), door),
        said(format!("{says}{who}, {}", telling.at(row.row.at))),
        said(telling.or_plain(&format!("aside-{}", row.row.why), &row.row.why)),
        said(telling.at(row.row.since)),
    ];
    let id = format!("aside-{}", row.row.entry);
    html! {
        article {
            (Table::new(&id, &telling.t("section-aside"), heads).rows([cells]).draw())
            details {
                summary { (telling.t("aside-as-signed")) }
                @match &row.as_signed {
                    Some(line) => pre lang="en" { (serde_json::to_string_pretty(line).unwrap_or_default()) },
                    None => p { (telling.t("aside-unread")) },
                }
            }
            p {
                (telling.t(if row.signature_holds { "aside-signature-holds" } else { "aside-signature-not" }))
            }
            @if !row.can_decide {
                p class="beside" { (telling.t(&format!("aside-way-{}", row.row.why))) }
            } @else if telling.writes() {
                (decision(telling, &About { entries: &[row.row.entry], with: None, seen }, "aside-accept-words", &[
                    ("use", "aside-accept"), ("leave-out", "aside-leave-out"),
                ]))
            }
        }
    }
}

/// What a form decides about.
struct About<'a> {
    entries: &'a [EntryId],
    /// The one they may be the same as.
    with: Option<EntryId>,
    /// The newest decision the page knew.
    seen: i64,
}

/// Name, reason, and a button for each thing that may become of the entries.
fn decision(telling: &Telling, about: &About<'_>, words: &str, buttons: &[(&str, &str)]) -> Markup {
    let id = about.entries.first().map(ToString::to_string).unwrap_or_default();
    html! {
        form method="post" action="/set-aside/decide" class="decide" {
            (telling.token())
            input type="hidden" name="seen" value=(about.seen);
            @for entry in about.entries { input type="hidden" name="entry" value=(entry); }
            @if let Some(with) = about.with { input type="hidden" name="with" value=(with); }
            label for=(format!("name-{id}")) { (telling.t(words)) }
            input id=(format!("name-{id}")) name="name" size="18" required autocomplete="off" placeholder=(telling.name);
            label for=(format!("why-{id}")) { (telling.t("form-because")) }
            textarea id=(format!("why-{id}")) name="why" rows="2" cols="40" required autocomplete="off" {}
            @for (verdict, key) in buttons {
                button name="verdict" value=(verdict) { (telling.t(key)) }
            }
        }
    }
}

fn reading(telling: &Telling, row: &SettleRow, seen: i64) -> Markup {
    let hints = row.hints.iter().map(|hint| telling.or_plain(&format!("hint-{hint}"), hint));
    html! {
        article {
            p {
                (door(&row.unit)) " " (telling.or_plain(&format!("question-{}", row.why), &row.why)) " "
                (hints.collect::<Vec<_>>().join(" "))
            }
            p class="beside" {
                (telling.with("aside-used", &[("hours", Arg::Text(
                    &row.used.map_or_else(|| telling.t("none-word"), |hours| telling.meter(hours)),
                ))]))
            }
            @for figure in &row.figures {
                p { (figure_said(telling, figure)) }
                @if telling.writes() {
                    (decision(telling, &About { entries: &[figure.entry], with: None, seen }, "aside-reading-words", &[
                        ("reading-stands", "aside-reading-stands"), ("leave-out", "aside-reading-not"),
                    ]))
                }
            }
        }
    }
}

fn figure_said(telling: &Telling, figure: &FigureRow) -> Markup {
    let hours = telling.hours(figure.figure);
    html! {
        @if figure.struck { s { (hours) } } @else { strong { (hours) } }
        " h, " (telling.at(figure.at)) ", " (telling.who(figure.who.as_deref()))
        @if let Some(most) = figure.ceiling.filter(|_| figure.struck) {
            ", " (telling.with("at-most", &[("figure", Arg::Text(&telling.meter(most)))]))
        }
    }
}

fn twice(telling: &Telling, row: &TwiceRow, seen: i64) -> Markup {
    let told = |told: &crate::sheet::ToldService| {
        let hours = told.hours.map_or_else(|| telling.t("no-hours"), |h| telling.meter(h));
        format!("{}, {hours}, {}", telling.at(told.at), telling.who(told.who.as_deref()))
    };
    html! {
        article {
            p { (door(&row.unit)) " " (telling.t("entered-twice")) ": " (telling.task(&row.task)) }
            p { (telling.t("head-first-told")) ": " (told(&row.first)) }
            p { (telling.t("head-told-again")) ": " (told(&row.second)) }
            @if telling.writes() {
                (decision(telling, &About { entries: &[row.second.entry], with: Some(row.first.entry), seen }, "aside-twice-words", &[
                    ("same-service", "aside-same-service"), ("use", "aside-both-stand"),
                ]))
            }
        }
    }
}

fn outside(telling: &Telling, rows: &[OutsideRow]) -> Markup {
    let name = telling.t("section-outside");
    let lines = html! {
        ul class="plain" {
            @for row in rows {
                li {
                    (outside_said(telling, row))
                }
            }
        }
        p class="beside" { (telling.t("aside-outside-kept")) }
    };
    section("outside", rows.iter().map(|row| row.count).sum(), &name, "", &lines)
}

fn outside_said(telling: &Telling, row: &OutsideRow) -> String {
    let from = row.came_from.clone().unwrap_or_else(|| telling.t("not-said"));
    let (why, when) = (telling.or_plain(&format!("outside-{}", row.why), &row.why), telling.at(row.last));
    let key = if row.why == "signature" { "aside-forged" } else { "aside-outside-row" };
    telling.with(
        key,
        &[
            ("count", Arg::Count(i64::try_from(row.count).unwrap_or(i64::MAX))),
            ("from", Arg::Text(&from)),
            ("why", Arg::Text(&why)),
            ("when", Arg::Text(&when)),
        ],
    )
}

fn settled(telling: &Telling, view: &AsideView) -> Markup {
    let (name, rows) = (telling.t("section-settled"), &view.settled);
    let heads = ["head-when", "head-who", "head-says", "head-became", "head-why"].map(|key| telling.t(key));
    let cells = rows.iter().map(|row| {
        vec![
            said(telling.at(row.when)),
            said(telling.who(row.who.as_deref())),
            said(row.about.iter().map(|about| about_said(telling, about)).collect::<Vec<_>>().join("; ")),
            html! {
                (telling.t(&format!("became-{}", row.verdict)))
                (otherwise(telling, row, view.decided_upto))
            },
            said(&row.why),
        ]
    });
    let beside = if rows.is_empty() { telling.t("none-settled") } else { String::new() };
    let table = Table::new("settled-table", &name, heads).rows(cells).draw();
    section("settled", rows.len(), &name, &beside, &table)
}

/// The way back from a decision, by another one.
fn otherwise(telling: &Telling, row: &SettledRow, seen: i64) -> Markup {
    let entries: Vec<EntryId> = row.about.iter().map(|about| about.entry).collect();
    let button = match row.verdict.as_str() {
        "use" | "late-accepted" => ("leave-out", "aside-leave-out"),
        "reading-stands" => ("leave-out", "aside-reading-not"),
        "do-not-use" => ("use", "aside-accept"),
        "same-service" => ("use", "aside-both-stand"),
        _ => return html! {},
    };
    html! {
        @if row.is_last && !entries.is_empty() && telling.writes() {
            details {
                summary { (telling.t("aside-otherwise")) }
                (decision(telling, &About { entries: &entries, with: None, seen }, "aside-otherwise-words", &[button]))
            }
        }
    }
}

fn about_said(telling: &Telling, about: &AboutRow) -> String {
    let unit = about.unit.clone().unwrap_or_else(|| telling.t("the-fleet"));
    let hours = about.hours.map(|hours| format!(" {}", telling.meter(hours))).unwrap_or_default();
    format!("{unit} {}{hours}, {}", telling.kind(&about.says), telling.at(about.at))
}
