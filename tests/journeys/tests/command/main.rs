//! The shop's and the phones' main job, by the command alone: files in, files out, no network.
//!
//! Invented data; every outcome worked by rule.

mod binary;
mod campaign;
mod exchange;
mod in_out;
mod lay_up;
mod lines;
mod readme;
mod refused;
mod shop;
mod show;
