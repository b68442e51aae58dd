//! After the pass: which questions stay open, what they name, and what the due list takes (R3).

use std::collections::BTreeSet;

use super::due::DueHours;
use super::hint::{Hint, explain, misread};
use super::ledger::HoursLedger;
use super::pass::{Pass, Place};
use super::question::{Question, QuestionWhy};
use super::rows::{AsideWhy, JudgedReading, Verdict};
use super::span::Point;
use super::unlike::{DaysOfUse, local_day, per_day, unlike};
use crate::quantity::Tenths;

/// How many of a long line of disputed readings a question names: the newest.
const MOST_NAMED: usize = 8;

/// A question by rows.
struct Open {
    why: QuestionWhy,
    standing: Vec<usize>,
    disputing: Vec<usize>,
}

/// Turns a finished pass into the ledger.
pub(super) fn settle(pass: Pass<'_>) -> HoursLedger {
    let mut settling = Settling {
        accepted: pass.standing.iter().map(|s| s.row).collect(),
        ties: pass.ties.iter().copied().collect(),
        open: Vec::new(),
        answered: None,
        pass,
    };
    settling.mark_unlike();
    settling.ask_about_asides();
    settling.ask_for_nods();
    settling.ask_about_contradictions();
    settling.finish()
}

struct Settling<'a> {
    pass: Pass<'a>,
    accepted: Vec<usize>,
    ties: BTreeSet<usize>,
    open: Vec<Open>,
    /// The settled row whose first dispute has been taken as answered.
    answered: Option<usize>,
}

impl Settling<'_> {
    fn row(&self, row: usize) -> Option<(&JudgedReading, Place)> {
        Some((self.pass.rows.get(row)?, *self.pass.places.get(row)?))
    }

    /// Accepted rows of the place's own meter: before its moment, at it, and after it.
    fn around(&self, place: Place) -> (&[usize], &[usize], &[usize]) {
        let key = |row: &usize| self.pass.places.get(*row).map(|p| (p.block, p.point.instant));
        let own = Some((place.block, place.point.instant));
        let block_start = self.accepted.partition_point(|row| key(row) < Some((place.block, i128::MIN)));
        let start = self.accepted.partition_point(|row| key(row) < own);
        let end = self.accepted.partition_point(|row| key(row) <= own);
        let block_end = self.accepted.partition_point(|row| key(row) <= Some((place.block, i128::MAX)));
        let part = |range: std::ops::Range<usize>| self.accepted.get(range).unwrap_or_default();
        (part(block_start..start), part(start..end), part(end..block_end))
    }

    /// Marks accepted readings that rose a good deal more than the unit does in a day.
    fn mark_unlike(&mut self) {
        let mut days = DaysOfUse::default();
        let mut before: Option<Point> = None;
        for row in self.accepted.clone() {
            let Some((reading, place)) = self.row(row) else { continue };
            let (day, settled) = (local_day(reading.at), reading.settled);
            days.turn_to(day, self.pass.numbers.window_days);
            let Some(before) = before.replace(place.point) else { continue };
            let is_unlike = unlike(before, place.point, days.sorted(), &self.pass.numbers).is_some();
            days.add(day, per_day(before, place.point));
            if is_unlike && !settled {
                self.pass.give(row, Verdict::AcceptedUnlike);
                self.open.push(Open {
                    why: QuestionWhy::UnlikeThisUnit,
                    standing: Vec::new(),
                    disputing: vec![row],
                });
            }
        }
    }

    fn ask_about_asides(&mut self) {
        let mut group: Option<(Open, Point)> = None;
        for row in 0..self.pass.rows.len() {
            let Some(question) = self.ask_about(row) else { continue };
            let Some((_, place)) = self.row(row) else { continue };
            // Readings that agree and stand against the same figure are one question.
            match &mut group {
                Some((open, last))
                    if open.standing == question.standing
                        && same_kind(open.why, question.why)
                        && last.leads_to(place.point) =>
                {
                    open.why = if question.why == QuestionWhy::Tie { open.why } else { question.why };
                    open.disputing.push(row);
                    *last = place.point;
                }
                _ => {
                    let finished = group.replace((question, place.point));
                    self.open.extend(finished.map(|(open, _)| open));
                }
            }
        }
        self.open.extend(group.map(|(open, _)| open));
    }

    /// The question about a row set aside, unless it is answered or has answered itself.
    fn ask_about(&mut self, row: usize) -> Option<Open> {
        let (reading, place) = self.row(row)?;
        let Verdict::Aside(why) = reading.verdict else { return None };
        let (earlier, beside, later) = self.around(place);
        let next = later.first().copied();
        let next_point = next.and_then(|n| self.pass.places.get(n)).map(|p| p.point);
        if next_point.is_some_and(|next| !place.point.leads_to(next)) {
            return None;
        }
        let last = earlier.last().copied();
        let settled = |row: usize| self.pass.rows.get(row).is_some_and(|r| r.settled);
        let (why, standing) = match why {
            AsideWhy::AboveCeiling if next.is_some() => {
                (QuestionWhy::UnansweredJump, last.into_iter().collect())
            }
            AsideWhy::AboveCeiling => (QuestionWhy::AboveCeiling, last.into_iter().collect()),
            AsideWhy::SameMoment if beside.iter().any(|b| settled(*b)) => return None,
            AsideWhy::SameMoment => (QuestionWhy::SameMoment, beside.to_vec()),
            AsideWhy::Backwards => {
                if let Some(last) = last.filter(|l| settled(*l)) {
                    // A person who let the higher figure stand has answered the first reading that
                    // disputed it. Readings that keep disputing it ask again, or the unit would stand still.
                    if next.is_some() || self.answered != Some(last) {
                        self.answered = Some(last);
                        return None;
                    }
                }
                let below = |row: &&usize| {
                    self.pass.places.get(**row).is_some_and(|p| place.point.rise_to(p.point) > 1)
                };
                let mut disputed: Vec<usize> =
                    earlier.iter().rev().take(MOST_NAMED).take_while(below).copied().collect();
                disputed.reverse();
                let tie = disputed.len() == 1 && self.ties.contains(&row);
                if disputed.is_empty() {
                    disputed.extend(last);
                }
                (if tie { QuestionWhy::Tie } else { QuestionWhy::Backwards }, disputed)
            }
            AsideWhy::SlippedBack | AsideWhy::DoesNotCount | AsideWhy::Displaced => return None,
        };
        if why == QuestionWhy::UnansweredJump
            && let Some(next) = next.and_then(|n| self.pass.rows.get_mut(n))
        {
            next.across_unanswered_jump = true;
        }
        Some(Open { why, standing, disputing: vec![row] })
    }

    /// Every outvote is shown. A word from a person about the loser or the run makes it no outvote any more:
    /// the loser does not count, or stands, or was displaced.
    fn ask_for_nods(&mut self) {
        for outvote in std::mem::take(&mut self.pass.outvotes) {
            let run: Vec<&JudgedReading> =
                outvote.run.iter().filter_map(|row| self.pass.rows.get(*row)).collect();
            if run.iter().any(|r| r.verdict.counts()) {
                self.open.push(Open {
                    why: QuestionWhy::OutvotedForNod,
                    standing: outvote.run.to_vec(),
                    disputing: vec![outvote.lost],
                });
            }
        }
    }

    /// Two figures a person let stand, the later one lower.
    fn ask_about_contradictions(&mut self) {
        for pair in self.accepted.windows(2) {
            let [before, after] = pair else { continue };
            let (Some((_, earlier)), Some((_, later))) = (self.row(*before), self.row(*after)) else {
                continue;
            };
            if earlier.block == later.block && earlier.point.total > later.point.total {
                self.open.push(Open {
                    why: QuestionWhy::BothStand,
                    standing: vec![*after],
                    disputing: vec![*before],
                });
            }
        }
    }

    fn hints(&self, open: &Open) -> Vec<Hint> {
        let explained = matches!(
            open.why,
            QuestionWhy::AboveCeiling
                | QuestionWhy::UnansweredJump
                | QuestionWhy::Backwards
                | QuestionWhy::Tie
        );
        let Some((reading, place)) = open.disputing.first().and_then(|row| self.row(*row)) else {
            return Vec::new();
        };
        if !explained {
            return Vec::new();
        }
        let offset = reading.total - reading.figure;
        let (earlier, _, _) = self.around(place);
        let Some((last, last_place)) = earlier.last().and_then(|row| self.row(*row)) else {
            return explain(reading.figure, Tenths::ZERO, Tenths::ZERO);
        };
        let most = last_place.point.ceiling(place.point.instant);
        let mut hints = explain(reading.figure, last.total - offset, most - offset);
        let before = earlier.iter().rev().nth(1).and_then(|row| self.row(*row));
        if last.total > reading.total
            && let Some((before, _)) = before
        {
            let offset = last.total - last.figure;
            let reads = misread(last.figure, before.total - offset, reading.total - offset);
            let entry = last.entry;
            hints.retain(|h| reads.is_empty() || *h != Hint::OtherMeterOrTruck);
            hints.extend(reads.into_iter().map(|reads| Hint::EarlierTypedWrong { entry, reads }));
        }
        hints
    }

    fn finish(mut self) -> HoursLedger {
        let due = self.due();
        self.open.sort_by_key(|open| open.disputing.first().copied());
        let mut questions = Vec::with_capacity(self.open.len());
        for open in std::mem::take(&mut self.open) {
            let entries = |rows: &[usize]| {
                rows.iter().filter_map(|row| self.pass.rows.get(*row)).map(|r| r.entry).collect()
            };
            questions.push(Question {
                why: open.why,
                standing: entries(&open.standing),
                disputing: entries(&open.disputing),
                never_alone: open.disputing.iter().find_map(|row| self.pass.never_alone.get(row)).copied(),
                hints: self.hints(&open),
            });
            for row in open.standing.iter().chain(&open.disputing) {
                // What a run or a jump is measured against is not itself in doubt.
                let in_doubt = match open.why {
                    QuestionWhy::AboveCeiling | QuestionWhy::UnansweredJump | QuestionWhy::OutvotedForNod => {
                        open.disputing.contains(row)
                    }
                    _ => true,
                };
                if let Some(reading) = self.pass.rows.get_mut(*row).filter(|_| in_doubt) {
                    reading.in_question = true;
                }
            }
        }
        HoursLedger {
            numbers: self.pass.numbers,
            rivals: self.pass.rivals.iter().map(|s| s.point).collect(),
            rows: self.pass.rows,
            places: self.pass.places,
            accepted: self.accepted,
            splices: self.pass.splices,
            questions,
            due,
        }
    }

    fn due(&self) -> Option<DueHours> {
        let last = *self.accepted.last()?;
        let (_, place) = self.row(last)?;
        let rows_of = |why: QuestionWhy| self.open.iter().filter(move |open| open.why == why);
        // Only a figure of the same moment, or one that a person let stand beside a lower one, can be
        // higher than the last accepted.
        let rivals = self.pass.rivals.iter().map(|s| s.row);
        let contradicted = rows_of(QuestionWhy::BothStand).flat_map(|open| open.disputing.iter().copied());
        let own_meter = |row: &usize| self.pass.places.get(*row).is_some_and(|p| p.block == place.block);
        let taken = rivals
            .chain(contradicted.filter(own_meter))
            .chain([last])
            .max_by_key(|row| self.pass.rows.get(*row).map(|r| r.total))?;
        let reading = self.pass.rows.get(taken)?;
        let disputed = |open: &Open| match open.why {
            QuestionWhy::Backwards | QuestionWhy::Tie | QuestionWhy::SameMoment | QuestionWhy::BothStand => {
                open.standing.contains(&taken) || open.disputing.contains(&taken)
            }
            _ => false,
        };
        Some(DueHours {
            hours: reading.total,
            entry: reading.entry,
            at: reading.at,
            higher_of_disputed: self.open.iter().any(disputed),
            across_unanswered_jump: rows_of(QuestionWhy::UnansweredJump).next().is_some(),
        })
    }
}

fn same_kind(a: QuestionWhy, b: QuestionWhy) -> bool {
    let backwards = |why| matches!(why, QuestionWhy::Backwards | QuestionWhy::Tie);
    a == b || (backwards(a) && backwards(b))
}
