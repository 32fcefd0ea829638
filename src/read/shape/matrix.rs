//! The keys of a block, plate, stone or screen, in `design.toml`.

use super::declare::{Shape, Takes, Target, WAS, may, must, plain, words};
use crate::model::design::{MatrixFate, MatrixKind};
use crate::model::occurrence::{DesignPart, MentionRole};

/// A block, plate, stone or screen.
pub static MATRIX: Shape = plain(
    "a matrix",
    &[
        must("key", Takes::OwnKey, "its key"),
        WAS,
        may("kind", Takes::Word(words::<MatrixKind>), "what it is"),
        may("material", Takes::Text, "what it is made of"),
        may(
            "carries",
            Takes::Text,
            "what it prints: \"the sky and the water\"",
        ),
        may("colour", Takes::Text, "the colour it is printed in"),
        may(
            "size",
            Takes::Statements(&Takes::Size),
            "the block, plate or stone itself, [height, width] in mm",
        ),
        may(
            "accession",
            Takes::Text,
            "its number with the holder that has it",
        ),
        may(
            "only_in",
            Takes::Several(&Takes::Part(DesignPart::Variant)),
            "the variants it is used in only",
        ),
        may("now", Takes::Table(&MATRIX_NOW), "what became of it"),
    ],
);

/// The fate of a matrix, its present holder, and the date.
pub static MATRIX_NOW: Shape = plain(
    "what became of a matrix",
    &[
        must(
            "state",
            Takes::Word(words::<MatrixFate>),
            "what became of it",
        ),
        may(
            "holder",
            Takes::Refers(Target::Holder, MentionRole::MatrixHolder),
            "who has it",
        ),
        may("date", Takes::Date, "when that happened"),
    ],
);
