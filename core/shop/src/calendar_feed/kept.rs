//! What the feed last said of each task: so that its names stay, and its numbers only rise when the answer moves.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use data_encoding::BASE32_NOPAD;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::TaskClock;
use sumpbook_trade::{EntryId, Stamp, Tenths};

use crate::ShopError;
use crate::sheet::{Yard, day_number};

/// Everything the feed keeps.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Kept {
    /// The secret part of the feed's address; none when it was not made, or was ended.
    pub(super) token: Option<String>,
    /// Items by their steady names.
    pub(super) items: BTreeMap<String, Item>,
}

/// One task of one unit from one service to the next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Item {
    /// Door number.
    pub(super) unit: String,
    /// The task.
    pub(super) task: String,
    /// What the feed says of it.
    pub(super) answer: Answer,
    /// How often the answer moved.
    pub(super) sequence: u32,
    /// When it last moved.
    pub(super) moved: Stamp,
}

/// What the feed says: when this moves, so does the number.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Answer {
    /// The last good day.
    pub(super) day: NaiveDate,
    /// The hours ran out by that day, or likely will.
    pub(super) by_hours: bool,
    /// The hours likely run out on that day, at the pace of the last weeks: a forecast, and said so.
    #[serde(default)]
    pub(super) likely: bool,
    /// The oil calls for it since that day.
    #[serde(default)]
    pub(super) called: bool,
    /// Due at these hours as well.
    pub(super) due_hours: Option<Tenths>,
    /// What became of it.
    pub(super) ended: Option<Ended>,
}

/// How an item ended. It stays in the feed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Ended {
    /// The task was done on this day.
    Done(NaiveDate),
    /// The programme no longer has it, or the service it ran from was voided.
    Gone,
}

impl Kept {
    /// What was kept; nothing at first.
    pub(super) fn of(ledger: &Ledger) -> Result<Kept, ShopError> {
        match ledger.store().calendar()? {
            Some(bytes) => Ok(serde_json::from_slice(&bytes)?),
            None => Ok(Kept::default()),
        }
    }

    pub(super) fn bytes(&self) -> Result<Vec<u8>, ShopError> {
        Ok(serde_json::to_vec(self)?)
    }

    /// A new secret for the address: 160 bits.
    ///
    /// # Errors
    /// When the system has no randomness to give.
    pub(super) fn make_token(&mut self) -> Result<(), ShopError> {
        let mut secret = [0; 20];
        getrandom::fill(&mut secret).map_err(sumpbook_daybook::ledger::LedgerError::from)?;
        self.token = Some(BASE32_NOPAD.encode(&secret).to_lowercase());
        Ok(())
    }

    /// Works every answer out anew. Whether one moved is for the caller to see.
    pub(super) fn refresh(&mut self, ledger: &Ledger, now: Stamp) -> Result<(), ShopError> {
        let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
        let mut seen: BTreeSet<String> = BTreeSet::new();
        let mut done: BTreeMap<String, NaiveDate> = BTreeMap::new();
        for (door, truck) in yard.units(ledger)? {
            let state = ledger.unit_state(truck)?;
            if state.is_sold(yard.day) {
                continue;
            }
            for clock in &state.clocks {
                let stem = format!("{}.{}", truck.0.simple(), clock.task);
                if let Some(last) = clock.last {
                    done.insert(stem.clone(), last.day);
                }
                if clock.closed {
                    continue;
                }
                let since =
                    clock.last.map_or_else(|| "first".to_owned(), |last| last.entry.simple().to_string());
                let name = format!("{stem}.{since}");
                let before = self.items.get(&name).map(|item| item.answer.clone());
                // An open task of which no day can be told any more stands as it was last told.
                seen.insert(name.clone());
                let Some(answer) = answer(&yard, &state, clock, before.as_ref()) else { continue };
                self.say(name, &door, &clock.task.0, answer, now);
            }
        }
        let left: Vec<String> = self.items.keys().filter(|name| !seen.contains(*name)).cloned().collect();
        for name in left {
            let (stem, since) = name.rsplit_once('.').unwrap_or((name.as_str(), "first"));
            let began = began(ledger, since)?;
            // A service that counts no more never was: what ran from it is not done by an older one.
            let after = |day: &&NaiveDate| began.is_some_and(|began| began <= day_number(**day));
            let ended = done.get(stem).filter(after).map_or(Ended::Gone, |day| Ended::Done(*day));
            if let Some(item) = self.items.get(&name)
                // Once ended it stays as it ended, whatever is done later.
                && item.answer.ended.is_none()
            {
                let answer = Answer { ended: Some(ended), ..item.answer.clone() };
                let (unit, task) = (item.unit.clone(), item.task.clone());
                self.say(name, &unit, &task, answer, now);
            }
        }
        Ok(())
    }

    fn say(&mut self, name: String, unit: &str, task: &str, answer: Answer, now: Stamp) {
        let item = self.items.entry(name).or_insert_with(|| Item {
            unit: unit.to_owned(),
            task: task.to_owned(),
            answer: answer.clone(),
            sequence: 0,
            moved: now,
        });
        if item.answer != answer || item.unit != unit {
            item.unit = unit.to_owned();
            item.answer = answer;
            item.sequence = item.sequence.saturating_add(1);
            item.moved = now;
        }
    }
}

/// The yard's day, in days since 1970, of the service an item runs from; none where that service does not count.
fn began(ledger: &Ledger, since: &str) -> Result<Option<i32>, ShopError> {
    if since == "first" {
        return Ok(Some(i32::MIN));
    }
    let Ok(service) = uuid::Uuid::try_parse(since) else { return Ok(None) };
    let truth = ledger.store().truth();
    for held in truth.by_id(EntryId(service))? {
        if let Some(fact) = truth.fact(held.n)?.filter(|fact| fact.judged == Judged::Counts) {
            return Ok(Some(fact.day));
        }
    }
    Ok(None)
}

/// What is said of an open task; none when no day can be given.
fn answer(
    yard: &Yard,
    state: &sumpbook_daybook::state::UnitState,
    clock: &TaskClock,
    before: Option<&Answer>,
) -> Option<Answer> {
    let stands = state.stands(clock, yard.day, yard.cut(), yard.zone);
    let ran_out = stands.state.hours_left.is_some_and(|left| left.0 <= 0);
    let by_calendar = clock.due_day;
    let plain = |day| Answer {
        day,
        by_hours: false,
        likely: false,
        called: false,
        due_hours: clock.due_hours,
        ended: None,
    };
    if let Some(called) = stands.called {
        return Some(Answer { called: true, ..plain(yard.day_of(called.since)) });
    }
    if !ran_out {
        // Of a forecast only the likely day is an answer: its band moves with every reading.
        let likely = stands.runs_out.map(|out| out.likely);
        let first = likely.filter(|likely| by_calendar.is_none_or(|calendar| *likely < calendar));
        return match first {
            Some(day) => Some(Answer { by_hours: true, likely: true, ..plain(day) }),
            None => Some(plain(by_calendar?)),
        };
    }
    // The day on which a reading first showed it: later readings show it again and move nothing.
    let shown = before.filter(|before| before.by_hours && !before.likely).map(|before| before.day);
    let read = state.hours.due_at.map(|at| yard.day_of(at));
    let day = [by_calendar, shown.or(read)].into_iter().flatten().min()?;
    let by_hours = by_calendar.is_none_or(|calendar| day < calendar);
    Some(Answer { by_hours, ..plain(day) })
}
