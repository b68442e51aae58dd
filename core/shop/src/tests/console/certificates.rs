//! Signing certificates one after the other.

use sumpbook_trade::checklist::Severity;

use super::Browser;
use crate::console::session::Role;
use crate::tests::yard::*;

const NOW: &str = "2026-10-22T06:00:00-06:00";

/// A lamp on TH-02 that locks the road, a note on TH-01.
fn two() -> Yard {
    let mut yard = Yard::new();
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:44:00-06:00", walk(vec![out], 6));
    let note = answer("wipers", None, Some(Severity::Note), "worn: streaks");
    yard.sign(2, "Amos", "TH-01", "2026-10-20T06:50:00-06:00", walk(vec![note], 6));
    yard.exchange(2, "2026-10-20T11:05:00-06:00");
    yard
}

const LAMP: &str = "unit=TH-02&item=lamps-stop%2Fleft";

#[tokio::test(flavor = "multi_thread")]
async fn the_worst_stands_first_in_the_drivers_words_and_nothing_is_chosen() {
    let browser = Browser::of(two(), NOW).await;
    let page = browser.get("/certificates").await.whole();
    let words = page.words();
    assert!(words.contains("Certificates to sign 2"), "{words}");
    assert!(words.contains("out , Hattie Brun Tue 20 Oct 06:44"), "{words}");
    assert!(!page.body.contains("checked"), "neither verdict is chosen");
    assert_eq!(page.body.matches("type=\"radio\" name=\"verdict\"").count(), 2);
    assert!(words.contains("Signed by name: Ilse Marrow"), "{words}");
    // The one asked for comes first.
    let asked = browser.get("/certificates?unit=TH-01&item=wipers").await.whole();
    assert!(asked.words().contains("worn: streaks"), "{}", asked.words());
    assert!(browser.get("/").await.whole().body.contains("/certificates?unit="), "the day sheet leads here");
}

#[tokio::test(flavor = "multi_thread")]
async fn signing_goes_on_to_the_next_and_offers_a_slip() {
    let browser = Browser::of(two(), NOW).await;
    let signed = browser.post("/certificates", &format!("{LAMP}&verdict=repaired&words=new+bulb")).await;
    assert_eq!(signed.status, 303, "{}", signed.body);
    let next = browser.get(signed.to.as_deref().unwrap()).await.whole();
    let words = next.words();
    assert!(words.contains("Signed: TH-02") && words.contains("repaired."), "{words}");
    assert!(words.contains("Certificates to sign 1") && words.contains("worn: streaks"), "{words}");
    let slip = next.body.split("href=\"/certificates/").nth(1).unwrap().split('"').next().unwrap();
    let page = browser.get(&format!("/certificates/{slip}")).await.whole();
    assert!(page.words().contains("new bulb") && page.words().contains("Ilse Marrow"), "{}", page.words());
    let view = browser.get(&format!("/certificates/{slip}.json")).await.json();
    let codes = view["codes"].as_array().unwrap();
    assert_eq!(codes.len(), 3, "one for each phone");
    assert_eq!(codes[0]["phone"], "yard phone 2", "the unit's own first");
    for code in codes {
        let digits = code["code"].as_str().unwrap().chars().filter(char::is_ascii_digit).count();
        assert!(digits >= 10, "{code}");
        assert!(page.body.contains(code["code"].as_str().unwrap()));
    }
    // It waits for the review and no longer for a certificate.
    assert!(browser.get("/units/TH-02").await.words().contains("LOCKED, awaiting review"));
    let again = browser.post("/certificates", &format!("{LAMP}&verdict=repaired&words=again")).await;
    assert_eq!(again.status, 422, "{}", again.body);
    let gone = browser.get("/certificates?unit=TH-02&item=lamps-stop/left").await.whole();
    assert!(gone.words().contains("waits for no certificate any more"), "{}", gone.words());
}

#[tokio::test(flavor = "multi_thread")]
async fn nothing_is_signed_without_a_verdict_words_the_role_and_the_sessions_token() {
    let browser = Browser::of(two(), NOW).await;
    let waiting = || async { browser.get("/certificates.json").await.json()["count"].as_u64().unwrap() };
    for form in [
        format!("{LAMP}&words=new+bulb"),
        format!("{LAMP}&verdict=repaired&words=+"),
        "unit=TH-02&item=horn&verdict=repaired&words=x".to_owned(),
        "unit=TH-77&item=horn&verdict=repaired&words=x".to_owned(),
        format!("{LAMP}&verdict=fine&words=x"),
    ] {
        let refused = browser.post("/certificates", &form).await;
        assert_eq!(refused.status, 422, "{form}: {}", refused.body);
    }
    let forged = browser.post_bare("/certificates", &format!("{LAMP}&verdict=repaired&words=x")).await;
    assert_eq!(forged.status, 403);
    assert_eq!(waiting().await, 2);
    let (shop, folder) = two().into_shop();
    let reader = Browser::over(shop, folder, NOW, Role::Reader).await;
    assert!(!reader.get("/certificates").await.whole().body.contains("name=\"verdict\""));
    let refused = reader.post("/certificates", &format!("{LAMP}&verdict=repaired&words=x")).await;
    assert_eq!(refused.status, 403);
    assert_eq!(reader.get("/certificates/no-entry/slip").await.status, 404);
}

#[tokio::test(flavor = "multi_thread")]
async fn with_none_to_sign_the_page_says_so_in_both_languages() {
    let browser = Browser::of(Yard::new(), NOW).await;
    assert!(browser.get("/certificates").await.whole().words().contains("none waits for a certificate"));
    browser.speaks("es").get("/certificates").await.whole();
}
