//! What a phone holds.
