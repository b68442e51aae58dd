//! What one puts one's name to: the whole walk in one sum, each stop a way back to it.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{HowGiven, Template};
use sumpbook_trade::record::{Answer, AnswerKind, ItemFigure, PreTripSection};
use sumpbook_trade::{EntryId, Feature, Features, Measure, Stamp, Tenths};

use super::defect_row::name;
use super::end_of_day::FoundRow;
use super::news::count;
use super::stop::Together;
use super::walk::{StopMark, Walk};
use super::walk_rules::TEST_MS;
use crate::draft::PreTripDraft;
use crate::ledger::{Ledger, LedgerError};

/// First to last stop in less than this is "quick" on a unit with air brakes, and on one with hydraulic brakes.
/// Common practice, no source. A quick walk is told to the driver before he signs and is never refused.
const QUICK_AIR_MS: u64 = 180_000;
const QUICK_HYDRAULIC_MS: u64 = 120_000;

/// Why a walk is called quick.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Quick {
    /// A brake test was answered before its minute was over.
    BrakeTest,
    /// The whole of it took less time than looking does.
    Walk,
}

/// One stop of the walk.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SignStop {
    /// Its label: `6`, `15b`.
    pub label: String,
    /// Its place in the unit's own walk, 1 first.
    pub at: u32,
    /// Its key, for the text `stop-...`.
    pub stop: String,
    /// How it is marked.
    pub mark: StopMark,
    /// Its lines.
    pub lines: u32,
    /// Lines without an answer.
    pub left: u32,
    /// Groups answered together there.
    pub together: Vec<Together>,
}

/// An answer that is not OK, or that carries a figure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SignRow {
    /// The item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// What was answered.
    pub answer: AnswerKind,
    /// Key of the word chosen.
    pub word: Option<String>,
    /// Words added, or why it could not be checked.
    pub words: Option<String>,
    /// Figures given.
    pub figures: Vec<ItemFigure>,
}

/// The page that is signed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SignScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// Whose name.
    pub person: Option<String>,
    /// It is the second driver's short walk.
    pub short: bool,
    /// Every stop, in order.
    pub stops: Vec<SignStop>,
    /// Lines that are OK.
    pub ok: u32,
    /// Of them, answered together with others of their stop.
    pub ok_together: u32,
    /// Lines that somebody else signed in this walk.
    pub by_other: u32,
    /// Defects, as they will stand.
    pub defects: Vec<FoundRow>,
    /// What could not be checked, and what this unit was said not to have.
    pub not_checked: Vec<SignRow>,
    /// Answers that carry a figure.
    pub figures: Vec<SignRow>,
    /// Compressor hours as read on this walk.
    pub hours: Option<Tenths>,
    /// Milliseconds from the first stop on.
    pub walked_ms: Option<u64>,
    /// Why it was quick: said to the driver, who may look again. It is signed as it is. None: it was not.
    pub quick: Option<Quick>,
    /// Label of the first stop that is open; none: it can be signed.
    pub open_stop: Option<String>,
    /// That stop's place in the unit's own walk.
    pub open_at: Option<u32>,
}

/// The sum of a walk before it is signed. `walked_ms` is the time since the first stop.
///
/// # Errors
/// As reading the store.
pub fn signing(
    ledger: &Ledger,
    draft: &PreTripDraft,
    template: &Template,
    walked_ms: Option<u64>,
    now: Stamp,
) -> Result<SignScreen, LedgerError> {
    let fleet = ledger.fleet();
    let walk = Walk::of(ledger, template, draft, now)?;
    let elsewhere = walk.elsewhere();
    let stops: Vec<SignStop> = walk
        .stops
        .iter()
        .zip(1u32..)
        .map(|(stop, at)| {
            let own = stop.lines.iter().filter_map(|line| draft.answer_to(line));
            SignStop {
                label: stop.label(),
                at,
                stop: stop.id.clone(),
                mark: walk.mark(draft, stop),
                lines: count(stop.lines.len()),
                left: count(draft.open_lines(stop, &elsewhere).count()),
                together: Together::among(draft, own.filter_map(|answer| answer.together)),
            }
        })
        .collect();
    let of = |kind: AnswerKind| draft.answers.iter().filter(move |answer| answer.answer == kind);
    let not_checked = draft
        .answers
        .iter()
        .filter(|answer| matches!(answer.answer, AnswerKind::CouldNotCheck | AnswerKind::NotFitted));
    let lines = walk.stops.iter().flat_map(|stop| &stop.lines);
    let by_other = lines.filter(|line| draft.answer_to(line).is_none() && walk.other(line).is_some());
    let truck = fleet.trucks.get(&draft.unit);
    let air_brakes = truck.is_some_and(|truck| truck.features.has(Feature::AirBrakes));
    let walked_ms = walked_ms.or(draft.walked_ms);
    let open = stops.iter().find(|stop| stop.left > 0);
    Ok(SignScreen {
        draft: draft.id,
        door: fleet.door(draft.unit),
        person: name(fleet, draft.person.0),
        short: draft.follows.is_some(),
        ok: count(of(AnswerKind::Ok).count()),
        ok_together: count(of(AnswerKind::Ok).filter(|answer| answer.together.is_some()).count()),
        by_other: count(by_other.count()),
        defects: of(AnswerKind::Defect).map(FoundRow::of).collect(),
        not_checked: not_checked.map(SignRow::of).collect(),
        figures: draft.answers.iter().filter(|answer| !answer.figures.is_empty()).map(SignRow::of).collect(),
        hours: draft.hours,
        // A short walk is short: only its brake test can be too quick.
        quick: if test_cut_short(&draft.answers, template) {
            Some(Quick::BrakeTest)
        } else {
            (draft.follows.is_none() && is_quick(walked_ms, air_brakes)).then_some(Quick::Walk)
        },
        walked_ms,
        open_stop: open.map(|stop| stop.label.clone()),
        open_at: open.map(|stop| stop.at),
        stops,
    })
}

fn is_quick(walked_ms: Option<u64>, air_brakes: bool) -> bool {
    walked_ms.is_some_and(|ms| ms < if air_brakes { QUICK_AIR_MS } else { QUICK_HYDRAULIC_MS })
}

/// A drop was given before its test had run out: its line did not stand on the screen for all of it.
fn test_cut_short(answers: &[Answer], template: &Template) -> bool {
    let is_test = |answer: &&Answer| {
        let number = template.item(&answer.item).and_then(|item| item.number.as_ref());
        number.is_some_and(|number| number.unit == Measure::Psi && number.how == HowGiven::Chosen)
    };
    answers.iter().filter(is_test).any(|answer| answer.on_screen_ms.is_some_and(|ms| ms < TEST_MS))
}

/// Whether a signed walk was quick, by the same rule as before it was signed.
pub fn was_quick(section: &PreTripSection, features: Option<&Features>, template: &Template) -> bool {
    let air_brakes = features.is_some_and(|features| features.has(Feature::AirBrakes));
    let walked_ms = section.seconds.map(|seconds| u64::from(seconds) * 1_000);
    let whole = section.complete && section.follows.is_none();
    test_cut_short(&section.answers, template) || (whole && is_quick(walked_ms, air_brakes))
}

impl SignRow {
    pub(super) fn of(answer: &Answer) -> SignRow {
        SignRow {
            item: answer.item.clone(),
            place: answer.place.clone(),
            answer: answer.answer,
            word: answer.word.clone(),
            words: answer.words.clone(),
            figures: answer.figures.clone(),
        }
    }
}
