//! How long things take, as ratios to a floor measured in the same run: `cargo bench`.
//!
//! Each line gives the median of several runs, the floor it is compared with, and the ratio. Times
//! differ between machines; ratios much less. Nothing here fails: tests are never timed.
//! `cargo bench -- NAME …` measures only the subjects named.
#![allow(
    clippy::disallowed_methods,
    reason = "benchmarks write catalogues of their own and read the clock"
)]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "counts and sides of a few thousand, which every number type here holds"
)]

#[path = "compile/catalogue.rs"]
mod catalogue;
mod census;
mod compile;
mod identification;
mod intake;
#[path = "../pairs/mod.rs"]
mod pairs;
mod registration;
mod search;
mod tiles;

use std::time::{Duration, Instant};

/// The subjects that can be measured, by name.
const SUBJECTS: &[(&str, fn())] = &[
    ("census", census::measure),
    ("compile", compile::measure),
    ("identification", identification::measure),
    ("intake", intake::measure),
    ("registration", registration::measure),
    (CROSSES, registration::measure_crosses),
    (SEARCH, search::measure),
    ("tiles", tiles::measure),
];

/// Subjects that take minutes, so they are measured only where they are named.
const CROSSES: &str = "registration-crosses";
const SEARCH: &str = "search";

fn main() {
    // Cargo adds `--bench`; arguments that are not options name subjects.
    let arguments = std::env::args().skip(1);
    let wanted: Vec<String> = arguments.filter(|word| !word.starts_with('-')).collect();
    for word in &wanted {
        if !SUBJECTS.iter().any(|(name, _)| name == word) {
            let names: Vec<&str> = SUBJECTS.iter().map(|(name, _)| *name).collect();
            eprintln!(
                "there is no subject `{word}`; there are: {}",
                names.join(", ")
            );
            std::process::exit(2);
        }
    }
    for (name, measure) in SUBJECTS {
        if (wanted.is_empty() && ![CROSSES, SEARCH].contains(name))
            || wanted.iter().any(|word| word == name)
        {
            measure();
        }
    }
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
