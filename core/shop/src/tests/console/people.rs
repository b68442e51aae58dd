//! What the shop has its phones say.

use super::*;

const NOW: &str = "2026-10-19T17:00:00-06:00";

#[tokio::test(flavor = "multi_thread")]
async fn the_shops_own_words_and_numbers_are_set_whole_and_told_back() {
    let browser = Browser::of(Yard::new(), NOW).await;
    let empty = browser.get("/people.json").await.json();
    assert_eq!(empty["says"], serde_json::json!({}), "nothing of ours stands there");
    let form = "emergency=911&name-0=Night+desk&number-0=555-0140&number-1=555-0141\
        &reminder=Finish+the+job%2C+tell+us+today.&fault=";
    let set = browser.post("/people/says", form).await;
    assert_eq!(set.status, 303, "{}", set.body);
    let says = &browser.get("/people.json").await.json()["says"];
    assert_eq!(says["on-call"][0], serde_json::json!({ "name": "Night desk", "number": "555-0140" }));
    assert_eq!(says["on-call"][1]["number"], "555-0141", "a number needs no name");
    assert_eq!(says["of-reminder"], "Finish the job, tell us today.");
    assert_eq!(says.get("of-fault"), None, "an empty field says nothing");
    let page = browser.get("/people").await.whole();
    assert!(page.body.contains("555-0140"), "{}", page.body);

    // Each time the whole is set: what is left out is gone.
    browser.post("/people/says", "number-0=555-0142").await;
    let says = &browser.get("/people.json").await.json()["says"];
    assert_eq!(says, &serde_json::json!({ "on-call": [{ "name": "", "number": "555-0142" }] }));

    let refused = browser.post("/people/says", "name-0=Night+desk").await;
    assert_eq!(refused.status, 422, "{}", refused.body);
    assert!(refused.words().contains("has no number. Nothing was changed."), "{}", refused.words());
    let long = browser.post("/people/says", &format!("fault={}", "x".repeat(201))).await;
    assert!(long.words().contains("longer than 200 signs"), "{}", long.words());
    let spanish = browser.speaks("es").get("/people").await.whole();
    assert!(spanish.words().contains("Lo que dicen los teléfonos"), "{}", spanish.words());
}
