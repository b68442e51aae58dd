//! The hub as a service: its unit reads, and it ends in order when it is asked to.

use std::io::Read;
use std::path::Path;
use std::process::{Command, Stdio};

use sumpbook_hub_tests::{Yard, exchange, walk};

#[test]
fn the_unit_is_one_that_systemd_reads_without_a_word() {
    if Command::new("systemd-analyze").arg("--version").output().is_err() {
        println!("skipped: systemd-analyze is not here");
        return;
    }
    let unit = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../core/shop/sumpbook.service");
    let unit = std::fs::read_to_string(unit).unwrap();
    // The program stands elsewhere on this machine.
    let here = unit
        .replace("ExecStart=/usr/local/bin/sumpbook", &format!("ExecStart={}", env!("CARGO_BIN_EXE_hub")));
    assert_ne!(here, unit);
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sumpbook.service");
    std::fs::write(&file, here).unwrap();
    let done = Command::new("systemd-analyze").args(["verify", "--man=no"]).arg(&file).output().unwrap();
    let told = String::from_utf8_lossy(&done.stderr).into_owned();
    let of_ours: Vec<&str> = told.lines().filter(|line| line.contains("sumpbook.service")).collect();
    assert!(done.status.success() && of_ours.is_empty(), "{told}");
}

#[test]
fn it_ends_in_order_when_the_system_asks() {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 1, 1);
    yard.begin();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    walk(&mut phone, 0, 1);
    assert!(exchange(&mut phone).unwrap().whole);
    let mut hub = yard.taken();
    let asked = Command::new("kill").args(["-TERM", &hub.id().to_string()]).stdout(Stdio::null()).status();
    assert!(asked.unwrap().success());
    let ended = hub.wait().unwrap();
    assert!(ended.success(), "{ended}");
    // Its log was taken into the book: nothing is left beside it.
    let beside = yard.folder().join("book.db-wal");
    let left = std::fs::File::open(beside).map_or(0, |mut log| log.read_to_end(&mut Vec::new()).unwrap());
    assert_eq!(left, 0);
}
