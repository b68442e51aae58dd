//! A value that stands in a text.

use fluent_bundle::FluentValue;

/// A value that stands in a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Arg<'a> {
    /// Words, or a figure already written as it is to stand there.
    Text(&'a str),
    /// A count: it also chooses between one and many.
    Count(i64),
}

impl Arg<'_> {
    pub(super) fn to_fluent(self) -> FluentValue<'static> {
        match self {
            Arg::Text(text) => FluentValue::from(text.to_owned()),
            Arg::Count(count) => FluentValue::from(count),
        }
    }
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Arg<'a> {
        Arg::Text(text)
    }
}

impl From<i64> for Arg<'_> {
    fn from(count: i64) -> Self {
        Arg::Count(count)
    }
}

impl From<u32> for Arg<'_> {
    fn from(count: u32) -> Self {
        Arg::Count(i64::from(count))
    }
}
