//! Alignment: where each pixel of one photograph lies on another of the same design.
//!
//! Two photographs show sheets printed from one block or plate, in other inks, by other cameras. What
//! is sought is the plane projective map between them, or a refusal with its reason: aligned means that
//! the key lines coincide, and where another block sits apart after that, this is for the eye to see.
//!
//! The way of one pair: `working` makes a grey image of 1000 px from each photograph (its part, turned
//! upright, unmirrored); `gradient` leaves edges alone, so that tone, ink and light drop out; `start`
//! (with `spectrum`) guesses turn, scale and shift; `cells` finds, coarse to fine, where small windows
//! lie; `fit` draws the map through them against outliers; `vote` asks the windows once more and
//! decides; `ties` lets points set by hand take the place of the guess. `batch` does many pairs and
//! `keep` remembers them by content.
//!
//! Every sum runs in a fixed order and chance comes from fixed seeds: the same photographs give the
//! same numbers, on any number of threads.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    clippy::many_single_char_names,
    reason = "positions on images of a thousand pixels, which every number type here holds"
)]

mod batch;
mod cells;
mod fit;
mod gradient;
mod keep;
mod plane;
mod shape;
mod spectrum;
mod start;
mod ties;
mod vote;
mod working;

use cells::Grid;
use fit::Model;
use gradient::Edges;
use image::GrayImage;
use keyblock_model::registration::{Aligned, Homography, Refusal, Refused, Registration};
use plane::level;

pub use batch::{Keep, Pair, Photograph, align_all};

/// The longest side of the grey images that are aligned, in px. Smaller photographs are enlarged to it,
/// so that every length below means the same on each.
pub const WORKING_SIDE: u32 = 1000;

/// One image made ready to be aligned with others: what depends on it alone.
pub struct Subject {
    edges: Edges,
    spectrum: spectrum::Spectrum,
}

impl Subject {
    /// Of a grey image whose longest side is [`WORKING_SIDE`].
    #[must_use]
    pub fn new(grey: &GrayImage) -> Subject {
        let edges = Edges::of(grey);
        let spectrum = spectrum::Spectrum::of(edges.coarse());
        Subject { edges, spectrum }
    }
}

/// One pass of the refinement.
#[derive(Clone, Copy)]
struct Pass {
    /// The level of the images: 0 working size, 1 half, 2 a quarter.
    depth: usize,
    /// How that level is divided.
    grid: Grid,
    /// What the map through the cells may do.
    model: Model,
    /// How near a cell must lie to a map to follow it, px of the level.
    tolerance: f64,
}

impl Pass {
    const fn new(depth: usize, grid: Grid, tolerance: f64) -> Pass {
        Pass {
            depth,
            grid,
            model: Model::Projective,
            tolerance,
        }
    }
}

/// The passes from coarse to fine.
///
/// The first draws an affine map only: the guess knows no perspective, and a few cells that hit by chance
/// would bend the picture. The last ones are strict: a tone block that was printed two or three pixels
/// aside has many cells, and with a wide tolerance they would pull the map off the key lines.
const PASSES: [Pass; 6] = [
    Pass {
        model: Model::Affine,
        ..Pass::new(2, Grid::new(9, 40, 11), 2.0)
    },
    Pass::new(2, Grid::new(9, 40, 5), 2.0),
    Pass::new(1, Grid::new(12, 40, 6), 2.0),
    Pass::new(1, Grid::new(12, 40, 4), 2.0),
    STRICT[0],
    STRICT[1],
];

/// The passes at working size.
const STRICT: [Pass; 2] = [
    Pass::new(0, Grid::new(16, 56, 5), 1.0),
    Pass::new(0, Grid::new(26, 48, 3), 0.7),
];

/// How `picture` lies on `reference`. The map leads from pixels of the one to pixels of the other, both
/// at working size, pixel centres at whole numbers.
///
/// Method: a start by log-polar phase correlation (Reddy & Chatterji 1996), refined by normalised
/// correlation of windows on gradient images, a projective map through their shifts by RANSAC (Fischler
/// & Bolles 1981) and Tukey-weighted least squares, and a vote of the windows.
#[must_use]
pub fn align(reference: &Subject, picture: &Subject) -> Registration {
    let texture = |subject: &Subject| vote::textured(&subject.edges);
    if texture(reference) < vote::FEWEST_CELLS || texture(picture) < vote::FEWEST_CELLS {
        return refused(Refusal::LittleToCompare, 0.0);
    }
    let mut best: Option<Registration> = None;
    for begun in start::candidates(reference, picture) {
        let outcome = refined(reference, picture, &begun);
        let is_good = matches!(&outcome, Registration::Aligned(a) if a.confidence >= SURE);
        if best.as_ref().is_none_or(|kept| rank(&outcome) > rank(kept)) {
            best = Some(outcome);
        }
        if is_good {
            break;
        }
    }
    best.unwrap_or_else(|| refused(Refusal::NothingInCommon, 0.0))
}

/// The same where a record ties points by hand: `ties` are pairs of points at working size, first on
/// the picture, then on the reference. They decide, and the vote only confirms them.
#[must_use]
pub fn align_by_hand(
    reference: &Subject,
    picture: &Subject,
    ties: &[[(f64, f64); 2]],
) -> Registration {
    let Some(tied) = ties::fitted(ties) else {
        return refused(Refusal::TiesDisagree, 0.0);
    };
    let refined = ties::refined(reference, picture, &tied, ties);
    match vote::decide(&reference.edges, &picture.edges, &refined) {
        Registration::Aligned(aligned) => Registration::Aligned(Aligned {
            by_hand: true,
            ..aligned
        }),
        Registration::Refused(why) => refused(Refusal::TiesDisagree, why.confidence),
        Registration::Reference => Registration::Reference,
    }
}

/// From this share of agreeing cells on no other start is tried.
const SURE: f64 = 0.5;

/// Which of two outcomes is better: an answer before a refusal, then the larger share.
fn rank(outcome: &Registration) -> (bool, f64) {
    match outcome {
        Registration::Reference => (true, 1.0),
        Registration::Aligned(aligned) => (true, aligned.confidence),
        Registration::Refused(refused) => (false, refused.confidence),
    }
}

fn refused(why: Refusal, confidence: f64) -> Registration {
    Registration::Refused(Refused { why, confidence })
}

/// Refines a start, given as the map from the reference to the picture, and lets the cells vote.
fn refined(reference: &Subject, picture: &Subject, begun: &Homography) -> Registration {
    let mut map = *begun;
    for step in PASSES {
        match pass(reference, picture, &map, step) {
            Ok(next) => map = next,
            Err(why) => return refused(why, 0.0),
        }
    }
    vote::decide(&reference.edges, &picture.edges, &map)
}

/// One pass: cells on one level, and a new map through them.
fn pass(
    reference: &Subject,
    picture: &Subject,
    map: &Homography,
    step: Pass,
) -> Result<Homography, Refusal> {
    let (to, from) = level(step.depth);
    let on_level = from
        .then(map)
        .and_then(|map| map.then(&to))
        .ok_or(Refusal::NoPlausibleFit)?;
    let (a, b) = (
        reference.edges.level(step.depth),
        picture.edges.level(step.depth),
    );
    let shifts = cells::shifts(a, b, &on_level, step.grid);
    let pairs: Vec<fit::Pair> = shifts
        .iter()
        .filter(|shift| shift.likeness > cells::LEAST_LIKENESS)
        .filter_map(|shift| {
            let to = on_level.apply(shift.x + shift.dx, shift.y + shift.dy)?;
            Some(fit::Pair {
                from: (shift.x, shift.y),
                to,
                weight: f64::from(shift.likeness),
            })
        })
        .collect();
    let fitted = fit::robust(&pairs, step.model, step.tolerance).ok_or(Refusal::NothingInCommon)?;
    let full = to
        .then(&fitted)
        .and_then(|map| map.then(&from))
        .ok_or(Refusal::NoPlausibleFit)?;
    if shape::is_plausible(&full, reference.edges.size()) {
        Ok(full)
    } else if step.depth == 2 {
        // A few coarse cells that hit by chance make no fit worth the name.
        Err(Refusal::NothingInCommon)
    } else {
        Err(Refusal::NoPlausibleFit)
    }
}
