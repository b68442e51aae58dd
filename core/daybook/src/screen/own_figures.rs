//! A person's own figures, which he sees before anybody else does: patterns over his last walks, never one morning.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Template;
use sumpbook_trade::record::{AnswerKind, PreTripSection};
use sumpbook_trade::{Entry, Fact, FactKind, PersonId, Stamp, Unit};

use super::defect_row::name;
use super::news::count;
use super::signing::was_quick;
use crate::draft::GLASS;
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};

/// Walks the figures are of: fewer are no pattern.
const WALKS: usize = 20;
/// Days looked back for what the crew does.
const CREW_DAYS: i32 = 60;

/// A person's own figures, out of what this phone holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OwnFigures {
    /// Whose.
    pub person: Option<String>,
    /// Walks they are of, at most 20, the newest.
    pub walks: u32,
    /// Of so many a pattern would be told.
    pub of: u32,
    /// Middle of their times, seconds; short walks of a second driver left out.
    pub median_s: Option<u32>,
    /// The same of everybody's walks of the last 60 days on this phone.
    pub crew_median_s: Option<u32>,
    /// Marked "quick".
    pub quick: u32,
    /// Signed with the own PIN.
    pub with_pin: u32,
    /// Defects found.
    pub defects: u32,
    /// Lines that could not be checked.
    pub could_not_check: u32,
    /// Hours given, and how many of them end in .0.
    pub hours: u32,
    /// See `hours`.
    pub hours_end_in_0: u32,
    /// Glass levels given, and how many of them are exactly 50 %.
    pub glass: u32,
    /// See `glass`.
    pub glass_at_50: u32,
}

/// A person's own figures.
///
/// # Errors
/// As reading the store.
pub fn own_figures(
    ledger: &Ledger,
    person: PersonId,
    template: &Template,
    now: Stamp,
) -> Result<OwnFigures, LedgerError> {
    let walks = walks_of(ledger, person)?;
    let whole = |section: &PreTripSection| section.complete && section.follows.is_none();
    let times = walks.iter().filter(|(_, section)| whole(section)).filter_map(|(_, section)| section.seconds);
    let quick = walks.iter().filter(|(entry, section)| {
        let truck = entry.unit.and_then(|unit| ledger.fleet().trucks.get(&unit));
        was_quick(section, truck.map(|truck| &truck.features), template)
    });
    let answers = || walks.iter().flat_map(|(_, section)| &section.answers);
    let of = |kind: AnswerKind| count(answers().filter(|answer| answer.answer == kind).count());
    let hours: Vec<i64> = walks.iter().filter_map(|(entry, _)| entry.hours).map(|hours| hours.0).collect();
    let glass: Vec<f64> = answers()
        .filter(|answer| answer.item == GLASS)
        .flat_map(|answer| &answer.figures)
        .filter(|given| given.figure.unit == Unit::Percent)
        .filter_map(|given| given.figure.value_text().parse().ok())
        .collect();
    Ok(OwnFigures {
        person: name(ledger.fleet(), person.0),
        walks: count(walks.len()),
        of: count(WALKS),
        median_s: median(times.collect()),
        crew_median_s: crew_median(ledger, now, whole)?,
        quick: count(quick.count()),
        with_pin: count(walks.iter().filter(|(entry, _)| entry.pin_given).count()),
        defects: of(AnswerKind::Defect),
        could_not_check: of(AnswerKind::CouldNotCheck),
        hours_end_in_0: count(hours.iter().filter(|tenths| *tenths % 10 == 0).count()),
        hours: count(hours.len()),
        glass_at_50: count(glass.iter().filter(|percent| **percent == 50.0).count()),
        glass: count(glass.len()),
    })
}

/// The newest walks a person signed.
fn walks_of(ledger: &Ledger, person: PersonId) -> Result<Vec<(Entry, PreTripSection)>, LedgerError> {
    let truth = ledger.store().truth();
    let kind = FactKind::PreTripSection.code().unwrap_or(0);
    let mut walks = Vec::new();
    for fact in truth.newest_of_person(person, kind, WALKS)? {
        if fact.judged != Judged::Counts {
            continue;
        }
        let entry = truth.entry(fact.n)?.and_then(|held| Entry::from_payload(&held.row.payload).ok());
        let Some(entry) = entry else { continue };
        if let Fact::PreTripSection(section) = entry.fact.clone() {
            walks.push((entry, section));
        }
    }
    Ok(walks)
}

fn crew_median(
    ledger: &Ledger,
    now: Stamp,
    whole: impl Fn(&PreTripSection) -> bool,
) -> Result<Option<u32>, LedgerError> {
    let today = day_number(ledger.fleet().yard_day(now));
    let kinds: Vec<u16> = FactKind::PreTripSection.code().into_iter().collect();
    let told = ledger.store().truth().told_on_days(today - CREW_DAYS, today, &kinds)?;
    let times = told.into_iter().filter_map(|(_, payload)| {
        let entry = Entry::from_payload(&payload?).ok()?;
        match entry.fact {
            Fact::PreTripSection(section) if whole(&section) => section.seconds,
            _ => None,
        }
    });
    Ok(median(times.collect()))
}

/// The middle of some times; of an even number of them what lies between the two. None of none.
pub fn median(mut all: Vec<u32>) -> Option<u32> {
    all.sort_unstable();
    let middle = all.len() / 2;
    let upper = *all.get(middle)?;
    match all.len() % 2 {
        1 => Some(upper),
        _ => all.get(middle.checked_sub(1)?).map(|lower| lower.midpoint(upper)),
    }
}

#[cfg(test)]
mod tests {
    use super::median;

    #[test]
    fn the_middle_of_an_even_number_lies_between_the_two() {
        assert_eq!(median(vec![]), None);
        assert_eq!(median(vec![400]), Some(400));
        assert_eq!(median(vec![500, 420, 430]), Some(430));
        assert_eq!(median(vec![420, 440, 500, 60]), Some(430));
    }
}
