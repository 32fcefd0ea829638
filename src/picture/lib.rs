//! Pictures: from the photographs of a catalogue to the files a page may show.
//!
//! In: files named by records; they may be hostile. Out: for each one its size, upright, a few JPEG files of
//! smaller widths and the tiles of an image service, in sRGB, without any metadata of the original.
//!
//! | subject | modules, in reading order |
//! |---|---|
//! | what is asked for and what comes out | `plan`, `prepared`, `fault` |
//! | reading a photograph | `source`, `embedded`, `decode`; `jpeg`, `webp`, `png` and `tiff` (with `ifd`, `unpack`); `samples`, `gather` |
//! | sizes and colours | `extent`, `scaling`, `turn`, `srgb`, `colour` (with `profile`, `tables`) |
//! | what is published of it | `derive`, [`tiles`], `pyramid`, `codec`, `small` |
//! | many photographs | `budget`, `cache`, `store`, `sweep`, `batch` |
//! | one photograph on another | [`align`] |
//! | what a photograph shows, cut out small | `trim` |
//! | the points of a design | `detail` (with `area`), [`tone`] |
//!
//! The flow of one picture: `batch` reads the file and looks up in `cache` whether its content was prepared
//! before; if not, `decode` judges the header, `derive` decides how large the published form will be and how much
//! memory that takes, `decode` unpacks the pixels, `pyramid` turns, halves and cuts them, `colour` converts it to sRGB, `codec` encodes it, and
//! `cache` keeps the result. A photograph that cannot be used gives a [`Fault`], worded for a cataloguer.
//!
//! Not here: which pictures may be published and where a path may lead (the reader and the audit).
#![allow(
    clippy::disallowed_methods,
    reason = "this stage reads photographs and keeps its cache on disk, with the dates of use"
)]

pub mod align;
mod area;
mod batch;
mod budget;
mod cache;
mod codec;
mod colour;
mod decode;
mod derive;
mod detail;
mod embedded;
mod extent;
mod fault;
mod gather;
mod ifd;
mod jpeg;
mod plan;
mod png;
mod prepared;
mod profile;
mod pyramid;
mod samples;
mod scaling;
mod small;
mod source;
mod srgb;
mod store;
mod sweep;
mod tables;
#[cfg(test)]
mod tests;
mod tiff;
pub mod tiles;
pub mod tone;
mod trim;
mod turn;
mod unpack;
mod webp;

pub use batch::{check_all, prepare_all};
pub use detail::{DetailRequest, Detailed, Paper, PointRequest, details_all};
pub use fault::{Fault, MemoryCause};
pub use plan::{Limits, Plan, Request};
pub use prepared::{Colour, Derivative, Prepared, Service, ServiceFile};
pub use small::{Small, small};
pub use store::Store;
pub use sweep::Swept;
pub use tone::Tone;
pub use trim::{TrimRequest, Trimmed, trim_all};
