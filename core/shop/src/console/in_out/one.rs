//! One unit typed in by hand: its truck, and the compressor set on it.

use axum::response::Response;
use maud::{Markup, html};
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::SetProfile;
use sumpbook_trade::{Feature, Features, Figure, Unit};

use crate::console::form::Fields;
use crate::console::refused::Refused;
use crate::console::visit::{Telling, Visit};
use crate::sheet::key;
use crate::{NewSet, NewTruck};

/// The form. What a unit has decides which lines its pre-trip asks; everything can be typed again later.
pub(super) fn form(telling: &Telling) -> Markup {
    let t = |key: &str| telling.t(key);
    let line = |name: &str, key: &str, kind: &str, needed: bool| {
        html! {
            label for=(format!("one-{name}")) { (t(key)) }
            input id=(format!("one-{name}")) name=(name) type=(kind) required[needed] autocomplete="off";
        }
    };
    html! {
        h3 id="one" { (t("one-head")) }
        p { (t("one-help")) }
        form class="sheet-form" method="post" action="/in-and-out/unit" {
            (telling.token())
            (line("door", "one-door", "text", true))
            (line("in-service", "one-in-service", "date", true))
            (line("in-service-hours", "one-hours", "text", true))
            (line("plate", "one-plate", "text", false))
            (line("serial", "one-serial", "text", false))
            (line("annual-inspection", "one-annual", "date", false))
            (line("set-serial", "one-set-serial", "text", false))
            (line("delivery", "one-delivery", "text", false))
            (line("load-share", "one-load-share", "text", false))
            label for="one-oil-family" { (t("one-oil-family")) }
            select id="one-oil-family" name="oil-family" {
                option value="" { (t("in-out-not-said")) }
                @for family in OilFamily::ALL {
                    @let word = key(&family);
                    option value=(word) { (t(&format!("family-{word}"))) }
                }
            }
            (line("oil-grade", "one-oil-grade", "text", false))
            (line("valves", "one-valves", "text", false))
            fieldset {
                legend { (t("one-has")) }
                @for feature in Feature::ALL {
                    @let name = key(&feature);
                    label class="show" {
                        input type="checkbox" name="has" value=(name);
                        " " (t(&format!("feature-{name}")))
                    }
                }
            }
            button { (t("one-enter")) }
        }
    }
}

/// `POST /in-and-out/unit`: enters a unit; one of the same door number is changed, and keeps what was left empty.
pub(super) async fn enter(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let door = fields.owned("door").ok_or(Refused::Asked("one-no-door"))?;
    let in_service = fields.day("in-service")?.ok_or(Refused::Asked("form-day"))?;
    let in_service_hours = fields.hours("in-service-hours")?.ok_or(Refused::Asked("form-hours"))?;
    let annual_inspection = fields.day("annual-inspection")?;
    let mut features =
        Features::of(Feature::ALL.into_iter().filter(|f| fields.all("has").any(|has| has == key(f))));
    features.valves = listed(fields.text("valves"));
    let delivery = fields.text("delivery").map(|text| Figure::parse(text, Unit::CubicFootPerMinute));
    let delivery = delivery.transpose().map_err(|_| Refused::Asked("one-bad-delivery"))?;
    let share = fields.text("load-share").map(|text| text.trim_end_matches('%').trim().parse::<u8>());
    let load_share = share.transpose().map_err(|_| Refused::Asked("one-bad-share"))?;
    if load_share.is_some_and(|percent| !(1..=100).contains(&percent)) {
        return Err(Refused::Asked("one-bad-share"));
    }
    let family = fields
        .text("oil-family")
        .and_then(|word| OilFamily::ALL.into_iter().find(|known| key(known) == word));
    let (family, grade) = (family, fields.owned("oil-grade"));
    let (serial, plate, set_serial) =
        (fields.owned("serial"), fields.owned("plate"), fields.owned("set-serial"));
    let write = move |shop: &mut crate::Shop, hand: &crate::Hand| {
        let fleet = shop.ledger.fleet();
        let known = fleet.truck_by_door(&door).cloned();
        let fitted = known.as_ref().and_then(|truck| fleet.set_on(truck.truck)).cloned();
        if let Some(known) = &known {
            // What this form does not ask.
            features.reels.clone_from(&known.features.reels);
            features.hoses.clone_from(&known.features.hoses);
            // Nothing ticked is not "it has nothing": its pre-trip would lose most of its lines.
            if features.switched.is_empty() {
                features.switched.clone_from(&known.features.switched);
            }
            if features.valves.is_empty() {
                features.valves.clone_from(&known.features.valves);
            }
        }
        let is = known.as_ref();
        let truck = shop.add_truck(
            NewTruck {
                door,
                serial: serial.or_else(|| is.and_then(|truck| truck.serial.clone())),
                plate: plate.or_else(|| is.and_then(|truck| truck.plate.clone())),
                features,
                in_service,
                in_service_hours,
                annual_inspection: annual_inspection.or_else(|| is.and_then(|truck| truck.annual_inspection)),
            },
            hand,
        )?;
        let serial = set_serial.or_else(|| fitted.as_ref().and_then(|set| set.serial.clone()));
        let before = fitted.filter(|set| set.serial == serial).map(|set| set.profile);
        let before = before.unwrap_or(SetProfile {
            delivery: None,
            glass: None,
            oil_family: None,
            oil_grade: None,
            weights: Vec::new(),
            load_share: None,
        });
        let profile = SetProfile {
            delivery: delivery.or(before.delivery),
            oil_family: family.or(before.oil_family),
            oil_grade: grade.or(before.oil_grade),
            load_share: load_share.or(before.load_share),
            ..before
        };
        shop.add_set(NewSet { serial, on: Some(truck), profile }, hand).map(|_| ())
    };
    visit.write("/units", write).await
}

/// Names that stand between commas.
fn listed(text: Option<&str>) -> Vec<String> {
    let names = text.unwrap_or_default().split([',', ';']).map(str::trim);
    names.filter(|name| !name.is_empty()).map(str::to_owned).collect()
}
