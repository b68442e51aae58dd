//! Medians, and saying them against a limit.

use std::time::{Duration, Instant};

/// How long this takes.
pub(crate) fn timed<T>(work: impl FnOnce() -> T) -> (Duration, T) {
    let started = Instant::now();
    let done = work();
    (started.elapsed(), done)
}

/// Processor time of this thread so far (Linux; zero elsewhere): on a busy machine it says more than the clock.
pub(crate) fn processor_time() -> Duration {
    let stat = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    let first = stat.split_whitespace().next().and_then(|ns| ns.parse().ok());
    Duration::from_nanos(first.unwrap_or(0))
}

/// The middle one.
pub(crate) fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

/// Says a ratio and whether it is within its limit.
pub(crate) fn ratio(what: &str, ours: Duration, bare: Duration, limit: f64) {
    let ratio = ours.as_secs_f64() / bare.as_secs_f64().max(1e-9);
    let verdict = if ratio <= limit { "within" } else { "over" };
    println!("{what}: {ours:.1?} to {bare:.1?} = {ratio:.2}, limit {limit}: {verdict}");
}

/// Says a time and whether it is within its limit.
pub(crate) fn time(what: &str, took: Duration, limit: Duration) {
    let verdict = if took <= limit { "within" } else { "over" };
    println!("{what}: {took:.2?}, limit {limit:?}: {verdict}");
}

/// Says a ratio of sizes and whether it is within its limit.
pub(crate) fn bytes(what: &str, ours: usize, bare: usize, limit: f64) {
    let ratio = ours as f64 / bare.max(1) as f64;
    let verdict = if ratio <= limit { "within" } else { "over" };
    println!("{what}: {ours} to {bare} bytes = {ratio:.3}, limit {limit}: {verdict}");
}

/// Says a ratio that should not be smaller.
pub(crate) fn at_least(what: &str, ratio: f64, goal: f64) {
    let verdict = if ratio >= goal { "within" } else { "under" };
    println!("{what}: {ratio:.2}, goal {goal}: {verdict}");
}

/// Says a size that should not be larger.
pub(crate) fn at_most(what: &str, bytes: u64, limit: u64) {
    let verdict = if bytes <= limit { "within" } else { "over" };
    println!(
        "{what}: {:.1} MiB, limit {:.0} MiB: {verdict}",
        bytes as f64 / 1_048_576.0,
        limit as f64 / 1_048_576.0
    );
}
