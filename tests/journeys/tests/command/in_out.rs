//! What comes in and goes out of the shop as tables and files, by the command.

use super::binary::Desk;
use super::lines::handed_over;

const LATER: &str = "2026-10-21T09:00:00-06:00";

#[test]
fn a_binder_comes_in_after_its_dry_run_and_only_once() {
    let desk = handed_over();
    desk.write(
        "binder.csv",
        "Unit,Date,Hours,Task\nTH-01,10/12/2024,\"1,911.0\",separator\nTH-77,10/13/2024,1.0,separator\n",
    );
    let bring = |more: &[&str]| {
        desk.at_shop(LATER, &[&["bring-in", "binder.csv", "--what", "services"], more].concat())
    };
    let asks = bring(&[]).refused();
    assert!(asks.contains(r#""ask":"dates""#), "{asks}");
    let words = desk.ask(&["bring-in", "binder.csv", "--what", "services"]).refused();
    assert!(
        words.contains("10/12/2024 can be 12 October or 10 December. Nothing was brought in."),
        "{words}"
    );
    let mdy = ["--dates", "mdy", "--refused", "again.csv"];
    let told = bring(&mdy).json();
    assert_eq!((told["good"].as_u64(), told["refused-rows"].as_u64()), (Some(1), Some(1)));
    let mended = String::from_utf8(desk.read("again.csv")).unwrap();
    assert!(mended.contains("TH-77,10/13/2024,1.0,separator,Unit: no unit of that number"), "{mended}");
    let seen = told["seen"].as_str().unwrap();
    let other = "0".repeat(64);
    let refused = bring(&["--dates", "mdy", "--by", "Ilse Marrow", "--seen", &other]).refused();
    assert!(refused.contains("not what the dry run saw"), "{refused}");
    let done = bring(&["--dates", "mdy", "--by", "Ilse Marrow", "--seen", seen]).json();
    assert_eq!(done["good"].as_u64(), Some(1));
    assert_eq!(bring(&["--dates", "mdy"]).json()["here"].as_u64(), Some(1));
    let services = desk.ask(&["take-out", "services", "--unit", "TH-01"]).well();
    assert_eq!(
        services.lines().filter(|line| line.contains("2024-10-12T18:00:00Z")).count(),
        1,
        "{services}"
    );
    assert!(services.contains(",1911.0,Ilse Marrow,,no,the shop,brought-in,no,"), "{services}");
    let none = desk.ask(&["take-out", "everything"]);
    assert_eq!(none.code, 2, "{}", none.err);
}

#[test]
fn a_shop_is_backed_up_restored_exported_and_imported_by_its_phrase() {
    let desk = handed_over();
    let made = desk.run(&["--shop", "new", "--json", "init", "--name", "X", "--zone", "UTC"], "").json();
    assert_eq!(made["phrase"].as_str().unwrap().len(), 29, "shown when a shop is made");
    let phrase = desk.ask(&["--json", "phrase"]).json()["phrase"].as_str().unwrap().to_owned();
    let heads = |shop: &str| {
        let file = format!("{shop}.zip");
        desk.run(&["--shop", shop, "--json", "export", &file], "").json()["heads"].clone()
    };
    desk.ask(&["backup", "b.zip"]).well();
    let wrong = desk.run(&["--shop", "restored", "restore", "b.zip"], "7H2K-7H2K\n").refused();
    assert!(wrong.contains("six groups"), "{wrong}");
    let other = made["phrase"].as_str().unwrap();
    let wrong = desk.run(&["--shop", "restored", "restore", "b.zip"], other).refused();
    assert!(wrong.contains("does not open the shop's key"), "{wrong}");
    assert!(!desk.path("restored").exists());
    desk.run(&["--shop", "restored", "restore", "b.zip"], &phrase).well();
    let taken = desk.run(&["--shop", "restored", "restore", "b.zip"], &phrase).refused();
    assert!(taken.contains("is not empty"), "{taken}");
    let own = heads("shop");
    assert_eq!(heads("restored"), own);
    desk.run(&["--shop", "imported", "import", "shop.zip"], &phrase).well();
    assert_eq!(heads("imported"), own);
    let verified = desk.run(&["--shop", "imported", "verify"], "").well();
    assert!(verified.contains("All of it holds."), "{verified}");
}

#[test]
fn a_pack_is_verified_with_and_without_the_shop() {
    let desk = handed_over();
    let said = desk.ask(&["pack", "p.zip", "--unit", "TH-01"]).well();
    assert!(said.contains("kinds of gaps first"), "{said}");
    let held = desk.ask(&["verify", "--pack", "p.zip"]).well();
    assert!(held.contains("That is the key asked for."), "{held}");
    let elsewhere = desk.run(&["--shop", "nowhere", "verify", "--pack", "p.zip"], "").well();
    assert!(elsewhere.contains("Ask the shop by another way"), "{elsewhere}");
    let key = ["verify", "--pack", "p.zip", "--key", "00 00 00 00 00 00 00 00"];
    let another = desk.ask(&key).refused();
    assert!(another.contains("NOT the key asked for"), "{another}");
    let mut bytes = desk.read("p.zip");
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    desk.write("q.zip", bytes);
    desk.ask(&["verify", "--pack", "q.zip"]).refused();
}

#[test]
fn the_feed_is_a_file_and_an_address_that_ends() {
    let desk: Desk = handed_over();
    let made = desk.ask(&["--json", "calendar", "--make", "--to", "due.ics"]).json();
    assert!(made["address"].as_str().unwrap().starts_with("/calendar/"), "{made}");
    let feed = String::from_utf8(desk.read("due.ics")).unwrap();
    assert!(feed.starts_with("BEGIN:VCALENDAR\r\n") && feed.contains("TH-01: Oil"), "{feed}");
    assert!(desk.ask(&["--json", "calendar", "--end"]).json().get("address").is_none());
}

#[test]
fn a_pack_and_a_feed_are_of_what_the_shop_knew_then() {
    let desk: Desk = handed_over();
    // Before the phone's file was taken in the shop knew its own entries alone.
    let before = ["--as-of", "2026-10-19T00:00:00-06:00"];
    let counted = |args: &[&str]| desk.ask(args).json()["entries"].as_u64().unwrap();
    let all = counted(&["--json", "pack", "now.zip"]);
    let then = counted(&[&["--json", "pack", "then.zip"], before.as_slice()].concat());
    assert!(then > 0 && then < all, "{then} of {all}");
    let held = desk.ask(&["verify", "--pack", "then.zip"]).well();
    assert!(held.contains("That is the key asked for."), "{held}");
    desk.ask(&[&["calendar", "--to", "then.ics"], before.as_slice()].concat()).well();
    let feed = String::from_utf8(desk.read("then.ics")).unwrap();
    assert!(feed.starts_with("BEGIN:VCALENDAR\r\n") && feed.contains("SEQUENCE:0\r\n"), "{feed}");
    let both = desk.ask(&[&["calendar", "--make", "--to", "x.ics"], before.as_slice()].concat());
    assert_eq!(both.code, 2, "{}", both.err);
}

#[test]
fn every_verb_that_reads_the_books_says_what_was_known_then() {
    let desk: Desk = handed_over();
    for verb in ["day-sheet", "due", "take-out", "calendar", "pack", "verify", "phones"] {
        let help = desk.ask(&[verb, "--help"]).well();
        assert!(help.contains("--as-of <TIME>"), "{verb}: {help}");
    }
    assert!(desk.ask(&["demo", "--help"]).well().contains("9 November 2026 when left out"));
}
