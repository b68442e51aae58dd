//! One cell, and a table as bytes.

/// A cell of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell(String);

/// Signs with which a spreadsheet begins to reckon, or which hide such a sign from the eye.
const RECKONS: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

/// Whether a spreadsheet would take this text for a formula.
pub fn would_reckon(text: &str) -> bool {
    text.starts_with(RECKONS)
}

impl Cell {
    /// Words that somebody wrote. Where a spreadsheet would reckon with them a `'` stands before: it then shows them
    /// as they are.
    pub fn text(text: impl Into<String>) -> Cell {
        let text = text.into();
        if would_reckon(&text) { Cell(format!("'{text}")) } else { Cell(text) }
    }

    /// Words that may be missing.
    pub fn some(text: Option<impl Into<String>>) -> Cell {
        text.map_or_else(Cell::blank, Cell::text)
    }

    /// A figure: digits and a point, below zero with its sign.
    pub fn figure(figure: impl std::fmt::Display) -> Cell {
        let text = figure.to_string();
        let digits = text.strip_prefix('-').unwrap_or(&text);
        let plain = digits.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
        if plain && digits.starts_with(|c: char| c.is_ascii_digit()) { Cell(text) } else { Cell::text(text) }
    }

    /// A figure that may be unknown: then the cell is blank, never 0.
    pub fn known(figure: Option<impl std::fmt::Display>) -> Cell {
        figure.map_or_else(Cell::blank, Cell::figure)
    }

    /// Yes or no.
    pub fn yes(yes: bool) -> Cell {
        Cell(if yes { "yes" } else { "no" }.to_owned())
    }

    /// Yes, no, or not said.
    pub fn said(yes: Option<bool>) -> Cell {
        yes.map_or_else(Cell::blank, Cell::yes)
    }

    /// Unknown.
    pub fn blank() -> Cell {
        Cell(String::new())
    }

    /// As it stands in the file.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// A table as a file (RFC 4180): UTF-8, lines ended by CR LF; with the mark at its beginning that some
/// spreadsheets need to see that it is UTF-8.
pub fn sheet_of(heads: &[String], rows: impl IntoIterator<Item = Vec<Cell>>, mark: bool) -> Vec<u8> {
    let begins = if mark { "\u{feff}".as_bytes().to_vec() } else { Vec::new() };
    let mut writer =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).flexible(true).from_writer(begins);
    // Writing to a Vec cannot fail, and rows may be of any length.
    let heads: Vec<Cell> = heads.iter().map(|head| Cell::text(head.as_str())).collect();
    let _ = writer.write_record(heads.iter().map(Cell::as_str));
    for row in rows {
        let _ = writer.write_record(row.iter().map(Cell::as_str));
    }
    writer.into_inner().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_never_reckon_and_figures_stay_figures() {
        for text in ["=1+1", "+1", "-x", "@sum", "\tx", "\rx", "\nx", "＝1"] {
            assert_eq!(Cell::text(text).as_str(), format!("'{text}"), "{text:?}");
        }
        assert_eq!(Cell::text("oil = changed").as_str(), "oil = changed");
        assert_eq!(Cell::figure("-6.1").as_str(), "-6.1");
        assert_eq!(Cell::figure("-6.1+cmd").as_str(), "'-6.1+cmd");
        assert_eq!(Cell::known(None::<i64>).as_str(), "");
    }

    #[test]
    fn a_table_is_quoted_and_marked() {
        let rows = [vec![Cell::text("a, \"b\"\r\nc"), Cell::figure(1)]];
        let bytes = sheet_of(&["What".into(), "Count".into()], rows, true);
        assert_eq!(String::from_utf8(bytes).unwrap(), "\u{feff}What,Count\r\n\"a, \"\"b\"\"\r\nc\",1\r\n");
    }
}
