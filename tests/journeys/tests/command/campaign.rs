//! A maker's campaign by the command alone: entered at the shop, known on a phone without signal, done on another, proved.

use serde_json::{Value, json};

use super::binary::Desk;
use super::lines::{exchanged, handed_over};

const ENTERED: &str = "2026-10-20T17:10:00-06:00";
const TASK: &str = "campaign:KX 24-07";

fn enter(desk: &Desk, more: &[&str]) -> super::binary::Ran {
    let words = ["--words", "change the scavenge line", "--of", "set", "--by", "Ilse Marrow"];
    let range = ["--range", "thw-a-1..THW-A-05", "--deadline", "2026-10-21", "--locks", "air"];
    let all = [&["campaign", "enter", "KX 24-07"][..], &words, &range, more].concat();
    desk.at_shop(ENTERED, &all)
}

fn unit(list: &Value, door: &str) -> Value {
    let units = list["campaigns"][0]["units"].as_array().unwrap();
    units.iter().find(|unit| unit["unit"] == door).cloned().unwrap_or_default()
}

#[test]
fn it_locks_on_a_phone_without_signal_and_the_work_recorded_on_another_frees_it() {
    let desk = handed_over();
    let told = enter(&desk, &["--paper", "KX 24-07 rev B"]).json();
    assert_eq!(told["row"]["units"][0]["unit"], "TH-03");
    let text = desk.ask(&["campaign", "--as-of", ENTERED]).well();
    for line in [
        "KX 24-07: change the scavenge line",
        "paper KX 24-07 rev B",
        "of compressor sets thw-a-1 to THW-A-05, by 21 Oct 2026; locks air after that day",
        "TH-01  THW-A-01      to be done, 1 d left",
        "TH-03  not recorded  look at it: no serial is on record",
        "2 units looked at; 1 to be done, 0 past the last good day, 1 to be looked at, 0 done",
    ] {
        assert!(text.contains(line), "{line}\nis not in\n{text}");
    }
    // Both phones learn it when they come by; after that they are on their own.
    exchanged(&desk, "one", "2026-10-20T17:20:00-06:00");
    exchanged(&desk, "two", "2026-10-20T17:25:00-06:00");
    let show = ["show", "unit", "--unit", "TH-01", "--person", "Amos Tillery"];
    let before = desk.phone("one", "2026-10-21T23:00:00-06:00", &show, "").json();
    assert_eq!(before["road_air"]["air"]["state"], "no-lock-on-record", "the last good day is good");
    let after = desk.phone("one", "2026-10-22T06:30:00-06:00", &show, "").json();
    assert_eq!(after["road_air"]["air"]["state"], "locked", "{}", after["road_air"]);
    assert_eq!(after["road_air"]["air"]["why"][0]["place"], "KX 24-07: change the scavenge line");
    let task = after["tasks"].as_array().unwrap().iter().find(|task| task["standing"] == "past-due").unwrap();
    assert_eq!(task["id"], format!("{TASK}: change the scavenge line"));

    // Amos starts it all the same; Carmelo does the work on the other phone; they come in in the wrong order.
    let start = json!({
        "unit": "TH-01", "person": "Amos Tillery", "at": "2026-10-22T07:00:00-06:00",
        "kind": "start-air", "body": { "in-spite-of-lock": "one job left" }
    });
    desk.phone("one", "2026-10-22T07:00:00-06:00", &["record"], &start.to_string()).well();
    let done = json!({
        "unit": "TH-01", "person": "Carmelo Ruiz", "at": "2026-10-22T15:00:00-06:00", "hours": "2868.0",
        "kind": "service-done", "body": { "tasks": [TASK] }
    });
    desk.phone("two", "2026-10-22T15:00:00-06:00", &["record"], &done.to_string()).well();
    exchanged(&desk, "two", "2026-10-22T16:00:00-06:00");
    exchanged(&desk, "one", "2026-10-22T16:30:00-06:00");
    let five = "2026-10-22T17:00:00-06:00";
    let list = desk.ask(&["--json", "due", "--all", "--as-of", five]).json();
    let one = unit(&list, "TH-01");
    assert_eq!(
        (&one["state"], &one["done-on"], &one["late-days"]),
        (&json!("done"), &json!("2026-10-22"), &json!(1))
    );
    assert_eq!(one["done-hours"], "2868.0");
    let sheet = desk.ask(&["--json", "day-sheet", "2026-10-22", "--as-of", five]).json();
    let against = &sheet["sections"]["against"]["rows"][0];
    assert_eq!((&against["unit"], &against["could-know"]), (&json!("TH-01"), &json!(true)));
    assert_eq!(against["reason"], "one job left");
    assert_eq!(
        sheet["sections"]["locked"]["rows"].as_array().unwrap().iter().filter(|r| r["lock"] == "air").count(),
        0
    );
    // The phone that did not do it knows it now too.
    let freed = desk.phone("one", five, &show, "").json();
    assert_eq!(freed["road_air"]["air"]["state"], "no-lock-on-record");
    // What was known before stays known as of then, and all of it verifies.
    let then = desk.ask(&["--json", "campaign", "--as-of", ENTERED]).json();
    assert_eq!(unit(&then, "TH-01")["state"], "open");
    let report = desk.ask(&["--json", "verify"]).json();
    assert_eq!(report["findings"], json!([]));
}

#[test]
fn it_is_looked_up_by_hand_taken_back_and_refused_in_words() {
    let desk = handed_over();
    assert!(desk.ask(&["campaign"]).well().contains("No maker's campaign was entered"));
    enter(&desk, &[]).well();
    let look = [
        "campaign",
        "look",
        "kx 24-07",
        "--unit",
        "TH-03",
        "--meant",
        "--why",
        "plate",
        "--by",
        "Ilse Marrow",
    ];
    let set = r#"{"register":"unit","door":"TH-03","features":{},"in-service":"2024-09-16","in-service-hours":"0.0","set-serial":"worn"}"#;
    desk.write("set.jsonl", set);
    desk.at_shop("2026-10-20T17:15:00-06:00", &["register", "set.jsonl"]).well();
    let list = desk.ask(&["--json", "campaign", "--as-of", "2026-10-20T17:16:00-06:00"]).json();
    assert_eq!(unit(&list, "TH-03")["look-why"], "no-number");
    desk.at_shop("2026-10-20T17:20:00-06:00", &look).well();
    let due = desk.ask(&["due", "--as-of", "2026-10-20T17:30:00-06:00"]).well();
    assert!(due.contains("Makers' campaigns\nKX 24-07: change the scavenge line"), "{due}");
    let list = desk.ask(&["--json", "due", "--as-of", "2026-10-20T17:30:00-06:00"]).json();
    assert_eq!(
        (&unit(&list, "TH-03")["state"], &unit(&list, "TH-03")["looked"]),
        (&json!("open"), &json!("plate"))
    );

    let words = ["--words", "w", "--of", "truck", "--by", "Ilse Marrow", "--deadline", "2026-12-01"];
    for (name, range, said) in [
        ("A", "KX-1..KY-2", "do not compare"),
        ("A", "KX-9..KX-2", "comes before"),
        ("A@B", "KX-1..KX-2", "needs a name"),
    ] {
        let all = [&["campaign", "enter", name, "--range", range][..], &words].concat();
        let refused = desk.at_shop(ENTERED, &all).refused();
        assert!(refused.contains(said) && refused.contains("Nothing was recorded"), "{refused}");
    }
    let gone = ["campaign", "withdraw", "KX 24-07", "--why", "the maker took it back", "--by", "Ilse Marrow"];
    desk.at_shop("2026-10-20T17:40:00-06:00", &gone).well();
    let refused = desk.at_shop("2026-10-20T17:41:00-06:00", &gone).refused();
    assert!(refused.contains("was taken back before"), "{refused}");
    let text = desk.ask(&["campaign", "--as-of", "2026-10-20T17:45:00-06:00"]).well();
    assert!(text.contains("taken back by Ilse Marrow 17:40: the maker took it back"), "{text}");
    // Lines of JSON write no campaign beside the verb.
    desk.write("line.jsonl", r#"{"kind":"campaign-set","body":{}}"#);
    desk.at_shop(ENTERED, &["record", "line.jsonl"]).refused();
}
