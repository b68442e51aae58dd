//! From findings, certificates and reviews to defects, in whatever order they arrived.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, FixedOffset, TimeDelta};
use chrono_tz::Tz;
use uuid::Uuid;

use super::outcome::{Answer, Certified, Defect, DefectState, Defects, Repeat, Reviewed, Said};
use super::record::{Certificate, DefectRef, Finding, OkAnswer, Review};
use crate::day::{Coverage, yard_day};

type Moment = DateTime<FixedOffset>;

/// Everything recorded about one unit's defects, in any order. Voided entries are left out by the caller.
#[derive(Clone, Copy, Debug)]
pub struct Records<'a> {
    /// What was found.
    pub findings: &'a [Finding],
    /// What was answered OK.
    pub oks: &'a [OkAnswer],
    /// What the shop certified.
    pub certificates: &'a [Certificate],
    /// What drivers reviewed.
    pub reviews: &'a [Review],
    /// What the unit's pre-trips cover: answers within one span are of one day, midnight or not.
    pub covered: &'a [Coverage],
    /// The yard's zone.
    pub tz: Tz,
}

/// Time within which the same item again is a repeat.
const REPEAT_WITHIN: TimeDelta = TimeDelta::days(30);

/// The defects that `records` add up to. The same whatever order the records are in.
pub fn defects(records: &Records<'_>) -> Defects {
    let mut items: BTreeMap<(&str, Option<&str>), Vec<&Finding>> = BTreeMap::new();
    for finding in records.findings {
        items.entry((&finding.item, finding.place.as_deref())).or_default().push(finding);
    }
    let mut all = Defects::default();
    let mut matched = BTreeSet::new();
    for ((item, place), mut findings) in items {
        findings.sort();
        findings.dedup();
        let about = |defect: &DefectRef| defect.item == item && defect.place.as_deref() == place;
        let certificates = records.certificates.iter().filter(|c| about(&c.defect));
        let mut life = Life::default();
        for step in steps(&findings, certificates, records.reviews, &mut matched) {
            life.take(step);
        }
        let oks: Vec<&OkAnswer> =
            records.oks.iter().filter(|ok| ok.item == item && ok.place.as_deref() == place).collect();
        for defect in &mut life.defects {
            add_oks(defect, &oks, records);
        }
        all.defects.append(&mut life.defects);
    }
    all.defects.sort_by(|a, b| (a.since, &a.reference).cmp(&(b.since, &b.reference)));
    let waiting: BTreeSet<Uuid> =
        records.certificates.iter().map(|c| c.entry).filter(|entry| !matched.contains(entry)).collect();
    all.waiting = waiting.into_iter().collect();
    all
}

/// What happens to one item, in the order it counts in. At one moment findings come before certificates and
/// those before reviews, as `rank` says.
enum Step<'a> {
    Found(&'a Finding),
    Certified(&'a Certificate, Moment),
    Reviewed(&'a Review, Uuid, Moment),
}

impl Step<'_> {
    fn rank(&self) -> (Moment, u8, Uuid, Uuid) {
        match self {
            Step::Found(finding) => (finding.at, 0, finding.entry, Uuid::nil()),
            Step::Certified(certificate, at) => (*at, 1, certificate.entry, Uuid::nil()),
            Step::Reviewed(review, of, at) => (*at, 2, review.entry, *of),
        }
    }
}

fn steps<'a>(
    findings: &[&'a Finding],
    certificates: impl Iterator<Item = &'a Certificate>,
    reviews: &'a [Review],
    matched: &mut BTreeSet<Uuid>,
) -> Vec<Step<'a>> {
    let mut steps: Vec<Step<'a>> = findings.iter().map(|finding| Step::Found(finding)).collect();
    for certificate in certificates {
        // Whoever names an entry has seen it: a slow clock does not put the answer before the question.
        let of = findings.iter().filter(|f| f.entry == certificate.defect.entry).map(|f| f.at).max();
        let Some(found) = of else { continue };
        matched.insert(certificate.entry);
        let at = certificate.at.max(found);
        steps.push(Step::Certified(certificate, at));
        let seen = reviews.iter().filter(|review| review.seen.contains(&certificate.entry));
        steps.extend(seen.map(|review| Step::Reviewed(review, certificate.entry, review.at.max(at))));
    }
    steps.sort_by_key(Step::rank);
    steps
}

/// One item's defects as the steps are taken.
#[derive(Default)]
struct Life {
    defects: Vec<Defect>,
    /// Which defect each finding belongs to.
    place_of: BTreeMap<Uuid, usize>,
    /// Certificates since the newest finding of the open defect.
    round: Vec<Certified>,
}

impl Life {
    fn take(&mut self, step: Step<'_>) {
        match step {
            Step::Found(finding) => self.found(finding),
            Step::Certified(certificate, at) => self.certified(certificate, at),
            Step::Reviewed(review, of, at) => self.reviewed(review, of, at),
        }
    }

    fn found(&mut self, finding: &Finding) {
        let closed = self.defects.last().is_none_or(|d| matches!(d.state, DefectState::Closed { .. }));
        if closed {
            let repeats = self.defects.last().and_then(|before| repeat(before, finding.at));
            self.defects.push(opened(finding, repeats));
        }
        // Found again after a certificate: that certificate was about what stood before.
        self.round.clear();
        self.place_of.insert(finding.entry, self.defects.len().saturating_sub(1));
        let Some(defect) = self.defects.last_mut() else { return };
        defect.state = DefectState::Open;
        for part in &finding.parts {
            defect.parts.entry(part.clone()).or_insert(finding.at);
        }
        let said = Said::Defect { parts: finding.parts.clone(), words: finding.words.clone() };
        defect.answers.push(Answer { at: finding.at, entry: finding.entry, person: finding.person, said });
    }

    fn certified(&mut self, certificate: &Certificate, at: Moment) {
        let certified = Certified {
            certificate: certificate.entry,
            at,
            by: certificate.by,
            verdict: certificate.verdict,
            words: certificate.words.clone(),
        };
        let Some(place) = self.place_of.get(&certificate.defect.entry).copied() else { return };
        let Some(defect) = self.defects.get_mut(place) else { return };
        if defect.certificates.iter().any(|c| c.certificate == certified.certificate) {
            return;
        }
        defect.certificates.push(certified.clone());
        // Every defect before the newest is closed.
        if matches!(defect.state, DefectState::Closed { .. }) {
            return;
        }
        if defect.parts.is_empty() {
            defect.state = DefectState::Closed { certified, reviewed: None };
            return;
        }
        if defect.state == DefectState::Open {
            defect.state = DefectState::AwaitingReview { certified: certified.clone() };
        }
        self.round.push(certified);
    }

    fn reviewed(&mut self, review: &Review, of: Uuid, at: Moment) {
        let Some(certified) = self.round.iter().find(|c| c.certificate == of).cloned() else { return };
        let Some(defect) = self.defects.last_mut() else { return };
        let reviewed = Reviewed { review: review.entry, at, person: review.person };
        defect.state = DefectState::Closed { certified, reviewed: Some(reviewed) };
        self.round.clear();
    }
}

fn opened(finding: &Finding, repeats: Option<Repeat>) -> Defect {
    let (item, place) = (finding.item.clone(), finding.place.clone());
    Defect {
        reference: DefectRef { entry: finding.entry, item: item.clone(), place: place.clone() },
        item,
        place,
        since: finding.at,
        parts: BTreeMap::new(),
        answers: Vec::new(),
        certificates: Vec::new(),
        state: DefectState::Open,
        repeats,
    }
}

fn repeat(before: &Defect, at: Moment) -> Option<Repeat> {
    let DefectState::Closed { certified, .. } = &before.state else { return None };
    let soon = at.signed_duration_since(certified.at) <= REPEAT_WITHIN;
    soon.then(|| Repeat { of: before.reference.clone(), certified: certified.clone() })
}

/// Those who said OK of the item on a day it was found, or while it was open, are shown beside it.
fn add_oks(defect: &mut Defect, oks: &[&OkAnswer], records: &Records<'_>) {
    let closed = match &defect.state {
        DefectState::Closed { certified, reviewed } => Some(reviewed.map_or(certified.at, |r| r.at)),
        _ => None,
    };
    let beside: BTreeSet<Answer> = oks
        .iter()
        .filter(|ok| closed.is_none_or(|closed| ok.at <= closed))
        .filter(|ok| {
            ok.at >= defect.since || defect.answers.iter().any(|answer| same_day(answer, ok, records))
        })
        .map(|ok| Answer { at: ok.at, entry: ok.entry, person: ok.person, said: Said::Ok })
        .collect();
    defect.answers.extend(beside);
    defect.answers.sort();
}

/// Of one yard day, or within what one pre-trip covers, the pre-trip's own answers included.
fn same_day(answer: &Answer, ok: &OkAnswer, records: &Records<'_>) -> bool {
    let within = |span: &Coverage, entry: Uuid, at: Moment| span.entry == entry || span.holds(at);
    yard_day(answer.at, records.tz) == yard_day(ok.at, records.tz)
        || records
            .covered
            .iter()
            .any(|span| within(span, answer.entry, answer.at) && within(span, ok.entry, ok.at))
}
