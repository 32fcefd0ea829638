//! The keys of `documents/KEY.toml`.

use super::declare::{SETTLED, Shape, Takes, Target, WAS, may, must, plain, words};
use super::picture::PICTURE_OF_DOCUMENT;
use crate::model::certainty::Certainty;
use crate::model::occurrence::MentionRole;
use crate::model::vocabulary::List;

/// `documents/KEY.toml`.
pub static DOCUMENT: Shape = plain(
    "a document",
    &[
        may(
            "kind",
            Takes::Term(List::Documents),
            "what kind of document it is",
        ),
        may("title", Takes::Text, "its title, or what it is called here"),
        may("date", Takes::Date, "when it was written"),
        may(
            "by",
            Takes::Several(&Takes::Party(MentionRole::WroteDocument)),
            "who wrote or issued it",
        ),
        may(
            "to",
            Takes::Several(&Takes::Party(MentionRole::ReceivedDocument)),
            "to whom it was sent",
        ),
        may(
            "holder",
            Takes::Refers(Target::Holder, MentionRole::KeepsDocument),
            "who keeps it",
        ),
        may("shelfmark", Takes::Text, "its shelfmark there"),
        may(
            "lang",
            Takes::Several(&Takes::Language),
            "its language, BCP 47",
        ),
        may(
            "pictures",
            Takes::Tables(&PICTURE_OF_DOCUMENT),
            "pictures of it, in the order of its pages",
        ),
        may(
            "rights",
            Takes::Text,
            "the rights in its words: an SPDX or rightsstatements.org identifier, or free text",
        ),
        may(
            "tells",
            Takes::Tables(&TELLING),
            "what it tells, and of what",
        ),
        may("publish", Takes::Publish, "false: kept, but not published"),
        WAS,
        SETTLED,
    ],
);

/// One thing that a document tells.
pub static TELLING: Shape = plain(
    "a statement of a document",
    &[
        must(
            "of",
            Takes::Several(&Takes::EvidenceTarget(MentionRole::ToldOf)),
            "of what: \"design:14\", \"state:14/cut-down\", \"printing:14/own\", \"impression:14.7\", \"person:KEY\", \"series:KEY\"",
        ),
        must("says", Takes::Text, "what it tells of it, in a sentence"),
        may("at", Takes::Text, "where in the document: \"leaf 3\""),
        may(
            "certainty",
            Takes::Word(words::<Certainty>),
            "how sure it is that it tells this; certain where nothing is said",
        ),
    ],
);
