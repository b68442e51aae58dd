//! Who may open these pages, and with which password.

use axum::extract::State;
use axum::response::Response;

use crate::console::Console;
use crate::console::form::Fields;
use crate::console::refused::Refused;
use crate::console::session::{Role, UserError, Users};
use crate::console::visit::Visit;

/// `POST /people/sign-in`: sets someone's password and what they may do.
pub(super) async fn set(
    visit: Visit,
    State(console): State<Console>,
    fields: Fields,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let name = fields.owned("name").ok_or(Refused::Asked("people-no-name"))?;
    let role = match fields.text("role") {
        Some("shop") => Role::Shop,
        Some("reader") => Role::Reader,
        _ => return Err(Refused::Asked("signs-no-role")),
    };
    // A password may begin or end with a blank.
    let given =
        |name: &str| fields.0.iter().find(|(key, _)| key == name).map(|(_, v)| v.clone()).unwrap_or_default();
    let (password, again) = (given("password"), given("again"));
    if password != again {
        return Err(Refused::Asked("signs-not-twice"));
    }
    // Whoever writes is a person of the fleet; a sign-in of another name could write nothing.
    let asked = name.clone();
    let known = visit.read(move |ledger, _| {
        Ok(ledger.fleet().person_by_name(&asked).filter(|person| !person.gone).is_some())
    });
    if !known.await? {
        return Err(Refused::Asked("signs-no-person"));
    }
    let users = Users::of(console.hub().folder());
    let set = move || match role != Role::Shop && users.is_last_that_writes(&name)? {
        true => Err(UserError::LastShop),
        false => users.set(&name, role, &password),
    };
    kept(console.clone(), set).await?;
    Ok(visit.go("/people#signs"))
}

/// `POST /people/sign-in/remove`
pub(super) async fn remove(
    visit: Visit,
    State(console): State<Console>,
    fields: Fields,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let name = fields.owned("name").ok_or(Refused::Asked("people-no-name"))?;
    let users = Users::of(console.hub().folder());
    kept(console.clone(), move || users.remove(&name).map(|_| ())).await?;
    Ok(visit.go("/people#signs"))
}

/// One at a time, for the file is read, changed and put back; beside the answering threads, for a password
/// takes its time.
async fn kept(
    console: Console,
    work: impl FnOnce() -> Result<(), UserError> + Send + 'static,
) -> Result<(), Refused> {
    let _turn = console.doors().changing().await;
    let done = tokio::task::spawn_blocking(work).await;
    done.map_err(|error| Refused::Broken(error.to_string()))?.map_err(|error| match error {
        UserError::Password => Refused::Asked("signs-short"),
        UserError::LastShop => Refused::Asked("signs-last"),
        UserError::NoName => Refused::Asked("people-no-name"),
        other => Refused::Broken(other.to_string()),
    })
}
