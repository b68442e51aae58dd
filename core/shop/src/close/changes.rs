//! What changed between two versions of a sheet, one readable line each.

use serde_json::Value;
use sumpbook_trade::Stamp;

use crate::ShopError;
use crate::sheet::DaySheet;

/// Parts that move without anybody recording anything: no reason for a new version.
const MOVING: [&str; 3] = ["known-at", "phones", "sentences"];
/// When a phone was told is in the exchange log, not in an entry.
const TOLD: [&str; 4] = ["driver-knew", "said", "last-heard", "quiet-days"];

/// What names a row, in the order it is said.
const LEAD: [&str; 14] = [
    "unit", "says", "item", "place", "task", "lock", "kind", "fluid", "phone", "what", "at", "shown",
    "since", "used",
];

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
            let gone: Vec<Value> = a.iter().map(settled).filter(|row| !has(b, row)).collect();
            let mut come: Vec<Value> = b.iter().map(settled).filter(|row| !has(a, row)).collect();
            for row in &gone {
                // The same thing told otherwise is one line: what about it is another.
                match come.iter().position(|other| lead(other) == lead(row)) {
                    Some(place) => {
                        let differs = differences(row, &come.remove(place));
                        lines.push(format!("{path}: {}: {differs}", lead(row)));
                    }
                    None => lines.push(format!("{path}: no longer {}", line(row))),
                }
            }
            lines.extend(come.iter().map(|row| format!("{path}: now {}", line(row))));
        }
        (x, y) if x != y => lines.push(format!("{path}: was {}, now {}", plain(x), plain(y))),
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

fn has(rows: &[Value], row: &Value) -> bool {
    rows.iter().any(|other| settled(other) == *row)
}

/// What a row is about: its unit and what names the thing.
fn lead(row: &Value) -> String {
    let named = LEAD.iter().filter_map(|key| row.get(*key)).filter(|value| !value.is_null());
    let words: Vec<String> = named.map(plain).filter(|word| !word.is_empty()).collect();
    if words.is_empty() { plain(row) } else { words.join(" ") }
}

/// A row in words: what it is about, then its fields by name, empty ones left out.
fn line(row: &Value) -> String {
    let Value::Object(fields) = row else { return plain(row) };
    let mut words = vec![lead(row)];
    for (key, value) in fields.iter().filter(|(key, _)| !LEAD.contains(&key.as_str()) && *key != "entry") {
        let said = plain(value);
        match value {
            Value::Bool(true) => words.push(key.replace('-', " ")),
            Value::Bool(false) => {}
            _ if said.is_empty() => {}
            _ => words.push(format!("{} {said}", key.replace('-', " "))),
        }
    }
    words.join(", ")
}

fn differences(old: &Value, new: &Value) -> String {
    let (Value::Object(a), Value::Object(b)) = (old, new) else { return line(new) };
    let keys = a.keys().chain(b.keys().filter(|key| !a.contains_key(*key)));
    let or_none = |value: Option<&Value>| {
        Some(plain(value.unwrap_or(&Value::Null)))
            .filter(|said| !said.is_empty())
            .unwrap_or_else(|| "none".to_owned())
    };
    let told = keys.filter(|key| a.get(*key) != b.get(*key)).map(|key| {
        format!("{} was {}, now {}", key.replace('-', " "), or_none(a.get(key)), or_none(b.get(key)))
    });
    told.collect::<Vec<_>>().join("; ")
}

/// A value in words; a moment as a board would have it.
fn plain(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::String(text) => match text.parse::<Stamp>() {
            Ok(at) => at.moment().format("%a %-d %b %H:%M").to_string(),
            Err(_) => text.clone(),
        },
        Value::Array(rows) => rows.iter().map(plain).collect::<Vec<_>>().join(" and "),
        Value::Object(fields) => {
            // Names of entries help nobody who reads.
            let told =
                fields.iter().filter(|(key, _)| key.as_str() != "entry").map(|(_, value)| plain(value));
            told.filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
        }
        Value::Number(number) => number.to_string(),
    }
}
