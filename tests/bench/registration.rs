//! Aligning photographs, against OpenCV's SIFT and RANSAC on the same pairs in the same run.
//!
//! Both get two grey images of 1000 px and one thread, and are judged by the corners of the picture
//! (`tests/pairs`). OpenCV runs in Python: `pip install opencv-python-headless numpy`, and where that is
//! not the `python3` on the path, `KEYBLOCK_PYTHON` names it. Without it only our figures are printed.

use std::path::Path;
use std::process::Command;

use keyblock::model::registration::{Homography, Registration};
use keyblock::picture::align::{Subject, align};

use super::pairs::{Class, TruePair, corner_error, pair, photograph};

/// Pairs of each class.
const OF_EACH: u64 = 20;

/// The result of a method for one pair.
struct Answer {
    map: Option<Homography>,
    ms: f64,
}

pub fn measure() {
    let mut kinds = Vec::new();
    for (class, name) in [
        (Class::Easy, "easy"),
        (Class::Medium, "medium"),
        (Class::Hard, "hard"),
    ] {
        let pairs = (0..OF_EACH).map(|seed| pair(class, 40_000 + seed * 3 + class as u64));
        kinds.push((name, pairs.collect::<Vec<TruePair>>()));
    }
    let crosses = crosses();
    let folder = tempfile::tempdir().unwrap();
    let flat = || kinds.iter().flat_map(|(_, pairs)| pairs);
    let all: Vec<_> = flat()
        .map(|pair| (&pair.reference, &pair.picture))
        .chain(crosses.iter().map(|(a, b)| (a, b)))
        .collect();
    for (at, (reference, picture)) in all.iter().enumerate() {
        reference
            .save(folder.path().join(format!("{at}-a.png")))
            .unwrap();
        picture
            .save(folder.path().join(format!("{at}-b.png")))
            .unwrap();
    }

    // One run is not counted, so that the time of starting is in neither figure.
    let _ = ours(all[0].0, all[0].1);
    let our_answers: Vec<Answer> = all.iter().map(|(a, b)| ours(a, b)).collect();
    let theirs = opencv(folder.path(), all.len());
    println!(
        "aligning {} pairs and {} pairs of different designs",
        flat().count(),
        crosses.len()
    );
    println!("method        class    <2 px  <5 px  median px  wrong  refused");
    let ours_ms = table("keyblock", &kinds, &our_answers);
    match theirs {
        Ok(answers) => {
            let theirs_ms = table("SIFT+RANSAC", &kinds, &answers);
            println!(
                "median {ours_ms:.0} ms; SIFT and RANSAC: {theirs_ms:.0} ms; ratio {:.2}",
                ours_ms / theirs_ms
            );
        }
        Err(why) => println!(
            "OpenCV was not run ({why}): pip install opencv-python-headless numpy, and name that Python by KEYBLOCK_PYTHON"
        ),
    }
}

/// More than a thousand pairs of different designs: how many are wrongly aligned, and the largest share of
/// cells that agreed in a refused pair.
pub fn measure_crosses() {
    let shots: Vec<Subject> = (0..48_u64)
        .map(|at| {
            let class = [Class::Easy, Class::Medium, Class::Hard][at as usize % 3];
            // Two series of twelve designs, and 24 that stand alone.
            let series = (at < 24).then_some(900 + at % 2);
            Subject::new(&photograph(class, 70_000 + at, series))
        })
        .collect();
    let (mut count, mut answered, mut most) = (0, 0, 0.0_f64);
    for (at, reference) in shots.iter().enumerate() {
        for picture in &shots[..at] {
            count += 1;
            match align(reference, picture) {
                Registration::Refused(refused) => most = most.max(refused.confidence),
                _ => answered += 1,
            }
        }
    }
    println!(
        "{count} pairs of different designs: {answered} answered; the largest share of cells that agreed: {most:.2}"
    );
}

/// Pairs of different designs; two in three of one series, with border and title in common.
fn crosses() -> Vec<(image::GrayImage, image::GrayImage)> {
    (0..OF_EACH * 3)
        .map(|at| {
            let class = [Class::Easy, Class::Medium, Class::Hard][at as usize % 3];
            let series = (at % 9 < 6).then_some(500 + at);
            (
                photograph(Class::Easy, 50_000 + at, series),
                photograph(class, 60_000 + at, series),
            )
        })
        .collect()
}

fn ours(reference: &image::GrayImage, picture: &image::GrayImage) -> Answer {
    let begun = processor_ms();
    let registration = align(&Subject::new(reference), &Subject::new(picture));
    Answer {
        map: registration.onto_reference(),
        ms: processor_ms() - begun,
    }
}

/// The processor time of this thread, ms, without that of other work on the machine. Where the system does
/// not give it, the time of the clock.
fn processor_ms() -> f64 {
    static BEGUN: std::sync::OnceLock<std::time::Instant> = std::sync::OnceLock::new();
    let begun = BEGUN.get_or_init(std::time::Instant::now);
    std::fs::read_to_string("/proc/thread-self/schedstat")
        .ok()
        .and_then(|text| text.split(' ').next()?.parse::<f64>().ok())
        .map_or(begun.elapsed().as_secs_f64() * 1e3, |ns| ns / 1e6)
}

/// Runs OpenCV over the pairs written in a folder.
fn opencv(folder: &Path, count: usize) -> Result<Vec<Answer>, String> {
    let python = std::env::var("KEYBLOCK_PYTHON").unwrap_or_else(|_| "python3".into());
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/bench/sift_ransac.py");
    let output = Command::new(python)
        .arg(script)
        .arg(folder)
        .arg(count.to_string())
        .output()
        .map_err(|error| error.to_string())?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr);
        return Err(said.lines().last().unwrap_or("it failed").to_owned());
    }
    let answers: Vec<Answer> = String::from_utf8_lossy(&output.stdout)
        .lines()
        .filter_map(|line| {
            let numbers: Vec<f64> = line.split(' ').filter_map(|n| n.parse().ok()).collect();
            let (ms, rows) = numbers.split_first()?;
            let map = <[f64; 9]>::try_from(rows).ok().and_then(Homography::new);
            Some(Answer { map, ms: *ms })
        })
        .collect();
    if answers.len() == count {
        Ok(answers)
    } else {
        Err(format!("{} answers to {count} pairs", answers.len()))
    }
}

/// Prints how a method did; gives its median time, ms.
fn table(method: &str, kinds: &[(&str, Vec<TruePair>)], answers: &[Answer]) -> f64 {
    let mut answers_left = answers.iter();
    let mut all_errors = Vec::new();
    let (mut all_wrong, mut all_refused) = (0, 0);
    for (name, pairs) in kinds {
        let mut errors = Vec::new();
        let mut refused = 0;
        for (pair, answer) in pairs.iter().zip(answers_left.by_ref()) {
            match &answer.map {
                Some(map) => errors.push(corner_error(pair, map)),
                None => refused += 1,
            }
        }
        errors.sort_by(f64::total_cmp);
        let within = |most: f64| {
            let count = errors.iter().filter(|error| **error < most).count();
            format!("{:.0} %", 100.0 * count as f64 / pairs.len() as f64)
        };
        let wrong = errors.iter().filter(|error| **error > 5.0).count();
        println!(
            "{method:<13} {name:<7} {:>6} {:>6} {:>10} {wrong:>6} {refused:>8}",
            within(2.0),
            within(5.0),
            px(middle(&errors)),
        );
        all_wrong += wrong;
        all_refused += refused;
        all_errors.extend(errors);
    }
    all_errors.sort_by(f64::total_cmp);
    let crosses: Vec<&Answer> = answers_left.collect();
    let falsely = crosses.iter().filter(|answer| answer.map.is_some()).count();
    let mut times: Vec<f64> = answers[..answers.len() - crosses.len()]
        .iter()
        .map(|answer| answer.ms)
        .collect();
    times.sort_by(f64::total_cmp);
    println!(
        "{method:<13} all: median {} px, {all_wrong} wrong, {all_refused} refused; {falsely} of {} different designs answered; ms median {:.0}, worst {:.0}",
        px(middle(&all_errors)),
        crosses.len(),
        middle(&times),
        times.last().copied().unwrap_or_default(),
    );
    middle(&times)
}

/// An error in px; one larger than the picture means that the result is wrong.
fn px(error: f64) -> String {
    if error > 1000.0 {
        "> 1000".to_owned()
    } else {
        format!("{error:.2}")
    }
}

fn middle(sorted: &[f64]) -> f64 {
    sorted.get(sorted.len() / 2).copied().unwrap_or(f64::NAN)
}
