//! Lay-ups, and each line of the list before a return as it was answered.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::{Fact, FactKind};

use super::entries::{heads, items};
use super::{Cell, Of, Sheet};
use crate::ShopError;
use crate::console::said_in_english;
use crate::sheet::{Yard, key};

/// One row a lay-up and one an answered line, with the line in words; words alone have a row as well.
pub(super) fn of_sets(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = ["What", "Line", "Line in words", "Answer", "Why", "Words", "Lay-up's entry", "List edition"];
    let mut rows = Vec::new();
    for item in items(ledger, of, &[FactKind::LayUp, FactKind::ReturnToService])? {
        match &item.entry.fact {
            Fact::LayUp(lay_up) => {
                let blank = || Cell::blank();
                let words = Cell::some(lay_up.done.clone());
                let own = [Cell::text("lay-up"), blank(), blank(), blank(), blank(), words, blank(), blank()];
                rows.push(item.row(ledger, yard, own));
            }
            Fact::ReturnToService(said) => {
                let names = || Cell::some(said.lay_up.map(|entry| entry.to_string()));
                let edition = || Cell::known(said.edition);
                for line in &said.lines {
                    rows.push(item.row(
                        ledger,
                        yard,
                        [
                            Cell::text("return-line"),
                            Cell::text(&line.line),
                            Cell::text(said_in_english(&format!("return-{}", line.line))),
                            Cell::text(key(&line.how)),
                            Cell::some(line.reason.clone()),
                            Cell::some(said.done.clone()),
                            names(),
                            edition(),
                        ],
                    ));
                }
                if said.lines.is_empty() {
                    let blank = || Cell::blank();
                    let words = Cell::some(said.done.clone());
                    let own =
                        [Cell::text("words"), blank(), blank(), blank(), blank(), words, names(), edition()];
                    rows.push(item.row(ledger, yard, own));
                }
            }
            _ => {}
        }
    }
    Ok(Sheet { heads: heads(&own), rows })
}
