//! The keys of `design.toml`.

use super::as_found::IDS;
use super::citation::{CITATION, NUMBERED_CITATION};
use super::declare::{
    SETTLED, Shape, Takes, Target, WAS, claimed, may, must, plain, standing, words,
};
use super::matrix::MATRIX;
use super::picture::DESIGN_PICTURE;
use super::point::POINT;
use super::series_place::SERIES_PLACE;
use super::sizes::SIZE;
use super::states::{PRINTING, STATE, VARIANT};
use crate::model::design::TitleKind;
use crate::model::occurrence::MentionRole;
use crate::model::vocabulary::List;

/// `design.toml`.
pub static DESIGN: Shape = standing(
    "a design",
    &[
        may(
            "number",
            Takes::Text,
            "the number readers see, as text; the folder's name where nothing is said",
        ),
        may(
            "sort",
            Takes::Text,
            "what it sorts by in place of the number",
        )
        .never_shown("it only decides the order"),
        must("titles", Takes::Tables(&TITLE), "its titles"),
        may("date", Takes::Statements(&Takes::Date), "when it was made"),
        may(
            "makers",
            Takes::Tables(&MAKER),
            "who made it, in which role",
        ),
        may(
            "technique",
            Takes::Several(&Takes::Term(List::Techniques)),
            "how it was made",
        ),
        may(
            "support",
            Takes::Several(&Takes::Term(List::Papers)),
            "what it is printed on",
        ),
        may(
            "series",
            Takes::Tables(&SERIES_PLACE),
            "the series to which it belongs, one or several",
        ),
        may(
            "subjects",
            Takes::Several(&Takes::TermOrWords(List::Subjects)),
            "what it shows: terms or free words",
        ),
        may("related", Takes::Tables(&RELATED), "related designs"),
        may(
            "known_from",
            Takes::Tables(&CITATION),
            "what tells of it where no impression is known",
        ),
        may("size", Takes::Table(&SIZE), "its sizes"),
        may(
            "matrices",
            Takes::Tables(&MATRIX),
            "each block, plate, stone or screen",
        ),
        may(
            "literature",
            Takes::Tables(&NUMBERED_CITATION),
            "what earlier literature calls it",
        ),
        may(
            "points",
            Takes::Tables(&POINT),
            "what to look at to tell states and printings apart",
        ),
        may("states", Takes::Tables(&STATE), "its states, in order"),
        may(
            "printings",
            Takes::Tables(&PRINTING),
            "its printings, in order",
        ),
        may(
            "variants",
            Takes::Tables(&VARIANT),
            "sheets that differ with no change of state or printing",
        ),
        may(
            "pictures",
            Takes::Tables(&DESIGN_PICTURE),
            "drawings, blocks, illustrations",
        ),
        may(
            "reference_picture",
            Takes::Refers(Target::Picture, MentionRole::Reference),
            "the photograph that others are aligned to: \"14.1/recto\"",
        ),
        may(
            "comparisons",
            Takes::Tables(&COMPARISON),
            "pairs or groups to be shown side by side",
        ),
        IDS,
        WAS,
        SETTLED,
    ],
);

/// A title.
pub static TITLE: Shape = claimed(
    "a title",
    &[
        must("text", Takes::Text, "the title"),
        may("lang", Takes::Language, "its language and script"),
        may(
            "kind",
            Takes::Word(words::<TitleKind>),
            "its kind; usual where nothing is said",
        ),
        may(
            "supplied",
            Takes::Flag,
            "supplied by the catalogue: printed in brackets",
        ),
    ],
);

/// A maker of the design.
pub static MAKER: Shape = claimed(
    "a maker",
    &[
        must(
            "person",
            Takes::Refers(Target::Person, MentionRole::Maker),
            "who",
        ),
        may("role", Takes::Term(List::Roles), "in which role"),
    ],
);

/// A related design.
pub static RELATED: Shape = plain(
    "a related design",
    &[
        must(
            "design",
            Takes::Refers(Target::Design, MentionRole::Related),
            "which",
        ),
        may("how", Takes::Term(List::Relations), "how it is related"),
    ],
);

/// Impressions to be shown together.
pub static COMPARISON: Shape = plain(
    "a comparison",
    &[
        must(
            "of",
            Takes::Several(&Takes::Refers(Target::Impression, MentionRole::Compared)),
            "the impressions, two or more; those of other designs too",
        ),
        may("why", Takes::Text, "why"),
    ],
);
