//! Details: the part of a photograph that shows a point, cut out along the reference picture's axes.
//!
//! In: photographs, for each the reference picture of its design, the map onto it (from `align`) and
//! the points with their boxes. Out: for each photograph a small JPEG file a point, such that the
//! files of one point line up to the eye, and the tones of the points that have one.
//!
//! A detail shows the photograph as it is published: never more pixels than its largest published
//! form has, and nothing at all of what lies outside it. `cut` resamples, `refine` moves a part by
//! the last few pixels, `kept` is the cache. This file carries many photographs through within the
//! bounds of memory that preparing pictures keeps to.

mod cut;
mod kept;
mod refine;
#[cfg(test)]
mod tests;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use image::RgbImage;
use rayon::prelude::*;

pub use self::cut::Area;
use self::kept::{KeptTone, Made, Name};
use super::batch::{BUDGET, Budget, guarded, read};
use super::cache::make_folder;
use super::derive::{self, Extent};
use super::tone::{self, Tone, paper};
use super::{Derivative, Fault, Plan, codec, decode};
use keyblock_model::boxes::PercentBox;
use keyblock_model::key::Key;
use keyblock_model::registration::Homography;

/// A detail fits into this many px: sharp in a strip at twice the density, and on the point's page.
const WIDEST: u32 = 640;
const HIGHEST: u32 = 384;

/// A part of which the picture shows less than this is left out.
const LEAST_SHOWN: f64 = 0.5;

/// A photograph out of which parts are wanted.
#[derive(Debug, Clone)]
pub struct DetailRequest {
    /// The photograph.
    pub source: PathBuf,
    /// The longest side in px that may be published, where the record says so.
    pub largest: Option<u32>,
    /// The reference picture of its design; the same file where it is that one itself.
    pub reference: PathBuf,
    /// From pixels of the photograph to pixels of the reference, both masters, upright. A mirrored
    /// photograph is turned over by it.
    pub onto_reference: Homography,
    /// The parts, each point once.
    pub parts: Vec<Part>,
    /// Where its paper is bare.
    pub paper: Paper,
}

/// A part that shows a point.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// The point.
    pub point: Key,
    /// Where it is, in percent of the reference picture.
    pub area: PercentBox,
    /// Whether its tone is measured: for a point that rests on inking. Whether a block was printed
    /// is seen, not measured.
    pub has_tone: bool,
}

/// Where a photograph shows bare paper. All boxes are in percent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Paper {
    /// Not known: no tone is measured.
    Unknown,
    /// Here on the photograph, the record says.
    Given(PercentBox),
    /// To be found beside the printed image, whose edges on the photograph these are.
    BesideImage(PercentBox),
    /// To be found beside the printed image, whose edges on the reference picture these are.
    BesideReferenceImage(PercentBox),
}

/// What was cut out of a photograph.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Detailed {
    /// The detail of each point of which it shows at least half.
    pub details: BTreeMap<Key, Derivative>,
    /// The tone of each point that has one, where bare paper is known.
    pub tones: BTreeMap<Key, Tone>,
    /// Whether they were made just now rather than found in the cache.
    pub made: bool,
}

/// Cuts all parts asked for and keeps the results under `cache_dir`, which is made if need be.
///
/// Results stand in the order of the requests, and neither they nor the files depend on the number
/// of threads. `progress` is told how many photographs are done, and of how many, after each; calls
/// may come from several threads and out of order. Requests with one reference should follow each
/// other: it is unpacked once for all that do.
pub fn details_all(
    requests: &[DetailRequest],
    plan: &Plan,
    cache_dir: &Path,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Detailed, Fault>> {
    if !requests.is_empty()
        && let Err(fault) = make_folder(cache_dir)
    {
        return vec![Err(fault); requests.len()];
    }
    let work = Work {
        plan,
        cache_dir,
        budget: Budget::new(BUDGET),
        references: references(requests, plan),
    };
    let done = AtomicUsize::new(0);
    requests
        .par_iter()
        .map(|request| {
            let result = work.details(request);
            progress(done.fetch_add(1, Ordering::Relaxed) + 1, requests.len());
            result
        })
        .collect()
}

/// The reference pictures by path, each with the number of photographs that will ask for it.
fn references<'a>(requests: &'a [DetailRequest], plan: &Plan) -> BTreeMap<&'a Path, Shared> {
    let mut waiting: BTreeMap<&Path, usize> = BTreeMap::new();
    for request in requests {
        *waiting.entry(&request.reference).or_default() += 1;
    }
    waiting
        .into_par_iter()
        .map(|(path, waiting)| {
            let content = read(path, plan.pixel_limit).map(|bytes| blake3::hash(&bytes));
            let state = Mutex::new(State {
                waiting,
                working: None,
            });
            (path, Shared { content, state })
        })
        .collect()
}

/// A reference picture that several photographs need.
struct Shared {
    /// The hash of its file.
    content: Result<blake3::Hash, Fault>,
    state: Mutex<State>,
}

struct State {
    /// How many photographs have not been done with it.
    waiting: usize,
    /// It, once somebody needed it and until nobody does.
    working: Option<Result<Arc<Working>, Fault>>,
}

/// A reference picture at working size.
struct Working {
    /// Its master, upright, in px.
    master: Extent,
    pixels: RgbImage,
    /// From its master to `pixels`.
    map: Homography,
}

impl Working {
    fn long_side(&self) -> f64 {
        f64::from(self.master.width.max(self.master.height))
    }

    /// A box on it, in px of its master.
    fn area(&self, part: PercentBox) -> Area {
        area_of(part, self.master)
    }
}

fn area_of(part: PercentBox, picture: Extent) -> Area {
    let (width, height) = (f64::from(picture.width), f64::from(picture.height));
    let [left, top, wide, high] = part.percent();
    Area {
        left: left * width / 100.0,
        top: top * height / 100.0,
        width: wide * width / 100.0,
        height: high * height / 100.0,
    }
}

/// A photograph as it is published at its largest.
struct Published {
    /// The photograph upright, in full, in px.
    master: Extent,
    pixels: RgbImage,
    /// From its master to `pixels`.
    map: Homography,
}

struct Work<'a> {
    plan: &'a Plan,
    cache_dir: &'a Path,
    budget: Budget,
    references: BTreeMap<&'a Path, Shared>,
}

impl Work<'_> {
    fn details(&self, request: &DetailRequest) -> Result<Detailed, Fault> {
        let Some(shared) = self.references.get(request.reference.as_path()) else {
            return Ok(Detailed::default());
        };
        let result = self.find_or_make(request, shared);
        let mut state = shared.state.lock().unwrap_or_else(PoisonError::into_inner);
        state.waiting = state.waiting.saturating_sub(1);
        if state.waiting == 0 {
            state.working = None;
        }
        result
    }

    fn find_or_make(&self, request: &DetailRequest, shared: &Shared) -> Result<Detailed, Fault> {
        let reference_content = shared.content.clone()?;
        let bytes = read(&request.source, self.plan.pixel_limit)?;
        let content = blake3::hash(&bytes);
        let name = Name::new(request, self.plan, content, reference_content);
        if let Some(found) = kept::find(self.cache_dir, name) {
            return Ok(found);
        }
        // Before any share of the memory is taken: who held one while waiting for the reference
        // could wait for somebody who waits for that share.
        let reference = self.reference(&request.reference, shared)?;
        let longest = derive::longest_side(self.plan, request.largest);
        let made = guarded(|| {
            let opened = decode::open(&bytes, self.plan.pixel_limit)?;
            let _share = self.budget.take(opened.memory);
            let published = published(opened, longest)?;
            let is_reference = content == reference_content;
            make(request, &published, &reference, is_reference, self.plan)
        })?;
        kept::keep(self.cache_dir, name, &made)
    }

    /// The reference at working size. Whoever comes first unpacks it; the others wait.
    fn reference(&self, path: &Path, shared: &Shared) -> Result<Arc<Working>, Fault> {
        let mut state = shared.state.lock().unwrap_or_else(PoisonError::into_inner);
        state
            .working
            .get_or_insert_with(|| self.working(path).map(Arc::new))
            .clone()
    }

    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a constant of 1000 px"
    )]
    fn working(&self, path: &Path) -> Result<Working, Fault> {
        let bytes = read(path, self.plan.pixel_limit)?;
        guarded(|| {
            let opened = decode::open(&bytes, self.plan.pixel_limit)?;
            let _share = self.budget.take(opened.memory);
            let Published {
                master,
                pixels,
                map,
            } = published(opened, refine::WORKING as u32)?;
            Ok(Working {
                master,
                pixels,
                map,
            })
        })
    }
}

/// A photograph upright, in sRGB, no side above `longest`.
fn published(opened: decode::Opened<'_>, longest: u32) -> Result<Published, Fault> {
    let fitted = derive::fitted(opened.decode()?, longest)?;
    let pixels = fitted.base.whole()?;
    let master = fitted.upright;
    let scale = |to: u32, from: u32| f64::from(to) / f64::from(from.max(1));
    let map = Homography::scaling(
        scale(pixels.width(), master.width),
        scale(pixels.height(), master.height),
    )
    .ok_or_else(|| Fault::Damaged("it cannot be scaled".into()))?;
    Ok(Published {
        master,
        pixels,
        map,
    })
}

/// Cuts every part and measures every tone.
fn make(
    request: &DetailRequest,
    picture: &Published,
    reference: &Working,
    is_reference: bool,
    plan: &Plan,
) -> Result<Vec<Made>, Fault> {
    let from_reference = request
        .onto_reference
        .inverse()
        .and_then(|map| map.then(&picture.map));
    let Some(from_reference) = from_reference else {
        return Ok(Vec::new());
    };
    let paper = if request.parts.iter().any(|part| part.has_tone) {
        bare_paper(request, picture, reference, &from_reference)
    } else {
        None
    };
    let mut made = Vec::with_capacity(request.parts.len());
    for part in &request.parts {
        let area = reference.area(part.area);
        let shift = if is_reference {
            (0.0, 0.0)
        } else {
            refine::shift(
                (&reference.pixels, &reference.map),
                (&picture.pixels, &from_reference),
                area,
                reference.long_side(),
            )
        };
        let area = area.moved(shift);
        let detail = detail(&picture.pixels, &from_reference, area)
            .map(|cut| codec::encode_picture(&cut.pixels, plan.quality))
            .transpose()?;
        let is_given = matches!(request.paper, Paper::Given(_));
        let tone = paper.filter(|_| part.has_tone).and_then(|paper| {
            let scale = (refine::WORKING / reference.long_side()).min(1.0);
            let cut = cut::cut(&picture.pixels, &from_reference, area, area.scaled(scale));
            if cut.share() < LEAST_SHOWN {
                return None;
            }
            let (mean, spread) = tone::measured(cut.seen(), paper)?;
            Some(KeptTone::new(&Tone {
                mean,
                spread,
                paper_is_given: is_given,
            }))
        });
        made.push(Made {
            point: part.point.clone(),
            detail,
            tone,
        });
    }
    Ok(made)
}

/// One detail; `None` where the picture shows too little of it. It is never larger than what the
/// picture gives.
fn detail(picture: &RgbImage, from_reference: &Homography, area: Area) -> Option<cut::Cut> {
    let density = area.density(from_reference)?;
    let fitted = area.fitted(WIDEST, HIGHEST);
    let whole = area.scaled(density);
    let to = if whole.width < fitted.width {
        whole
    } else {
        fitted
    };
    let cut = cut::cut(picture, from_reference, area, to);
    (cut.share() >= LEAST_SHOWN).then_some(cut)
}

fn bare_paper(
    request: &DetailRequest,
    picture: &Published,
    reference: &Working,
    from_reference: &Homography,
) -> Option<tone::cielab::Linear> {
    match request.paper {
        Paper::Unknown => None,
        Paper::Given(area) => {
            paper::given(&picture.pixels, area_of(area, Extent::of(&picture.pixels)))
        }
        Paper::BesideImage(area) => {
            let image = area_of(area, picture.master);
            paper::beside(&picture.pixels, image, &picture.map)
        }
        Paper::BesideReferenceImage(area) => {
            paper::beside(&picture.pixels, reference.area(area), from_reference)
        }
    }
}
