//! A small form of one photograph, for a page that carries its pictures in itself.

use std::path::Path;

use crate::derive::MemoryNeed;
use crate::fault::Fault;
use crate::plan::Limits;
use crate::source::{PictureFile, guarded};
use crate::{codec, decode, derive};

/// A small form of a photograph, upright and in sRGB, without the metadata of its file.
#[derive(Clone, Debug)]
pub struct Small {
    /// Its width in px.
    pub width: u32,
    /// Its height in px.
    pub height: u32,
    /// The small form as a JPEG file.
    pub jpeg: Vec<u8>,
}

/// Quality of a picture that is looked at beside another, not studied.
const QUALITY: u8 = 80;

/// Scales the photograph at `path` so that no side is above `longest` px.
///
/// # Errors
/// Where it cannot be read as a picture, or is above the limits.
pub fn small(path: &Path, longest: u32, limits: Limits) -> Result<Small, Fault> {
    let file = PictureFile::open(path, limits.pixels)?;
    guarded(|| {
        let opened = decode::open(&file, limits.pixels)?;
        let need = MemoryNeed {
            bytes: derive::fitted_memory(&opened, longest),
            cause: opened.cause(),
        };
        need.within(limits.memory)?;
        let picture = derive::fitted(opened, longest)?.base.whole()?;
        let rendered = codec::encode_picture(&picture, QUALITY)?;
        Ok(Small {
            width: rendered.extent.width,
            height: rendered.extent.height,
            jpeg: rendered.jpeg,
        })
    })
}
