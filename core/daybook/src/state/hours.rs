//! The unit's compressor hours, judged by R3.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::hours::{
    ExchangeRow, Hint, HoursLedger, JudgedReading, Part, Question, QuestionWhy, ReadingRow, Settlement,
    Verdict,
};
use sumpbook_trade::record::{Meter, Verdict as Decided};
use sumpbook_trade::{EntryId, Fact, Tenths, TruckId};
use uuid::Uuid;

use super::KEPT_DAYS;
use super::inputs::Bearing;
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, decision_about};
use crate::store::{FactRow, Truth};

/// One reading as it is shown.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReadingNow {
    /// Its entry.
    pub entry: EntryId,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// What the meter showed.
    pub figure: Tenths,
    /// Whether it counts.
    pub counts: bool,
    /// The most the meter could show then; none for the first.
    pub ceiling: Option<Tenths>,
    /// Whether a question about it is open.
    pub in_question: bool,
}

/// An open question about readings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct QuestionNow {
    /// Why it is asked: the rule's own word.
    pub why: String,
    /// Readings that stand for now.
    pub standing: Vec<ReadingNow>,
    /// Readings that dispute them.
    pub disputing: Vec<ReadingNow>,
    /// What may have happened, the likeliest first.
    pub hints: Vec<String>,
}

/// Hours as the unit's meter has them.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct HoursNow {
    /// The last accepted reading.
    pub last: Option<ReadingNow>,
    /// Hours the due list uses: spliced over meters; none while nothing was read.
    pub due: Option<Tenths>,
    /// When the reading behind them was taken.
    pub due_at: Option<DateTime<FixedOffset>>,
    /// While a dispute is open the higher figure is used.
    pub higher_of_disputed: bool,
    /// The figure stands on the far side of a jump nobody explained.
    pub across_unanswered_jump: bool,
    /// Hours of earlier meters, added to what this one shows.
    pub offset: Tenths,
    /// What a person must say something about.
    pub questions: Vec<QuestionNow>,
    /// Readings set aside in the last 45 days, newest first.
    pub struck: Vec<ReadingNow>,
}

impl Ledger {
    /// Every reading of a unit's compressor meter up to a moment, with what became of each (R3). Worked out
    /// from the entries, however old.
    ///
    /// # Errors
    /// As any read.
    pub fn hours_ledger(&self, truck: TruckId, upto_ms: i64) -> Result<HoursLedger, LedgerError> {
        ledger_of(self, truck, upto_ms)
    }
}

/// The ledger of a unit's compressor readings up to a moment.
pub(crate) fn ledger_of(ledger: &Ledger, truck: TruckId, upto_ms: i64) -> Result<HoursLedger, LedgerError> {
    let truth = ledger.store().truth();
    let bearing = super::inputs::bearing(&truth, truck, upto_ms)?;
    judged(ledger, &truth, truck, &bearing, upto_ms)
}

pub(super) fn judged(
    ledger: &Ledger,
    truth: &Truth<'_>,
    truck: TruckId,
    bearing: &[Bearing],
    upto_ms: i64,
) -> Result<HoursLedger, LedgerError> {
    let zone = ledger.fleet().zone;
    let moment = |ms: i64| {
        chrono::DateTime::from_timestamp_millis(ms).map(|at| at.with_timezone(&zone).fixed_offset())
    };
    let brought_in = |bearing: &Bearing| bearing.entry.source == sumpbook_trade::record::Source::BroughtIn;
    let brought: std::collections::HashSet<i64> =
        bearing.iter().filter(|b| brought_in(b)).map(|b| b.fact.n).collect();
    let mut decisions = BTreeMap::new();
    let mut readings = Vec::new();
    for fact in truth.hour_facts(truck, upto_ms)? {
        if fact.judged != Judged::Counts {
            continue;
        }
        if let (Some(figure), Some(at)) = (fact.hours, moment(fact.at_ms)) {
            readings.push(ReadingRow {
                entry: fact.id.0,
                at,
                figure,
                order: order_of(fact.id),
                source_brought_in: brought.contains(&fact.n),
            });
        }
        settle(truth, &fact, &mut decisions)?;
    }
    let exchanges: Vec<ExchangeRow> = bearing.iter().filter_map(exchange).collect();
    Ok(HoursLedger::judge(&readings, &exchanges, &decisions))
}

/// Two readings of one moment stand in the same order on every device: by their ids.
fn order_of(id: EntryId) -> u64 {
    (id.0.as_u128() >> 64) as u64
}

fn exchange(bearing: &Bearing) -> Option<ExchangeRow> {
    match &bearing.entry.fact {
        Fact::MeterExchange(exchange) if exchange.meter == Meter::Compressor => Some(ExchangeRow {
            entry: bearing.entry.id.0,
            at: bearing.entry.at.moment(),
            old_end: exchange.old_end,
            new_start: exchange.new_start,
            went_round: exchange.went_round,
        }),
        _ => None,
    }
}

fn settle(
    truth: &Truth<'_>,
    fact: &FactRow,
    decisions: &mut BTreeMap<Uuid, Settlement>,
) -> Result<(), LedgerError> {
    match decision_about(truth, fact.id)? {
        Some(Decided::Use | Decided::ReadingStands) => decisions.insert(fact.id.0, Settlement::Stands),
        Some(Decided::DoNotUse) => decisions.insert(fact.id.0, Settlement::DoesNotCount),
        Some(Decided::SameService) | None => None,
    };
    Ok(())
}

/// What is kept of a ledger.
pub(super) fn hours_now(ledger: &HoursLedger, newest_ms: i64) -> HoursNow {
    let due = ledger.for_due();
    let recent = newest_ms.saturating_sub(KEPT_DAYS.saturating_mul(86_400_000));
    let struck = ledger
        .rows()
        .iter()
        .rev()
        .filter(|row| {
            !row.verdict.counts() && row.part == Part::Reading && row.at.timestamp_millis() >= recent
        })
        .map(shown)
        .collect();
    HoursNow {
        last: ledger.last_accepted().map(shown),
        due: due.as_ref().map(|d| d.hours),
        due_at: due.as_ref().map(|d| d.at),
        higher_of_disputed: due.as_ref().is_some_and(|d| d.higher_of_disputed),
        across_unanswered_jump: due.as_ref().is_some_and(|d| d.across_unanswered_jump),
        offset: ledger.offset(),
        questions: ledger.open_questions().iter().map(|question| question_now(question, ledger)).collect(),
        struck,
    }
}

/// Whether a row is a figure someone read, and no end of a meter's life.
pub(super) fn is_reading(row: &JudgedReading) -> bool {
    row.part == Part::Reading
}

pub(super) fn shown(row: &JudgedReading) -> ReadingNow {
    ReadingNow {
        entry: EntryId(row.entry),
        at: row.at,
        figure: row.figure,
        counts: matches!(row.verdict, Verdict::Accepted | Verdict::AcceptedUnlike),
        ceiling: row.ceiling,
        in_question: row.in_question,
    }
}

fn question_now(question: &Question, ledger: &HoursLedger) -> QuestionNow {
    let of = |entries: &[Uuid]| {
        entries
            .iter()
            .filter_map(|entry| ledger.rows().iter().find(|row| row.entry == *entry))
            .map(shown)
            .collect()
    };
    QuestionNow {
        why: why_word(question.why).to_owned(),
        standing: of(&question.standing),
        disputing: of(&question.disputing),
        hints: question.hints.iter().map(hint_word).collect(),
    }
}

fn why_word(why: QuestionWhy) -> &'static str {
    match why {
        QuestionWhy::AboveCeiling => "above-ceiling",
        QuestionWhy::UnansweredJump => "unanswered-jump",
        QuestionWhy::Backwards => "backwards",
        QuestionWhy::Tie => "tie",
        QuestionWhy::SameMoment => "same-moment",
        QuestionWhy::OutvotedForNod => "outvoted",
        QuestionWhy::UnlikeThisUnit => "unlike-this-unit",
        QuestionWhy::BothStand => "both-stand",
    }
}

fn hint_word(hint: &Hint) -> String {
    match hint {
        Hint::TypedWrong { .. } => "typed-wrong".to_owned(),
        Hint::EarlierTypedWrong { .. } => "earlier-typed-wrong".to_owned(),
        Hint::WentRound { .. } => "went-round".to_owned(),
        Hint::MeterChanged => "meter-changed".to_owned(),
        Hint::OtherMeterOrTruck => "other-meter-or-truck".to_owned(),
    }
}
