//! Who is turned away, with which status, and that nobody else is harmed by it.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};

use sumpbook_daybook::exchange::request;
use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::parcel::{EnrolmentRequest, Link, Parcel, seal};
use sumpbook_daybook::phone::online::{Hub, HubSaid};
use sumpbook_hub_tests::{Yard, clock, exchange, walk};
use sumpbook_simulation::fleet::{phone_key, root};
use sumpbook_trade::FleetId;

fn soon() -> Instant {
    Instant::now() + Duration::from_secs(20)
}

fn yard() -> Yard {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 3);
    yard.begin();
    yard
}

fn send(way: &Hub, bytes: &[u8]) -> HubSaid {
    way.exchange(bytes, soon()).unwrap()
}

fn challenge(way: &Hub) -> [u8; 16] {
    send(way, b"").challenge.unwrap()
}

/// A parcel of this phone with nothing in it.
fn empty(fleet: FleetId, challenge: [u8; 16], key: &DeviceKey) -> Vec<u8> {
    let parcel = Parcel::new(fleet, Link::Challenge(challenge), clock().unix_ms() as u64, [0; 8]);
    seal(&parcel, key).unwrap().wire
}

#[test]
fn each_is_told_what_it_is_and_an_honest_phone_goes_on() {
    let yard = yard();
    let way = yard.way();
    let folder = tempfile::tempdir().unwrap();
    let mut honest = yard.phone(folder.path(), 1, &[0]);
    assert!(exchange(&mut honest).unwrap().whole);

    // Nothing, noise, and a file's beginning.
    for noise in [&b""[..], b"hello", b"SUMPBK01", &[0xff; 4_096]] {
        assert_eq!(send(&way, noise).status, 400, "{noise:02x?}");
    }
    // A key nobody let in.
    let stranger = DeviceKey::generate().unwrap();
    assert_eq!(send(&way, &empty(root().fleet, challenge(&way), &stranger)).status, 401);
    // It asks to be let in with a code the shop never gave.
    let mut asking =
        Parcel::new(root().fleet, Link::Challenge(challenge(&way)), clock().unix_ms() as u64, [0; 8]);
    asking.enrolment =
        Some(EnrolmentRequest { key: stranger.public(), code: [9; 16], name: "yard 9".to_owned() });
    let said = send(&way, &seal(&asking, &stranger).unwrap().wire);
    assert_eq!(said.status, 403);
    assert!(String::from_utf8(said.body).unwrap().contains("Ask the shop for a new one"));
    // Another fleet's.
    let other = FleetId::from_bytes([8; 16]);
    assert_eq!(send(&way, &empty(other, challenge(&way), &phone_key(2))).status, 403);
    // A challenge that was never given, and one that was used.
    assert_eq!(send(&way, &empty(root().fleet, [5; 16], &phone_key(2))).status, 409);
    let given = challenge(&way);
    let once = empty(root().fleet, given, &phone_key(2));
    assert_eq!(send(&way, &once).status, 200);
    assert_eq!(send(&way, &once).status, 409);
    // Somebody else's parcel with one byte changed, anywhere.
    let whole = empty(root().fleet, challenge(&way), &phone_key(2));
    for at in (0..whole.len()).step_by(7) {
        let mut changed = whole.clone();
        changed[at] ^= 0x10;
        let status = send(&way, &changed).status;
        assert!((400..410).contains(&status), "byte {at}: {status}");
    }
    // Longer than any parcel.
    assert_eq!(send(&way, &vec![0x28; 1_200_000]).status, 413);
    // A few kilobytes that unpack to a gigabyte: refused by what they say, and no memory is taken for them.
    let before = yard.memory();
    let bomb = bomb();
    assert!(bomb.len() < 200_000, "{}", bomb.len());
    assert_eq!(send(&way, &bomb).status, 400);
    if let (Some(before), Some(after)) = (before, yard.memory()) {
        assert!(after < before + 64 * 1024 * 1024, "{before} {after}");
    }

    walk(&mut honest, 0, 1);
    let done = exchange(&mut honest).unwrap();
    assert_eq!((done.acknowledged, done.whole), (1, true), "{done:?}");
}

#[test]
fn another_phones_actor_and_a_forged_signature_are_refused_entry_by_entry() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    exchange(&mut phone).unwrap();
    walk(&mut phone, 0, 1);
    walk(&mut phone, 0, 2);
    let way = yard.way();
    let sent = request(phone.ledger_mut(), challenge(&way), clock()).unwrap();
    let opened = sumpbook_daybook::parcel::open(&sent.bytes, |id| {
        (id == phone_key(1).id()).then(|| phone_key(1).public())
    });
    let mut parcel = opened.unwrap().parcel;
    // The second entry's signature is another's; phone 2 carries both.
    let run = parcel.runs.first_mut().unwrap();
    assert_eq!(run.entries.len(), 2);
    run.entries[1].signature[5] ^= 1;
    parcel.link = Link::Challenge(challenge(&way));
    let said = send(&way, &seal(&parcel, &phone_key(2)).unwrap().wire);
    assert_eq!(said.status, 200);
    let store = sumpbook_daybook::store::Store::reader(yard.folder()).unwrap();
    let there = |id| store.truth().by_id(id).unwrap().len();
    let ids: Vec<_> = parcel.runs[0].entries.iter().map(|entry| entry.id).collect();
    assert_eq!((there(ids[0]), there(ids[1])), (1, 0));
    // The honest phone is not stuck: its own second entry goes in.
    assert!(exchange(&mut phone).unwrap().whole);
    assert_eq!(there(ids[1]), 1);
}

#[test]
fn a_stopped_phone_is_told_and_what_it_writes_afterwards_waits_for_a_person() {
    let mut yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 2, &[0]);
    exchange(&mut phone).unwrap();
    walk(&mut phone, 0, 1);
    exchange(&mut phone).unwrap();
    yard.kill();
    {
        let mut shop = sumpbook_shop::Shop::open(yard.folder()).unwrap();
        let hand = sumpbook_shop::Hand::nobody(clock());
        sumpbook_shop::revoke(&mut shop, phone_key(2).id(), "lost", &hand).unwrap();
    }
    yard.begin();
    let late = walk(&mut phone, 0, 2);
    let done = exchange(&mut phone).unwrap();
    assert!(done.stopped, "{done:?}");
    let (ledger, _) = Ledger::open(yard.folder(), root(), sumpbook_simulation::fleet::shop_key()).unwrap();
    let truth = ledger.store().truth();
    let held = truth.by_id(late).unwrap();
    assert_eq!(held.len(), 1);
    let judged = truth.fact(held[0].n).unwrap().unwrap().judged;
    assert_eq!(judged, sumpbook_daybook::judgement::Judged::DeviceStopped);
}

#[test]
fn a_thousand_silent_connections_and_slow_ones_keep_nobody_out() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    let mut held = Vec::new();
    for _ in 0..1_000 {
        held.push(TcpStream::connect(yard.address()).unwrap());
    }
    // Some say a little and then nothing.
    for connection in held.iter_mut().step_by(10) {
        let _ = connection.write_all(&[0x16, 0x03, 0x01]);
    }
    assert!(exchange(&mut phone).unwrap().whole);
    walk(&mut phone, 0, 1);
    assert!(exchange(&mut phone).unwrap().whole);
    // They are let go of after a while.
    let first = &mut held[1];
    first.set_read_timeout(Some(Duration::from_secs(30))).unwrap();
    assert_eq!(first.read(&mut [0; 8]).unwrap(), 0, "a silent connection is ended");
    assert!(exchange(&mut phone).unwrap().whole);
}

/// A gigabyte of nothing, packed.
fn bomb() -> Vec<u8> {
    let mut packing = zstd::Encoder::new(Vec::new(), 3).unwrap();
    for _ in 0..1_024 {
        packing.write_all(&vec![0; 1 << 20]).unwrap();
    }
    packing.finish().unwrap()
}

/// Begins a request inside TLS and drips this byte every second. Says how long the hub bore it and what it said.
fn dripped(yard: &Yard, beginning: &str, drip: &[u8]) -> (Duration, String) {
    let mut connection = yard.raw();
    let begun = Instant::now();
    let mut bears = connection.drip(beginning.as_bytes());
    while bears && !drip.is_empty() && begun.elapsed() < Duration::from_secs(90) {
        std::thread::sleep(Duration::from_secs(1));
        bears = connection.drip(drip);
    }
    let said = connection.rest(Duration::from_secs(40));
    (begun.elapsed(), said)
}

#[test]
fn a_head_or_a_body_that_drips_is_let_go_of() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    std::thread::scope(|scope| {
        let head = scope.spawn(|| dripped(&yard, "POST /v1/exchange HTTP/1.1\r\nhost: x\r\nx-slow: ", b"a"));
        let body = scope.spawn(|| {
            dripped(&yard, "POST /v1/exchange HTTP/1.1\r\nhost: x\r\ncontent-length: 1000\r\n\r\n", b"")
        });
        let slow = scope.spawn(|| {
            dripped(&yard, "POST /v1/exchange HTTP/1.1\r\nhost: x\r\ncontent-length: 100000\r\n\r\n", b"a")
        });
        // Meanwhile an honest phone goes on.
        assert!(exchange(&mut phone).unwrap().whole);
        // A head has ten seconds in all, however it drips.
        let (bore, _) = head.join().unwrap();
        assert!((Duration::from_secs(8)..Duration::from_secs(25)).contains(&bore), "{bore:?}");
        // A body that stands still has ten, one that drips has the minute a request may take.
        let (bore, answer) = body.join().unwrap();
        assert!((Duration::from_secs(8)..Duration::from_secs(25)).contains(&bore), "{bore:?}: {answer}");
        let (bore, answer) = slow.join().unwrap();
        assert!(bore < Duration::from_secs(85) && answer.starts_with("HTTP/1.1 408"), "{bore:?}: {answer}");
    });
    assert!(exchange(&mut phone).unwrap().whole);
}

#[test]
fn who_asks_too_often_is_told_to_wait_and_the_phones_beside_it_are_not() {
    let yard = yard();
    let way = yard.way();
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (mut broken, mut honest) = (yard.phone(one.path(), 1, &[0]), yard.phone(other.path(), 2, &[1]));
    assert!(exchange(&mut broken).unwrap().whole);
    assert!(exchange(&mut honest).unwrap().whole);
    // Behind the same router somebody unknown asks without end: its address waits.
    let turned_away = (0..2_000).map(|_| send(&way, b"")).find(|said| said.status == 429).unwrap();
    assert!(turned_away.wait_s.is_some_and(|seconds| seconds >= 1));
    // A phone the shop knows is served all the same, with the challenge that came with the refusal.
    walk(&mut honest, 1, 1);
    let asked = request(honest.ledger_mut(), turned_away.challenge.unwrap(), clock()).unwrap();
    let said = send(&way, &asked.bytes);
    assert_eq!(said.status, 200);
    // A phone gone wrong waits by itself: the other one at the same address does not.
    let mut given = said.challenge.unwrap();
    let stopped = (0..2_000).find_map(|_| {
        let said = send(&way, &empty(root().fleet, given, &phone_key(1)));
        given = said.challenge.unwrap();
        (said.status == 429).then_some(said)
    });
    let stopped = stopped.unwrap();
    assert!(String::from_utf8(stopped.body).unwrap().contains("this phone"));
    let asked = request(honest.ledger_mut(), given, clock()).unwrap();
    assert_eq!(send(&way, &asked.bytes).status, 200);
    // Waiting helps both.
    std::thread::sleep(Duration::from_secs(turned_away.wait_s.unwrap().max(stopped.wait_s.unwrap())));
    assert_eq!(send(&way, b"").status, 400);
    assert!(exchange(&mut broken).unwrap().whole);
}
