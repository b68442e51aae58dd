//! Trying the waiting shelf again, until nothing more comes in.

use sumpbook_trade::EntryId;

use super::admit_runs::{admit_runs, known, refused_row};
use super::shelf::{Shelved, read_part};
use super::{ExchangeError, Fate, Reason, memory};
use crate::book::BookId;
use crate::ledger::{Admission, Incoming, Ledger};
use crate::parcel::Run;

/// Admits what on the shelf can be admitted now. Returns how many entries came in.
pub(super) fn shelf_again(ledger: &mut Ledger, now_ms: i64) -> Result<usize, ExchangeError> {
    let mut came_in = 0;
    loop {
        let now_in = one_pass(ledger, now_ms)?;
        if now_in == 0 {
            return Ok(came_in);
        }
        came_in += now_in;
    }
}

fn one_pass(ledger: &mut Ledger, now_ms: i64) -> Result<usize, ExchangeError> {
    let mut came_in = 0;
    let mut alone: Vec<(i64, Incoming)> = Vec::new();
    let mut done = Vec::new();
    for row in ledger.store().waiting()? {
        let part = read_part(&row.part);
        // Placed again after a lost fork, the same entries came in at another place; at the shop, where a
        // lost branch never comes in, the old placing waits for nothing.
        if memory::is_shop(ledger) && part.as_ref().map_or(Ok(false), |part| all_here(ledger, part))? {
            done.push(row.no);
            continue;
        }
        match part {
            Some(Shelved::Entry(entry)) if ledger.key(entry.place.actor.key()).is_some() => {
                alone.push((row.no, entry));
            }
            Some(Shelved::Entry(_)) => {}
            Some(Shelved::Runs(runs)) => {
                let mut ready = false;
                for run in &runs {
                    ready = ready || begins(ledger, run)?;
                }
                if !ready {
                    continue;
                }
                let through = admit_runs(ledger, runs, now_ms, row.device)?;
                let fresh = |entry: &&super::ToldEntry| entry.fate == Fate::Admitted;
                came_in += through.entries.iter().filter(fresh).count();
                ledger.store_mut().replace_waiting(row.no, &through.parts, now_ms)?;
            }
            None => done.push(row.no),
        }
    }
    let entries: Vec<Incoming> = alone.iter().map(|(_, entry)| entry.clone()).collect();
    let mut refused = Vec::new();
    for ((no, entry), admission) in alone.iter().zip(ledger.admit(&entries, now_ms, None)?) {
        match admission {
            Admission::Waiting { .. } => continue,
            Admission::Admitted(_) => came_in += 1,
            Admission::Known(_) => {}
            Admission::Refused(refusal) => {
                refused.push(refused_row(entry, Reason::Entry(refusal), now_ms));
            }
        }
        done.push(*no);
    }
    ledger.store_mut().keep_refused(&refused)?;
    ledger.store_mut().drop_waiting(&done)?;
    Ok(came_in)
}

/// Whether all that a run begins on is here.
fn begins(ledger: &Ledger, run: &Run) -> Result<bool, ExchangeError> {
    for dep in &run.deps {
        if known(ledger, run.book, dep)?.is_none() {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Whether every entry of a part stands in its book with the same content, at whatever place.
fn all_here(ledger: &Ledger, part: &Shelved) -> Result<bool, ExchangeError> {
    let mut entries: Vec<(BookId, EntryId, &[u8])> = Vec::new();
    match part {
        Shelved::Entry(entry) => entries.push((entry.place.book, entry.id(), &entry.payload)),
        Shelved::Runs(runs) => {
            for run in runs {
                entries
                    .extend(run.entries.iter().map(|entry| (run.book, entry.id, entry.payload.as_slice())));
            }
        }
    }
    for (book, id, payload) in entries {
        let held = ledger.store().truth().by_id(id)?;
        if !held.iter().any(|held| held.row.book == book && held.row.payload == payload) {
            return Ok(false);
        }
    }
    Ok(true)
}
