//! How long a pre-trip covers.

use chrono::{DateTime, FixedOffset, TimeDelta};
use uuid::Uuid;

/// A pre-trip as signed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PreTrip {
    /// The moment of its signature.
    pub signed_at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// Who signed.
    pub person: Uuid,
}

/// An end-of-day report as signed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EndOfDay {
    /// The moment of its signature.
    pub at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// Who signed.
    pub person: Uuid,
}

/// The span one pre-trip covers. Both ends belong to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Coverage {
    /// The pre-trip's signature.
    pub from: DateTime<FixedOffset>,
    /// The end-of-day report, or the limit.
    pub to: DateTime<FixedOffset>,
    /// The pre-trip's entry.
    pub entry: Uuid,
    /// Who signed it.
    pub person: Uuid,
    /// The end-of-day report that ended it; `None` when it runs to the limit.
    pub ended_by: Option<Uuid>,
}

impl Coverage {
    /// Whether a moment lies in it.
    pub fn holds(&self, at: DateTime<FixedOffset>) -> bool {
        self.from <= at && at <= self.to
    }
}

/// How long a pre-trip covers when no end-of-day report comes: 14 hours of real time. The shop may change it.
pub const DEFAULT_LIMIT: TimeDelta = TimeDelta::hours(14);

/// What each pre-trip of a unit covers, oldest first: from its signature to the end-of-day report or the
/// limit, whichever is first (R9).
///
/// A report ends every pre-trip before it but one: the walk of whoever took the truck over. When the first
/// driver signs off after the second has signed on, the second's walk goes on.
pub fn coverages(pre_trips: &[PreTrip], ends: &[EndOfDay], limit: TimeDelta) -> Vec<Coverage> {
    let mut spans: Vec<Coverage> =
        pre_trips.iter().map(|walk| coverage(walk, pre_trips, ends, limit)).collect();
    spans.sort_by_key(|span| (span.from, span.entry));
    spans.dedup();
    spans
}

fn coverage(walk: &PreTrip, all: &[PreTrip], ends: &[EndOfDay], limit: TimeDelta) -> Coverage {
    let last = walk.signed_at.checked_add_signed(limit).unwrap_or(walk.signed_at);
    let end = ends
        .iter()
        .filter(|end| walk.signed_at < end.at && end.at <= last)
        .filter(|end| !taken_over(walk, end, all, limit))
        .min_by_key(|end| (end.at, end.entry));
    Coverage {
        from: walk.signed_at,
        to: end.map_or(last, |end| end.at),
        entry: walk.entry,
        person: walk.person,
        ended_by: end.map(|end| end.entry),
    }
}

/// Whether `walk` is somebody else's, signed after the newest walk that `end`'s signer still had running.
fn taken_over(walk: &PreTrip, end: &EndOfDay, all: &[PreTrip], limit: TimeDelta) -> bool {
    let running = |own: &&PreTrip| {
        own.person == end.person
            && own.signed_at < end.at
            && end.at.signed_duration_since(own.signed_at) <= limit
    };
    let own = all.iter().filter(running).map(|own| own.signed_at).max();
    walk.person != end.person && own.is_some_and(|own| walk.signed_at > own)
}
