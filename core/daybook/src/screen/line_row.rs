//! One line of the walk: what may be wrong with it, what figure it wants, what is open there already.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{HowGiven, Item, Line, NumberAsk, Severity, Side, Template, plan};
use sumpbook_trade::limit::Measure;
use sumpbook_trade::record::{Answer, AnswerKind, Digest, ItemFigure};
use sumpbook_trade::{Stamp, TruckId};

use super::defect_row::first_word;
use super::last_report::is_open;
use super::news::count;
use crate::draft::place_of;
use crate::ledger::{Ledger, LedgerError};
use crate::state::UnitState;

/// The figure a line may carry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FigureAsk {
    /// Its unit.
    pub unit: Measure,
    /// How it comes.
    pub how: HowGiven,
    /// The topic of the limit it is held against.
    pub limit: Option<String>,
    /// Digits after the point when it is typed; none: it is read off no keypad (a date, water by eye).
    pub places: Option<u8>,
}

impl FigureAsk {
    /// The figure of an item or of a step.
    pub(super) fn of(number: &NumberAsk) -> FigureAsk {
        FigureAsk {
            unit: number.unit,
            how: number.how,
            limit: number.limit.clone(),
            places: places(number.unit),
        }
    }
}

/// Digits after the point that a figure of this measure is read with.
fn places(unit: Measure) -> Option<u8> {
    match unit {
        Measure::Date | Measure::Water | Measure::Month => None,
        Measure::Inch | Measure::Quart | Measure::Litre => Some(2),
        Measure::Hour | Measure::Bar => Some(1),
        _ => Some(0),
    }
}

/// What was answered to a line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LineAnswer {
    /// The answer.
    pub answer: AnswerKind,
    /// Key of the word chosen for a defect.
    pub word: Option<String>,
    /// What it locks.
    pub severity: Option<Severity>,
    /// Figures given.
    pub figures: Vec<ItemFigure>,
    /// Words added.
    pub words: Option<String>,
    /// How many photos.
    pub photos: u32,
    /// The sound of a defect, by its name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sound: Option<Digest>,
    /// The group it was answered in, when by one tap with others.
    pub together: Option<u32>,
    /// By whom, when somebody else signed it.
    pub by: Option<String>,
    /// When that was.
    pub at: Option<Stamp>,
}

/// One line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LineRow {
    /// The row's id: item, side or name.
    pub id: String,
    /// The item, for the texts `item-...`.
    pub item: String,
    /// The place as an answer names it.
    pub place: Option<String>,
    /// Sides a defect of it may be given.
    pub sides: Vec<Side>,
    /// Words offered for a defect with what each locks, in order; `other` is always the last.
    pub words: Vec<(String, Severity)>,
    /// The figure it may carry.
    pub figure: Option<FigureAsk>,
    /// The caution shown with it, for the text `caution-...`.
    pub caution: Option<String>,
    /// A defect of it is open since then; of a line without a place, on whichever side.
    pub open_since: Option<Stamp>,
    /// Key of the word that stands for that defect, for "still so".
    pub open_word: Option<String>,
    /// The part that this defect waits for.
    pub waits_for: Option<String>,
    /// What was answered; none yet.
    pub answer: Option<LineAnswer>,
}

/// Every line that a unit is asked for on a walk, in order and without answers: what a defect can be told of at the end
/// of the day.
///
/// # Errors
/// As reading the store.
pub fn lines_of_unit(
    ledger: &Ledger,
    unit: TruckId,
    template: &Template,
    now: Stamp,
) -> Result<Vec<LineRow>, LedgerError> {
    let state = ledger.unit_state(unit)?;
    let template = &*state.checklist(template, now);
    let features = ledger.fleet().trucks.get(&unit).map(|truck| truck.features.clone()).unwrap_or_default();
    let stops = plan(template, &features);
    Ok(stops.iter().flat_map(|stop| &stop.lines).map(|line| line_row(template, &state, line, None)).collect())
}

pub(super) fn line_row(
    template: &Template,
    state: &UnitState,
    line: &Line,
    answer: Option<LineAnswer>,
) -> LineRow {
    let place = place_of(line);
    let item = template.item(&line.item);
    // A line without a place asks about every side.
    let still = state
        .defects
        .iter()
        .filter(|d| is_open(d))
        .filter(|d| d.item == line.item && (place.is_none() || d.place == place))
        .min_by_key(|d| d.since);
    LineRow {
        id: line.to_string(),
        item: line.item.clone(),
        sides: item.map(|item| item.sides.clone()).unwrap_or_default(),
        words: item.map(words).unwrap_or_default(),
        figure: item.and_then(|item| item.number.as_ref()).map(FigureAsk::of),
        caution: item.and_then(|item| item.caution.clone()),
        open_since: still.map(|d| d.since.into()),
        open_word: still.and_then(first_word),
        waits_for: still.and_then(|d| state.waits_for(&d.item, d.place.as_deref())).map(str::to_owned),
        answer,
        place,
    }
}

fn words(item: &Item) -> Vec<(String, Severity)> {
    let own = item.defects.iter().map(|defect| (defect.0.clone(), defect.1));
    own.chain([(Item::OTHER.to_owned(), item.worst())]).collect()
}

pub(super) fn shown(answer: &Answer, by: Option<String>, at: Option<Stamp>) -> LineAnswer {
    LineAnswer {
        answer: answer.answer,
        word: answer.word.clone(),
        severity: answer.severity,
        figures: answer.figures.clone(),
        words: answer.words.clone(),
        photos: count(answer.photos.len()),
        sound: answer.sound,
        together: answer.together,
        by,
        at,
    }
}
