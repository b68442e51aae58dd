//! Which steps a sheet offers: on one of an earlier day, or a closed version, only what is still open.

use std::collections::BTreeSet;

use crate::due::PartRow;
use crate::sheet::DefectRow;

/// A defect by its unit, its item and its place: of one place at most one is open.
pub(super) type Open = BTreeSet<(String, String, Option<String>)>;

/// What is known beside a row of what can be done about it.
#[derive(Clone, Debug, Default)]
pub(in crate::console) struct Steps {
    waits: Vec<PartRow>,
    open_now: Option<Open>,
}

impl Steps {
    /// Of rows that stand as they are now, beside these waits for parts.
    pub(in crate::console) fn now(waits: impl IntoIterator<Item = PartRow>) -> Steps {
        Steps { waits: waits.into_iter().collect(), open_now: None }
    }

    /// Of a sheet with these waits; `open_now` is what is open today, where the sheet is of an earlier moment.
    pub(super) fn of(waits: &[PartRow], open_now: Option<&Open>) -> Steps {
        Steps { waits: waits.to_vec(), open_now: open_now.cloned() }
    }

    /// Whether the rows tell of an earlier moment.
    pub(super) fn is_of_then(&self) -> bool {
        self.open_now.is_some()
    }

    /// Whether a defect of the rows is open now.
    pub(super) fn is_open(&self, unit: &str, item: &str, place: Option<&str>) -> bool {
        let named = || (unit.to_owned(), item.to_owned(), place.map(str::to_owned));
        self.open_now.as_ref().is_none_or(|open| open.contains(&named()))
    }

    /// Parts this defect waits for.
    pub(super) fn waits_of<'a>(&'a self, row: &'a DefectRow) -> impl Iterator<Item = &'a PartRow> {
        self.waits.iter().filter(|wait| {
            let defect = wait.defect.as_ref().map(|(item, place)| (item, place));
            wait.unit == row.unit && defect == Some((&row.item, &row.place))
        })
    }
}
