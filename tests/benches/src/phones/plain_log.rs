//! What the hub is held against: signatures checked, rows appended, one commit for all that wait, an answer
//! signed. No books, no projections, nothing given back.

use std::net::SocketAddr;
use std::path::Path;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};

use axum::Router;
use axum::body::Bytes;
use axum::extract::State;
use axum::routing::post;
use axum_server::Handle;
use axum_server::tls_rustls::RustlsConfig;
use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use rustls_pki_types::pem::PemObject;
use rustls_pki_types::{CertificateDer, PrivateKeyDer};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_shop::hub::Certificate;
use sumpbook_simulation::fleet::{root, shop_key};
use tokio::runtime::Runtime;
use tokio::sync::oneshot;

type Waiting = (Bytes, oneshot::Sender<Vec<u8>>);

/// A day as the log gets it: the phone's number, then payload and signature of each entry over its payload alone.
pub(super) fn body(phone: &Ledger) -> Vec<u8> {
    let own = phone.own_key();
    let signing = SigningKey::from_bytes(own.secret());
    let mut body = own.public().bytes().to_vec();
    for held in super::own(phone) {
        body.extend((held.row.payload.len() as u32).to_be_bytes());
        body.extend(&held.row.payload);
        body.extend(signing.sign(&held.row.payload).to_bytes());
    }
    zstd::encode_all(body.as_slice(), 3).unwrap()
}

pub(super) struct PlainLog {
    pub(super) address: String,
    handle: Handle<SocketAddr>,
    task: tokio::task::JoinHandle<std::io::Result<()>>,
}

impl PlainLog {
    pub(super) fn begin(threads: &Runtime, folder: &Path) -> PlainLog {
        let (jobs, taken) = sync_channel::<Waiting>(1_024);
        let path = folder.join("plain.db");
        std::thread::spawn(move || write(&path, &taken));
        let made = Certificate::of(folder, root().fleet, &shop_key()).unwrap();
        let chain: Vec<_> =
            CertificateDer::pem_slice_iter(made.chain.as_bytes()).collect::<Result<_, _>>().unwrap();
        let key = PrivateKeyDer::from_pem_slice(made.key.as_bytes()).unwrap();
        let mut tls =
            rustls::ServerConfig::builder_with_provider(Arc::new(rustls::crypto::ring::default_provider()))
                .with_safe_default_protocol_versions()
                .unwrap()
                .with_no_client_auth()
                .with_single_cert(chain, key)
                .unwrap();
        tls.alpn_protocols = vec![b"http/1.1".to_vec()];
        let listener = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
        listener.set_nonblocking(true).unwrap();
        let address = listener.local_addr().unwrap().to_string();
        let handle = Handle::new();
        let app = Router::new().route("/v1/exchange", post(answer)).with_state(jobs);
        let server = {
            let _within = threads.enter();
            axum_server::from_tcp_rustls(listener, RustlsConfig::from_config(Arc::new(tls))).unwrap()
        };
        let task = threads.spawn(server.handle(handle.clone()).serve(app.into_make_service()));
        PlainLog { address, handle, task }
    }

    pub(super) fn stop(self, threads: &Runtime) {
        self.handle.shutdown();
        threads.block_on(self.task).unwrap().unwrap();
    }
}

async fn answer(State(jobs): State<SyncSender<Waiting>>, body: Bytes) -> Vec<u8> {
    if body.is_empty() {
        return Vec::new();
    }
    let (give, done) = oneshot::channel();
    jobs.send((body, give)).unwrap();
    done.await.unwrap()
}

fn write(path: &Path, jobs: &Receiver<Waiting>) {
    let mut log = rusqlite::Connection::open(path).unwrap();
    log.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
         CREATE TABLE log (n INTEGER PRIMARY KEY, key BLOB NOT NULL, payload BLOB NOT NULL, sig BLOB NOT NULL)",
    )
    .unwrap();
    let own = SigningKey::from_bytes(shop_key().secret());
    while let Ok(first) = jobs.recv() {
        let mut waiting = vec![first];
        while waiting.len() < 32 {
            match jobs.try_recv() {
                Ok(more) => waiting.push(more),
                Err(_) => break,
            }
        }
        let tx = log.transaction().unwrap();
        let mut answers = Vec::new();
        for (body, _) in &waiting {
            let body = zstd::decode_all(body.as_ref()).unwrap();
            let (key, mut rest) = body.split_at(32);
            let verifying = VerifyingKey::from_bytes(key.try_into().unwrap()).unwrap();
            let mut insert =
                tx.prepare_cached("INSERT INTO log (key, payload, sig) VALUES (?1, ?2, ?3)").unwrap();
            while let Some((length, after)) = rest.split_first_chunk::<4>() {
                let (payload, after) = after.split_at(u32::from_be_bytes(*length) as usize);
                let (sig, after) = after.split_at(64);
                verifying.verify_strict(payload, &Signature::from_slice(sig).unwrap()).unwrap();
                insert.execute((key, payload, sig)).unwrap();
                rest = after;
            }
            answers.push(own.sign(&body).to_bytes().to_vec());
        }
        tx.commit().unwrap();
        for ((_, give), answer) in waiting.into_iter().zip(answers) {
            let _ = give.send(answer);
        }
    }
}
