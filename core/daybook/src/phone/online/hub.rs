//! The hub as a phone reaches it: one message there, one back, over TLS.

use std::io::Read;
use std::sync::Arc;
use std::time::{Duration, Instant};

use sumpbook_trade::FleetId;
use sumpbook_trade::record::Digest;
use ureq::config::{AutoHeaderValue, Config};
use ureq::http::{Response, Uri};
use ureq::tls::{Certificate, RootCerts, TlsConfig, TlsProvider};
use ureq::unversioned::resolver::{DefaultResolver, ResolvedSocketAddrs, Resolver};
use ureq::unversioned::transport::{DefaultConnector, NextTimeout};
use ureq::{Agent, Body};

use super::authority::{host_name, root};
use super::why::{WHY, Why};
use crate::gate::PublicKey;
use crate::parcel::limits;

/// The header in which the hub gives the challenge for the next parcel, 32 hex digits.
pub const CHALLENGE: &str = "sumpbook-challenge";
/// The header that says where a piece of a photo begins, and how many bytes of it the hub has.
pub const OFFSET: &str = "upload-offset";
/// The header that says how many bytes a photo has.
pub const LENGTH: &str = "upload-length";
/// The header that says whether a photo is whole at the hub: `?1` or `?0` (RFC 9651, 3.3.6).
pub const COMPLETE: &str = "upload-complete";
/// Characters of a refusal's words that are kept.
const MOST_WORDS: u64 = 2_000;

/// What the hub said to one message.
#[derive(Debug)]
pub struct HubSaid {
    /// The status of HTTP.
    pub status: u16,
    /// The challenge for the next one.
    pub challenge: Option<[u8; 16]>,
    /// Why it lets nobody in, when it says so by a word this version knows.
    pub why: Option<Why>,
    /// Seconds to wait, when it says so.
    pub wait_s: Option<u64>,
    /// The body: a parcel for 200, else words.
    pub body: Vec<u8>,
}

/// What the hub said of a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PhotoSaid {
    /// The status of HTTP.
    pub status: u16,
    /// Bytes of it that the hub has from this phone.
    pub offset: Option<u64>,
    /// It is whole there.
    pub complete: bool,
}

/// Why nothing was heard.
#[derive(Debug, thiserror::Error)]
pub enum Unreached {
    /// No way there: no signal, no such address, nobody listens, too slow.
    #[error("{0}")]
    NoWay(String),
    /// Somebody answered with another key.
    #[error("another key")]
    OtherKey,
    /// The answer is longer than any answer is.
    #[error("an answer of more than {} bytes", limits::WIRE)]
    TooLong,
}

/// The way to one hub; connections are kept warm.
pub struct Hub {
    agent: Agent,
    url: String,
}

impl Hub {
    /// The hub at `address` (`host:port`) of the shop with this key.
    ///
    /// # Errors
    /// [`Unreached::NoWay`] when the address is none.
    pub fn new(address: &str, fleet: FleetId, shop: PublicKey) -> Result<Hub, Unreached> {
        let no_way = |reason: String| Unreached::NoWay(reason);
        let (host, port) =
            address.rsplit_once(':').ok_or_else(|| no_way(format!("'{address}' has no port")))?;
        let port: u16 = port.parse().map_err(|_| no_way(format!("'{port}' is no port")))?;
        let root = root(fleet, shop).map_err(|error| no_way(error.to_string()))?;
        let tls = TlsConfig::builder()
            .provider(TlsProvider::Rustls)
            .root_certs(RootCerts::new_with_certs(&[Certificate::from_der(&root).to_owned()]))
            .unversioned_rustls_crypto_provider(Arc::new(rustls::crypto::ring::default_provider()))
            .build();
        let config = Config::builder()
            .tls_config(tls)
            .https_only(true)
            .http_status_as_error(false)
            .max_redirects(0)
            .proxy(None)
            // A header that the hub does not read is bytes on a bad connection.
            .user_agent(AutoHeaderValue::None)
            .accept(AutoHeaderValue::None)
            .accept_encoding(AutoHeaderValue::None)
            .build();
        let dial = Dial { host: host.trim_matches(['[', ']']).to_owned(), port };
        let agent = Agent::with_parts(config, DefaultConnector::default(), dial);
        Ok(Hub { agent, url: format!("https://{}:{port}", host_name(fleet)) })
    }

    /// Sends one parcel and waits for what comes back, until `until`.
    ///
    /// # Errors
    /// When nothing, or nobody known, answers.
    pub fn exchange(&self, parcel: &[u8], until: Instant) -> Result<HubSaid, Unreached> {
        let sent = self
            .agent
            .post(format!("{}/v1/exchange", self.url))
            .config()
            .timeout_global(Some(left(until)))
            .build()
            .content_type("application/zstd")
            .send(parcel);
        let response = sent.map_err(unreached)?;
        let header = |name: &str| response.headers().get(name).and_then(|value| value.to_str().ok());
        let status = response.status().as_u16();
        let challenge = header(CHALLENGE).and_then(challenge_of);
        let wait_s = header("retry-after").and_then(|value| value.parse().ok());
        let why = header(WHY).and_then(Why::read);
        let most = if status == 200 { limits::WIRE as u64 } else { MOST_WORDS };
        let mut body = Vec::new();
        let mut reader = response.into_body().into_reader().take(most.saturating_add(1));
        reader.read_to_end(&mut body).map_err(|error| Unreached::NoWay(error.to_string()))?;
        if status == 200 && body.len() as u64 > most {
            return Err(Unreached::TooLong);
        }
        Ok(HubSaid { status, challenge, why, wait_s, body })
    }

    /// Asks how far a photo came.
    ///
    /// # Errors
    /// When nothing, or nobody known, answers.
    pub fn photo_at(&self, photo: Digest, token: &[u8; 32], until: Instant) -> Result<PhotoSaid, Unreached> {
        let request = self.agent.head(self.photo_url(photo)).header("authorization", bearer(token));
        said_of(request.config().timeout_global(Some(left(until))).build().call())
    }

    /// Sends one piece of a photo of `length` bytes, beginning at `offset`.
    ///
    /// # Errors
    /// When nothing, or nobody known, answers.
    pub fn send_piece(
        &self,
        photo: Digest,
        token: &[u8; 32],
        offset: u64,
        length: u64,
        piece: &[u8],
        until: Instant,
    ) -> Result<PhotoSaid, Unreached> {
        let request = self.agent.put(self.photo_url(photo)).header("authorization", bearer(token));
        let request = request.header(OFFSET, offset.to_string()).header(LENGTH, length.to_string());
        let request = request.content_type("application/octet-stream");
        said_of(request.config().timeout_global(Some(left(until))).build().send(piece))
    }

    fn photo_url(&self, photo: Digest) -> String {
        format!("{}/v1/photo/{photo}", self.url)
    }
}

fn left(until: Instant) -> Duration {
    until.saturating_duration_since(Instant::now()).max(Duration::from_millis(1))
}

fn bearer(token: &[u8; 32]) -> String {
    format!("Bearer {}", Digest(*token))
}

fn said_of(sent: Result<Response<Body>, ureq::Error>) -> Result<PhotoSaid, Unreached> {
    let response = sent.map_err(unreached)?;
    let header = |name: &str| response.headers().get(name).and_then(|value| value.to_str().ok());
    let said = PhotoSaid {
        status: response.status().as_u16(),
        offset: header(OFFSET).and_then(|value| value.parse().ok()),
        complete: header(COMPLETE) == Some("?1"),
    };
    // Read to its end, so that the connection can be used again.
    let mut reader = response.into_body().into_reader().take(MOST_WORDS);
    let _ = std::io::copy(&mut reader, &mut std::io::sink());
    Ok(said)
}

fn challenge_of(hex: &str) -> Option<[u8; 16]> {
    u128::from_str_radix(hex, 16).ok().filter(|_| hex.len() == 32).map(u128::to_be_bytes)
}

fn unreached(error: ureq::Error) -> Unreached {
    let tls = match &error {
        ureq::Error::Rustls(tls) => Some(tls),
        // TLS speaks through the stream it sits on.
        ureq::Error::Io(io) => io.get_ref().and_then(|inner| inner.downcast_ref::<rustls::Error>()),
        _ => None,
    };
    match tls {
        Some(rustls::Error::InvalidCertificate(_)) => Unreached::OtherKey,
        _ => Unreached::NoWay(error.to_string()),
    }
}

/// Dials one address under whatever name: the name is the fleet's, the address is where its hub stands today.
#[derive(Debug)]
struct Dial {
    host: String,
    port: u16,
}

impl Resolver for Dial {
    fn resolve(
        &self,
        _: &Uri,
        config: &Config,
        timeout: NextTimeout,
    ) -> Result<ResolvedSocketAddrs, ureq::Error> {
        let host = if self.host.contains(':') { format!("[{}]", self.host) } else { self.host.clone() };
        let uri: Uri =
            format!("https://{host}:{}/", self.port).parse().map_err(|_| ureq::Error::HostNotFound)?;
        DefaultResolver::default().resolve(&uri, config, timeout)
    }
}
