//! How old the shop's news is, and how much the shop has.

use sumpbook_daybook::screen::{Counts, News, PhotoCounts, PhotoPlace};
use sumpbook_trade::Stamp;

/// How old the shop's news is.
#[uniffi::remote(Record)]
pub struct News {
    /// When the shop was last heard; none: never.
    pub heard: Option<Stamp>,
    /// Milliseconds since then, never below zero.
    pub age_ms: Option<i64>,
    /// At or past the shop's limit, or never heard: a lock may be unknown here.
    pub old: bool,
}

/// How many entries stand where.
#[uniffi::remote(Record)]
pub struct Counts {
    /// Only on this phone.
    pub on_phone: u32,
    /// At the shop.
    pub at_shop: u32,
    /// Set aside by the shop.
    pub aside: u32,
}

/// How many photos stand where.
#[uniffi::remote(Record)]
pub struct PhotoCounts {
    /// Not yet whole at the shop.
    pub on_phone: u32,
    /// At the shop.
    pub at_shop: u32,
    /// One stopped on its way: so much of it is there, in hundredths.
    pub stopped_at: Option<u8>,
}

/// Where a photo stands.
#[uniffi::remote(Enum)]
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
