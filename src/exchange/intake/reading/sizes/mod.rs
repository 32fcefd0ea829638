//! Sizes: what was measured, how high and wide it is, in which unit and how exactly.
//!
//! "image: 9 1/2 × 7 in." gives the image, 241.3 mm high and 177.8 mm wide, each to a quarter of an inch. The rounding of
//! the unit is kept: a length is what was written give or take half of its last figure, or half of the finest fraction
//! beside it. Height stands before width (docs/trade.md, "Sizes") unless the text says otherwise, which is told.
//!
//! | file | subject |
//! |---|---|
//! | `measurement` | what is said: the thing measured, its lengths, the unit |
//! | `labels` | the words for what was measured, for axes and for units |
//! | `figures` | numbers with decimals and fractions |
//! | `lengths` | lengths side by side: `24 x 18 cm`, `H. 24 cm; B. 18 cm` |
//! | `grammar` | the list of measurements in a cell |
//! | `heading` | what a heading says of the sizes below it |

mod figures;
#[cfg(test)]
mod golden;
mod grammar;
mod heading;
mod labels;
mod lengths;
mod measurement;

pub use grammar::{length, sizes};
pub use heading::assumed_by;
pub use measurement::{Assumed, Length, Measured, Measurement, Order, Unit};
