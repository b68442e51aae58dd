//! What the shop itself learns of a unit's hours, oil and site, written down: an exchanged meter, hours nobody could
//! read, a sample and its answer, a dusty site.

mod facts;
mod page;

use axum::Router;
use axum::extract::Path;
use axum::response::Response;
use axum::routing::{get, post};
use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::record::Source;
use sumpbook_trade::{EntryId, Fact, FactKind, Stamp, Tenths, TruckId};

use super::Console;
use super::asked_hours;
use super::form::Fields;
use super::language::escaped;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::sheet::entry_of;
use crate::{ShopError, Told};

/// So many of the newest samples can be answered.
const SAMPLES: i64 = 20;

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/units/{door}/note", get(show)).route("/units/{door}/note/{what}", post(keep))
}

/// The forms and their JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct NoteView {
    unit: String,
    /// Hours as last read, and when.
    hours: Option<Tenths>,
    read_at: Option<Stamp>,
    /// A question about its hours is open that a meter which went round would answer.
    may_have_gone_round: bool,
    /// Samples, newest first.
    samples: Vec<SampleRow>,
    people: Vec<String>,
    now: Stamp,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct SampleRow {
    entry: EntryId,
    bottle: String,
    drawn: Stamp,
}

/// `GET /units/TH-01/note`
async fn show(visit: Visit, Path(unit): Path<String>) -> Result<Response, Refused> {
    let asked_door = unit.clone();
    visit
        .show_unit(
            Place::Units,
            &asked_door,
            move |ledger, now| {
                let Some(truck) = ledger.fleet().truck_by_door(&unit).map(|truck| truck.truck) else {
                    return Ok(None);
                };
                read(ledger, truck, now).map(Some)
            },
            page::body,
        )
        .await
}

fn read(ledger: &Ledger, truck: TruckId, now: Stamp) -> Result<NoteView, ShopError> {
    let fleet = ledger.fleet();
    let state = ledger.unit_state(truck)?;
    let here = |at: Stamp| Stamp::from(at.moment().with_timezone(&fleet.zone).fixed_offset());
    let truth = ledger.store().truth();
    let mut samples = Vec::new();
    for fact in ledger.newest_air_facts(truck, FactKind::Sample, SAMPLES)? {
        if fact.judged == Judged::Counts
            && let Some((_, entry)) = entry_of(&truth, fact.n)?
            && let Fact::Sample(sample) = &entry.fact
        {
            let (bottle, drawn) = (sample.bottle.clone(), here(entry.at));
            samples.push(SampleRow { entry: entry.id, bottle, drawn });
        }
    }
    let people = fleet.names_here();
    let hinted = |question: &sumpbook_daybook::state::QuestionNow| {
        question.hints.iter().any(|hint| hint == "went-round")
    };
    Ok(NoteView {
        unit: fleet.door(truck),
        hours: state.hours.last.as_ref().map(|last| last.figure),
        read_at: state.hours.last.as_ref().map(|last| here(Stamp::new(last.at))),
        may_have_gone_round: state.hours.questions.iter().any(hinted),
        samples,
        people,
        now: here(now),
    })
}

/// `POST /units/TH-01/note/estimate`
async fn keep(
    visit: Visit,
    Path((unit, what)): Path<(String, String)>,
    fields: Fields,
) -> Result<Response, Refused> {
    let fact = facts::of(&what, &fields)?;
    let zone = visit.read(|ledger, _| Ok(ledger.fleet().zone)).await?;
    let at = fields.moment("day", "time", zone)?.ok_or(Refused::Asked("note-no-day"))?;
    if at > visit.now() {
        return Err(Refused::Asked("service-ahead"));
    }
    let (hours, who, note) = (fields.hours("hours")?, fields.owned("who"), fields.owned("note"));
    asked_hours::check(&visit, &unit, &fields, (hours, at)).await?;
    if matches!(fact, Fact::HoursEstimate(_)) && note.is_none() {
        return Err(Refused::Asked("note-estimate-why"));
    }
    let source = if matches!(fact, Fact::HoursEstimate(_)) { Source::Estimate } else { Source::Shop };
    let then = format!("/units/{}", escaped(&unit));
    visit
        .write(then, move |shop, hand| {
            let truck = shop.unit(&unit)?;
            let person = who.map(|name| shop.person(&name)).transpose()?.or(hand.person);
            let told = Told { person, at, source, hours, note };
            shop.write_told(Some(truck), fact, told, hand).map(|_| ())
        })
        .await
}
