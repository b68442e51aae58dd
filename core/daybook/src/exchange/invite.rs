//! The shop's invitation: what a phone needs to record at once, with no network.

use std::collections::BTreeSet;

use sumpbook_trade::{Stamp, TruckId};

use super::pages::{MANY, file, pages};
use super::{ExchangeError, ShopCode, memory};
use crate::book::BookId;
use crate::ledger::Ledger;
use crate::parcel::{BookHeads, Invitation, Link, Parcel, limits};

const DAY_MS: i64 = 24 * 60 * 60 * 1000;
/// So long a code on a screen holds, milliseconds.
const CODE_MS: i64 = 15 * 60_000;
/// Heads in one parcel, so that with a page of entries it stays below what may travel.
const HASHES: usize = 8_192;

/// Makes an invitation file for one phone: the fleet book, then every book of these trucks, and a code
/// that can be used once within `days` days.
///
/// # Errors
/// [`ExchangeError::NotTheShop`], [`ExchangeError::UnknownTruck`], and as any read or write.
pub fn invite(
    ledger: &mut Ledger,
    trucks: &[TruckId],
    now: Stamp,
    days: u32,
) -> Result<Vec<u8>, ExchangeError> {
    if !memory::is_shop(ledger) {
        return Err(ExchangeError::NotTheShop);
    }
    if let Some(unknown) = trucks.iter().find(|truck| !ledger.fleet().trucks.contains_key(truck)) {
        return Err(ExchangeError::UnknownTruck(*unknown));
    }
    let mut code = [0; 16];
    getrandom::fill(&mut code)?;
    let expires = now.unix_ms().saturating_add(DAY_MS.saturating_mul(i64::from(days)));
    let invitation = Invitation {
        shop: ledger.root().shop,
        code,
        hub: None,
        fleet_name: short(&ledger.fleet().name),
        expires_ms: u64::try_from(expires).unwrap_or(0),
    };
    let wanted: BTreeSet<TruckId> = trucks.iter().copied().collect();
    let truth = ledger.store().truth();
    let (mut rows, mut heads) = (Vec::new(), Vec::new());
    let mut without: BTreeSet<TruckId> = wanted.clone();
    for book in truth.books()? {
        if let BookId::Truck { truck, .. } = book {
            if !wanted.contains(&truck) {
                continue;
            }
            without.remove(&truck);
        }
        rows.extend(truth.of_book(book)?);
        heads.push(BookHeads { book, heads: truth.heads(book)?, prefixes: vec![] });
    }
    heads.extend(without.into_iter().map(|truck| BookHeads {
        book: book_of_now(truck, now),
        heads: vec![],
        prefixes: vec![],
    }));
    let pages = pages(&truth, rows, MANY);
    let fresh = stamped(ledger, now)?;
    let mut parcels = spread(&fresh, pages, heads);
    if let Some(first) = parcels.first_mut() {
        first.invitation = Some(invitation);
    }
    let (bytes, _) = file(parcels, ledger.own_key())?;
    ledger.store_mut().add_invite(&code, now.unix_ms(), expires)?;
    Ok(bytes)
}

/// Makes a code for one phone that can reach the hub at `hub` (`host:port`): it can be used once, within a
/// quarter of an hour. The phone follows these trucks from the beginning.
///
/// # Errors
/// As [`invite`].
pub fn invite_by_code(
    ledger: &mut Ledger,
    trucks: &[TruckId],
    hub: &str,
    now: Stamp,
) -> Result<ShopCode, ExchangeError> {
    if !memory::is_shop(ledger) {
        return Err(ExchangeError::NotTheShop);
    }
    if let Some(unknown) = trucks.iter().find(|truck| !ledger.fleet().trucks.contains_key(truck)) {
        return Err(ExchangeError::UnknownTruck(*unknown));
    }
    let mut code = [0; 16];
    getrandom::fill(&mut code)?;
    let expires = now.unix_ms().saturating_add(CODE_MS);
    ledger.store_mut().add_invite(&code, now.unix_ms(), expires)?;
    let invitation = Invitation {
        shop: ledger.root().shop,
        code,
        hub: Some(hub.to_owned()),
        fleet_name: short(&ledger.fleet().name),
        expires_ms: u64::try_from(expires).unwrap_or(0),
    };
    Ok(ShopCode { root: ledger.root(), invitation, units: trucks.to_vec() })
}

/// A parcel of this folder that says nothing yet. The shop's time never runs back.
pub(super) fn stamped(ledger: &mut Ledger, now: Stamp) -> Result<Parcel, ExchangeError> {
    let at = match memory::is_shop(ledger) {
        true => now.unix_ms().max(ledger.store().truth().last_received()?),
        false => now.unix_ms(),
    };
    let epoch = memory::epoch(ledger)?;
    Ok(Parcel::new(ledger.root().fleet, Link::File, u64::try_from(at).unwrap_or(0), epoch))
}

/// Parcels like `fresh`, one for each page of runs, with the heads in the last of them. At least one.
pub(super) fn spread(
    fresh: &Parcel,
    pages: Vec<Vec<crate::parcel::Run>>,
    heads: Vec<BookHeads>,
) -> Vec<Parcel> {
    let mut parcels: Vec<Parcel> = pages.into_iter().map(|runs| Parcel { runs, ..fresh.clone() }).collect();
    if parcels.is_empty() {
        parcels.push(fresh.clone());
    }
    let most = usize::try_from(limits::HEADS).unwrap_or(usize::MAX);
    for mut of_book in heads {
        // Heads left out say less, never more: what they reach is sent once again.
        of_book.heads.truncate(most);
        let fits = parcels.last().is_some_and(|last| {
            let hashes: usize = last.heads.iter().map(|book| book.heads.len()).sum();
            (last.heads.len() as u64) < limits::BOOKS && hashes + of_book.heads.len() <= HASHES
        });
        if !fits {
            parcels.push(fresh.clone());
        }
        if let Some(last) = parcels.last_mut() {
            last.heads.push(of_book);
        }
    }
    parcels
}

/// The book a truck's next entry would go to.
pub(super) fn book_of_now(truck: TruckId, now: Stamp) -> BookId {
    use chrono::Datelike;
    let year = u16::try_from(now.moment().naive_utc().year()).unwrap_or(1970);
    BookId::Truck { truck, year }
}

/// A name within a parcel's limit, cut between characters.
pub(super) fn short(name: &str) -> String {
    let mut short = String::new();
    for c in name.chars() {
        if short.len() + c.len_utf8() > limits::TEXT {
            break;
        }
        short.push(c);
    }
    short
}
