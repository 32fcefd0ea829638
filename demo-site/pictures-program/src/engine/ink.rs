//! Inks, and how one pass of a block leaves them on paper.

use super::colour::{Colour, blend, hex};
use super::grain::Surface;
use super::shape::Pt;

/// An ink as it looks printed solid on white paper.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Ink {
    /// Colour of a full film on white.
    pub colour: Colour,
    /// How far the ink hides what lies under it: 0 is a stain, 1 a paint.
    pub body: f32,
}

/// A translucent ink.
pub fn ink(code: u32) -> Ink {
    Ink {
        colour: hex(code),
        body: 0.22,
    }
}

/// An ink with white in it, which lightens what is dark below it.
pub fn body_ink(code: u32) -> Ink {
    Ink {
        colour: hex(code),
        body: 0.72,
    }
}

impl Ink {
    /// Lays a film of the ink on what is already there; `film` is 1 for a full film.
    pub fn over(&self, under: Colour, film: f32) -> Colour {
        let filter = self.colour.map(|c| (1.0 + (c - 1.0) * film).max(0.012));
        let seen_through = [0, 1, 2].map(|i| under[i] * filter[i]);
        blend(seen_through, self.colour, (self.body * film).min(0.95))
    }

    /// The ink with a share of another mixed into it.
    pub fn mixed(self, other: u32, share: f32) -> Self {
        Self {
            colour: blend(self.colour, hex(other), share),
            ..self
        }
    }
}

/// How a gradation or a wiping varies the film over the block: 1 is the printer's full charge.
pub type Charge = Box<dyn Fn(Pt) -> f32 + Send + Sync>;

/// One pass through the press, or under the baren.
pub struct Pass {
    /// The matrix as the record names it: not printed, this pass is left out.
    pub matrix: &'static str,
    /// The cut surface that is inked, as the design names it.
    pub cut: &'static str,
    /// What is rolled or brushed on.
    pub ink: Ink,
    /// What the block is made of.
    pub surface: Surface,
    /// How much of the grain prints, 0 to 1.
    pub grain: f32,
    /// How the inking varies, where it is not even.
    pub charge: Option<Charge>,
}

impl Pass {
    /// An evenly inked pass from a plank that is cut as one surface of its own name.
    pub fn block(matrix: &'static str, ink: Ink) -> Self {
        Self::new(matrix, matrix, ink)
    }

    /// An evenly inked pass from a plank.
    pub fn new(matrix: &'static str, cut: &'static str, ink: Ink) -> Self {
        Self {
            matrix,
            cut,
            ink,
            surface: Surface::Plank,
            grain: 0.35,
            charge: None,
        }
    }

    /// The same from another surface, with its share of grain.
    pub fn from(mut self, surface: Surface, grain: f32) -> Self {
        self.surface = surface;
        self.grain = grain;
        self
    }

    /// The same, inked by a gradation or unevenly.
    pub fn charged(mut self, charge: impl Fn(Pt) -> f32 + Send + Sync + 'static) -> Self {
        self.charge = Some(Box::new(charge));
        self
    }
}
