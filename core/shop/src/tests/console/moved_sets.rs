//! The pages of two units between which a set moved: what is about the air goes with it. Invented data.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::*;
use sumpbook_trade::{Figure, Unit};

use super::Browser;
use crate::NewSet;
use crate::tests::yard::*;

const NOW: &str = "2026-10-22T17:00:00-06:00";

fn fitted(yard: &mut Yard, serial: &str, door: &str, when: &str) {
    let hand = yard.hand("Ilse", when);
    let on = Some(yard.truck(door));
    let profile = SetProfile { oil_family: Some(OilFamily::Mineral), ..SetProfile::unknown() };
    yard.shop.add_set(NewSet { serial: Some(serial.to_owned()), on, profile }, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
}

fn poured(fluid: Fluid, qt: &str) -> TopUp {
    let volume = Figure::parse(qt, Unit::Quart).unwrap();
    TopUp { pours: vec![Pour { volume, after: None, waited_ms: None }], ..TopUp::of(fluid) }
}

/// S-91 works on TH-01 and moves to TH-05 on Wednesday; TH-01 carries none after it.
fn moved() -> Yard {
    let mut yard = Yard::new();
    fitted(&mut yard, "S-91", "TH-01", "2026-10-18T13:00:00-06:00");
    let found = vec![
        answer("mirrors", None, Some(Severity::Road), "cracked"),
        answer("fan", None, Some(Severity::Air), "broken"),
        answer("oil-level", None, None, ""),
    ];
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", Some(28_650), walk(found, 7));
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:00:00-06:00", poured(Fluid::CompressorOil, "0.25"));
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:10:00-06:00", poured(Fluid::Coolant, "0.50"));
    yard.sign(1, "Amos", "TH-01", "2026-10-19T07:20:00-06:00", drive(DriveWhat::LeftYard));
    let slipped = yard.sign(1, "Amos", "TH-01", "2026-10-19T16:00:00-06:00", reading(82_660));
    let why = Correction { target: slipped, why: "another truck's".into(), instead: None };
    yard.sign(1, "Amos", "TH-01", "2026-10-19T16:05:00-06:00", why);
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    fitted(&mut yard, "S-91", "TH-05", "2026-10-21T08:00:00-06:00");
    yard.sign(1, "Amos", "TH-05", "2026-10-21T16:00:00-06:00", reading(28_690));
    yard.exchange(1, "2026-10-21T16:48:00-06:00");
    yard
}

#[tokio::test(flavor = "multi_thread")]
async fn hours_fluids_and_history_follow_the_set() {
    let browser = Browser::of(moved(), NOW).await;
    let now = browser.get("/units/TH-05.json").await.json();
    let figures: Vec<(&str, bool)> = now["hours"]["readings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| (row["figure"].as_str().unwrap(), row["struck"].as_bool().unwrap()))
        .collect();
    // The last is from the binders, older than the first registration.
    assert_eq!(figures, [("2869.0", false), ("8266.0", true), ("2865.0", false), ("2418.0", false)]);
    assert!(now["hours"]["readings"].as_array().unwrap()[..3].iter().all(|row| row["who"] == "Amos Tillery"));
    let fluids: Vec<&str> =
        now["fluids"]["pours"].as_array().unwrap().iter().map(|row| row["fluid"].as_str().unwrap()).collect();
    assert_eq!(fluids, ["compressor-oil"]);
    let entries = now["history"]["entries"].as_array().unwrap();
    let of = |kind: &str| entries.iter().filter(|row| row["kind"] == kind).count();
    assert_eq!((of("top-up"), of("drive"), of("pre-trip-section")), (1, 0, 1), "{entries:?}");
    let pour = entries.iter().find(|row| row["kind"] == "top-up").unwrap();
    assert_eq!(pour["on"], "TH-01");
    let words = browser.get("/units/TH-05").await.whole().words();
    assert!(words.contains("top-up (recorded on TH-01)"), "{words}");

    let left = browser.get("/units/TH-01.json").await.json();
    assert_eq!(left["hours"]["readings"], serde_json::json!([]));
    let fluids: Vec<&str> = left["fluids"]["pours"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| row["fluid"].as_str().unwrap())
        .collect();
    assert_eq!(fluids, ["coolant"], "the coolant is the truck's");
    let entries = left["history"]["entries"].as_array().unwrap();
    let of = |kind: &str| entries.iter().filter(|row| row["kind"] == kind).count();
    assert_eq!((of("top-up"), of("drive"), of("pre-trip-section"), of("hour-reading")), (1, 1, 1, 0));
    assert_eq!(left["history"]["gone-to"], serde_json::json!(["TH-05"]));
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(words.contains("are not among them: their set stands on TH-05 now"), "{words}");
    browser.speaks("es").get("/units/TH-01").await.whole();
}

#[tokio::test(flavor = "multi_thread")]
async fn the_cab_report_tells_of_the_set_that_is_on_the_truck() {
    let browser = Browser::of(moved(), NOW).await;
    let now = browser.get("/units/TH-05/cab-report.json").await.json();
    assert_eq!(now["set-serial"], "S-91");
    assert_eq!(now["locks"][0]["lock"], "air");
    assert_eq!(now["defects"][0]["item"], "fan");
    let left = browser.get("/units/TH-01/cab-report.json").await.json();
    let items: Vec<&str> =
        left["defects"].as_array().unwrap().iter().map(|row| row["item"].as_str().unwrap()).collect();
    assert_eq!(items, ["mirrors", "coolant"], "the fan went with the set");
    // Whatever comes into the book the set came from changes the page of where it stands, and its check with it.
    let mut yard = moved();
    let check = |yard: &Yard, door: &str| {
        sumpbook_daybook::screen::check_code(&yard.shop.ledger, yard.truck(door), at(NOW)).unwrap()
    };
    let (before, other) = (check(&yard, "TH-05"), check(&yard, "TH-02"));
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:00:00-06:00", reading(28_670));
    yard.exchange(1, "2026-10-22T16:48:00-06:00");
    assert_ne!(check(&yard, "TH-05"), before);
    assert_eq!(check(&yard, "TH-02"), other);
}
