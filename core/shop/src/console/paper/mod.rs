//! Pages of paper: blank ones to print for a day without a phone, and signed ones typed in.

mod blank;
mod choose;
mod read;
mod sheet;
mod type_in;

use axum::Router;
use axum::extract::{Multipart, State};
use axum::response::Response;
use axum::routing::{get, post};

use super::Console;
use super::language::escaped;
use super::refused::Refused;
use super::visit::Visit;
pub(super) use blank::both;
use sumpbook_trade::record::Digest;

use super::form::Fields;
use crate::paper::to_type;
use sumpbook_daybook::photo::{self, PhotoError};

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/paper", get(choose::page))
        .route("/paper/photo", post(send))
        .route("/paper/photo/leave", post(leave))
        .route("/paper/{door}", get(type_in::page).post(read::keep))
        .route("/paper/{door}/blank", get(blank::page))
}

/// `POST /paper/photo`: keeps the photo of a page, then on to typing it in.
async fn send(
    visit: Visit,
    State(console): State<Console>,
    mut form: Multipart,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let (mut unit, mut kept, mut photo) = (String::new(), None, Vec::new());
    while let Some(field) = form.next_field().await.map_err(|_| Refused::Asked("form-unread"))? {
        match field.name() {
            Some("unit") => unit = field.text().await.map_err(|_| Refused::Asked("form-unread"))?,
            Some("kept") => {
                let text = field.text().await.map_err(|_| Refused::Asked("form-unread"))?;
                kept = Some(text.trim().parse::<Digest>().map_err(|_| Refused::NotThere)?);
            }
            Some("photo") => {
                photo = field.bytes().await.map_err(|_| Refused::Asked("form-unread"))?.to_vec();
            }
            _ => {}
        }
    }
    let unit = unit.trim().to_owned();
    if unit.is_empty() {
        return Err(Refused::Asked("paper-no-unit"));
    }
    // Before the photo is kept: nobody looks for one under a number that no unit has.
    let door = unit.clone();
    let known = visit.read(move |ledger, _| Ok(ledger.fleet().truck_by_door(&door).is_some())).await?;
    if !known {
        return Err(Refused::NoUnit(unit));
    }
    let way = format!("/paper/{}", escaped(&unit));
    if photo.is_empty() {
        // A photo that was kept before and is typed in only now.
        return Ok(visit.go(kept.map_or_else(|| way.clone(), |kept| format!("{way}?photo={kept}"))));
    }
    // Without what the camera wrote beside the picture; named by what is left.
    let photos = console.hub().photos();
    let kept = tokio::task::spawn_blocking(move || photos.keep(&photo::cleaned(&photo)?)).await;
    let digest = kept.map_err(|error| Refused::Broken(error.to_string()))?.map_err(refused)?;
    Ok(visit.go(format!("{way}?photo={digest}")))
}

/// `POST /paper/photo/leave`: a page that is not to be typed in: its photo goes. What an entry names stays.
async fn leave(visit: Visit, State(console): State<Console>, fields: Fields) -> Result<Response, Refused> {
    visit.may_write()?;
    let photo: Digest = fields.text("photo").and_then(|text| text.parse().ok()).ok_or(Refused::NotThere)?;
    let folder = visit.folder();
    let waits = visit.read(move |ledger, _| Ok(to_type(ledger, &folder)?.contains(&photo))).await?;
    if !waits {
        return Err(Refused::NotThere);
    }
    let file = console.hub().photos().file(photo);
    let gone = tokio::fs::remove_file(&file).await;
    gone.map_err(|error| Refused::Broken(format!("{}: {error}", file.display())))?;
    Ok(visit.go("/paper#pages"))
}

fn refused(error: PhotoError) -> Refused {
    match error {
        PhotoError::TooLarge => Refused::Asked("photo-large"),
        PhotoError::NotAPhoto => Refused::Asked("photo-kind"),
        PhotoError::Cut => Refused::Asked("photo-damaged"),
        PhotoError::Full | PhotoError::Damaged(_) | PhotoError::Folder { .. } => {
            Refused::Broken(error.to_string())
        }
    }
}
