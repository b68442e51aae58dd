//! What the rules say of a figure, before its answer is kept.

use sumpbook_daybook::screen::walk_rules::{over, said};
use sumpbook_trade::TruckId;
use sumpbook_trade::record::Answer;

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;
use crate::values::key;

/// One rule's word about one figure.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct RuleRow {
    /// The figure as it was given: "3.5 psi".
    pub figure: String,
    /// Where the rule holds, and in which edition it was read.
    pub rule: String,
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
            let truck = book.ledger().fleet().trucks.get(&unit).ok_or_else(|| PhoneError::Argument {
                what: "unit".to_owned(),
                reason: format!("no unit {unit} is known here"),
            })?;
            let rows = said(template()?, &answer, &truck.features);
            let row = |row: &sumpbook_daybook::screen::walk_rules::RuleSaid| RuleRow {
                figure: row.figure.clone(),
                rule: format!("{} ({})", row.place_of_rule, row.edition),
                cites: row.cites.clone(),
                goes_by: row.goes_by,
                compares: row.is.map(|is| key(&is)),
                limit: row.limit.clone(),
                keeps: row.keeps,
            };
            Ok(RulesSaid { over: over(&rows), rows: rows.iter().map(row).collect() })
        })
    }
}
