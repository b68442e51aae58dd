//! What is typed in: the fleet, its binders, and what two drivers record. Invented.

use super::binary::Desk;

/// Two units and three people.
pub(crate) const FLEET: &str = r#"{"register":"person","name":"Ilse Marrow","role":"manager"}
{"register":"person","name":"Amos Tillery","role":"driver"}
{"register":"person","name":"Carmelo Ruiz","role":"driver"}
{"register":"unit","door":"TH-01","features":{"switched":["air-brakes","diesel","shaft-drive","hour-meter"],"valves":["small hose"]},"in-service":"2022-03-31","in-service-hours":"0.0","set-serial":"THW-A-01","profile":{"glass":{"value":"0.60","unit":"qt"},"oil-family":"mineral"}}
{"register":"unit","door":"TH-03","features":{"switched":["air-brakes","diesel","shaft-drive","hour-meter","trailer"]},"in-service":"2024-09-16","in-service-hours":"0.0"}
{"register":"status","unit":"TH-01","from":"2026-10-18","status":"out","expected":"07:00"}
{"register":"status","unit":"TH-03","from":"2026-10-18","status":"out","expected":"07:00"}
"#;

/// What the binders say of them.
pub(crate) const BINDERS: &str = r#"{"unit":"TH-01","at":"2026-02-12T12:00:00-07:00","hours":"2418.0","source":"brought-in","kind":"service-done","body":{"tasks":["oil-and-filters"]}}
{"unit":"TH-01","at":"2025-11-20T12:00:00-07:00","source":"brought-in","kind":"service-done","body":{"tasks":["cooler-and-scavenge"]}}
{"unit":"TH-01","at":"2026-10-18T12:00:00-06:00","source":"brought-in","kind":"hour-reading","body":{"meter":"compressor","figure":"2862.4","how":"said","kept-when-asked":false}}
{"unit":"TH-03","at":"2026-04-08T12:00:00-06:00","hours":"402.6","source":"brought-in","kind":"service-done","body":{"tasks":["oil-and-filters","cooler-and-scavenge"]}}
{"unit":"TH-03","at":"2026-10-19T16:40:00-06:00","source":"brought-in","kind":"hour-reading","body":{"meter":"compressor","figure":"738.4","how":"said","kept-when-asked":false}}
"#;

/// The name of the display note that Amos answers.
pub(crate) const NOTE: &str = "0192a000-0000-7000-8000-000000000002";

/// A walk that finds a lamp out, a small pour, a reminder and its answer.
pub(crate) const AMOS: &str = r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-20T06:32:00-06:00","kind":"pre-trip-section","body":{"walk":"0192a000-0000-7000-8000-000000000001","edition":1,"answers":[{"item":"horn","answer":"ok"},{"item":"lamps-stop","place":"rear","answer":"defect","word":"out","words":"left stop lamp"}],"seconds":420,"complete":true}}
{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-20T07:05:00-06:00","hours":"2862.4","kind":"top-up","body":{"fluid":"compressor-oil","family":"mineral","grade":"ISO VG 46","gauge-zero":true,"blow-down-silent":true,"before":{"percent":38},"pours":[{"volume":{"value":"0.08","unit":"qt"},"after":{"percent":44},"waited-ms":120000},{"volume":{"value":"0.13","unit":"qt"},"after":{"percent":52},"waited-ms":120000}],"after":{"percent":52},"warmth":"cold","cap-tight":true}}
{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-20T15:05:00-06:00","id":"0192a000-0000-7000-8000-000000000002","kind":"display-note","body":{"what":"reminder","as-shown":"change oil"}}
{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-20T15:10:00-06:00","kind":"acknowledgement","body":{"note":"0192a000-0000-7000-8000-000000000002","told-shop":true}}
"#;

/// A slipped decimal point.
pub(crate) const CARMELO: &str = r#"{"unit":"TH-03","person":"Carmelo Ruiz","at":"2026-10-20T16:35:00-06:00","kind":"hour-reading","body":{"meter":"compressor","figure":"7421.0","how":"asked","kept-when-asked":true}}
"#;

const SUNDAY: &str = "2026-10-18T15:00:00-06:00";

/// A shop with its fleet, and two phones that know it and that it does not know yet.
pub(crate) fn begun() -> Desk {
    let desk = Desk::new();
    let init = ["init", "--name", "Tern Hollow Water", "--zone", "America/Denver", "--demo"];
    desk.at_shop(SUNDAY, &init).well();
    desk.write("fleet.jsonl", FLEET);
    desk.write("binders.jsonl", BINDERS);
    assert_eq!(desk.at_shop(SUNDAY, &["register", "fleet.jsonl"]).json()["entered"], 7);
    assert_eq!(desk.at_shop(SUNDAY, &["record", "binders.jsonl"]).well().lines().count(), 5);
    for (phone, name) in [("one", "yard phone 1"), ("two", "yard phone 2")] {
        let file = format!("{phone}.invitation.sump");
        desk.at_shop("2026-10-19T15:00:00-06:00", &["invite", &file]).well();
        let told = desk.phone(phone, "2026-10-19T15:10:00-06:00", &["enrol", &file, "--name", name], "");
        assert_eq!(told.json()["fleet"], "Tern Hollow Water");
    }
    desk
}

/// The same, with what both drivers recorded on Tuesday in their phones.
pub(crate) fn recorded() -> Desk {
    let desk = begun();
    let ids = desk.phone("one", "2026-10-20T16:00:00-06:00", &["record"], AMOS).well();
    assert_eq!(ids.lines().count(), 4);
    assert!(ids.contains(NOTE));
    let ids = desk.phone("two", "2026-10-20T16:36:00-06:00", &["record"], CARMELO).well();
    assert_eq!(ids.lines().count(), 1);
    desk
}

/// A phone hands over, the shop takes in, the answer goes back; a phone not yet known is accepted by Ilse.
pub(crate) fn exchanged(desk: &Desk, phone: &str, moment: &str) {
    let (file, answer) = (format!("{phone}.sump"), format!("{phone}.answer.sump"));
    desk.phone(phone, moment, &["hand-over", &file], "").well();
    let told = desk.at_shop(moment, &["take-in", &file, "--answer", &answer]).json();
    if let Some(print) = told["waiting-phone"]["fingerprint"].as_str() {
        let accept = ["take-in", &file, "--answer", &answer, "--accept", print, "--by", "Ilse Marrow"];
        desk.at_shop(moment, &accept).well();
    }
    let told = desk.phone(phone, moment, &["take-in", &answer], "").json();
    assert_eq!(told["receipt"], true);
}

/// The same with both phones let in before 17:00.
pub(crate) fn handed_over() -> Desk {
    let desk = recorded();
    exchanged(&desk, "one", "2026-10-20T16:45:00-06:00");
    exchanged(&desk, "two", "2026-10-20T16:50:00-06:00");
    desk
}
