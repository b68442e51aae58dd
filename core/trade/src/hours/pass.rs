//! The one pass over all rows in order of true time (R3).

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset};
use uuid::Uuid;

use super::numbers::HoursNumbers;
use super::question::NeverAlone;
use super::rows::{AsideWhy, ExchangeRow, JudgedReading, Part, ReadingRow, Settlement, Verdict};
use super::run::RunPool;
use super::span::{Point, instant};
use super::splice::{Splice, turn_of};
use crate::quantity::Tenths;

/// Where a row stands in time, and on which meter: an exchange begins a new block, a turn does not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Place {
    pub(super) point: Point,
    pub(super) block: u32,
}

/// An accepted row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Standing {
    pub(super) row: usize,
    pub(super) point: Point,
    /// A person said it stands.
    pub(super) fixed: bool,
}

/// A row of the moment being judged.
#[derive(Clone, Copy, Debug)]
pub(super) struct Member {
    pub(super) row: usize,
    pub(super) point: Point,
    pub(super) figure: Tenths,
    pub(super) decision: Option<Settlement>,
}

/// An accepted reading that later ones outvoted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Outvote {
    pub(super) lost: usize,
    pub(super) run: [usize; 2],
}

/// All that is known while rows go by.
pub(super) struct Pass<'a> {
    pub(super) numbers: HoursNumbers,
    decisions: &'a BTreeMap<Uuid, Settlement>,
    pub(super) rows: Vec<JudgedReading>,
    pub(super) places: Vec<Place>,
    /// Accepted rows, oldest first.
    pub(super) standing: Vec<Standing>,
    /// How many of `standing` are of meters before this one: no run reaches across an exchange, because
    /// the new meter's totals were reckoned from them.
    pub(super) floor: usize,
    /// Rows of the last accepted moment that tie with it, all higher, lowest first.
    pub(super) rivals: Vec<Standing>,
    pub(super) pool: RunPool,
    pub(super) offset: Tenths,
    pub(super) block: u32,
    pub(super) outvotes: Vec<Outvote>,
    /// Why no run may decide about a row that runs backwards.
    pub(super) never_alone: BTreeMap<usize, NeverAlone>,
    /// Rows that are the tie of one reading against one.
    pub(super) ties: Vec<usize>,
    pub(super) splices: Vec<Splice>,
}

impl<'a> Pass<'a> {
    /// Judges all rows. The order they are given in does not matter.
    pub(super) fn run(
        numbers: HoursNumbers,
        readings: &[ReadingRow],
        exchanges: &[ExchangeRow],
        decisions: &'a BTreeMap<Uuid, Settlement>,
    ) -> Pass<'a> {
        let mut pass = Pass {
            numbers,
            decisions,
            rows: Vec::with_capacity(readings.len() + 2 * exchanges.len()),
            places: Vec::with_capacity(readings.len() + 2 * exchanges.len()),
            standing: Vec::with_capacity(readings.len()),
            floor: 0,
            rivals: Vec::new(),
            pool: RunPool::default(),
            offset: Tenths::ZERO,
            block: 0,
            outvotes: Vec::new(),
            never_alone: BTreeMap::new(),
            ties: Vec::new(),
            splices: Vec::new(),
        };
        let mut readings: Vec<(i128, &ReadingRow)> = readings.iter().map(|r| (instant(r.at), r)).collect();
        // The last keys matter only between rows that agree in all before; they make the order total.
        readings.sort_unstable_by_key(|(when, r)| {
            (*when, r.order, r.entry, r.figure, r.source_brought_in, r.at.offset().local_minus_utc())
        });
        let mut exchanges: Vec<(i128, &ExchangeRow)> = exchanges.iter().map(|e| (instant(e.at), e)).collect();
        exchanges.sort_unstable_by_key(|(when, e)| {
            (*when, e.entry, e.old_end, e.new_start, e.went_round, e.at.offset().local_minus_utc())
        });

        let mut rest = readings.as_slice();
        for (when, exchange) in exchanges {
            if decisions.get(&exchange.entry) == Some(&Settlement::DoesNotCount) {
                continue;
            }
            // A reading of the exchange's very moment is the old meter's.
            let (before, after) = rest.split_at(rest.partition_point(|(at, _)| *at < when));
            let (beside, after) = after.split_at(after.partition_point(|(at, _)| *at == when));
            rest = after;
            pass.readings(before);
            if exchange.went_round {
                pass.readings(beside);
                pass.turn(exchange);
            } else {
                pass.exchange(beside, exchange, when);
            }
        }
        pass.readings(rest);
        pass
    }

    fn readings(&mut self, sorted: &[(i128, &ReadingRow)]) {
        for moment in sorted.chunk_by(|(a, _), (b, _)| a == b) {
            let members = self.members(moment);
            self.moment(members);
        }
    }

    fn members(&mut self, moment: &[(i128, &ReadingRow)]) -> Vec<Member> {
        moment
            .iter()
            .map(|(when, r)| self.push(r.entry, r.at, *when, r.figure, Part::Reading, r.source_brought_in))
            .collect()
    }

    fn push(
        &mut self,
        entry: Uuid,
        at: DateTime<FixedOffset>,
        when: i128,
        figure: Tenths,
        part: Part,
        brought_in: bool,
    ) -> Member {
        let point = Point { total: figure + self.offset, instant: when };
        let ceiling = self.highest().map(|last| last.ceiling(when) - self.offset);
        self.places.push(Place { point, block: self.block });
        self.rows.push(JudgedReading {
            entry,
            at,
            figure,
            total: point.total,
            part,
            brought_in,
            ceiling,
            verdict: Verdict::Accepted,
            settled: false,
            in_question: false,
            across_unanswered_jump: false,
        });
        let decision = self.decisions.get(&entry).copied();
        Member { row: self.rows.len() - 1, point, figure, decision }
    }

    /// The last accepted row of this meter.
    pub(super) fn top(&self) -> Option<Standing> {
        self.standing.get(self.floor..)?.last().copied()
    }

    /// The highest of the last accepted moment: what the ceiling is reckoned from.
    fn highest(&self) -> Option<Point> {
        self.rivals.last().copied().or(self.top()).map(|s| s.point)
    }

    pub(super) fn accept(&mut self, member: Member, fixed: bool) {
        self.give(member.row, Verdict::Accepted);
        self.standing.push(Standing { row: member.row, point: member.point, fixed });
        self.rivals.clear();
        self.pool.clear();
    }

    pub(super) fn aside(&mut self, member: Member, why: AsideWhy) {
        self.give(member.row, Verdict::Aside(why));
    }

    pub(super) fn give(&mut self, row: usize, verdict: Verdict) {
        if let Some(row) = self.rows.get_mut(row) {
            row.verdict = verdict;
        }
    }

    /// Joins a meter to itself past its highest figure. Nothing is accepted or sealed: the figures
    /// before and after are one meter's, and runs may reach across.
    fn turn(&mut self, exchange: &ExchangeRow) {
        let Some(last) = self.top() else { return };
        let figure = last.point.total - self.offset;
        if figure < Tenths::ZERO {
            // Nothing was read since the turn before: one turn, written by two people.
            return;
        }
        let Some(end) = turn_of(exchange, figure) else { return };
        self.offset = self.offset + end;
        self.splice(exchange, true);
    }

    /// Takes one meter off and puts the next one on.
    fn exchange(&mut self, beside: &[(i128, &ReadingRow)], exchange: &ExchangeRow, when: i128) {
        let mut members = self.members(beside);
        let old_end = exchange
            .old_end
            .map(|figure| self.push(exchange.entry, exchange.at, when, figure, Part::OldEnd, false));
        members.extend(old_end);
        self.moment(members);
        let end_known = old_end.is_some_and(|m| {
            self.rows.get(m.row).is_some_and(|r| {
                matches!(r.verdict, Verdict::Accepted | Verdict::Aside(AsideWhy::SlippedBack))
            })
        });
        // An end that does not fit must not shift every later total: the last accepted figure, or the
        // highest of a tie, stands in for it until a person has answered.
        let base = self.highest().map_or(self.offset + exchange.new_start, |last| last.total);
        self.offset = base - exchange.new_start;
        self.block = self.block.saturating_add(1);
        self.floor = self.standing.len();
        self.rivals.clear();
        self.splice(exchange, end_known);
        let start = self.push(exchange.entry, exchange.at, when, exchange.new_start, Part::NewStart, false);
        self.accept(start, false);
    }

    fn splice(&mut self, exchange: &ExchangeRow, end_known: bool) {
        self.splices.push(Splice {
            entry: exchange.entry,
            at: exchange.at,
            offset: self.offset,
            end_known,
            went_round: exchange.went_round,
        });
    }
}
