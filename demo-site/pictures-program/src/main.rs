//! Paints the photographs of the demonstration catalogue from its own records.
//!
//! ```text
//! cargo run --release -p paint -- demo-site [--only DESIGN,DOCUMENT,…] [--contact FILE.png]
//! ```
//!
//! In: the catalogue as the library reads it. Out: the file of every picture that an impression's
//! record names, and the pictures of the documents (`documents`). The blocks are cut as the sheet's state has them (`designs`, from
//! `parts`), printed in the inks of its printing on its paper (`sheets`), laid out by its sizes
//! (`layout`) and photographed (`engine`). The same records give the same bytes, whatever the
//! number of threads.
//!
//! Not here: what a sheet *is*. Only the records say that.

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
mod documents;
mod engine;
mod jobs;
mod layout;
mod look;
mod parts;
mod sheets;
mod slips;
mod words;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use keyblock::model::codes::Code;
use keyblock::model::design::Design;
use keyblock::model::finding::Severity;
use keyblock::model::key::Key;

use engine::photo::Photograph;

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
        .ok_or("usage: paint SITE [--only DESIGN,DOCUMENT,…] [--contact FILE.png]")?;
    let site = Path::new(site);
    let mut all = designs_of(site)?;
    let only = option("--only");
    let wanted = |key: &str| {
        let mut keys = only.iter().flat_map(|only| only.split(','));
        only.is_none() || keys.any(|one| one == key)
    };
    let (documents, of_documents) = documents::paint(site, &all, wanted, write)?;
    all.retain(|key, _| wanted(key.as_str()));
    let mut unpainted = Vec::new();
    let mut work = Vec::new();
    for design in all.values() {
        match designs::find(design.key.as_str()) {
            Some(art) => work.extend(jobs::gather(site, design, art)),
            None if design.impressions.is_empty() => {}
            None => unpainted.push(design.key.as_str()),
        }
    }
    let painted = jobs::paint(&work, write)?;
    if let Some(file) = option("--contact").map(PathBuf::from) {
        contact_sheet(&painted, &file)?;
    }
    let bytes = of_documents + painted.iter().map(|p| p.bytes).sum::<usize>();
    let mut summary = format!(
        "{} pictures of {} designs and {documents} documents, {:.1} MB",
        painted.len() + documents,
        all.len() - unpainted.len(),
        bytes as f64 / 1_000_000.0
    );
    if !unpainted.is_empty() {
        summary.push_str("; not painted: ");
        summary.push_str(&unpainted.join(", "));
    }
    Ok(summary)
}

/// The designs of the catalogue in `site`.
///
/// # Errors
/// The errors in its records, a line each. A missing picture is none: it is about to be painted.
fn designs_of(site: &Path) -> Result<BTreeMap<Key, Design>, String> {
    let keyblock::read::Reading {
        mut catalogue,
        findings,
    } = keyblock::read::read(site);
    let errors: Vec<String> = findings
        .iter()
        .filter(|f| f.severity() == Severity::Error && f.code != Code::PictureMissing)
        .map(|f| {
            let place = f.at.place;
            let line = catalogue.sources.position(place).line;
            let path = catalogue.sources.path(place.file);
            format!("{path}:{line}: {}", f.message)
        })
        .collect();
    if errors.is_empty() {
        // A mark with a record is painted as that says.
        let mut designs = std::mem::take(&mut catalogue.designs);
        for impression in designs
            .values_mut()
            .flat_map(|d| d.impressions.values_mut())
        {
            for mark in &mut impression.marks {
                *mark = catalogue.described_mark(mark).into_owned();
            }
        }
        Ok(designs)
    } else {
        Err(errors.join("\n"))
    }
}

/// Writes one photograph; the result is its size in bytes.
fn write(path: &Path, photograph: &Photograph) -> Result<usize, String> {
    let bytes = encoded(photograph)?;
    let failed = |e: std::io::Error| format!("{}: {e}", path.display());
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(failed)?;
    }
    std::fs::write(path, &bytes).map_err(failed)?;
    Ok(bytes.len())
}

/// A photograph as a progressive JPEG.
fn encoded(photograph: &Photograph) -> Result<Vec<u8>, String> {
    let side = |px: usize| u16::try_from(px).map_err(|e| format!("{px} px: {e}"));
    let (width, height) = (side(photograph.width)?, side(photograph.height)?);
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, QUALITY);
    encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
    encoder.set_progressive(true);
    encoder
        .encode(&photograph.rgb, width, height, jpeg_encoder::ColorType::Rgb)
        .map_err(|e| e.to_string())?;
    Ok(bytes)
}

/// Puts all pictures just painted, reduced, on one sheet, to be checked by eye.
fn contact_sheet(painted: &[jobs::Painted], file: &Path) -> Result<(), String> {
    const CELL: u32 = 420;
    let across = (painted.len() as f64).sqrt().ceil().clamp(1.0, 6.0) as u32;
    let rows = (painted.len() as u32).div_ceil(across);
    let mut sheet = image::RgbImage::new(across * CELL, rows.max(1) * CELL);
    for (i, one) in painted.iter().enumerate() {
        let picture = image::open(&one.path).map_err(|e| e.to_string())?;
        let small = picture.thumbnail(CELL - 8, CELL - 8).to_rgb8();
        let (x, y) = (i as u32 % across * CELL, i as u32 / across * CELL);
        image::imageops::replace(&mut sheet, &small, i64::from(x), i64::from(y));
    }
    sheet.save(file).map_err(|e| e.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use jobs::Job;

    /// The demonstration catalogue, in which this program's package lies.
    fn site() -> PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
    }

    fn jobs_of<'a>(all: &'a BTreeMap<Key, Design>, key: &str) -> Vec<Job<'a>> {
        jobs::gather(&site(), &all[key], designs::find(key).unwrap())
    }

    /// Two holders name the kind of 7.2 differently; the catalogue's own view stands first.
    #[test]
    fn of_a_kind_with_several_views_the_first_is_painted() {
        let all = designs_of(&site()).unwrap();
        let design = &all["7"];
        let look = look::Look::of(design, &design.impressions[&2]);
        assert_eq!(look.kind(), "working-proof");
    }

    /// Design 26 has a woodcut on card and on wrapping paper, a block left out, a stamp, a recto
    /// and a verso, and is painted in a few seconds.
    #[test]
    fn a_repainted_design_is_the_committed_one_byte_for_byte() {
        let all = designs_of(&site()).unwrap();
        let same = |path: &Path, photograph: &Photograph| {
            let bytes = encoded(photograph)?;
            let committed = std::fs::read(path).map_err(|e| format!("{}: {e}", path.display()))?;
            if bytes == committed {
                Ok(bytes.len())
            } else {
                let path = path.display();
                Err(format!("{path} is painted otherwise"))
            }
        };
        let painted = jobs::paint(&jobs_of(&all, "26"), same).unwrap();
        assert_eq!(painted.len(), 4);
    }
}
