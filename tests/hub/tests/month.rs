//! The month lived twice: by files, and over TLS with a hub. The shop reads the same either way.
//!
//! Invented data. A hub takes milliseconds to take something in: moments are compared by whole seconds. The ids
//! of what the shop writes are new each time.

use sumpbook_shop::demo::{CLOSED_DAYS, World, moment};
use sumpbook_shop::sheet::{View, day_sheet};

/// The text without the thousandths of its moments.
fn by_seconds(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find('.') {
        let (before, after) = rest.split_at(at);
        kept.push_str(before);
        let is_moment = before.as_bytes().get(before.len().wrapping_sub(9)) == Some(&b'T')
            && after.as_bytes().get(4).is_some_and(|sign| b"+-".contains(sign));
        let (point, next) = after.split_at(if is_moment { 4 } else { 1 });
        kept.push_str(if is_moment { "" } else { point });
        rest = next;
    }
    kept + rest
}

fn without_ids(text: &str) -> String {
    let mut parts = text.split("\"entry\":\"");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |kept, part| kept + "\"entry\":\"" + part.get(36..).unwrap_or_default())
}

/// Fails with the fields where two sheets first differ.
fn same(one: &str, other: &str) {
    let [one, other] = [one, other].map(|sheet| without_ids(&by_seconds(sheet)));
    if let Some((a, b)) = one.split(",\"").zip(other.split(",\"")).find(|(a, b)| a != b) {
        let day = one.get(..80).unwrap_or_default();
        panic!("{day}\n  by files: {a}\n  over TLS: {b}");
    }
    assert_eq!(one.len(), other.len());
}

#[test]
fn a_month_over_tls_reads_as_the_month_by_files() {
    let until = moment("2026-11-09T17:00:00-07:00").unwrap();
    let (by_files, over_tls) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let mut files = World::begin(by_files.path()).unwrap();
    let mut tls = World::begin_online(over_tls.path(), &["127.0.0.1:0".to_owned()]).unwrap();
    for world in [&mut files, &mut tls] {
        world.live_until(until, &mut |_| {}).unwrap();
        world.shop.ledger.settle().unwrap();
    }
    let [of_files, of_tls] = [&files, &tls].map(|world| world.shop.ledger.store().sheets().unwrap());
    let days: Vec<&str> = of_tls.iter().map(|row| row.day.as_str()).collect();
    assert_eq!(days, CLOSED_DAYS);
    for (one, other) in of_files.iter().zip(&of_tls) {
        let [one, other] = [one, other].map(|row| String::from_utf8(row.body.clone()).unwrap());
        same(&one, &other);
    }
    let day = "2026-11-09".parse().unwrap();
    let [one, other] =
        [&files, &tls].map(|world| day_sheet(&world.shop.ledger, day, View::Evening, until).unwrap());
    let [one, other] = [one, other].map(|sheet| serde_json::to_string(&sheet).unwrap());
    same(&one, &other);
    for (name, phone) in &tls.phones {
        let counts = sumpbook_daybook::exchange::counts(phone.ledger()).unwrap();
        let of_files = sumpbook_daybook::exchange::counts(files.phones[name].ledger()).unwrap();
        assert_eq!(counts.on_this_phone, of_files.on_this_phone, "{name}");
    }
    tls.leave().unwrap().stop().unwrap();
}
