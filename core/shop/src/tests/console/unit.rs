//! One unit: invented data, figures of the worked month.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::*;
use sumpbook_trade::{Figure, Unit};

use super::Browser;
use crate::tests::yard::*;

const NOW: &str = "2026-10-22T17:00:00-06:00";

/// TH-03's slipped point, TH-01's quiet walk and pour, TH-02's two answers.
fn week() -> Yard {
    let mut yard = Yard::new();
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", Some(28_624), walk(vec![], 7));
    let pour =
        |qt: &str| Pour { volume: Figure::parse(qt, Unit::Quart).unwrap(), after: None, waited_ms: None };
    for (when, qt) in [("2026-09-28T07:00:00-06:00", "0.25"), ("2026-10-19T07:05:00-06:00", "0.21")] {
        let top_up = TopUp {
            fluid: Fluid::CompressorOil,
            family: Some(OilFamily::Mineral),
            grade: Some("ISO VG 46".into()),
            gauge_zero: Some(true),
            blow_down_silent: Some(true),
            before: Some(Glass::Percent(30)),
            pours: vec![pour(qt), pour("0.10")],
            after: Some(Glass::Percent(65)),
            warmth: None,
            stopped: None,
            cap_tight: Some(true),
            oil_temperature: None,
            label_scanned: None,
        };
        yard.sign(1, "Amos", "TH-01", when, top_up);
    }
    yard.sign(1, "Carmelo", "TH-03", "2026-10-20T16:40:00-06:00", reading(7_384));
    let wrong = yard.sign(1, "Carmelo", "TH-03", "2026-10-21T16:35:00-06:00", reading(74_210));
    yard.sign(1, "Carmelo", "TH-03", "2026-10-22T16:30:00-06:00", reading(7_460));
    let right = yard.sign(1, "Carmelo", "TH-03", "2026-10-21T16:35:00-06:00", reading(7_421));
    let why = Correction { target: wrong, why: "a slipped point".into(), instead: Some(right) };
    yard.sign(1, "Carmelo", "TH-03", "2026-10-22T16:31:00-06:00", why);
    let ok = walk(vec![answer("lamps-stop", Some("left"), None, "")], 6);
    yard.sign(1, "Bettina", "TH-02", "2026-10-22T06:41:00-06:00", ok);
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-22T06:44:00-06:00", walk(vec![out], 6));
    yard.exchange(2, "2026-10-22T11:05:00-06:00");
    yard.exchange(1, "2026-10-22T16:48:00-06:00");
    yard
}

#[tokio::test(flavor = "multi_thread")]
async fn a_quiet_unit_shows_its_rulers_with_their_words() {
    let browser = Browser::of(week(), NOW).await;
    let page = browser.get("/units/TH-01").await.whole();
    let words = page.words();
    assert!(words.contains("Road: no lock on record Air: no lock on record"), "{words}");
    assert!(words.contains("its phone yard phone 1 last heard 16:48"), "{words}");
    // 2,918.0 - 2,862.4, and 22 October to 12 February.
    assert!(words.contains("55.6 h left of 500.0 h, due at 2,918.0 h"), "{words}");
    assert!(words.contains("113 days left, last good day 12 Feb 2027"), "{words}");
    let other = browser.get("/units/TH-03").await.words();
    assert!(other.contains("2,254.0 h left of 3,000.0 h"), "3,000.0 less 746.0: {other}");
    assert!(page.body.matches("<svg class=\"ruler\"").count() >= 3, "one a task");
    let view = browser.get("/units/TH-01.json").await.json();
    let oil = view["tasks"].as_array().unwrap().iter().find(|t| t["task"] == "oil-and-filters").unwrap();
    // 444.4 of 500 hours.
    assert_eq!((&oil["hours-track"]["used"], &oil["hours-left"]), (&889.into(), &"55.6".into()));
    assert_eq!(oil["last"], serde_json::json!({ "day": "2026-02-12", "hours": oil["last"]["hours"] }));
}

#[tokio::test(flavor = "multi_thread")]
async fn a_struck_figure_stays_seen_with_why() {
    let browser = Browser::of(week(), NOW).await;
    let page = browser.get("/units/TH-03").await.whole();
    assert!(page.body.contains("<s>7,421.0 h</s>"), "{}", page.body);
    assert!(page.words().contains("struck: taken back: a slipped point"), "{}", page.words());
    assert!(page.body.contains("742.1"));
    let view = browser.get("/units/TH-03.json").await.json();
    let figures: Vec<(String, bool)> = view["hours"]["readings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| (row["figure"].to_string(), row["struck"].as_bool().unwrap()))
        .collect();
    assert_eq!(figures.iter().filter(|(_, struck)| *struck).count(), 1, "{figures:?}");
    // Nothing is left out of the history: what is void is struck and says so.
    let void = view["history"]["entries"].as_array().unwrap().iter().filter(|row| row["judged"] == "void");
    assert_eq!(void.count(), 1);
    assert!(page.words().contains("void by a correction"), "{}", page.words());
}

#[tokio::test(flavor = "multi_thread")]
async fn a_figure_above_the_ceiling_says_what_the_meter_could_show() {
    let mut yard = Yard::new();
    yard.sign(1, "Carmelo", "TH-03", "2026-10-20T16:40:00-06:00", reading(7_384));
    yard.sign(1, "Carmelo", "TH-03", "2026-10-21T16:35:00-06:00", reading(74_210));
    yard.exchange(1, "2026-10-21T16:50:00-06:00");
    let browser = Browser::of(yard, "2026-10-21T17:00:00-06:00").await;
    let words = browser.get("/units/TH-03").await.whole().words();
    assert!(words.contains("struck: more than the meter can have counted: at most 762.4 h"), "{words}");
    assert!(words.contains("Hours as read: 738.4 h, Tue 20 Oct 16:40 (to settle)"), "{words}");
    assert!(words.contains("hours the meter cannot show"), "the history says so too: {words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn two_answers_about_one_lamp_stand_side_by_side_with_what_can_be_done() {
    let browser = Browser::of(week(), NOW).await;
    let page = browser.get("/units/th-02").await.whole();
    let words = page.words();
    assert!(words.contains("Road: LOCKED, since 06:44"), "{words}");
    assert!(words.contains("OK , Bettina Quaye 06:41"), "{words}");
    assert!(words.contains("out , Hattie Brun 06:44"), "{words}");
    assert!(
        page.body.contains("href=\"/certificates?unit=TH-02&amp;item=lamps-stop/left\""),
        "{}",
        page.body
    );
    assert!(page.body.contains("href=\"/due?unit=TH-02#visit\""));
    assert_eq!(browser.get("/units/TH-99").await.status, 404);
}

#[tokio::test(flavor = "multi_thread")]
async fn what_was_poured_is_summed_by_month_in_the_readers_units() {
    let browser = Browser::of(week(), NOW).await;
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(words.contains("October 2026 Fluid Compressor oil Poured 0.31 qt Times once"), "{words}");
    assert!(words.contains("September 2026 Fluid Compressor oil Poured 0.35 qt"), "{words}");
    assert!(words.contains("30 % > 65 %"), "{words}");
    let metric = browser.speaks("en-CA").get("/units/TH-01").await.whole().words();
    assert!(metric.contains("0.29 L (0.31 qt)"), "{metric}");
}

#[tokio::test(flavor = "multi_thread")]
async fn an_entry_of_a_phone_with_a_wrong_clock_says_by_how_much() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:40:00-06:00", reading(28_640));
    yard.exchange_off(1, "2026-10-20T16:50:00-06:00", 720_000);
    yard.sign(2, "Hattie", "TH-01", "2026-10-20T17:00:00-06:00", reading(28_641));
    yard.exchange(2, "2026-10-20T17:05:00-06:00");
    let browser = Browser::of(yard, "2026-10-20T18:00:00-06:00").await;
    let words = browser.get("/units/TH-01").await.whole().words();
    assert_eq!(words.matches("clock was moved: off by something from +0:00 to +12:00").count(), 1, "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn an_entry_dated_after_it_came_says_so_though_no_exchange_measured_its_clock() {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-21T16:50:00-06:00", reading(28_640));
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:51:00-06:00", reading(28_641));
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let browser = Browser::of(yard, "2026-10-20T18:00:00-06:00").await;
    let words = browser.get("/units/TH-01").await.whole().words();
    assert_eq!(words.matches("dated after it came").count(), 1, "{words}");
    assert!(words.contains("was off by -24:00:00 or more; nothing is corrected"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_long_history_comes_in_pages_newest_first() {
    let mut yard = Yard::new();
    for n in 0..60 {
        let when = format!("2026-10-20T{:02}:{:02}:00-06:00", 8 + n / 60, n % 60);
        yard.sign(1, "Amos", "TH-01", &when, SiteCondition { dust: SiteDust::Dusty });
    }
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    let browser = Browser::of(yard, NOW).await;
    let view = browser.get("/units/TH-01.json").await.json();
    let (count, shown) = (&view["history"]["count"], view["history"]["entries"].as_array().unwrap());
    assert!(count.as_u64().unwrap() > 60, "{count}");
    assert_eq!((shown.len(), &view["history"]["pages"]), (50, &2.into()));
    assert_eq!(shown[0]["at"], "2026-10-20T08:59:00-06:00");
    assert_eq!(shown[0]["signed-on"], "yard phone 1");
    let older = browser.get("/units/TH-01?history=2").await.whole();
    assert!(older.body.contains("href=\"/units/TH-01?history=1#history\""), "{}", older.body);
    assert!(older.words().contains("brought in, unsigned"), "{}", older.words());
}

#[tokio::test(flavor = "multi_thread")]
async fn the_page_is_whole_in_spanish() {
    let browser = Browser::of(week(), NOW).await.speaks("es");
    for door in ["TH-01", "TH-02", "TH-03", "TH-05", "TH-07", "TH-08"] {
        let page = browser.get(&format!("/units/{door}")).await.whole();
        assert!(page.words().contains("Vencimientos"), "{}", page.words());
    }
    let words = browser.get("/units/TH-02").await.words();
    assert!(words.contains("BLOQUEADO") || words.contains("BLOQUEO"), "{words}");
}
