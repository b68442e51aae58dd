//! Neat tables for people: ruled heads, no boxes, wrapped to the width of a page.

use comfy_table::{ContentArrangement, Table, presets};

/// Columns a page is wide when the terminal does not say.
const WIDTH: u16 = 110;

/// A table under its heads; an empty text when there are no rows.
pub fn table<const N: usize>(heads: [&str; N], rows: impl IntoIterator<Item = [String; N]>) -> String {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(width());
    table.set_header(heads);
    let mut any = false;
    for row in rows {
        any = true;
        table.add_row(row);
    }
    if any { indented(&table.to_string()) } else { String::new() }
}

/// A section of a sheet: its count and name on one line, what there is to say below. A section with nothing
/// keeps its line with 0.
pub fn section(count: usize, name: &str, aside: &str, below: &str) -> String {
    let mut text = format!("{count:>3}  {name}");
    if !aside.is_empty() {
        text.push_str("   ");
        text.push_str(aside);
    }
    text.push('\n');
    text.push_str(below);
    if !below.is_empty() && !below.ends_with('\n') {
        text.push('\n');
    }
    text
}

fn indented(text: &str) -> String {
    text.lines().map(|line| format!("     {}", line.trim_end())).collect::<Vec<_>>().join("\n")
}

fn width() -> u16 {
    let columns = std::env::var("COLUMNS").ok().and_then(|text| text.parse().ok());
    columns.unwrap_or(WIDTH).clamp(60, 200).saturating_sub(5)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_section_with_nothing_keeps_its_line() {
        let none = table(["Unit", "First use"], Vec::<[String; 2]>::new());
        assert_eq!(
            section(0, "Used without a pre-trip", "none recorded", &none),
            "  0  Used without a pre-trip   none recorded\n"
        );
    }

    #[test]
    fn heads_stand_over_their_columns() {
        let text = table(["Unit", "Hours"], [["TH-01".to_owned(), "2862.4".to_owned()]]);
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines.len(), 2);
        assert_eq!(lines[0].find("Hours"), lines[1].find("2862.4"));
    }
}
