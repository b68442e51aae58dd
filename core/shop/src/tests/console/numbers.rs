//! The page of the rules' numbers.

use super::*;

const NOW: &str = "2026-10-19T17:00:00-06:00";

fn of(page: &Page, id: &str) -> serde_json::Value {
    let record = page.json();
    let found = record["numbers"].as_array().unwrap().iter().find(|row| row["id"] == id);
    found.unwrap_or_else(|| panic!("no {id}")).clone()
}

#[tokio::test(flavor = "multi_thread")]
async fn the_numbers_are_shown_with_their_usual_ones_set_and_read_back() {
    let browser = Browser::of(Yard::new(), NOW).await;
    let page = browser.get("/due").await.whole();
    assert!(page.body.contains("href=\"/numbers\""), "the due list leads there");
    let usual = of(&browser.get("/numbers.json").await, "forecast-spreads");
    assert_eq!((&usual["value"], &usual["usual"]), (&"1.28".into(), &"1.28".into()));

    let set = browser.post("/numbers", "forecast-spreads=1.64&coming-up-days=32&verdict-hours=30").await;
    assert_eq!((set.status.as_u16(), set.to.as_deref()), (303, Some("/numbers")), "{}", set.body);
    let record = browser.get("/numbers.json").await;
    assert_eq!(of(&record, "forecast-spreads")["value"], "1.64");
    assert_eq!(of(&record, "verdict-hours")["value"], "30.0");
    assert_eq!(of(&record, "covers-minutes")["value"], "840", "what is left empty is the usual one");
    let words = browser.get("/numbers").await.whole().words();
    assert!(words.contains("the shop's own; usual is 14"), "{words}");
    let rows = browser.get("/due.json?unit=TH-01").await.json();
    assert!(rows.to_string().contains("coming-up"), "{rows}");
    let spanish = browser.speaks("es").get("/numbers").await.whole();
    assert!(spanish.words().contains("lo habitual es 14"), "{}", spanish.words());
}

#[tokio::test(flavor = "multi_thread")]
async fn a_number_out_of_its_bounds_is_refused_by_its_name() {
    let browser = Browser::of(Yard::new(), NOW).await;
    for wrong in ["covers-minutes=5", "covers-minutes=14h", "covers-minutes=-60", "covers-minutes=60.5"] {
        let refused = browser.post("/numbers", wrong).await;
        assert_eq!(refused.status, 422, "{wrong}");
        let words = refused.words();
        assert!(words.contains("A pre-trip covers, minutes") && words.contains("from 60 to 1440"), "{words}");
        assert!(words.contains("Nothing was changed."), "{words}");
    }
    assert_eq!(of(&browser.get("/numbers.json").await, "covers-minutes")["value"], "840");
}
