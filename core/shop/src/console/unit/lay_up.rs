//! The lay-up of a unit's set: putting it away, and the list before its return, line by line and by name.

use axum::extract::Path;
use axum::response::Response;
use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::lay_up::ReturnList;
use sumpbook_trade::record::{ReturnHow, ReturnLine};
use sumpbook_trade::{EntryId, Stamp};

use super::view::Reading;
use crate::console::asked_hours;
use crate::console::form::Fields;
use crate::console::language::escaped;
use crate::console::refused::Refused;
use crate::console::table::{Table, said};
use crate::console::visit::{Telling, Visit};
use crate::console::words::Words;
use crate::lay_up::{LaidUp, LineTold, answer_list, lay_up};

/// The lay-up that stands, else the last one that ended; nothing of one where there is neither.
pub(super) fn read(of: &Reading<'_>) -> LaidUp {
    let standing = of.state.lay_ups.iter().rev().find(|spell| spell.returned.is_none());
    let spell = standing.or_else(|| of.state.lay_ups.last());
    LaidUp::of(of.ledger.fleet(), of.truck, spell, None)
}

/// `POST /units/TH-05/lay-up`
pub(super) async fn put_away(
    visit: Visit,
    Path(door): Path<String>,
    fields: Fields,
) -> Result<Response, Refused> {
    let zone = visit.read(|ledger, _| Ok(ledger.fleet().zone)).await?;
    let at = fields.moment("day", "time", zone)?.ok_or(Refused::Asked("lay-up-no-day"))?;
    if at > visit.now() {
        return Err(Refused::Asked("lay-up-ahead"));
    }
    let (hours, done) = (fields.hours("hours")?, fields.owned("done"));
    asked_hours::check(&visit, &door, &fields, (hours, at)).await?;
    let then = here(&door);
    visit
        .write(then, move |shop, hand| {
            let truck = shop.unit(&door)?;
            // Its own zone's clock: the moment a form gives has the yard's offset, and so has the entry.
            lay_up(shop, truck, done, hours, Some(at), hand).map(|_: EntryId| ())
        })
        .await
}

/// `POST /units/TH-05/return`
pub(super) async fn answered(
    visit: Visit,
    Path(door): Path<String>,
    fields: Fields,
) -> Result<Response, Refused> {
    let lines = lines(&fields)?;
    if lines.is_empty() {
        return Err(Refused::Asked("return-no-line"));
    }
    let words = fields.owned("words");
    let then = here(&door);
    visit
        .write(then, move |shop, hand| {
            let truck = shop.unit(&door)?;
            answer_list(shop, truck, lines, words, hand).map(|_| ())
        })
        .await
}

fn here(door: &str) -> String {
    format!("/units/{}#lay-up", escaped(door))
}

/// The lines that were answered. One that is waived says why.
fn lines(fields: &Fields) -> Result<Vec<ReturnLine>, Refused> {
    let list = ReturnList::common_practice().map_err(|error| Refused::Broken(error.to_string()))?;
    let mut lines = Vec::new();
    for item in &list.lines {
        let how = match fields.text(&format!("line-{}", item.id)) {
            Some("done") => ReturnHow::Done,
            Some("waived") => ReturnHow::Waived,
            _ => continue,
        };
        let reason = fields.owned(&format!("why-{}", item.id));
        if how == ReturnHow::Waived && reason.is_none() {
            return Err(Refused::Asked("return-no-reason"));
        }
        lines.push(ReturnLine { line: item.id.clone(), how, reason });
    }
    Ok(lines)
}

/// How many lines are open, for the part's head; none while it is not laid up.
pub(super) fn open(view: &LaidUp) -> Option<usize> {
    view.laid_up.then(|| view.lines.iter().filter(|line| line.state == "open").count())
}

pub(super) fn draw(telling: &Telling, view: &LaidUp, now: Stamp) -> Markup {
    html! {
        @if view.laid_up {
            (standing(telling, view))
            p { (telling.t("lay-up-air")) }
            (list(telling, view))
            p class="fine" { (telling.t("return-list-stands-on")) }
        } @else {
            @if view.back.is_some() { (standing(telling, view)) (back(telling, view)) }
            @else { p { (telling.t("lay-up-none")) } }
            @if telling.writes() { (form(telling, view, now)) }
        }
    }
}

/// "Laid up since Mon 30 Nov 15:00, by Dov Petrakis, at 1,204.7 h: oil changed, belts slack".
fn standing(words: &Words, view: &LaidUp) -> Markup {
    let Some(since) = view.since else { return html! {} };
    let when = words.short_day_at(since);
    let by = view.by.as_ref().map(|by| words.with("lay-up-by", &[("by", Arg::Text(by))]));
    let hours = view.hours.map(|hours| {
        let hours = words.hours(hours);
        words.with("lay-up-hours", &[("hours", Arg::Text(&hours))])
    });
    let since = words.with("lay-up-since", &[("when", Arg::Text(&when))]);
    let said = words.listed([Some(since), by, hours].into_iter().flatten());
    html! {
        p class=[view.laid_up.then_some("strip")] {
            (said) @if !view.done.is_empty() { ": " (view.done.join("; ")) }
        }
    }
}

fn back(words: &Words, view: &LaidUp) -> Markup {
    let when = view.back.map(|at| words.short_day_at(at)).unwrap_or_default();
    let by = words.who(view.back_by.as_deref());
    html! {
        p { (words.with("lay-up-back", &[("when", Arg::Text(&when)), ("by", Arg::Text(&by))])) }
        (answers(words, view, false))
    }
}

/// The list, with what each open line asks.
fn list(telling: &Telling, view: &LaidUp) -> Markup {
    if !telling.writes() {
        return answers(telling, view, false);
    }
    html! {
        form method="post" action=(format!("/units/{}/return", escaped(&view.unit))) class="sheet-form" {
            (telling.token())
            (answers(telling, view, true))
            label for="return-words" { (telling.t("form-words")) }
            input id="return-words" name="words" size="40";
            p class="fine" { (telling.with("certify-by", &[("name", Arg::Text(&telling.name))])) }
            button { (telling.t("return-keep")) }
        }
    }
}

fn answers(words: &Words, view: &LaidUp, asks: bool) -> Markup {
    let heads = ["head-line", "head-look-at", "head-state"].iter().chain(asks.then_some(&"head-answer"));
    let rows = view.lines.iter().map(|line| {
        let mut row = vec![
            said(words.t(&format!("return-{}", line.line))),
            html! {
                (words.t(&format!("return-{}.look", line.line)))
                @if let Some(caution) = &line.caution {
                    br; span class="fine" { (words.t(&format!("caution-{caution}"))) }
                }
            },
            said(state(words, line)),
        ];
        if asks {
            row.push(if line.state == "open" { choice(words, line) } else { said(words.t("none-dash")) });
        }
        row
    });
    let heads = heads.map(|key| words.t(key));
    Table::new("return-list", &words.t("return-list"), heads).rows(rows).draw()
}

/// "open", "done, Dov Petrakis Mon 1 Mar 08:00", "waived: new in March, Ilse Marrow Mon 1 Mar 08:00".
fn state(words: &Words, line: &LineTold) -> String {
    if line.answers.is_empty() {
        return words.t("return-how-open");
    }
    let told = line.answers.iter().map(|answer| {
        let how = match answer.how {
            ReturnHow::Done => words.t("return-how-done"),
            ReturnHow::Waived => words.t("return-how-waived"),
        };
        let why = answer.reason.as_ref().map_or_else(String::new, |why| format!(": {why}"));
        format!("{how}{why}, {} {}", answer.who, words.short_day_at(answer.at))
    });
    told.collect::<Vec<_>>().join("; ")
}

/// Done or waived, with room for the reason; neither is chosen beforehand.
fn choice(words: &Words, line: &LineTold) -> Markup {
    let name = format!("line-{}", line.line);
    let of = words.t(&format!("return-{}", line.line));
    let radio = |value: &str, key: &str| {
        html! {
            label class="show" {
                input type="radio" name=(name) value=(value);
                " " (words.t(key)) span class="aloud" { ", " (of) }
            }
        }
    };
    html! {
        (radio("done", "return-how-done")) " " (radio("waived", "return-how-waived"))
        input name=(format!("why-{}", line.line)) size="18"
            aria-label=(words.with("return-why-of", &[("line", Arg::Text(&of))]))
            placeholder=(words.t("return-why"));
    }
}

fn form(telling: &Telling, view: &LaidUp, now: Stamp) -> Markup {
    let now = now.moment();
    html! {
        details {
            summary { (telling.t("lay-up-do")) }
            form method="post" action=(format!("/units/{}/lay-up", escaped(&view.unit))) class="sheet-form" {
                (telling.token())
                label for="lay-up-day" { (telling.t("head-day")) }
                input id="lay-up-day" name="day" type="date" required value=(now.format("%Y-%m-%d"))
                    max=(now.format("%Y-%m-%d"));
                label for="lay-up-time" { (telling.t("form-time-of-day")) }
                input id="lay-up-time" name="time" type="time" required value=(now.format("%H:%M"));
                label for="lay-up-hours" { (telling.t("service-hours")) }
                input id="lay-up-hours" name="hours" inputmode="decimal" size="10";
                (asked_hours::tick(telling))
                label for="lay-up-done" { (telling.t("lay-up-done-words")) }
                input id="lay-up-done" name="done" size="40";
                p class="fine" { (telling.t("lay-up-then")) }
                button { (telling.t("lay-up-keep")) }
            }
        }
    }
}
