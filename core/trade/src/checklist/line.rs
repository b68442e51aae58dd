//! A line of a stop: an item, at a place or of a named thing.

use std::fmt;
use std::str::FromStr;

use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// A side of the unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// In front.
    Front,
    /// On the left.
    Left,
    /// Behind.
    Rear,
    /// On the right.
    Right,
    /// On the trailer.
    Trailer,
    /// On the body.
    Body,
}

impl Side {
    /// All of them.
    pub const ALL: [Side; 6] = [Side::Front, Side::Left, Side::Rear, Side::Right, Side::Trailer, Side::Body];

    /// Its key: "left".
    pub fn key(self) -> &'static str {
        match self {
            Side::Front => "front",
            Side::Left => "left",
            Side::Rear => "rear",
            Side::Right => "right",
            Side::Trailer => "trailer",
            Side::Body => "body",
        }
    }
}

/// What one line of a stop asks: an item, at one side, or of one named thing of the unit.
///
/// As text "horn", "tyre-wall/left", "valve:small hose". A name may hold any sign, "/" and ":" too.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Line {
    /// The item's key.
    pub item: String,
    /// The side, when the item is looked at in more than one place.
    pub side: Option<Side>,
    /// The valve's, reel's or hose's name.
    pub name: Option<String>,
}

impl Line {
    /// A line of an item that stands once.
    pub fn of(item: impl Into<String>) -> Line {
        Line { item: item.into(), side: None, name: None }
    }

    /// The same line, of a named thing.
    pub fn named(&self, name: impl Into<String>) -> Line {
        Line { name: Some(name.into()), ..self.clone() }
    }
}

impl fmt::Display for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.item)?;
        if let Some(side) = self.side {
            write!(f, "/{}", side.key())?;
        }
        match &self.name {
            Some(name) => write!(f, ":{name}"),
            None => Ok(()),
        }
    }
}

/// Why a text is not a line.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("'{0}' is not a line such as horn, tyre-wall/left or valve:small hose")]
pub struct LineError(pub String);

impl FromStr for Line {
    type Err = LineError;
    fn from_str(text: &str) -> Result<Line, LineError> {
        let wrong = || LineError(text.chars().take(60).collect());
        let (front, name) = text.split_once(':').map_or((text, None), |(front, name)| (front, Some(name)));
        let (item, side) = front.split_once('/').map_or((front, None), |(item, side)| (item, Some(side)));
        let side = match side {
            Some(key) => Some(Side::ALL.into_iter().find(|side| side.key() == key).ok_or_else(wrong)?),
            None => None,
        };
        let kebab = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        if item.is_empty() || !item.bytes().all(kebab) || name.is_some_and(str::is_empty) {
            return Err(wrong());
        }
        Ok(Line { item: item.into(), side, name: name.map(Into::into) })
    }
}

impl Serialize for Line {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Line {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Line, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(de::Error::custom)
    }
}

impl JsonSchema for Line {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Line".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "pattern": "^[a-z0-9-]+(/(front|left|rear|right|trailer|body))?(:.+)?$",
            "description": "An item, its side or the name of a thing: \"tyre-wall/left\", \"valve:small hose\""
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_reads_and_writes_itself() {
        for text in ["horn", "tyre-wall/left", "valve:small hose", "hose:3/4 in: no 7", "load/body"] {
            assert_eq!(text.parse::<Line>().unwrap().to_string(), text);
        }
        assert_eq!("hose:3/4".parse::<Line>().unwrap(), Line::of("hose").named("3/4"));
    }

    #[test]
    fn what_is_no_line_is_refused() {
        for text in ["", "/left", "horn/", "horn/up", "valve:", "Horn", "a b", ":x"] {
            assert!(text.parse::<Line>().is_err(), "{text}");
        }
    }
}
