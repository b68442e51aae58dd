//! The page of what each finding locks.

use super::*;

const NOW: &str = "2026-10-19T17:00:00-06:00";

fn of(page: &Page, item: &str, word: &str) -> serde_json::Value {
    let record = page.json();
    let stops = record["stops"].as_array().unwrap().clone();
    let items = stops.iter().flat_map(|stop| stop["items"].as_array().unwrap());
    let found: Vec<_> = items.filter(|known| known["item"] == item).collect();
    assert_eq!(found.len(), 1, "{item} stands once");
    let words = found[0]["words"].as_array().unwrap();
    words.iter().find(|known| known["word"] == word).unwrap_or_else(|| panic!("no {word}")).clone()
}

#[tokio::test(flavor = "multi_thread")]
async fn what_each_word_locks_is_shown_set_by_its_stop_and_read_back() {
    let browser = Browser::of(Yard::new(), NOW).await;
    for way in ["/due", "/certificates"] {
        let page = browser.get(way).await.whole();
        assert!(page.body.contains("href=\"/severities\""), "{way} leads there");
    }
    let usual = of(&browser.get("/severities.json").await, "coolant", "low");
    assert_eq!((&usual["severity"], &usual["usual"]), (&"note".into(), &"note".into()));
    assert_eq!(usual["again"], serde_json::json!({ "days": 7, "severity": "road", "usual": "road" }));

    let set = browser.post("/severities", "s:mirrors:hairline=road&s:horn:weak=note&why=two+horns").await;
    assert_eq!((set.status.as_u16(), set.to.as_deref()), (303, Some("/severities")), "{}", set.body);
    let set = browser.post("/severities", "s:coolant:low=note&a:coolant:low=road-and-air").await;
    assert_eq!(set.status, 303, "{}", set.body);
    let record = browser.get("/severities.json").await;
    assert_eq!(of(&record, "mirrors", "hairline")["severity"], "road", "what is not named stays");
    assert_eq!(of(&record, "horn", "weak")["severity"], "note");
    assert_eq!(of(&record, "coolant", "low")["again"]["severity"], "road-and-air");
    let words = browser.get("/severities").await.whole().words();
    assert!(words.contains("the shop's own; usual is: note"), "{words}");
    assert!(words.contains("49 CFR 396.11(a)(1)"), "{words}");
    let spanish = browser.speaks("es").get("/severities").await.whole();
    assert!(spanish.words().contains("propio del taller"), "{}", spanish.words());
}

#[tokio::test(flavor = "multi_thread")]
async fn what_no_finding_can_lock_is_refused_and_nothing_changes() {
    let browser = Browser::of(Yard::new(), NOW).await;
    for wrong in [
        "s:mirrors:hairline=green",
        "s:mirrors:hairline=",
        "s:mirrors:hairline=outlet",
        "s:mirrors:milky=road",
        "s:wings:bent=road",
        "s:coolant:low=road&a:coolant:low=note",
        "a:coolant:low=note",
        "s:horn:weak=note",
        "s:horn:weak=note&why=+",
        "nothing=road",
    ] {
        let refused = browser.post("/severities", wrong).await;
        assert_eq!(refused.status, 422, "{wrong}: {}", refused.words());
        assert!(refused.words().contains("Nothing was changed."), "{wrong}: {}", refused.words());
    }
    assert_eq!(of(&browser.get("/severities.json").await, "mirrors", "hairline")["severity"], "note");
}
