//! A shop restored from a backup that was made while phones came in: by the command alone, with the phrase.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};

use sumpbook_daybook::exchange::counts;
use sumpbook_daybook::store::Store;
use sumpbook_hub_tests::{Yard, exchange, walk};

/// Runs the command; what it says, as JSON.
fn sumpbook(shop: &Path, arguments: &[&str], typed: &str) -> serde_json::Value {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hub"));
    command.args(["--json".as_ref(), "--shop".as_ref(), shop.as_os_str()]).args(arguments);
    let mut child =
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    child.stdin.take().unwrap().write_all(typed.as_bytes()).unwrap();
    let out = child.wait_with_output().unwrap();
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(out.status.success(), "{arguments:?}: {said}{}", String::from_utf8_lossy(&out.stderr));
    serde_json::from_str(&said).unwrap_or_else(|e| panic!("{e}: {said}"))
}

#[test]
fn phones_notice_a_restored_shop_fill_it_again_and_are_not_enrolled_anew() {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 2);
    yard.begin();
    let folders = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    let mut phones = [yard.phone(folders[0].path(), 1, &[0, 1]), yard.phone(folders[1].path(), 2, &[0, 1])];
    let mut recorded = Vec::new();
    for (number, phone) in (0..).zip(phones.iter_mut()) {
        recorded.push(walk(phone, number, number));
        exchange(phone).unwrap();
    }
    let phrase = sumpbook(yard.folder(), &["phrase"], "")["phrase"].as_str().unwrap().to_owned();
    let elsewhere = tempfile::tempdir().unwrap();
    let file = elsewhere.path().join("evening.zip");
    // The second phone comes in again and again while the backup is made.
    let done = AtomicBool::new(false);
    let [first, second] = &mut phones;
    let more = std::thread::scope(|scope| {
        let busy = scope.spawn(|| {
            let mut more = Vec::new();
            while !done.load(Ordering::Relaxed) || more.is_empty() {
                more.push(walk(second, 1, 100 + u32::try_from(more.len()).unwrap()));
                exchange(second).unwrap();
            }
            more
        });
        sumpbook(yard.folder(), &["backup", file.to_str().unwrap()], "");
        done.store(true, Ordering::Relaxed);
        busy.join().unwrap()
    });
    recorded.extend(more);
    // What comes after the backup is lost with the folder.
    recorded.push(walk(first, 0, 900));
    exchange(first).unwrap();
    yard.kill();
    let place = elsewhere.path().join("shop");
    sumpbook(&place, &["restore", file.to_str().unwrap()], &format!("{}\n", phrase.to_lowercase()));
    yard.put_back(&place);
    let held = |yard: &Yard| {
        let store = Store::reader(yard.folder()).unwrap();
        recorded.iter().filter(|id| !store.truth().by_id(**id).unwrap().is_empty()).count()
    };
    assert!(held(&yard) < recorded.len(), "something was lost");
    yard.begin();
    for phone in phones.iter_mut() {
        let told = exchange(phone).unwrap();
        assert!(told.shop_set_back && !told.two_shops, "{told:?}");
    }
    for _ in 0..3 {
        for phone in phones.iter_mut() {
            exchange(phone).unwrap();
        }
    }
    assert_eq!(held(&yard), recorded.len());
    let store = Store::reader(yard.folder()).unwrap();
    for phone in &phones {
        assert_eq!(counts(phone.ledger()).unwrap().on_this_phone, 0);
        for book in store.truth().books().unwrap() {
            let theirs = phone.ledger().store().truth().heads(book).unwrap();
            assert_eq!(theirs, store.truth().heads(book).unwrap(), "{book:?}");
        }
    }
    assert!(sumpbook(yard.folder(), &["verify"], "")["findings"].as_array().unwrap().is_empty());
}
