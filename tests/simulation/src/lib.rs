//! Merging, killing, and bad input, at scale.
