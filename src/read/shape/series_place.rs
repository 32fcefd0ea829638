//! The keys of a place in a series, of designs and printings.

use super::declare::{Shape, Takes, Target, may, plain};
use crate::model::occurrence::MentionRole;

/// A series, and the place of a design or a printing in it.
pub static SERIES_PLACE: Shape = plain(
    "a place in a series",
    &[
        may(
            "series",
            Takes::Refers(Target::Series, MentionRole::InSeries),
            "the key of the series",
        ),
        may(
            "name",
            Takes::Text,
            "the name of a series that has no record, in place of `series`",
        ),
        may("position", Takes::Text, "the place in it, as text"),
    ],
);
