//! What is begun on a page can be ended on one: waits for parts, visits, what a unit does from a day on.

use axum::http::StatusCode;
use sumpbook_trade::checklist::Severity;

use super::{Desk, no_key_shows};
use crate::tests::yard::{Yard, answer, walk};

const EVENING: &str = "2026-10-20T17:00:00-06:00";
const NEXT: &str = "2026-10-21T17:00:00-06:00";

/// TH-05's wipers smear since the morning.
fn wipers() -> Yard {
    let mut yard = Yard::new();
    let smears = answer("wipers", None, Some(Severity::Note), "smears");
    yard.sign(2, "Hattie", "TH-05", "2026-10-20T06:44:00-06:00", walk(vec![smears], 6));
    yard.exchange(2, "2026-10-20T07:00:00-06:00");
    yard
}

/// The value of a hidden field in the row that says `of`.
fn hidden(page: &str, field: &str, of: &str) -> String {
    let row = page.split("<tr").find(|row| row.contains(of) && row.contains(&format!("name=\"{field}\"")));
    let row = row.unwrap_or_else(|| panic!("no row of {of} with {field}: {page}"));
    let after = row.split(&format!("name=\"{field}\" value=\"")).nth(1).unwrap();
    after.split('"').next().unwrap().to_owned()
}

#[tokio::test]
async fn each_open_wait_has_its_own_button_and_is_named_beside_its_defect() {
    let desk = Desk::of(wipers(), EVENING).await;
    let wait = [("defect", "wipers@TH-05"), ("part", "blade"), ("promised", "2026-10-26")];
    assert_eq!(desk.post("/due/wait", &wait).await.status, StatusCode::SEE_OTHER);
    let unit = desk.get("/units/TH-05").await;
    unit.says("waits for blade, promised Mon 26 Oct").says("The part is in");
    desk.get("/").await.says("waits for blade, promised Mon 26 Oct");
    let due = desk.get("/due").await;
    no_key_shows(&due);
    let over = [("unit", "TH-05"), ("wait", &hidden(&due.text, "wait", "blade")), ("on", "unit")];
    let ended = desk.post("/due/wait/over", &over).await;
    assert_eq!((ended.status, ended.to.as_str()), (StatusCode::SEE_OTHER, "/units/TH-05#waits"));
    desk.get("/units/TH-05").await.says_not("waits for blade");
    let again = desk.post("/due/wait/over", &over).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    again.says("TH-05 has no such open wait");
}

#[tokio::test]
async fn a_wait_that_is_not_open_cannot_be_over() {
    let desk = Desk::of(Yard::new(), EVENING).await;
    let tick = ("tick", "oil-and-filters@TH-08");
    let wait = [tick, ("part", "filter F-118")];
    assert_eq!(desk.post("/due/wait", &wait).await.status, StatusCode::SEE_OTHER);
    let other = desk.post("/due/wait", &[tick, ("part", "something else"), ("over", "yes")]).await;
    assert_eq!(other.status, StatusCode::UNPROCESSABLE_ENTITY);
    other.says("TH-08 has no such open wait");
    let due = desk.get("/due").await;
    let over = [("unit", "TH-08"), ("wait", &hidden(&due.text, "wait", "filter F-118"))];
    assert_eq!(desk.post("/due/wait/over", &over).await.status, StatusCode::SEE_OTHER);
    desk.get("/due").await.says_not("filter F-118");
}

#[tokio::test]
async fn a_part_waited_for_after_the_certificate_stands_until_it_is_in() {
    let mut yard = wipers();
    let hand = yard.hand("Ilse", "2026-10-20T08:00:00-06:00");
    let truck = yard.truck("TH-05");
    let verdict = sumpbook_trade::record::RepairVerdict::NotNeeded;
    crate::certify::certify(&mut yard.shop, truck, "wipers", verdict, "blade ordered", &hand).unwrap();
    let wait = |part: &str| sumpbook_trade::record::WaitingForPart {
        task: None,
        part: part.to_owned(),
        promised: None,
        over: false,
        defect: None,
    };
    let later = yard.hand("Ilse", "2026-10-20T08:01:00-06:00");
    crate::wait::wait_for_part(&mut yard.shop, truck, wait("blade"), &later).unwrap();
    let desk = Desk::of(yard, EVENING).await;
    let unit = desk.get("/units/TH-05").await;
    unit.says("Waiting for parts").says("blade");
    let over = [("unit", "TH-05"), ("wait", &hidden(&unit.text, "wait", "blade"))];
    assert_eq!(desk.post("/due/wait/over", &over).await.status, StatusCode::SEE_OTHER);
    desk.get("/units/TH-05").await.says_not("Waiting for parts");
}

#[tokio::test]
async fn a_visit_is_called_off_with_what_it_had_moved_and_the_rest_stays() {
    let desk = Desk::of(Yard::new(), EVENING).await;
    let (oil, cooler) = (("tick", "oil-and-filters@TH-08"), ("tick", "cooler-and-scavenge@TH-08"));
    desk.post("/due/plan", &[oil, cooler, ("day", "2026-10-22"), ("bay", "bay 2")]).await;
    desk.post("/due/plan", &[oil, ("day", "2026-10-23")]).await;
    desk.get("/units/TH-08").await.says("Fri 23 Oct");
    let due = desk.get("/due").await;
    let visits = due.text.split("id=\"visits-table\"").nth(1).unwrap();
    let off = [("unit", "TH-08"), ("visit", &hidden(visits, "visit", "Fri 23 Oct")), ("why", "rained out")];
    let done = desk.post("/due/visit/cancel", &off).await;
    assert_eq!((done.status, done.to.as_str()), (StatusCode::SEE_OTHER, "/due#visits"), "{}", done.text);
    let json = desk.get("/due.json").await.json();
    let visits = json["visits"].as_array().unwrap();
    assert_eq!(visits.len(), 1, "the oil does not go back to Thursday: {visits:?}");
    assert_eq!(visits[0]["tasks"], serde_json::json!(["cooler-and-scavenge"]));
    assert_eq!((&visits[0]["day"], &visits[0]["where-and-who"]), (&"2026-10-22".into(), &"bay 2".into()));
    desk.get("/units/TH-08").await.says("rained out");
    let again = desk.post("/due/visit/cancel", &off).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    again.says("no such visit planned");
}

#[tokio::test]
async fn what_a_unit_does_is_said_on_its_page() {
    let desk = Desk::of(Yard::new(), EVENING).await;
    let here = "/units/TH-08/day-status";
    desk.get("/units/TH-08").await.says("from Sun 18 Oct: stored").says_not("Nothing was ever said");
    let out = [("status", "out"), ("from", "2026-10-20"), ("expected", "06:30")];
    let said = desk.post(here, &out).await;
    assert_eq!((said.status, said.to.as_str()), (StatusCode::SEE_OTHER, "/units/TH-08#day"));
    let page = desk.get("/units/TH-08").await;
    page.says("from Tue 20 Oct: out, expected at 06:30");
    no_key_shows(&page);
    no_key_shows(&desk.get_in("/units/TH-08", "es").await);
    desk.get("/day/2026-10-20?view=evening").await.says("TH-08");
    for (fields, said) in [
        (vec![("from", "2026-10-20")], "It was not said what the unit does"),
        (vec![("status", "flown"), ("from", "2026-10-20")], "It was not said what the unit does"),
        (vec![("status", "parked")], "from which day"),
        (
            vec![("status", "parked"), ("from", "2026-10-20"), ("expected", "06:30")],
            "Only a unit that goes out",
        ),
    ] {
        let answer = desk.post(here, &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{fields:?}");
        answer.says(said);
    }
}

#[tokio::test]
async fn a_unit_of_which_nothing_was_said_shows_the_way_to_say_it() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-19T08:00:00-06:00");
    let new = crate::NewTruck {
        door: "TH-09".into(),
        serial: None,
        plate: None,
        features: Default::default(),
        in_service: "2026-10-19".parse().unwrap(),
        in_service_hours: sumpbook_trade::Tenths(0),
        annual_inspection: None,
    };
    yard.shop.add_truck(new, &hand).unwrap();
    let desk = Desk::of(yard, EVENING).await;
    desk.get("/units/TH-09").await.says("Nothing was ever said").says("href=\"#day\"");
}

#[tokio::test]
async fn a_sheet_of_an_earlier_day_offers_only_what_is_still_open() {
    let mut yard = wipers();
    let cracked = answer("mirrors", None, Some(Severity::Note), "cracked");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:50:00-06:00", walk(vec![cracked], 6));
    yard.exchange(2, "2026-10-20T07:00:00-06:00");
    let hand = yard.hand("Ilse", "2026-10-21T08:00:00-06:00");
    let truck = yard.truck("TH-05");
    let verdict = sumpbook_trade::record::RepairVerdict::Repaired;
    crate::certify::certify(&mut yard.shop, truck, "wipers", verdict, "new blade", &hand).unwrap();
    let desk = Desk::of(yard, NEXT).await;
    let page = desk.get("/day/2026-10-20?view=evening").await;
    page.says("no longer open").says("/certificates?unit=TH-02&amp;item=mirrors");
    page.says_not("/certificates?unit=TH-05&amp;item=wipers");
}

#[tokio::test]
async fn from_a_refused_form_language_leads_back_to_the_page_and_its_address_has_a_sentence() {
    let desk = Desk::of(Yard::new(), EVENING).await;
    let refused = desk.post_from("/due?unit=TH-08", "/due/plan", &[("day", "2026-10-22")]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.says("back=/due%3Funit%3DTH-08").says_not("back=/due/plan");
    refused.says("<a href=\"/due?unit=TH-08\">Back to the form</a>").says("Back button keeps what was typed");
    desk.post("/due/plan", &[]).await.says("back=/\"").says_not("Back to the form");
    let asked = desk.get("/due/plan").await;
    assert_eq!(asked.status, StatusCode::METHOD_NOT_ALLOWED);
    asked.says("Only a form is sent to this address").says("href=\"/due\"");
    desk.get("/units/TH-08/papers").await.says("href=\"/units/TH-08\"");
    no_key_shows(&desk.get_in("/due/plan", "es").await);
    let odd = desk.get("/due?from=abc").await;
    assert_eq!(odd.status, StatusCode::BAD_REQUEST);
    odd.says("cannot be read").says("<html");
}

#[tokio::test]
async fn rows_that_are_folded_stand_on_paper() {
    let desk = Desk::of(Yard::new(), EVENING).await;
    let page = desk.get("/").await;
    assert!(!page.text.contains("<details>"), "what is folded on the sheet is rows: {}", page.text);
    let css = include_str!("../../../face/print.css");
    assert!(css.contains("details:not([open]):not(.rows)") && css.contains("details.rows::details-content"));
}
