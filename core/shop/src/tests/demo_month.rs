//! The whole month lived on real phones: every closing answered again, every row verified.

use sumpbook_trade::Stamp;

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
