//! Open waits for parts, each with its own way to say that the part is in: on the page of what is due and on its
//! unit's page.

use axum::response::Response;
use maud::{Markup, html};
use sumpbook_trade::EntryId;

use super::form::Fields;
use super::language::escaped;
use super::refused::Refused;
use super::table::{Table, door, said, section};
use super::visit::{Telling, Visit};
use crate::wait::{WaitRow, part_is_in};

/// The section of every unit's waits.
pub(super) fn draw(telling: &Telling, rows: &[WaitRow]) -> Markup {
    let name = telling.t("section-waits");
    let beside = if rows.is_empty() { telling.t("none-waits") } else { String::new() };
    section("waits", rows.len(), &name, &beside, &table(telling, rows, None))
}

/// Its table; on one unit's page without the column of units.
pub(super) fn table(telling: &Telling, rows: &[WaitRow], on: Option<&str>) -> Markup {
    let heads = ["head-what", "head-part", "head-promised", "head-since", "head-next-step"];
    let unit: &[&str] = if on.is_some() { &[] } else { &["head-unit"] };
    let heads = unit.iter().chain(&heads).map(|key| telling.t(key));
    let rows = rows.iter().map(|row| {
        let part = &row.part;
        let promised = part.promised.map_or_else(|| telling.t("not-said"), |day| telling.short_day(day));
        let cells = [
            said(what(telling, row)),
            said(&part.part),
            said(promised),
            said(telling.short_day_at(part.since)),
            if telling.writes() { is_in(telling, row, on.is_some()) } else { said(telling.t("none-dash")) },
        ];
        on.is_none().then(|| door(&part.unit)).into_iter().chain(cells).collect()
    });
    Table::new("waits-table", &telling.t("section-waits"), heads).rows(rows).draw()
}

/// The defect or the task it is for.
fn what(telling: &Telling, row: &WaitRow) -> String {
    match (&row.part.defect, &row.task) {
        (Some((item, place)), _) => telling.item(item, place.as_deref()),
        (None, Some(task)) => telling.task(task),
        (None, None) => telling.t("not-said"),
    }
}

fn is_in(telling: &Telling, row: &WaitRow, on_unit: bool) -> Markup {
    let of = format!("{}, {}, {}", telling.t("wait-is-in"), row.part.unit, row.part.part);
    html! {
        form method="post" action="/due/wait/over" {
            (telling.token())
            input type="hidden" name="unit" value=(row.part.unit);
            input type="hidden" name="wait" value=(row.entry);
            @if on_unit { input type="hidden" name="on" value="unit"; }
            button aria-label=(of) { (telling.t("wait-is-in")) }
        }
    }
}

/// `POST /due/wait/over`: the part of this wait is in.
pub(super) async fn over(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let unit = fields.owned("unit").unwrap_or_default();
    let wait = fields.text("wait").and_then(|id| id.parse().ok()).ok_or(Refused::NotThere)?;
    let then = match fields.text("on") {
        Some(_) => format!("/units/{}#waits", escaped(&unit)),
        None => "/due#waits".to_owned(),
    };
    visit
        .write(then, move |shop, hand| {
            let truck = shop.unit(&unit)?;
            part_is_in(shop, truck, EntryId(wait), hand).map(|_: EntryId| ())
        })
        .await
}
