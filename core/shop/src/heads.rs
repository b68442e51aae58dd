//! One digest over everything the shop holds.

use sha2::{Digest as _, Sha256};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::record::Digest;

use crate::ShopError;

/// SHA-256 over all heads of all books in order: the fleet's book first, then by truck and year. Of each book
/// its name in CBOR, then its heads ascending, 32 bytes each.
pub(crate) fn digest(ledger: &Ledger) -> Result<Digest, ShopError> {
    let truth = ledger.store().truth();
    let mut hash = Sha256::new();
    for book in truth.books()? {
        // Writing to a Vec cannot fail.
        hash.update(minicbor::to_vec(book).unwrap_or_default());
        for head in truth.heads(book)? {
            hash.update(head.0);
        }
    }
    Ok(Digest(hash.finalize().into()))
}

/// SHA-256 of a sheet's bytes.
pub(crate) fn of_bytes(bytes: &[u8]) -> Digest {
    Digest(Sha256::digest(bytes).into())
}

/// A key as people compare it: its id, in pairs.
pub(crate) fn fingerprint(key: &sumpbook_daybook::gate::PublicKey) -> String {
    key.id().0.iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(" ")
}
