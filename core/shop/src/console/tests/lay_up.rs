//! `/units/{door}`: laying up, the list before the return, and what the page says meanwhile, in both languages.

use axum::http::StatusCode;

use super::{Desk, no_key_shows};
use crate::console::session::Role;
use crate::tests::yard::Yard;
use sumpbook_trade::lay_up::ReturnList;

const NOW: &str = "2027-03-01T08:00:00-07:00";

async fn laid_up() -> Desk {
    let desk = Desk::of(Yard::new(), NOW).await;
    let form = [
        ("day", "2026-11-30"),
        ("time", "15:00"),
        ("hours", "2,870.0"),
        ("done", "oil changed, belts slack"),
    ];
    let kept = desk.post("/units/TH-01/lay-up", &form).await;
    assert_eq!((kept.status, kept.to.as_str()), (StatusCode::SEE_OTHER, "/units/TH-01#lay-up"));
    desk
}

#[tokio::test]
async fn a_set_is_laid_up_and_the_page_says_what_that_means_in_both_languages() {
    let desk = laid_up().await;
    let page = desk.get("/units/TH-01").await;
    page.says("Laid up since Mon 30 Nov 2026 15:00, by Ilse Marrow, at 2,870.0 h: oil changed, belts slack");
    page.says("Laid up since Mon 30 Nov 2026 15:00; its clocks ran on.");
    page.says("Laid up, return list not complete");
    page.says("laid up since Mon 30 Nov 2026 15:00, clocks ran on");
    page.says("The road is not locked by it")
        .says("Common practice, no source. The maker's manual comes first");
    page.says("name=\"line-oil-look\" value=\"done\"").says_not("checked");
    no_key_shows(&page);
    let es = desk.get_in("/units/TH-01", "es").await;
    es.says("De baja temporal desde lun 30 nov 2026 15:00, por Ilse Marrow, con 2,870.0 h");
    es.says("Aceite en la mirilla").says("falta la lista de regreso").says("Guardar estas respuestas");
    no_key_shows(&es);

    let due = desk.get("/due").await;
    due.says("Laid up; clocks ran on").says("laid-up-table");
    no_key_shows(&due);
    let json = desk.get("/due.json").await.json();
    assert!(json["rows"].as_array().unwrap().iter().all(|row| row["unit"] != "TH-01"));
    assert!(json["laid-up"].as_array().unwrap().iter().any(|row| row["unit"] == "TH-01"));
    let day = desk.get("/?view=evening").await;
    day.says("TH-01 laid up since Mon 30 Nov 2026 15:00").says("Answer the list").says("clocks ran on");
    no_key_shows(&day);
}

#[tokio::test]
async fn the_list_is_answered_line_by_line_and_never_without_a_reason() {
    let desk = laid_up().await;
    let nothing = desk.post("/units/TH-01/return", &[("words", "all fine")]).await;
    assert_eq!(nothing.status, StatusCode::UNPROCESSABLE_ENTITY);
    nothing.says("No line was answered");
    let no_reason = [("line-hoses", "waived"), ("why-hoses", " ")];
    desk.post("/units/TH-01/return", &no_reason).await.says("waived without a reason");
    let some = [("line-hoses", "waived"), ("why-hoses", "new last week"), ("line-water", "done")];
    assert_eq!(desk.post("/units/TH-01/return", &some).await.status, StatusCode::SEE_OTHER);
    let page = desk.get("/units/TH-01").await;
    page.says("waived: new last week, Ilse Marrow Mon 1 Mar 08:00").says("done, Ilse Marrow");
    page.says_not("name=\"line-hoses\"").says("name=\"line-tires\"");

    let rest: Vec<String> =
        ReturnList::common_practice().unwrap().lines.iter().map(|line| format!("line-{}", line.id)).collect();
    let rest = rest.iter().filter(|line| !matches!(line.as_str(), "line-hoses" | "line-water"));
    let rest: Vec<(&str, &str)> = rest.map(|line| (line.as_str(), "done")).collect();
    assert_eq!(desk.post("/units/TH-01/return", &rest).await.status, StatusCode::SEE_OTHER);
    let page = desk.get("/units/TH-01").await;
    page.says("Back Mon 1 Mar 08:00: Ilse Marrow answered the last line.").says_not("clocks ran on");
    page.says("Hoses, reels, couplings (new last week)");
    let json = desk.get("/units/TH-01.json").await.json();
    assert_eq!(json["now"]["air"]["state"], "none");
    assert_eq!(json["lay-up"]["laid-up"], false);
    let twice = desk.post("/units/TH-01/return", &rest).await;
    twice.says("TH-01 is not laid up");
}

#[tokio::test]
async fn a_moment_to_come_is_refused_and_a_reader_sees_the_list_without_a_form() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let ahead = [("day", "2027-03-02"), ("time", "08:00")];
    desk.post("/units/TH-01/lay-up", &ahead).await.says("That moment has not come yet");
    desk.post("/units/TH-01/lay-up", &[("day", "")]).await.says("has no day and time");
    let mut yard = Yard::new();
    let hand = yard.hand("Dov", "2026-11-30T15:00:00-07:00");
    let truck = yard.truck("TH-01");
    crate::lay_up::lay_up(&mut yard.shop, truck, None, None, None, &hand).unwrap();
    let desk = Desk::with(yard, NOW, "Dov Petrakis", Role::Reader).await;
    let page = desk.get("/units/TH-01").await;
    page.says("Oil in the glass").says_not("name=\"line-oil-look\"").says_not("Lay up the compressor set");
    assert_eq!(
        desk.post("/units/TH-01/return", &[("line-hoses", "done")]).await.status,
        StatusCode::FORBIDDEN
    );
}
