//! Draws the photographs of the demonstration catalogue from its own records.
//!
//! ```text
//! cargo run --release -p paint -- demo-site [--only DESIGN] [--contact FILE.png]
//! ```
//!
//! Every `[[pictures]]` entry of every impression is drawn, and nothing else: the blocks as the
//! sheet's state has them (`designs`, from `parts`), printed in the inks of its printing on its
//! paper (`sheets`), laid out as its sizes say (`layout`), photographed (`engine`). The same
//! records give the same bytes, whatever the number of threads.
//!
//! Not here: what a sheet *is*. That is in the records, and only there.

#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    reason = "painting turns coordinates into pixels and back all the time"
)]
#![allow(
    clippy::many_single_char_names,
    clippy::decimal_bitwise_operands,
    clippy::manual_midpoint,
    reason = "points are x and y, seeds are any numbers, and no coordinate comes near overflow"
)]
#![allow(
    clippy::disallowed_methods,
    reason = "this program writes pictures: that is its use"
)]

mod designs;
mod engine;
mod jobs;
mod layout;
mod parts;
mod records;
mod sheets;
mod slips;
mod words;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use engine::photo::Photograph;
use records::Design;

/// JPEG quality: high enough for grain and pencil, low enough for a repository.
const QUALITY: u8 = 83;

fn main() -> ExitCode {
    match run(&std::env::args().skip(1).collect::<Vec<_>>()) {
        Ok(summary) => {
            println!("{summary}");
            ExitCode::SUCCESS
        }
        Err(problem) => {
            eprintln!("{problem}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &[String]) -> Result<String, String> {
    let option = |name: &str| {
        arguments
            .iter()
            .position(|a| a == name)
            .and_then(|at| arguments.get(at + 1))
            .cloned()
    };
    let site = arguments
        .first()
        .ok_or("usage: paint SITE [--only DESIGN] [--contact FILE.png]")?;
    let only = option("--only");
    let mut all = Design::read_all(Path::new(site))?;
    if let Some(only) = &only {
        let wanted: Vec<&str> = only.split(',').collect();
        all.retain(|d| wanted.contains(&d.key.as_str()));
    }
    let mut undrawn = Vec::new();
    let mut work = Vec::new();
    for design in &all {
        match designs::find(&design.key) {
            Some(art) => work.extend(jobs::gather(design, art)),
            None if design.impressions.is_empty() => {}
            None => undrawn.push(design.key.clone()),
        }
    }
    let contact = option("--contact").map(PathBuf::from);
    let drawn = jobs::draw(&work, write)?;
    if let Some(file) = contact {
        contact_sheet(&drawn, &file)?;
    }
    let bytes: usize = drawn.iter().map(|d| d.bytes).sum();
    let mut summary = format!(
        "{} pictures of {} designs, {:.1} MB",
        drawn.len(),
        all.len() - undrawn.len(),
        bytes as f64 / 1_000_000.0
    );
    if !undrawn.is_empty() {
        summary.push_str("; not drawn: ");
        summary.push_str(&undrawn.join(", "));
    }
    Ok(summary)
}

/// Writes one photograph; the result is its size in bytes.
fn write(path: &Path, photograph: &Photograph) -> Result<usize, String> {
    let told = |e: &dyn std::fmt::Display| format!("{}: {e}", path.display());
    let mut bytes = Vec::new();
    let width = u16::try_from(photograph.width).map_err(|e| told(&e))?;
    let height = u16::try_from(photograph.height).map_err(|e| told(&e))?;
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, QUALITY);
    encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
    encoder.set_progressive(true);
    encoder
        .encode(&photograph.rgb, width, height, jpeg_encoder::ColorType::Rgb)
        .map_err(|e| told(&e))?;
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(|e| told(&e))?;
    }
    std::fs::write(path, &bytes).map_err(|e| told(&e))?;
    Ok(bytes.len())
}

/// All pictures just drawn, small, on one sheet: for the eye that checks them.
fn contact_sheet(drawn: &[jobs::Drawn], file: &Path) -> Result<(), String> {
    const CELL: u32 = 420;
    let across = (drawn.len() as f64).sqrt().ceil().clamp(1.0, 6.0) as u32;
    let rows = (drawn.len() as u32).div_ceil(across);
    let mut sheet = image::RgbImage::new(across * CELL, rows.max(1) * CELL);
    for (i, one) in drawn.iter().enumerate() {
        let picture = image::open(&one.path).map_err(|e| e.to_string())?;
        let small = picture.thumbnail(CELL - 8, CELL - 8).to_rgb8();
        let (x, y) = (i as u32 % across * CELL, i as u32 / across * CELL);
        image::imageops::replace(&mut sheet, &small, i64::from(x), i64::from(y));
    }
    sheet.save(file).map_err(|e| e.to_string())
}
