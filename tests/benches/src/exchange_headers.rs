//! A day's exchange as it goes through a real hub's TLS: bodies and HTTP headers, both ways, on a warm connection.

use std::io::{Read, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use sumpbook_daybook::exchange::{request, take_answer};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::phone::online::Hub as Way;
use sumpbook_simulation::fleet::{root, shop_key};
use sumpbook_trade::Stamp;
use sumpbook_trade::record::Digest;

use crate::hub_process::HubProcess;
use crate::said::bytes;

const LIMIT: f64 = 1.2;
/// The kind of a TLS record that carries what was said (RFC 8446, 5.1).
const APPLICATION_DATA: u8 = 23;
/// Of such a record, bytes that are not what was said: the kind within, and the tag of its cipher (RFC 8446, 5.2).
const NOT_SAID: usize = 17;

/// Exchanges the day that is open on this phone with a hub over this folder, and says its bytes against `raw`.
pub(crate) fn run(shop: &Path, phone: &mut Ledger, now: Stamp, raw: usize) {
    std::fs::write(shop.join("shop.key"), format!("{}\n", Digest(*shop_key().secret()))).unwrap();
    std::fs::write(shop.join("fleet.id"), format!("{}\n", root().fleet)).unwrap();
    let hub = HubProcess::begin(shop);
    let said = Arc::new(AtomicUsize::new(0));
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let between = listener.local_addr().unwrap().to_string();
    let (address, counter) = (hub.address.clone(), said.clone());
    let passing = std::thread::spawn(move || {
        let (phone, _) = listener.accept().unwrap();
        let hub = TcpStream::connect(address).unwrap();
        let (from_phone, from_hub) = (phone.try_clone().unwrap(), hub.try_clone().unwrap());
        let up = counter.clone();
        let there = std::thread::spawn(move || pass(from_phone, hub, &up));
        pass(from_hub, phone, &counter);
        there.join().unwrap();
    });
    {
        let way = Way::new(&between, root().fleet, root().shop).unwrap();
        let until = || Instant::now() + Duration::from_secs(10);
        let warm = way.exchange(b"", until()).unwrap();
        let asked = request(phone, warm.challenge.unwrap(), now).unwrap();
        said.store(0, Ordering::Relaxed);
        let answer = way.exchange(&asked.bytes, until()).unwrap();
        assert_eq!(answer.status, 200, "{}", String::from_utf8_lossy(&answer.body));
        let (all, bodies) = (said.load(Ordering::Relaxed), asked.bytes.len() + answer.body.len());
        let came = take_answer(phone, asked.digest, &answer.body, now, now).unwrap();
        assert!(!came.more && came.taken.receipt, "one round trip for a day: {came:?}");
        bytes(
            &format!(
                "exchange: bodies and headers of a day over TLS, one truck, with whole walks, {} of them headers, to zstd-19 of its signed entries",
                all - bodies
            ),
            all,
            raw,
            LIMIT,
        );
    }
    passing.join().unwrap();
    hub.stop();
}

/// Passes bytes on and counts what is said in the TLS records among them.
fn pass(mut from: TcpStream, mut to: TcpStream, said: &AtomicUsize) {
    let mut head = [0; 5];
    while from.read_exact(&mut head).is_ok() {
        let mut record = vec![0; usize::from(u16::from_be_bytes([head[3], head[4]]))];
        from.read_exact(&mut record).unwrap();
        if head[0] == APPLICATION_DATA {
            said.fetch_add(record.len() - NOT_SAID, Ordering::Relaxed);
        }
        to.write_all(&head).and_then(|()| to.write_all(&record)).unwrap();
    }
    let _ = to.shutdown(Shutdown::Both);
}
