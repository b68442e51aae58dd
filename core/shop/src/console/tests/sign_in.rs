//! Signing in, and what a restart of the hub does to it.

use axum::http::StatusCode;

use super::Desk;
use crate::console::session::{Role, Users};
use crate::tests::yard::Yard;

const NOW: &str = "2026-10-20T17:00:00-06:00";

#[tokio::test]
async fn a_restart_of_the_hub_signs_nobody_out_and_its_forms_still_hold() {
    let desk = Desk::of(Yard::new(), NOW).await;
    // Nothing that opens a session is kept.
    let token = desk.cookie.split('=').nth(1).unwrap().to_owned();
    let kept = desk.hub.read(|ledger| Ok(ledger.store().sessions(0)?)).await.unwrap();
    assert_eq!(kept.len(), 1);
    let hash: String = kept[0].hash.iter().map(|byte| format!("{byte:02x}")).collect();
    assert!(hash != token && hash != desk.csrf && desk.csrf != token);

    let desk = desk.started_again("2026-10-20T17:30:00-06:00");
    assert_eq!(desk.get("/units").await.status, StatusCode::OK);
    let new = [("name", "Jo Sandell"), ("role", "driver")];
    assert_eq!(
        desk.post("/people/person", &new).await.status,
        StatusCode::SEE_OTHER,
        "a form made before it"
    );

    // It ends when it would have ended.
    let desk = desk.started_again("2026-10-21T05:30:00-06:00");
    assert_eq!(desk.get("/units").await.to, "/sign-in?to=/units");
}

#[tokio::test]
async fn after_a_wrong_password_the_name_stands_as_it_was_typed() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let wrong = desk.post("/sign-in", &[("name", "Ilse Marrow"), ("password", "not hers")]).await;
    assert_eq!(wrong.status, StatusCode::UNAUTHORIZED);
    wrong.says("value=\"Ilse Marrow\"").says_not("not hers");
}

#[tokio::test]
async fn whoever_signed_out_or_has_another_password_is_out_after_a_restart_too() {
    let desk = Desk::of(Yard::new(), NOW).await;
    assert_eq!(desk.post("/sign-out", &[]).await.to, "/sign-in");
    let kept = desk.hub.read(|ledger| Ok(ledger.store().sessions(0)?)).await.unwrap();
    assert_eq!(kept, []);
    let desk = desk.started_again(NOW);
    assert!(desk.get("/units").await.to.starts_with("/sign-in"));

    let desk = Desk::of(Yard::new(), NOW).await;
    Users::of(desk.hub.folder()).set("Ilse Marrow", Role::Shop, "other words here").unwrap();
    let desk = desk.started_again(NOW);
    assert!(desk.get("/units").await.to.starts_with("/sign-in"));
}
