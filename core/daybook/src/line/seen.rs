//! What nobody can have seen is not recorded here. What comes from elsewhere is admitted as it is: it was signed.

use sumpbook_trade::checklist::{Repeat, Severity, Template};
use sumpbook_trade::record::{Answer, AnswerKind, Glass, Source, StockCounted};
use sumpbook_trade::{Entry, Fact, Features, Figure, Unit};

use crate::fleet::Fleet;

/// What about a record nobody can have seen.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotSeen {
    /// Less than nothing was poured.
    #[error(
        "'{0}' was poured, and nobody pours less than nothing. Nothing was recorded. Give how much went in."
    )]
    LessThanNothing(String),
    /// Less than nothing lies on the truck.
    #[error("'{0}' lies on no truck. Nothing was recorded. Give what was counted, 0 for none.")]
    StockBelowNothing(String),
    /// More than any truck carries.
    #[error(
        "'{0}' is more than a truck carries in cans. Nothing was recorded. Look at the figure and its unit again."
    )]
    StockBeyondATruck(String),
    /// A level beyond the ends of the glass.
    #[error(
        "the glass reads {0} %, and it ends at 0 and at 100. Nothing was recorded. Give 0 to 100, or say that it is below or above view."
    )]
    OutsideTheGlass(String),
    /// An outlet that the unit does not have.
    #[error("this unit has no '{item}' called '{place}'. Nothing was recorded. It has: {known}.")]
    NoSuchOutlet {
        /// The item: a valve, a reel, a hose.
        item: String,
        /// As it was written.
        place: String,
        /// Those it has.
        known: String,
    },
    /// It could not be checked, and nobody says why.
    #[error(
        "'{0}' could not be checked, and it does not say why. Nothing was recorded. Give the reason in \"words\"."
    )]
    NoWhy(String),
    /// One outlet is to be locked by something that is on none.
    #[error(
        "'{0}' is looked at on no outlet, so it cannot lock one. Nothing was recorded. Raise it to air, road or road-and-air, or leave \"severity\" out."
    )]
    NoOutlet(String),
    /// A whole walk on which nothing was answered.
    #[error(
        "a walk without an answer is no walk. Nothing was recorded. Give its \"answers\", or \"complete\": false when it goes on."
    )]
    NothingAnswered,
}

/// Refuses what nobody can have seen on the unit that the entry is about.
///
/// Paper and old binders are written down as they stand: what lacks a reason there lacked it then, and a hose named in
/// them may be gone since. A figure that cannot be is refused from them too, and so is a paper page said to be whole
/// on which nothing is answered: whoever types it has it before them.
pub(super) fn check(fleet: &Fleet, template: &Template, entry: &Entry) -> Result<(), NotSeen> {
    check_figures(&entry.fact)?;
    let answers = match &entry.fact {
        Fact::PreTripSection(section) => &section.answers,
        Fact::EndOfDay(report) => &report.defects,
        _ => return Ok(()),
    };
    answers.iter().try_for_each(|answer| check_outlet_lock(template, answer))?;
    let empty = matches!(&entry.fact, Fact::PreTripSection(section) if section.complete && section.answers.is_empty());
    if empty && matches!(entry.source, Source::Phone | Source::Shop | Source::Paper) {
        return Err(NotSeen::NothingAnswered);
    }
    if !matches!(entry.source, Source::Phone | Source::Shop) {
        return Ok(());
    }
    let features = entry.unit.and_then(|unit| fleet.trucks.get(&unit)).map(|truck| &truck.features);
    for answer in answers {
        let why = answer.words.as_deref().map(str::trim).unwrap_or_default();
        if answer.answer == AnswerKind::CouldNotCheck && why.is_empty() {
            return Err(NotSeen::NoWhy(answer.item.clone()));
        }
        if let Some(features) = features {
            check_outlet(template, features, answer)?;
        }
    }
    Ok(())
}

fn check_figures(fact: &Fact) -> Result<(), NotSeen> {
    let answers: &[Answer] = match fact {
        Fact::TopUp(top_up) => {
            top_up.pours.iter().try_for_each(|pour| poured(Some(pour.volume)))?;
            let after = top_up.pours.iter().filter_map(|pour| pour.after);
            return top_up.before.into_iter().chain(after).chain(top_up.after).try_for_each(in_glass);
        }
        Fact::ServiceDone(done) => return poured(done.oil.as_ref().and_then(|oil| oil.volume)),
        Fact::LevelCheck(level) => return in_glass(level.glass),
        Fact::StockCounted(stock) => return counted(stock.volume),
        Fact::PreTripSection(section) => &section.answers,
        Fact::EndOfDay(report) => &report.defects,
        _ => return Ok(()),
    };
    let levels =
        answers.iter().filter(|answer| answer.item == "oil-level").flat_map(|answer| &answer.figures);
    let mut levels = levels.map(|given| given.figure).filter(|figure| figure.unit == Unit::Percent);
    match levels.find(|figure| !(0.0..=100.0).contains(&figure.value())) {
        Some(figure) => Err(NotSeen::OutsideTheGlass(figure.value_text())),
        None => Ok(()),
    }
}

fn poured(volume: Option<Figure>) -> Result<(), NotSeen> {
    match volume.filter(|volume| volume.digits < 0) {
        Some(volume) => Err(NotSeen::LessThanNothing(volume.to_string())),
        None => Ok(()),
    }
}

fn counted(volume: Figure) -> Result<(), NotSeen> {
    match volume.litres() {
        _ if volume.digits < 0 => Err(NotSeen::StockBelowNothing(volume.to_string())),
        Some(litres) if litres > StockCounted::MOST_LITRES => {
            Err(NotSeen::StockBeyondATruck(volume.to_string()))
        }
        _ => Ok(()),
    }
}

fn in_glass(glass: Glass) -> Result<(), NotSeen> {
    match glass {
        Glass::Percent(percent) if percent > 100 => Err(NotSeen::OutsideTheGlass(percent.to_string())),
        _ => Ok(()),
    }
}

fn check_outlet_lock(template: &Template, answer: &Answer) -> Result<(), NotSeen> {
    let item = template.item(&answer.item);
    if answer.severity == Some(Severity::Outlet) && item.is_some_and(|item| !item.is_of_an_outlet()) {
        return Err(NotSeen::NoOutlet(answer.item.clone()));
    }
    Ok(())
}

/// A name is held against those the unit has; where nobody has named any yet, it stands.
fn check_outlet(template: &Template, features: &Features, answer: &Answer) -> Result<(), NotSeen> {
    let known: Vec<&str> = match template.item(&answer.item).and_then(|item| item.repeat) {
        Some(Repeat::Valves) => features.valves.iter().map(String::as_str).collect(),
        Some(Repeat::Reels) => features.reels.iter().map(String::as_str).collect(),
        Some(Repeat::Hoses) => features.hoses.iter().map(|hose| hose.tag.as_str()).collect(),
        None => return Ok(()),
    };
    match answer.place.as_deref() {
        Some(place) if !known.is_empty() && !known.contains(&place) => Err(NotSeen::NoSuchOutlet {
            item: answer.item.clone(),
            place: place.to_owned(),
            known: known.join(", "),
        }),
        _ => Ok(()),
    }
}
