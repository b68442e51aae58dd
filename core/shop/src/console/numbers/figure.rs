//! A whole number with a decimal point in it, as people read and write it: 128 with two places is "1.28".

/// As people read it.
pub(in crate::console) fn text(value: u32, places: u32) -> String {
    let one = 10_u32.pow(places);
    match places {
        0 => value.to_string(),
        _ => format!("{}.{:0width$}", value / one, value % one, width = places as usize),
    }
}

/// As people write it; none when it is no such number or says more than its places hold.
pub(super) fn read(text: &str, places: u32) -> Option<u32> {
    let text = sumpbook_trade::ungrouped(text)?;
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || !digits(whole) || !digits(part) {
        return None;
    }
    let (kept, beyond) = part.split_at_checked(places as usize).unwrap_or((part, ""));
    if beyond.bytes().any(|byte| byte != b'0') {
        return None;
    }
    let part: u32 = format!("{kept:0<width$}", width = places as usize).parse().unwrap_or(0);
    whole.parse::<u32>().ok()?.checked_mul(10_u32.pow(places))?.checked_add(part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_what_is_read() {
        for (value, places, shown) in [(128, 2, "1.28"), (7, 2, "0.07"), (500, 1, "50.0"), (14, 0, "14")] {
            assert_eq!(text(value, places), shown);
            assert_eq!(read(shown, places), Some(value));
        }
        assert_eq!(read("1,440", 0), Some(1_440));
        assert_eq!(read("50", 1), Some(500));
        assert_eq!(read("14.0", 0), Some(14));
    }

    #[test]
    fn what_is_no_number_is_not_guessed() {
        for wrong in ["", ".", ".5", "1.234", "-1", "1e3", "14.5h", "1.2.3", "1,3", "99999999999", "٣"] {
            assert_eq!(read(wrong, 2), None, "{wrong}");
        }
        assert_eq!(read("14.5", 0), None);
    }
}
