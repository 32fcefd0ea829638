//! The keys of `marks/KEY.toml`.

use super::citation::NUMBERED_CITATION;
use super::declare::{SETTLED, Shape, Takes, Target, WAS, claimed, may, must, plain, words};
use crate::model::mark::MarkKind;
use crate::model::occurrence::MentionRole;

/// `marks/KEY.toml`.
pub static MARK_RECORD: Shape = plain(
    "a mark of several sheets",
    &[
        may(
            "kind",
            Takes::Word(words::<MarkKind>),
            "what kind of mark it is",
        ),
        may("text", Takes::Text, "what it says"),
        may(
            "picture",
            Takes::Refers(Target::Picture, MentionRole::MarkPicture),
            "a picture of it, recorded with a sheet: \"14.7/seal\"",
        ),
        may(
            "size",
            Takes::Statements(&Takes::Size),
            "its size, [height, width] in mm",
        ),
        may("colour", Takes::Text, "its colour"),
        may(
            "reference",
            Takes::Tables(&NUMBERED_CITATION),
            "the repertory of marks that has it, with its number there",
        ),
        may("users", Takes::Tables(&MARK_USER), "who used it, and when"),
        may(
            "conditions",
            Takes::Tables(&MARK_CONDITION),
            "its conditions, in chronological order: whole, chipped, recut",
        ),
        WAS,
        SETTLED,
    ],
);

/// Somebody who used a mark.
pub static MARK_USER: Shape = claimed(
    "a user of a mark",
    &[
        must(
            "person",
            Takes::Refers(Target::Party, MentionRole::MarkUser),
            "who: a person's or holder's key",
        ),
        may("from", Takes::Date, "from when"),
        may("to", Takes::Date, "until when"),
    ],
);

/// A condition of a mark.
pub static MARK_CONDITION: Shape = plain(
    "a condition of a mark",
    &[
        must("key", Takes::OwnKey, "its key"),
        WAS,
        may("summary", Takes::Text, "what is to be seen, in a sentence"),
        may("from", Takes::Date, "from when the mark was so"),
        may("to", Takes::Date, "until when it was so"),
    ],
);
