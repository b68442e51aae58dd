//! Merging, killing, and bad input, at scale: the invented fleet that the tests here share.

mod desk;
pub mod entries;
pub mod fleet;
pub mod foreign;
pub mod world;
