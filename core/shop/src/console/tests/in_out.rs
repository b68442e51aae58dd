//! In and out, asked as a browser would.

use axum::http::StatusCode;

use super::{Answer, Desk, HOST, no_key_shows};
use crate::console::session::Role;
use crate::sealed_key::make_phrase;
use crate::tests::yard::Yard;

const NOW: &str = "2026-10-19T17:00:00-06:00";

const READINGS: &str =
    "unit,date,hours\nTH-01,10/12/2026,\"2,859.5\"\nTH-01,10/13/2026,2861.4\nTH-77,10/13/2026,1.0\n";

/// A form with a file.
async fn look(desk: &Desk, file: &str, dates: &str) -> Answer {
    look_as(desk, "readings", ("x.csv", file), dates).await
}

async fn look_as(desk: &Desk, what: &str, (called, file): (&str, &str), dates: &str) -> Answer {
    let mut body = String::new();
    for (name, value) in [("csrf", desk.csrf.as_str()), ("what", what), ("dates", dates), ("decimals", "")] {
        body.push_str(&format!("--b\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n"));
    }
    body.push_str(&format!(
        "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"{called}\"\r\nContent-Type: text/csv\r\n\r\n{file}\r\n--b--\r\n"
    ));
    desk.post_raw("/in-and-out/look", "multipart/form-data; boundary=b", body.into_bytes()).await
}

#[tokio::test(flavor = "multi_thread")]
async fn nothing_is_brought_in_before_its_dry_run_was_seen() {
    let desk = Desk::of(Yard::new(), NOW).await;
    for language in ["en", "es"] {
        no_key_shows(&desk.get_in("/in-and-out", language).await);
    }
    let asks = look(&desk, READINGS, "").await;
    let page = desk.get(&asks.to).await;
    page.says("10/12/2026 can be 12 October or 10 December. Nothing was brought in.");
    page.says_not("Bring in");
    let said = desk.post(&format!("{}/say", asks.to), &[("dates", "mdy")]).await;
    desk.get(&said.to).await.says("2 good, 1 refused, 0 already here");
    desk.get_in(&asks.to, "es").await.says("10/12/2026 puede ser 12 de octubre o 10 de diciembre.");

    let looked = look(&desk, READINGS, "mdy").await;
    let page = desk.get(&looked.to).await;
    page.says("2 good, 1 refused, 0 already here")
        .says("no unit of that number")
        .says("Monday 12 October 2026");
    no_key_shows(&desk.get_in(&looked.to, "es").await);
    let json = desk.get(&format!("{}.json", looked.to)).await.json();
    assert_eq!((json["good"].as_u64(), json["refused"][0]["row"].as_u64()), (Some(2), Some(4)));
    let refused = desk.get(&format!("{}/refused", looked.to)).await;
    refused.says("TH-77,10/13/2026,1.0,unit: no unit of that number");
    let done = desk.post(&format!("{}/bring-in", looked.to), &[]).await;
    assert_eq!(done.to, "/in-and-out?brought-in=2");
    desk.get(&done.to).await.says("2 rows were brought in.");
    // The same form sent again, and the same file again: nothing is doubled.
    let again = desk.post(&format!("{}/bring-in", looked.to), &[]).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    let looked = look(&desk, READINGS, "mdy").await;
    desk.get(&looked.to).await.says("0 good, 1 refused, 2 already here").says_not("Bring in");
    let unseen = desk.post(&format!("/in-and-out/dry-run/{}/bring-in", "0".repeat(64)), &[]).await;
    assert_eq!(unseen.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(look(&desk, "unit\nx\n", "").await.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test(flavor = "multi_thread")]
async fn what_goes_out_is_a_file_and_only_the_shop_takes_out_its_key() {
    let yard = Yard::new();
    make_phrase(&yard.shop.folder, yard.shop.ledger.root().fleet, yard.shop.ledger.own_key()).unwrap();
    let desk = Desk::of(yard, NOW).await;
    desk.get("/in-and-out/table/services").await.says("Unit,Time (UTC)").says("brought-in");
    assert_eq!(desk.get("/in-and-out/table/secrets").await.status, StatusCode::NOT_FOUND);
    let gaps = desk.get("/in-and-out/gaps?unit=TH-01").await;
    no_key_shows(&gaps);
    gaps.says("serial is not recorded");
    for (path, begins) in [("/in-and-out/pack?unit=TH-01", "PK"), ("/in-and-out/pack", "PK")] {
        assert!(desk.get(path).await.text.starts_with(begins), "{path}");
    }
    assert_eq!(desk.get("/in-and-out/pack?unit=TH-77").await.status, StatusCode::NOT_FOUND);
    for path in ["/in-and-out/backup", "/in-and-out/fleet"] {
        assert!(desk.post(path, &[]).await.text.starts_with("PK"), "{path}");
        assert_eq!(desk.get(path).await.status, StatusCode::METHOD_NOT_ALLOWED, "{path}");
    }
    desk.get("/in-and-out").await.says("No address was made yet");
    desk.post("/in-and-out/calendar", &[("act", "make")]).await;
    desk.get("/in-and-out").await.says(&format!("<a href=\"https://{HOST}/calendar/"));
    desk.post("/in-and-out/calendar", &[("act", "end")]).await;
    desk.get("/in-and-out").await.says("No address was made yet");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_reader_takes_out_tables_and_brings_nothing_in() {
    let yard = Yard::new();
    make_phrase(&yard.shop.folder, yard.shop.ledger.root().fleet, yard.shop.ledger.own_key()).unwrap();
    let desk = Desk::with(yard, NOW, "Dov Petrakis", Role::Reader).await;
    desk.get("/in-and-out")
        .await
        .says("may read and not write")
        .says_not("Make a backup")
        .says_not("Make an address");
    desk.get("/in-and-out/table/units").await.says("TH-01");
    assert_eq!(look(&desk, READINGS, "mdy").await.status, StatusCode::FORBIDDEN);
    for path in ["/in-and-out/backup", "/in-and-out/fleet", "/in-and-out/calendar"] {
        assert_eq!(desk.post(path, &[("act", "make")]).await.status, StatusCode::FORBIDDEN, "{path}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_unit_is_typed_in_and_typed_again_keeps_what_was_left_empty() {
    let desk = Desk::of(Yard::new(), NOW).await;
    desk.get("/in-and-out").await.says("id=\"one\"").says("One unit, typed in");
    let fields = [
        ("door", "TH-31"),
        ("in-service", "2026-10-01"),
        ("in-service-hours", "1,204.7"),
        ("annual-inspection", "2027-03-12"),
        ("delivery", "185"),
        ("load-share", "40 %"),
        ("glass", "0.60 qt"),
        ("oil-volume", "7.6 L"),
        ("oil-family", "mineral"),
        ("valves", "left, right"),
        ("has", "air-brakes"),
        ("has", "diesel"),
    ];
    let entered = desk.post("/in-and-out/unit", &fields).await;
    assert_eq!((entered.status, entered.to.as_str()), (StatusCode::SEE_OTHER, "/units"));
    desk.get("/units/TH-31").await.says("TH-31");
    desk.get("/units/TH-31/cab-report").await.says("Next annual inspection by").says("2027");
    let of = async |door: &'static str| {
        let unit = move |ledger: &sumpbook_daybook::ledger::Ledger| {
            let truck = ledger.fleet().truck_by_door(door).cloned().unwrap();
            let set = ledger.fleet().set_on(truck.truck).cloned().unwrap();
            Ok((truck, set.profile))
        };
        desk.hub.read(unit).await.unwrap()
    };
    let (truck, profile) = of("TH-31").await;
    assert_eq!(truck.in_service_hours.to_string(), "1204.7");
    assert_eq!((truck.features.valves.len(), truck.features.switched.len()), (2, 2));
    assert_eq!((profile.load_share, profile.oil_family.is_some()), (Some(40), true));
    let volumes = [profile.glass, profile.oil_volume].map(|figure| figure.unwrap().to_string());
    assert_eq!(volumes, ["0.60 qt", "7.6 L"]);
    desk.get("/units/TH-31").await.says("All the oil in it, filled to the middle");

    let again = [
        ("door", "th-31"),
        ("in-service", "2026-10-01"),
        ("in-service-hours", "1204.7"),
        ("plate", "THW 314"),
    ];
    desk.post("/in-and-out/unit", &again).await;
    let (changed, kept) = of("TH-31").await;
    assert_eq!(changed.truck, truck.truck);
    assert_eq!(
        (changed.plate.as_deref(), changed.annual_inspection),
        (Some("THW 314"), truck.annual_inspection)
    );
    assert_eq!((kept, &changed.features), (profile, &truck.features));

    for (field, value) in [
        ("load-share", "0"),
        ("load-share", "140"),
        ("delivery", "many"),
        ("oil-volume", "8 psi"),
        ("in-service", "soon"),
    ] {
        let mut bad = vec![("door", "TH-32"), ("in-service", "2026-10-01"), ("in-service-hours", "0")];
        bad.retain(|(name, _)| *name != field);
        bad.push((field, value));
        let refused = desk.post("/in-and-out/unit", &bad).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{field} {value}");
        refused.says("Nothing was ");
    }
    desk.get("/units/TH-32").await.says_not("cab report");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_set_leaves_another_unit_only_where_somebody_says_it_moved() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let unit = |door| vec![("door", door), ("in-service", "2026-10-01"), ("in-service-hours", "0.0")];
    let with = |door, more: &[(&'static str, &'static str)]| [unit(door).as_slice(), more].concat();
    let serial = ("set-serial", "A-31");
    assert_eq!(desk.post("/in-and-out/unit", &with("TH-31", &[serial])).await.status, StatusCode::SEE_OTHER);
    // The same again, also in small letters, is no move.
    assert_eq!(desk.post("/in-and-out/unit", &with("th-31", &[serial])).await.status, StatusCode::SEE_OTHER);
    let slipped = desk.post("/in-and-out/unit", &with("TH-32", &[serial])).await;
    assert_eq!(slipped.status, StatusCode::UNPROCESSABLE_ENTITY);
    slipped
        .says("The set A-31 stands on th-31. Nothing was recorded.")
        .says("That set was moved here from another unit");
    desk.get("/units/TH-31").await.says("A-31");
    let moved = with("TH-32", &[serial, ("set-moved", "yes")]);
    assert_eq!(desk.post("/in-and-out/unit", &moved).await.status, StatusCode::SEE_OTHER);
    desk.get("/units/TH-32").await.says("A-31");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_dry_run_shows_what_it_read() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let services = "unit,date,hours,task,volume (qt)\nTH-01,2026-10-12,2859.55,oil-and-filters,8.0\n";
    let looked = look_as(&desk, "services", ("x.csv", services), "").await;
    let page = desk.get(&looked.to).await;
    page.says("Oil and filters").says("8.0 qt").says("2859.55").says("2,859.6");
    no_key_shows(&desk.get_in(&looked.to, "es").await);
    let pours = "unit,date,fluid,volume\nTH-01,2026-10-12,compressor-oil,0.21 qt\n";
    let looked = look_as(&desk, "pours", ("x.csv", pours), "").await;
    desk.get(&looked.to).await.says("0.21 qt").says("Compressor oil");
    let units = "unit,in service,in service hours\nTH-31,2024-01-01,0\nTH-31,2025-01-01,5\n";
    let looked = look_as(&desk, "units", ("x.csv", units), "").await;
    let page = desk.get(&looked.to).await;
    page.says("1 good, 1 refused, 0 already here").says("an earlier row of this file has that door number");
    look_as(&desk, "readings", ("x.csv", ""), "").await.says("holds no rows");
    look_as(&desk, "readings", ("", ""), "").await.says("No file was chosen");
}
