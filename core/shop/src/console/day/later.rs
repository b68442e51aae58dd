//! The later sections of the 17:00 view: due, reminders, top-ups, what is to be settled, what came late.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::due;
use crate::console::table::{Table, door, said, section};
use crate::console::unit::set_told;
use crate::console::words::Words;
use crate::sheet::{
    AnsweredBy, AsideRow, Evening, LateRow, OilFound, OilRow, ReminderRow, Section, SettleRow, TopUpRow,
    TwiceRow,
};

pub(super) fn draw(words: &Words, sheet: &Evening) -> Markup {
    let none = |count: usize, key: &str| if count == 0 { words.t(key) } else { String::new() };
    let name = |key: &str| words.t(key);
    let settle =
        sheet.to_settle.count.saturating_add(sheet.entered_twice.count).saturating_add(sheet.sets.count);
    html! {
        (due::evening(words, &sheet.due))
        (section("reminders", sheet.reminders.count, &name("section-reminders"),
            &none(sheet.reminders.count, "none-recorded"), &reminders(words, &sheet.reminders.rows)))
        (section("top-ups", sheet.top_ups.count, &name("section-top-ups"),
            &none(sheet.top_ups.count, "none-recorded"), &top_ups(words, &sheet.top_ups.rows)))
        (section("oil", sheet.oil.count, &name("section-oil"), &none(sheet.oil.count, "none-oil"),
            &drinking(words, &sheet.oil.rows)))
        (section("settle", settle, &name("section-settle"), &none(settle, "none-disputed"), &html! {
            (to_settle(words, &sheet.to_settle.rows))
            (twice(words, &sheet.entered_twice.rows))
            @for row in &sheet.sets.rows {
                p { (door(&row.unit)) ": " (set_told::said(words, row)) }
            }
            @for row in &sheet.corrected.rows {
                p class="corrected" {
                    (door(&row.unit)) ": "
                    s { (words.meter(row.struck)) } " "
                    (words.with("corrected", &[
                        ("instead", Arg::Text(&row.instead.map_or_else(|| words.t("none-word"), |h| words.meter(h)))),
                        ("why", Arg::Text(&row.why)),
                    ]))
                }
            }
        }))
        (section("aside", sheet.set_aside.count, &name("section-aside"),
            &none(sheet.set_aside.count, "none-aside"), &aside(words, &sheet.set_aside.rows)))
        (section("late", sheet.came_late.count, &name("section-late"),
            &none(sheet.came_late.count, "none-late"),
            &late(words, "late-table", &name("section-late"), &sheet.came_late.rows)))
        (ahead(words, &sheet.dated_ahead))
    }
}

/// Entries dated after the moment of looking, in either view; nothing where none is.
pub(super) fn ahead(words: &Words, of: &Section<LateRow>) -> Markup {
    let name = words.t("section-ahead");
    html! {
        @if !of.is_empty() {
            (section("ahead", of.count, &name, "", &late(words, "ahead-table", &name, &of.rows)))
        }
    }
}

fn reminders(words: &Words, rows: &[ReminderRow]) -> Markup {
    let heads =
        ["head-unit", "head-shown", "head-as-it-stood", "head-seen-by", "head-told-by", "head-service"];
    let answered = |by: Option<&AnsweredBy>| {
        by.map_or_else(
            || said(words.t("nobody")),
            |by| html! { span class="named" { (words.who(by.who.as_deref())) " " } (words.at(by.at)) },
        )
    };
    let early = |by: &AnsweredBy| {
        let when = words.at(by.at);
        words.with(
            "dated-before-note",
            &[("who", Arg::Text(&words.who(by.who.as_deref()))), ("when", Arg::Text(&when))],
        )
    };
    let rows = rows.iter().map(|row| {
        let service = match (&row.ask, row.service) {
            (Some(_), _) => words.t("task-reminder-gone"),
            (None, Some(at)) => words.at(at),
            (None, None) => words.t("none-recorded"),
        };
        vec![
            door(&row.unit),
            said(words.at(row.shown)),
            said(format!("{}: {}", words.t(&format!("note-{}", row.kind)), row.as_it_stood)),
            html! {
                (answered(row.seen_by.as_ref()))
                @for by in &row.dated_before { "; " (early(by)) }
            },
            answered(row.shop_told_by.as_ref()),
            said(service),
        ]
    });
    Table::new("reminders-table", &words.t("section-reminders"), heads.map(|key| words.t(key)))
        .rows(rows)
        .draw()
}

fn top_ups(words: &Words, rows: &[TopUpRow]) -> Markup {
    let heads = ["head-unit", "head-fluid", "head-poured", "head-before-after", "head-who", "head-finding"];
    let rows = rows.iter().map(|row| {
        let fluid = words.or_plain(&format!("fluid-{}", row.fluid), &row.fluid);
        let level = |level: &Option<String>| {
            level.as_deref().map_or_else(|| words.t("not-said"), |level| glass(words, level))
        };
        let found = row.finding.as_deref().map(|found| words.found(found));
        let found: Vec<String> =
            found.into_iter().chain(row.oil.iter().map(|found| oil_found(words, found))).collect();
        let finding = if found.is_empty() { words.t("none-dash") } else { words.listed(found) };
        vec![
            door(&row.unit),
            said(match &row.grade {
                Some(grade) => format!("{fluid}, {grade}"),
                None => fluid,
            }),
            said(format!("{} {}", words.measure(&row.poured), words.at(row.at))),
            said(words.with(
                "from-to",
                &[("from", Arg::Text(&level(&row.before))), ("to", Arg::Text(&level(&row.after)))],
            )),
            said(words.who(row.who.as_deref())),
            said(finding),
        ]
    });
    Table::new("top-ups-table", &words.t("section-top-ups"), heads.map(|key| words.t(key)))
        .named(&[4])
        .rows(rows)
        .draw()
}

/// "over the middle by 15 % = 0.09 qt", "2.1x its usual since Tue 3 Nov"
fn oil_found(words: &Words, found: &OilFound) -> String {
    match found {
        OilFound::OverMiddle { percent, volume } => {
            let percent = percent.to_string();
            let volume = volume.as_deref().map_or_else(|| words.t("not-said"), |v| words.measure(v));
            let args = [("percent", Arg::Text(&percent)), ("volume", Arg::Text(&volume))];
            words.with("oil-over-middle", &args)
        }
        OilFound::Astray { ml } => {
            let key = if *ml > 0 { "oil-astray" } else { "oil-astray-more" };
            let volume = words.measure(&format!("{} mL", ml.abs()));
            words.with(key, &[("volume", Arg::Text(&volume))])
        }
        OilFound::Changed { times_tenths, since, .. } => {
            let times = times_tenths.map_or_else(|| "?".to_owned(), |n| format!("{:.1}", n as f64 / 10.0));
            let since = words.short_day(*since);
            words.with("oil-times-since", &[("times", Arg::Text(&times)), ("since", Arg::Text(&since))])
        }
        OilFound::OverLimit => words.t("oil-over-limit"),
    }
}

/// Who drinks oil, each with a way to its chart.
fn drinking(words: &Words, rows: &[OilRow]) -> Markup {
    let heads = ["head-unit", "head-oil", "head-oil-rate"].map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let rate = row.oil.and_then(|oil| oil.ml_per_hour_hundredths).map(|rate| format!("{:.2}", rate as f64 / 100.0));
        let rate = rate.map(|rate| words.with("oil-rate", &[("rate", Arg::Text(&rate))]));
        let chart = format!("/units/{}#oil", crate::console::language::escaped(&row.unit));
        vec![
            door(&row.unit),
            html! {
                a href=(chart) {
                    @if let Some(oil) = &row.oil { (crate::console::oil_use::said(words, Some(oil))) }
                    @if row.oil.is_some() && row.rose.is_some() { "; " }
                    @if let Some(rose) = &row.rose {
                        (glass(words, &rose.from)) " > " (glass(words, &rose.to)) ", " (words.at(rose.at)) ": "
                        (words.t("oil-rose-here"))
                    }
                }
            },
            said(rate.unwrap_or_else(|| words.t("none-dash"))),
        ]
    });
    Table::new("oil-table", &words.t("section-oil"), heads).rows(rows).draw()
}

/// A level as the sheet keeps it: "30 %", "below view".
fn glass(words: &Words, level: &str) -> String {
    match level {
        "below view" => words.t("glass-below"),
        "above view" => words.t("glass-above"),
        other => other.to_owned(),
    }
}

fn to_settle(words: &Words, rows: &[SettleRow]) -> Markup {
    let heads = ["head-unit", "head-figures", "head-used-until", "head-why", "head-pick"];
    let rows = rows.iter().map(|row| {
        let figures = html! {
            @for (place, figure) in row.figures.iter().enumerate() {
                @if place > 0 { "; " }
                @if figure.struck { s { (words.meter(figure.figure)) } } @else { (words.meter(figure.figure)) }
                " " (words.at(figure.at))
                @if let Some(most) = figure.ceiling.filter(|_| figure.struck) {
                    ", " (words.with("at-most", &[("figure", Arg::Text(&words.meter(most)))]))
                }
            }
        };
        vec![
            door(&row.unit),
            figures,
            said(row.used.map_or_else(|| words.t("none-word"), |hours| words.meter(hours))),
            said(words.or_plain(&format!("question-{}", row.why), &row.why)),
            said(row.hints.iter().map(|h| words.or_plain(&format!("hint-{h}"), h)).collect::<Vec<_>>().join(" ")),
        ]
    });
    Table::new("settle-table", &words.t("section-settle"), heads.map(|key| words.t(key))).rows(rows).draw()
}

fn twice(words: &Words, rows: &[TwiceRow]) -> Markup {
    let heads = ["head-unit", "head-task", "head-first-told", "head-told-again", "head-used-until"];
    let told = |told: &crate::sheet::ToldService| {
        let hours = told.hours.map_or_else(|| words.t("no-hours"), |h| words.meter(h));
        html! { (words.at(told.at)) ", " (hours) span class="named" { ", " (words.who(told.who.as_deref())) } }
    };
    let rows = rows.iter().map(|row| {
        let hours = row.hours.map_or_else(|| words.t("no-hours"), |h| words.meter(h));
        vec![
            door(&row.unit),
            said(words.task(&row.task)),
            told(&row.first),
            told(&row.second),
            said(format!("{}, {hours}", words.short_day(row.day))),
        ]
    });
    Table::new("twice-table", &words.t("entered-twice"), heads.map(|key| words.t(key))).rows(rows).draw()
}

fn aside(words: &Words, rows: &[AsideRow]) -> Markup {
    let heads = ["head-came-from", "head-unit", "head-says", "head-why", "head-since"];
    let rows = rows.iter().map(|row| {
        vec![
            said(words.signer(&row.came_from)),
            row.unit.as_deref().map_or_else(|| said(words.t("the-fleet")), door),
            said(words.kind(&row.says)),
            said(words.or_plain(&format!("aside-{}", row.why), &row.why)),
            said(words.at(row.since)),
        ]
    });
    Table::new("aside-table", &words.t("section-aside"), heads.map(|key| words.t(key))).rows(rows).draw()
}

/// Entries that came after a day's first closing.
pub(super) fn late(words: &Words, id: &str, caption: &str, rows: &[LateRow]) -> Markup {
    let heads = ["head-unit", "head-says", "head-who", "head-when", "head-came"].map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let (came, phone) = (words.at(row.came), words.signer(&row.came_from));
        vec![
            row.unit.as_deref().map_or_else(|| said(words.t("the-fleet")), door),
            said(words.kind(&row.says)),
            said(words.who(row.who.as_deref())),
            said(words.at(row.at)),
            said(words.with("came-by", &[("when", Arg::Text(&came)), ("phone", Arg::Text(&phone))])),
        ]
    });
    Table::new(id, caption, heads).named(&[2]).rows(rows).draw()
}
