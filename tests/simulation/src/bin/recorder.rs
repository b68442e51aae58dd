//! Records walks in a folder, one after the other, until it is killed: `recorder DIR [COUNT]`.
//!
//! Prints each id once its recording has returned. Before each it keeps a draft of the next, and prints
//! `draft ID` once that has returned.

use std::io::Write;
use std::path::Path;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::DraftRow;
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::{BEGIN_MS, entry, of_truck, phone_key, root, truck};
use sumpbook_trade::EntryId;

fn main() {
    let mut args = std::env::args().skip(1);
    let folder = args.next().unwrap();
    let count: u32 = args.next().map_or(u32::MAX, |count| count.parse().unwrap());
    let (mut ledger, _) = Ledger::open(Path::new(&folder), root(), phone_key(1)).unwrap();
    let mut out = std::io::stdout().lock();
    let start = uuid::Uuid::now_v7().into_bytes();
    for number in 0..count {
        let mut bytes = start;
        if let Some(tail) = bytes.last_chunk_mut::<4>() {
            *tail = number.to_be_bytes();
        }
        let id = EntryId::from_bytes(bytes);
        // Begun, then filled in: only the last state of a draft that was kept is to be found.
        for (body, later) in [("begun", 0), ("filled in", 1)] {
            let body = format!("draft {number}: {body}");
            let draft = DraftRow { id, body, changed_ms: i64::from(number) + later };
            ledger.store_mut().keep_draft(&draft).unwrap();
        }
        writeln!(out, "draft {id}").and_then(|()| out.flush()).unwrap();
        let at = BEGIN_MS + i64::from(number) * 60_000;
        let defects = if number.is_multiple_of(3) { vec![number] } else { Vec::new() };
        let walk = entry(id, Some(truck(number % 2)), at, section(number, &defects));
        ledger.record(&[of_truck(walk)], at).unwrap();
        writeln!(out, "{id}").and_then(|()| out.flush()).unwrap();
        if number.is_multiple_of(5) {
            ledger.settle().unwrap();
        }
    }
}
