//! A procedure step by step: arriving, starting, using and stopping air, leaving.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::procedure::{OnNotSo, PlannedStep, Procedure, Procedures};
use sumpbook_trade::record::StepDone;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Features, Figure, PersonId, Stamp, TruckId};

use super::defect_row::name;
use super::glass::StopNow;
use super::line_row::FigureAsk;
use super::news::count;
use super::road_air::{LockState, PartNow, RoadAir};
use super::site::SiteAsk;
use crate::draft::{Draft, StepsDraft};
use crate::ledger::{Ledger, LedgerError};

/// The procedures that begin with air: with the air locked they open at the lock.
const NEEDS_AIR: [&str; 2] = ["start", "use-air"];

/// The procedures that are gone through by themselves, in a day's order. A top-up and the end of a day have screens
/// of their own.
pub(super) const IN_A_DAY: [&str; 5] = ["arrival", "start", "use-air", "shut-down", "leave-site"];

/// The procedure of the air that comes next.
pub(super) fn air_next(stop: StopNow) -> &'static str {
    match stop {
        StopNow::Running(_) => "shut-down",
        _ => "start",
    }
}

/// The procedure in which a site is met.
const ARRIVAL: &str = "arrival";

/// Which procedure of which unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepsQuery {
    /// The unit.
    pub unit: TruckId,
    /// The procedure's id: `arrival`, `start`, `use-air`, `shut-down`, `leave-site`.
    pub procedure: String,
    /// Who does it: what this person has said already is gone on with.
    pub person: Option<PersonId>,
}

/// One step as somebody confirmed it, or said that it was not so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepSaid {
    /// The step's id.
    pub step: String,
    /// When.
    pub at: Stamp,
    /// It was not so, by this word of the step's.
    pub not_so: Option<String>,
    /// The figure read at it.
    pub figure: Option<Figure>,
    /// Which of the unit's hoses was not so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
}

/// What a word for what is not so means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotSo {
    /// Wait until it is so.
    Wait,
    /// Do not go on; nothing is locked by it.
    Refuse,
    /// Go on; the record says that it was not so.
    Mark,
    /// Do not drive off until it is done.
    NoDriving,
    /// It locks this until the shop certifies it.
    Lock(Severity),
}

/// A word for what may not be so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NotSoRow {
    /// Its key, for the text `not-so-...`.
    pub word: String,
    /// What it means.
    pub means: NotSo,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepRow {
    /// Its id, for the texts `step-...`, `.ok` and `.stops`.
    pub id: String,
    /// The unit's valves, when the step says them by name.
    pub names: Vec<String>,
    /// What may not be so, in order.
    pub not_so: Vec<NotSoRow>,
    /// The unit's hoses by name, one of which is chosen with a word that locks an outlet; empty where the step has no
    /// such word, and where there is nothing to choose between.
    pub places: Vec<String>,
    /// The figure it may carry.
    pub figure: Option<FigureAsk>,
    /// The caution shown with it, for the text `caution-...`.
    pub caution: Option<String>,
    /// Seconds the phone counts, on a clock that goes on through sleep.
    pub dwell_s: Option<u32>,
    /// The dwell is the most it may take, not the least.
    pub within: bool,
    /// Seconds between two looks while it goes on.
    pub every_s: Option<u32>,
    /// What was said of it last and is not recorded yet, by whomever.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub said: Option<StepSaidRow>,
}

/// What was said of a step before.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepSaidRow {
    /// When.
    pub at: Stamp,
    /// Who.
    pub by: Option<String>,
    /// It was not so, by this word of the step's.
    pub not_so: Option<String>,
    /// It was gone on from all the same: whoever looks reads it listed at the last step.
    pub skipped: bool,
}

/// A procedure of one unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepsScreen {
    /// The unit's door number.
    pub door: String,
    /// The procedure, for the text `procedure-...`.
    pub procedure: String,
    /// What is locked and stands before the first step; none when nothing keeps one from it.
    pub locked: Option<PartNow>,
    /// The steps this unit has, in order.
    pub steps: Vec<StepRow>,
    /// What is said of them and not recorded yet; none: nothing.
    pub draft: Option<EntryId>,
    /// That, in order.
    pub said: Vec<StepSaid>,
    /// Why it was begun although the air is locked.
    pub in_spite_of_lock: Option<String>,
    /// Steps that are behind one: they were so, or were gone on from with a mark. The next one is open.
    pub behind: u32,
    /// This person has done it fewer than three times: each step tells how as well, by its text `step-....hint`.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hints: bool,
    /// The site's dust, where this procedure is an arrival and the dust counts.
    pub site: Option<SiteAsk>,
}

/// A procedure of a unit, in the order that matters; none when there is no such procedure.
///
/// # Errors
/// As reading the store.
pub fn steps(
    ledger: &Ledger,
    query: &StepsQuery,
    table: &Procedures,
    now: Stamp,
) -> Result<Option<StepsScreen>, LedgerError> {
    let Some(procedure) = table.of(&query.procedure) else { return Ok(None) };
    let fleet = ledger.fleet();
    let features = fleet.trucks.get(&query.unit).map(|truck| truck.features.clone()).unwrap_or_default();
    let locked = match NEEDS_AIR.contains(&query.procedure.as_str()) {
        true => Some(RoadAir::of(fleet, query.unit, &ledger.unit_state(query.unit)?, now).air)
            .filter(|air| air.state != LockState::NoLockOnRecord),
        false => None,
    };
    let mut drafts = all_under_way(ledger, query.unit)?;
    drafts.retain(|draft| draft.procedure == query.procedure);
    let begun = query.person.and_then(|person| drafts.iter().find(|d| d.person == person)).cloned();
    let before = |step: &str| {
        // One's own word is the one that counts here; without one, the last of somebody else's.
        let own = begun.as_ref().and_then(|draft| last_said(draft, step));
        own.or_else(|| {
            drafts.iter().filter_map(|draft| last_said(draft, step)).max_by_key(|(_, done)| done.at)
        })
    };
    let said = begun.as_ref().map(|draft| draft.steps.as_slice()).unwrap_or_default();
    Ok(Some(StepsScreen {
        door: fleet.door(query.unit),
        procedure: query.procedure.clone(),
        locked,
        steps: procedure
            .steps_for(&features)
            .iter()
            .map(|planned| {
                let said = before(&planned.step.id).map(|(by, done)| StepSaidRow {
                    at: done.at,
                    by: name(fleet, by.0),
                    not_so: done.not_so.then(|| done.word.clone().unwrap_or_default()),
                    skipped: done.not_so && is_behind(procedure, done),
                });
                StepRow { said, ..row(planned, &features) }
            })
            .collect(),
        behind: count(said.iter().filter(|done| is_behind(procedure, done)).count()),
        said: said.iter().map(StepSaid::of).collect(),
        hints: match query.person {
            Some(person) => is_new_to(ledger, person, &query.procedure)?,
            None => false,
        },
        draft: begun.as_ref().map(|draft| draft.id),
        in_spite_of_lock: begun.and_then(|draft| draft.in_spite_of_lock),
        site: match query.procedure.as_str() {
            ARRIVAL => SiteAsk::on_arrival(ledger, query.unit, now)?,
            _ => None,
        },
    }))
}

/// Times for which each step of a procedure tells how it is done.
const FIRST_TIMES: usize = 3;

/// As many of a person's records of steps are looked through for those of one procedure.
const LOOKED_THROUGH: usize = 60;

/// Whether a person has done a procedure fewer than three times, on whatever unit. What was broken off was done too.
fn is_new_to(ledger: &Ledger, person: PersonId, procedure: &str) -> Result<bool, LedgerError> {
    let truth = ledger.store().truth();
    let code = |kind: FactKind| kind.code().unwrap_or(0);
    let kind = match procedure {
        "start" => FactKind::StartAir,
        "shut-down" => FactKind::StopAir,
        _ => FactKind::StepsDone,
    };
    if kind != FactKind::StepsDone {
        let times = u32::try_from(FIRST_TIMES).unwrap_or(u32::MAX);
        return Ok(truth.signed_fewer(person, code(kind), times)?);
    }
    let mut done = 0usize;
    for fact in truth.newest_of_person(person, code(kind), LOOKED_THROUGH)? {
        let entry = truth.entry(fact.n)?.and_then(|held| Entry::from_payload(&held.row.payload).ok());
        let same = entry
            .is_some_and(|entry| matches!(&entry.fact, Fact::StepsDone(of) if of.procedure == procedure));
        done = done.saturating_add(usize::from(same));
    }
    Ok(done < FIRST_TIMES)
}

/// What a person has begun on a unit and not recorded, newest first.
pub(super) fn under_way(
    ledger: &Ledger,
    unit: TruckId,
    person: PersonId,
) -> Result<Vec<StepsDraft>, LedgerError> {
    let mut own = all_under_way(ledger, unit)?;
    own.retain(|draft| draft.person == person);
    Ok(own)
}

/// What anybody has begun on a unit and not recorded, newest first.
fn all_under_way(ledger: &Ledger, unit: TruckId) -> Result<Vec<StepsDraft>, LedgerError> {
    let of_unit = ledger.drafts()?.drafts.into_iter().rev().filter_map(|draft| match draft {
        Draft::Steps(steps) if steps.unit == unit => Some(steps),
        _ => None,
    });
    Ok(of_unit.collect())
}

/// What a draft says of a step, last.
fn last_said<'a>(draft: &'a StepsDraft, step: &str) -> Option<(PersonId, &'a StepDone)> {
    draft.steps.iter().rev().find(|done| done.step == step).map(|done| (draft.person, done))
}

fn is_behind(procedure: &Procedure, done: &StepDone) -> bool {
    let word = done.word.as_deref();
    let stops = procedure.step(&done.step).map(|step| step.stops.as_slice()).unwrap_or_default();
    let marked = || stops.iter().any(|stop| Some(stop.0.as_str()) == word && stop.1 == OnNotSo::Mark);
    !done.not_so || marked()
}

impl StepSaid {
    fn of(done: &StepDone) -> StepSaid {
        let not_so = done.not_so.then(|| done.word.clone().unwrap_or_default());
        StepSaid {
            step: done.step.clone(),
            at: done.at,
            not_so,
            figure: done.figure,
            place: done.place.clone(),
        }
    }

    /// As it is kept. What it locks comes from the table, when it is recorded.
    pub fn done(self) -> StepDone {
        let StepSaid { step, at, not_so, figure, place } = self;
        StepDone { step, at, not_so: not_so.is_some(), word: not_so, locks: None, figure, place }
    }
}

fn row(planned: &PlannedStep<'_>, features: &Features) -> StepRow {
    let step = planned.step;
    let places = features.outlets().into_iter().filter(|_| step.is_of_an_outlet());
    let places: Vec<String> = places.map(str::to_owned).collect();
    StepRow {
        id: step.id.clone(),
        names: planned.names.iter().map(|name| (*name).to_owned()).collect(),
        not_so: step
            .stops
            .iter()
            .map(|stop| NotSoRow { word: stop.0.clone(), means: means(stop.1) })
            .collect(),
        places: if places.len() > 1 { places } else { Vec::new() },
        figure: step.number.as_ref().map(FigureAsk::of),
        caution: step.caution.clone(),
        dwell_s: step.dwell,
        within: step.within,
        every_s: step.every,
        said: None,
    }
}

fn means(on: OnNotSo) -> NotSo {
    match on {
        OnNotSo::Wait => NotSo::Wait,
        OnNotSo::Refuse => NotSo::Refuse,
        OnNotSo::Mark => NotSo::Mark,
        OnNotSo::NoDriving => NotSo::NoDriving,
        OnNotSo::Lock(severity) => NotSo::Lock(severity),
    }
}
