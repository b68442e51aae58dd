//! `/crew`: patterns over weeks, of the crew and not of a morning; whose the records are, and no name beside "quick".

use axum::http::StatusCode;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::{PreTripSection, RepairVerdict};

use super::{Desk, no_key_shows};
use crate::certify::certify;
use crate::tests::yard::{Yard, answer, end_of_day, walk};

const NOW: &str = "2026-11-09T17:00:00-07:00";

/// Amos walks TH-01 on so many mornings from 20 October on, on the first two of them quickly, and reports each evening.
fn mornings(yard: &mut Yard, days: u32) {
    for n in 0..days {
        let (month, day) = if n < 12 { (10, 20 + n) } else { (11, n - 11) };
        let offset = if n < 12 { "-06:00" } else { "-07:00" };
        let at = |time: &str| format!("2026-{month}-{day:02}T{time}:00{offset}");
        let seconds = if n < 2 { Some(65) } else { Some(300 + n) };
        let section = PreTripSection { seconds, ..walk(vec![], 6) };
        yard.sign(1, "Amos", "TH-01", &at("06:30"), section);
        yard.sign(1, "Amos", "TH-01", &at("16:30"), end_of_day());
    }
}

/// A mirror of TH-03 is found, certified two days later, and found again within the month; one of TH-02 waits.
fn mirrors(yard: &mut Yard) {
    let cracked = |words: &str| walk(vec![answer("mirrors", Some("right"), Some(Severity::Road), words)], 7);
    yard.sign(3, "Carmelo", "TH-03", "2026-10-21T06:35:00-06:00", cracked("cracked"));
    yard.exchange(3, "2026-10-21T07:10:00-06:00");
    let (truck, wren) = (yard.truck("TH-03"), yard.hand("Wren", "2026-10-23T06:35:00-06:00"));
    certify(&mut yard.shop, truck, "mirrors/right", RepairVerdict::Repaired, "new glass", &wren).unwrap();
    yard.exchange(3, "2026-10-24T06:00:00-06:00");
    let review = sumpbook_trade::record::Review {
        certificates: yard.shop.ledger.unit_state(truck).unwrap().defects[0]
            .certificates
            .iter()
            .map(|c| sumpbook_trade::EntryId(c.certificate))
            .collect(),
        report: None,
    };
    yard.sign(3, "Carmelo", "TH-03", "2026-10-24T06:30:00-06:00", review);
    yard.sign(3, "Carmelo", "TH-03", "2026-11-02T06:35:00-07:00", cracked("cracked again"));
    yard.exchange(3, "2026-11-02T07:10:00-07:00");
}

async fn desk(days: u32) -> Desk {
    let mut yard = Yard::new();
    mornings(&mut yard, days);
    mirrors(&mut yard);
    yard.exchange(1, "2026-11-09T16:40:00-07:00");
    Desk::of(yard, NOW).await
}

#[tokio::test]
async fn a_share_of_quick_walks_is_told_of_the_crew_from_20_walks_on() {
    // With Carmelo's two it is 19 and 20.
    let few = desk(17).await.get("/crew.json").await.json();
    assert_eq!((few["walks"]["on-phones"].as_u64(), few["walks"]["quick"].as_u64()), (Some(19), None));
    assert!(few["walks"]["median-s"].is_null() && few["enough"] == 20, "{few}");
    let desk = desk(18).await;
    let walks = desk.get("/crew.json").await.json()["walks"].clone();
    assert_eq!(
        (walks["signed"].as_u64(), walks["people"].as_u64(), walks["quick"].as_u64()),
        (Some(20), Some(2), Some(2)),
        "{walks}"
    );
    assert_eq!(walks["quick-percent"], 10);
    let page = desk.get("/crew").await;
    page.says("2 of 20 (10 %)").says("Quick is said of the crew, not of a person.");
    no_key_shows(&page);
    let es = desk.get_in("/crew", "es").await;
    es.says("2 de 20 (10 %)");
    no_key_shows(&es);
    desk.get("/people").await.says("href=\"/crew\"");
}

#[tokio::test]
async fn only_who_has_20_records_is_named_and_in_the_order_of_names() {
    let desk = desk(18).await;
    let json = desk.get("/crew.json").await.json();
    let shares = json["shares"].as_array().unwrap();
    assert_eq!(shares.len(), 1, "{json}");
    assert_eq!(
        (&shares[0]["who"], &shares[0]["walks"], &shares[0]["reports"]),
        (&"Amos Tillery".into(), &18.into(), &18.into())
    );
    // 36 of 38 records.
    assert_eq!(shares[0]["percent"], 95);
    assert_eq!((&json["others"]["people"], &json["others"]["percent"]), (&1.into(), &5.into()));
    let page = desk.get("/crew").await;
    page.says("1 other, with fewer than 20").says_not("Carmelo Ruiz").says("class=\"no-print\"");
}

#[tokio::test]
async fn what_came_again_how_long_repairs_took_and_what_is_past_due() {
    let desk = desk(18).await;
    let json = desk.get("/crew.json").await.json();
    let repeats = json["repeats"].as_array().unwrap();
    assert_eq!(repeats.len(), 1, "{json}");
    assert_eq!((&repeats[0]["unit"], &repeats[0]["words"]), (&"TH-03".into(), &"new glass".into()));
    let repairs = &json["repairs"];
    assert_eq!((&repairs["repaired"], &repairs["median-hours"]), (&1.into(), &48.into()));
    assert_eq!((&repairs["open"], &repairs["oldest"]["unit"]), (&1.into(), &"TH-03".into()));
    let due = desk.get("/due.json").await.json();
    let past = due["rows"].as_array().unwrap().iter().filter(|row| row["state"] == "past-due").count();
    assert!(past > 0);
    assert_eq!(json["past-due"]["tasks"], past);
    let page = desk.get("/crew").await;
    page.says("repaired Fri 23 Oct 06:35: new glass").says("2.0 days").says("Mirrors, right");
    assert_eq!(desk.get("/crew?weeks=5").await.status, StatusCode::BAD_REQUEST);
    desk.get("/crew?weeks=13").await.says("aria-current=\"page\"");
}
