//! What a defect locks, filled in from the checklist: the driver may raise it, never lower it.

use sumpbook_trade::checklist::{Item, Side, Template};
use sumpbook_trade::record::{Answer, AnswerKind};

/// Why an answer does not hold.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum AnswerError {
    /// The checklist has no such item.
    #[error("the checklist has no item '{item}'. Items near it: {near}.")]
    UnknownItem {
        /// As it was written.
        item: String,
        /// Items that begin alike, or the first few.
        near: String,
    },
    /// The item does not stand there.
    #[error("'{item}' is not looked at '{place}'. Its places are: {known}.")]
    UnknownPlace {
        /// The item.
        item: String,
        /// As it was written; empty when none was given.
        place: String,
        /// The places there are.
        known: String,
    },
    /// A defect without its word.
    #[error("a defect of '{item}' needs a \"word\", one of: {known}.")]
    NoWord {
        /// The item.
        item: String,
        /// Its words.
        known: String,
    },
    /// The item does not offer this word.
    #[error("'{item}' has no word '{word}'. Its words are: {known}.")]
    UnknownWord {
        /// The item.
        item: String,
        /// As it was written.
        word: String,
        /// Its words.
        known: String,
    },
    /// The severity given is less than the checklist's.
    #[error("'{item}', '{word}' is {own} here, and {given} is less. It may be raised, never lowered.")]
    Lowered {
        /// The item.
        item: String,
        /// The word.
        word: String,
        /// What it locks by the checklist.
        own: &'static str,
        /// What the line says.
        given: &'static str,
    },
    /// A sound beside another answer.
    #[error("'{item}' is no defect here, so it has no sound. Leave it out.")]
    SoundOfNoDefect {
        /// The item.
        item: String,
    },
    /// Something that only a defect has.
    #[error("'{item}' is no defect here, so it has no word and no severity. Leave them out.")]
    NotADefect {
        /// The item.
        item: String,
    },
}

/// The answer with what it locks, as the checklist and the driver have it together.
///
/// # Errors
/// An unknown item, place or word; a defect without its word; a severity below the checklist's.
pub fn with_severity(template: &Template, mut answer: Answer) -> Result<Answer, AnswerError> {
    let Some(item) = template.item(&answer.item) else {
        return Err(AnswerError::UnknownItem { near: near(template, &answer.item), item: answer.item });
    };
    check_place(item, answer.place.as_deref())?;
    if answer.answer != AnswerKind::Defect {
        if answer.sound.is_some() {
            return Err(AnswerError::SoundOfNoDefect { item: answer.item });
        }
        return match (&answer.word, answer.severity) {
            (None, None) => Ok(answer),
            _ => Err(AnswerError::NotADefect { item: answer.item }),
        };
    }
    let Some(word) = answer.word.as_deref() else {
        return Err(AnswerError::NoWord { item: answer.item, known: words(item) });
    };
    let Some(own) = item.severity(word) else {
        return Err(AnswerError::UnknownWord {
            item: item.id.clone(),
            word: word.to_owned(),
            known: words(item),
        });
    };
    answer.severity = Some(match answer.severity {
        Some(given) if own.and(given) != given => {
            return Err(AnswerError::Lowered {
                item: item.id.clone(),
                word: word.to_owned(),
                own: own.key(),
                given: given.key(),
            });
        }
        Some(given) => given,
        None => own,
    });
    Ok(answer)
}

fn check_place(item: &Item, place: Option<&str>) -> Result<(), AnswerError> {
    let known = |sides: &[Side]| sides.iter().map(|side| side.key()).collect::<Vec<_>>();
    let given = place.unwrap_or_default();
    if item.places.is_empty() || known(&item.places).contains(&given) {
        return Ok(());
    }
    Err(AnswerError::UnknownPlace {
        item: item.id.clone(),
        place: given.to_owned(),
        known: known(&item.places).join(", "),
    })
}

fn words(item: &Item) -> String {
    let offered = item.defects.iter().map(|defect| defect.0.as_str());
    offered.chain([Item::OTHER]).collect::<Vec<_>>().join(", ")
}

/// Items whose names begin like it; when none does, a few, so that the form is seen.
fn near(template: &Template, item: &str) -> String {
    let head: String = item.chars().take(3).collect();
    let mut near: Vec<&str> =
        template.items.iter().map(|i| i.id.as_str()).filter(|id| id.starts_with(&head)).collect();
    if near.is_empty() {
        near = template.items.iter().map(|i| i.id.as_str()).take(5).collect();
    }
    near.join(", ")
}
