//! The shop.
