//! What goes out: tables, packs, the fleet, backups, and the feed's address.

use std::path::{Path as FilePath, PathBuf};

use axum::extract::{Path, State};
use axum::response::Response;
use maud::html;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::{Stamp, TruckId};

use super::{download, gap_case};
use crate::console::Console;
use crate::console::form::Fields;
use crate::console::place::Place;
use crate::console::query::Query;
use crate::console::refused::Refused;
use crate::console::table::{Table, door, said};
use crate::console::visit::{Body, Telling, Visit};
use crate::proof::Gap;
use crate::table_out::{self, Kind, Of};
use crate::{ShopError, backup as backing_up, calendar_feed, proof, whole_fleet};

const ZIP: &str = "application/zip";

#[derive(Debug, Default, Deserialize)]
pub(super) struct Asked {
    /// A door number; none or empty: every unit.
    unit: Option<String>,
    /// Pages and heads in Spanish too.
    spanish: Option<String>,
    /// With the mark of UTF-8.
    #[serde(default)]
    mark: bool,
}

/// The units asked for; none for the whole fleet, an error when there is no such unit.
fn of_unit(ledger: &Ledger, unit: Option<&str>) -> Result<Option<Vec<TruckId>>, Refused> {
    match unit.map(str::trim).filter(|unit| !unit.is_empty()) {
        None => Ok(None),
        Some(unit) => match ledger.fleet().truck_by_door(unit) {
            Some(truck) => Ok(Some(vec![truck.truck])),
            None => Err(Refused::NoUnit(unit.to_owned())),
        },
    }
}

fn of(trucks: Option<&[TruckId]>) -> Of<'_> {
    trucks.map_or(Of::Fleet, Of::Units)
}

/// `GET /in-and-out/table/KIND`
pub(super) async fn table(
    visit: Visit,
    Path(kind): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    let kind = Kind::named(kind.strip_suffix(".csv").unwrap_or(&kind)).ok_or(Refused::NotThere)?;
    let made = visit.read(move |ledger, now| {
        let trucks = match of_unit(ledger, asked.unit.as_deref()) {
            Ok(trucks) => trucks,
            Err(refused) => return Ok(Err(refused)),
        };
        let sheet = table_out::table(ledger, kind, of(trucks.as_deref()), now)?;
        Ok(Ok((sheet.to_csv(asked.mark), ledger.fleet().yard_day(now))))
    });
    let (bytes, day) = made.await??;
    Ok(download::bytes(&download::called(&[kind.name()], day, "csv"), "text/csv; charset=utf-8", bytes))
}

/// What a pack of a unit will state first.
#[derive(Clone, Debug, Serialize)]
pub(super) struct GapsView {
    unit: Option<String>,
    gaps: Vec<Gap>,
}

/// `GET /in-and-out/gaps`
pub(super) async fn gaps(
    visit: Visit,
    State(console): State<Console>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    let folder = console.hub().folder().to_owned();
    let read = move |ledger: &Ledger, now| {
        let Ok(trucks) = of_unit(ledger, asked.unit.as_deref()) else { return Ok(None) };
        let gaps = proof::gaps(ledger, of(trucks.as_deref()), &folder, now)?;
        Ok(Some(GapsView { unit: asked.unit.filter(|unit| !unit.is_empty()), gaps }))
    };
    visit.show(Place::InOut, read, gaps_page).await
}

fn gaps_page(telling: &Telling, view: &GapsView) -> Body {
    let title = telling.t("out-pack-gaps");
    let heads = ["head-unit", "out-gaps-head", "out-gaps-count"].map(|key| telling.t(key));
    let rows = view.gaps.iter().map(|gap| {
        let named = gap.cases.iter().filter(|case| !case.is_empty()).take(5);
        let mut cases: Vec<String> = named.map(|case| gap_case::said(telling, case)).collect();
        let more = gap.count.saturating_sub(cases.len());
        if !cases.is_empty() && more > 0 {
            cases.push(telling.with("pack-more", &[("count", Arg::Text(&more.to_string()))]));
        }
        let what = telling.t(&format!("gap-{}", gap.what));
        vec![
            door(&gap.unit),
            html! { (what) @if !cases.is_empty() { ": " (cases.join("; ")) } },
            said(gap.count.to_string()),
        ]
    });
    let main = html! {
        div class="head" { h1 { (title) } }
        @if view.gaps.is_empty() { p { (telling.t("none-word")) } }
        (Table::new("gaps-table", &title, heads).rows(rows).draw())
        p { a href="/in-and-out" { (telling.t("place-in-out")) } }
    };
    Body { title, main }
}

/// Makes a file in a folder of its own within the shop's and sends it. The folder is gone when it was sent.
async fn made(
    visit: &Visit,
    console: &Console,
    parts: Vec<String>,
    make: impl FnOnce(&Ledger, &FilePath, &FilePath, Stamp) -> Result<(), ShopError> + Send + 'static,
) -> Result<Response, Refused> {
    let folder = console.hub().folder().to_owned();
    let work = visit.read(move |ledger, now| {
        let failed = |reason| ShopError::Folder { path: folder.clone(), reason };
        let beside = tempfile::Builder::new().prefix(".out-").tempdir_in(&folder).map_err(failed)?;
        let file: PathBuf = beside.path().join("made.zip");
        make(ledger, &folder, &file, now)?;
        Ok((beside, file, ledger.fleet().yard_day(now)))
    });
    let (beside, file, day) = work.await?;
    let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
    let response = download::file(&download::called(&parts, day, "zip"), ZIP, &file).await;
    drop(beside);
    response
}

/// `GET /in-and-out/pack`
pub(super) async fn pack(
    visit: Visit,
    State(console): State<Console>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    let (unit, spanish) = (asked.unit.clone(), asked.spanish.as_deref() == Some("yes"));
    let trucks = visit.read(move |ledger, _| Ok(of_unit(ledger, unit.as_deref()))).await??;
    let named = asked.unit.filter(|unit| !unit.trim().is_empty()).unwrap_or_else(|| "fleet".to_owned());
    made(&visit, &console, vec!["pack".to_owned(), named], move |ledger, folder, file, now| {
        proof::pack(ledger, folder, of(trucks.as_deref()), file, spanish, proof::Moments::now(now))
            .map(|_| ())
    })
    .await
}

/// `POST /in-and-out/fleet`
pub(super) async fn fleet(visit: Visit, State(console): State<Console>) -> Result<Response, Refused> {
    visit.may_write()?;
    made(&visit, &console, vec!["fleet".to_owned()], |ledger, folder, file, now| {
        whole_fleet::export(ledger, folder, file, now).map(|_| ())
    })
    .await
}

/// `POST /in-and-out/backup`
pub(super) async fn backup(visit: Visit, State(console): State<Console>) -> Result<Response, Refused> {
    visit.may_write()?;
    made(&visit, &console, vec!["backup".to_owned()], |ledger, folder, file, now| {
        backing_up::backup(ledger, folder, file, now).map(|_| ())
    })
    .await
}

/// `POST /in-and-out/calendar`: makes an address for the feed, or ends it.
pub(super) async fn calendar(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ends = match fields.text("act") {
        Some("make") => false,
        Some("end") => true,
        _ => return Err(Refused::Asked("form-unread")),
    };
    visit
        .write("/in-and-out", move |shop, _| match ends {
            true => calendar_feed::end_address(shop),
            false => calendar_feed::make_address(shop).map(|_| ()),
        })
        .await
}
