//! `/stock`: a count stands from its moment on, pours are taken out of it, and what was poured is what is to be loaded.

use axum::http::StatusCode;
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::{Pour, SetProfile, TopUp};
use sumpbook_trade::{Figure, Unit};

use super::{Desk, no_key_shows};
use crate::NewSet;
use crate::tests::yard::Yard;

const NOW: &str = "2026-10-20T17:00:00-06:00";

fn pour(amount: &str, unit: Unit) -> TopUp {
    let volume = Figure::parse(amount, unit).unwrap();
    TopUp {
        fluid: Fluid::CompressorOil,
        family: None,
        grade: None,
        gauge_zero: None,
        blow_down_silent: None,
        before: None,
        pours: vec![Pour { volume, after: None, waited_ms: None }],
        after: None,
        warmth: None,
        stopped: None,
        cap_tight: None,
        oil_temperature: None,
        label_scanned: None,
    }
}

/// Amos pours a litre before the count of 17:00 and a quart after it.
async fn desk() -> Desk {
    let mut yard = Yard::new();
    yard.sign(1, "Amos", "TH-01", "2026-10-20T09:00:00-06:00", pour("1", Unit::Litre));
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    Desk::of(yard, NOW).await
}

#[tokio::test]
async fn what_nobody_counted_tells_what_was_poured_and_no_level() {
    let desk = desk().await;
    let json = desk.get("/stock.json").await.json();
    let [row] = json["rows"].as_array().unwrap().as_slice() else { panic!("{json}") };
    assert_eq!((&row["unit"], &row["poured"]), (&"TH-01".into(), &"1.06 qt".into()));
    assert!(row["counted"].is_null() && row["left"].is_null());
    let page = desk.get("/stock").await;
    page.says("never counted").says("not known");
    no_key_shows(&page);
    no_key_shows(&desk.get_in("/stock", "es").await);
    desk.get("/units/TH-01").await.says_not("On the truck:");
    desk.get("/due").await.says("href=\"/stock\"");
}

#[tokio::test]
async fn a_count_stands_and_later_pours_are_taken_out_of_it() {
    let desk = desk().await;
    let count = [("unit", "TH-01"), ("fluid", "compressor-oil"), ("volume", "1 gal")];
    let kept = desk.post("/stock", &count).await;
    assert_eq!((kept.status, kept.to.as_str()), (StatusCode::SEE_OTHER, "/stock"), "{}", kept.text);
    let json = desk.get("/stock.json").await.json();
    let row = &json["rows"][0];
    // The litre of the morning was poured before it was counted.
    assert_eq!(
        (&row["counted"], &row["poured"], &row["left"]),
        (&"4.00 qt".into(), &"0.00 qt".into(), &"4.00 qt".into())
    );
    assert_eq!(json["to-load"].as_array().unwrap().len(), 0);

    let truck = desk.hub.reader().unwrap().fleet().truck_by_door("TH-01").unwrap().truck;
    let poured = async |amount: &'static str| {
        let at = desk.hub.now();
        let write = desk.hub.write(move |shop| {
            let told = crate::Told {
                person: None,
                at: crate::tests::yard::at(NOW).max(at),
                source: sumpbook_trade::record::Source::Shop,
                hours: None,
                note: None,
            };
            let hand = crate::Hand::nobody(at);
            shop.write_told(Some(truck), pour(amount, Unit::Quart).into(), told, &hand)
        });
        write.await.unwrap();
    };
    poured("0.5").await;
    let json = desk.get("/stock.json").await.json();
    let row = &json["rows"][0];
    assert_eq!(
        (&row["poured"], &row["left"], &row["more-than-counted"]),
        (&"0.50 qt".into(), &"3.50 qt".into(), &false.into())
    );
    assert_eq!((&json["to-load"][0]["volume"], &json["to-load"][0]["jugs"]), (&"0.50 qt".into(), &1.into()));
    let unit = desk.get("/units/TH-01").await;
    unit.says("On the truck: Compressor oil, 3.50 qt left of 4.00 qt counted")
        .says("oil on the truck counted");
    no_key_shows(&unit);

    poured("5").await;
    let page = desk.get("/stock").await;
    page.says("0.00 qt; more was poured than was counted: count it again").says("5.50 qt");
    let json = desk.get("/stock.json").await.json();
    assert_eq!(json["to-load"][0]["jugs"], 2);
}

#[tokio::test]
async fn oils_of_different_families_are_never_loaded_as_one() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-18T13:00:00-06:00");
    for (door, family) in [
        ("TH-01", Some(OilFamily::Mineral)),
        ("TH-02", Some(OilFamily::Polyglycol)),
        ("TH-03", Some(OilFamily::Mineral)),
        ("TH-05", None),
    ] {
        let profile = SetProfile { oil_family: family, ..SetProfile::unknown() };
        let truck = yard.truck(door);
        yard.shop.add_set(NewSet { serial: None, on: Some(truck), profile }, &hand).unwrap();
        yard.sign(1, "Amos", door, "2026-10-20T09:00:00-06:00", pour("1", Unit::Quart));
    }
    yard.exchange(1, "2026-10-20T16:50:00-06:00");
    let desk = Desk::of(yard, NOW).await;
    let json = desk.get("/stock.json").await.json();
    let load = json["to-load"].as_array().unwrap();
    let said: Vec<_> =
        load.iter().map(|row| (row["oil"]["family"].as_str(), row["volume"].as_str())).collect();
    assert_eq!(
        said,
        [(None, Some("1.00 qt")), (Some("mineral"), Some("2.00 qt")), (Some("polyglycol"), Some("1.00 qt"))]
    );
    let page = desk.get("/stock").await;
    page.says("Compressor oil, mineral").says("Compressor oil, polyglycol");
    no_key_shows(&page);
    no_key_shows(&desk.get_in("/stock", "es").await);
}

#[tokio::test]
async fn what_is_no_count_is_refused_and_a_reader_counts_nothing() {
    let desk = desk().await;
    let whole = [("unit", "TH-01"), ("fluid", "compressor-oil"), ("volume", "0")];
    for (field, value, said) in [
        ("unit", "", "No unit was chosen."),
        ("fluid", "soup", "No fluid was chosen."),
        ("volume", "two jugs", "An amount is a number with its unit"),
        ("volume", "-1 qt", "An amount is a number with its unit"),
        ("volume", "99999999 gal", "more than a truck carries"),
        ("unit", "TH-99", "No unit here is called"),
    ] {
        let given = whole.map(|(name, old)| (name, if name == field { value } else { old }));
        let answer = desk.post("/stock", &given).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{field} {value}");
        answer.says(said).says("Nothing was recorded.");
    }
    // None is a count as well.
    assert_eq!(desk.post("/stock", &whole).await.status, StatusCode::SEE_OTHER);
    let reader = Desk::with(Yard::new(), NOW, "Edric Loomis", crate::console::session::Role::Reader).await;
    reader.get("/stock").await.says_not("method=\"post\" action=\"/stock\"");
    assert_eq!(reader.post("/stock", &whole).await.status, StatusCode::FORBIDDEN);
}
