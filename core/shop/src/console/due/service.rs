//! A service is written down: which tasks of which unit, at how many hours, when, with which parts and oil.

use axum::extract::RawQuery;
use axum::response::Response;
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::{OilPut, OilReason, ServiceDone, Source};
use sumpbook_trade::{Figure, Stamp, Tenths, Unit};

use crate::Told;
use crate::console::asked_hours;
use crate::console::form::Fields;
use crate::console::place::Place;
use crate::console::refused::Refused;
use crate::console::table::door;
use crate::console::visit::{Body, Telling, Visit};
use crate::service::{known_in, service_told};

/// Words of the families, as the record has them.
const FAMILIES: [(OilFamily, &str); 5] = [
    (OilFamily::Mineral, "mineral"),
    (OilFamily::SyntheticHydrocarbon, "synthetic-hydrocarbon"),
    (OilFamily::Ester, "ester"),
    (OilFamily::Polyglycol, "polyglycol"),
    (OilFamily::Blend, "blend"),
];
const REASONS: [(OilReason, &str); 4] = [
    (OilReason::Mixed, "mixed"),
    (OilReason::Milky, "milky"),
    (OilReason::Burnt, "burnt"),
    (OilReason::NewFill, "new-fill"),
];
const VOLUMES: [(Unit, &str); 4] =
    [(Unit::Quart, "qt"), (Unit::Gallon, "gal"), (Unit::Litre, "L"), (Unit::Millilitre, "mL")];

/// The form and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct ServiceView {
    unit: String,
    /// Every task of its programme: keys of the texts.
    tasks: Vec<String>,
    /// Those that were ticked.
    ticked: Vec<String>,
    /// Hours as last read, and when.
    hours: Option<Tenths>,
    read_at: Option<Stamp>,
    /// The oil its set is down as having.
    oil_family: Option<String>,
    oil_grade: Option<String>,
    people: Vec<String>,
    now: Stamp,
}

/// `GET /due/service?unit=TH-08&tick=...`; the unit may be left out where a row is ticked.
pub(super) async fn page(visit: Visit, RawQuery(query): RawQuery) -> Result<Response, Refused> {
    let asked = asked(query.as_deref().unwrap_or_default());
    let ticks: Vec<(String, String)> = asked
        .all("tick")
        .filter_map(|tick| tick.split_once('@'))
        .map(|(task, door)| (task.to_owned(), door.to_owned()))
        .collect();
    let unit = asked.owned("unit").or_else(|| ticks.first().map(|(_, door)| door.clone()));
    let unit = unit.ok_or(Refused::Asked("plan-none-ticked"))?;
    if ticks.iter().any(|(_, door)| !door.eq_ignore_ascii_case(&unit)) {
        return Err(Refused::Asked("service-one-unit"));
    }
    let asked_door = unit.clone();
    visit
        .show_unit(
            Place::Due,
            &asked_door,
            move |ledger, now| {
                let fleet = ledger.fleet();
                let Some(truck) = fleet.truck_by_door(&unit) else { return Ok(None) };
                let state = ledger.unit_state(truck.truck)?;
                let here = |at: Stamp| Stamp::from(at.moment().with_timezone(&fleet.zone).fixed_offset());
                let profile = fleet.set_on(truck.truck).map(|set| &set.profile);
                let people = fleet.names_here();
                Ok(Some(ServiceView {
                    unit: truck.door.clone(),
                    tasks: known_in(fleet, truck.truck).iter().map(TaskId::to_string).collect(),
                    ticked: ticks.into_iter().map(|(task, _)| task).collect(),
                    hours: state.hours.due,
                    read_at: state.hours.due_at.map(|at| here(Stamp::new(at))),
                    oil_family: profile.and_then(|p| p.oil_family).map(word_of),
                    oil_grade: profile.and_then(|p| p.oil_grade.clone()),
                    people,
                    now: here(now),
                }))
            },
            body,
        )
        .await
}

/// `POST /due/service`
pub(super) async fn done(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let unit = fields.owned("unit").ok_or(Refused::NotThere)?;
    let tasks: Vec<TaskId> = fields.all("task").map(TaskId::from).collect();
    if tasks.is_empty() {
        return Err(Refused::Asked("service-no-task"));
    }
    let zone = visit.read(|ledger, _| Ok(ledger.fleet().zone)).await?;
    let at = fields.moment("day", "time", zone)?.ok_or(Refused::Asked("service-no-day"))?;
    if at > visit.now() {
        return Err(Refused::Asked("service-ahead"));
    }
    let hours = fields.hours("hours")?;
    asked_hours::check(&visit, &unit, &fields, (hours, at)).await?;
    let done = ServiceDone {
        tasks,
        oil: oil(&fields)?,
        parts: parts(&fields),
        oil_reason: reason(&fields),
        photo: None,
    };
    let source = if fields.text("source") == Some("invoice") { Source::Invoice } else { Source::Shop };
    let (who, note) = (fields.owned("who"), fields.owned("note"));
    visit
        .act(move |shop, hand| {
            let truck = shop.unit(&unit)?;
            let person = who.map(|name| shop.person(&name)).transpose()?.or(hand.person);
            let told = Told { person, at, source, hours, note };
            service_told(shop, truck, done, told, hand).map(|_| ())
        })
        .await?;
    Ok(visit.go("/due"))
}

fn oil(fields: &Fields) -> Result<Option<OilPut>, Refused> {
    let family =
        fields.text("oil-family").and_then(|word| FAMILIES.iter().find(|(_, w)| *w == word)).map(|(f, _)| *f);
    let unit =
        fields.text("oil-unit").and_then(|word| VOLUMES.iter().find(|(_, w)| *w == word)).map(|(u, _)| *u);
    let volume = fields.text("oil-volume").map(|text| {
        let figure =
            Figure::parse(text, unit.unwrap_or(Unit::Quart)).map_err(|_| Refused::Asked("service-volume"))?;
        if figure.digits > 0 { Ok(figure) } else { Err(Refused::Asked("service-volume")) }
    });
    let volume = volume.transpose()?;
    // Family and grade stand in the form beforehand: without a volume nothing says that oil was put in.
    let grade = fields.owned("oil-grade");
    Ok(volume.map(|volume| OilPut { volume: Some(volume), family, grade }))
}

fn reason(fields: &Fields) -> Option<OilReason> {
    let word = fields.text("oil-reason")?;
    REASONS.iter().find(|(_, known)| *known == word).map(|(reason, _)| *reason)
}

/// One part a line.
fn parts(fields: &Fields) -> Vec<String> {
    let lines = fields.text("parts").unwrap_or_default().lines();
    lines.map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
}

fn word_of(family: OilFamily) -> String {
    FAMILIES
        .iter()
        .find(|(known, _)| *known == family)
        .map_or_else(String::new, |(_, word)| (*word).to_owned())
}

/// Fields of an address, some of them several times.
fn asked(query: &str) -> Fields {
    let uri = format!("/?{query}").parse::<axum::http::Uri>().unwrap_or_default();
    let read = axum::extract::Query::<Vec<(String, String)>>::try_from_uri(&uri);
    Fields(read.map(|axum::extract::Query(fields)| fields).unwrap_or_default())
}

fn body(telling: &Telling, view: &ServiceView) -> Body {
    let title = telling.with("service-of", &[("unit", Arg::Text(&view.unit))]);
    let main = html! {
        h1 { (telling.t("service-open")) " " (door(&view.unit)) }
        p class="known" { (asked_hours::known(telling, view.hours, view.read_at)) }
        @if telling.writes() { (form(telling, view)) } @else { p class="strip" { (telling.t("refused-reader")) } }
    };
    Body { title, main }
}

fn form(telling: &Telling, view: &ServiceView) -> Markup {
    let now = view.now.moment();
    html! {
        form method="post" action="/due/service" class="sheet-form" {
            (telling.token())
            input type="hidden" name="unit" value=(view.unit);
            fieldset {
                legend { (telling.t("service-tasks")) }
                @for task in &view.tasks {
                    label class="show" {
                        input type="checkbox" name="task" value=(task) checked[view.ticked.contains(task)];
                        " " (telling.task(task))
                    }
                }
            }
            label for="s-hours" { (telling.t("service-hours")) }
            input id="s-hours" name="hours" inputmode="decimal" size="10";
            (asked_hours::tick(telling))
            label for="s-day" { (telling.t("head-day")) }
            input id="s-day" name="day" type="date" required value=(now.format("%Y-%m-%d")) max=(now.format("%Y-%m-%d"));
            label for="s-time" { (telling.t("form-time-of-day")) }
            input id="s-time" name="time" type="time" required value=(now.format("%H:%M"));
            label for="s-who" { (telling.t("service-who")) }
            select id="s-who" name="who" {
                @for name in &view.people { option value=(name) selected[*name == telling.name] { (name) } }
            }
            label for="s-source" { (telling.t("service-source")) }
            select id="s-source" name="source" {
                option value="shop" { (telling.t("service-source-shop")) }
                option value="invoice" { (telling.t("service-source-invoice")) }
            }
            label for="s-parts" { (telling.t("service-parts")) }
            textarea id="s-parts" name="parts" rows="3" cols="30" {}
            fieldset {
                legend { (telling.t("service-oil")) }
                label for="s-volume" { (telling.t("service-oil-volume")) }
                span class="pair-fields" {
                    input id="s-volume" name="oil-volume" inputmode="decimal" size="6";
                    select name="oil-unit" aria-label=(telling.t("service-oil-unit")) {
                        @for (_, word) in VOLUMES { option { (word) } }
                    }
                }
                label for="s-family" { (telling.t("service-oil-family")) }
                select id="s-family" name="oil-family" {
                    option value="" { (telling.t("not-said")) }
                    @for (_, word) in FAMILIES {
                        option value=(word) selected[view.oil_family.as_deref() == Some(word)] {
                            (telling.or_plain(&format!("family-{word}"), word))
                        }
                    }
                }
                label for="s-grade" { (telling.t("service-oil-grade")) }
                input id="s-grade" name="oil-grade" size="12" value=[view.oil_grade.as_deref()];
                label for="s-reason" { (telling.t("service-oil-reason")) }
                select id="s-reason" name="oil-reason" {
                    option value="" { (telling.t("service-oil-in-turn")) }
                    @for (_, word) in REASONS {
                        option value=(word) { (telling.t(&format!("service-oil-{word}"))) }
                    }
                }
            }
            label for="s-note" { (telling.t("form-words")) }
            input id="s-note" name="note" size="30";
            button class="main" { (telling.t("service-keep")) }
        }
    }
}
