//! Trying the waiting shelf again, until nothing more comes in.

use super::admit_runs::{admit_runs, known, refused_row};
use super::shelf::{Shelved, read_part};
use super::{ExchangeError, Fate, Reason};
use crate::ledger::{Admission, Incoming, Ledger};
use crate::parcel::Dep;

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
        match read_part(&row.part) {
            Some(Shelved::Entry(entry)) if ledger.key(entry.place.actor.key()).is_some() => {
                alone.push((row.no, entry));
            }
            Some(Shelved::Entry(_)) => {}
            Some(Shelved::Runs(runs)) => {
                let Some(first) = runs.first() else { continue };
                if known(ledger, first.book, &Dep::Prefix(row.missing))?.is_none() {
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
