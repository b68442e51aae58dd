//! The whole month lived on real phones: every closing answered again, every row verified.

use sumpbook_trade::Stamp;

use sumpbook_daybook::screen::OilUseRow;
use sumpbook_trade::Tenths;

use crate::close::{answer_again, as_of};
use crate::demo::World;
use crate::verify::verify;

#[test]
fn the_month_lived_on_phones_verifies_and_is_answered_again() {
    let folder = tempfile::tempdir().unwrap();
    let mut world = World::begin(folder.path()).unwrap();
    world.live_until("2026-11-16T23:00:00-07:00".parse().unwrap(), &mut |_| {}).unwrap();
    let sheets = world.shop.ledger.store().sheets().unwrap();
    assert!(sheets.len() >= 5, "{}", sheets.len());
    for row in &sheets {
        let moment = Stamp::from_parts(row.at_ms, 0).unwrap();
        let then = as_of(&world.shop, moment).unwrap();
        let again = answer_again(&then, row.day.parse().unwrap(), moment).unwrap();
        assert_eq!(String::from_utf8(again).unwrap(), String::from_utf8(row.body.clone()).unwrap());
    }
    let report = verify(&mut world.shop).unwrap();
    assert_eq!(report.findings, []);
    assert_eq!(report.closings, sheets.len());
}

/// Event 7: from the middle at 2,790.4 h to 65 % at 2,884.9 h, 0.21 qt poured, is 20 % of 0.60 qt used in 94.5 h.
#[test]
fn the_month_lives_the_oil_of_event_7_on_the_console_and_on_the_phone() {
    let folder = tempfile::tempdir().unwrap();
    let mut world = World::begin(folder.path()).unwrap();
    world.live_until("2026-10-26T17:00:00-06:00".parse().unwrap(), &mut |_| {}).unwrap();
    let unit = world.shop.unit("TH-01").unwrap();
    let phone = &world.phones["yard phone 1"];
    for ledger in [&world.shop.ledger, phone.ledger()] {
        let oil = OilUseRow::of(&ledger.unit_state(unit).unwrap().oil, ledger.fleet()).unwrap();
        let newest = &oil.balances[0];
        assert_eq!((newest.hours, newest.used_ml, newest.carried_ml), (Tenths(945), 114, 85));
        assert_eq!((newest.ml_per_hour_hundredths, newest.settling), (Some(120), false));
        let air = oil.carry_over.unwrap();
        assert_eq!((air.mg_m3_tenths, air.at_least, air.or_worse), (33, true, true));
    }
}
