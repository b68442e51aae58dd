//! Closing a day: what was answered is kept, signed, and can be answered again (R8).

mod by_itself;
pub(crate) mod changes;

use std::collections::BTreeSet;

use chrono::NaiveDate;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::{FactRow, SheetRow};
use sumpbook_trade::record::{SheetClosed, Source};
use sumpbook_trade::{Entry, Fact, Stamp};

use crate::sheet::{DaySheet, View, closings, day_number, day_sheet};
use crate::{Hand, Shop, ShopError, heads};

pub use by_itself::{CLOSING_HOUR, closing_hour, to_close};

/// What became of a closing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Closing {
    /// A version was made.
    Closed(SheetRow),
    /// Nothing has changed since this version: none was made.
    Unchanged(SheetRow),
}

impl Closing {
    /// The newest version of the day.
    pub fn sheet(&self) -> &SheetRow {
        match self {
            Closing::Closed(row) | Closing::Unchanged(row) => row,
        }
    }
}

/// Closes a day: version 1 at first, a later version only when something that was recorded has changed it.
/// History brought in changes no closed sheet.
///
/// A closing is an entry: the number of the last entry known, a digest over all heads, SHA-256 of the answer.
///
/// # Errors
/// For a day that has not begun in the yard; and as any write.
pub fn close(shop: &mut Shop, day: NaiveDate, hand: &Hand) -> Result<Closing, ShopError> {
    if day > shop.ledger.fleet().yard_day(hand.at) {
        return Err(ShopError::DayAhead(day));
    }
    shop.ledger.settle()?;
    keep_lost(shop)?;
    let day_text = day.to_string();
    let before = shop.ledger.store().newest_sheet(&day_text)?;
    let sheet = day_sheet(&shop.ledger, day, View::Evening, hand.at)?;
    let changes = match &before {
        None => Vec::new(),
        Some(before) => {
            let changes = changes_since(&shop.ledger, before, day, hand.at, &sheet)?;
            if changes.is_empty() {
                return Ok(Closing::Unchanged(before.clone()));
            }
            changes
        }
    };
    let n = shop.ledger.store().truth().last_n()?;
    let body = serde_json::to_vec(&sheet)?;
    let heads = heads::digest(&shop.ledger)?;
    let version = before.map_or(1, |before| before.version.saturating_add(1));
    let closed = SheetClosed { day, version, upto: n.unsigned_abs(), heads, answer: heads::of_bytes(&body) };
    shop.write(None, closed.into(), None, hand)?;
    let row = SheetRow { day: day_text, version, at_ms: hand.at.unix_ms(), n, heads: heads.0, body, changes };
    shop.ledger.store_mut().keep_sheet(&row)?;
    Ok(Closing::Closed(row))
}

/// The ledger as it was known at a moment.
///
/// # Errors
/// As any read.
pub fn as_of(shop: &Shop, at: Stamp) -> Result<Ledger, ShopError> {
    let upto = shop.ledger.store().truth().upto(at.unix_ms())?;
    Ok(shop.ledger.as_of(upto)?)
}

/// The answer of a closing worked out again from what was known then.
///
/// # Errors
/// As any read.
pub fn answer_again(ledger: &Ledger, day: NaiveDate, at: Stamp) -> Result<Vec<u8>, ShopError> {
    Ok(serde_json::to_vec(&day_sheet(ledger, day, View::Evening, at)?)?)
}

/// What changed since a version, one line each; empty when nothing that makes a new version did.
fn changes_since(
    ledger: &Ledger,
    before: &SheetRow,
    day: NaiveDate,
    at: Stamp,
    sheet: &DaySheet,
) -> Result<Vec<String>, ShopError> {
    let truth = ledger.store().truth();
    let (mut brought, mut recorded) = (BTreeSet::new(), false);
    let mut after = before.n;
    loop {
        let rows = truth.between(after, i64::MAX, 1_000)?;
        let Some(end) = rows.last().map(|held| held.n) else { break };
        for held in rows {
            match Entry::from_payload(&held.row.payload) {
                Ok(entry) if entry.source == Source::BroughtIn => {
                    brought.insert(held.n);
                }
                Ok(Entry { fact: Fact::SheetClosed(_), .. }) => {}
                _ => recorded = true,
            }
        }
        after = end;
    }
    // What was dated ahead when the day was closed may be of the day by now.
    if !recorded {
        let number = day_number(day);
        let reached =
            |fact: &FactRow| fact.n <= before.n && before.at_ms < fact.at_ms && fact.at_ms <= at.unix_ms();
        if !truth.facts_of_days(number, number)?.iter().any(reached) {
            return Ok(Vec::new());
        }
    }
    let old: DaySheet = serde_json::from_slice(&before.body)?;
    if brought.is_empty() {
        return changes::between(&old, sheet);
    }
    // What would have changed without the history that was brought in meanwhile decides.
    let without = ledger.as_of_without(i64::MAX, &brought)?;
    let own = changes::between(&old, &day_sheet(&without, day, View::Evening, at)?)?;
    if own.is_empty() { Ok(own) } else { changes::between(&old, sheet) }
}

/// A closing whose answer was not kept, because the program ended between the two, is worked out again.
fn keep_lost(shop: &mut Shop) -> Result<(), ShopError> {
    let mut lost = Vec::new();
    let kept = shop.ledger.store().sheets()?;
    for (held, closed) in closings(&shop.ledger)? {
        let day = closed.day.to_string();
        if kept.iter().any(|row| row.day == day && row.version == closed.version) {
            continue;
        }
        let Ok(entry) = Entry::from_payload(&held.row.payload) else { continue };
        let n = i64::try_from(closed.upto).unwrap_or(i64::MAX);
        let body = answer_again(&shop.ledger.as_of(n)?, closed.day, entry.at)?;
        let at_ms = entry.at.unix_ms();
        let changes = Vec::new();
        lost.push(SheetRow { day, version: closed.version, at_ms, n, heads: closed.heads.0, body, changes });
    }
    for row in lost {
        shop.ledger.store_mut().keep_sheet(&row)?;
    }
    Ok(())
}
