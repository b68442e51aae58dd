//! Judging the readings of one moment against what was accepted before (R3).

use super::pass::{Member, Outvote, Pass, Standing};
use super::question::NeverAlone;
use super::rows::{AsideWhy, Settlement, Verdict};
use super::run::Candidate;
use super::span::{DAY, Step};
use crate::quantity::Tenths;

impl Pass<'_> {
    /// Judges all rows of one moment.
    pub(super) fn moment(&mut self, mut members: Vec<Member>) {
        members.retain(|m| match m.decision {
            Some(Settlement::DoesNotCount) => {
                self.aside(*m, AsideWhy::DoesNotCount);
                false
            }
            None if m.figure < Tenths::ZERO => {
                self.aside(*m, AsideWhy::Backwards);
                false
            }
            _ => true,
        });
        self.promote_rival(&members);
        if members.iter().any(|m| m.decision.is_some()) {
            self.settled(&members);
        } else if let [only] = members.as_slice() {
            self.judge(*only, true);
        } else {
            self.together(members);
        }
    }

    /// How a row comes after the last accepted one; a first row is possible.
    fn step(&self, member: Member) -> Step {
        self.top().map_or(Step::Possible, |top| top.point.step_to(member.point))
    }

    /// A tie of one moment ends when what follows can follow only one side. The lower side stands
    /// meanwhile, for the clock's sake only; if just a higher one can be followed, that one takes its place.
    fn promote_rival(&mut self, members: &[Member]) {
        if self.rivals.is_empty() || members.iter().any(|m| self.step(*m) != Step::AboveCeiling) {
            return;
        }
        let followed =
            self.rivals.iter().position(|rival| members.iter().any(|m| rival.point.leads_to(m.point)));
        let Some(place) = followed else { return };
        let mut higher = self.rivals.split_off(place);
        let rival = higher.remove(0);
        while let Some(top) = self.top().filter(|top| top.point.instant == rival.point.instant) {
            self.give(top.row, Verdict::Aside(AsideWhy::SameMoment));
            self.standing.pop();
        }
        self.give(rival.row, Verdict::Accepted);
        self.standing.push(rival);
        self.rivals = higher;
    }

    /// One row by itself.
    fn judge(&mut self, member: Member, may_vote: bool) {
        match self.step(member) {
            Step::Possible => self.accept(member, false),
            Step::SlippedBack => self.aside(member, AsideWhy::SlippedBack),
            Step::AboveCeiling => {
                // It runs below no accepted reading, so it has none to outvote, however many agree with it.
                self.aside(member, AsideWhy::AboveCeiling);
                self.never_alone.insert(member.row, NeverAlone::FirstStepAboveCeiling);
            }
            Step::Backwards => {
                self.aside(member, AsideWhy::Backwards);
                if may_vote {
                    self.vote(member);
                }
            }
        }
    }

    /// Several rows of one moment, none of them settled. More than 0.1 h apart they tie and never vote.
    fn together(&mut self, mut members: Vec<Member>) {
        members.sort_by_key(|m| m.point.total);
        let clash = match (members.first(), members.last()) {
            (Some(low), Some(high)) => low.point.rise_to(high.point) > 1,
            _ => return,
        };
        let (possible, others): (Vec<Member>, Vec<Member>) =
            members.into_iter().partition(|m| self.step(*m) == Step::Possible);
        for member in others {
            self.judge(member, !clash);
        }
        let (Some(low), Some(high)) = (possible.first().copied(), possible.last().copied()) else { return };
        let tie = low.point.rise_to(high.point) > 1;
        let counts = if tie { low.point.total } else { high.point.total };
        let mut rivals = Vec::new();
        for member in possible {
            if member.point.total == counts {
                self.accept(member, false);
            } else if tie {
                self.aside(member, AsideWhy::SameMoment);
                rivals.push(Standing { row: member.row, point: member.point, fixed: false });
            } else {
                self.aside(member, AsideWhy::SlippedBack);
            }
        }
        self.rivals = rivals;
    }

    /// A moment of which a person let a figure stand.
    fn settled(&mut self, members: &[Member]) {
        let (stand, others): (Vec<Member>, Vec<Member>) =
            members.iter().copied().partition(|m| m.decision.is_some());
        for member in stand {
            // What this figure could have followed in a run comes back in with it.
            let mut first = None;
            while let Some(top) = self.top().filter(|t| !t.fixed && t.point.total > member.point.total) {
                self.give(top.row, Verdict::Aside(AsideWhy::Displaced));
                self.standing.pop();
                first = self.pool.before(member.point);
            }
            if let Some(first) = first {
                self.let_in(first);
            }
            self.accept(member, true);
            if let Some(row) = self.rows.get_mut(member.row) {
                row.settled = true;
            }
        }
        for member in others {
            match self.top().map(|top| top.point.rise_to(member.point)) {
                Some(0) => self.accept(member, false),
                Some(-1 | 1) => self.aside(member, AsideWhy::SlippedBack),
                _ => self.aside(member, AsideWhy::SameMoment),
            }
        }
    }

    /// Lets a row that runs backwards speak against the accepted one it runs below.
    ///
    /// Only one accepted reading can ever be outvoted without a person, so two readings that agree are
    /// the longer side, and one is a tie.
    fn vote(&mut self, member: Member) {
        if self.pool.slips(member.point) {
            return;
        }
        if let Some(first) = self.pool.before(member.point) {
            self.outvote(first, member);
            return;
        }
        match self.first_of_run(member) {
            Ok(true) => {
                self.pool.add(Candidate { row: member.row, point: member.point });
                self.ties.push(member.row);
            }
            Ok(false) => {}
            Err(why) => {
                self.never_alone.insert(member.row, why);
            }
        }
    }

    /// Whether the row may begin a run that decides by itself, or why never.
    /// `Ok(false)`: 0.1 h below the accepted reading before the disputed one, so it takes no part.
    fn first_of_run(&self, member: Member) -> Result<bool, NeverAlone> {
        let meter = self.standing.get(self.floor..).unwrap_or_default();
        let Some((disputed, earlier)) = meter.split_last() else { return Err(NeverAlone::BelowEvery) };
        if disputed.fixed {
            return Err(NeverAlone::PersonSettled);
        }
        let below = |s: &Standing| member.point.rise_to(s.point) > 1;
        // Accepted totals rise, so what lies below the first lies below them all.
        let Some(before) = earlier.last().filter(|_| !meter.first().is_some_and(below)) else {
            return Err(NeverAlone::BelowEvery);
        };
        match before.point.step_to(member.point) {
            Step::Backwards => Err(NeverAlone::DisputesSeveral),
            Step::AboveCeiling => Err(NeverAlone::FirstStepAboveCeiling),
            Step::SlippedBack => Ok(false),
            Step::Possible => {
                let age = member.point.instant - before.point.instant;
                if age > i128::from(self.numbers.neighbour_days) * DAY {
                    return Err(NeverAlone::NeighbourTooOld);
                }
                Ok(true)
            }
        }
    }

    fn outvote(&mut self, first: Candidate, second: Member) {
        if let Some(lost) = self.standing.pop() {
            self.give(lost.row, Verdict::OutvotedByLater);
            self.outvotes.push(Outvote { lost: lost.row, run: [first.row, second.row] });
        }
        self.let_in(first);
        self.accept(second, false);
    }

    fn let_in(&mut self, first: Candidate) {
        self.give(first.row, Verdict::Accepted);
        self.standing.push(Standing { row: first.row, point: first.point, fixed: false });
    }
}
