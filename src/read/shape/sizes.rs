//! The keys of the sizes of a design, a state or a printing.

use super::declare::{Shape, Takes, may, plain};

/// The sizes of a design, a state or a printing.
pub static SIZE: Shape = plain(
    "the size table",
    &[
        may(
            "image",
            Takes::Statements(&Takes::Size),
            "the image, [height, width] in mm",
        ),
        may(
            "matrix",
            Takes::Statements(&Takes::Size),
            "the block, plate or stone, [height, width] in mm",
        ),
    ],
);
