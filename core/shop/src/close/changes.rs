//! What changed between two versions of a sheet, one readable line each.

use serde_json::Value;
use sumpbook_trade::Stamp;

use crate::ShopError;
use crate::sheet::DaySheet;

/// Parts that move without anybody recording anything, and the day after: no reason for a new version of this one.
const MOVING: [&str; 4] = ["known-at", "phones", "sentences", "bays-tomorrow"];
/// When a phone was told is in the exchange log, not in an entry.
const TOLD: [&str; 4] = ["driver-knew", "said", "last-heard", "quiet-days"];

/// What names a row, in the order it is said.
pub(crate) const LEAD: [&str; 15] = [
    "unit", "says", "item", "place", "task", "lock", "kind", "fluid", "phone", "what", "at", "shown",
    "since", "used", "paper",
];

/// One thing that is told otherwise in a later version.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Change {
    /// Where in the sheet: names of its sections and parts, the widest first.
    pub(crate) path: Vec<String>,
    /// What about it.
    pub(crate) what: Changed,
}

/// What is told otherwise.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Changed {
    /// A row that was not there.
    Now(Value),
    /// A row that is there no longer.
    NoLonger(Value),
    /// The same thing, told otherwise: how it was told, and its fields that differ with both values.
    Otherwise(Value, Vec<(String, Value, Value)>),
    /// A single value that was another.
    Was(Value, Value),
}

/// Lines such as `came-late: added TH-05 hour-reading ...`; empty when both say the same.
///
/// # Errors
/// When a sheet cannot be written as JSON.
pub(super) fn between(old: &DaySheet, new: &DaySheet) -> Result<Vec<String>, ShopError> {
    Ok(changes(old, new)?.iter().map(Change::in_english).collect())
}

/// What changed, to be told in any language.
///
/// # Errors
/// When a sheet cannot be written as JSON.
pub(crate) fn changes(old: &DaySheet, new: &DaySheet) -> Result<Vec<Change>, ShopError> {
    let (old, new) = (serde_json::to_value(old)?, serde_json::to_value(new)?);
    let mut found = Vec::new();
    walk(&[], &old, &new, &mut found);
    Ok(found)
}

fn walk(path: &[String], old: &Value, new: &Value, found: &mut Vec<Change>) {
    let mut tell = |what: Changed| found.push(Change { path: path.to_vec(), what });
    match (old, new) {
        (Value::Object(a), Value::Object(b)) => {
            // A row count follows its rows.
            let keys = a.keys().chain(b.keys().filter(|key| !a.contains_key(*key)));
            for key in keys.filter(|key| !MOVING.contains(&key.as_str()) && *key != "count") {
                let (x, y) = (a.get(key).unwrap_or(&Value::Null), b.get(key).unwrap_or(&Value::Null));
                let mut inner = path.to_vec();
                if !matches!(key.as_str(), "sections" | "rows") {
                    inner.push(key.clone());
                }
                walk(&inner, x, y, found);
            }
        }
        (Value::Array(a), Value::Array(b)) => {
            let gone: Vec<Value> = a.iter().map(settled).filter(|row| !has(b, row)).collect();
            let mut come: Vec<Value> = b.iter().map(settled).filter(|row| !has(a, row)).collect();
            for row in gone {
                // The same thing told otherwise is one line: what about it is another.
                match come.iter().position(|other| lead(other) == lead(&row)) {
                    Some(place) => {
                        let other = come.remove(place);
                        tell(match differences(&row, &other) {
                            Some(fields) => Changed::Otherwise(row, fields),
                            None => Changed::Now(other),
                        });
                    }
                    None => tell(Changed::NoLonger(row)),
                }
            }
            come.into_iter().for_each(|row| tell(Changed::Now(row)));
        }
        (x, y) if x != y => tell(Changed::Was(x.clone(), y.clone())),
        _ => {}
    }
}

impl Change {
    /// As the closing keeps it.
    fn in_english(&self) -> String {
        let path = self.path.join(", ");
        match &self.what {
            Changed::Now(row) => format!("{path}: now {}", line(row)),
            Changed::NoLonger(row) => format!("{path}: no longer {}", line(row)),
            Changed::Otherwise(row, fields) => {
                let or_none = |value: &Value| Some(plain(value)).filter(|said| !said.is_empty());
                let told = fields.iter().map(|(key, old, new)| {
                    let [old, new] =
                        [old, new].map(|value| or_none(value).unwrap_or_else(|| "none".to_owned()));
                    format!("{} was {old}, now {new}", key.replace('-', " "))
                });
                format!("{path}: {}: {}", lead(row), told.collect::<Vec<_>>().join("; "))
            }
            Changed::Was(old, new) => format!("{path}: was {}, now {}", plain(old), plain(new)),
        }
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

/// Fields that differ; none where the two are no records.
fn differences(old: &Value, new: &Value) -> Option<Vec<(String, Value, Value)>> {
    let (Value::Object(a), Value::Object(b)) = (old, new) else { return None };
    let keys = a.keys().chain(b.keys().filter(|key| !a.contains_key(*key)));
    let of =
        |fields: &serde_json::Map<String, Value>, key: &String| fields.get(key).cloned().unwrap_or_default();
    let told = keys.filter(|key| a.get(*key) != b.get(*key)).map(|key| (key.clone(), of(a, key), of(b, key)));
    Some(told.collect())
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
