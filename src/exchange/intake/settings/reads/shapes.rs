//! The keys of what a value reads.

use crate::exchange::intake::reading::states::StateRemark;
use crate::model::certainty::Basis;
use crate::model::vocabulary::List;
use crate::read::shape::{Shape, Takes, may, must, unpublished, words};

/// A date that is said not to be known.
pub(super) const NOT_KNOWN: &str = "not-known";

/// A date that is said to be later than the one before it.
pub(super) const LATER: &str = "later";

/// What a value reads.
pub(in super::super) static READS: Shape = unpublished(
    "a reading",
    &[
        may("title", Takes::Text, "the title"),
        may(
            "supplied",
            Takes::Flag,
            "whether a cataloguer supplied the title",
        ),
        may("created", DATE, "when the design was made"),
        may("published", DATE, "when a printing was published"),
        may("first-published", DATE, "when it was first published"),
        may("printed", DATE, "when a printing was printed"),
        may(
            "reprinted",
            DATE,
            "when it was printed again from the matrix",
        ),
        may("reproduced", DATE, "when it was reproduced by other means"),
        may("enlarged", DATE, "when it was made again in another size"),
        may("pulled", DATE, "when this one sheet was pulled"),
        may("image", SIZES, "the printed picture, in mm"),
        may("sheet", SIZES, "the whole piece of paper, in mm"),
        may("platemark", SIZES, "the edge of the plate, in mm"),
        may("block", SIZES, "the block or stone, in mm"),
        may("support", SIZES, "what the image is on, in mm"),
        may("mount", SIZES, "the mount, in mm"),
        may("frame", SIZES, "the frame, in mm"),
        may("displayed", SIZES, "the object as it is shown, in mm"),
        may("object", SIZES, "the object, in mm"),
        may(
            "unsaid",
            SIZES,
            "a size of which it is not said what was measured, in mm",
        ),
        may(
            "technique",
            Takes::Several(&Takes::Term(List::Techniques)),
            "keys of techniques",
        ),
        may(
            "paper",
            Takes::Several(&Takes::Term(List::Papers)),
            "keys of papers",
        ),
        may(
            "colours",
            Takes::Whole(0, u32::MAX),
            "in how many colours it is printed",
        ),
        may(
            "matrices",
            Takes::Whole(0, u32::MAX),
            "from how many blocks, plates, stones or screens",
        ),
        may(
            "numbering",
            Takes::Text,
            "the number of the sheet: \"12/50\"",
        ),
        may(
            "edition",
            Takes::Whole(0, u32::MAX),
            "the declared size of the edition",
        ),
        may("kind", Takes::Term(List::Kinds), "the kind of impression"),
        may("makers", Takes::Tables(&MAKER), "people with their roles"),
        may(
            "how",
            Takes::Term(List::Transfers),
            "how the holder acquired it",
        ),
        may("from", Takes::Text, "from whom"),
        may("through", Takes::Text, "through whom, or with whose help"),
        may("year", Takes::Whole(0, 9999), "in which year"),
        may(
            "joint",
            Takes::Flag,
            "whether several owners acquired it together",
        ),
        may(
            "catalogues",
            Takes::Tables(&CATALOGUE),
            "numbers and states in earlier catalogues",
        ),
        may("holder", Takes::Text, "who keeps it: a holder's key"),
        may("series", Takes::Text, "the series: a key"),
        may("seen", Takes::Date, "when the sheet was seen"),
        may(
            "seen_by",
            Takes::Text,
            "who saw it: a person's or holder's key",
        ),
        may("basis", Takes::Word(words::<Basis>), "how it was seen"),
        may("web", Takes::Web, "the holder's own page"),
        may(
            "rights",
            Takes::Text,
            "the rights in the picture: an identifier",
        ),
    ],
);

/// A date, or a word for one that is not told; several.
const DATE: Takes = Takes::Several(&Takes::Either(&[Takes::Date, Takes::Word(undated)]));

fn undated() -> Vec<&'static str> {
    vec![NOT_KNOWN, LATER]
}

/// Sizes, each as its lengths or as a table that says more.
const SIZES: Takes = Takes::Several(&Takes::Either(&[Takes::Size, Takes::Table(&SIZE)]));

/// A size with more than its lengths.
pub(super) static SIZE: Shape = unpublished(
    "a size",
    &[
        must("size", Takes::Size, "[height, width] in mm"),
        may(
            "within",
            Takes::Several(&Takes::From0),
            "how far each length may be off, in mm: a number, or [height, width]",
        ),
        may(
            "sight",
            Takes::Flag,
            "whether it was measured within a mount or frame",
        ),
        may("said", Takes::Text, "the words it was taken from"),
    ],
);

/// A person with a role.
pub(super) static MAKER: Shape = unpublished(
    "a maker",
    &[
        must("name", Takes::Text, "the name as written"),
        must(
            "role",
            Takes::Term(List::Roles),
            "the role: a key of the vocabulary",
        ),
    ],
);

/// A reference to an earlier catalogue.
pub(super) static CATALOGUE: Shape = unpublished(
    "an earlier catalogue",
    &[
        may(
            "after",
            Takes::Text,
            "its author or abbreviation, as written",
        ),
        may("number", Takes::Text, "the number in it"),
        may(
            "state",
            Takes::Text,
            "the state by it: \"ii\", \"ii or iii\"",
        ),
        may("of", Takes::Whole(0, u32::MAX), "of how many states"),
        may("printing", Takes::Text, "the printing within the state"),
        may(
            "remark",
            Takes::Word(words::<StateRemark>),
            "what else is said of the state",
        ),
        may(
            "not_in",
            Takes::Flag,
            "whether the catalogue does not have it",
        ),
    ],
);
