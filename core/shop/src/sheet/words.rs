//! Small words of the sheet.

use std::collections::BTreeMap;

use serde::Serialize;
use sumpbook_trade::day::{DayStatus, UseKind};
use sumpbook_trade::record::{Glass, Pour};

/// The text a kebab-case choice has in JSON.
pub(crate) fn key<T: Serialize>(choice: &T) -> String {
    match serde_json::to_value(choice) {
        Ok(serde_json::Value::String(text)) => text,
        Ok(other) => other.to_string(),
        Err(_) => String::new(),
    }
}

pub(super) fn use_word(what: UseKind) -> &'static str {
    match what {
        UseKind::Start => "start",
        UseKind::Drive => "drive",
        UseKind::Pour => "pour",
        UseKind::Reading => "reading",
        UseKind::Stop => "stop",
    }
}

pub(super) fn status_word(status: Option<DayStatus>) -> String {
    status.map_or_else(|| "no-day-status".to_owned(), |status| key(&status))
}

/// "30 %", "below view".
pub(crate) fn glass(glass: Glass) -> String {
    match glass {
        Glass::Percent(level) => format!("{level} %"),
        Glass::BelowView => "below view".to_owned(),
        Glass::AboveView => "above view".to_owned(),
    }
}

/// What was poured in all: summed by the unit each was given in, "0.21 qt" or "0.2 qt + 100 mL".
pub(crate) fn poured(pours: &[Pour]) -> String {
    let mut sums: BTreeMap<String, i64> = BTreeMap::new();
    let mut most: BTreeMap<String, u8> = BTreeMap::new();
    for pour in pours {
        let unit = key(&pour.volume.unit);
        let scale = 6u32.saturating_sub(u32::from(pour.volume.places));
        let micro = pour.volume.digits.saturating_mul(10i64.saturating_pow(scale));
        let sum = sums.entry(unit.clone()).or_default();
        *sum = sum.saturating_add(micro);
        let places = most.entry(unit).or_default();
        *places = (*places).max(pour.volume.places.min(6));
    }
    let shown: Vec<String> = sums
        .iter()
        .map(|(unit, micro)| {
            let places = most.get(unit).copied().unwrap_or(0);
            format!("{:.*} {unit}", usize::from(places), *micro as f64 / 1_000_000.0)
        })
        .collect();
    if shown.is_empty() { "nothing".to_owned() } else { shown.join(" + ") }
}
