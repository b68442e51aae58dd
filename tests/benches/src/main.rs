//! Speed, shown as ratios of two things measured by turns in one run. Nothing here fails: it prints.
//!
//! `cargo benches` runs all; `cargo benches record open exchange phones hub due forecast` some.
// It prints, and what it sets up by itself may stop it at once.
#![allow(clippy::print_stdout, clippy::unwrap_used, clippy::indexing_slicing)]

mod due;
mod exchange;
mod exchange_headers;
mod fleet_year;
mod forecast;
mod hub;
mod hub_process;
mod open;
mod phones;
mod record;
mod said;

fn main() {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    if let [role, folder] = asked.as_slice()
        && role == hub_process::ROLE
    {
        return hub_process::serve_hub(folder);
    }
    if asked.as_slice() == [record::ALONE] {
        return record::measure();
    }
    let wanted = |name: &str| asked.is_empty() || asked.iter().any(|a| a == name);
    if wanted("record") {
        record::run();
    }
    if wanted("open") {
        open::run();
    }
    if wanted("exchange") {
        exchange::run();
    }
    if wanted("phones") {
        phones::run();
    }
    if wanted("forecast") {
        forecast::run();
    }
    if wanted("hub") {
        hub::run();
    }
    if wanted("due") {
        due::run();
    }
}
