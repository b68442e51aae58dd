//! Decisions of the shop, by name: they are entries in the truck's own book, so phones learn them too.

use sumpbook_daybook::book::BookId;
use sumpbook_trade::record::{Decision, LateAccepted, Verdict};
use sumpbook_trade::{EntryId, Fact, TruckId};

use crate::{Hand, Shop, ShopError};

/// Decides about entries: they count, they do not, they tell of one service, this reading stands. A decision
/// made after another replaces it. Returns the decision's entry.
///
/// # Errors
/// When nobody is named, no reason is given, an entry has not come here, or the entries are of more than one
/// unit; then nothing is recorded.
pub fn decide(
    shop: &mut Shop,
    targets: &[EntryId],
    verdict: Verdict,
    why: &str,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    let truck = check(shop, targets, why, hand)?;
    let fact = Decision { targets: targets.to_vec(), verdict, why: why.trim().to_owned() };
    shop.write(truck, fact.into(), None, hand)
}

/// Takes entries of a stopped phone as true, by name.
///
/// # Errors
/// As [`decide`].
pub fn accept_late(
    shop: &mut Shop,
    targets: &[EntryId],
    why: &str,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    let truck = check(shop, targets, why, hand)?;
    let fact: Fact = LateAccepted { targets: targets.to_vec(), why: why.trim().to_owned() }.into();
    shop.write(truck, fact, None, hand)
}

/// The book the targets stand in.
fn check(shop: &Shop, targets: &[EntryId], why: &str, hand: &Hand) -> Result<Option<TruckId>, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    if why.trim().is_empty() {
        return Err(ShopError::NoWords);
    }
    let truth = shop.ledger.store().truth();
    let mut book = None;
    for target in targets {
        let held = truth.by_id(*target)?;
        let held = held.first().ok_or(ShopError::UnknownTarget(*target))?;
        let truck = match held.row.book {
            BookId::Fleet => None,
            BookId::Truck { truck, .. } => Some(truck),
        };
        if *book.get_or_insert(truck) != truck {
            return Err(ShopError::SeveralUnits);
        }
    }
    book.ok_or(ShopError::NoTargets)
}
