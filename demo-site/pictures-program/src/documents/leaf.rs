//! The paper of a document, what is written on it, and its photograph.

use std::collections::BTreeMap;

use super::writing::{Style, write};
use crate::engine::colour::hex;
use crate::engine::noise::{Dice, cloud, mix, seed};
use crate::engine::paper::{Make, Paper};
use crate::engine::photo::{Photograph, Shot, Table, take};
use crate::engine::plane::{Plane, Window};
use crate::engine::shape::{Pt, bar};
use crate::engine::sheet::{Mark, Plan, Pull, lay};

/// A leaf on a table.
pub struct Leaf {
    /// The document's key: the seed of everything accidental.
    pub key: &'static str,
    /// Width and height, mm.
    pub size: Pt,
    /// How its paper was made.
    pub make: Make,
    /// The colour of its paper.
    pub tone: u32,
    /// What it lies on.
    pub table: Table,
    /// The longer side of the photograph, px.
    pub longest: usize,
}

/// Share of the leaf's longer side that the table shows all round.
const BORDER: f32 = 0.045;

impl Leaf {
    /// The pixels of the photograph and the window on the leaf.
    pub fn frame(&self) -> ([usize; 2], Window) {
        let border = BORDER * self.size[0].max(self.size[1]);
        let across = self.size.map(|v| v + 2.0 * border);
        let scale = self.longest as f32 / across[0].max(across[1]);
        let window = Window {
            x: 0.0,
            y: 0.0,
            w: (self.size[0] * scale).round() as usize,
            h: (self.size[1] * scale).round() as usize,
            scale,
        };
        (across.map(|v| (v * scale).round() as usize), window)
    }

    /// Photographs the leaf: `age` damages the paper, `mark` writes on it.
    pub fn photograph(
        &self,
        age: impl FnOnce(&mut Paper),
        mark: impl FnOnce(Window) -> Vec<Mark>,
    ) -> Photograph {
        let seed = seed(&["document", self.key]);
        let (size, window) = self.frame();
        let mut paper = Paper::new(self.make, self.tone, self.size, seed);
        age(&mut paper);
        let marks = mark(window);
        let plan = Plan {
            size: self.size,
            image: [0.0, 0.0, self.size[0], self.size[1]],
            canvas: [1.0, 1.0],
            platemark: None,
            sunk: false,
            twin: None,
            paper: &paper,
            blocks: &BTreeMap::new(),
            passes: &[],
            pull: Pull {
                film: 1.0,
                dry: 0.0,
                grain: 0.0,
                rub: 0.0,
                stray: 0.0,
                faded: 0.0,
                seed,
            },
            mirrored: false,
            verso: false,
            marks: &marks,
        };
        take(&lay(&plan, window), &self.shot(size))
    }

    /// The camera over it.
    pub fn shot(&self, size: [usize; 2]) -> Shot {
        Shot {
            size,
            table: Some(self.table),
            straight: false,
            raking: false,
            seed: seed(&["document", self.key]),
        }
    }
}

/// One colour of ink on a leaf, written line by line.
pub struct Ink {
    plane: Plane,
    colour: u32,
    dry: f32,
    dice: Dice,
    seed: u32,
}

impl Ink {
    /// A clean pen, type or pencil. `dry` is how far it skips in the hollows of the paper.
    pub fn new(window: Window, colour: u32, dry: f32, words: &[&str]) -> Self {
        let seed = seed(words);
        Self {
            plane: Plane::cleared(window),
            colour,
            dry,
            dice: Dice::new(seed),
            seed,
        }
    }

    /// Writes from the left.
    pub fn write(&mut self, style: &Style, text: &str, at: Pt) -> f32 {
        write(&mut self.plane, style, text, at, &mut self.dice)
    }

    /// Writes so that the line ends at `at`.
    pub fn write_to(&mut self, style: &Style, text: &str, at: Pt) {
        let wide = super::writing::width(style, text);
        self.write(style, text, [at[0] - wide, at[1]]);
    }

    /// Writes with the middle of the line at `at`.
    pub fn write_amid(&mut self, style: &Style, text: &str, at: Pt) {
        let wide = super::writing::width(style, text);
        self.write(style, text, [at[0] - wide * 0.5, at[1]]);
    }

    /// A ruled line.
    pub fn rule(&mut self, from: Pt, to: Pt, wide: f32) {
        self.plane.tone(&bar(&[from, to], wide), 0.85);
    }

    /// A line drawn by hand.
    pub fn stroke(&mut self, line: &[Pt], wide: f32) {
        self.plane.tone(&bar(line, wide), 0.85);
    }

    /// The plane, to be drawn on.
    pub fn plane(&mut self) -> &mut Plane {
        &mut self.plane
    }

    /// What lies on the leaf: the ink, stronger and weaker as the pen was full or empty.
    pub fn mark(mut self) -> Mark {
        let seed = self.seed;
        self.plane
            .weigh(|p| mix(0.88, 1.0, cloud(p[0] / 7.0, p[1] / 4.0, 2, seed)));
        Mark {
            cover: self.plane,
            colour: hex(self.colour),
            dry: self.dry,
        }
    }
}
