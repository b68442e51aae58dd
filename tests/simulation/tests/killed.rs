//! Killed at any moment: whatever was said to be recorded is there, and what was begun is there as a draft.

use std::collections::HashSet;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use sumpbook_daybook::book::document::rebuild;
use sumpbook_daybook::ledger::Incoming;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_simulation::fleet::{BEGIN_MS, beginning, ledger_in, phone_key, root, shop_key};
use sumpbook_trade::EntryId;

/// Kills without a word from outside; `SUMPBOOK_KILLS` asks for another number.
const KILLS: u32 = 200;

/// A folder is looked at from its beginning after each kill, so a new one is begun now and then.
const KILLS_A_FOLDER: u32 = 25;

fn kills() -> u32 {
    std::env::var("SUMPBOOK_KILLS").ok().and_then(|kills| kills.parse().ok()).unwrap_or(KILLS)
}

/// A phone's folder with the shop's first entries in it.
fn prepared(folder: &Path) {
    let shop_folder = tempfile::tempdir().unwrap();
    let mut shop = ledger_in(shop_folder.path(), shop_key(), 0);
    shop.record(&beginning(2, &[1], 1_000), BEGIN_MS).unwrap();
    let rows = shop.store().truth().between(0, i64::MAX, i64::MAX).unwrap();
    let parts: Vec<_> = rows.iter().map(|held| Incoming::of_row(root().fleet, &held.row)).collect();
    ledger_in(folder, phone_key(1), 0).admit(&parts, BEGIN_MS, None).unwrap();
}

#[test]
fn what_was_recorded_is_there_whenever_it_is_killed() {
    let kills = kills();
    let mut folder = tempfile::tempdir().unwrap();
    let (mut said, mut begun) = (HashSet::new(), None);
    let mut in_all = 0;
    let mut random = 0x5eed_u64;
    for kill in 0..kills {
        if kill.is_multiple_of(KILLS_A_FOLDER) {
            folder = tempfile::tempdir().unwrap();
            prepared(folder.path());
            said.clear();
            begun = None;
        }
        // Among the first are some before anything was printed; most strike while it writes, also on a busy machine.
        random = random.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        let wait = Duration::from_micros((random >> 33) % 150_000);
        let mut child = Command::new(env!("CARGO_BIN_EXE_recorder"))
            .arg(folder.path())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        std::thread::sleep(wait);
        // SIGKILL on every Unix.
        child.kill().unwrap();
        let output = child.wait_with_output().unwrap();
        let told = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(told.is_empty(), "the recorder failed by itself at kill {kill}: {told}");
        for line in BufReader::new(&output.stdout[..]).lines().map_while(Result::ok) {
            // A line that was cut off is one that was not said.
            match (line.strip_prefix("draft "), line.parse::<EntryId>()) {
                (Some(id), _) => begun = id.parse::<EntryId>().ok(),
                (None, Ok(id)) => {
                    in_all += usize::from(said.insert(id));
                }
                (None, Err(_)) => {}
            }
        }
        look(folder.path(), kill, &said, begun);
    }
    println!("killed {kills} times; {in_all} entries were said to be recorded and none is missing");
    assert!(in_all > kills as usize, "it was killed before it could record anything");
}

fn look(folder: &Path, kill: u32, said: &HashSet<EntryId>, begun: Option<EntryId>) {
    let (mut ledger, salvaged) = Ledger::open(folder, root(), phone_key(1)).unwrap();
    assert!(salvaged.is_none(), "kill {kill} damaged the file");
    ledger.store().check().unwrap();
    let truth = ledger.store().truth();
    for id in said {
        assert_eq!(truth.by_id(*id).unwrap().len(), 1, "kill {kill}: {id} was said to be recorded");
        assert!(ledger.store().draft(*id).unwrap().is_none(), "kill {kill}: {id} is an entry and a draft");
    }
    if let Some(id) = begun.filter(|id| !said.contains(id)) {
        // Begun: it is a draft still, or its recording was done and not yet said.
        let draft = ledger.store().draft(id).unwrap();
        assert_eq!(draft.is_some(), truth.by_id(id).unwrap().is_empty(), "kill {kill}: draft {id}");
        if let Some(draft) = draft {
            // What was typed into it last is what stands in it: its number, which its id carries too.
            let number = u32::from_be_bytes(id.0.into_bytes()[12..].try_into().unwrap());
            let whole = (format!("draft {number}: filled in"), i64::from(number) + 1);
            assert_eq!((draft.body, draft.changed_ms), whole, "kill {kill}: draft {id}");
        }
    }
    for book in truth.books().unwrap() {
        let rows = truth.of_book(book).unwrap();
        let facts = rows.iter().filter(|held| truth.fact(held.n).unwrap().is_some()).count();
        assert_eq!(facts, rows.len(), "kill {kill}: an entry without its projection");
        let mut heads: Vec<_> =
            rebuild(rows.into_iter().map(|held| held.row)).unwrap().get_heads().iter().map(|h| h.0).collect();
        heads.sort_unstable();
        let held: Vec<_> = truth.heads(book).unwrap().iter().map(|h| h.0).collect();
        assert_eq!(heads, held, "kill {kill}");
    }
    ledger.settle().unwrap();
}
