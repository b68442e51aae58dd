//! A connection to the hub inside TLS, byte by byte: what no well-behaved client does.

use std::io::{ErrorKind, Read, Write};
use std::net::TcpStream;
use std::sync::Arc;
use std::time::Duration;

use rustls::client::danger::{HandshakeSignatureValid, ServerCertVerified, ServerCertVerifier};
use rustls::crypto::{CryptoProvider, verify_tls12_signature, verify_tls13_signature};
use rustls::pki_types::{CertificateDer, ServerName, UnixTime};
use rustls::{ClientConfig, ClientConnection, DigitallySignedStruct, Error, SignatureScheme, StreamOwned};

use crate::Yard;

/// One connection, and what the hub said on it so far.
pub struct Raw {
    stream: StreamOwned<ClientConnection, TcpStream>,
    said: Vec<u8>,
}

impl Yard {
    /// Connects as a browser does whose owner looks at no certificate.
    pub fn raw(&self) -> Raw {
        let provider = Arc::new(rustls::crypto::ring::default_provider());
        let config = ClientConfig::builder_with_provider(provider.clone())
            .with_safe_default_protocol_versions()
            .unwrap()
            .dangerous()
            .with_custom_certificate_verifier(Arc::new(Anyone(provider)))
            .with_no_client_auth();
        let name = ServerName::try_from("hub.test").unwrap();
        let stream = TcpStream::connect(self.address()).unwrap();
        let stream = StreamOwned::new(ClientConnection::new(Arc::new(config), name).unwrap(), stream);
        Raw { stream, said: Vec::new() }
    }
}

impl Raw {
    /// Sends some bytes. Returns whether the hub still takes them and has said nothing.
    pub fn drip(&mut self, bytes: &[u8]) -> bool {
        let sent = self.stream.write_all(bytes).and_then(|()| self.stream.flush());
        sent.is_ok() && !self.hears(Duration::from_millis(10))
    }

    /// Waits for the rest of what the hub says, at most so long, and returns all of it.
    pub fn rest(mut self, most: Duration) -> String {
        let begun = std::time::Instant::now();
        while begun.elapsed() < most && !self.hears(most.saturating_sub(begun.elapsed())) {}
        let mut more = Vec::new();
        self.stream.sock.set_read_timeout(Some(Duration::from_secs(2))).unwrap();
        let _ = self.stream.read_to_end(&mut more);
        self.said.extend(more);
        String::from_utf8_lossy(&self.said).into_owned()
    }

    /// Whether the hub said something within so long, or ended the connection.
    fn hears(&mut self, within: Duration) -> bool {
        self.stream.sock.set_read_timeout(Some(within.max(Duration::from_millis(1)))).unwrap();
        let mut bytes = [0; 1_024];
        match self.stream.read(&mut bytes) {
            Ok(read) => {
                self.said.extend(&bytes[..read]);
                true
            }
            Err(error) => !matches!(error.kind(), ErrorKind::WouldBlock | ErrorKind::TimedOut),
        }
    }
}

/// Takes whoever answers for the hub.
#[derive(Debug)]
struct Anyone(Arc<CryptoProvider>);

impl ServerCertVerifier for Anyone {
    fn verify_server_cert(
        &self,
        _: &CertificateDer<'_>,
        _: &[CertificateDer<'_>],
        _: &ServerName<'_>,
        _: &[u8],
        _: UnixTime,
    ) -> Result<ServerCertVerified, Error> {
        Ok(ServerCertVerified::assertion())
    }

    fn verify_tls12_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        verify_tls12_signature(message, certificate, signed, &self.0.signature_verification_algorithms)
    }

    fn verify_tls13_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        verify_tls13_signature(message, certificate, signed, &self.0.signature_verification_algorithms)
    }

    fn supported_verify_schemes(&self) -> Vec<SignatureScheme> {
        self.0.signature_verification_algorithms.supported_schemes()
    }
}
