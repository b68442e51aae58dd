//! Whoever told of a defect hears what became of it: from this phone to the shop, a part, a visit, the certificate.
//!
//! Invented data: the fleet Tern Hollow Water. Outcomes worked by rule.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::screen::{BecameNow, BecameRow, TodayQuery, today};
use sumpbook_trade::defect::Verdict;
use sumpbook_trade::{EntryId, PersonId};
use tern_hollow::{AMOS, BETTINA, TH_02, Yard, at};

fn became(yard: &Yard, person: PersonId, now: &str) -> Vec<BecameRow> {
    today(&yard.ledger, &TodayQuery { person }, &yard.standing, at(now)).unwrap().became
}

/// What Bettina hears, when it is of one defect.
fn heard(yard: &Yard, now: &str) -> BecameNow {
    let rows = became(yard, BETTINA, now);
    assert_eq!(rows.len(), 1, "{rows:?}");
    rows[0].now.clone()
}

fn lamp_out(yard: &mut Yard) -> EntryId {
    yard.phone(
        r#"{"unit":"TH-02","person":"Bettina Quaye","at":"2026-10-19T06:44:00-06:00","kind":"end-of-day","body":{"none-found":false,"defects":[{"item":"lamps-stop","place":"rear","answer":"defect","word":"out"}]}}"#,
    )
}

fn named(found: EntryId) -> String {
    format!(r#"{{"entry":"{found}","item":"lamps-stop","place":"rear"}}"#)
}

fn certify(yard: &mut Yard, found: EntryId, when: &str) -> EntryId {
    let defect = named(found);
    yard.shop(&format!(
        r#"{{"unit":"TH-02","person":"Wren Castellane","source":"shop","at":"{when}","kind":"certificate","body":{{"defect":{defect},"verdict":"repaired","words":"new bulb"}}}}"#
    ))
}

#[test]
fn from_this_phone_to_the_shop_to_a_part_to_the_certificate() {
    let mut yard = Yard::new();
    let found = lamp_out(&mut yard);
    let first = became(&yard, BETTINA, "2026-10-19T07:00:00-06:00");
    assert_eq!(first.len(), 1);
    let row = &first[0];
    assert_eq!((row.unit, row.door.as_str(), row.item.as_str()), (TH_02, "TH-02", "lamps-stop"));
    assert_eq!((row.word.as_deref(), row.told), (Some("out"), at("2026-10-19T06:44:00-06:00")));
    assert_eq!((&row.now, row.since), (&BecameNow::NotYetAtShop, None));
    assert_eq!(became(&yard, AMOS, "2026-10-19T07:00:00-06:00"), Vec::new(), "Amos told nothing");

    yard.exchanged("2026-10-19T07:10:00-06:00");
    assert_eq!(heard(&yard, "2026-10-19T07:15:00-06:00"), BecameNow::AtShop);

    let defect = named(found);
    yard.shop(&format!(
        r#"{{"unit":"TH-02","source":"shop","at":"2026-10-19T07:20:00-06:00","kind":"visit-plan","body":{{"tasks":[],"day":"2026-10-21","where-and-who":null,"defects":[{defect}]}}}}"#
    ));
    let day = "2026-10-21".parse().unwrap();
    assert_eq!(heard(&yard, "2026-10-19T08:00:00-06:00"), BecameNow::Visit { day });

    yard.shop(&format!(
        r#"{{"unit":"TH-02","source":"shop","at":"2026-10-19T08:30:00-06:00","kind":"waiting-for-part","body":{{"part":"lamp, rear","promised":"2026-10-23","over":false,"defect":{defect}}}}}"#
    ));
    let promised = Some("2026-10-23".parse().unwrap());
    let waits = BecameNow::WaitingForPart { part: "lamp, rear".to_owned(), promised };
    assert_eq!(heard(&yard, "2026-10-19T09:00:00-06:00"), waits);

    certify(&mut yard, found, "2026-10-20T07:55:00-06:00");
    let rows = became(&yard, BETTINA, "2026-10-20T08:00:00-06:00");
    let by = Some("Wren Castellane".to_owned());
    let certified = BecameNow::Certified { verdict: Verdict::Repaired, by, words: "new bulb".to_owned() };
    assert_eq!((&rows[0].now, rows[0].since), (&certified, Some(at("2026-10-20T07:55:00-06:00"))));
}

#[test]
fn it_is_told_for_seven_days_from_what_was_last_done_about_it() {
    let mut yard = Yard::new();
    let found = lamp_out(&mut yard);
    yard.exchanged("2026-10-19T07:10:00-06:00");
    assert_eq!(heard(&yard, "2026-10-26T06:44:00-06:00"), BecameNow::AtShop);
    assert_eq!(became(&yard, BETTINA, "2026-10-26T06:45:00-06:00"), Vec::new());
    // Weeks later it is repaired: that is heard, however old the telling is.
    certify(&mut yard, found, "2026-11-10T07:55:00-07:00");
    let told = heard(&yard, "2026-11-10T09:00:00-07:00");
    assert!(matches!(told, BecameNow::Certified { .. }), "{told:?}");
    assert_eq!(became(&yard, BETTINA, "2026-11-17T08:00:00-07:00"), Vec::new());
}

#[test]
fn who_signed_for_having_read_the_certificate_has_heard_it() {
    let mut yard = Yard::new();
    let found = lamp_out(&mut yard);
    let certificate = certify(&mut yard, found, "2026-10-19T07:55:00-06:00");
    let review = |who: &str, when: &str| {
        format!(
            r#"{{"unit":"TH-02","person":"{who}","at":"{when}","kind":"review","body":{{"report":null,"certificates":["{certificate}"]}}}}"#
        )
    };
    yard.phone(&review("Bettina Quaye", "2026-10-20T06:30:00-06:00"));
    assert_eq!(became(&yard, BETTINA, "2026-10-20T07:00:00-06:00"), Vec::new());
}

#[test]
fn another_drivers_review_tells_the_one_who_told_it_nothing() {
    let mut yard = Yard::new();
    let found = lamp_out(&mut yard);
    let certificate = certify(&mut yard, found, "2026-10-19T07:55:00-06:00");
    yard.phone(&format!(
        r#"{{"unit":"TH-02","person":"Amos Tillery","at":"2026-10-20T06:30:00-06:00","kind":"review","body":{{"report":null,"certificates":["{certificate}"]}}}}"#
    ));
    let told = heard(&yard, "2026-10-20T07:00:00-06:00");
    assert!(matches!(told, BecameNow::Certified { .. }), "{told:?}");
}
