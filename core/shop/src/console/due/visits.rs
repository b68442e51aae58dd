//! Planned visits, as the page of what is due lists them, and one that is called off.

use axum::response::Response;
use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::EntryId;

use super::DueView;
use super::page::count;
use crate::cancel_visit::cancel_visit;
use crate::console::day;
use crate::console::form::Fields;
use crate::console::language::escaped;
use crate::console::refused::Refused;
use crate::console::table::{Table, door, said, section};
use crate::console::visit::{Telling, Visit};
use crate::plan::VisitRow;

/// Visits of the week, and later ones folded.
pub(super) fn draw(telling: &Telling, view: &DueView) -> Markup {
    let name = telling.t("section-visits");
    let beside = if view.due.visits.is_empty() { telling.t("none-planned") } else { String::new() };
    let below = html! {
        (visit_table(telling, "visits-table", &name, &view.due.visits))
        @if !view.due.later.is_empty() {
            details class="rows" {
                summary { (telling.with("visits-later", &[("count", Arg::Count(count(view.due.later.len())))])) }
                (visit_table(telling, "later-visits-table", &telling.t("section-visits"), &view.due.later))
            }
        }
    };
    section("visits", view.due.visits.len(), &name, &beside, &below)
}

fn visit_table(telling: &Telling, id: &str, caption: &str, rows: &[VisitRow]) -> Markup {
    let heads =
        ["head-unit", "head-day", "head-task", "head-where-who", "head-next-step"].map(|key| telling.t(key));
    let rows = rows.iter().map(|visit| {
        let ticks =
            visit.tasks.iter().map(|task| format!("&tick={}%40{}", escaped(task), escaped(&visit.unit)));
        vec![
            door(&visit.unit),
            said(when(telling, visit)),
            said(work(telling, visit)),
            said(visit.where_and_who.clone().unwrap_or_else(|| telling.t("not-said"))),
            html! {
                @if !visit.tasks.is_empty() {
                    a href=(format!("/due/service?unit={}{}", escaped(&visit.unit), ticks.collect::<String>())) {
                        (telling.t("service-open"))
                    } " "
                }
                @for defect in &visit.defects {
                    a href=(day::certify_href(&visit.unit, &defect.item, defect.place.as_deref())) {
                        (telling.t("do-certify"))
                    } " "
                }
                @if telling.writes() { (canceling(telling, visit)) }
            },
        ]
    });
    Table::new(id, caption, heads).rows(rows).draw()
}

/// Its tasks, then the items of its defects.
fn work(telling: &Telling, visit: &VisitRow) -> String {
    let tasks = visit.tasks.iter().map(|task| telling.task(task));
    let defects = visit.defects.iter().map(|defect| telling.item(&defect.item, defect.place.as_deref()));
    telling.listed(tasks.chain(defects))
}

/// "Thu 22 Oct", and that it was missed.
pub(super) fn when(telling: &Telling, visit: &VisitRow) -> String {
    let day = telling.short_day(visit.day);
    if visit.missed { telling.with("visit-missed", &[("day", Arg::Text(&day))]) } else { day }
}

/// The way to call it off. The reason may stay empty: the record then says that it was called off.
fn canceling(telling: &Telling, visit: &VisitRow) -> Markup {
    let why = format!("cancel-why-{}", visit.entry);
    html! {
        details {
            summary { (telling.t("visit-cancel")) }
            form method="post" action="/due/visit/cancel" class="acts" {
                (telling.token())
                input type="hidden" name="unit" value=(visit.unit);
                input type="hidden" name="visit" value=(visit.entry);
                label for=(why) { (telling.t("visit-cancel-why")) }
                input id=(why) name="why" size="24";
                button { (telling.t("visit-cancel")) }
            }
        }
    }
}

/// `POST /due/visit/cancel`
pub(super) async fn cancel(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let unit = fields.owned("unit").unwrap_or_default();
    let entry = fields.text("visit").and_then(|id| id.parse().ok()).ok_or(Refused::NotThere)?;
    let why = fields.owned("why").unwrap_or_else(|| visit.say("visit-cancelled"));
    visit
        .write("/due#visits", move |shop, hand| {
            let truck = shop.unit(&unit)?;
            cancel_visit(shop, truck, EntryId(entry), &why, hand)
        })
        .await
}
