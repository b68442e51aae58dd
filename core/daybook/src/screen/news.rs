//! How old the shop's news is on this phone, and how much the shop has of it.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};
use sumpbook_trade::limit::{Case, Measure, Rules};
use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, Stamp};

use crate::phone::online::TriedWhy;

/// Where this phone's own entries stand, as the exchange knows it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Standing {
    /// Own entries that no receipt of the shop covers.
    pub on_phone: BTreeSet<EntryId>,
    /// How many own entries a receipt covers.
    pub at_shop: u32,
    /// Entries the shop has set aside.
    pub aside: BTreeSet<EntryId>,
    /// When the shop was last heard.
    pub heard: Option<Stamp>,
    /// When it was last tried in vain; none when the last try was heard.
    pub tried: Option<Stamp>,
    /// Why that came to nothing; none when an older version kept the try.
    pub tried_why: Option<TriedWhy>,
    /// When it will be tried again.
    pub again: Option<Stamp>,
    /// When the shop stopped this phone; none: it did not.
    pub stopped: Option<Stamp>,
    /// Where each photo stands that this phone holds and an entry names.
    pub photos: BTreeMap<Digest, PhotoPlace>,
}

/// Where a photo stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PhotoPlace {
    /// Only on this phone.
    OnPhone,
    /// It stopped on its way: so much of it is at the shop.
    Part {
        /// 0 to 99.
        percent: u8,
    },
    /// Whole at the shop.
    AtShop,
}

/// How many photos stand where.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PhotoCounts {
    /// Not yet whole at the shop.
    pub on_phone: u32,
    /// At the shop.
    pub at_shop: u32,
    /// One stopped on its way: so much of it is there, in hundredths.
    pub stopped_at: Option<u8>,
}

impl Standing {
    /// How many stand where.
    pub fn counts(&self) -> Counts {
        Counts { on_phone: count(self.on_phone.len()), at_shop: self.at_shop, aside: count(self.aside.len()) }
    }

    /// How many photos stand where.
    pub fn photo_counts(&self) -> PhotoCounts {
        let there = self.photos.values().filter(|place| **place == PhotoPlace::AtShop).count();
        let stopped = self.photos.values().find_map(|place| match place {
            PhotoPlace::Part { percent } => Some(*percent),
            _ => None,
        });
        let here = self.photos.len().saturating_sub(there);
        PhotoCounts { on_phone: count(here), at_shop: count(there), stopped_at: stopped }
    }
}

/// How many entries stand where.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Counts {
    /// Only on this phone.
    pub on_phone: u32,
    /// At the shop.
    pub at_shop: u32,
    /// Set aside by the shop.
    pub aside: u32,
}

/// How old the shop's news is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct News {
    /// When the shop was last heard; none: never.
    pub heard: Option<Stamp>,
    /// Milliseconds since then, never below zero.
    pub age_ms: Option<i64>,
    /// At or past the shop's limit, or never heard: a lock may be unknown here.
    pub old: bool,
}

impl News {
    /// The news at a moment.
    pub fn at(heard: Option<Stamp>, now: Stamp) -> News {
        let age_ms = heard.map(|heard| now.unix_ms().saturating_sub(heard.unix_ms()).max(0));
        let hours = age_ms.map(|ms| ms as f64 / 3_600_000.0);
        let limit = Rules::common_practice().ok().and_then(|rules| rules.on("phone-age", None));
        let limit = limit.and_then(|rule| rule.limit(&Case::default()).ok());
        let fresh = hours.zip(limit).and_then(|(hours, limit)| limit.holds_in(hours, Measure::Hour));
        News { heard, age_ms, old: fresh != Some(true) }
    }
}

/// A count for a screen.
pub(super) fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}
