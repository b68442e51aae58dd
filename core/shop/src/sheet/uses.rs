//! Used without a pre-trip, and used against a lock-out (R9, R12).

use sumpbook_daybook::ledger::{Ledger, Reach};
use sumpbook_trade::Fact;
use sumpbook_trade::day::Heading;
use sumpbook_trade::defect::uses_against;
use sumpbook_trade::record::Source;

use super::record::{AgainstRow, WithoutRow};
use super::unit_day::{Told, UnitDay};
use super::{Yard, knowing, words};
use crate::ShopError;

pub(super) fn without(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<WithoutRow> {
    let mut rows: Vec<WithoutRow> = units.iter().filter_map(|unit| row(ledger, yard, unit)).collect();
    rows.sort_by(|a, b| (a.first_use, &a.unit).cmp(&(b.first_use, &b.unit)));
    rows
}

fn row(ledger: &Ledger, yard: &Yard, unit: &UnitDay) -> Option<WithoutRow> {
    let first = unit.day.without.first()?;
    let told = unit.told(first.entry);
    let came = match unit.day.heading {
        Heading::Done { at, .. } if at > first.at => Some(yard.stamp(at)),
        _ => unit
            .day
            .covered
            .iter()
            .map(|span| span.from)
            .filter(|from| *from > first.at)
            .min()
            .map(|at| yard.stamp(at)),
    };
    Some(WithoutRow {
        unit: unit.door.clone(),
        first_use: yard.stamp(first.at),
        what: words::use_word(first.what).to_owned(),
        more: unit.day.without.len().saturating_sub(1),
        who: told.and_then(|told| yard.name(ledger, told.entry.person)),
        pre_trip_came: came,
        reason: told.and_then(reason),
    })
}

pub(super) fn against(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Result<Vec<AgainstRow>, ShopError> {
    let truth = ledger.store().truth();
    let mut rows = Vec::new();
    for unit in units {
        for found in uses_against(&unit.state.locks, &unit.uses) {
            // Uses of the day before are on its own sheet.
            let Some(told) = unit.told(found.used.entry) else { continue };
            let entry = knowing::opening(&unit.state.defects, &found.lock)
                .map_or(found.lock.because.entry, |answer| answer.entry);
            let opened = knowing::first_held(ledger, entry)?;
            let (mut could_know, mut shop_knew, mut driver_knew) = (false, None, None);
            // What was written down on paper says nothing of what its driver's phone held.
            let by_phone = told.entry.source == Source::Phone;
            if let Some(opened) = &opened {
                shop_knew = Some(knowing::shop_knew(yard, opened));
                if by_phone && let Some(held) = truth.entry(told.fact.n)? {
                    driver_knew = knowing::phone_knew(ledger, yard, held.row.actor.key(), opened)?;
                    // No entry follows one of another book: of a campaign the log of exchanges says who held it.
                    could_know = match held.row.book == opened.row.book {
                        true => Reach::had_seen(&truth, &held, opened)?,
                        false => driver_knew.is_some_and(|at| at.moment() <= found.used.at),
                    };
                }
            }
            let clock = |at: Option<sumpbook_trade::Stamp>, never: &str| {
                at.map_or_else(|| never.to_owned(), |at| yard.clock(at))
            };
            let said = if !by_phone {
                format!("not known: it came on paper; shop knew {}", clock(shop_knew, "not known"))
            } else if could_know {
                "yes: the lock-out was on the phone that recorded this".to_owned()
            } else {
                format!(
                    "no: shop knew {}, driver {}",
                    clock(shop_knew, "not known"),
                    clock(driver_knew, "not told yet")
                )
            };
            rows.push(AgainstRow {
                unit: unit.door.clone(),
                lock: found.lock.part.clone().into(),
                since: yard.stamp(found.lock.since),
                used: yard.stamp(found.used.at),
                what: what(told),
                driver: yard.name(ledger, told.entry.person),
                could_know,
                on_paper: !by_phone,
                shop_knew,
                driver_knew,
                said,
                reason: reason(told),
            });
        }
    }
    rows.sort_by(|a, b| (a.used, &a.unit, &a.lock).cmp(&(b.used, &b.unit, &b.lock)));
    Ok(rows)
}

fn what(told: &Told) -> String {
    match &told.entry.fact {
        Fact::Drive(drive) => words::key(&drive.what),
        _ => "started-air".to_owned(),
    }
}

fn reason(told: &Told) -> Option<String> {
    let asked = match &told.entry.fact {
        Fact::Drive(drive) => drive.in_spite_of_lock.clone(),
        Fact::StartAir(start) => start.in_spite_of_lock.clone(),
        _ => None,
    };
    asked.or_else(|| told.entry.note.clone())
}
