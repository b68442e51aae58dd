//! The truck and the compressor set on it, as they are registered.

use chrono::NaiveDate;
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_trade::record::SetRegistered;
use sumpbook_trade::{Feature, Features, Figure, Tenths};

use super::view::Reading;
use crate::console::labels::drum_address;
use crate::console::words::Words;
use crate::sheet::key;

/// The truck.
#[derive(Clone, Debug, Default, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Truck {
    pub(super) serial: Option<String>,
    pub(super) plate: Option<String>,
    pub(super) in_service: Option<NaiveDate>,
    pub(super) in_service_hours: Option<Tenths>,
    /// What it has, by name of feature; valves, reels and hoses.
    pub(super) features: Features,
    /// The set now on it.
    pub(super) set: Option<SetRegistered>,
}

pub(super) fn read(of: &Reading<'_>) -> Truck {
    let fleet = of.ledger.fleet();
    let set = fleet.set_on(of.truck).cloned();
    let Some(truck) = fleet.trucks.get(&of.truck) else { return Truck { set, ..Truck::default() } };
    Truck {
        serial: truck.serial.clone(),
        plate: truck.plate.clone(),
        in_service: Some(truck.in_service),
        in_service_hours: Some(truck.in_service_hours),
        features: truck.features.clone(),
        set,
    }
}

/// "truck S/N 4417, set S/N 220-6, 185 cfm": what stands under the door number.
pub(super) fn line(words: &Words, truck: &Truck) -> String {
    let serial = |key: &str, serial: &Option<String>| {
        serial.as_ref().map(|serial| format!("{} {serial}", words.t(key)))
    };
    let set = truck.set.as_ref();
    let parts = [
        serial("truck-serial", &truck.serial),
        set.and_then(|set| serial("set-serial", &set.serial)),
        set.and_then(|set| set.profile.delivery).map(|delivery| figure(words, delivery)),
    ];
    words.listed(parts.into_iter().flatten())
}

fn figure(words: &Words, figure: Figure) -> String {
    words.measure(&format!("{} {}", figure.value_text(), key(&figure.unit)))
}

pub(super) fn draw(words: &Words, truck: &Truck) -> Markup {
    let none = || words.t("not-said");
    let mut rows: Vec<(&str, String)> = vec![
        ("truck-serial", truck.serial.clone().unwrap_or_else(none)),
        ("truck-plate", truck.plate.clone().unwrap_or_else(none)),
        ("truck-in-service", in_service(words, truck)),
        ("truck-has", features(words, &truck.features)),
        ("truck-valves", named(words, truck.features.valves.iter().cloned())),
        ("truck-reels", named(words, truck.features.reels.iter().cloned())),
        ("truck-hoses", named(words, truck.features.hoses.iter().map(|hose| hose.tag.clone()))),
    ];
    match &truck.set {
        None => rows.push(("truck-set", words.t("no-set"))),
        Some(set) => {
            let profile = &set.profile;
            let family = profile.oil_family.map(|f| words.or_plain(&format!("family-{}", key(&f)), &key(&f)));
            let oil = words.listed([family, profile.oil_grade.clone()].into_iter().flatten());
            let weights = profile.weights.iter().map(|(dust, hundredths)| {
                let dust = words.or_plain(&format!("dust-{}", key(dust)), &key(dust));
                format!("{dust} {}.{:02}", hundredths / 100, hundredths % 100)
            });
            rows.push(("set-serial", set.serial.clone().unwrap_or_else(none)));
            rows.push(("set-delivery", profile.delivery.map_or_else(none, |f| figure(words, f))));
            rows.push(("set-glass", profile.glass.map_or_else(none, |f| figure(words, f))));
            rows.push(("set-oil-volume", profile.oil_volume.map_or_else(none, |f| figure(words, f))));
            rows.push(("set-oil", if oil.is_empty() { none() } else { oil }));
            rows.push(("set-weights", named(words, weights)));
        }
    }
    html! {
        dl class="facts" {
            @for (head, value) in &rows { dt { (words.t(head)) } dd { (value) } }
        }
        @if let Some((family, grade)) = truck.set.as_ref().and_then(|set| set.profile.oil_family.zip(set.profile.oil_grade.as_ref())) {
            p class="no-print" { a href=(drum_address(&key(&family), grade)) { (words.t("drum-label")) } }
        }
    }
}

fn in_service(words: &Words, truck: &Truck) -> String {
    let Some(day) = truck.in_service else { return words.t("not-said") };
    let day = words.plain_day(day);
    match truck.in_service_hours {
        Some(hours) => format!("{day}, {} h", words.hours(hours)),
        None => day,
    }
}

fn features(words: &Words, features: &Features) -> String {
    let has = Feature::ALL.into_iter().filter(|feature| features.has(*feature));
    named(words, has.map(|feature| words.or_plain(&format!("feature-{}", key(&feature)), &key(&feature))))
}

fn named(words: &Words, names: impl Iterator<Item = String>) -> String {
    let all = words.listed(names);
    if all.is_empty() { words.t("none-word") } else { all }
}
