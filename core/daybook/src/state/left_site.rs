//! What keeps a truck from driving off: told where the procedure stopped at it, and what it locks when it was driven
//! all the same.

use sumpbook_trade::defect::Finding;
use sumpbook_trade::procedure::{OnNotSo, Procedures, item_of_step, word_of_step};
use sumpbook_trade::record::StepDone;
use sumpbook_trade::{Entry, FactKind};

use super::defects::locks;
use super::found::note;
use super::inputs::Bearing;
use super::scope::Scope;
use crate::ledger::LedgerError;

/// What was not so when a site was left. Done before the truck moved it is no finding: that is what the step is for.
/// Else it is one from when it was told, and one more from the drive on that came in spite of it.
///
/// # Errors
/// As any read.
pub(super) fn found(
    scope: &Scope<'_>,
    entries: &[Bearing],
    upto_ms: i64,
) -> Result<Vec<Finding>, LedgerError> {
    let Ok(table) = Procedures::common_practice() else { return Ok(Vec::new()) };
    let halts: Vec<(&Entry, &StepDone, &str)> = entries
        .iter()
        .flat_map(|of| of.entry.fact.steps().iter().map(|step| (&of.entry, step)))
        .filter_map(|(entry, step)| Some((entry, step, step.word.as_deref().filter(|_| step.not_so)?)))
        .filter(|(_, step, word)| {
            table.step(&step.step).and_then(|of| of.on(word)) == Some(OnNotSo::NoDriving)
        })
        .collect();
    if halts.is_empty() {
        return Ok(Vec::new());
    }
    let quiet = scope.of_kind(FactKind::StepsDone, upto_ms)?;
    let drives = scope.of_kind(FactKind::Drive, upto_ms)?;
    let mut found = Vec::new();
    for (entry, halt, word) in halts {
        let so = |step: &&StepDone| step.step == halt.step && !step.not_so && step.at > halt.at;
        let said = entries.iter().chain(&quiet).flat_map(|of| of.entry.fact.steps());
        let done = said.filter(so).map(|step| step.at).min();
        let in_spite = |of: &&Bearing| of.entry.at > halt.at && done.is_none_or(|done| of.entry.at < done);
        let driven = drives.iter().find(in_spite).map(|of| &of.entry);
        if done.is_some() && driven.is_none() {
            continue;
        }
        let (item, word) = (item_of_step(&halt.step), word_of_step(word));
        found.push(Finding { at: halt.at.moment(), ..note(entry, &item, &word) });
        found.extend(driven.map(|drive| Finding {
            parts: locks(table.step(&halt.step).and_then(|step| step.driven), &halt.step),
            ..note(drive, &item, &word)
        }));
    }
    Ok(found)
}
