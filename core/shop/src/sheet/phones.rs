//! Which phones were heard from.

use std::collections::BTreeMap;

use chrono::NaiveTime;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::day::yard_moment;

use super::Yard;
use super::record::{PhoneRow, Phones};
use super::unit_day::a_day_before;
use crate::ShopError;

/// The last exchange of each device up to the cut, milliseconds, by key id.
pub(super) fn last_heard(ledger: &Ledger, yard: &Yard) -> Result<BTreeMap<[u8; 8], i64>, ShopError> {
    let rows = ledger.store().last_exchanges(yard.cut_ms)?;
    Ok(rows.into_iter().map(|row| (row.device, row.at_ms)).collect())
}

pub(super) fn since_yesterday(
    ledger: &Ledger,
    yard: &Yard,
    last: &BTreeMap<[u8; 8], i64>,
) -> Result<Phones, ShopError> {
    let five = NaiveTime::from_hms_opt(17, 0, 0).unwrap_or(NaiveTime::MIN);
    let since = yard_moment(yard.yesterday()?, five, yard.zone).ok_or(ShopError::DayBeyond(yard.day))?;
    let (heard, not_heard) = split(ledger, yard, last, since.timestamp_millis());
    Ok(Phones { since: yard.stamp(since), of: heard.len().saturating_add(not_heard.len()), heard, not_heard })
}

/// Phones not heard from in the 24 hours before the cut.
pub(super) fn quiet(ledger: &Ledger, yard: &Yard, last: &BTreeMap<[u8; 8], i64>) -> Vec<PhoneRow> {
    split(ledger, yard, last, a_day_before(yard.cut_ms)).1
}

fn split(
    ledger: &Ledger,
    yard: &Yard,
    last: &BTreeMap<[u8; 8], i64>,
    since_ms: i64,
) -> (Vec<PhoneRow>, Vec<PhoneRow>) {
    let fleet = ledger.fleet();
    let (mut heard, mut not_heard) = (Vec::new(), Vec::new());
    for (id, device) in &fleet.devices {
        if fleet.revoked.iter().any(|(revoked, _, _)| revoked == id) {
            continue;
        }
        let at = last.get(id).copied();
        let row = PhoneRow { phone: device.name.clone(), last_heard: at.map(|ms| yard.stamp_ms(ms)) };
        if at.is_some_and(|at| at >= since_ms) { heard.push(row) } else { not_heard.push(row) }
    }
    heard.sort_by(|a, b| a.phone.cmp(&b.phone));
    not_heard.sort_by(|a, b| a.phone.cmp(&b.phone));
    (heard, not_heard)
}
