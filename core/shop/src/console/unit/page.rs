//! The page of one unit: what stands now, then its parts, each of which can be folded away.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::view::UnitView;
use super::{day_status, fluids, history, hours, lay_up, oil, papers, set, set_told, tasks};
use crate::console::day;
use crate::console::language::escaped;
use crate::console::mark::{self, LockNow};
use crate::console::table::{Table, name, said};
use crate::console::units::{self, UnitRow};
use crate::console::visit::{Body, Telling};
use crate::console::waits;
use crate::console::words::Words;
use crate::sheet::{DefectRow, LockedRow};

pub(super) fn body(telling: &Telling, view: &UnitView) -> Body {
    let words: &Words = telling;
    let steps = day::Steps::now(view.waits.iter().map(|wait| wait.part.clone()));
    let here = format!("/units/{}", escaped(&view.now.unit));
    let main = html! {
        (head(words, view))
        (standing(words, view))
        div class="parts" {
            (part("due", &words.t("part-due"), Some(view.tasks.len()), &tasks::draw(words, &view.tasks)))
            (part("defects", &words.t("part-defects"), Some(view.defects.len()), &html! {
                @if view.defects.is_empty() { p { (words.t("no-open-defect")) } }
                (defects(words, &view.defects, &steps))
            }))
            @if !view.waits.is_empty() {
                (part("waits", &words.t("section-waits"), Some(view.waits.len()), &html! {
                    (waits::table(telling, &view.waits, Some(&view.now.unit)))
                }))
            }
            (part("day", &words.t("part-day"), None, &day_status::draw(telling, &view.day_status)))
            (part("lay-up", &words.t("part-lay-up"), lay_up::open(&view.lay_up),
                &lay_up::draw(telling, &view.lay_up, view.known_at)))
            (part("oil", &words.t("part-oil"), None, &oil::draw(words, &view.oil)))
            (part("hours", &words.t("part-hours"), None, &html! {
                @for row in &view.to_settle {
                    p class="strip" {
                        (words.or_plain(&format!("question-{}", row.why), &row.why)) " "
                        a href="/set-aside" { (words.t("settle-it")) }
                    }
                }
                (hours::draw(words, &view.hours, &here))
            }))
            (part("history", &words.t("part-history"), None, &history::draw(words, &view.history, &here)))
            (part("fluids", &words.t("part-fluids"), None, &fluids::draw(words, &view.fluids)))
            (part("papers", &words.t("part-papers"), Some(view.dated_papers.len().saturating_add(view.papers.len())),
                &papers::draw(telling, &here, &view.dated_papers, &view.papers)))
            (part("set", &words.t("part-set"), None, &set::draw(words, &view.truck)))
        }
    };
    Body { title: view.now.unit.clone(), main }
}

/// The door number, what it is, what can be done.
fn head(words: &Words, view: &UnitView) -> Markup {
    let unit = escaped(&view.now.unit);
    let to = |page: &str| format!("{page}?unit={unit}");
    html! {
        div class="head" {
            h1 class="door" { (view.now.unit) }
            p class="known" { (set::line(words, &view.truck)) }
            ul class="ways" {
                @if view.defects.iter().any(|defect| defect.state == "open") {
                    li { a class="button" href=(to("/certificates")) { (words.t("do-certify")) } }
                }
                li { a class="button" href=(to("/due/service")) { (words.t("do-service")) } }
                li { a class="button" href=(to("/due") + "#visit") { (words.t("do-plan")) } }
                li { a href=(format!("/units/{unit}/note")) { (words.t("note-open")) } }
                li { a href=(to("/air")) { (words.t("place-air")) } }
                li { a href=(format!("/units/{unit}/door-tag")) { (words.t("door-tag")) } }
                @if view.lay_up.laid_up {
                    li { a class="button" href="#lay-up" { (words.t("do-return-list")) } }
                }
                li { button type="button" class="print" id="print" hidden { (words.t("print")) } }
            }
        }
    }
}

/// Road and air with their mark and words, and how old the news is: read in this order.
fn standing(words: &Words, view: &UnitView) -> Markup {
    let now = &view.now;
    let known = words.at(view.known_at);
    html! {
        div class="standing" {
            (mark::pair(&now.pair))
            div {
                p class="says" { (line(words, "road-line", now.road.state, "road", &view.locked)) }
                p class="says" { (line(words, "air-line", now.air.state, "air", &view.locked)) }
                @if !now.outlets.is_empty() {
                    p class="says" {
                        (words.with("outlets-named", &[("outlets", Arg::Text(&words.listed(now.outlets.iter().cloned())))]))
                    }
                }
            }
        }
        p class="phones-line" {
            (words.with("known-at-short", &[("when", Arg::Text(&known))])) "; " (heard(words, now)) "; "
            (words.t("head-today")) ": " (day::expected(words, &now.today))
            "; " (words.t("head-hours-read")) ": " (units::hours(words, now))
        }
        @if let (true, Some(since)) = (view.lay_up.laid_up, view.lay_up.since) {
            @let when = words.short_day_at(since);
            p class="strip" { (words.with("lay-up-clocks", &[("when", Arg::Text(&when))])) }
        }
        @if !view.day_status.ever_said {
            p class="strip" { (words.t("day-status-never")) " " a href="#day" { (words.t("day-status-say")) } }
        }
        (set_told::draw(words, view.set_told.as_ref()))
        @if now.campaigns_to_look > 0 {
            @let count = i64::try_from(now.campaigns_to_look).unwrap_or(i64::MAX);
            p class="strip" {
                (words.with("open-campaigns-look", &[("count", Arg::Count(count))])) " "
                a href="/due#campaigns" { (words.t("section-campaigns")) }
            }
        }
        @if let Some(by) = view.reminder_gone_by {
            p class="strip" { (words.with("reminder-gone", &[("when", Arg::Text(&words.at(by)))])) }
        }
    }
}

/// "Road: LOCKED since 06:44, lamps, stop, left: out; Hattie Brun".
fn line(words: &Words, key: &str, state: LockNow, part: &str, locked: &[LockedRow]) -> Markup {
    let of = locked.iter().filter(|row| row.lock == part);
    html! {
        (words.with(key, &[("state", Arg::Text(&words.t(state.key())))]))
        @for row in of {
            ", " (words.with("since-when", &[("when", Arg::Text(&words.at(row.since)))]))
            ": " (words.item(&row.item, row.place.as_deref()))
            @if !row.why.is_empty() { ", " (words.found(&row.why)) }
            @if let Some(who) = &row.who { (name(&format!(" ({who})"))) }
        }
    }
}

fn heard(words: &Words, row: &UnitRow) -> String {
    let Some(phone) = &row.phone else { return words.t("no-phone-wrote") };
    let at = words.at_or(row.heard, "never");
    words.with("its-phone-heard", &[("phone", Arg::Text(phone)), ("when", Arg::Text(&at))])
}

/// One part of the page. On a narrow screen one stands open at a time.
fn part(id: &str, name: &str, count: Option<usize>, inside: &Markup) -> Markup {
    html! {
        details class="part" id=(id) open {
            summary {
                h2 { @if let Some(count) = count { span class="count" { (count) } " " } (name) }
            }
            (inside)
        }
    }
}

fn defects(words: &Words, rows: &[DefectRow], steps: &day::Steps) -> Markup {
    let heads = ["head-what", "head-since", "head-one-answer", "head-other-answer", "head-locks"];
    let heads = heads.iter().chain(&["head-photo-sound", "head-next-step"]).map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let mut what = words.item(&row.item, row.place.as_deref());
        if row.repeat {
            what = format!("{what} ({})", words.t("defect-again"));
        }
        vec![
            said(what),
            said(words.at(row.since)),
            day::answer(words, &row.one_answer),
            day::others(words, row),
            said(day::locks(words, &row.locks)),
            day::photos(words, row),
            day::next_step(words, row, steps),
        ]
    });
    Table::new("defects-table", &words.t("part-defects"), heads).rows(rows).draw()
}
