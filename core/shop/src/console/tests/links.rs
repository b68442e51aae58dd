//! Where links lead: a page that is there, at a place that stands on it, with the form that was promised.

use std::collections::BTreeSet;

use axum::http::StatusCode;
use sumpbook_trade::checklist::Severity;

use super::{Desk, no_key_shows};
use crate::console::session::Role;
use crate::tests::yard::{Yard, answer, walk};

const NOW: &str = "2026-10-20T17:00:00-06:00";

/// TH-03 has a cracked mirror and no task within a month of its end.
fn yard() -> Yard {
    let mut yard = Yard::new();
    let mirror = answer("mirrors", Some("right"), Some(Severity::Road), "cracked");
    yard.sign(1, "Carmelo", "TH-03", "2026-10-20T06:35:00-06:00", walk(vec![mirror], 7));
    yard.exchange(1, "2026-10-20T07:00:00-06:00");
    yard
}

/// Addresses that a page names.
fn links(page: &str) -> Vec<String> {
    let all = page.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next());
    let own = all.filter(|link| link.starts_with('/') && !link.starts_with("/assets/"));
    own.map(|link| link.replace("&amp;", "&")).collect()
}

/// Follows every link of the console's pages one step deep.
async fn follow(desk: &Desk) -> usize {
    let mut seen = BTreeSet::new();
    for from in
        ["/", "/day/2026-10-20?view=evening", "/day/2026-10-20?view=morning", "/units", "/units/TH-03"]
            .into_iter()
            .chain([
                "/units?table=true",
                "/due",
                "/due?unit=TH-03",
                "/set-aside",
                "/people",
                "/in-and-out",
                "/paper",
            ])
    {
        for link in links(&desk.get(from).await.text) {
            if !seen.insert(link.clone())
                || link.starts_with("/in-and-out/")
                || link.starts_with("/calendar/")
            {
                continue;
            }
            let (address, place) = link.split_once('#').unwrap_or((&link, ""));
            let there = desk.get(address).await;
            assert!(
                there.status.is_success() || there.status.is_redirection(),
                "{from}: {link}: {}",
                there.status
            );
            assert!(
                place.is_empty() || there.text.contains(&format!("id=\"{place}\"")),
                "{from} leads to {link}, and nothing stands there"
            );
        }
    }
    seen.len()
}

#[tokio::test]
async fn every_link_leads_to_a_place_that_stands() {
    let desk = Desk::of(yard(), NOW).await;
    assert!(follow(&desk).await > 40);
}

#[tokio::test]
async fn whoever_only_reads_is_led_nowhere_either() {
    let desk = Desk::with(yard(), NOW, "Edric Loomis", Role::Reader).await;
    assert!(follow(&desk).await > 30);
    desk.get("/due?unit=TH-03").await.says("may read and not write").says_not("action=\"/due/plan\"");
}

#[tokio::test]
async fn a_defect_gets_its_visit_where_no_task_is_near() {
    let desk = Desk::of(yard(), NOW).await;
    assert!(
        desk.get("/due.json").await.json()["rows"].as_array().unwrap().iter().all(|r| r["unit"] != "TH-03")
    );
    let unit = desk.get("/units/TH-03").await;
    let to = links(&unit.text)
        .into_iter()
        .find(|link| link.ends_with("#visit") && link.contains("defect"))
        .unwrap();
    let form = desk.get(to.split('#').next().unwrap()).await;
    form.says("value=\"mirrors/right@TH-03\" checked").says("name=\"tick\" value=\"separator@TH-03\"");
    no_key_shows(&form);
    no_key_shows(&desk.get_in("/due?unit=TH-03", "es").await);

    let visit = [("defect", "mirrors/right@TH-03"), ("day", "2026-10-22"), ("bay", "bay 2")];
    assert_eq!(desk.post("/due/plan", &visit).await.status, StatusCode::SEE_OTHER);
    let json = desk.get("/due.json").await.json();
    let planned = json["visits"][0].clone();
    assert_eq!((&planned["unit"], &planned["defects"][0]["item"]), (&"TH-03".into(), &"mirrors".into()));
    desk.get("/due").await.says("bay 2").says("/certificates?unit=TH-03&amp;item=mirrors/right");
    // It moves as a whole, and is over when the defect is certified.
    let moved = [("defect", "mirrors/right@TH-03"), ("day", "2026-10-21")];
    assert_eq!(desk.post("/due/plan", &moved).await.status, StatusCode::SEE_OTHER);
    let json = desk.get("/due.json").await.json();
    assert_eq!(json["visits"].as_array().unwrap().len(), 1, "{json}");
    assert_eq!(json["visits"][0]["day"], "2026-10-21");
    desk.get("/day/2026-10-21?view=morning").await;
    let repaired =
        [("unit", "TH-03"), ("item", "mirrors/right"), ("verdict", "repaired"), ("words", "glass changed")];
    assert_eq!(desk.post("/certificates", &repaired).await.status, StatusCode::SEE_OTHER);
    assert_eq!(desk.get("/due.json").await.json()["visits"].as_array().unwrap().len(), 0);
    // What is not open can be given no visit.
    let again = desk.post("/due/plan", &visit).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    again.says("mirrors/right");
}

#[tokio::test]
async fn a_defect_waits_for_its_part() {
    let desk = Desk::of(yard(), NOW).await;
    let wait = [("defect", "mirrors/right@TH-03"), ("part", "mirror glass"), ("promised", "2026-10-26")];
    assert_eq!(desk.post("/due/wait", &wait).await.status, StatusCode::SEE_OTHER);
    let json = desk.get("/due.json").await.json();
    assert_eq!(
        (&json["parts"][0]["unit"], &json["parts"][0]["part"]),
        (&"TH-03".into(), &"mirror glass".into())
    );
    assert_eq!(json["parts"][0]["defect"], serde_json::json!(["mirrors", "right"]));
    desk.get("/due").await.says("Waiting for parts").says("mirror glass").says("Mon 26 Oct");
    desk.get("/units/TH-03").await.says("Mirrors, right: mirror glass");
    let over = [("defect", "mirrors/right@TH-03"), ("part", "mirror glass"), ("over", "yes")];
    assert_eq!(desk.post("/due/wait", &over).await.status, StatusCode::SEE_OTHER);
    assert_eq!(desk.get("/due.json").await.json()["parts"].as_array().unwrap().len(), 0);
    // A defect is certified, not serviced.
    let serviced = desk.post("/due/ticked", &[("defect", "mirrors/right@TH-03")]).await;
    assert_eq!(serviced.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn a_service_is_written_down_of_a_unit_with_nothing_near() {
    let desk = Desk::of(yard(), NOW).await;
    desk.get("/units/TH-03").await.says("href=\"/due/service?unit=TH-03\"");
    desk.get("/due/service?unit=TH-03").await.says("action=\"/due/service\"").says("value=\"separator\"");
}
