//! The signature of an entry: COSE_Sign1 (RFC 9052) that both ends build and neither receives.
//!
//! What travels is payload and signature. One signature would verify under several encodings of the
//! same envelope, so the envelope has one form here: untagged, protected header `{1: -8}` (EdDSA; other
//! readers know that number and not the newer one), empty unprotected header.

use coset::{CborSerializable, CoseSign1, CoseSign1Builder, HeaderBuilder, iana};

use super::bounded::{self, BoundedError};
use super::key::{DeviceKey, PublicKey};
use super::place::{Place, PlaceError};

/// The most bytes one entry's payload may have; counted while it is written, before it is signed.
pub const MOST_PAYLOAD: usize = bounded::ENTRY.bytes;

/// Why an entry is not signed.
#[derive(Debug, thiserror::Error)]
pub enum SignError {
    /// No book would take an entry at this place.
    #[error("place: {0}")]
    Place(#[from] PlaceError),
    /// The actor is another key's.
    #[error("the actor does not begin with the signing key's id")]
    Actor,
    /// The payload is not one bounded CBOR item.
    #[error("payload: {0}")]
    Payload(#[from] BoundedError),
    /// The envelope could not be written.
    #[error("the signed envelope could not be written: {0}")]
    Encode(String),
}

/// Why a signature is not accepted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum VerifyError {
    /// No book would take an entry at this place.
    #[error("place: {0}")]
    Place(#[from] PlaceError),
    /// The actor is another key's.
    #[error("the actor does not begin with the signing key's id")]
    Actor,
    /// The payload is not one bounded CBOR item.
    #[error("payload: {0}")]
    Payload(#[from] BoundedError),
    /// This key did not sign this payload at this place.
    #[error("the signature is not this key's over this entry at this place")]
    Signature,
}

/// Signs an entry's payload at its place.
///
/// # Errors
/// When nobody would admit the result: an impossible place, another key's actor, a payload that is not
/// one CBOR item of at most [`MOST_PAYLOAD`] bytes.
pub fn sign(place: &Place, payload: &[u8], key: &DeviceKey) -> Result<[u8; 64], SignError> {
    place.check()?;
    if place.actor.key() != key.id() {
        return Err(SignError::Actor);
    }
    bounded::check(payload, bounded::ENTRY)?;
    let aad = minicbor::to_vec(place).map_err(|e| SignError::Encode(e.to_string()))?;
    Ok(key.sign(&envelope(payload, Vec::new()).tbs_data(&aad)))
}

/// Whether `key` signed this payload at this place, strictly (RFC 8032 with no second form).
///
/// # Errors
/// The first thing found wrong; [`VerifyError::Signature`] when all but the signature is right.
pub fn verify(
    place: &Place,
    payload: &[u8],
    signature: &[u8; 64],
    key: &PublicKey,
) -> Result<(), VerifyError> {
    place.check()?;
    if place.actor.key() != key.id() {
        return Err(VerifyError::Actor);
    }
    bounded::check(payload, bounded::ENTRY)?;
    let aad = minicbor::to_vec(place).map_err(|_| VerifyError::Signature)?;
    let message = envelope(payload, Vec::new()).tbs_data(&aad);
    if key.signed(&message, signature) { Ok(()) } else { Err(VerifyError::Signature) }
}

/// The COSE_Sign1 bytes of an entry: the value its change puts into the book.
///
/// # Errors
/// [`SignError::Encode`] when the envelope cannot be written.
pub fn cose(payload: &[u8], signature: &[u8; 64]) -> Result<Vec<u8>, SignError> {
    envelope(payload, signature.to_vec()).to_vec().map_err(|e| SignError::Encode(e.to_string()))
}

fn envelope(payload: &[u8], signature: Vec<u8>) -> CoseSign1 {
    let protected = HeaderBuilder::new().algorithm(iana::Algorithm::EdDSA).build();
    CoseSign1Builder::new().protected(protected).payload(payload.to_vec()).signature(signature).build()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use sumpbook_trade::{EntryId, FleetId, TruckId};

    use super::super::key::Actor;
    use super::*;
    use crate::book::BookId;
    use crate::gate::ChangeHash;

    const PAYLOAD: &[u8] = &[0x83, 1, 2, 3];

    fn key() -> DeviceKey {
        DeviceKey::from_secret(&[7; 32])
    }

    fn place() -> Place {
        Place {
            fleet: FleetId::from_bytes([1; 16]),
            book: BookId::Truck { truck: TruckId::from_bytes([9; 16]), year: 2026 },
            actor: Actor::from_parts(key().id(), [2; 8]),
            seq: 2,
            deps: vec![ChangeHash([3; 32])],
            id: EntryId::from_bytes([5; 16]),
        }
    }

    #[test]
    fn every_part_of_the_place_is_signed() {
        let signature = sign(&place(), PAYLOAD, &key()).unwrap();
        let public = key().public();
        assert_eq!(verify(&place(), PAYLOAD, &signature, &public), Ok(()));
        let tail = Actor::from_parts(key().id(), [3; 8]);
        let last_year = BookId::Truck { truck: TruckId::from_bytes([9; 16]), year: 2025 };
        let elsewhere = [
            Place { fleet: FleetId::from_bytes([2; 16]), ..place() },
            Place { book: last_year, ..place() },
            Place { book: BookId::Fleet, ..place() },
            Place { actor: tail, ..place() },
            Place { seq: 3, ..place() },
            Place { deps: vec![ChangeHash([4; 32])], ..place() },
            Place { id: EntryId::from_bytes([6; 16]), ..place() },
        ];
        for moved in elsewhere {
            assert_eq!(
                verify(&moved, PAYLOAD, &signature, &public),
                Err(VerifyError::Signature),
                "{moved:?}"
            );
        }
        assert_eq!(verify(&place(), &[0x83, 1, 2, 4], &signature, &public), Err(VerifyError::Signature));
    }

    #[test]
    fn a_stranger_s_actor_and_an_unbounded_payload_are_not_signed() {
        let stranger = Place { actor: Actor([0; 16]), ..place() };
        assert!(matches!(sign(&stranger, PAYLOAD, &key()), Err(SignError::Actor)));
        let other = DeviceKey::from_secret(&[8; 32]).public();
        assert_eq!(verify(&place(), PAYLOAD, &[0; 64], &other), Err(VerifyError::Actor));
        assert!(matches!(sign(&place(), &[0x9f, 0xff], &key()), Err(SignError::Payload(_))));
        let long = [vec![0x59, 0x40, 0x00], vec![0; 16_384]].concat();
        assert!(matches!(sign(&place(), &long, &key()), Err(SignError::Payload(_))));
    }

    #[test]
    fn the_envelope_has_one_form() {
        let bytes = cose(&[0xf6], &[0xaa; 64]).unwrap();
        // array(4), h'a10127', {}, h'f6', h'aa..': RFC 9052 section 4.2, untagged.
        let by_hand =
            [vec![0x84, 0x43, 0xa1, 0x01, 0x27, 0xa0, 0x41, 0xf6, 0x58, 0x40], vec![0xaa; 64]].concat();
        assert_eq!(bytes, by_hand);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn no_bit_of_a_signature_may_differ(bit in 0usize..512) {
            let mut signature = sign(&place(), PAYLOAD, &key()).unwrap();
            signature[bit / 8] ^= 1 << (bit % 8);
            prop_assert_eq!(verify(&place(), PAYLOAD, &signature, &key().public()), Err(VerifyError::Signature));
        }
    }
}
