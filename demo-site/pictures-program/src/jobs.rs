//! Which pictures there are to draw, gathered so that blocks are cut once for all sheets alike.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use rayon::prelude::*;
use toml::Table;

use crate::designs::{Art, Bench};
use crate::engine::noise::seed;
use crate::engine::photo::{Photograph, Shot, Table as Ground, take};
use crate::engine::plane::Window;
use crate::engine::sheet::{Blocks, Plan, lay, surfaced};
use crate::layout::{Layout, boxed};
use crate::records::{Design, Look, tables, text};
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
    record: &'a Table,
    entry: &'a Table,
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

/// A picture as written.
pub struct Drawn {
    /// Where.
    pub path: PathBuf,
    /// Its size.
    pub bytes: usize,
}

/// The jobs of one design.
pub fn gather<'a>(design: &'a Design, art: &'static Art) -> Vec<Job<'a>> {
    let reference = text(&design.record, "reference_picture").to_owned();
    let home = reference_layout(design, &reference);
    let mut jobs: BTreeMap<String, Job<'a>> = BTreeMap::new();
    // One photograph may show two impressions on one sheet: the first of them draws it.
    let mut taken = BTreeSet::new();
    for (&number, record) in &design.impressions {
        let look = design.look(number, record);
        let layout = Layout::of(design, record, &look);
        for entry in tables(record, "pictures") {
            let file = text(entry, "file");
            if !file.starts_with("pictures/") || file.contains("..") || !taken.insert(file) {
                continue;
            }
            if slips::is_misfiled(&design.key, file) {
                continue;
            }
            let slip = slips::detail(&design.key, file);
            let whole = text(entry, "view") != "detail" && slip.is_none();
            let longest = if design.key == "7" { RICHEST } else { USUAL };
            let (size, sheet) = if whole {
                layout.whole(longest)
            } else {
                let part = slip.or_else(|| boxed(entry));
                detail(&layout, &home.unwrap_or(layout), part)
            };
            let picture = Picture {
                record,
                entry,
                look: look.clone(),
                layout,
                size,
                sheet,
                whole,
                reference: reference == format!("{}.{number}/{}", design.key, name_of(entry)),
                path: design.folder.join(file),
                misfiled: slips::misfilings(&design.key, file)
                    .map(|(other, file)| design.folder.with_file_name(other).join(file))
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

fn name_of(entry: &Table) -> &str {
    match (text(entry, "name"), text(entry, "side")) {
        ("", "") => "recto",
        ("", side) => side,
        (name, _) => name,
    }
}

fn reference_layout(design: &Design, reference: &str) -> Option<Layout> {
    let (key, _) = reference.split_once('/')?;
    let number = key.rsplit_once('.')?.1.parse().ok()?;
    let record = design.impressions.get(&number)?;
    Some(Layout::of(design, record, &design.look(number, record)))
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

/// Draws all jobs and hands each photograph to `keep`, which tells its size.
///
/// # Errors
/// The first of what `keep` could not do.
pub fn draw(
    jobs: &[Job],
    keep: impl Fn(&Path, &Photograph) -> Result<usize, String> + Sync,
) -> Result<Vec<Drawn>, String> {
    let results: Vec<Result<Vec<Drawn>, String>> = jobs
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
                    Ok(Drawn {
                        path: picture.path.clone(),
                        bytes,
                    })
                })
                .collect()
        })
        .collect();
    let mut drawn = Vec::new();
    for result in results {
        drawn.extend(result?);
    }
    Ok(drawn)
}

fn cut(job: &Job) -> Blocks {
    let full = job.design.image().map_or(job.canvas, |[h, w]| {
        let unit = h.max(w) / 1000.0;
        [w / unit, h / unit]
    });
    let bench = Bench::new(
        job.window,
        full,
        job.canvas,
        seed(&["cut", &job.design.key]),
    );
    let cuts = (job.art.cut)(&job.look, &bench);
    let mut passes = Vec::new();
    for picture in &job.pictures {
        passes.extend((job.art.print)(&picture.look));
    }
    surfaced(&cuts, &passes, |matrix| {
        seed(&["grain", &job.design.key, matrix])
    })
}

fn photograph(job: &Job, picture: &Picture, blocks: &Blocks) -> Photograph {
    let Picture {
        look,
        layout,
        record,
        ..
    } = picture;
    let own = sheets::sheet_seed(job.design, look);
    let paper = sheets::paper(job.design, record, look, layout);
    let mut passes = sheets::inked((job.art.print)(look), look);
    passes.retain(|p| look.printed(p.matrix));
    let verso = text(picture.entry, "side") == "verso";
    let marks = sheets::marks(record, look, layout, verso, picture.sheet, own);
    let counterproof = look.kind == "counterproof";
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
        pull: sheets::pull(job.design, record, look, layout),
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
        raking: text(picture.entry, "view") == "raking",
        seed: own ^ u32::from(verso) ^ seed(&[text(picture.entry, "file")]),
    };
    take(&laid, &shot)
}
