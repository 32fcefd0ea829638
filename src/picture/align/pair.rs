//! The input of alignment: a photograph and the reference picture of its design.

use std::path::PathBuf;

use keyblock_model::boxes::PercentBox;

/// A photograph of an image.
#[derive(Clone, Debug, PartialEq)]
pub struct Photograph {
    /// The file.
    pub source: PathBuf,
    /// The part that shows this image, where the photograph shows more (an uncut sheet).
    pub area: Option<PercentBox>,
    /// Whether it shows the image mirrored (a counterproof).
    pub mirrored: bool,
}

/// A picture to be aligned to its design's reference picture.
#[derive(Clone, Debug)]
pub struct PhotographPair {
    /// The photograph it is aligned to.
    pub reference: Photograph,
    /// The picture.
    pub picture: Photograph,
    /// Points tied by hand, `[x, y, x, y]` in percent of the picture and of the reference, both whole and
    /// upright; none, or four and more.
    pub ties: Vec<[f64; 4]>,
}
