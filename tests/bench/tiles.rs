//! Image services against libvips, on the same photographs, in the same run, in memory.
//!
//! `vips dzsave --layout iiif3` makes tiles alone. Ours also makes the picture whole in the widths of
//! pages, which level 0 of the standard requires at one size at least; so it is compared with
//! `dzsave` alone and with `dzsave` with the commands that make the widths.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use image::RgbImage;
use jpeg_encoder::{ColorType, Encoder};
use keyblock::issue::{Bundle, Bundled, SiteParts, publish};
use keyblock::picture::{Plan, Prepared, Request, Store, prepare_all, tiles};

use super::{median, tell};

const RUNS: usize = 5;

pub fn measure() {
    let has_vips = Command::new("vips").arg("--version").output().is_ok();
    if !has_vips {
        println!("tiles: libvips is missing; `apt-get install libvips-tools` brings it");
        return;
    }
    // On a disk the times would depend more on the disk than on the code.
    let memory = Path::new("/dev/shm");
    let folder = if memory.is_dir() {
        tempfile::tempdir_in(memory).unwrap()
    } else {
        println!("tiles: there is no /dev/shm here, so the disk is measured too");
        tempfile::tempdir().unwrap()
    };
    let dir = folder.path();
    let one = dir.join("24.jpg");
    fs::write(&one, photograph(6000, 4000, 1)).unwrap();

    let plan = Plan {
        largest: u32::from(u16::MAX),
        ..Plan::default()
    };
    let ours = median(RUNS, || make(dir, std::slice::from_ref(&one), &plan));
    let alone = median(RUNS, || dzsave(dir, &one));
    tell("24 MP: service and widths", ours, "dzsave alone", alone);
    let with_widths = median(RUNS, || {
        dzsave(dir, &one);
        thumbnails(dir, &one, &[480, 960, 1920]);
    });
    tell(
        "24 MP: service and widths",
        ours,
        "dzsave and 3 × vipsthumbnail",
        with_widths,
    );
    let several: Vec<PathBuf> = (2..6)
        .map(|seed| {
            let path = dir.join(format!("24-{seed}.jpg"));
            fs::write(&path, photograph(6000, 4000, seed)).unwrap();
            path
        })
        .collect();
    let ours = median(3, || make(dir, &several, &plan));
    let theirs = median(3, || two_at_a_time(dir, &several));
    tell("4 × 24 MP", ours, "dzsave, two at a time", theirs);

    compare_pixels(dir, &one, &plan);
}

/// A baseline JPEG of a print on grainy paper, quality 92, colour in full.
fn photograph(width: u16, height: u16, seed: u32) -> Vec<u8> {
    let mut state = seed.wrapping_mul(2_654_435_761).max(1);
    let picture = RgbImage::from_fn(u32::from(width), u32::from(height), |x, y| {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        let grain = (state >> 8) % 16;
        let inked = (x / 37 + y / 23) % 7 == 0 || (x + y * 2) % 211 < 9;
        let paper = if inked { 90 } else { 210 } + grain;
        let channel = |less: u32| u8::try_from(paper - less).unwrap_or(u8::MAX);
        image::Rgb([channel(0), channel(8), channel(22)])
    });
    let mut jpeg = Vec::new();
    Encoder::new(&mut jpeg, 92)
        .encode(picture.as_raw(), width, height, ColorType::Rgb)
        .unwrap();
    jpeg
}

/// Prepares the photographs and publishes their services, from nothing.
fn make(dir: &Path, photographs: &[PathBuf], plan: &Plan) -> Vec<Prepared> {
    let (cache, site) = (dir.join("cache"), dir.join("site"));
    let _ = fs::remove_dir_all(&cache);
    let _ = fs::remove_dir_all(&site);
    let requests: Vec<Request> = photographs
        .iter()
        .map(|source| Request {
            source: source.clone(),
            largest: None,
        })
        .collect();
    let prepared: Vec<Prepared> = prepare_all(&requests, plan, &Store::at(&cache), &|_, _| {})
        .into_iter()
        .map(Result::unwrap)
        .collect();
    let bundles: BTreeMap<String, Bundle> = prepared
        .iter()
        .map(|made| {
            let files = made.service.files.iter().map(|file| Bundled {
                path: file.path.clone(),
                at: file.at.clone(),
            });
            let bundle = Bundle {
                pack: made.service.pack.clone(),
                content: made.service.content.clone(),
                files: files.collect(),
            };
            (format!("picture/{}", made.service.content), bundle)
        })
        .collect();
    let parts = SiteParts {
        bundles,
        ..SiteParts::default()
    };
    publish(&parts, &site).unwrap();
    prepared
}

fn run(command: &mut Command) {
    let output = command.output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{command:?}: {said}");
}

fn dzsave_command(dir: &Path, photograph: &Path) -> Command {
    let name = photograph.file_stem().unwrap().to_string_lossy();
    let to = dir.join(format!("vips-{name}"));
    let _ = fs::remove_dir_all(&to);
    let mut command = Command::new("vips");
    command.arg("dzsave").arg(photograph).arg(to);
    command.args(["--layout", "iiif3", "--tile-size", "512"]);
    command.args(["--suffix", ".jpg[Q=85]"]);
    command
}

fn dzsave(dir: &Path, photograph: &Path) {
    run(&mut dzsave_command(dir, photograph));
}

fn two_at_a_time(dir: &Path, photographs: &[PathBuf]) {
    for pair in photographs.chunks(2) {
        let started: Vec<_> = pair
            .iter()
            .map(|photograph| dzsave_command(dir, photograph).spawn().unwrap())
            .collect();
        for mut child in started {
            assert!(child.wait().unwrap().success());
        }
    }
}

fn thumbnails(dir: &Path, photograph: &Path, widths: &[u32]) {
    for width in widths {
        let to = format!("{}[Q=85]", dir.join(format!("w-{width}.jpg")).display());
        let mut command = Command::new("vipsthumbnail");
        command
            .arg(photograph)
            .args(["--size", &format!("{width}x")]);
        run(command.arg("-o").arg(to));
    }
}

/// How near our tiles come to those of libvips, level by level.
fn compare_pixels(dir: &Path, photograph: &Path, plan: &Plan) {
    let prepared = make(dir, &[photograph.to_owned()], plan).remove(0);
    dzsave(dir, photograph);
    let theirs = dir.join("vips-24");
    let service = &prepared.service;
    let pack = fs::read(&service.pack).unwrap();
    let mut sums: BTreeMap<u32, (f64, f64)> = BTreeMap::new();
    let at = |at: u64| usize::try_from(at).unwrap();
    let size = (service.width, service.height);
    for tile in tiles::tiles(size) {
        let path = tile.path(size);
        // libvips writes the path of the smallest level differently.
        let Ok(their) = fs::read(theirs.join(&path)) else {
            continue;
        };
        let file = service.files.iter().find(|file| file.path == path).unwrap();
        let our = pack.get(at(file.at.start)..at(file.at.end)).unwrap();
        let [our, their] = [our, &their].map(|jpeg| image::load_from_memory(jpeg).unwrap());
        let (our, their) = (our.into_rgb8(), their.into_rgb8());
        assert_eq!(our.dimensions(), their.dimensions(), "{path}");
        let sum = sums.entry(tile.factor).or_default();
        for (a, b) in our.as_raw().iter().zip(their.as_raw()) {
            sum.0 += f64::from(a.abs_diff(*b)).powi(2);
            sum.1 += 1.0;
        }
    }
    let mut told = String::new();
    for (factor, (squares, count)) in sums {
        let decibels = 10.0 * libm::log10(255.0 * 255.0 * count / squares.max(1e-9));
        let _ = write!(told, " 1/{factor}: {decibels:.1} dB ({count:.0} values);");
    }
    println!("tiles beside those of libvips (at least 40 dB wanted):{told}");
}
