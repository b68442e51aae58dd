//! What the shop marks of a walk: a trainee who signed alone, and one done in less time than looking takes.

use sumpbook_daybook::ledger::NewEntry;
use sumpbook_trade::record::{PreTripSection, Source};
use sumpbook_trade::{Entry, EntryId, Fact};

use super::Browser;
use crate::tests::yard::{Yard, at, walk};

/// Gil, who is learning, signs TH-05's walk on a phone, with a trainer or without.
fn learner_signs(yard: &mut Yard, when: &str, with: Option<&str>, section: PreTripSection) {
    let (truck, gil) = (yard.truck("TH-05"), yard.who("Gil"));
    let entry = Entry {
        id: EntryId(crate::shop::new_id(at(when)).unwrap()),
        unit: Some(truck),
        set: None,
        at: at(when),
        clock_off_ms: Some(0),
        person: Some(gil),
        trainer: with.map(|name| yard.who(name)),
        pin_given: true,
        trainer_pin_given: with.is_some(),
        hours: None,
        note: None,
        source: Source::Phone,
        fact: Fact::from(section),
    };
    let phone = &mut yard.phones[2].ledger;
    phone.record(&[NewEntry { entry, truck: Some(truck) }], at(when).unix_ms()).unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn a_walk_that_a_trainee_signed_alone_is_marked_on_the_sheet_and_the_units_page() {
    let mut yard = Yard::new();
    learner_signs(&mut yard, "2026-10-19T06:20:00-06:00", Some("Hattie"), walk(vec![], 6));
    yard.exchange(3, "2026-10-19T07:00:00-06:00");
    let evening = yard.evening("2026-10-19", "2026-10-19T17:00:00-06:00");
    assert_eq!(evening.not_reported.reported[0].said, "done 06:20");
    assert!(!evening.not_reported.reported[0].trainee_alone);

    learner_signs(&mut yard, "2026-10-20T06:20:00-06:00", None, walk(vec![], 6));
    yard.exchange(3, "2026-10-20T07:00:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let row = &evening.not_reported.reported[0];
    assert_eq!((row.said.as_str(), row.trainee_alone), ("done 06:20, signed by a trainee alone", true));
    let browser = Browser::of(yard, "2026-10-20T17:00:00-06:00").await;
    let page = browser.get("/day/2026-10-20").await.whole().words();
    assert!(page.contains("TH-05 done 06:20, signed by a trainee alone"), "{page}");
    let unit = browser.get("/units/TH-05").await.whole().words();
    assert!(unit.contains("1 answer, 6 min, signed by a trainee alone"), "{unit}");
    let es = browser.speaks("es").get("/day/2026-10-20").await.whole().words();
    assert!(es.contains("firmada por un aprendiz solo"), "{es}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_quick_walk_is_marked_on_the_page_of_its_unit_and_nowhere_by_name() {
    let mut yard = Yard::new();
    let quick = PreTripSection { seconds: Some(65), ..walk(vec![], 1) };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T06:32:00-06:00", quick);
    yard.sign(1, "Dinah", "TH-02", "2026-10-20T06:40:00-06:00", walk(vec![], 7));
    yard.exchange(1, "2026-10-20T07:00:00-06:00");
    let browser = Browser::of(yard, "2026-10-20T17:00:00-06:00").await;
    let first = browser.get("/units/TH-01.json").await.json();
    assert_eq!(first["history"]["entries"][0]["quick"], true);
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(words.contains("1 answer, 1 min, quick"), "{words}");
    let other = browser.get("/units/TH-02.json").await.json();
    assert!(other["history"]["entries"][0].get("quick").is_none());
    let sheet = browser.get("/day/2026-10-20").await.whole().words();
    assert!(!sheet.contains("quick"), "{sheet}");
}
