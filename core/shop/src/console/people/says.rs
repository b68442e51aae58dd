//! What the phones say in the shop's own words: whom to call, and what of a note on the display.

use axum::response::Response;
use maud::{Markup, html};
use sumpbook_trade::record::{OnCall, ShopSays};

use crate::console::form::Fields;
use crate::console::refused::Refused;
use crate::console::table::section;
use crate::console::visit::{Telling, Visit};

/// Rows for people to be called.
const ROWS: usize = 3;
/// The longest word or number kept: it stands on one screen of a phone.
const LONGEST: usize = 200;

/// The section with what is set, and the form that sets it.
pub(super) fn draw(telling: &Telling, says: &ShopSays) -> Markup {
    let name = telling.t("section-says");
    let notes = [
        ("fault", "note-fault", &says.of_fault),
        ("warning", "note-warning", &says.of_warning),
        ("reminder", "note-reminder", &says.of_reminder),
    ];
    let set = says.on_call.len() + notes.iter().filter(|(_, _, words)| words.is_some()).count();
    let emergency = says.emergency.clone().unwrap_or_default();
    let below = html! {
        @if telling.writes() {
            form method="post" action="/people/says" class="sheet-form" {
                (telling.token())
                label for="says-emergency" { (telling.t("says-emergency")) }
                input id="says-emergency" name="emergency" size="10" inputmode="tel" placeholder="911" value=(emergency);
                @for row in 0..ROWS {
                    @let known = says.on_call.get(row);
                    fieldset class="pair" {
                        legend { (telling.with("says-call", &[("n", (row as i64 + 1).into())])) }
                        label for=(format!("says-name-{row}")) { (telling.t("head-name")) }
                        input id=(format!("says-name-{row}")) name=(format!("name-{row}")) size="20"
                            value=(known.map(|call| call.name.as_str()).unwrap_or_default());
                        label for=(format!("says-number-{row}")) { (telling.t("says-number")) }
                        input id=(format!("says-number-{row}")) name=(format!("number-{row}")) size="14" inputmode="tel"
                            value=(known.map(|call| call.number.as_str()).unwrap_or_default());
                    }
                }
                @for (field, kind, words) in notes {
                    label for=(format!("says-{field}")) {
                        (telling.with("says-of", &[("kind", telling.t(kind).as_str().into())]))
                    }
                    input id=(format!("says-{field}")) name=(field) size="48" maxlength="200"
                        value=(words.as_deref().unwrap_or_default());
                }
                button { (telling.t("says-set")) }
            }
        } @else {
            ul {
                @for call in &says.on_call { li { (call.name) ": " (call.number) } }
                @for (_, kind, words) in notes {
                    @if let Some(words) = words { li { (telling.t(kind)) ": " (words) } }
                }
            }
        }
    };
    section("says", set, &name, &telling.t("says-beside"), &below)
}

/// `POST /people/says`: all of it at once; an empty field says nothing.
pub(super) async fn set(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let words = |name: &str| -> Result<Option<String>, Refused> {
        let given = fields.owned(name).map(|text| text.trim().to_owned()).filter(|text| !text.is_empty());
        match given {
            Some(text) if text.chars().count() > LONGEST => Err(Refused::Asked("says-too-long")),
            given => Ok(given),
        }
    };
    let mut on_call = Vec::new();
    for row in 0..ROWS {
        match (words(&format!("name-{row}"))?, words(&format!("number-{row}"))?) {
            (name, Some(number)) => on_call.push(OnCall { name: name.unwrap_or_default(), number }),
            (Some(_), None) => return Err(Refused::Asked("says-no-number")),
            (None, None) => {}
        }
    }
    let says = ShopSays {
        on_call,
        emergency: words("emergency")?,
        of_fault: words("fault")?,
        of_warning: words("warning")?,
        of_reminder: words("reminder")?,
    };
    visit.write("/people#says", move |shop, hand| shop.set_says(says, hand).map(|_| ())).await
}
