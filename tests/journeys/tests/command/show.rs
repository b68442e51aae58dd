//! `phone show` for people: every screen in words, and as the phone had it at an earlier moment.

use super::binary::Desk;
use super::lines::{handed_over, recorded};

const EVENING: &str = "2026-10-20T16:55:00-06:00";

fn shown(desk: &Desk, more: &[&str]) -> String {
    desk.run(&[&["phone", "one", "show"], more, &["--now", EVENING]].concat(), "").well()
}

fn of_unit<'a>(screen: &'a str, more: &[&'a str]) -> Vec<&'a str> {
    [&[screen, "--unit", "TH-01", "--person", "Amos Tillery"], more].concat()
}

#[test]
fn every_screen_speaks_in_words_and_lacks_none() {
    let desk = handed_over();
    let screens = [
        (
            "today",
            vec![
                "Shop last heard from: 16:45",
                "TH-03",
                "ROAD: LOCKED since 06:32",
                "Due out 07:00",
                "The shop has it",
            ],
        ),
        (
            "unit",
            vec![
                "ROAD: LOCKED since 06:32; Stop lamps, rear, out (Amos Tillery)",
                "Oil: mineral",
                "0.08 qt + 0.13 qt",
            ],
        ),
        ("last-report", vec!["out 'left stop lamp', Amos Tillery", "no certificate"]),
        ("stop", vec!["All 6 looked at: OK", "Under the hood", "1 / "]),
        ("glass", vec!["The middle: 45 to 55 %", "Drag to where the oil stands."]),
        ("top-up", vec!["Hot oil under pressure burns.", "Two signs first.", "38 % > 52 %"]),
        ("notes", vec!["reminder: 'change oil'", "Amos Tillery 15:10"]),
        ("end-of-day", vec!["Poured", "Say which defects were found, or that none was."]),
    ];
    for (screen, words) in screens {
        let text = shown(&desk, &of_unit(screen, &[]));
        for word in words {
            assert!(text.contains(word), "{screen} does not say '{word}':\n{text}");
        }
        // A key without a text would stand in angle brackets; a level before and after is two figures.
        assert!(!text.replace(" > ", "").contains(['<', '>', '{']), "{screen}:\n{text}");
    }
    let text = shown(&desk, &["where"]);
    for word in ["On this phone: 0", "At the shop: 4", "Tue 20 Oct, TH-01", "answer to a display note"] {
        assert!(text.contains(word), "where does not say '{word}':\n{text}");
    }
}

#[test]
fn a_screen_of_an_earlier_moment_knows_what_the_phone_held_then() {
    let desk = recorded();
    let asked = |as_of: &str| {
        desk.run(
            &[&["--json", "phone", "one", "show"], &of_unit("unit", &["--as-of", as_of])[..]].concat(),
            "",
        )
    };
    // Recorded at 16:00, each entry at that moment of the phone's clock.
    let before = asked("2026-10-20T15:59:00-06:00").json();
    assert_eq!(before["road_air"]["road"]["state"], "no-lock-on-record");
    assert!(before["pours"].as_array().unwrap().is_empty());
    let after = asked("2026-10-20T16:01:00-06:00").json();
    assert_eq!(after["road_air"]["road"]["state"], "locked");
    assert_eq!(after["pours"].as_array().unwrap().len(), 1);
    // How old the shop's news was is not kept, so nothing is said of it.
    assert!(after.get("news").is_none() && after.get("locked_only_here").is_none(), "{after}");

    let text = desk
        .run(&[&["phone", "one", "show"], &of_unit("unit", &["--as-of", EVENING])[..]].concat(), "")
        .well();
    assert!(text.contains("ROAD: LOCKED") && !text.contains("Shop "), "{text}");
    let why = desk.run(&["phone", "one", "show", "where", "--as-of", EVENING], "").refused();
    assert!(why.contains("known of this moment alone"), "{why}");
    let both = ["phone", "one", "show", "today", "--as-of", EVENING, "--now", EVENING];
    assert_eq!(desk.run(&both, "").code, 2, "a clock and a past moment are one question too many");
}
