//! The hub's certificate: made on first start, signed with the shop's own key.
//!
//! A phone knows the shop's key since it was enrolled and needs nothing else to know the hub: what that key
//! signed is the hub, also after it was restored on another machine. Valid from 1970, because phones have
//! wrong clocks.

use std::path::Path;

use ed25519_dalek::Signer;
use rcgen::{
    CertificateParams, DistinguishedName, DnType, ExtendedKeyUsagePurpose, Issuer, KeyPair, PKCS_ED25519,
    PublicKeyData, SignatureAlgorithm, date_time_ymd,
};
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::phone::online::{authority, host_name};
use sumpbook_trade::FleetId;

use super::HubError;
use crate::shop::private;

const KEY_FILE: &str = "hub.key.pem";

/// The hub's certificate and its key, in PEM.
pub struct Certificate {
    /// The hub's own and the shop's, in this order.
    pub chain: String,
    /// The hub's private key.
    pub key: String,
}

/// The shop's key as a signer of certificates.
struct ShopSigner {
    key: ed25519_dalek::SigningKey,
    public: [u8; 32],
}

impl PublicKeyData for ShopSigner {
    fn der_bytes(&self) -> &[u8] {
        &self.public
    }

    fn algorithm(&self) -> &'static SignatureAlgorithm {
        &PKCS_ED25519
    }
}

impl rcgen::SigningKey for ShopSigner {
    fn sign(&self, message: &[u8]) -> Result<Vec<u8>, rcgen::Error> {
        Ok(self.key.sign(message).to_bytes().to_vec())
    }
}

impl Certificate {
    /// The hub's certificate: its key is read from the folder, or made there; the certificate is signed anew
    /// each time.
    ///
    /// # Errors
    /// When the key does not read, or cannot be written.
    pub fn of(folder: &Path, fleet: FleetId, shop: &DeviceKey) -> Result<Certificate, HubError> {
        let path = folder.join(KEY_FILE);
        let wrong = |reason: String| HubError::Certificate { path: path.clone(), reason };
        if !path.exists() {
            let made = KeyPair::generate().map_err(|e| wrong(e.to_string()))?;
            private(&path, &made.serialize_pem()).map_err(|e| wrong(crate::error::plain(&e)))?;
        }
        let pem = std::fs::read_to_string(&path).map_err(|e| wrong(crate::error::plain(&e)))?;
        let key = KeyPair::from_pem(&pem).map_err(|e| wrong(e.to_string()))?;
        let signer = ShopSigner {
            key: ed25519_dalek::SigningKey::from_bytes(shop.secret()),
            public: shop.public().bytes(),
        };
        let authority = authority(fleet);
        let root = authority.self_signed(&signer).map_err(|e| wrong(e.to_string()))?;
        let issuer = Issuer::from_params(&authority, signer);
        let mut params = CertificateParams::new(vec![host_name(fleet)]).map_err(|e| wrong(e.to_string()))?;
        params.distinguished_name = named(&host_name(fleet));
        (params.not_before, params.not_after) = (date_time_ymd(1970, 1, 1), date_time_ymd(2999, 12, 31));
        params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        params.use_authority_key_identifier_extension = false;
        let own = params.signed_by(&key, &issuer).map_err(|e| wrong(e.to_string()))?;
        Ok(Certificate { chain: format!("{}{}", own.pem(), root.pem()), key: pem })
    }
}

fn named(name: &str) -> DistinguishedName {
    let mut distinguished = DistinguishedName::new();
    distinguished.push(DnType::CommonName, name);
    distinguished
}
