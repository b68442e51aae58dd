//! Merging, killing, and bad input, at scale: the invented fleet that the tests here share.
// What stands here only ever runs inside a test: it may stop at once when its own setting-up fails.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

pub mod entries;
pub mod fleet;
pub mod world;
