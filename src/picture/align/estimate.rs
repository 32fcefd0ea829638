//! Estimates the map between two images: the start, the passes from coarse to fine, and the vote.

use keyblock_model::registration::{Aligned, Homography, Refusal, Refused, Registration};

use super::cells::Grid;
use super::fit::Model;
use super::pass::{Pass, STRICT, pass};
use super::subject::Subject;
use super::{start, ties, vote};

/// The passes from coarse to fine.
///
/// The first fits an affine map only: the guess has no perspective, and a few cells that agree by chance
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

/// Aligns `picture` to `reference`. The map leads from pixels of the first to pixels of the second, both
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
/// the picture, then on the reference. The map is fitted to them, and the vote only confirms it.
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
