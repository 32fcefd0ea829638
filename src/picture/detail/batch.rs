//! Cutting the details of many photographs, within the memory that pictures share.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use image::RgbImage;
use keyblock_model::boxes::PercentBox;
use keyblock_model::registration::Homography;
use rayon::prelude::*;

use super::cache::{self, CacheKey, CutPoint, KeptTone};
use super::cut;
use super::refine;
use super::request::{DetailRequest, Detailed, Paper};
use crate::area::Area;
use crate::budget::Budget;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::plan::Plan;
use crate::source::{PictureFile, guarded};
use crate::store::Store;
use crate::tone::{self, Tone, paper};
use crate::{codec, decode, derive};

/// Cuts all parts asked for and keeps the results in `store`.
///
/// Results are in the order of the requests, and neither they nor the files depend on the number
/// of threads. `progress` is called after each photograph with the number done and the total; calls
/// may come from several threads and out of order. Requests with one reference should follow each
/// other: it is unpacked once for all that do.
pub fn details_all(
    requests: &[DetailRequest],
    plan: &Plan,
    store: &Store,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Detailed, Fault>> {
    if !requests.is_empty()
        && let Err(fault) = store.prepare()
    {
        return vec![Err(fault); requests.len()];
    }
    let batch = DetailBatch {
        plan,
        store,
        budget: Budget::new(plan.limits.memory),
        references: references(requests, plan),
    };
    let done = AtomicUsize::new(0);
    requests
        .par_iter()
        .map(|request| {
            let result = batch.details(request);
            progress(done.fetch_add(1, Ordering::Relaxed) + 1, requests.len());
            result
        })
        .collect()
}

/// The reference pictures by path, each with the number of photographs that will ask for it.
fn references<'a>(
    requests: &'a [DetailRequest],
    plan: &Plan,
) -> BTreeMap<&'a Path, SharedReference> {
    let mut waiting: BTreeMap<&Path, usize> = BTreeMap::new();
    for request in requests {
        *waiting.entry(&request.reference).or_default() += 1;
    }
    waiting
        .into_par_iter()
        .map(|(path, waiting)| {
            let content = PictureFile::open(path, plan.limits.pixels).and_then(|file| file.hash());
            let state = Mutex::new(ReferenceState {
                waiting,
                working: None,
            });
            (path, SharedReference { content, state })
        })
        .collect()
}

/// A reference picture that several photographs need.
struct SharedReference {
    /// The hash of its file.
    content: Result<blake3::Hash, Fault>,
    state: Mutex<ReferenceState>,
}

struct ReferenceState {
    /// How many photographs still need it.
    waiting: usize,
    /// The decoded reference: loaded at first use, dropped after the last request.
    working: Option<Result<Arc<ReferenceImage>, Fault>>,
}

/// A reference picture at working size.
struct ReferenceImage {
    /// Its master, upright, in px.
    master: Extent,
    pixels: RgbImage,
    /// From its master to `pixels`.
    map: Homography,
}

impl ReferenceImage {
    fn long_side(&self) -> f64 {
        f64::from(self.master.width.max(self.master.height))
    }

    /// A box on it, in px of its master.
    fn area(&self, part: PercentBox) -> Area {
        Area::on(part, self.master)
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

struct DetailBatch<'a> {
    plan: &'a Plan,
    store: &'a Store,
    budget: Budget,
    references: BTreeMap<&'a Path, SharedReference>,
}

impl DetailBatch<'_> {
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

    fn find_or_make(
        &self,
        request: &DetailRequest,
        shared: &SharedReference,
    ) -> Result<Detailed, Fault> {
        let reference_content = shared.content.clone()?;
        let file = PictureFile::open(&request.source, self.plan.limits.pixels)?;
        let content = file.hash()?;
        let name = CacheKey::new(request, self.plan, content, reference_content);
        let store = self.store;
        if let Some(found) = cache::find(store.dir(), name) {
            store.note_used(&name.manifest(store.dir()));
            return Ok(found);
        }
        // The reference comes before this thread takes memory: a thread that held memory while it
        // waits for a reference could wait for a thread that waits for that memory.
        let reference = self.reference(&request.reference, shared)?;
        let longest = derive::longest_side(self.plan, request.largest);
        let made = guarded(|| {
            let opened = decode::open(&file, self.plan.limits.pixels)?;
            let _share = self.budget.take(derive::fitted_memory(&opened, longest));
            let published = published(opened, longest)?;
            file.is_unchanged()?;
            let is_reference = content == reference_content;
            make(request, &published, &reference, is_reference, self.plan)
        })?;
        store.note_used(&name.manifest(store.dir()));
        store.keep(cache::bytes(&made), |dir| cache::keep(dir, name, &made))
    }

    /// The reference at working size. The first thread to ask unpacks it; the others wait.
    fn reference(
        &self,
        path: &Path,
        shared: &SharedReference,
    ) -> Result<Arc<ReferenceImage>, Fault> {
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
    fn working(&self, path: &Path) -> Result<ReferenceImage, Fault> {
        let file = PictureFile::open(path, self.plan.limits.pixels)?;
        guarded(|| {
            let opened = decode::open(&file, self.plan.limits.pixels)?;
            let longest = refine::WORKING as u32;
            let _share = self.budget.take(derive::fitted_memory(&opened, longest));
            let Published {
                master,
                pixels,
                map,
            } = published(opened, longest)?;
            Ok(ReferenceImage {
                master,
                pixels,
                map,
            })
        })
    }
}

/// A photograph upright, in sRGB, no side above `longest`.
fn published(opened: decode::Opened<'_>, longest: u32) -> Result<Published, Fault> {
    let fitted = derive::fitted(opened, longest)?;
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
    reference: &ReferenceImage,
    is_reference: bool,
    plan: &Plan,
) -> Result<Vec<CutPoint>, Fault> {
    let from_reference = request
        .onto_reference
        .inverse()
        .and_then(|map| map.then(&picture.map));
    let Some(from_reference) = from_reference else {
        return Ok(Vec::new());
    };
    let paper = if request.points.iter().any(|point| point.has_tone) {
        bare_paper(request, picture, reference, &from_reference)
    } else {
        None
    };
    let mut made = Vec::with_capacity(request.points.len());
    for point in &request.points {
        let area = reference.area(point.area);
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
        let detail = cut::detail(&picture.pixels, &from_reference, area)
            .map(|cut| codec::encode_picture(&cut.pixels, plan.quality))
            .transpose()?;
        let is_given = matches!(request.paper, Paper::Given(_));
        let tone = paper.filter(|_| point.has_tone).and_then(|paper| {
            let scale = (refine::WORKING / reference.long_side()).min(1.0);
            let cut = cut::cut(&picture.pixels, &from_reference, area, area.scaled(scale));
            if cut.share() < cut::LEAST_SHOWN {
                return None;
            }
            let (mean, spread) = tone::measured(cut.seen(), paper)?;
            Some(KeptTone::new(&Tone {
                mean,
                spread,
                paper_is_given: is_given,
            }))
        });
        made.push(CutPoint {
            point: point.point.clone(),
            detail,
            tone,
        });
    }
    Ok(made)
}

fn bare_paper(
    request: &DetailRequest,
    picture: &Published,
    reference: &ReferenceImage,
    from_reference: &Homography,
) -> Option<tone::cielab::Linear> {
    match request.paper {
        Paper::Unknown => None,
        Paper::Given(area) => {
            paper::given(&picture.pixels, Area::on(area, Extent::of(&picture.pixels)))
        }
        Paper::BesideImage(area) => {
            let image = Area::on(area, picture.master);
            paper::beside(&picture.pixels, image, &picture.map)
        }
        Paper::BesideReferenceImage(area) => {
            paper::beside(&picture.pixels, reference.area(area), from_reference)
        }
    }
}
