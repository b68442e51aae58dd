//! The unit's compressor hours, judged by R3.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, NaiveDate};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};
use sumpbook_trade::forecast::{HoursAt, Pace, pace};
use sumpbook_trade::hours::{
    Estimate, ExchangeRow, Hint, HoursLedger, JudgedReading, Part, Question, QuestionWhy, ReadingRow,
    Settlement, Verdict,
};
use sumpbook_trade::record::{HoursEstimate, Meter, Verdict as Decided};
use sumpbook_trade::{EntryId, Fact, FactKind, Tenths, TruckId};
use uuid::Uuid;

use super::KEPT_DAYS;
use super::counted::{self, CountedNow};
use super::inputs::{self, Bearing};
use super::scope::Scope;
use crate::fleet::Fleet;
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
    /// How it runs, from the readings of the last 60 days; none when the pace is unknown.
    pub pace: Option<Pace>,
    /// Signed estimates of hours no meter counted, oldest first. `due` holds their high figures.
    pub estimates: Vec<Estimate>,
    /// Of a unit without a meter: `due` is counted from its starts and stops, at most.
    pub counted: Option<CountedNow>,
}

/// The engine's or the PTO's own meter: judged by itself, it feeds no clock of the compressor.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OtherMeterNow {
    /// Which.
    pub meter: Meter,
    /// The last reading that counts.
    pub last: Option<ReadingNow>,
    /// Hours through all its meters.
    pub total: Option<Tenths>,
    /// Questions about its readings that are open.
    pub questions: u32,
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
    let scope = Scope::of(ledger.store().truth(), ledger.fleet(), truck);
    let bearing = scope.bearing(upto_ms)?;
    judged(&scope, &bearing, upto_ms)
}

pub(super) fn judged(
    scope: &Scope<'_>,
    bearing: &[Bearing],
    upto_ms: i64,
) -> Result<HoursLedger, LedgerError> {
    let zone = scope.fleet.zone;
    let moment = |ms: i64| {
        chrono::DateTime::from_timestamp_millis(ms).map(|at| at.with_timezone(&zone).fixed_offset())
    };
    let brought_in = |bearing: &Bearing| bearing.entry.source == sumpbook_trade::record::Source::BroughtIn;
    let brought: std::collections::HashSet<i64> =
        bearing.iter().filter(|b| brought_in(b)).map(|b| b.fact.n).collect();
    let mut decisions = BTreeMap::new();
    let mut readings = Vec::new();
    for fact in scope.hour_facts(upto_ms)? {
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
        settle(&scope.truth, &fact, &mut decisions)?;
    }
    let mut exchanges = Vec::new();
    for bearing in bearing {
        let Some(exchange) = exchange(bearing, Meter::Compressor) else { continue };
        exchanges.push(exchange);
        settle(&scope.truth, &bearing.fact, &mut decisions)?;
    }
    counted::judge(scope, upto_ms, (readings, exchanges, &decisions))
}

/// Two readings of one moment stand in the same order on every device: by their ids.
fn order_of(id: EntryId) -> u64 {
    (id.0.as_u128() >> 64) as u64
}

fn exchange(bearing: &Bearing, meter: Meter) -> Option<ExchangeRow> {
    match &bearing.entry.fact {
        Fact::MeterExchange(exchange) if exchange.meter == meter => Some(ExchangeRow {
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
pub(super) fn hours_now(ledger: &HoursLedger, newest_ms: i64, fleet: &Fleet) -> HoursNow {
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
        pace: pace(&readings(ledger), fleet.zone, fleet.numbers.forecast()).ok(),
        estimates: Vec::new(),
        counted: None,
    }
}

/// Whether a row is a figure someone read, and no end of a meter's life.
pub(super) fn is_reading(row: &JudgedReading) -> bool {
    row.part == Part::Reading
}

/// How many of the newest readings are looked through for those of other meters.
const LOOKED_THROUGH: i64 = 200;

/// The engine's and the PTO's meters, where anyone read them lately.
pub(super) fn other_meters(
    scope: &Scope<'_>,
    bearing: &[Bearing],
    upto_ms: i64,
) -> Result<Vec<OtherMeterNow>, LedgerError> {
    let meters = others_judged(scope, bearing, upto_ms)?.into_iter().map(|(meter, judged)| OtherMeterNow {
        meter,
        last: judged.last_accepted().map(shown),
        total: judged.for_due().map(|due| due.hours),
        questions: u32::try_from(judged.open_questions().len()).unwrap_or(u32::MAX),
    });
    Ok(meters.collect())
}

/// The ledger of one of a unit's meters up to a moment, and what is open about its readings.
pub(crate) fn ledger_of_meter(
    ledger: &Ledger,
    truck: TruckId,
    meter: Meter,
    upto_ms: i64,
) -> Result<(HoursLedger, Vec<QuestionNow>), LedgerError> {
    let scope = Scope::of(ledger.store().truth(), ledger.fleet(), truck);
    let bearing = scope.bearing(upto_ms)?;
    let of = match meter {
        Meter::Compressor => judged(&scope, &bearing, upto_ms)?,
        _ => {
            let mut others = others_judged(&scope, &bearing, upto_ms)?;
            others.remove(&meter).unwrap_or_else(|| HoursLedger::judge(&[], &[], &BTreeMap::new()))
        }
    };
    let questions = of.open_questions().iter().map(|question| question_now(question, &of)).collect();
    Ok((of, questions))
}

/// The ledgers of the meters beside the compressor's.
fn others_judged(
    scope: &Scope<'_>,
    bearing: &[Bearing],
    upto_ms: i64,
) -> Result<BTreeMap<Meter, HoursLedger>, LedgerError> {
    let (truth, truck) = (&scope.truth, scope.truck);
    let mut readings: BTreeMap<Meter, Vec<ReadingRow>> = BTreeMap::new();
    let mut decisions = BTreeMap::new();
    for fact in truth.newest_facts(truck, FactKind::HourReading.code().unwrap_or(0), LOOKED_THROUGH)? {
        // Readings of the compressor carry their hours in the projection; only the others are opened.
        if fact.hours.is_some() || fact.judged != Judged::Counts || fact.at_ms > upto_ms {
            continue;
        }
        let Some(entry) = inputs::read(truth, fact.n)? else { continue };
        let Fact::HourReading(reading) = &entry.fact else { continue };
        readings.entry(reading.meter).or_default().push(ReadingRow {
            entry: entry.id.0,
            at: entry.at.moment(),
            figure: reading.figure,
            order: order_of(entry.id),
            source_brought_in: entry.source == sumpbook_trade::record::Source::BroughtIn,
        });
        settle(truth, &fact, &mut decisions)?;
    }
    let meters = readings.into_iter().map(|(meter, rows)| {
        let exchanges: Vec<ExchangeRow> = bearing.iter().filter_map(|b| exchange(b, meter)).collect();
        (meter, HoursLedger::judge_by(scope.fleet.numbers.hours(), &rows, &exchanges, &decisions))
    });
    Ok(meters.collect())
}

/// Accepted readings through all meters, oldest first.
pub(super) fn readings(ledger: &HoursLedger) -> Vec<HoursAt> {
    ledger.accepted().map(|row| HoursAt { at: row.at, total: row.total }).collect()
}

/// The same with what had been estimated by each one's day: the unit's hours as its services are told in.
pub(super) fn all_hours(ledger: &HoursLedger, estimates: &[Estimate], zone: Tz) -> Vec<HoursAt> {
    if estimates.is_empty() {
        return readings(ledger);
    }
    let with = |read: HoursAt| {
        let day = read.at.with_timezone(&zone).date_naive();
        HoursAt { total: read.total + estimated_by(estimates, day, zone), ..read }
    };
    readings(ledger).into_iter().map(with).collect()
}

/// Signed estimates of hours no meter of the compressor counted, oldest first.
pub(super) fn estimates(bearing: &[Bearing]) -> Vec<Estimate> {
    let estimate = |Bearing { entry, .. }: &Bearing| match entry.fact {
        Fact::HoursEstimate(HoursEstimate { meter: Meter::Compressor, low, likely, high }) => {
            Some(Estimate { at: entry.at.moment(), low, likely, high })
        }
        _ => None,
    };
    bearing.iter().filter_map(estimate).collect()
}

/// Estimated hours, at most, that stand in a unit's hours by the end of a yard day: a service, a reading and the
/// due list are all told on one line of hours, so what was estimated before a service is not used after it.
pub fn estimated_by(estimates: &[Estimate], day: NaiveDate, zone: Tz) -> Tenths {
    let by_then = estimates.iter().filter(|one| one.at.with_timezone(&zone).date_naive() <= day);
    by_then.fold(Tenths::ZERO, |sum, one| sum + one.at_most())
}

pub(crate) fn shown(row: &JudgedReading) -> ReadingNow {
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

/// Key of the words for what would explain a figure.
pub fn hint_key(hint: &Hint) -> String {
    format!("hint-{}", hint_word(hint))
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
