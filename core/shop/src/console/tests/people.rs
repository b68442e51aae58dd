//! `/people`: people, phones with their codes and their end, sign-ins.

use axum::http::StatusCode;
use sumpbook_daybook::exchange::{PendingDevice, ShopCode, hand_over, take_in};
use sumpbook_daybook::phone::{Daybook, FileSeal};

use super::{Desk, no_key_shows};
use crate::console::session::Role;
use crate::tests::yard::{Yard, at};

const NOW: &str = "2026-10-20T17:00:00-06:00";

#[tokio::test]
async fn people_and_phones_stand_with_their_heads_in_both_languages() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let page = desk.get("/people").await;
    for head in [
        "Name",
        "Role",
        "On phones",
        "Last signed",
        "PIN given",
        "Last heard",
        "News it holds",
        "Clock off by",
        "Program",
        "Only there",
    ] {
        page.says(&format!(">{head}</th>"));
    }
    page.says("Dov Petrakis").says("mechanic").says("yard phone 3").says("not heard from in 24 h");
    no_key_shows(&page);
    no_key_shows(&desk.get_in("/people", "es").await);
    let json = desk.get("/people.json").await.json();
    assert_eq!(json["people"].as_array().unwrap().len(), 12);
    assert_eq!(json["phones"][0]["quiet"], true);
}

#[tokio::test]
async fn a_person_is_added_and_leaves() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let new = [("name", "Jo Sandell"), ("role", "driver")];
    let kept = desk.post("/people/person", &new).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER);
    desk.get(&kept.to).await.says("Jo Sandell: kept as driver");
    desk.get("/people").await.says("Jo Sandell").says_not("kept as");
    let gone = [("name", "Jo Sandell"), ("role", "driver"), ("gone", "yes")];
    let left = desk.post("/people/person", &gone).await;
    assert_eq!(left.status, StatusCode::SEE_OTHER);
    desk.get(&left.to).await.says("Jo Sandell: kept as no longer here");
    desk.get("/people").await.says_not("Jo Sandell");
    desk.post("/people/person", &[("role", "driver")]).await.says("There is no name given.");
}

#[tokio::test]
async fn whoever_is_here_already_is_not_made_somebody_else_by_the_form_as_it_stands() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let of = async |name: &str| {
        let json = desk.get("/people.json").await.json();
        let all = json["people"].as_array().unwrap().clone();
        all.into_iter().find(|one| one["name"] == name).map(|one| one["role"].clone())
    };
    let same = [("name", "wren CASTELLANE"), ("role", "driver")];
    let answer = desk.post("/people/person", &same).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    answer.says("Wren Castellane is here already, as mechanic. Nothing was changed.");
    assert_eq!(of("Wren Castellane").await, Some("mechanic".into()));
    // With the same role there is nothing to ask, and the name stays as it was written.
    let same = [("name", "wren CASTELLANE"), ("role", "mechanic")];
    assert_eq!(desk.post("/people/person", &same).await.status, StatusCode::SEE_OTHER);
    assert_eq!(of("Wren Castellane").await, Some("mechanic".into()));
    let meant = [("name", "Wren CASTELLANE"), ("role", "driver"), ("change", "yes")];
    assert_eq!(desk.post("/people/person", &meant).await.status, StatusCode::SEE_OTHER);
    assert_eq!(of("Wren CASTELLANE").await, Some("driver".into()));
}

#[tokio::test]
async fn nobody_with_a_sign_in_that_writes_is_said_to_be_gone() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let gone = [("name", " ilse  Marrow"), ("role", "manager"), ("gone", "yes")];
    let answer = desk.post("/people/person", &gone).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    answer.says("still has a sign-in that may write");
    // And she still writes.
    let new = [("name", "Jo Sandell"), ("role", "driver")];
    assert_eq!(desk.post("/people/person", &new).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_name_is_one_line_and_no_other_s_with_other_blanks() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let people = async || desk.get("/people.json").await.json()["people"].as_array().unwrap().len();
    let before = people().await;
    let same = [("name", "  Amos \u{202e}  Tillery "), ("role", "driver")];
    assert_eq!(desk.post("/people/person", &same).await.status, StatusCode::SEE_OTHER);
    assert_eq!(people().await, before);
    let long = "Jo ".repeat(40);
    let answer = desk.post("/people/person", &[("name", long.as_str()), ("role", "driver")]).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    answer.says("1 to 60 letters");
}

#[tokio::test]
async fn what_a_command_line_entered_beside_the_hub_can_be_worked_with_at_once() {
    let desk = Desk::of(Yard::new(), NOW).await;
    {
        let mut beside = crate::Shop::open(desk.folder()).unwrap();
        let hand = crate::Hand::nobody(at(NOW));
        let new = crate::NewPerson {
            name: "Jo Sandell".into(),
            role: sumpbook_trade::record::Role::Driver,
            gone: false,
        };
        beside.add_person(new, &hand).unwrap();
    }
    desk.get("/people").await.says("Jo Sandell");
    let answer = desk.post("/people/new-pin", &[("name", "Jo Sandell")]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
}

#[tokio::test]
async fn a_phone_scans_the_code_asks_and_is_let_in_by_name() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let made = desk.post("/people/code", &[("hub", "hub.test:8443"), ("units", "TH-01, TH-02")]).await;
    assert_eq!(made.status, StatusCode::SEE_OTHER, "{}", made.text);
    let page = desk.get(&made.to).await;
    page.says("class=\"qr\"").says("hub.test:8443");
    // The hub's clock runs: by the time the page is drawn a moment of the 15 minutes may be gone, or none.
    assert!(page.text.contains("14 min") || page.text.contains("15 min"), "{}", page.text);
    no_key_shows(&page);
    let text = desk.get(&format!("{}.json", made.to)).await.json()["code"].as_str().unwrap().to_owned();
    let code = ShopCode::from_text(&text).unwrap();
    assert_eq!(code.units.len(), 2);

    let home = tempfile::tempdir().unwrap();
    let seal = FileSeal::new(home.path().join("phone.key"));
    let mut phone = Daybook::enrol_by_code(home.path(), &code, "yard phone 9", &seal).unwrap();
    let key = PendingDevice::fingerprint_of(phone.ledger().own_key().id());
    let asks = hand_over(phone.ledger_mut(), at(NOW)).unwrap();
    desk.hub.write(move |shop| Ok(take_in(&mut shop.ledger, &asks.bytes, at(NOW)).unwrap())).await.unwrap();

    desk.get("/people").await.says("yard phone 9").says(&key).says("Compare this key");
    desk.post("/people/let-in", &[("key", &key)]).await.says("The two keys were not compared.");
    let in_ = desk.post("/people/let-in", &[("key", &key), ("same", "yes")]).await;
    assert_eq!(in_.status, StatusCode::SEE_OTHER, "{}", in_.text);
    let json = desk.get("/people.json").await.json();
    assert!(json["phones"].as_array().unwrap().iter().any(|phone| phone["name"] == "yard phone 9"));
    assert_eq!(json["asks"].as_array().unwrap().len(), 0);
    // Let in a moment ago it is not silent: it says when it was added.
    let new =
        json["phones"].as_array().unwrap().iter().find(|phone| phone["name"] == "yard phone 9").unwrap();
    assert_eq!((new["quiet"].as_bool(), new["last-heard"].is_null()), (Some(false), true), "{new}");
    desk.get("/people").await.says("added 17:00, not heard from yet").says_not(">never");
    let morning = desk.get("/day/2026-10-20?view=morning").await;
    morning.says("Added and not heard from yet: yard phone 9, 17:00.").says_not("yard phone 9, never");
    let json = desk.get("/day/2026-10-20.json?view=morning").await.json();
    let quiet = json["sheet"]["sections"]["phones-quiet"]["rows"].to_string();
    assert!(quiet.contains("yard phone 1") && !quiet.contains("yard phone 9"), "{quiet}");
    no_key_shows(&desk.get_in("/day/2026-10-20?view=morning", "es").await);
    // Let in, it says which program it runs.
    let news = hand_over(phone.ledger_mut(), at(NOW)).unwrap();
    desk.hub.write(move |shop| Ok(take_in(&mut shop.ledger, &news.bytes, at(NOW)).unwrap())).await.unwrap();
    let program = format!("{}, since 17:00", sumpbook_daybook::PROGRAM);
    desk.get("/people").await.says(&program);
    desk.get("/people/code/0000000000000000").await.says("That code ran out after 15 minutes.");
    desk.post("/people/code", &[("hub", "no address:")]).await.says("no address with a port");
}

#[tokio::test]
async fn a_lost_phone_is_stopped_after_its_consequences_were_said() {
    let yard = Yard::new();
    let key = PendingDevice::fingerprint_of(yard.phones[1].ledger.own_key().id()).replace(' ', "");
    let desk = Desk::of(yard, NOW).await;
    let path = format!("/people/phone/{key}/stop");
    let page = desk.get(&path).await;
    page.says("Lost: stop yard phone 2").says("wait under Set aside").says("Sun 18 Oct 16:40");
    no_key_shows(&page);
    no_key_shows(&desk.get_in(&path, "es").await);
    desk.post(&path, &[]).await.says("There is no reason given.");
    assert_eq!(desk.post(&path, &[("why", "left in a taxi")]).await.status, StatusCode::SEE_OTHER);
    desk.get(&path).await.says("stopped already");
    assert_eq!(desk.get("/people/phone/0000000000000000/stop").await.status, StatusCode::NOT_FOUND);
    desk.get("/people").await.says(">stopped<");
}

#[tokio::test]
async fn sign_ins_are_set_and_taken_away_and_one_that_writes_stays() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let ilse = [("name", "Ilse Marrow")];
    desk.post("/people/sign-in/remove", &ilse).await.says("the last sign-in that may write");
    let wren = |password: &'static str, again: &'static str, role: &'static str| {
        [("name", "Wren Castellane"), ("role", role), ("password", password), ("again", again)]
    };
    desk.post("/people/sign-in", &wren("four words stand here", "four words", "shop")).await.says("differ");
    desk.post("/people/sign-in", &wren("short", "short", "shop")).await.says("8 characters at least");
    let nobody = [
        ("name", "No One"),
        ("role", "shop"),
        ("password", "four words stand"),
        ("again", "four words stand"),
    ];
    desk.post("/people/sign-in", &nobody).await.says("Nobody of this name is here.");
    let set =
        desk.post("/people/sign-in", &wren("four words stand here", "four words stand here", "shop")).await;
    assert_eq!(set.status, StatusCode::SEE_OTHER);
    desk.get("/people").await.says("Wren Castellane");
    assert_eq!(desk.post("/people/sign-in/remove", &ilse).await.status, StatusCode::SEE_OTHER);
    assert_eq!(desk.get("/people").await.status, StatusCode::SEE_OTHER, "the removed one is out at once");
}

#[tokio::test]
async fn a_reader_changes_nothing_here() {
    let desk = Desk::with(Yard::new(), NOW, "Edric Loomis", Role::Reader).await;
    desk.get("/people").await.says_not("action=\"/people/").says("Ilse Marrow");
    for path in
        ["/people/person", "/people/code", "/people/let-in", "/people/sign-in", "/people/sign-in/remove"]
    {
        assert_eq!(desk.post(path, &[]).await.status, StatusCode::FORBIDDEN, "{path}");
    }
}

#[tokio::test]
async fn a_new_pin_is_asked_for_by_name_and_the_phones_hear_of_it() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let page = desk.get("/people").await;
    page.says("Ask for a new PIN").says_not("a new one asked for");
    let asked = desk.post("/people/new-pin", &[("name", "Amos Tillery")]).await;
    assert_eq!((asked.status, asked.to.as_str()), (StatusCode::SEE_OTHER, "/people"));
    desk.get("/people").await.says("a new one asked for");
    no_key_shows(&desk.get_in("/people", "es").await);
    let people = desk.hub.reader().unwrap().fleet().people.clone();
    let of = |name: &str| people.values().find(|person| person.name == name).unwrap().clone();
    assert!(of("Amos Tillery").new_pin_asked.is_some() && of("Hattie Brun").new_pin_asked.is_none());
    // What is changed of him later keeps it.
    let crew = [("name", "Amos Tillery"), ("role", "crew"), ("change", "yes")];
    assert_eq!(desk.post("/people/person", &crew).await.status, StatusCode::SEE_OTHER);
    desk.get("/people").await.says("a new one asked for");
    for bad in [vec![], vec![("name", "Nobody")]] {
        assert_eq!(desk.post("/people/new-pin", &bad).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    }
}
