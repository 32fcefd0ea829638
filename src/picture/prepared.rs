//! The result for one photograph: its files, its image service, and how its colours were understood.

use std::ops::Range;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};

use crate::fault::MemoryCause;

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
    /// a name always means the same bytes.
    pub name: String,
}

/// A picture's image service (IIIF Image API 3.0, level 0), without its `info.json`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Service {
    /// Width in px of the largest published form, upright.
    pub width: u32,
    /// Height in px of it.
    pub height: u32,
    /// The file of the cache in which all its files are concatenated.
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
    /// Converted from the embedded profile, or from CIELAB.
    Converted,
    /// There is a profile, but it cannot be used: read as sRGB, which may be wrong.
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
    /// Bytes of memory that making them takes at most.
    pub memory: u64,
    /// What makes it take so much.
    pub cause: MemoryCause,
    /// Whether they were made just now rather than found in the cache.
    pub made: bool,
}
