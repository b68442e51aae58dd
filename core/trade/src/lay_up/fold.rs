//! From lay-ups and returns to spells: laid up since when, which lines are open, back when.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::list::ReturnList;
use crate::Tenths;
use crate::record::ReturnHow;

type Moment = DateTime<FixedOffset>;

/// A set was put away, as it is recorded. Voided entries are left out by the caller.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PutAway {
    /// When.
    pub at: Moment,
    /// The entry.
    pub entry: Uuid,
    /// Who; `None` when nobody is named.
    pub person: Option<Uuid>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
    /// What was done before.
    pub done: Option<String>,
}

/// Lines of the list that somebody answered.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Returning {
    /// When.
    pub at: Moment,
    /// The entry.
    pub entry: Uuid,
    /// Who; `None` answers no line: a line is done or waived by name.
    pub person: Option<Uuid>,
    /// The lay-up whose list it answers; `None` for the newest before it.
    pub lay_up: Option<Uuid>,
    /// Each line by its id, done or waived, and why.
    pub lines: Vec<(String, ReturnHow, Option<String>)>,
}

/// One answer to a line.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct LineAnswer {
    /// When; never before the lay-up it answers, whatever the signer's clock showed.
    pub at: Moment,
    /// The entry.
    pub entry: Uuid,
    /// Who.
    pub person: Uuid,
    /// Done, or waived.
    pub how: ReturnHow,
    /// Why; always there when it was waived.
    pub reason: Option<String>,
}

/// Where a line stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LineStanding {
    /// Everybody who answered it did it.
    Done,
    /// Somebody waived it.
    Waived,
    /// Nobody answered it.
    Open,
}

/// A line of a spell's list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LineNow {
    /// Its id.
    pub line: String,
    /// Every answer, in order of time.
    pub answers: Vec<LineAnswer>,
}

impl LineNow {
    /// Where it stands: the worse of what was answered.
    pub fn standing(&self) -> LineStanding {
        let said = self.answers.iter().map(|answer| match answer.how {
            ReturnHow::Done => LineStanding::Done,
            ReturnHow::Waived => LineStanding::Waived,
        });
        said.max().unwrap_or(LineStanding::Open)
    }
}

/// The list was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Returned {
    /// When its last line was answered.
    pub at: Moment,
    /// The entry that answered it.
    pub entry: Uuid,
    /// Who.
    pub person: Uuid,
}

/// A time in which the set was laid up: from a lay-up to the last line of the newest lay-up's list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Spell {
    /// Its first lay-up's own time.
    pub since: Moment,
    /// That entry.
    pub entry: Uuid,
    /// Who put it away.
    pub person: Option<Uuid>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
    /// What was done before, in the words of each lay-up.
    pub done: Vec<String>,
    /// The newest lay-up: the one whose list stands.
    pub newest: Uuid,
    /// Its list, every line.
    pub lines: Vec<LineNow>,
    /// When the list was done; `None` while it is not.
    pub returned: Option<Returned>,
}

impl Spell {
    /// Lines nobody answered.
    pub fn open_lines(&self) -> usize {
        self.lines.iter().filter(|line| line.answers.is_empty()).count()
    }
}

/// The spells that lay-ups and returns add up to, oldest first: the same whatever order they are given in.
///
/// A lay-up within a spell opens the list anew. Of one moment a return comes before a lay-up: what stands after it
/// is the lock.
pub fn spells(away: &[PutAway], back: &[Returning], list: &ReturnList) -> Vec<Spell> {
    let mut away: Vec<&PutAway> = away.iter().collect();
    away.sort();
    away.dedup();
    let mut back: Vec<(Moment, &Returning)> =
        back.iter().map(|returning| (moment(returning, &away), returning)).collect();
    back.sort();
    back.dedup();
    let mut back = back.into_iter().peekable();
    let mut spells: Vec<Spell> = Vec::new();
    for put in away {
        while let Some((at, returning)) = back.next_if(|(at, named)| {
            // Whoever names a lay-up has seen it: it comes after that one, even of the same moment.
            *at < put.at || (*at == put.at && named.lay_up != Some(put.entry))
        }) {
            answer(&mut spells, at, returning);
        }
        match spells.last_mut().filter(|spell| spell.returned.is_none()) {
            Some(spell) => spell.again(put, list),
            None => spells.push(Spell::begin(put, list)),
        }
    }
    for (at, returning) in back {
        answer(&mut spells, at, returning);
    }
    spells
}

/// The moment a return counts from: never before the lay-up it names.
fn moment(returning: &Returning, away: &[&PutAway]) -> Moment {
    let named = away.iter().find(|put| Some(put.entry) == returning.lay_up);
    named.map_or(returning.at, |put| returning.at.max(put.at))
}

fn answer(spells: &mut [Spell], at: Moment, returning: &Returning) {
    let Some(person) = returning.person else { return };
    // A list that a later lay-up opened anew is answered no more.
    let spell = match returning.lay_up {
        Some(named) => spells.iter_mut().find(|spell| spell.newest == named),
        None => spells.last_mut(),
    };
    let Some(spell) = spell else { return };
    for (id, how, reason) in &returning.lines {
        let reason = reason.as_deref().map(str::trim).filter(|reason| !reason.is_empty());
        if *how == ReturnHow::Waived && reason.is_none() {
            continue;
        }
        if let Some(line) = spell.lines.iter_mut().find(|line| line.line == *id) {
            let reason = reason.map(str::to_owned);
            line.answers.push(LineAnswer { at, entry: returning.entry, person, how: *how, reason });
        }
    }
    if spell.returned.is_none() && spell.open_lines() == 0 {
        spell.returned = Some(Returned { at, entry: returning.entry, person });
    }
}

impl Spell {
    fn begin(put: &PutAway, list: &ReturnList) -> Spell {
        Spell {
            since: put.at,
            entry: put.entry,
            person: put.person,
            hours: put.hours,
            done: put.done.iter().cloned().collect(),
            newest: put.entry,
            lines: opened(list),
            returned: None,
        }
    }

    fn again(&mut self, put: &PutAway, list: &ReturnList) {
        self.newest = put.entry;
        self.hours = put.hours.or(self.hours);
        self.done.extend(put.done.iter().cloned());
        self.lines = opened(list);
    }
}

fn opened(list: &ReturnList) -> Vec<LineNow> {
    list.lines.iter().map(|line| LineNow { line: line.id.clone(), answers: Vec::new() }).collect()
}
