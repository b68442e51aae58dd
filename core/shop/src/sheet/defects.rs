//! What was found, and what is locked because of it (R4).

use chrono::{DateTime, FixedOffset};
use sumpbook_daybook::fleet::CampaignTold;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::defect::{Answer, Defect, DefectState, LockOut, LockPart, Said, Verdict};
use sumpbook_trade::lay_up::{LIST_OPEN, is_lay_up};
use sumpbook_trade::{Entry, EntryId, Fact};

use super::found_rows::{CertificateSaid, DefectRow, LockedRow, SaidRow};
use super::unit_day::UnitDay;
use super::{Yard, knowing};
use crate::ShopError;

/// Defects first found on the sheet's day, or dated after the moment it is looked at, worst first.
pub(super) fn new_on(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Result<Vec<DefectRow>, ShopError> {
    listed(ledger, yard, units, |defect| {
        yard.day_of(defect.since) == yard.day || is_ahead(yard, defect.since)
    })
}

/// Defects that wait for a certificate, worst first.
pub(super) fn to_certify(
    ledger: &Ledger,
    yard: &Yard,
    units: &[UnitDay],
) -> Result<Vec<DefectRow>, ShopError> {
    listed(ledger, yard, units, |defect| defect.state == DefectState::Open)
}

fn listed(
    ledger: &Ledger,
    yard: &Yard,
    units: &[UnitDay],
    wanted: impl Fn(&Defect) -> bool,
) -> Result<Vec<DefectRow>, ShopError> {
    let of = units.iter().map(|unit| (unit.door.as_str(), unit.as_looked_at(yard).defects.as_slice()));
    of_units(ledger, yard, of, wanted)
}

/// Whether something is dated after the moment at which its own day, or one before it, is looked at. It is here, so a
/// clock was ahead: it holds from now on, and not from a moment that has not come.
fn is_ahead(yard: &Yard, since: DateTime<FixedOffset>) -> bool {
    yard.is_under_way() && since > yard.now.moment()
}

/// Such defects of these units, worst first.
pub(super) fn of_units<'a>(
    ledger: &Ledger,
    yard: &Yard,
    units: impl Iterator<Item = (&'a str, &'a [Defect])>,
    wanted: impl Fn(&Defect) -> bool,
) -> Result<Vec<DefectRow>, ShopError> {
    let mut rows = Vec::new();
    for (door, defects) in units {
        for defect in defects.iter().filter(|defect| wanted(defect)) {
            rows.push((worst(defect), row(ledger, yard, door, defect)?));
        }
    }
    rows.sort_by(|(a, x), (b, y)| {
        (a, x.since, &x.unit, &x.item, &x.place).cmp(&(b, y.since, &y.unit, &y.item, &y.place))
    });
    Ok(rows.into_iter().map(|(_, row)| row).collect())
}

/// Road and air, road, air, an outlet, a note: the lesser is the worse.
fn worst(defect: &Defect) -> u8 {
    let has = |part: LockPart| defect.parts.contains_key(&part);
    match (has(LockPart::Road), has(LockPart::Air), defect.parts.is_empty()) {
        (true, true, _) => 0,
        (true, false, _) => 1,
        (false, true, _) => 2,
        (false, false, false) => 3,
        (false, false, true) => 4,
    }
}

/// One defect with its answers, its certificate and its review.
pub(crate) fn row(ledger: &Ledger, yard: &Yard, door: &str, defect: &Defect) -> Result<DefectRow, ShopError> {
    let mut answers: Vec<&Answer> = defect.answers.iter().collect();
    let found = |answer: &Answer| matches!(answer.said, Said::Defect { .. });
    // One person's OK of the morning says nothing beside what the same person found later.
    let two = answers.first().is_some_and(|first| {
        answers.iter().any(|other| other.person != first.person && found(other) != found(first))
    });
    let place = if two { None } else { answers.iter().position(|answer| found(answer)) }.unwrap_or(0);
    let one = if answers.is_empty() { None } else { Some(answers.remove(place)) };
    // Where two people differ both stand side by side; further answers follow.
    let differs =
        |answer: &&Answer| one.is_some_and(|one| one.person != answer.person && found(one) != found(answer));
    let other = answers.iter().position(differs).map(|place| answers.remove(place));
    let said = |answer: &Answer| SaidRow {
        who: yard.name_of(ledger, answer.person),
        at: yard.stamp(answer.at),
        ok: answer.said == Said::Ok,
        words: match &answer.said {
            Said::Ok => String::new(),
            Said::Defect { words, .. } => words.clone(),
        },
    };
    let nobody = || SaidRow { who: None, at: yard.stamp(defect.since), ok: false, words: String::new() };
    let (state, certified, reviewed) = match &defect.state {
        DefectState::Open => ("open", None, None),
        DefectState::AwaitingReview { certified } => ("awaiting-review", Some(certified), None),
        DefectState::Closed { certified, reviewed } => ("closed", Some(certified), *reviewed),
    };
    let (photos, sounds) = files(ledger, defect)?;
    Ok(DefectRow {
        unit: door.to_owned(),
        item: defect.item.clone(),
        place: defect.place.clone(),
        since: yard.stamp(defect.since),
        one_answer: one.map_or_else(nobody, said),
        other_answer: other.map(said),
        more_answers: answers.into_iter().map(said).collect(),
        locks: defect.parts.keys().cloned().map(String::from).collect(),
        photos,
        sounds,
        state: state.to_owned(),
        certificate: certified.map(|certified| CertificateSaid {
            verdict: match certified.verdict {
                Verdict::Repaired => "repaired",
                Verdict::NotNeeded => "not-needed",
            }
            .to_owned(),
            who: yard.name_of(ledger, certified.by),
            at: yard.stamp(certified.at),
            words: certified.words.clone(),
        }),
        reviewed: reviewed.map(|reviewed| SaidRow {
            who: yard.name_of(ledger, reviewed.person),
            at: yard.stamp(reviewed.at),
            ok: true,
            words: String::new(),
        }),
        repeat: defect.repeats.is_some(),
        ahead: is_ahead(yard, defect.since),
    })
}

/// The photos and the sounds of those who found it, in the order they told of it.
fn files(ledger: &Ledger, defect: &Defect) -> Result<(Vec<String>, Vec<String>), ShopError> {
    let truth = ledger.store().truth();
    let (mut photos, mut sounds) = (Vec::new(), Vec::new());
    for answer in defect.answers.iter().filter(|answer| answer.said != Said::Ok) {
        let Some(held) = truth.by_id(EntryId(answer.entry))?.into_iter().next() else { continue };
        let answers = match Entry::from_payload(&held.row.payload).map(|entry| entry.fact) {
            Ok(Fact::PreTripSection(section)) => section.answers,
            Ok(Fact::EndOfDay(report)) => report.defects,
            _ => continue,
        };
        for of_this in answers.iter().filter(|a| a.item == defect.item && a.place == defect.place) {
            photos.extend(of_this.photos.iter().map(ToString::to_string));
            sounds.extend(of_this.sound.iter().map(ToString::to_string));
        }
    }
    Ok((photos, sounds))
}

/// What the shop said of the campaign that locks; none where a defect does.
fn told_of<'a>(ledger: &'a Ledger, lock: &LockOut) -> Option<&'a CampaignTold> {
    let name = lock.because.place.as_deref().filter(|_| lock.is_of_campaign())?;
    let campaign = ledger.fleet().campaigns.get(&TaskId::of_campaign(name))?;
    campaign.told.iter().find(|told| told.entry.0 == lock.because.entry)
}

/// Lock-outs that stand at the cut, oldest first; while the day is under way those too that are dated after it.
pub(super) fn locked(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Result<Vec<LockedRow>, ShopError> {
    let mut rows = Vec::new();
    let cut = yard.cut();
    for unit in units {
        let state = unit.as_looked_at(yard);
        // A campaign's last good day may well be to come.
        let ahead = |lock: &LockOut| is_ahead(yard, lock.since) && !lock.is_of_campaign();
        let begun = |lock: &LockOut| lock.since <= cut || ahead(lock);
        let stands = |at: Option<DateTime<FixedOffset>>| at.is_none_or(|at| cut < at && !is_ahead(yard, at));
        for lock in state.locks.iter().filter(|lock| begun(lock) && stands(lock.ended)) {
            let answer = knowing::opening(&state.defects, lock);
            let told = told_of(ledger, lock);
            let entry = answer.map_or(lock.because.entry, |answer| answer.entry);
            let opened = knowing::first_held(ledger, entry)?;
            let driver_knew = match (&opened, unit.phone) {
                (Some(opened), Some(phone)) => knowing::phone_knew(ledger, yard, phone, opened)?,
                _ => None,
            };
            let spell = state.lay_ups.iter().find(|spell| spell.entry == lock.because.entry);
            let laid_up = is_lay_up(lock);
            rows.push(LockedRow {
                unit: unit.door.clone(),
                lock: lock.part.clone().into(),
                since: yard.stamp(lock.since),
                item: lock.because.item.clone(),
                place: lock.because.place.clone(),
                why: match (answer.map(|answer| &answer.said), told) {
                    (Some(Said::Defect { words, .. }), _) => words.clone(),
                    (_, Some(told)) => told.what.words.clone(),
                    _ if laid_up => LIST_OPEN.to_owned(),
                    _ => String::new(),
                },
                who: match answer {
                    Some(answer) => yard.name_of(ledger, answer.person),
                    None => told.and_then(|told| yard.name(ledger, told.by)).or_else(|| {
                        let person = spell.and_then(|spell| spell.person)?;
                        yard.name_of(ledger, person)
                    }),
                },
                shop_knew: opened.as_ref().map(|opened| knowing::shop_knew(yard, opened)),
                driver_knew,
                certified: lock.certified.map(|at| yard.stamp(at)),
                next_step: match (lock.is_of_campaign(), lock.certified) {
                    (true, _) => "service",
                    (false, Some(_)) => "review",
                    (false, None) if laid_up => "return-list",
                    (false, None) => "certify",
                }
                .to_owned(),
                ahead: is_ahead(yard, lock.since),
            });
        }
    }
    rows.sort_by(|a, b| (&a.unit, a.since, &a.lock).cmp(&(&b.unit, b.since, &b.lock)));
    Ok(rows)
}
