//! `/due`: rows, visits, parts, services.

use super::{Desk, no_key_shows};
use crate::console::session::Role;
use crate::plan::{Work, fleet_due, plan_visits};
use crate::tests::yard::{Yard, day};
use axum::http::StatusCode;
use sumpbook_trade::clock::TaskId;

const NOW: &str = "2026-10-20T17:00:00-06:00";

#[tokio::test]
async fn the_list_stands_in_rs_order_with_every_head_and_in_both_languages() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let page = desk.get("/due").await;
    assert_eq!(page.status, StatusCode::OK);
    for head in [
        "Tick",
        "Unit",
        "Task",
        "Hours left",
        "Last good day",
        "Runs out first",
        "State",
        "Part",
        "Promised",
        "Visit",
    ] {
        page.says(&format!(">{head}</th>"));
    }
    no_key_shows(&page);
    let es = desk.get_in("/due", "es").await;
    es.says("Último día bueno").says("Planear una visita");
    no_key_shows(&es);
    let json = desk.get("/due.json").await.json();
    let rows = json["rows"].as_array().unwrap();
    // TH-08's last good day is 20 October: due today stands above what only comes up.
    assert_eq!(rows[0]["unit"], "TH-08");
    assert_eq!(rows[0]["state"], "due-today");
    assert_eq!(json["units"], 6);
}

#[tokio::test]
async fn a_visit_is_planned_and_moved() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let ticks = [("tick", "oil-and-filters@TH-08"), ("tick", "cooler-and-scavenge@TH-08")];
    // A bare number is told with what it is a number of.
    let visit = [ticks[0], ticks[1], ("day", "2026-10-22"), ("bay", "2"), ("who", "Wren Castellane")];
    let planned = desk.post("/due/plan", &visit).await;
    assert_eq!((planned.status, planned.to.as_str()), (StatusCode::SEE_OTHER, "/due#visits"));
    let page = desk.get("/due").await;
    page.says("bay 2, Wren Castellane").says("Thu 22 Oct");
    let moved = [ticks[0], ("day", "2026-10-23")];
    assert_eq!(desk.post("/due/plan", &moved).await.status, StatusCode::SEE_OTHER);
    let json = desk.get("/due.json").await.json();
    let visits = json["visits"].as_array().unwrap();
    assert_eq!(visits.len(), 2);
    assert_eq!(
        visits[1]["where-and-who"], "bay 2, Wren Castellane",
        "a visit that moves keeps bay and person"
    );
    assert_eq!(
        (&visits[0]["tasks"][0], &visits[0]["day"]),
        (&"cooler-and-scavenge".into(), &"2026-10-22".into())
    );
}

#[tokio::test]
async fn a_service_is_written_down_and_its_visit_is_over() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-19T08:00:00-06:00");
    let tasks = ["oil-and-filters", "cooler-and-scavenge"].map(TaskId::from).to_vec();
    let visits = [(yard.truck("TH-08"), Work { tasks, ..Work::default() })];
    plan_visits(&mut yard.shop, &visits, day("2026-10-20"), None, &hand).unwrap();
    let desk = Desk::of(yard, NOW).await;
    desk.get("/due").await.says("Tue 20 Oct");
    let form = desk.get("/due/service?unit=TH-08&tick=oil-and-filters%40TH-08").await;
    form.says("value=\"oil-and-filters\" checked");
    no_key_shows(&form);
    let done = [
        ("unit", "TH-08"),
        ("task", "oil-and-filters"),
        ("task", "cooler-and-scavenge"),
        ("hours", "611.0"),
        ("day", "2026-10-20"),
        ("time", "15:10"),
        ("who", "Wren Castellane"),
        ("source", "shop"),
        ("parts", "F-118\r\nE-20"),
        ("oil-volume", "8.0"),
        ("oil-unit", "qt"),
        ("oil-family", "mineral"),
        ("oil-grade", "VG 46"),
    ];
    let kept = desk.post("/due/service", &done).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let json = desk.get("/due.json").await.json();
    assert_eq!(json["visits"].as_array().unwrap().len(), 0, "a visit that was done is none");
    desk.get("/units/TH-08").await.says("8.0 qt mineral VG 46, F-118, E-20");
    assert!(json["rows"].as_array().unwrap().iter().all(|row| row["unit"] != "TH-08"), "{json}");
}

#[tokio::test]
async fn what_a_form_lacks_is_said_and_nothing_is_recorded() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let before = desk.hub.reader().unwrap().store().truth().last_n().unwrap();
    let tick = ("tick", "oil-and-filters@TH-08");
    for (path, fields, said) in [
        ("/due/plan", vec![("day", "2026-10-22")], "No row was ticked."),
        ("/due/plan", vec![tick], "The visit has no day."),
        ("/due/plan", vec![tick, ("day", "2026-10-19")], "That day is over in the yard."),
        ("/due/plan", vec![tick, ("day", "soon")], "is no day"),
        (
            "/due/plan",
            vec![("tick", "oil-and-filters@TH-99"), ("day", "2026-10-22")],
            "No unit here is called",
        ),
        ("/due/plan", vec![("tick", "tea@TH-08"), ("day", "2026-10-22")], "not in the programme of TH-08"),
        ("/due/wait", vec![tick], "The part has no name."),
        ("/due/service", vec![("unit", "TH-08")], "No task was ticked."),
        ("/due/service", vec![("unit", "TH-08"), ("task", "separator")], "no day and time"),
        (
            "/due/service",
            vec![("unit", "TH-08"), ("task", "separator"), ("day", "2026-10-21"), ("time", "06:00")],
            "has not come yet",
        ),
    ] {
        let answer = desk.post(path, &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{path} {fields:?}");
        answer.says(said);
    }
    assert_eq!(desk.hub.reader().unwrap().store().truth().last_n().unwrap(), before);
}

#[tokio::test]
async fn a_part_is_waited_for_and_the_task_stays_due() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let past = [("tick", "oil-and-filters@TH-08"), ("part", "filter F-118"), ("promised", "2025-10-26")];
    let refused = desk.post("/due/wait", &past).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    refused.says("2025-10-26 is over in the yard");
    let wait = [("tick", "oil-and-filters@TH-08"), ("part", "filter F-118"), ("promised", "2026-10-26")];
    assert_eq!(desk.post("/due/wait", &wait).await.status, StatusCode::SEE_OTHER);
    desk.get("/due").await.says("filter F-118").says("Mon 26 Oct").says("due today, waiting for part");
    let over = [("tick", "oil-and-filters@TH-08"), ("part", "filter F-118"), ("over", "yes")];
    assert_eq!(desk.post("/due/wait", &over).await.status, StatusCode::SEE_OTHER);
    desk.get("/due").await.says_not("filter F-118");
}

#[tokio::test]
async fn a_reader_sees_no_form_and_writes_nothing() {
    let desk = Desk::with(Yard::new(), NOW, "Edric Loomis", Role::Reader).await;
    desk.get("/due").await.says_not("action=\"/due/plan\"").says("TH-08");
    let tried = desk.post("/due/plan", &[("tick", "oil-and-filters@TH-08"), ("day", "2026-10-22")]).await;
    assert_eq!(tried.status, StatusCode::FORBIDDEN);
}

#[test]
fn what_takes_time_to_come_is_ordered_before_its_last_good_day() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-20T08:00:00-06:00");
    let mut programme = yard.shop.ledger.fleet().programme.clone();
    for task in &mut programme.tasks {
        task.parts_lead_days = if task.id.0 == "cooler-and-scavenge" { 21 } else { 0 };
    }
    yard.shop.set_programme(None, programme, &hand).unwrap();
    let due = fleet_due(&yard.shop.ledger, crate::tests::yard::at(NOW)).unwrap();
    // TH-02's last good day is 14 November, TH-01's 20 November; TH-08's is today: it is late already.
    let order = &due.orders[0];
    assert_eq!((order.task.as_str(), order.lead_days), ("cooler-and-scavenge", 21));
    assert_eq!(order.by, "2026-09-29".parse().ok());
    assert!(order.units.contains(&"TH-02".to_owned()), "{order:?}");
}
