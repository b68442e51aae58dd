//! What a unit does from a day on: one that is rented out or sold is expected by nobody, and what was sold is due no more.

use axum::http::StatusCode;

use super::{Desk, no_key_shows};
use crate::tests::yard::Yard;

const NOW: &str = "2026-10-20T17:00:00-06:00";

#[tokio::test]
async fn a_unit_that_is_rented_out_or_sold_is_expected_by_nobody_and_sold_it_is_due_no_more() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let due = async || {
        let rows = desk.get("/due.json").await.json()["rows"].as_array().unwrap().clone();
        rows.iter().filter(|row| row["unit"] == "TH-08").count()
    };
    let before = due().await;
    assert!(before > 0);
    for (status, en, es) in [("rented-out", "rented out", "rentada a otro"), ("sold", "sold", "vendida")] {
        let said = [("status", status), ("from", "2026-10-20")];
        let kept = desk.post("/units/TH-08/day-status", &said).await;
        assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
        let json = desk.get("/day/2026-10-20.json").await.json();
        let others = json["sheet"]["sections"]["not-reported"]["not-expected"].as_array().unwrap().clone();
        assert!(others.iter().any(|row| row["unit"] == "TH-08" && row["state"] == status), "{others:?}");
        desk.get("/day/2026-10-20").await.says(en);
        desk.get("/units/TH-08").await.says(en);
        let spanish = desk.get_in("/day/2026-10-20", "es").await;
        spanish.says(es);
        no_key_shows(&spanish);
        assert_eq!(due().await, if status == "sold" { 0 } else { before }, "{status}");
    }
}
