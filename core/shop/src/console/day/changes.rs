//! What changed between two closed versions, in the reader's language. Worked out from the two sheets as they are
//! stored; the lines that stand beside them are English.

use chrono::NaiveDate;
use serde_json::{Map, Value};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Stamp;

use crate::close::changes::{Change, Changed, LEAD};
use crate::console::words::Words;

/// Fields that help nobody who reads: names of entries, and what another field says already.
const LEFT_OUT: [&str; 4] = ["entry", "place", "count", "said"];

/// "Locked now: no longer TH-03, Right mirror".
pub(super) fn said(words: &Words, change: &Change) -> String {
    let section = place(words, &change.path);
    let told = |key: &str, args: &[(&str, &str)]| {
        let args: Vec<(&str, Arg<'_>)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        words.with(key, &args)
    };
    match &change.what {
        Changed::Now(row) => told("changed-now", &[("section", &section), ("row", &line(words, row))]),
        Changed::NoLonger(row) => told("changed-gone", &[("section", &section), ("row", &line(words, row))]),
        Changed::Otherwise(row, fields) => {
            let of = |key: &str, value: &Value| {
                Some(value_said(words, key, value, row)).filter(|said| !said.is_empty())
            };
            let none = || words.t("none-word");
            let differs =
                fields.iter().filter(|(key, ..)| !LEFT_OUT.contains(&key.as_str())).map(|(key, old, new)| {
                    let (old, new) = (of(key, old).unwrap_or_else(none), of(key, new).unwrap_or_else(none));
                    told("changed-field", &[("field", &field(words, key)), ("old", &old), ("new", &new)])
                });
            let differs = differs.collect::<Vec<_>>().join("; ");
            told(
                "changed-otherwise",
                &[("section", &section), ("row", &lead(words, row)), ("what", &differs)],
            )
        }
        Changed::Was(old, new) => {
            let key = change.path.last().map_or("", String::as_str);
            let [old, new] = [old, new].map(|value| value_said(words, key, value, &Value::Null));
            told("changed-was", &[("section", &section), ("old", &old), ("new", &new)])
        }
    }
}

/// The section, and the part of it, by name.
fn place(words: &Words, path: &[String]) -> String {
    words.listed(path.iter().filter_map(|part| words.or_none(&format!("changed-in-{part}"))))
}

/// A field's name; nothing where it has none: its value then stands alone.
fn field(words: &Words, key: &str) -> String {
    words.or_none(&format!("changed-field-{key}")).unwrap_or_default()
}

/// What a row is about: its unit and what names the thing.
fn lead(words: &Words, row: &Value) -> String {
    let named =
        LEAD.iter().filter(|key| !LEFT_OUT.contains(key)).filter_map(|key| Some((*key, row.get(*key)?)));
    let said = named.map(|(key, value)| value_said(words, key, value, row));
    let all = words.listed(said.filter(|said| !said.is_empty()));
    if all.is_empty() { value_said(words, "", row, row) } else { all }
}

/// A row in words: what it is about, then its fields by name, empty ones left out.
fn line(words: &Words, row: &Value) -> String {
    let Value::Object(fields) = row else { return value_said(words, "", row, row) };
    let rest =
        fields.iter().filter(|(key, _)| !LEAD.contains(&key.as_str()) && !LEFT_OUT.contains(&key.as_str()));
    let rest = rest.filter_map(|(key, value)| {
        let name = field(words, key);
        match value {
            Value::Bool(false) => None,
            Value::Bool(true) => Some(name),
            _ => Some(value_said(words, key, value, row))
                .filter(|said| !said.is_empty())
                .map(|said| if name.is_empty() { said } else { format!("{name} {said}") }),
        }
    });
    words.listed(std::iter::once(lead(words, row)).chain(rest).filter(|part| !part.is_empty()))
}

/// A value in words; the row it stands in tells an item's place.
fn value_said(words: &Words, key: &str, value: &Value, row: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::Bool(true) => words.t("changed-yes"),
        Value::Bool(false) => words.t("changed-no"),
        Value::Number(number) => number.to_string(),
        Value::String(text) => text_said(words, key, text, row),
        Value::Array(rows) => {
            let said = rows.iter().map(|one| value_said(words, key, one, row));
            words.listed(said.filter(|said| !said.is_empty()))
        }
        Value::Object(fields) => answer(words, fields).unwrap_or_else(|| {
            let of = fields.iter().filter(|(key, _)| !LEFT_OUT.contains(&key.as_str()));
            let said = of.map(|(key, value)| value_said(words, key, value, &Value::Null));
            said.filter(|said| !said.is_empty()).collect::<Vec<_>>().join(" ")
        }),
    }
}

/// "OK, Bettina Quaye 06:41", where the record is what somebody said.
fn answer(words: &Words, fields: &Map<String, Value>) -> Option<String> {
    let ok = fields.get("ok")?.as_bool()?;
    let own = fields.get("words").and_then(Value::as_str).unwrap_or_default();
    let what = if ok { words.t("answer-said-ok") } else { words.found(own) };
    let at = fields.get("at").map_or_else(String::new, |at| value_said(words, "at", at, &Value::Null));
    Some(format!("{what}, {} {at}", words.who(fields.get("who").and_then(Value::as_str))))
}

fn text_said(words: &Words, key: &str, text: &str, row: &Value) -> String {
    if let Ok(at) = text.parse::<Stamp>() {
        return words.at(at);
    }
    if let Ok(day) = text.parse::<NaiveDate>() {
        return words.short_day(day);
    }
    let first_of = |prefixes: &[&str]| {
        let all = prefixes.iter().find_map(|prefix| words.or_none(&format!("{prefix}-{text}")));
        all.unwrap_or_else(|| words.found(text))
    };
    match key {
        "item" => words.item(text, row.get("place").and_then(Value::as_str)),
        "task" | "tasks" | "not-bundled" | "again" => words.task(text),
        // "oil-and-filters 8.0 h"
        "late" => match text.split_once(' ') {
            Some((task, by)) => format!("{} {by}", words.task(task)),
            None => words.task(text),
        },
        "lock" | "locks" => words.lock(text),
        "says" => words.kind(text),
        "kind" => first_of(&["note", "kind"]),
        "what" => first_of(&["used", "use", "happened"]),
        "state" => first_of(&["changed-state", "due", "expected"]),
        "why" => first_of(&["question", "aside"]),
        "hints" => first_of(&["hint"]),
        "verdict" => first_of(&["verdict"]),
        "fluid" => first_of(&["fluid"]),
        "runs-out-first" => first_of(&["first"]),
        "called-by" => first_of(&["called-by"]),
        "next-step" => first_of(&["next"]),
        "ask" => first_of(&["task"]),
        "before" | "after" if text == "below view" => words.t("glass-below"),
        "before" | "after" if text == "above view" => words.t("glass-above"),
        "paper" => first_of(&["paper"]),
        "poured" => words.measure(text),
        "finding" => words.found(text),
        _ => text.to_owned(),
    }
}
