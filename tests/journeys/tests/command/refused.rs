//! What is refused: with exit code 1, a sentence that says what to do, and nothing lost.

use serde_json::json;

use super::binary::Desk;
use super::lines::{AMOS, CARMELO, FLEET, begun, handed_over, recorded};

const LATER: &str = "2026-10-20T18:00:00-06:00";

/// How many entries the shop holds, all of them verified.
fn entries(desk: &Desk) -> u64 {
    let report = desk.ask(&["--json", "verify"]).json();
    assert_eq!(report["findings"], json!([]));
    report["entries"].as_u64().unwrap()
}

#[test]
fn a_file_cut_short_says_so_and_the_whole_one_then_brings_everything() {
    let desk = recorded();
    desk.phone("one", "2026-10-20T16:10:00-06:00", &["hand-over", "one.sump"], "").well();
    let (whole, before) = (desk.read("one.sump"), entries(&desk));
    for length in [40, 200, whole.len() / 2, whole.len() - 1] {
        desk.write("cut.sump", &whole[..length]);
        let told = desk.ask(&["take-in", "cut.sump", "--received", LATER]).refused();
        assert!(told.contains("The file ends after entry 0."), "{length}: {told}");
        assert!(told.contains("Ask for the file again; nothing will be doubled."), "{length}: {told}");
        assert_eq!(entries(&desk), before);
    }
    let told = desk.at_shop(LATER, &["take-in", "one.sump"]).json();
    assert_eq!(told["waiting"], 4, "the whole file has all of them");
    let screen = desk.phone("one", LATER, &["show", "where"], "").json();
    assert_eq!(screen["counts"]["on_phone"], 4, "and the phone has kept them");
}

#[test]
fn an_answer_cut_short_leaves_the_phone_as_it_was() {
    let desk = handed_over();
    let answer = desk.read("one.answer.sump");
    desk.write("cut.sump", &answer[..answer.len() - 3]);
    desk.phone("one", LATER, &["take-in", "cut.sump"], "").refused();
    let screen = desk.phone("one", LATER, &["show", "where"], "").json();
    assert_eq!(screen["counts"], json!({ "on_phone": 0, "at_shop": 4, "aside": 0 }));
}

#[test]
fn what_is_no_file_of_ours_is_named_as_that() {
    let desk = begun();
    let before = entries(&desk);
    desk.write("holiday.jpg", [0xFF_u8, 0xD8, 0xFF, 0xE0, 1, 2, 3, 4, 5, 6, 7, 8]);
    desk.write("empty", "");
    for name in ["holiday.jpg", "empty"] {
        let told = desk.ask(&["take-in", name, "--received", LATER]).refused();
        assert!(told.contains("This is not a Sumpbook file. Nothing was taken in."), "{name}: {told}");
    }
    let told = desk.ask(&["take-in", "gone.sump", "--received", LATER]).refused();
    assert!(told.contains("gone.sump") && told.contains("Nothing was changed."), "{told}");
    assert_eq!(entries(&desk), before);
}

#[test]
fn another_fleet_s_file_is_refused_by_shop_and_phone() {
    let (ours, other) = (handed_over(), handed_over());
    let before = entries(&ours);
    ours.write("stray.sump", other.read("one.sump"));
    ours.write("stray.answer.sump", other.read("one.answer.sump"));
    let told = ours.ask(&["take-in", "stray.sump", "--received", LATER]).refused();
    assert!(told.contains("Another fleet's file: nothing taken in."), "{told}");
    // Whose answer it is stands under a signature that this phone cannot check: only that is said.
    let answer = ["phone", "one", "--now", LATER, "take-in", "stray.answer.sump"];
    let told = ours.run(&answer, "").refused();
    assert!(told.contains("1 not taken in: it comes from a device that is not known here."), "{told}");
    let screen = ours.phone("one", LATER, &["show", "where"], "").json();
    assert_eq!(screen["counts"], json!({ "on_phone": 0, "at_shop": 4, "aside": 0 }));
    assert_eq!(entries(&ours), before);
}

#[test]
fn nonsense_on_standard_input_loses_no_line_before_it() {
    let desk = begun();
    let now = "2026-10-20T16:00:00-06:00";
    for (nonsense, told) in [
        ("nonsense", "line 1: this line is not JSON"),
        ("\u{0}\u{1}{{{{", "line 1: this line is not JSON"),
        ("[1,2]", "line 1: "),
        (
            r#"{"unit":"TH-99","kind":"lay-up","body":{}}"#,
            "no unit here is called 'TH-99'. Known are: TH-01, TH-03.",
        ),
        (r#"{"unit":"TH-01","kind":"weather","body":{}}"#, "no kind of entry 'weather'"),
        (r#"{"unit":"TH-01","hourz":"1","kind":"lay-up","body":{}}"#, "no entry has a field 'hourz'"),
    ] {
        let said = desk.phone("one", now, &["record"], nonsense).refused();
        assert!(said.contains(told), "{told}\nis not in\n{said}");
        assert!(said.contains("No line was recorded."), "{said}");
    }
    let ran = desk.phone("one", now, &["record"], &format!("{AMOS}nonsense\n{CARMELO}"));
    assert_eq!(ran.out.lines().filter(|line| line.contains("recorded\":\"")).count(), 4);
    let said = ran.refused();
    assert!(
        said.contains("line 5: ")
            && said.contains("The 4 lines before it are recorded; go on from this one."),
        "{said}"
    );
    let screen = desk.phone("one", now, &["show", "where"], "").json();
    assert_eq!(screen["counts"]["on_phone"], 4, "what came before the nonsense is kept");

    let before = entries(&desk);
    for verb in ["register", "record"] {
        let said = desk.run(&["--shop", "shop", verb, "--received", LATER], "nonsense").refused();
        assert!(said.contains("line 1: "), "{verb}: {said}");
    }
    assert_eq!(entries(&desk), before);
}

#[test]
fn a_time_of_receipt_is_refused_outside_a_demo_fleet() {
    let desk = Desk::new();
    desk.ask(&["init", "--name", "Tern Hollow Water", "--zone", "America/Denver"]).well();
    desk.write("fleet.jsonl", FLEET);
    let refused = |args: &[&str]| {
        let told = desk.at_shop(LATER, args).refused();
        assert!(told.contains("may be given only in a fleet made for showing"), "{args:?}: {told}");
    };
    refused(&["register", "fleet.jsonl"]);
    assert_eq!(entries(&desk), 1, "the fleet's own name");
    desk.ask(&["register", "fleet.jsonl"]).well();
    let before = entries(&desk);
    refused(&["record", "fleet.jsonl"]);
    refused(&["invite", "one.sump"]);
    refused(&["day-sheet", "--close", "--by", "Ilse Marrow"]);
    assert!(!desk.path("one.sump").exists());
    assert_eq!(entries(&desk), before);

    desk.ask(&["invite", "one.sump"]).well();
    desk.run(&["phone", "one", "enrol", "one.sump", "--name", "yard phone 1"], "").well();
    let told = desk.phone("one", LATER, &["record"], AMOS).refused();
    assert!(told.contains("fleet made for showing"), "{told}");
    desk.run(&["phone", "one", "hand-over", "out.sump"], "").well();
    refused(&["take-in", "out.sump"]);
    // A phone's own clock dates its entries: a line of a real fleet may not say when.
    let told = desk.run(&["phone", "one", "record"], AMOS).refused();
    assert!(told.contains("line 1: "), "{told}");

    let both = ["--shop", "third", "init", "--name", "X", "--zone", "America/Denver", "--received", LATER];
    assert_eq!(desk.run(&both, "").code, 2, "--received asks for --demo");
}

#[test]
fn a_shop_is_not_made_twice_and_not_found_where_none_is() {
    let desk = begun();
    let again = ["init", "--name", "Other", "--zone", "America/Denver"];
    let told = desk.ask(&again).refused();
    assert!(told.contains("shop"), "{told}");
    let told = desk.run(&["--shop", "nowhere", "due"], "").refused();
    assert!(told.contains("holds no shop"), "{told}");
    let zone = ["--shop", "other", "init", "--name", "Other", "--zone", "Mountain"];
    assert!(desk.run(&zone, "").refused().contains("Mountain"));
    entries(&desk);
}
