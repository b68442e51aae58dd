//! From text to a line, refusing what nobody would understand later.

use serde_json::{Map, Value};
use sumpbook_trade::FactKind;

use super::{Line, LineError};

/// Common fields of a line; `kind` and `body` are the fact's.
const FIELDS: [&str; 12] = [
    "unit",
    "person",
    "with",
    "at",
    "hours",
    "note",
    "source",
    "pin-given",
    "trainer-pin-given",
    "id",
    "kind",
    "body",
];

impl Line {
    /// Reads one line.
    ///
    /// # Errors
    /// Not JSON, an unknown field or kind (named), a body that does not read as its kind.
    pub fn read(text: &str) -> Result<Line, LineError> {
        let value: Value = serde_json::from_str(text).map_err(|e| LineError::NotJson(e.to_string()))?;
        Line::from_value(value)
    }

    /// Reads a line that is JSON already.
    ///
    /// # Errors
    /// As [`Line::read`].
    pub fn from_value(value: Value) -> Result<Line, LineError> {
        let Value::Object(object) = value else { return Err(LineError::NotAnObject) };
        // Flattening takes away serde's own refusal of unknown fields: a mistyped "hourz" would be lost.
        if let Some(field) = object.keys().find(|key| !FIELDS.contains(&key.as_str())) {
            return Err(LineError::UnknownField { field: cut(field), known: FIELDS.join(", ") });
        }
        let kind = kind(&object)?;
        serde_json::from_value(Value::Object(object))
            .map_err(|e| LineError::Shape { kind, why: cut(&e.to_string()) })
    }

    /// Reads a file of lines; each comes with its number, 1 first. Blank lines are passed over.
    pub fn read_all(text: &str) -> impl Iterator<Item = (usize, Result<Line, LineError>)> + '_ {
        let numbered = text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
        numbered.map(|(index, line)| (index + 1, Line::read(line)))
    }

    /// The line as text, without an end of line.
    pub fn write(&self) -> String {
        // Our own types never refuse to be written.
        serde_json::to_string(self).unwrap_or_default()
    }
}

fn kind(object: &Map<String, Value>) -> Result<String, LineError> {
    let known = || {
        let names: Vec<String> = FactKind::ALL.iter().map(|kind| name_of(*kind)).collect();
        names.join(", ")
    };
    let Some(kind) = object.get("kind").and_then(Value::as_str) else {
        return Err(LineError::NoKind(known()));
    };
    let is_known = serde_json::from_value::<FactKind>(Value::from(kind)).is_ok();
    match is_known {
        true => Ok(kind.to_owned()),
        false => Err(LineError::UnknownKind { kind: cut(kind), known: known() }),
    }
}

/// The name a kind has in JSON.
pub(super) fn name_of(kind: FactKind) -> String {
    let name = serde_json::to_value(kind).ok();
    name.as_ref().and_then(Value::as_str).unwrap_or_default().to_owned()
}

/// A text from elsewhere, short enough for a message.
fn cut(text: &str) -> String {
    text.chars().take(300).collect()
}
