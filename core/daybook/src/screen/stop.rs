//! One stop of the walk: its lines, what was answered by whom, what the button takes.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{EngineState, PlannedStop, Template, WalkPlace};
use sumpbook_trade::record::{Answer, TruckRegistered};
use sumpbook_trade::{EntryId, Stamp, TruckId};

use super::line_row::{LineRow, line_row, shown};
use super::main_act::{DisabledReason, Main, MainAct};
use super::news::count;
use super::road_air::{PartNow, RoadAir};
use super::walk::{StopMark, Walk};
use crate::draft::PreTripDraft;
use crate::ledger::{Ledger, LedgerError};

/// For how long a stop that has just opened takes no tap: one bounce must not answer two.
const BOUNCE_MS: u32 = 400;

/// Which stop, and what was on the screen so far.
#[derive(Clone, Debug, PartialEq)]
pub struct StopQuery {
    /// Label of the stop, such as `6` or `15b`; none: where the draft stands, else the first that is open.
    pub stop: Option<String>,
    /// Lines that have lain whole on the screen since it opened, by row id.
    pub seen: BTreeSet<String>,
    /// Milliseconds since it opened.
    pub open_ms: u32,
}

/// Lines answered by one tap.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Together {
    /// The group.
    pub group: u32,
    /// How many lines.
    pub lines: u32,
    /// After so many milliseconds on the screen.
    pub after_ms: Option<u32>,
}

/// One stop.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StopScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// The stop's key, for the text `stop-...`.
    pub stop: String,
    /// Its label: `6`, `15b`.
    pub label: String,
    /// Its place in the walk, 1 first.
    pub index: u32,
    /// Stops in the walk.
    pub of: u32,
    /// Every stop's mark, in order.
    pub marks: Vec<StopMark>,
    /// Where one stands.
    pub place: WalkPlace,
    /// The state the engine is in.
    pub engine: EngineState,
    /// Chocks are in.
    pub chocks: bool,
    /// Only in the yard.
    pub yard_only: bool,
    /// It has a screen of its own (glass, timed test).
    pub own_screen: bool,
    /// The stop before, by its label.
    pub back: Option<String>,
    /// Its lines, in order.
    pub lines: Vec<LineRow>,
    /// Lines without an answer.
    pub left: u32,
    /// Groups answered together at this stop.
    pub together: Vec<Together>,
    /// The person has signed few walks: each line says what OK is.
    pub hints: bool,
    /// On a second driver's short walk, where the glass stood in the first one's record, percent.
    pub as_shown: Option<u8>,
    /// What of the unit is locked, with why. The walk goes on: looking is allowed.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub locked: Vec<PartNow>,
    /// The main button.
    pub main: Main,
}

fn asks_for_inspection(row: &LineRow) -> bool {
    row.figure.as_ref().and_then(|figure| figure.limit.as_deref()) == Some("annual-inspection")
}

/// What the shop's record says of the annual inspection to whoever looks at its paper: that it ran out, or soon does.
fn inspection_caution(ledger: &Ledger, unit: TruckId, now: Stamp) -> Option<String> {
    let fleet = ledger.fleet();
    match fleet.trucks.get(&unit)?.inspection_days_left(fleet.yard_day(now))? {
        ..0 => Some("inspection-over".to_owned()),
        0..=TruckRegistered::INSPECTION_TOLD_DAYS => Some("inspection-near".to_owned()),
        _ => None,
    }
}

/// One stop of a draft's walk; none when the unit's walk has no stop at all.
///
/// # Errors
/// As reading the store.
pub fn stop(
    ledger: &Ledger,
    draft: &PreTripDraft,
    query: &StopQuery,
    template: &Template,
    now: Stamp,
) -> Result<Option<StopScreen>, LedgerError> {
    let walk = Walk::of(ledger, template, draft, now)?;
    let asked = query.stop.as_ref().or(draft.stop.as_ref());
    let by_label = |label: &String| walk.stops.iter().position(|stop| stop.label() == *label);
    let open = |stop: &PlannedStop| draft.open_lines(stop, &walk.elsewhere()).count();
    let index =
        asked.and_then(by_label).or_else(|| walk.stops.iter().position(|stop| open(stop) > 0)).unwrap_or(0);
    let Some(stop) = walk.stops.get(index) else { return Ok(None) };
    let state = ledger.unit_state(draft.unit)?;
    let template = &*state.checklist(template, now);
    let lines: Vec<LineRow> = stop
        .lines
        .iter()
        .map(|line| {
            let own = draft.answer_to(line).map(|answer| shown(answer, None, None));
            let other = || walk.other(line).map(|o| shown(&o.answer, o.by.clone(), Some(o.at)));
            let mut row = line_row(template, &state, line, own.or_else(other));
            if asks_for_inspection(&row) {
                row.caution = inspection_caution(ledger, draft.unit, now).or(row.caution);
            }
            row
        })
        .collect();
    let label = |index: usize| walk.stops.get(index).map(PlannedStop::label);
    let next = index.saturating_add(1);
    Ok(Some(StopScreen {
        draft: draft.id,
        door: ledger.fleet().door(draft.unit),
        stop: stop.id.clone(),
        label: stop.label(),
        index: count(index).saturating_add(1),
        of: count(walk.stops.len()),
        marks: walk.stops.iter().map(|stop| walk.mark(draft, stop)).collect(),
        place: stop.place,
        engine: stop.engine,
        chocks: stop.chocks,
        yard_only: stop.yard_only,
        own_screen: stop.own_screen,
        back: index.checked_sub(1).and_then(label),
        left: count(open(stop)),
        together: together(draft, &lines),
        hints: draft.hints,
        as_shown: draft.follows.and_then(|first| first.glass),
        locked: RoadAir::of(ledger.fleet(), draft.unit, &state, now).locked(),
        main: main(draft, template, query, &lines, label(next).zip(Some(count(next).saturating_add(1)))),
        lines,
    }))
}

/// Where the glass stood in the first driver's record, when its line is among these.
fn still_as_shown(draft: &PreTripDraft, open: &[&LineRow]) -> Option<u8> {
    let glass = draft.follows?.glass?;
    open.iter().any(|line| line.item == crate::draft::GLASS).then_some(glass)
}

fn together(draft: &PreTripDraft, lines: &[LineRow]) -> Vec<Together> {
    Together::among(
        draft,
        lines.iter().filter_map(|line| line.answer.as_ref().filter(|a| a.by.is_none())?.together),
    )
}

impl Together {
    /// The groups of a draft that these numbers name, each once.
    pub(super) fn among(draft: &PreTripDraft, groups: impl Iterator<Item = u32>) -> Vec<Together> {
        let one = |group: u32| {
            let of: Vec<&Answer> = draft.answers.iter().filter(|a| a.together == Some(group)).collect();
            Together {
                group,
                lines: count(of.len()),
                after_ms: of.iter().filter_map(|a| a.on_screen_ms).max(),
            }
        };
        groups.collect::<BTreeSet<u32>>().into_iter().map(one).collect()
    }
}

/// What one tap does here. It never answers a line that was not whole on the screen, nor one that asks for a
/// figure.
fn main(
    draft: &PreTripDraft,
    template: &Template,
    query: &StopQuery,
    lines: &[LineRow],
    next: Option<(String, u32)>,
) -> Main {
    let open: Vec<&LineRow> = lines.iter().filter(|line| line.answer.is_none()).collect();
    if open.is_empty() {
        let (stop, at) = next.unzip();
        return Main::ready(MainAct::NextStop { stop, at });
    }
    let act = match open.len() == lines.len() {
        true => match still_as_shown(draft, &open) {
            Some(percent) => MainAct::StillAsShown { percent, lines: count(open.len()) },
            None => MainAct::AllOk { lines: count(open.len()) },
        },
        false => MainAct::OtherOk { lines: count(open.len()) },
    };
    let unseen = lines.iter().filter(|line| !query.seen.contains(&line.id)).count();
    let wants = |line: &&&LineRow| template.item(&line.item).is_some_and(|item| draft.wants_figure(item));
    let why_not = if let Some(left_ms) = BOUNCE_MS.checked_sub(query.open_ms).filter(|ms| *ms > 0) {
        Some(DisabledReason::JustOpened { left_ms })
    } else if unseen > 0 {
        Some(DisabledReason::MoreBelow { left: count(unseen) })
    } else {
        open.iter().find(wants).map(|line| DisabledReason::FigureMissing { item: line.item.clone() })
    };
    Main { act, why_not }
}
