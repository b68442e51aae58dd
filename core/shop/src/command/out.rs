//! Where a command's words go.

use std::io::{self, Write};

use serde::Serialize;

use super::CommandError;

/// What a command has to say: for people, and as JSON.
#[derive(Debug)]
pub struct Said {
    /// For people.
    pub(super) text: String,
    /// For programs.
    pub(super) json: serde_json::Value,
    /// Whether all that was asked could be done; otherwise the words say what is missing.
    pub(super) whole: bool,
}

impl Said {
    /// The same thing, said twice.
    ///
    /// # Errors
    /// When the value cannot be JSON.
    pub(super) fn new(text: impl Into<String>, value: &impl Serialize) -> Result<Said, CommandError> {
        Ok(Said { text: text.into(), json: without_nulls(serde_json::to_value(value)?), whole: true })
    }

    /// The same of what was done in part: the command ends as one that failed, so that a script asks again.
    pub(super) fn in_part(self, in_part: bool) -> Said {
        Said { whole: !in_part, ..self }
    }
}

/// Writes to standard output; a reader that has gone away ends the command quietly.
///
/// # Errors
/// When standard output cannot be written.
pub(super) fn say(said: &Said, json: bool) -> Result<(), CommandError> {
    if json { line(&serde_json::to_string(&said.json)?) } else { line(said.text.trim_end()) }
}

/// Writes one line and makes sure it has gone out.
///
/// # Errors
/// When standard output cannot be written.
pub(super) fn line(text: &str) -> Result<(), CommandError> {
    let mut out = io::stdout().lock();
    match writeln!(out, "{text}").and_then(|()| out.flush()) {
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        other => Ok(other?),
    }
}

/// Writes a file's bytes to standard output, as they are.
///
/// # Errors
/// When standard output cannot be written.
pub(super) fn bytes(bytes: &[u8]) -> Result<(), CommandError> {
    let mut out = io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        other => Ok(other?),
    }
}

/// Writes to standard error: progress, and what went wrong.
pub(super) fn aside(text: &str) {
    // When even this cannot be written there is nobody to tell.
    let _ = writeln!(io::stderr().lock(), "{text}");
}

/// A count with its word: "1 entry", "2 entries".
pub(super) fn counted(count: usize, one: &str, more: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { more })
}

/// Absent is absent: no nulls in what is printed.
fn without_nulls(value: serde_json::Value) -> serde_json::Value {
    use serde_json::Value;
    match value {
        Value::Object(map) => Value::Object(
            map.into_iter().filter(|(_, v)| !v.is_null()).map(|(k, v)| (k, without_nulls(v))).collect(),
        ),
        Value::Array(items) => Value::Array(items.into_iter().map(without_nulls).collect()),
        other => other,
    }
}
