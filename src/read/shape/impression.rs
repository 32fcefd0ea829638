//! The keys of `impressions/N.toml`.

use super::as_found::{AS_GIVEN, IDS};
use super::citation::SHEET_CITATION;
use super::declare::{
    MapKeys, SETTLED, Shape, Takes, Target, claimed, may, must, plain, standing, words,
};
use super::picture::PICTURE;
use super::sheet::{CONDITION_NOTE, SHEET};
use crate::model::certainty::{Basis, Certainty};
use crate::model::impression::{BlockPrinted, Status, Without};
use crate::model::mark::MarkKind;
use crate::model::occurrence::{DesignPart, MentionRole};
use crate::model::vocabulary::List;
use crate::model::words::Side;

/// `impressions/N.toml`.
pub static IMPRESSION: Shape = standing(
    "an impression",
    &[
        may(
            "holder",
            Takes::Refers(Target::Holder, MentionRole::Holder),
            "who keeps it",
        ),
        may(
            "owner",
            Takes::Several(&Takes::Party(MentionRole::Owner)),
            "who owns it, where that differs; a list: joint owners",
        ),
        may("accession", Takes::Text, "its number with that holder"),
        may(
            "part",
            Takes::Text,
            "which part of that number it is, where several sheets have one: \"sheet 2\", \"fol. 3\"",
        ),
        may(
            "former_accessions",
            Takes::Tables(&FORMER_ACCESSION),
            "numbers it had before",
        ),
        may("credit", Takes::Text, "the exact credit line"),
        may("web", Takes::Web, "the holder's own page of this sheet"),
        IDS,
        must("status", Takes::Word(words::<Status>), "where it stands"),
        may(
            "kind",
            Takes::Statements(&Takes::Term(List::Kinds)),
            "what kind of impression it is",
        ),
        may(
            "taken_from",
            Takes::Refers(Target::Impression, MentionRole::TakenFrom),
            "the impression a counterproof was taken from",
        ),
        may("numbering", Takes::Text, "its number as written: \"12/50\""),
        may(
            "technique",
            Takes::Several(&Takes::Term(List::Techniques)),
            "how it was made, where this sheet is described otherwise than the design",
        ),
        may(
            "identified",
            Takes::Table(&IDENTIFICATION),
            "what the catalogue takes it to be",
        ),
        may(
            "opinions",
            Takes::Tables(&OPINION),
            "what others take it to be",
        ),
        may(
            "observed",
            Takes::Map(MapKeys::Points, &Takes::Observed),
            "what was seen at the design's points",
        ),
        may(
            "blocks",
            Takes::Map(MapKeys::Matrices, &Takes::Word(words::<BlockPrinted>)),
            "which matrices were printed on it",
        ),
        may(
            "without",
            Takes::Several(&Takes::Word(words::<Without>)),
            "what was looked for and not found",
        ),
        may("sheet", Takes::Table(&SHEET), "the sheet of paper"),
        may(
            "marks",
            Takes::Tables(&MARK),
            "what was put on it by hand or stamp",
        ),
        may(
            "condition",
            Takes::TextOrTables(&CONDITION_NOTE),
            "its condition: in words, or each thing that was noted of it",
        ),
        may(
            "as_given",
            Takes::Table(&AS_GIVEN),
            "the holder's own description, field by field in its words",
        ),
        may("pictures", Takes::Tables(&PICTURE), "its photographs"),
        may(
            "provenance",
            Takes::Tables(&PROVENANCE),
            "where it was, earliest first",
        ),
        may(
            "provenance_line",
            Takes::Text,
            "the same as a line written by hand, kept as it is",
        ),
        may(
            "sightings",
            Takes::Tables(&SIGHTING),
            "when it was seen or reported",
        ),
        may(
            "exhibited",
            Takes::Tables(&EXHIBITED),
            "where this sheet was shown",
        ),
        may(
            "literature",
            Takes::Tables(&SHEET_CITATION),
            "where this sheet is discussed or illustrated",
        ),
        may(
            "same_as",
            Takes::Tables(&SAME_SHEET),
            "records found to be the same sheet",
        ),
        may(
            "maybe_same_as",
            Takes::Tables(&MAYBE_SAME_SHEET),
            "records that may be the same sheet",
        ),
        may(
            "not_same_as",
            Takes::Tables(&OTHER_SHEET),
            "records that are certainly another sheet",
        ),
        may(
            "shares_sheet",
            Takes::Several(&Takes::Refers(Target::Impression, MentionRole::SharesSheet)),
            "other impressions on the same paper",
        ),
        may(
            "goes_with",
            Takes::Several(&Takes::Refers(Target::Impression, MentionRole::GoesWith)),
            "other sheets of one set",
        ),
        may(
            "publish",
            Takes::Publish,
            "false: counted, but without a page",
        ),
        SETTLED,
    ],
);

/// A former accession number of a sheet.
pub static FORMER_ACCESSION: Shape = plain(
    "a former accession number",
    &[
        may(
            "holder",
            Takes::Refers(Target::Holder, MentionRole::FormerHolder),
            "with whom",
        ),
        must("number", Takes::Text, "the number"),
        may("until", Takes::Date, "until when"),
    ],
);

/// A reading of a sheet: the given keys, and those that every reading has.
macro_rules! reading {
    ($name:literal, [$($own:expr),*]) => {
        claimed(
            $name,
            &[
                $($own,)*
                may(
                    "state",
                    Takes::StateReading,
                    "one state; a list: either; a table: matrix = state",
                ),
                may(
                    "printing",
                    Takes::Several(&Takes::Part(DesignPart::Printing)),
                    "the printing",
                ),
                may("variant", Takes::Part(DesignPart::Variant), "the variant"),
                may(
                    "kind",
                    Takes::Term(List::Kinds),
                    "the kind of impression, where the reading turns on it",
                ),
                may("why", Takes::Text, "why"),
                may(
                    "or",
                    Takes::Tables(&IDENTIFICATION),
                    "other readings that are possible",
                ),
            ],
        )
    };
}

/// The catalogue's identification of a sheet.
pub static IDENTIFICATION: Shape = reading!("an identification", []);

/// Another author's identification of a sheet.
pub static OPINION: Shape = reading!(
    "an opinion",
    [
        may("said", Takes::Text, "in their own words: \"III\""),
        may(
            "after",
            Takes::Refers(Target::Work, MentionRole::Cited),
            "the catalogue whose numbering that is"
        )
    ]
);

/// An observation at a point, with its observer.
pub static OBSERVED: Shape = claimed(
    "an observation",
    &[
        may(
            "is",
            Takes::PointValues,
            "what was seen: one value, or either of several",
        ),
        may("not", Takes::PointValues, "what was certainly not seen"),
    ],
);

/// A mark.
pub static MARK: Shape = claimed(
    "a mark",
    &[
        may(
            "mark",
            Takes::Refers(Target::Mark, MentionRole::BearsMark),
            "its record in records/marks/, where several sheets bear it",
        ),
        may(
            "condition",
            Takes::MarkCondition,
            "in which of the conditions of that record it is",
        ),
        may(
            "kind",
            Takes::Word(words::<MarkKind>),
            "what kind of mark it is",
        ),
        may("medium", Takes::Text, "pencil, ink, brush, blind …"),
        may("text", Takes::Text, "what it says"),
        may(
            "place",
            Takes::Text,
            "where on that side: \"lower right, in the margin\"",
        ),
        may("side", Takes::Word(words::<Side>), "the side it is on"),
        may(
            "whose",
            Takes::Refers(Target::Party, MentionRole::Mark),
            "whose name it bears",
        ),
        may(
            "applied_by",
            Takes::Refers(Target::Party, MentionRole::AppliedMark),
            "who applied it",
        ),
        may("applied", Takes::Date, "when it was put there"),
        may("colour", Takes::Text, "its colour"),
        may("number", Takes::Text, "its number in a repertory of marks"),
        may(
            "note",
            Takes::Text,
            "what is to be said of it here, where its words are not known",
        ),
    ],
);

/// One entry of a sheet's provenance.
pub static PROVENANCE: Shape = claimed(
    "a provenance entry",
    &[
        may("owner", Takes::Party(MentionRole::Owner), "who owned it"),
        may(
            "agent",
            Takes::Party(MentionRole::Agent),
            "the dealer or auction house that handled it",
        ),
        may(
            "keeper",
            Takes::Party(MentionRole::Keeper),
            "who kept it for its owner: a loan or deposit",
        ),
        may("from", Takes::Date, "from when"),
        may("to", Takes::Date, "until when"),
        may("how", Takes::Term(List::Transfers), "how it came"),
        may("place", Takes::Text, "where"),
        may("lot", Takes::Text, "the lot number"),
        may("price", Takes::Text, "the price, as published"),
        may(
            "direct",
            Takes::Flag,
            "false: not known to come straight from the entry before",
        ),
        may("sold", Takes::Flag, "false: offered and bought in"),
        may(
            "this_sheet",
            Takes::Word(words::<Certainty>),
            "how sure it is that it was this sheet",
        ),
    ],
);

/// One time the sheet was seen or reported.
pub static SIGHTING: Shape = plain(
    "a sighting",
    &[
        must("date", Takes::Date, "when"),
        may("by", Takes::Party(MentionRole::Sighting), "by whom"),
        may("basis", Takes::Word(words::<Basis>), "on what ground"),
        may(
            "cite",
            Takes::Refers(Target::Cited, MentionRole::Cited),
            "the literature that reports it",
        )
        .locator("at"),
        may("at", Takes::Text, "where in it: \"p. 31\""),
    ],
);

/// An exhibition in which the sheet was shown.
pub static EXHIBITED: Shape = plain(
    "an exhibition of this sheet",
    &[
        must(
            "exhibition",
            Takes::Refers(Target::Exhibition, MentionRole::Exhibited),
            "which",
        )
        .locator("at"),
        may("at", Takes::Text, "its number or place there: \"no. 9\""),
        may(
            "this_sheet",
            Takes::Word(words::<Certainty>),
            "how sure it is that it was this sheet",
        ),
        may(
            "illustrated",
            Takes::Flag,
            "whether the sheet is illustrated in its catalogue",
        ),
    ],
);

/// Another record that the given role ties to this one, and why.
macro_rules! other_sheet {
    ($role:ident) => {
        plain(
            "another sheet",
            &[
                must(
                    "impression",
                    Takes::Refers(Target::Impression, MentionRole::$role),
                    "the other record: \"14.3\"",
                ),
                may("why", Takes::Text, "why"),
            ],
        )
    };
}

/// A record found to be the same sheet.
pub static SAME_SHEET: Shape = other_sheet!(SameSheet);

/// A record that may be the same sheet.
pub static MAYBE_SAME_SHEET: Shape = other_sheet!(MaybeSameSheet);

/// A record that is certainly another sheet.
pub static OTHER_SHEET: Shape = other_sheet!(OtherSheet);
