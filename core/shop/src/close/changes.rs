//! What changed between two versions of a sheet, one readable line each.

use serde_json::Value;

use crate::ShopError;
use crate::sheet::DaySheet;

/// Parts that move without anybody recording anything: no reason for a new version.
const MOVING: [&str; 3] = ["known-at", "phones", "sentences"];
/// When a phone was told is in the exchange log, not in an entry.
const TOLD: [&str; 4] = ["driver-knew", "said", "last-heard", "quiet-days"];

/// Lines such as `came-late: added TH-05 hour-reading ...`; empty when both say the same.
///
/// # Errors
/// When a sheet cannot be written as JSON.
pub(super) fn between(old: &DaySheet, new: &DaySheet) -> Result<Vec<String>, ShopError> {
    let (old, new) = (serde_json::to_value(old)?, serde_json::to_value(new)?);
    let mut lines = Vec::new();
    walk("", &old, &new, &mut lines);
    Ok(lines)
}

fn walk(path: &str, old: &Value, new: &Value, lines: &mut Vec<String>) {
    match (old, new) {
        (Value::Object(a), Value::Object(b)) => {
            // A row count follows its rows.
            let keys = a.keys().chain(b.keys().filter(|key| !a.contains_key(*key)));
            for key in keys.filter(|key| !MOVING.contains(&key.as_str()) && *key != "count") {
                let (x, y) = (a.get(key).unwrap_or(&Value::Null), b.get(key).unwrap_or(&Value::Null));
                let inner = match (path, key.as_str()) {
                    (_, "sections" | "rows") => path.to_owned(),
                    ("", key) => key.to_owned(),
                    (path, key) => format!("{path}, {key}"),
                };
                walk(&inner, x, y, lines);
            }
        }
        (Value::Array(a), Value::Array(b)) => {
            let (a, b): (Vec<Value>, Vec<Value>) =
                (a.iter().map(settled).collect(), b.iter().map(settled).collect());
            lines.extend(
                a.iter().filter(|row| !b.contains(row)).map(|row| format!("{path}: no longer {}", line(row))),
            );
            lines.extend(
                b.iter().filter(|row| !a.contains(row)).map(|row| format!("{path}: now {}", line(row))),
            );
        }
        (x, y) if x != y => lines.push(format!("{path}: was {}, now {}", line(x), line(y))),
        _ => {}
    }
}

/// A row without what moves by itself.
fn settled(row: &Value) -> Value {
    match row {
        Value::Object(fields) => fields
            .iter()
            .filter(|(key, _)| !TOLD.contains(&key.as_str()))
            .map(|(k, v)| (k.clone(), v.clone()))
            .collect(),
        other => other.clone(),
    }
}

/// A row in words: its values in their order, empty ones left out.
fn line(value: &Value) -> String {
    let mut words = Vec::new();
    collect(value, &mut words);
    if words.is_empty() { "nothing".to_owned() } else { words.join(" ") }
}

fn collect(value: &Value, words: &mut Vec<String>) {
    match value {
        Value::Null => {}
        Value::String(text) if text.is_empty() => {}
        Value::String(text) => words.push(text.clone()),
        Value::Array(rows) => rows.iter().for_each(|row| collect(row, words)),
        Value::Object(fields) => {
            // Names of entries help nobody who reads.
            fields.iter().filter(|(key, _)| key.as_str() != "entry").for_each(|(key, value)| match value {
                Value::Bool(true) => words.push(key.replace('-', " ")),
                Value::Bool(false) => {}
                other => collect(other, words),
            });
        }
        other => words.push(other.to_string()),
    }
}
