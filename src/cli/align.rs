//! `keyblock align`: aligns the photographs of a design to its reference picture, and reports how well each
//! is aligned.

use std::io::{self, Write};
use std::path::Path;

use serde::Serialize;

use super::designs::{named, say_left_out};
use super::kept_back::{self, Work};
use super::not_kept::say_not_kept;
use super::outcome::Outcome;
use super::plural::counted;
use super::progress::Progress;

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::PictureKey;
use crate::model::registration::{Aligned, Refusal, Registration};
use crate::picture::Fault;
use crate::press::Cache;
use crate::press::alignment::Group;
use crate::read;

pub(super) const ABOUT: &str = "\
Aligns with the design's reference_picture every photograph of a whole sheet that shows the same side, and \
reports how certain each alignment is.

Confidence is the share of places with texture that match. Where too few do, the photograph is refused: it is \
shown side by side only, never overlaid, and no detail is cut from it. A refused photograph shows another print, a \
part only, or too little; where it does show the sheet, match at least four places by hand:
  ties = [[x, y, x, y], …]   percent of this picture, and of the reference
in its [[pictures]] in the record. Ties take precedence over what the program finds.

Results are kept in the catalogue's cache, and used as long as the photographs stay the same.

Everything recorded is used, including what is private or not published, which the pages of the catalogue leave out; a \
sentence at the end says so where there is any. With --json no sentence is printed.";

/// The arguments of `align`.
#[derive(Debug, clap::Args)]
pub(super) struct AlignArguments {
    /// The design: its key, or the number that readers see
    design: String,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<std::path::PathBuf>,
    /// Print one JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Aligns the photographs of a design of the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &AlignArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let reading = read::read(dir);
    let design = match named(&reading.catalogue, &arguments.design) {
        Ok(design) => design,
        Err(usage) => return Ok(usage),
    };
    say_left_out(&reading.findings);
    let group = Group::of(dir, &reading.catalogue, design);
    let cache = Cache::of(dir);
    let progress = Progress::of("aligning");
    let found = group.as_ref().map_or_else(Vec::new, |group| {
        group.align(dir, &cache, &|done, of| {
            progress.tell(done, of);
        })
    });
    drop(progress);
    say_not_kept(&cache);
    let pictures: Vec<(&PictureKey, &Result<Registration, Fault>)> = group
        .iter()
        .flat_map(|group| group.pictures.iter().map(|(key, _)| key))
        .zip(&found)
        .collect();
    let reference = group.as_ref().map(|group| &group.reference.0);
    if arguments.json {
        let document = AlignDocument {
            design: design.key.to_string(),
            reference: reference.map(ToString::to_string),
            pictures: pictures
                .iter()
                .map(|(key, found)| entry(key, found))
                .collect(),
        };
        serde_json::to_writer_pretty(&mut *out, &document)?;
        writeln!(out)?;
    } else {
        print(&reading.catalogue, design, reference, &pictures, out)?;
        kept_back::say_of_designs(&reading.catalogue, [design], Work::Used, out)?;
    }
    Ok(Outcome::Done)
}

/// What `align --json` prints (docs/JSON.md).
#[derive(Debug, Serialize)]
struct AlignDocument {
    design: String,
    /// Null where no reference picture is recorded, or its file does not exist.
    reference: Option<String>,
    pictures: Vec<PictureEntry>,
}

#[derive(Debug, Serialize)]
struct PictureEntry {
    picture: String,
    aligned: bool,
    /// The share of places that agree, 0 to 1.
    confidence: f64,
    /// Row by row: pixel of the picture to pixel of the reference, both masters, upright, pixel centres
    /// at whole numbers.
    matrix: Option<[f64; 9]>,
    residual_px: Option<f64>,
    /// Whether the record's ties decided.
    by_hand: bool,
    /// Why it could not be aligned.
    why: Option<String>,
}

fn entry(key: &PictureKey, found: &Result<Registration, Fault>) -> PictureEntry {
    let refused = |confidence: f64, why: String| PictureEntry {
        picture: key.to_string(),
        aligned: false,
        confidence,
        matrix: None,
        residual_px: None,
        by_hand: false,
        why: Some(why),
    };
    match found {
        Ok(Registration::Aligned(aligned)) => PictureEntry {
            picture: key.to_string(),
            aligned: true,
            confidence: aligned.confidence,
            matrix: Some(aligned.matrix.rows()),
            residual_px: Some(aligned.residual_px),
            by_hand: aligned.by_hand,
            why: None,
        },
        Ok(Registration::Refused(no)) => refused(no.confidence, in_words(no.why).to_owned()),
        // The photograph of the reference itself, recorded a second time.
        Ok(Registration::Reference) => PictureEntry {
            picture: key.to_string(),
            aligned: true,
            confidence: 1.0,
            matrix: Some([1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0]),
            residual_px: Some(0.0),
            by_hand: false,
            why: None,
        },
        Err(fault) => refused(0.0, fault.to_string()),
    }
}

/// The reason why a picture was refused, as a phrase that can stand alone.
fn in_words(why: Refusal) -> &'static str {
    match why {
        Refusal::LittleToCompare => "too little on it to compare",
        Refusal::NothingInCommon => "no matching detail was found on the reference",
        Refusal::NoPlausibleFit => "the only fit would need an impossible distortion",
        Refusal::FewAgree => "too few places match",
        Refusal::OnePartOnly => "the matching places lie in one part only",
        Refusal::TiesDisagree => "the ties disagree with the pictures or with each other",
    }
}

fn print(
    catalogue: &Catalogue,
    design: &Design,
    reference: Option<&PictureKey>,
    pictures: &[(&PictureKey, &Result<Registration, Fault>)],
    out: &mut impl Write,
) -> io::Result<()> {
    let title = design.title().map_or("", |t| t.text.value.as_str());
    writeln!(out, "{}. {title}", design.number)?;
    let Some(reference) = reference else {
        return writeln!(
            out,
            "No reference picture: name one with “reference_picture” in the design's record."
        );
    };
    let reference = catalogue.picture_number(reference);
    writeln!(out, "Reference: {reference}\n")?;
    let names: Vec<String> = pictures
        .iter()
        .map(|(key, _)| catalogue.picture_number(key))
        .collect();
    let width = names.iter().map(|name| name.chars().count()).max();
    let width = width.unwrap_or_default();
    for (name, (_, found)) in names.iter().zip(pictures) {
        match found {
            Ok(Registration::Aligned(aligned)) => {
                writeln!(out, "{name:<width$}  {}", quality(aligned))?;
            }
            Ok(Registration::Reference) => writeln!(out, "{name:<width$}  the same photograph")?,
            Ok(Registration::Refused(no)) => writeln!(
                out,
                "{name:<width$}  not aligned: {} ({:.0} %)",
                in_words(no.why),
                100.0 * no.confidence
            )?,
            Err(fault) => writeln!(out, "{name:<width$}  not aligned: {fault}")?,
        }
    }
    let is_aligned = |found: &Result<Registration, Fault>| matches!(found, Ok(r) if r.onto_reference().is_some());
    let aligned = pictures
        .iter()
        .filter(|(_, found)| is_aligned(found))
        .count();
    let all = counted(pictures.len(), "photograph", "photographs");
    writeln!(out, "\n{aligned} of {all} aligned")?;
    if aligned < pictures.len() {
        writeln!(
            out,
            "A refused photograph is shown side by side only. If it shows another print, or a part \
             (view = \"detail\"), correct the record; if it is right, tie four points by hand (see \
             “keyblock align --help”)."
        )?;
    }
    Ok(())
}

/// "82 % agree, to 0.4 px", "by hand; …".
fn quality(aligned: &Aligned) -> String {
    let how = if aligned.by_hand { "by hand; " } else { "" };
    format!(
        "{how}{:.0} % agree, to {:.1} px",
        100.0 * aligned.confidence,
        aligned.residual_px
    )
}
