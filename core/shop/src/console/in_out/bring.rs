//! A table that is looked at, and then brought in.

use axum::extract::{Multipart, Path, State};
use axum::response::{IntoResponse, Redirect, Response};

use super::desk::Looked;
use super::{download, dry_page};
use crate::ShopError;
use crate::console::Console;
use crate::console::form::Fields;
use crate::console::place::Place;
use crate::console::refused::Refused;
use crate::console::visit::Visit;
use crate::table_in::{self, Asked, DateStyle, DecimalStyle, DryRun, MOST_BYTES, TableError, What};

/// `POST /in-and-out/look`: a file and what is said about it. Nothing is written.
pub(super) async fn look(
    visit: Visit,
    State(console): State<Console>,
    mut form: Multipart,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let unread = |_| Refused::Asked("form-unread");
    let (mut file, mut what, mut dates, mut decimals) = (None, None, None, None);
    while let Some(field) = form.next_field().await.map_err(unread)? {
        match field.name().unwrap_or_default() {
            // A browser sends a file without a name when none was chosen.
            "file" if field.file_name().is_none_or(str::is_empty) => {}
            "file" => file = Some(field.bytes().await.map_err(unread)?),
            "what" => what = named(&field.text().await.map_err(unread)?),
            "dates" => dates = named::<DateStyle>(&field.text().await.map_err(unread)?),
            "decimals" => decimals = named::<DecimalStyle>(&field.text().await.map_err(unread)?),
            _ => {}
        }
    }
    let file = file.ok_or(Refused::Asked("table-no-file"))?;
    if file.len() > MOST_BYTES {
        return Err(Refused::Asked("table-too-large"));
    }
    let what: What = what.ok_or(Refused::Asked("form-unread"))?;
    let asked = Asked { what, dates, decimals };
    let shared: std::sync::Arc<[u8]> = file.to_vec().into();
    let told = dry_run(&visit, shared.clone(), asked).await?;
    let to = format!("/in-and-out/dry-run/{}", told.seen);
    console.looked().put(Looked { seen: told.seen, file: shared, asked });
    Ok(Redirect::to(&to).into_response())
}

/// `POST /in-and-out/dry-run/DIGEST/say`: how the file writes its days and decimals; then it is looked at again.
pub(super) async fn say(
    visit: Visit,
    State(console): State<Console>,
    Path(seen): Path<String>,
    fields: Fields,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let looked = console.looked().find(&seen).ok_or(Refused::Asked("dry-gone"))?;
    let asked = Asked {
        what: looked.asked.what,
        dates: fields.text("dates").and_then(named).or(looked.asked.dates),
        decimals: fields.text("decimals").and_then(named).or(looked.asked.decimals),
    };
    let told = dry_run(&visit, looked.file.clone(), asked).await?;
    let to = format!("/in-and-out/dry-run/{}", told.seen);
    console.looked().put(Looked { seen: told.seen, file: looked.file, asked });
    Ok(visit.go(to))
}

fn named<T: serde::de::DeserializeOwned>(text: &str) -> Option<T> {
    serde_json::from_value(serde_json::Value::String(text.to_owned())).ok()
}

async fn dry_run(visit: &Visit, file: std::sync::Arc<[u8]>, asked: Asked) -> Result<DryRun, Refused> {
    let read = visit.read(move |ledger, now| match table_in::dry_run(ledger, &file, &asked, now) {
        Err(ShopError::Table(error)) => Ok(Err(error)),
        other => other.map(Ok),
    });
    read.await?.map_err(|error| refused(visit, &error))
}

/// `GET /in-and-out/dry-run/DIGEST`: what would come in, as it is known now.
pub(super) async fn page(
    visit: Visit,
    State(console): State<Console>,
    Path(seen): Path<String>,
) -> Result<Response, Refused> {
    let looked = console.looked().find(&seen).ok_or(Refused::Asked("dry-gone"))?;
    let read = move |ledger: &sumpbook_daybook::ledger::Ledger, now| {
        table_in::dry_run(ledger, &looked.file, &looked.asked, now).map(Some)
    };
    visit.show(Place::InOut, read, dry_page::body).await
}

/// `GET /in-and-out/dry-run/DIGEST/refused`: the refused rows, to be mended.
pub(super) async fn refused_rows(
    visit: Visit,
    State(console): State<Console>,
    Path(seen): Path<String>,
) -> Result<Response, Refused> {
    let looked = console.looked().find(&seen).ok_or(Refused::Asked("dry-gone"))?;
    let told = dry_run(&visit, looked.file.clone(), looked.asked).await?;
    let say = |why: table_in::Why| visit.say(&format!("why-{}", why.key()));
    let rows = table_in::refused_csv(&looked.file, &told, say).map_err(|error| refused(&visit, &error))?;
    let day = visit.read(|ledger, now| Ok(ledger.fleet().yard_day(now))).await?;
    Ok(download::bytes(&download::called(&["refused"], day, "csv"), "text/csv; charset=utf-8", rows))
}

/// `POST /in-and-out/dry-run/DIGEST/bring-in`: what its dry run saw, in the visitor's name.
pub(super) async fn bring_in(
    visit: Visit,
    State(console): State<Console>,
    Path(seen): Path<String>,
) -> Result<Response, Refused> {
    let looked = console.looked().find(&seen).ok_or(Refused::Asked("dry-gone"))?;
    let Looked { file, asked, .. } = looked;
    let digest = seen.clone();
    let brought = visit.act(move |shop, hand| match table_in::bring_in(shop, &file, &asked, &digest, hand) {
        Err(ShopError::Table(error)) => Ok(Err(error)),
        other => other.map(Ok),
    });
    let told = brought.await?.map_err(|error| refused(&visit, &error))?;
    console.looked().drop(&seen);
    Ok(visit.go(format!("/in-and-out?brought-in={}", told.good)))
}

/// Why a table cannot be read, in the visitor's language.
fn refused(visit: &Visit, error: &TableError) -> Refused {
    let key = match error {
        TableError::TooLarge => "table-too-large",
        TableError::NotText => "table-not-text",
        TableError::Empty => "table-empty",
        TableError::NotATable(_) => "table-not-a-table",
        TableError::NotSeen => "table-not-seen",
        TableError::Column { missing, known, .. } => {
            return Refused::Said(
                visit.say_with("table-column", &[("missing", *missing), ("known", known.as_str())]),
            );
        }
        TableError::Ask(ask) => return Refused::Said(super::asked(visit.language(), ask)),
    };
    Refused::Asked(key)
}
