//! Words that lock more the second time within days, over the walks and the top-ups of a unit.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{Again, Bears, Item, Template, second_times, second_until};
use sumpbook_trade::defect::Finding;
use sumpbook_trade::fluid::Fluids;
use sumpbook_trade::record::{Answer, AnswerKind};
use sumpbook_trade::{Fact, Stamp, TruckId};

use super::UnitState;
use super::defects::locks;
use super::inputs::{self, Bearing};
use super::scope::Scope;
use crate::fleet::Fleet;
use crate::ledger::{Ledger, LedgerError};

/// A word that locks more when it is given now than it did before.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AgainNow {
    /// The item.
    pub item: String,
    /// Its word.
    pub word: String,
    /// Up to this moment.
    pub until: DateTime<FixedOffset>,
}

impl Ledger {
    /// The checklist as it holds for a unit now: as the shop has it, and a word that was given within days locks what
    /// it locks the second time.
    ///
    /// # Errors
    /// As any read.
    pub fn checklist_of(&self, unit: TruckId, now: Stamp) -> Result<Arc<Template>, LedgerError> {
        let checklist = self.fleet().checklist()?;
        Ok(match self.unit_state(unit)?.checklist(checklist, now) {
            Cow::Borrowed(_) => Arc::clone(checklist),
            Cow::Owned(second) => Arc::new(second),
        })
    }
}

impl UnitState {
    /// A checklist with the words that are a second time when they are given now.
    pub(crate) fn checklist<'a>(&self, checklist: &'a Template, now: Stamp) -> Cow<'a, Template> {
        let standing = self.again.iter().filter(|again| now.moment() <= again.until);
        let mut second = standing.map(|again| (again.item.as_str(), again.word.as_str())).peekable();
        match second.peek() {
            Some(_) => Cow::Owned(checklist.with_second_times(second)),
            None => Cow::Borrowed(checklist),
        }
    }
}

/// Everything of a unit that bears on whether a word came to be so a second time.
pub(super) struct Seconds<'a> {
    told: Vec<Told<'a>>,
}

/// One item's word, and what bears on it.
struct Told<'a> {
    item: &'a Item,
    again: &'a Again,
    events: Vec<(DateTime<FixedOffset>, Bears)>,
}

impl<'a> Seconds<'a> {
    /// Of a unit by its entries. Walks that found nothing are read only of days on which one can tell that it was
    /// well meanwhile.
    ///
    /// # Errors
    /// As any read.
    pub(super) fn of(
        checklist: &'a Template,
        scope: &Scope<'_>,
        upto_ms: i64,
        entries: &[&Bearing],
    ) -> Result<Seconds<'a>, LedgerError> {
        let mut told = Vec::new();
        for (item, again) in checklist.items.iter().filter_map(|item| Some((item, item.again.as_ref()?))) {
            let mut events = Vec::new();
            let mut given: BTreeSet<i32> = BTreeSet::new();
            for bearing in entries {
                let of_it = events_of(item, &again.word, bearing);
                if of_it.iter().any(|(_, bears)| *bears == Bears::Given) {
                    given.extend(
                        (0..=i32::from(again.days)).map(|days| bearing.fact.day.saturating_add(days)),
                    );
                }
                events.extend(of_it);
            }
            for quiet in inputs::sections_beside(&scope.truth, scope.truck, &given, upto_ms)? {
                events.extend(events_of(item, &again.word, &quiet));
            }
            told.push(Told { item, again, events });
        }
        Ok(Seconds { told })
    }

    /// Makes each finding that is a second time lock what it then locks.
    pub(super) fn raise(&self, fleet: &Fleet, findings: &mut [Finding]) {
        for Told { item, again, events } in &self.told {
            let seconds = second_times(events, again.days);
            let second = |finding: &&mut Finding| {
                finding.item == item.id
                    && finding.words.split(": ").next() == Some(again.word.as_str())
                    && seconds.contains(&finding.at)
            };
            for finding in findings.iter_mut().filter(second) {
                let then = fleet.checklist_at(finding.at.timestamp_millis()).ok();
                let severity = then.and_then(|list| list.item(&item.id)?.severity_again(&again.word));
                let outlet = finding.place.as_deref().unwrap_or(&finding.item);
                let more = locks(severity, outlet).into_iter();
                let more: Vec<_> = more.filter(|part| !finding.parts.contains(part)).collect();
                finding.parts.extend(more);
            }
        }
    }

    /// The words that are a second time when they are given now.
    pub(super) fn now(&self) -> Vec<AgainNow> {
        let of = |Told { item, again, events }: &Told<'_>| {
            let until = second_until(events, again.days)?;
            Some(AgainNow { item: item.id.clone(), word: again.word.clone(), until })
        };
        self.told.iter().filter_map(of).collect()
    }
}

fn events_of(item: &Item, word: &str, bearing: &Bearing) -> Vec<(DateTime<FixedOffset>, Bears)> {
    let at = bearing.entry.at.moment();
    let of_answers = |answers: &[Answer]| {
        let of_it = answers.iter().filter(|answer| answer.item == item.id);
        let bears = of_it.filter_map(|answer| match answer.answer {
            AnswerKind::Defect if answer.word.as_deref() == Some(word) => Some(Bears::Given),
            AnswerKind::Ok => Some(Bears::Well),
            _ => None,
        });
        bears.map(|bears| (at, bears)).collect()
    };
    match &bearing.entry.fact {
        Fact::PreTripSection(section) => of_answers(&section.answers),
        Fact::EndOfDay(report) => of_answers(&report.defects),
        Fact::TopUp(top_up) => {
            let found = Fluids::common_practice().ok().and_then(|f| f.finding_of_top_up(top_up.fluid));
            let of_it = found.filter(|found| found.item == item.id && found.word == word);
            of_it.map(|_| (at, Bears::PutRight)).into_iter().collect()
        }
        _ => Vec::new(),
    }
}
