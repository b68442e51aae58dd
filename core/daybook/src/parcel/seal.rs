//! A parcel sealed and opened: signed by its sender, then compressed.
//!
//! COSE_Sign1 (RFC 9052), untagged, protected header `{1: -8, 4: key id}`, empty unprotected header;
//! external data the text `sumpbook parcel 1`; then one zstd frame (RFC 8878). An answer to what was asked just now
//! has the protected header `{1: -8}` and the external data `sumpbook answer 1`, fleet, request. The envelope has this one
//! form and is compared with it, not interpreted.

use std::io::Read;

use coset::{CborSerializable, CoseSign1, CoseSign1Builder, HeaderBuilder, iana};
use minicbor::Decoder;
use sha2::{Digest, Sha256};
use sumpbook_trade::{Entry, Fact, FleetId};

use super::decode::{DecodeError, decode, decode_answer};
use super::limits;
use super::message::Parcel;
use crate::book::BookId;
use crate::gate::bounded::{self, BoundedError};
use crate::gate::{DeviceKey, KeyId, PublicKey};

/// External data of a parcel's signature. An entry's begins with another byte, so neither is the other.
pub const CONTEXT: &[u8] = b"sumpbook parcel 1";

/// External data of the signature of an answer to what was asked just now: behind this text stand the fleet and the
/// request's digest.
pub const ANSWER_CONTEXT: &[u8] = b"sumpbook answer 1";

/// A day's parcel is made as small as zstd makes it; that takes a phone a few milliseconds.
const SMALL_LEVEL: i32 = 19;
/// Bytes of the largest parcel for which that is so.
const SMALL: usize = 64 * 1024;
/// Of a larger one most of the saving, at a speed no phone feels.
const LEVEL: i32 = 12;

/// A parcel ready to travel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sealed {
    /// What travels.
    pub wire: Vec<u8>,
    /// SHA-256 of the signed envelope before compression: what an answer links to.
    pub digest: [u8; 32],
}

/// Why a parcel is not sealed.
#[derive(Debug, thiserror::Error)]
pub enum SealError {
    /// Its reader would refuse it.
    #[error(transparent)]
    Unreadable(#[from] DecodeError),
    /// More bytes than may travel at once: fewer entries are needed.
    #[error("{0} bytes where a parcel may have {max}", max = limits::WIRE)]
    TooLong(usize),
    /// It could not be written.
    #[error("the parcel could not be written: {0}")]
    Write(String),
}

/// Signs a parcel with the sender's key and compresses it.
///
/// # Errors
/// When the result would be refused by [`open`].
pub fn seal(parcel: &Parcel, key: &DeviceKey) -> Result<Sealed, SealError> {
    let payload = minicbor::to_vec(parcel).map_err(|e| SealError::Write(e.to_string()))?;
    decode(&payload)?;
    close(envelope(Some(key.id()), payload), CONTEXT, key)
}

/// Signs an answer to what was asked just now ([`Link::Asked`](super::Link::Asked)): whoever asked knows the fleet,
/// the request and whose answer it waits for, so none of them travels.
///
/// # Errors
/// When the result would be refused by [`open_answer`].
pub fn seal_answer(parcel: &Parcel, request: [u8; 32], key: &DeviceKey) -> Result<Sealed, SealError> {
    let payload = minicbor::to_vec(parcel).map_err(|e| SealError::Write(e.to_string()))?;
    decode_answer(&payload, parcel.fleet)?;
    close(envelope(None, payload), &answer_context(parcel.fleet, request), key)
}

fn answer_context(fleet: FleetId, request: [u8; 32]) -> Vec<u8> {
    [ANSWER_CONTEXT, &fleet.bytes(), &request].concat()
}

fn close(unsigned: CoseSign1, context: &[u8], key: &DeviceKey) -> Result<Sealed, SealError> {
    let signature = key.sign(&unsigned.tbs_data(context));
    let signed = CoseSign1 { signature: signature.to_vec(), ..unsigned };
    let bytes = signed.to_vec().map_err(|e| SealError::Write(e.to_string()))?;
    if bytes.len() > limits::INFLATED {
        return Err(SealError::TooLong(bytes.len()));
    }
    let wire = compress(&bytes).map_err(|e| SealError::Write(e.to_string()))?;
    if wire.len() > limits::WIRE {
        return Err(SealError::TooLong(wire.len()));
    }
    Ok(Sealed { wire, digest: Sha256::digest(&bytes).into() })
}

fn compress(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let level = if bytes.len() <= SMALL { SMALL_LEVEL } else { LEVEL };
    let mut compressor = zstd::bulk::Compressor::new(level)?;
    compressor.window_log(limits::WINDOW_LOG)?;
    compressor.compress(bytes)
}

fn envelope(signer: Option<KeyId>, payload: Vec<u8>) -> CoseSign1 {
    let protected = HeaderBuilder::new().algorithm(iana::Algorithm::EdDSA);
    let protected = match signer {
        Some(signer) => protected.key_id(signer.0.to_vec()),
        None => protected,
    };
    CoseSign1Builder::new().protected(protected.build()).payload(payload).build()
}

/// How the signer's key was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The receiver knew it.
    Known,
    /// It stands in the parcel's own enrolment request: the sender asks to be let in.
    Asking,
    /// It stands in the parcel's own invitation: whoever handed it over vouches for it, nothing else does.
    Inviting,
    /// It stands in an entry of the parcel's own that lets it in. Nobody has looked at that entry yet.
    Showing,
}

/// A parcel whose signature holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// What it says.
    pub parcel: Parcel,
    /// The key that signed it.
    pub signer: PublicKey,
    /// How that key was found.
    pub standing: Standing,
    /// SHA-256 of the signed envelope: what an answer to it links to.
    pub digest: [u8; 32],
}

/// Why bytes are not opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// More bytes than may travel.
    #[error("{0} bytes where a parcel may have {max}", max = limits::WIRE)]
    TooLong(usize),
    /// Not one zstd frame, or one that asks for a window above 4 MiB.
    #[error("not one compressed frame within its limits: {0}")]
    Compression(String),
    /// More than may come out of it.
    #[error("a parcel inflates to at most {max} bytes", max = limits::INFLATED)]
    Inflated,
    /// Not the one form of the signed envelope.
    #[error("not a signed parcel")]
    Envelope,
    /// The envelope is not one bounded item.
    #[error("envelope: {0}")]
    Bounded(#[from] BoundedError),
    /// What was signed is no parcel.
    #[error(transparent)]
    Parcel(#[from] DecodeError),
    /// Nobody here knows the key, and the parcel does not carry it.
    #[error("signed by a key that is not known here: {0}")]
    UnknownSigner(KeyId),
    /// The named key did not sign this.
    #[error("the signature is not {0}'s")]
    Signature(KeyId),
}

/// Opens what came in: inflates it, finds the signer's key, verifies, reads.
///
/// `known` gives the key for an id. A key the receiver does not know may stand in the parcel's own
/// enrolment request or invitation, or in its first entry; [`Opened::standing`] says so.
///
/// # Errors
/// [`OpenError`] for whatever is not a signed parcel within its limits. Never panics, and never holds more
/// than a few times the limits.
pub fn open(wire: &[u8], known: impl Fn(KeyId) -> Option<PublicKey>) -> Result<Opened, OpenError> {
    let bytes = inflate(wire)?;
    bounded::check(&bytes, bounded::PARCEL)?;
    let (signer, payload, signature) = parts(&bytes).ok_or(OpenError::Envelope)?;
    let signer = signer.ok_or(OpenError::Envelope)?;
    let message = envelope(Some(signer), payload.to_vec()).tbs_data(CONTEXT);
    let digest = Sha256::digest(&bytes).into();
    if let Some(key) = known(signer).filter(|key| key.id() == signer) {
        if !key.signed(&message, &signature) {
            return Err(OpenError::Signature(signer));
        }
        return Ok(Opened { parcel: decode(payload)?, signer: key, standing: Standing::Known, digest });
    }
    let parcel = decode(payload)?;
    let (key, standing) = carried(&parcel, signer).ok_or(OpenError::UnknownSigner(signer))?;
    if !key.signed(&message, &signature) {
        return Err(OpenError::Signature(signer));
    }
    Ok(Opened { parcel, signer: key, standing, digest })
}

/// Opens the answer to a request of this digest, which the shop of this fleet must have signed.
///
/// # Errors
/// As [`open`]; an answer to anything else, or anybody else's, is one whose signature does not hold.
pub fn open_answer(
    wire: &[u8],
    shop: &PublicKey,
    fleet: FleetId,
    request: [u8; 32],
) -> Result<Parcel, OpenError> {
    let bytes = inflate(wire)?;
    bounded::check(&bytes, bounded::PARCEL)?;
    let (signer, payload, signature) = parts(&bytes).ok_or(OpenError::Envelope)?;
    let message = envelope(signer, payload.to_vec()).tbs_data(&answer_context(fleet, request));
    if signer.is_some() || !shop.signed(&message, &signature) {
        return Err(OpenError::Signature(shop.id()));
    }
    Ok(decode_answer(payload, fleet)?)
}

fn carried(parcel: &Parcel, signer: KeyId) -> Option<(PublicKey, Standing)> {
    let asking = parcel.enrolment.as_ref().map(|request| (request.key, Standing::Asking));
    let inviting = parcel.invitation.as_ref().map(|invitation| (invitation.shop, Standing::Inviting));
    let showing = parcel.runs.first().filter(|run| run.book == BookId::Fleet).and_then(|run| {
        let entry = Entry::from_payload(&run.entries.first()?.payload).ok()?;
        let Fact::DeviceEnrolled(device) = entry.fact else { return None };
        PublicKey::from_bytes(&device.key.0).ok().map(|key| (key, Standing::Showing))
    });
    asking.into_iter().chain(inviting).chain(showing).find(|(key, _)| key.id() == signer)
}

fn inflate(wire: &[u8]) -> Result<Vec<u8>, OpenError> {
    if wire.len() > limits::WIRE {
        return Err(OpenError::TooLong(wire.len()));
    }
    let failed = |e: std::io::Error| OpenError::Compression(e.to_string());
    let mut decoder = zstd::stream::read::Decoder::with_buffer(wire).map_err(failed)?.single_frame();
    decoder.window_log_max(limits::WINDOW_LOG).map_err(failed)?;
    let mut bytes = Vec::new();
    let cap = (limits::INFLATED as u64).saturating_add(1);
    let got = decoder.by_ref().take(cap).read_to_end(&mut bytes).map_err(failed)?;
    if got > limits::INFLATED {
        return Err(OpenError::Inflated);
    }
    if decoder.finish().is_empty() {
        Ok(bytes)
    } else {
        Err(OpenError::Compression("bytes after the frame's end".to_owned()))
    }
}

/// Signer, payload and signature of an envelope that is byte for byte the one form.
fn parts(bytes: &[u8]) -> Option<(Option<KeyId>, &[u8], [u8; 64])> {
    let mut d = Decoder::new(bytes);
    if d.array().ok()? != Some(4) {
        return None;
    }
    let signer = match d.bytes().ok()? {
        [0xa1, 0x01, 0x27] => None,
        [0xa2, 0x01, 0x27, 0x04, 0x48, id @ ..] => Some(KeyId(id.try_into().ok()?)),
        _ => return None,
    };
    if d.map().ok()? != Some(0) {
        return None;
    }
    let payload = d.bytes().ok()?;
    let signature = d.bytes().ok()?.try_into().ok()?;
    let whole = CoseSign1 { signature: Vec::from(signature), ..envelope(signer, payload.to_vec()) };
    // Lengths could be written longer than needed and still say the same.
    (whole.to_vec().ok()? == bytes).then_some((signer, payload, signature))
}
