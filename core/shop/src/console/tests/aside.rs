//! `/set-aside`: what waits, by name and with a reason.

use axum::http::StatusCode;
use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::store::RefusedRow;

use super::{Desk, no_key_shows};
use crate::revoke;
use crate::tests::yard::{Yard, at, reading};

const NOW: &str = "2026-10-21T17:00:00-06:00";

/// Phone 2 is stopped, and brings an entry that it held.
fn stopped() -> (Yard, String) {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-20T14:02:00-06:00");
    let phone: KeyId = yard.phones[1].ledger.own_key().id();
    let entry = yard.sign(2, "Dinah", "TH-03", "2026-10-20T07:00:00-06:00", reading(7_600));
    revoke(&mut yard.shop, phone, "left in a taxi", &hand).unwrap();
    yard.exchange(2, "2026-10-20T16:40:00-06:00");
    (yard, entry.to_string())
}

#[tokio::test]
async fn a_stopped_phones_entry_waits_and_is_accepted_by_name_with_a_reason() {
    let (yard, entry) = stopped();
    let desk = Desk::of(yard, NOW).await;
    let page = desk.get("/set-aside").await;
    page.says("yard phone 2")
        .says("TH-03")
        .says("760.0")
        .says("its phone was stopped")
        .says("Its signature holds.");
    no_key_shows(&page);
    no_key_shows(&desk.get_in("/set-aside", "es").await);
    let to_use = [("entry", entry.as_str()), ("verdict", "use")];
    for (more, said) in [
        (vec![("name", "Ilse Marrow")], "There is no reason given."),
        (vec![("why", "she told me")], "There is no name given."),
        (vec![("name", "Dov Petrakis"), ("why", "she told me")], "not the name of this sign-in"),
    ] {
        let answer = desk.post("/set-aside/decide", &[to_use.to_vec(), more].concat()).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        answer.says(said);
    }
    let whole = [to_use[0], to_use[1], ("name", "ilse marrow"), ("why", "she told me at noon")];
    assert_eq!(desk.post("/set-aside/decide", &whole).await.status, StatusCode::SEE_OTHER);
    let page = desk.get("/set-aside").await;
    page.says("Nothing is set aside.").says("she told me at noon").says("accepted by name, counts");
    let json = desk.get("/set-aside.json").await.json();
    assert_eq!(json["settled"][0]["verdict"], "late-accepted");
    assert_eq!(json["settled"][0]["who"], "Ilse Marrow");
}

#[tokio::test]
async fn what_is_left_out_stays_in_sight() {
    let (yard, entry) = stopped();
    let desk = Desk::of(yard, NOW).await;
    let out = [
        ("entry", entry.as_str()),
        ("verdict", "leave-out"),
        ("name", "Ilse Marrow"),
        ("why", "nobody knows of it"),
    ];
    assert_eq!(desk.post("/set-aside/decide", &out).await.status, StatusCode::SEE_OTHER);
    let page = desk.get("/set-aside").await;
    page.says("Nothing is set aside.").says("left out, still seen").says("760.0");
}

#[tokio::test]
async fn a_page_of_before_decides_nothing_that_was_decided_since_and_a_fresh_one_turns_it_round() {
    let (yard, entry) = stopped();
    let desk = Desk::of(yard, NOW).await;
    let seen = desk.get("/set-aside.json").await.json()["decided-upto"].as_i64().unwrap().to_string();
    let say = |seen: &str, verdict: &str| {
        let fields = [
            ("entry", entry.as_str()),
            ("verdict", verdict),
            ("name", "Ilse Marrow"),
            ("why", "asked"),
            ("seen", seen),
        ];
        fields.map(|(name, value)| (name.to_owned(), value.to_owned()))
    };
    let post = async |fields: [(String, String); 5]| {
        let fields = fields.each_ref().map(|(name, value)| (name.as_str(), value.as_str()));
        desk.post("/set-aside/decide", &fields).await
    };
    assert_eq!(post(say(&seen, "use")).await.status, StatusCode::SEE_OTHER);
    // The other tab still shows it as waiting.
    let late = post(say(&seen, "leave-out")).await;
    assert_eq!(late.status, StatusCode::UNPROCESSABLE_ENTITY);
    late.says("Somebody decided about this meanwhile");
    let json = desk.get("/set-aside.json").await.json();
    assert_eq!(json["settled"].as_array().unwrap().len(), 1, "{json}");

    desk.get("/set-aside").await.says("Decide otherwise");
    let judged = async || {
        let id = entry.parse().unwrap();
        let of = move |ledger: &sumpbook_daybook::ledger::Ledger| {
            let truth = ledger.store().truth();
            let n = truth.by_id(id)?.first().map(|held| held.n).unwrap_or_default();
            Ok(truth.fact(n)?.map(|fact| fact.judged))
        };
        desk.hub.read(of).await.unwrap()
    };
    for (verdict, then) in
        [("leave-out", Judged::LeftOut), ("use", Judged::Counts), ("leave-out", Judged::LeftOut)]
    {
        let now = desk.get("/set-aside.json").await.json()["decided-upto"].as_i64().unwrap().to_string();
        assert_ne!(now, seen);
        assert_eq!(post(say(&now, verdict)).await.status, StatusCode::SEE_OTHER);
        assert_eq!(judged().await, Some(then), "{verdict}");
    }
}

#[tokio::test]
async fn a_disputed_figure_is_settled_here() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-20T08:00:00-06:00", reading(28_200));
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:00:00-06:00", reading(74_210));
    yard.exchange(1, "2026-10-20T16:40:00-06:00");
    let desk = Desk::of(yard, NOW).await;
    let page = desk.get("/set-aside").await;
    page.says("7,421.0");
    let json = desk.get("/set-aside.json").await.json();
    let figures = json["readings"][0]["figures"].as_array().unwrap();
    let wrong = figures.iter().find(|figure| figure["figure"] == "7421.0").unwrap();
    let id = wrong["entry"].as_str().unwrap().to_owned();
    let not = [
        ("entry", id.as_str()),
        ("verdict", "leave-out"),
        ("name", "Ilse Marrow"),
        ("why", "two digits swapped"),
    ];
    assert_eq!(desk.post("/set-aside/decide", &not).await.status, StatusCode::SEE_OTHER);
    let json = desk.get("/set-aside.json").await.json();
    assert_eq!(json["readings"].as_array().unwrap().len(), 0, "{json}");
}

#[tokio::test]
async fn what_was_not_taken_in_is_told_with_its_phone_and_why() {
    let mut yard = Yard::new();
    let phone = yard.phones[1].ledger.own_key().id();
    let forged = |n: u8| RefusedRow {
        bytes: vec![n],
        reason: "signature".to_owned(),
        device: Some(phone.0),
        id: None,
        received_ms: at("2026-10-20T16:40:00-06:00").unix_ms(),
    };
    yard.shop.ledger.store_mut().keep_refused(&[forged(1), forged(2), forged(3)]).unwrap();
    let desk = Desk::of(yard, NOW).await;
    let page = desk.get("/set-aside").await;
    page.says("3 entries from yard phone 2 carry a signature that does not hold. They are set aside;");
    let es = desk.get_in("/set-aside", "es").await;
    es.says("3 registros de yard phone 2 traen una firma que no vale. Quedaron apartados;");
}
