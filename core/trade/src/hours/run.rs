//! Readings set aside since the last accepted one that may yet outvote it (R3, runs).

use std::collections::{BTreeMap, BTreeSet};

use super::span::Point;

/// A reading that may begin a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Candidate {
    pub(super) row: usize,
    pub(super) point: Point,
}

/// The readings one of which a further reading might follow.
///
/// A run outvotes one accepted reading at most, so two readings that agree are enough and no two in here
/// agree: it is enough to keep, of readings with rising totals, those with rising lead. That keeps a
/// thousand strays from costing a million comparisons.
#[derive(Debug, Default)]
pub(super) struct RunPool {
    by_total: BTreeMap<i64, Candidate>,
    totals: BTreeSet<i64>,
}

impl RunPool {
    /// A good reading ends every run.
    pub(super) fn clear(&mut self) {
        self.by_total.clear();
        self.totals.clear();
    }

    /// Whether `point` is 0.1 h below a reading in here; such a one takes no part.
    pub(super) fn slips(&self, point: Point) -> bool {
        point.total.0.checked_add(1).is_some_and(|above| self.totals.contains(&above))
    }

    /// A reading in here that `point` can follow. Readings between the two are strays and passed over.
    pub(super) fn before(&self, point: Point) -> Option<Candidate> {
        let (_, candidate) = self.by_total.range(..=point.total.0).next_back()?;
        candidate.point.leads_to(point).then_some(*candidate)
    }

    /// Adds a reading that can follow the accepted one before the disputed one.
    pub(super) fn add(&mut self, candidate: Candidate) {
        let total = candidate.point.total.0;
        self.totals.insert(total);
        let lead = candidate.point.lead();
        let below = self.by_total.range(..=total).next_back();
        if below.is_some_and(|(_, kept)| kept.point.lead() >= lead) {
            return;
        }
        while let Some((&above, kept)) = self.by_total.range(total..).next() {
            if kept.point.lead() > lead {
                break;
            }
            self.by_total.remove(&above);
        }
        self.by_total.insert(total, candidate);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Tenths;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn finds_a_reading_to_follow_exactly_when_there_is_one(
            steps in proptest::collection::vec((0i64..300, 0i128..120), 1..60)
        ) {
            let mut pool = RunPool::default();
            let mut all: Vec<Point> = Vec::new();
            let mut instant = 0;
            for (row, (total, minutes)) in steps.into_iter().enumerate() {
                instant += minutes * 60_000_000_000;
                let point = Point { total: Tenths(total), instant };
                let any = all.iter().any(|p| p.leads_to(point));
                prop_assert_eq!(pool.before(point).is_some(), any);
                pool.add(Candidate { row, point });
                all.push(point);
            }
        }
    }
}
