//! The vote: whether a map is accepted (docs/definitions.md, "The alignment vote").
//!
//! The cells are searched once more around where the map puts them. If the map is right, most lie where it
//! puts them, in any ink; by chance one in 18 does. The number that agree is not enough: designs of one series
//! may have exactly the same border and title. So the cells that agree must also be spread, and some of them
//! must lie inside the picture, not along its border.

use keyblock_model::registration::{Aligned, Homography, Refusal, Refused, Registration};

use super::cells::{self, Grid, Shift};
use super::gradient::Edges;
use super::plane::level;

/// The fewest textured cells: with fewer, the pair is refused.
pub const FEWEST_CELLS: usize = 12;

/// The cells that vote, on the level of half the working size: windows of 64 px are searched 10 px each
/// way, at a sixteenth of what that would cost on the finest level.
const GRID: Grid = Grid::new(16, 32, 5);
const DEPTH: usize = 1;

/// The greatest distance at which a cell agrees, px of the voting level: two at working size.
const NEAR: f64 = 1.0;

/// The likeness that a cell needs to agree.
const LEAST_LIKENESS: f32 = 0.15;

/// The share of cells that must agree: different designs reach 0.06 by chance, and pairs of one design
/// had 0.31 and more where they were right.
const LEAST_SHARE: f64 = 0.2;

/// The share of fields of a 3 by 3 division in which some cell must agree.
const LEAST_SPREAD: f64 = 0.6;

/// The share of the inner cells that must agree, where there are enough of them to tell.
const LEAST_INSIDE: f64 = 0.12;

/// How many cells with texture an image has.
pub fn textured(edges: &Edges) -> usize {
    cells::textured(edges.level(DEPTH), GRID)
}

/// Decides by the cells whether a map from the reference to the picture, at working size, is accepted. The
/// map in the result leads from the picture to the reference.
pub fn decide(reference: &Edges, picture: &Edges, map: &Homography) -> Registration {
    let (to, from) = level(DEPTH);
    let refuse = |why, confidence| Registration::Refused(Refused { why, confidence });
    let Some(on_level) = from.then(map).and_then(|map| map.then(&to)) else {
        return refuse(Refusal::NoPlausibleFit, 0.0);
    };
    let shifts = cells::shifts(
        reference.level(DEPTH),
        picture.level(DEPTH),
        &on_level,
        GRID,
    );
    if shifts.len() < FEWEST_CELLS {
        return refuse(Refusal::NothingInCommon, 0.0);
    }
    let ballot = Ballot::of(&shifts);
    if ballot.share < LEAST_SHARE {
        return refuse(Refusal::FewAgree, ballot.share);
    }
    if ballot.spread < LEAST_SPREAD || ballot.inside.is_some_and(|share| share < LEAST_INSIDE) {
        return refuse(Refusal::OnePartOnly, ballot.share);
    }
    match map.inverse() {
        Some(matrix) => Registration::Aligned(Aligned {
            matrix,
            confidence: ballot.share,
            residual_px: ballot.residual * f64::from(1_u32 << DEPTH),
            by_hand: false,
        }),
        None => refuse(Refusal::NoPlausibleFit, ballot.share),
    }
}

/// The figures of a vote.
#[derive(Debug)]
pub struct Ballot {
    /// The share of cells that agree.
    pub share: f64,
    /// The share of the occupied fields, of nine, in which one agrees.
    pub spread: f64,
    /// The share of the inner cells that agree; `None` where they are too few to tell.
    pub inside: Option<f64>,
    /// The median distance of those that agree, px of the voting level.
    pub residual: f64,
}

impl Ballot {
    pub fn of(shifts: &[Shift]) -> Ballot {
        let frame = Frame::around(shifts);
        let mut agreeing = Vec::new();
        let mut fields = [(0_u32, 0_u32); 9];
        let (mut inner, mut inner_agreeing) = (0_u32, 0_u32);
        for shift in shifts {
            let agrees =
                shift.likeness > LEAST_LIKENESS && shift.dx.abs() <= NEAR && shift.dy.abs() <= NEAR;
            if agrees {
                agreeing.push((shift.dx * shift.dx + shift.dy * shift.dy).sqrt());
            }
            let (across, down) = frame.place(shift);
            let field = &mut fields[third(down) * 3 + third(across)];
            field.0 += 1;
            field.1 += u32::from(agrees);
            if (INNER..=1.0 - INNER).contains(&across) && (INNER..=1.0 - INNER).contains(&down) {
                inner += 1;
                inner_agreeing += u32::from(agrees);
            }
        }
        agreeing.sort_by(f64::total_cmp);
        let occupied = fields.iter().filter(|field| field.0 > 0).count();
        let with_one = fields.iter().filter(|field| field.1 > 0).count();
        Ballot {
            share: agreeing.len() as f64 / shifts.len().max(1) as f64,
            spread: with_one as f64 / occupied.max(1) as f64,
            inside: (inner >= 9).then(|| f64::from(inner_agreeing) / f64::from(inner)),
            residual: agreeing.get(agreeing.len() / 2).copied().unwrap_or(0.0),
        }
    }
}

/// How far from the edge of what the cells cover a cell counts as inner: a part of its width.
const INNER: f64 = 0.22;

fn third(part: f64) -> usize {
    ((part * 3.0) as usize).min(2)
}

/// The rectangle that the textured cells cover.
struct Frame {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

impl Frame {
    fn around(shifts: &[Shift]) -> Frame {
        let span = |of: fn(&Shift) -> f64| {
            let least = shifts.iter().map(of).fold(f64::INFINITY, f64::min);
            let most = shifts.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
            (least, (most - least).max(1.0))
        };
        let ((left, width), (top, height)) = (span(|s| s.x), span(|s| s.y));
        Frame {
            left,
            top,
            width,
            height,
        }
    }

    /// Where a cell lies in it, 0 to 1 each way.
    fn place(&self, shift: &Shift) -> (f64, f64) {
        (
            (shift.x - self.left) / self.width,
            (shift.y - self.top) / self.height,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A ballot of 12 by 9 cells, of which those chosen agree.
    fn ballot(agrees: impl Fn(usize, usize) -> bool) -> Ballot {
        let mut shifts = Vec::new();
        for row in 0..9 {
            for column in 0..12 {
                let away = if agrees(column, row) { 0.5 } else { 7.0 };
                shifts.push(Shift {
                    x: column as f64 * 80.0,
                    y: row as f64 * 80.0,
                    dx: away,
                    dy: 0.0,
                    likeness: 0.6,
                });
            }
        }
        Ballot::of(&shifts)
    }

    #[test]
    fn a_shared_title_is_one_corner() {
        let title = ballot(|column, row| column < 6 && row < 6 && (column < 4 || row < 3));
        assert!(title.share > LEAST_SHARE);
        assert!(title.spread < LEAST_SPREAD, "{title:?}");
    }

    #[test]
    fn a_shared_border_leaves_the_inside_silent() {
        let border = ballot(|column, row| column == 0 || column == 11 || row == 0 || row == 8);
        assert!(border.share > LEAST_SHARE && border.spread > LEAST_SPREAD);
        assert!(border.inside.unwrap() < LEAST_INSIDE, "{border:?}");
    }

    #[test]
    fn a_third_of_the_cells_anywhere_is_enough() {
        let worn = ballot(|column, row| (column + row) % 3 == 0);
        assert!(worn.share > 0.3 && worn.spread > 0.99 && worn.inside.unwrap() > 0.3);
        assert!((worn.residual - 0.5).abs() < 1e-12);
    }
}
