//! How long things take, as ratios to a floor measured in the same run: `cargo bench`.
//!
//! Each line gives the median of several runs, the floor it is held against, and the ratio. Times
//! differ between machines; ratios much less. Nothing here fails: tests are never timed.
#![allow(
    clippy::disallowed_methods,
    reason = "benchmarks write catalogues of their own and read the clock"
)]

mod identification;

use std::time::{Duration, Instant};

fn main() {
    identification::measure();
}

/// The median time of `runs` runs, after one that is not counted.
fn median<T>(runs: usize, mut work: impl FnMut() -> T) -> Duration {
    std::hint::black_box(work());
    let mut times: Vec<Duration> = (0..runs)
        .map(|_| {
            let begun = Instant::now();
            std::hint::black_box(work());
            begun.elapsed()
        })
        .collect();
    times.sort();
    times[times.len() / 2]
}

/// Prints a time beside its floor.
fn tell(what: &str, time: Duration, floor_is: &str, floor: Duration) {
    let ratio = time.as_secs_f64() / floor.as_secs_f64();
    println!("{what}: {time:.2?}; {floor_is}: {floor:.2?}; ratio {ratio:.2}");
}
