//! Hostile and broken input, made by `proptest`: arbitrary, and with the structure of what the program
//! reads. Each must be read without a panic, in bounded time and always alike.
//!
//! A run of the tests takes some hundred inputs of each kind, the same every time. `KEYBLOCK_FUZZ=600`
//! goes on with new ones for 600 seconds of each kind (DEVELOPERS.md, "Tests").

/// Literature: BibTeX.
mod bibtex;
/// Dates: EDTF.
mod dates;
/// Texts beside records: Markdown and its links.
mod markdown;
/// Records: TOML.
mod records;

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::fmt::Debug;
use std::path::Path;
use std::time::{Duration, Instant};

use keyblock::audit::audit;
use keyblock::cli::report::{self, Layout};
use keyblock::model::bulk::Extent;
use keyblock::model::finding::{self, Finding};
use keyblock::model::place::Sources;
use keyblock::read::{Inputs, read_inputs};
use keyblock::study::Studies;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestCaseError, TestRng, TestRunner};

/// How long one input of some kilobytes may take, without optimisation and beside other tests.
const LONGEST: Duration = Duration::from_secs(120);

/// Checks inputs of one kind: `short` of them, the same at every run; as many as the time allows where
/// `KEYBLOCK_FUZZ` gives seconds.
pub fn explore<S: Strategy>(
    name: &str,
    short: u32,
    strategy: &S,
    check: impl Fn(&S::Value) -> Result<(), TestCaseError>,
) where
    S::Value: Debug,
{
    let seconds = std::env::var("KEYBLOCK_FUZZ").ok();
    let long: Option<u64> = seconds.map(|seconds| seconds.parse().unwrap());
    let (begun, count) = (Stopwatch::start(), Cell::new(0_u64));
    let slowest = RefCell::new(Duration::ZERO);
    loop {
        let config = Config {
            cases: long.map_or(short, |_| 500),
            failure_persistence: None,
            ..Config::default()
        };
        let mut runner = match long {
            None => {
                TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha))
            }
            Some(_) => TestRunner::new(config),
        };
        let result = runner.run(strategy, |input| {
            let timed = || -> Result<Duration, TestCaseError> {
                let started = Stopwatch::start();
                check(&input)?;
                Ok(started.shortest())
            };
            let mut took = timed()?;
            if took >= LONGEST {
                // Other tests in this process may have taken the time: only what is slow twice is slow.
                took = took.min(timed()?);
            }
            count.set(count.get() + 1);
            slowest.replace_with(|slowest| took.max(*slowest));
            prop_assert!(took < LONGEST, "took {took:?}");
            Ok(())
        });
        if let Err(fault) = result {
            panic!("{name}, after {} inputs: {fault}", count.get());
        }
        if long.is_none_or(|seconds| begun.elapsed().as_secs() >= seconds) {
            break;
        }
    }
    println!(
        "fuzz {name}: {} inputs in {:.0?} ({:.0?} of processor time), the slowest {:.0?}",
        count.get(),
        begun.elapsed(),
        begun.processor(),
        slowest.borrow()
    );
}

/// Measures time by the clock and processor time of this process, since its start.
struct Stopwatch {
    clock: Instant,
    processor: Duration,
}

impl Stopwatch {
    fn start() -> Stopwatch {
        Stopwatch {
            clock: Instant::now(),
            processor: processor_time(),
        }
    }

    fn elapsed(&self) -> Duration {
        self.clock.elapsed()
    }

    fn processor(&self) -> Duration {
        processor_time().saturating_sub(self.processor)
    }

    /// The shorter of both times: on a busy machine the clock counts the work of other programs, and beside other
    /// tests the processor time counts theirs.
    fn shortest(&self) -> Duration {
        self.elapsed().min(self.processor())
    }
}

/// The processor time that this process has used.
#[cfg(unix)]
fn processor_time() -> Duration {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::ProcessCPUTime);
    Duration::try_from(time).unwrap()
}

/// The time by the clock, where the processor time is not asked for.
#[cfg(not(unix))]
fn processor_time() -> Duration {
    static BEGUN: std::sync::LazyLock<Instant> = std::sync::LazyLock::new(Instant::now);
    BEGUN.elapsed()
}

/// A sound catalogue, by path, that inputs are laid over; without literature, whose references take longer
/// to set than everything else takes to be read, and have tests of their own.
pub fn sound() -> BTreeMap<String, Vec<u8>> {
    let mut files: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    let mut path = None;
    for line in include_str!("../../sound-catalogue.txt").lines() {
        if let Some(next) = line.strip_prefix("-- ") {
            path = Some(next.to_owned());
        } else if let Some(path) = &path {
            let text = files.entry(path.clone()).or_default();
            text.extend_from_slice(line.as_bytes());
            text.push(b'\n');
        }
    }
    files.remove("records/literature.bib");
    files
}

/// Reads and judges a catalogue twice: both times the same is found, every place lies within its file on
/// borders of characters, and every finding can be printed.
pub fn check_reading(files: &BTreeMap<String, Vec<u8>>) -> Result<(), TestCaseError> {
    let nowhere = Path::new("/nowhere-at-all");
    let read = || {
        let reading = read_inputs(nowhere, &Inputs::of_bytes(files));
        let mut findings = reading.findings;
        findings.extend(audit(&reading.catalogue, &Studies::of(&reading.catalogue)));
        finding::sort(&mut findings, &reading.catalogue.sources);
        (findings, reading.catalogue)
    };
    let (findings, catalogue) = read();
    for finding in &findings {
        check_places(finding, &catalogue.sources)?;
    }
    let (again, _) = read();
    prop_assert_eq!(&findings, &again);
    for extent in [Extent::Short, Extent::Whole] {
        let printed = report::findings(&findings, &catalogue.sources, Layout::plain(extent));
        prop_assert!(findings.is_empty() == printed.is_empty());
    }
    Ok(())
}

fn check_places(finding: &Finding, sources: &Sources) -> Result<(), TestCaseError> {
    prop_assert!(!finding.message.is_empty());
    for label in std::iter::once(&finding.at).chain(&finding.also) {
        let text = sources.text(label.place.file);
        let span = label.place.span();
        prop_assert!(
            text.get(span.clone()).is_some(),
            "{span:?} is no part of {:?}, {} bytes long: {finding:?}",
            sources.path(label.place.file),
            text.len()
        );
    }
    Ok(())
}

/// Any text of up to `most` signs, some of them of the kinds that programs trip over.
pub fn any_text(most: usize) -> impl Strategy<Value = String> {
    let sign = prop_oneof![
        8 => any::<char>(),
        8 => proptest::char::range(' ', '~'),
        1 => prop::sample::select(vec![
            '\n', '\r', '\t', '\0', '\u{feff}', '\u{202e}', '\u{2069}', '\u{200d}', '\u{301}', '\u{e0100}',
        ]),
    ];
    prop::collection::vec(sign, 0..most).prop_map(String::from_iter)
}

/// A text of pieces, each from `pieces` or arbitrary.
pub fn of_pieces(pieces: &'static [&'static str], most: usize) -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        12 => prop::sample::select(pieces).prop_map(str::to_owned),
        1 => any_text(12),
        1 => (prop::sample::select(pieces), 1..200_usize).prop_map(|(piece, n)| piece.repeat(n)),
    ];
    prop::collection::vec(piece, 0..most).prop_map(|pieces| pieces.concat())
}
