//! What is missing or graded lower in a unit's records: stated before anything else, so that nothing is left out to
//! look better.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::Serialize;
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::fleet::Campaign;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::campaign::Hit;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::defect::DefectState;
use sumpbook_trade::record::{DriveWhat, ReturnHow, Source};
use sumpbook_trade::{Entry, EntryId, Fact, Stamp, TruckId};

use crate::ShopError;
use crate::sheet::{Yard, closings};
use crate::table_out::Of;

/// Days between two accepted readings after which it is a gap.
const LONG: i64 = 14;
/// So many cases are named one by one.
const NAMED: usize = 40;

/// One kind of gap of one unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Gap {
    /// Door number.
    pub unit: String,
    /// What: a key of the console's texts after `gap-`.
    pub what: &'static str,
    /// How many.
    pub count: usize,
    /// The cases, the first of them.
    pub cases: Vec<String>,
}

/// Every gap of these units, by unit.
///
/// # Errors
/// As any read.
pub fn gaps(
    ledger: &Ledger,
    of: Of<'_>,
    folder: &std::path::Path,
    now: Stamp,
) -> Result<Vec<Gap>, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let closed: BTreeSet<NaiveDate> = closings(ledger)?.into_iter().map(|(_, closed)| closed.day).collect();
    let mut all = Vec::new();
    for (door, truck) in yard.units(ledger)? {
        if of.holds(truck) {
            let mut found = Found { door, cases: BTreeMap::new() };
            of_unit(ledger, (&yard, &closed), truck, folder, &mut found)?;
            all.extend(found.gaps());
        }
    }
    Ok(all)
}

struct Found {
    door: String,
    cases: BTreeMap<(usize, &'static str), Vec<String>>,
}

/// The order in which gaps are told.
const ORDER: [&str; 24] = [
    "no-truck-serial",
    "no-set-serial",
    "task-never",
    "service-no-hours",
    "service-late",
    "campaign-open",
    "campaign-look",
    "reading-span",
    "hours-question",
    "use-without",
    "not-reported",
    "defect-open",
    "laid-up",
    "line-waived",
    "set-elsewhere",
    "note-unanswered",
    "brought-in",
    "paper",
    "invoice",
    "estimate",
    "no-pin",
    "photo-missing",
    "set-aside",
    "void",
];

impl Found {
    fn add(&mut self, what: &'static str, case: String) {
        let place = ORDER.iter().position(|known| *known == what).unwrap_or(ORDER.len());
        self.cases.entry((place, what)).or_default().push(case);
    }

    fn gaps(self) -> impl Iterator<Item = Gap> {
        let Found { door, cases } = self;
        cases.into_iter().map(move |((_, what), mut cases)| {
            let count = cases.len();
            cases.truncate(NAMED);
            Gap { unit: door.clone(), what, count, cases }
        })
    }
}

fn of_unit(
    ledger: &Ledger,
    (yard, closed): (&Yard, &BTreeSet<NaiveDate>),
    truck: TruckId,
    folder: &std::path::Path,
    found: &mut Found,
) -> Result<(), ShopError> {
    let fleet = ledger.fleet();
    if fleet.trucks.get(&truck).is_none_or(|truck| truck.serial.is_none()) {
        found.add("no-truck-serial", String::new());
    }
    if fleet.set_on(truck).is_none_or(|set| set.serial.is_none()) {
        found.add("no-set-serial", String::new());
    }
    let when = |at: Stamp| yard.stamp(at.moment()).moment().format("%Y-%m-%d %H:%M").to_string();
    let days = entries(ledger, yard, truck, folder, found)?;
    let state = ledger.unit_state(truck)?;
    // A day that is not over may still be told of.
    let over = closed.range(..yard.day);
    for day in over.filter(|day| days.is_silent(**day) && is_expected_out(ledger, &state, **day)) {
        found.add("not-reported", day.to_string());
    }
    for clock in state.clocks.iter().filter(|clock| clock.last.is_none() && clock.first_of.is_none()) {
        match clock.task.campaign() {
            Some(name) => {
                let day = clock.due_day.map_or_else(String::new, |day| day.to_string());
                found.add("campaign-open", format!("{name} - {day}"));
            }
            None => found.add("task-never", clock.task.to_string()),
        }
    }
    for now in state.campaigns.iter().filter(|now| matches!(now.is, Hit::Look(_)) && now.done.is_none()) {
        let what = fleet.campaigns.get(&now.task).and_then(Campaign::now);
        if let Some(what) = what.filter(|what| what.withdrawn.is_none()) {
            found.add("campaign-look", what.task.campaign().unwrap_or_default().to_owned());
        }
    }
    for question in &state.hours.questions {
        let figures =
            question.standing.iter().chain(&question.disputing).map(|row| format!("{} h", row.figure));
        found.add("hours-question", figures.collect::<Vec<_>>().join(" / "));
    }
    for note in state.notes.iter().filter(|note| note.answered.first.is_none()) {
        found.add("note-unanswered", format!("{} {}", when(Stamp::from(note.at)), note.as_shown));
    }
    for spell in state.lay_ups.iter().filter(|spell| spell.returned.is_none()) {
        found.add("laid-up", when(Stamp::from(spell.since)));
    }
    if let Some(disagrees) = state.set_disagrees(fleet) {
        found.add("set-elsewhere", when(Stamp::from(disagrees.told.at)));
    }
    let mut last: Option<Stamp> = None;
    for row in ledger.every_reading(truck)?.iter().filter(|row| row.counts) {
        let at = Stamp::from(row.at);
        if let Some(before) = last {
            let days = at.unix_ms().saturating_sub(before.unix_ms()) / 86_400_000;
            if days > LONG {
                found.add("reading-span", format!("{} - {} ({days} d)", when(before), when(at)));
            }
        }
        last = Some(at);
    }
    if let Some(before) = last {
        let now = Stamp::from(yard.cut());
        let days = now.unix_ms().saturating_sub(before.unix_ms()) / 86_400_000;
        if days > LONG {
            found.add("reading-span", format!("{} - {} ({days} d)", when(before), when(now)));
        }
    }
    for defect in ledger.every_defect(truck)?.iter().filter(|defect| defect.state == DefectState::Open) {
        found.add("defect-open", format!("{} {}", when(Stamp::from(defect.since)), defect.item));
    }
    Ok(())
}

fn entries(
    ledger: &Ledger,
    yard: &Yard,
    truck: TruckId,
    folder: &std::path::Path,
    found: &mut Found,
) -> Result<Days, ShopError> {
    let truth = ledger.store().truth();
    let mut days = Days::default();
    for book in truth
        .books()?
        .into_iter()
        .filter(|book| matches!(book, BookId::Truck { truck: of, .. } if *of == truck))
    {
        for held in truth.of_book(book)? {
            let judged = truth.fact(held.n)?.map_or(Judged::Unreadable, |fact| fact.judged);
            let Ok(entry) = Entry::from_payload(&held.row.payload) else { continue };
            let day = ledger.fleet().yard_day(entry.at);
            let case =
                || format!("{} {}", yard.stamp(entry.at.moment()), crate::sheet::key(&entry.fact.kind()));
            match judged {
                Judged::Counts => {}
                Judged::Void | Judged::LeftOut => found.add("void", case()),
                _ => found.add("set-aside", case()),
            }
            match entry.source {
                Source::BroughtIn => found.add("brought-in", case()),
                Source::Paper => found.add("paper", case()),
                Source::Invoice => found.add("invoice", case()),
                Source::Estimate => found.add("estimate", case()),
                Source::Phone | Source::Shop => {}
            }
            let inspected =
                matches!(entry.fact, Fact::PreTripSection(_) | Fact::EndOfDay(_) | Fact::Review(_));
            if inspected && !entry.pin_given {
                found.add("no-pin", case());
            }
            match &entry.fact {
                Fact::ServiceDone(_) => service(ledger, truck, &entry, case(), found)?,
                Fact::ReturnToService(said) if judged == Judged::Counts => {
                    let waived = said.lines.iter().filter(|line| line.how == ReturnHow::Waived);
                    waived.for_each(|line| found.add("line-waived", format!("{} {}", case(), line.line)));
                }
                Fact::StartAir(_) => {
                    days.used.insert(day);
                }
                Fact::Drive(drive) if drive.what == DriveWhat::LeftYard => {
                    days.used.insert(day);
                }
                Fact::PreTripSection(_) if judged == Judged::Counts => {
                    days.walked.insert(day);
                }
                _ => {}
            }
            for photo in truth.photos_named_by(held.n)? {
                if !folder.join(crate::photo_files::FOLDER).join(photo.to_string()).is_file() {
                    found.add("photo-missing", photo.to_string());
                }
            }
        }
    }
    for day in days.used.iter().filter(|day| !days.is_walked(**day)) {
        found.add("use-without", day.to_string());
    }
    Ok(days)
}

/// Days of the yard on which a unit was used, and on which it was walked round.
#[derive(Default)]
struct Days {
    used: BTreeSet<NaiveDate>,
    walked: BTreeSet<NaiveDate>,
}

impl Days {
    /// A walk stands on the day, or on the one before: a night that began the evening before is covered from there (R9).
    fn is_walked(&self, day: NaiveDate) -> bool {
        self.walked.contains(&day) || self.walked.contains(&day.pred_opt().unwrap_or(day))
    }

    /// Neither a walk nor a use is on record.
    fn is_silent(&self, day: NaiveDate) -> bool {
        !self.used.contains(&day) && !self.is_walked(day)
    }
}

/// Whether somebody expected the unit out on a day: it is down as out, and its set was not put away then.
fn is_expected_out(ledger: &Ledger, state: &UnitState, day: NaiveDate) -> bool {
    let on = |at| ledger.fleet().yard_day(Stamp::from(at));
    let away = state
        .lay_ups
        .iter()
        .any(|spell| on(spell.since) <= day && spell.returned.is_none_or(|returned| on(returned.at) > day));
    matches!(state.status_on(day), Some((DayStatus::Out, _))) && !away
}

fn service(
    ledger: &Ledger,
    truck: TruckId,
    entry: &Entry,
    case: String,
    found: &mut Found,
) -> Result<(), ShopError> {
    if entry.hours.is_none() {
        found.add("service-no-hours", case.clone());
    }
    // What an older binder does not tell may have been done all the same: before the first service that is known of a
    // task nobody knows how long it had run.
    let unknown: Vec<TaskId> = match entry.source {
        Source::BroughtIn => {
            let before = ledger.unit_state_at(truck, entry.at.unix_ms().saturating_sub(1))?;
            before.clocks.into_iter().filter(|clock| clock.last.is_none()).map(|clock| clock.task).collect()
        }
        _ => Vec::new(),
    };
    let then = ledger.unit_state_at(truck, entry.at.unix_ms())?;
    for clock in
        then.clocks.iter().filter(|clock| clock.last.is_some_and(|last| EntryId(last.entry) == entry.id))
    {
        let Some(late) = clock.late_by.filter(|_| !unknown.contains(&clock.task)) else { continue };
        let hours = late.hours.map(|hours| format!("{hours} h"));
        let days = late.days.map(|days| format!("{days} d"));
        let by: Vec<String> = [hours, days].into_iter().flatten().collect();
        found.add("service-late", format!("{case} {}: {}", clock.task, by.join(", ")));
    }
    Ok(())
}
