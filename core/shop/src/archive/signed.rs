//! The signature over a list of contents.

use coset::{CborSerializable, CoseSign1, CoseSign1Builder, HeaderBuilder, iana};
use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use sumpbook_daybook::gate::{DeviceKey, PublicKey};

use super::ArchiveError;

/// What is signed beside the list, so that no other message of ours can be taken for one.
const CONTEXT: &[u8] = b"sumpbook archive 1";

fn envelope(manifest: &[u8], signature: Vec<u8>) -> CoseSign1 {
    let protected = HeaderBuilder::new().algorithm(iana::Algorithm::EdDSA).build();
    CoseSign1Builder::new().protected(protected).payload(manifest.to_vec()).signature(signature).build()
}

/// The COSE_Sign1 of a list.
pub(super) fn sign(manifest: &[u8], key: &DeviceKey) -> Result<Vec<u8>, ArchiveError> {
    let unsigned = envelope(manifest, Vec::new());
    let signature = SigningKey::from_bytes(key.secret()).sign(&unsigned.tbs_data(CONTEXT));
    let signed = envelope(manifest, signature.to_bytes().to_vec()).to_vec();
    signed.map_err(|error| ArchiveError::Zip(error.to_string()))
}

/// Whether this is the one envelope of this list that this key signed. The envelope is built anew and never read:
/// one signature would hold under several encodings of it.
pub(super) fn holds(manifest: &[u8], cose: &[u8], key: &PublicKey) -> bool {
    let Some(signature) = cose.last_chunk::<64>() else { return false };
    let Ok(verifying) = VerifyingKey::from_bytes(&key.bytes()) else { return false };
    let unsigned = envelope(manifest, Vec::new());
    let built = envelope(manifest, signature.to_vec()).to_vec();
    built.is_ok_and(|built| built == cose)
        && verifying.verify_strict(&unsigned.tbs_data(CONTEXT), &Signature::from_bytes(signature)).is_ok()
}
