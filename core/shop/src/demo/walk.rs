//! A walk round a unit, as a driver of the demo answers it.

use sumpbook_trade::checklist::{PlannedStop, Severity, Template, plan};
use sumpbook_trade::record::{Answer, AnswerKind, How, ItemFigure, PreTripSection};
use sumpbook_trade::{Features, Figure, Unit, WalkId};

use super::DemoError;

/// A defect somebody finds: item, its place on the walk, the word, what the driver adds.
#[derive(Clone, Copy, Debug)]
pub struct Found {
    /// The item.
    pub item: &'static str,
    /// The place of its line; none where the item stands once.
    pub place: Option<&'static str>,
    /// The word chosen.
    pub word: &'static str,
    /// Words added.
    pub words: &'static str,
}

/// A whole walk of a unit: everything OK but what was found.
///
/// # Errors
/// When the checklist's own data cannot be read.
pub(super) fn walk(
    walk: WalkId,
    features: &Features,
    seconds: u32,
    found: &[Found],
) -> Result<PreTripSection, DemoError> {
    let template = Template::common_practice()?;
    let stops = plan(template, features);
    let mut answers = Vec::new();
    for (number, stop) in (1u32..).zip(&stops) {
        answer_stop(template, stop, number, seconds, found, &mut answers)?;
    }
    Ok(PreTripSection {
        walk,
        edition: template.edition,
        answers,
        seconds: Some(seconds),
        complete: true,
        follows: None,
    })
}

/// Only the one line: what somebody saw who passed by.
///
/// # Errors
/// When the checklist's own data cannot be read.
pub(super) fn passed_by(walk: WalkId, found: Found) -> Result<PreTripSection, DemoError> {
    let template = Template::common_practice()?;
    let answers = vec![defect(template, found, None)];
    Ok(PreTripSection {
        walk,
        edition: template.edition,
        answers,
        seconds: Some(40),
        complete: false,
        follows: None,
    })
}

fn answer_stop(
    template: &Template,
    stop: &PlannedStop,
    number: u32,
    seconds: u32,
    found: &[Found],
    answers: &mut Vec<Answer>,
) -> Result<(), DemoError> {
    for line in &stop.lines {
        let place = line.name.clone().or_else(|| line.side.map(|side| side.key().to_owned()));
        let here = |f: &&Found| f.item == line.item && f.place == place.as_deref();
        match found.iter().find(here) {
            Some(found) => answers.push(defect(template, *found, place)),
            None => answers.push(Answer {
                figures: figures(&line.item)?,
                item: line.item.clone(),
                place,
                answer: AnswerKind::Ok,
                word: None,
                severity: None,
                on_screen_ms: Some(if is_drop(&line.item) {
                    WATCHED_MS
                } else {
                    seconds.saturating_mul(1000) / 20
                }),
                together: Some(number),
                words: None,
                photos: Vec::new(),
                sound: None,
            }),
        }
    }
    Ok(())
}

/// A drop is read after its whole minute: the needle is watched longer than any other line.
fn is_drop(item: &str) -> bool {
    item.starts_with("air-leak-")
}

const WATCHED_MS: u32 = 64_000;

fn figures(item: &str) -> Result<Vec<ItemFigure>, DemoError> {
    Ok(match item {
        "air-leak-released" => vec![ItemFigure { figure: Figure::parse("1", Unit::Psi)?, how: How::Chosen }],
        "air-leak-applied" => vec![ItemFigure { figure: Figure::parse("2", Unit::Psi)?, how: How::Chosen }],
        "air-buildup" => vec![ItemFigure { figure: Figure::parse("31", Unit::Second)?, how: How::Timed }],
        _ => Vec::new(),
    })
}

fn defect(template: &Template, found: Found, place: Option<String>) -> Answer {
    let severity = template.item(found.item).and_then(|item| item.severity(found.word));
    Answer {
        item: found.item.to_owned(),
        place: place.or_else(|| found.place.map(str::to_owned)),
        answer: AnswerKind::Defect,
        word: Some(found.word.to_owned()),
        severity: severity.or(Some(Severity::Note)),
        figures: Vec::new(),
        on_screen_ms: Some(4_000),
        together: None,
        words: Some(found.words.to_owned()),
        photos: Vec::new(),
        sound: None,
    }
}
