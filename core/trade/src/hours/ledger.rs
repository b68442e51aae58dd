//! The judged readings of one meter, and what can be looked up in them (R3).

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset};
use uuid::Uuid;

use super::due::DueHours;
use super::numbers::HoursNumbers;
use super::pass::{Pass, Place};
use super::question::Question;
use super::rows::{ExchangeRow, JudgedReading, ReadingRow, Settlement};
use super::settle::settle;
use super::span::{DAY, Point, instant};
use super::splice::{Splice, turns_that_fit};
use super::unlike::{DaysOfUse, local_day, per_day};
use crate::quantity::Tenths;

/// All readings of one meter of one unit, judged.
#[derive(Clone, Debug, PartialEq)]
pub struct HoursLedger {
    pub(super) numbers: HoursNumbers,
    pub(super) rows: Vec<JudgedReading>,
    pub(super) places: Vec<Place>,
    /// Rows that count, oldest first.
    pub(super) accepted: Vec<usize>,
    /// Figures tied with the last accepted one, all higher.
    pub(super) rivals: Vec<Point>,
    pub(super) splices: Vec<Splice>,
    pub(super) questions: Vec<Question>,
    pub(super) due: Option<DueHours>,
}

impl HoursLedger {
    /// Judges all rows of one meter by R3, with the usual numbers.
    ///
    /// The rows may come in any order and from anywhere; a late one is judged at its own true time, and
    /// everything after it again. `decisions` are the ones in force, by the entry they are about.
    pub fn judge(
        readings: &[ReadingRow],
        exchanges: &[ExchangeRow],
        decisions: &BTreeMap<Uuid, Settlement>,
    ) -> HoursLedger {
        HoursLedger::judge_by(HoursNumbers::default(), readings, exchanges, decisions)
    }

    /// As [`judge`](Self::judge), with the shop's own numbers.
    pub fn judge_by(
        numbers: HoursNumbers,
        readings: &[ReadingRow],
        exchanges: &[ExchangeRow],
        decisions: &BTreeMap<Uuid, Settlement>,
    ) -> HoursLedger {
        settle(Pass::run(numbers, readings, exchanges, decisions))
    }

    /// Every figure with its verdict, by true time. An exchange gives up to two rows.
    pub fn rows(&self) -> &[JudgedReading] {
        &self.rows
    }

    /// The joints of exchanges and turns, oldest first.
    pub fn splices(&self) -> &[Splice] {
        &self.splices
    }

    /// What is added now to a figure of the meter to get hours of the unit.
    pub fn offset(&self) -> Tenths {
        self.splices.last().map_or(Tenths::ZERO, |s| s.offset)
    }

    /// The rows that count, oldest first; what a forecast of the pace is drawn from.
    pub fn accepted(&self) -> impl DoubleEndedIterator<Item = &JudgedReading> {
        self.accepted.iter().filter_map(|row| self.rows.get(*row))
    }

    /// The newest row that counts.
    pub fn last_accepted(&self) -> Option<&JudgedReading> {
        self.rows.get(*self.accepted.last()?)
    }

    /// The newest row that counts and is not after `at`.
    pub fn accepted_at_or_before(&self, at: DateTime<FixedOffset>) -> Option<&JudgedReading> {
        let at = instant(at);
        let count = self.accepted.partition_point(|row| self.instant_of(*row) <= at);
        self.rows.get(*self.accepted.get(count.checked_sub(1)?)?)
    }

    /// What the meter can show at most at `at`; `None` before any reading of it.
    ///
    /// The last accepted figure (the higher one of an open tie) and the real hours since, rounded up to
    /// the tenth; for a time in the past also no more than the next accepted figure.
    pub fn ceiling(&self, at: DateTime<FixedOffset>) -> Option<Tenths> {
        let view = self.view(at);
        let from = view.rivals.last().copied().or(view.last)?;
        let most = from.ceiling(view.instant);
        Some(view.next.map_or(most, |next| most.min(next.total)) - view.offset)
    }

    /// Whether this meter could show `figure` at `at`: what tells a reading of another meter, or of
    /// another truck, by asking each of those in turn. `false` for a meter never read.
    pub fn could_show(&self, figure: Tenths, at: DateTime<FixedOffset>) -> bool {
        let view = self.view(at);
        let point = Point { total: figure + view.offset, instant: view.instant };
        view.last.is_some_and(|last| last.leads_to(point))
            && view.next.is_none_or(|next| next.total >= point.total)
    }

    /// Where the meter may have gone round, were `figure` read at `at`. Offered only when the rise
    /// across the turn is possible; a person says that it did, never the tool.
    pub fn turns_offered(&self, figure: Tenths, at: DateTime<FixedOffset>) -> Vec<Tenths> {
        let view = self.view(at);
        view.last.map_or_else(Vec::new, |last| {
            turns_that_fit(last.total - view.offset, figure, last.ceiling(view.instant) - view.offset)
        })
    }

    /// Rises per 24 h on the days of use in the window before `at`'s own local day, lowest first.
    pub fn recent_use_days(&self, at: DateTime<FixedOffset>) -> Vec<Tenths> {
        let day = local_day(at);
        // Local days and real ones differ by hours, so a few days more are walked than are kept.
        let from = instant(at) - (i128::from(self.numbers.window_days) + 3) * DAY;
        let first = self.accepted.partition_point(|row| self.instant_of(*row) < from);
        let mut days = DaysOfUse::default();
        let mut before: Option<Point> = None;
        for row in self.accepted.get(first.saturating_sub(1)..).unwrap_or_default() {
            let (Some(reading), Some(place)) = (self.rows.get(*row), self.places.get(*row)) else { continue };
            let own_day = local_day(reading.at);
            if own_day >= day {
                break;
            }
            days.turn_to(own_day, self.numbers.window_days);
            if let Some(before) = before.replace(place.point) {
                days.add(own_day, per_day(before, place.point));
            }
        }
        days.turn_to(day, self.numbers.window_days);
        days.sorted().to_vec()
    }

    /// What is still to ask, oldest first.
    pub fn open_questions(&self) -> Vec<Question> {
        self.questions.clone()
    }

    /// The hours the due list reckons with; `None` before any accepted reading (unknown is not zero).
    pub fn for_due(&self) -> Option<DueHours> {
        self.due.clone()
    }

    pub(super) fn instant_of(&self, row: usize) -> i128 {
        self.places.get(row).map_or(i128::MAX, |place| place.point.instant)
    }

    /// What bounds a figure of `at`. A figure of an exchange's very moment is the old meter's.
    pub(super) fn view(&self, at: DateTime<FixedOffset>) -> View<'_> {
        let at = instant(at);
        let splices = self.splices.partition_point(|s| instant(s.at) < at);
        let before = self.splices.get(..splices).unwrap_or_default();
        let block = before.iter().filter(|s| !s.went_round).count();
        let key = |row: &usize| self.places.get(*row).map(|p| (p.block as usize, p.point.instant));
        let count = self.accepted.partition_point(|row| key(row) <= Some((block, at)));
        let place = |index: usize| {
            self.accepted
                .get(index)
                .and_then(|row| self.places.get(*row))
                .filter(|p| p.block as usize == block)
        };
        View {
            instant: at,
            offset: before.last().map_or(Tenths::ZERO, |s| s.offset),
            last: count.checked_sub(1).and_then(place).map(|p| p.point),
            next: place(count).map(|p| p.point),
            rivals: if count == self.accepted.len() { &self.rivals } else { &[] },
        }
    }
}

/// What bounds a figure of some moment.
pub(super) struct View<'a> {
    pub(super) instant: i128,
    pub(super) offset: Tenths,
    pub(super) last: Option<Point>,
    pub(super) next: Option<Point>,
    pub(super) rivals: &'a [Point],
}
