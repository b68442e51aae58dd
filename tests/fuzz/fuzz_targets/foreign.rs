//! Any bytes, read in every way in which foreign bytes are read.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| sumpbook_simulation::foreign::foreign(data));
