//! Compiling a large catalogue without pictures, compared with copying its output and walking its
//! input; its memory; and how both grow from 2,000 to 20,000 impressions.
//!
//! The program itself is run. Processor time is given beside elapsed time, because it does not depend on
//! other work of the machine. Memory is what Linux calls `VmHWM`.

use std::fs;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use super::{catalogue, median, tell};

/// Designs of the small catalogue and of the large one, ten impressions each.
const SIZES: [usize; 2] = [200, 2_000];
const RUNS: usize = 3;

/// The resources that one run of a program used.
#[derive(Clone, Copy)]
struct Run {
    passed: Duration,
    /// On all processors together, the kernel's share included.
    processor: Duration,
    peak_kb: u64,
}

pub fn measure() {
    let runs = SIZES.map(measure_one);
    let [small, large] = runs;
    let times = SIZES[1] as f64 / SIZES[0] as f64;
    let growth = |what: &str, small: f64, large: f64| {
        println!(
            "growth of {what} from {} to {} impressions: {:.2} x, {:.2} of linear",
            SIZES[0] * catalogue::OF_EACH,
            SIZES[1] * catalogue::OF_EACH,
            large / small,
            large / small / times
        );
    };
    let seconds = |run: Run| run.processor.as_secs_f64();
    growth("processor time", seconds(small), seconds(large));
    growth("peak memory", small.peak_kb as f64, large.peak_kb as f64);
}

/// Measures a catalogue of `designs` designs and returns the figures of its full compile.
fn measure_one(designs: usize) -> Run {
    let memory = Path::new("/dev/shm");
    let folder = if memory.is_dir() {
        tempfile::tempdir_in(memory).unwrap()
    } else {
        tempfile::tempdir().unwrap()
    };
    let records = folder.path().join("catalogue");
    let web = folder.path().join("web");
    let copy = folder.path().join("copy");
    catalogue::lay_down(&records, designs);
    let name = format!("{} impressions", designs * catalogue::OF_EACH);

    let full = repeated(&mut || {
        clear(&web);
        clear(&records.join(".keyblock"));
        compile(&records, &web)
    });
    let copied = repeated(&mut || {
        clear(&copy);
        run(Command::new("cp").arg("-r").args([&web, &copy]))
    });
    clear(&copy);
    held_against(
        &format!("full compile of {name}"),
        full,
        "cp -r of its output",
        copied,
    );
    println!(
        "peak memory of it: {} MB, {:.1} kB an impression",
        full.peak_kb / 1024,
        full.peak_kb as f64 / (designs * catalogue::OF_EACH) as f64
    );

    let unchanged = repeated(&mut || compile(&records, &web));
    let walked = median(RUNS, || walk(&records));
    let floor_is = "walk and stat of its inputs";
    let what = format!("nothing changed in {name}");
    tell(&what, unchanged.passed, floor_is, walked);
    let processor = format!("{what}, processor time");
    tell(&processor, unchanged.processor, floor_is, walked);
    full
}

fn clear(folder: &Path) {
    if folder.exists() {
        fs::remove_dir_all(folder).unwrap();
    }
}

fn held_against(what: &str, ours: Run, floor_is: &str, floor: Run) {
    tell(what, ours.passed, floor_is, floor.passed);
    let processor = format!("{what}, processor time");
    tell(&processor, ours.processor, floor_is, floor.processor);
}

fn compile(records: &Path, web: &Path) -> Run {
    let mut command = Command::new(env!("CARGO_BIN_EXE_keyblock"));
    run(command.arg("compile").arg(records).arg("--to").arg(web))
}

/// The median of each figure, after one run that is not counted.
fn repeated(work: &mut dyn FnMut() -> Run) -> Run {
    work();
    let runs: Vec<Run> = (0..RUNS).map(|_| work()).collect();
    Run {
        passed: middle(runs.iter().map(|run| run.passed)),
        processor: middle(runs.iter().map(|run| run.processor)),
        peak_kb: middle(runs.iter().map(|run| run.peak_kb)),
    }
}

fn middle<T: Ord + Copy>(values: impl Iterator<Item = T>) -> T {
    let mut values: Vec<T> = values.collect();
    values.sort();
    values[values.len() / 2]
}

/// Runs a program to its end and measures what it uses.
fn run(command: &mut Command) -> Run {
    let begun = Instant::now();
    let quiet = command.stdout(Stdio::null()).stderr(Stdio::null());
    let mut child = quiet.spawn().unwrap();
    let mut run = Run {
        passed: Duration::ZERO,
        processor: Duration::ZERO,
        peak_kb: 0,
    };
    loop {
        if let Some((processor, peak_kb)) = taken(&child) {
            run.processor = processor;
            run.peak_kb = peak_kb;
        }
        if let Some(status) = child.try_wait().unwrap() {
            assert!(status.success(), "{command:?}");
            run.passed = begun.elapsed();
            return run;
        }
        std::thread::sleep(Duration::from_millis(2));
    }
}

/// The resources that a running program has used so far: processor time, and kB at most. Linux counts the
/// first in hundredths of a second.
fn taken(child: &Child) -> Option<(Duration, u64)> {
    let of = |file: &str| fs::read_to_string(format!("/proc/{}/{file}", child.id())).ok();
    let stat = of("stat")?;
    // The name in brackets may hold spaces; user and system time are the 12th and 13th after it.
    let ticks = stat.rsplit_once(')')?.1.split_whitespace().skip(11).take(2);
    let ticks: u64 = ticks.filter_map(|ticks| ticks.parse::<u64>().ok()).sum();
    let status = of("status")?;
    let peak = status
        .lines()
        .find_map(|line| line.strip_prefix("VmHWM:"))?;
    let peak = peak.trim().strip_suffix(" kB")?.parse().ok()?;
    Some((Duration::from_millis(ticks * 10), peak))
}

/// Walks a folder and reads the size and time of each file in it.
fn walk(folder: &Path) -> u64 {
    let mut sum = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let entry = entry.unwrap();
        let about = entry.metadata().unwrap();
        sum += if about.is_dir() {
            walk(&entry.path())
        } else {
            about.len()
        };
    }
    sum
}
