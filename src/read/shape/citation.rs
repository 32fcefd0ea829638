//! The keys of a citation: of a work, with its number for the thing, of one sheet.

use super::declare::{Shape, Takes, Target, may, must, plain, words};
use crate::model::certainty::Certainty;
use crate::model::literature::Relation;
use crate::model::occurrence::MentionRole;

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
