//! Which part of a file a browser asks for (RFC 9110, 14.2).

/// The bytes that one range of `length` bytes asks for: where it begins and where it ends, the end not in it. None where
/// the whole file answers as well: several ranges, one that is not there, words that are none.
pub(super) fn wanted(range: &str, length: usize) -> Option<(usize, usize)> {
    let (from, to) = range.trim().strip_prefix("bytes=")?.split_once('-')?;
    let number = |text: &str| text.trim().parse::<usize>();
    let (from, to) = match (number(from), number(to)) {
        (Ok(from), Ok(to)) => (from, to.saturating_add(1).min(length)),
        (Ok(from), Err(_)) if to.trim().is_empty() => (from, length),
        // The last so many.
        (Err(_), Ok(last)) if from.trim().is_empty() => (length.saturating_sub(last), length),
        _ => return None,
    };
    (from < to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::wanted;

    #[test]
    fn one_part_is_given_and_what_is_none_gets_the_whole() {
        assert_eq!(wanted("bytes=0-", 100), Some((0, 100)));
        assert_eq!(wanted("bytes=10-19", 100), Some((10, 20)));
        assert_eq!(wanted("bytes=90-400", 100), Some((90, 100)));
        assert_eq!(wanted("bytes=-5", 100), Some((95, 100)));
        assert_eq!(wanted("bytes=-500", 100), Some((0, 100)));
        for none in ["bytes=100-", "bytes=20-10", "bytes=-", "bytes=0-1,5-6", "lines=0-1", "", "bytes=-0"] {
            assert_eq!(wanted(none, 100), None, "{none}");
        }
        assert_eq!(wanted("bytes=0-18446744073709551615", 100), Some((0, 100)));
    }
}
