//! One image made ready to be aligned with others.

use image::GrayImage;

use super::gradient::Edges;
use super::spectrum::Spectrum;

/// The longest side of the grey images that are aligned, in px. Smaller photographs are enlarged to it,
/// so that every length below means the same on each.
pub const WORKING_SIDE: u32 = 1000;

/// One image made ready to be aligned with others: what depends on it alone.
pub struct Subject {
    pub(super) edges: Edges,
    pub(super) spectrum: Spectrum,
}

impl Subject {
    /// Of a grey image whose longest side is [`WORKING_SIDE`].
    #[must_use]
    pub fn new(grey: &GrayImage) -> Subject {
        let edges = Edges::of(grey);
        let spectrum = Spectrum::of(edges.coarse());
        Subject { edges, spectrum }
    }
}
