//! Where each entry is: only on this phone, or at the shop; and whether it counts.

use std::collections::HashSet;

use sumpbook_trade::EntryId;

use super::ExchangeError;
use super::coverage::beyond;
use crate::judgement::Judged;
use crate::ledger::Ledger;
use crate::store::HeldEntry;

/// Where an entry is, as far as this phone can show it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whereabouts {
    /// No receipt of the shop reaches it.
    OnThisPhone,
    /// The shop's newest receipt reaches it.
    AtTheShop,
}

/// One entry's standing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EntryStanding {
    /// Its number here.
    pub n: i64,
    /// Its id.
    pub id: EntryId,
    /// Where it is.
    pub whereabouts: Whereabouts,
    /// Why it is set aside; none when it is not.
    pub aside: Option<Judged>,
    /// This device wrote it.
    pub own: bool,
}

/// How many entries stand where.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Entries no receipt reaches.
    pub on_this_phone: u64,
    /// Of those, written by this device.
    pub own_on_this_phone: u64,
    /// Entries the newest receipts reach.
    pub at_the_shop: u64,
    /// Entries set aside, wherever they are.
    pub aside: u64,
}

/// Counts. It costs what is not yet at the shop, not what is held, and turns back when a newer receipt
/// says less.
///
/// # Errors
/// As any read.
pub fn counts(ledger: &Ledger) -> Result<Counts, ExchangeError> {
    let truth = ledger.store().truth();
    let here = not_at_shop(ledger)?;
    let own = ledger.own_key().id();
    let on_this_phone = here.len() as u64;
    Ok(Counts {
        on_this_phone,
        own_on_this_phone: here.iter().filter(|held| held.row.actor.key() == own).count() as u64,
        at_the_shop: truth.count()?.saturating_sub(on_this_phone),
        aside: truth.aside()?.len() as u64,
    })
}

/// The newest entries, newest first, at most `most`.
///
/// # Errors
/// As any read.
pub fn newest(ledger: &Ledger, most: usize) -> Result<Vec<EntryStanding>, ExchangeError> {
    let truth = ledger.store().truth();
    let here: HashSet<i64> = not_at_shop(ledger)?.iter().map(|held| held.n).collect();
    let mut list = Vec::new();
    let mut n = truth.last_n()?;
    // Numbers can have gaps where a lost branch was taken out.
    while n > 0 && list.len() < most {
        if let Some(held) = truth.entry(n)? {
            list.push(of(ledger, &held, here.contains(&n))?);
        }
        n -= 1;
    }
    Ok(list)
}

/// The standing of one entry; of several placings the one that counts, or the first. `None` when it is
/// not held.
///
/// # Errors
/// As any read.
pub fn standing_of(ledger: &Ledger, id: EntryId) -> Result<Option<EntryStanding>, ExchangeError> {
    let truth = ledger.store().truth();
    let mut found: Option<EntryStanding> = None;
    for held in truth.by_id(id)? {
        let receipt = truth.receipt(held.row.book)?.map(|(heads, _)| heads).unwrap_or_default();
        let here = beyond(&truth, held.row.book, &receipt)?.iter().any(|beyond| beyond.n == held.n);
        let standing = of(ledger, &held, here)?;
        // One payload placed twice is one entry: it is at the shop when either placing is.
        if found.is_none_or(|known| known.whereabouts == Whereabouts::OnThisPhone) {
            found = Some(standing);
        }
    }
    Ok(found)
}

fn of(ledger: &Ledger, held: &HeldEntry, here: bool) -> Result<EntryStanding, ExchangeError> {
    let judged = ledger.store().truth().fact(held.n)?.map(|fact| fact.judged);
    Ok(EntryStanding {
        n: held.n,
        id: held.row.id,
        whereabouts: if here { Whereabouts::OnThisPhone } else { Whereabouts::AtTheShop },
        aside: judged.filter(|judged| judged.is_aside()),
        own: held.row.actor.key() == ledger.own_key().id(),
    })
}

/// Every entry that no receipt reaches, book by book.
pub(crate) fn not_at_shop(ledger: &Ledger) -> Result<Vec<HeldEntry>, ExchangeError> {
    let truth = ledger.store().truth();
    let mut rows = Vec::new();
    for book in truth.books()? {
        let receipt = truth.receipt(book)?.map(|(heads, _)| heads).unwrap_or_default();
        rows.extend(beyond(&truth, book, &receipt)?);
    }
    Ok(rows)
}
