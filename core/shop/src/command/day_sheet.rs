//! `day-sheet`: a day as the shop reads it.

use std::path::Path;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Stamp;

use super::args::{DaySheet as Asked, ViewAsked};
use super::exchange::known_at;
use super::found::{hand, open};
use super::out::Said;
use super::{CommandError, clock};
use crate::close::{self, Closing};
use crate::sheet::{DaySheet, Sections, View, day_sheet as read_sheet};
use crate::{Shop, ShopError};

mod evening;
mod morning;
mod words;

pub(super) use words::Words;

/// Reads, or closes, a day's sheet.
///
/// # Errors
/// As any read; and when a day cannot be closed.
pub(super) fn day_sheet(folder: &Path, args: &Asked) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let zone = shop.ledger.fleet().zone;
    let today = |at: Stamp| clock::in_zone(at, zone).moment().date_naive();
    if args.close {
        let day = args.day.unwrap_or_else(|| today(args.received.unwrap_or_else(clock::now)));
        return close_day(&mut shop, day, args);
    }
    let (then, now) = known_at(&mut shop, args.as_of)?;
    let ledger = then.as_ref().unwrap_or(&shop.ledger);
    let day = args.day.unwrap_or_else(|| today(now));
    let view = match args.view {
        ViewAsked::Morning => View::Morning,
        ViewAsked::Evening => View::Evening,
    };
    let sheet = read_sheet(ledger, day, view, now)?;
    Said::new(told(ledger, &sheet), &sheet)
}

fn close_day(shop: &mut Shop, day: chrono::NaiveDate, args: &Asked) -> Result<Said, CommandError> {
    let name = args.by.as_deref().ok_or(ShopError::NoPerson)?;
    let person = shop.person(name)?;
    let hand = hand(shop, Some(person), args.received);
    let closing = close::close(shop, day, &hand)?;
    shop.ledger.settle()?;
    let row = closing.sheet();
    let sheet: DaySheet = serde_json::from_slice(&row.body)?;
    let mut text = told(&shop.ledger, &sheet);
    match &closing {
        Closing::Closed(row) => {
            text.push_str(&format!("\nClosed as version {} by {name}.\n", row.version));
            for change in &row.changes {
                text.push_str(&format!("  since version {}: {change}\n", row.version.saturating_sub(1)));
            }
        }
        Closing::Unchanged(row) => {
            text.push_str(&format!(
                "\nNothing changed since version {v}: it stands, and no version was made. Above is version {v}.\n",
                v = row.version
            ));
        }
    }
    let json = serde_json::json!({ "version": row.version, "changes": row.changes, "sheet": sheet });
    Said::new(text, &json)
}

/// A sheet as a page of text.
pub(super) fn told(ledger: &Ledger, sheet: &DaySheet) -> String {
    let words = Words::new(ledger.fleet(), sheet.day);
    let at = sheet.known_at.moment();
    let same_day = at.date_naive() == sheet.day;
    let known =
        if same_day { at.format("%H:%M").to_string() } else { at.format("%a %-d %b %H:%M").to_string() };
    let mut text = format!(
        "{}   {}   as known at {known}, yard time {}\n",
        sheet.fleet,
        sheet.day.format("%A %-d %B %Y"),
        at.format("%:z"),
    );
    for sentence in &sheet.sentences {
        text.push_str(sentence);
        text.push('\n');
    }
    text.push('\n');
    match &sheet.view {
        Sections::Evening(sections) => evening::told(&words, sections, &mut text),
        Sections::Morning(sections) => morning::told(&words, sections, &mut text),
    }
    text
}
