//! `/due`: makers' campaigns, entered, looked up and taken back.

use super::{Desk, no_key_shows};
use crate::NewSet;
use crate::console::session::Role;
use crate::tests::yard::Yard;
use axum::http::StatusCode;
use sumpbook_trade::record::SetProfile;

const NOW: &str = "2026-10-20T17:00:00-06:00";

/// TH-01 has set KX-1500, TH-02 KX-2000, TH-03 one that ends in no number.
fn numbered() -> Yard {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-18T13:00:00-06:00");
    for (door, serial) in [("TH-01", "KX-1500"), ("TH-02", "KX-2000"), ("TH-03", "KX-15B")] {
        let on = Some(yard.truck(door));
        let set = NewSet { serial: Some(serial.to_owned()), on, profile: SetProfile::unknown() };
        yard.shop.add_set(set, &hand).unwrap();
    }
    yard
}

const ENTERED: [(&str, &str); 8] = [
    ("name", "KX 24-07"),
    ("words", "change the scavenge line"),
    ("paper", "KX 24-07 rev B"),
    ("of", "set"),
    ("ranges", "KX-1000..KX-1999\r\nKX-4000..KX-4099"),
    ("deadline", "2026-11-30"),
    ("hours", "3,000.0"),
    ("locks", "air"),
];

#[tokio::test]
async fn one_is_entered_and_its_units_stand_below_it_in_both_languages() {
    let desk = Desk::of(numbered(), NOW).await;
    let before = desk.get("/due").await;
    before.says("Enter a maker's campaign").says_not(">Maker's campaign</th>");
    no_key_shows(&before);
    let kept = desk.post("/due/campaign", &ENTERED).await;
    assert_eq!((kept.status, kept.to.as_str()), (StatusCode::SEE_OTHER, "/due#campaigns"), "{}", kept.text);
    let page = desk.get("/due").await;
    page.says("KX 24-07: change the scavenge line");
    page.says(
        "6 units compared: 1 to be done, 0 of them past the last good day or hour, 4 to be looked at, 0 done",
    );
    page.says("of compressor sets KX-1000 to KX-1999, KX-4000 to KX-4099");
    page.says("last good day Mon 30 Nov or at 3,000.0 h, whichever comes first");
    page.says("locks air after that day").says("paper KX 24-07 rev B");
    page.says("no number stands at the end of its serial").says("no serial is on record");
    page.says("value=\"campaign:KX 24-07@TH-01\"");
    no_key_shows(&page);
    let es = desk.get_in("/due", "es").await;
    es.says("Campaña del fabricante KX 24-07")
        .says("después de ese día bloquea aire")
        .says("6 unidades comparadas");
    es.says("su serie no termina en un número").says("Registrar una campaña de fabricante");
    no_key_shows(&es);
    let json = desk.get("/due.json").await.json();
    let campaign = &json["campaigns"][0];
    assert_eq!((&campaign["name"], &campaign["locks"]), (&"KX 24-07".into(), &"air".into()));
    assert_eq!(campaign["units"].as_array().unwrap().len(), 5);
    let row = json["rows"].as_array().unwrap().iter().find(|row| row["task"] == "campaign:KX 24-07").unwrap();
    assert_eq!((&row["unit"], &row["campaign"]["paper"]), (&"TH-01".into(), &"KX 24-07 rev B".into()));
    // The unit's page and the page of units say it too.
    for language in ["en", "es"] {
        let unit = desk.get_in("/units/TH-01", language).await;
        unit.says("change the scavenge line");
        no_key_shows(&unit);
        let units = desk.get_in("/units?table=true", language).await;
        no_key_shows(&units);
    }
    desk.get("/units?table=true").await.says("1 campaign to be done").says("look at it for 1 campaign");
    desk.get("/units/TH-03").await.says("look at it for 1 campaign");
    let units = desk.get("/units.json").await.json();
    let needs = |door: &str| units["rows"].as_array().unwrap().iter().find(|r| r["unit"] == door).cloned();
    assert!(needs("TH-03").unwrap()["needs"].as_array().unwrap().contains(&"campaign".into()));
}

#[tokio::test]
async fn a_service_form_has_it_and_done_it_goes_from_the_list() {
    let desk = Desk::of(numbered(), NOW).await;
    desk.post("/due/campaign", &ENTERED).await;
    let form = desk.get("/due/service?unit=TH-01&tick=campaign%3AKX%2024-07%40TH-01").await;
    form.says("value=\"campaign:KX 24-07\" checked").says("Maker's campaign KX 24-07");
    let other = desk.get("/due/service?unit=TH-02").await;
    other.says_not("KX 24-07");
    let done = [
        ("unit", "TH-01"),
        ("task", "campaign:KX 24-07"),
        ("hours", "2862.4"),
        ("day", "2026-10-20"),
        ("time", "15:10"),
        ("who", "Wren Castellane"),
        ("source", "shop"),
    ];
    assert_eq!(desk.post("/due/service", &done).await.status, StatusCode::SEE_OTHER);
    let json = desk.get("/due.json").await.json();
    assert!(json["rows"].as_array().unwrap().iter().all(|row| row["task"] != "campaign:KX 24-07"));
    let units = json["campaigns"][0]["units"].as_array().unwrap().clone();
    let one = units.iter().find(|unit| unit["unit"] == "TH-01").unwrap();
    assert_eq!((&one["state"], &one["done-on"]), (&"done".into(), &"2026-10-20".into()));
    let history = desk.get("/units/TH-01").await;
    history.says("Maker's campaign KX 24-07");
}

#[tokio::test]
async fn who_takes_it_back_or_looks_signs_with_the_own_name() {
    let desk = Desk::of(numbered(), NOW).await;
    desk.post("/due/campaign", &ENTERED).await;
    let before = desk.hub.reader().unwrap().store().truth().last_n().unwrap();
    let refused = [
        ("/due/campaign/withdraw", vec![("campaign", "KX 24-07"), ("name", "Ilse Marrow")]),
        ("/due/campaign/withdraw", vec![("campaign", "KX 24-07"), ("why", "x"), ("name", "Dov Petrakis")]),
        ("/due/campaign/withdraw", vec![("campaign", "none"), ("why", "x"), ("name", "Ilse Marrow")]),
        (
            "/due/campaign/look",
            vec![("campaign", "KX 24-07"), ("unit", "TH-03"), ("why", "x"), ("name", "Ilse Marrow")],
        ),
        ("/due/campaign", vec![("name", "A"), ("words", "b"), ("deadline", "2026-11-30")]),
        (
            "/due/campaign",
            vec![("name", "A"), ("words", "b"), ("deadline", "2026-11-30"), ("ranges", "KX-1..KY-2")],
        ),
    ];
    for (path, fields) in refused {
        let answer = desk.post(path, &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{path} {fields:?}");
        answer.says("Nothing was recorded");
        no_key_shows(&answer);
    }
    assert_eq!(desk.hub.reader().unwrap().store().truth().last_n().unwrap(), before);
    let looked = [
        ("campaign", "KX 24-07"),
        ("unit", "TH-03"),
        ("is", "meant"),
        ("why", "plate cleaned: KX-1512"),
        ("name", "Ilse Marrow"),
    ];
    assert_eq!(desk.post("/due/campaign/look", &looked).await.status, StatusCode::SEE_OTHER);
    desk.get("/due").await.says("looked at: plate cleaned: KX-1512").says("2 to be done");
    let gone = [("campaign", "KX 24-07"), ("why", "the maker took it back"), ("name", "ilse marrow")];
    assert_eq!(desk.post("/due/campaign/withdraw", &gone).await.status, StatusCode::SEE_OTHER);
    let page = desk.get("/due").await;
    page.says("the maker took it back").says_not("Take KX 24-07 back").says_not("value=\"campaign:KX 24-07@");
    no_key_shows(&page);
}

#[tokio::test]
async fn a_reader_sees_them_and_has_no_form() {
    let mut yard = numbered();
    let hand = yard.hand("Ilse", "2026-10-19T08:00:00-06:00");
    let new = crate::campaign::NewCampaign {
        name: "KX 24-07".into(),
        words: "change the scavenge line".into(),
        paper: None,
        read_at: None,
        of: sumpbook_trade::record::CampaignOf::Set,
        ranges: crate::campaign::ranges_of("KX-1000..KX-1999"),
        deadline: "2026-10-19".parse().unwrap(),
        hours: None,
        severity: sumpbook_trade::Severity::RoadAndAir,
        stop: true,
    };
    yard.shop.enter_campaign(new, &hand).unwrap();
    let desk = Desk::with(yard, NOW, "Edric Loomis", Role::Reader).await;
    let page = desk.get("/due").await;
    page.says("number of the paper not recorded")
        .says("the maker says stop: locks road and air until it is done");
    page.says_not("action=\"/due/campaign").says_not("Enter a maker");
    assert_eq!(desk.post("/due/campaign", &ENTERED).await.status, StatusCode::FORBIDDEN);
    // What it locks stands on the sheet, with the way to its service and none to a certificate.
    let sheet = desk.get("/").await;
    sheet.says("Maker's campaign, KX 24-07").says("change the scavenge line").says("/due?unit=TH-01");
    no_key_shows(&sheet);
    no_key_shows(&desk.get_in("/", "es").await);
    no_key_shows(&desk.get("/units/TH-01/cab-report").await);
}
