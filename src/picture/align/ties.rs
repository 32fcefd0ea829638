//! Points tied by hand, used in place of the guessed start.
//!
//! A point set by hand is right to a few pixels. So the cells may move the map a little, but not away from the
//! ties.

use keyblock_model::registration::{Homography, Registration};

use super::cells::Grid;
use super::fit::{self, Correspondence, Model};
use super::pass::{Pass, STRICT, pass};
use super::subject::Subject;
use super::vote;

/// How far a tie may lie from where the others put it, px at working size: 1.5 % of the longest side, more
/// than a careful hand is off.
const MOST_APART: f64 = 15.0;

/// The passes that refine the tied map; they search only near it.
const PASSES: [Pass; 3] = [
    Pass::new(1, Grid::new(12, 40, 8), 2.0),
    STRICT[0],
    STRICT[1],
];

/// The map from the reference to the picture through ties, each a point of the picture and one of the
/// reference at working size; `None` where they contradict each other or make no plane seen by a camera.
pub fn fitted(ties: &[[(f64, f64); 2]]) -> Option<Homography> {
    let pairs: Vec<Correspondence> = ties
        .iter()
        .map(|&[on_picture, on_reference]| Correspondence {
            from: on_reference,
            to: on_picture,
            weight: 1.0,
        })
        .collect();
    if pairs.len() < 4 {
        return None;
    }
    let map = fit::least_squares(&pairs, Model::Projective, |_| 1.0)?;
    let agree = pairs
        .iter()
        .all(|pair| fit::residual(pair, &map) <= MOST_APART);
    (agree && keeps_sides(&map, &pairs)).then_some(map)
}

/// Whether the map neither mirrors nor folds where the ties lie: three points that turn clockwise do so
/// on the picture too.
fn keeps_sides(map: &Homography, pairs: &[Correspondence]) -> bool {
    pairs.iter().all(|pair| {
        let (x, y) = pair.from;
        let corner = map.apply(x, y).zip(map.apply(x + 1.0, y));
        corner
            .zip(map.apply(x, y + 1.0))
            .is_some_and(|((here, right), below)| {
                let across = (right.0 - here.0, right.1 - here.1);
                let down = (below.0 - here.0, below.1 - here.1);
                across.0 * down.1 - across.1 * down.0 > 0.0
            })
    })
}

/// The tied map as the cells refine it, where that stays near the ties and more cells agree; else as it
/// was tied.
pub fn refined(
    reference: &Subject,
    picture: &Subject,
    tied: &Homography,
    ties: &[[(f64, f64); 2]],
) -> Homography {
    let mut map = *tied;
    for step in PASSES {
        match pass(reference, picture, &map, step) {
            Ok(next) => map = next,
            Err(_) => return *tied,
        }
    }
    let stays = ties.iter().all(|&[to, from]| {
        let pair = Correspondence {
            from,
            to,
            weight: 1.0,
        };
        fit::residual(&pair, &map) <= MOST_APART
    });
    let share = |map: &Homography| match vote::decide(&reference.edges, &picture.edges, map) {
        Registration::Aligned(aligned) => aligned.confidence,
        Registration::Refused(refused) => refused.confidence,
        Registration::Reference => 1.0,
    };
    if stays && share(&map) > share(tied) {
        map
    } else {
        *tied
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Corners and middle of a reference, on a picture shifted and a little larger.
    fn ties() -> Vec<[(f64, f64); 2]> {
        [
            (100.0, 80.0),
            (900.0, 80.0),
            (900.0, 620.0),
            (100.0, 620.0),
            (500.0, 350.0),
        ]
        .into_iter()
        .map(|(x, y)| [(x * 1.1 + 20.0, y * 1.1 - 5.0), (x, y)])
        .collect()
    }

    #[test]
    fn ok_a_steady_hand() {
        let mut ties = ties();
        ties[4][0].0 += 4.0;
        let map = fitted(&ties).unwrap();
        let (x, y) = map.apply(300.0, 300.0).unwrap();
        assert!(
            (x - 350.0).abs() < 4.0 && (y - 325.0).abs() < 4.0,
            "{x} {y}"
        );
    }

    #[test]
    fn err_ties_that_contradict_each_other() {
        let mut apart = ties();
        apart[4][0].0 += 120.0;
        assert!(fitted(&apart).is_none());
        let mut crossed = ties();
        crossed.truncate(4);
        let kept = crossed[0][0];
        crossed[0][0] = crossed[1][0];
        crossed[1][0] = kept;
        assert!(fitted(&crossed).is_none());
        assert!(fitted(&ties()[..3]).is_none());
    }
}
