//! How a page's lines are laid on sheets: two columns a sheet, and room on the last for figures and names.

use sumpbook_trade::checklist::{Line, PlannedStop};

/// Rows of a column: so many of 5 mm stand below the head on A4 and on Letter.
const COLUMN: usize = 44;
/// Rows of a column on the last sheet.
const LAST: usize = 30;
const COLUMNS: usize = 2;

/// One row of a column.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Row<'a> {
    /// The head of a stop.
    Stop(&'a PlannedStop),
    /// A line to answer.
    Line(&'a Line),
}

/// A sheet: its columns, each a run of rows.
pub(super) type Sheet<'a> = Vec<Vec<Row<'a>>>;

/// The sheets of a walk, as few as hold it.
pub(super) fn sheets(stops: &[PlannedStop]) -> Vec<Sheet<'_>> {
    let mut rows = Vec::new();
    for stop in stops {
        rows.push(Row::Stop(stop));
        rows.extend(stop.lines.iter().map(Row::Line));
    }
    // A head never ends a column, so a few rows may stay empty; more sheets than rows are never needed.
    (1..=rows.len().max(1)).find_map(|count| laid(&rows, count)).unwrap_or_default()
}

/// The rows on so many sheets; none when they do not fit.
fn laid<'a>(rows: &[Row<'a>], count: usize) -> Option<Vec<Sheet<'a>>> {
    let mut rest = rows;
    let mut sheets = Vec::new();
    for number in 1..=count {
        let most = if number == count { LAST } else { COLUMN };
        let mut sheet = Vec::new();
        for _ in 0..COLUMNS {
            let mut taken = rest.len().min(most);
            if taken < rest.len() && matches!(rest.get(taken.saturating_sub(1)), Some(Row::Stop(_))) {
                taken = taken.saturating_sub(1);
            }
            let (column, after) = rest.split_at_checked(taken)?;
            sheet.push(column.to_vec());
            rest = after;
        }
        sheets.push(sheet);
    }
    rest.is_empty().then_some(sheets)
}

#[cfg(test)]
mod tests {
    use super::*;
    use sumpbook_trade::checklist::{Template, plan};
    use sumpbook_trade::{Feature, Features};

    #[test]
    fn every_line_stands_once_in_order_and_no_head_ends_a_column() {
        let template = Template::common_practice().unwrap();
        let all = Features {
            valves: (0..40).map(|n| format!("valve {n}")).collect(),
            ..Features::of(Feature::ALL)
        };
        for features in [Features::default(), Features::of(Feature::ALL), all] {
            let stops = plan(template, &features);
            let sheets = sheets(&stops);
            let laid: Vec<&Row<'_>> = sheets.iter().flatten().flatten().collect();
            let lines: Vec<&Line> = laid
                .iter()
                .filter_map(|row| if let Row::Line(line) = row { Some(*line) } else { None })
                .collect();
            let asked: Vec<&Line> = stops.iter().flat_map(|stop| &stop.lines).collect();
            assert_eq!(lines, asked);
            for (number, sheet) in sheets.iter().enumerate() {
                let most = if number + 1 == sheets.len() { LAST } else { COLUMN };
                for column in sheet {
                    assert!(column.len() <= most);
                    assert!(!matches!(column.last(), Some(Row::Stop(_))));
                }
            }
        }
    }
}
