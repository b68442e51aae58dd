//! Proving the folder: every row, every document, every closing.

use std::collections::BTreeSet;

use serde::Serialize;
use sumpbook_daybook::book::{BookId, EntryRow, document};
use sumpbook_daybook::gate::verify as signature_holds;
use sumpbook_daybook::ledger::{Incoming, Ledger};
use sumpbook_daybook::store::SheetRow;
use sumpbook_trade::Entry;

use crate::sheet::closings;
use crate::{Shop, ShopError, close, heads};

/// What was looked at and what was found wrong.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Report {
    /// Entries whose hash was built again and whose signature was checked.
    pub entries: usize,
    /// Books whose document was put together again.
    pub books: usize,
    /// Closed sheets that were answered again.
    pub closings: usize,
    /// Everything that does not hold. Empty: all holds.
    pub findings: Vec<FoundWrong>,
}

/// One thing that does not hold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct FoundWrong {
    /// Where: a book, an entry, a day.
    pub at: String,
    /// What.
    pub what: String,
}

/// Checks every row (hash, signature, place in the graph), every book's document against the store's heads,
/// the projections against new ones, and every closing against the sheet it signed.
///
/// # Errors
/// Only when the folder cannot be read; what does not hold is told in the report.
pub fn verify(shop: &mut Shop) -> Result<Report, ShopError> {
    shop.ledger.settle()?;
    let kept = shop.ledger.store().sheets()?;
    let mut report = books(&shop.ledger)?;
    let then = closed(&shop.ledger, Some(&kept), &mut report)?;
    projections(&shop.ledger, then, &mut report)?;
    Ok(report)
}

/// The same of a ledger as it was known at a moment: its rows, its documents, and what its closings signed.
/// It keeps no sheets, and its projections are built from its rows already.
///
/// # Errors
/// Only when it cannot be read.
pub fn verify_ledger(ledger: &Ledger) -> Result<Report, ShopError> {
    let mut report = books(ledger)?;
    closed(ledger, None, &mut report)?;
    Ok(report)
}

fn books(ledger: &Ledger) -> Result<Report, ShopError> {
    let mut report = Report::default();
    for book in ledger.store().truth().books()? {
        self::book(ledger, book, &mut report)?;
    }
    Ok(report)
}

fn book(ledger: &Ledger, book: BookId, report: &mut Report) -> Result<(), ShopError> {
    let truth = ledger.store().truth();
    let name = book_name(ledger, book);
    let rows = truth.of_book(book)?;
    report.books = report.books.saturating_add(1);
    report.entries = report.entries.saturating_add(rows.len());
    for held in &rows {
        if let Some(what) = row_wrong(ledger, &held.row) {
            report.findings.push(FoundWrong { at: format!("{name}, entry {}", held.row.id), what });
        }
    }
    match document::rebuild(rows.into_iter().map(|held| held.row)) {
        Err(error) => report.findings.push(FoundWrong { at: name, what: error.to_string() }),
        Ok(document) => {
            let mut built: Vec<[u8; 32]> = document.get_heads().iter().map(|head| head.0).collect();
            built.sort_unstable();
            let stored: Vec<[u8; 32]> = truth.heads(book)?.into_iter().map(|head| head.0).collect();
            if built != stored {
                let what = "the document built from its rows ends elsewhere than the book".to_owned();
                report.findings.push(FoundWrong { at: name, what });
            }
        }
    }
    Ok(())
}

fn book_name(ledger: &Ledger, book: BookId) -> String {
    match book {
        BookId::Fleet => "the fleet's book".to_owned(),
        BookId::Truck { truck, year } => format!("book of {}, {year}", ledger.fleet().door(truck)),
    }
}

fn row_wrong(ledger: &Ledger, row: &EntryRow) -> Option<String> {
    match row.change() {
        Err(error) => return Some(format!("its change cannot be built: {error}")),
        Ok(change) if change.hash != row.hash => {
            return Some(format!("was admitted as {} and is now {}", row.hash, change.hash));
        }
        Ok(_) => {}
    }
    let Some(key) = ledger.key(row.actor.key()) else {
        return Some(format!("the key {} that signed it is not of this fleet", row.actor.key()));
    };
    let incoming = Incoming::of_row(ledger.root().fleet, row);
    signature_holds(&incoming.place, &incoming.payload, &incoming.signature, &key)
        .err()
        .map(|e| e.to_string())
}

/// Checks every closing; gives back the ledger that followed the real one as far as the last of them.
fn closed(ledger: &Ledger, kept: Option<&[SheetRow]>, report: &mut Report) -> Result<Ledger, ShopError> {
    // One ledger follows the real one from closing to closing, so the whole is read once.
    let mut then = ledger.as_of(0)?;
    let mut known: BTreeSet<(String, u32)> = BTreeSet::new();
    for (held, closed) in closings(ledger)? {
        report.closings = report.closings.saturating_add(1);
        let at = format!("sheet of {}, version {}", closed.day, closed.version);
        let mut wrong = |what: &str| {
            report.findings.push(FoundWrong { at: at.clone(), what: what.to_owned() });
        };
        then.follow(ledger, i64::try_from(closed.upto).unwrap_or(i64::MAX), &BTreeSet::new())?;
        then.settle()?;
        if heads::digest(&then)? != closed.heads {
            wrong("the heads known then have another digest than the closing signed");
        }
        let day = closed.day.to_string();
        let Ok(entry) = Entry::from_payload(&held.row.payload) else { continue };
        let body = close::answer_again(&then, closed.day, entry.at)?;
        if heads::of_bytes(&body) != closed.answer {
            wrong("answered again from what was known then it reads otherwise than the closing signed");
        }
        let stored = kept.map(|kept| kept.iter().find(|row| row.day == day && row.version == closed.version));
        match stored {
            Some(None) => wrong("its answer is not kept"),
            Some(Some(row)) if heads::of_bytes(&row.body) != closed.answer => {
                wrong("the kept answer is not the one the closing signed");
            }
            _ => {}
        }
        known.insert((day, closed.version));
    }
    for row in kept.unwrap_or_default().iter().filter(|row| !known.contains(&(row.day.clone(), row.version)))
    {
        let at = format!("sheet of {}, version {}", row.day, row.version);
        report.findings.push(FoundWrong { at, what: "it is kept and no closing signed it".to_owned() });
    }
    Ok(then)
}

fn projections(ledger: &Ledger, mut then: Ledger, report: &mut Report) -> Result<(), ShopError> {
    then.follow(ledger, i64::MAX, &BTreeSet::new())?;
    then.settle()?;
    if then.store().projection_text()? != ledger.store().projection_text()? {
        let what = "built again from the entries they read otherwise: rebuild them".to_owned();
        report.findings.push(FoundWrong { at: "projections".to_owned(), what });
    }
    Ok(())
}
