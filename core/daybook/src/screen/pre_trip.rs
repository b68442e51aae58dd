//! Where a unit's pre-trip stands now: the same rule (R9) as the shop's day sheet.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::day::{Coverage, EndOfDay, PreTrip, coverages};
use sumpbook_trade::{EntryId, FactKind, PersonId, Stamp, TruckId};
use uuid::Uuid;

use super::defect_row::name;
use super::main_act::MainAct;
use crate::draft::Draft;
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
        let fleet = ledger.fleet();
        let walk = drafts.iter().find_map(|draft| match draft {
            Draft::PreTrip(walk) if walk.unit == truck => Some(walk),
            _ => None,
        });
        if let Some(walk) = walk {
            return Ok(PreTripNow::UnderWay {
                draft: walk.id,
                by: name(fleet, walk.person.0),
                stop: walk.stop.clone(),
                at: walk.position,
                answered: super::news::count(walk.answers.len()),
            });
        }
        let days = Days::of(ledger, truck, now)?;
        if let Some(span) = days.covering(now) {
            return Ok(PreTripNow::Covers {
                entry: EntryId(span.entry),
                by: name(fleet, span.person),
                from: span.from.into(),
                to: span.to.into(),
                own: days.covering_all(now).any(|span| span.person == person.0),
            });
        }
        let today = fleet.yard_day(now);
        let ended = days.ends.iter().filter(|end| fleet.yard_day(end.at.into()) == today);
        Ok(match ended.max_by_key(|end| (end.at, end.entry)) {
            Some(end) => PreTripNow::Ended {
                entry: EntryId(end.entry),
                by: name(fleet, end.person),
                at: end.at.into(),
            },
            None => PreTripNow::NotStarted,
        })
    }

    /// What a unit's main button does in this state: the core picks.
    pub(super) fn main(&self, truck: TruckId, drafts: &[Draft]) -> MainAct {
        match self {
            PreTripNow::UnderWay { draft, stop, at, .. } => {
                MainAct::GoOn { draft: *draft, stop: stop.clone(), at: *at }
            }
            // A second driver does not drive on the first one's word: he reads that record and walks a short one.
            PreTripNow::Covers { entry, own: false, .. } => MainAct::TakeOver { after: *entry },
            PreTripNow::Covers { .. } => MainAct::ReportEndOfDay {
                draft: drafts
                    .iter()
                    .find(|draft| draft.unit() == truck && matches!(draft, Draft::EndOfDay(_)))
                    .map(Draft::id),
            },
            PreTripNow::NotStarted | PreTripNow::Ended { .. } => MainAct::StartPreTrip,
        }
    }
}

/// Walks and reports of a unit around a moment.
pub(super) struct Days {
    spans: Vec<Coverage>,
    ends: Vec<EndOfDay>,
}

impl Days {
    /// Those of today, yesterday and tomorrow by the yard's days.
    pub(super) fn of(ledger: &Ledger, truck: TruckId, now: Stamp) -> Result<Days, LedgerError> {
        let day = day_number(ledger.fleet().yard_day(now));
        let (mut walks, mut ends) = (Vec::new(), Vec::new());
        for fact in ledger.store().truth().facts_of_unit_days(truck, day - 1, day + 1)? {
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
