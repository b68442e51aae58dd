//! Defects, certificates and reviews out of entries.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::day::Coverage;
use sumpbook_trade::defect::{
    Certificate, DefectRef, Defects, Finding, LockPart, OkAnswer, Records, Review, Verdict, defects,
};
use sumpbook_trade::record::{Answer, AnswerKind, RepairVerdict};
use sumpbook_trade::{Entry, Fact};

use super::again::{AgainNow, Seconds};
use super::inputs::Bearing;
use super::scope::Scope;
use super::{found, hot_stops, left_site, thirst};
use crate::ledger::LedgerError;

/// Everything that was found, and what became of it; and the words that lock more when they come again. `looked` are
/// levels that were read alone and were in view.
///
/// # Errors
/// As any read.
pub(super) fn of_unit(
    scope: &Scope<'_>,
    (entries, beside, looked): (&[Bearing], &[Bearing], &[Bearing]),
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
            Fact::WaterDrained(_) => findings.extend(found::of_drain(fleet, entry, entries)),
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
                by: found::person(entry),
                words: certificate.words.clone(),
            }),
            Fact::Review(review) => reviews.push(Review {
                at: entry.at.moment(),
                entry: entry.id.0,
                person: found::person(entry),
                seen: review.certificates.iter().map(|id| id.0).collect(),
            }),
            _ => findings.extend(found::by_itself(fleet, entry)),
        }
    }
    for Bearing { entry, .. } in looked {
        findings.extend(found::by_itself(fleet, entry));
    }
    findings.extend(hot_stops::found(scope, entries, upto_ms)?);
    findings.extend(left_site::found(scope, entries, upto_ms)?);
    findings.extend(thirst::found(fleet, entries));
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
                person: found::person(entry),
                words: [answer.word.as_deref(), answer.words.as_deref()]
                    .into_iter()
                    .flatten()
                    .collect::<Vec<_>>()
                    .join(": "),
            }),
            AnswerKind::Ok => {
                oks.push(OkAnswer { at, entry: entry.id.0, item, place, person: found::person(entry) })
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
