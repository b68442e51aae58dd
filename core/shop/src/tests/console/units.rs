//! Every unit: invented data, outcomes worked by rule.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::DriveWhat;

use super::Browser;
use crate::console::session::Role;
use crate::tests::yard::*;
use crate::{InitOptions, Shop};

/// Thursday 22 October: TH-02's lamp out since Tuesday, TH-05 near its first service, TH-08 stored past its day.
fn thursday() -> Yard {
    let mut yard = Yard::new();
    yard.sign_with(1, "Amos", "TH-01", "2026-10-22T06:32:00-06:00", Some(28_624), walk(vec![], 7));
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:44:00-06:00", walk(vec![out], 6));
    yard.sign(2, "Bettina", "TH-02", "2026-10-20T06:50:00-06:00", drive(DriveWhat::LeftYard));
    yard.sign(3, "Gil", "TH-05", "2026-10-21T16:20:00-06:00", reading(472));
    yard.sign(3, "Gil", "TH-05", "2026-10-22T06:20:00-06:00", walk(vec![], 6));
    for (phone, when) in [(2, "2026-10-20T11:05:00-06:00"), (1, "2026-10-22T16:48:00-06:00")] {
        yard.exchange(phone, when);
    }
    yard.exchange(3, "2026-10-22T16:50:00-06:00");
    yard
}

const NOW: &str = "2026-10-22T17:00:00-06:00";

#[tokio::test(flavor = "multi_thread")]
async fn those_that_need_someone_stand_first_and_the_rest_is_a_run_of_doors() {
    let browser = Browser::of(thursday(), NOW).await;
    let page = browser.get("/units").await.whole();
    let words = page.words();
    assert!(words.contains("ROAD LOCKED"), "{words}");
    assert!(words.contains("First service: coming up 2.8 h left"), "{words}");
    assert!(words.contains("Oil and filters: 55.6 h left, 113 days left"), "the fewest hours: {words}");
    assert!(words.contains("Cooler and scavenge: 29 days left, to Fri 20 Nov"), "the fewest days: {words}");
    assert!(words.contains("past due 2 days"), "TH-08's day was the 20th: {words}");
    assert!(words.contains("47.2 h, Wed 21 Oct 16:20"), "{words}");
    assert!(words.contains("too little known"), "no balance of its oil is closed: {words}");
    let view = browser.get("/units.json").await.json();
    assert_eq!(view["count"], 6);
    let doors = |rows: &serde_json::Value| -> Vec<String> {
        rows.as_array().unwrap().iter().map(|row| row["unit"].as_str().unwrap().to_owned()).collect()
    };
    let needing = doors(&view["rows"]);
    assert_eq!(view["needing"], needing.len());
    for door in ["TH-01", "TH-02", "TH-05", "TH-08"] {
        assert!(needing.contains(&door.to_owned()), "{door}: {needing:?}");
    }
    let quiet: Vec<&str> = view["quiet"].as_array().unwrap().iter().map(|d| d.as_str().unwrap()).collect();
    assert_eq!(needing.len() + quiet.len(), 6);
    for door in &quiet {
        assert!(page.body.contains(&format!("href=\"/units/{door}\"")), "{door}");
        assert!(page.body.contains("<small>TH-</small>"), "the prefix they share is small");
    }
    let locked = view["rows"].as_array().unwrap().iter().find(|row| row["unit"] == "TH-02").unwrap();
    assert_eq!((&locked["road"]["state"], &locked["air"]["state"]), (&"locked".into(), &"none".into()));
    assert_eq!(locked["road"]["since"], "2026-10-20T06:44:00-06:00");
    assert_eq!(locked["pair"]["old-news"], true, "nothing was heard for two days");
    assert_eq!(locked["open-defects"], 1);
}

#[tokio::test(flavor = "multi_thread")]
async fn the_table_is_sorted_by_its_heads() {
    let browser = Browser::of(thursday(), NOW).await;
    let first = |view: serde_json::Value| view["rows"][0]["unit"].as_str().unwrap().to_owned();
    for (sort, door) in
        [("unit", "TH-01"), ("road-air", "TH-02"), ("hours", "TH-01"), ("first", "TH-08"), ("open", "TH-02")]
    {
        let view = browser.get(&format!("/units.json?table=true&sort={sort}")).await.json();
        assert_eq!(view["rows"].as_array().unwrap().len(), 6);
        assert_eq!(first(view), door, "{sort}");
    }
    let page = browser.get("/units?table=true&sort=hours").await.whole();
    assert!(page.body.contains("href=\"/units?sort=first&amp;table=true\""), "{}", page.body);
    assert_eq!(page.body.matches("aria-sort=\"other\"").count(), 1);
    assert_eq!(browser.get("/units?sort=colour").await.status, 400);
}

#[tokio::test(flavor = "multi_thread")]
async fn the_find_box_goes_to_the_unit_or_lists_those_that_may_be_meant() {
    let browser = Browser::of(thursday(), NOW).await;
    for (typed, to) in
        [("2", "/units/TH-02"), ("th-07", "/units/TH-07"), ("TH", "/units?find=TH"), ("9", "/units?find=9")]
    {
        assert_eq!(browser.get(&format!("/find?unit={typed}")).await.to.as_deref(), Some(to));
    }
    let found = browser.get("/units?find=TH-0").await.whole();
    assert!(found.words().contains("Units with \"TH-0\" in their number"), "{}", found.words());
    assert!(browser.get("/units?find=zz").await.whole().words().contains("No unit has that in its number."));
}

#[tokio::test(flavor = "multi_thread")]
async fn without_units_the_page_says_how_to_get_some_also_in_spanish() {
    let folder = tempfile::tempdir().unwrap();
    let options = InitOptions {
        name: "Tern Hollow Water".into(),
        zone: "America/Denver".into(),
        demo: true,
        now: at(NOW),
    };
    let shop = Shop::init(folder.path(), &options).unwrap();
    let browser = Browser::over(shop, folder, NOW, Role::Shop).await;
    let words = browser.get("/units").await.whole().words();
    assert!(words.contains("No units: bring in a list or add one"), "{words}");
    let words = browser.speaks("es").get("/units").await.whole().words();
    assert!(words.contains("No hay unidades: traer una lista o agregar una"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn more_than_two_hundred_stand_on_pages_by_door_number() {
    let (mut shop, folder) = Yard::new().into_shop();
    let hand = crate::Hand::nobody(at(NOW));
    for n in 100..350 {
        let truck = crate::NewTruck {
            door: format!("B-{n}"),
            serial: None,
            plate: None,
            features: sumpbook_trade::Features::default(),
            in_service: day("2026-10-01"),
            in_service_hours: sumpbook_trade::Tenths(0),
            annual_inspection: None,
        };
        shop.add_truck(truck, &hand).unwrap();
    }
    let browser = Browser::over(shop, folder, NOW, Role::Shop).await;
    let view = browser.get("/units.json?table=true&page=2").await.json();
    assert_eq!(view["pages"], serde_json::json!([["B-100", "B-299"], ["B-300", "TH-08"]]));
    assert_eq!(view["rows"].as_array().unwrap().len(), 56);
    let page = browser.get("/units?table=true").await.whole();
    assert!(page.words().contains("B-300 - TH-08"));
    assert_eq!(browser.get("/units?table=true&page=99").await.whole().status, 200);
}
