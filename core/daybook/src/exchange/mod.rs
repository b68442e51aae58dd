//! Passing entries on: by file today, by the hub when there is one.

pub mod shelf;
