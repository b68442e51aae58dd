//! The shop's key as the one root of TLS: what that key signed is the hub, and nothing else is.
//!
//! A phone knows the shop's key since it was enrolled. It makes the root certificate out of that key by
//! itself: a root is trusted for its name and key, its own signature is never looked at (RFC 5280, 6.1.1 d),
//! so the place of the signature stays empty. A hub restored on another machine needs no new enrolment.

use rcgen::{
    BasicConstraints, CertificateParams, DistinguishedName, DnType, IsCa, KeyUsagePurpose, PKCS_ED25519,
    PublicKeyData, SignatureAlgorithm, SigningKey, date_time_ymd,
};
use sumpbook_trade::FleetId;

use crate::gate::PublicKey;

/// The name a phone asks for, whatever address it dials.
pub fn host_name(fleet: FleetId) -> String {
    format!("{}.internal", fleet.0.as_simple())
}

/// What the shop's root certificate says. Valid from 1970, because phones have wrong clocks.
pub fn authority(fleet: FleetId) -> CertificateParams {
    let mut params = CertificateParams::default();
    let mut name = DistinguishedName::new();
    name.push(DnType::CommonName, format!("shop of {}", fleet.0.as_simple()));
    params.distinguished_name = name;
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign];
    (params.not_before, params.not_after) = (date_time_ymd(1970, 1, 1), date_time_ymd(2999, 12, 31));
    params
}

/// The root, DER, as a phone makes it.
///
/// # Errors
/// When it cannot be encoded.
pub(super) fn root(fleet: FleetId, shop: PublicKey) -> Result<Vec<u8>, rcgen::Error> {
    Ok(authority(fleet).self_signed(&Unsigned(shop.bytes()))?.der().to_vec())
}

struct Unsigned([u8; 32]);

impl PublicKeyData for Unsigned {
    fn der_bytes(&self) -> &[u8] {
        &self.0
    }

    fn algorithm(&self) -> &'static SignatureAlgorithm {
        &PKCS_ED25519
    }
}

impl SigningKey for Unsigned {
    fn sign(&self, _: &[u8]) -> Result<Vec<u8>, rcgen::Error> {
        Ok(vec![0; 64])
    }
}
