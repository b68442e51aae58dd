//! A signed page typed in: its photo beside the form, in the page's own order, nothing answered beforehand.

use axum::extract::Path;
use axum::response::Response;
use maud::{Markup, html};
use serde::{Deserialize, Serialize};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Stamp;
use sumpbook_trade::checklist::{Item, Line, Template};
use sumpbook_trade::record::Digest;

use super::read::{FIGURES, KEYS, edition, place_of};
use crate::console::asked_hours;
use crate::console::form::Fields;
use crate::console::place::Place;
use crate::console::query::Query;
use crate::console::refused::Refused;
use crate::console::table::door;
use crate::console::visit::{Body, Telling, Visit};
use crate::paper::editions;

#[derive(Debug, Default, Deserialize)]
pub(super) struct Asked {
    photo: Option<String>,
    edition: Option<String>,
    kept: Option<String>,
}

/// The form and its JSON.
#[derive(Clone, Serialize)]
#[serde(rename_all = "kebab-case")]
struct TypeView {
    unit: String,
    /// The edition that is typed, and every one there was.
    edition: String,
    editions: Vec<String>,
    /// Lines that stand on this page and are asked no more; lines asked now that it does not have.
    no_longer: Vec<String>,
    not_yet: Vec<String>,
    stops: Vec<StopView>,
    /// Those who may have signed.
    drivers: Vec<String>,
    photo: Option<String>,
    /// The page before was kept.
    kept: bool,
    now: Stamp,
    #[serde(skip)]
    given: Fields,
    #[serde(skip)]
    wrong: Option<Refused>,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct StopView {
    id: String,
    label: String,
    lines: Vec<String>,
}

/// `GET /paper/TH-04?photo=...&edition=1.1`
pub(super) async fn page(
    visit: Visit,
    Path(door): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    show(visit, door, asked, Fields::default(), None).await
}

/// The form once more, with what was typed and what did not hold.
pub(super) async fn again(
    visit: Visit,
    door: String,
    fields: Fields,
    wrong: Refused,
) -> Result<Response, Refused> {
    let asked = Asked { photo: fields.owned("photo"), edition: fields.owned("edition"), kept: None };
    show(visit, door, asked, fields, Some(wrong)).await
}

async fn show(
    visit: Visit,
    door: String,
    asked: Asked,
    given: Fields,
    wrong: Option<Refused>,
) -> Result<Response, Refused> {
    let photo = asked.photo.filter(|text| text.parse::<Digest>().is_ok());
    let asked_door = door.clone();
    visit
        .show_unit(
            Place::Paper,
            &asked_door,
            move |ledger, now| {
                let fleet = ledger.fleet();
                let Some(truck) = fleet.truck_by_door(&door) else { return Ok(None) };
                let all = editions(ledger, truck.truck)?;
                let Some(page) = edition(&all, asked.edition.as_deref()).or(all.last()) else {
                    return Ok(None);
                };
                let lines =
                    |page: &crate::paper::PageOf| page.lines().map(ToString::to_string).collect::<Vec<_>>();
                let (here, now_asked) = (lines(page), all.last().map(lines).unwrap_or_default());
                let drivers = fleet.names_here();
                let stops = page.stops.iter().map(|stop| StopView {
                    id: stop.id.clone(),
                    label: stop.label(),
                    lines: stop.lines.iter().map(ToString::to_string).collect(),
                });
                Ok(Some(TypeView {
                    unit: truck.door.clone(),
                    edition: page.name(),
                    editions: all.iter().map(crate::paper::PageOf::name).collect(),
                    no_longer: here.iter().filter(|line| !now_asked.contains(line)).cloned().collect(),
                    not_yet: now_asked.iter().filter(|line| !here.contains(line)).cloned().collect(),
                    stops: stops.collect(),
                    drivers,
                    photo,
                    kept: asked.kept.is_some(),
                    now: Stamp::from(now.moment().with_timezone(&fleet.zone).fixed_offset()),
                    given,
                    wrong,
                }))
            },
            body,
        )
        .await
}

fn body(telling: &Telling, view: &TypeView) -> Body {
    let title = telling.with("paper-title", &[("unit", Arg::Text(&view.unit))]);
    let main = html! {
        h1 { (telling.t("paper-type")) " " (door(&view.unit)) }
        @if view.kept { p class="strip" role="status" { (telling.t("paper-kept")) } }
        @if let Some(wrong) = &view.wrong {
            p class="strip" role="alert" { (wrong.said(telling.choice)) " " (telling.t("paper-all-here")) }
        }
        (pick_edition(telling, view))
        (differs(telling, view))
        @if telling.writes() {
            div class="beside-photo" {
                (photo(telling, view))
                (form(telling, view))
            }
        } @else {
            p class="strip" { (telling.t("refused-reader")) }
        }
    };
    Body { title, main }
}

fn pick_edition(telling: &Telling, view: &TypeView) -> Markup {
    html! {
        form class="inline" method="get" action=(format!("/paper/{}", crate::console::language::escaped(&view.unit))) {
            @if let Some(photo) = &view.photo { input type="hidden" name="photo" value=(photo); }
            label for="edition" { (telling.t("paper-edition-on-page")) }
            select id="edition" name="edition" {
                @for name in view.editions.iter().rev() {
                    option value=(name) selected[*name == view.edition] { (name) }
                }
            }
            button { (telling.t("due-show")) }
        }
    }
}

/// Which lines of an old page are others now.
fn differs(telling: &Telling, view: &TypeView) -> Markup {
    if view.no_longer.is_empty() && view.not_yet.is_empty() {
        return html! {};
    }
    let names = |lines: &[String]| {
        let parsed = lines.iter().filter_map(|line| line.parse::<Line>().ok());
        telling.listed(parsed.map(|line| telling.item(&line.item, place_of(&line).as_deref())))
    };
    html! {
        div class="strip" {
            p { (telling.with("paper-old", &[("edition", Arg::Text(&view.edition))])) }
            @if !view.no_longer.is_empty() {
                p { (telling.with("paper-no-longer", &[("lines", Arg::Text(&names(&view.no_longer)))])) }
            }
            @if !view.not_yet.is_empty() {
                p { (telling.with("paper-not-yet", &[("lines", Arg::Text(&names(&view.not_yet)))])) }
            }
        }
    }
}

fn photo(telling: &Telling, view: &TypeView) -> Markup {
    html! {
        div class="photo" {
            @match &view.photo {
                Some(digest) => {
                    a href=(format!("/photo/{digest}")) target="_blank" rel="noopener" {
                        img id="page-photo" src=(format!("/photo/{digest}")) alt=(telling.t("paper-photo-alt"));
                    }
                    p class="photo-acts" {
                        button type="button" data-turn hidden { (telling.t("paper-turn")) } " "
                        button type="button" data-zoom hidden { (telling.t("paper-zoom")) }
                    }
                }
                None => p class="beside" { (telling.t("paper-no-photo")) },
            }
        }
    }
}

fn form(telling: &Telling, view: &TypeView) -> Markup {
    let Ok(template) = Template::common_practice() else { return html! {} };
    let count: usize = view.stops.iter().map(|stop| stop.lines.len()).sum();
    let typed = view.given.0.iter().filter(|(key, value)| key.starts_with("a:") && !value.is_empty()).count();
    let args = [
        ("typed", Arg::Count(i64::try_from(typed).unwrap_or(i64::MAX))),
        ("of", Arg::Count(i64::try_from(count).unwrap_or(i64::MAX))),
    ];
    html! {
        form method="post" action=(format!("/paper/{}", crate::console::language::escaped(&view.unit)))
            class="typed-page" data-paper {
            (telling.token())
            input type="hidden" name="edition" value=(view.edition);
            @if let Some(photo) = &view.photo { input type="hidden" name="photo" value=(photo); }
            p { (telling.t("paper-keys")) }
            @for stop in &view.stops {
                fieldset {
                    legend { (stop.label) " " (telling.t(&format!("stop-{}", stop.id))) }
                    @for line in &stop.lines { (line_of(telling, view, template, line)) }
                }
            }
            (signed(telling, view))
            p class="typed" role="status" data-typed { (telling.with("paper-typed", &args)) }
            label class="show" {
                input type="checkbox" name="blank" value="yes" checked[view.given.text("blank").is_some()];
                " " (telling.t("paper-blank-lines"))
            }
            button class="main" { (telling.t("paper-keep")) }
        }
    }
}

fn line_of(telling: &Telling, view: &TypeView, template: &Template, line: &str) -> Markup {
    let Ok(parsed) = line.parse::<Line>() else { return html! {} };
    let name = telling.item(&parsed.item, place_of(&parsed).as_deref());
    let given = |of: &str| view.given.text(&format!("{of}:{line}")).unwrap_or_default().to_owned();
    let (answer, chosen) = (given("a"), given("w"));
    html! {
        div class="line" role="radiogroup" aria-label=(name) {
            span class="name" { (name) }
            span class="keys" {
                @for (place, (_, value)) in KEYS.iter().enumerate() {
                    label title=(telling.t(&format!("answer-{value}"))) {
                        input type="radio" name=(format!("a:{line}")) value=(value) checked[answer == *value]
                            aria-label=(format!("{name}: {}", telling.t(&format!("answer-{value}"))));
                        " " (place.saturating_add(1))
                    }
                }
            }
            span class="more" {
                @if let Some(item) = template.item(&parsed.item) {
                    select name=(format!("w:{line}")) aria-label=(telling.t("paper-word")) {
                        option value="" { (telling.t("paper-word")) }
                        @for word in item.defects.iter().map(|defect| defect.0.as_str()).chain([Item::OTHER]) {
                            option value=(word) selected[chosen == word] {
                                (telling.or_plain(&format!("choice-{word}"), word))
                            }
                        }
                    }
                }
                input name=(format!("t:{line}")) size="24" value=(given("t")) aria-label=(telling.t("form-words"))
                    placeholder=(telling.t("form-words"));
            }
        }
    }
}

fn signed(telling: &Telling, view: &TypeView) -> Markup {
    let given = |name: &str| view.given.text(name).unwrap_or_default().to_owned();
    let today = view.now.moment().format("%Y-%m-%d").to_string();
    let day = view.given.owned("day").unwrap_or_else(|| today.clone());
    let has = |item: &str| view.stops.iter().flat_map(|stop| &stop.lines).any(|line| line.as_str() == item);
    html! {
        fieldset {
            legend { (telling.t("paper-signed")) }
            @if has("hours") {
                label for="p-hours" { (telling.t("paper-hours")) }
                input id="p-hours" name="hours" inputmode="decimal" size="10" value=(given("hours"));
                (asked_hours::tick(telling))
            }
            @for (field, item, _) in FIGURES.iter().filter(|(_, item, _)| has(item)) {
                label for=(format!("p-{field}")) { (telling.t(&format!("paper-{field}"))) }
                input id=(format!("p-{field}")) name=(field) inputmode="decimal" size="6" value=(given(field)) data-item=(item);
            }
            label for="p-driver" { (telling.t("paper-driver")) }
            select id="p-driver" name="driver" required {
                option value="" {}
                @for name in &view.drivers { option value=(name) selected[*name == given("driver")] { (name) } }
            }
            label for="p-day" { (telling.t("paper-signed-day")) }
            input id="p-day" name="day" type="date" required max=(today) value=(day);
            label for="p-time" { (telling.t("paper-signed-at")) }
            input id="p-time" name="time" type="time" required value=(given("time"));
            label for="p-number" { (telling.t("paper-number")) }
            input id="p-number" name="number" size="8" value=(given("number"));
            p { (telling.with("paper-typed-by", &[("who", Arg::Text(&telling.name))])) }
        }
    }
}
