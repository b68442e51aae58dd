//! Rows of what was found and what is locked: the same in both views and on a unit's page.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use crate::console::due_words;
use crate::console::language::escaped;
use crate::console::mark::{self, LockNow, Pair};
use crate::console::table::{Table, door, name, said};
use crate::console::words::Words;
use crate::console::{photo, sound};
use crate::due::PartRow;
use crate::sheet::{DefectRow, LockedRow, SaidRow};

use super::steps::Steps;

/// "OK, Bettina Quaye 06:41".
pub(in crate::console) fn answer(words: &Words, row: &SaidRow) -> Markup {
    let what = if row.ok { words.t("answer-said-ok") } else { words.found(&row.words) };
    html! { (what) span class="named" { ", " (words.who(row.who.as_deref())) } " " (words.at(row.at)) }
}

/// What others answered; a dash where nobody else did.
pub(in crate::console) fn others(words: &Words, row: &DefectRow) -> Markup {
    html! {
        @if row.other_answer.is_none() && row.more_answers.is_empty() { (words.t("none-dash")) }
        @for (place, other) in row.other_answer.iter().chain(&row.more_answers).enumerate() {
            @if place > 0 { "; " }
            (answer(words, other))
        }
    }
}

/// What it locks, by name.
pub(in crate::console) fn locks(words: &Words, locks: &[String]) -> String {
    if locks.is_empty() {
        return words.t("locks-nothing");
    }
    locks.iter().map(|lock| words.lock(lock)).collect::<Vec<_>>().join(&words.t("and"))
}

/// Defects with both answers.
pub(super) fn defects(
    words: &Words,
    (id, caption): (&str, &str),
    rows: &[DefectRow],
    steps: &Steps,
) -> Markup {
    let heads =
        ["head-unit", "head-what", "head-one-answer", "head-other-answer", "head-locks", "head-photo-sound"];
    let heads = heads.iter().chain(&["head-next-step"]).map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let mut what = words.item(&row.item, row.place.as_deref());
        if row.repeat {
            what = format!("{what} ({})", words.t("defect-again"));
        }
        vec![
            door(&row.unit),
            said(what),
            answer(words, &row.one_answer),
            others(words, row),
            said(locks(words, &row.locks)),
            photos(words, row),
            next_step(words, row, steps),
        ]
    });
    Table::new(id, caption, heads).rows(rows).draw()
}

/// Its photos and sounds, each a way there: one that is still on its way from the phone is not there yet.
pub(in crate::console) fn photos(words: &Words, row: &DefectRow) -> Markup {
    html! {
        @if row.photos.is_empty() && row.sounds.is_empty() { (words.t("none-dash")) }
        @for (place, sha256) in row.photos.iter().enumerate() {
            @if place > 0 { ", " }
            a href=(photo::href(sha256)) { (numbered(words, place)) }
        }
        @for (place, sha256) in row.sounds.iter().enumerate() {
            @if place > 0 || !row.photos.is_empty() { ", " }
            a href=(sound::href(sha256)) { (words.t("sound-one")) }
        }
    }
}

/// "photo 1".
pub(in crate::console) fn numbered(words: &Words, place: usize) -> String {
    let number = i64::try_from(place).unwrap_or(i64::MAX).saturating_add(1);
    words.with("photo-n", &[("n", Arg::Count(number))])
}

/// What is to be done about a defect, each a way there: certify it, plan a visit, wait for a part. What it waits
/// for is named before them; what is over by now, on a sheet of an earlier day, offers none.
pub(in crate::console) fn next_step(words: &Words, row: &DefectRow, steps: &Steps) -> Markup {
    let due = due_href(&row.unit, &row.item, row.place.as_deref());
    match row.state.as_str() {
        "awaiting-review" => said(words.t("next-review")),
        "closed" => said(words.t("next-none")),
        _ if !steps.is_open(&row.unit, &row.item, row.place.as_deref()) => said(words.t("next-over")),
        _ => html! {
            @for wait in steps.waits_of(row) { (waits(words, wait)) " " }
            span class="acts" {
                a class="button" href=(certify_href(&row.unit, &row.item, row.place.as_deref())) {
                    (words.t("do-certify"))
                } " "
                a class="button" href=(format!("{due}#visit")) { (words.t("do-plan")) } " "
                a class="button" href=(format!("{due}#wait")) { (words.t("do-wait")) }
            }
        },
    }
}

/// "waits for blade, promised Mon 26 Oct".
fn waits(words: &Words, wait: &PartRow) -> String {
    words.with("waiting-part", &[("part", Arg::Text(&due_words::part(words, Some(wait))))])
}

/// Where a defect is certified.
pub(in crate::console) fn certify_href(unit: &str, item: &str, place: Option<&str>) -> String {
    format!("/certificates?unit={}&item={}", escaped(unit), escaped(&named(item, place)))
}

/// Where a visit is planned for it, or a part waited for.
fn due_href(unit: &str, item: &str, place: Option<&str>) -> String {
    format!("/due?unit={}&defect={}", escaped(unit), escaped(&named(item, place)))
}

fn named(item: &str, place: Option<&str>) -> String {
    place.map_or_else(|| item.to_owned(), |place| format!("{item}/{place}"))
}

/// What stands locked, since when, and who knew when.
pub(super) fn locked(
    words: &Words,
    (id, caption): (&str, &str),
    rows: &[LockedRow],
    steps: &Steps,
) -> Markup {
    let heads = ["head-unit", "head-road-air", "head-since", "head-why", "head-shop-knew"];
    let heads = heads.iter().chain(&["head-driver-knew", "head-next-step"]).map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let item = words.item(&row.item, row.place.as_deref());
        let next = match row.certified {
            // What a sheet of an earlier day tells may be over: how it stands now, its unit's page tells.
            None if steps.is_of_then() && !steps.is_open(&row.unit, &row.item, row.place.as_deref()) => html! {
                a href=(format!("/units/{}", escaped(&row.unit))) { (words.t("next-see-now")) }
            },
            // Only the work itself frees what a campaign locks.
            None if row.next_step == "service" => html! {
                a class="button" href=(format!("/due?unit={}", escaped(&row.unit))) { (words.t("do-service")) }
            },
            Some(at) => {
                let at = words.at(at);
                said(words.with("next-review-since", &[("when", Arg::Text(&at))]))
            }
            None if row.next_step == "return-list" => html! {
                a class="button" href=(format!("/units/{}#lay-up", escaped(&row.unit))) {
                    (words.t("do-return-list"))
                }
            },
            None => html! {
                a class="button" href=(certify_href(&row.unit, &row.item, row.place.as_deref())) {
                    (words.t("do-certify"))
                }
            },
        };
        vec![
            door(&row.unit),
            html! { span class="lock" { (mark::pair(&pair(row))) " " span { (lock_words(words, row)) } } },
            said(match row.ahead {
                true => words.with("since-ahead", &[("when", Arg::Text(&words.at(row.since)))]),
                false => words.at(row.since),
            }),
            html! {
                (item) ": " (words.found(&row.why))
                @if let Some(who) = &row.who { (name(&format!(", {who}"))) }
            },
            said(words.at_or(row.shop_knew, "not-yet")),
            said(words.at_or(row.driver_knew, "not-yet")),
            next,
        ]
    });
    Table::new(id, caption, heads).rows(rows).draw()
}

fn lock_words(words: &Words, row: &LockedRow) -> String {
    let state = if row.certified.is_some() { LockNow::AwaitingReview } else { LockNow::Locked };
    format!("{} {}", words.lock(&row.lock), words.t(state.key()))
}

/// The mark of one lock.
fn pair(row: &LockedRow) -> Pair {
    let state = if row.certified.is_some() { LockNow::AwaitingReview } else { LockNow::Locked };
    marked(&row.lock, state)
}

/// The mark of a part named as the sheet names it.
pub(super) fn marked(lock: &str, state: LockNow) -> Pair {
    match lock {
        "road" => Pair { road: state, ..Pair::default() },
        "air" => Pair { air: state, ..Pair::default() },
        _ => Pair { outlet: true, ..Pair::default() },
    }
}
