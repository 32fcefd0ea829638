//! Which pictures are to be painted, gathered so that the blocks of sheets in one condition are cut once.
//!
//! In: a design as the library reads it. Out: jobs, then painted photographs, each handed on with its path.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use keyblock::model::design::Design;
use keyblock::model::impression::Impression;
use keyblock::model::key::{PictureKey, PictureOwner};
use keyblock::model::picture::{Picture as PictureRecord, View};
use keyblock::model::words::Side;
use rayon::prelude::*;

use crate::designs::{Art, Bench};
use crate::engine::noise::seed;
use crate::engine::photo::{Photograph, Shot, Table as Ground, take};
use crate::engine::plane::Window;
use crate::engine::sheet::{Blocks, Plan, lay, surfaced};
use crate::layout::{Layout, height_and_width};
use crate::look::Look;
use crate::sheets;
use crate::slips;

/// The longer side of a photograph of the richest design, px.
const RICHEST: usize = 1900;
/// The longer side of the other photographs of whole sheets, px.
const USUAL: usize = 1000;
/// The longer side of a detail, px.
const DETAIL: usize = 900;

/// All pictures of one design whose blocks are in one condition and seen at one scale.
pub struct Job<'a> {
    design: &'a Design,
    art: &'static Art,
    window: Window,
    canvas: [f32; 2],
    look: Look,
    pictures: Vec<Picture<'a>>,
}

struct Picture<'a> {
    impression: &'a Impression,
    record: &'a PictureRecord,
    look: Look,
    layout: Layout,
    size: [usize; 2],
    sheet: Window,
    whole: bool,
    reference: bool,
    path: PathBuf,
    /// Where the same photograph is filed by mistake.
    misfiled: Vec<PathBuf>,
}

/// A picture that was painted.
pub struct Painted {
    /// Where.
    pub path: PathBuf,
    /// Its size.
    pub bytes: usize,
}

/// The jobs of one design of the catalogue in `site`.
pub fn gather<'a>(site: &Path, design: &'a Design, art: &'static Art) -> Vec<Job<'a>> {
    let reference = design.reference_picture.as_ref().map(|key| &key.value);
    let home = reference.and_then(|key| reference_layout(design, key));
    let mut jobs: BTreeMap<String, Job<'a>> = BTreeMap::new();
    // One photograph may show two impressions on one sheet; it is painted for the first of them.
    let mut taken = BTreeSet::new();
    for impression in design.impressions.values() {
        let look = Look::of(design, impression);
        let layout = Layout::of(design, impression, &look);
        for record in &impression.pictures {
            let file = record.file.as_str();
            if !taken.insert(file) || slips::is_misfiled(design.key.as_str(), file) {
                continue;
            }
            let slip = slips::detail(design.key.as_str(), file);
            let whole = record.view != View::Detail && slip.is_none();
            let is_richest = design.key.as_str() == "7";
            let longest = if is_richest { RICHEST } else { USUAL };
            let (size, sheet) = if whole {
                layout.whole(longest)
            } else {
                let part = record.area.map(|area| area.percent().map(|v| v as f32));
                let part = slip.or(part);
                let of_mark = sheets::around_mark(impression, record, &layout);
                of_mark.map_or_else(|| detail(&layout, &home.unwrap_or(layout), part), around)
            };
            let picture = Picture {
                impression,
                record,
                look: look.clone(),
                layout,
                size,
                sheet,
                whole,
                reference: reference.is_some_and(|key| is_of(key, impression, record)),
                path: site.join(&record.path),
                misfiled: slips::misfilings(design.key.as_str(), file)
                    .map(|(other, file)| site.join("records/designs").join(other).join(file))
                    .collect(),
            };
            let key = format!(
                "{} {}",
                look.condition_of_matrices(design),
                if whole {
                    String::new()
                } else {
                    file.to_owned()
                }
            );
            let (window, canvas) = block_window(&layout, &picture.sheet, whole);
            let job = jobs.entry(key).or_insert_with(|| Job {
                design,
                art,
                window,
                canvas,
                look: look.clone(),
                pictures: Vec::new(),
            });
            if window.scale > job.window.scale {
                job.window = window;
            }
            job.pictures.push(picture);
        }
    }
    jobs.into_values().collect()
}

/// Whether a key is that of this picture.
fn is_of(key: &PictureKey, impression: &Impression, record: &PictureRecord) -> bool {
    key.name == record.name.value && key.owner == PictureOwner::Impression(impression.key.clone())
}

fn reference_layout(design: &Design, reference: &PictureKey) -> Option<Layout> {
    let PictureOwner::Impression(key) = &reference.owner else {
        return None;
    };
    let impression = design.impressions.get(&key.number)?;
    Some(Layout::of(
        design,
        impression,
        &Look::of(design, impression),
    ))
}

/// The part of the sheet that a detail shows, and the size of its photograph.
fn detail(layout: &Layout, home: &Layout, part: Option<[f32; 4]>) -> ([usize; 2], Window) {
    let [x, y, w, h] = part.map_or_else(
        || {
            let [_, _, w, h] = home.image;
            [w / 3.0, h / 3.0, w / 3.0, h / 3.0]
        },
        |percent| home.on_image(percent),
    );
    let scale = DETAIL as f32 / w.max(h);
    let size = [w, h].map(|v| (v * scale).round() as usize);
    let window = Window {
        x: layout.image[0] + x,
        y: layout.image[1] + y,
        w: size[0],
        h: size[1],
        scale,
    };
    (size, window)
}

/// The same for the detail of a mark: the left, top, width and height of the part of its side of the sheet.
fn around([x, y, w, h]: [f32; 4]) -> ([usize; 2], Window) {
    let scale = DETAIL as f32 / w.max(h);
    let size = [w, h].map(|v| (v * scale).round() as usize);
    let window = Window {
        x,
        y,
        w: size[0],
        h: size[1],
        scale,
    };
    (size, window)
}

/// The window of the design that its blocks must cover, a little more than what is seen.
fn block_window(layout: &Layout, sheet: &Window, whole: bool) -> (Window, [f32; 2]) {
    let canvas = [layout.image[2] / layout.unit, layout.image[3] / layout.unit];
    let scale = sheet.scale * layout.unit;
    let spare = if layout.plate.is_some() { 40.0 } else { 10.0 };
    let (x, y, w, h) = if whole {
        (
            -spare,
            -spare,
            canvas[0] + 2.0 * spare,
            canvas[1] + 2.0 * spare,
        )
    } else {
        (
            (sheet.x - layout.image[0]) / layout.unit - spare,
            (sheet.y - layout.image[1]) / layout.unit - spare,
            sheet.w as f32 / scale + 2.0 * spare,
            sheet.h as f32 / scale + 2.0 * spare,
        )
    };
    let window = Window {
        x,
        y,
        w: (w * scale).ceil() as usize,
        h: (h * scale).ceil() as usize,
        scale,
    };
    (window, canvas)
}

/// Paints all jobs and hands each photograph to `keep`, which returns its size in bytes.
///
/// # Errors
/// The first error of `keep`.
pub fn paint(
    jobs: &[Job],
    keep: impl Fn(&Path, &Photograph) -> Result<usize, String> + Sync,
) -> Result<Vec<Painted>, String> {
    let results: Vec<Result<Vec<Painted>, String>> = jobs
        .par_iter()
        .map(|job| {
            let blocks = cut(job);
            job.pictures
                .par_iter()
                .map(|picture| {
                    let photograph = photograph(job, picture, &blocks);
                    for path in &picture.misfiled {
                        keep(path, &photograph)?;
                    }
                    let bytes = keep(&picture.path, &photograph)?;
                    Ok(Painted {
                        path: picture.path.clone(),
                        bytes,
                    })
                })
                .collect()
        })
        .collect();
    let mut painted = Vec::new();
    for result in results {
        painted.extend(result?);
    }
    Ok(painted)
}

/// The photograph of one picture of a design, by its file.
pub fn one(site: &Path, design: &Design, art: &'static Art, file: &str) -> Option<Photograph> {
    let jobs = gather(site, design, art);
    let shows = |picture: &&Picture| picture.record.file.as_str() == file;
    let job = jobs
        .iter()
        .find(|job| job.pictures.iter().any(|p| shows(&p)))?;
    let picture = job.pictures.iter().find(shows)?;
    Some(photograph(job, picture, &cut(job)))
}

fn cut(job: &Job) -> Blocks {
    let image = job.design.size.image.own().map(height_and_width);
    let full = image.map_or(job.canvas, |[h, w]| {
        let unit = h.max(w) / 1000.0;
        [w / unit, h / unit]
    });
    let bench = Bench::new(
        job.window,
        full,
        job.canvas,
        seed(&["cut", job.design.key.as_str()]),
    );
    let cuts = (job.art.cut)(&job.look, &bench);
    let mut passes = Vec::new();
    for picture in &job.pictures {
        passes.extend((job.art.print)(&picture.look));
    }
    surfaced(&cuts, &passes, |matrix| {
        seed(&["grain", job.design.key.as_str(), matrix])
    })
}

fn photograph(job: &Job, picture: &Picture, blocks: &Blocks) -> Photograph {
    let Picture {
        look,
        layout,
        impression,
        record,
        ..
    } = picture;
    let own = sheets::sheet_seed(job.design, look);
    let paper = sheets::paper(job.design, impression, look, layout);
    let mut passes = sheets::inked((job.art.print)(look), look);
    passes.retain(|p| look.printed(p.matrix));
    let verso = record.side == Side::Verso;
    let marks = sheets::marks(impression, look, layout, verso, picture.sheet, own);
    let counterproof = look.kind() == "counterproof";
    let plan = Plan {
        size: layout.sheet,
        image: layout.image,
        canvas: job.canvas,
        platemark: layout.platemark(),
        sunk: !counterproof,
        twin: layout.twin,
        paper: &paper,
        blocks,
        passes: &passes,
        pull: sheets::pull(job.design, impression, look, layout),
        mirrored: counterproof,
        verso,
        marks: &marks,
    };
    let laid = lay(&plan, picture.sheet);
    let ground = [Ground::Grey, Ground::Linen, Ground::Slate, Ground::Grey][own as usize % 4];
    let shot = Shot {
        size: picture.size,
        table: picture.whole.then_some(ground),
        straight: picture.reference,
        raking: record.view == View::Raking,
        seed: own ^ u32::from(verso) ^ seed(&[record.file.as_str()]),
    };
    take(&laid, &shot)
}
