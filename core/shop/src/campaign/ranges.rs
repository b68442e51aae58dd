//! Serial ranges as people write them.

use sumpbook_trade::record::SerialRange;

/// One range a line, its ends with two dots between them: `KX-1000..KX-1999`; or one serial alone. Blank lines say
/// nothing. Whether the ends compare is not looked at here.
pub fn ranges_of(text: &str) -> Vec<SerialRange> {
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    lines
        .map(|line| {
            let (from, to) = line.split_once("..").unwrap_or((line, line));
            // A third dot is one too many, not a part of a serial.
            SerialRange { from: from.trim().to_owned(), to: to.trim_start_matches('.').trim().to_owned() }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_dots_stand_between_the_ends_and_one_alone_is_both() {
        let range = |from: &str, to: &str| SerialRange { from: from.to_owned(), to: to.to_owned() };
        let read = ranges_of("KX-1000..KX-1999\n\n 77 B \nKX-3.1 ... KX-3.9\n");
        assert_eq!(read, [range("KX-1000", "KX-1999"), range("77 B", "77 B"), range("KX-3.1", "KX-3.9")]);
        assert_eq!(ranges_of(" \n"), []);
    }
}
