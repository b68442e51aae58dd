//! Fields to bytes to hash, as they were and must stay.

use proptest::prelude::*;
use sha2::{Digest, Sha256};
use sumpbook_daybook::book::document::rebuild;
use sumpbook_daybook::book::{BookId, EntryRow};
use sumpbook_daybook::gate::change::{Parts, build, next_op};
use sumpbook_daybook::gate::{Actor, ChangeHash, DeviceKey, Place, PublicKey, sign, verify};
use sumpbook_outside::golden::{self, Book, Case};
use sumpbook_outside::hex::{hex, unhex};
use sumpbook_outside::program::{answers, ask, here};
use sumpbook_outside::second_encoder::{Fields, encode};
use sumpbook_trade::{EntryId, FleetId, TruckId};

/// Set only by hand, once, when a golden file is first made.
const FIRST_TIME: &str = "SUMPBOOK_WRITE_GOLDEN_FOR_THE_FIRST_TIME";

fn built(fields: &Fields) -> (Vec<u8>, [u8; 32]) {
    let deps: Vec<ChangeHash> = fields.deps.iter().copied().map(ChangeHash).collect();
    let change = build(Parts {
        actor: Actor(fields.actor),
        seq: fields.seq,
        op: fields.op,
        deps: &deps,
        id: fields.key.parse().unwrap(),
        value: &fields.value,
    })
    .unwrap();
    (change.bytes().to_vec(), change.hash.0)
}

#[test]
fn the_program_and_the_second_encoder_give_the_golden_bytes() {
    let cases = golden::cases();
    assert_eq!(cases.len(), 64);
    for (n, case) in cases.iter().enumerate() {
        let expected = (case.chunk.clone(), case.hash);
        assert!(built(&case.fields) == expected, "the program differs in case {n}");
        assert!(encode(&case.fields) == expected, "the second encoder differs in case {n}");
    }
}

#[test]
fn the_golden_cases_reach_every_length_that_changes_the_encoding() {
    let cases = golden::cases();
    let has = |what: &str, test: &dyn Fn(&Fields) -> bool| {
        assert!(cases.iter().any(|case| test(&case.fields)), "no case with {what}");
    };
    for count in [0, 1, 2, 64] {
        has(&format!("{count} deps"), &|f| f.deps.len() == count);
    }
    for length in [0, 1, 127, 128, 255, 256, 16_384] {
        has(&format!("a value of {length}"), &|f| f.value.len() == length);
    }
    for n in [1, 127, 128, 16_383, 16_384, 1 << 31] {
        has(&format!("seq {n}"), &|f| f.seq == n);
        has(&format!("op {n}"), &|f| f.op == n);
    }
}

#[test]
fn a_third_encoder_in_python_gives_the_golden_bytes() {
    if !answers("python3", &["--version"]) {
        println!("skipped: no python3 here");
        return;
    }
    assert_eq!(
        ask("python3", &["second_encoder.py", "golden/changes.json"]).trim(),
        "64 cases, 0 differences"
    );
}

#[test]
fn the_golden_book_is_verified_and_put_together_again() {
    let book = golden::book();
    for row in &book.rows {
        let place = place(&book, row);
        let signer = book.keys.iter().map(|key| PublicKey::from_bytes(key).unwrap());
        let key = signer.into_iter().find(|key| key.id() == row.actor.key()).expect("one of the writers");
        assert_eq!(verify(&place, &row.payload, &row.signature, &key), Ok(()), "{}", row.id);
    }
    let document = rebuild(book.rows.clone()).unwrap();
    let mut heads: Vec<[u8; 32]> = document.get_heads().iter().map(|head| head.0).collect();
    heads.sort_unstable();
    assert_eq!(heads, book.heads);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4_000))]
    #[test]
    fn two_encoders_never_differ(
        actor: [u8; 16],
        seq in prop_oneof![1u64..300, 1u64..=u64::from(u32::MAX)],
        op in prop_oneof![1u64..300, 1u64..=u64::from(u32::MAX)],
        deps in prop::collection::vec(any::<[u8; 32]>(), 0..=6),
        id: [u8; 16],
        value in prop::collection::vec(any::<u8>(), 0..400),
    ) {
        let key = EntryId::from_bytes(id).to_string();
        let fields = Fields { actor, seq, op, deps, key, value };
        prop_assert_eq!(built(&fields), encode(&fields));
    }
}

fn place(book: &Book, row: &EntryRow) -> Place {
    Place {
        fleet: FleetId::from_bytes(book.fleet),
        book: row.book,
        actor: row.actor,
        seq: row.seq,
        deps: row.deps.clone(),
        id: row.id,
    }
}

/// Writes the golden files where there are none, and only when asked to by name.
#[test]
fn golden_files_are_written_once() {
    if std::env::var_os(FIRST_TIME).is_none() {
        return;
    }
    let changes = serde_json::Value::Array(first_cases().iter().map(golden::case_json).collect());
    for (name, value) in [("changes.json", changes), ("book.json", golden::book_json(&first_book()))] {
        let path = here().join("golden").join(name);
        assert!(!path.exists(), "{} stands already and is not written again", path.display());
        std::fs::write(path, serde_json::to_string_pretty(&value).unwrap() + "\n").unwrap();
    }
}

fn digest(label: &str, n: usize) -> [u8; 32] {
    Sha256::digest(format!("{label} {n}")).into()
}

fn first_half(bytes: [u8; 32]) -> [u8; 16] {
    bytes[..16].try_into().unwrap()
}

fn first_cases() -> Vec<Case> {
    let numbers = [1, 2, 127, 128, 16_383, 16_384, 65_536, (1 << 31) - 1, 1 << 31];
    let mut shapes: Vec<(usize, usize)> =
        (0..58).map(|n| ([0, 1, 127, 128, 255, 256][n % 6], [0, 1, 2][(n / 6) % 3])).collect();
    shapes.extend([(1, 64), (128, 64), (256, 64), (16_384, 0), (16_384, 1), (16_384, 64)]);
    let case = |(n, (length, count)): (usize, (usize, usize))| {
        let fields = Fields {
            actor: first_half(digest("actor", n)),
            seq: numbers[n % 9],
            op: numbers[(n * 2 + n / 9) % 9],
            deps: (0..count).map(|dep| digest("dep", n * 100 + dep)).collect(),
            key: EntryId::from_bytes(first_half(digest("id", n))).to_string(),
            value: (0..length).map(|at| (at * 31 + n) as u8).collect(),
        };
        let (chunk, hash) = built(&fields);
        Case { fields, chunk, hash }
    };
    shapes.into_iter().enumerate().map(case).collect()
}

/// Two phones and a restart: three hands, of which two write at the same time.
fn first_book() -> Book {
    let keys = [DeviceKey::from_secret(&digest("key", 1)), DeviceKey::from_secret(&digest("key", 2))];
    let hands = [(0, 1), (1, 2), (0, 3)].map(|(key, tail): (usize, u8)| {
        let key: &DeviceKey = &keys[key];
        (key, Actor::from_parts(key.id(), [tail; 8]))
    });
    let mut book = Book {
        fleet: first_half(digest("fleet", 1)),
        truck: first_half(digest("truck", 1)),
        year: 2026,
        keys: keys.iter().map(|key| key.public().bytes()).collect(),
        rows: Vec::new(),
        document: Vec::new(),
        heads: Vec::new(),
    };
    // (hand, positions of the rows it has seen as heads)
    let steps: [(usize, &[usize]); 9] =
        [(0, &[]), (0, &[0]), (1, &[1]), (0, &[1]), (1, &[2]), (0, &[3, 4]), (2, &[5]), (2, &[6]), (1, &[4])];
    for (n, (hand, seen)) in steps.into_iter().enumerate() {
        let (key, actor) = hands[hand];
        let mut deps: Vec<ChangeHash> = seen.iter().map(|at| book.rows[*at].hash).collect();
        deps.sort_unstable();
        let truck = TruckId::from_bytes(book.truck);
        let seq = book.rows.iter().filter(|row| row.actor == actor).count() as u64 + 1;
        let mut row = EntryRow {
            hash: ChangeHash([0; 32]),
            book: BookId::Truck { truck, year: book.year },
            actor,
            seq,
            op: next_op(seen.iter().map(|at| book.rows[*at].op)),
            deps,
            id: EntryId::from_bytes(first_half(digest("entry", n))),
            payload: unhex(&format!("82{:02x}63e6b0b4", n)),
            signature: [0; 64],
        };
        row.signature = sign(&place(&book, &row), &row.payload, key).unwrap();
        row.hash = row.change().unwrap().hash;
        book.rows.push(row);
    }
    let document = rebuild(book.rows.clone()).unwrap();
    book.heads = document.get_heads().iter().map(|head| head.0).collect();
    book.heads.sort_unstable();
    book.document = document.save();
    assert_eq!(book.heads.len(), 2, "{}", hex(&book.document));
    book
}
