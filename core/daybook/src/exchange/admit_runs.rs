//! Runs of a parcel through the gate; what cannot be placed yet goes to the shelf.

use std::cell::Cell;
use std::collections::BTreeMap;

use super::{ExchangeError, Fate, Reason, ToldEntry, shelf};
use crate::book::{BookId, EntryRow};
use crate::gate::ChangeHash;
use crate::ledger::{Admission, Built, Incoming, Ledger};
use crate::parcel::{Dep, Known, Run, Unpacked, unpack};
use crate::store::{RefusedRow, StoreError, WaitingPart};

/// What became of runs.
pub(super) struct Through {
    /// Each entry in order.
    pub(super) entries: Vec<ToldEntry>,
    /// What is to go on the shelf.
    pub(super) parts: Vec<WaitingPart>,
}

/// Admits what it can and keeps what is refused; the caller puts the parts on the shelf.
pub(super) fn admit_runs(
    ledger: &mut Ledger,
    runs: Vec<Run>,
    now_ms: i64,
    carrier: Option<[u8; 8]>,
) -> Result<Through, ExchangeError> {
    let unpacked = unpack_known(ledger, runs.clone())?;
    let mut parts = waiting_runs(ledger, &runs, &unpacked, carrier);
    let mut entries = Vec::with_capacity(unpacked.len());
    let mut rows = Vec::with_capacity(unpacked.len());
    for one in unpacked {
        entries.push(match one {
            Unpacked::Row(row) => {
                let told = placed(&row);
                rows.push(row);
                told
            }
            Unpacked::Missing { book, id, prefix } => {
                let fate = prefix.map_or(Fate::Refused(Reason::Malformed), Fate::Waiting);
                ToldEntry { id, book, hash: None, fate }
            }
            Unpacked::Unbuildable { id, .. } => {
                let fate = Fate::Refused(Reason::Malformed);
                ToldEntry { id, book: BookId::Fleet, hash: None, fate }
            }
        });
    }
    admit_rows(ledger, Rows { rows, hold: false }, &mut entries, &mut parts, now_ms, carrier)?;
    Ok(Through { entries, parts })
}

/// The same of rows that were seen to hold before.
pub(super) fn admit_ahead(
    ledger: &mut Ledger,
    rows: Vec<EntryRow>,
    now_ms: i64,
    carrier: Option<[u8; 8]>,
) -> Result<Through, ExchangeError> {
    let mut entries: Vec<ToldEntry> = rows.iter().map(placed).collect();
    let mut parts = Vec::new();
    admit_rows(ledger, Rows { rows, hold: true }, &mut entries, &mut parts, now_ms, carrier)?;
    Ok(Through { entries, parts })
}

fn placed(row: &EntryRow) -> ToldEntry {
    ToldEntry { id: row.id, book: row.book, hash: Some(row.hash), fate: Fate::Known }
}

/// Rows with their changes built, and whether their signatures were seen to hold.
struct Rows {
    rows: Vec<EntryRow>,
    hold: bool,
}

fn admit_rows(
    ledger: &mut Ledger,
    Rows { rows, hold }: Rows,
    entries: &mut [ToldEntry],
    parts: &mut Vec<WaitingPart>,
    now_ms: i64,
    carrier: Option<[u8; 8]>,
) -> Result<(), ExchangeError> {
    let fleet = ledger.root().fleet;
    let built: Vec<Built> = rows
        .into_iter()
        .map(|row| Built { incoming: Incoming::of_row(fleet, &row), row, holds: hold })
        .collect();
    let admissions = ledger.admit_built(&built, now_ms, carrier)?;
    let mut refused = Vec::new();
    let placed = entries.iter_mut().filter(|entry| entry.hash.is_some());
    for ((entry, Built { incoming, .. }), admission) in placed.zip(&built).zip(admissions) {
        let signer = Some(incoming.place.actor.key().0);
        entry.fate = match admission {
            Admission::Admitted(_) => Fate::Admitted,
            Admission::Known(_) => Fate::Known,
            Admission::Waiting { missing } => {
                parts.push((shelf::wrap(incoming), missing, signer));
                Fate::Waiting(missing)
            }
            Admission::Refused(refusal) => {
                let reason = Reason::Entry(refusal);
                refused.push(refused_row(incoming, reason, now_ms));
                Fate::Refused(reason)
            }
        };
    }
    ledger.store_mut().keep_refused(&refused)?;
    Ok(())
}

/// An entry refused for good, as it is kept.
pub(super) fn refused_row(incoming: &Incoming, reason: Reason, now_ms: i64) -> RefusedRow {
    RefusedRow {
        bytes: shelf::wrap(incoming),
        reason: reason.word().to_owned(),
        device: Some(incoming.place.actor.key().0),
        id: Some(incoming.id().bytes()),
        received_ms: now_ms,
    }
}

pub(super) fn unpack_known(ledger: &Ledger, runs: Vec<Run>) -> Result<Vec<Unpacked>, StoreError> {
    let failed: Cell<Option<StoreError>> = Cell::new(None);
    let found = unpack(runs, |book, dep| {
        known(ledger, book, dep).unwrap_or_else(|error| {
            failed.set(Some(error));
            None
        })
    });
    // A read that failed is not a predecessor that is missing.
    failed.into_inner().map_or(Ok(found), Err)
}

/// The change of a book that a run names, when it is here.
pub(super) fn known(ledger: &Ledger, book: BookId, dep: &Dep) -> Result<Option<Known>, StoreError> {
    let truth = ledger.store().truth();
    let hash = match dep {
        Dep::Back(_) => None,
        Dep::Prefix(prefix) => truth.by_prefix(book, *prefix)?,
        Dep::Whole(hash) => Some(*hash),
    };
    let Some(hash) = hash else { return Ok(None) };
    Ok(truth.op_of(book, &hash)?.map(|op| Known { hash, op }))
}

/// The runs whose beginnings are missing, one part for each book, each naming only what lies outside it
/// or within it.
fn waiting_runs(
    ledger: &Ledger,
    runs: &[Run],
    unpacked: &[Unpacked],
    carrier: Option<[u8; 8]>,
) -> Vec<WaitingPart> {
    #[derive(Clone, Copy)]
    enum At {
        Placed(ChangeHash),
        Shelf(u64),
        Nowhere,
    }
    let mut positions: BTreeMap<BookId, (Vec<At>, u64)> = BTreeMap::new();
    let mut shelved: BTreeMap<BookId, (Vec<Run>, [u8; 8])> = BTreeMap::new();
    let mut results = unpacked.iter();
    for run in runs {
        let of_run: Vec<&Unpacked> = results.by_ref().take(run.entries.len()).collect();
        let (before, on_shelf) = positions.entry(run.book).or_default();
        let missing = match of_run.first() {
            Some(Unpacked::Missing { prefix: Some(prefix), .. }) => Some(*prefix),
            _ => None,
        };
        if let Some(prefix) = missing {
            let outside = |dep: &Dep| match dep {
                Dep::Back(back) => {
                    let at = usize::try_from(*back).ok().and_then(|back| before.len().checked_sub(back));
                    match at.and_then(|at| before.get(at)) {
                        Some(At::Placed(hash)) => Dep::Whole(*hash),
                        Some(At::Shelf(at)) => Dep::Back(on_shelf.saturating_sub(*at)),
                        Some(At::Nowhere) | None => Dep::Back(u64::MAX),
                    }
                }
                other => *other,
            };
            let deps = run.deps.iter().map(outside).collect();
            let (list, _) = shelved.entry(run.book).or_insert_with(|| (Vec::new(), prefix));
            list.push(Run { deps, ..run.clone() });
        }
        for result in of_run {
            before.push(match result {
                Unpacked::Row(row) => At::Placed(row.hash),
                Unpacked::Missing { prefix: Some(_), .. } if missing.is_some() => At::Shelf(*on_shelf),
                _ => At::Nowhere,
            });
            if missing.is_some() {
                *on_shelf = on_shelf.saturating_add(1);
            }
        }
    }
    let fleet = ledger.root().fleet;
    let wrap = |(runs, prefix)| (shelf::wrap_runs(fleet, runs), prefix, carrier);
    shelved.into_values().map(wrap).collect()
}
