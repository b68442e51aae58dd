//! What the rules say of a figure, before its answer is kept.

use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::screen::walk_rules::{RuleSaid, over, said, said_of_step};
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::record::Answer;
use sumpbook_trade::{Features, Figure, TruckId};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;
use crate::values::key;

/// One rule's word about one figure.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct RuleRow {
    /// The figure as it was given: "3.5 psi".
    pub figure: String,
    /// Whose rule it is, for the text `rule-set-...`: where it holds, and in which edition it was read.
    pub set: String,
    /// Where it is written.
    pub cites: String,
    /// The shop goes by it; the others stand beside it.
    pub goes_by: bool,
    /// How it compares, as `rule-is-` and this has its words; none when a fact is missing.
    pub compares: Option<String>,
    /// Its limit: "3 psi".
    pub limit: Option<String>,
    /// Whether the figure keeps it; none when that cannot be told.
    pub keeps: Option<bool>,
    /// The drop was read before its minute was over and is scaled to it: it can break the rule and never keeps it.
    pub scaled: bool,
}

/// What the rules say of an answer's figures.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct RulesSaid {
    /// A rule that the shop goes by is broken: the line is a defect, and is asked for as one.
    pub over: bool,
    /// Each rule's word.
    pub rows: Vec<RuleRow>,
}

#[uniffi::export]
impl Phone {
    /// What the rules say of the figures of an answer about a unit. It keeps nothing.
    ///
    /// # Errors
    /// `Closed`, `Storage`; `Argument` for a unit this phone does not know.
    pub fn rules_said(&self, unit: TruckId, answer: Answer) -> Result<RulesSaid, PhoneError> {
        self.read(|book, _| {
            let rows = said(template(book)?, &answer, features(book, unit)?, &book.ledger().fleet().numbers);
            Ok(RulesSaid { over: over(&rows), rows: rows.iter().map(row).collect() })
        })
    }

    /// What the rules say of a figure read at a step of a procedure. It keeps nothing.
    ///
    /// # Errors
    /// `Closed`, `Storage`; `Argument` for a unit this phone does not know, and for a step that is none.
    pub fn step_rules_said(
        &self,
        unit: TruckId,
        procedure: String,
        step: String,
        figure: Figure,
    ) -> Result<RulesSaid, PhoneError> {
        let table =
            Procedures::common_practice().map_err(|e| PhoneError::Unexpected { reason: e.to_string() })?;
        let known = table.of(&procedure).and_then(|own| own.step(&step));
        let known = known.ok_or_else(|| PhoneError::Argument {
            what: "step".to_owned(),
            reason: format!("'{procedure}' has no step '{step}'"),
        })?;
        self.read(|book, _| {
            let rows = said_of_step(known, figure, features(book, unit)?, &book.ledger().fleet().numbers);
            Ok(RulesSaid { over: over(&rows), rows: rows.iter().map(row).collect() })
        })
    }
}

fn features(book: &Daybook, unit: TruckId) -> Result<&Features, PhoneError> {
    let truck = book.ledger().fleet().trucks.get(&unit).ok_or_else(|| PhoneError::Argument {
        what: "unit".to_owned(),
        reason: format!("no unit {unit} is known here"),
    })?;
    Ok(&truck.features)
}

fn row(row: &RuleSaid) -> RuleRow {
    RuleRow {
        figure: row.figure.clone(),
        set: row.set.clone(),
        cites: row.cites.clone(),
        goes_by: row.goes_by,
        compares: row.is.map(|is| key(&is)),
        limit: row.limit.clone(),
        keeps: row.keeps,
        scaled: row.scaled,
    }
}
