//! A pre-trip under way: what was answered so far, at which stop, how long each line was on the screen.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{HowGiven, Item, Line, PlannedStop, Template};
use sumpbook_trade::limit::Measure;
use sumpbook_trade::record::{Answer, AnswerKind, How, ItemFigure, PreTripSection, Review};
use sumpbook_trade::{Entry, EntryId, Figure, PersonId, Stamp, Tenths, TruckId, Unit, WalkId};

use super::{DraftError, Signing};
use crate::fleet::Fleet;
use crate::line::with_severity;

/// The item whose figure is the glass.
pub(crate) const GLASS: &str = "oil-level";

/// Lines, by item and place, that another person answered in the same walk.
pub type Elsewhere = BTreeSet<(String, Option<String>)>;

/// How much of the walk a signature is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// All of it, with what others signed.
    Whole,
    /// Some stops; somebody else goes on.
    Part,
}

/// The last report as it was read, to be signed with the walk.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReviewDraft {
    /// The id of the review's own entry.
    pub id: EntryId,
    /// The report that was read, when there was one.
    pub report: Option<EntryId>,
    /// Certificates that were read.
    pub certificates: Vec<EntryId>,
}

/// The walk of the driver before, whose record was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FirstWalk {
    /// Its signed entry.
    pub entry: EntryId,
    /// Where the glass stood in it, percent: "still as shown" answers with it.
    pub glass: Option<u8>,
}

/// A pre-trip under way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct PreTripDraft {
    /// The id its entry will have.
    pub id: EntryId,
    /// The walk, shared with whoever walks other stops.
    pub walk: WalkId,
    /// The unit.
    pub unit: TruckId,
    /// Who walks.
    pub person: PersonId,
    /// Since when.
    pub begun: Stamp,
    /// Edition of the checklist it was begun with.
    pub edition: u32,
    /// Label of the stop it opens at again; none before the first.
    pub stop: Option<String>,
    /// That stop's place in the unit's own walk, 1 first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub position: Option<u32>,
    /// The last report, once it was read.
    pub review: Option<ReviewDraft>,
    /// Answers in the order they were given.
    pub answers: Vec<Answer>,
    /// Compressor hours as read on this walk.
    pub hours: Option<Tenths>,
    /// Milliseconds from the first stop on, on a clock that counts through sleep.
    pub walked_ms: Option<u64>,
    /// Groups of lines answered together so far.
    pub groups: u32,
    /// It is the second driver's short walk, after this one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub follows: Option<FirstWalk>,
    /// The person has signed few walks: each line says what OK is.
    #[serde(default)]
    pub hints: bool,
}

impl PreTripDraft {
    /// A walk that has just begun: nothing answered.
    pub fn begin(
        id: EntryId,
        walk: WalkId,
        unit: TruckId,
        person: PersonId,
        template: &Template,
        begun: Stamp,
    ) -> PreTripDraft {
        PreTripDraft {
            id,
            walk,
            unit,
            person,
            begun,
            edition: template.edition,
            stop: None,
            position: None,
            review: None,
            answers: Vec::new(),
            hours: None,
            walked_ms: None,
            groups: 0,
            follows: None,
            hints: false,
        }
    }

    /// A stop was opened, at this place of the unit's own walk (1 first): the draft opens there again.
    pub fn reach(&mut self, stop: &PlannedStop, position: u32) {
        self.stop = Some(stop.label());
        self.position = Some(position);
    }

    /// The answer to a line, when it has one.
    pub fn answer_to(&self, line: &Line) -> Option<&Answer> {
        self.answers.iter().find(|answer| answers(answer, line))
    }

    /// Answers one line; an earlier answer to it is replaced.
    ///
    /// # Errors
    /// An answer that does not hold; OK without the figure a line asks for.
    pub fn answer(&mut self, template: &Template, answer: Answer) -> Result<(), DraftError> {
        let answer = with_severity(template, answer)?;
        let item = template.item(&answer.item);
        let bare = answer.answer == AnswerKind::Ok && answer.figures.is_empty();
        if let Some(item) = item.filter(|item| bare && self.wants_figure(item)) {
            return Err(DraftError::FigureMissing(item.id.clone()));
        }
        self.answers.retain(|known| known.item != answer.item || stands_beside(known, &answer));
        self.answers.push(answer);
        Ok(())
    }

    /// Takes an answer back, so that the line is open again.
    pub fn take_back(&mut self, line: &Line) {
        self.answers.retain(|known| !answers(known, line));
    }

    /// One tap: every line of the stop that has no answer yet, here or by another, and asks for no figure is
    /// OK. Returns how many.
    ///
    /// # Errors
    /// When there is no such line.
    pub fn ok_together(
        &mut self,
        template: &Template,
        stop: &PlannedStop,
        elsewhere: &Elsewhere,
        on_screen_ms: u32,
    ) -> Result<usize, DraftError> {
        let group = self.groups.saturating_add(1);
        let open: Vec<Answer> = self
            .open_lines(stop, elsewhere)
            .filter(|line| template.item(&line.item).is_some_and(|item| !self.wants_figure(item)))
            .map(|line| Answer {
                item: line.item.clone(),
                place: place_of(line),
                answer: AnswerKind::Ok,
                word: None,
                severity: None,
                figures: self.as_shown(&line.item).into_iter().collect(),
                on_screen_ms: Some(on_screen_ms),
                together: Some(group),
                words: None,
                photos: Vec::new(),
                sound: None,
            })
            .collect();
        if open.is_empty() {
            return Err(DraftError::NothingTogether);
        }
        self.groups = group;
        let count = open.len();
        self.answers.extend(open);
        Ok(count)
    }

    /// Whether OK of an item still wants a figure. Hours stand in the entry itself, where they are a reading
    /// like any other: once given, the line is answered with the rest.
    pub fn wants_figure(&self, item: &Item) -> bool {
        item.number.as_ref().is_some_and(|number| {
            let asked = matches!(number.how, HowGiven::Asked | HowGiven::Chosen | HowGiven::Timed);
            let known = match number.unit {
                Measure::Hour => self.hours.is_some(),
                _ => self.as_shown(&item.id).is_some(),
            };
            asked && !known
        })
    }

    /// The glass as the first driver's record shows it: on a short walk it is looked at against that.
    fn as_shown(&self, item: &str) -> Option<ItemFigure> {
        let percent = self.follows.filter(|_| item == GLASS)?.glass?;
        let figure = Figure { digits: i64::from(percent), places: 0, unit: Unit::Percent };
        Some(ItemFigure { figure, how: How::Said })
    }

    /// Lines of a stop without an answer.
    pub fn open_lines<'a>(
        &'a self,
        stop: &'a PlannedStop,
        elsewhere: &'a Elsewhere,
    ) -> impl Iterator<Item = &'a Line> {
        stop.lines.iter().filter(move |line| self.answer_to(line).is_none() && !has(elsewhere, line))
    }

    /// The walk as entries: the review of the last report when it was read, then what was answered.
    ///
    /// # Errors
    /// For the whole walk: the first stop that is open. For a part: when nothing was answered.
    pub fn sign(
        &self,
        fleet: &Fleet,
        walk: &[PlannedStop],
        elsewhere: &Elsewhere,
        extent: Extent,
        signing: &Signing,
    ) -> Result<Vec<Entry>, DraftError> {
        let open = walk
            .iter()
            .zip(1u32..)
            .map(|(stop, at)| (stop.label(), at, self.open_lines(stop, elsewhere).count()))
            .find(|(_, _, left)| *left > 0);
        match (extent, open.clone()) {
            (Extent::Whole, Some((stop, at, left))) => return Err(DraftError::StopOpen { stop, at, left }),
            _ if self.answers.is_empty() => return Err(DraftError::NothingAnswered),
            _ => {}
        }
        let section = PreTripSection {
            walk: self.walk,
            edition: self.edition,
            answers: self.answers.clone(),
            seconds: self.walked_ms.map(|ms| u32::try_from(ms / 1_000).unwrap_or(u32::MAX)),
            complete: open.is_none(),
            follows: self.follows.map(|first| first.entry),
        };
        let review = self.review.as_ref().map(|read| {
            let fact = Review { certificates: read.certificates.clone(), report: read.report };
            signing.entry(fleet, read.id, self.unit, self.person, fact.into())
        });
        let mut signed = signing.entry(fleet, self.id, self.unit, self.person, section.into());
        signed.hours = self.hours;
        Ok(review.into_iter().chain([signed]).collect())
    }
}

/// Whether an answer is to a line. A line that covers both sides is answered with either of them.
fn answers(answer: &Answer, line: &Line) -> bool {
    let place = place_of(line);
    answer.item == line.item && (place.is_none() || answer.place == place)
}

/// Whether two answers to one item both stand: each of its own side.
fn stands_beside(known: &Answer, next: &Answer) -> bool {
    known.place.is_some() && next.place.is_some() && known.place != next.place
}

/// Whether somebody else answered a line.
fn has(elsewhere: &Elsewhere, line: &Line) -> bool {
    match place_of(line) {
        None => elsewhere.iter().any(|(item, _)| *item == line.item),
        place => elsewhere.contains(&(line.item.clone(), place)),
    }
}

/// The place of a line as an answer names it: the side, or the name of the thing.
pub fn place_of(line: &Line) -> Option<String> {
    line.side.map(|side| side.key().to_owned()).or_else(|| line.name.clone())
}
