//! Pictures: from the photographs of a catalogue to the files a page may show.
//!
//! In: files named by records; they may be hostile. Out: for each one its size, upright, a few JPEG files of
//! smaller widths and the tiles of an image service, in sRGB, without any metadata of the original.
//!
//! | subject | modules, in reading order |
//! |---|---|
//! | what is asked for and what comes out | `plan`, `prepared`, `fault` |
//! | reading a photograph | `source`, `decode` (with `jpeg` for JPEG files), `master` |
//! | sizes and colours | `extent`, `scaling`, `turn`, `colour` (with `profile`) |
//! | what is published of it | `derive`, [`tiles`], `pyramid`, `codec`, `small` |
//! | many photographs | `budget`, `cache`, `store`, `sweep`, `batch` |
//! | one photograph on another | [`align`] |
//! | the points of a design | `detail` (with `area`), [`tone`] |
//!
//! The flow of one picture: `batch` reads the file and looks up in `cache` whether its content was prepared
//! before; if not, `decode` judges the header and unpacks the pixels, `derive` decides how large the published
//! form will be, `pyramid` turns, halves and cuts it, `colour` converts it to sRGB, `codec` encodes it, and
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
mod extent;
mod fault;
mod jpeg;
mod master;
mod plan;
mod prepared;
mod profile;
mod pyramid;
mod scaling;
mod small;
mod source;
mod store;
mod sweep;
#[cfg(test)]
mod tests;
pub mod tiles;
pub mod tone;
mod turn;

pub use batch::{check_all, prepare_all};
pub use detail::{DetailRequest, Detailed, Paper, PointRequest, details_all};
pub use fault::Fault;
pub use plan::{Plan, Request};
pub use prepared::{Colour, Derivative, Prepared, Service, ServiceFile};
pub use small::{Small, small};
pub use store::Store;
pub use sweep::Swept;
pub use tone::Tone;
