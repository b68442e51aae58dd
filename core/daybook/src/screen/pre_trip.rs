//! Where a unit's pre-trip stands now: the same rule (R9) as the shop's day sheet.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::day::{Coverage, EndOfDay, PreTrip, coverages};
use sumpbook_trade::{EntryId, FactKind, PersonId, Stamp, TruckId};
use uuid::Uuid;

use super::defect_row::name;
use super::main_act::MainAct;
use crate::draft::Draft;
use crate::fleet::Fleet;
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};
use crate::store::FactRow;

/// Where the pre-trip stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PreTripNow {
    /// None covers this moment.
    NotStarted,
    /// Begun on this phone, not signed.
    UnderWay {
        /// The draft.
        draft: EntryId,
        /// By whom.
        by: Option<String>,
        /// Label of the stop reached; none before the first.
        stop: Option<String>,
        /// That stop's place in the unit's own walk, 1 first; none of a draft that an older version kept.
        at: Option<u32>,
        /// Lines answered.
        answered: u32,
    },
    /// Signed, and it covers this moment.
    Covers {
        /// Its entry.
        entry: EntryId,
        /// By whom.
        by: Option<String>,
        /// Its signature.
        from: Stamp,
        /// Until when without an end-of-day report.
        to: Stamp,
        /// The person who asks has signed one that covers this moment.
        own: bool,
    },
    /// The day's work was reported as ended.
    Ended {
        /// The end-of-day report.
        entry: EntryId,
        /// By whom.
        by: Option<String>,
        /// When.
        at: Stamp,
    },
}

impl PreTripNow {
    /// Key of its words.
    pub fn text_key(&self) -> &'static str {
        match self {
            PreTripNow::NotStarted => "pre-trip-not-started",
            PreTripNow::UnderWay { .. } => "pre-trip-under-way",
            PreTripNow::Covers { .. } => "pre-trip-covers",
            PreTripNow::Ended { .. } => "pre-trip-ended",
        }
    }

    pub(super) fn of(
        ledger: &Ledger,
        truck: TruckId,
        drafts: &[Draft],
        person: PersonId,
        now: Stamp,
    ) -> Result<PreTripNow, LedgerError> {
        match PreTripNow::under_way(ledger.fleet(), truck, drafts) {
            Some(under_way) => Ok(under_way),
            None => Ok(PreTripNow::signed(ledger.fleet(), &Days::of(ledger, truck, now)?, person, now)),
        }
    }

    /// Where it stands by a draft; none: there is no draft of it.
    pub(super) fn under_way(fleet: &Fleet, truck: TruckId, drafts: &[Draft]) -> Option<PreTripNow> {
        let walk = drafts.iter().find_map(|draft| match draft {
            Draft::PreTrip(walk) if walk.unit == truck => Some(walk),
            _ => None,
        });
        walk.map(|walk| PreTripNow::UnderWay {
            draft: walk.id,
            by: name(fleet, walk.person.0),
            stop: walk.stop.clone(),
            at: walk.position,
            answered: super::news::count(walk.answers.len()),
        })
    }

    /// Where it stands by what was signed.
    pub(super) fn signed(fleet: &Fleet, days: &Days, person: PersonId, now: Stamp) -> PreTripNow {
        if let Some(span) = days.covering(now) {
            return PreTripNow::Covers {
                entry: EntryId(span.entry),
                by: name(fleet, span.person),
                from: span.from.into(),
                to: span.to.into(),
                own: days.covering_all(now).any(|span| span.person == person.0),
            };
        }
        let today = fleet.yard_day(now);
        let ended = days.ends.iter().filter(|end| fleet.yard_day(end.at.into()) == today);
        match ended.max_by_key(|end| (end.at, end.entry)) {
            Some(end) => PreTripNow::Ended {
                entry: EntryId(end.entry),
                by: name(fleet, end.person),
                at: end.at.into(),
            },
            None => PreTripNow::NotStarted,
        }
    }

    /// What a unit's main button does for a person in this state: the core picks.
    pub(super) fn main(&self, truck: TruckId, drafts: &[Draft], person: PersonId) -> MainAct {
        match self {
            PreTripNow::UnderWay { draft, stop, at, .. } => {
                MainAct::GoOn { draft: *draft, stop: stop.clone(), at: *at }
            }
            // A second driver does not drive on the first one's word: he reads that record and walks a short one.
            PreTripNow::Covers { entry, own: false, .. } => MainAct::TakeOver { after: *entry },
            PreTripNow::Covers { .. } => MainAct::ReportEndOfDay {
                draft: drafts
                    .iter()
                    .filter(|draft| draft.unit() == truck && draft.person() == person)
                    .find(|draft| matches!(draft, Draft::EndOfDay(_)))
                    .map(Draft::id),
            },
            PreTripNow::NotStarted | PreTripNow::Ended { .. } => MainAct::StartPreTrip,
        }
    }
}

/// Walks and reports of a unit around a moment.
#[derive(Default)]
pub(super) struct Days {
    spans: Vec<Coverage>,
    ends: Vec<EndOfDay>,
}

impl Days {
    /// Those of today, yesterday and tomorrow by the yard's days.
    pub(super) fn of(ledger: &Ledger, truck: TruckId, now: Stamp) -> Result<Days, LedgerError> {
        let day = day_number(ledger.fleet().yard_day(now));
        Days::by(ledger, ledger.store().truth().facts_of_unit_days(truck, day - 1, day + 1)?)
    }

    /// The same of every unit that has any, in one question.
    pub(super) fn of_all(ledger: &Ledger, now: Stamp) -> Result<BTreeMap<TruckId, Days>, LedgerError> {
        let day = day_number(ledger.fleet().yard_day(now));
        let kinds = [FactKind::PreTripSection.code(), FactKind::EndOfDay.code()];
        let mut facts: BTreeMap<TruckId, Vec<FactRow>> = BTreeMap::new();
        for fact in ledger.store().truth().facts_of_days_of(day - 1, day + 1, kinds)? {
            if let Some(truck) = fact.truck {
                facts.entry(truck).or_default().push(fact);
            }
        }
        facts.into_iter().map(|(truck, facts)| Ok((truck, Days::by(ledger, facts)?))).collect()
    }

    fn by(ledger: &Ledger, facts: Vec<FactRow>) -> Result<Days, LedgerError> {
        let (mut walks, mut ends) = (Vec::new(), Vec::new());
        for fact in facts {
            let Some(at) = moment(ledger, &fact) else { continue };
            let (entry, person) = (fact.id.0, fact.person.map_or(Uuid::nil(), |p| p.0));
            if fact.judged != Judged::Counts {
                continue;
            }
            match FactKind::from_code(fact.kind) {
                FactKind::PreTripSection if ledger.ends_a_walk(&fact)? => {
                    walks.push(PreTrip { signed_at: at, entry, person });
                }
                FactKind::EndOfDay => ends.push(EndOfDay { at, entry, person }),
                _ => {}
            }
        }
        Ok(Days { spans: coverages(&walks, &ends, ledger.fleet().numbers.covers()), ends })
    }

    /// The newest walk that covers a moment. The moment of its own end is over.
    pub(super) fn covering(&self, now: Stamp) -> Option<&Coverage> {
        self.covering_all(now).next()
    }

    /// Every walk that covers a moment, newest first.
    fn covering_all(&self, now: Stamp) -> impl Iterator<Item = &Coverage> {
        let now = now.moment();
        self.spans.iter().rev().filter(move |span| span.from <= now && now < span.to)
    }
}

fn moment(ledger: &Ledger, fact: &FactRow) -> Option<DateTime<FixedOffset>> {
    let at = DateTime::from_timestamp_millis(fact.at_ms)?;
    Some(at.with_timezone(&ledger.fleet().zone).fixed_offset())
}
