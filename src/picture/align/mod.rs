//! Alignment: where each pixel of one photograph lies on another of the same design.
//!
//! Two photographs show sheets printed from one block or plate, in different inks, by different cameras.
//! Alignment finds the plane projective map between them, or refuses with a reason. Aligned means that the
//! key lines coincide; a block that is still displaced was printed out of register.
//!
//! The steps for one pair (`estimate`): `working` makes a grey image of 1000 px from each photograph (its
//! part, turned upright, unmirrored); `gradient` keeps edges only, which removes tone, ink and light
//! (`subject` holds both of these); `start`, with `spectrum`, guesses turn, scale and shift; `cells` finds,
//! coarse to fine, where small windows lie; `fit` fits the map to them in spite of outliers (`pass` does one
//! round of both); `vote` searches the windows once more and decides. `ties` uses points set by hand in place
//! of the guess. `batch` aligns many pairs (`pair`) and `cache` keeps the results by content. The exact
//! definitions are in docs/definitions.md, "Alignment" and "The alignment vote".
//!
//! Every sum runs in a fixed order and random numbers come from fixed seeds: the same photographs give the
//! same numbers on any number of threads.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    clippy::many_single_char_names,
    reason = "positions on images of a thousand pixels, which every number type here holds"
)]

mod batch;
mod cache;
mod cells;
mod estimate;
mod fit;
mod gradient;
mod pair;
mod pass;
mod plane;
mod shape;
mod spectrum;
mod start;
mod subject;
mod ties;
mod vote;
mod working;

pub use batch::{CacheAccess, align_all};
pub use estimate::{align, align_by_hand};
pub use pair::{Photograph, PhotographPair};
pub use subject::{Subject, WORKING_SIDE};
