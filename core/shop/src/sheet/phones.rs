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
    let Split { heard, not_heard, just_added } = split(ledger, yard, last, since.timestamp_millis());
    let of = heard.len().saturating_add(not_heard.len());
    Ok(Phones { since: yard.stamp(since), of, heard, not_heard, just_added })
}

/// Phones not heard from in the 24 hours before the cut.
pub(super) fn quiet(ledger: &Ledger, yard: &Yard, last: &BTreeMap<[u8; 8], i64>) -> Vec<PhoneRow> {
    split(ledger, yard, last, a_day_before(yard.cut_ms)).not_heard
}

/// Whether a phone is silent: not heard from since then, and never silent in the day after it was let in, for it
/// may have had no signal since.
pub(crate) fn is_silent(last_ms: Option<i64>, let_in_ms: i64, since_ms: i64, cut_ms: i64) -> bool {
    match last_ms {
        Some(last) => last < since_ms,
        None => let_in_ms < a_day_before(cut_ms),
    }
}

#[derive(Default)]
struct Split {
    heard: Vec<PhoneRow>,
    not_heard: Vec<PhoneRow>,
    just_added: Vec<PhoneRow>,
}

fn split(ledger: &Ledger, yard: &Yard, last: &BTreeMap<[u8; 8], i64>, since_ms: i64) -> Split {
    let fleet = ledger.fleet();
    let mut of = Split::default();
    for (id, device) in &fleet.devices {
        // One that was let in later is not of an earlier day.
        if device.let_in_ms > yard.cut_ms || fleet.revoked.iter().any(|(revoked, _, _)| revoked == id) {
            continue;
        }
        let at = last.get(id).copied();
        let added = at.is_none().then(|| yard.stamp_ms(device.let_in_ms));
        let row = PhoneRow { phone: device.name.clone(), last_heard: at.map(|ms| yard.stamp_ms(ms)), added };
        let silent = is_silent(at, device.let_in_ms, since_ms, yard.cut_ms);
        match (silent, at) {
            (true, _) => of.not_heard.push(row),
            (false, Some(_)) => of.heard.push(row),
            (false, None) => of.just_added.push(row),
        }
    }
    for rows in [&mut of.heard, &mut of.not_heard, &mut of.just_added] {
        rows.sort_by(|a, b| a.phone.cmp(&b.phone));
    }
    of
}
