//! Readings that wait for a person, and those somebody took back (R3).

use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::{ReadingNow, UnitState};
use sumpbook_trade::record::Correction;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Tenths};

use super::rows::{CorrectedRow, FigureRow, SettleRow};
use super::unit_day::{UnitDay, day_number, entry_of};
use super::{Read, Yard};
use crate::ShopError;

/// Open questions of every unit, as they stand at the cut.
pub(super) fn to_settle(
    ledger: &Ledger,
    yard: &Yard,
    units: &[UnitDay],
) -> Result<Vec<SettleRow>, ShopError> {
    questions(ledger, yard, units.iter().map(|unit| (unit.door.as_str(), &unit.state)))
}

/// Open questions of these units.
pub(crate) fn questions<'a>(
    ledger: &Ledger,
    yard: &Yard,
    units: impl Iterator<Item = (&'a str, &'a UnitState)>,
) -> Result<Vec<SettleRow>, ShopError> {
    let mut rows = Vec::new();
    for (door, state) in units {
        for question in &state.hours.questions {
            let mut figures = Vec::new();
            for reading in question.standing.iter().chain(&question.disputing) {
                figures.push(figure(ledger, yard, reading)?);
            }
            figures.sort_by_key(|figure| (figure.at, figure.entry));
            figures.dedup();
            rows.push(SettleRow {
                unit: door.to_owned(),
                figures,
                used: state.hours.due,
                why: question.why.clone(),
                hints: question.hints.clone(),
            });
        }
    }
    Ok(rows)
}

fn figure(ledger: &Ledger, yard: &Yard, reading: &ReadingNow) -> Result<FigureRow, ShopError> {
    let held = ledger.store().truth().by_id(reading.entry)?.into_iter().next();
    let person = held.and_then(|held| Entry::from_payload(&held.row.payload).ok()).and_then(|e| e.person);
    Ok(FigureRow {
        entry: reading.entry,
        at: yard.stamp(reading.at),
        figure: reading.figure,
        who: yard.name(ledger, person),
        struck: !reading.counts,
        ceiling: reading.ceiling,
    })
}

/// Readings of the day that a correction made void: struck, and still seen.
pub(super) fn corrected(ledger: &Ledger, yard: &Yard, read: &Read) -> Result<Vec<CorrectedRow>, ShopError> {
    let day = day_number(yard.day);
    let mut rows = Vec::new();
    for unit in &read.units {
        let of_day = read.facts.of(unit.truck).iter().map(|told| &told.fact).filter(|fact| fact.day == day);
        for fact in of_day {
            let (Judged::Void, Some(struck)) = (fact.judged, fact.hours) else { continue };
            let Some((entry, correction)) = correction_of(ledger, fact.id)? else { continue };
            let instead = match correction.instead {
                Some(instead) => figure_of(ledger, instead)?,
                None => None,
            };
            rows.push(CorrectedRow {
                unit: unit.door.clone(),
                at: yard.stamp_ms(fact.at_ms),
                struck,
                instead,
                who: yard.name(ledger, entry.person),
                why: correction.why,
            });
        }
    }
    Ok(rows)
}

fn correction_of(ledger: &Ledger, target: EntryId) -> Result<Option<(Entry, Correction)>, ShopError> {
    let truth = ledger.store().truth();
    for (by, kind, _) in truth.decided(target)? {
        if Some(kind) == FactKind::Correction.code()
            && let Some((_, entry)) = entry_of(&truth, by)?
            && let Fact::Correction(correction) = entry.fact.clone()
        {
            return Ok(Some((entry, correction)));
        }
    }
    Ok(None)
}

fn figure_of(ledger: &Ledger, entry: EntryId) -> Result<Option<Tenths>, ShopError> {
    let truth = ledger.store().truth();
    let Some(held) = truth.by_id(entry)?.into_iter().next() else { return Ok(None) };
    Ok(truth.fact(held.n)?.and_then(|fact| fact.hours))
}
