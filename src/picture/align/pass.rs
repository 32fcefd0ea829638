//! One round of refinement: cells are searched on one level, and a new map is fitted to where they lie.

use keyblock_model::registration::{Homography, Refusal};

use super::cells::{self, Grid};
use super::fit::{self, Correspondence, Model};
use super::plane::level;
use super::shape;
use super::subject::Subject;

/// One pass of the refinement.
#[derive(Clone, Copy)]
pub struct Pass {
    /// The level of the images: 0 working size, 1 half, 2 a quarter.
    pub depth: usize,
    /// The division of that level into cells.
    pub grid: Grid,
    /// The class of the map through the cells.
    pub model: Model,
    /// The greatest distance at which a cell counts as following a map, px of the level.
    pub tolerance: f64,
}

impl Pass {
    pub const fn new(depth: usize, grid: Grid, tolerance: f64) -> Pass {
        Pass {
            depth,
            grid,
            model: Model::Projective,
            tolerance,
        }
    }
}

/// The passes at working size.
pub const STRICT: [Pass; 2] = [
    Pass::new(0, Grid::new(16, 56, 5), 1.0),
    Pass::new(0, Grid::new(26, 48, 3), 0.7),
];

/// Refines `map`, which leads from the reference to the picture at working size, by one pass.
///
/// # Errors
/// Where too few cells agree with any map, or the map that fits them is one that no camera could make.
pub fn pass(
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
    let pairs: Vec<Correspondence> = shifts
        .iter()
        .filter(|shift| shift.likeness > cells::LEAST_LIKENESS)
        .filter_map(|shift| {
            let to = on_level.apply(shift.x + shift.dx, shift.y + shift.dy)?;
            Some(Correspondence {
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
        // A few coarse cells may agree by chance, so no fit is made of them.
        Err(Refusal::NothingInCommon)
    } else {
        Err(Refusal::NoPlausibleFit)
    }
}
