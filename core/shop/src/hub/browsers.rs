//! The certificate that browsers are shown.
//!
//! Phones ask for the hub by the fleet's own name and get what the shop's key signed. A browser asks by
//! another name or by an address, and does not read Ed25519 signatures: it gets a certificate of the same key
//! that signs itself. A browser does not know it and says so once; its fingerprint stands on the sign-in page
//! and where the hub was started, to be compared. A hub behind a name of its own can have a public one, from a
//! proxy before it.

use std::path::Path;
use std::sync::Arc;

use rcgen::{CertificateParams, DnType, ExtendedKeyUsagePurpose, KeyPair, date_time_ymd};
use rustls::server::{ClientHello, ResolvesServerCert};
use rustls::sign::CertifiedKey;
use rustls_pki_types::CertificateDer;
use sha2::{Digest, Sha256};

use super::HubError;
use crate::shop::private;

const FILE: &str = "browsers.pem";

/// The certificate for browsers, DER.
pub(super) struct Shown(pub(super) CertificateDer<'static>);

impl Shown {
    /// Reads it from the folder, or makes it there: it stays the same, so that a browser asks once.
    ///
    /// # Errors
    /// When it cannot be read or written.
    pub(super) fn of(folder: &Path, key: &str) -> Result<Shown, HubError> {
        let path = folder.join(FILE);
        let wrong = |reason: String| HubError::Certificate { path: path.clone(), reason };
        if !path.exists() {
            let key = KeyPair::from_pem(key).map_err(|e| wrong(e.to_string()))?;
            let made = params().and_then(|p| p.self_signed(&key)).map_err(|e| wrong(e.to_string()))?;
            private(&path, &made.pem()).map_err(|e| wrong(crate::error::plain(&e)))?;
        }
        let pem = std::fs::read(&path).map_err(|e| wrong(crate::error::plain(&e)))?;
        let der = rustls_pki_types::pem::PemObject::from_pem_slice(&pem).map_err(|e| wrong(e.to_string()))?;
        Ok(Shown(der))
    }

    /// SHA-256 of the certificate, as browsers show it: pairs of hex digits with colons.
    pub(super) fn fingerprint(&self) -> String {
        let digest = Sha256::digest(self.0.as_ref());
        digest.iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(":")
    }
}

fn params() -> Result<CertificateParams, rcgen::Error> {
    let mut params = CertificateParams::new(vec!["localhost".to_owned(), "127.0.0.1".to_owned()])?;
    params.distinguished_name.push(DnType::CommonName, "Sumpbook");
    (params.not_before, params.not_after) = (date_time_ymd(2026, 1, 1), date_time_ymd(2099, 12, 31));
    params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    Ok(params)
}

/// Chooses by the name that was asked for.
#[derive(Debug)]
pub(super) struct ByName {
    pub(super) fleet: String,
    pub(super) phones: Arc<CertifiedKey>,
    pub(super) browsers: Arc<CertifiedKey>,
}

impl ResolvesServerCert for ByName {
    fn resolve(&self, hello: ClientHello<'_>) -> Option<Arc<CertifiedKey>> {
        match hello.server_name() {
            Some(name) if name == self.fleet => Some(self.phones.clone()),
            _ => Some(self.browsers.clone()),
        }
    }
}
