//! What the hub writes about itself holds nobody's words, names, passwords or permissions.

use sumpbook_daybook::phone::Parts;
use sumpbook_hub_tests::{Browser, WHO, Yard, clock, exchange, picture, takes};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::truck;

#[test]
fn nothing_of_what_people_say_stands_in_the_log() {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 2);
    let log = yard.begin_told();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    let mut parts = Parts::about(truck(0), section(1, &[0]).into());
    parts.note = Some("Hesper borrowed the torque wrench".to_owned());
    phone.record(parts, clock()).unwrap();
    takes(&mut phone, 0, &picture(1, 1_000));
    assert!(exchange(&mut phone).unwrap().whole);
    let mut browser = Browser::of(&yard);
    browser.sign_in("Hesper Nightjar", "torque-wrench-9");
    browser.sign_in(WHO.0, WHO.1);
    let cookie = browser.cookie().unwrap().to_owned();
    browser.get("/day/2026-10-19?view=evening&secret=Hesper");
    browser.get("/nothing/Hesper");
    browser.post("/day/2026-10-19/close", "csrf=wrong&why=Hesper");
    yard.way().exchange(b"Hesper", std::time::Instant::now() + std::time::Duration::from_secs(5)).unwrap();
    yard.kill();
    let written = std::fs::read_to_string(log.path()).unwrap();
    assert!(
        written.contains("exchanged") && written.contains("admitted=2"),
        "it does say what it did: {written}"
    );
    let token = cookie.split('=').nth(1).unwrap();
    for words in ["Hesper", "torque", WHO.0, WHO.1, token, "TH-01", "borrowed"] {
        assert!(!written.contains(words), "{words}: {written}");
    }
}
