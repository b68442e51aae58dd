//! What the trade knows.
