//! That somebody at the truck recorded another set than is registered.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::view::Reading;
use crate::console::words::Words;
use crate::sheet::{SetRow, set_row};

pub(super) fn read(of: &Reading<'_>, door: &str) -> Option<SetRow> {
    set_row(of.ledger, of.yard, door, of.state)
}

/// Nothing where the two agree.
pub(super) fn draw(words: &Words, row: Option<&SetRow>) -> Markup {
    html! { @if let Some(row) = row { p class="strip" { (said(words, row)) } } }
}

/// "Set A-31 recorded as fitted here Tue 6 Oct 09:10, Dov Petrakis; registered on TH-01: the registration rules.
/// Register it where it stands, or settle the entry."
pub(in crate::console) fn said(words: &Words, row: &SetRow) -> String {
    let (when, who) = (words.short_day_at(row.at), words.who(row.who.as_deref()));
    let on = row.registered_on.clone().unwrap_or_else(|| words.t("set-on-no-truck"));
    words.with(
        &format!("set-told-{}", row.what),
        &[
            ("set", Arg::Text(&row.set)),
            ("when", Arg::Text(&when)),
            ("who", Arg::Text(&who)),
            ("on", Arg::Text(&on)),
        ],
    )
}
