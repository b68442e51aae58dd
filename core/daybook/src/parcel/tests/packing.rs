//! Rows into runs and back.

use std::collections::HashMap;

use proptest::prelude::*;
use sumpbook_trade::{EntryId, TruckId};

use crate::book::{BookId, EntryRow};
use crate::gate::change::next_op;
use crate::gate::{Actor, ChangeHash};
use crate::parcel::*;

fn truck(n: u8) -> BookId {
    BookId::Truck { truck: TruckId::from_bytes([n; 16]), year: 2026 }
}

/// Books as several hands write them; each step says which book and hand, and whether it has seen all.
fn written(steps: &[(u8, u8, bool)]) -> Vec<EntryRow> {
    let mut rows: Vec<EntryRow> = Vec::new();
    for (n, (book, hand, seen_all)) in steps.iter().enumerate() {
        let book = if *book == 0 { BookId::Fleet } else { truck(*book) };
        let actor = Actor([*hand; 16]);
        let here: Vec<&EntryRow> = rows.iter().filter(|row| row.book == book).collect();
        let own = here.iter().rev().find(|row| row.actor == actor);
        let heads = here.iter().filter(|row| !here.iter().any(|later| later.deps.contains(&row.hash)));
        let mut seen: Vec<&EntryRow> = if *seen_all { heads.copied().collect() } else { Vec::new() };
        if let Some(own) = own.filter(|own| !seen.iter().any(|row| row.hash == own.hash)) {
            seen.push(own);
        }
        let mut deps: Vec<ChangeHash> = seen.iter().map(|row| row.hash).collect();
        deps.sort_unstable();
        let mut id = [0; 16];
        id[..8].copy_from_slice(&(n as u64).to_be_bytes());
        let mut row = EntryRow {
            hash: ChangeHash([0; 32]),
            book,
            actor,
            seq: own.map_or(1, |own| own.seq + 1),
            op: next_op(seen.iter().map(|row| row.op)),
            deps,
            id: EntryId::from_bytes(id),
            payload: vec![n as u8],
            signature: [n as u8; 64],
        };
        row.hash = row.change().unwrap().hash;
        rows.push(row);
    }
    rows
}

fn held(rows: &[EntryRow]) -> impl Fn(BookId, &Dep) -> Option<Known> + use<> {
    let by_prefix: HashMap<(BookId, [u8; 8]), Known> = rows
        .iter()
        .map(|row| ((row.book, row.hash.prefix()), Known { hash: row.hash, op: row.op }))
        .collect();
    move |book, dep| match dep {
        Dep::Back(_) => None,
        Dep::Prefix(prefix) => by_prefix.get(&(book, *prefix)).copied(),
        Dep::Whole(hash) => by_prefix.get(&(book, hash.prefix())).copied(),
    }
}

fn rows_of(unpacked: Vec<Unpacked>) -> Vec<EntryRow> {
    let row = |one| match one {
        Unpacked::Row(row) => row,
        other => panic!("{other:?}"),
    };
    unpacked.into_iter().map(row).collect()
}

#[test]
fn a_day_of_one_hand_is_one_run() {
    let rows = written(&[(1, 1, true); 40]);
    let runs = pack(rows[10..].to_vec(), |_, _| false);
    assert_eq!(runs.len(), 1);
    assert_eq!((runs[0].seq, runs[0].entries.len()), (11, 30));
    assert_eq!(runs[0].deps, [Dep::Prefix(rows[9].hash.prefix())]);
    assert_eq!(rows_of(unpack(runs, held(&rows[..10]))), rows[10..]);
}

#[test]
fn a_run_ends_where_another_hand_was_seen() {
    let rows = written(&[(1, 1, true), (1, 2, true), (1, 1, true), (1, 1, true)]);
    let runs = pack(rows.clone(), |_, _| false);
    assert_eq!(runs.len(), 3);
    assert_eq!(runs[1].deps, [Dep::Back(1)]);
    // Its own previous entry is an ancestor already, and stays named: the signer said so.
    assert!(runs[2].deps.contains(&Dep::Back(1)) && runs[2].deps.contains(&Dep::Back(2)));
    assert_eq!(runs[2].entries.len(), 2);
    assert_eq!(rows_of(unpack(runs, |_, _| None)), rows);
}

#[test]
fn the_fleet_s_book_goes_first() {
    let rows = written(&[(2, 1, true), (0, 3, true), (1, 1, true)]);
    let books: Vec<BookId> = pack(rows, |_, _| false).iter().map(|run| run.book).collect();
    assert_eq!(books, [BookId::Fleet, truck(1), truck(2)]);
}

#[test]
fn what_follows_a_missing_entry_is_missing_for_the_same_reason() {
    let rows = written(&[(1, 1, true), (1, 1, true), (1, 1, true), (1, 2, true)]);
    let runs = pack(rows[1..].to_vec(), |_, _| false);
    let gone = Some(rows[0].hash.prefix());
    let unpacked = unpack(runs, |_, _| None);
    assert_eq!(unpacked.len(), 3);
    for one in unpacked {
        assert!(matches!(one, Unpacked::Missing { prefix, .. } if prefix == gone));
    }
}

#[test]
fn a_dep_before_the_parcel_s_beginning_is_nobody() {
    let rows = written(&[(1, 1, true)]);
    let mut runs = pack(rows, |_, _| false);
    for back in [1, 2, u64::MAX] {
        runs[0].deps = vec![Dep::Back(back)];
        assert!(matches!(unpack(runs.clone(), |_, _| None)[..], [Unpacked::Missing { prefix: None, .. }]));
    }
}

#[test]
fn a_doubtful_prefix_goes_as_a_whole_hash() {
    let rows = written(&[(1, 1, true), (1, 1, true)]);
    let doubtful = rows[0].hash;
    let runs = pack(rows[1..].to_vec(), |book, hash| book == truck(1) && hash == doubtful);
    assert_eq!(runs[0].deps, [Dep::Whole(doubtful)]);
    assert_eq!(rows_of(unpack(runs.clone(), held(&rows))), rows[1..]);
    let other = Known { hash: rows[1].hash, op: 1 };
    assert!(matches!(unpack(runs, |_, _| Some(other))[..], [Unpacked::Missing { .. }]));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]
    #[test]
    fn rows_come_out_as_they_went_in(
        steps in prop::collection::vec((0u8..4, 1u8..5, any::<bool>()), 1..50),
        cut in any::<prop::sample::Index>(),
    ) {
        let rows = written(&steps);
        let cut = cut.index(rows.len());
        let runs = pack(rows[cut..].to_vec(), |_, _| false);
        let mut sent = rows[cut..].to_vec();
        sent.sort_by_key(|row| row.book);
        prop_assert_eq!(rows_of(unpack(runs, held(&rows[..cut]))), sent);
    }
}
