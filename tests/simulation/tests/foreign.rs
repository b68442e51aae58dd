//! Foreign bytes, without a fuzzer: the kept samples, and changes of them for a bounded time. Nothing panics,
//! no input takes long, none holds much.

use std::alloc::System;
use std::path::PathBuf;
use std::time::{Duration, Instant};

use stats_alloc::{INSTRUMENTED_SYSTEM, StatsAlloc};
use sumpbook_simulation::foreign::{foreign, honest};

#[global_allocator]
static MEMORY: &StatsAlloc<System> = &INSTRUMENTED_SYSTEM;

/// Seconds without a word from outside; `SUMPBOOK_FOREIGN_SECONDS` asks for another number.
const SECONDS: u64 = 30;
/// Any input at most: a phone's screen would stand still for longer than an eye takes to see it.
const LONGEST: Duration = Duration::from_millis(100);
/// Bytes asked for in all while one input is read; held at one time is less.
const MOST_BYTES: usize = 64 * 1024 * 1024;

fn corpus() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../fuzz/corpus/foreign")
}

/// Worst of all inputs so far.
#[derive(Default)]
struct Worst {
    time: Duration,
    bytes: usize,
    inputs: u64,
}

impl Worst {
    fn read(&mut self, data: &[u8], name: &str) {
        let before = MEMORY.stats();
        let started = Instant::now();
        foreign(data);
        let mut took = started.elapsed();
        if took > LONGEST {
            // Another program may have had the processor: the least of a few is the input's own.
            for _ in 0..4 {
                let started = Instant::now();
                foreign(data);
                took = took.min(started.elapsed());
            }
        }
        let bytes = MEMORY.stats().bytes_allocated.saturating_sub(before.bytes_allocated);
        self.inputs += 1;
        self.time = self.time.max(took);
        // The first of a thread makes its ledger; it is read again without that.
        if bytes > MOST_BYTES && name != "again" {
            return self.read(data, "again");
        }
        self.bytes = self.bytes.max(bytes);
        assert!(took <= LONGEST, "{name}: {took:?} for {} bytes", data.len());
        assert!(bytes <= MOST_BYTES, "{name}: {bytes} bytes taken for {} bytes", data.len());
    }
}

/// A multiplicative generator: the same changes in every run.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize
    }
}

/// Values that lengths and types turn on.
const TELLING: [u8; 16] =
    [0, 1, 0x17, 0x18, 0x1b, 0x3b, 0x5b, 0x7b, 0x7f, 0x80, 0x9b, 0xbb, 0xc1, 0xf6, 0xfb, 0xff];

fn changed(from: &[u8], other: &[u8], numbers: &mut Numbers) -> Vec<u8> {
    let mut data = from.to_vec();
    for _ in 0..=numbers.next() % 4 {
        let at = numbers.next() % (data.len() + 1);
        match numbers.next() % 6 {
            0 => data.truncate(at),
            1 if at < data.len() => data[at] ^= 1 << (numbers.next() % 8),
            2 if at < data.len() => data[at] = TELLING[numbers.next() % TELLING.len()],
            3 => data.insert(at, TELLING[numbers.next() % TELLING.len()]),
            4 => {
                let part = other.iter().skip(numbers.next() % (other.len() + 1)).take(numbers.next() % 64);
                data.splice(at..at, part.copied().collect::<Vec<_>>());
            }
            _ if at < data.len() => {
                data.drain(at..(at + 1 + numbers.next() % 16).min(data.len()));
            }
            _ => {}
        }
    }
    data
}

#[test]
fn nothing_foreign_stops_it_slows_it_or_fills_it() {
    let kept = std::fs::read_dir(corpus()).unwrap().map(|entry| entry.unwrap().path());
    let mut samples: Vec<(String, Vec<u8>)> =
        kept.map(|path| (path.display().to_string(), std::fs::read(path).unwrap())).collect();
    samples.extend(honest());
    samples.sort();
    assert!(samples.len() > 10);
    let mut worst = Worst::default();
    for (name, data) in &samples {
        worst.read(data, name);
        // Packed as a parcel would be: what stands inside a frame is reached as well.
        worst.read(&zstd::bulk::compress(data, 1).unwrap(), name);
    }
    worst.read(&vec![0x81; 1_000_000], "a million arrays");
    worst.read(&zstd::bulk::compress(&vec![0; 64 << 20], 1).unwrap(), "64 MiB of nothing");
    let seconds =
        std::env::var("SUMPBOOK_FOREIGN_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(SECONDS);
    let until = Instant::now() + Duration::from_secs(seconds);
    let mut numbers = Numbers(0x5eed);
    while Instant::now() < until {
        let (name, from) = &samples[numbers.next() % samples.len()];
        let (_, other) = &samples[numbers.next() % samples.len()];
        let data = changed(from, other, &mut numbers);
        worst.read(&data, name);
        if numbers.next().is_multiple_of(4) {
            worst.read(&zstd::bulk::compress(&data, 1).unwrap(), name);
        }
    }
    let Worst { time, bytes, inputs } = worst;
    println!("{inputs} inputs; the slowest took {time:?}, the largest {bytes} bytes");
}

/// Writes the honest samples where the fuzzer finds them: `cargo test -- --ignored write_the_samples`.
#[test]
#[ignore = "writes files of the repository"]
fn write_the_samples() {
    for (name, data) in honest() {
        std::fs::write(corpus().join(name), data).unwrap();
    }
}
