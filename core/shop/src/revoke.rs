//! Stopping a phone: lost, stolen, or its owner has gone.
//!
//! What the shop held of it at that moment counts on; whatever else carries its signature waits until a person
//! decides about it by name.

use sumpbook_daybook::book::BookId;
use sumpbook_daybook::gate::KeyId;
use sumpbook_trade::EntryId;
use sumpbook_trade::record::{BookHead, DeviceRevoked, Digest};

use crate::{Hand, Shop, ShopError};

/// Stops a phone. The entry names the heads of every book it wrote in, as the shop holds them now.
///
/// # Errors
/// [`ShopError::UnknownPhone`], [`ShopError::StoppedAlready`], [`ShopError::NoWords`] without a reason; and as
/// any write.
pub fn revoke(shop: &mut Shop, phone: KeyId, why: &str, hand: &Hand) -> Result<EntryId, ShopError> {
    if why.trim().is_empty() {
        return Err(ShopError::NoWords);
    }
    let fleet = shop.ledger.fleet();
    let Some(device) = fleet.device(phone.0) else { return Err(ShopError::UnknownPhone(phone)) };
    if fleet.revoked.iter().any(|(id, _, _)| *id == phone.0) {
        return Err(ShopError::StoppedAlready(device.name.clone()));
    }
    let key = Digest(device.key.0);
    let truth = shop.ledger.store().truth();
    let mut books = Vec::new();
    for book in truth.books()? {
        if truth.of_signer(book, phone)?.is_empty() {
            continue;
        }
        let (truck, year) = match book {
            BookId::Fleet => (None, None),
            BookId::Truck { truck, year } => (Some(truck), Some(year)),
        };
        let heads = truth.heads(book)?.into_iter().map(|hash| Digest(hash.0)).collect();
        books.push(BookHead { truck, year, heads });
    }
    shop.write(None, DeviceRevoked { key, books, why: why.trim().to_owned() }.into(), None, hand)
}

/// The phone whose key has this fingerprint; spaces and case do not matter.
///
/// # Errors
/// [`ShopError::NoSuchFingerprint`].
pub fn phone_by_fingerprint(shop: &Shop, fingerprint: &str) -> Result<KeyId, ShopError> {
    let plain = |text: &str| text.split_whitespace().collect::<String>().to_ascii_uppercase();
    let wanted = plain(fingerprint);
    let mut known = shop.ledger.fleet().devices.iter().map(|(id, _)| KeyId(*id));
    known
        .find(|id| plain(&sumpbook_daybook::exchange::PendingDevice::fingerprint_of(*id)) == wanted)
        .ok_or_else(|| ShopError::NoSuchFingerprint(fingerprint.trim().chars().take(40).collect()))
}
