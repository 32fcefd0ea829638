//! Pictures: from the photographs of a catalogue to the files a page may show.
//!
//! In: files named by records, which are hostile until decoded. Out: for each one its size, upright,
//! a few JPEG files of smaller widths and the tiles of an image service, in sRGB, without a trace of the
//! metadata that came in.
//!
//! The flow of one picture: `batch` reads the file and asks `cache` whether its content was prepared
//! before; if not, `decode` (with `jpeg` for JPEG files) judges the header and unpacks the pixels,
//! `derive` says how large what is published will be, `pyramid` turns, halves and cuts them (`tiles`
//! says into which files), `colour` brings them to sRGB, `codec` encodes them, and `cache` keeps the
//! result. [`align`] says how one lies on another. What goes wrong is a [`Fault`], worded for a
//! cataloguer.
//!
//! Not here: which pictures may be published and where a path may lead (the reader and the audit).
#![allow(
    clippy::disallowed_methods,
    reason = "this stage reads photographs and keeps its cache on disk"
)]

pub mod align;
mod batch;
mod cache;
mod codec;
mod colour;
mod decode;
mod derive;
pub mod detail;
mod fault;
mod jpeg;
mod pyramid;
mod small;
#[cfg(test)]
mod tests;
pub mod tiles;
pub mod tone;
mod turn;

use std::ops::Range;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};

pub use batch::{check_all, prepare_all};
pub use detail::{DetailRequest, Detailed, Paper, Part, details_all};
pub use fault::Fault;
pub use small::{Small, small};
pub use tone::Tone;

/// A picture wanted on pages.
#[derive(Debug, Clone)]
pub struct Request {
    /// The photograph as the catalogue keeps it: JPEG, PNG, TIFF or WebP, told by content.
    pub source: PathBuf,
    /// The longest side in px that may be published, where the record says so.
    pub largest: Option<u32>,
}

/// What is made of every picture of a catalogue.
#[derive(Debug, Clone)]
pub struct Plan {
    /// The widths in px that pages offer, in any order. A picture is never enlarged to reach one.
    pub widths: Vec<u32>,
    /// The quality of the JPEG files, 1 to 100.
    pub quality: u8,
    /// The longest side in px that anything published may have.
    pub largest: u32,
    /// How many pixels a photograph may have before it is refused unread.
    pub pixel_limit: u64,
}

impl Default for Plan {
    /// Three widths for phones, pages and wall screens, and a limit of 200 million pixels: twice
    /// what the largest single-shot cameras in use at museums deliver.
    fn default() -> Self {
        Self {
            widths: vec![480, 960, 1920],
            quality: 85,
            largest: 4096,
            pixel_limit: 200_000_000,
        }
    }
}

/// One file made from a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Derivative {
    /// Width in px.
    pub width: u32,
    /// Height in px.
    pub height: u32,
    /// Where the cache keeps the file.
    pub file: PathBuf,
    /// The name to publish it under. It follows from the photograph's bytes and the plan alone, so
    /// what it names never changes.
    pub name: String,
}

/// A picture's image service (IIIF Image API 3.0, level 0), without its `info.json`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Service {
    /// Width in px of the largest published form, upright.
    pub width: u32,
    /// Height in px of it.
    pub height: u32,
    /// The file of the cache in which all its files stand one behind the other.
    pub pack: PathBuf,
    /// A name for the content of the pack: it follows from the photograph's bytes and the plan alone.
    pub content: String,
    /// Its files.
    pub files: Vec<ServiceFile>,
}

/// One file of an image service.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ServiceFile {
    /// Its path within the service.
    pub path: String,
    /// Which bytes of the pack it is.
    pub at: Range<u64>,
}

/// How the colours of a photograph were understood.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Colour {
    /// No profile: read as sRGB.
    Untagged,
    /// Converted from the embedded profile.
    Converted,
    /// There is a profile, but it makes no sense: read as sRGB, which may be wrong.
    ProfileUnusable,
}

/// A picture ready for pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prepared {
    /// Width in px of the photograph once upright.
    pub width: u32,
    /// Height in px of the photograph once upright.
    pub height: u32,
    /// How its colours were understood.
    pub colour: Colour,
    /// The files made from it, smallest first; never empty.
    pub derivatives: Vec<Derivative>,
    /// Its image service.
    pub service: Service,
    /// Whether they were made just now rather than found in the cache.
    pub made: bool,
}
