//! A sync server of documents in `js/`, with the phones it needs. Whoever has no npm measures without it.

use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use sumpbook_daybook::ledger::Ledger;

/// A phone's day as that server gets it: for each entry its id as text, a length, payload and signature.
pub(super) fn day(phone: &Ledger) -> Vec<u8> {
    let mut bytes = Vec::new();
    for held in super::own(phone) {
        bytes.extend(held.row.id.to_string().as_bytes());
        let length = u32::try_from(held.row.payload.len() + 64).unwrap();
        bytes.extend(length.to_be_bytes());
        bytes.extend(&held.row.payload);
        bytes.extend(held.row.signature);
    }
    bytes
}

fn js() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("js")
}

/// Phones a second of that server.
pub(super) struct Driven {
    /// Its phones' work on this machine included.
    pub(super) by_the_clock: f64,
    /// As if it were held up by its own work alone.
    pub(super) by_its_work: f64,
}

/// Drives it with these days.
pub(super) fn drive(
    folder: &Path,
    days: &[u8],
    phones: u32,
    entries: u32,
    hands: usize,
) -> Result<Driven, String> {
    if !js().join("node_modules").exists() {
        let done = Command::new("npm")
            .args(["install", "--silent", "--no-audit", "--no-fund"])
            .current_dir(js())
            .status();
        if !done.is_ok_and(|status| status.success()) {
            return Err("its packages could not be got with npm".to_owned());
        }
    }
    let file = folder.join("days");
    std::fs::write(&file, days).map_err(|error| error.to_string())?;
    let mut server = Command::new("node")
        .arg("server.js")
        .arg(folder.join("documents"))
        .current_dir(js())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| error.to_string())?;
    let mut to = server.stdin.take().ok_or("no way to it")?;
    let mut from = BufReader::new(server.stdout.take().ok_or("no way from it")?);
    let mut line = || {
        let mut line = String::new();
        from.read_line(&mut line).map(|_| line.trim().to_owned()).map_err(|error| error.to_string())
    };
    let port = line()?;
    let mut work = || {
        to.write_all(b"\n").map_err(|error| error.to_string())?;
        line()?.parse::<f64>().map_err(|error| error.to_string())
    };
    let before = work()?;
    let driven = Command::new("node")
        .args(["phones.js", &port])
        .arg(&file)
        .args([phones.to_string(), entries.to_string(), hands.to_string()])
        .current_dir(js())
        .output()
        .map_err(|error| error.to_string())?;
    let own = (work()? - before) / 1e6;
    drop(to);
    server.wait().map_err(|error| error.to_string())?;
    let said = String::from_utf8_lossy(&driven.stdout).into_owned();
    let figures: Vec<f64> = said.split_whitespace().filter_map(|figure| figure.parse().ok()).collect();
    let [seconds, median, p99] = figures.as_slice() else {
        return Err(format!("its phones ended early: {}", String::from_utf8_lossy(&driven.stderr)));
    };
    let phones = f64::from(phones);
    println!(
        "sync server of documents: {phones} phones with {entries} changes each in {seconds:.2} s, {:.0} phones/s; \
         an acknowledgement: median {median:.0} ms, p99 {p99:.0} ms; its own processor time {own:.2} s",
        phones / seconds
    );
    Ok(Driven { by_the_clock: phones / seconds, by_its_work: phones / own })
}
