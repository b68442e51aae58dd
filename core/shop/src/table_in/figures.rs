//! Figures as people write them: 1,204.7 and 1.204,7, hours as 1204:42. What can be two figures is told as two.

use serde::{Deserialize, Serialize};
use sumpbook_trade::Tenths;

use super::Why;

/// Which sign stands before the decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DecimalStyle {
    /// 1,204.7
    Point,
    /// 1.204,7
    Comma,
}

impl DecimalStyle {
    fn sign(self) -> char {
        match self {
            DecimalStyle::Point => '.',
            DecimalStyle::Comma => ',',
        }
    }

    fn of(sign: char) -> DecimalStyle {
        if sign == ',' { DecimalStyle::Comma } else { DecimalStyle::Point }
    }

    fn other(self) -> DecimalStyle {
        match self {
            DecimalStyle::Point => DecimalStyle::Comma,
            DecimalStyle::Comma => DecimalStyle::Point,
        }
    }
}

/// What a cell says: its figure in plain form, digits and at most one point.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Figure {
    /// One figure; and the style it shows, where it shows one.
    One { plain: String, only: Option<DecimalStyle> },
    /// One of two.
    Two { point: String, comma: String },
    /// None.
    Wrong(Why),
}

/// Reads a cell that holds a number and nothing else.
pub(super) fn read(text: &str, style: Option<DecimalStyle>) -> Figure {
    let bare: String = text
        .trim()
        .chars()
        .filter(|c| !matches!(c, ' ' | '\u{a0}' | '\u{202f}' | '\'' | '\u{2019}'))
        .collect();
    let digits = bare.strip_prefix('+').unwrap_or(&bare);
    if digits.starts_with('-') && digits.len() > 1 {
        return Figure::Wrong(Why::Negative);
    }
    let is_figure = digits.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','))
        && digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.ends_with(|c: char| c.is_ascii_digit());
    if !is_figure || digits.len() > 24 {
        return Figure::Wrong(Why::NotAFigure);
    }
    let signs: Vec<char> = digits.chars().filter(|c| !c.is_ascii_digit()).collect();
    let Some(last) = signs.last().copied() else { return one(digits.to_owned(), None) };
    let shows = if signs.iter().any(|sign| *sign != last) {
        // Both signs: the last one stands before the decimals.
        Some(DecimalStyle::of(last))
    } else if signs.len() > 1 {
        // One sign several times can only part thousands.
        Some(DecimalStyle::of(last).other())
    } else {
        let (before, after) = digits.split_once(last).unwrap_or((digits, ""));
        let thousands = after.len() == 3 && before.len() <= 3 && before != "0";
        (!thousands).then_some(DecimalStyle::of(last))
    };
    match (style, shows) {
        (Some(asked), Some(shown)) if asked != shown => Figure::Wrong(Why::OtherDecimals),
        (Some(asked), _) => plain(digits, asked).map_or(Figure::Wrong(Why::NotAFigure), |p| one(p, None)),
        (None, Some(shown)) => {
            plain(digits, shown).map_or(Figure::Wrong(Why::NotAFigure), |p| one(p, Some(shown)))
        }
        (None, None) => match (plain(digits, DecimalStyle::Point), plain(digits, DecimalStyle::Comma)) {
            (Some(point), Some(comma)) => Figure::Two { point, comma },
            _ => Figure::Wrong(Why::NotAFigure),
        },
    }
}

fn one(plain: String, only: Option<DecimalStyle>) -> Figure {
    Figure::One { plain, only }
}

/// Digits with a point at the decimals; none when thousands are parted otherwise than by threes.
fn plain(digits: &str, style: DecimalStyle) -> Option<String> {
    let (whole, decimals) = match digits.rsplit_once(style.sign()) {
        Some((whole, decimals)) => (whole, Some(decimals)),
        None => (digits, None),
    };
    let mut groups = whole.split(style.other().sign());
    let first = groups.next()?;
    let mut joined = first.to_owned();
    for group in groups {
        if group.len() != 3 || first.is_empty() || first.len() > 3 {
            return None;
        }
        joined.push_str(group);
    }
    let all_digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    if !all_digits(&joined) || decimals.is_some_and(|part| !all_digits(part)) {
        return None;
    }
    Some(match decimals {
        Some(decimals) => format!("{joined}.{decimals}"),
        None => joined,
    })
}

/// Hours written as 1204:42 or 1204:42:30, to the nearest tenth; none when the cell is no such thing.
pub(super) fn clock_hours(text: &str) -> Option<Result<Tenths, Why>> {
    let text = text.trim();
    let parts: Vec<&str> = text.split(':').collect();
    let digits =
        |part: &str| !part.is_empty() && part.len() <= 7 && part.bytes().all(|byte| byte.is_ascii_digit());
    let (hours, minutes, seconds) = match parts.as_slice() {
        [hours, minutes] => (hours, minutes, &"0"),
        [hours, minutes, seconds] => (hours, minutes, seconds),
        _ => return None,
    };
    if ![hours, minutes, seconds].into_iter().all(|part| digits(part)) {
        return Some(Err(Why::NotAFigure));
    }
    let n = |part: &str| part.parse::<i64>().unwrap_or(i64::MAX);
    if n(minutes) > 59 || n(seconds) > 59 {
        return Some(Err(Why::NoSuchMinute));
    }
    let seconds = n(hours).saturating_mul(3_600).saturating_add(n(minutes) * 60).saturating_add(n(seconds));
    // A tenth is 360 seconds.
    Some(Ok(Tenths(seconds.saturating_add(180) / 360)))
}

/// Hours of a plain figure to the nearest tenth, and whether something was rounded.
pub(super) fn tenths(plain: &str) -> Result<(Tenths, bool), Why> {
    let (whole, decimals) = plain.split_once('.').unwrap_or((plain, "0"));
    let whole: i64 = whole.parse().map_err(|_| Why::TooLarge)?;
    // No meter of ours has seven digits before its point.
    if whole > 999_999 {
        return Err(Why::TooLarge);
    }
    let mut digits = decimals.bytes().map(|byte| i64::from(byte.saturating_sub(b'0')));
    let (tenth, next) = (digits.next().unwrap_or(0), digits.next().unwrap_or(0));
    let rounded = decimals.bytes().skip(1).any(|byte| byte != b'0');
    let up = i64::from(next >= 5);
    Ok((Tenths(whole.saturating_mul(10).saturating_add(tenth).saturating_add(up)), rounded))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain_of(text: &str, style: Option<DecimalStyle>) -> String {
        match read(text, style) {
            Figure::One { plain, .. } => plain,
            other => panic!("{text}: {other:?}"),
        }
    }

    #[test]
    fn one_sign_before_three_digits_can_be_two_figures() {
        let two = |point: &str, comma: &str| Figure::Two { point: point.into(), comma: comma.into() };
        assert_eq!(read("1,204", None), two("1204", "1.204"));
        assert_eq!(read("1.204", None), two("1.204", "1204"));
        assert_eq!(plain_of("1,204", Some(DecimalStyle::Point)), "1204");
        assert_eq!(plain_of("1,204", Some(DecimalStyle::Comma)), "1.204");
    }

    #[test]
    fn what_shows_its_style_is_read_by_it() {
        for (text, plain, only) in [
            ("1,204.7", "1204.7", Some(DecimalStyle::Point)),
            ("1.204,7", "1204.7", Some(DecimalStyle::Comma)),
            ("1204.7", "1204.7", Some(DecimalStyle::Point)),
            ("1204,7", "1204.7", Some(DecimalStyle::Comma)),
            ("0.250", "0.250", Some(DecimalStyle::Point)),
            ("1,204,700", "1204700", Some(DecimalStyle::Point)),
            ("1 204,7", "1204.7", Some(DecimalStyle::Comma)),
            ("2862", "2862", None),
        ] {
            assert_eq!(read(text, None), Figure::One { plain: plain.into(), only }, "{text}");
        }
    }

    #[test]
    fn another_style_than_the_files_is_refused_and_not_read() {
        assert_eq!(read("1204,7", Some(DecimalStyle::Point)), Figure::Wrong(Why::OtherDecimals));
        assert_eq!(read("1.204,7", Some(DecimalStyle::Point)), Figure::Wrong(Why::OtherDecimals));
        assert_eq!(read("1,20,4.7", None), Figure::Wrong(Why::NotAFigure));
        assert_eq!(read("-3", None), Figure::Wrong(Why::Negative));
        for text in ["", "-", "x", "1.2.3,4,5", ".5", "5.", "1e3", "٣"] {
            assert!(matches!(read(text, None), Figure::Wrong(_)), "{text}");
        }
    }

    #[test]
    fn hours_and_minutes_become_tenths() {
        assert_eq!(clock_hours("1204:42"), Some(Ok(Tenths(12_047))));
        assert_eq!(clock_hours("0:03"), Some(Ok(Tenths(1))));
        assert_eq!(clock_hours("0:02:59"), Some(Ok(Tenths(0))));
        assert_eq!(clock_hours("12:60"), Some(Err(Why::NoSuchMinute)));
        assert_eq!(clock_hours("1204.7"), None);
        assert_eq!(tenths("1204.75"), Ok((Tenths(12_048), true)));
        assert_eq!(tenths("1204.70"), Ok((Tenths(12_047), false)));
        assert_eq!(tenths("1204"), Ok((Tenths(12_040), false)));
        assert_eq!(tenths("12345678"), Err(Why::TooLarge));
    }
}
