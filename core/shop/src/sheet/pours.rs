//! What was poured on the day.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::defect::Said;
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::oil::{Level, Millilitres, OilNumbers, OilSystem, astray};
use sumpbook_trade::record::{Glass, TopUp};
use sumpbook_trade::{Fact, Figure};

use super::rows::{OilFound, OilRow, RoseRow, TopUpRow};
use super::unit_day::{Told, UnitDay};
use super::{Yard, words};
use crate::oil_use::OilUse;

pub(super) fn top_ups(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<TopUpRow> {
    let mut rows = Vec::new();
    for unit in units {
        for told in &unit.told {
            if let Fact::TopUp(top_up) = &told.entry.fact {
                rows.push(TopUpRow {
                    unit: unit.door.clone(),
                    at: yard.stamp(told.entry.at.moment()),
                    fluid: words::key(&top_up.fluid),
                    grade: top_up.grade.clone(),
                    poured: words::poured(&top_up.pours),
                    before: top_up.before.map(words::glass),
                    after: top_up.after.map(words::glass),
                    who: yard.name(ledger, told.entry.person),
                    finding: finding(unit, told),
                    oil: oil_found(ledger, unit, told, top_up),
                });
            }
        }
    }
    rows
}

/// What the pour itself tells: its entry is a finding of some defect.
fn finding(unit: &UnitDay, told: &Told) -> Option<String> {
    let answers = unit.state.defects.iter().flat_map(|defect| &defect.answers);
    answers.filter(|answer| answer.entry == told.entry.id.0).find_map(|answer| match &answer.said {
        Said::Defect { words, .. } => Some(words.clone()),
        Said::Ok => None,
    })
}

/// What the glass and the use tell at a pour of compressor oil.
fn oil_found(ledger: &Ledger, unit: &UnitDay, told: &Told, top_up: &TopUp) -> Vec<OilFound> {
    if top_up.fluid != Fluid::CompressorOil {
        return Vec::new();
    }
    let profile = ledger.fleet().set_on(unit.truck).map(|set| &set.profile);
    let numbers = ledger.fleet().numbers.oil();
    let over = over_middle(profile.and_then(|profile| profile.glass), top_up, &numbers);
    let mut found: Vec<OilFound> =
        [over, astray_of(&OilSystem::of(profile), top_up, &numbers)].into_iter().flatten().collect();
    let oil = &unit.state.oil;
    let newest = oil.fill.as_ref().and_then(|fill| fill.last_balance());
    let closed_by_it = newest.is_some_and(|balance| balance.to.entry == told.entry.id.0);
    if let Some(oil) = OilUse::of(oil, ledger.fleet()).filter(|_| closed_by_it) {
        let (times_tenths, less) = (oil.times_tenths, oil.less);
        found.extend(oil.since.map(|since| OilFound::Changed { times_tenths, since, less }));
        found.extend(oil.over_limit.then_some(OilFound::OverLimit));
    }
    found
}

fn over_middle(glass: Option<Figure>, top_up: &TopUp, numbers: &OilNumbers) -> Option<OilFound> {
    let Some(Glass::Percent(percent)) = top_up.after else { return None };
    let percent = f64::from(percent);
    if percent <= numbers.middle.1 {
        return None;
    }
    let over = percent - 50.0;
    let volume = glass.and_then(|glass| {
        let whole: f64 = glass.value_text().parse().ok()?;
        Some(format!("{:.2} {}", whole * over / 100.0, words::key(&glass.unit)))
    });
    Some(OilFound::OverMiddle { percent: over.round() as i64, volume })
}

fn astray_of(system: &OilSystem, top_up: &TopUp, numbers: &OilNumbers) -> Option<OilFound> {
    let volumes = top_up.pours.iter().filter_map(|pour| Millilitres::of(pour.volume));
    let volume = volumes.fold(Millilitres::ZERO, |sum, one| sum + one);
    let (before, after) = (Level::before(top_up)?, Level::after(top_up)?);
    let strays = astray(&before, volume, &after, system, numbers)?;
    strays.ask.then_some(OilFound::Astray { ml: strays.astray.0.round() as i64 })
}

/// Units whose use has changed or lies over its limit, the farthest over first; then those whose level rose that day.
pub(super) fn drinking(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<OilRow> {
    let row = |unit: &UnitDay| {
        let oil = OilUse::of(&unit.state.oil, ledger.fleet()).filter(OilUse::is_alarm);
        let rose = unit.state.oil.rose.filter(|rose| ledger.fleet().yard_day(rose.at.into()) == yard.day);
        let rose = rose.map(|rose| RoseRow {
            at: yard.stamp(rose.at),
            from: words::glass(rose.from),
            to: words::glass(rose.to),
        });
        (oil.is_some() || rose.is_some()).then(|| OilRow { unit: unit.door.clone(), oil, rose })
    };
    let mut rows: Vec<OilRow> = units.iter().filter_map(row).collect();
    rows.sort_by_key(|row| std::cmp::Reverse(row.oil.and_then(|oil| oil.times_tenths)));
    rows
}
