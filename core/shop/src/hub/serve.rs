//! Listening: TLS, limits on every connection, and an orderly end.

use std::net::{SocketAddr, TcpListener};
use std::num::NonZeroU32;
use std::sync::Arc;
use std::time::Duration;

use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::middleware;
use axum::routing::{get, post};
use axum::{Extension, Router};
use axum_server::Handle;
use axum_server::tls_rustls::RustlsConfig;
use rustls::sign::CertifiedKey;
use rustls_pki_types::pem::PemObject;
use rustls_pki_types::{CertificateDer, PrivateKeyDer};
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::parcel;
use sumpbook_daybook::phone::online::host_name;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::timeout::{RequestBodyTimeoutLayer, TimeoutLayer};

use super::browsers::{ByName, Shown};
use super::closing::close_days;
use super::limits::{self, Limits};
use super::{Certificate, Hub, HubError, calendar, exchange, health, openapi, photo};
use crate::console::{self, Console};

/// Of one network address, and of one phone.
const A_SECOND: NonZeroU32 = NonZeroU32::new(50).unwrap();
/// So long a connection may take to say what it wants.
const HEAD_TIME: Duration = Duration::from_secs(10);
/// So long a request's next bytes may take.
const BODY_TIME: Duration = Duration::from_secs(10);
/// So long a request may take in all.
const ANSWER_TIME: Duration = Duration::from_secs(60);
/// So long those who are being answered have when the hub stops.
const END_TIME: Duration = Duration::from_secs(10);

/// How to serve.
#[derive(Clone, Debug)]
pub struct ServeOptions {
    /// The address to listen on, such as `0.0.0.0:8443`; port 0 takes a free one.
    pub address: String,
    /// Requests a second that one network address, and one phone, may make for long; eight times as many at once.
    /// A parcel of a phone that is known counts as the phone's alone. A hub behind a proxy sees one address for all.
    pub a_second: NonZeroU32,
    /// Close ended days by itself, once a night.
    pub closes_days: bool,
}

impl Default for ServeOptions {
    fn default() -> ServeOptions {
        ServeOptions { address: "0.0.0.0:8443".to_owned(), a_second: A_SECOND, closes_days: false }
    }
}

/// A hub that listens.
pub struct Running {
    /// Where.
    pub address: SocketAddr,
    handle: Handle<SocketAddr>,
    task: tokio::task::JoinHandle<std::io::Result<()>>,
    closing: Option<tokio::task::JoinHandle<()>>,
    hub: Hub,
}

impl Running {
    /// Ends it: answers who is being answered, takes nobody new, closes the books.
    ///
    /// # Errors
    /// When the listening task failed.
    pub async fn stop(self) -> Result<(), HubError> {
        self.handle.graceful_shutdown(Some(END_TIME));
        let ended = self.task.await?;
        if let Some(closing) = self.closing {
            closing.abort();
        }
        let hub = self.hub;
        tokio::task::spawn_blocking(move || hub.stop()).await?;
        ended.map_err(|error| HubError::Thread(error.to_string()))
    }
}

/// Begins to listen.
///
/// # Errors
/// When the address is taken, or the certificate cannot be used.
pub async fn serve(hub: Hub, options: &ServeOptions) -> Result<Running, HubError> {
    let taken = |reason| HubError::Address { address: options.address.clone(), reason };
    let listener = TcpListener::bind(&options.address).map_err(taken)?;
    listener.set_nonblocking(true).map_err(taken)?;
    let address = listener.local_addr().map_err(taken)?;
    let tls = RustlsConfig::from_config(Arc::new(tls(&hub)?));
    let handle = Handle::new();
    let mut server = axum_server::from_tcp_rustls(listener, tls).map_err(taken)?.handle(handle.clone());
    server.http_builder().http1().timer(hyper_util::rt::TokioTimer::new()).header_read_timeout(HEAD_TIME);
    let app = router(hub.clone(), Limits::new(options.a_second))
        .into_make_service_with_connect_info::<SocketAddr>();
    let task = tokio::spawn(server.serve(app));
    let closing = options.closes_days.then(|| tokio::spawn(close_days(hub.clone())));
    Ok(Running { address, handle, task, closing, hub })
}

/// Everything the hub answers.
fn router(hub: Hub, limits: Limits) -> Router {
    let console = console::router(Console::of(hub.clone()));
    let parcels = Router::new()
        .route("/v1/exchange", post(exchange::exchange))
        .layer(Extension(limits.clone()))
        .layer(DefaultBodyLimit::max(parcel::limits::WIRE));
    let limited = middleware::from_fn_with_state((limits, hub.clone()), limits::limit);
    Router::new()
        .route("/healthz", get(health::healthz))
        .merge(parcels)
        .route("/v1/openapi.json", get(openapi::openapi))
        .route("/calendar/{file}", get(calendar::feed))
        .merge(photo::routes())
        .fallback_service(console)
        .layer(limited)
        // Last, so that it is asked first: whatever goes wrong below is an answer, and the others go on.
        .layer(CatchPanicLayer::new())
        .layer(TimeoutLayer::with_status_code(StatusCode::REQUEST_TIMEOUT, ANSWER_TIME))
        .layer(RequestBodyTimeoutLayer::new(BODY_TIME))
        .with_state(hub)
}

fn tls(hub: &Hub) -> Result<rustls::ServerConfig, HubError> {
    let shop = DeviceKey::from_secret(&hub.0.secret);
    let made = Certificate::of(hub.folder(), hub.root().fleet, &shop)?;
    let shown = Shown::of(hub.folder(), &made.key)?;
    let wrong = |reason: String| HubError::Certificate { path: hub.folder().to_owned(), reason };
    let chain = CertificateDer::pem_slice_iter(made.chain.as_bytes())
        .collect::<Result<Vec<_>, _>>()
        .map_err(|e| wrong(e.to_string()))?;
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let certified = |chain: Vec<CertificateDer<'static>>| -> Result<_, HubError> {
        let key = PrivateKeyDer::from_pem_slice(made.key.as_bytes()).map_err(|e| wrong(e.to_string()))?;
        let certified = CertifiedKey::from_der(chain, key, &provider).map_err(|e| wrong(e.to_string()))?;
        Ok(Arc::new(certified))
    };
    let by_name = ByName {
        fleet: host_name(hub.root().fleet),
        phones: certified(chain)?,
        browsers: certified(vec![shown.0])?,
    };
    let mut config = rustls::ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(|e| wrong(e.to_string()))?
        .with_no_client_auth()
        .with_cert_resolver(Arc::new(by_name));
    config.alpn_protocols = vec![b"http/1.1".to_vec()];
    Ok(config)
}
