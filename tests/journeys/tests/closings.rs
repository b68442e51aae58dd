//! Every closing of the month, answered again; what comes late; and what the phones hold in the end.
//!
//! Invented data; every outcome worked by rule (R8).

use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, OnceLock, PoisonError};

use sumpbook_journeys::{Lived, at, day};
use sumpbook_shop::close::{Closing, answer_again, as_of, close};
use sumpbook_shop::demo::{CLOSED_DAYS, Deed, Doing, PHONES, World, month as deeds};
use sumpbook_shop::sheet::{View, day_sheet};
use sumpbook_shop::verify::verify;
use sumpbook_shop::{Hand, Shop};
use sumpbook_trade::Stamp;

/// The month, lived once for the tests that only read it.
fn month() -> MutexGuard<'static, Lived> {
    static MONTH: OnceLock<Mutex<Lived>> = OnceLock::new();
    MONTH.get_or_init(|| Mutex::new(Lived::month())).lock().unwrap_or_else(PoisonError::into_inner)
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

/// Ilse closes a day at a moment.
fn closed(shop: &mut Shop, of: &str, when: &str) -> Closing {
    let ilse = shop.person("Ilse Marrow").unwrap();
    close(shop, day(of), &Hand::of(ilse, at(when)).received(at(when))).unwrap()
}

/// Every closing that is kept reads the same again from what was known at its moment.
fn answered_again(shop: &Shop) -> usize {
    let sheets = shop.ledger.store().sheets().unwrap();
    for row in &sheets {
        let moment = Stamp::from_parts(row.at_ms, 0).unwrap();
        let then = as_of(shop, moment).unwrap();
        let sheet = day_sheet(&then, day(&row.day), View::Evening, moment).unwrap();
        let again = serde_json::to_vec(&sheet).unwrap();
        assert_eq!(text(&again), text(&row.body), "{} version {}", row.day, row.version);
        assert_eq!(again, answer_again(&then, day(&row.day), moment).unwrap());
    }
    sheets.len()
}

#[test]
fn every_closing_reads_the_same_again_byte_for_byte() {
    let lived = month();
    assert_eq!(answered_again(&lived.world.shop), CLOSED_DAYS.len());
    let sheets = lived.world.shop.ledger.store().sheets().unwrap();
    let days: Vec<(&str, u32)> = sheets.iter().map(|row| (row.day.as_str(), row.version)).collect();
    assert_eq!(days, CLOSED_DAYS.map(|day| (day, 1)));
    for row in &sheets {
        let five = Stamp::from_parts(row.at_ms, 0).unwrap();
        assert!(row.changes.is_empty());
        // 17:00 in the yard is 23:00 UTC in October's time and 00:00 UTC in November's.
        let utc = if row.day.as_str() < "2026-11-01" { "23:00" } else { "00:00" };
        assert_eq!(sumpbook_journeys::hm(Some(five)), utc, "{}", row.day);
    }
}

#[test]
fn a_later_book_does_not_read_as_an_earlier_one() {
    let lived = month();
    let sheets = lived.world.shop.ledger.store().sheets().unwrap();
    let thursday = sheets.iter().find(|row| row.day == "2026-10-22").unwrap();
    let moment = Stamp::from_parts(thursday.at_ms, 0).unwrap();
    let now = answer_again(&lived.world.shop.ledger, day("2026-10-22"), moment).unwrap();
    assert_ne!(text(&now), text(&thursday.body), "what came after 17:00 is in the books now");
}

#[test]
fn the_month_verifies_and_nothing_is_found_wrong() {
    let mut lived = month();
    let report = verify(&mut lived.world.shop).unwrap();
    assert_eq!(report.findings, []);
    assert_eq!(report.closings, 16);
    let truth = lived.world.shop.ledger.store().truth();
    assert_eq!(report.books, truth.books().unwrap().len());
    assert_eq!(i64::try_from(report.entries).unwrap(), truth.last_n().unwrap());
}

#[test]
fn the_month_verifies_again_when_its_folder_is_opened_anew() {
    let lived = Lived::until("2026-10-23T18:00:00-06:00");
    let folder = lived.world.shop.folder.clone();
    let Lived { world, .. } = &lived;
    let before = world.shop.ledger.store().truth().last_n().unwrap();
    let mut again = Shop::open(&folder).unwrap();
    assert_eq!(again.ledger.store().truth().last_n().unwrap(), before);
    assert_eq!(verify(&mut again).unwrap().findings, []);
    assert_eq!(answered_again(&again), 5);
}

#[test]
fn what_comes_late_makes_version_two_and_says_what_changed() {
    let mut lived = Lived::until("2026-10-23T07:02:00-06:00");
    let shop = &mut lived.world.shop;
    let Closing::Closed(two) = closed(shop, "2026-10-22", "2026-10-23T07:05:00-06:00") else {
        panic!("Thursday has changed since 17:00");
    };
    assert_eq!(two.version, 2);
    let told = two.changes.join("\n");
    for line in [
        "due: TH-05 first-service: hours was 47.2, now 50.4; hours left was 2.8, now -0.4;",
        "came-late: now TH-05 hour-reading Thu 22 Oct 16:10, came Thu 22 Oct 18:20",
        "came-late: now TH-05 acknowledgement Thu 22 Oct 15:10, came Fri 23 Oct 07:02",
    ] {
        assert!(told.contains(line), "{line}\nis not in\n{told}");
    }
    let versions: Vec<u32> = shop
        .ledger
        .store()
        .sheets()
        .unwrap()
        .iter()
        .filter(|row| row.day == "2026-10-22")
        .map(|row| row.version)
        .collect();
    assert_eq!(versions, [1, 2]);
    assert!(matches!(
        closed(shop, "2026-10-22", "2026-10-23T07:06:00-06:00"),
        Closing::Unchanged(row) if row.version == 2
    ));
    assert_eq!(answered_again(shop), 5);
    assert_eq!(verify(shop).unwrap().findings, []);
}

#[test]
fn wednesday_s_second_version_shows_742_1_and_the_struck_figure() {
    let mut lived = Lived::until("2026-10-22T17:00:00-06:00");
    let shop = &mut lived.world.shop;
    let Closing::Closed(two) = closed(shop, "2026-10-21", "2026-10-22T17:05:00-06:00") else {
        panic!("Wednesday has changed");
    };
    let sheet = sumpbook_journeys::evening_of(serde_json::from_slice(&two.body).unwrap());
    let row = &sheet.corrected.rows[0];
    assert_eq!((two.version, row.struck.0, row.instead.map(|right| right.0)), (2, 74_210, Some(7_421)));
    assert!(two.changes.iter().any(|line| line.starts_with("corrected: now TH-03")), "{:#?}", two.changes);
    assert!(two.changes.iter().any(|line| line.starts_with("to-settle: ")), "{:#?}", two.changes);
}

#[test]
fn a_closed_day_of_which_nothing_more_comes_stays_at_its_version() {
    let mut lived = Lived::until("2026-10-20T06:00:00-06:00");
    // Ivo signs at 18:52, after the closing; his phone comes at 05:00.
    let Closing::Closed(two) = closed(&mut lived.world.shop, "2026-10-19", "2026-10-20T06:05:00-06:00")
    else {
        panic!("the night's walk is of Monday");
    };
    assert_eq!(
        two.changes,
        [
            "came-late: now TH-07 pre-trip-section Mon 19 Oct 18:52, came Tue 20 Oct 05:00, came from yard phone 6, who Ivo Lindqvist",
            "not-reported, due-out: no longer TH-07 Mon 19 Oct 19:00, state due-out",
            "not-reported, reported: now TH-07 Mon 19 Oct 18:52, state done, who Ivo Lindqvist",
        ]
    );
    lived.world.live_until(at("2026-10-21T17:00:00-06:00"), &mut |_| {}).unwrap();
    let again = closed(&mut lived.world.shop, "2026-10-19", "2026-10-21T17:30:00-06:00");
    assert!(matches!(&again, Closing::Unchanged(row) if row.version == 2), "{again:?}");
}

/// The books' heads of a ledger, by book.
fn heads(ledger: &sumpbook_daybook::ledger::Ledger) -> BTreeMap<String, Vec<String>> {
    let truth = ledger.store().truth();
    let books = truth.books().unwrap();
    let told = books.into_iter().map(|book| {
        let heads = truth.heads(book).unwrap().iter().map(ToString::to_string).collect();
        (format!("{book:?}"), heads)
    });
    told.collect()
}

#[test]
fn every_phone_holds_the_shop_s_heads_after_its_exchange() {
    let folder = tempfile::tempdir().unwrap();
    let mut world = World::begin(folder.path()).unwrap();
    let mut compared = BTreeMap::new();
    let all = deeds().unwrap();
    for (here, next) in all.iter().zip(all.iter().skip(1).map(Some).chain([None])) {
        let Deed { at: moment, what: Doing::HandOver { phone } } = here else { continue };
        // Two deeds of one moment are lived together: only what stands alone can be looked at in between.
        if next.is_some_and(|next| next.at == *moment) {
            continue;
        }
        world.live_until(*moment, &mut |_| {}).unwrap();
        let (shop, held) = (heads(&world.shop.ledger), heads(world.phones[phone].ledger()));
        assert_eq!(held, shop, "{phone} at {moment}");
        *compared.entry(*phone).or_insert(0) += 1;
    }
    assert_eq!(compared.len(), PHONES.len(), "{compared:?}");
}

#[test]
fn in_the_end_one_more_round_leaves_every_phone_with_all_the_shop_has() {
    let mut lived = Lived::month();
    let now = at("2026-11-10T07:00:00-07:00");
    let world = &mut lived.world;
    // Twice round: whoever came first has not what the others brought after.
    for _ in 0..2 {
        for phone in world.phones.values_mut() {
            let file = phone.hand_over(now).unwrap();
            let taken =
                sumpbook_daybook::exchange::take_in(&mut world.shop.ledger, &file.bytes, now).unwrap();
            let answer = sumpbook_daybook::exchange::answer(&mut world.shop.ledger, &taken, now).unwrap();
            phone.take_in(&answer, now).unwrap();
        }
    }
    let shop = heads(&world.shop.ledger);
    for (name, phone) in &world.phones {
        assert_eq!(heads(phone.ledger()), shop, "{name}");
        assert_eq!(sumpbook_daybook::exchange::counts(phone.ledger()).unwrap().on_this_phone, 0, "{name}");
    }
}
