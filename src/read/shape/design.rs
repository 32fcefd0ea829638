//! The keys of `design.toml`.

use super::as_found::IDS;
use super::declare::{
    MapKeys, SETTLED, Shape, Takes, Target, WAS, claimed, may, must, plain, standing, words,
};
use super::picture::DESIGN_PICTURE;
use crate::model::certainty::Certainty;
use crate::model::design::{MatrixFate, MatrixKind, TitleKind};
use crate::model::literature::Relation;
use crate::model::occurrence::{DesignPart, MentionRole};
use crate::model::point::{PointKindWord, RestsOn};
use crate::model::printing::{PrintingKind, PrintingMeans};
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

/// A citation without a number.
pub(super) static CITATION: Shape = plain(
    "a citation",
    &[
        must(
            "cite",
            Takes::Refers(Target::Cited, MentionRole::Cited),
            "the work",
        )
        .locator("at"),
        may("at", Takes::Text, "where in it: \"p. 31\""),
    ],
);

/// A citation with the number that the work gives: its keys, and the given ones.
macro_rules! numbered_citation {
    ($($own:expr),*) => {
        plain(
            "a citation",
            &[
                must(
                    "cite",
                    Takes::Refers(Target::Cited, MentionRole::Cited),
                    "the work",
                )
                .locator("at"),
                may("at", Takes::Text, "where in it: \"p. 31\""),
                may(
                    "number",
                    Takes::Text,
                    "its number for the thing: \"22\", \"II\"",
                ),
                may(
                    "relation",
                    Takes::Word(words::<Relation>),
                    "how that number relates to ours; same where nothing is said",
                ),
                $($own,)*
            ],
        )
    };
}

/// A citation with the number that the work gives.
pub(super) static NUMBERED_CITATION: Shape = numbered_citation!();

/// A citation of one sheet.
pub static SHEET_CITATION: Shape = numbered_citation!(
    may(
        "this_sheet",
        Takes::Word(words::<Certainty>),
        "how sure it is that it is this sheet",
    ),
    may(
        "illustrated",
        Takes::Flag,
        "whether the sheet is illustrated there",
    )
);

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

/// A state.
pub static STATE: Shape = standing(
    "a state",
    &[
        must("key", Takes::OwnKey, "its key: telling, not a numeral"),
        WAS,
        may(
            "date",
            Takes::Statements(&Takes::Date),
            "when the change was made",
        ),
        may(
            "by",
            Takes::Refers(Target::Person, MentionRole::Maker),
            "who made it, where that is not the artist",
        ),
        may("summary", Takes::Text, "what changed, in a sentence"),
        may(
            "size",
            Takes::Table(&SIZE),
            "its sizes, where they are not those of the design",
        ),
        may(
            "shows",
            Takes::Map(MapKeys::Points, &Takes::PointValues),
            "what it shows at points that rest on the matrix",
        ),
        may(
            "follows",
            Takes::Several(&Takes::Part(DesignPart::State)),
            "the states it was changed from; the one before where nothing is said",
        ),
        may(
            "described",
            Takes::Date,
            "when it was recognised as a state",
        ),
        may(
            "split_from",
            Takes::Part(DesignPart::State),
            "the state from which it was distinguished when it was recognised",
        ),
        may(
            "literature",
            Takes::Tables(&NUMBERED_CITATION),
            "what earlier literature calls it",
        ),
    ],
);

/// A printing.
pub static PRINTING: Shape = standing(
    "a printing",
    &[
        must("key", Takes::OwnKey, "its key"),
        WAS,
        may("name", Takes::Text, "its name as readers see it"),
        may(
            "kind",
            Takes::Statements(&Takes::Word(words::<PrintingKind>)),
            "what kind of printing it is; not known where nothing is said",
        ),
        may(
            "printer",
            Takes::Statements(&Takes::Refers(Target::Party, MentionRole::Printer)),
            "who printed it",
        ),
        may(
            "publisher",
            Takes::Statements(&Takes::Refers(Target::Party, MentionRole::Publisher)),
            "who published it",
        ),
        may("date", Takes::Statements(&Takes::Date), "when"),
        may(
            "edition",
            Takes::Statements(&Takes::Whole(1, 1_000_000)),
            "the declared size of the edition",
        ),
        may("numbered", Takes::Flag, "whether its sheets are numbered"),
        may(
            "printed",
            Takes::Statements(&Takes::Whole(0, 1_000_000)),
            "how many sheets were really printed",
        ),
        may(
            "states",
            Takes::StatesPrinted,
            "the states it contains: a list, or \"all\"; required where the design has states",
        ),
        may(
            "matrices",
            Takes::Several(&Takes::Part(DesignPart::Matrix)),
            "the matrices used",
        ),
        may(
            "paper",
            Takes::Several(&Takes::Term(List::Papers)),
            "the papers used",
        ),
        may(
            "size",
            Takes::Table(&SIZE),
            "its sizes, where they are not those of its states",
        ),
        may(
            "inks",
            Takes::Several(&Takes::Text),
            "the inks used: \"black\", \"blue-grey\"",
        ),
        may(
            "pressed",
            Takes::Word(words::<PrintingMeans>),
            "how the paper was pressed on the matrix",
        ),
        may(
            "series",
            Takes::Tables(&SERIES_PLACE),
            "the series in which its sheets came out, one or several",
        ),
        may(
            "shows",
            Takes::Map(MapKeys::Points, &Takes::PointValues),
            "what it shows",
        ),
        may(
            "literature",
            Takes::Tables(&NUMBERED_CITATION),
            "what earlier literature calls it",
        ),
    ],
);

/// A variant.
pub static VARIANT: Shape = standing(
    "a variant",
    &[
        must("key", Takes::OwnKey, "its key"),
        WAS,
        may("summary", Takes::Text, "what differs, in a sentence"),
        may(
            "states",
            Takes::Several(&Takes::Part(DesignPart::State)),
            "the states in which it occurs",
        ),
        may(
            "printings",
            Takes::Several(&Takes::Part(DesignPart::Printing)),
            "the printings in which it occurs",
        ),
        may(
            "shows",
            Takes::Map(MapKeys::Points, &Takes::PointValues),
            "what it shows; for agreement only",
        ),
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
