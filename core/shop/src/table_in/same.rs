//! Whether a row is here already: a file can be brought in twice and nothing is doubled.

use chrono::NaiveDate;
use sha2::{Digest, Sha256};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::{Entry, EntryId, Fact, Stamp, Tenths, TruckId};
use uuid::Builder;

use super::Here;
use crate::ShopError;

/// The id of a fact out of older records: version 7 (RFC 9562) of the fact's own moment, and for its random bits
/// the digest of what it says. The same row has the same id at every bringing in.
pub(super) fn id(truck: TruckId, at: Stamp, hours: Option<Tenths>, fact: &Fact) -> EntryId {
    let bare = Entry {
        id: EntryId::from_bytes([0; 16]),
        unit: Some(truck),
        set: None,
        at,
        clock_off_ms: None,
        person: None,
        trainer: None,
        pin_given: false,
        trainer_pin_given: false,
        hours,
        note: None,
        source: sumpbook_trade::record::Source::BroughtIn,
        fact: fact.clone(),
    };
    let digest: [u8; 32] =
        Sha256::new_with_prefix(b"sumpbook brought in 1").chain_update(bare.to_payload()).finalize().into();
    let random = digest.first_chunk::<10>().copied().unwrap_or_default();
    let millis = u64::try_from(at.unix_ms()).unwrap_or(0);
    EntryId(Builder::from_unix_timestamp_millis(millis, &random).into_uuid())
}

/// The entry that says the same already, if one does: under the same id, or of the same unit, day and kind with
/// the same figures, whoever wrote it down.
pub(super) fn here(ledger: &Ledger, entry: &Entry) -> Result<Option<Here>, ShopError> {
    let truth = ledger.store().truth();
    let mut held = truth.by_id(entry.id)?;
    if let (true, Some(truck)) = (held.is_empty(), entry.unit) {
        let day = day_number(ledger.fleet().yard_day(entry.at));
        for fact in truth.facts_of_unit_days(truck, day, day)? {
            if Some(fact.kind) == entry.fact.kind().code() {
                held.extend(truth.entry(fact.n)?);
            }
        }
        held.retain(|held| {
            Entry::from_payload(&held.row.payload).is_ok_and(|other| says_the_same(&other, entry))
        });
    }
    let first = held.first().and_then(|held| Entry::from_payload(&held.row.payload).ok());
    Ok(first.map(|other| Here::Recorded { entry: other.id, at: other.at, source: other.source }))
}

/// Days since 1970-01-01.
fn day_number(day: NaiveDate) -> i32 {
    let days = day.signed_duration_since(NaiveDate::default()).num_days();
    i32::try_from(days).unwrap_or(i32::MAX)
}

/// Whether two entries of one unit, day and kind tell of one thing.
pub(super) fn says_the_same(one: &Entry, other: &Entry) -> bool {
    match (&one.fact, &other.fact) {
        (Fact::HourReading(a), Fact::HourReading(b)) => a.meter == b.meter && a.figure == b.figure,
        (Fact::ServiceDone(a), Fact::ServiceDone(b)) => {
            let sorted = |tasks: &[sumpbook_trade::clock::TaskId]| {
                let mut tasks = tasks.to_vec();
                tasks.sort();
                tasks
            };
            one.hours == other.hours && sorted(&a.tasks) == sorted(&b.tasks)
        }
        (Fact::TopUp(a), Fact::TopUp(b)) => {
            // Cubic metres inside; to a tenth of a millilitre.
            let poured = |top_up: &sumpbook_trade::record::TopUp| {
                let all = top_up.pours.iter().filter_map(|pour| pour.volume.volume());
                (all.map(|volume| volume.value).sum::<f64>() * 1e7).round() as i64
            };
            let hours = one.hours == other.hours || one.hours.is_none() || other.hours.is_none();
            a.fluid == b.fluid && poured(a) == poured(b) && hours
        }
        _ => false,
    }
}
