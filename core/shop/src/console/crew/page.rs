//! The crew's weeks, drawn.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::{CrewView, WEEKS};
use crate::console::table::{Table, door, said, section};
use crate::console::visit::{Body, Telling};
use crate::console::words::grouped;
use crate::crew::{Repeated, ShareRow, percent};

pub(super) fn body(telling: &Telling, view: &CrewView) -> Body {
    let crew = &view.crew;
    let days = [telling.short_day(crew.from), telling.short_day(crew.to)];
    let [from, to] = &days;
    let main = html! {
        div class="head" {
            h1 { (telling.t("crew-title")) }
            p class="known" {
                (telling.with("crew-days", &[("from", Arg::Text(from)), ("to", Arg::Text(to))]))
            }
            ul class="ways" {
                @for weeks in WEEKS {
                    li {
                        a href=(format!("/crew?weeks={weeks}")) aria-current=[(weeks == view.weeks).then_some("page")] {
                            (telling.with("crew-weeks", &[("weeks", Arg::Count(weeks.into()))]))
                        }
                    }
                }
                li { a href="/people" { (telling.t("place-people")) } }
            }
        }
        p { (telling.with("crew-says", &[("enough", n(view.enough))])) }
        (walks(telling, view))
        (repeats(telling, &crew.repeats))
        (repairs(telling, view))
        (past_due(telling, view))
        // A wall is no place for it.
        div class="no-print" { (shares(telling, view)) }
    };
    Body { title: telling.t("crew-title"), main }
}

fn n(count: usize) -> Arg<'static> {
    Arg::Count(i64::try_from(count).unwrap_or(i64::MAX))
}

fn walks(telling: &Telling, view: &CrewView) -> Markup {
    let walks = &view.crew.walks;
    let share = |part: usize, of: usize| {
        let percent = percent(part, of).unwrap_or_default();
        let [part, of] = [part, of].map(|count| grouped(&count.to_string()));
        let args =
            [("part", Arg::Text(&part)), ("of", Arg::Text(&of)), ("percent", Arg::Count(percent.into()))];
        telling.with("crew-of", &args)
    };
    let few = || telling.with("crew-few", &[("enough", n(view.enough))]);
    let quick = walks.quick.map_or_else(few, |quick| share(quick, walks.on_phones));
    let median = walks.median_s.map_or_else(few, |seconds| {
        let time = format!("{}:{:02}", seconds / 60, seconds % 60);
        telling.with("crew-minutes", &[("time", Arg::Text(&time))])
    });
    let below = html! {
        @if walks.signed > 0 {
            dl class="facts" {
                dt { (telling.t("crew-people")) } dd { (walks.people) }
                dt { (telling.t("crew-on-phones")) } dd { (share(walks.on_phones, walks.signed)) }
                dt { (telling.t("crew-quick")) } dd { (quick) }
                dt { (telling.t("crew-median")) } dd { (median) }
                dt { (telling.t("crew-defects")) } dd { (share(walks.defects, walks.lines)) }
                dt { (telling.t("crew-not-checked")) } dd { (share(walks.could_not_check, walks.lines)) }
            }
        }
    };
    let beside = if walks.signed == 0 { telling.t("crew-no-walk") } else { telling.t("crew-quick-what") };
    section("walks", walks.signed, &telling.t("section-crew-walks"), &beside, &below)
}

fn repeats(telling: &Telling, rows: &[Repeated]) -> Markup {
    let name = telling.t("section-crew-repeats");
    let beside = if rows.is_empty() { telling.t("crew-no-repeat") } else { String::new() };
    let heads = ["head-unit", "head-what", "head-since", "head-last-certificate"].map(|key| telling.t(key));
    let cells = rows.iter().map(|row| {
        let verdict = if row.repaired { "cab-repaired" } else { "cab-not-needed" };
        vec![
            door(&row.unit),
            said(telling.item(&row.item, row.place.as_deref())),
            said(telling.short_day_at(row.since)),
            said(format!("{} {}: {}", telling.t(verdict), telling.short_day_at(row.certified), row.words)),
        ]
    });
    section(
        "repeats",
        rows.len(),
        &name,
        &beside,
        &Table::new("repeats-table", &name, heads).rows(cells).draw(),
    )
}

fn repairs(telling: &Telling, view: &CrewView) -> Markup {
    let repairs = &view.crew.repairs;
    let days = |hours: i64| {
        // To the nearest tenth of a day.
        let tenths = hours.saturating_mul(10).saturating_add(12).div_euclid(24);
        let days = grouped(&format!("{}.{}", tenths / 10, tenths % 10));
        telling.with("crew-days-long", &[("days", Arg::Text(&days))])
    };
    let below = html! {
        dl class="facts" {
            @if let (Some(median), Some(longest)) = (repairs.median_hours, repairs.longest_hours) {
                dt { (telling.t("crew-repair-median")) } dd { (days(median)) }
                dt { (telling.t("crew-repair-longest")) } dd { (days(longest)) }
            }
            dt { (telling.t("crew-open")) } dd { (repairs.open) }
            @if let Some(oldest) = &repairs.oldest {
                dt { (telling.t("crew-oldest")) }
                dd {
                    (door(&oldest.unit)) ", " (telling.item(&oldest.item, oldest.place.as_deref())) ", "
                    (telling.short_day_at(oldest.since))
                }
            }
        }
    };
    let beside =
        if repairs.repaired == 0 { telling.t("crew-no-repair") } else { telling.t("crew-repair-what") };
    section("repairs", repairs.repaired, &telling.t("section-crew-repairs"), &beside, &below)
}

fn past_due(telling: &Telling, view: &CrewView) -> Markup {
    let past = view.crew.past_due;
    let args = [("units", n(past.units)), ("parts", n(past.waiting_for_part))];
    let beside = if past.tasks == 0 { telling.t("crew-none-past") } else { telling.with("crew-past", &args) };
    let below = html! { @if past.tasks > 0 { p { a href="/due" { (telling.t("place-due")) } } } };
    section("past-due", past.tasks, &telling.t("section-crew-past"), &beside, &below)
}

fn shares(telling: &Telling, view: &CrewView) -> Markup {
    let crew = &view.crew;
    let name = telling.t("section-crew-shares");
    let heads = ["head-name", "head-share", "head-walks", "head-day-ends", "head-top-ups"];
    let row = |who: String, of: &ShareRow| {
        let counts = [of.walks, of.reports, of.top_ups].map(|count| said(count.to_string()));
        [said(who), said(format!("{} %", of.percent))].into_iter().chain(counts).collect::<Vec<_>>()
    };
    let rows = crew.shares.iter().map(|of| row(telling.who(of.who.as_deref()), of));
    let others = crew.others.iter().map(|of| {
        row(telling.with("crew-others", &[("people", n(of.people)), ("enough", n(view.enough))]), of)
    });
    let beside = match crew.shares.is_empty() && crew.others.is_none() {
        true => telling.t("crew-no-share"),
        false => telling.with("crew-shares-what", &[("enough", n(view.enough))]),
    };
    let table =
        Table::new("shares-table", &name, heads.map(|key| telling.t(key))).rows(rows.chain(others)).draw();
    section("shares", crew.shares.len(), &name, &beside, &table)
}
