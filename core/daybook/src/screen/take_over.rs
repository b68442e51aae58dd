//! The first driver's record as the second one reads it before he takes the unit over.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{Template, plan_second_driver};
use sumpbook_trade::record::{AnswerKind, PreTripSection};
use sumpbook_trade::{Entry, EntryId, Fact, Stamp, Tenths, TruckId};

use super::defect_row::{DefectRow, name};
use super::main_act::Main;
use super::news::{News, Standing, count};
use super::signing::SignRow;
use super::walk::signed_parts;
use crate::draft::{FirstWalk, GLASS};
use crate::ledger::{Ledger, LedgerError, day_number};

/// Which walk, and what was on the screen so far.
#[derive(Clone, Debug, PartialEq)]
pub struct TakeOverQuery {
    /// The unit.
    pub unit: TruckId,
    /// The entry of the first one's walk.
    pub after: EntryId,
    /// Rows that have lain whole on the screen.
    pub seen: BTreeSet<String>,
}

/// The first driver's record.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TakeOverScreen {
    /// The unit's door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// Who signed stops of it, in order of time.
    pub by: Vec<String>,
    /// When the last of them signed.
    pub at: Stamp,
    /// Lines that were OK.
    pub ok: u32,
    /// Of them, answered together with others of their stop.
    pub ok_together: u32,
    /// What could not be checked, and what this unit was said not to have.
    pub not_checked: Vec<SignRow>,
    /// Answers that carry a figure: glass, drops.
    pub figures: Vec<SignRow>,
    /// Compressor hours as read on it.
    pub hours: Option<Tenths>,
    /// Every defect of the unit that is not over, earliest first.
    pub defects: Vec<DefectRow>,
    /// Certificates that the review names.
    pub to_review: Vec<EntryId>,
    /// Stops that are walked again.
    pub stops: u32,
    /// The main button.
    pub main: Main,
}

/// The first driver's record; none when no such walk is held here.
///
/// # Errors
/// As reading the store.
pub fn take_over(
    ledger: &Ledger,
    query: &TakeOverQuery,
    template: &Template,
    standing: &Standing,
    now: Stamp,
) -> Result<Option<TakeOverScreen>, LedgerError> {
    let fleet = ledger.fleet();
    let Some(sections) = walk_of_entry(ledger, query.unit, query.after)? else { return Ok(None) };
    let seen = super::last_report::LastReportQuery { unit: query.unit, seen: query.seen.clone() };
    let left = super::last_report::last_report(ledger, &seen, template, standing, now)?;
    let answers = || sections.iter().flat_map(|(_, section)| &section.answers);
    let of = |kind: AnswerKind| answers().filter(move |answer| answer.answer == kind);
    let features = fleet.trucks.get(&query.unit).map(|truck| truck.features.clone()).unwrap_or_default();
    let mut by: Vec<String> = Vec::new();
    for (entry, _) in &sections {
        let who = entry.person.and_then(|person| name(fleet, person.0));
        by.extend(who.filter(|who| !by.contains(who)));
    }
    let not_checked: Vec<SignRow> =
        of(AnswerKind::CouldNotCheck).chain(of(AnswerKind::NotFitted)).map(SignRow::of).collect();
    Ok(Some(TakeOverScreen {
        door: left.door,
        news: left.news,
        by,
        at: sections.iter().map(|(entry, _)| entry.at).max().unwrap_or(now),
        ok: count(of(AnswerKind::Ok).count()),
        ok_together: count(of(AnswerKind::Ok).filter(|answer| answer.together.is_some()).count()),
        not_checked,
        figures: answers().filter(|answer| !answer.figures.is_empty()).map(SignRow::of).collect(),
        hours: sections.iter().rev().find_map(|(entry, _)| entry.hours),
        defects: left.defects,
        to_review: left.to_review,
        stops: count(plan_second_driver(template, &features).len()),
        // What is locked and not certified stays locked, whoever reads it.
        main: left.main,
    }))
}

/// What the short walk keeps of the first one's record; none when no such walk is held here.
///
/// # Errors
/// As reading the store.
pub fn first_walk(ledger: &Ledger, unit: TruckId, after: EntryId) -> Result<Option<FirstWalk>, LedgerError> {
    let Some(sections) = walk_of_entry(ledger, unit, after)? else { return Ok(None) };
    let answers = sections.iter().rev().flat_map(|(_, section)| &section.answers);
    let glass = answers.filter(|answer| answer.item == GLASS && answer.answer == AnswerKind::Ok);
    let percent = glass.flat_map(|answer| &answer.figures).find_map(|given| {
        let percent = given.figure.unit == sumpbook_trade::Unit::Percent;
        given.figure.value_text().parse::<f64>().ok().filter(|_| percent)
    });
    Ok(Some(FirstWalk { entry: after, glass: percent.map(|value| value.clamp(0.0, 100.0).round() as u8) }))
}

/// Every signed part of the walk that an entry belongs to, in order of time.
fn walk_of_entry(
    ledger: &Ledger,
    unit: TruckId,
    after: EntryId,
) -> Result<Option<Vec<(Entry, PreTripSection)>>, LedgerError> {
    let truth = ledger.store().truth();
    let Some(held) = truth.by_id(after)?.into_iter().next() else { return Ok(None) };
    let Some(first) = Entry::from_payload(&held.row.payload).ok().filter(|entry| entry.unit == Some(unit))
    else {
        return Ok(None);
    };
    let Fact::PreTripSection(section) = &first.fact else { return Ok(None) };
    let day = day_number(ledger.fleet().yard_day(first.at));
    Ok(Some(signed_parts(ledger, unit, section.walk, (day - 1, day + 1))?))
}
