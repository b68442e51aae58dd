//! Reading a typed page out of its form.

use axum::extract::Path;
use axum::http::StatusCode;
use axum::response::Response;
use sumpbook_trade::checklist::Line;
use sumpbook_trade::record::{Answer, AnswerKind, Digest, How, ItemFigure};
use sumpbook_trade::{Figure, Unit};

use super::type_in;
use crate::console::asked_hours;
use crate::console::form::Fields;
use crate::console::refused::Refused;
use crate::console::visit::Visit;
use crate::paper::{PageOf, PageTyped, editions, keep_page};

/// The figures a page carries beside its answers: the field, the item, the unit.
pub(super) const FIGURES: [(&str, &str, Unit); 3] = [
    ("glass", "oil-level", Unit::Percent),
    ("drop-released", "air-leak-released", Unit::Psi),
    ("drop-applied", "air-leak-applied", Unit::Psi),
];

/// What an answer is called in the form, in the order of its keys 1 to 4.
pub(super) const KEYS: [(AnswerKind, &str); 4] = [
    (AnswerKind::Ok, "ok"),
    (AnswerKind::Defect, "defect"),
    (AnswerKind::NotFitted, "not-fitted"),
    (AnswerKind::CouldNotCheck, "could-not-check"),
];

/// `POST /paper/TH-04`: keeps the page. What does not hold is said above the form, with all that was typed.
pub(super) async fn keep(
    visit: Visit,
    Path(door): Path<String>,
    fields: Fields,
) -> Result<Response, Refused> {
    visit.may_write()?;
    match kept(&visit, &door, &fields).await {
        Ok(()) => Ok(visit.go(format!("/paper/{}?kept=1", crate::console::language::escaped(&door)))),
        Err(refused @ (Refused::Asked(_) | Refused::Said(_) | Refused::No(_))) => {
            let mut again = type_in::again(visit, door, fields, refused).await?;
            *again.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
            Ok(again)
        }
        Err(other) => Err(other),
    }
}

async fn kept(visit: &Visit, door: &str, fields: &Fields) -> Result<(), Refused> {
    let of = door.to_owned();
    let read = visit.read(move |ledger, _| {
        let fleet = ledger.fleet();
        let Some(truck) = fleet.truck_by_door(&of).map(|truck| truck.truck) else { return Ok(None) };
        Ok(Some((truck, editions(ledger, truck)?, fleet.zone)))
    });
    let (truck, editions, zone) = read.await?.ok_or_else(|| Refused::NoUnit(door.to_owned()))?;
    let page = edition(&editions, fields.text("edition")).ok_or(Refused::Asked("paper-no-edition"))?;
    let signed_at = fields.moment("day", "time", zone)?.ok_or(Refused::Asked("paper-no-time"))?;
    let driver = fields.owned("driver").ok_or(Refused::Asked("paper-no-driver"))?;
    let answers = answers(page, fields)?;
    let complete = answers.len() == page.lines().count();
    if !complete && fields.text("blank").is_none() {
        return Err(Refused::Asked("paper-lines-open"));
    }
    let photo = fields.text("photo").map(|text| text.parse::<Digest>().map_err(|_| Refused::NotThere));
    let (photo, hours, number) = (photo.transpose()?, fields.hours("hours")?, fields.owned("number"));
    asked_hours::check(visit, door, fields, (hours, signed_at)).await?;
    let (edition, unit_edition) = (page.edition, page.unit_edition);
    visit
        .act(move |shop, hand| {
            let driver = shop.person(&driver)?;
            let page = PageTyped {
                driver,
                signed_at,
                answers,
                complete,
                hours,
                edition,
                unit_edition,
                number,
                photo,
            };
            keep_page(shop, truck, page, hand).map(|_| ())
        })
        .await
}

/// The edition of this name; the newest when none is asked for.
pub(super) fn edition<'a>(editions: &'a [PageOf], asked: Option<&str>) -> Option<&'a PageOf> {
    match asked {
        None => editions.last(),
        Some(name) => editions.iter().find(|page| page.name() == name),
    }
}

/// What was answered, in the page's own order. A line without an answer is none.
fn answers(page: &PageOf, fields: &Fields) -> Result<Vec<Answer>, Refused> {
    let mut answers = Vec::new();
    for line in page.lines() {
        let Some(said) = fields.text(&format!("a:{line}")) else { continue };
        let kind = KEYS.iter().find(|(_, word)| *word == said).map(|(kind, _)| *kind);
        let kind = kind.ok_or(Refused::Asked("form-unread"))?;
        let defect = kind == AnswerKind::Defect;
        let word = fields.owned(&format!("w:{line}")).filter(|_| defect);
        if defect && word.is_none() {
            return Err(Refused::Asked("paper-no-word"));
        }
        answers.push(Answer {
            item: line.item.clone(),
            place: place_of(line),
            answer: kind,
            word,
            severity: None,
            figures: figures(line, fields)?,
            on_screen_ms: None,
            together: None,
            words: fields.owned(&format!("t:{line}")),
            photos: Vec::new(),
            sound: None,
        });
    }
    Ok(answers)
}

/// The place of a line as an answer names it.
pub(super) fn place_of(line: &Line) -> Option<String> {
    line.side.map(|side| side.key().to_owned()).or_else(|| line.name.clone())
}

fn figures(line: &Line, fields: &Fields) -> Result<Vec<ItemFigure>, Refused> {
    let of = FIGURES.iter().filter(|(_, item, _)| *item == line.item);
    of.filter_map(|(field, _, unit)| Some((fields.text(field)?, *unit)))
        .map(|(text, unit)| {
            let figure = Figure::parse(text, unit).map_err(|_| Refused::Asked("paper-figure"))?;
            let fits = figure.digits >= 0 && (unit != Unit::Percent || figure.value() <= 100.0);
            if fits {
                Ok(ItemFigure { figure, how: How::Asked })
            } else {
                Err(Refused::Asked("paper-figure"))
            }
        })
        .collect()
}
