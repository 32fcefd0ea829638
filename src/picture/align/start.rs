//! Guesses at the map from the reference to the picture, the likeliest first.

use keyblock_model::registration::Homography;

use super::plane::level;
use super::subject::Subject;

/// How many guesses are refined at most.
const MOST: usize = 3;

/// Guesses at working size.
pub fn candidates(reference: &Subject, picture: &Subject) -> Vec<Homography> {
    let (to, from) = level(2);
    reference
        .spectrum
        .likely(&picture.spectrum)
        .into_iter()
        .take(MOST)
        .filter_map(|likely| to.then(&likely.map)?.then(&from))
        .collect()
}
