//! A book put together from rows is an ordinary automerge document, in Rust and in JavaScript.

#![allow(clippy::disallowed_methods, reason = "only documents written by ourselves are loaded here")]

use std::collections::BTreeMap;

use automerge::transaction::{CommitOptions, Transactable};
use automerge::{ActorId, AutoCommit, Automerge, ROOT, ReadDoc};
use proptest::prelude::*;
use sumpbook_daybook::book::document::{export, rebuild};
use sumpbook_daybook::book::{BookId, EntryRow};
use sumpbook_daybook::gate::change::next_op;
use sumpbook_daybook::gate::{Actor, ChangeHash, sign};
use sumpbook_outside::golden;
use sumpbook_outside::hex::{hex, unhex};
use sumpbook_outside::program::{answers, ask, here};
use sumpbook_trade::EntryId;

fn sorted(heads: Vec<automerge::ChangeHash>) -> Vec<[u8; 32]> {
    let mut heads: Vec<[u8; 32]> = heads.iter().map(|head| head.0).collect();
    heads.sort_unstable();
    heads
}

fn value(row: &EntryRow) -> Vec<u8> {
    sign::cose(&row.payload, &row.signature).unwrap()
}

#[test]
fn a_saved_book_opens_with_its_heads_and_entries() {
    let book = golden::book();
    for saved in [book.document.clone(), export(book.rows.clone()).unwrap()] {
        let loaded = Automerge::load(&saved).unwrap();
        assert_eq!(sorted(loaded.get_heads()), book.heads);
        assert_eq!(loaded.length(ROOT), book.rows.len());
        for row in &book.rows {
            let (found, _) = loaded.get(ROOT, row.id.to_string()).unwrap().expect("the entry");
            assert_eq!(found.as_bytes(), Some(&value(row)[..]));
        }
        // Compared before compressing: the compressor is not pinned, the document is.
        assert_eq!(loaded.save_nocompress(), rebuild(book.rows.clone()).unwrap().save_nocompress());
    }
}

/// An entry as both sides of the comparison are given it.
fn row(actor: Actor, seen: &[&EntryRow], seq: u64, n: u8) -> EntryRow {
    let mut deps: Vec<ChangeHash> = seen.iter().map(|row| row.hash).collect();
    deps.sort_unstable();
    let mut row = EntryRow {
        hash: ChangeHash([0; 32]),
        book: BookId::Fleet,
        actor,
        seq,
        deps,
        op: next_op(seen.iter().map(|row| row.op)),
        id: EntryId::from_bytes([n; 16]),
        payload: vec![0x18, n],
        signature: [n; 64],
    };
    row.hash = row.change().unwrap().hash;
    row
}

fn put(document: &mut AutoCommit, row: &EntryRow) {
    document.put(ROOT, row.id.to_string(), value(row)).unwrap();
    document.commit_with(CommitOptions::default().with_time(0)).expect("one change");
}

fn hand(actor: Actor) -> AutoCommit {
    AutoCommit::new().with_actor(ActorId::from(actor.0))
}

#[test]
fn the_same_puts_by_autocommit_give_the_same_document() {
    let (a, b) = (Actor([0xaa; 16]), Actor([0xbb; 16]));
    let a1 = row(a, &[], 1, 31);
    let a2 = row(a, &[&a1], 2, 32);
    let b1 = row(b, &[&a2], 1, 33);
    let a3 = row(a, &[&a2], 3, 34);
    let b2 = row(b, &[&b1, &a3], 2, 35);
    let ours = rebuild([&a1, &a2, &b1, &a3, &b2].map(Clone::clone)).unwrap();

    let (mut first, mut second) = (hand(a), hand(b));
    put(&mut first, &a1);
    put(&mut first, &a2);
    second.merge(&mut first).unwrap();
    put(&mut second, &b1);
    put(&mut first, &a3);
    second.merge(&mut first).unwrap();
    put(&mut second, &b2);

    assert_eq!(sorted(second.get_heads()), [b2.hash.0]);
    for row in [&a1, &a2, &b1, &a3, &b2] {
        let theirs = second.get_change_by_hash(&automerge::ChangeHash(row.hash.0)).expect("the same hash");
        assert_eq!(theirs.raw_bytes(), row.change().unwrap().bytes());
    }
    assert_eq!(ours.save(), second.save());
}

/// A saved document keeps the order in which changes came, so its bytes may differ from phone to phone;
/// what stands in it and its heads may not.
#[test]
fn the_order_in_which_two_hands_arrive_changes_no_head_and_no_entry() {
    let (a, b) = (Actor([0xaa; 16]), Actor([0xbb; 16]));
    let (a1, b1) = (row(a, &[], 1, 31), row(b, &[], 1, 33));
    let one = rebuild([a1.clone(), b1.clone()]).unwrap();
    let other = rebuild([b1, a1]).unwrap();
    assert_eq!(sorted(one.get_heads()), sorted(other.get_heads()));
    let entries = |document: &Automerge| -> Vec<(String, automerge::Value<'static>)> {
        let get = |key: String| (key.clone(), document.get(ROOT, key).unwrap().unwrap().0.into_owned());
        document.keys(ROOT).map(get).collect()
    };
    assert_eq!(entries(&one), entries(&other));
}

/// A book as some hands write it; each step says which hand, and whether it has met all the others' heads.
fn written(steps: &[(u8, bool)]) -> Vec<EntryRow> {
    let mut rows: Vec<EntryRow> = Vec::new();
    for (n, (hand, met)) in steps.iter().enumerate() {
        let actor = Actor([*hand; 16]);
        let own = rows.iter().rfind(|row| row.actor == actor);
        let head = |row: &&EntryRow| !rows.iter().any(|later| later.deps.contains(&row.hash));
        let mut seen: Vec<&EntryRow> = if *met { rows.iter().filter(head).collect() } else { vec![] };
        seen.extend(own.filter(|own| !seen.iter().any(|row| row.hash == own.hash)));
        let next = row(actor, &seen, own.map_or(1, |own| own.seq + 1), n as u8);
        rows.push(next);
    }
    rows
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]
    #[test]
    fn whatever_hands_wrote_the_book_opens(steps in prop::collection::vec((1u8..6, any::<bool>()), 1..60)) {
        let rows = written(&steps);
        let loaded = Automerge::load(&export(rows.clone()).unwrap()).unwrap();
        let heads = rows.iter().filter(|row| !rows.iter().any(|later| later.deps.contains(&row.hash)));
        let mut heads: Vec<[u8; 32]> = heads.map(|row| row.hash.0).collect();
        heads.sort_unstable();
        prop_assert_eq!(sorted(loaded.get_heads()), heads);
        prop_assert_eq!(loaded.length(ROOT), rows.len());
    }

    #[test]
    fn rows_in_any_order_or_with_some_gone_are_a_book_or_an_error(
        rows in prop::collection::vec((1u8..4, any::<bool>()), 1..20).prop_map(|steps| written(&steps)).prop_shuffle(),
        keep in any::<prop::sample::Index>(),
    ) {
        let kept = keep.index(rows.len() + 1);
        if let Ok(document) = rebuild(rows[..kept].to_vec()) {
            prop_assert_eq!(document.length(ROOT), kept);
        }
    }
}

#[test]
fn javascript_opens_the_same_book() {
    if !answers("node", &["--version"]) || !here().join("js/node_modules/@automerge/automerge").exists() {
        println!("skipped: no node, or no packages (npm ci in tests/outside/js)");
        return;
    }
    let book = golden::book();
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book.hex");
    std::fs::write(&path, hex(&book.document)).unwrap();
    let said = ask("node", &["js/load.mjs", path.to_str().unwrap()]);
    let said: serde_json::Value = serde_json::from_str(&said).unwrap();

    assert_eq!(said["heads"], serde_json::json!(book.heads.iter().map(|head| hex(head)).collect::<Vec<_>>()));
    let mut hashes: Vec<String> = book.rows.iter().map(|row| row.hash.to_string()).collect();
    hashes.sort_unstable();
    assert_eq!(said["changes"], serde_json::json!(hashes));
    let entries: BTreeMap<String, String> = serde_json::from_value(said["entries"].clone()).unwrap();
    assert_eq!(entries.len(), book.rows.len());
    for row in &book.rows {
        assert_eq!(unhex(&entries[&row.id.to_string()]), value(row));
    }
}
