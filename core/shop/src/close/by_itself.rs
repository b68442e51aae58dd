//! Days that close by themselves: every ended day of the yard once, and again when something of it, or of a day
//! before it, came late (R8). Not at every entry: once a night.

use std::collections::BTreeMap;

use chrono::{DateTime, Days, NaiveDate, NaiveTime, TimeZone, Utc};
use chrono_tz::Tz;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::{FactKind, Stamp};

use crate::ShopError;

/// The hour of the yard's night at which ended days are closed: the last phones of an evening have come by, the
/// first of a morning have not.
pub const CLOSING_HOUR: u32 = 4;
/// So many days back the hub closes by itself; an older day is closed by a person.
const MOST_BACK: u64 = 31;

/// The last closing hour of the yard that is not after `now`.
pub fn closing_hour(zone: Tz, now: Stamp) -> DateTime<Utc> {
    let now = now.moment().with_timezone(&Utc);
    let today = now.with_timezone(&zone).date_naive();
    let at = |day: NaiveDate| {
        let hour = NaiveTime::from_hms_opt(CLOSING_HOUR, 0, 0).unwrap_or_default();
        let local = zone.from_local_datetime(&day.and_time(hour));
        // An hour that a zone leaves out, or has twice, when its clocks are changed.
        local.earliest().map_or(now, |at| at.with_timezone(&Utc))
    };
    let of_today = at(today);
    if of_today <= now {
        return of_today;
    }
    today.pred_opt().map_or(of_today, at)
}

/// The days to close at `now`, oldest first: those that ended and have no version, and those that something
/// entered after number `looked` may have changed. `None` when the newest ended day was closed since the last
/// closing hour: that was this hour's closing, and what came since waits for the next.
///
/// # Errors
/// As any read.
pub fn to_close(ledger: &Ledger, looked: i64, now: Stamp) -> Result<Option<Vec<NaiveDate>>, ShopError> {
    let fleet = ledger.fleet();
    let hour = closing_hour(fleet.zone, now);
    let Some(ended) = hour.with_timezone(&fleet.zone).date_naive().pred_opt() else { return Ok(None) };
    let mut closed: BTreeMap<NaiveDate, (i64, i64)> = BTreeMap::new();
    for (day, at_ms, n) in ledger.store().newest_closings()? {
        if let Ok(day) = day.parse() {
            closed.insert(day, (at_ms, n));
        }
    }
    let this_hours = |(at_ms, _): &(i64, i64)| *at_ms >= hour.timestamp_millis();
    if closed.get(&ended).is_some_and(this_hours) {
        return Ok(None);
    }
    let Some(first) = ledger.store().truth().between(0, i64::MAX, 1)?.pop() else { return Ok(None) };
    let Some(begun) = Stamp::from_parts(first.received_ms, 0) else { return Ok(None) };
    let oldest = ended.checked_sub_days(Days::new(MOST_BACK)).unwrap_or(ended);
    let from = fleet.yard_day(begun).max(oldest);
    let touched = touched(ledger, looked)?;
    let changed = |day: NaiveDate| match closed.get(&day) {
        None => true,
        Some((_, upto)) => touched.iter().any(|(n, of)| n > upto && *of <= day),
    };
    Ok(Some(from.iter_days().take_while(|day| *day <= ended).filter(|day| changed(*day)).collect()))
}

/// Entries after a number with the day they are about. What is known of a day can change with whatever was
/// recorded of it or of a day before it, and with what an entry says about another entry.
fn touched(ledger: &Ledger, looked: i64) -> Result<Vec<(i64, NaiveDate)>, ShopError> {
    let truth = ledger.store().truth();
    let mut touched = Vec::new();
    for fact in truth.facts_since(looked)? {
        if FactKind::from_code(fact.kind) == FactKind::SheetClosed {
            continue;
        }
        for day in truth.days_about(fact.n)? {
            let day = i64::from(day).checked_mul(86_400).and_then(|s| DateTime::from_timestamp(s, 0));
            touched.extend(day.map(|day| (fact.n, day.date_naive())));
        }
    }
    Ok(touched)
}
