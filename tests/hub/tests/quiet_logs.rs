//! What the hub writes about itself holds nobody's words, names, passwords or permissions.

use sumpbook_daybook::phone::Parts;
use sumpbook_hub_tests::{Browser, WHO, Yard, clock, exchange, picture, takes};
use sumpbook_shop::console::session::{Role, Users};
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
    let soon = || std::time::Instant::now() + std::time::Duration::from_secs(5);
    yard.way().exchange(b"Hesper", soon()).unwrap();
    // Somebody who may only read writes.
    Users::of(yard.folder()).set("person 2", Role::Reader, "only looks at torque").unwrap();
    let mut reader = Browser::of(&yard);
    assert_eq!(reader.sign_in("person 2", "only looks at torque").status, 303);
    let token = reader.cookie().unwrap().split('=').nth(1).unwrap().to_owned();
    assert_eq!(reader.post("/day/2026-10-19/close", "csrf=Hesper").status, 403);
    assert_eq!(reader.sign_in("person 2", "Hesper").status, 401);
    // And one address asks without end.
    let way = yard.way();
    let flood = (0..2_000).map(|_| way.exchange(b"", soon()).unwrap().status).find(|status| *status == 429);
    assert_eq!(flood, Some(429));
    yard.kill();
    let written = std::fs::read_to_string(log.path()).unwrap();
    assert!(
        written.contains("exchanged") && written.contains("admitted=2"),
        "it does say what it did: {written}"
    );
    // What was refused is told with its status, once each, and the flood once in all.
    for (told, times) in [
        ("a sign-in was refused status=401", 2),
        ("refused status=403 why=\"not a form of this session\"", 1),
        ("refused status=403 why=\"a reader writes\"", 1),
        ("refused status=404", 1),
        ("asks too often status=429", 1),
        ("declined status=400", 1),
    ] {
        let lines = written.lines().filter(|line| line.contains(told)).count();
        assert!(lines >= 1 && (lines == times || told.starts_with("declined")), "{told}: {lines}: {written}");
    }
    let own = cookie.split('=').nth(1).unwrap();
    for words in ["Hesper", "torque", WHO.0, "person 2", WHO.1, own, &token, "TH-01", "borrowed"] {
        assert!(!written.contains(words), "{words}: {written}");
    }
}
