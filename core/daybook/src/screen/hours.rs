//! A true figure: what the meter showed last, what it can show now, what is asked about the figure typed.

use serde::{Deserialize, Serialize};
use sumpbook_trade::hours::KeyboardAnswer;
use sumpbook_trade::record::Meter;
use sumpbook_trade::{EntryId, Feature, Stamp, Tenths, TruckId};

use super::figures::ReadingRow;
use super::main_act::{DisabledReason, Main, MainAct};
use super::unit::OtherMeterRow;
use crate::ledger::{Ledger, LedgerError};
use crate::state::hours::{ledger_of_meter, shown as reading_now};

/// Which unit, and what was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HoursQuery {
    /// The unit.
    pub unit: TruckId,
    /// Which of its meters.
    pub meter: Meter,
    /// The figure as typed; none yet.
    pub typed: Option<Tenths>,
}

/// An open question about readings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct QuestionRow {
    /// Its id: the first entry that disputes.
    pub id: Option<EntryId>,
    /// Why it is asked, for the text `question-...`.
    pub why: String,
    /// Readings that stand for now.
    pub standing: Vec<ReadingRow>,
    /// Readings that dispute them.
    pub disputing: Vec<ReadingRow>,
    /// What may have happened, for the texts `hint-...`.
    pub hints: Vec<String>,
}

/// The hours of one meter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HoursScreen {
    /// The unit's door number.
    pub door: String,
    /// Which meter.
    pub meter: Meter,
    /// The last reading that counts; none: this is the first.
    pub last: Option<ReadingRow>,
    /// The most this meter can show now.
    pub ceiling: Option<Tenths>,
    /// The unit has no hour meter on its compressor: hours are counted from starts and stops.
    pub counted: bool,
    /// The figure as typed.
    pub typed: Option<Tenths>,
    /// Its rise over the last one.
    pub rise: Option<Tenths>,
    /// What is asked about it; none before one is typed.
    pub asked: Option<KeyboardAnswer>,
    /// Questions that are open already.
    pub questions: Vec<QuestionRow>,
    /// The due list uses the higher of two disputed figures.
    pub higher_of_disputed: bool,
    /// Other meters of this unit, each judged by itself, as they last read.
    pub others: Vec<OtherMeterRow>,
    /// The main button.
    pub main: Main,
}

/// The hours of a unit by one of its meters. Only the compressor's feed a clock; each is judged by itself.
///
/// # Errors
/// As reading the store.
pub fn hours(ledger: &Ledger, query: &HoursQuery, now: Stamp) -> Result<HoursScreen, LedgerError> {
    let (judged, questions) = ledger_of_meter(ledger, query.unit, query.meter, now.unix_ms())?;
    let own = query.meter == Meter::Compressor;
    let state = ledger.unit_state(query.unit)?;
    // Days of use are the yard's days, whatever offset this phone's clock shows.
    let at = now.moment().with_timezone(&ledger.fleet().zone).fixed_offset();
    let asked = query.typed.map(|figure| judged.ask(figure, at, &judged.recent_use_days(at)));
    let truck = ledger.fleet().trucks.get(&query.unit);
    let last = judged.last_accepted().map(reading_now).as_ref().map(ReadingRow::from);
    let main = match (query.typed, &asked) {
        (Some(figure), Some(KeyboardAnswer::AboveCeiling { .. })) => {
            Main::ready(MainAct::KeepWithPhoto { figure })
        }
        (Some(figure), Some(KeyboardAnswer::Backwards { .. } | KeyboardAnswer::UnlikeThisUnit { .. })) => {
            Main::ready(MainAct::YesItReads { figure })
        }
        (Some(figure), _) => Main::ready(MainAct::GiveHours { figure }),
        (None, _) => Main { act: MainAct::TypeHours, why_not: Some(DisabledReason::NothingTyped) },
    };
    Ok(HoursScreen {
        door: ledger.fleet().door(query.unit),
        ceiling: judged.ceiling(at),
        meter: query.meter,
        counted: own && truck.is_some_and(|truck| !truck.features.has(Feature::HourMeter)),
        typed: query.typed,
        rise: query.typed.zip(last.as_ref()).map(|(typed, last)| typed - last.figure),
        last,
        asked,
        questions: questions
            .iter()
            .map(|question| QuestionRow {
                id: question.disputing.first().map(|reading| reading.entry),
                why: question.why.clone(),
                standing: question.standing.iter().map(ReadingRow::from).collect(),
                disputing: question.disputing.iter().map(ReadingRow::from).collect(),
                hints: question.hints.clone(),
            })
            .collect(),
        higher_of_disputed: own && state.hours.higher_of_disputed,
        others: state.other_meters.iter().map(OtherMeterRow::from).collect(),
        main,
    })
}
