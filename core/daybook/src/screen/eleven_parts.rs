//! The eleven parts of the driver's report (49 CFR 396.11(a)(1)) out of the newest day on which somebody looked, and
//! the code by which a page of them is checked.

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use sumpbook_trade::checklist::{Answer as Told, Part, Severity, Template, plan, worst};
use sumpbook_trade::record::{Answer, AnswerKind, PreTripSection};
use sumpbook_trade::{Entry, Fact, FactKind, Figure, Stamp, TruckId};

use super::defect_row::name;
use crate::book::BookId;
use crate::gate::KeyId;
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError};

/// Sections looked through for the newest day.
const SECTIONS: i64 = 60;

/// Stops that somebody signed.
pub struct LookedAt {
    /// The entry.
    pub entry: Entry,
    /// What it answers.
    pub section: PreTripSection,
    /// The key of the phone it was signed on.
    pub key: KeyId,
}

/// What stands for one part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PartAnswer {
    /// As it should be.
    Ok,
    /// Something is wrong.
    Defect,
    /// It could not be looked at.
    CouldNotCheck,
    /// This unit has no such part.
    NotFitted,
    /// Nobody answered it.
    NotAnswered,
}

/// A figure given at an item of a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartFigure {
    /// The item.
    pub item: String,
    /// The figure.
    pub figure: Figure,
}

/// One part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartRow {
    /// Which: `i` to `xi`, and the text `part-...`.
    pub part: Part,
    /// The answer that stands: the worst.
    pub answer: PartAnswer,
    /// Who gave it.
    pub by: Option<String>,
    /// When.
    pub at: Option<Stamp>,
    /// Figures given at its items.
    pub figures: Vec<PartFigure>,
}

/// What was signed on the newest day on which somebody looked, up to a moment, the newest first: two people may have
/// looked, and the worse answer stands. It is of this truck; what it says of a set that stood there before is left out.
///
/// # Errors
/// As reading the store.
pub fn looked_at(ledger: &Ledger, unit: TruckId, upto_ms: i64) -> Result<Vec<LookedAt>, LedgerError> {
    let truth = ledger.store().truth();
    let fleet = ledger.fleet();
    let code = FactKind::PreTripSection.code().unwrap_or(0);
    let mut looked: Vec<LookedAt> = Vec::new();
    for fact in truth.newest_facts(unit, code, SECTIONS)? {
        if fact.judged != Judged::Counts || fact.at_ms > upto_ms {
            continue;
        }
        let Some(held) = truth.entry(fact.n)? else { continue };
        let Ok(entry) = Entry::from_payload(&held.row.payload) else { continue };
        let Fact::PreTripSection(mut section) = entry.fact.clone() else { continue };
        ledger.of_this_set(unit, &fact, &mut section);
        if looked.first().is_some_and(|last| fleet.yard_day(last.entry.at) != fleet.yard_day(entry.at)) {
            break;
        }
        looked.push(LookedAt { key: held.row.actor.key(), entry, section });
    }
    Ok(looked)
}

/// The eleven parts, in the rule's order.
pub fn eleven_parts(
    ledger: &Ledger,
    unit: TruckId,
    template: &Template,
    looked: &[LookedAt],
) -> Vec<PartRow> {
    let features = ledger.fleet().trucks.get(&unit).map(|truck| truck.features.clone()).unwrap_or_default();
    let asked = plan(template, &features);
    let has = |part: Part| {
        let lines = asked.iter().flat_map(|stop| &stop.lines);
        lines.filter_map(|line| template.item(&line.item)).any(|item| item.part == Some(part))
    };
    let row = |part: Part| match has(part) {
        true => part_row(ledger, template, part, looked),
        false => nothing(part, PartAnswer::NotFitted),
    };
    Part::ALL.into_iter().map(row).collect()
}

fn part_row(ledger: &Ledger, template: &Template, part: Part, looked: &[LookedAt]) -> PartRow {
    let of_part = |answer: &&Answer| template.item(&answer.item).is_some_and(|item| item.part == Some(part));
    let answers: Vec<(&LookedAt, &Answer)> = looked
        .iter()
        .flat_map(|of| of.section.answers.iter().filter(of_part).map(move |answer| (of, answer)))
        .collect();
    let Some(stands) = worst(answers.iter().map(|(_, answer)| told(answer))) else {
        return nothing(part, PartAnswer::NotAnswered);
    };
    let stands = kind(stands);
    // Whoever gave the answer that stands; of several the newest.
    let by = answers.iter().find(|(_, answer)| kind(told(answer)) == stands);
    let figures = answers.iter().flat_map(|(_, answer)| {
        let item = &answer.item;
        answer.figures.iter().map(|given| PartFigure { item: item.clone(), figure: given.figure })
    });
    PartRow {
        part,
        answer: stands,
        by: by.and_then(|(of, _)| of.entry.person.and_then(|person| name(ledger.fleet(), person.0))),
        at: by.map(|(of, _)| of.entry.at),
        figures: figures.collect(),
    }
}

fn nothing(part: Part, answer: PartAnswer) -> PartRow {
    PartRow { part, answer, by: None, at: None, figures: Vec::new() }
}

fn told(answer: &Answer) -> Told {
    match answer.answer {
        AnswerKind::Ok => Told::Ok,
        AnswerKind::Defect => Told::Defect(answer.severity.unwrap_or(Severity::Note)),
        AnswerKind::NotFitted => Told::NotFitted,
        AnswerKind::CouldNotCheck => Told::CouldNotCheck,
    }
}

fn kind(answer: Told) -> PartAnswer {
    match answer {
        Told::Ok => PartAnswer::Ok,
        Told::Defect(_) => PartAnswer::Defect,
        Told::CouldNotCheck => PartAnswer::CouldNotCheck,
        Told::NotFitted => PartAnswer::NotFitted,
    }
}

/// The code of a page about a unit: the first 8 bytes of SHA-256 over its door number, the moment and the heads of its
/// books, those of trucks its set stood on too, as "4F1A 9C02 77E0 B361". The shop, holding the same books, gets the
/// same.
///
/// # Errors
/// As reading the store.
pub fn check_code(ledger: &Ledger, unit: TruckId, now: Stamp) -> Result<String, LedgerError> {
    let truth = ledger.store().truth();
    let mut hash = Sha256::new();
    hash.update(ledger.fleet().door(unit).as_bytes());
    hash.update(now.unix_ms().to_be_bytes());
    let trucks = ledger.trucks_of_unit(unit);
    for book in truth.books()? {
        if matches!(book, BookId::Truck { truck, .. } if trucks.contains(&truck)) {
            for head in truth.heads(book)? {
                hash.update(head.0);
            }
        }
    }
    let all: [u8; 32] = hash.finalize().into();
    let pairs: Vec<String> =
        all.chunks(2).take(4).map(|two| two.iter().map(|b| format!("{b:02X}")).collect()).collect();
    Ok(pairs.join(" "))
}
