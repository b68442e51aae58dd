//! What a unit does from a day on: one that is rented out or sold is expected by nobody, and what was sold is due no more.

use axum::http::StatusCode;
use sumpbook_trade::day::DayStatus;

use super::{Desk, no_key_shows};
use crate::tests::yard::{Yard, day};

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

#[tokio::test]
async fn only_a_unit_that_goes_out_is_told_with_its_time() {
    let mut yard = Yard::new();
    let (truck, hand) = (yard.truck("TH-08"), yard.hand("Ilse", "2026-10-19T08:00:00-06:00"));
    let days = [("2026-10-19", DayStatus::Stored), ("2026-10-20", DayStatus::Out)];
    for (from, status) in days {
        yard.shop.set_day_status(truck, day(from), status, Some(420), &hand).unwrap();
    }
    let desk = Desk::of(yard, NOW).await;
    let page = desk.get("/units/TH-08").await;
    page.says("from Mon 19 Oct: stored<").says("from Tue 20 Oct: out, expected at 07:00");
    let page = desk.get_in("/units/TH-08", "es").await;
    page.says("desde el lun 19 oct: guardada<").says("desde el mar 20 oct: sale a las 07:00");
}
