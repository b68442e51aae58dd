//! What a unit does from which day on: out, parked, in the shop, stored, lent, rented out, sold. The day sheet expects
//! a report of who is out, so this is said here as well as on the command line.

use axum::extract::Path;
use axum::response::Response;
use chrono::{NaiveDate, NaiveTime, Timelike};
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::state::RosterChange;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::day::DayStatus;

use super::view::Reading;
use crate::console::form::Fields;
use crate::console::language::escaped;
use crate::console::refused::Refused;
use crate::console::visit::{Telling, Visit};
use crate::console::words::Words;
use crate::sheet::key;

/// As many changes are shown, the newest: what it was down as long ago stands in its history.
const SHOWN: usize = 6;

/// What was said of a unit's days.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct DayStatusView {
    /// Door number.
    unit: String,
    /// Anything was ever said.
    pub(super) ever_said: bool,
    today: NaiveDate,
    /// The last changes, the latest day first.
    changes: Vec<Change>,
}

/// From a day on.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct Change {
    from: NaiveDate,
    /// `out`, `parked`, `in-shop`, `stored`, `lent`, `rented-out`, `sold`.
    status: String,
    /// Expected out from this time of the yard; none for its morning.
    expected: Option<NaiveTime>,
}

pub(super) fn read(of: &Reading<'_>, door: &str) -> DayStatusView {
    let roster = &of.state.roster;
    let change = |said: &RosterChange| Change {
        from: said.from,
        status: key(&said.status),
        expected: said.expected_minute.and_then(|minute| {
            NaiveTime::from_num_seconds_from_midnight_opt(u32::from(minute).saturating_mul(60), 0)
        }),
    };
    DayStatusView {
        unit: door.to_owned(),
        ever_said: !roster.is_empty(),
        today: of.yard.day,
        changes: roster.iter().rev().take(SHOWN).map(change).collect(),
    }
}

pub(super) fn draw(telling: &Telling, view: &DayStatusView) -> Markup {
    let now = view.changes.iter().find(|change| change.from <= view.today);
    html! {
        @if !view.ever_said { p { (telling.t("day-status-never")) } }
        @else {
            ul class="plain" {
                @for change in &view.changes {
                    li {
                        (said(telling, change))
                        @if now.is_some_and(|now| now.from == change.from) { " " strong { (telling.t("day-status-now")) } }
                    }
                }
            }
        }
        @if telling.writes() { (form(telling, view)) }
    }
}

/// "from Tue 20 Oct: out, expected at 07:00".
fn said(words: &Words, change: &Change) -> String {
    let day = words.short_day(change.from);
    // Only who goes out is expected at a time.
    let status = match change.expected.filter(|_| change.status == key(&DayStatus::Out)) {
        Some(at) => {
            let at = at.format("%H:%M").to_string();
            words.with("day-status-expected-at", &[("when", Arg::Text(&at))])
        }
        None => words.t(&format!("status-{}", change.status)),
    };
    words.with("day-status-from-day", &[("day", Arg::Text(&day)), ("status", Arg::Text(&status))])
}

fn form(telling: &Telling, view: &DayStatusView) -> Markup {
    html! {
        form method="post" action=(format!("/units/{}/day-status", escaped(&view.unit))) class="sheet-form" {
            (telling.token())
            label for="status" { (telling.t("day-status-what")) }
            select id="status" name="status" required {
                // Nothing is chosen beforehand.
                option value="" { (telling.t("day-status-choose")) }
                @for status in DayStatus::ALL.map(|status| key(&status)) {
                    option value=(status) { (telling.t(&format!("status-{status}"))) }
                }
            }
            label for="status-from" { (telling.t("day-status-from")) }
            input id="status-from" name="from" type="date" required value=(view.today);
            label for="status-expected" { (telling.t("day-status-expected")) }
            input id="status-expected" name="expected" type="time";
            p class="fine" { (telling.t("day-status-then")) }
            button { (telling.t("day-status-keep")) }
        }
    }
}

/// `POST /units/TH-05/day-status`
pub(super) async fn say(visit: Visit, Path(door): Path<String>, fields: Fields) -> Result<Response, Refused> {
    let word = fields.text("status").ok_or(Refused::Asked("day-status-none"))?;
    let status = DayStatus::ALL.into_iter().find(|status| key(status) == word);
    let status = status.ok_or(Refused::Asked("day-status-none"))?;
    let from = fields.day("from")?.ok_or(Refused::Asked("day-status-no-day"))?;
    let expected = fields.time("expected")?;
    if expected.is_some() && status != DayStatus::Out {
        return Err(Refused::Asked("day-status-not-out"));
    }
    // A time of day has 1,440 minutes.
    let minute = expected.and_then(|at| u16::try_from(at.num_seconds_from_midnight() / 60).ok());
    visit
        .write(format!("/units/{}#day", escaped(&door)), move |shop, hand| {
            let truck = shop.unit(&door)?;
            shop.set_day_status(truck, from, status, minute, hand).map(|_| ())
        })
        .await
}
