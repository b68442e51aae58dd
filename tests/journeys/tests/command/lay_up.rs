//! A season: a set is laid up at the shop, a phone learns it, air is started all the same, and the list before the
//! return is answered at a phone and at the shop.

use serde_json::{Value, json};

use super::binary::Desk;
use super::lines::{exchanged, handed_over};

const LAID: &str = "2026-11-30T15:00:00-07:00";

/// TH-01's set is laid up on the last of November, and its phone knows.
fn laid_up() -> Desk {
    let desk = handed_over();
    let lay =
        ["lay-up", "TH-01", "--by", "Ilse Marrow", "--hours", "2870.0", "--done", "oil changed, belts slack"];
    let told = desk.at_shop(LAID, &lay).json();
    assert_eq!(
        (&told["laid-up"], &told["by"], &told["hours"]),
        (&json!(true), &json!("Ilse Marrow"), &json!("2870.0"))
    );
    exchanged(&desk, "one", "2026-12-01T06:10:00-07:00");
    desk
}

fn unit(desk: &Desk, when: &str) -> Value {
    desk.phone("one", when, &["show", "unit", "--unit", "TH-01", "--person", "Amos Tillery"], "").json()
}

fn evening(desk: &Desk, day: &str, when: &str) -> Value {
    desk.ask(&["--json", "day-sheet", day, "--as-of", when]).json()["sections"].clone()
}

fn returned(lines: &[(&str, Option<&str>)]) -> String {
    let lines: Vec<Value> = lines
        .iter()
        .map(|(line, why)| match why {
            None => json!({ "line": line, "how": "done" }),
            Some(why) => json!({ "line": line, "how": "waived", "reason": why }),
        })
        .collect();
    let body = json!({ "done": null, "lines": lines });
    json!({ "unit": "TH-01", "person": "Amos Tillery", "kind": "return-to-service", "body": body })
        .to_string()
}

#[test]
fn the_phone_says_why_the_air_is_locked_and_leaves_the_road_alone() {
    let desk = laid_up();
    let shown = unit(&desk, "2026-12-01T06:15:00-07:00");
    let air = &shown["road_air"]["air"];
    assert_eq!((&air["state"], &air["why"][0]["item"]), (&json!("locked"), &json!("laid-up")));
    assert_eq!(air["why"][0]["by"], "Ilse Marrow");
    // The lamp that is out locks the road; the lay-up locks nothing more of it.
    assert_eq!(shown["road_air"]["road"]["why"].as_array().unwrap().len(), 1);
    let lay_up = &shown["lay_up"];
    assert_eq!((&lay_up["hours"], &lay_up["lines"]), (&json!("2870.0"), &json!(13)));
    assert_eq!(lay_up["open_lines"].as_array().unwrap().len(), 13);
    let again = ["lay-up", "TH-01", "--by", "Ilse Marrow"];
    let told = desk.at_shop("2026-12-02T08:00:00-07:00", &again).refused();
    assert!(told.contains("TH-01 is laid up since 30 Nov 2026 15:00"), "{told}");
}

#[test]
fn what_stands_is_not_missed_runs_on_apart_and_a_start_is_against_the_lock() {
    let desk = laid_up();
    let start = r#"{"unit":"TH-01","person":"Amos Tillery","kind":"start-air","body":{}}"#;
    desk.phone("one", "2026-12-14T09:30:00-07:00", &["record"], start).well();
    exchanged(&desk, "one", "2026-12-14T16:30:00-07:00");
    let sheet = evening(&desk, "2026-12-14", "2026-12-14T17:00:00-07:00");
    let against = &sheet["against"]["rows"];
    assert_eq!((&against[0]["unit"], &against[0]["lock"]), (&json!("TH-01"), &json!("air")));
    assert_eq!((&against[0]["could-know"], &against[0]["what"]), (&json!(true), &json!("started-air")));
    let missing = sheet["not-reported"]["rows"].as_array().unwrap();
    assert!(missing.iter().all(|row| row["unit"] != "TH-01"), "{missing:?}");
    let apart = sheet["not-reported"]["not-expected"].as_array().unwrap();
    assert!(apart.iter().any(|row| row["unit"] == "TH-01" && row["state"] == "laid-up"), "{apart:?}");
    let locked = sheet["locked"]["rows"].as_array().unwrap();
    let air = locked.iter().find(|row| row["lock"] == "air").unwrap();
    assert_eq!((&air["item"], &air["next-step"]), (&json!("laid-up"), &json!("return-list")));

    // Serviced on 12 February 2026: its calendar ran out while it stood. It is told, and stands apart.
    let due = desk.ask(&["--json", "due", "--as-of", "2027-03-01T07:00:00-07:00"]).json();
    assert!(due["rows"].as_array().unwrap().iter().all(|row| row["unit"] != "TH-01"), "{due}");
    let apart = due["laid-up"].as_array().unwrap();
    let oil = apart.iter().find(|row| row["task"] == "oil-and-filters").unwrap();
    assert_eq!((&oil["state"], &oil["days-left"]), (&json!("past-due"), &json!(-17)));
    let text = desk.ask(&["due", "--as-of", "2027-03-01T07:00:00-07:00"]).well();
    assert!(text.contains("Laid up; their clocks ran on"), "{text}");
}

#[test]
fn the_list_is_answered_by_name_at_a_phone_and_at_the_shop_and_a_later_lay_up_opens_a_new_one() {
    let desk = laid_up();
    for (line, why) in [
        (returned(&[("warp-drive", None)]), "has no line 'warp-drive'. Its lines are: manual, oil-age"),
        (returned(&[("hoses", Some("  "))]), "'hoses' is waived without a reason"),
        (returned(&[("hoses", None), ("hoses", None)]), "'hoses' is answered twice"),
        (
            r#"{"unit":"TH-01","kind":"return-to-service","body":{"done":null,"lines":[{"line":"hoses","how":"done"}]}}"#
                .to_owned(),
            "done or waived by name. Say who.",
        ),
    ] {
        let told = desk.phone("one", "2027-03-01T07:20:00-07:00", &["record"], &line).refused();
        assert!(told.contains(why), "{told}");
    }
    let phone = returned(&[
        ("manual", None),
        ("oil-age", None),
        ("oil-look", None),
        ("water", None),
        ("condensate", None),
        ("intake-cooler", None),
        ("hoses", None),
        ("valves", None),
        ("battery-display", None),
        ("tires", None),
    ]);
    desk.phone("one", "2027-03-01T07:30:00-07:00", &["record"], &phone).well();
    let shown = unit(&desk, "2027-03-01T07:31:00-07:00");
    assert_eq!(shown["lay_up"]["open_lines"], json!(["separator", "belts-shaft", "first-start"]));
    exchanged(&desk, "one", "2027-03-01T08:00:00-07:00");

    let nobody = ["return-to-service", "TH-01", "--done", "separator"];
    assert!(desk.at_shop("2027-03-01T08:05:00-07:00", &nobody).refused().contains("by name"));
    let list = desk.ask(&["return-to-service", "TH-01"]).well();
    assert!(list.contains("Amos Tillery Mon 1 Mar") && list.contains("Common practice"), "{list}");
    let shop = [
        "return-to-service",
        "TH-01",
        "--by",
        "Ilse Marrow",
        "--done",
        "first-start",
        "--waive",
        "separator=changed in October",
        "--waive",
        "belts-shaft=none on this set",
    ];
    let told = desk.at_shop("2027-03-01T08:10:00-07:00", &shop).json();
    assert_eq!((&told["laid-up"], &told["back-by"]), (&json!(false), &json!("Ilse Marrow")));
    assert!(desk.at_shop("2027-03-01T08:11:00-07:00", &shop).refused().contains("TH-01 is not laid up"));
    // What the list was like before that is still to be read, and nothing is answered by it.
    let then = ["--json", "return-to-service", "TH-01", "--as-of", "2027-03-01T08:05:00-07:00"];
    let then = desk.ask(&then).json();
    let open = then["lines"].as_array().unwrap().iter().filter(|line| line["state"] == "open").count();
    assert_eq!((&then["laid-up"], open), (&json!(true), 3));
    assert!(desk.ask(&["return-to-service", "TH-01"]).refused().contains("TH-01 is not laid up"));
    let both = ["return-to-service", "TH-01", "--as-of", LAID, "--done", "separator"];
    assert_eq!(desk.run(&[&["--shop", "shop"], &both[..]].concat(), "").code, 2);
    exchanged(&desk, "one", "2027-03-01T08:20:00-07:00");
    let shown = unit(&desk, "2027-03-01T08:21:00-07:00");
    assert_eq!(
        (&shown["road_air"]["air"]["state"], &shown["lay_up"]),
        (&json!("no-lock-on-record"), &Value::Null)
    );

    // The next season, told by a phone: a new list, nothing of the old one counts.
    let lay_up = r#"{"unit":"TH-01","person":"Amos Tillery","hours":"2991.5","kind":"lay-up","body":{"done":"run dry"}}"#;
    desk.phone("one", "2027-11-29T15:00:00-07:00", &["record"], lay_up).well();
    let shown = unit(&desk, "2027-11-29T15:01:00-07:00");
    assert_eq!(shown["lay_up"]["open_lines"].as_array().unwrap().len(), 13);
    assert_eq!(shown["road_air"]["air"]["state"], "locked");

    let csv = desk.ask(&["take-out", "lay-ups", "--to", "lay-ups.csv"]);
    csv.well();
    let table = String::from_utf8(desk.read("lay-ups.csv")).unwrap();
    assert_eq!(table.matches("return-line").count(), 13);
    assert!(table.contains("Belts or drive shaft,waived,none on this set"), "{table}");
}
