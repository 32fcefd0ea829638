//! The keys of a point, in `design.toml`.

use super::declare::{MapKeys, Shape, Takes, WAS, may, must, plain, words};
use crate::model::occurrence::DesignPart;
use crate::model::point::{PointKindWord, RestsOn};

/// A point: a feature to look at.
pub static POINT: Shape = plain(
    "a point",
    &[
        must("key", Takes::OwnKey, "its key"),
        WAS,
        must(
            "ask",
            Takes::Text,
            "the question: \"Is there a moon above the mast?\"",
        ),
        must(
            "kind",
            Takes::Word(words::<PointKindWord>),
            "what kind of answer it takes",
        ),
        must(
            "rests_on",
            Takes::Word(words::<RestsOn>),
            "what the difference rests on; only the matrix makes states",
        ),
        may(
            "matrix",
            Takes::Part(DesignPart::Matrix),
            "which matrix, where there are several",
        ),
        may(
            "values",
            Takes::Map(MapKeys::Values, &Takes::Text),
            "of a choice: its values, each with a description",
        ),
        may(
            "stages",
            Takes::Several(&Takes::OwnKey),
            "of a stage: its stages, in the order of wear",
        ),
        may("unit", Takes::Text, "of a measure: its unit, usually mm"),
        may(
            "tolerance",
            Takes::Above0,
            "of a measure: how far two measurements of one thing may differ",
        ),
        may(
            "box",
            Takes::Box,
            "where it is on the reference picture: [left, top, width, height] in percent",
        ),
        may(
            "decides",
            Takes::Text,
            "why what is seen there excludes, where the point does not rest on the matrix or is a stage",
        ),
        may(
            "strays",
            Takes::Fraction(0.5),
            "how often a sheet departs from what is recorded there, above 0 and at most 0.5; then the point excludes nothing",
        ),
    ],
);
