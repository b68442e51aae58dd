//! The page of the service programme.

use super::*;

const NOW: &str = "2026-10-19T17:00:00-06:00";

/// The form as the page holds it, by its own record.
fn form(page: &Page) -> Vec<(String, String)> {
    let record = page.json();
    let mut fields = Vec::new();
    for (nth, row) in record["tasks"].as_array().unwrap().iter().enumerate() {
        let mut field = |name: &str, value: &serde_json::Value| match value {
            serde_json::Value::Null | serde_json::Value::Bool(false) => {}
            serde_json::Value::Bool(true) => fields.push((format!("{name}-{nth}"), "yes".to_owned())),
            serde_json::Value::String(text) => fields.push((format!("{name}-{nth}"), text.clone())),
            other => fields.push((format!("{name}-{nth}"), other.to_string())),
        };
        field("task", &row["task"]);
        for (name, key) in [("hours", "hours"), ("months", "months"), ("first", "first-at")] {
            field(name, &row[key]);
        }
        field("lead", &row["parts-lead-days"]);
        field("weighted", &row["counts-weighted"]);
        field("display", &row["display-counts"]);
    }
    fields
}

fn put(fields: &mut Vec<(String, String)>, name: &str, value: &str) {
    fields.retain(|(known, _)| known != name);
    fields.push((name.to_owned(), value.to_owned()));
}

fn sent(fields: &[(String, String)]) -> String {
    fields.iter().map(|(name, value)| format!("{name}={value}")).collect::<Vec<_>>().join("&")
}

#[tokio::test(flavor = "multi_thread")]
async fn a_programme_is_shown_set_and_counted_with_and_a_units_own_stands_apart() {
    let browser = Browser::of(Yard::new(), NOW).await;
    let page = browser.get("/due").await.whole();
    assert!(page.body.contains("href=\"/programme\""), "the due list leads there");
    let record = browser.get("/programme.json").await;
    let mut fields = form(&record);
    assert_eq!(
        (record.json()["edition"].as_u64(), record.json()["tasks"][0]["task"].as_str()),
        (Some(1), Some("oil-and-filters"))
    );

    // Sent back as it is, nothing is written.
    let set = browser.post("/programme", &sent(&fields)).await;
    assert_eq!((set.status.as_u16(), set.to.as_deref()), (303, Some("/programme")), "{}", set.body);
    assert_eq!(browser.get("/programme.json").await.json()["edition"], 1);

    put(&mut fields, "hours-0", "400");
    put(&mut fields, "name-3", "Grease+the+PTO+shaft");
    put(&mut fields, "months-3", "3");
    let set = browser.post("/programme", &sent(&fields)).await;
    assert_eq!(set.status, 303, "{}", set.body);
    let record = browser.get("/programme.json").await.json();
    assert_eq!((&record["edition"], &record["tasks"][0]["hours"]), (&2.into(), &"400.0".into()));
    assert_eq!(record["tasks"][0]["first-at"], "50.0", "what was not touched stays");
    assert_eq!(
        (&record["tasks"][3]["task"], &record["tasks"][3]["months"]),
        (&"grease-the-pto-shaft".into(), &3.into())
    );
    let due = browser.get("/due.json?unit=TH-01").await.json().to_string();
    assert!(due.contains("grease-the-pto-shaft"), "{due}");

    let set = browser
        .post(
            "/programme",
            &format!("unit=TH-01&{}&gone-3=yes", sent(&form(&browser.get("/programme.json").await))),
        )
        .await;
    assert_eq!(
        (set.status.as_u16(), set.to.as_deref()),
        (303, Some("/programme?unit=TH-01")),
        "{}",
        set.body
    );
    let own = browser.get("/programme.json?unit=TH-01").await.json();
    assert_eq!((&own["own"], own["tasks"].as_array().unwrap().len()), (&true.into(), 3));
    assert_eq!(own["own-units"], serde_json::json!(["TH-01"]));
    let due = browser.get("/due.json?unit=TH-01").await.json().to_string();
    assert!(!due.contains("grease-the-pto-shaft"), "{due}");
    assert_eq!(
        browser.get("/programme.json").await.json()["tasks"].as_array().unwrap().len(),
        4,
        "the fleet's stays"
    );
    let words = browser.get("/programme?unit=TH-02").await.whole().words();
    assert!(words.contains("TH-02 goes by the fleet's"), "{words}");
    assert_eq!(browser.get("/programme?unit=none").await.status, 404);
    let own_words = browser.get("/programme?unit=TH-01").await.whole().words();
    assert!(own_words.contains("TH-01 has a programme of its own."), "{own_words}");
    // Set for another unit without a change, nothing parts it from the fleet's.
    let same = sent(&form(&browser.get("/programme.json?unit=TH-02").await));
    assert_eq!(browser.post("/programme", &format!("unit=TH-02&{same}")).await.status, 303);
    assert_eq!(browser.get("/programme.json?unit=TH-02").await.json()["own"], false);
    // And TH-01 goes by it again.
    let back = browser.post("/programme/fleets", "unit=TH-01").await;
    assert_eq!(
        (back.status.as_u16(), back.to.as_deref()),
        (303, Some("/programme?unit=TH-01")),
        "{}",
        back.body
    );
    let own = browser.get("/programme.json?unit=TH-01").await.json();
    assert_eq!((&own["own"], own["tasks"].as_array().unwrap().len()), (&false.into(), 4));
    let due = browser.get("/due.json?unit=TH-01").await.json().to_string();
    assert!(due.contains("grease-the-pto-shaft"), "{due}");
    let page = browser.get("/programme?unit=TH-01").await.whole();
    assert!(!page.body.contains("/programme/fleets"), "there is nothing to give back");
    let spanish = browser.speaks("es").get("/programme?unit=TH-01").await.whole().words();
    assert!(spanish.contains("TH-01 va por"), "{spanish}");
}

#[tokio::test(flavor = "multi_thread")]
async fn what_is_no_programme_is_refused_by_its_task_and_nothing_changes() {
    let browser = Browser::of(Yard::new(), NOW).await;
    let usual = form(&browser.get("/programme.json").await);
    for (name, value) in [
        ("hours-0", "many"),
        ("hours-0", "0"),
        ("hours-0", "-5"),
        ("lead-0", "-5"),
        ("months-0", "0"),
        ("months-0", "1.5"),
        ("months-1", ""),
        ("lead-0", "400"),
        ("first-0", "0"),
        ("name-3", "!"),
        ("hours-3", "100"),
    ] {
        let mut fields = usual.clone();
        put(&mut fields, name, value);
        if name == "name-3" {
            put(&mut fields, "hours-3", "100");
        }
        let refused = browser.post("/programme", &sent(&fields)).await;
        assert_eq!(refused.status, 422, "{name}={value}: {}", refused.words());
        assert!(refused.words().contains("Nothing was changed."), "{name}={value}: {}", refused.words());
    }
    // What stands beyond the last place is not left out without a word.
    let beyond = browser.post("/programme", &format!("{}&task-100=separator", sent(&usual))).await;
    assert_eq!(beyond.status, 422);
    let mut twice = usual.clone();
    put(&mut twice, "name-3", "Separator");
    put(&mut twice, "months-3", "3");
    let refused = browser.post("/programme", &sent(&twice)).await;
    assert!(refused.words().contains("“Separator” stands twice"), "{}", refused.words());
    // Ten times as many hours are not made of a comma.
    let mut comma = usual.clone();
    put(&mut comma, "hours-0", "500,5");
    let refused = browser.post("/programme", &sent(&comma)).await;
    assert_eq!(refused.status, 422);
    assert!(refused.words().contains("may be meant for the point"), "{}", refused.words());
    assert_eq!(browser.post("/programme", "unit=TH-01").await.status, 422);
    // Somebody set another one while this page was open.
    let late = browser.post("/programme", &format!("edition=7&{}", sent(&usual))).await;
    assert!(late.words().contains("was set meanwhile. Nothing was changed."), "{}", late.words());
    assert_eq!(browser.get("/programme.json").await.json()["edition"], 1);
}
