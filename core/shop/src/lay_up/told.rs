//! A lay-up and its list, as the unit's page and the command tell of it.

use chrono::{DateTime, FixedOffset};
use serde::Serialize;
use sumpbook_daybook::fleet::Fleet;
use sumpbook_trade::lay_up::{LineStanding, ReturnList, Spell};
use sumpbook_trade::record::ReturnHow;
use sumpbook_trade::{EntryId, PersonId, Stamp, Tenths, TruckId};
use uuid::Uuid;

/// A lay-up with its list; of a unit that is not laid up, the last one of the last weeks, or nothing of one.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct LaidUp {
    /// Door number.
    pub unit: String,
    /// It stands laid up; otherwise it is back.
    pub laid_up: bool,
    /// Since when.
    pub since: Option<Stamp>,
    /// Who put it away.
    pub by: Option<String>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
    /// What was done before, in the words of each lay-up.
    pub done: Vec<String>,
    /// Its list, every line.
    pub lines: Vec<LineTold>,
    /// When the last line was answered.
    pub back: Option<Stamp>,
    /// Who answered it.
    pub back_by: Option<String>,
    /// The entry that was just written, where one was.
    pub entry: Option<EntryId>,
}

/// One line of the list.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct LineTold {
    /// Its id: a key of the texts after `return-`.
    pub line: String,
    /// `done`, `waived`, `open`.
    pub state: &'static str,
    /// Every answer, in order of time.
    pub answers: Vec<AnswerTold>,
    /// The caution shown with it: a key of the texts after `caution-`.
    pub caution: Option<String>,
}

/// One answer.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct AnswerTold {
    /// When.
    pub at: Stamp,
    /// Who.
    pub who: String,
    /// Done, or waived.
    pub how: ReturnHow,
    /// Why.
    pub reason: Option<String>,
}

impl LaidUp {
    /// What is told of a spell; nothing of one where there is none.
    pub fn of(fleet: &Fleet, truck: TruckId, spell: Option<&Spell>, entry: Option<EntryId>) -> LaidUp {
        let stamp = |at: DateTime<FixedOffset>| Stamp::from(at.with_timezone(&fleet.zone).fixed_offset());
        let name = |person: Uuid| {
            let person = PersonId(person);
            fleet.person_name(person).map_or_else(|| person.to_string(), str::to_owned)
        };
        let list = ReturnList::common_practice().ok();
        let lines = spell.into_iter().flat_map(|spell| &spell.lines).map(|line| LineTold {
            line: line.line.clone(),
            state: match line.standing() {
                LineStanding::Done => "done",
                LineStanding::Waived => "waived",
                LineStanding::Open => "open",
            },
            answers: line
                .answers
                .iter()
                .map(|answer| AnswerTold {
                    at: stamp(answer.at),
                    who: name(answer.person),
                    how: answer.how,
                    reason: answer.reason.clone(),
                })
                .collect(),
            caution: list.and_then(|list| list.line(&line.line)).and_then(|item| item.caution.clone()),
        });
        let back = spell.and_then(|spell| spell.returned);
        LaidUp {
            unit: fleet.door(truck),
            laid_up: spell.is_some_and(|spell| spell.returned.is_none()),
            since: spell.map(|spell| stamp(spell.since)),
            by: spell.and_then(|spell| spell.person).map(name),
            hours: spell.and_then(|spell| spell.hours),
            done: spell.map_or_else(Vec::new, |spell| spell.done.clone()),
            lines: lines.collect(),
            back: back.map(|back| stamp(back.at)),
            back_by: back.map(|back| name(back.person)),
            entry,
        }
    }
}
