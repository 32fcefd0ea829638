//! The keys of states, printings and variants, in `design.toml`.

use super::citation::NUMBERED_CITATION;
use super::declare::{MapKeys, Shape, Takes, Target, WAS, may, must, standing, words};
use super::series_place::SERIES_PLACE;
use super::sizes::SIZE;
use crate::model::occurrence::{DesignPart, MentionRole};
use crate::model::printing::{PrintingKind, PrintingMeans};
use crate::model::vocabulary::List;

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
