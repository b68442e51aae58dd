//! What the shop notes down of a unit: each form keeps what it says, and refuses what it cannot keep.

use super::Browser;
use crate::tests::yard::*;

const NOW: &str = "2026-10-22T17:00:00-06:00";
const WHEN: &str = "day=2026-10-22&time=16:00&who=Dov+Petrakis";

async fn browser() -> Browser {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-19T16:40:00-06:00", reading(28_640));
    yard.exchange(1, "2026-10-19T16:50:00-06:00");
    Browser::of(yard, NOW).await
}

#[tokio::test(flavor = "multi_thread")]
async fn an_exchanged_meter_and_an_estimate_bear_on_the_hours() {
    let browser = browser().await;
    let page = browser.get("/units/TH-01/note").await.whole();
    assert!(page.words().contains("Hours as read: 2,864.0"), "{}", page.words());
    assert!(!page.words().contains("beyond its highest figure"), "nothing says that it went round");
    let exchange = format!("meter=compressor&old-end=2864.0&new-start=0.0&{WHEN}");
    assert_eq!(browser.post("/units/TH-01/note/meter", &exchange).await.to.as_deref(), Some("/units/TH-01"));
    let gap = format!("meter=compressor&low=0&likely=8&high=24&{WHEN}");
    let refused = browser.post("/units/TH-01/note/estimate", &gap).await;
    assert_eq!(refused.status, 422);
    assert!(refused.words().contains("says how it was reckoned"), "{}", refused.words());
    let kept = browser.post("/units/TH-01/note/estimate", &format!("{gap}&note=2+workdays")).await;
    assert_eq!(kept.status, 303, "{}", kept.words());
    let unit = browser.get("/units/TH-01.json").await.json();
    let oil =
        unit["tasks"].as_array().unwrap().iter().find(|task| task["task"] == "oil-and-filters").unwrap();
    // 2,918.0 less 2,864.0, less 24 h at most.
    assert_eq!(oil["hours-left"], "30.0", "{oil}");
    assert_eq!(oil["hours-left-at-most"], "54.0", "{oil}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_laboratorys_answer_is_filed_to_its_sample() {
    let browser = browser().await;
    assert!(browser.get("/units/TH-01/note").await.words().contains("No oil sample is on record"));
    let sample = format!("bottle=B-17&point=drain&warmth=hot&hours=2864.2&{WHEN}");
    assert_eq!(browser.post("/units/TH-01/note/sample", &sample).await.status, 303);
    let view = browser.get("/units/TH-01/note.json").await.json();
    let entry = view["samples"][0]["entry"].as_str().unwrap();
    assert_eq!(view["samples"][0]["bottle"], "B-17");
    let none = browser.post("/units/TH-01/note/answer", &format!("sample={entry}&{WHEN}")).await;
    assert_eq!(none.status, 422);
    let answer = format!("sample={entry}&words=water+0.1+percent&{WHEN}");
    assert_eq!(browser.post("/units/TH-01/note/answer", &answer).await.status, 303);
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(words.contains("B-17") && words.contains("water 0.1 percent"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_dusty_site_is_kept_and_nothing_ahead_of_now_is() {
    let browser = browser().await.speaks("es");
    browser.get("/units/TH-01/note").await.whole();
    assert_eq!(browser.post("/units/TH-01/note/site", &format!("dust=dusty&{WHEN}")).await.status, 303);
    let ahead = "dust=dusty&day=2026-10-22&time=17:30&who=Dov+Petrakis";
    assert_eq!(browser.post("/units/TH-01/note/site", ahead).await.status, 422);
    assert_eq!(browser.post("/units/TH-01/note/other", WHEN).await.status, 404);
    assert_eq!(browser.get("/units/TH-99/note").await.status, 404);
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(words.contains("polvo"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn hours_that_do_not_follow_are_asked_about_before_anything_is_recorded() {
    let browser = browser().await;
    let done = |hours: &str| format!("unit=TH-01&task=oil-and-filters&hours={hours}&{WHEN}");
    for (hours, says) in [("2946.0", "cannot show that yet"), ("2286.4", "below what was read before")] {
        let asked = browser.post("/due/service", &done(hours)).await;
        assert_eq!(asked.status, 422);
        assert!(asked.words().contains(says), "{}", asked.words());
    }
    let unit = browser.get("/units/TH-01.json").await.json();
    assert_eq!(unit["history"]["count"], 4, "nothing was recorded: {}", unit["history"]);
    assert_eq!(browser.post("/due/service", &done("2866.0")).await.status, 303);
    let kept = browser.post("/due/service", &format!("{}&reads-so=yes", done("2286.4"))).await;
    assert_eq!(kept.status, 303, "who looked again may keep it: the rule sets it aside");
}
