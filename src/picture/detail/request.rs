//! Requests for parts of a photograph, and the results.

use std::collections::BTreeMap;
use std::path::PathBuf;

use keyblock_model::boxes::PercentBox;
use keyblock_model::key::Key;
use keyblock_model::registration::Homography;

use crate::prepared::Derivative;
use crate::tone::Tone;

/// A photograph out of which parts are wanted.
#[derive(Debug, Clone)]
pub struct DetailRequest {
    /// The photograph.
    pub source: PathBuf,
    /// The longest side in px that may be published, where the record says so.
    pub largest: Option<u32>,
    /// The reference picture of its design; the same file where the photograph is the reference.
    pub reference: PathBuf,
    /// From pixels of the photograph to pixels of the reference, both masters, upright. A mirrored
    /// photograph is turned over by it.
    pub onto_reference: Homography,
    /// The parts, each point once.
    pub points: Vec<PointRequest>,
    /// Where its paper is bare.
    pub paper: Paper,
}

/// A part that shows a point.
#[derive(Debug, Clone, PartialEq)]
pub struct PointRequest {
    /// The point.
    pub point: Key,
    /// Where it is, in percent of the reference picture.
    pub area: PercentBox,
    /// Whether its tone is measured: for a point that rests on inking. Whether a block was printed
    /// is seen, not measured.
    pub has_tone: bool,
}

/// Where a photograph shows bare paper. All boxes are in percent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Paper {
    /// Not known: no tone is measured.
    Unknown,
    /// The part of the photograph that the record gives.
    Given(PercentBox),
    /// To be found beside the printed image, whose edges on the photograph these are.
    BesideImage(PercentBox),
    /// To be found beside the printed image, whose edges on the reference picture these are.
    BesideReferenceImage(PercentBox),
}

/// The details and tones of a photograph.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Detailed {
    /// The detail of each point of which it shows at least half.
    pub details: BTreeMap<Key, Derivative>,
    /// The tone of each point that has one, where bare paper is known.
    pub tones: BTreeMap<Key, Tone>,
    /// Whether they were made just now rather than found in the cache.
    pub made: bool,
}
