//! Defects, certificates and reviews out of entries.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::day::Coverage;
use sumpbook_trade::defect::{
    Certificate, DefectRef, Defects, Finding, LockPart, OkAnswer, Records, Review, Verdict, defects,
};
use sumpbook_trade::fluid::{Fluid, Fluids};
use sumpbook_trade::procedure::{item_of_step, word_of_step};
use sumpbook_trade::record::{Answer, AnswerKind, RepairVerdict};
use sumpbook_trade::{Entry, Fact};
use uuid::Uuid;

use super::inputs::Bearing;
use crate::fleet::Fleet;

/// Everything that was found, and what became of it.
pub(super) fn of_unit(
    fleet: &Fleet,
    entries: &[Bearing],
    beside: &[Bearing],
    covered: &[Coverage],
) -> Defects {
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
                findings.extend(finding_of_sealed(entry, entries));
            }
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
    defects(&Records {
        findings: &findings,
        oks: &oks,
        certificates: &certificates,
        reviews: &reviews,
        covered,
        tz: fleet.zone,
    })
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

fn locks(severity: Option<Severity>, outlet: &str) -> Vec<LockPart> {
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

/// A pour of another oil than the unit's own locks the air and is a finding by itself.
fn finding_of_pour(fleet: &Fleet, entry: &Entry) -> Option<Finding> {
    let Fact::TopUp(top_up) = &entry.fact else { return None };
    let own = fleet.set_on(entry.unit?)?.profile.oil_family?;
    let poured = top_up.family?;
    let wrong = top_up.fluid == Fluid::CompressorOil && own != poured && !top_up.pours.is_empty();
    wrong.then(|| Finding {
        at: entry.at.moment(),
        entry: entry.id.0,
        item: "oil-look".to_owned(),
        place: None,
        parts: vec![LockPart::Air],
        person: person(entry),
        words: "wrong-oil".to_owned(),
    })
}

/// A fluid that should need none was poured: a finding by itself.
fn finding_of_sealed(entry: &Entry, entries: &[Bearing]) -> Option<Finding> {
    let Fact::TopUp(top_up) = &entry.fact else { return None };
    let at = entry.at.moment();
    let same = |bearing: &Bearing| match &bearing.entry.fact {
        Fact::TopUp(other) if other.fluid == top_up.fluid => Some(bearing.entry.at.moment()),
        _ => None,
    };
    let earlier: Vec<_> = entries.iter().filter_map(same).collect();
    let found = Fluids::common_practice().ok()?.finding_of_top_up(top_up.fluid, at, &earlier)?;
    Some(Finding {
        at,
        entry: entry.id.0,
        item: found.item.to_owned(),
        place: None,
        parts: locks(Some(found.severity), found.item),
        person: person(entry),
        words: found.word.to_owned(),
    })
}
