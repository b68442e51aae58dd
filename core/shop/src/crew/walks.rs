//! Walks of everybody, and how much of the records is whose.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::screen::{median, was_quick};
use sumpbook_trade::record::{AnswerKind, PreTripSection, Source};
use sumpbook_trade::{Entry, Fact, FactKind, PersonId};

use super::{ENOUGH, percent};
use crate::ShopError;
use crate::paper::template;
use crate::sheet::{Yard, day_number};

/// What is counted as somebody's.
const COUNTED: [FactKind; 3] = [FactKind::PreTripSection, FactKind::EndOfDay, FactKind::TopUp];

/// Whole walks of everybody.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Walks {
    /// Signed whole, on phones and on paper.
    pub signed: usize,
    /// By so many people.
    pub people: usize,
    /// Of them on a phone, which knows how long they took.
    pub on_phones: usize,
    /// Of those, quick; none while there are fewer than 20: a few mornings are no pattern.
    pub quick: Option<usize>,
    /// The same in hundredths of those on phones.
    pub quick_percent: Option<u32>,
    /// Middle of their times, seconds, short walks of a second driver left out; none while there are fewer than 20.
    pub median_s: Option<u32>,
    /// Lines answered.
    pub lines: usize,
    /// Of them, lines that could not be checked.
    pub could_not_check: usize,
    /// Of them, defects.
    pub defects: usize,
}

/// How much of the records is somebody's.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct ShareRow {
    /// Who; none of the others together.
    pub who: Option<String>,
    /// So many people.
    pub people: usize,
    /// Whole walks.
    pub walks: usize,
    /// Reports at the end of a day.
    pub reports: usize,
    /// Top-ups.
    pub top_ups: usize,
    /// All three, in hundredths of everybody's.
    pub percent: u32,
}

impl ShareRow {
    fn all(&self) -> usize {
        self.walks.saturating_add(self.reports).saturating_add(self.top_ups)
    }

    fn add(&mut self, other: &ShareRow) {
        self.people = self.people.saturating_add(other.people);
        self.walks = self.walks.saturating_add(other.walks);
        self.reports = self.reports.saturating_add(other.reports);
        self.top_ups = self.top_ups.saturating_add(other.top_ups);
    }
}

pub(super) fn read(
    ledger: &Ledger,
    yard: &Yard,
    from: NaiveDate,
) -> Result<(Walks, Vec<ShareRow>, Option<ShareRow>), ShopError> {
    let kinds: Vec<u16> = COUNTED.iter().filter_map(|kind| kind.code()).collect();
    let told = ledger.store().truth().told_on_days(day_number(from), day_number(yard.day), &kinds)?;
    let entries = told.into_iter().filter_map(|(_, payload)| Entry::from_payload(&payload?).ok());
    let template = template(ledger)?;
    let (mut walks, mut times) = (Walks::default(), Vec::new());
    let (mut quick, mut walkers) = (0usize, BTreeSet::new());
    let mut of: BTreeMap<PersonId, ShareRow> = BTreeMap::new();
    for entry in entries.filter(|entry| entry.at.unix_ms() <= yard.cut_ms) {
        let mut own = ShareRow { people: 1, ..ShareRow::default() };
        match &entry.fact {
            Fact::PreTripSection(section) if section.complete => {
                own.walks = 1;
                walks.signed = walks.signed.saturating_add(1);
                walkers.extend(entry.person);
                lines(&mut walks, section);
                if entry.source == Source::Phone {
                    walks.on_phones = walks.on_phones.saturating_add(1);
                    times.extend(section.seconds.filter(|_| section.follows.is_none()));
                    let truck = entry.unit.and_then(|unit| ledger.fleet().trucks.get(&unit));
                    let is_quick = was_quick(section, truck.map(|truck| &truck.features), &template);
                    quick = quick.saturating_add(usize::from(is_quick));
                }
            }
            Fact::EndOfDay(_) => own.reports = 1,
            Fact::TopUp(_) => own.top_ups = 1,
            _ => continue,
        }
        let Some(person) = entry.person else { continue };
        match of.get_mut(&person) {
            Some(row) => row.add(&ShareRow { people: 0, ..own }),
            None => {
                of.insert(person, own);
            }
        }
    }
    walks.people = walkers.len();
    if walks.on_phones >= ENOUGH {
        (walks.quick, walks.quick_percent) = (Some(quick), percent(quick, walks.on_phones));
    }
    if times.len() >= ENOUGH {
        walks.median_s = median(times);
    }
    let (shares, others) = shares(ledger, yard, of);
    Ok((walks, shares, others))
}

fn lines(walks: &mut Walks, section: &PreTripSection) {
    let of = |kind: AnswerKind| section.answers.iter().filter(|answer| answer.answer == kind).count();
    walks.lines = walks.lines.saturating_add(section.answers.len());
    walks.could_not_check = walks.could_not_check.saturating_add(of(AnswerKind::CouldNotCheck));
    walks.defects = walks.defects.saturating_add(of(AnswerKind::Defect));
}

/// In the order of names, which ranks nobody.
fn shares(
    ledger: &Ledger,
    yard: &Yard,
    of: BTreeMap<PersonId, ShareRow>,
) -> (Vec<ShareRow>, Option<ShareRow>) {
    let all: usize = of.values().map(ShareRow::all).sum();
    let (mut rows, mut others) = (Vec::new(), ShareRow::default());
    for (person, row) in of {
        match yard.name(ledger, Some(person)).filter(|_| row.all() >= ENOUGH) {
            Some(name) => rows.push(ShareRow { who: Some(name), ..row }),
            None => others.add(&row),
        }
    }
    rows.sort_by(|a, b| a.who.cmp(&b.who));
    for row in rows.iter_mut().chain([&mut others]) {
        row.percent = percent(row.all(), all).unwrap_or_default();
    }
    (rows, Some(others).filter(|others| others.people > 0))
}
