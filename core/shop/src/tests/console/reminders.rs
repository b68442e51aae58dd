//! What the display said: which service answers its reminder (R6), and an answer dated before it (R5).

use sumpbook_trade::clock::Programme;
use sumpbook_trade::record::{Acknowledgement, NoteKind, ProgrammeSet};

use super::Browser;
use crate::tests::yard::{Yard, note, reading, service};

/// TH-01's reminder came on Wednesday and was gone on Thursday; on Friday these tasks were done.
fn asked_after(tasks: &[&str], programme: Option<Programme>) -> (Option<String>, bool) {
    let mut yard = Yard::new();
    if let Some(programme) = programme {
        let hand = yard.hand("Ilse", "2026-11-02T08:00:00-07:00");
        yard.shop.write(None, ProgrammeSet { truck: None, programme }.into(), None, &hand).unwrap();
    }
    let (wednesday, thursday) = ("2026-11-04T15:40:00-07:00", "2026-11-05T16:20:00-07:00");
    yard.sign(1, "Amos", "TH-01", wednesday, reading(29_196));
    let shown = yard.sign(1, "Amos", "TH-01", wednesday, note(NoteKind::Reminder, "SERVICE DUE", None));
    yard.sign(1, "Amos", "TH-01", thursday, note(NoteKind::Reminder, "", Some(shown)));
    yard.sign_with(1, "Amos", "TH-01", "2026-11-06T09:00:00-07:00", Some(29_250), service(tasks));
    yard.exchange(1, "2026-11-06T10:00:00-07:00");
    let friday = yard.evening("2026-11-06", "2026-11-06T17:00:00-07:00");
    let cleared = yard.shop.ledger.unit_state(yard.truck("TH-01")).unwrap().cleared.is_some();
    let row = friday.reminders.rows.iter().find(|row| row.unit == "TH-01");
    (row.and_then(|row| row.ask.clone()), cleared)
}

#[test]
fn only_a_service_of_what_the_display_counts_answers_its_reminder() {
    let (ask, cleared) = asked_after(&["cooler-and-scavenge"], None);
    assert!(cleared && ask.unwrap().starts_with("reminder cleared on the display, no service recorded"));
    assert_eq!(asked_after(&["cooler-and-scavenge", "oil-and-filters"], None), (None, false));

    let ticked = |tasks: &[&str]| {
        let mut programme = Programme::common_practice();
        for task in &mut programme.tasks {
            task.display_counts = tasks.contains(&task.id.0.as_str());
        }
        Some(programme)
    };
    assert!(asked_after(&["separator"], ticked(&["oil-and-filters"])).1, "the shop ticked the oil alone");
    assert!(!asked_after(&["separator"], ticked(&["separator"])).1);
    assert!(asked_after(&["separator"], ticked(&[])).1, "nothing ticked: the oil's");
    assert!(!asked_after(&["first-service"], ticked(&[])).1, "the first service is an oil change too");
}

#[tokio::test(flavor = "multi_thread")]
async fn an_answer_dated_before_its_note_is_shown_with_its_time_and_does_not_count() {
    let mut yard = Yard::new();
    let shown = yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-11-04T15:40:00-07:00",
        note(NoteKind::Reminder, "SERVICE DUE", None),
    );
    // Gil's phone is 50 minutes slow.
    yard.exchange(1, "2026-11-04T16:00:00-07:00");
    yard.exchange(3, "2026-11-04T16:05:00-07:00");
    let told = Acknowledgement { note: shown, told_shop: true };
    yard.sign(3, "Gil", "TH-01", "2026-11-04T15:20:00-07:00", told);
    yard.exchange_off(3, "2026-11-04T16:30:00-07:00", 3_000_000);
    let evening = yard.evening("2026-11-04", "2026-11-04T17:00:00-07:00");
    let row = &evening.reminders.rows[0];
    assert_eq!((&row.seen_by, &row.shop_told_by, row.others.len()), (&None, &None, 0));
    let early = &row.dated_before[0];
    assert_eq!(early.who.as_deref(), Some("Gil Sandoval"));
    assert_eq!(early.at.moment().format("%H:%M").to_string(), "15:20");
    let browser = Browser::of(yard, "2026-11-04T17:00:00-07:00").await;
    let page = browser.get("/day/2026-11-04").await.whole().words();
    assert!(page.contains("nobody; Gil Sandoval 15:20, dated before the note, not counted"), "{page}");
    let es = browser.speaks("es").get("/day/2026-11-04").await.whole().words();
    assert!(es.contains("Gil Sandoval 15:20, con fecha anterior al aviso, no cuenta"), "{es}");
}
