//! `/units/.../door-tag` and `/drum-label`: what is printed is what a phone reads, in both languages, and no more.

use axum::http::StatusCode;
use qrcodegen::{QrCode, QrCodeEcc};
use sumpbook_daybook::label::Label;
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::SetProfile;

use super::Desk;
use crate::NewSet;
use crate::tests::yard::Yard;

const NOW: &str = "2026-10-20T17:00:00-06:00";

/// The squares of a code as the page draws them.
fn drawn(text: &str) -> String {
    let code = QrCode::encode_text(text, QrCodeEcc::High).unwrap();
    let dark = (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y)));
    let dark = dark.filter(|(x, y)| code.get_module(*x, *y));
    dark.map(|(x, y)| format!("M{} {}h1v1h-1Z", x + 4, y + 4)).collect()
}

#[tokio::test]
async fn a_door_tag_names_its_unit_in_a_code_that_bears_dirt() {
    let yard = Yard::new();
    let (fleet, truck) = (yard.shop.ledger.root().fleet, yard.truck("TH-03"));
    let desk = Desk::of(yard, NOW).await;
    desk.get("/units/TH-03").await.says("/units/TH-03/door-tag");
    let page = desk.get("/units/TH-03/door-tag").await;
    page.says("Scan it, or type the number.").says("Se escanea, o se escribe el número.");
    let text = Label::of_unit(fleet, truck, "TH-03").to_text();
    page.says(&drawn(&text));
    assert_eq!(desk.get("/units/TH-03/door-tag.json").await.json()["code"], text);
    assert_eq!(desk.get("/units/TH-99/door-tag").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_drums_label_is_of_an_oil_that_belongs_in_a_unit_here() {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-18T13:00:00-06:00");
    let profile = SetProfile {
        oil_family: Some(OilFamily::Mineral),
        oil_grade: Some("ISO VG 46".into()),
        ..SetProfile::unknown()
    };
    let on = Some(yard.truck("TH-08"));
    yard.shop.add_set(NewSet { serial: None, on, profile }, &hand).unwrap();
    let desk = Desk::of(yard, NOW).await;
    let way = "/drum-label?family=mineral&amp;grade=ISO%20VG%2046";
    desk.get("/units/TH-08").await.says(way);
    let page = desk.get(&way.replace("&amp;", "&")).await;
    page.says("It belongs in: ").says("TH-08").says("mineral").says("ISO VG 46");
    page.says("The same number is not the same oil.").says("El mismo número no es el mismo aceite.");
    page.says(&drawn("SUMPBOOK:OIL:MINERAL:ISO VG 46"));
    for none in
        ["family=ester&grade=ISO%20VG%2046", "family=mineral&grade=ISO%20VG%20999", "family=mineral", ""]
    {
        let made_up = desk.get(&format!("/drum-label?{none}")).await;
        assert_eq!(made_up.status, StatusCode::NOT_FOUND, "{none}");
    }
}
