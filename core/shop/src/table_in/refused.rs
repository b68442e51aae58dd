//! The refused rows as a table of their own, to be mended and brought in again.

use super::table::Table;
use super::{DryRun, TableError, Why};
use crate::table_out::{Cell, sheet_of};

/// The rows of a file that its dry run refused, as they are, with a column more that says why. The cells are kept
/// as they are written, except that none begins with a sign a spreadsheet would reckon with.
///
/// # Errors
/// When the file is no table.
pub fn refused_csv(file: &[u8], told: &DryRun, say: impl Fn(Why) -> String) -> Result<Vec<u8>, TableError> {
    let table = Table::read(file)?;
    let widest = table.rows.iter().map(|(_, record)| record.len()).max().unwrap_or(0);
    let width = widest.max(table.written.len());
    let mut heads = table.written.clone();
    heads.resize(width, String::new());
    heads.push("refused".to_owned());
    let mut rows = Vec::new();
    for (row, record) in &table.rows {
        let why: Vec<String> = told
            .refused
            .iter()
            .filter(|refused| refused.row == *row)
            .map(|refused| format!("{}: {}", refused.field, say(refused.why)))
            .collect();
        if why.is_empty() {
            continue;
        }
        let mut cells: Vec<Cell> =
            (0..width).map(|place| Cell::text(record.get(place).map_or("", String::as_str))).collect();
        cells.push(Cell::text(why.join("; ")));
        rows.push(cells);
    }
    Ok(sheet_of(&heads, rows, false))
}
