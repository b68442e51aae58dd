//! Hours of a unit without a meter, counted from its starts and stops, and how a meter takes over from them (R14).

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, NaiveTime, TimeZone};
use serde::{Deserialize, Serialize};
use sumpbook_trade::hours::{
    Counted, DueHours, ExchangeRow, HoursLedger, Mark, MarkKind, ReadingRow, RunEnds, Settlement, counted,
    with_estimates,
};
use sumpbook_trade::{FactKind, Tenths};
use uuid::Uuid;

use super::hours::HoursNow;
use super::scope::Scope;
use crate::fleet::MeterFrom;
use crate::judgement::Judged;
use crate::ledger::LedgerError;

/// Hours counted from starts and stops.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CountedNow {
    /// At least so many.
    pub low: Tenths,
    /// It was started and nothing is recorded since: `due` grows until somebody stops it.
    pub open_since: Option<DateTime<FixedOffset>>,
    /// Runs of which one end is missing.
    pub unsure_runs: u32,
}

/// Judges readings and exchanges (R3), with what was counted while there was no meter.
///
/// A meter's own readings rule from its first one on. Two things would lose what was counted before, and so it stands
/// as a figure there: an exchange, for whose old meter there was none to be read; and a first reading below the hours
/// that are sure, which is a meter that began anew and is asked about like any that runs backwards.
pub(super) fn judge(
    scope: &Scope<'_>,
    upto_ms: i64,
    (mut readings, mut exchanges, decisions): (
        Vec<ReadingRow>,
        Vec<ExchangeRow>,
        &BTreeMap<Uuid, Settlement>,
    ),
) -> Result<HoursLedger, LedgerError> {
    let numbers = scope.fleet.numbers.hours();
    let judge = |readings: &[ReadingRow], exchanges: &[ExchangeRow]| {
        HoursLedger::judge_by(numbers, readings, exchanges, decisions)
    };
    let Some(meters) = scope.fleet.meters.get(&scope.truck) else {
        return Ok(judge(&readings, &exchanges));
    };
    let marks = marks(scope, upto_ms)?;
    let before = |at, readings: &[ReadingRow], exchanges: &[ExchangeRow]| {
        let readings: Vec<ReadingRow> = readings.iter().filter(|row| row.at <= at).cloned().collect();
        let exchanges: Vec<ExchangeRow> = exchanges.iter().filter(|row| row.at < at).cloned().collect();
        judge(&readings, &exchanges)
    };
    exchanges.sort_by_key(|row| (row.at, row.entry));
    for nth in 0..exchanges.len() {
        let Some(exchange) = exchanges.get(nth).filter(|row| !row.went_round) else { continue };
        let ledger = before(exchange.at, &readings, &exchanges);
        let sum = counted_at(scope, &ledger, &marks, (exchange.at, exchange.at.timestamp_millis()));
        if let Some((sum, exchange)) = sum.zip(exchanges.get_mut(nth)) {
            exchange.old_end = exchange.old_end.max(Some(sum.for_due() - ledger.offset()));
        }
    }
    for came in meters.iter().filter(|from| from.has) {
        let row = begun_anew(scope, came, (&readings, &exchanges), |at| {
            let ledger = before(at, &readings, &exchanges);
            counted_at(scope, &ledger, &marks, (at, came.from_ms)).map(|sum| (sum, ledger.offset()))
        });
        readings.extend(row);
    }
    Ok(judge(&readings, &exchanges))
}

/// What was counted by the moment a meter came, as a figure, when the meter's first reading is below what is sure of it.
fn begun_anew(
    scope: &Scope<'_>,
    came: &MeterFrom,
    (readings, exchanges): (&[ReadingRow], &[ExchangeRow]),
    counted: impl Fn(DateTime<FixedOffset>) -> Option<(Counted, Tenths)>,
) -> Option<ReadingRow> {
    let at = DateTime::from_timestamp_millis(came.from_ms)?.with_timezone(&scope.fleet.zone).fixed_offset();
    let first = readings.iter().filter(|row| row.at > at).min_by_key(|row| (row.at, row.order))?;
    // With an exchange it came by that, even one written down before the registration was mended.
    let by_exchange = |row: &ExchangeRow| {
        row.at <= first.at && (row.at > at || !scope.fleet.had_meter(scope.truck, row.at.timestamp_millis()))
    };
    if exchanges.iter().any(by_exchange) {
        return None;
    }
    let (sum, offset) = counted(at)?;
    // A tenth lower is a meter that turns its tenth later.
    let below = first.figure + offset + Tenths(1) < sum.at_least();
    below.then(|| ReadingRow {
        entry: came.entry.0,
        at,
        figure: sum.for_due() - offset,
        order: 0,
        source_brought_in: false,
    })
}

/// Adds what no meter counted: signed estimates, and of a unit without a meter its starts and stops.
pub(super) fn add(
    now: &mut HoursNow,
    scope: &Scope<'_>,
    (ledger, upto_ms): (&HoursLedger, i64),
) -> Result<(), LedgerError> {
    if let Some(read) = now.due {
        now.due = with_estimates(read, now.due_at, &now.estimates).hours;
    }
    if !scope.fleet.meters.contains_key(&scope.truck) {
        return Ok(());
    }
    let marks = marks(scope, upto_ms)?;
    // Up to the last mark: what runs on from there is added by whoever reads, who knows the time.
    let Some(last) = marks.iter().map(|mark| mark.at).max() else { return Ok(()) };
    let Some(sum) = counted_at(scope, ledger, &marks, (last, upto_ms)) else { return Ok(()) };
    now.due = with_estimates(sum.for_due(), now.due_at, &now.estimates).hours;
    let low = now.due.map(|due| due - (sum.for_due() - sum.at_least()));
    now.counted = low.map(|low| CountedNow {
        low,
        open_since: sum.runs.iter().find(|run| run.ends == RunEnds::StillOpen).map(|run| run.from),
        unsure_runs: u32::try_from(sum.runs.iter().filter(|run| run.ends != RunEnds::Both).count())
            .unwrap_or(u32::MAX),
    });
    Ok(())
}

/// Hours counted by a moment, in a unit as its registrations had it by another, from the last figure before it, or from
/// those the unit came into service with. None where a meter counts them, or where nothing was ever recorded of its
/// running: that is unknown, and not zero.
fn counted_at(
    scope: &Scope<'_>,
    ledger: &HoursLedger,
    marks: &[Mark],
    (at, known_ms): (DateTime<FixedOffset>, i64),
) -> Option<Counted> {
    let figure = |due: DueHours| (due.hours, due.at);
    let (base, since) = ledger.for_due().map(figure).or_else(|| in_service(scope))?;
    let (fleet, truck, since_ms) = (scope.fleet, scope.truck, since.timestamp_millis());
    // A figure of the very moment at which the meter came is what was counted until then.
    if fleet.had_meter(truck, known_ms) && fleet.had_meter(truck, since_ms.saturating_sub(1)) {
        return None;
    }
    marks.iter().any(|mark| mark.at <= at).then(|| counted(base, since, marks, at))
}

/// The hours a set came into service with, and the beginning of that day.
fn in_service(scope: &Scope<'_>) -> Option<(Tenths, DateTime<FixedOffset>)> {
    let truck = scope.fleet.trucks.get(&scope.first_truck())?;
    let begins =
        scope.fleet.zone.from_local_datetime(&truck.in_service.and_time(NaiveTime::MIN)).earliest()?;
    Some((truck.in_service_hours, begins.fixed_offset()))
}

/// What was recorded of a unit's running.
fn marks(scope: &Scope<'_>, upto_ms: i64) -> Result<Vec<Mark>, LedgerError> {
    let mut marks = Vec::new();
    for (kind, mark) in [
        (FactKind::StartAir, MarkKind::Start),
        (FactKind::StopAir, MarkKind::Stop),
        (FactKind::PreTripSection, MarkKind::Report),
        (FactKind::EndOfDay, MarkKind::Report),
    ] {
        for fact in
            scope.facts_of_kind(kind, upto_ms)?.into_iter().filter(|fact| fact.judged == Judged::Counts)
        {
            let at = DateTime::from_timestamp_millis(fact.at_ms).map(|at| at.fixed_offset());
            marks.extend(at.map(|at| Mark { entry: fact.id.0, at, kind: mark }));
        }
    }
    Ok(marks)
}
