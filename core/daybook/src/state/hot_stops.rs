//! A compressor that stopped by itself: one restart once a cause is written, a second stop in a day locks the air, and
//! the oil may be burnt.

use sumpbook_trade::defect::Finding;
use sumpbook_trade::procedure::{item_of_step, word_of_step};
use sumpbook_trade::record::{Answer, AnswerKind, Source};
use sumpbook_trade::{Entry, Fact, FactKind};

use super::found::{note, of_step};
use super::inputs::Bearing;
use super::scope::Scope;
use crate::ledger::LedgerError;

/// The step that watches the air while it is used: what a stop by itself is a defect of.
const MID_WATCH: &str = "mid-watch";

/// What the stops of a unit find. A record does not say why it stopped; each stop is taken for one in the heat, which is
/// the usual one.
///
/// # Errors
/// As any read.
pub(super) fn found(
    scope: &Scope<'_>,
    entries: &[Bearing],
    upto_ms: i64,
) -> Result<Vec<Finding>, LedgerError> {
    let stops: Vec<&Entry> = entries.iter().map(|of| &of.entry).filter(|entry| stopped(entry)).collect();
    if stops.is_empty() {
        return Ok(Vec::new());
    }
    let mut found = Vec::new();
    for (n, stop) in stops.iter().enumerate() {
        found.push(note(stop, "oil-look", "burnt-suspected"));
        let day = scope.fleet.yard_day(stop.at);
        if stops.iter().take(n).any(|before| scope.fleet.yard_day(before.at) == day) {
            found.push(of_step(stop, MID_WATCH, "stopped-hot-twice"));
        }
    }
    let quiet = scope.of_kind(FactKind::StartAir, upto_ms)?;
    let of_start = |of: &&Bearing| matches!(of.entry.fact, Fact::StartAir(_));
    let mut starts: Vec<&Entry> = entries.iter().filter(of_start).chain(&quiet).map(|of| &of.entry).collect();
    starts.sort_by_key(|start| order(start));
    let mut since = None;
    for start in starts {
        let between = |entry: &Entry| Some(order(entry)) > since && order(entry) < order(start);
        // The first start after it is the restart; later ones are work.
        if let Some(stop) = stops.iter().rev().find(|stop| between(stop))
            && !has_words(start)
            && !entries
                .iter()
                .any(|of| order(stop) <= order(&of.entry) && between(&of.entry) && tells(&of.entry))
        {
            found.push(note(start, &item_of_step(MID_WATCH), &word_of_step("no-cause-written")));
        }
        since = Some(order(start));
    }
    Ok(found)
}

fn order(entry: &Entry) -> (i64, sumpbook_trade::EntryId) {
    (entry.at.unix_ms(), entry.id)
}

fn stopped(entry: &Entry) -> bool {
    match &entry.fact {
        Fact::DisplayNote(note) => {
            note.stopped_by_itself == Some(true)
                && note.gone_again.is_none()
                && entry.source != Source::BroughtIn
        }
        _ => false,
    }
}

/// Whether an entry tells a cause: words written with it, something found wrong, or work that was done.
fn tells(entry: &Entry) -> bool {
    let wrong = |answers: &[Answer]| answers.iter().any(|answer| answer.answer == AnswerKind::Defect);
    has_words(entry)
        || match &entry.fact {
            Fact::PreTripSection(section) => wrong(&section.answers),
            Fact::EndOfDay(report) => wrong(&report.defects),
            Fact::ServiceDone(_) | Fact::Certificate(_) => true,
            _ => false,
        }
}

fn has_words(entry: &Entry) -> bool {
    let why = match &entry.fact {
        Fact::StartAir(start) => start.in_spite_of_lock.as_deref(),
        _ => None,
    };
    [entry.note.as_deref(), why].into_iter().flatten().any(|words| !words.trim().is_empty())
}
