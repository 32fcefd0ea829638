//! Details: the part of a photograph that shows a point, cut out along the reference picture's axes.
//!
//! In: photographs, for each the reference picture of its design, the map onto it (from `align`) and
//! the points with their boxes. Out: for each photograph a small JPEG file a point, such that the
//! files of one point line up to the eye, and the tones of the points that have one.
//!
//! A detail shows the photograph as it is published: never more pixels than its largest published
//! form has, and nothing at all of what lies outside it. `request` says what is wanted, `cut` resamples,
//! `refine` corrects the place of a part by the last few pixels, `cache` keeps the results by content, and
//! `batch` does many photographs within the memory that preparing pictures keeps to. The exact definitions
//! are in docs/definitions.md, "Strips and tones".

mod batch;
mod cache;
mod cut;
mod refine;
mod request;
#[cfg(test)]
mod tests;

pub use batch::details_all;
pub use request::{DetailRequest, Detailed, Paper, PointRequest};
