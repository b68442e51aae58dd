//! What goes out of a shop, read by other people's programs.

use std::path::Path;
use std::process::Command;

use sumpbook_daybook::ledger::NewEntry;
use sumpbook_outside::hex::hex;
use sumpbook_outside::program::{answers, ask, here};
use sumpbook_shop::archive::{Archive, Purpose};
use sumpbook_shop::table_out::{Kind, Of, table};
use sumpbook_shop::{
    Hand, InitOptions, NewPerson, NewTruck, Shop, calendar_feed, proof, sealed_key, whole_fleet,
};
use sumpbook_trade::record::{HourReading, How, Meter, Role, ServiceDone, Source};
use sumpbook_trade::{Entry, EntryId, Fact, Features, Stamp, Tenths};

fn at(text: &str) -> Stamp {
    text.parse().unwrap()
}

/// A unit with a separator element not done yet, two readings, and a service in between.
fn shop(folder: &Path) -> Shop {
    let begin = at("2026-10-18T12:00:00-06:00");
    let options = InitOptions {
        name: "Tern Hollow Water, ñ; \\".into(),
        zone: "America/Denver".into(),
        demo: true,
        now: begin,
    };
    let mut shop = Shop::init(folder, &options).unwrap();
    let nobody = Hand::nobody(begin).received(begin);
    let ilse = NewPerson { name: "Ilse Marrow".into(), role: Role::Manager, gone: false };
    let ilse = Hand { person: Some(shop.add_person(ilse, &nobody).unwrap()), ..nobody };
    let new = NewTruck {
        door: "TH-01".into(),
        serial: Some("=1+1".into()),
        plate: None,
        features: Features::default(),
        in_service: "2022-03-31".parse().unwrap(),
        in_service_hours: Tenths(0),
        annual_inspection: None,
    };
    let truck = shop.add_truck(new, &ilse).unwrap();
    let mut write = |n: u8, when: &str, hours: Option<i64>, note: &str, fact: Fact| {
        let entry = Entry {
            id: EntryId::from_bytes([n; 16]),
            unit: Some(truck),
            set: None,
            at: at(when),
            clock_off_ms: None,
            person: ilse.person,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: hours.map(Tenths),
            note: Some(note.to_owned()).filter(|note| !note.is_empty()),
            source: Source::Shop,
            fact,
        };
        shop.ledger.record(&[NewEntry { entry, truck: Some(truck) }], at(when).unix_ms()).unwrap();
    };
    let read = |figure| {
        let figure = Tenths(figure);
        HourReading { meter: Meter::Compressor, figure, how: How::Said, kept_when_asked: false, photo: None }
            .into()
    };
    let done = |task: &str| {
        let tasks = vec![task.into()];
        ServiceDone { tasks, oil: None, parts: vec![], oil_reason: None, photo: None }.into()
    };
    write(1, "2025-11-14T12:00:00-07:00", Some(20_000), "", done("oil-and-filters"));
    write(2, "2025-11-20T12:00:00-07:00", None, "", done("cooler-and-scavenge"));
    write(3, "2026-10-19T16:30:00-06:00", None, "=cmd|' /C calc'!A0", read(22_000));
    write(4, "2026-11-01T01:40:00-07:00", None, "aceite, «mirilla»\nabajo", read(22_505));
    shop.ledger.settle().unwrap();
    shop
}

#[test]
fn icalendar_reads_the_feed() {
    if !answers("python3", &["-c", "import icalendar"]) {
        println!("skipped: no python3 with icalendar here");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let mut shop = shop(&folder.path().join("shop"));
    let file = folder.path().join("feed.ics");
    let mut read = |when: &str| -> serde_json::Value {
        let feed = calendar_feed::keep(&mut shop, at(when)).unwrap();
        std::fs::write(&file, feed.to_ics("es")).unwrap();
        serde_json::from_str(&ask("python3", &["feed_reader.py", file.to_str().unwrap()])).unwrap()
    };
    let first = read("2026-11-02T08:00:00-07:00");
    assert_eq!(first["name"], "Sumpbook, Tern Hollow Water, ñ; \\: lo que vence");
    assert!(first["longest"].as_u64().unwrap() <= 75, "{first}");
    let days: Vec<&str> =
        first["events"].as_array().unwrap().iter().map(|e| e["day"].as_str().unwrap()).collect();
    // Twelve months after each service, sixty after coming into service.
    assert_eq!(days, ["2026-11-20", "2026-11-14", "2027-03-31"], "{first}");
    for event in first["events"].as_array().unwrap() {
        assert_eq!((event["days"].as_u64(), event["sequence"].as_u64()), (Some(1), Some(0)));
        assert_eq!(event["status"], "CONFIRMED");
        assert!(event["summary"].as_str().unwrap().ends_with(", último día bueno"), "{event}");
    }
    assert_eq!(read("2026-11-03T08:00:00-07:00"), first, "a day later nothing moved");
}

// RFC 5545, 3.3.10: a repetition passes over days that a month does not have, where a service takes the month's last
// day. So each day is told by itself, whole (3.8.2.4), and never by a rule; every line ends with CR LF (3.1).
#[test]
fn the_feed_tells_each_day_by_itself() {
    let folder = tempfile::tempdir().unwrap();
    let mut shop = shop(&folder.path().join("shop"));
    let feed = calendar_feed::keep(&mut shop, at("2026-11-02T08:00:00-07:00")).unwrap().to_ics("en");
    assert_eq!(feed.matches("BEGIN:VEVENT").count(), 3);
    assert_eq!(feed.matches("DTSTART;VALUE=DATE:").count(), 3);
    assert!(!feed.contains("RRULE") && !feed.contains("DUE"), "{feed}");
    assert_eq!(feed.matches('\n').count(), feed.matches("\r\n").count());
    for once in ["UID:", "DTSTAMP:"] {
        let each = feed.split("BEGIN:VEVENT").skip(1).map(|event| event.matches(once).count());
        assert!(each.into_iter().all(|count| count == 1), "{once} once an item");
    }
}

// RFC 4180, section 2, rules 1, 5, 6 and 7: its own examples written and read back.
#[test]
fn a_table_is_quoted_as_rfc_4180_says() {
    use sumpbook_shop::table_out::{Cell, sheet_of};
    let heads = ["aaa", "b\"bb", "ccc"].map(str::to_owned);
    let rows = [vec![Cell::text("aaa"), Cell::text("b \r\nbb"), Cell::text("ccc")]];
    let written = String::from_utf8(sheet_of(&heads, rows, false)).unwrap();
    assert_eq!(written, "aaa,\"b\"\"bb\",ccc\r\naaa,\"b \r\nbb\",ccc\r\n");
}

#[test]
fn pandas_reads_the_tables() {
    if !answers("python3", &["-c", "import pandas"]) {
        println!("skipped: no python3 with pandas here");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let shop = shop(&folder.path().join("shop"));
    let file = folder.path().join("readings.csv");
    let sheet = table(&shop.ledger, Kind::Readings, Of::Fleet, at("2026-11-02T08:00:00-07:00")).unwrap();
    std::fs::write(&file, sheet.to_csv(true)).unwrap();
    let said: serde_json::Value =
        serde_json::from_str(&ask("python3", &["table_reader.py", file.to_str().unwrap()])).unwrap();
    assert_eq!(said["heads"], serde_json::json!(sheet.heads));
    assert_eq!(said["rows"], 3);
    assert_eq!(said["figures"], serde_json::json!([2000.0, 2200.0, 2250.5]));
    assert_eq!((&said["figures-are-numbers"], &said["same-moments"]), (&true.into(), &true.into()));
    let notes = serde_json::json!([null, "'=cmd|' /C calc'!A0", "aceite, «mirilla»\nabajo"]);
    assert_eq!(said["notes"], notes);
}

#[test]
fn a_pack_is_checked_by_its_own_script_with_pycose() {
    if !answers("python3", &["-c", "import pycose, cbor2"]) {
        println!("skipped: no python3 with pycose here");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let shop = shop(&folder.path().join("shop"));
    let file = folder.path().join("pack.zip");
    let ledger = whole_fleet::still(&shop).unwrap();
    let manifest = proof::pack(
        &ledger,
        &shop.folder,
        Of::Fleet,
        &file,
        true,
        proof::Moments::now(at("2026-11-02T08:00:00-07:00")),
    )
    .unwrap();
    // The script as it stands in the pack.
    let mut archive = Archive::open(&file, Purpose::Evidence).unwrap();
    let script = folder.path().join("check.py");
    archive.extract("check.py", &script).unwrap();
    let said = ask("python3", &[script.to_str().unwrap(), file.to_str().unwrap()]);
    let all = manifest.entries;
    assert!(said.contains(&format!("{all} of {all} signatures hold")), "{said}");
    assert!(said.contains("All that was checked holds."), "{said}");

    // Unpacked, with one digit of one entry changed: the list, the hash and the signature each tell.
    let place = folder.path().join("unpacked");
    ask("python3", &["-m", "zipfile", "-e", file.to_str().unwrap(), place.to_str().unwrap()]);
    let entries = place.join("entries.jsonl");
    let text = std::fs::read_to_string(&entries).unwrap();
    let last = text.lines().last().unwrap();
    let cose = last.split("\"cose\":\"").nth(1).unwrap().split('"').next().unwrap();
    // Within the payload, before the 64 bytes of the signature and their head.
    let at = cose.len() - 2 * 66 - 1;
    let mut other = cose.to_owned();
    other.replace_range(at..=at, if &cose[at..=at] == "0" { "1" } else { "0" });
    std::fs::write(&entries, text.replace(cose, &other)).unwrap();
    let out = Command::new("python3").arg(&script).arg(&place).output().unwrap();
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(!out.status.success(), "{said}");
    for told in ["entries.jsonl: changed", "its hash is another", "its signature does not hold"] {
        assert!(said.contains(told), "{told}: {said}");
    }
}

#[test]
fn an_exported_book_opens_in_javascript() {
    if !answers("node", &["--version"]) || !here().join("js/node_modules/@automerge/automerge").exists() {
        println!("skipped: no node, or no packages (npm ci in tests/outside/js)");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let shop = shop(&folder.path().join("shop"));
    sealed_key::make_phrase(&shop.folder, shop.ledger.root().fleet, shop.ledger.own_key()).unwrap();
    let file = folder.path().join("fleet.zip");
    let ledger = whole_fleet::still(&shop).unwrap();
    let manifest =
        whole_fleet::export(&ledger, &shop.folder, &file, at("2026-11-02T08:00:00-07:00")).unwrap();
    let mut archive = Archive::open(&file, Purpose::WholeFleet).unwrap();
    assert_eq!(manifest.heads.len(), 3, "the fleet's book and two years of TH-01");
    for (book, heads) in &manifest.heads {
        let document = archive.read(&format!("books/{book}.automerge"), u64::MAX).unwrap().unwrap();
        let path = folder.path().join("book.hex");
        std::fs::write(&path, hex(&document)).unwrap();
        let said: serde_json::Value =
            serde_json::from_str(&ask("node", &["js/load.mjs", path.to_str().unwrap()])).unwrap();
        assert_eq!(said["heads"], serde_json::json!(heads), "{book}");
    }
}
