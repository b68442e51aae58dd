//! Defects, certificates and reviews out of entries.

use chrono::TimeDelta;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::day::Coverage;
use sumpbook_trade::defect::{
    Certificate, DefectRef, Defects, Finding, LockPart, OkAnswer, Records, Review, Verdict, defects,
};
use sumpbook_trade::fluid::{Fluid, Fluids, Mix, Oil};
use sumpbook_trade::procedure::{item_of_step, word_of_step};
use sumpbook_trade::record::{
    Answer, AnswerKind, Glass, OilLook, RepairVerdict, Source, WaterAmount, WaterFrom,
};
use sumpbook_trade::{Entry, Fact};
use uuid::Uuid;

use super::again::{AgainNow, Seconds};
use super::inputs::Bearing;
use super::scope::Scope;
use crate::fleet::Fleet;
use crate::ledger::LedgerError;

/// Everything that was found, and what became of it; and the words that lock more when they come again.
///
/// # Errors
/// As any read.
pub(super) fn of_unit(
    scope: &Scope<'_>,
    (entries, beside): (&[Bearing], &[Bearing]),
    covered: &[Coverage],
    upto_ms: i64,
) -> Result<(Defects, Vec<AgainNow>), LedgerError> {
    let fleet = scope.fleet;
    let (mut findings, mut oks) = (Vec::new(), Vec::new());
    let (mut certificates, mut reviews) = (Vec::new(), Vec::new());
    for Bearing { entry, .. } in entries.iter().chain(beside) {
        match &entry.fact {
            Fact::PreTripSection(section) => answers(entry, &section.answers, &mut findings, &mut oks),
            Fact::EndOfDay(report) => answers(entry, &report.defects, &mut findings, &mut oks),
            Fact::StartAir(_) | Fact::StopAir(_) | Fact::StepsDone(_) => {
                findings.extend(findings_of_steps(entry))
            }
            Fact::TopUp(_) => {
                findings.extend(finding_of_pour(fleet, entry));
                findings.extend(finding_of_sealed(fleet, entry));
                findings.extend(findings_of_level(fleet, entry));
            }
            Fact::LevelCheck(_) => findings.extend(findings_of_level(fleet, entry)),
            Fact::WaterDrained(_) => findings.extend(finding_of_drain(fleet, entry, entries)),
            Fact::DisplayNote(_) => findings.extend(finding_of_stop(fleet, entry, entries)),
            Fact::Certificate(certificate) => certificates.push(Certificate {
                at: entry.at.moment(),
                entry: entry.id.0,
                defect: DefectRef {
                    entry: certificate.defect.entry.0,
                    item: certificate.defect.item.clone(),
                    place: certificate.defect.place.clone(),
                },
                verdict: match certificate.verdict {
                    RepairVerdict::Repaired => Verdict::Repaired,
                    RepairVerdict::NotNeeded => Verdict::NotNeeded,
                },
                by: person(entry),
                words: certificate.words.clone(),
            }),
            Fact::Review(review) => reviews.push(Review {
                at: entry.at.moment(),
                entry: entry.id.0,
                person: person(entry),
                seen: review.certificates.iter().map(|id| id.0).collect(),
            }),
            _ => {}
        }
    }
    let both: Vec<&Bearing> = entries.iter().chain(beside).collect();
    let seconds = fleet.checklist().ok().map(|list| Seconds::of(list, scope, upto_ms, &both)).transpose()?;
    if let Some(seconds) = &seconds {
        seconds.raise(fleet, &mut findings);
    }
    let defects = defects(&Records {
        findings: &findings,
        oks: &oks,
        certificates: &certificates,
        reviews: &reviews,
        covered,
        tz: fleet.zone,
    });
    Ok((defects, seconds.map(|seconds| seconds.now()).unwrap_or_default()))
}

fn answers(entry: &Entry, answers: &[Answer], findings: &mut Vec<Finding>, oks: &mut Vec<OkAnswer>) {
    for answer in answers {
        let (at, item, place) = (entry.at.moment(), answer.item.clone(), answer.place.clone());
        match answer.answer {
            AnswerKind::Defect => findings.push(Finding {
                at,
                entry: entry.id.0,
                item,
                parts: parts(answer),
                place,
                person: person(entry),
                words: [answer.word.as_deref(), answer.words.as_deref()]
                    .into_iter()
                    .flatten()
                    .collect::<Vec<_>>()
                    .join(": "),
            }),
            AnswerKind::Ok => {
                oks.push(OkAnswer { at, entry: entry.id.0, item, place, person: person(entry) })
            }
            AnswerKind::NotFitted | AnswerKind::CouldNotCheck => {}
        }
    }
}

fn parts(answer: &Answer) -> Vec<LockPart> {
    locks(answer.severity, answer.place.as_deref().unwrap_or(&answer.item))
}

pub(super) fn locks(severity: Option<Severity>, outlet: &str) -> Vec<LockPart> {
    match severity {
        Some(Severity::Road) => vec![LockPart::Road],
        Some(Severity::Air) => vec![LockPart::Air],
        Some(Severity::RoadAndAir) => vec![LockPart::Road, LockPart::Air],
        Some(Severity::Outlet) => vec![LockPart::Outlet(outlet.to_owned())],
        Some(Severity::Note) | None => Vec::new(),
    }
}

fn person(entry: &Entry) -> Uuid {
    entry.person.map_or(Uuid::nil(), |person| person.0)
}

/// What was not so at a step and locks something, or is a note of its own: the step stands for the item.
fn findings_of_steps(entry: &Entry) -> impl Iterator<Item = Finding> {
    let told = entry.fact.steps().iter().filter(|step| step.not_so && step.locks.is_some());
    told.map(|step| Finding {
        at: step.at.moment(),
        entry: entry.id.0,
        item: item_of_step(&step.step),
        place: None,
        parts: locks(step.locks, &step.step),
        person: person(entry),
        words: step.word.as_deref().map(word_of_step).unwrap_or_default(),
    })
}

/// A pour of another oil than the unit's own, or of one nobody named, locks the air and is a finding by itself. What
/// was brought in or typed in at a desk names no drum, and is wrong only where it names another family.
pub(super) fn wrong_pour(fleet: &Fleet, entry: &Entry) -> Option<Mix> {
    let Fact::TopUp(top_up) = &entry.fact else { return None };
    if top_up.fluid != Fluid::CompressorOil || top_up.pours.is_empty() {
        return None;
    }
    let own = fleet.oil_at(entry.unit?, entry.at.unix_ms())?;
    let wrong = Oil::poured_wrong(own, Oil::labelled(top_up.family, top_up.grade.as_deref()))?;
    (wrong == Mix::OtherFamily || entry.source == Source::Phone).then_some(wrong)
}

fn finding_of_pour(fleet: &Fleet, entry: &Entry) -> Option<Finding> {
    let word = match wrong_pour(fleet, entry)? {
        Mix::OtherGrade => "other-grade",
        Mix::Unknown => "unknown-oil",
        Mix::OtherFamily | Mix::Same => "wrong-oil",
    };
    Some(air_finding(entry, "oil-look", word))
}

/// A level out of view, and oil that looks bad, lock what they lock in a walk.
fn findings_of_level(fleet: &Fleet, entry: &Entry) -> Vec<Finding> {
    let (glass, look) = match &entry.fact {
        Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => (Some(level.glass), level.look),
        Fact::TopUp(top_up) if top_up.fluid == Fluid::CompressorOil => (top_up.after, None),
        _ => return Vec::new(),
    };
    if entry.source == Source::BroughtIn {
        return Vec::new();
    }
    let level = match glass {
        Some(Glass::BelowView) => Some("below-view"),
        Some(Glass::AboveView) => Some("above-view"),
        Some(Glass::Percent(_)) | None => None,
    };
    let look = (look == Some(OilLook::Milky)).then_some("milky");
    let found = [level.map(|word| ("oil-level", word)), look.map(|word| ("oil-look", word))];
    found.into_iter().flatten().map(|(item, word)| finding_of_word(fleet, entry, item, word)).collect()
}

/// The second time it stopped by itself on one day of the yard, and each after it.
fn finding_of_stop(fleet: &Fleet, entry: &Entry, entries: &[Bearing]) -> Option<Finding> {
    let by_itself = |entry: &Entry| match &entry.fact {
        Fact::DisplayNote(note) => note.stopped_by_itself == Some(true) && note.gone_again.is_none(),
        _ => false,
    };
    let day = fleet.yard_day(entry.at);
    let earlier = |other: &Bearing| {
        (other.entry.at, other.entry.id) < (entry.at, entry.id)
            && by_itself(&other.entry)
            && fleet.yard_day(other.entry.at) == day
    };
    let second = by_itself(entry) && entries.iter().any(earlier);
    let (item, word) = (item_of_step("mid-watch"), word_of_step("stopped-hot-twice"));
    second.then(|| air_finding(entry, &item, &word))
}

/// What was drained tells the same as the walk's line about it: oil from the brake tanks, water in the fuel, more water
/// in the receiver than a short run leaves.
fn finding_of_drain(fleet: &Fleet, entry: &Entry, entries: &[Bearing]) -> Option<Finding> {
    let Fact::WaterDrained(drained) = &entry.fact else { return None };
    let at = entry.at.moment();
    let cups_before = || {
        entries.iter().any(|other| match &other.entry.fact {
            Fact::WaterDrained(before) => {
                let moment = other.entry.at.moment();
                before.from == drained.from
                    && before.amount >= WaterAmount::Cup
                    && moment < at
                    && at - moment <= TimeDelta::days(7)
            }
            _ => false,
        })
    };
    let (item, word) = match (drained.from, drained.amount) {
        (WaterFrom::BrakeTanks, _) if drained.oil_in_it => ("tank-drain", "oil-in-water"),
        (WaterFrom::FuelTrap, amount) if amount != WaterAmount::None => ("water-trap", "water"),
        (WaterFrom::Receiver, WaterAmount::More) => ("drain-water", "more-than-cup"),
        // Common practice, no source: more than a cupful in a week is short runs, running cold.
        (WaterFrom::Receiver, WaterAmount::Cup) if cups_before() => ("drain-water", "cup"),
        _ => return None,
    };
    Some(finding_of_word(fleet, entry, item, word))
}

/// A finding that locks what its word locks on the checklist; the air where the checklist has no such word.
fn finding_of_word(fleet: &Fleet, entry: &Entry, item: &str, word: &str) -> Finding {
    let severity = fleet
        .checklist_at(entry.at.unix_ms())
        .ok()
        .and_then(|checklist| checklist.item(item)?.severity(word));
    let found = air_finding(entry, item, word);
    match severity {
        Some(severity) => Finding { parts: locks(Some(severity), item), ..found },
        None => found,
    }
}

fn air_finding(entry: &Entry, item: &str, word: &str) -> Finding {
    Finding {
        at: entry.at.moment(),
        entry: entry.id.0,
        item: item.to_owned(),
        place: None,
        parts: vec![LockPart::Air],
        person: person(entry),
        words: word.to_owned(),
    }
}

/// Whether an entry by itself locks something: what the shop should hear of at once.
pub(crate) fn locks_something(fleet: &Fleet, entry: &Entry) -> bool {
    let pour =
        [finding_of_pour(fleet, entry), finding_of_sealed(fleet, entry), finding_of_drain(fleet, entry, &[])];
    let found =
        pour.into_iter().flatten().chain(findings_of_level(fleet, entry)).chain(findings_of_steps(entry));
    found.into_iter().any(|finding| !finding.parts.is_empty())
}

/// A fluid that should need none was poured: a finding by itself.
fn finding_of_sealed(fleet: &Fleet, entry: &Entry) -> Option<Finding> {
    let Fact::TopUp(top_up) = &entry.fact else { return None };
    let found = Fluids::common_practice().ok()?.finding_of_top_up(top_up.fluid)?;
    Some(finding_of_word(fleet, entry, found.item, found.word))
}
