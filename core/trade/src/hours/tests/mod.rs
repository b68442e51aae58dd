//! R3 by cases.
