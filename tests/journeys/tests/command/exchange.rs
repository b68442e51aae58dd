//! A phone's day by files: recorded with no network, handed over, accepted, answered.

use serde_json::json;

use super::lines::{begun, recorded};

#[test]
fn a_phone_records_with_no_network_and_says_what_is_only_on_it() {
    let desk = recorded();
    let screen = desk.phone("one", "2026-10-20T16:05:00-06:00", &["show", "where"], "").json();
    assert_eq!(screen["counts"], json!({ "on_phone": 4, "at_shop": 0, "aside": 0 }));
    let rows = screen["days"][0]["rows"].as_array().unwrap();
    let kinds: Vec<&str> = rows.iter().map(|row| row["kind"].as_str().unwrap()).collect();
    assert_eq!(kinds, ["pre-trip-section", "top-up", "display-note", "acknowledgement"]);
    assert!(rows.iter().all(|row| row["place"] == "on-phone" && row["by"] == "Amos Tillery"));
    assert_eq!(screen["days"][0]["door"], "TH-01");
}

#[test]
fn the_phone_s_own_unit_is_locked_before_the_shop_knows() {
    let desk = recorded();
    let asked = ["show", "unit", "--unit", "TH-01", "--person", "Amos Tillery"];
    let screen = desk.phone("one", "2026-10-20T16:05:00-06:00", &asked, "").well();
    assert!(screen.contains("lamps-stop"), "{screen}");
    let morning =
        desk.ask(&["--json", "day-sheet", "2026-10-20", "--as-of", "2026-10-20T16:05:00-06:00"]).json();
    assert_eq!(morning["sections"]["locked"]["count"], 0);
}

#[test]
fn a_new_phone_waits_until_someone_at_the_shop_accepts_its_key() {
    let desk = recorded();
    let made = desk.phone("one", "2026-10-20T16:10:00-06:00", &["hand-over", "one.sump"], "").json();
    assert_eq!((&made["entries"], &made["own"]), (&json!(4), &json!(4)));

    let told = desk.at_shop("2026-10-20T16:40:00-06:00", &["take-in", "one.sump"]).json();
    assert_eq!((&told["admitted"], &told["waiting"]), (&json!(0), &json!(4)));
    assert_eq!(told["waiting-phone"]["name"], "yard phone 1");
    let print = told["waiting-phone"]["fingerprint"].as_str().unwrap();

    let wrong = ["take-in", "one.sump", "--accept", "00 00 00 00 00 00 00 00", "--by", "Ilse Marrow"];
    desk.at_shop("2026-10-20T16:41:00-06:00", &wrong).refused();
    let nobody = ["take-in", "one.sump", "--accept", print, "--by", "Nobody Here"];
    assert!(desk.at_shop("2026-10-20T16:41:00-06:00", &nobody).refused().contains("Ilse Marrow"));

    let accept = ["take-in", "one.sump", "--answer", "back.sump", "--accept", print, "--by", "Ilse Marrow"];
    let told = desk.at_shop("2026-10-20T16:45:00-06:00", &accept).json();
    assert_eq!((&told["accepted"], &told["admitted"]), (&json!("yard phone 1"), &json!(4)));
    assert_eq!(told["waiting"], 0);

    let back = desk.phone("one", "2026-10-20T16:46:00-06:00", &["take-in", "back.sump"], "").json();
    assert_eq!(back["receipt"], true);
    let screen = desk.phone("one", "2026-10-20T16:47:00-06:00", &["show", "where"], "").json();
    assert_eq!(screen["counts"], json!({ "on_phone": 0, "at_shop": 4, "aside": 0 }));
    assert_eq!(screen["news"]["heard"], "2026-10-20T16:45:00-06:00");

    // The same file again doubles nothing.
    let again = desk.at_shop("2026-10-20T16:50:00-06:00", &["take-in", "one.sump"]).json();
    assert_eq!((&again["admitted"], &again["known"]), (&json!(0), &json!(4)));
}

#[test]
fn an_invitation_lets_one_phone_in() {
    let desk = begun();
    let file = "one.invitation.sump";
    let again = ["enrol", file, "--name", "yard phone 9"];
    let told = desk.phone("one", "2026-10-19T15:20:00-06:00", &again, "").refused();
    assert!(told.contains("yard phone 1"), "{told}");
    desk.phone("three", "2026-10-19T15:20:00-06:00", &again, "").well();
    super::lines::exchanged(&desk, "one", "2026-10-19T15:30:00-06:00");
    desk.phone("three", "2026-10-19T15:40:00-06:00", &["hand-over", "three.sump"], "").well();
    let told = desk.ask(&["take-in", "three.sump", "--received", "2026-10-19T15:45:00-06:00"]).well();
    assert!(
        told.contains("'yard phone 9' asks to be let in with a code that another phone has used"),
        "{told}"
    );
}

#[test]
fn the_schema_of_lines_needs_no_phone_and_knows_every_kind_recorded_here() {
    let desk = super::binary::Desk::new();
    let schema = desk.run(&["phone", "schema"], "").json();
    assert_eq!(schema["title"], "An entry");
    let text = schema.to_string();
    for kind in ["pre-trip-section", "top-up", "display-note", "acknowledgement", "hour-reading", "review"] {
        assert!(text.contains(&format!("\"const\":\"{kind}\"")), "{kind}");
    }
}
