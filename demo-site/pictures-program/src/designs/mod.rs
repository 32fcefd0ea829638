//! The designs: a file for each, with one function that cuts its blocks and one that inks them.
//!
//! In: what a sheet shows (`Look`) and the [`Bench`]. Out: cut surfaces by name, and the passes in
//! printing order in the artist's own inks, with the gradations and wiping that the sheet shows.
//! `shared` has the passages that several designs have in common, `etched` those of the plates.
//!
//! Not here: the inks of other printers (`sheets`).

mod bell;
mod caulkers;
mod channel;
mod cooper;
mod cranes;
mod dredger;
mod etched;
mod floes;
mod gant_light;
mod hail;
mod heron;
mod ice;
mod inking;
mod lamps;
mod lantern;
mod loft;
mod mill;
mod moonrise;
mod nets;
mod oranges;
mod pans;
mod prelude;
mod rain;
mod rope;
mod shared;
mod shops;
mod small_mill;
mod snow;
mod staithe;
mod steps;
mod swallows;
mod thunder;

use std::collections::BTreeMap;

use crate::engine::ink::Pass;
use crate::engine::plane::{Plane, Window};
use crate::engine::shape::{Path, Pt, bar, curve, knifed, rect};
use crate::look::Look;

/// The cut surfaces of a design by name.
pub type Cuts = BTreeMap<&'static str, Plane>;

/// A design that can be painted.
pub struct Art {
    /// The design's key.
    pub key: &'static str,
    /// Cuts the blocks as one state has them.
    pub cut: fn(&Look, &Bench) -> Cuts,
    /// The passes in printing order.
    pub print: fn(&Look) -> Vec<Pass>,
}

/// The design with this key, where it is one of these.
pub fn find(key: &str) -> Option<&'static Art> {
    ALL.iter().copied().find(|a| a.key == key)
}

const ALL: &[&Art] = &[
    &ice::ART,
    &staithe::ART,
    &steps::ART,
    &cranes::ART,
    &rope::ART,
    &shops::ART,
    &gant_light::ART,
    &nets::ART,
    &snow::ART,
    &oranges::ART,
    &loft::ART,
    &mill::ART,
    &small_mill::ART,
    &caulkers::ART,
    &cooper::ART,
    &dredger::ART,
    &pans::ART,
    &heron::ART,
    &rain::ART,
    &bell::ART,
    &moonrise::ART,
    &hail::ART,
    &floes::ART,
    &swallows::ART,
    &thunder::ART,
    &lamps::ART,
    &channel::ART,
    &lantern::ART,
];

/// The block that is cut: its size, and positions on it in percent, as the records give them.
pub struct Bench {
    /// What must be cut, and how finely.
    pub window: Window,
    /// Width of the image in design units.
    pub w: f32,
    /// Height of the image in design units, as first cut.
    pub h: f32,
    /// Width and height of the block in its present condition.
    present: Pt,
    /// The seed of what is accidental in the cutting of this design.
    pub seed: u32,
}

impl Bench {
    /// A bench for an image of which `present` is left of `full` (width and height).
    pub fn new(window: Window, full: Pt, present: Pt, seed: u32) -> Self {
        Self {
            window,
            w: full[0],
            h: full[1],
            present,
            seed,
        }
    }

    /// A block cut away everywhere.
    pub fn cleared(&self) -> Plane {
        Plane::cleared(self.window)
    }

    /// A block not yet cut, its edge as a knife leaves it.
    pub fn block(&self) -> Plane {
        let mut plane = self.cleared();
        plane.leave(&knifed(
            &rect(0.0, 0.0, self.present[0], self.present[1]),
            1.6,
            self.seed,
        ));
        plane
    }

    /// A metal plate's whole surface, edges included.
    pub fn plate(&self) -> Plane {
        Plane::uncut(self.window)
    }

    /// Across, from percent of the image's width.
    pub fn x(&self, percent: f32) -> f32 {
        percent / 100.0 * self.w
    }

    /// Down, from percent of the image's height.
    pub fn y(&self, percent: f32) -> f32 {
        percent / 100.0 * self.h
    }

    /// A point in percent.
    pub fn at(&self, x: f32, y: f32) -> Pt {
        [self.x(x), self.y(y)]
    }

    /// An outline or a line in percent.
    pub fn line(&self, percent: &[Pt]) -> Path {
        percent.iter().map(|p| self.at(p[0], p[1])).collect()
    }

    /// A rectangle in percent: left, top, right, bottom.
    pub fn area(&self, left: f32, top: f32, right: f32, bottom: f32) -> Path {
        let (a, b) = (self.at(left, top), self.at(right, bottom));
        rect(a[0], a[1], b[0] - a[0], b[1] - a[1])
    }

    /// The box between percents of the image: left, top, right, bottom in design units.
    pub fn bounds(&self, left: f32, top: f32, right: f32, bottom: f32) -> [f32; 4] {
        [self.x(left), self.y(top), self.x(right), self.y(bottom)]
    }

    /// The box over the whole width of the image, from a percent of its height to the foot.
    pub fn below(&self, top: f32) -> [f32; 4] {
        self.bounds(0.0, top, 100.0, 100.0)
    }

    /// A stroke of one width, in design units, along a line in percent.
    pub fn bar(&self, percent: &[Pt], width: f32) -> Path {
        bar(&self.line(percent), width)
    }

    /// A smooth line through points in percent.
    pub fn curve(&self, percent: &[Pt]) -> Path {
        curve(&self.line(percent))
    }

    /// The cut surfaces by name, each trimmed to the block.
    pub fn cuts<const N: usize>(&self, planes: [(&'static str, Plane); N]) -> Cuts {
        Cuts::from(planes.map(|(name, plane)| (name, self.trimmed(plane))))
    }

    /// Trims to the block: nothing prints beyond its edges.
    fn trimmed(&self, mut plane: Plane) -> Plane {
        let block = self.block();
        for (a, b) in plane.data.iter_mut().zip(&block.data) {
            *a *= b;
        }
        plane
    }
}
