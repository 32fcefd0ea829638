//! Requests: the photographs, and the files to make of each.

use std::path::PathBuf;

/// A picture wanted on pages.
#[derive(Debug, Clone)]
pub struct Request {
    /// The photograph as the catalogue keeps it: JPEG, PNG, TIFF or WebP, recognised by content.
    pub source: PathBuf,
    /// The longest side in px that may be published, where the record says so.
    pub largest: Option<u32>,
}

/// The files to make of every picture of a catalogue.
#[derive(Debug, Clone)]
pub struct Plan {
    /// The widths in px that pages offer, in any order. A picture is never enlarged to reach one.
    pub widths: Vec<u32>,
    /// The quality of the JPEG files, 1 to 100.
    pub quality: u8,
    /// The longest side in px that anything published may have.
    pub largest: u32,
    /// What a photograph may not exceed.
    pub limits: Limits,
}

/// What photographs may not exceed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// How many pixels a photograph may have before it is refused unread.
    pub pixels: u64,
    /// How many bytes of memory all photographs that are worked on at once may take. One that needs more is
    /// refused before it is unpacked.
    pub memory: u64,
}

impl Default for Limits {
    /// 200 million pixels, twice what the largest single-shot cameras in use at museums deliver, and 1 GiB.
    fn default() -> Self {
        Self {
            pixels: 200_000_000,
            memory: 1 << 30,
        }
    }
}

impl Default for Plan {
    /// Three widths for phones, pages and wall screens.
    fn default() -> Self {
        Self {
            widths: vec![480, 960, 1920],
            quality: 85,
            largest: 4096,
            limits: Limits::default(),
        }
    }
}
