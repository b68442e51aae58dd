//! The console's door: guessing takes time, nothing a visitor writes becomes a header, photos are for who is in.

use sumpbook_daybook::photo::PhotoFolder;
use sumpbook_hub_tests::{Browser, WHO, Yard, exchange, picture, takes};

fn yard() -> Yard {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 2);
    yard.begin();
    yard
}

#[test]
fn guessing_takes_time_and_the_right_word_is_not_even_looked_at_meanwhile() {
    let yard = yard();
    let mut browser = Browser::of(&yard);
    assert_eq!(browser.sign_in(WHO.0, "wet sump").status, 401);
    // Thirty seconds for this name from this address, whatever is typed.
    for password in ["correct horse", WHO.1] {
        let told = browser.sign_in(WHO.0, password);
        assert_eq!(told.status, 429);
        let wait: u64 = told.header("retry-after").unwrap().parse().unwrap();
        assert!((1..=30).contains(&wait), "{wait}");
        assert!(browser.cookie().is_none());
    }
    // Names nobody has cost the same, and twenty of them close the address to all names.
    let statuses: Vec<u16> =
        (0..25).map(|number| browser.sign_in(&format!("nobody {number}"), "x").status).collect();
    assert!(statuses[..15].iter().all(|status| *status == 401), "{statuses:?}");
    assert!(statuses[20..].iter().all(|status| *status == 429), "{statuses:?}");
    // Phones are answered all the while.
    let folder = tempfile::tempdir().unwrap();
    assert!(exchange(&mut yard.phone(folder.path(), 1, &[0])).unwrap().whole);
}

#[test]
fn nothing_a_visitor_writes_becomes_a_header() {
    let yard = yard();
    let mut browser = Browser::of(&yard);
    assert_eq!(browser.sign_in(WHO.0, WHO.1).status, 303);
    let broken = "%0d%0aset-cookie:%20stolen=1%0d%0a%0d%0a%3Cscript%3E";
    for path in [
        format!("/words?language=es&back=/{broken}"),
        format!("/words?back=//other{broken}"),
        format!("/sign-in?to=/{broken}"),
        format!("/day/{broken}"),
        format!("/photo/{broken}"),
        format!("/assets/{broken}/{broken}"),
        format!("/{broken}.json"),
        format!("/v1/photo/{broken}"),
    ] {
        let shown = browser.get(&path);
        assert!(shown.status < 500, "{path}: {shown:?}");
        for (name, value) in &shown.headers {
            let own = name == "set-cookie" && (value.starts_with("language=") || value.starts_with("units="));
            assert!(own || name != "set-cookie", "{path}: {value}");
            assert!(!value.contains('\r') && !value.contains('\n'), "{path}: {name}");
        }
        let body = String::from_utf8_lossy(&shown.body).into_owned();
        assert!(!body.contains("<script>"), "{path}: {body}");
    }
    let shown = browser.post("/sign-in", &format!("name=x&password=x&to=/{broken}"));
    assert!(shown.status < 500 && shown.headers.iter().all(|(_, value)| !value.contains("stolen")));
}

#[test]
fn a_photo_is_shown_as_what_it_is_to_who_is_in_and_to_nobody_else() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    let bytes = picture(1, 20_000);
    let (photo, _) = takes(&mut phone, 0, &bytes);
    assert_eq!(exchange(&mut phone).unwrap().photos.arrived, 1);
    let mut browser = Browser::of(&yard);
    let path = format!("/photo/{photo}");
    assert_eq!(browser.get(&path).status, 303, "sign in first");
    browser.sign_in(WHO.0, WHO.1);
    let shown = browser.get(&path);
    assert_eq!((shown.status, shown.header("content-type")), (200, Some("image/jpeg")));
    assert_eq!(shown.header("x-content-type-options"), Some("nosniff"));
    assert_eq!(shown.body, bytes);
    assert_eq!(browser.get(&format!("/photo/{}", "0".repeat(64))).status, 404);
    assert_eq!(browser.get("/photo/..%2f..%2fshop.key").status, 404);
    // A file that somebody changed on the disk is not shown as what it was.
    std::fs::write(PhotoFolder::of(yard.folder()).file(photo), b"<html>").unwrap();
    assert_eq!(browser.get(&path).status, 503);
}
