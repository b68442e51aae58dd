//! The shop's day by the command: the sheet at 17:00 and 06:00, what is certified, settled, due and proved.

use serde_json::{Value, json};
use sumpbook_shop::Shop;
use sumpbook_shop::slip::slip;
use sumpbook_trade::EntryId;

use super::binary::Desk;
use super::lines::{exchanged, handed_over};

const FIVE: &str = "2026-10-20T17:00:00-06:00";
const SIX: &str = "2026-10-21T06:00:00-06:00";

fn evening(desk: &Desk, known: &str) -> Value {
    desk.ask(&["--json", "day-sheet", "2026-10-20", "--as-of", known]).json()
}

fn morning(desk: &Desk, known: &str) -> Value {
    desk.ask(&["--json", "day-sheet", "2026-10-21", "--view", "morning", "--as-of", known]).json()
}

#[test]
fn the_evening_sheet_says_it_to_people() {
    let desk = handed_over();
    let text = desk.ask(&["day-sheet", "2026-10-20", "--as-of", FIVE]).well();
    for line in [
        "Tern Hollow Water   Tuesday 20 October 2026   as known at 17:00, yard time -06:00",
        "One lock-out.",
        "  1  Locked now",
        "TH-01  road       06:32  Stop lamps, rear: out: left stop lamp  16:45      06:32        certify",
        "TH-01  15:05  reminder: change oil  Amos Tillery 15:10  Amos Tillery 15:10  none recorded",
        "TH-01  07:05  Compressor oil  0.21 qt  38 % to 52 %      Amos Tillery",
        "  1  To settle",
    ] {
        assert!(text.contains(line), "{line}\nis not in\n{text}");
    }
    assert!(!text.contains("severity"), "{text}");
}

#[test]
fn the_evening_sheet_says_the_same_to_programs() {
    let desk = handed_over();
    let sheet = evening(&desk, FIVE);
    let sections = &sheet["sections"];
    assert_eq!((&sheet["day"], &sheet["known-at"]), (&json!("2026-10-20"), &json!(FIVE)));
    assert_eq!(sections["locked"]["rows"][0]["lock"], "road");
    assert_eq!(sections["locked"]["rows"][0]["since"], "2026-10-20T06:32:00-06:00");
    assert_eq!(sections["locked"]["rows"][0]["shop-knew"], "2026-10-20T16:45:00-06:00");
    assert_eq!(sections["top-ups"]["rows"][0]["poured"], "0.21 qt");
    let asked = &sections["to-settle"]["rows"][0];
    assert_eq!(
        (&asked["unit"], &asked["why"], &asked["used"]),
        (&json!("TH-03"), &json!("above-ceiling"), &json!("738.4"))
    );
    // Nobody had come at 16:44.
    assert_eq!(evening(&desk, "2026-10-20T16:44:00-06:00")["sections"]["locked"]["count"], 0);
}

#[test]
fn the_morning_sheet_keeps_the_unit_in_and_asks_for_a_certificate() {
    let desk = handed_over();
    let text = desk.ask(&["day-sheet", "2026-10-21", "--view", "morning", "--as-of", SIX]).well();
    assert!(text.contains("Not to go out: TH-01."), "{text}");
    assert!(text.contains("One certificate to sign."), "{text}");
    let sections = &morning(&desk, SIX)["sections"];
    assert_eq!(sections["not-to-go-out"]["rows"][0]["next-step"], "certify");
    assert_eq!(sections["to-certify"]["rows"][0]["item"], "lamps-stop");
}

#[test]
fn a_slips_code_typed_on_a_phone_without_signal_shows_the_lock_as_awaiting_review() {
    let desk = handed_over();
    let (certified, typed) = ("2026-10-21T06:10:00-06:00", "2026-10-21T06:20:00-06:00");
    let certify =
        ["certify", "TH-01", "lamps-stop/rear", "--repaired", "--by", "Ilse Marrow", "--words", "bulb"];
    let told = desk.at_shop(certified, &certify).json();
    let certificate: EntryId = told["certificate"].as_str().unwrap().parse().unwrap();
    let shop = Shop::open(&desk.path("shop")).unwrap();
    let slip = slip(&shop.ledger, certificate, certified.parse().unwrap()).unwrap().unwrap();
    let code = |phone: &str| slip.codes.iter().find(|of| of.phone == phone).unwrap().code.clone();
    let (own, other) = (code("yard phone 1"), code("yard phone 2"));
    let take = |code: &str, item: &str| {
        let asked = ["slip", code, "--unit", "TH-01", "--item", item, "--person", "Amos Tillery"];
        desk.phone("one", typed, &asked, "")
    };
    assert!(take(&own, "horn").refused().contains("nothing is on record of 'horn' on TH-01"));
    assert!(take("1234", "lamps-stop").refused().contains("12"), "a code has 12 digits");
    assert!(take(&other, "lamps-stop").refused().contains("not for this defect on this phone"));
    let taken = take(&own, "lamps-stop").json();
    assert_eq!((&taken["state"], &taken["verdict"]), (&"awaiting-review".into(), &"repaired".into()));
    let show = ["show", "unit", "--unit", "TH-01", "--person", "Amos Tillery"];
    let screen = desk.phone("one", typed, &show, "").json();
    assert_eq!(screen["road_air"]["road"]["state"], "awaiting-review", "{}", screen["road_air"]);
}

#[test]
fn a_certificate_frees_the_unit_only_when_the_next_driver_has_read_it() {
    let desk = handed_over();
    let words = ["--repaired", "--by", "Ilse Marrow", "--words", "new bulb"];
    let wrong = desk.at_shop(SIX, &[&["certify", "TH-01", "horn"], &words[..]].concat()).refused();
    assert!(wrong.contains("Open: lamps-stop/rear"), "{wrong}");
    let certify = [&["certify", "TH-01", "lamps-stop/rear"], &words[..]].concat();
    let told = desk.at_shop("2026-10-21T06:10:00-06:00", &certify).json();
    let certificate = told["certificate"].as_str().unwrap();
    let half_past = morning(&desk, "2026-10-21T06:30:00-06:00");
    assert_eq!(half_past["sections"]["not-to-go-out"]["rows"][0]["next-step"], "review");

    exchanged(&desk, "one", "2026-10-21T06:35:00-06:00");
    let review = json!({
        "unit": "TH-01", "person": "Amos Tillery", "kind": "review", "body": { "certificates": [certificate] }
    });
    desk.phone("one", "2026-10-21T06:40:00-06:00", &["record"], &review.to_string()).well();
    exchanged(&desk, "one", "2026-10-21T06:45:00-06:00");
    assert_eq!(morning(&desk, "2026-10-21T06:44:00-06:00")["sections"]["not-to-go-out"]["count"], 1);
    assert_eq!(morning(&desk, "2026-10-21T06:45:00-06:00")["sections"]["not-to-go-out"]["count"], 0);
}

#[test]
fn a_disputed_figure_is_settled_by_name_and_stays_known_as_of_then() {
    let desk = handed_over();
    let sheet = evening(&desk, FIVE);
    let figures = sheet["sections"]["to-settle"]["rows"][0]["figures"].as_array().unwrap();
    let wrong = figures.iter().find(|row| row["figure"] == "7421.0").unwrap();
    assert_eq!((&wrong["struck"], &wrong["ceiling"]), (&json!(true), &json!("762.4")));
    let entry = wrong["entry"].as_str().unwrap();
    let unnamed = ["settle", entry, "--verdict", "do-not-use", "--by", "Nobody Here", "--why", "slipped"];
    desk.at_shop("2026-10-20T17:10:00-06:00", &unnamed).refused();
    let settle =
        ["settle", entry, "--verdict", "do-not-use", "--by", "Ilse Marrow", "--why", "a slipped point"];
    desk.at_shop("2026-10-20T17:10:00-06:00", &settle).well();
    assert_eq!(evening(&desk, "2026-10-20T17:10:00-06:00")["sections"]["to-settle"]["count"], 0);
    assert_eq!(evening(&desk, FIVE), sheet, "as of 17:00 it is still open, byte for byte");
}

#[test]
fn a_day_is_closed_once_and_again_when_something_came_late() {
    let desk = handed_over();
    let close = ["day-sheet", "2026-10-20", "--close", "--by", "Ilse Marrow"];
    let one = desk.at_shop(FIVE, &close).json();
    assert_eq!((&one["version"], &one["changes"]), (&json!(1), &json!([])));
    assert_eq!(desk.at_shop("2026-10-20T17:05:00-06:00", &close).json()["version"], 1);
    let late = r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-20T16:55:00-06:00","kind":"end-of-day","body":{"defects":[],"none-found":true}}"#;
    desk.phone("one", "2026-10-20T17:20:00-06:00", &["record"], late).well();
    exchanged(&desk, "one", "2026-10-20T17:30:00-06:00");
    let two = desk.at_shop("2026-10-20T17:40:00-06:00", &close).json();
    assert_eq!(two["version"], 2);
    let told = two["changes"].to_string();
    assert!(
        told.contains("came-late: now TH-01 end-of-day Tue 20 Oct 16:55, came Tue 20 Oct 17:30"),
        "{told}"
    );
    let report = desk.ask(&["--json", "verify"]).json();
    assert_eq!((&report["closings"], &report["findings"]), (&json!(2), &json!([])));
}

#[test]
fn what_is_due_is_told_with_the_day_it_was_known() {
    let desk = handed_over();
    let text = desk.ask(&["due", "--all", "--as-of", FIVE]).well();
    assert!(text.starts_with("Every task, as known at Tue 20 Oct 2026 17:00"), "{text}");
    let list = desk.ask(&["--json", "due", "--all", "--as-of", FIVE]).json();
    let of = |unit: &str, task: &str| {
        let rows = list["rows"].as_array().unwrap();
        rows.iter().find(|row| row["unit"] == unit && row["task"] == task).unwrap().clone()
    };
    assert_eq!(of("TH-01", "oil-and-filters")["hours-left"], "55.6");
    assert_eq!(of("TH-01", "separator")["said"], "coming up, 137.6 h left, 162 days left");
    assert_eq!(of("TH-01", "cooler-and-scavenge")["last-good-day"], "2026-11-20");
    // 500 - (738.4 - 402.6): the figure set aside does not count.
    assert_eq!(of("TH-03", "oil-and-filters")["hours-left"], "164.2");
    let near = desk.ask(&["due", "--as-of", FIVE]).well();
    assert!(near.contains("137.6") && !near.contains("164.2"), "{near}");
}

#[test]
fn everything_verifies_now_and_as_of_then() {
    let desk = handed_over();
    let now = desk.ask(&["verify"]).well();
    assert!(now.contains("All of it holds."), "{now}");
    let then = desk.ask(&["--json", "verify", "--as-of", "2026-10-18T23:00:00-06:00"]).json();
    let all = desk.ask(&["--json", "verify"]).json();
    assert_eq!(then["findings"], json!([]));
    // Five entries of two drivers and two phones let in.
    assert_eq!(all["entries"].as_u64().unwrap() - then["entries"].as_u64().unwrap(), 7);
}
