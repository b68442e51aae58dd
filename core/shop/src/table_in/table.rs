//! A file as rows of cells.

use super::columns::{self, Head};
use super::{MOST_BYTES, TableError, What};

/// More rows than this are no binder's.
const MOST_ROWS: usize = 50_000;

/// A file's heads and rows. Rows are numbered as a spreadsheet does: the heads are row 1.
pub(super) struct Table {
    pub(super) rows: Vec<(usize, Vec<String>)>,
    /// The heads as the file writes them.
    pub(super) written: Vec<String>,
}

impl Table {
    /// Reads a file. Cells are parted by commas, semicolons or tabs: whichever parts its heads into most.
    pub(super) fn read(file: &[u8]) -> Result<Table, TableError> {
        if file.len() > MOST_BYTES {
            return Err(TableError::TooLarge);
        }
        let text = text(file)?;
        let (mut heads, mut rows) = (Vec::new(), Vec::new());
        for sign in [b',', b';', b'\t'] {
            let parted = parted(&text, sign)?;
            if parted.0.len() > heads.len() {
                (heads, rows) = parted;
            }
        }
        if rows.is_empty() { Err(TableError::Empty) } else { Ok(Table { rows, written: heads }) }
    }

    /// The columns that are known, and the heads nothing is done with.
    pub(super) fn heads(&self, what: What) -> Result<(Vec<Head>, Vec<String>), TableError> {
        let (heads, unused) = columns::known(what, &self.written);
        let missing = what.needed().iter().find(|column| !heads.iter().any(|head| head.column == **column));
        if let Some(missing) = missing {
            let known: Vec<&str> = what.columns().iter().map(|column| column.name()).collect();
            return Err(TableError::Column {
                what: what.name(),
                missing: missing.name(),
                known: known.join(", "),
            });
        }
        Ok((heads, unused))
    }
}

/// The file's text: UTF-8 with or without its mark, or UTF-16 with it, as spreadsheets save "Unicode text".
fn text(file: &[u8]) -> Result<String, TableError> {
    let utf_16 = |rest: &[u8], unit: fn([u8; 2]) -> u16| {
        let units: Vec<u16> =
            rest.chunks_exact(2).filter_map(|pair| pair.try_into().ok().map(unit)).collect();
        String::from_utf16(&units).map_err(|_| TableError::NotText)
    };
    let text = match file {
        [0xff, 0xfe, rest @ ..] => utf_16(rest, u16::from_le_bytes)?,
        [0xfe, 0xff, rest @ ..] => utf_16(rest, u16::from_be_bytes)?,
        [0xef, 0xbb, 0xbf, rest @ ..] | rest => {
            std::str::from_utf8(rest).map_err(|_| TableError::NotText)?.to_owned()
        }
    };
    if text.contains('\0') { Err(TableError::NotText) } else { Ok(text) }
}

type Parted = (Vec<String>, Vec<(usize, Vec<String>)>);

fn parted(text: &str, sign: u8) -> Result<Parted, TableError> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(sign)
        .from_reader(text.as_bytes());
    let (mut heads, mut rows) = (Vec::new(), Vec::new());
    // Lines without anything are passed over by the reader and counted by a spreadsheet; a cell of two lines is one
    // row there.
    let (mut row, mut next_line) = (0usize, 1u64);
    for record in reader.records() {
        let record = record.map_err(|error| TableError::NotATable(error.to_string()))?;
        let line = record.position().map_or(next_line, csv::Position::line);
        let cells: Vec<String> = record.iter().map(str::to_owned).collect();
        row = row
            .saturating_add(1)
            .saturating_add(usize::try_from(line.saturating_sub(next_line)).unwrap_or(0));
        let within: usize = cells.iter().map(|cell| cell.matches('\n').count()).sum();
        next_line = line.saturating_add(1).saturating_add(within as u64);
        if heads.is_empty() {
            heads = cells;
        } else if cells.iter().any(|cell| !cell.trim().is_empty()) {
            rows.push((row, cells));
        }
        if rows.len() > MOST_ROWS {
            return Err(TableError::NotATable(format!("it has more than {MOST_ROWS} rows")));
        }
    }
    Ok((heads, rows))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_numbered_as_a_spreadsheet_does() {
        let table =
            Table::read(b"unit,date,hours\nTH-01,2026-10-12,1\n\n,,\nTH-02,\"2026-\n10-12\",2\nTH-03,x,3\n")
                .unwrap();
        let numbers: Vec<usize> = table.rows.iter().map(|(row, _)| *row).collect();
        assert_eq!(numbers, [2, 5, 6]);
    }

    #[test]
    fn semicolons_tabs_and_other_marks_are_read() {
        for file in [
            "unidad;fecha;horas\nTH-01;2026-10-12;1,5\n".as_bytes().to_vec(),
            "\u{feff}unit\tdate\thours\nTH-01\t2026-10-12\t1,5\n".as_bytes().to_vec(),
            [
                vec![0xff, 0xfe],
                "unit;date;hours\nTH-01;2026-10-12;1,5\n".encode_utf16().flat_map(u16::to_le_bytes).collect(),
            ]
            .concat(),
        ] {
            let table = Table::read(&file).unwrap();
            assert_eq!(table.rows[0].1, ["TH-01", "2026-10-12", "1,5"]);
            assert_eq!(table.heads(What::Readings).unwrap().0.len(), 3);
        }
    }

    #[test]
    fn what_is_no_table_says_so() {
        assert!(matches!(Table::read(b""), Err(TableError::Empty)));
        assert!(matches!(Table::read(b"unit,date\n"), Err(TableError::Empty)));
        assert!(matches!(Table::read(&[b'a', 0xff, b'\n']), Err(TableError::NotText)));
        assert!(matches!(Table::read(b"a\0b\n1,2\n"), Err(TableError::NotText)));
        assert!(matches!(Table::read(&vec![b'a'; MOST_BYTES + 1]), Err(TableError::TooLarge)));
        let told =
            Table::read(b"unit,hours\nTH-01,1\n").unwrap().heads(What::Readings).unwrap_err().to_string();
        assert!(told.contains("no column 'date'"), "{told}");
    }
}
