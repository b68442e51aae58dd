//! One unit typed in by hand: its truck, and the compressor set on it.

use axum::response::Response;
use maud::{Markup, html};
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::SetProfile;
use sumpbook_trade::{Feature, Figure, Unit};

use crate::console::form::Fields;
use crate::console::refused::Refused;
use crate::console::visit::{Telling, Visit};
use crate::console::volume;
use crate::sheet::key;
use crate::{FeaturesSaid, UnitSaid};

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
            label class="show" {
                input type="checkbox" name="set-moved" value="yes";
                " " (t("one-set-moved"))
            }
            (line("delivery", "one-delivery", "text", false))
            (line("load-share", "one-load-share", "text", false))
            (line("glass", "one-glass", "text", false))
            (line("oil-volume", "one-oil-volume", "text", false))
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
    let ticked = Feature::ALL.into_iter().filter(|f| fields.all("has").any(|has| has == key(f)));
    // Nothing ticked is not "it has nothing": its pre-trip would lose most of its lines.
    let named = |all: Vec<String>| (!all.is_empty()).then_some(all);
    let switched: Vec<Feature> = ticked.collect();
    let features = FeaturesSaid {
        switched: (!switched.is_empty()).then_some(switched),
        valves: named(listed(fields.text("valves"))),
        ..FeaturesSaid::default()
    };
    let profile = profile(&fields)?;
    let said = UnitSaid {
        door,
        serial: fields.owned("serial"),
        plate: fields.owned("plate"),
        features,
        in_service,
        in_service_hours,
        annual_inspection,
        set_serial: fields.owned("set-serial"),
        set_moved: fields.text("set-moved").is_some(),
        profile,
    };
    let write = move |shop: &mut crate::Shop, hand: &crate::Hand| shop.enter_unit(said, hand).map(|_| ());
    visit.write("/units", write).await
}

/// What is said of the set.
fn profile(fields: &Fields) -> Result<SetProfile, Refused> {
    let delivery = fields.text("delivery").map(|text| Figure::parse(text, Unit::CubicFootPerMinute));
    let share = fields.text("load-share").map(|text| text.trim_end_matches('%').trim().parse::<u8>());
    let load_share = share.transpose().map_err(|_| Refused::Asked("one-bad-share"))?;
    if load_share.is_some_and(|percent| !(1..=100).contains(&percent)) {
        return Err(Refused::Asked("one-bad-share"));
    }
    let oil_family = fields
        .text("oil-family")
        .and_then(|word| OilFamily::ALL.into_iter().find(|known| key(known) == word));
    Ok(SetProfile {
        delivery: delivery.transpose().map_err(|_| Refused::Asked("one-bad-delivery"))?,
        glass: volume(fields, "glass")?,
        oil_family,
        oil_grade: fields.owned("oil-grade"),
        load_share,
        oil_volume: volume(fields, "oil-volume")?,
        ..SetProfile::unknown()
    })
}

/// More than nothing, where something was typed.
fn volume(fields: &Fields, name: &str) -> Result<Option<Figure>, Refused> {
    let Some(text) = fields.text(name) else { return Ok(None) };
    match volume::read(text).filter(|figure| figure.digits > 0) {
        Some(figure) => Ok(Some(figure)),
        None => Err(Refused::Asked("one-bad-volume")),
    }
}

/// Names that stand between commas.
fn listed(text: Option<&str>) -> Vec<String> {
    let names = text.unwrap_or_default().split([',', ';']).map(str::trim);
    names.filter(|name| !name.is_empty()).map(str::to_owned).collect()
}
