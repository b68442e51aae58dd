//! How serials order: by their text, then by the number at their end.
//!
//! `KX-1500` is the text `KX` and the number 1500. Capitals, blanks and signs in the text do not matter, and neither
//! do zeros before the number: a plate says `KX-0150` where the binder says `kx 150`. The number may be of any length.

use std::cmp::Ordering;

use crate::record::SerialRange;

/// A serial taken apart.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Serial {
    /// Letters and digits before the number, capitals.
    text: String,
    /// The number's digits without zeros before them; none is zero.
    number: String,
}

impl Serial {
    /// Takes a serial apart; none when no number stands at its end.
    pub fn read(written: &str) -> Option<Serial> {
        let written = written.trim();
        let head = written.trim_end_matches(|c: char| c.is_ascii_digit());
        let digits = written.strip_prefix(head).filter(|digits| !digits.is_empty())?;
        Some(Serial { text: plain(head), number: digits.trim_start_matches('0').to_owned() })
    }

    /// Whether both have the same text, so that their numbers tell which comes first in the maker's row.
    fn compares_with(&self, other: &Serial) -> bool {
        self.text == other.text
    }

    /// Whether one may be the other written short: with a part of its text left out, or a sign that stood between.
    fn may_be_short_of(&self, other: &Serial) -> bool {
        let (a, b) = (&self.text, &other.text);
        let part = |whole: &str, part: &str| whole.starts_with(part) || whole.ends_with(part);
        part(a, b) || part(b, a)
    }
}

impl Ord for Serial {
    fn cmp(&self, other: &Serial) -> Ordering {
        let key = |serial: &Serial| serial.number.len();
        self.text
            .cmp(&other.text)
            .then_with(|| key(self).cmp(&key(other)))
            .then_with(|| self.number.cmp(&other.number))
    }
}

impl PartialOrd for Serial {
    fn partial_cmp(&self, other: &Serial) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// Letters and digits alone, as capitals.
fn plain(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase).collect()
}

/// Why a range cannot be used. Each names the ends as they were given.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RangeError {
    /// An end has nothing in it.
    #[error("a range needs a first and a last serial; for one alone give it twice")]
    Empty,
    /// The ends have another text before their number, or no number at their end.
    #[error("'{0}' and '{1}' do not compare: both must be the same text and then a number at the end")]
    DoNotCompare(String, String),
    /// The last comes before the first.
    #[error("'{1}' comes before '{0}': give the first serial first")]
    Backwards(String, String),
}

/// Whether a range can be used: its ends compare and stand in their order, or it is one serial alone.
///
/// # Errors
/// [`RangeError`].
pub fn check(range: &SerialRange) -> Result<(), RangeError> {
    let (from, to) = (plain(&range.from), plain(&range.to));
    if from.is_empty() || to.is_empty() {
        return Err(RangeError::Empty);
    }
    let ends = || (range.from.trim().to_owned(), range.to.trim().to_owned());
    match Serial::read(&range.from).zip(Serial::read(&range.to)) {
        Some((first, last)) if first.compares_with(&last) => {
            let (from, to) = ends();
            if first <= last { Ok(()) } else { Err(RangeError::Backwards(from, to)) }
        }
        _ if from == to => Ok(()),
        _ => {
            let (from, to) = ends();
            Err(RangeError::DoNotCompare(from, to))
        }
    }
}

/// What a range says of a serial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Within {
    /// It lies in it.
    Yes,
    /// It does not.
    No,
    /// They do not compare: no number stands at the serial's end.
    NoNumber,
    /// They do not compare: one text is a part of the other.
    OtherText,
}

/// Compares a serial, which is not blank, with a range.
pub(super) fn within(range: &SerialRange, written: &str) -> Within {
    let serial = Serial::read(written);
    match (Serial::read(&range.from), Serial::read(&range.to), serial) {
        (Some(first), Some(last), Some(serial)) if first.compares_with(&last) => {
            match (serial.compares_with(&first), serial.may_be_short_of(&first)) {
                (true, _) if first <= serial && serial <= last => Within::Yes,
                (true, _) => Within::No,
                (false, true) => Within::OtherText,
                (false, false) => Within::No,
            }
        }
        (Some(first), Some(last), None) if first.compares_with(&last) => Within::NoNumber,
        // One serial alone, with no number at its end: it is this one or it is not.
        (_, _, _) => {
            let (one, this) = (plain(&range.from), plain(written));
            if one != plain(&range.to) {
                return Within::OtherText;
            }
            match (one == this, one.ends_with(&this) || this.ends_with(&one)) {
                (true, _) => Within::Yes,
                (false, true) => Within::OtherText,
                (false, false) => Within::No,
            }
        }
    }
}
