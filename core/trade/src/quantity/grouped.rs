//! Commas in a figure that somebody typed.

/// A figure without the commas between its thousands: "2,918.0" is "2918.0". `None` where a comma stands anywhere else: it
/// may be meant for the point, which would be ten times the figure, so it is asked about and never guessed.
pub fn ungrouped(text: &str) -> Option<String> {
    if !text.contains(',') {
        return Some(text.to_owned());
    }
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let mut groups = whole.split(',');
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let first = groups.next().is_some_and(|first| digits(first) && first.len() <= 3);
    let grouped = first && groups.all(|group| digits(group) && group.len() == 3);
    (grouped && !part.contains(',')).then(|| text.replace(',', ""))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_comma_stands_between_thousands_or_is_asked_about() {
        for (typed, read) in
            [("500.5", "500.5"), ("2,918.0", "2918.0"), ("1,002,918", "1002918"), ("many", "many")]
        {
            assert_eq!(ungrouped(typed).as_deref(), Some(read));
        }
        for asked in
            ["500,5", "0,5", "2.918,0", "1,00", ",500", "500,", "12,34,567", "1234,567", "1,5 h", "-1,500"]
        {
            assert_eq!(ungrouped(asked), None, "{asked}");
        }
    }
}
